"""Words to stems, the same way for phrases of the base and for typed text (layer 2).

Word families of the base (scarlet is red, a dot is a spot) are folded into their heads, number words become digits,
plurals and simple endings fall away, and words that carry no meaning of their own are dropped.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from typing import NamedTuple

from assistant.text import key, singular, word_set

HeadOf = Callable[[str], str | None]
"""The head of the word family that a folded word or phrase belongs to, None when it belongs to none."""

DROPPED = word_set(
    "a an the or nor of its it is are was were be been has have had with and his her my that this these those "
    "there theres in on at for by as so also just really very pretty quite kind sort em them they he she "
    "i we you your our some any all which what who then too got im ive thats whats bit about like looking "
    "lookin look looks do does did"
)
"""Words without a meaning of their own in a description; left out on both sides of a comparison."""
NEGATORS = word_set(
    "no not without none never nothing lacks lack lacking lacked missing absent zero nor neither isnt "
    "arent wasnt werent doesnt dont didnt hasnt havent hadnt aint cant wont minus non nada nope cannot "
    "couldnt w/o nary"
)
"""Words that deny what stands in their scope."""
ORDERED = word_set("on than over above below under to from behind before past then with into between through")
"""Words that make the order of a phrase matter ("dark on light" is not "light on dark")."""
NUMBERS: dict[str, str] = {
    word: str(n)
    for n, word in enumerate(
        [
            "zero",
            "one",
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
            "thirteen",
            "fourteen",
            "fifteen",
            "sixteen",
            "seventeen",
            "eighteen",
            "nineteen",
            "twenty",
        ]
    )
} | {"thirty": "30", "forty": "40", "fifty": "50", "sixty": "60", "seventy": "70",
     "eighty": "80", "ninety": "90"}
"""Number words to digits."""
SHORT_FORMS: dict[str, str] = {
    short: full
    for full, shorts in {
        "about": "bout abt abut", "and": "nd n", "could": "cud", "difference": "diff", "large": "larg",
        "little": "lil", "nothing": "nothin", "people": "ppl", "please": "pls plz", "something": "somethin",
        "thanks": "thx thnx", "them": "em", "you": "u", "your": "ur yr yer",
    }.items()
    for short in shorts.split()
}
"""Plain words as they are typed in haste, with their usual spelling."""
MISTYPED: dict[str, str] = {
    typed: full
    for full, ways in {
        "adipose": "addipose adapose adipos", "back": "bak", "because": "becuz bcuz", "bedding": "beddin",
        "before": "b4", "difference": "diffrence", "different": "diffrent", "does": "duz",
        "dorsal": "dorsel dorsle dorsil", "every": "evry evrey", "forget": "ferget fergit", "forked": "foked forkd",
        "from": "frm", "gill cover": "gillcover", "good": "gud", "grooved": "groved", "have": "hv hav", "how": "hw",
        "joined": "joind", "lateral": "latral lateril", "length": "lenght", "night": "nite", "notch": "noch",
        "paddle": "padle", "pectoral": "pecteral pectorial", "scales": "scalse scails", "should": "shud",
        "snaky": "snakey", "striped": "stripey stripy", "sucker": "suker", "teardrop": "teardrp", "the": "teh",
        "their": "thier", "though": "tho", "thread": "thred", "through": "thru",
        "tomorrow": "2moro 2morrow 2mrw tmrw tomoro tomorow tommorow tommorrow", "tongue": "tounge tung toung",
        "tonight": "tonite 2nite", "underneath": "undernieth underneeth undernath underneth", "water": "wtr",
        "weight": "wieght", "what": "wut wat whut", "whats": "wuts wats", "when": "wen", "where": "wher",
        "which": "wich whch", "whisker": "wisker", "whiskers": "wiskers whiskars", "would": "wud", "wouldnt": "wudnt",
    }.items()
    for typed in ways.split()
}
"""Ways of typing a plain word that are no other word, of which a line is freed before it is read."""
_MISTYPED = re.compile(rf"(?<![^\W_])(?:{'|'.join(sorted(MISTYPED, key=len, reverse=True))})(?![^\W_])", re.IGNORECASE)
NOT_COMPARED = word_set("lower upper over under inner outer other silver copper water never after finger rather")
"""Words in -er that compare nothing."""
KEPT = word_set("bare")
"""Words whose stem would be another word ("bar")."""
LONGEST = 3
"""Words in the longest family phrase that is folded."""


class Stem(NamedTuple):
    """A stem with the positions of the words it was made from (``first`` to ``last``, both included)."""

    text: str
    first: int
    last: int
    plural: bool = False


class Pattern(NamedTuple):
    """A phrase as stems: which must occur, whether in order, and whether the phrase denies."""

    stems: tuple[str, ...]
    plurals: tuple[bool, ...]
    ordered: bool
    denies: bool


COMPARED = {">=": "at least", "=>": "at least", ">": "more than", "<=": "at most", "=<": "at most", "<": "fewer than"}
"""Signs before a number, with the words for them."""
_COMPARED = re.compile(r"\s*(?:>=|=>|<=|=<|>|<)\s*(?=\d)")
_THAN = re.compile(
    r"\b(more|less|fewer|longer|shorter|bigger|smaller) (?:n|'n|then)\b(?! (?:it|they|we|i|he|she)\b)", re.IGNORECASE)
"""What stands for "than" as people speak ("more n four stickers")."""
_N_FOR_AND = re.compile(r"(?<=[a-z,]) n (?=(?!carolina|dakota|georgia|florida|fork|shore|end|side|of)[a-z])")
"""A small n between two words, but for the north of a place."""
_CAN = re.compile(r"\bkin(?= (?:i|u|you|ya|we|they|them|it|he|she|one|a)\b)", re.IGNORECASE)


def typed_out(line: str) -> str:
    """A line with its plain words in their usual spelling.

    >>> typed_out("wich sunfish hv spots")
    'which sunfish have spots'
    """
    line = _COMPARED.sub(lambda found: f" {COMPARED[found.group().strip()]} ", line)
    line = _CAN.sub("can", _THAN.sub(r"\1 than", line.replace("×", " x ")))
    line = _N_FOR_AND.sub(" and ", line)
    return _MISTYPED.sub(lambda found: MISTYPED[found.group().lower()], line)


def spelt_out(word: str) -> str:
    """A plain word typed in haste in its usual spelling, any other as it is.

    >>> [spelt_out(w) for w in ("bout", "u", "bass")]
    ['about', 'you', 'bass']
    """
    return SHORT_FORMS.get(word, word)


def stem(word: str) -> str:
    """The stem of one folded word; crude, but the same on both sides.

    >>> [stem(w) for w in ("stripes", "striped", "edged", "reaching", "longer", "lower", "red", "five")]
    ['strip', 'strip', 'edg', 'reach', 'long', 'lower', 'red', '5']
    """
    if word in NUMBERS:
        return NUMBERS[word]
    word = singular(word)
    for ending in ("ing", "ed", "er"):
        if word in NOT_COMPARED:
            break
        kept = word[: -len(ending)]
        if word.endswith(ending) and len(kept) > 2 + (ending == "ing") and any(v in kept for v in "aeiouy"):
            word = kept[:-1] if len(kept) > 3 and kept[-1] == kept[-2] and kept[-1] not in "ls" else kept
            break
    return word[:-1] if len(word) > 3 and word.endswith("e") and word not in KEPT else word


def stems_of(words: Sequence[str], head_of: HeadOf) -> tuple[Stem, ...]:
    """The stems of folded words, families folded in, nothing dropped."""
    out: list[Stem] = []
    at = 0
    while at < len(words):
        head, used = _head_at(words, at, head_of)
        for part in head.split():
            out.append(Stem(stem(part), at, at + used - 1, _several(part)))
        at += used
    return tuple(out)


def _several(word: str) -> bool:
    """True for a plural and for its adjective ("spots", "spotted")."""
    return singular(word) != word or (word.endswith("ed") and len(word) > 4)


def _head_at(words: Sequence[str], at: int, head_of: HeadOf) -> tuple[str, int]:
    for size in range(min(LONGEST, len(words) - at), 0, -1):
        head = head_of(" ".join(words[at : at + size]))
        if head is not None:
            return head, size
    return words[at], 1


def pattern_of(phrase: str, head_of: HeadOf) -> Pattern:
    """A phrase of the base as a pattern; ``stems`` is empty when nothing in it carries meaning."""
    words = key(phrase).split()
    denies = any(w in NEGATORS for w in words)
    kept = [w for w in words if w not in DROPPED and w not in NEGATORS]
    if not kept:
        kept = [w for w in words if w in DROPPED][-1:] if not denies else []
    made = stems_of(kept, head_of)
    return Pattern(tuple(s.text for s in made), tuple(s.plural for s in made), any(w in ORDERED for w in words), denies)
