"""The rules of a place and day told without a fish in hand: what is open, how many, how long, from when (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import NamedTuple

from assistant.dialogue.answer import Block
from assistant.dialogue.rules import words
from assistant.dialogue.rules.catch_judge import meant
from assistant.dialogue.rules.catch_query import Named
from assistant.dialogue.rules.grounds import numbers_of, season_of
from assistant.dialogue.rules.telling import special, statements
from assistant.dialogue.wording import limits
from assistant.dialogue.wording import rules as say
from assistant.dialogue.wording import surveys as tell
from assistant.model.knowledge import KnowledgeBase
from assistant.model.regulations import LAYERS, Rulebook
from assistant.reasoning.outlook import Line, Outlook, outlooks, upcoming
from assistant.text import join, unique

MOST_LINES = 14
WHOLE_YEAR = 364
"""Days between the first and the last of a season that never closes."""


@dataclass(frozen=True, slots=True)
class Survey:
    """What was found: blocks, rules, the verdict word where all lines agree, and what the standing note needs.

    ``bag`` is the daily bag that all lines share which are open for keeping; None where there is none or several.
    """

    blocks: tuple[Block, ...]
    rules: tuple[str, ...]
    verdict: str | None
    as_of: str
    rule_year: tuple[str, str]
    bag: int | None = None


class Wish(NamedTuple):
    """What is wanted of a survey: only what is open, on which days, of which side, of a month, which length."""

    only_open: bool = False
    when: bool = False
    side: str = ""
    month: bool = False
    sized: bool = False


PLAIN = Wish()


def survey(
    kb: KnowledgeBase, book: Rulebook, place: str, day: date, named: Sequence[Named], wish: Wish = PLAIN
) -> Survey:
    """The rules at a place on a day, for the fishes named or for all that the rules there name."""
    here = book.positions(place)
    wanted = unique(t for n in named for m in meant(n, here, book) for t in _spread(m, book))
    name = " / ".join(unique(n.words.lower() for n in named))
    found = sorted(_on_side(outlooks(place, day, book, wanted), wish.side), key=lambda o: not o.held)
    one = found[0] if len(found) == 1 else None
    where = words.place_words(kb, place) if one is None else _side(kb, place, one, len(here) > 1)
    at = words.at_words(kb, place) if one is None or one.position.place == place else limits.on_water(where)
    near = [_or_nearest(o, place, book, wanted) for o in found]
    first = _first_of_year_held(day, found, near) if wish.month and not wish.when else None
    head = tell.outlook_lead(at if name else where, words.day_words(day), name)
    if first is not None:
        months = words.month_words(first), words.month_words(day)
        head = tell.year_held_lead(at if name else where, *months, name, _ahead(found[0]))
    lead = Block("lead", head, claim=False)
    blocks = _orders(book, found)
    wish = wish._replace(only_open=wish.only_open and not wanted, month=first is not None)
    labels = [_side(kb, place, o, len(here) > 1) for o in found]
    sides = [
        _at(kb, book, nearest, o, label, name, wish)
        for nearest, o, label in zip(near, found, labels, strict=True)
    ]
    shared = [b for b in sides[0] if all(b in side for side in sides)] if sides else []
    blocks += shared
    for label, side in zip(labels, sides, strict=True):
        own = [b for b in side if b not in shared]
        if own and len(found) > 1 and label != where:
            blocks.append(Block("point", tell.side_heading(label, bool(shared)), claim=False))
        blocks += own
    if len(blocks) == 1 and not wish.only_open:
        (only,) = blocks
        text = tell.outlook_single(lead.text, only.text, name)
        lead, blocks = Block("lead", text, statements=only.statements, claim=only.claim), []
    if first is not None:
        blocks.append(_month_not_held(found[0], where, day))
    blocks += [*(_told(kb, book, _on_gear(kb, book, near)) if name else ()), *_later(book, found, day, wanted)]
    return Survey((lead, *blocks), _rules(found), _verdict(found, bool(named)), *_dates(found), _bag(near))


def _on_side(found: Sequence[Outlook], side: str) -> list[Outlook]:
    """The outlooks of the side told; all where none of them is."""
    mine = [o for o in found if side in (o.position.jurisdiction, o.position.zone, o.position.side, o.position.place)]
    return mine if side and mine else list(found)


def _side(kb: KnowledgeBase, place: str, outlook: Outlook, several: bool) -> str:
    """The place, with the side or part that an outlook is for where there are several."""
    where, own = words.place_words(kb, place), outlook.position.place
    if own and own != place:
        return words.place_words(kb, own)
    return tell.on_side(where, outlook.position.side) if several and outlook.position.side else where


def _later(book: Rulebook, found: Sequence[Outlook], day: date, wanted: Sequence[str]) -> list[Block]:
    """What comes into force at the place later in the rule year: orders, joint rules."""
    out: dict[str, Block] = {}
    for rule in (r for o in found for r in upcoming(o.position, day, book, wanted)):
        stated = [*numbers_of(book, rule), *(say.from_hour(h.starts, h.ends) for h in
                                             (book.hours[x] for x in rule.closed_hours))]
        until = rule.rescinded_on or rule.valid_through
        text = tell.later(words.day_words(rule.valid_from), words.day_words(until) if until else "", rule.label,
                          stated, bool(rule.closed_hours), say.rule(words.rule_tag(book, rule.id)))
        out.setdefault(rule.id, Block("point", text, statements=statements((rule.id,))))
    return list(out.values())


def named_here(kb: KnowledgeBase, book: Rulebook, place: str, day: date) -> tuple[list[str], tuple[str, ...]]:
    """The fishes and groups that the rules of a place name, and those rules."""
    found = [o for o in (_or_nearest(o, place, book, ()) for o in outlooks(place, day, book)) if o.held]
    lines = [(_name(kb, book, line), line.rules) for o in found for line in o.lines]
    return list(unique(name for name, _ in lines)), unique(r for _, rules in lines for r in rules)


def _first_of_year_held(day: date, found: Sequence[Outlook], near: Sequence[Outlook]) -> date | None:
    """The first day of the same month in the rule year held, where no rules are held for the month itself."""
    days = {o.day for o in near if o.held}
    return days.pop() if {d.month for d in days} == {day.month} and not any(o.held for o in found) else None


def _month_not_held(asked: Outlook, where: str, day: date) -> Block:
    """That no rules are held for the month asked about."""
    text = tell.not_held(where, words.month_words(day), *_year_words(asked), _ahead(asked), month=True)
    return Block("point", f"{text} {tell.ANOTHER_YEAR}", claim=False)


def _ahead(asked: Outlook) -> bool:
    """True for a day behind the rule year held."""
    return asked.day.isoformat() > asked.rule_year[1]


def _year_words(outlook: Outlook) -> tuple[str, str]:
    first, last = outlook.rule_year
    return (words.day_words(first), words.day_words(last)) if first else ("", "")


def _or_nearest(outlook: Outlook, place: str, book: Rulebook, wanted: Sequence[str]) -> Outlook:
    """The outlook itself, or that of the same day in the rule year held, or its nearest, where the day is outside."""
    first, last = outlook.rule_year
    if outlook.held or not first:
        return outlook
    day = in_rule_year(outlook.day, date.fromisoformat(first), date.fromisoformat(last))
    near = (o for o in outlooks(place, day, book, wanted) if o.position == outlook.position)
    return next(near, outlook)


def in_rule_year(day: date, first: date, last: date) -> date:
    """The same day between two days, or the nearest of the two where it does not lie between them in any year."""
    years = range(first.year, last.year + 1) if (day.month, day.day) != (2, 29) else ()
    same = (day.replace(year=year) for year in years)
    return next((d for d in same if first <= d <= last), first if day < first else last)


def _rules(found: Sequence[Outlook]) -> tuple[str, ...]:
    lines = [r for o in found for line in o.lines for r in line.rules]
    return unique([*lines, *(c for o in found for c in o.closures)])


def _dates(found: Sequence[Outlook]) -> tuple[str, tuple[str, str]]:
    """The day of the last check, and the rule year that all sides share."""
    held = [o for o in found if o.held] or list(found)
    first = max((o.rule_year[0] for o in held), default="")
    last = min((o.rule_year[1] for o in held), default="")
    return min((o.as_of for o in found if o.as_of), default=""), (first, last)


def _spread(name: str, book: Rulebook) -> tuple[str, ...]:
    """A group of the rules by its members; a genus or family by those of its fish that the rules name."""
    if name in book.groups:
        return tuple(sorted(book.members[name]))
    own = {t for r in book.rules.values() for t in r.taxa} | {t for m in book.members.values() for t in m}
    below = tuple(sorted(m for m in own if name in book.lineage.above(m)))
    return below or (name,)


def _verdict(found: Sequence[Outlook], asked: bool) -> str | None:
    """ "closed" or "release" where nothing else holds for what was asked; "unknown" where nothing is held."""
    if not any(o.held for o in found):
        return "unknown"
    lines = [line for o in found for line in o.lines]
    if not asked:
        return None
    if not lines:
        return "unknown"
    modes = {line.listed or line.season.mode for line in lines}
    return (
        {
            "closed": "closed",
            "catch-and-release": "release",
            "protected": "release",
            "prohibited": "do-not-release",
        }.get(modes.pop())
        if len(modes) == 1
        else None
    )


def _bag(found: Sequence[Outlook]) -> int | None:
    """The daily bag that all lines share; None where one is closed, without a limit, or of another bag."""
    lines = [line for o in found for line in o.lines]
    bags = {None if x.no_limit or x.listed or x.season.mode != "harvest" else x.daily for x in lines}
    return bags.pop() if len(bags) == 1 else None


def _at(
    kb: KnowledgeBase, book: Rulebook, outlook: Outlook, asked: Outlook, where: str, name: str, wish: Wish
) -> list[Block]:
    """The lines of one side or part; where the day asked for is not covered, that first."""
    blocks: list[Block] = []
    if not asked.held and not wish.month:
        text = tell.not_held(where, words.day_words(asked.day), *_year_words(asked), _ahead(asked))
        blocks.append(Block("point", text, claim=False))
        if not outlook.held:
            return blocks
        blocks.append(Block("point", tell.in_rule_year(words.day_words(outlook.day)), claim=False))
    if outlook.under_age is not None:
        blocks.append(Block("point", tell.under_age(outlook.under_age), claim=False))
    shut = _shut(book, outlook)
    if wish.only_open and not shut:
        return [*blocks, *_open(kb, book, outlook), *(_closure(book, rule) for rule in outlook.ahead)]
    lines = [*shut, *_lines(kb, book, outlook, wish)]
    closures = [_closure(book, rule) for rule in outlook.ahead]
    blocks += lines[:MOST_LINES]
    if name:
        none = [Block("point", tell.nothing_named(name, where), claim=False)]
        return [*blocks, *(closures if lines else none)]
    return [*blocks, *closures, *_duties(kb, book, outlook)]


def _shut(book: Rulebook, outlook: Outlook) -> list[Block]:
    """That the place is closed to all fishing on the day, in place of a line for every fish."""
    found = {
        x.season.rule: x.season
        for x in outlook.lines
        if x.season.mode == "closed" and x.season.rule in outlook.closures
    }
    out = []
    for rule, season in sorted(found.items()):
        opens = words.day_words(season.last + timedelta(days=1)) if season.last is not None else ""
        text = tell.closed_to_all(opens, say.rule(words.rule_tag(book, rule)))
        out.append(Block("point", text, statements=statements((rule,))))
    return out


def _lines(kb: KnowledgeBase, book: Rulebook, outlook: Outlook, wish: Wish) -> list[Block]:
    """One block for all fishes that stand under the same words, those of the narrowest rules first."""
    names: dict[tuple[tuple[str, ...], tuple[str, ...]], list[str]] = {}
    for line in sorted(outlook.lines, key=lambda x: -_narrow(book, x)):
        if line.season.mode == "closed" and line.season.rule in outlook.closures:
            continue
        parts = (
            (tell.LISTED[line.listed],)
            if line.listed
            else (*([tell.NO_LENGTH] if wish.sized and not line.lengths else []),
                  *_season(book, line, outlook.day, wish.when), *_when_open(line, _numbers(kb, book, line)))
        )
        names.setdefault((parts, line.rules), []).append(_name(kb, book, line))
    return [
        Block(
            "point",
            tell.outlook_line(_capital(join(list(unique(who)))), list(parts), say.rules(words.tags(book, rules))),
            statements=statements(rules),
        )
        for (parts, rules), who in names.items()
    ]


def _narrow(book: Rulebook, line: Line) -> int:
    """How narrow the rules of a line are that name its fish; the lists come last."""
    own = (book.rules[r] for r in line.rules if not book.rules[r].all_fish)
    return -1 if line.listed else max((LAYERS.index(r.layer) for r in own), default=0)


def _season(book: Rulebook, line: Line, day: date, when: bool) -> list[str]:
    """Whether it is open on the day and until when; where the days are asked for, every window of the year."""
    now = words.season_words(line.season, day)
    kept = "catch-and-release" if line.daily == 0 and not line.no_limit else ""
    told = [season_of(book.seasons[w], r, kept) for w in line.windows
            for r in (book.rules[x] for x in line.rules) if w in r.seasons]
    first, last = line.season.first, line.season.last
    whole = first is not None and last is not None and (last - first).days >= WHOLE_YEAR
    return [tell.ON_THE_DAY[line.season.mode], *unique(told)] if when and told and not whole else [now]


def _when_open(line: Line, numbers: list[str]) -> list[str]:
    return tell.then(numbers) if line.season.mode == "closed" and line.season.next_open else numbers


def _open(kb: KnowledgeBase, book: Rulebook, outlook: Outlook) -> list[Block]:
    """Which fishes are open, for release only, or closed on the day: a line each, with the day on which it opens."""
    told: dict[str, list[str]] = {mode: [] for mode in tell.OPEN}
    rules: dict[str, list[str]] = {mode: [] for mode in tell.OPEN}
    for line in (x for x in outlook.lines if x.season.mode in told and not x.listed):
        opens = words.day_words(line.season.next_open) if line.season.next_open is not None else ""
        bare = line.season.mode == "harvest" and line.daily == 0 and not line.no_limit
        mode = "catch-and-release" if bare else line.season.mode
        told[mode].append(tell.opening(_name(kb, book, line), opens))
        rules[mode] += [line.rule if bare else line.season.rule]
    return [
        Block("point", tell.open_line(mode, join(list(unique(names)))), statements=statements(unique(rules[mode])))
        for mode, names in told.items() if names
    ]


def _name(kb: KnowledgeBase, book: Rulebook, line: Line) -> str:
    """The group counted together, or the one fish of it that was asked about."""
    if not line.group:
        return words.fish_words(kb, line.taxa)
    return words.name_of(kb, line.taxa[0]) if _alone(book, line) else words.counted(kb, book, line.group)


def _alone(book: Rulebook, line: Line) -> bool:
    """True for one fish of a group that is counted together."""
    return bool(line.group) and len(line.taxa) == 1 and len(book.members[line.group]) > 1


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _numbers(kb: KnowledgeBase, book: Rulebook, line: Line) -> list[str]:
    """Bag, possession, limits within and above it, and lengths."""
    if line.no_limit:
        parts = [tell.STATED_NO_LIMIT]
    elif line.daily is None:
        parts = [] if line.season.mode == "closed" else [tell.NO_BAG]
    elif line.daily == 0:
        return [tell.NONE_KEPT]
    else:
        together = bool(line.group) and len(book.members[line.group]) > 1
        parts = [tell.bag(line.daily, together, words.counted(kb, book, line.group) if _alone(book, line) else "")]
        if line.possession is not None:
            parts.append(tell.possession(line.possession))
    for sub in line.sub_limits:
        parts.append(tell.sub_limit(book.sub_limits[sub].count, book.sub_limits[sub].label))
    parts += [tell.shared(b.count, words.counted(kb, book, b.name)) for b in line.shared if b.count is not None]
    return parts + [words.limit_words(x) for x in line.lengths] + [words.over_words(x) for x in line.overs]


def _orders(book: Rulebook, found: Sequence[Outlook]) -> list[Block]:
    """Emergency orders and closed hours among the rules that hold."""
    rules = unique(r for o in found for line in o.lines for r in line.rules)
    return [Block("point", text, statements=statements((r,))) for r in rules for text in special(book, (r,))]


def _closure(book: Rulebook, rule: str) -> Block:
    windows = [season_of(book.seasons[w], book.rules[rule]) for w in book.rules[rule].seasons]
    text = tell.closures(join(windows), say.rule(words.rule_tag(book, rule)))
    return Block("point", text, statements=statements((rule,)))


def _duties(kb: KnowledgeBase, book: Rulebook, outlook: Outlook) -> list[Block]:
    """All that is demanded of whoever fishes there, as one block."""
    return _told(kb, book, outlook.duties)


def _on_gear(kb: KnowledgeBase, book: Rulebook, found: Sequence[Outlook]) -> tuple[tuple[str, str], ...]:
    """The gear that the rules of some lines demand, each with its rule."""
    rules = unique(r for o in found if o.held for line in o.lines for r in line.rules)
    return tuple((duty, r) for r in rules for duty in book.rules[r].obligations
                 if (record := kb.find("obligation", duty)) is not None and record.topic == GEAR)


GEAR = "gear"
"""The topic of duties on hooks and lures."""


def _told(kb: KnowledgeBase, book: Rulebook, duties: Sequence[tuple[str, str]]) -> list[Block]:
    texts, rules = [], []
    for duty, rule in duties:
        record = kb.find("obligation", duty)
        if record is not None:
            texts.append(say.obligation(record.text, say.rule(words.rule_tag(book, rule))))
            rules.append(rule)
    return [Block("point", say.obligations(list(unique(texts))), statements=statements(rules))] if texts else []
