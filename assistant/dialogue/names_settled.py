"""A question of names settled in the first line: a local name said to be wrong, two scientific names (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Block
from assistant.dialogue.reader.reading import Mention
from assistant.dialogue.recogniser.named_how import borne_by_other, named_how, scientific
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import names as say
from assistant.dialogue.wording import speak
from assistant.text import key, singular

DOUBTED = frozenset({"disputed", "confirm"})
"""Cues of a line that asks whether somebody is wrong or right."""
BESIDE = frozenset({"vs", "versus", "sameness"})
"""Cues of a line that asks whether two names are of one fish."""


def settled(turn: Turn) -> list[Block]:
    """The first line of such an answer; none where the line asks for something else."""
    shapes = named_how(turn.kb, turn.reading)
    told = sorted(turn.reading.of("taxon", "hybrid", "group"), key=lambda m: m.start)
    if "binomials" in shapes:
        return _placed(turn, told)
    asked_there = bool(turn.reading.places) and "asks-do" in turn.cues
    if "one-for-other" in shapes and (turn.cues & DOUBTED or asked_there) and not turn.cues & BESIDE:
        return _local(turn, told)
    return []


def _placed(turn: Turn, told: list[Mention]) -> list[Block]:
    """Which of two scientific names a fish bears, and whose the other is."""
    kb = turn.kb
    written = [m for m in told if scientific(kb, m)]
    meant = next((m.ids[0] for m in told if m not in written and len(m.ids) == 1), "")
    if kb.find("taxon", meant) is None:
        return []
    others = [t for t in dict.fromkeys(i for m in written for i in m.ids) if t != meant]
    rest = [(speak.scientific_of(kb, t), speak.fish(kb, t)) for t in others]
    text = say.bears(speak.fish(kb, meant), speak.scientific_of(kb, meant), rest)
    return [Block("lead", text, statements=tuple(f"taxon:{t}" for t in (meant, *others)))]


def _local(turn: Turn, told: list[Mention]) -> list[Block]:
    """That a name is a local one of the fish that it is said not to be, and whose own name it is."""
    kb = turn.kb
    words, records = borne_by_other(kb, told)
    if not records:
        return []
    typed, fish = {key(words), singular(key(words))}, [n.taxon for n in records]
    meant = next(m.ids for m in told if m.words == words)
    owner = next((t for t in meant if t not in fish and (x := kb.find("taxon", t)) and key(x.label) in typed), "")
    text = say.local_right(words, speak.fishes(kb, fish), speak.fish(kb, owner) if owner else "",
                           disputed=bool(turn.cues & DOUBTED))
    return [Block("lead", text, statements=tuple(f"name:{n.id}" for n in records))]
