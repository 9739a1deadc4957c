"""The wording of answers for those who keep the base: which source counts, old names, tallies (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.text import join, sentence

BASIS = {"read": "text read", "memory": "from memory, unchecked", "common-practice": "common practice"}
FEATURE_BY_FEATURE = "No source wins as such; it is weighed feature by feature: name the fish and the feature."


def grounds(read: float, preferred: float) -> str:
    """How statements are weighed: what was read beside what is from memory, and a preferred one beside others."""
    return ("Because both sides may be right of the fish they saw, none is dropped: what was read counts "
            f"{read:g} times what is from memory; a statement of one place counts more there and less elsewhere; "
            f"a preferred one counts {preferred:g} times.")


def all_agree(count: int, feature: str, fish: str) -> str:
    """All statements say the same."""
    return sentence(f"there is nothing to choose: all {count} statements on the {feature} of the {fish} say the same, "
                    "and all of them count")


def only_one(feature: str, fish: str) -> str:
    """There is nothing to choose from."""
    return sentence(f"only one statement on the {feature} of the {fish} is held, so that one counts")


def none_preferred(count: int, feature: str, fish: str) -> str:
    """No source is preferred to the others."""
    return sentence(f"none alone: of the {count} statements on the {feature} of the {fish} no source is marked as "
                    "preferred, so all of them count together")


def preferred(cited: str, feature: str, fish: str, because: str) -> str:
    """The source that is preferred, and why."""
    why = f", because {because}" if because else ""
    who = cited or "the statement from memory"
    return sentence(f"for the {feature} of the {fish} {who} is preferred{why}; the others stay beside it")


def together(shares: Sequence[tuple[str, int]]) -> str:
    """What all statements together come to."""
    return sentence("together: " + ", ".join(f"{words} about {share} in 100" for words, share in shares))


def counts(words: str, cited: str, basis: str, share: int) -> str:
    """A statement with its source, its basis and what it counts."""
    told = ", ".join(x for x in (cited, basis) if x)
    text = f"{words} ({told})"
    return f"{text}: counts {share} in 100." if share else f"{text}."


def more_statements(count: int) -> str:
    """Statements that are not shown."""
    return f'{count} more count less; ask for the sources to see them, "more" for all.'


def lives_there(old: str, place: str, fish: str, now: str) -> str:
    """Which kind an old name from a place stands for."""
    return sentence(f"{old} on an old record from {place} most likely means the {fish}, now {now}: "
                    f"that fish is listed for {place}")


def not_there(fish: str, old: str, place: str) -> str:
    """The kind that bears the name now is not listed there."""
    return sentence(f"the {fish}, which bears the name {old} now, is not listed for {place}")


def both_there(old: str, place: str, fishes: str) -> str:
    """An old name from a place in which both kinds live."""
    return sentence(f"{old} alone does not settle it: the {fishes} are all listed for {place}, so look at the fish or "
                    "the date of the name")


def listed_as(fish: str, status: str, place: str) -> str:
    """A kind listed for a place."""
    return sentence(f"the {fish} is {status} {'from' if status == 'absent' else 'in'} {place}")


def not_listed(fishes: str, place: str) -> str:
    """None of the kinds meant is listed for a place."""
    return sentence(f"neither way does the base list it for {place} ({fishes}), which is no proof that it is missing")


def memory_of(fish: str, count: int, among: int) -> str:
    """How much of a fish rests on memory."""
    return f"{fish} {count} of {among}"


def memory_tally(rows: Sequence[str], count: int, among: int) -> str:
    """How much of some fishes rests on memory, by fish and in all."""
    return sentence(f"from memory, unchecked, by species: {', '.join(rows)}; in all {count} of {among} statements")


def tally(total: int, by: str, rows: Sequence[tuple[str, int]], first: bool = False) -> str:
    """A list counted by its families, genera or kinds."""
    told = ", ".join(f"{name} {count}" for name, count in rows)
    return sentence(f"{f'the first {total} of the list' if first else f'{total} in all'}, by {by}: {told}")


def tally_of_statements(total: int, rows: Sequence[tuple[str, int]]) -> str:
    """The statements of the last answer counted by fish."""
    told = ", ".join(f"{name} {count}" for name, count in rows)
    return sentence(f"{total} statements stand behind the last answer, by species: {told}")


def named_both(names: Sequence[str]) -> str:
    """Several kinds that a name may mean."""
    return join(list(names), "and")
