"""The wording of answers on whether two names mean one fish (layer 4)."""

from __future__ import annotations

from assistant.text import sentence


def same_fish(a: str, b: str, fish: str) -> str:
    """Two names of one fish."""
    return sentence(f'yes, the same fish: "{a}" and "{b}" are names of the {fish}')


def same_fish_all(names: str, fish: str) -> str:
    """Several names of one fish."""
    return sentence(f"{names} are all names of one fish, the {fish}")


def two_fishes(a: str, b: str) -> str:
    """Two names of two fishes."""
    return sentence(f"no, the {a} and the {b} are two different fishes")


def cross_not_parent(cross: str, parents: str) -> str:
    """A cross taken for one of its parents."""
    return sentence(f"no, the {cross} is a cross of {parents}")


def sometimes_same(words: str, fish: str, others: int) -> str:
    """A loose name and one of the fishes that it is used for."""
    more = "another fish" if others == 1 else f"{others} other fishes"
    return sentence(f'sometimes: the name "{words}" is used for the {fish}, but for {more} as well')


def never_same(words: str, fish: str) -> str:
    """A loose name and a fish that it is not used for."""
    return sentence(f'not that I know: "{words}" is not held as a name of the {fish}')


def of_kind_so(fish: str, word: str, others: str) -> str:
    """A fish that bears the name of a kind of fish, in a wide sense."""
    return sentence(f'yes, in the wide sense of "{word}": the {fish} is one of them, beside the {others}')


def one_of_group(fish: str, word: str, others: str) -> str:
    """A fish and a word for the group that it belongs to."""
    return sentence(f'not quite: the {fish} is one of several fishes called "{word}"; others are {others}')
