"""A catch as said, judged under a rule book: names become candidates, steps become verdicts in order (layer 4)."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

from assistant.dialogue.rules.catch_query import CatchQuery, KeptSaid, Named, Step, kept_names
from assistant.model.regulations import Placement, Rulebook
from assistant.reasoning import catch as c
from assistant.reasoning.legality import verdict
from assistant.reasoning.precedence import groups_at
from assistant.reasoning.verdict import Reason, Verdict, Word
from assistant.text import key, singular

_CROSS_WORDS = re.compile(
    r"\b(?:hybrids?|cross(?:es|ed)?|mix(?:ed)?|of some sort|some (?:sort|kind) of|a|an)\b", re.IGNORECASE)


def judge(query: CatchQuery, book: Rulebook) -> tuple[Verdict, ...]:
    """One verdict for each step; of several fish of one outing, those that may (or might) be kept count for the next.

    The verdict on a step of several fish is that on the last of them, or on the first where it is no other.
    """
    found: list[Verdict] = []
    earlier: list[c.Kept] = []
    last: Step | None = None
    for step, catch in zip(query.steps, catches(query, book), strict=True):
        if last is None or (last.places, last.day) != (step.places, step.day):
            earlier = []
        taxa = _members(catch.candidates, book)
        length = c.NOT_LARGE if catch.length == c.UNSAID else catch.length
        same = (c.Kept(step.count - 1, taxa, length),) if step.count > 1 else ()
        first = verdict(replace(catch, besides=tuple(earlier)), book)
        told = verdict(replace(catch, besides=(*earlier, *same)), book) if same else first
        found.append(first if told.word is first.word and told.word is not Word.KEEP else told)
        if query.growing and told.word in (Word.KEEP, Word.UNKNOWN):
            earlier.append(c.Kept(step.count, taxa, catch.length))
        last = step
    return tuple(found)


def parted(query: CatchQuery, book: Rulebook) -> CatchQuery:
    """The query with a step of several fish in two, the first and the rest, where the same does not hold for all."""
    steps: list[Step] = []
    query = replace(query, growing=query.growing or any(s.count > 1 for s in query.steps))
    for step in query.steps:
        if step.count == 1:
            steps.append(step)
            continue

        def word(count: int, step: Step = step) -> Word:
            return judge(replace(query, steps=(*steps, replace(step, count=count))), book)[-1].word

        first = word(1)
        alike = bisect_left(range(1, step.count + 1), True, key=lambda n: word(n) is not first)
        steps.append(replace(step, count=alike))
        if alike < step.count:
            steps.append(replace(step, count=step.count - alike))
    return replace(query, steps=tuple(steps))


def each_kept(query: CatchQuery, book: Rulebook) -> CatchQuery:
    """The query with a step on fish that are known only as the kinds kept in one step a kind, where the same does not
    hold for all of them.
    """
    steps: list[Step] = []
    for step in query.steps:
        kinds = [replace(step, fish=(name,)) for name in step.fish]
        told = {_outcome(v) for k in kinds for v in judge(replace(query, steps=(k,)), book)}
        several = len(told) > 1 and [n.words for n in step.fish] == [n.words for n in kept_names(step)]
        steps += kinds if several else [step]
    return replace(query, steps=tuple(steps))


def _outcome(told: Verdict) -> tuple[Word, Reason]:
    """A verdict and its reason, whatever kind it is about where a rule decides."""
    return told.word, replace(told.reason, taxon="") if told.reason.rule else told.reason


def catches(query: CatchQuery, book: Rulebook) -> tuple[c.Catch, ...]:
    """The catch of each step, every name turned into what it may be at that place."""
    return tuple(_catch(query, step, book) for step in query.steps)


def _catch(query: CatchQuery, step: Step, book: Rulebook) -> c.Catch:
    about = query.about
    places = _narrowed(step.places, about.side, book)
    here = tuple(p for place in places for p in book.positions(place))
    candidates = (c.ANY_FISH,) if step.any_fish else _candidates(step, here, book)
    kept = None if step.kept is None else tuple(_kept(k, candidates, here, book) for k in step.kept)
    return c.Catch(candidates, places, step.day, step.moment, step.length, kept, about.side, about.away,
                   about.private, about.age, about.on_ice, about.dead, about.deep_hooked, about.tail_torn,
                   about.licences)


def _narrowed(places: tuple[str, ...], side: str, book: Rulebook) -> tuple[str, ...]:
    """Of several places with one name, those on the side that was told."""
    if not side or len(places) < 2:
        return places
    mine = tuple(p for p in places if any(side in (x.jurisdiction, x.zone) for x in book.positions(p)))
    return mine or places


def _candidates(step: Step, here: Sequence[Placement], book: Rulebook) -> tuple[str, ...]:
    found = [t for name in step.fish for t in meant(name, here, book)]
    if step.crosses:
        found += _crosses(found, here, book)
    return tuple(dict.fromkeys(found))


def _crosses(taxa: list[str], here: Sequence[Placement], book: Rulebook) -> list[str]:
    """Every cross of two of the fish named; of a single one, its known crosses with fish that rules here name."""
    plain = [t for t in taxa if t not in book.groups and not book.lineage.parents(t)]
    if len(plain) > 1:
        return [book.lineage.cross_of(a, b) for n, a in enumerate(plain) for b in plain[n + 1:]]
    mine = [cross for cross, parents in sorted(book.lineage.crosses.items()) if set(plain) & set(parents)]
    named = {t for g in groups_at(here, book) for t in book.members[g]}
    return [x for x in mine if x in named or set(book.lineage.parents(x)) <= named] or mine


def meant(name: Named, here: Sequence[Placement], book: Rulebook) -> tuple[str, ...]:
    """What a name means under the rules here: a group before a loose name, for crosses too."""
    group = group_called(name.words, here, book)
    if not group and not any(book.lineage.parents(t) for t in name.taxa):
        group = group_called(_CROSS_WORDS.sub(" ", name.words), here, book)
    if group and len(book.members[group]) == 1:
        return tuple(book.members[group])
    return (group,) if group else name.taxa


def group_called(words: str, here: Sequence[Placement], book: Rulebook) -> str:
    """The group that the rules at these placements call so, the strongest layer first, or nothing."""
    wanted = _word_key(words)
    for name in groups_at(here, book):
        group = book.groups[name]
        if wanted in {_word_key(w) for w in (group.label, *group.words)}:
            return name
    return ""


@lru_cache(maxsize=4096)
def _word_key(text: str) -> str:
    return " ".join(singular(w) for w in key(text).split())


def _kept(said: KeptSaid, same: tuple[str, ...], here: Sequence[Placement], book: Rulebook) -> c.Kept:
    """Kept fish as counted: a group's name stands for any of its members."""
    names = same if said.name is None or not (said.name.taxa or group_called(said.name.words, here, book)) \
        else meant(said.name, here, book)
    return c.Kept(said.count, _members(names, book), said.length, said.today, said.held)


def _members(names: Sequence[str], book: Rulebook) -> tuple[str, ...]:
    """The taxa themselves, the groups among them by their members."""
    return tuple(dict.fromkeys(t for n in names for t in (sorted(book.members[n]) if n in book.groups else (n,))))
