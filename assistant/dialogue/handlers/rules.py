"""May it be kept, what is open, how many, with what: answers from the rule book, open about gaps (layer 4).

A line is either about one catch (a verdict), about the rules of a place (a survey), about one duty (bait, gear,
licence, moving fish), or about a place that no rules are held for.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date

from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.asked_about import kinds_name
from assistant.dialogue.aspects import aspects
from assistant.dialogue.conversation import Held
from assistant.dialogue.eating import warnings
from assistant.dialogue.handlers.out_of_scope import safe_echo
from assistant.dialogue.mistaken import fits_better
from assistant.dialogue.reader.catch_plain import short_of_limit
from assistant.dialogue.reader.catch_spelt import caught_is_kept
from assistant.dialogue.recogniser.cues import TAPE_ENDS
from assistant.dialogue.recogniser.facts import ASKING
from assistant.dialogue.rule_numbers import numbered
from assistant.dialogue.rules import telling
from assistant.dialogue.rules.access import access_answer, asks_access
from assistant.dialogue.rules.apart import apart
from assistant.dialogue.rules.by_number import told_by_number
from assistant.dialogue.rules.catch_judge import each_kept, judge, meant, parted
from assistant.dialogue.rules.catch_measures import count_of
from assistant.dialogue.rules.catch_query import CatchQuery, Named, Step
from assistant.dialogue.rules.context import (
    Context,
    Spoken,
    book_of,
    context_of,
    of_this_fish,
    on_its_day,
    spoken,
    without_kept,
)
from assistant.dialogue.rules.elsewhere import elsewhere, quoted
from assistant.dialogue.rules.full_bag import with_bag_told
from assistant.dialogue.rules.invented_waters import all_waters, invented_place, told_of
from assistant.dialogue.rules.months import alike, first_of_month, month_told, span_words
from assistant.dialogue.rules.outlook import Wish, survey
from assistant.dialogue.rules.reasons import JUST_ASK, Told
from assistant.dialogue.rules.together import asks_together, together
from assistant.dialogue.rules.topics import HOURS, TOPICS, topic_answer
from assistant.dialogue.rules.what_if import with_marks
from assistant.dialogue.rules.year import in_year_held
from assistant.dialogue.subjects import MOST, species_of, subjects
from assistant.dialogue.turn import Turn
from assistant.dialogue.unwelcome import unwelcome
from assistant.dialogue.wording import care
from assistant.dialogue.wording import rules as say
from assistant.dialogue.wording import surveys as tell
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Place
from assistant.reasoning import catch as c
from assistant.reasoning.verdict import Why, Word
from assistant.text import join, key

MEASURING = "rule-measuring"
"""The side of a line on how a fish is measured for the law."""
SURVEY = frozenset({"rule-limit", "rule-open", "rule-length", "rule-possession"})
WIDE = frozenset({"what", "whats", "which", "when", "whens"})
"""Words of a question on what is open that wants all that holds."""
OPENING = frozenset({"when", "whens", "opener", "opening", "start", "starts", "begin", "begins", "date", "dates"})
"""Words of a question on the days on which a season opens."""
RULES = frozenset({"rules", "rule", "regs", "regulations", "regulation", "limits"})
"""Words of a question on all the rules of a place."""
SIZING = frozenset({"how", "what", "whats", "which", "minimum", "maximum", "min", "max"})
"""Words of a question on how long a fish must be."""
MOST_STEPS = 12
"""So many catches of one line are judged; nobody tells of more, and each weighs on the next."""
MOST_SPANS = 4
"""Spans of a month that are told one by one."""
MOST_ASKING = 6
"""Words of a line that asks what a place is."""
BACK_ALIVE = "back-alive"
"""The cue of a line that asks which fish may not go back alive."""
CARE = "release-basic"
"""The caution that tells how a fish is let go."""


def handle(turn: Turn) -> tuple[Answer, Held]:
    """The answer to a line about rules, warnings of eating first, and the conversation with the catch judged."""
    answer, held = _answer(on_its_day(of_this_fish(turn)))
    species = species_of(turn.kb, answer.taxa)
    if BACK_ALIVE in turn.cues and (named_ones := _not_back(turn, species)):
        return answer._replace(blocks=tuple(named_ones)), held
    unwanted = (unwelcome(turn.kb, species) or _compared(turn, species)) if answer.verdict == "unknown" else ()
    other = fits_better(turn, species) if unwanted else ""
    if other:
        unwanted = [_not_sure(turn, species, other), *unwanted]
        answer = answer._replace(taxa=(other, *answer.taxa))
    first = [*warnings(turn, species), *unwanted]
    return with_marks(turn, answer._replace(blocks=(*first, *answer.blocks))), held


def _not_back(turn: Turn, species: Sequence[str]) -> list[Block]:
    """What holds of those fishes spoken of that are not wanted in many waters, each named; of the others, to ask."""
    told = {t: unwelcome(turn.kb, (t,)) for t in species}
    blocks = [b._replace(text=care.on_fish(label(turn.kb, t), b.text)) for t, found in told.items() for b in found]
    rest = [label(turn.kb, t) for t, found in told.items() if not found]
    return [*blocks, Block("doubt", tell.not_unwanted(rest), claim=False)] if blocks and rest else blocks


def _not_sure(turn: Turn, species: Sequence[str], other: str) -> Block:
    """What comes before all that holds of an unwanted fish, where the marks told are those of another."""
    called = [m.ids[0] for m in turn.reading.of("taxon", "group")]
    named = kinds_name(turn.kb, called[0] if called else species[0], 1)
    genus = turn.kb.lineage(other)[1]
    alike = len(turn.kb.members(genus)) > 1 and kinds_name(turn.kb, genus, 1) != label(turn.kb, genus)
    fits = kinds_name(turn.kb, genus, 1) if alike else label(turn.kb, other)
    return Block("lead", tell.fits_another(fits, named), statements=(f"taxon:{other}",))


def _compared(turn: Turn, species: tuple[str, ...]) -> list[Block]:
    """What must be heard of an unwanted fish that the one in question was set beside, while its name is not sure."""
    beside = species_of(turn.kb, turn.held.shown)
    last = turn.held.last
    if len(species) != 1 or species[0] not in beside or (last is not None and last.confidence == "sure"):
        return []
    for other in beside:
        if other != species[0] and (told := unwelcome(turn.kb, (other,))):
            lead = Block("caution", tell.be_sure_first(label(turn.kb, other), label(turn.kb, species[0])), claim=False)
            return [lead, *told]
    return []


def _answer(turn: Turn) -> tuple[Answer, Held]:
    if "rules-real" in turn.cues:
        return all_waters(turn.kb, tell.RULES_INVENTED), turn.held
    if "rule-waters" in turn.cues:
        return all_waters(turn.kb), turn.held
    if (place := _place_alone(turn)) is not None:
        return told_of(turn.kb, place, turn.clock, "rules"), turn.held
    if (rules := numbered(turn.kb, turn.reading)) and "rule-keep" not in _sides(turn):
        return told_by_number(turn, book_of(turn.kb), rules, turn.clock), turn.held
    asked = _sides(turn)
    found = context_of(turn)
    before = spoken(turn.held)
    surveying = bool(asked & SURVEY) or (before.surveying and not asked and not _in_hand(turn, found))
    held = without_kept(turn.held, found.query).after(catch=Spoken(found.query or before.query, surveying))
    if (against := quoted(turn._replace(held=held), found)) is not None:
        return against
    if asks_together(turn, found, asked):
        return together(turn, found), held
    topic = _topic(turn, asked, found)
    if topic:
        return topic_answer(turn, found, topic), turn.held.after(catch=Spoken(before.query, before.surveying, topic))
    if asks_access(turn, found) and not asked & SURVEY:
        return access_answer(turn, found), held
    if not found.places and (found.real or found.unknown) and not _private(found):
        return elsewhere(turn, found, safe_echo(found.unknown)), held
    if found.places and _about_place(turn, asked, found, surveying):
        return _survey(turn, found), held
    query = found.query or (_any_fish(found, turn) if found.places else None)
    if query is None:
        return _nothing(turn, found), held
    return _verdicts(turn, found, query, held)


def _sides(turn: Turn) -> frozenset[str]:
    """The sides of the rules that the line asks about."""
    told = frozenset(a for a in aspects(turn.kb, turn.reading) if a.startswith("rule-"))
    return told | {MEASURING} if turn.cues >= TAPE_ENDS and not turn.reading.measures else told


def _place_alone(turn: Turn) -> Place | None:
    """The invented place that a short line asks what or where it is, and nothing else."""
    more = turn.reading.of("taxon", "hybrid", "group") or turn.reading.measures or turn.reading.date
    if more or not turn.cues & {"what-is", "asks-where", "real-place"} or turn.cues & ASKING or _sides(turn):
        return None
    return invented_place(turn.kb, turn.reading) if len(turn.reading.words) <= MOST_ASKING else None


def _private(found: Context) -> bool:
    return found.about.private


def _topic(turn: Turn, asked: frozenset[str], found: Context) -> str:
    """The duty asked about, where the line is not about keeping one fish."""
    wanted = [t for t in TOPICS if t in asked]
    if not wanted and found.places and _only_place(turn, asked):
        return spoken(turn.held).topic
    if not wanted and found.about.moments and found.places and not (_fish_known(found) or _shut_to_all(found, turn)):
        return HOURS
    if not wanted or (wanted == ["rule-possession"] and found.places):
        return ""
    if wanted == [HOURS] and (found.named or (found.places and _shut_to_all(found, turn))):
        return ""
    told = (
        found.fresh
        and found.query is not None
        and any(s.length != c.UNSAID for s in found.query.steps)
        and bool(turn.reading.measures)
    )
    kept = found.fresh and found.query is not None and any(s.kept is not None for s in found.query.steps)
    if (told or kept) and wanted[0] not in ("rule-moving", "rule-selling"):
        return ""
    if (told or kept) and "rule-keep" in asked:
        return ""
    return wanted[0]


def _fish_known(found: Context) -> bool:
    return bool(found.named) or (found.query is not None and any(s.fish or s.crosses for s in found.query.steps))


def _only_place(turn: Turn, asked: frozenset[str]) -> bool:
    """True for a short line that names a place and asks nothing: what was asked before is asked of it."""
    placed = bool(turn.reading.water or turn.reading.places)
    more = turn.reading.of("taxon", "hybrid", "group") or turn.reading.measures or turn.reading.date
    return placed and not more and not asked and len(turn.reading.words) <= MOST_ASKING


def _about_place(turn: Turn, asked: frozenset[str], found: Context, surveying: bool) -> bool:
    """True when the rules of the place are asked for rather than a verdict on a fish."""
    own = any(m.kind == "length" and m.own for m in turn.reading.measures)
    if "rule-open" in asked and "rule-keep" not in asked and OPENING & set(turn.reading.words) and not own:
        return True
    if _in_hand(turn, found):
        return False
    step = found.query.steps[0] if found.query is not None and found.query.steps else Step()
    sized = "rule-length" in asked and step.length == c.UNSAID and bool(SIZING & set(turn.reading.words))
    if surveying and (sized or not ("rule-keep" in asked and not asked & {"rule-limit", "rule-open"})):
        return True
    if step.fish or step.crosses:
        return False
    if found.query is not None and "rule-keep" in asked and found.about.age is None:
        return False
    return not _shut_to_all(found, turn)


def _in_hand(turn: Turn, found: Context) -> bool:
    """True when the line tells of a length or of kept fish, as of a fish in hand."""
    if any(m.kind == "length" and m.own for m in turn.reading.measures):
        return True
    steps = found.query.steps if found.query is not None else ()
    if short_of_limit(turn.reading.text) is not None and any(s.length != c.UNSAID for s in steps):
        return True
    return found.fresh and any(s.kept is not None for s in steps)


def _shut_to_all(found: Context, turn: Turn) -> bool:
    """True when nobody (or not this angler) may fish there at all that day."""
    return all(v.word is Word.CLOSED for v in judge(_any_fish(found, turn), found.book))


def _any_fish(found: Context, turn: Turn) -> CatchQuery:
    """A fish of no stated kind at the place on the day."""
    day = found.query.steps[0].day if found.query is not None and found.query.steps else found.day
    step = Step(any_fish=True, places=found.places, day=day or turn.clock)
    return CatchQuery("", (step,), found.about, day_said=found.day_said and found.day is not None)


def _survey(turn: Turn, found: Context) -> Answer:
    """The rules of a place and day."""
    day = found.day or first_of_month(turn)
    place = found.places[0]
    wanted = _wanted(turn, found)
    told = survey(turn.kb, found.book, place, day, wanted, _wish(turn, found))
    more = [Block("help", tell.OTHER_FISHES, claim=False)] if wanted and not found.named else []
    notes = telling.standing(found.book, told.rules, told.as_of, told.rule_year, "", turn.held.noted)
    many = _many(turn)
    many = 0 if many == found.about.age else many
    number = tell.against_bag(many, told.bag) if many and told.bag and wanted else ""
    blocks = (*([Block("lead", number, statements=telling.statements(told.rules))] if number else []),
              *told.blocks, *more, *notes)
    return Answer("rules", blocks, taxa=_taxa(turn, found), verdict=told.verdict, rules=telling.statements(told.rules))


def _many(turn: Turn) -> int:
    """The one number of fish that a line proposes to keep ("12 a day?", "so ten is ok"); 0 where it tells of none."""
    words = turn.reading.words
    if turn.reading.measures or turn.reading.date or "how" in words:
        return 0
    counts = [n for n in (count_of(w) for w in words if w not in ("a", "an", "no")) if n is not None]
    return counts[0] if len(counts) == 1 else 0


def _wish(turn: Turn, found: Context) -> Wish:
    """Whether only what is open is asked for, whether the days on which it opens are, and on which side."""
    said, asked = set(turn.reading.words), _sides(turn) & SURVEY
    query = spoken(turn.held).query
    side = found.about.side or (query.about.side if query is not None else "")
    released = "rule-release" in _sides(turn)
    open_only = (asked == {"rule-open"} and not WIDE & said) or (not asked and released)
    month = found.day is None and (turn.held.date or "").startswith("--")
    sized = "rule-length" in asked and bool(SIZING & said)
    return Wish(open_only, "rule-open" in asked and bool(OPENING & said), side, month, sized)


def _wanted(turn: Turn, found: Context) -> tuple[Named, ...]:
    """The fishes asked about: named in the line, else spoken of where the line points back."""
    if found.named:
        return tuple(n for n in found.named if n.taxa)
    words = set(turn.reading.words)
    back = words & {"it", "them", "they", "that", "this", "those", "one"}
    carried = turn.held.intent == "rules" and (spoken(turn.held).surveying or _goes_on(turn))
    own = "rule-limit" in aspects(turn.kb, turn.reading) and words & tell.ONESELF
    if words & tell.ALL_FISHES:
        return ()
    if turn.held.taxa and (back or carried or own) and found.query is not None:
        return found.query.steps[0].fish
    return ()


def _goes_on(turn: Turn) -> bool:
    """True for a short line without a place that asks for a number of the fish judged before ("how many")."""
    short = len(turn.reading.words) <= MOST_ASKING and not turn.reading.places and not turn.reading.water
    return short and bool(_sides(turn) & SURVEY) and not RULES & set(turn.reading.words)


def _verdicts(turn: Turn, found: Context, query: CatchQuery, held: Held) -> tuple[Answer, Held]:
    """The verdict on each step, told one after the other."""
    kb, book = turn.kb, found.book
    left_out = len(query.steps) > MOST_STEPS
    query = with_bag_told(turn.reading.text, replace(query, steps=query.steps[:MOST_STEPS]), book, found.fresh)
    days = month_told(turn) if found.day is None and not query.day_said else []
    spans = _spans(turn, query, found, days)
    if spans:
        query = replace(query, steps=tuple(replace(s, day=first) for first in spans for s in query.steps))
    elif days:
        query = replace(query, steps=tuple(replace(s, day=None) for s in query.steps))
    whole = _anybody(query, found, turn)
    query = parted(each_kept(whole, book), book)
    verdicts = judge(query, book)
    told = [Told(kb, book, v, s) for v, s in zip(verdicts, query.steps, strict=True)]
    word = telling.verdict_word(verdicts)
    blocks = _told(told, word, query.day_said or found.day_said, turn, spans)
    if len(told) == 1:
        blocks[1:1] = apart(told[0], query)
    blocks = in_year_held(kb, book, query, verdicts, days, blocks, not (turn.held.date or "").startswith("--"))
    if len(spans) == 1 and verdicts[0].reason.why is not Why.OUTSIDE_RULE_YEAR:
        blocks.insert(1, Block("point", say.every_day(days[0].strftime("%B")), claim=False))
    if caught_is_kept(turn.reading.text) and word == Word.RELEASE:
        blocks.insert(1, Block("point", say.CAUGHT_AS_KEPT, claim=False))
    last = verdicts[-1]
    if any(v.word in (Word.RELEASE, Word.CLOSED) for v in verdicts) and not query.steps[0].any_fish:
        blocks += [b for b in _care(kb) if b.text not in turn.held.noted]
    if left_out:
        blocks.append(Block("help", tell.first_catches(MOST_STEPS), claim=False))
    asked = telling.question(last)
    if asked is not None and last.reason.why not in JUST_ASK:
        blocks.append(Block("next", asked.question, claim=False))
    rules = tuple(dict.fromkeys(r for v in verdicts for r in v.rules))
    if last.reason.why is Why.NO_PLACE:
        blocks.append(Block("help", tell.real_unknown_how(""), claim=False))
    elif last.reason.why is not Why.PRIVATE_WATER:
        dated = next((v for v in verdicts if v.as_of), last)
        measured = any(s.length != c.UNSAID for s in query.steps)
        named = any(n.taxa for s in query.steps for n in s.fish)
        given = (*((say.NAME_GIVEN,) if named else ()), *((say.LENGTH_GIVEN,) if measured else ()))
        doubt = telling.doubt_of(verdicts, measured)
        blocks += telling.standing(book, rules, dated.as_of, dated.rule_year, doubt, turn.held.noted, given)
    if last.reason.why is Why.NO_FISH and (name := safe_echo(" ".join(query.unknown_names[:1]))):
        blocks.insert(0, Block("lead", say.unknown_fish(name), claim=False))
    answer = Answer(
        "rules", tuple(blocks), _taxa(turn, found, query), verdict=word, rules=telling.statements(rules), asked=asked
    )
    surveying = last.reason.why is Why.NO_PLACE and spoken(held).surveying
    return answer, held.after(catch=Spoken(whole, surveying))


def _spans(turn: Turn, query: CatchQuery, found: Context, days: Sequence[date]) -> dict[date, str]:
    """The spans of a month in words by their first days, where few cover it; for several catches only a whole month."""
    def outcome(day: date) -> object:
        query_on = replace(query, steps=tuple(replace(s, day=day) for s in query.steps))
        return tuple((v.word, v.reason.why) for v in judge(_anybody(query_on, found, turn), found.book))

    spans = alike(days, outcome)
    few = len(spans) <= (MOST_SPANS if len(query.steps) == 1 else 1)
    return {first: span_words(first, last) for first, last in spans} if few else {}


def _anybody(query: CatchQuery, found: Context, turn: Turn) -> CatchQuery:
    """Where no fish is known and nobody may fish at all, the verdict is on any fish."""
    if any(s.fish or s.any_fish or s.crosses for s in query.steps) or not query.steps or not found.places:
        return query
    return (
        replace(query, steps=tuple(replace(s, any_fish=True) for s in query.steps))
        if _shut_to_all(found, turn)
        else query
    )


def _told(told: list[Told], word: str, day_said: bool, turn: Turn, spans: Mapping[date, str]) -> list[Block]:
    """One verdict with its grounds, or a list of them (``spans``: the days for which each holds)."""
    if len(told) == 1:
        one = told[0]
        lead = Block(
            "lead",
            telling.lead_text(one),
            statements=telling.statements(one.verdict.rules),
            claim=bool(one.verdict.rules),
        )
        return [lead, *telling.points(told, day_said, turn.clock, turn.held.noted)]
    blocks = [Block("lead", say.sequence_lead(word), claim=False)]
    for number, one in enumerate(told, 1):
        what = spans.get(one.verdict.day) if one.verdict.day is not None else ""
        text = say.step_lead(number, what or telling.step_words(one, told), telling.lead_text(one))
        blocks.append(
            Block("point", text, statements=telling.statements(one.verdict.rules), claim=bool(one.verdict.rules))
        )
    return [*blocks, *telling.points(told, day_said, turn.clock, turn.held.noted)]


def _care(kb: KnowledgeBase) -> list[Block]:
    found = kb.find("caution", CARE)
    return [Block("caution", found.text, statements=(f"caution:{found.id}",))] if found is not None else []


def _taxa(turn: Turn, found: Context, query: CatchQuery | None = None) -> tuple[str, ...]:
    """The fishes of the answer: those that the rules mean by what was said, and the ids that the line named."""
    query = query or found.query
    named = {key(m.words): m.ids for m in turn.reading.of("taxon", "hybrid", "group")}
    ids: list[str] = []
    for fish in [n for s in query.steps for n in s.fish] if query is not None else found.named:
        said = named.get(key(fish.words), ())
        meant_here = meant(fish, found.book.positions(found.places[0]), found.book) if found.places else ()
        species = [t for m in meant_here for t in sorted(found.book.members.get(m, ())) or (m,)]
        if len(species) == 1:
            ids += [*species, *(said if len(said) == 1 else ())]
        else:
            ids += [*said, *(species or fish.taxa)]
    known = [t for t in ids if turn.kb.find("taxon", t) is not None] or list(subjects(turn))
    return tuple(dict.fromkeys(known))[:MOST]


def _nothing(turn: Turn, found: Context) -> Answer:
    """Neither fish nor place: ask for the place first."""
    asked = Asked("place", say.ASK["place"])
    if found.places:
        return _survey(turn, found)
    fish = join([label(turn.kb, t) for t in subjects(turn)[:2]], "or")
    note = Block("rule-note", tell.real_unknown_how(""), claim=False)
    blocks = (Block("lead", say.no_place(fish), claim=False), note)
    return Answer("rules", blocks, taxa=_taxa(turn, found), verdict="unknown", asked=asked)
