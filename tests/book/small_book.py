"""A small sound question book, invented for the tests, and the way to break it in one place."""

from __future__ import annotations

from guide.book.questions import Book, book_from

SOUND = {
    "1.toml": """
scope = "basement"

[[question]]
id = "use"
short = "use"
kind = "choice"
ask = "What for?"
why = "It decides."
how = "Think."
choices = [{ id = "living", say = "living" }, { id = "storage", say = "storage only" }]
usual = "living"
unknown = { take = "living", say = "I take living." }

[[question]]
id = "shelves"
short = "shelves"
kind = "count"
counted = ["shelf", "shelves"]
when = { of = "basement.use", is = "storage" }
ask = "How many shelves?"
why = "They hang."
how = "Count."
least = "0"
most = "9"
unknown = { take = "0", say = "I take none." }

[[question]]
id = "walls"
short = "walls"
kind = "names"
opens = "wall"
ask = "How many walls?"
why = "Each gets a letter."
how = "Count."
unknown = { take = "1", say = "I take one." }
""",
    "2.toml": """
scope = "wall"

[[question]]
id = "length"
short = "length"
kind = "length"
ask = "How long is {wall}?"
why = "Plates."
how = "Tape."
usual = "144"
least = "24"
most = "100 ft"
doubts = [{ above = "40 ft", say = "{wall} is long. Is it right?" }]
unknown = { say = "Nothing is drawn." }

[[question]]
id = "left"
short = "left end"
kind = "choice"
when = { of = "wall.left_joined", is = "no" }
ask = "What is at the left?"
why = "Plates."
how = "Look."
choices = [{ id = "corner", say = "a corner" }, { id = "open", say = "open end" }]
unknown = { say = "I leave it open." }

[[question]]
id = "height"
short = "height"
kind = "readings"
places = ["left", "right"]
along = true
fewest = 2
when = { any = [{ of = "basement.shelves", at_least = 2 }, { of = "wall.length", known = true }] }
hangs_on = ["wall.length"]
ask = "How high?"
why = "Studs."
how = "Tape."
usual = "92 at left, 92 at right"
least = "60"
most = "120"
unknown = { say = "Nothing is drawn." }

[[question]]
id = "openings"
short = "openings"
kind = "count"
opens = "opening"
ask = "How many openings?"
why = "Framing."
how = "Count."
most = "9"
unknown = { take = "0", say = "I draw none." }

[[question]]
id = "pipes"
short = "pipes"
kind = "count"
opens = "pipe"
ask = "How many pipes?"
why = "Framing."
how = "Count."
most = "9"
unknown = { take = "0", say = "I draw none." }

[[question]]
id = "boxes"
short = "boxes"
kind = "count"
opens = "box"
ask = "How many boxes?"
why = "Framing."
how = "Count."
most = "9"
unknown = { take = "0", say = "I draw none." }

[[question]]
id = "fixtures"
short = "fixtures"
kind = "count"
opens = "fixture"
ask = "How many fixtures?"
why = "Backing."
how = "Count."
most = "9"
unknown = { take = "0", say = "I draw none." }
""",
    "3.toml": """
scope = "opening"

[[question]]
id = "width"
short = "width"
kind = "length"
when = { of = "wall.left", one_of = ["corner", "open"] }
ask = "How wide is {thing} of {wall}?"
why = "Framing."
how = "Tape."
least = "8"
most = "200"
unknown = { say = "Nothing is drawn." }
""",
}

READ = {
    "basement.use", "basement.shelves", "basement.walls", "wall.length", "wall.left", "wall.height", "opening.width",
}  # fmt: skip


def small_book(old: str = "", new: str = "") -> Book:
    """Return the sound book, with one text in it replaced by another; the text has to be there once."""
    whole = "\0".join(SOUND.values())
    assert not old or whole.count(old) == 1, f"{old!r} stands {whole.count(old)} times in the small book"
    texts = (whole.replace(old, new) if old else whole).split("\0")
    return book_from(dict(zip(SOUND, texts, strict=True)))
