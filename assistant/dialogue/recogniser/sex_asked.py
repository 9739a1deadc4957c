"""Whether a line asks the sex of a fish (layer 4)."""

from __future__ import annotations

import re

from assistant.dialogue.reader.reading import Reading

_SEX = r"(?:male|female|hen|buck|doe|boy|girl|he|she|lady|sow)"
_SEX_ASKED = re.compile(
    rf"\b{_SEX}\b(?:,| fish)? or (?:no|not|nah|what|a |an )|\b{_SEX}\b(?:,| fish)? (?:or|vs\.?|versus) {_SEX}\b"
    rf"|\b(?:is|was|be|were) (?:it|this|that|this one|mine|he|she|they|these|those|my \w+|the \w+)"
    rf"(?: \w+)? (?:likely |probably |maybe )?(?:an? |all )?{_SEX}s?\W*(?:$|[?,.;]|then|right|you think|or )"
    rf"|^is (?:a|an|the|this|that|my)\b[^?.,;]*\b(?:likely |probably |always |usually |mostly )?(?:a )?{_SEX}\W*$"
    rf"|\b(?:thats|that's|its|it's|gotta be|has to be|must be|figure its|is that) an? {_SEX}\b,?\s*"
    rf"(?:\?|(?:right|huh|yeah|yes|correct|no|aint it|ain't it|isnt it|then)\W*$)"
    rf"|\b{_SEX},? (?:right|you think|do you think|you reckon|i guess|yes or no|correct|yeah|huh)\W*$"
    rf"|\ball (?:the )?{_SEX}s?\b,? (?:or what|right|huh|then)?\W*$"
    rf"|\b(?:what|which|tell the|tell its) (?:sex|gender)\b"
)
"""A line that asks whether a fish is a male or a female, though it may name one sex only ("hen or no")."""


def sex_asked(reading: Reading) -> bool:
    """True for a line that asks the sex of a fish.

    >>> bool(_SEX_ASKED.search("24 inch walleye. hen or no")), bool(_SEX_ASKED.search("a male on the nest"))
    (True, False)
    """
    return _SEX_ASKED.search(reading.text.lower()) is not None
