"""Lengths: what a tape says, exactly, and which readings it came from.

This is the only room that knows ticks. A `Length` is a whole number of ticks, 8128 to the inch, which is also 320 to
the millimetre, so sixty-fourths of an inch and whole millimetres are both exact and nothing ever drifts. Beside the
number it carries the ids of the answers it rests on; arithmetic joins them.

Reading (`read_length`) takes what people write on a scrap of wood. Printing (`show`, `in_feet`, `in_words`) rounds
once, to a stated step, in a stated direction.
"""

from guide.lengths.printing import (
    as_run,
    as_written,
    count_in_words,
    in_feet,
    in_inches,
    in_mm,
    in_words,
    show,
    with_area,
    with_unit,
)
from guide.lengths.reading import (
    SHY,
    SHY_MM,
    Bare,
    Reading,
    Unreadable,
    inches,
    read_length,
)
from guide.lengths.retold import retold
from guide.lengths.size import (
    DENOMINATORS,
    EIGHTH,
    FOOT,
    INCH,
    MM,
    SIXTEENTH,
    SIXTY_FOURTH,
    TICKS_PER_INCH,
    TICKS_PER_MM,
    ZERO,
    Length,
    Tape,
    Toward,
    between,
    exact_inches,
    from_inches,
    from_mm,
    greatest,
    least,
)
from guide.lengths.spelled import in_figures

__all__ = [
    "DENOMINATORS",
    "EIGHTH",
    "FOOT",
    "INCH",
    "MM",
    "SHY",
    "SHY_MM",
    "SIXTEENTH",
    "SIXTY_FOURTH",
    "TICKS_PER_INCH",
    "TICKS_PER_MM",
    "ZERO",
    "Bare",
    "Length",
    "Reading",
    "Tape",
    "Toward",
    "Unreadable",
    "as_run",
    "as_written",
    "between",
    "count_in_words",
    "exact_inches",
    "from_inches",
    "from_mm",
    "greatest",
    "in_feet",
    "in_figures",
    "in_inches",
    "in_mm",
    "in_words",
    "inches",
    "least",
    "read_length",
    "retold",
    "show",
    "with_area",
    "with_unit",
]
