"""What a line and its conversation say of a catch: names looked up in the base, the rest carried over (layer 4).

The reader of catch sentences (``catch_text``) knows no names; here it is given the names of one base and the places
that its rule book speaks of, and what a line leaves out is filled from the conversation: fish (or everything that the
last identification left open), water, day, length and kept fish.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from datetime import date
from decimal import Decimal

from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.catch_plain import tells_other_days
from assistant.dialogue.reader.catch_spelt import completed
from assistant.dialogue.reader.catch_text import parse_catch
from assistant.dialogue.reader.lexicon import lexicon_of
from assistant.dialogue.reader.own_lengths import OF_OTHERS
from assistant.dialogue.reader.reading import Measure, Reading
from assistant.dialogue.reader.when import DAYS, MONTHS, dated, in_some_year, tells_past
from assistant.dialogue.rules.catch_kept import read_kept
from assistant.dialogue.rules.catch_measures import read_days, read_lengths
from assistant.dialogue.rules.catch_notes import read_notes
from assistant.dialogue.rules.catch_query import CatchQuery, Circumstances, Named, Step, kept_names
from assistant.dialogue.rules.months import is_month
from assistant.dialogue.rules.names import (
    Resolve,
    depth_of,
    in_year_held,
    members_of,
    named_in,
    resolvers,
    without_bait,
)
from assistant.dialogue.subjects import species_of, subjects
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase
from assistant.model.regulations import Rulebook
from assistant.model.rulebook import rulebook
from assistant.reasoning import catch as c
from assistant.reasoning.precedence import stands_at
from assistant.text import key
from assistant.units import MM

STILL_OPEN = 0.05
"""A candidate of an identification that is at least so likely cannot be excluded."""
MOST_FISH = 12


@dataclass(frozen=True, slots=True)
class Spoken:
    """What the conversation holds about rules: the last catch, and whether a survey or a duty (``topic``) was asked."""

    query: CatchQuery | None = None
    surveying: bool = False
    topic: str = ""


def spoken(held: Held) -> Spoken:
    """What the turns before left about rules."""
    return held.catch if isinstance(held.catch, Spoken) else Spoken()


@dataclass(frozen=True, slots=True)
class Context:
    """A line about rules: the catch it tells of with what was carried over, and where, as ids of the rule book.

    ``query`` is None where no fish, length or kept fish is known. ``places`` are ruled places, ``real`` other places
    of the base, ``unknown`` the words of a place that is not held. ``fresh`` is True when the line itself tells of a
    fish, a length or kept fish.
    """

    book: Rulebook
    query: CatchQuery | None
    places: tuple[str, ...]
    real: tuple[str, ...]
    unknown: str
    day: date | None
    day_said: bool
    named: tuple[Named, ...] = ()
    fresh: bool = False
    about: Circumstances = field(default_factory=Circumstances)


def book_of(kb: KnowledgeBase) -> Rulebook:
    """The rule book of a base, made when first asked for and kept with it."""
    return kb.derived("rulebook", rulebook)


def of_this_fish(turn: Turn) -> Turn:
    """The turn without lengths of another fish: told before of one that the line neither names nor points to."""
    told = any(m.kind == "length" and m.own for m in turn.reading.measures)
    named = set(species_of(turn.kb, subjects(turn, carried=False)))
    if told or not named or named & set(species_of(turn.kb, turn.held.taxa)) or POINTING & set(turn.reading.words):
        return turn
    return turn._replace(held=turn.held.after(lengths=()))


def on_its_day(turn: Turn) -> Turn:
    """The turn with a day counted from that of the catch judged before ("a week later") as a date."""
    last = spoken(turn.held).query
    day = last.steps[-1].day if turn.held.intent == "rules" and last is not None and last.steps else None
    text = dated(turn.reading.text, day) if day is not None else turn.reading.text
    told = [t for t in _ISO.findall(text) if t not in turn.reading.text]
    if not told:
        return turn
    return turn._replace(reading=turn.reading._replace(text=text, date=told[0]), held=turn.held.after(date=told[0]))


_ISO = re.compile(r"\d{4}-\d{2}-\d{2}")
OWNED = frozenset({"mine", "mines", "ours", "hers", "theirs"})
"""Words for the fish of somebody, which name no kind."""
POINTING = frozenset({"it", "its", "this", "that", "same", "instead"})
"""Words of a line that speaks of the fish of the line before, even under another name."""


def without_kept(held: Held, query: CatchQuery | None) -> Held:
    """The conversation without lengths of fish that were kept before."""
    steps = query.steps if query is not None else ()
    kept = {k.length.low for s in steps for k in s.kept or ()} - {s.length.low for s in steps}
    counts = {k.count for s in steps for k in s.kept or ()}
    return held.after(lengths=tuple(
        m for m in held.lengths if length_of(m).low not in kept and not (m.bare and length_of(m).value in counts)))


def context_of(turn: Turn) -> Context:
    """The catch, place and day that a line is about."""
    book = book_of(turn.kb)
    taxa_of, places_of = resolvers(turn.kb, turn.reading, book)
    held = turn.held
    text = without_bait(completed(turn, places_of, _kept_before(turn.held)), taxa_of, places_of)
    text = _of_the_fish(text, turn.reading, held)
    day, said = (turn.clock, False) if tells_other_days(turn.reading.text) else _day(turn)
    before = _before(turn, day or turn.clock)
    query = _parsed(text, taxa_of, places_of, turn, day or turn.clock, before)
    fresh = query is not None
    if query is None or _only_words(query, turn.kb) or _only_explains(query, before, turn):
        query = _bare(text, taxa_of, places_of, turn, day or turn.clock, before)
        fresh = query is not None and any(s.kept is not None or s.length != c.UNSAID for s in query.steps)
    places = _places(held, turn.reading, book)
    if query is not None:
        query = _filled(query, turn, before, places, day, said)
    about = query.about if query is not None else _notes(text, places_of)
    unknown = turn.reading.unknown_place or (query.unknown_place if query is not None else "")
    real = tuple(p for p in (held.water, *held.places) if p) if not places else ()
    named = named_in(turn.reading, turn.kb)
    first = query.steps[0] if query is not None and query.steps else None
    where = first.places if first is not None and first.places else places
    if query is not None:
        steps = (in_year_held(_ruled(s, book), held.date, turn.clock, book) for s in query.steps)
        query = replace(query, steps=tuple(steps))
    return Context(
        book,
        query,
        where,
        () if where else real,
        "" if where or real else unknown,
        day,
        said or (query is not None and query.day_said),
        named,
        fresh,
        about,
    )


def _of_the_fish(text: str, reading: Reading, held: Held) -> str:
    """The text without lengths that are none of a fish ("caught it 20 feet down", "a 3 inch lure"); how much longer or
    shorter it is makes another length of the one told before ("2 inches longer")."""
    for m in reading.measures:
        thing = re.search(rf"{re.escape(m.words)} (?:of )?([a-z]+)", text, re.IGNORECASE)
        if m.kind != "length" or m.own or thing is None or thing[1].lower() not in OF_OTHERS:
            continue
        more = re.search(rf"{re.escape(m.words)} (longer|bigger|shorter|smaller)\b(?! than)", text)
        before = spoken(held).query
        last = before.steps[-1].length if before is not None and before.steps else c.UNSAID
        if more is not None and last.value is not None:
            length = last.value + m.low / MM[last.unit] * (1 if more[1] in ("longer", "bigger") else -1)
            text = text.replace(more.group(), f"{round(length, 3).normalize():f} {last.unit}", 1)
        text = text.replace(m.words, " ", 1)
    return text


# reading the line -------------------------------------------------------------------------------------------


def _parsed(
    text: str, taxa_of: Resolve, places_of: Resolve, turn: Turn, day: date, before: CatchQuery | None
) -> CatchQuery | None:
    """The catch of the line; days such as "yesterday" count from the clock, a day left out is the one spoken of.

    A place left out is filled in later, from what the whole conversation holds: the line may name a real one.
    """
    if before is not None:
        before = replace(before, steps=tuple(replace(s, places=()) for s in before.steps))
    depth = depth_of(book_of(turn.kb))
    query = parse_catch(text, taxa_of, places_of, turn.clock, before, depth)
    if query is not None and not query.day_said and day != turn.clock:
        query = parse_catch(text, taxa_of, places_of, day, before, depth)
    return query


def _kept_before(held: Held) -> int:
    """How many kept fish were told of before."""
    last = spoken(held).query
    kept = last.steps[-1].kept if last is not None and last.steps else None
    return sum(k.count for k in kept or ())


def _has_fish(query: CatchQuery) -> bool:
    return any(s.any_fish or any(n.taxa for n in s.fish) for s in query.steps)


def _only_words(query: CatchQuery, kb: KnowledgeBase) -> bool:
    """True when what was taken for a fish is no name at all, only common words."""
    if _has_fish(query) or not query.unknown_names:
        return False
    lexicon = lexicon_of(kb)

    def plain(word: str) -> bool:
        dated = word in MONTHS or word in DAYS
        return len(word) < 4 or word in OWNED or dated or bool(lexicon.cues(word)) or lexicon.known(word)

    return all(plain(word) for name in query.unknown_names for word in key(name).split())


def _only_explains(query: CatchQuery, before: CatchQuery | None, turn: Turn) -> bool:
    """True where a length told again of the fish judged before stands beside words that offer no name of another
    ("45, i was holding the tape wrong"; "that's a zorb, 45 cm" offers one)."""
    told = any(m.kind == "length" and (m.own or m.bare) for m in turn.reading.measures)
    if before is None or not _has_fish(before) or _has_fish(query) or not told or turn.reading.outside:
        return False
    last = [re.escape(name.split()[-1]) for name in query.unknown_names]
    offered = rf"\b(?:an?|its|it's|thats|that's|is|was) (?:an? )?(?:{'|'.join(last)})\b"
    return bool(last) and not re.search(offered, query.text, re.IGNORECASE)


def _bare(
    text: str,
    taxa_of: Resolve,
    places_of: Resolve,
    turn: Turn,
    day: date,
    before: CatchQuery | None,
) -> CatchQuery | None:
    """A line that names no fish: what it tells of day, kept fish, length and circumstances."""
    about, rest = read_notes(text, places_of)
    days, rest = read_days(rest, turn.clock, tells_past(text))
    kept, rest = read_kept(rest, taxa_of)
    lengths, _ = read_lengths(rest)
    if before is None and kept is None and not lengths:
        return None
    moment = about.moments[0] if about.moments else None
    length = lengths[0] if lengths else c.UNSAID
    step = Step(length=length, day=days[0] if days else day, kept=kept, moment=moment)
    return CatchQuery(text, (step,), about, day_said=bool(days))


def _notes(text: str, places_of: Resolve) -> Circumstances:
    return read_notes(text, places_of)[0]


# what is carried over -----------------------------------------------------------------------------------------


def _day(turn: Turn) -> tuple[date | None, bool]:
    """The day held in the conversation, that of the clock where none is; None where only a month is known.

    A day without its year is that of the catch judged before where it is the same, else the coming one, or the last
    one gone by where the line tells of the past.
    """
    text = turn.held.date
    if not text:
        return turn.clock, False
    if is_month(text):
        return None, True
    if not text.startswith("--"):
        return date.fromisoformat(text), True
    month, day = int(text[2:4]), text[5:]
    last = spoken(turn.held).query
    before = last.steps[-1].day if last is not None and last.steps and not turn.reading.date else None
    if before is not None and before.isoformat().endswith(text[1:]):
        return before, True
    made = in_some_year(lambda year: date(year, month, int(day)), turn.clock, tells_past(turn.reading.text))
    return made, True


def _before(turn: Turn, day: date) -> CatchQuery | None:
    """The catch of the turns before as one step; with the fish of the last identification where that is newer."""
    held = turn.held
    last = spoken(held).query
    step = last.steps[-1] if last is not None and last.steps else Step()
    judged = held.intent == "rules" and bool(step.fish or step.any_fish)
    if not judged:
        fish = _held_fish(turn)
        same = fish == step.fish
        step = replace(step, fish=fish, any_fish=False, crosses=False, length=step.length if same else c.UNSAID)
    if step.length == c.UNSAID and held.lengths:
        step = replace(step, length=length_of(held.lengths[-1]))
    if not step.fish and not step.any_fish:
        return None
    kept = step.kept if last is not None and (step.day == day or not _placed(last)) else None
    about = last.about if last is not None else Circumstances()
    return CatchQuery("", (replace(step, day=day, kept=kept),), about)


def _held_fish(turn: Turn) -> tuple[Named, ...]:
    """Everything that the fish of the conversation may still be."""
    kb, last = turn.kb, turn.held.last
    found: Iterable[str] = turn.held.taxa
    if last is not None and last.candidates:
        found = [x.taxon for x in last.candidates if x.probability >= STILL_OPEN] or [last.candidates[0].taxon]
    return tuple(_by_label(kb, t) for t in found)[:MOST_FISH]


def _ruled(step: Step, book: Rulebook) -> Step:
    """Of the fishes that one loose name may mean, without those named beside it, those that the rules there name, as
    for a genus; else all."""
    here = [p for place in step.places for p in book.positions(place)]
    rules = [r for r in book.rules.values() if any(stands_at(r, p) for p in here)]
    named = {t for r in rules for t in r.taxa}.union(*(book.members[g] for r in rules for g in r.groups))
    alone = {n.taxa[0] for n in step.fish if len(n.taxa) == 1}
    fish = []
    for name in step.fish:
        if len(name.taxa) > 1:
            name = replace(name, taxa=tuple(t for t in name.taxa if t not in alone) or name.taxa)
        known = tuple(t for t in name.taxa if t in named or any(t in book.lineage.above(x) for x in named))
        fish.append(replace(name, taxa=known) if len(name.taxa) > 1 and known else name)
    return replace(step, fish=tuple(fish))


def _by_label(kb: KnowledgeBase, thing: str) -> Named:
    """A taxon or group of the conversation as if it had been named."""
    taxon = kb.find("taxon", thing)
    return Named(thing, members_of(kb, thing)) if taxon is None else Named(taxon.label, (thing,))


def length_of(measure: Measure) -> c.Length:
    """A typed measure as the length of a catch."""
    unit = {"ft": "in", "m": "cm", "mm": "mm", "cm": "cm"}.get(measure.unit, "in")
    per = {"in": Decimal("25.4"), "cm": Decimal(10), "mm": Decimal(1)}[unit]
    low, high = Decimal(str(measure.low)), Decimal(str(measure.high))
    value = (high / per).quantize(Decimal("0.001")).normalize()
    method = c.FORK if measure.method == "fork" else c.TOTAL
    if measure.about and low == high:
        return c.about(value, unit)
    return c.Length(low, high, method=method, about=measure.about, value=value, unit=unit)


def _filled(
    query: CatchQuery,
    turn: Turn,
    before: CatchQuery | None,
    places: tuple[str, ...],
    day: date | None,
    said: bool,
) -> CatchQuery:
    """The query with place, day, length, kept fish and circumstances of the conversation where it tells none."""
    kept = {k.length.low for s in query.steps for k in s.kept or ()}
    own = [m for m in turn.reading.measures if m.kind == "length" and m.own and length_of(m).low not in kept]
    last = before.steps[-1] if before is not None else Step()
    answered = turn.held.asked is not None and turn.held.asked.kind == "kept-lengths"
    told = spoken(turn.held).query
    whole = bool(turn.reading.water or turn.reading.places) and query.day_said and _has_fish(query)
    alone = whole and (told is None or _placed(told))
    steps = []
    for step in query.steps:
        step = _of_kept(step)
        if step.length == c.UNSAID and own and len(query.steps) == 1 and not answered:
            step = replace(step, length=length_of(own[-1]))
        if not alone:
            step = _carried(step, last, places, not POINTING & set(turn.reading.words))
        elif not step.places:
            step = replace(step, places=places)
        if not query.day_said and said:
            step = replace(step, day=day)
        steps.append(step)
    about = query.about
    if before is not None and not alone:
        moved = bool(turn.reading.water or turn.reading.places)
        earlier = replace(before.about, side="", away=False, private=False) if moved else before.about
        about = _with_earlier(about, earlier)
    return replace(query, steps=tuple(steps), about=about)


def _placed(query: CatchQuery) -> bool:
    """True where a day or a place was told with a catch; fish told of before either count for what comes."""
    return query.day_said or any(s.places for s in query.steps)


def _with_earlier(about: Circumstances, earlier: Circumstances) -> Circumstances:
    """The circumstances with those told earlier where the line tells none."""
    plain = Circumstances()
    told = {f: getattr(earlier, f) for f in Circumstances.__slots__ if getattr(about, f) == getattr(plain, f)}
    return replace(about, **told)


def _of_kept(step: Step) -> Step:
    """Where only kept fish are named ("I have 12 redear", "6 bluegill and 4 redear"), the question is of one more."""
    if any(n.taxa for n in step.fish) or step.any_fish or not step.kept:
        return step
    return replace(step, fish=names) if (names := kept_names(step)) else step


def _same_fish(step: Step, last: Step) -> bool:
    """True where one may be the other."""
    mine, before = ({t for n in s.fish for t in n.taxa} for s in (step, last))
    return not mine or not before or bool(mine & before)


def _carried(step: Step, last: Step, places: tuple[str, ...], other: bool) -> Step:
    """The step with what the one before tells; a length stays with its fish (``other``: the line speaks of no same)."""
    if not step.places:
        step = replace(step, places=places)
    if not step.fish and not step.any_fish and not step.crosses:
        count = last.count if step.length == c.UNSAID and step.count == 1 else step.count
        step = replace(step, fish=last.fish, any_fish=last.any_fish, crosses=last.crosses, count=count)
    other = other and not _same_fish(step, last)
    if step.length == c.UNSAID and not other:
        step = replace(step, length=last.length)
    if step.kept is None and step.day == last.day:
        kept = last.kept
        if other and kept is not None and len(last.fish) == 1:
            kept = tuple(replace(k, name=k.name or last.fish[0]) for k in kept)
        step = replace(step, kept=kept)
    elif step.kept and step.day == last.day and not any(k.today for k in step.kept):
        step = replace(step, kept=(*(k for k in last.kept or () if k.today), *step.kept))
    if step.moment is None and step.day == last.day:
        step = replace(step, moment=last.moment)
    return step


def _places(held: Held, reading: Reading, book: Rulebook) -> tuple[str, ...]:
    """The ruled place held: the water, else the one jurisdiction or zone."""
    if reading.unknown_place and not reading.water and not reading.places:
        return ()
    if held.water and book.positions(held.water):
        return (held.water,)
    if held.water:
        return ()
    found = tuple(p for p in held.places if book.positions(p))
    return found[:1]
