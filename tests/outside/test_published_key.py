"""Our key of the pikes against a published one: typical specimens end at the same fish.

The published key: J. A. Henshall, Bass, Pike, Perch, and Others (Macmillan, 1903; year from memory), the artificial key
of the chapter on the pike family, with the heads of its technical list for the pickerels; read at
https://bitlit.ru/page/en/james-a-henshall/bass-pike-perch-and-others/36. Names there:
Esox nobilior for the muskellunge, E. reticulatus for the chain pickerel, E. vermiculatus and E. americanus for the
grass and redfin pickerels.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import pytest

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import ADULT
from assistant.reasoning.evidence import below
from assistant.reasoning.key import Key, Lead, build_key
from assistant.reasoning.observer import taxon_distribution

Value = str | int


@dataclass(frozen=True)
class Specimen:
    """A fish of the published list: what the list gives of it."""

    taxon: str
    values: Mapping[str, Value]


SPECIMENS = (
    Specimen("esox-masquinongy", {"cheek-scaling": "partly-scaled", "opercle-scaling": "upper-half",
                                  "branchiostegal-rays": 18,
                                  "dorsal-soft-rays": 17, "anal-soft-rays": 15, "lateral-line-scales": 150}),
    Specimen("esox-lucius", {"cheek-scaling": "fully-scaled", "opercle-scaling": "upper-half",
                             "branchiostegal-rays": 15,
                             "dorsal-soft-rays": 17, "anal-soft-rays": 14, "lateral-line-scales": 125}),
    Specimen("esox-niger", {"cheek-scaling": "fully-scaled", "opercle-scaling": "fully-scaled",
                            "branchiostegal-rays": 15,
                            "dorsal-soft-rays": 14, "anal-soft-rays": 13, "lateral-line-scales": 125}),
    Specimen("esox-americanus-vermiculatus", {"cheek-scaling": "fully-scaled", "opercle-scaling": "fully-scaled",
                                              "branchiostegal-rays": 12, "dorsal-soft-rays": 11, "anal-soft-rays": 11}),
    Specimen("esox-americanus-americanus", {"cheek-scaling": "fully-scaled", "opercle-scaling": "fully-scaled",
                                            "branchiostegal-rays": 12, "dorsal-soft-rays": 12, "anal-soft-rays": 12}),
)


def published(values: Mapping[str, Value]) -> frozenset[str]:
    """Where the published key leads: cheek bare below, gill cover bare below, then many or few branchiostegals."""
    if values["cheek-scaling"] == "partly-scaled":
        return frozenset({"esox-masquinongy"})
    if values["opercle-scaling"] == "upper-half":
        return frozenset({"esox-lucius"})
    if int(values["branchiostegal-rays"]) >= 14:
        return frozenset({"esox-niger"})
    return frozenset({"esox-americanus-vermiculatus", "esox-americanus-americanus"})


def walk(kb: KnowledgeBase, key: Key, specimen: Specimen) -> tuple[str, ...]:
    """Where our key leads a specimen; what the list does not give is what most fish of the taxon show."""
    number = 1
    while True:
        couplet = key.couplet(number)
        lead = max(couplet.leads, key=lambda found: fits(kb, specimen, couplet.character, found))
        if not lead.goes_to:
            return lead.taxa
        number = lead.goes_to


def fits(kb: KnowledgeBase, specimen: Specimen, character: str, lead: Lead) -> float:
    """How well a lead fits a specimen, 0 to 1."""
    value = specimen.values.get(character)
    if isinstance(value, int):
        return float((lead.low is None or value >= lead.low) and (lead.high is None or value <= lead.high))
    leaves = {leaf for s in lead.states for leaf in below(kb, s)}
    if value is not None:
        return float(f"{character}.{value}" in leaves)
    found = taxon_distribution(kb, specimen.taxon, character, ADULT)
    if found is None:
        return 0.5
    if lead.states:
        return found.share(leaves)
    return sum(p for k, p in found.shares.items() if (lead.low is None or int(k) >= lead.low) and (
        lead.high is None or int(k) <= lead.high))


@pytest.mark.parametrize("specimen", SPECIMENS, ids=lambda s: s.taxon)
def test_published_list_and_published_key_agree(specimen: Specimen) -> None:
    """The specimens are typical: the published key leads each to its own name."""
    assert specimen.taxon in published(specimen.values)


@pytest.mark.parametrize("look", ["picture", "hand", "lab"])
@pytest.mark.parametrize("specimen", SPECIMENS, ids=lambda s: s.taxon)
def test_our_key_leads_to_the_same_fish(kb: KnowledgeBase, specimen: Specimen, look: str) -> None:
    """Our key of the same five pikes, whatever the look, leads a typical specimen where the published key does."""
    key = build_key(kb, [s.taxon for s in SPECIMENS], look)
    found = walk(kb, key, specimen)
    assert found == (specimen.taxon,)
    assert specimen.taxon in published(specimen.values)
