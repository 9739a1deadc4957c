"""The wording of answers on crosses: whether two kinds cross, what the cross is called, its young, looks (layer 4)."""

from __future__ import annotations

from assistant.text import join, sentence

WHY_NOT_HELD = "Why that is so is not held here; this is what is held:"
NO_GROWTH = "No growth is held of any cross."
LOOK_FOR = "Look for marks of both parents on one fish; only a genetic (DNA) test proves a cross."
CROSSES = "crosses"
YES, NO, PARTLY = "yes", "no", "in part"


def kinds_cross(a: str, b: str, crosses: str) -> str:
    """Two kinds of which crosses are held."""
    return sentence(f"yes, {a} and {b} cross: {crosses}")


def yes(text: str) -> str:
    """A list of crosses as the answer to whether there are any."""
    return f"Yes. {text}"


def crosses_of(kinds: str) -> str:
    """The crosses of a kind, as a plural."""
    return f"crosses of {kinds}"


def called(cross: str, names: list[str], parents: str) -> str:
    """What a cross is called."""
    also = f", also called {join(names, 'or')}" if names else ""
    return sentence(f"it is the {cross}{also}, a cross of {parents}")


def young(verdict: str, cross: str, told: str) -> str:
    """Whether a cross has young, yes or no first."""
    return sentence(f"{verdict}, as far as is held: {cross} - {told}")


def young_of_several(verdict: str, kinds: str, count: int, sorts: list[int]) -> str:
    """Whether the crosses of a kind have young; ``sorts`` counts those that do, that do in part, that do not."""
    words = ("can have young", "have few, or in one sex or one generation only", "are told to be sterile")
    told = join([f"{n} {word}" for n, word in zip(sorts, words, strict=True) if n])
    return sentence(f"{verdict}: of the {count} {kinds} whose fertility is held, {told}")


def commonest(kinds: str, crosses: str) -> str:
    """The crosses that are common."""
    return sentence(f"the common {kinds}: {crosses}")


def none_common(kinds: str) -> str:
    """No cross of a kind is told to be common."""
    return sentence(f"none of the {kinds} is told to be common")


def mark_unheld(cross: str, mark: str, parents: str) -> str:
    """A mark that is held of the parents of a cross alone."""
    return sentence(f"the {mark} of the {cross} is not held; of its parents: {parents}")


def grow(told: str) -> str:
    """What is held of the growth of crosses."""
    return sentence(f"some do, by what is held: {told}")


def looks(cross: str, told: str) -> str:
    """What a cross looks like."""
    return sentence(f"{cross} - {told}")


def mother(cross: str, mother: str, father: str, often: str, about: str) -> str:
    """Which parent is the mother."""
    told = f" ({about})" if about else ""
    usual = f"{often} " if often else ""
    return sentence(f"in the {cross} the mother is {usual}a {mother}, the father a {father}{told}")


def mother_unheld(cross: str, parents: str) -> str:
    """Nothing says which parent is the mother."""
    return sentence(f"which of the parents of the {cross} is the mother is not held here; they are {parents}")


def fits(cross: str, marks: str, parent: str) -> str:
    """The cross that what was seen fits best."""
    return sentence(f"it may be the {cross}: of the crosses of the {parent} that are held, it fits {marks} best")


def parents_there(place: str) -> str:
    """How crosses were picked by a place."""
    return (f"These are the crosses whose two parents both live in {place}; where the crosses themselves were found is "
            "not held, and stocked ones may be elsewhere.")


def no_parents_there(place: str) -> str:
    """That no cross has both parents in a place."""
    return f"Of none of them both parents are held to live in {place}; where crosses were found is not held."
