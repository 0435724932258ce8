"""What the tests of lengths share."""

from __future__ import annotations

from hypothesis import strategies as st

from guide.lengths import EIGHTH, FOOT, INCH, MM, SIXTEENTH, SIXTY_FOURTH, Bare, Length, read_length

LONGEST = FOOT.ticks * 10_000

any_ticks = st.integers(-LONGEST, LONGEST)
any_length = st.builds(Length, any_ticks)
some_rests = st.frozensets(st.sampled_from(["A.length", "A.height@left", "B.string", "basement.foam_thickness"]))
resting = st.builds(Length, any_ticks, some_rests)
steps = st.sampled_from([SIXTY_FOURTH, SIXTEENTH, EIGHTH, INCH, MM])
bares = st.sampled_from(["in", "mm"])


def tape(text: str, bare: Bare = "in") -> Length:
    """Read a length and drop whether it was eyeballed."""
    return read_length(text, bare=bare).length
