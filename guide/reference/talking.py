"""How quickly people read, type and make an answer ready: what the estimate of the talk's length is worked out from."""

from __future__ import annotations

from functools import lru_cache

from guide.reference.data import Data, read_data
from guide.reference.figures import Figure


class Talking(Data):
    """`prompts_data/talking.toml`; each figure is so many a minute."""

    in_one_breath: str
    """A plain wall, all that is known of it in one reply."""
    words_read: Figure
    letters_typed: Figure
    answers_readied: Figure

    def seconds(self, words: int, letters: int, answers: int) -> int:
        """Return how long it takes to read so many words, type so many letters and give so many answers; rounded up."""
        each = ((words, self.words_read), (letters, self.letters_typed), (answers, self.answers_readied))
        return sum(-(-60 * count // int(figure.value)) for count, figure in each)


@lru_cache(maxsize=1)
def load_talking() -> Talking:
    """Return the figures. Raises DataError when the data is not right."""
    return read_data("talking.toml", Talking)
