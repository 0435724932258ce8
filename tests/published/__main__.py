"""Write the table of published values anew: `python -m tests.published`."""

from __future__ import annotations

from tests.published.against import TABLE, table

if __name__ == "__main__":
    TABLE.parent.mkdir(exist_ok=True)
    TABLE.write_text(table(), encoding="utf-8", newline="\n")
    print(f"wrote {TABLE}")
