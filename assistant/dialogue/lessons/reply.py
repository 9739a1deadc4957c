"""What a line said in a quiz or in a walked key is, where it is no answer to the open question (layer 4)."""

from __future__ import annotations

import re

from assistant.dialogue.reader.reading import Reading

SKIP, UNSURE, REVEAL, ANSWERS, WHY, HINT, AGAIN, WORD, PRINT, LEFT, LOST = (
    "skip", "unsure", "reveal", "answers", "why", "hint", "again", "word", "print", "left", "lost")
_WORD_ASKED = re.compile(r"\bwhat(?:'?s| is| are| was| does| do)\b|\bwhat\b.*\b(?:is|are|means?)\W*$"
                         r"|\bin (?:plain|simple|easy|other) words\b|\bfor the (?:handout|sheet|poster|word wall)\b"
                         r"|\bmean(?:s|ing)?\b|\b(?:explain|define|which part)\b|\bwhere(?:'?s| is| are)\b")
_GROUNDS = re.compile(r"^\W*(?:but |and |ok |so )*(?:why|how come|how so|explain|because of what)\b")
_CUES = (("lesson-answers", ANSWERS), ("lesson-reveal", REVEAL), ("lesson-hint", HINT), ("lesson-again", AGAIN),
         ("lesson-print", PRINT), ("lesson-left", LEFT), ("lesson-lost", LOST))
_LONG = 9
"""A longer line is no mere "pass" or "not sure"."""


def reply(reading: Reading) -> str:
    """What the line asks for beside answering (one of the words above); empty where it may be an answer."""
    text = reading.text.lower()
    if reading.of("term") and _WORD_ASKED.search(text):
        return WORD
    for cue, meant in _CUES:
        if cue in reading.cues:
            return meant
    if _GROUNDS.search(text):
        return WHY
    if len(reading.words) <= _LONG:
        if reading.answer == "unsure" or reading.cues & {"cant-see", "cant-agree"}:
            return UNSURE
        if reading.answer == "skip" or reading.cues & {"skip", "next"}:
            return SKIP
    return ""
