"""The steps of the work and the cautions they carry, as they stand in data.

This module owns the promise that `prompts_data/steps.toml` hangs together by itself: ids are unique, every need and every
caution is there, every placeholder is one that can be filled where it stands. Which steps apply to a job, and in what
order, is worked out in guide.order.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from string import Formatter
from typing import Literal

from pydantic import Field, model_validator

from guide.book.conditions import Condition
from guide.lengths import Length, inches
from guide.reference.data import Data, DataError, read_data

Scope = Literal["room", "wall", "end"]
"""How often a step comes: once, for each wall, for each end of each wall."""

Phase = Literal["before", "concrete", "walls", "room"]
"""Before anything is built; the concrete and what is above it; wall by wall; once for the room."""

SCOPES: tuple[Scope, ...] = ("room", "wall", "end")
PHASES: tuple[Phase, ...] = ("before", "concrete", "walls", "room")

Scale = Literal[
    "job",
    "length",
    "stud",
    "opening",
    "pipe box",
    "joist block",
    "rim bay",
    "window buck",
    "fireblock",
    "open fireblock",
    "framed door",
]
"""What the minutes of a step are for: the job itself, 16 ft of wall, or each of something on the wall."""

Tag = Literal["loud", "glue", "fumes", "sparks", "pins", "two"]
"""What an evening has to know of a step: it is loud; it is glue, the last thing of an evening; its fumes burn; it throws
sparks; it shoots pins; it lifts what two lift better."""

WaitFor = Literal["test", "rain", "permit", "lumber", "cure", "answer", "inspection"]
"""What has to pass after a step: a test left standing, hard rains, a permit, lumber that gets used to the air, something
that cures, an answer nobody has yet, an inspection."""

PLACEHOLDERS: dict[str, tuple[Scope, str]] = {
    "slab_thickness": ("room", "thickness of the slab"),
    "wall": ("wall", "the wall, such as `wall A`"),
    "back": ("wall", "B: concrete to the back of the studs"),
    "foam_room": ("wall", "what foam and its glue need between concrete and studs"),
    "door_gap": ("wall", "room round a standing door frame that is to be moved"),
    "face": ("wall", "F: concrete to the room face of the studs"),
    "drywall_deep": ("wall", "D: concrete to the face of the drywall"),
    "plate_middle": ("wall", "concrete to the middle of the plate, where its fasteners stand"),
    "plate": ("wall", "length of the plates, end to end"),
    "plate_start": ("wall", "left concrete corner to the left end of the plates"),
    "foam_count": ("wall", "how many pieces of foam"),
    "cap_count": ("wall", "how many strips of cap, laps not counted"),
    "ledge_count": ("wall", "how many strips of ledge, laps not counted"),
    "rim_count": ("wall", "how many pieces of foam for the bays over the concrete"),
    "joist_block_count": ("wall", "how many blocks between joists"),
    "fireblock_marks": ("wall", "marks of all upright fireblocks, such as `AF1, AF2`"),
    "open_blocks": ("wall", "marks of the upright fireblocks that can be reached when all studs stand"),
    "tight_blocks": ("wall", "marks of those in a bay too narrow to reach them when all studs stand"),
    "backing_count": ("wall", "how many blocks behind what will hang"),
    "side": ("end", "`left` or `right`"),
    "other_wall": ("end", "letter of the wall round the corner"),
    "end_stud": ("end", "mark of the stud at that end"),
    "pack_stud": ("end", "mark of the flat stud of the corner pack"),
    "corner_block": ("end", "mark of the fireblock that the corner pack hides"),
}
"""Every name that may stand in braces in a step's words: the narrowest scope that has it, and what it prints."""


class Caution(Data):
    """One warning in the trade's usual words."""

    name: str
    """What it is about, in a word or three: how it is called after it has been said once on a page."""
    text: str
    source: str
    """A rule with its number and how sure we are of it, or “common practice”."""


class Line(Data):
    """One thing to do: a line to tick. In data a plain text is a line that always applies."""

    say: str
    when: Condition | None = None

    @model_validator(mode="before")
    @classmethod
    def _plain(cls, data: object) -> object:
        return {"say": data} if isinstance(data, str) else data


class Need(Data):
    """Something that must be done before. In data a plain text is a need that always applies, at the same place."""

    step: str
    """The id of a step, or the family of several."""
    when: Condition | None = None
    where: Literal["here", "neighbour"] = "here"
    """`neighbour`: on the wall round the corner, at that corner; `when` then sees each end of this wall."""

    @model_validator(mode="before")
    @classmethod
    def _plain(cls, data: object) -> object:
        return {"step": data} if isinstance(data, str) else data


class Time(Data):
    """Minutes of work; how often they are counted says `per`."""

    alone: int = Field(gt=0)
    two: int = Field(gt=0)
    per: Scale = "job"

    @model_validator(mode="after")
    def _two_are_no_slower(self) -> Time:
        if self.two > self.alone:
            raise ValueError(f"two take {self.two} minutes where one takes {self.alone}")
        return self


class Wait(Data):
    """What has to pass after a step before anything that needs it may begin."""

    what: WaitFor = Field(alias="for")
    hours: int | None = Field(default=None, gt=0)
    """None: for an inspection the person's own days; else nobody knows how long."""
    when: Condition | None = None


class StepText(Data):
    """One step as it stands in data."""

    id: str
    """Stable name; what stands before a colon is the family it belongs to."""
    scope: Scope
    phase: Phase
    title: str
    text: tuple[Line, ...]
    """What to do, line by line."""
    why: str
    looks: str
    """Who looks at it."""
    tools: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    """Ids of `prompts_data/cautions.toml`."""
    waits: str = ""
    """What has to pass before the next step may touch it, in words."""
    time: Time
    tags: tuple[Tag, ...] = ()
    wait: tuple[Wait, ...] = ()
    """The same as data; the longest of those that apply counts."""
    needs: tuple[Need, ...] = ()
    when: Condition | None = None
    """When the step applies; always, without one."""
    source: str
    """Where the figures in its words come from."""

    @property
    def family(self) -> str:
        """The name that stands for this step and its siblings: its id up to a colon."""
        return self.id.partition(":")[0]

    @property
    def words(self) -> Iterator[str]:
        """Every text of the step that may hold placeholders."""
        yield from (self.title, self.why, self.looks, self.waits, *(line.say for line in self.text))

    @property
    def placeholders(self) -> frozenset[str]:
        """The names in braces in its words."""
        return frozenset(name for text in self.words for _, name, _, _ in Formatter().parse(text) if name is not None)


class UsualEvenings(Data):
    """The evenings that are planned while nobody has said anything of their own."""

    crew: str
    days: str
    """Days of the week, such as `tue thu`."""
    hours: int
    loud_hours: int
    inspection_days: int
    source: str


class StepBook(Data):
    """`prompts_data/steps.toml`."""

    locked: str
    """Printed in place of a size that rests on something nobody measured."""
    none: str
    """Printed in place of marks where there are none."""
    pin_length: str
    """The pin of the fastener list."""
    hours_from: str
    """Where all times and waits come from."""
    usual_evenings: UsualEvenings
    step: tuple[StepText, ...]

    @property
    def pin(self) -> Length:
        """The length of the pin."""
        return inches(self.pin_length)

    def named(self, name: str) -> tuple[StepText, ...]:
        """Return the step of this id, or every step of this family; none when there is no such step."""
        return tuple(step for step in self.step if name in (step.id, step.family))

    @model_validator(mode="after")
    def _hangs_together(self) -> StepBook:
        ids = [step.id for step in self.step]
        if twice := sorted({name for name in ids if ids.count(name) > 1}):
            raise ValueError(f"step {', '.join(twice)} stands there twice")
        for step in self.step:
            if step.wait and not step.waits:
                raise ValueError(f"step {step.id} has a wait and says nothing of it")
            for need in step.needs:
                found = self.named(need.step)
                if not found:
                    raise ValueError(f"step {step.id} needs {need.step}, which is no step")
                if need.where == "neighbour" and "room" in (step.scope, *(other.scope for other in found)):
                    raise ValueError(f"step {step.id} needs {need.step} of a neighbour, which a room does not have")
            for name in sorted(step.placeholders):
                if name not in PLACEHOLDERS:
                    raise ValueError(f"step {step.id} prints {{{name}}}, which is no placeholder")
                if SCOPES.index(PLACEHOLDERS[name][0]) > SCOPES.index(step.scope):
                    raise ValueError(f"step {step.id} prints {{{name}}}, which a {step.scope} does not have")
        return self


class _Cautions(Data):
    caution: dict[str, Caution]


@lru_cache(maxsize=1)
def load_cautions() -> dict[str, Caution]:
    """Return every caution by its id. Raises DataError when the data is not right."""
    return read_data("cautions.toml", _Cautions).caution


@lru_cache(maxsize=1)
def load_steps() -> StepBook:
    """Return every step in the order of the data. Raises DataError when the data is not right."""
    book = read_data("steps.toml", StepBook)
    named = {name for step in book.step for name in step.cautions}
    if odd := sorted(named.symmetric_difference(load_cautions())):
        raise DataError(f"prompts_data: caution {', '.join(odd)} is named in steps.toml or in cautions.toml only")
    return book
