"""Several kinds in the order of how old they get or how early they spawn, and what waters they share (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.amount_words import system
from assistant.dialogue.answer import Block
from assistant.dialogue.asked_about import kinds_name
from assistant.dialogue.beside.compared import answered, less_asked
from assistant.dialogue.life_asked import SPAWNING, WATERS
from assistant.dialogue.telling import MEMORY, basis_of, ids, trusted
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import care, order
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording.speak import fish as label
from assistant.reasoning.evidence import about, number_range
from assistant.reasoning.months import seasons_of
from assistant.text import word_set
from assistant.units import celsius_to_fahrenheit

AGE, WARMTH = "max-age", "spawning-temperature"
EARLY = word_set("first earlier earliest early sooner before colder coldest cold")
LATE = word_set("last later latest late after warmer warmest warm")
WARMING = frozenset({"spring", "summer"})
"""Seasons in which the water warms, so that a fish of colder water spawns before one of warmer."""
MOST = 8
AT_ODDS = 2


def by_age(turn: Turn, taxa: Sequence[str], asked: Sequence[str]) -> list[Block]:
    """Which of some kinds lives longest, with the greatest ages held; of a group from which to which age."""
    kb = turn.kb
    ages = {t: max(r[3] for s in found if (r := number_range(s)) is not None)
            for t in taxa if (found := about(kb, t, AGE)[0])}
    if len(ages) < AT_ODDS:
        return []
    answer = answered(turn, ages)
    least = less_asked(turn) and not answer
    ranked = sorted(ages, key=lambda t: (ages[t] if least else -ages[t], t))
    rows = [(label(kb, t), f"{ages[t]:g}") for t in ranked]
    told = [s for t in ranked for s in about(kb, t, AGE)[0]]
    blocks = []
    if "lives-longer" not in turn.cues and len(asked) == 1 and ages[ranked[0]] > ages[ranked[-1]]:
        low, high = sorted((ranked[0], ranked[-1]), key=lambda t: ages[t])
        name = kinds_name(kb, asked[0], len(ages))
        text = order.span_of_ages(name, f"{ages[low]:g}", label(kb, low), f"{ages[high]:g}", label(kb, high))
        blocks.append(Block("point", text, statements=ids(told)))
    text = order.with_answer(answer, order.oldest(rows[:MOST], least))
    blocks.append(Block("point", trusted(text, MEMORY if basis_of(told) == MEMORY else ""), statements=ids(told)))
    silent = [label(kb, t) for t in taxa if t not in ages]
    if silent:
        blocks.append(Block("doubt", order.no_age(len(silent)), claim=False))
    return blocks


def by_spawning(turn: Turn, taxa: Sequence[str]) -> list[Block]:
    """Which of some kinds spawns first (or in colder water), by the water temperatures held; yes or no where asked.

    Empty where no order is asked for, or where one of them spawns in autumn or winter, when water cools.
    """
    words = set(turn.reading.words)
    if not words & (EARLY | LATE):
        return []
    kb, late = turn.kb, bool(words & LATE)
    spans = {t: span for t in taxa if (span := _warmth(turn, t)) is not None}
    if len(spans) < AT_ODDS or any(_autumn(turn, t) for t in spans):
        return []
    edges = {t: round(span[1] if late else -span[0]) for t, span in spans.items()}
    ranked = sorted(edges, key=lambda t: (-edges[t], t))
    answer = answered(turn, {t: -h for t, h in edges.items()} if less_asked(turn) else edges)
    told = [(label(kb, t), _degrees(turn, *spans[t])) for t in ranked[:MOST]]
    answer = answer if len(set(edges.values())) > 1 else ""
    together = [label(kb, t) for t in ranked if edges[t] == edges[ranked[0]]]
    text = order.with_answer(answer, order.spawns_first(told, late, say.names_with(together) if together[1:] else ""))
    found = [s for t in ranked for s in about(kb, t, WARMTH)[0]]
    return [Block("point", trusted(text, MEMORY if basis_of(found) == MEMORY else ""), statements=ids(found))]


def _autumn(turn: Turn, taxon: str) -> bool:
    seasons = {x for s in about(turn.kb, taxon, SPAWNING)[0] for x in seasons_of(s.text)}
    return bool(seasons) and not seasons <= WARMING


def _warmth(turn: Turn, taxon: str) -> tuple[float, float] | None:
    """The coldest and the warmest water, in degrees C, that a kind is told to spawn in."""
    ranges = [r for s in about(turn.kb, taxon, WARMTH)[0] if (r := number_range(s)) is not None]
    return (min(r[0] for r in ranges), max(r[3] for r in ranges)) if ranges else None


def _degrees(turn: Turn, low: float, high: float) -> str:
    if system(turn.held) == "us":
        fahrenheit = [f"{celsius_to_fahrenheit(x):.0f}" for x in (low, high)]
        return order.degrees_us(fahrenheit[0], fahrenheit[1], f"{low:.0f}", f"{high:.0f}")
    return care.degrees(*(f"{x:.0f}" for x in (low, high, celsius_to_fahrenheit(low), celsius_to_fahrenheit(high))))


def shared_waters(turn: Turn, taxa: Sequence[str]) -> list[Block]:
    """The kinds of water told of all of some fishes, where a line asks whether they live in the same."""
    kb = turn.kb
    if "same-water" not in turn.cues or len(taxa) < AT_ODDS:
        return []
    states = [{x for s in about(kb, t, WATERS)[0] for x in s.states} for t in taxa]
    common = sorted(set.intersection(*states))
    names = say.names_with([label(kb, t) for t in taxa])
    if not common:
        return [Block("point", order.no_shared_water(names), claim=False)]
    found = [s for t in taxa for s in about(kb, t, WATERS)[0] if set(s.states) & set(common)]
    text = order.shared_water(names, say.names_with([kb.state(x).label for x in common]))
    return [Block("point", text, statements=ids(found))]
