"""Questions that the person asks back: what a word means, and why or how, in more words than the short ones."""

from __future__ import annotations

import re
from functools import lru_cache

from guide.book.questions import Question
from guide.book.talk import Wanted, load_talk
from guide.interview.replies import clean
from guide.reference.glossary import look_up


def asked_back(question: Question | None, typed: str) -> tuple[Wanted, str] | None:
    """Return what a person asks instead of answering, and the word it is about; None when it is no such question.

    Without a question only what a word means can be asked. Where free words are asked for, only a word that the glossary has is taken for a question about it.
    """
    talk = load_talk()
    plain = talk.folded(typed).rstrip(" ?")
    for form in _forms():
        if found := form.fullmatch(plain):
            word = re.sub(r"^(?:the|a|an|that|this|your|this word|the word)\s+", "", found["word"].strip(" “”\"'"))
            if question is None or question.kind != "text" or look_up(word):
                return "meaning", clean(word)
    if question is not None and question.kind in ("text", "names"):
        return None
    for wanted, beginnings in talk.begins.items() if question is not None else ():
        if any(plain == begin or plain.startswith(f"{begin} ") for begin in beginnings):
            return wanted, ""
    if typed.rstrip().endswith("?") and look_up(plain):
        return "meaning", clean(plain)
    return None


@lru_cache(maxsize=1)
def _forms() -> tuple[re.Pattern[str], ...]:
    forms = sorted(load_talk().understood.meaning, key=len, reverse=True)
    return tuple(re.compile(re.escape(form).replace(re.escape("{word}"), "(?P<word>.+?)")) for form in forms)
