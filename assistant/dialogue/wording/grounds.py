"""The wording of the rules behind a verdict when somebody asks why (layer 4)."""

from __future__ import annotations

from assistant.text import sentence

NO_LIMIT = "no daily limit, as the rule states"
SEASON = {"harvest": "open for keeping", "catch-and-release": "release only", "closed": "closed"}
LAYER = {
    "jurisdiction": "rule for the whole jurisdiction",
    "zone": "zone rule",
    "water-type": "rule for a kind of water",
    "water": "rule of the water",
    "segment": "rule of a part of the river",
    "border": "rule of the border water",
    "emergency": "emergency order",
    "protected": "protected list",
    "prohibited": "prohibited list",
}
MODE = {
    "replace-fields": "It stands in place of the weaker rules in what it states; all else is taken from them.",
    "replace-row": "It stands in place of the weaker rules altogether.",
    "add": "It comes on top of the other rules.",
}


def lead(count: int) -> str:
    """What follows."""
    return "It rests on this demo rule:" if count == 1 else "It rests on these demo rules, the one that binds first:"


def rule(tag: str, label: str, where: str, layer: str, parts: list[str]) -> str:
    """One rule with what it states."""
    place = f", {where}" if where else ""
    stated = f": {'; '.join(parts)}" if parts else ""
    return sentence(f"{tag}, {label} ({layer}{place}){stated}")


def with_mode(text: str, mode: str) -> str:
    """A rule with how it stands to weaker ones."""
    return f"{text} {mode}" if mode else text


def all_year(mode: str) -> str:
    """A season of the whole year."""
    return f"{mode} all year"


def season(mode: str, first: str, last: str) -> str:
    """A season from day to day, both included."""
    return f"{mode} from {first} through {last}"


def under_age(age: int) -> str:
    """An age rule."""
    return f"only anglers under {age}"


def hours(starts: str, ends: str) -> str:
    """Hours without fishing."""
    return f"no fishing from {starts} to {ends}"


NO_CAUSE = "The reason for that is not held in so many words; this is what stands beside it."
"""What keeps the life of a fish apart from the reason of a feature."""


def side(heading: str, name: str, told: list[str]) -> str:
    """One side of the life of a fish: "food of the redear sunfish: snails and mussels; water insects"."""
    return f"{heading.lower()} of the {name}: {'; '.join(told)}"


def beside(sides: list[str], memory: bool) -> str:
    """What is held of the life of a fish beside a part of its body."""
    return sentence(f"{'; '.join(sides)}{' (from memory, unchecked)' if memory else ''}")


def feature(label: str, name: str, told: str) -> str:
    """The feature itself."""
    return sentence(f"{label} of the {name}: {told}")
