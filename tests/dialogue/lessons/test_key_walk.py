"""A key walked by answers: what was answered once is not asked again as if it were open."""

from __future__ import annotations

from assistant.dialogue.lessons.key_walk import KeyWalk, pass_over, start, take
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import below
from assistant.reasoning.key import Lead
from assistant.reasoning.selection import species_below


def _leaves(kb: KnowledgeBase, lead: Lead) -> set[str]:
    return {leaf for state in lead.states for leaf in below(kb, state)}


def test_what_was_answered_stays_answered_in_a_fresh_key(kb: KnowledgeBase) -> None:
    """Whoever passes a step over gets a fresh key, in which no choice goes beyond what was answered before."""
    asked_again = 0
    for group in ("lepomis", "ictaluridae", "salmonidae", "centrarchidae"):
        ahead = [start(kb, species_below(kb, group), "picture", "plain")]
        while ahead:
            walk = ahead.pop()
            assert isinstance(walk, KeyWalk)
            ahead += [on for lead in (0, 1) if isinstance(on := take(walk, lead), KeyWalk)]
            fresh = pass_over(kb, walk) if walk.before is not None else None
            for couplet in fresh.key.couplets if isinstance(fresh, KeyWalk) else ():
                told = walk.told.get(couplet.character)
                if told is not None and told.states:
                    asked_again += 1
                    assert all(_leaves(kb, lead) <= _leaves(kb, told) for lead in couplet.leads)
    assert asked_again


def test_a_family_found_goes_on_within_its_answers(kb: KnowledgeBase) -> None:
    """A walk that begins after leads taken asks their characters only within what these leave open."""
    whole = start(kb, species_below(kb, "ictaluridae"), "picture", "plain")
    assert whole is not None
    lead = whole.couplet.leads[1]
    again = start(kb, species_below(kb, "ictaluridae"), "picture", "plain", {whole.couplet.character: lead})
    assert again is not None
    inside = [c for c in again.key.couplets if c.character == whole.couplet.character]
    assert all(_leaves(kb, x) <= _leaves(kb, lead) for c in inside for x in c.leads)
    assert again.couplet != whole.couplet
