"""The wording of which of several fishes has more of something, and of whether one is big (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.text import sentence


def with_answer(answer: str, text: str) -> str:
    """Yes or no before what it rests on."""
    return f"{answer}: {text[:1].lower()}{text[1:]}" if answer else text


def size_order(lengths: Sequence[tuple[str, str]], least_first: bool = False) -> str:
    """Which of several grows longest (or stays smallest); fishes with the words of their largest lengths, in order."""
    (name, first), *others = lengths
    rest = ", ".join(f"the {other}, {words}" for other, words in others)
    least = "stays smaller" if len(lengths) == 2 else "stays smallest"
    return sentence(f"the {name} {least if least_first else 'grows longest'}, {first}; then {rest}")


def weight_order(weights: Sequence[tuple[str, str]], least_first: bool = False) -> str:
    """Which of several grows heaviest (or stays lightest); fishes with their greatest weights, in order."""
    (name, first), *others = weights
    rest = ", ".join(f"the {other}, {weight}" for other, weight in others)
    does = ("stays lighter" if len(weights) == 2 else "stays lightest") if least_first else "grows heaviest"
    return sentence(f"the {name} {does}: the heaviest held is {first}; then {rest}")


def one_known(name: str, words: str, others: str) -> str:
    """A comparison of which one side alone is held."""
    return sentence(f"of the {name} {words} is held, of the {others} nothing, so I cannot set them against each other")


def span_of_sizes(count: int, kinds: str, smallest: str, least: str, biggest: str, most: str) -> str:
    """From which to which size the kinds of a group grow."""
    return sentence(f"{count} {kinds}: from the {smallest}, {least}, to the {biggest}, {most}")


def sizes_of(rows: Sequence[tuple[str, str]]) -> str:
    """The largest known lengths of many fishes in one line, in order."""
    return "Largest known: " + ", ".join(f"{name} {length}" for name, length in rows) + "."


NOT_ESPECIALLY = "Not especially"
PLAUSIBLE, SMALL_YET_PLAUSIBLE, DOUBTFUL = "Plausible", "Plausible for a young fish", "Doubtful"
NO_AS_KNOWN = "No, by all that is held"
SCALE_LONGER = (
    "The scale of sizes goes beyond the largest one held here, so longer ones are caught: the figure held is no record."
)


def in_place(place: str, name: str, usual: str) -> str:
    """The usual length told of a place."""
    return sentence(f"in {place} the {name} usually reaches {usual}")


def not_of_place(place: str, name: str) -> str:
    """No length told of the place asked about."""
    return f"For {place} alone no length of the {name} is held; over all:"


def no_growth(name: str) -> str:
    """How fast a fish grows is not held."""
    who = f"the {name} grows, or how long it is" if name else "these grow, or how long they are"
    return f"How fast {who} at an age, is not held in this base; growth varies from water to water."


AT_ONE_LENGTH = "at {length} the {name} is the heavier, about {weight}; then {rest}"


def heavier_at(length: str, weights: Sequence[tuple[str, str]]) -> str:
    """Which of several fishes of one length weighs more."""
    (name, first), *others = weights
    rest = ", ".join(f"the {other}, about {weight}" for other, weight in others)
    return sentence(AT_ONE_LENGTH.format(length=length, name=name, weight=first, rest=rest))


def usual_weight(name: str, weight: str) -> str:
    """What a grown fish usually weighs."""
    return sentence(f"the {name} usually weighs {weight}")


def no_weight(name: str) -> str:
    """No greatest weight held."""
    return f"No greatest weight of the {name} is held."


def weights_by_length(name: str, rows: Sequence[tuple[str, str]]) -> str:
    """What a fish weighs at some lengths."""
    told = ", ".join(f"{length} about {weight}" for length, weight in rows)
    return f"It depends on the length; {name} in good shape: {told}."


def oldest(rows: Sequence[tuple[str, str]], least_first: bool = False) -> str:
    """Which of several fishes lives longest; fishes with their greatest ages, in order."""
    (name, first), *others = rows
    rest = ", ".join(f"the {other}, {age}" for other, age in others)
    does = "lives the shorter" if least_first else "lives longest"
    if not rest:
        return sentence(f"the {name} can reach {first} years")
    return sentence(f"the {name} {does}, to {first} years; then {rest}")


def span_of_ages(kinds: str, least: str, youngest: str, most: str, old: str) -> str:
    """From which to which age the kinds of a group live."""
    return sentence(f"{kinds}: greatest ages from {least} years (the {youngest}) to {most} (the {old})")


def more_of(feature: str, rows: Sequence[tuple[str, str]], least_first: bool, even: bool) -> str:
    """Which of several fishes has more (or fewer) of what is counted or measured."""
    told = "; ".join(f"{name} {words}" for name, words in rows)
    if even:
        return sentence(f"about the same in {feature}: {told}")
    return sentence(f"{'fewest or least' if least_first else 'most'} by {feature}: {told}")


def no_age(count: int) -> str:
    """Kinds of which no age is held."""
    return f"Of {count} more no greatest age is held." if count > 1 else "Of one more no greatest age is held."


def degrees_us(low: str, high: str, low_c: str, high_c: str) -> str:
    """A temperature range, Fahrenheit first."""
    return f"{low} to {high} °F ({low_c} to {high_c} °C)" if low != high else f"about {low} °F ({low_c} °C)"


def spawns_first(rows: Sequence[tuple[str, str]], last: bool = False, together: str = "") -> str:
    """Which of several fishes spawns first, by the water it spawns in; in order. ``together``: those that tie."""
    (name, first), *others = rows
    if together:
        edge = "in the warmest water" if last else "in the coldest water"
        told = ", ".join(f"{other} {words}" for other, words in rows)
        return sentence(f"{together} spawn {'last' if last else 'first'}, {edge}: {told}")
    rest = ", ".join(f"the {other}, {words}" for other, words in others)
    does = "spawns last, in the warmest water" if last else "spawns first, in the coldest water"
    return sentence(f"the {name} {does}: {first}; then {rest}")


def shared_water(names: str, waters: str) -> str:
    """Waters told of all fishes named."""
    return f"Yes: of {names} the base tells the same kinds of water, {waters}."


def no_shared_water(names: str) -> str:
    """No water told of all."""
    return f"The base tells no kind of water of both or all: {names}; that does not prove that they never meet."


def top_of(count: int, what: str, name: str, words: str, least_first: bool) -> str:
    """The first of fishes in the order of their size."""
    return sentence(f"the {name}, {words}: the {'smallest' if least_first else 'biggest'} of {count} {what}")


def top_by(count: int, what: str, feature: str, names: str, words: str, least_first: bool) -> str:
    """The first of fishes in the order of a feature."""
    return sentence(f"the {names}: {words}, the {'least' if least_first else 'most'} of {count} {what} by {feature}")


def nth_of(nth: str, name: str, words: str) -> str:
    """A later place in such an order."""
    return sentence(f"{nth} comes the {name}: {words}")


def then(shown: int, count: int, least_first: bool) -> str:
    """What stands over fishes in order, after the first of them was told."""
    cut = f" ({shown} of {count})" if shown < count else ""
    return f"In order, the {'least' if least_first else 'greatest'} first{cut}:"


NTH = ("first", "second", "third", "fourth", "fifth")


def no_such_length(name: str, length: str, largest: str) -> str:
    """A length that no fish of a kind has, so that no weight belongs to it."""
    return sentence(f"no {name} of {length} is known: the longest held is {largest}, so no weight goes with that. "
                    "Tell me the length of the fish itself, snout to tail")


def no_such_weight(name: str, weight: str) -> str:
    """A weight that no fish of a kind has."""
    return sentence(f"no {name} of {weight} is known; check the figure, the unit and the kind of fish")


def weight_in(weight: str) -> str:
    """A weight told, in both systems."""
    return sentence(f"that is {weight}")


WEIGHT_OF_WHICH = "That goes with the kind: which fish is it? A length alone tells no weight."
