"""Typed text cut into words and clauses (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from typing import NamedTuple

from assistant.text import fold, strip_controls

MOST = 1800
"""Characters of a line that are read; the rest is left."""
_WORD = re.compile(r"[^\W_]+(?:['’][^\W_]+)*", re.UNICODE)
_BREAK = re.compile(
    r"[,;:!?\n()\[\]]|\.(?=\s|$)|\s[-–—]+\s|--|[–—]|/|"
    r"\s(?=(?:and|n|&)\s(?:there['’]?s|there (?:is|are|was|were)|it (?:has|had|got|is|was)|it['’]?s|"
    r"he (?:has|had|got))\s)", re.IGNORECASE)
"""What parts clauses: punctuation, and an "and" that begins a statement of its own ("and there is a red ear")."""
_WITH = re.compile(r"\bw/(o\b)?", re.IGNORECASE)
_FIN_LETTER = re.compile(
    r"\b(?:(?P<anal>A)(?= (?:spines|rays|soft rays)\b)|(?P<dorsal>D)(?= (?:spines|rays|soft rays|base)\b))"
)
"""The letter of a fin as counts are written ("11 D spines, 7 A spines")."""
_ELIDED = re.compile(r"^[dlDL]['’](?=\w{4})")
"""A French article or preposition run into its noun ("d'arlequin", "l'achigan")."""
_SPACES = re.compile(r"[ \u00a0]+")


class Token(NamedTuple):
    """A word: folded, as typed, where it stands, and the numbers of its clause and sentence."""

    word: str
    typed: str
    start: int
    end: int
    clause: int
    sentence: int


_WAIT = re.compile(r"^(\W*(?:(?:oh|ah|oops|crap|dang) )?(?:(?:wait|hold on|hang on) no|no wait)) (?=\w)", re.IGNORECASE)
"""A change of mind before what is put right: the "no" in it denies nothing that follows."""


def clean(text: str) -> str:
    """The line without control characters, single-spaced, cut to ``MOST`` characters; line ends part clauses."""
    kept = re.sub(r"\s*[\r\n]+\s*", " ; ", text[:MOST].strip("\r\n"))
    kept = _WITH.sub(lambda m: "without " if m.group(1) else "with ", kept)
    kept = _WAIT.sub(r"\1, ", kept)
    return _SPACES.sub(" ", strip_controls(kept)).strip()


def tokenize(text: str) -> tuple[Token, ...]:
    """The words of a cleaned line, clauses numbered by punctuation."""
    breaks = [(m.start(), m.group().strip()) for m in _BREAK.finditer(text)]
    fins = {m.start(): m.lastgroup or "" for m in _FIN_LETTER.finditer(text)}
    out: list[Token] = []
    clause = sentence = at = 0
    for match in _WORD.finditer(text):
        while at < len(breaks) and breaks[at][0] < match.start():
            clause += 1
            sentence += breaks[at][1] in (".", "!", "?", ";")
            at += 1
        word = fins.get(match.start()) or fold(_ELIDED.sub("", match.group())).replace("'", "").replace("’", "")
        clause += word == "but"
        out.append(Token(word, match.group(), match.start(), match.end(), clause, sentence))
    return tuple(out)


def words_of(tokens: Sequence[Token]) -> tuple[str, ...]:
    """The folded words of some tokens."""
    return tuple(t.word for t in tokens)


def gibberish(tokens: Sequence[Token], known: Callable[[str], bool]) -> bool:
    """True when no token is known or looks like a word or a number: no vowels, one letter over and over, nothing."""
    return not any(_wordlike(t.word) or known(t.word) for t in tokens)


_MASHED = re.compile(r"[;/\\#@$%^&*=|~]{3,}")
"""Signs in a row that nobody types on purpose."""


def mashed(line: str, tokens: Sequence[Token], known: Callable[[str], bool]) -> bool:
    """True for signs in a row with a word or two that are none (";;;///asd")."""
    return _MASHED.search(line) is not None and len(tokens) < 3 and not any(known(t.word) for t in tokens)


def _wordlike(word: str) -> bool:
    if word.isdigit():
        return True
    return len(word) > 1 and any(c in "aeiouy" for c in word) and len(set(word)) > 1
