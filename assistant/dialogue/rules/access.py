"""Who may fish at a place under the rules held, and who needs a licence there (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.rules import words
from assistant.dialogue.rules.context import Context
from assistant.dialogue.rules.telling import standing, statements
from assistant.dialogue.rules.topics import duties_told
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import rules as say
from assistant.dialogue.wording import surveys as tell
from assistant.reasoning.lawful import covered, rule_set_on

LICENCE = ("licence",)
ADMITTING = frozenset({"asks-can", "asks-who", "asks-do", "who-may"})


def asks_access(turn: Turn, found: Context) -> bool:
    """True for a line that asks who may fish at a place, and of no fish."""
    if not found.places or found.named or turn.reading.measures or not turn.cues & ADMITTING:
        return False
    return found.about.age is not None or "who-may" in turn.cues


def access_answer(turn: Turn, found: Context) -> Answer:
    """Whether the angler spoken of may fish there by age, and what is held on licences."""
    book, day, age = found.book, found.day or turn.clock, found.about.age
    place = words.place_words(turn.kb, found.places[0])
    here = book.positions(found.places[0])
    held = next((s for s in (rule_set_on(x, day, book) for x in here) if s is not None), None)
    limits = [(r.under_age, r.id) for x in here for r in covered(x, day, book) if r.under_age is not None]
    under, rule = min(limits, default=(None, ""))
    tag = say.rule(words.rule_tag(book, rule)) if rule else ""
    if held is None:
        lead = Block("lead", tell.not_held(place, words.day_words(day), "", "", False), claim=False)
    elif under is None:
        lead = Block("lead", tell.no_age(place), claim=False)
    else:
        may = None if age is None else age < under
        lead = Block("lead", tell.age_told(place, under, may, tag), statements=statements((rule,)))
    duty, rules = duties_told(turn, found, LICENCE)
    year = (held.valid_from, held.valid_through) if held is not None else ("", "")
    used = tuple(r for r in (rule, *rules) if r)
    notes = standing(book, used, held.as_of if held is not None else "", year, "", turn.held.noted)
    word = "unknown" if held is None else "closed" if under is not None and age is not None and age >= under else None
    return Answer("rules", (lead, *duty, *notes), verdict=word, rules=statements(used))
