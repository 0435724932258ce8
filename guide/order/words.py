"""What a step's words print of the layout: the values behind the placeholders of guide.reference.steps.

A size that rests on anything nobody measured is never printed as a number: the data's word for “locked” stands there.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from guide.layout.parts import Kind, Layout, Part, WallLayout
from guide.lengths import ZERO, Length, with_unit
from guide.order.facts import Side, end_at, end_stud, hidden_blocks, open_blocks, pack_at, plate_middle, tight_blocks
from guide.reference.figures import load_figures
from guide.reference.steps import load_steps

Values = Mapping[str, str]


def room_values(layout: Layout) -> dict[str, str]:
    """Return what can be printed of the whole basement."""
    return {"slab_thickness": _sizes(layout)(layout.survey.basement.slab_thickness)}


def wall_values(layout: Layout, wall: WallLayout) -> dict[str, str]:
    """Return what can be printed of one wall."""
    size = _sizes(layout)
    return {
        "wall": f"wall {wall.letter}",
        "back": size(wall.offsets.back),
        "foam_room": size(wall.offsets.foam_face),
        "door_gap": size(load_figures().frame_play),
        "face": size(wall.offsets.face),
        "drywall_deep": size(wall.offsets.drywall),
        "plate_middle": size(plate_middle(wall)),
        "plate": size(wall.plate),
        "plate_start": size(abs(wall.plate_start)),
        "foam_count": str(len(wall.of(Kind.FOAM))),
        "cap_count": str(len(wall.of(Kind.CAP))),
        "ledge_count": str(len(wall.of(Kind.LEDGE))),
        "rim_count": str(len(wall.of(Kind.RIM))),
        "joist_block_count": str(len(wall.of(Kind.JOIST_BLOCK))),
        "fireblock_marks": _marks(wall.of(Kind.FIREBLOCK)),
        "open_blocks": _marks(open_blocks(wall)),
        "backing_count": str(len(wall.of(Kind.BACKING))),
        "tight_blocks": _marks(tight_blocks(wall)),
    }


def end_values(wall: WallLayout, side: Side) -> dict[str, str]:
    """Return what can be printed of one end of a wall."""
    return {
        "side": side,
        "other_wall": end_at(wall, side).neighbour or load_steps().none,
        "end_stud": _marks(part for part in [end_stud(wall, side)] if part is not None),
        "pack_stud": _marks(part for part in [pack_at(wall, side)] if part is not None),
        "corner_block": _marks(hidden_blocks(wall, side)),
    }


def _sizes(layout: Layout) -> Callable[[Length | None], str]:
    """Return how a size is printed: on the person's own tape, or locked."""
    survey = layout.survey

    def size(length: Length | None) -> str:
        if length is None or survey.unsure(length.rests):
            return load_steps().locked
        return with_unit(length if length > ZERO else ZERO, survey.basement.tape)

    return size


def _marks(parts: Iterable[Part]) -> str:
    return ", ".join(part.mark for part in parts) or load_steps().none
