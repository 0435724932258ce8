"""One piece of a wall told: what it is, its size, why it is there, what it rests on, by which rule, and what else was possible."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from guide.book.questions import Book
from guide.interview.answers import Answers, split_path
from guide.interview.asking import Asked, applying, path_for
from guide.layout.parts import Decision, Kind, Layout, Part, WallLayout
from guide.lengths import Length, inches, with_unit
from guide.reference.figures import figure_table, load_figures
from guide.reference.pieces import load_pieces
from guide.reference.sayings import say
from guide.sheets.actions import Action
from guide.sheets.plan import Plan
from guide.sheets.said import place_title, said_so_far, thing_title
from guide.sheets.spoken import say_of_talk
from guide.sheets.ticket import LOCKED
from guide.sheets.view import FROM_THE_CORNER, WallView


def piece_lines(book: Book, answers: Answers, plan: Plan, name: str) -> tuple[str, ...]:
    """Tell of the part with this id, or of the thing on a wall at this place, all there is to tell.

    A size that rests on something nobody measured, and any size while a STOP stands, reads `locked`.
    """
    wall = plan.layout.by_letter[name.partition(".")[0]]
    part = plan.layout.parts.get(name)
    if part is None:
        return (*_thing(book, answers, name), *_decisions(book, answers, plan, _of_thing(wall, name)))
    view = WallView(plan, wall)
    return (
        _what(view, part),
        _where(view, part),
        say_of_talk("piece_why", why=say(part.why, plan.tape, plan.guessed)),
        *_decisions(book, answers, plan, decided(plan.layout, part)),
        *_rules(plan, part),
        *_rests(plan, part),
    )


def told_of_pieces(book: Book, answers: Answers, plan: Plan, names: tuple[str, ...]) -> tuple[str, ...]:
    """Tell of the one piece that is meant; of several only which they are."""
    if len(names) == 1:
        return piece_lines(book, answers, plan, names[0])
    pieces = "; ".join(piece_line(plan, name).rstrip(".") for name in names)
    return (say_of_talk("which_piece", pieces=pieces),)


def piece_line(plan: Plan, name: str) -> str:
    """Return a piece, or a thing on a wall, in one line: its mark, what it is, its size."""
    part = plan.layout.parts.get(name)
    if part is None:
        return f"{thing_title(name)[:1].upper()}{thing_title(name)[1:]}"
    return _what(WallView(plan, plan.layout.by_letter[part.wall]), part)


def decided(layout: Layout, part: Part) -> tuple[Decision, ...]:
    """Return the decisions that made a piece as it is: those of its kind for the wall, and for the things it is there for."""
    subjects, wall = load_pieces().kind[part.kind.value].decided, layout.by_letter[part.wall]
    found = [(*split_path(d.id), d) for d in wall.decisions]
    before = layout.by_letter.get(wall.wall.left_joined or "")
    if before is not None:  # what was decided of a corner stands with the wall whose right end it is
        found += [(part.wall, "corner_left", d) for d in before.decisions if d.id == f"{before.letter}.corner_right"]
    return tuple(d for place, subject, d in found if subject in subjects and _belongs(part, wall, place, subject))


def _belongs(part: Part, wall: WallLayout, place: str, subject: str) -> bool:
    """Say whether a decision is about a piece: of an end, only if it lies there; of a thing, only if it is there for it."""
    near = load_figures().stud_spacing
    if subject.endswith("_left"):
        return part.box.x0 - wall.plate_start < near
    if subject.endswith("_right"):
        return wall.plate_end - part.box.x1 < near
    values = [value for _, value in part.why.values]
    named = any(isinstance(value, str) and thing_title(place) in value for value in values)
    rests = {split_path(rest)[0] for value in values if isinstance(value, Length) for rest in value.rests}
    rests |= {split_path(rest)[0] for rest in part.box.y0.rests} if subject in ("line", "meets") else set()
    return place == part.wall or named or place in rests


def _of_thing(wall: WallLayout, place: str) -> tuple[Decision, ...]:
    return tuple(d for d in wall.decisions if d.id.startswith(f"{place}."))


def overruling(book: Book, answers: Answers, decisions: Iterable[Decision]) -> tuple[Asked, ...]:
    """Return the questions by which the person decides instead, where there is one that applies."""
    applies = {asked.path: asked for asked in applying(book, answers)}
    subjects = (split_path(decision.id) for decision in decisions)
    paths = [path_for(place, ref) for place, subject in subjects for ref in load_pieces().overruled.get(subject, ())]
    return tuple(applies[path] for path in dict.fromkeys(paths) if path in applies)


def decides(book: Book, answers: Answers, layout: Layout, name: str) -> tuple[Action, ...]:
    """Return what the person can say to decide otherwise what was decided of a piece, or of a thing on a wall."""
    part, wall = layout.parts.get(name), layout.by_letter[name.partition(".")[0]]
    decisions = decided(layout, part) if part is not None else _of_thing(wall, name)
    said = (change_said(asked) for asked in overruling(book, answers, decisions))
    return tuple(Action(typed, say_of_talk("does_decide", typed=typed)) for typed in said)


def change_said(asked: Asked) -> str:
    """Return the words that lead to a question: `change which wall runs through on the right of wall A`."""
    letter, _, item = asked.place.partition(".")
    thing = f" of {thing_title(asked.place)}" if item else ""
    wall = f" of wall {letter}" if asked.place != "basement" else ""
    return f"change {asked.question.short}{thing}{wall}"


def _what(view: WallView, part: Part) -> str:
    locked = {"cut": LOCKED, "wide": LOCKED}
    shown = {"cut": view.size(part.cut, "down"), "wide": view.size(part.wide, "down") if part.wide is not None else ""}
    kind, material = part.kind.value, part.material.value
    values = {"mark": part.mark, "what": kind if material in kind else f"{kind}, {material}"}
    key = "piece_box" if part.kind is Kind.OUTLET else "piece" if part.wide is None else "piece_wide"
    return say_of_talk(key, **values, **(locked if view.plan.stopped else shown))


def _where(view: WallView, part: Part) -> str:
    box, wall, rests = part.box, view.wall, part.place_rests
    heights = (z.at(wall.wall, part.centre) for z in (box.z0, box.z1))
    low, high = (view.size(height) for height in heights)
    corner = part.kind in FROM_THE_CORNER
    left, right = (view.bare(x if corner else wall.mark_of(x), rests) for x in (box.x0, box.x1))
    return say_of_talk("piece_at_corner" if corner else "piece_at", left=left, right=right, low=low, high=high)


def _thing(book: Book, answers: Answers, place: str) -> Iterator[str]:
    said = [f"{row.name} {row.value}" for row in said_so_far(book, answers) if row.place == place]
    title = place_title(answers, place)
    yield say_of_talk("thing", thing=title[:1].upper() + title[1:], said=", ".join(said))


def _decisions(book: Book, answers: Answers, plan: Plan, decisions: tuple[Decision, ...]) -> Iterator[str]:
    for decision in decisions:
        said, *beat = (say(each, plan.tape, plan.guessed) for each in (decision.saying, *decision.beat))
        yield (
            say_of_talk("decided_instead", said=said, beat=" ".join(beat))
            if beat
            else say_of_talk("decided", said=said)
        )
    for asked in overruling(book, answers, decisions):
        yield say_of_talk("decide_yourself", typed=change_said(asked))


def _rules(plan: Plan, part: Part) -> Iterator[str]:
    """Yield the figures that a piece goes by, of the code and of practice, each with where it comes from."""
    piece, table, code = load_pieces().kind[part.kind.value], figure_table(), plan.code.figures
    for ruled in (code[name] for name in piece.code if name in code):
        yield say_of_talk("by_code", what=ruled.what, value=ruled.said, cited=ruled.cited)
    for figure in (table[name] for name in piece.figures):
        value = with_unit(inches(figure.value), plan.tape)
        yield say_of_talk("by_practice", what=figure.what, value=value, source=figure.source)


def _rests(plan: Plan, part: Part) -> Iterator[str]:
    """Yield the answers that size and place rest on, by name, and those of them that nobody measured."""
    size, place = (_grouped(plan, part.wall, rests) for rests in (part.size_rests, part.place_rests - part.size_rests))
    if size:
        yield say_of_talk("size_rests", names=size)
    if place:
        yield say_of_talk("place_rests", names=place)
    unsure = plan.survey.unsure(part.size_rests | part.place_rests)
    if unsure:
        yield say_of_talk("rests_unsure", names=", ".join(plan.survey.names.get(rest, rest) for rest in unsure))


def _grouped(plan: Plan, own: str, rests: Iterable[str]) -> str:
    """Return readings by the wall or thing they are of, the own wall first: `wall A: length, slab to joists; wall B: length`."""
    places: dict[str, list[str]] = {}
    for rest in sorted(rests, key=lambda each: (each.startswith("basement."), not each.startswith(f"{own}."), each)):
        place, _, name = plan.survey.names.get(rest, rest).rpartition(": ")
        names = places.setdefault(place, [])
        short = name.partition(" at ")[0] if "@" in rest else name
        if short not in names:
            names.append(short)
    return "; ".join(f"{place}: {', '.join(names)}" if place else ", ".join(names) for place, names in places.items())
