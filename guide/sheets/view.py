"""What the templates print of a wall: rows of text, every number already locked or shown.

A number that rests on anything not measured is never printed as a cut or a mark: it reads `locked` instead.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from guide.checks.findings import Finding
from guide.layout.corners import half_degrees
from guide.layout.drywall import sheets_in
from guide.layout.ends import End
from guide.layout.packing import sheets_for
from guide.layout.parts import FULL_HEIGHT, Kind, Part, WallLayout
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

FROM_THE_CORNER = (Kind.FOAM, Kind.CAP, Kind.CAP_LAP, Kind.LEDGE, Kind.LEDGE_LAP, Kind.JOIST_BLOCK)
"""Pieces whose place is told from the left concrete corner; the others go by the marks on the plates."""


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

    # ------------------------------------------------------------------------------------------- pieces

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
            notes.append(say(rung_note(self.wall, part), self.plan.tape, self.plan.guessed))
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
