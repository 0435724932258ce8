"""What the templates print of a wall: rows of text, every number already locked or shown.

A number that rests on anything not measured is never printed as a cut or a mark: it reads `locked` instead.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from itertools import pairwise

from guide.checks.findings import Finding
from guide.layout.corners import half_degrees
from guide.layout.drywall import sheets_in
from guide.layout.ends import End
from guide.layout.packing import sheets_for
from guide.layout.parts import FULL_HEIGHT, Datum, Kind, Part, WallLayout
from guide.lengths import SIXTEENTH, ZERO, Length, Toward, greatest, inches, least, retold, show, with_unit
from guide.order.plan import Step
from guide.reference.figures import load_figures
from guide.reference.sayings import say
from guide.reference.stock import load_fasteners
from guide.sheets.cuts import goods_said, sheet_rows
from guide.sheets.plan import Plan
from guide.sheets.rungs import rung_note
from guide.sheets.said import Said
from guide.sheets.ticket import LOCKED, lumber_said, stick_rows
from guide.sheets.warmth import Warmth, warmth_of
from guide.survey.room import thing_name

FROM_THE_CORNER = (Kind.FOAM, Kind.CAP, Kind.CAP_LAP, Kind.LEDGE, Kind.LEDGE_LAP, Kind.JOIST_BLOCK)
"""Pieces whose place is told from the left concrete corner; the others go by the marks on the plates."""


@dataclass(frozen=True, slots=True)
class Mark:
    """One mark on the plates."""

    at: str
    """Its left edge, running from the left end of the plates."""
    to: str
    """Its right edge; empty for a single line."""
    from_right: str
    """The left edge once more, running from the right end."""
    sign: str
    what: str
    plate: str
    """On which plate it is drawn: `both`, `bottom` or `top`."""


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece to cut."""

    mark: str
    cut: str
    wide: str
    at: str
    """Its left edge: for framing from the left end of the plates, for foam and cap from the left concrete corner."""
    to: str
    """Its right edge, from the same place."""
    note: str


@dataclass(frozen=True, slots=True)
class Held:
    """How one kind of part is fastened on this wall."""

    what: str
    fastener: str
    count: int
    rule: str
    source: str


@dataclass(frozen=True)
class WallView:
    """One wall as its page prints it."""

    plan: Plan
    wall: WallLayout

    # ------------------------------------------------------------------------------------------- numbers

    def size(self, length: Length, toward: Toward = "nearest") -> str:
        """Print a size with its unit, or `locked`."""
        return LOCKED if self.plan.guessed(length) else with_unit(length, self.plan.tape, SIXTEENTH, toward)

    def bare(self, length: Length, rests: Iterable[str] = (), toward: Toward = "nearest") -> str:
        """Print a size without its unit, for tables, or `locked` when it or `rests` is not measured."""
        unsure = self.plan.survey.unsure({*length.rests, *rests})
        return LOCKED if unsure else show(length, self.plan.tape, SIXTEENTH, toward)

    def mark(self, x: Length, rests: Iterable[str] = ()) -> str:
        """Print a place as running from the left end of the plates, or `locked`."""
        return self.bare(self.wall.mark_of(x), rests)

    @property
    def numbers(self) -> tuple[tuple[str, str], ...]:
        """The few numbers that the whole wall hangs on."""
        offsets, wall = self.wall.offsets, self.wall
        starts, ends, zero = wall.plate_start, wall.wall.length - wall.plate_end, wall.mark_of(wall.zero)
        left, right = ("from" if off >= ZERO else "past" for off in (starts, ends))
        sheet = "at, on the plate"
        if wall.wall.is_partition:
            return (
                ("Plates, wide", self.size(offsets.face)),
                ("Plates, end to end", self.size(wall.plate)),
                ("Left end of the plates from where the tape was hooked there", self.size(starts)),
                ("Right end of the plates from where the tape was read there", self.size(ends)),
                (f"First drywall sheet starts ({wall.zero_side}) at, on the plate", self.size(zero)),
            )
        if zero < ZERO or zero > wall.plate:  # over the end of the framing round an outside corner
            sheet = f"past the {wall.zero_side} end of the plates by"
            zero = greatest(-zero, zero - wall.plate)
        return (
            ("B, concrete to the back of the studs", self.size(offsets.back)),
            ("F, concrete to the room face of the studs", self.size(offsets.face)),
            ("D, concrete to the face of the drywall", self.size(offsets.drywall)),
            (f"Plates, {'long point to long point' if wall.slanted else 'end to end'}", self.size(wall.plate)),
            (f"Left end of the plates {left} the left concrete corner", self.size(abs(starts))),
            (f"Right end of the plates {right} the right concrete corner", self.size(abs(ends))),
            *(row for side, end in (("Left", wall.left), ("Right", wall.right)) for row in self._slant(side, end)),
            (f"First drywall sheet starts ({wall.zero_side}) {sheet}", self.size(zero)),
        )

    def _slant(self, side: str, end: End) -> Iterable[tuple[str, str]]:
        """Say how a slanted end of the plates is sawn."""
        if end.slant.ticks:
            saw = LOCKED if self.plan.guessed(end.slant) else f"{half_degrees(end.off_square)} degrees"
            short = "room" if end.slant > ZERO else "concrete"
            yield f"{side} end of the plates is sawn off square by", saw
            yield f"Its {short} edge is the shorter one, by", self.size(abs(end.slant))

    @property
    def lengths(self) -> tuple[tuple[str, str], ...]:
        """How many studs, sheets of foam and strips of cap there are, and from which length to which they are cut."""
        kinds = (("Studs", (Kind.STUD, Kind.PACK, Kind.KING)), ("Foam, tall", (Kind.FOAM,)))
        rows = [
            (f"{name} ({len(of)})", self._range([p.cut for p in of])) for name, k in kinds if (of := self.wall.of(*k))
        ]
        caps = self.wall.of(Kind.CAP)
        wide = [part.wide for part in caps if part.wide]
        return (*rows, (f"Cap, wide ({len(caps)})", self._range(wide))) if wide else tuple(rows)

    def _range(self, cuts: list[Length]) -> str:
        low, high = (self.size(end, "down") for end in (least(*cuts), greatest(*cuts)))
        return low if low == high else f"{low} to {high}"

    # ------------------------------------------------------------------------------------------- marks

    @property
    def marks(self) -> tuple[Mark, ...]:
        """Every mark on the plates, from the left."""
        point = ", their long point" if self.wall.right.slant.ticks else ""
        end = self._row(self.wall.plate_end, 5, "end", f"right end of the plates{point}")
        framing = *self._slant_marks(), *self._framing_marks()
        found = [*framing, *self._joint_marks(), *self._gap_marks(), *self._box_marks(), end]
        return tuple(mark for _, _, mark in sorted(found, key=lambda each: (each[0], each[1])))

    def _row(
        self,
        x: Length,
        order: int,
        sign: str,
        what: str,
        rests: Iterable[str] = (),
        to: Length | None = None,
        plate: str = "both",
    ) -> tuple[int, int, Mark]:
        rests = tuple(rests)
        right = self.bare(self.wall.plate_end - x, {*x.rests, *rests})
        end = self.mark(to, rests) if to is not None else ""
        return x.ticks, order, Mark(self.mark(x, rests), end, right, sign, what, plate)

    def _slant_marks(self) -> Iterable[tuple[int, int, Mark]]:
        """Yield the saw cuts at slanted ends, from the one edge of the plate to the other."""
        left, right = self.wall.left.slant, self.wall.right.slant
        for slant, x0, side in ((left, self.wall.plate_start, 0), (right, self.wall.plate_end - abs(right), 1)):
            if slant.ticks:
                edges = ("concrete", "room") if (slant > ZERO) is (side == 0) else ("room", "concrete")
                what = f"saw cut, slanting from the {edges[0]} edge to the {edges[1]} edge"
                yield self._row(x0, 0, "/", what, slant.rests, x0 + abs(slant))

    def _framing_marks(self) -> Iterable[tuple[int, int, Mark]]:
        edges = {edge.ticks for edge in self.wall.sheet_edges}
        signs = {Kind.STUD: "X", Kind.PACK: "P", Kind.KING: "K", Kind.TRIMMER: "T", Kind.CRIPPLE: "C"}
        for part in self.wall.of(*signs):
            what, plate = part.mark, "bottom" if part.kind is Kind.TRIMMER else "both"
            if part.kind is Kind.CRIPPLE:
                above = part.box.z1.datum is part.box.z0.datum is Datum.JOISTS
                what += ", over the header" if above else ", under the sill"
                plate = "top" if above else "bottom"
            if part.kind is Kind.PACK:
                what += f", flat, its {with_unit(self.stud_deep, self.plan.tape)} face to the room"
            if part.why.key == "part.partition_stud":
                what += ", under a face of the partition"
            if part.centre.ticks in edges:
                what += ", drywall joint on its centre"
            yield self._row(part.box.x0, 0, signs[part.kind], what, part.place_rests, part.box.x1, plate)
        for block in self.wall.of(Kind.FIREBLOCK):
            stud = self.stud_beside(block)
            side = "right" if stud is not None and stud.box.x0 < block.box.x0 else "left"
            what = f"{block.mark}, fireblock on the {side} of {stud.mark if stud else 'the stud'}"
            yield self._row(block.box.x0, 1, "F", what, block.place_rests, block.box.x1)

    def stud_beside(self, block: Part) -> Part | None:
        """Return the full-height upright, or the short one over or under an opening, that a part touches; None without one."""
        return next(
            (
                s
                for s in self.wall.of(*FULL_HEIGHT, Kind.CRIPPLE)
                if block.box.x0 == s.box.x1 or block.box.x1 == s.box.x0
            ),
            None,
        )

    def _joint_marks(self) -> Iterable[tuple[int, int, Mark]]:
        for kind, name in ((Kind.BOTTOM_PLATE, "bottom"), (Kind.TOP_PLATE, "top")):
            pieces = self.wall.of(kind)
            for left, right in pairwise(pieces):
                if left.box.x1 == right.box.x0:
                    what = f"joint of the {name} plate, {left.mark} to {right.mark}"
                    yield self._row(right.box.x0, 2, "=", what, plate=name)
                else:
                    yield self._row(left.box.x1, 2, "end", f"{left.mark} ends: no {name} plate from here", plate=name)
                    yield self._row(right.box.x0, 2, "start", f"{right.mark} starts", plate=name)

    def _gap_marks(self) -> Iterable[tuple[int, int, Mark]]:
        for pipe in self.wall.wall.pipes:
            if pipe.run == "standing":
                what = f"{thing_name(pipe.place)}: {pipe.carries}"
                yield self._row(pipe.left_edge, 3, "pipe", what, pipe.wide.rests, pipe.right_edge)

    def _box_marks(self) -> Iterable[tuple[int, int, Mark]]:
        for part in self.wall.of(Kind.OUTLET):
            centre = part.box.z0.off + (part.box.z1.off - part.box.z0.off) // 2
            old = ", the old one brought forward" if part.why.key == "part.box_existing" else ""
            what = f"{part.mark}, electrical box{old}, its centre {self.size(centre)} over the slab"
            yield self._row(part.box.x0, 4, "O", what, part.place_rests, part.box.x1)

    # ------------------------------------------------------------------------------------------- pieces

    def pieces(self, *kinds: Kind) -> tuple[Piece, ...]:
        """Return the pieces of these kinds to cut, the longest first."""
        ordered = sorted(self.wall.of(*kinds), key=lambda part: (-part.cut.ticks, part.box.x0))
        return tuple(self._piece(part) for part in ordered)

    def in_place(self, *kinds: Kind) -> tuple[Piece, ...]:
        """Return the pieces of these kinds from the left."""
        return tuple(self._piece(part) for part in sorted(self.wall.of(*kinds), key=lambda p: (p.box.x0, p.box.z0.off)))

    def _piece(self, part: Part) -> Piece:
        placed = self.bare if part.kind in FROM_THE_CORNER and not self.wall.wall.is_partition else self.mark
        at, to = (placed(x, part.place_rests) for x in (part.box.x0, part.box.x1))
        wide = self.bare(part.wide, toward="down") if part.wide else ""
        return Piece(part.mark, self.bare(part.cut, toward="down"), wide, at, to, self._note(part))

    def _note(self, part: Part) -> str:
        notes = list(self._slanted(part))
        if part.kind is Kind.FOAM:
            notes += self._foam_notes(part)
        if part.kind is Kind.CHASE_RUNG:
            notes.append(rung_note(self.wall, part, self.size))
        if part.kind is Kind.UPPER_BLOCK and self.wall.wall.concrete.steps:
            notes += (f"over {block.mark}" for block in self.wall.of(Kind.FIREBLOCK) if block.box.x0 == part.box.x0)
        for notch in part.notches:
            deep = notch.y1 - part.box.y0
            low, high = notch.z0.off - part.box.z0.off, notch.z1.off - part.box.z0.off
            notes.append(
                f"notch in the back {self.size(deep)} deep, from {self.size(low)} to {self.size(high)} up from its foot"
            )
        return "; ".join(notes)

    def _slanted(self, part: Part) -> Iterable[str]:
        """Say which ends of a piece slant: its length, or a sheet's width, is from long point to long point."""
        for side, slant in zip(("left", "right"), part.slants, strict=True):
            if slant.ticks:
                short = "room" if slant > ZERO else "concrete"
                yield f"{side} end at a slant, its edge toward the {short} {self.size(abs(slant))} shorter"

    def _foam_notes(self, part: Part) -> Iterable[str]:
        """Say where a piece starts when it does not start at the floor gap, and what has to be cut out of it."""
        if part.box.z0.off > load_figures().foam_floor_gap:
            yield f"bottom {self.size(part.box.z0.off)} over the slab"
        for box in self.wall.wall.boxes:
            if box.kind == "existing" and part.box.x0 < box.at < part.box.x1:
                yield f"cut out for the old box at {self.size(box.at)}, {self.size(box.height)} up"

    @property
    def stud_deep(self) -> Length:
        """How deep the studs of this job are."""
        return load_figures().for_stud(self.plan.survey.basement.stud).stud_deep

    @property
    def materials(self) -> tuple[str, ...]:
        """What this wall is made of, with the sizes the numbers on its page take for granted."""
        figures, basement, book = load_figures(), self.plan.survey.basement, load_fasteners()
        used = {f.fastener for part in self.wall.parts for f in part.fastenings}
        stud = f"{show(figures.stud_thick, self.plan.tape)} by {with_unit(self.stud_deep, self.plan.tape)}"
        behind = (
            f"{basement.foam} foam, {self.size(basement.foam_thickness)} thick in all, glue bed {self.size(figures.glue_bed)}",
            f"plywood 23/32 or 3/4 in; the cap and the fireblocks are drawn {self.size(figures.plywood)} thick",
        )
        return (
            f"{basement.stud}, {stud}; measure yours",
            f"gasket under the bottom plate, {self.size(figures.gasket)} once pressed",
            *(() if self.wall.wall.is_partition else behind),
            f"drywall {basement.drywall} in{', on both sides' if self.wall.wall.is_partition else ''}",
            *(fastener.name for key, fastener in book.fastener.items() if key in used),
        )

    @property
    def warmth(self) -> Warmth:
        """How much heat this wall holds back."""
        return warmth_of(self.plan, self.wall)

    @property
    def anchors(self) -> tuple[tuple[str, str, str], ...]:
        """The bottom plate's fasteners: piece, which fastener, and where on the plate each goes."""
        book = load_fasteners()
        return tuple(
            (part.mark, book.fastener[held.fastener].short, ", ".join(self.mark(x) for x in held.at))
            for part in self.wall.of(Kind.BOTTOM_PLATE)
            for held in part.fastenings[:1]
        )

    @property
    def held(self) -> tuple[Held, ...]:
        """Every kind of fastening on this wall with its count."""
        book = load_fasteners()
        rows = []
        for rule in book.rule:
            count = sum(
                fastening.count
                for part in self.wall.parts
                if part.kind.value == rule.kind
                for fastening in part.fastenings
                if fastening.fastener == rule.fastener
            )
            if count:
                rows.append(
                    Held(
                        rule.kind,
                        book.fastener[rule.fastener].short,
                        count,
                        retold(rule.say, self.plan.tape),
                        rule.source,
                    )
                )
        return tuple(rows)

    @property
    def foam_face(self) -> Length:
        """Concrete to the room face of the foam, where the concrete is flat."""
        return self.wall.offsets.foam_face

    @property
    def foam_sheets(self) -> int:
        """How many sheets the foam of this wall is cut from, on its own."""
        wide = inches(self.plan.survey.basement.foam_sheet)
        sizes = [(part.wide or wide, part.cut) for part in self.wall.of(Kind.FOAM)]
        return len(sheets_for(sizes, wide=wide, tall=load_figures().sheet_long, kerf=ZERO))

    @property
    def foam_past(self) -> bool:
        """Whether a piece of foam starts before the left concrete corner."""
        return any(part.box.x0 < ZERO for part in self.wall.of(Kind.FOAM))

    @property
    def blocks_past(self) -> bool:
        """Whether a joist block goes in before the left concrete corner."""
        return any(part.box.x0 < ZERO for part in self.wall.of(Kind.JOIST_BLOCK))

    @property
    def drywall_sheets(self) -> int:
        """How many sheets the drywall of this wall is cut from, on its own."""
        return len(sheets_in(self.wall.of(Kind.DRYWALL), load_figures().sheet_long))

    @property
    def sheets_past(self) -> bool:
        """Whether a sheet of drywall starts before the left end of the plates."""
        return any(part.box.x0 < self.wall.plate_start for part in self.wall.of(Kind.DRYWALL))

    @property
    def cap_wide(self) -> str:
        """The width of the cap strips."""
        caps = self.wall.of(Kind.CAP)
        return self.bare(caps[0].wide, toward="down") if caps and caps[0].wide else ""

    @property
    def strips_per_sheet(self) -> int:
        """How many cap strips a 4 by 8 ft sheet gives; 0 while the width is locked."""
        caps, figures = self.wall.of(Kind.CAP), load_figures()
        if not caps or caps[0].wide is None or self.plan.guessed(caps[0].wide):
            return 0
        return int((figures.sheet_long // 2).ticks // (caps[0].wide + figures.cap_kerf).ticks)

    # ------------------------------------------------------------------------------------------- the rest

    @property
    def said(self) -> tuple[Said, ...]:
        """The answers about this wall and what is on it."""
        letter = self.wall.letter
        return tuple(said for said in self.plan.said if said.place.partition(".")[0] == letter)

    @property
    def locked(self) -> tuple[str, ...]:
        """What nobody has measured and something on this wall rests on, by name."""
        rests = {rest for part in self.wall.parts for rest in (*part.size_rests, *part.place_rests)}
        return tuple(self.plan.survey.names.get(rest, rest) for rest in self.plan.survey.unsure(rests))

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What was found on this wall."""
        return tuple(finding for finding in self.plan.findings if finding.wall == self.wall.letter)

    @property
    def steps(self) -> tuple[Step, ...]:
        """The steps of this wall, in order."""
        return tuple(step for step in self.plan.steps if step.wall == self.wall.letter)

    @property
    def reasons(self) -> tuple[tuple[str, tuple[str, ...]], ...]:
        """Every decision in words, with what it beat."""
        tape, guessed = self.plan.tape, self.plan.guessed
        return tuple(
            (say(d.saying, tape, guessed), tuple(say(beat, tape, guessed) for beat in d.beat))
            for d in self.wall.decisions
        )


ROWS: dict[str, Callable[..., object]] = {
    "sheet_rows": sheet_rows,
    "goods_said": goods_said,
    "stick_rows": stick_rows,
    "lumber_said": lumber_said,
    "mark_row": lambda mark: ("", mark.at, mark.to, mark.from_right, mark.sign, mark.plate, mark.what),
    "piece_row": lambda piece: ("", piece.mark, piece.cut, piece.at, piece.note),
    "wide_row": lambda piece: ("", piece.mark, piece.cut, piece.wide, piece.at, piece.note),
    "evening_row": lambda it: (
        it.number,
        it.when,
        it.hours,
        "two" if it.two else "",
        *("yes" if tag in it.tags else "" for tag in ("fumes", "pins", "glue")),
    ),
    "foam_row": lambda piece: ("", piece.mark, piece.at, piece.to, piece.wide, piece.cut, piece.note),
}
"""How the templates turn a value into the cells of a table row."""
