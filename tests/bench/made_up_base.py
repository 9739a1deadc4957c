"""Made-up bases of any size in the vocabulary of the shipped one: ``python -m tests.bench.made_up_base N FOLDER``.

Genera of eight species share a prototype from which a species departs now and then, so that near relatives are hard
to tell apart, as in a real base. Each species has a statement for about 92 in 100 of sixty characters (forty with
states, twenty counts), two lengths, three names and a dozen ranges. Everything follows from the seed; nothing in it
is true of any fish.
"""

from __future__ import annotations

import random
import shutil
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from assistant.graph.locate import shipped_ontology
from assistant.loading import open_base
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character

SHARED = ("agents", "places", "sources", "vocabulary")
STATED, COUNTED = 40, 20
KNOWN = 0.92
IN_GENUS, IN_FAMILY = 8, 12
LAYOUT = 2
"""Raised when another base comes from the same seed."""
SOURCE = "tf:basis tf:memory"
FREQUENCIES = ("always", "usually", "usually", "usually", "often", "sometimes")
ONSETS = [
    "b",
    "br",
    "c",
    "cl",
    "d",
    "dr",
    "f",
    "g",
    "gr",
    "h",
    "j",
    "k",
    "l",
    "m",
    "n",
    "p",
    "pr",
    "qu",
    "r",
    "s",
    "sk",
    "st",
    "t",
    "tr",
    "v",
    "w",
    "z",
]
VOWELS = ["a", "e", "i", "o", "u", "ae", "ou"]
ENDS = ["l", "n", "r", "s", "t", "nd", "rk", "sh", "x", "ll"]
KINDS = [
    "darter",
    "shiner",
    "chub",
    "dace",
    "sucker",
    "bass",
    "sunfish",
    "minnow",
    "trout",
    "perch",
    "sculpin",
    "madtom",
]

Told = tuple[str, int, int, int, int, str]
"""A state (or empty), four numbers (extreme and usual range), a frequency word."""


@dataclass(frozen=True, slots=True)
class Feature:
    """A character with what a prototype may be made of."""

    id: str
    states: tuple[str, ...]
    middle: int


def features(kb: KnowledgeBase, rng: random.Random) -> list[Feature]:
    """Sixty characters of the shipped vocabulary that a fish can be scored with."""
    stated = [c for c in kb.characters if c.use == "identify" and c.is_stated and len(leaf_states(kb, c)) > 1]
    counted = [c for c in kb.characters if c.use == "identify" and c.kind == "count"]
    chosen = rng.sample(stated, min(STATED, len(stated))) + rng.sample(counted, min(COUNTED, len(counted)))
    return [
        Feature(c.id, leaf_states(kb, c), rng.choice((8, 12, 16, 24, 40, 60)))
        for c in sorted(chosen, key=lambda c: c.id)
    ]


def leaf_states(kb: KnowledgeBase, character: Character) -> tuple[str, ...]:
    """States without a finer one."""
    found = kb.states(character.id)
    broad = {s.broader for s in found}
    return tuple(s.id for s in found if s.id not in broad)


def make_base(folder: Path, taxa: int, seed: int = 1) -> Path:
    """Write a base of about ``taxa`` species and crosses into a folder; an existing one of that size is kept."""
    stamp, told = folder / "made-up.txt", f"{LAYOUT} {taxa} {seed}\n"
    if stamp.is_file() and stamp.read_text() == told:
        return folder
    shutil.rmtree(folder, ignore_errors=True)
    for name in SHARED:
        shutil.copytree(shipped_ontology() / name, folder / name)
    (folder / "vocabulary" / "groups.ttl").unlink()
    rng = random.Random(seed)
    kb = open_base().kb
    made = features(kb, rng)
    places = [p.id for p in kb.all("place") if p.kind in ("state", "province")]
    genera = -(-taxa // (IN_GENUS + 0.25))
    words = distinct_words(rng, int(genera) * 2 + taxa)
    prefixes = prefix_lines(shipped_ontology())
    left = taxa
    for number in range(int(genera)):
        family = f"famil{number // IN_FAMILY}idae"
        text, used = genus_text(
            rng, family, next(words), min(left, IN_GENUS), words, made, number % 4 == 0 and left > 9
        )
        left -= used
        place = folder / "taxa" / family
        place.mkdir(parents=True, exist_ok=True)
        name = text.partition("taxon:")[2].partition("\n")[0]
        write(place / f"{name}.ttl", prefixes + text)
        ranges = "".join(range_lines(rng, text, places))
        (folder / "ranges" / family).mkdir(parents=True, exist_ok=True)
        write(folder / "ranges" / family / f"{name}.ttl", prefixes + ranges)
        if number % IN_FAMILY == 0:
            write(place / "family.ttl", prefixes + taxon(family, family.title(), f"family {number}", "family", ""))
        if left <= 0:
            break
    stamp.write_text(told)
    return folder


def write(path: Path, text: str) -> None:
    """Write a file line by line as the writer of our package does (the order of blocks is left as it is)."""
    path.write_text(text.rstrip("\n") + "\n")


def prefix_lines(shipped: Path) -> str:
    """The prefixes of our files, as the shipped ones spell them."""
    from assistant.iris import PREFIXES

    return "".join(f"@prefix {p}: <{iri}> .\n" for p, iri in PREFIXES.items()) + "\n"


def distinct_words(rng: random.Random, most: int) -> Iterator[str]:
    """Pronounceable words, each once."""
    seen: set[str] = set()
    while True:
        word = "".join(rng.choice(ONSETS) + rng.choice(VOWELS) for _ in range(rng.choice((2, 3)))) + rng.choice(ENDS)
        if word not in seen:
            seen.add(word)
            yield word


def taxon(key: str, scientific: str, label: str, rank: str, parent: str, parents: tuple[str, ...] = ()) -> str:
    """The lines of a taxon."""
    lines = [
        f"taxon:{key}",
        "    a dwc:Taxon ;",
        f'    dwc:scientificName "{scientific}" ;',
        f'    skos:prefLabel "{label}"@en ;',
        f'    dwc:taxonRank "{rank}" ;',
    ]
    lines += [f"    tf:parent taxon:{parent} ;"] if parent else []
    lines += [f"    tf:hybridParent taxon:{p} ;" for p in parents]
    return "\n".join([*lines, "    dcterms:source src:memory ;", f"    {SOURCE} ;", "    .\n\n"])


def genus_text(
    rng: random.Random, family: str, genus: str, species: int, words: Iterator[str], made: list[Feature], cross: bool
) -> tuple[str, int]:
    """The Turtle of a genus and how many taxa an identification may name are in it."""
    parts = [taxon(genus, genus.title(), f"{genus} fishes", "genus", family)]
    prototype = {f.id: told_of(rng, f) for f in made}
    keys = []
    for _ in range(species):
        epithet = next(words)
        key, label = f"{genus}-{epithet}", f"{epithet} {rng.choice(KINDS)}"
        keys.append(key)
        parts.append(taxon(key, f"{genus.title()} {epithet}", label, "species", genus))
        parts += [
            name_lines(key, label, "accepted"),
            name_lines(key, f"{genus} {label.split()[-1]}", "vernacular"),
            name_lines(key, f"little {epithet}", "vernacular"),
        ]
        for feature in made:
            if rng.random() < KNOWN:
                told = told_of(rng, feature) if rng.random() < 0.25 else prototype[feature.id]
                parts.append(statement(key, feature.id, told))
        size = rng.choice((60, 120, 200, 350, 600, 1000))
        parts += [
            statement(key, "max-total-length", ("", size, size, size, size, "usually"), "MilliM"),
            statement(
                key, "usual-adult-length", ("", size // 3, size // 2, size // 2, size * 2 // 3, "usually"), "MilliM"
            ),
        ]
    if cross and species > 1:
        parts.append(
            taxon(
                f"{keys[0]}-x-{keys[1]}",
                f"{keys[0]} x {keys[1]}",
                f"{keys[0]} x {keys[1]} hybrid",
                "hybrid",
                "",
                (keys[0], keys[1]),
            )
        )
    return "".join(parts), species + (cross and species > 1)


def told_of(rng: random.Random, feature: Feature) -> Told:
    """What is told of a feature in some taxon."""
    if feature.states:
        return rng.choice(feature.states), 0, 0, 0, 0, rng.choice(FREQUENCIES)
    middle = max(3, round(rng.gauss(feature.middle, feature.middle * 0.2)))
    half = max(1, middle // 12)
    return "", middle - 2 * half, middle - half, middle + half, middle + 2 * half, "usually"


def name_lines(key: str, text: str, kind: str) -> str:
    """The lines of a name."""
    slug = text.replace(" ", "-")
    return (
        f'name:{key}.{slug}-{kind[0]}\n    a tf:Name ;\n    skosxl:literalForm "{text}"@en ;\n'
        f'    tf:nameOf taxon:{key} ;\n    dcterms:language "en" ;\n    dcterms:source src:memory ;\n'
        f"    {SOURCE} ;\n    tf:nameKind tf:{kind} ;\n    .\n\n"
    )


def statement(key: str, character: str, told: Told, unit: str = "NUM") -> str:
    """The lines of a statement."""
    state, low, usual_low, usual_high, high, frequency = told
    value = (
        f"    tf:state state:{state} ;\n"
        if state
        else f"    tf:low {low}.0 ;\n    tf:usualLow {usual_low}.0 ;\n    tf:usualHigh {usual_high}.0 ;\n"
        f"    tf:high {high}.0 ;\n    qudt:hasUnit unit:{unit} ;\n"
    )
    return (
        f"st:{key}.{character}.any.memory\n    a tf:{'State' if state else 'Number'}Statement ;\n"
        f"    tf:taxon taxon:{key} ;\n    tf:character char:{character} ;\n{value}    tf:frequency freq:{frequency} ;\n"
        '    dcterms:created "2026-01-05"^^xsd:date ;\n    dcterms:source src:memory ;\n'
        f"    prov:wasAttributedTo agent:founding-curators ;\n    {SOURCE} ;\n    .\n\n"
    )


def range_lines(rng: random.Random, text: str, places: list[str]) -> Iterator[str]:
    """The ranges of the species of a genus."""
    core = rng.sample(places, 16)
    keys = [line[6:] for line in text.splitlines() if line.startswith("taxon:") and "-" in line and "-x-" not in line]
    for key in keys:
        for place in sorted(rng.sample(core, 12)):
            yield (
                f"range:{key}.{place}.memory\n    a tf:Range ;\n"
                f"    tf:taxon taxon:{key} ;\n    dcterms:source src:memory ;\n"
                f"    dcterms:spatial place:{place} ;\n    {SOURCE} ;\n    tf:rangeStatus tf:native ;\n    .\n\n"
            )


if __name__ == "__main__":
    print(make_base(Path(sys.argv[2]), int(sys.argv[1])))
