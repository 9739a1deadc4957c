"""May it be kept, what is open, how many, with what: answers from the rule book, honest about what is not held (layer 4).

A line is either about one catch (a verdict), about the rules of a place (a survey), about one duty (bait, gear, licence,
moving fish), or about a place that no rules are held for.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from assistant.dialogue import phrases_rules as say
from assistant.dialogue import rule_telling as telling
from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.aspects import aspects
from assistant.dialogue.catch_judge import catches, judge
from assistant.dialogue.catch_query import CatchQuery, Named, Step
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers.out_of_scope import safe_echo
from assistant.dialogue.rule_context import Context, context_of
from assistant.dialogue.rule_elsewhere import elsewhere, quoted
from assistant.dialogue.rule_outlook import survey
from assistant.dialogue.rule_topics import TOPICS, topic_answer
from assistant.dialogue.subjects import MOST, subjects
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning import catch as c
from assistant.reasoning.verdict import Act, Verdict, Why, Word

SURVEY = frozenset({"rule-limit", "rule-open", "rule-length"})
IN_HAND = frozenset({"rule-keep"})
CARE = "release-basic"
"""The caution that tells how a fish is let go."""


def handle(turn: Turn) -> tuple[Answer, Held]:
    """The answer to a line about rules, and the conversation with the catch that was judged."""
    asked = frozenset(a for a in aspects(turn.kb, turn.reading) if a.startswith("rule-"))
    found = context_of(turn)
    held = turn.held.after(catch=_kept_query(found, turn.held))
    if (answer := quoted(turn, found)) is not None:
        return answer, held
    topic = _topic(turn, asked, found)
    if topic:
        return topic_answer(turn, found, topic), held
    if not found.places and (found.real or found.unknown) and not _private(found):
        return elsewhere(turn, found, safe_echo(found.unknown)), held
    if found.places and _about_place(turn, asked, found):
        return _survey(turn, found), held
    if found.query is None:
        return _nothing(turn, found), held
    return _verdicts(turn, found, found.query, held)


def _kept_query(found: Context, held: Held) -> CatchQuery | None:
    """The catch to hold on to; that of before where the line tells of none."""
    before: CatchQuery | None = held.catch if isinstance(held.catch, CatchQuery) else None
    return found.query or before


def _private(found: Context) -> bool:
    return found.about.private


def _topic(turn: Turn, asked: frozenset[str], found: Context) -> str:
    """The duty asked about, where the line is not about keeping one fish."""
    wanted = [t for t in TOPICS if t in asked]
    if not wanted:
        return ""
    told = found.fresh and found.query is not None and any(s.length != c.UNSAID for s in found.query.steps) and bool(turn.reading.measures)
    kept = found.fresh and found.query is not None and any(s.kept is not None for s in found.query.steps)
    if (told or kept) and wanted[0] not in ("rule-moving", "rule-selling"):
        return ""
    if (told or kept) and "rule-keep" in asked:
        return ""
    return wanted[0]


def _about_place(turn: Turn, asked: frozenset[str], found: Context) -> bool:
    """True when the rules of the place are asked for rather than a verdict on a fish."""
    measured = any(m.kind == "length" and m.own for m in turn.reading.measures)
    kept = found.fresh and found.query is not None and any(s.kept is not None for s in found.query.steps)
    if measured or kept:
        return False
    if asked & SURVEY and not ({"rule-keep"} & asked and not {"rule-limit", "rule-open"} & asked):
        return True
    if found.query is None:
        return not turn.held.last or turn.held.intent != "rules" or bool(turn.reading.water or turn.reading.places)
    step = found.query.steps[0] if found.query.steps else Step()
    if step.any_fish or not (step.fish or step.crosses):
        return "rule-keep" not in asked and not _shut_to_all(found)
    return False


def _shut_to_all(found: Context) -> bool:
    """True when nobody (or not this angler) may fish there at all that day."""
    query = _any_fish(found)
    return all(v.word is Word.CLOSED for v in judge(query, found.book)) if query.steps else False


def _any_fish(found: Context) -> CatchQuery:
    step = Step(any_fish=True, places=found.places, day=found.day)
    return CatchQuery("", (step,), found.about)


def _survey(turn: Turn, found: Context) -> Answer:
    """The rules of a place and day."""
    day = found.day or _in_month(turn, found)
    place = found.places[0]
    told = survey(turn.kb, found.book, place, day, _wanted(turn, found))
    blocks = (*told.blocks, *telling.standing(turn.kb, found.book, told.rules, told.as_of, told.rule_year))
    return Answer("rules", blocks, taxa=_taxa(turn, found), verdict=told.verdict, rules=told.rules)


def _in_month(turn: Turn, found: Context) -> date:
    """The first day of a month asked about, in the year of the clock."""
    text = turn.held.date or ""
    month = int(text[2:4]) if text.startswith("--") and text[2:4].isdigit() else turn.clock.month
    return date(turn.clock.year, min(max(month, 1), 12), 1)


def _wanted(turn: Turn, found: Context) -> tuple[Named, ...]:
    """The fishes asked about: named in the line, else spoken of where the line points back."""
    if found.named:
        return tuple(n for n in found.named if n.taxa)
    words = set(turn.reading.words)
    back = words & {"it", "them", "they", "that", "this", "those", "one"}
    if turn.held.taxa and back and found.query is not None:
        return found.query.steps[0].fish
    return ()


def _verdicts(turn: Turn, found: Context, query: CatchQuery, held: Held) -> tuple[Answer, Held]:
    """The verdict on each step, told one after the other."""
    kb, book = turn.kb, found.book
    if found.day is None and not query.day_said:
        query = replace(query, steps=tuple(replace(s, day=None) for s in query.steps))
    query = _anybody(query, found)
    verdicts = judge(query, book)
    told = [telling.Told(kb, book, v, s) for v, s in zip(verdicts, query.steps, strict=True)]
    word = telling.verdict_word(verdicts)
    blocks = _told(told, word, query.day_said or found.day_said, turn.clock)
    last = verdicts[-1]
    if any(v.word in (Word.RELEASE, Word.CLOSED) and Act.RELEASE in v.acts for v in verdicts) and not told[0].step.any_fish:
        blocks += _care(kb)
    asked = telling.question(last)
    if asked is not None and asked.question not in " ".join(b.text for b in blocks):
        blocks.append(Block("next", asked.question, claim=False))
    rules = tuple(dict.fromkeys(r for v in verdicts for r in v.rules))
    if any(v.outcomes for v in verdicts):
        year = next((v for v in verdicts if v.as_of), last)
        blocks += telling.standing(kb, book, rules, year.as_of, year.rule_year)
    elif last.reason.why is not Why.NO_PLACE:
        blocks += telling.standing(kb, book, (), "", ("", ""))
    answer = Answer("rules", tuple(blocks), _taxa(turn, found, query), verdict=word, rules=rules, asked=asked)
    return answer, held.after(catch=query)


def _anybody(query: CatchQuery, found: Context) -> CatchQuery:
    """Where no fish is known and nobody may fish at all, the verdict is on any fish."""
    if any(s.fish or s.any_fish or s.crosses for s in query.steps) or not query.steps:
        return query
    return replace(query, steps=tuple(replace(s, any_fish=True) for s in query.steps)) if _shut_to_all(found) else query


def _told(told: list[telling.Told], word: str, day_said: bool, clock: date) -> list[Block]:
    """One verdict with its grounds, or a list of them."""
    if len(told) == 1:
        one = told[0]
        lead = Block("lead", telling.lead_text(one), statements=telling.statements(one.verdict.rules), claim=bool(one.verdict.rules))
        return [lead, *telling.points(one, day_said, clock)]
    blocks = [Block("lead", say.sequence_lead(word), claim=False)]
    seen: set[str] = set()
    for number, one in enumerate(told, 1):
        what = telling.step_words(one)
        blocks.append(Block("point", say.step_lead(number, what, telling.lead_text(one)), statements=telling.statements(one.verdict.rules),
                            claim=bool(one.verdict.rules)))
    for one in told:
        for block in telling.points(one, day_said, clock):
            if block.text not in seen:
                seen.add(block.text)
                blocks.append(block)
    return blocks


def _care(kb: KnowledgeBase) -> list[Block]:
    found = kb.find("caution", CARE)
    return [Block("caution", found.text, statements=(f"caution:{found.id}",))] if found is not None else []


def _taxa(turn: Turn, found: Context, query: CatchQuery | None = None) -> tuple[str, ...]:
    """The fishes of the answer: as the line named them, else every fish that it may be."""
    own = subjects(turn, carried=False)
    if own:
        return own[:MOST]
    query = query or found.query
    if query is None:
        return turn.held.taxa[:MOST]
    named = [t for x in catches(query, found.book) for t in x.candidates if turn.kb.find("taxon", t) is not None]
    named = named or [t for s in query.steps for n in s.fish for t in n.taxa if turn.kb.find("taxon", t) is not None]
    return tuple(dict.fromkeys(named))[:MOST] or turn.held.taxa[:MOST]


def _nothing(turn: Turn, found: Context) -> Answer:
    """Neither fish nor place: ask for the place first."""
    asked = Asked("place", say.ASK["place"])
    if found.places:
        return _survey(turn, found)
    blocks = (Block("lead", say.NO_PLACE, claim=False), Block("rule-note", say.real_unknown_how(""), claim=False))
    return Answer("rules", blocks, taxa=_taxa(turn, found), verdict="unknown", asked=asked)


__all__ = ["handle", "Verdict"]
