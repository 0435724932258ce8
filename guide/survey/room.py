"""Cross checks on answers: what cannot all be true, said in one sentence that names the readings."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations, pairwise

from guide.interview.asking import CORNERS
from guide.lengths import ZERO, Bare, Length, inches
from guide.reference.figures import load_figures
from guide.reference.sayings import Saying, SayingValue, saying
from guide.reference.stock import load_stock
from guide.survey.closing import corner_left, corner_right, impossible_diagonals
from guide.survey.joists import read_joists
from guide.survey.model import Problem, Survey, Wall
from guide.survey.on_hand import read_on_hand
from guide.survey.things import Opening, OutletBox
from guide.survey.traverse import degrees_of
from guide.survey.yard import read_yard

TURNS_OF_A_RING = 4
"""A walk round a room turns to the right by four right angles more than to the left."""

_Thing = tuple[str, Length, Length]
"""Something on a wall: its place, its left and its right edge."""


def problems_of(survey: Survey) -> tuple[Problem, ...]:
    """Return every contradiction in the answers, wall by wall in the order walked.

    What is drawn with a usual value because nobody was asked yet contradicts nothing.
    """
    return tuple(_at_home(survey)) + tuple(
        problem
        for wall in survey.walls
        for check in _CHECKS
        for problem in check(survey, wall)
        if survey.given(_rests(problem))
    )


def _at_home(survey: Survey) -> Iterator[Problem]:
    """Yield what on the lists of things at home and of the yard's lengths names nothing; no wall is the worse for it."""
    for unread in read_on_hand(survey.basement.on_hand or "")[1]:
        yield Problem("", ("basement.on_hand",), saying("problem.on_hand", said=unread))
    for unread in read_yard(survey.basement.yard_lengths or "")[1]:
        sizes = ", ".join(load_stock().item["stud_2x4"].sizes)
        yield Problem("", ("basement.yard_lengths",), saying("problem.yard_lengths", said=unread, sizes=sizes))


def _rests(problem: Problem) -> frozenset[str]:
    return frozenset[str]().union(*(value.rests for _, value in problem.saying.values if isinstance(value, Length)))


def thing_name(place: str) -> str:
    """Return a thing's name in words: `opening 2`."""
    item = place.partition(".")[2]
    kind = item.rstrip("0123456789")
    return f"{'electrical box' if kind == 'box' else kind} {item.removeprefix(kind)}"


def _problem(wall: Wall, paths: tuple[str, ...], said: Saying) -> Problem:
    return Problem(wall.letter, paths, said)


def _things(wall: Wall) -> Iterator[tuple[_Thing, str]]:
    """Yield everything that takes up length on the wall, with the question that places it."""
    for opening in (*wall.openings, *wall.partitions):
        yield (opening.place, opening.left, opening.right), "left"
    for pipe in wall.pipes:
        edges = (pipe.left_edge, pipe.right_edge)
        if pipe.at is not None and pipe.at > wall.length:  # whatever its width
            edges = (pipe.at, pipe.at)
        yield (pipe.place, *edges), "at" if pipe.run == "standing" else "to"
    for box in wall.boxes:
        yield (box.place, box.at, box.at), "at"
    for fixture in wall.fixtures:
        yield (fixture.place, fixture.start, fixture.end), "to"


def _outside(survey: Survey, wall: Wall) -> Iterator[Problem]:
    for (place, left, right), question in _things(wall):
        if left > wall.length:  # whatever its width
            right = left
        if left < ZERO or right > wall.length:
            named: dict[str, SayingValue] = {"what": thing_name(place), "wall": wall.letter, "length": wall.length}
            yield _problem(
                wall,
                (f"{place}.{question}", f"{wall.letter}.length"),
                saying("problem.stands_outside", at=left, **named)
                if left == right
                else saying("problem.outside", left=left, right=right, **named),
            )
    for pipe in wall.pipes:
        if pipe.start is not None and pipe.end is not None and pipe.start >= pipe.end:
            yield _problem(
                wall,
                (f"{pipe.place}.to", f"{pipe.place}.from"),
                saying("problem.backwards", what=thing_name(pipe.place), wall=wall.letter, start=pipe.start, end=pipe.end),
            )  # fmt: skip
    for fixture in wall.fixtures:
        if fixture.start >= fixture.end:
            yield _problem(
                wall,
                (f"{fixture.place}.to", f"{fixture.place}.from"),
                saying("problem.backwards", what=thing_name(fixture.place), wall=wall.letter,
                       start=fixture.start, end=fixture.end),
            )  # fmt: skip
        if fixture.high is not None and fixture.high < fixture.low:
            yield _problem(
                wall,
                (f"{fixture.place}.high", f"{fixture.place}.low"),
                saying("problem.upside_down", what=thing_name(fixture.place), wall=wall.letter,
                       low=fixture.low, high=fixture.high),
            )  # fmt: skip


def _overlapping(survey: Survey, wall: Wall) -> Iterator[Problem]:
    solid: list[tuple[_Thing, str]] = [((o.place, o.left, o.right), "left") for o in (*wall.openings, *wall.partitions)]
    solid += [((p.place, p.left_edge, p.right_edge), "at") for p in wall.pipes if p.run == "standing"]
    for ((first, a0, a1), _), ((second, b0, b1), question) in combinations(solid, 2):
        if a0 < b1 and b0 < a1:
            yield _problem(
                wall,
                (f"{second}.{question}", f"{first}.left" if "opening" in first else f"{first}.at"),
                saying("problem.overlap", one=thing_name(first), other=thing_name(second), wall=wall.letter,
                       a0=a0, a1=a1, b0=b0, b1=b1),
            )  # fmt: skip
    for box in wall.boxes:
        for opening in wall.openings:
            if opening.left <= box.at <= opening.right and _beside(opening, box):
                yield _problem(
                    wall,
                    (f"{box.place}.at", f"{opening.place}.left"),
                    saying("problem.box_in_opening", box=thing_name(box.place), opening=thing_name(opening.place),
                           wall=wall.letter, at=box.at, left=opening.left, right=opening.right),
                )  # fmt: skip


def _beside(opening: Opening, box: OutletBox) -> bool:
    """Whether a box at this height would be in the hole: under a window's sill, or a beam, it is not."""
    if opening.hangs:
        return False
    if opening.sill is None or opening.tall is None:
        return True
    return opening.sill <= box.height <= opening.sill + opening.tall


def _heights(survey: Survey, wall: Wall) -> Iterator[Problem]:
    places = {x for x, _ in (*wall.height.points, *wall.concrete.points)}
    for x in sorted(places):
        joists, concrete = wall.height.at(x), wall.concrete.at(x)
        if concrete > joists:
            yield _problem(
                wall,
                (wall.ref("concrete"), wall.ref("height")),
                saying("problem.concrete_over_joists", wall=wall.letter, x=x, concrete=concrete, joists=joists),
            )
            return


def _places(survey: Survey, wall: Wall) -> Iterator[Problem]:
    metal = (("metal_off", wall.metal_off), ("metal_stays", wall.metal_stays))
    for question, profile in (("height", wall.height), ("concrete", wall.concrete), ("string", wall.string), *metal):
        if profile is None:
            continue
        at = [x for x, _ in profile.points]
        if beyond := [x for x in at if x > wall.length]:
            yield _problem(
                wall,
                (wall.ref(question), wall.ref("length")),
                saying("problem.reading_outside", wall=wall.letter, x=beyond[0], length=wall.length),
            )
        elif len(set(at)) < len(at):
            yield _problem(wall, (wall.ref(question),), saying("problem.reading_twice", wall=wall.letter))


def _joists(survey: Survey, wall: Wall) -> Iterator[Problem]:
    """Joists that were read one by one: each has to be one, after the one before it, and over the wall."""
    ref, joists = wall.ref("joist_edges"), wall.joists_read
    bare: Bare = "mm" if survey.basement.tape == "millimetres" else "in"
    for unread in read_joists(wall.joist_edges or "", bare, ref)[1]:
        example = [inches(each) for each in ("14 1/2", "30", "190")]
        yield _problem(
            wall,
            (ref,),
            saying("problem.joist_unread", wall=wall.letter, said=unread, first=example[0], second=example[1], last=example[2]),
        )  # fmt: skip
    for one, other in pairwise(joists):
        if other.edge < one.edge + load_figures().joist_thick * one.plies:
            said = saying("problem.joist_order", wall=wall.letter, one=one.edge, other=other.edge)
            yield _problem(wall, (ref,), said)
    if joists and joists[-1].edge > wall.length:
        said = saying("problem.reading_outside", wall=wall.letter, x=joists[-1].edge, length=wall.length)
        yield _problem(wall, (ref, wall.ref("length")), said)


def _doors(survey: Survey, wall: Wall) -> Iterator[Problem]:
    """A hole too small for its liner, or one that reaches above the joists, cannot be framed."""
    figures = load_figures()
    lining = (figures.window_buck + figures.window_return_foam) * 2
    for opening in wall.openings:
        joists = wall.height.at((opening.left + opening.right) // 2)
        top = opening.frame_height or opening.leaf_height or (opening.sill or ZERO) + (opening.tall or ZERO)
        question = "frame_height" if opening.frame_height else "leaf_height" if opening.leaf_height else "sill"
        if top > joists:
            yield _problem(
                wall,
                (f"{opening.place}.{question}", wall.ref("height")),
                saying("problem.opening_over_joists", what=thing_name(opening.place), wall=wall.letter, top=top, joists=joists),
            )  # fmt: skip
        for size, question in ((opening.width, "width"), (opening.tall, "tall")):
            if size is not None and size <= lining:
                yield _problem(
                    wall,
                    (f"{opening.place}.{question}",),
                    saying("problem.hole_too_small", what=thing_name(opening.place), wall=wall.letter, size=size, lining=lining),
                )  # fmt: skip


def _runs(survey: Survey, wall: Wall) -> Iterator[Problem]:
    """Four more inside corners than outside ones close a room: a ring needs just so many, a run that is open fewer.

    A corner that was measured counts by its angle, and the sum to the nearest right angle. A ring is judged at its first
    letter, an open run at its left end.
    """
    run = _run_from(survey, wall)
    closes = run[-1].right_joined == wall.letter
    if (closes and wall is not survey.round_room[0]) or (not closes and wall.left_joined in survey.by_letter):
        return
    turned, net = Fraction(0), 0
    for number, each in enumerate(run, 1):
        if each.right_joined:
            turned += degrees_of(corner_right(survey, each, survey.by_letter.get(each.right_joined, each)).turn)
            net = round(turned / 90)
        if net >= TURNS_OF_A_RING and each.right_joined and not closes:
            said = saying("problem.too_many_corners", first=wall.letter, last=each.right_joined, count=number + 1)
            yield _problem(wall, (f"{each.letter}.right",), said)
            return
    if closes and net != TURNS_OF_A_RING:
        said = saying("problem.turns", first=wall.letter, last=run[-1].letter, net=net)
        yield _problem(wall, ("basement.ring", *(f"{each.letter}.right" for each in run[:-1])), said)


def _diagonals(survey: Survey, wall: Wall) -> Iterator[Problem]:
    """A diagonal is shorter than the two walls it spans together, and longer than one less the other."""
    for question, one, other, diagonal in impossible_diagonals(survey):
        if wall is one:
            yield _problem(
                wall,
                (question, one.ref("length"), other.ref("length")),
                saying("problem.diagonal", one=one.letter, other=other.letter, one_length=one.length,
                       other_length=other.length, least=abs(one.length - other.length),
                       most=one.length + other.length, given=diagonal),
            )  # fmt: skip


def _angles(survey: Survey, wall: Wall) -> Iterator[Problem]:
    """A corner too sharp or too flat for two walls of studs."""
    corners = [corner_left(survey, wall)] if wall.left_end in CORNERS else []
    if wall.right_end in CORNERS:
        corners.append(corner_right(survey, wall, survey.by_letter.get(wall.right_joined or "", wall)))
    for corner in corners:
        if corner.joint == "none":
            said = saying("problem.angle", wall=corner.wall.letter, degrees=round(corner.degrees))
            yield _problem(wall, tuple(sorted(corner.rests)), said)


def _floor(survey: Survey, wall: Wall) -> Iterator[Problem]:
    """The joists of one floor lie one way: at a corner out of square they run alongside one of its two walls at most."""
    other = survey.by_letter.get(wall.right_joined or "")
    if other is None or not wall.joists == other.joists == "alongside":
        return
    corner = corner_right(survey, wall, other)
    if corner.joint != "square":
        said = saying("problem.joists_both", one=wall.letter, other=other.letter, degrees=round(corner.degrees))
        yield _problem(wall, (wall.ref("joists"), other.ref("joists")), said)


def _boxes(survey: Survey, wall: Wall) -> Iterator[Problem]:
    """Two boxes round pipes along walls that meet at an inside corner cannot both run into it."""
    other = survey.by_letter.get(wall.right_joined or "")
    if other is None or wall.right_end != "inside corner":
        return
    near = load_figures().chase_corner
    for one in (pipe for pipe in wall.pipes if pipe.run == "lying" and pipe.along == "box"):
        for two in (pipe for pipe in other.pipes if pipe.run == "lying" and pipe.along == "box"):
            if wall.length - one.right_edge < two.out + near and two.left_edge < one.out + near:
                names = thing_name(one.place), thing_name(two.place)
                said = saying("problem.boxes_meet", one=names[0], wall=wall.letter, two=names[1], other=other.letter)
                yield _problem(wall, (f"{one.place}.along", f"{two.place}.along"), said)


def _meetings(survey: Survey, wall: Wall) -> Iterator[Problem]:
    """A partition meets walls of this job, and what is in it needs no concrete."""
    for side in ("left", "right"):
        letter = wall.met(side)
        if letter is not None and (letter == wall.letter or letter not in survey.by_letter):
            said = saying("problem.meets_no_wall", wall=wall.letter, side=side, told=letter)
            yield _problem(wall, (wall.ref(f"{side}_wall"),), said)
    for opening in wall.openings if wall.is_partition else ():
        if opening.kind not in ("new door", "kept free"):
            said = saying("problem.in_partition", what=thing_name(opening.place), wall=wall.letter, kind=opening.kind)
            yield _problem(wall, (f"{opening.place}.kind",), said)


def _run_from(survey: Survey, wall: Wall) -> list[Wall]:
    """Return a wall and those joined to it one after the other on its right, once round at most."""
    run = [wall]
    while (right := survey.by_letter.get(run[-1].right_joined or "")) and right.letter != wall.letter:
        run.append(right)
    return run


_CHECKS = (
    _outside, _overlapping, _heights, _places, _joists, _doors, _runs, _diagonals, _angles, _floor, _boxes, _meetings,
)  # fmt: skip
"""In the order in which their contradictions are told."""
