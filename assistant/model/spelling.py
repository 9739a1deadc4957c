"""Near spellings: keys under which a mistyped word is found, and how far two words are apart (layer 2)."""

from __future__ import annotations

import re

_SOUNDS: tuple[tuple[str, str], ...] = (
    ("ph", "f"),
    ("gh", "g"),
    ("ck", "k"),
    ("qu", "k"),
    ("wr", "r"),
    ("kn", "n"),
    ("tch", "ch"),
    ("sch", "sk"),
    ("ce", "se"),
    ("ci", "si"),
    ("cy", "sy"),
    ("x", "ks"),
    ("c", "k"),
    ("z", "s"),
    ("q", "k"),
    ("y", "i"),
    ("w", "u"),
)
_VOWELS = re.compile(r"(?<!^)[aeiou]+")
_TWICE = re.compile(r"(.)\1+")


def sound(word: str) -> str:
    """What is left of a word when spelling is by ear: doubled letters single, vowels after the first letter gone.

    >>> sound("croppie"), sound("crappy"), sound("crapay")
    ('krp', 'krp', 'krp')
    """
    for letters, heard in _SOUNDS:
        word = word.replace(letters, heard)
    return _TWICE.sub(r"\1", _VOWELS.sub("", _TWICE.sub(r"\1", word)))


def near_keys(word: str) -> tuple[str, ...]:
    """The keys of a word: the word, the word less one letter each time, and its sound; sorted, each once."""
    keys = {word, *(word[:i] + word[i + 1 :] for i in range(len(word)))} if len(word) > 3 else {word}
    if len(word) > 3:
        keys.add("~" + sound(word))
    return tuple(sorted(keys))


def distance(a: str, b: str, most: int = 3) -> int:
    """Letters dropped, added, changed or swapped with a neighbour between two words; ``most`` + 1 when more.

    >>> distance("bleugill", "bluegill"), distance("walley", "walleye"), distance("pike", "perch")
    (1, 1, 4)
    """
    from rapidfuzz.distance import OSA

    return OSA.distance(a, b, score_cutoff=most)


def allowed(length: int) -> int:
    """How many slips a word of that many letters may have and still be taken for another."""
    return 0 if length < 4 else 1 if length < 8 else 2
