"""What to look at next: the best question now, or what to check on a fish named (layer 4)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.asked_about import kinds_name
from assistant.dialogue.asking import ask_block, next_asked
from assistant.dialogue.conversation import Held
from assistant.dialogue.observing import evidence_of, observe
from assistant.dialogue.subjects import groups, named, species_of, subjects
from assistant.dialogue.telling import place_names
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import contrast as apart
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import naming as wording
from assistant.dialogue.wording import speak
from assistant.reasoning.contrast import LOOKS, ContrastRow, contrast
from assistant.reasoning.identify import posterior
from assistant.text import join

FIRST, MOST_CHOICES = 4, 6
NOW_WHAT = "now-what"
"""The cue of a line that asks what else to look at: the question asked stays open."""
NEAREST, LEAST_SHARE = 3, 0.02
"""So many fishes nearest to what was seen are told apart, and the share from which a third is one of them."""


def handle(turn: Turn) -> tuple[Answer, Held]:
    """Leave the question asked aside and ask the next best, or say that nothing more would help."""
    held = turn.held
    if (about := subjects(turn, carried=False)) and not held.seen:
        answer, _ = _marks(turn, about)
        return answer, observe(turn.kb, held, turn.reading) if groups(turn.reading) else held
    if "what-held" in turn.cues:
        return _so_far(turn)
    weights = posterior(turn.kb, turn.table, evidence_of(held))
    shares = {t: float(w) for t, w in zip(turn.table.taxa, weights, strict=True)}
    compared = held.taxa if held.intent == "contrast" and len(held.taxa) > 1 and not held.seen else ()
    apart_of = compared or (_nearest(turn, shares) if NOW_WHAT in turn.cues and held.seen else ())
    if apart_of and (told := _apart(turn, apart_of, shares)) is not None:
        return told, held.after(asked=told.asked)
    lead: list[Block] = []
    left = held.asked.character if held.asked is not None else ""
    if left:
        held = held.after(skipped=held.skipped | {left})
        lead = [Block("lead", wording.passed_over(turn.kb.character(left).label), claim=False)]
    asked = next_asked(turn, held, shares)
    if asked is None:
        return Answer("next-question", (*lead, Block("next", wording.NOTHING_TO_ASK, claim=False)), held.taxa), held
    if not lead and not held.seen:
        lead = [Block("lead", wording.lead_nothing_seen(), claim=False)]
    return Answer("next-question", (*lead, ask_block(turn, asked)), held.taxa, asked=asked), held


def _nearest(turn: Turn, shares: Mapping[str, float]) -> tuple[str, ...]:
    """The fishes nearest to what was seen."""
    able = [t for t in shares if not turn.kb.taxon(t).is_hybrid]
    ranked = sorted(able, key=lambda t: (-shares[t], t))[:NEAREST]
    return tuple(t for i, t in enumerate(ranked) if i < NEAREST - 1 or shares[t] >= LEAST_SHARE)


def _apart(turn: Turn, kinds: tuple[str, ...], shares: Mapping[str, float]) -> Answer | None:
    """What tells these fishes apart, what was seen left out; None where nothing held does."""
    kb, held = turn.kb, turn.held
    done = {s.observation.character for s in held.seen}
    looks = LOOKS["lab"] if held.dead else LOOKS["hand"]
    rows = [r for r in contrast(kb, kinds, looks).separating if r.character not in done][:FIRST]
    if not rows:
        return None
    names = join([speak.fish(kb, t) for t in kinds])
    lead = Block("lead", apart.nearest_apart(names), statements=tuple(f"taxon:{t}" for t in kinds))
    asked = held.asked or (next_asked(turn, held, shares) if held.seen else None)
    blocks = [lead, *_told_apart(turn, rows), *([ask_block(turn, asked)] if asked is not None else [])]
    return Answer("next-question", tuple(blocks), kinds, asked=asked)


def _told_apart(turn: Turn, rows: Sequence[ContrastRow]) -> list[Block]:
    """Each feature with what is told of each fish on it."""
    kb = turn.kb
    out: list[Block] = []
    for row in rows:
        character = kb.character(row.character)
        told = "; ".join(
            say.each(speak.fish(kb, t.taxon), speak.told_words(kb, t, character, turn.held.units))
            for t in row.told
            if t
        )
        ids = speak.short_ids(s for t in row.told if t for s in t.statements)
        out.append(Block("point", say.entry(speak.heading(character), told), statements=ids))
    return out


def _so_far(turn: Turn) -> tuple[Answer, Held]:
    """What the conversation holds: the fishes spoken of, what was seen, where and how big."""
    kb, held = turn.kb, turn.held
    seen = join([speak.seen_words(kb, s.observation) for s in held.seen])
    text = wording.so_far(
        speak.fishes(kb, held.taxa),
        seen,
        place_names(kb, held.places),
        held.lengths[-1].words if held.lengths else "",
    )
    return Answer("next-question", (Block("lead", text, claim=False),), held.taxa, asked=held.asked), held


def _marks(turn: Turn, about: tuple[str, ...]) -> tuple[Answer, Held]:
    """The features to check first on the fish or group named: what tells its kinds (or its look-alikes) apart."""
    from assistant.dialogue.handlers.contrast import look_alikes

    kb = turn.kb
    kinds = species_of(kb, about)
    kinds = tuple(sorted(kinds, key=lambda t: (-len(kb.ranges(t)), t)))[:3]
    if len(kinds) == 1:
        kinds += tuple(t for t, _ in look_alikes(kb, kinds[0]) if not kb.taxon(t).is_hybrid)[:2]
    if len(kinds) < 2:
        return Answer("next-question", (Block("lead", wording.lead_nothing_seen(), claim=False),), about), turn.held
    looks = LOOKS["lab"] if turn.held.dead else LOOKS["hand"]
    rows = contrast(kb, kinds, looks).separating[:FIRST]
    blocks = [Block("lead", wording.look_lead(kinds_name(kb, about[0], 1)), claim=False)]
    blocks += _told_apart(turn, rows)
    if not rows:
        blocks.append(Block("next", wording.LOOK_ASK, claim=False))
        return Answer("next-question", tuple(blocks), named(turn) or about), turn.held
    first = kb.character(rows[0].character)
    stated = tuple((s.id, s.label) for s in kb.states(first.id)) if first.is_stated else ()
    asked = Asked("character", first.question, first.id, stated[:MOST_CHOICES])
    blocks.append(ask_block(turn, asked))
    return Answer("next-question", tuple(blocks), named(turn) or about, asked=asked), turn.held
