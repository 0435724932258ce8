"""The order of work of a job: every step that applies, at its place, numbered so that nothing comes before what it needs.

Needs are followed exactly. What is free to go is taken in a fixed way, so that the same layout always gives the same order
and walls are finished one by one, as walked, as far as their corners let them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from guide.book.conditions import Condition, holds
from guide.layout.parts import Layout, WallLayout
from guide.lengths import Tape, retold
from guide.order.facts import OPPOSITE, SIDES, Facts, Side, end_at, end_facts, room_facts, wall_facts
from guide.order.times import Amounts, amounts, minutes, wait_after
from guide.order.words import Values, end_values, room_values, wall_values
from guide.reference.steps import PHASES, Caution, Need, Phase, StepBook, StepText, Tag, Wait, load_cautions, load_steps


class OrderError(ValueError):
    """Steps that wait for each other in a circle; the message names them."""


@dataclass(frozen=True, slots=True)
class Step:
    """One step at its place, ready to print."""

    number: int
    """Its place in the order of work, from 1."""
    id: str
    """`foam@A` for a wall, `corner_pack@A.left` for an end of one, `level_line` for the room."""
    wall: str | None
    """The letter of its wall; None for a step of the whole room."""
    phase: Phase
    title: str
    text: tuple[str, ...]
    """What to do, line by line; sizes nobody measured read as locked."""
    why: str
    looks: str
    """Who looks at it."""
    tools: tuple[str, ...]
    cautions: tuple[Caution, ...]
    waits: str
    """What has to pass before the next step may touch it; empty when nothing has to."""
    needs: tuple[str, ...]
    """Ids of the steps that come before it."""
    source: str
    """Where the figures in its words come from."""
    alone: int
    """Minutes for one person, by trade habit."""
    two: int
    """Minutes for two."""
    tags: tuple[Tag, ...]
    wait: tuple[Wait, ...]
    """What has to pass before anything that needs it begins."""


@dataclass(frozen=True)
class _Place:
    """Where steps are done: the room, a wall, or one end of a wall."""

    name: str
    """What stands behind the @ of a step's id; empty for the room."""
    letter: str | None
    side: Side | None
    index: int
    """Which wall it is in the order walked; -1 for the room."""
    facts: Facts
    values: Values
    amounts: Amounts


@dataclass(frozen=True)
class _Instance:
    """A step at its place, before it has a number."""

    text: StepText
    place: _Place
    position: int
    """Which step it is in the order of the data."""

    @cached_property
    def id(self) -> str:
        return f"{self.text.id}@{self.place.name}" if self.place.name else self.text.id

    def rank(self, at: str | None) -> tuple[int, bool, bool, int, int, str]:
        """Return where it comes among steps that are free to go, while wall `at` is being worked on."""
        place = self.place
        return (
            PHASES.index(self.text.phase),
            place.letter is not None,
            place.letter != at,
            place.index,
            self.position,
            place.side or "",
        )

    def applies(self, condition: Condition | None) -> bool:
        return holds(condition, self.place.facts.__getitem__)


def order_of_work(layout: Layout) -> tuple[Step, ...]:
    """Return every step that applies to a job, in the order they are done. Pure: the same layout gives the same order.

    Without a wall laid out only the steps of the room are there. Raises OrderError when steps wait for each other.
    """
    return ordered(layout, load_steps())


def ordered(layout: Layout, book: StepBook) -> tuple[Step, ...]:
    """Return the order of work by the steps of this book; see `order_of_work`."""
    instances = {each.id: each for each in _instances(layout, book)}
    needs = {name: tuple(_needs(layout, book, each, instances)) for name, each in instances.items()}
    return tuple(
        _step(number, instances[name], needs[name], layout.survey.basement.tape)
        for number, name in enumerate(_sorted(instances, needs), 1)
    )


def _places(layout: Layout) -> Iterator[_Place]:
    room, room_said = room_facts(layout), room_values(layout)
    yield _Place("", None, None, -1, room, room_said, amounts(layout, None))
    for index, wall in enumerate(layout.walls):
        facts, said = {**room, **wall_facts(layout, wall)}, {**room_said, **wall_values(layout, wall)}
        here = amounts(layout, wall)
        yield _Place(wall.letter, wall.letter, None, index, facts, said, here)
        for side in SIDES:
            at_end = {**facts, **end_facts(layout, wall, side)}
            name = _end_name(wall.letter, side)
            yield _Place(name, wall.letter, side, index, at_end, {**said, **end_values(wall, side)}, here)


def _end_name(letter: str, side: Side) -> str:
    return f"{letter}.{side}"


def _scope(place: _Place) -> str:
    return "room" if place.letter is None else "wall" if place.side is None else "end"


def _instances(layout: Layout, book: StepBook) -> Iterator[_Instance]:
    """Yield every step at every place where it applies."""
    for place in _places(layout):
        for position, text in enumerate(book.step):
            if text.scope == _scope(place):
                each = _Instance(text, place, position)
                if each.applies(text.when):
                    yield each


def _needs(layout: Layout, book: StepBook, instance: _Instance, instances: Mapping[str, _Instance]) -> Iterator[str]:
    """Yield the ids of what must be done before an instance, each once."""
    wanted = (name for need in instance.text.needs for name in _wanted(layout, book, instance, need))
    yield from dict.fromkeys(name for name in wanted if name in instances)


def _wanted(layout: Layout, book: StepBook, instance: _Instance, need: Need) -> Iterator[str]:
    """Yield the ids a need asks for, at every place it means, whether they apply or not."""
    place = instance.place
    if need.where == "neighbour":
        for side in SIDES if place.side is None else (place.side,):
            wall = layout.by_letter[place.letter or ""]
            if holds(need.when, {**place.facts, **end_facts(layout, wall, side)}.__getitem__):
                yield from _round_the_corner(layout, book, wall, side, need.step)
        return
    if not instance.applies(need.when):
        return
    for text in book.named(need.step):
        if text.scope == "room":
            yield text.id
        for wall in layout.walls if place.letter is None else (layout.by_letter[place.letter],):
            if text.scope == "wall":
                yield f"{text.id}@{wall.letter}"
            elif text.scope == "end":
                sides = SIDES if place.side is None else (place.side,)
                yield from (f"{text.id}@{_end_name(wall.letter, side)}" for side in sides)


def _round_the_corner(layout: Layout, book: StepBook, wall: WallLayout, side: Side, name: str) -> Iterator[str]:
    """Yield the ids of a step on the wall round one corner: at that corner, for a step of an end."""
    other = end_at(wall, side).neighbour
    if other is None or other not in layout.by_letter:
        return
    for text in book.named(name):
        yield f"{text.id}@{_end_name(other, OPPOSITE[side]) if text.scope == 'end' else other}"


def _sorted(instances: Mapping[str, _Instance], needs: Mapping[str, tuple[str, ...]]) -> list[str]:
    """Return the ids so that each comes after what it needs.

    Among those free to go: the earliest phase, the room before its walls, the wall that was worked on last before another
    one, then walls in the order walked and steps in the order of the data.
    """
    missing = {name: len(before) for name, before in needs.items()}
    after: dict[str, list[str]] = {name: [] for name in instances}
    for name, before in needs.items():
        for each in before:
            after[each].append(name)
    free = [name for name, count in missing.items() if not count]
    done: list[str] = []
    at: str | None = None
    while free:
        name = min(free, key=lambda each: instances[each].rank(at))
        at = instances[name].place.letter
        free.remove(name)
        done.append(name)
        for each in after[name]:
            missing[each] -= 1
            if not missing[each]:
                free.append(each)
    if len(done) < len(instances):
        raise OrderError(f"these steps wait for each other: {' needs '.join(_circle(needs, set(done)))}")
    return done


def _circle(needs: Mapping[str, tuple[str, ...]], done: set[str]) -> list[str]:
    """Return one circle among the steps that could not be done, its first step again at its end."""
    way = [next(name for name in needs if name not in done)]
    while way[-1] not in way[:-1]:
        way.append(next(each for each in needs[way[-1]] if each not in done))
    return way[way.index(way[-1]) :]


def _step(number: int, instance: _Instance, needs: tuple[str, ...], tape: Tape) -> Step:
    text, cautions = instance.text, load_cautions()

    def said(words: str) -> str:
        return retold(words, tape).format_map(instance.place.values)

    alone, two = minutes(text, instance.place.amounts)
    return Step(
        number=number,
        id=instance.id,
        wall=instance.place.letter,
        phase=text.phase,
        title=said(text.title),
        text=tuple(said(line.say) for line in text.text if instance.applies(line.when)),
        why=said(text.why),
        looks=said(text.looks),
        tools=text.tools,
        cautions=tuple(cautions[name] for name in text.cautions),
        waits=said(text.waits),
        needs=needs,
        source=text.source,
        alone=alone,
        two=two,
        tags=text.tags,
        wait=wait_after(text, instance.place.facts),
    )
