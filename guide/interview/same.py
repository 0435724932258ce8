"""“Same as wall A, but 6 longer”: an answer copied from another wall, or from another thing on this one, and what it differs by."""

from __future__ import annotations

import re
from dataclasses import replace

from guide.book.talk import load_talk
from guide.interview.answers import Answer, Answers, Spot, Value, path_of, scope_of, split_path, wall_letter
from guide.interview.asking import Asked
from guide.interview.replies import sorry
from guide.lengths import Bare, Length, Unreadable, read_length

_OTHER_THING = re.compile(
    r"(?:the\s+)?(?:(?P<which>\w+)\s+one|(?:(?P<ordinal>\w+)\s+)?(?P<kind>[a-z]+)\s*(?P<number>\d*))"
)


def same_as(answers: Answers, asked: Asked, typed: str, bare: Bare) -> Answer | None:
    """Return the answer that a reply copies from elsewhere, in doubt if that is; None when it copies nothing.

    Raises Sorry with one sentence when there is nothing to copy. Free words that only begin like that stay words.
    """
    other = _named(typed)
    if other is None:
        return None
    name, by = _difference(other, bare)
    letter = _wall_called(answers, name)
    if letter is None and asked.question.kind == "text" and len(name) > 2:
        return None
    path = _thing_called(answers, asked, name) if "." in asked.place else None
    if path is None and scope_of(asked.place) != "wall":
        raise sorry("same_only_walls")
    answer = answers.get(path or path_of(letter or name, asked.question.id))
    if letter == asked.place or path == asked.path or answer is None or answer.value is None:
        raise sorry("same_as_nothing", typed=letter or name, short=asked.question.short)
    if by is None:
        return replace(answer, typed=typed)
    changed = _by(answer.value, by)
    if changed is None:
        raise sorry("same_but_no_size", short=asked.question.short)
    return replace(answer, typed=typed, value=changed)


def _named(typed: str) -> str | None:
    """Return what stands after “same as”, or None when the reply does not begin so."""
    talk = load_talk()
    plain = talk.folded(typed)
    for start in sorted(talk.same_as, key=len, reverse=True):
        if plain.startswith(f"{start} "):
            return plain.removeprefix(start).strip()
    return None


def _difference(other: str, bare: Bare) -> tuple[str, Length | None]:
    """Part “wall a, but 6 longer” or “a minus 1/4” in the name and the difference; a difference that is none stays in the name."""
    talk = load_talk()
    more, less = ("|".join(map(re.escape, words)) for words in (talk.understood.more, talk.understood.less))
    if found := re.fullmatch(rf"(?P<rest>.+?)\s+(?:(?P<more>{more})|{less})", other):
        words = found["rest"].split()
        tries = [(" ".join(words[:at]), " ".join(words[at:])) for at in range(1, len(words))]
    elif found := re.fullmatch(
        r"(?P<name>.+?)\s*(?:(?P<more>\bplus\b|\+)|\bminus\b|\bless\b|-(?=\s))\s*(?P<size>.+)", other
    ):
        tries = [(found["name"], found["size"])]
    else:
        return other, None
    for name, text in tries:
        try:
            size = read_length(text, bare=bare).length
        except Unreadable:
            continue
        return re.sub(r",?\s+(?:but|and)$", "", name).strip(" ,"), size if found["more"] else -size
    return other, None


def _by(value: Value, by: Length) -> Value:
    if isinstance(value, Length):
        return value + by
    if isinstance(value, tuple) and value and all(isinstance(spot, Spot) for spot in value):
        return tuple(replace(spot, size=spot.size + by) for spot in value if isinstance(spot, Spot))
    return None


def _thing_called(answers: Answers, asked: Asked, name: str) -> str | None:
    """Return the path of the same question at another thing of the same kind on the same wall: “the first one”, “window 2”."""
    wall, _, item = asked.place.partition(".")
    scope = scope_of(asked.place)
    here = int(item.removeprefix(scope))
    found = _OTHER_THING.fullmatch(name)
    if found is None:
        return None
    words = load_talk().ordinals
    which = found["which"] or found["ordinal"]
    if found["number"]:
        number = int(found["number"])
    elif which in ("last", "previous"):
        number = here - 1
    elif which == "other" and here < 3 and not any(path.startswith(f"{wall}.{scope}3.") for path in answers):
        number = 3 - here
    elif which in words:
        number = words[which]
    else:
        return None
    return path_of(f"{wall}.{scope}{number}", split_path(asked.path)[1])


def _wall_called(answers: Answers, other: str) -> str | None:
    """Return the letter of the wall that is called so, by its letter or by its name."""
    walls = answers.get("basement.walls")
    names = walls.value if walls is not None and isinstance(walls.value, tuple) else ()
    plain = re.sub(r"^(?:the|wall)\s+|\s+wall$", "", other)
    for index, name in enumerate(names):
        if plain == wall_letter(index).lower() or str(name).lower() in (plain, other):
            return wall_letter(index)
    return None
