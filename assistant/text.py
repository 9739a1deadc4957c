"""Plain string work (leaf module: no domain words, imports nothing of ours)."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Sequence
from functools import lru_cache

_SPACES = re.compile(r"\s+")
_NOT_WORD = re.compile(r"[^\w\s]", re.UNICODE)
_TERMINAL = re.compile(r"\x1b\[[0-9;?]*[A-Za-z]")
"""An order to a terminal, such as one for a colour."""


def strip_controls(text: str) -> str:
    """Drop control, format and surrogate characters, and orders to a terminal whole; tabs and line ends become spaces.

    >>> strip_controls("a\\x1b[31mb\\tc")
    'ab c'
    """
    text = _TERMINAL.sub("", text)
    kept = (" " if c in "\t\n\r\v\f" else c for c in text)
    return "".join(c for c in kept if c == " " or unicodedata.category(c)[0] != "C")


def fold(text: str) -> str:
    """Lower case without accents, the form in which words are compared.

    >>> fold("Crapet À oreilles")
    'crapet a oreilles'
    """
    if text.isascii():
        return text.lower()
    decomposed = unicodedata.normalize("NFKD", text)
    return "".join(c for c in decomposed if not unicodedata.combining(c)).casefold()


def key(text: str) -> str:
    """The folded words of a text, single-spaced, hyphens and punctuation as spaces.

    >>> key("Red-ear  Sunfish!")
    'red ear sunfish'
    """
    words = _NOT_WORD.sub(" ", fold(text).replace("'", "").replace("’", "").replace("_", " "))
    return _SPACES.sub(" ", words).strip()


def slug(text: str) -> str:
    """A lower-kebab identifier made from a text.

    >>> slug("Crapet à oreilles (Qc)")
    'crapet-a-oreilles-qc'
    """
    return re.sub(r"[^a-z0-9]+", "-", fold(text)).strip("-")


@lru_cache(maxsize=16_384)
def singular(word: str) -> str:
    """A cheap English singular, good enough to match typed plurals.

    >>> [singular(w) for w in ("crappies", "basses", "fishes", "gobies", "bass", "pikes")]
    ['crappie', 'bass', 'fish', 'goby', 'bass', 'pike']
    """
    if word.endswith(("ss", "us", "is")) or len(word) < 4:
        return word
    if word.endswith("pies") or (word.endswith("lies") and len(word) < 7):
        return word[:-1]
    if word.endswith("ies"):
        return word[:-3] + "y"
    if word.endswith(("sses", "shes", "ches", "xes")):
        return word[:-2]
    return word[:-1] if word.endswith("s") else word


def join(items: Sequence[str], last: str = "and") -> str:
    """A list in words.

    >>> join(["fins"]), join(["fins", "tail"]), join(["fins", "tail", "eye"], "or")
    ('fins', 'fins and tail', 'fins, tail or eye')
    """
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} {last} {items[-1]}"


_SOUNDED = re.compile(r"(?:eu|uni(?!n|m)|use|usu|one\b|once\b|u-)", re.I)
_MUTE = re.compile(r"(?:hour|honest|heir|8|11\b|18\b)", re.I)


def article(word: str) -> str:
    """The indefinite article that goes before a word, by its sound.

    >>> [article(w) for w in ("fatty fin", "adipose fin", "European perch", "hour", "unpaired fin", "one-eyed fish")]
    ['a', 'an', 'a', 'an', 'an', 'a']
    """
    return "an" if _MUTE.match(word) or (word[:1].lower() in "aeiou" and not _SOUNDED.match(word)) else "a"


def lower_first(text: str) -> str:
    """The text with a small first letter, but for one that begins with capitals or a single letter.

    >>> lower_first("Bolder bars"), lower_first("DNA alone")
    ('bolder bars', 'DNA alone')
    """
    return text[:1].lower() + text[1:] if text[1:2].islower() else text


def unique(items: Iterable[str]) -> tuple[str, ...]:
    """The items in their order, each once."""
    return tuple(dict.fromkeys(items))


def without_run(words: Sequence[str], run: Sequence[str]) -> tuple[str, ...]:
    """The words without the first place where a run of them stands.

    >>> without_run(["how", "long", "do", "gar", "live"], ["gar"])
    ('how', 'long', 'do', 'live')
    """
    size = len(run)
    for i in range(len(words) - size + 1) if size else ():
        if list(words[i : i + size]) == list(run):
            return (*words[:i], *words[i + size :])
    return tuple(words)


def word_set(text: str) -> frozenset[str]:
    """The words of a text as a set, for lists of words kept in code.

    >>> sorted(word_set("no not"))
    ['no', 'not']
    """
    return frozenset(text.split())


def sentence(text: str) -> str:
    """The text with a capital first letter and a closing mark."""
    text = text.strip()
    if not text:
        return text
    text = text[0].upper() + text[1:]
    return text if text[-1] in ".?!:" else text + "."
