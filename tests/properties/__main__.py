"""Random basements by the thousand: `python -m tests.properties 2000 0` tries so many of each sort, from a seed.

The tests try some hundreds, the same ones every time; this tries as many others as there is patience for. What breaks a
law is printed with the job that breaks it and the exit code is 1.
"""

from __future__ import annotations

import json
import sys
from collections import Counter
from collections.abc import Iterator

from hypothesis import HealthCheck, Phase, Verbosity, given, seed, settings
from hypothesis import strategies as st

from guide.interview.written import Json
from tests.jobs import Tree, layout_of
from tests.properties import laws
from tests.properties.ledge_law import corner_ledges
from tests.properties.rooms import parted_rooms, rooms, single_walls
from tests.properties.test_laws import EVERY
from tests.properties.twins import half_told

HALF_TOLD = (laws.clashes, laws.strays, laws.hanging, laws.in_the_way)
"""What holds of a wall that is drawn beside the talk before all of it is told."""

SORTS: dict[str, st.SearchStrategy[Tree]] = {
    "one wall": single_walls(),
    "a room": rooms(),
    "a room with a partition": parted_rooms(),
    "told in part": half_told(st.one_of(single_walls(), rooms())),
}


def broken(tree: Tree, whole: bool) -> Iterator[tuple[str, str]]:
    """Yield each law that a job breaks, by its name, and the sentence in which it is broken."""
    layout = layout_of(tree)
    for law in EVERY if whole else HALF_TOLD:
        for wall in layout.walls:
            yield from ((law.__name__, said) for said in law(wall, layout.survey.basement))
    for corner in (laws.corner_clashes, corner_ledges) if whole else ():
        yield from ((corner.__name__, said) for said in corner(layout))


def tried(sort: str, count: int, start: int) -> Counter[str]:
    """Try so many jobs of a sort and return how often each law was broken, the first job of each printed."""
    found: Counter[str] = Counter()

    @seed(start)
    @settings(
        max_examples=count,
        phases=[Phase.generate],
        derandomize=False,
        verbosity=Verbosity.quiet,
        suppress_health_check=list(HealthCheck),
    )
    @given(tree=SORTS[sort])
    def each(tree: Tree) -> None:
        found["tried"] += 1
        for law, said in broken(tree, whole=sort != "told in part"):
            if not found[law]:
                shown: Json = tree
                print(f"{law}: {said}\n{json.dumps(shown)}")
            found[law] += 1

    each()
    return found


def main(count: int, start: int) -> int:
    """Try every sort of basement and return 1 where any law was broken."""
    from tests import conftest  # its profile is what a test starts from

    del conftest
    wrong = 0
    for sort in SORTS:
        found = tried(sort, count, start)
        print(f"{sort}: {found.pop('tried')} tried, broken: {dict(found) or 'none'}")
        wrong += sum(found.values())
    return int(wrong > 0)


if __name__ == "__main__":
    sys.exit(main(*(int(each) for each in (sys.argv[1:] or ["2000", "0"]))))
