"""The app opened on a job file as the command line opens it: it starts, draws the question and leaves.

The wall is laid out, drawn and looked over right after the question; that is where this leaves.
"""

import sys
from functools import partialmethod

from guide import cli
from guide.tui.app import Wallbrief
from guide.tui.talk import Talk


def main() -> None:
    """Open, draw, leave."""
    cli._on_a_screen = lambda: True
    Wallbrief.run = partialmethod(Wallbrief.run, headless=True)  # type: ignore[assignment]
    Talk._look = lambda self: self.app.exit()  # type: ignore[method-assign]
    cli.main(["talk", sys.argv[1]])


if __name__ == "__main__":
    main()
