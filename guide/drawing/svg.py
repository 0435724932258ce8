"""A drawing as SVG: the same values as the text, true in their proportions, with dimensions, hatches and a legend.

Black on white, no script, no colour, nothing loaded from elsewhere; the same drawing gives the same bytes. Words stand
inside the view box and apart from each other; those that find no room are left out. A drawing that text shows wider than
true is broken in its height instead, as drafters break what goes on unchanged.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from itertools import pairwise
from xml.sax.saxutils import escape

from guide.drawing.hatches import PLAIN, TILES, Ink, Tile, ink
from guide.drawing.lettering import FACE, SMALL, TITLE, WORDS, Anchor, Box, Word, number, printable, spread, wide
from guide.drawing.measured import CLEAR, TICK, beside, caption, stroke, ticked, under
from guide.drawing.shapes import LOCKED, Chain, Drawing, Edge, Fill, Label, Line, Ruler, Side
from guide.drawing.sheet import BROKEN, LINE, MARGIN, WIDE, Sheet
from guide.drawing.signs import WRITE_OVER
from guide.drawing.text import STEPS
from guide.lengths import ZERO, Length, Tape, show

APART = 4_000
"""From one division of a rule to the next, at least."""
ROW_NAME = 6_000
"""How far before the picture the name of a row of marks stands."""
SWATCH = 2_600
"""Width of a swatch of the legend."""
_SIDES: dict[Side, tuple[Anchor, int]] = {
    "middle": ("middle", 0), "right": ("start", WORDS // 2), "left": ("end", -WORDS // 2),
}  # fmt: skip
"""How words on a side of their place are anchored, and how far they stand off."""


def svg(
    drawing: Drawing, *, name: str, tape: Tape = "inches", locked: Callable[[Length], bool] = lambda length: False
) -> str:
    """Return a drawing as one SVG element. `name` makes its ids its own on a page that holds several.

    A size for which `locked` says yes, because it rests on something nobody measured, reads `locked`.
    """
    sheet = Sheet(drawing, name, tape, locked)
    words = [
        Word(text, MARGIN, MARGIN + LINE // 2 + LINE * down, TITLE, "start", heavy=True)
        for down, text in enumerate(sheet.title)
    ]
    lines = [_fill(sheet, fill) for fill in sheet.fills]
    lines += _break(sheet)
    lines += [_line(sheet, shape) for shape in sheet.of.shapes if isinstance(shape, Line)]
    y = _marks(sheet, words, MARGIN + LINE * (len(sheet.title) + 1), above=True)
    for chain in sheet.chains("above"):
        drawn, y = under(words, chain, y, sheet.x, sheet.room, sheet.said)
        lines += drawn
    _labels(sheet, words, _inside(sheet, words))
    y = _marks(sheet, words, sheet.foot + LINE // 2, above=False)
    sides: tuple[Edge, ...] = ("left", "right")
    for edge in sides:
        for chain, x in sheet.beside(edge):
            lines += beside(words, chain, x, sheet.y, sheet.said, sheet.top)
    for chain in sheet.chains("below"):
        drawn, y = under(words, chain, y, sheet.x, sheet.room, sheet.said)
        lines += drawn
    if not sheet.chains("below"):
        drawn, y = _ruler(sheet, words, y + LINE)
        lines += drawn
    drawn, y = _legend(sheet, words, y + LINE // 2)
    lines += drawn
    return _whole(sheet, lines, words, y + MARGIN)


def _fill(sheet: Sheet, fill: Fill) -> str:
    """Return a shape with its hatch; wood cut across its grain has its diagonals."""
    drawn = ink(fill)
    low = [(x, fill.bottom.at(x)) for x in (fill.x0, *fill.bottom.breaks(fill.x0, fill.x1), fill.x1)]
    high = [(x, fill.top.at(x)) for x in (fill.x0, *fill.top.breaks(fill.x0, fill.x1), fill.x1)]
    points = [(sheet.x(x), sheet.y(z)) for x, z in (*low, *reversed(high))]
    named = f"<title>{escape(printable(fill.label or drawn.says))}</title>"
    parts = [
        f'<path d="M{_path(points)}z" fill="{_paper(sheet, drawn)}" stroke="#000" stroke-width="{number(drawn.weight)}">{named}</path>'
    ]
    if drawn.crossed:
        corners = [points[0], points[len(low) - 1], points[len(low)], points[-1]]
        for (xa, ya), (xb, yb) in ((corners[0], corners[2]), (corners[1], corners[3])):
            parts.append(stroke(f"M{_path([(xa, ya), (xb, yb)])}"))
    return "".join(parts)


def _break(sheet: Sheet) -> list[str]:
    """Return the break across everything that goes on through it, as two lines with a kink."""
    if not sheet.fold or not sheet.through:
        return []
    left = sheet.x(min(fill.x0 for fill in sheet.through))
    right = sheet.x(max(fill.x1 for fill in sheet.through))
    y, middle = (sheet.y(sheet.fold[0]) + sheet.y(sheet.fold[1])) // 2, (left + right) // 2
    x0, x1 = left - MARGIN, right + MARGIN
    kinked = ((x0, 0), (middle - 700, 0), (middle - 300, -900), (middle + 300, 900), (middle + 700, 0), (x1, 0))
    upper, lower = ([(x, at + off) for x, off in kinked] for at in (y - 450, y + 450))
    band = f'<path d="M{_path([*upper, *reversed(lower)])}z" fill="#fff"/>'
    return [band, *(stroke(f"M{_path(line)}", PLAIN) for line in (upper, lower))]


def _path(points: Iterable[tuple[int, int]]) -> str:
    return "L".join(f"{number(x)} {number(y)}" for x, y in points)


def _line(sheet: Sheet, line: Line) -> str:
    ends = [(sheet.x(line.x0), sheet.y(line.z0)), (sheet.x(line.x1), sheet.y(line.z1))]
    if line.reach is None:
        return ticked(ends)
    leads = (f"M{number(x)} {number(y)}V{number(sheet.y(line.reach))}" for x, y in ends)
    return ticked(ends) + stroke("".join(leads))


def _marks(sheet: Sheet, words: list[Word], y: int, *, above: bool) -> int:
    """Add the rows of marks to the words and return where the next row may begin; of a row too full the last are left out."""
    for row, marks in sheet.rows(above=above).items():
        title = Word(printable(row), max(MARGIN, sheet.x(sheet.of.left) - ROW_NAME), y, SMALL, "start")
        said = [printable(mark.texts[0]) if mark.texts else sheet.said(mark.size or mark.x) for mark in marks]
        centres = spread(
            [sheet.x(mark.x) for mark in marks],
            [wide(text, WORDS) + WORDS // 3 for text in said],
            title.box.right + WORDS,
            WIDE - MARGIN,
        )
        words += [title, *(Word(text, centre, y) for text, centre in zip(said, centres, strict=False))]
        y += LINE
    return y


def _inside(sheet: Sheet, words: list[Word]) -> set[str]:
    """Add the mark of each part that has room for it and that nothing is drawn over there; return the parts."""
    marked: set[str] = set()
    boxes = [sheet.box(fill) for fill in sheet.fills]
    middle = sheet.y(sheet.fold[0]) - BROKEN // 2 if sheet.fold else 0
    gap = [Box(0, middle - LINE, WIDE, middle + LINE)] if sheet.fold else []
    for index, (fill, box) in enumerate(zip(sheet.fills, boxes, strict=True)):
        if not fill.label:
            continue
        over = [other for other in (*boxes[index + 1 :], *gap) if other.meets(box)]
        tries = _tries(sheet, printable(fill.label), box)
        word = next((word for word in tries if not any(other.meets(word.box) for other in over)), None)
        if word is not None and not any(word.box.meets(other.box) for other in words):
            words.append(word)
            marked.add(fill.name)
    return marked


def _tries(sheet: Sheet, text: str, box: Box) -> Iterator[Word]:
    """Yield where a mark could stand within a box, its middle first."""
    for upright in (False, True):
        for across in (4, 3, 5, 2, 6, 1, 7):
            for down in (4, 2, 6):
                x = box.left + (box.right - box.left) * across // 8
                y = box.top + (box.bottom - box.top) * down // 8
                word = Word(text, x, y, SMALL, upright=upright)
                if word.box.within(box):
                    yield word


def _labels(sheet: Sheet, words: list[Word], marked: set[str]) -> None:
    """Add each label in its fullest wording that finds room near its place, on white if it can; not of what is marked."""
    spare_below = 0 if sheet.rows(above=False) else LINE // 2
    left = sheet.x(sheet.of.left) if sheet.chains("left") else MARGIN
    right = sheet.x(sheet.of.right) if sheet.chains("right") else WIDE - MARGIN
    room = Box(left, sheet.top, right, sheet.foot + spare_below)
    inked = [sheet.box(fill) for fill in sheet.fills if fill.look not in WRITE_OVER]
    taken = [word.box for word in words]
    for label in (shape for shape in sheet.of.shapes if isinstance(shape, Label) and shape.name not in marked):
        spare: Word | None = None
        for word in _places(sheet, label):
            box = word.box
            if not box.within(room) or any(box.meets(other) for other in taken):
                continue
            spare = spare or word
            if not any(box.meets(other) for other in inked):
                spare = word
                break
        if spare is not None:
            words.append(spare)
            taken.append(spare.box)


def _places(sheet: Sheet, label: Label) -> Iterator[Word]:
    """Yield where a label may stand, in each of its wordings, the nearest to its place first."""
    size = f" {sheet.said(label.size)}" if label.size is not None else ""
    anchor, aside = _SIDES[label.side]
    downs = (0,) if label.fixed else (0, 1, -1, 2, -2, 3, -3)
    ways = [(along, down) for along in (0, 2, -2, 4, -4) for down in downs]
    for text in label.texts:
        for along, down in sorted(ways, key=lambda way: abs(way[1])) if label.side == "middle" else ways:
            x, y = sheet.x(label.x) + aside + along * WORDS, sheet.y(label.z) + down * LINE * 9 // 10
            yield Word(printable(f"{text}{size}"), x, y, anchor=anchor)


def _ruler(sheet: Sheet, words: list[Word], y: int) -> tuple[list[str], int]:
    """Return the rule along the bottom, divided as finely as its numbers can be read, and where the next row begins."""
    ruler = next((shape for shape in sheet.of.shapes if isinstance(shape, Ruler)), None)
    if ruler is None:
        return [], y
    long = ruler.x1 - ruler.x0
    steps = STEPS[sheet.tape]
    step = next((s for s in steps if sheet.x(ruler.x0 + s) - sheet.x(ruler.x0) >= APART), steps[-1])
    whole = (step * count for count in range(1, long.ticks // step.ticks + 1))
    places = [ZERO, *(at for at in whole if sheet.x(long) - sheet.x(at) >= APART), long]
    at = [sheet.x(ruler.x0 + place) for place in places]
    said = [LOCKED if sheet.locked(place) else show(place, sheet.tape) for place in places]
    centres = spread(at, [wide(text, WORDS) + CLEAR for text in said], MARGIN, WIDE - MARGIN)
    words += [Word(text, x, y + WORDS + CLEAR) for text, x in zip(said, centres, strict=False)]
    strokes = "".join(f"M{number(x)} {number(y)}v{number(TICK)}" for x in at)
    rule = stroke(f"M{number(at[0])} {number(y)}H{number(at[-1])}{strokes}")
    counted = f"{'in' if sheet.tape == 'inches' else 'mm'} {sheet.of.across}"
    return [rule], caption(words, counted, at[0], y + 2 * LINE, sheet.room)


def _legend(sheet: Sheet, words: list[Word], y: int) -> tuple[list[str], int]:
    """Return a swatch for every hatch that is used, and how far down the last one reaches."""
    lines, x = [], MARGIN
    seen = [look.says for look in sheet.inks if not look.tile and not look.crossed]
    for look in [*(look for look in sheet.inks if look.says not in seen), *([Ink(", ".join(seen))] if seen else [])]:
        long = SWATCH + WORDS // 2 + wide(look.says, SMALL) + WORDS
        if x + long > WIDE - MARGIN:
            x, y = MARGIN, y + LINE
        box = f"M{number(x)} {number(y)}h{number(SWATCH)}v{number(LINE - 400)}h{number(-SWATCH)}z"
        lines.append(
            f'<path d="{box}" fill="{_paper(sheet, look)}" stroke="#000" stroke-width="{number(look.weight)}"/>'
        )
        if look.crossed:
            a, b, c, d = (number(at) for at in (x, y, x + SWATCH, y + LINE - 400))
            lines.append(stroke(f"M{a} {b}L{c} {d}M{c} {b}L{a} {d}"))
        words.append(Word(look.says, x + SWATCH + WORDS // 2, y + (LINE - 400) // 2, SMALL, "start"))
        x += long
    return lines, y + LINE


def _paper(sheet: Sheet, look: Ink) -> str:
    return f"url(#{sheet.name}-{look.tile.replace(' ', '-')})" if look.tile else "#fff"


def _described(sheet: Sheet) -> str:
    """What the drawing shows, for those who cannot see it: every kind of piece with its marks, every chain in figures."""
    shown: dict[str, list[str]] = {}
    for fill in sheet.fills:
        marks = shown.setdefault(ink(fill).says, [])
        if fill.label and fill.label not in marks:
            marks.append(fill.label)
    kinds = [f"{says}: {', '.join(marks)}" if marks else says for says, marks in shown.items()]
    chains = [
        f"{chain.says}: {', '.join(_sizes_of(sheet, chain))}"
        for chain in sheet.chains("left", "right", "above", "below")
    ]
    return printable(". ".join(("Shown: " + "; ".join(kinds), *chains)) + ".")


def _sizes_of(sheet: Sheet, chain: Chain) -> list[str]:
    if chain.running:
        return [sheet.said(place - chain.places[0]) for place in chain.places]
    return [sheet.said(high - low) for low, high in pairwise(chain.places)]


def _whole(sheet: Sheet, lines: list[str], words: list[Word], tall: int) -> str:
    tiles = dict.fromkeys(look.tile for look in sheet.inks if look.tile)
    return "\n".join(
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {number(WIDE)} {number(tall)}" '
            f'width="{number(WIDE)}" height="{number(tall)}" role="img" '
            f'aria-labelledby="{sheet.name}-title {sheet.name}-desc" font-family="{FACE}">',
            f'<title id="{sheet.name}-title">{escape(printable(sheet.of.title))}</title>',
            f'<desc id="{sheet.name}-desc">{escape(_described(sheet))}</desc>',
            "<defs>",
            *(_pattern(f"{sheet.name}-{tile.replace(' ', '-')}", TILES[tile]) for tile in tiles),
            "</defs>",
            f'<rect width="{number(WIDE)}" height="{number(tall)}" fill="#fff"/>',
            *lines,
            '<g stroke="#fff" stroke-width="3" stroke-linejoin="round" paint-order="stroke">',
            *(word.drawn() for word in words),
            "</g>",
            "</svg>",
        )
    )


def _pattern(name: str, tile: Tile) -> str:
    ink_of = f'fill="{"#000" if tile.solid else "none"}" stroke="#000" stroke-width="{tile.weight}"'
    return (
        f'<pattern id="{name}" width="{number(tile.wide)}" height="{number(tile.tall)}" patternUnits="userSpaceOnUse">'
        f'<rect width="{number(tile.wide)}" height="{number(tile.tall)}" fill="#fff"/>'
        f'<path transform="scale(.01)" d="{tile.path}" {ink_of}/></pattern>'
    )
