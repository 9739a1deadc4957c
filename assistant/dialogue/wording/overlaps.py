"""The wording of what a key does not part for sure: counts and marks met on the other side, crosses (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.text import sentence


def key_overlap(step: int, feature: str, told: str, settles: str, counts: bool) -> str:
    """Counts or marks by which some fish take the wrong lead of a step, and the feature that settles it."""
    head = f"the counts overlap at step {step}" if counts else f"step {step} does not part these for sure"
    return f"{sentence(f'{head} ({feature}): {told}')}{settles}"


def key_overlap_end(feature: str, told: str, settles: str, counts: bool) -> str:
    """The same at the end of a walk."""
    head = "but the counts overlap" if counts else "but one step does not part these for sure"
    return f"{sentence(f'{head} ({feature}): {told}')}{settles}"


def count_met(low: int, high: int, names: str) -> str:
    """A count that is met in a few of some fishes."""
    number = f"{low} is" if low == high else f"{low} to {high} are"
    return f"{number} also met in the {names}"


def state_met(state: str, often: str, names: str) -> str:
    """A mark that a good part of some fishes has, too."""
    return f"{state} is {often or 'often'} met in the {names}, too"


def settled_by(feature: str, leads: Sequence[str]) -> str:
    """The feature to look at besides."""
    return f" Check as well: {feature}; {' and '.join(leads)}."


def lead_in(choice: str, fish: str) -> str:
    """What a fish shows of a feature."""
    return f"{choice} in the {fish}"


def crosses_in_key(names: str) -> str:
    """That the end of a key at a cross proves nothing."""
    return f"A key cannot prove a hybrid ({names}): by looks alone it stays a guess, and a parent may be keyed as one."
