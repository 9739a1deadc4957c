"""True-or-false items made from the list of fishes just given: who is in it, and who surely is not (layer 4)."""

from __future__ import annotations

import random
from collections.abc import Sequence

from assistant.dialogue.fitting import Fitting, fitting
from assistant.dialogue.lessons.quiz_words import Question
from assistant.dialogue.reader.reading import Seen
from assistant.dialogue.subjects import species_of
from assistant.dialogue.telling import place_names
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import lesson as say
from assistant.dialogue.wording import quiz as wording
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Range
from assistant.reasoning.living import LIVING, status_in
from assistant.reasoning.place_prior import LISTED, WELL_LISTED, expand_places
from assistant.text import unique

SURE, NEARLY_ALL, LACKING = 0.8, 0.88, 0.94
"""Share of fish of a kind from which it has the feature asked about, has it without "usually", and lacks it."""
TOLD_PLACES = 3
LIST, RANGE, ABSENT = "list", "range:", "absent"


def list_items(turn: Turn, count: int, seed: int) -> tuple[Question, ...]:
    """So many items on the features or the place by which the last list was narrowed; none where it was by neither.

    About as many are true as false; a kind that shows a feature only at times is not asked about.
    """
    held, rng = turn.held, random.Random(seed)
    asked = [s for s in held.seen if not s.retract and s.observation.states]
    if held.intent != LIST or held.last is None:
        return ()
    if asked:
        true, false = _by_feature(turn.kb, held.shown, asked)
    elif held.places and any(s.startswith(RANGE) for b in held.last.blocks for s in b.statements):
        true, false = _by_place(turn.kb, held.shown, held.taxa, held.places)
    else:
        return ()
    rng.shuffle(true)
    rng.shuffle(false)
    half = count // 2 if seed % 2 else count - count // 2
    half = max(half, count - len(false))
    items = [*true[:half], *false[: count - min(half, len(true))]]
    rng.shuffle(items)
    return tuple(items)


def _by_feature(kb: KnowledgeBase, shown: Sequence[str],
                asked: Sequence[Seen]) -> tuple[list[Question], list[Question]]:
    """Items on kinds of the list that have what was asked for, and on kinds that surely lack it, kin of them first."""
    pool = [t for t in kb.species if not kb.taxon(t).is_hybrid]
    inside = [f for f in fitting(kb, pool, [s.observation for s in asked]).fits
              if f.taxon in shown and f.share >= SURE]
    denied = fitting(kb, pool, [o._replace(seen=not o.seen) for o in (s.observation for s in asked[:1])])
    outside = [f for f in denied.fits if f.share >= LACKING]
    kin = {kb.lineage(t)[-1] for t in shown if kb.find("taxon", t) is not None}
    near = [f for f in outside if kb.lineage(f.taxon)[-1] in kin]
    outside = near if len(near) > CHOSEN else outside
    told = say.either([speak.seen_words(kb, s.observation) for s in asked], "and")
    return ([_item(kb, f, told, True) for f in inside], [_item(kb, f, told, False) for f in outside])


CHOSEN = 2
"""More kin than these that lack the feature, and no others are asked about."""


def _item(kb: KnowledgeBase, one: Fitting, told: str, true: bool) -> Question:
    """One statement on a feature with its answer and what it rests on."""
    fish, usual = speak.fish(kb, one.taxon), true and one.share < NEARLY_ALL
    reason = say.quiz_has(fish, told, False, usual) if true else wording.not_so(fish, told)
    return Question(say.quiz_true_false(fish, told, usual), (say.TRUE, say.FALSE), 0 if true else 1, reason, "",
                    one.statements[:2])


def _by_place(kb: KnowledgeBase, shown: Sequence[str], taxa: Sequence[str],
              places: Sequence[str]) -> tuple[list[Question], list[Question]]:
    """Items on kinds listed for the place, and on kin of them listed for other places only."""
    where, wanted = place_names(kb, tuple(places)), expand_places(kb, tuple(places))
    wide = [t for t in taxa if (x := kb.find("taxon", t)) is None or not x.is_species]
    kin = species_of(kb, tuple(wide)) or species_of(kb, unique(
        kb.lineage(t)[-1] for t in shown if kb.find("taxon", t) is not None))
    true, false = [], []
    for taxon in (t for t in kin if not kb.taxon(t).is_hybrid):
        row, fish = status_in(kb, taxon, wanted), speak.fish(kb, taxon)
        question, choices = wording.lives_in(fish, where), (say.TRUE, say.FALSE)
        if row is not None and row.status in LIVING:
            why = wording.listed(fish, where, row.status)
            true.append(Question(question, choices, 0, why, "", (f"{RANGE}{row.id}",)))
        elif row is not None and row.status == ABSENT:
            false.append(Question(question, choices, 1, wording.listed(fish, where, ABSENT), "", (f"{RANGE}{row.id}",)))
        elif row is None and len(rows := _states_lived_in(kb, taxon)) >= WELL_LISTED:
            others = place_names(kb, tuple(r.place for r in rows[:TOLD_PLACES]))
            why = wording.listed_elsewhere(fish, others, where)
            ids = tuple(f"{RANGE}{r.id}" for r in rows[:TOLD_PLACES])
            false.append(Question(question, choices, 1, why, "", ids))
    return true, false


def _states_lived_in(kb: KnowledgeBase, taxon: str) -> list[Range]:
    """The states and provinces that a kind is listed for; none where it is listed for waters that may reach further."""
    rows = [r for r in kb.ranges(taxon) if r.status in LIVING]
    return rows if all((p := kb.place(r.place)) is not None and p.kind in LISTED for r in rows) else []
