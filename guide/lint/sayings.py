"""The proof of what is said: every sentence that code names is in the data with its values, and none is there in vain."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator, Mapping, Set

from guide.lint.sources import built_texts, placeholders, texts_in


def lint_sayings(sayings: Mapping[str, str], sources: Mapping[str, str]) -> list[str]:
    """Return the keys that code says and the data lacks, those that nothing says, and values that a sentence lacks."""
    trees = {path: ast.parse(source) for path, source in sources.items()}
    groups = "|".join(sorted({re.escape(key.partition(".")[0]) for key in sayings}))
    words = {text for tree in trees.values() for text in texts_in(tree)}
    used = {text for text in words if text in sayings}
    found: list[str] = []
    for path, tree in trees.items():
        for text in sorted(texts_in(tree) - set(sayings)):
            if re.fullmatch(rf"(?:{groups})\.[a-z0-9_]+", text):
                found.append(f"{path}: it says {text}, which is not in sayings.toml.")
        for pattern in sorted(each for each in built_texts(tree) if re.match(rf"(?:{groups})\\\.", each)):
            keys = {key for key in sayings if re.fullmatch(pattern, key)}
            if not keys:
                found.append(f"{path}: it says a key like {_readable(pattern)}, and none is in sayings.toml.")
            whole_group = pattern.endswith(r"\.(.+)")  # then only what the code has a word for can be meant
            used |= {key for key in keys if not whole_group or _has_word(key, words)}
        found += _values_missing(path, tree, sayings)
    return found + [f"sayings.toml: nothing ever says {key}." for key in sorted(set(sayings) - used)]


def lint_talk(say: Mapping[str, str], sources: Mapping[str, str]) -> list[str]:
    """Return the sentences of the talk that nothing says, and those that are said and not there."""
    trees = {path: ast.parse(source) for path, source in sources.items()}
    words = {text for tree in trees.values() for text in texts_in(tree)}
    missing = [
        f"{path}: it says {key}, which is not in talk.toml."
        for path, tree in trees.items()
        for node in ast.walk(tree)
        if (key := _said_by_the_talk(node)) is not None and key not in say
    ]
    return missing + [f"talk.toml: nothing ever says {key}." for key in sorted(set(say) - words)]


def _said_by_the_talk(node: ast.AST) -> str | None:
    """Return the key of `sorry("key", …)`, `say_of_talk("key", …)` or `….say["key"]`, where it is written out."""
    key: ast.expr | None = None
    if isinstance(node, ast.Call) and node.args:
        name = node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")
        key = node.args[0] if name in ("sorry", "say_of_talk") else None
    elif isinstance(node, ast.Subscript) and isinstance(node.value, ast.Attribute) and node.value.attr == "say":
        key = node.slice
    text = key.value if isinstance(key, ast.Constant) else None
    return text if isinstance(text, str) and re.fullmatch(r"[a-z_]+", text) else None


def _readable(pattern: str) -> str:
    return pattern.replace("(.+)", "…").replace("\\", "")


def _has_word(key: str, words: Set[str]) -> bool:
    tail = key.partition(".")[2]
    return tail in words or tail.replace("_", " ") in words


def _values_missing(path: str, tree: ast.AST, sayings: Mapping[str, str]) -> Iterator[str]:
    """Find `saying("key", a=…)` calls that do not give every value their sentence prints."""
    for node in ast.walk(tree):
        if not (
            isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "saying" and node.args
        ):
            continue
        key = node.args[0].value if isinstance(node.args[0], ast.Constant) else None
        given = {keyword.arg for keyword in node.keywords}
        if isinstance(key, str) and None not in given:
            for name in sorted(placeholders(sayings.get(key, "")) - {each for each in given if each}):
                yield f"{path}: it says {key} without the value {{{name}}}."
