"""The wording of answers on kinship, spelling, plurals, authors and names of a place (layer 4)."""

from __future__ import annotations

from assistant.text import join, sentence


def belongs(fish: str, family: str, genus: str, many: bool) -> str:
    """Family and genus of a fish or of several."""
    verb = "belong" if many else "belongs"
    of = f", genus {genus}" if genus else ""
    return sentence(f"the {fish} {verb} to the {family}{of}")


def genus_first(fish: str, genus: str, family: str, many: bool) -> str:
    """Genus before family, where the genus is asked for."""
    verb = "are" if many else "is"
    return sentence(f"the {fish} {verb} of the genus {genus}, in the {family}")


def named_with(family: str, scientific: str) -> str:
    """A family with its scientific name."""
    return f"{family} ({scientific})"


NO_ORDER = "The order is not held; the family is."


def is_one(fish: str, kinds: str, family: str) -> str:
    """A fish is of the kinds asked about."""
    of = f", of the {family}" if family != kinds else ""
    return sentence(f"yes: the {fish} is one of the {kinds}{of}")


def in_family(fish: str, family: str) -> str:
    """A fish is of the family that bears the word asked about."""
    return sentence(f"yes: the {fish} belongs to the {family}")


def is_none(fish: str, family: str, kinds: str, words: str, used: bool) -> str:
    """A fish is not of the kinds asked about, though it may be called so."""
    first = "not strictly" if used else "no"
    also = f'; "{words}" is only a part of its name or a loose name of it' if used else ""
    return sentence(f"{first}: the {fish} belongs to the {family}, not to the {kinds}{also}")


def often_none(words: str, fish: str, others: int) -> str:
    """The difference between a loose name and a fish that it is used for."""
    more = "another fish" if others == 1 else f"{others} other fishes"
    return sentence(f'often none: "{words}" is a loose name of the {fish} and of {more}')


def both_loose(a: str, b: str, shared: str, only_a: str, only_b: str) -> str:
    """Two loose names that share some fishes."""
    rest = [f'only "{w}" is used for {x}' for w, x in ((a, only_a), (b, only_b)) if x]
    tail = f" Of the fishes held {join(rest)}." if rest else ""
    return sentence(f'mostly none: both "{a}" and "{b}" are loose names of the {shared}') + tail


def either(words: str, parts: str) -> str:
    """A loose name of each of the fishes asked about."""
    return sentence(f'either: "{words}" is used for {parts}')


def in_region(fish: str, region: str) -> str:
    """A fish with where it bears a name."""
    return f"the {fish} ({region})" if region else f"the {fish}"


def spelt(name: str, fish: str) -> str:
    """How a name is written."""
    return sentence(f'it is written "{name}"' + (f", a name of the {fish}" if fish != name else ""))


def not_standard(words: str) -> str:
    """A spelling that is met but is no name held."""
    return sentence(f'"{words}" is met as a spelling, but is not the one of the books')


def both_spelt(names: str, fish: str) -> str:
    """Several spellings of one name, all in use."""
    return sentence(f"both are in use: {names} are names of the {fish}")


NO_SOUND = "How a name is said aloud is not held, only how it is written."


def plural_forms(name: str, plural: str) -> str:
    """The plural of a name."""
    if name == plural:
        return sentence(f'"{name}" is the same for one and for many')
    return sentence(
        f'one {name}, many {name} or {plural}: both are in use, the bare form mostly for many of one kind, '
        f'"{plural}" mostly for several kinds'
    )


def part_of_name(word: str, scientific: str, fish: str) -> str:
    """Where a word of a scientific name stands."""
    return sentence(f'"{word}" is the species part of {scientific}, the {fish}')


def genus_is(word: str, kinds: str, family: str) -> str:
    """What a genus name stands for."""
    return sentence(f"{word} is the genus of the {kinds}, in the {family}")


NO_MEANING = "What the word means in Latin or Greek is not held."


def authored(fish: str, scientific: str, author: str) -> str:
    """Who described a fish and when."""
    bracket = " (in another genus than now)" if author.startswith("(") else ""
    return sentence(f"the {fish}, {scientific}, was described by {author.strip('()')}{bracket}")


def place_names_of(fish: str, place: str, names: str, many: bool) -> str:
    """What a fish is called in a place."""
    verb = "are" if many else "is"
    return sentence(f"in {place} the {fish} {verb} also called {names}")


def none_of_place(fish: str, place: str) -> str:
    """No name is told of a place."""
    return sentence(f"no name of the {fish} is held that is told of {place} in particular")


def formerly(old: str, fish: str, now: str, taken: str) -> str:
    """An older scientific name of a fish, and whose it is now."""
    other = f"; {old} is now the {taken}" if taken else ""
    return sentence(f"{old} is an older name of the {fish}, which is {now} now{other}")


def old_genus(word: str, fishes: str, now: str) -> str:
    """An older genus name."""
    return sentence(f"{word} is an older genus name, used for the {fishes}; these stand in {now} now")


def group_latin(kinds: str, genera: str, family: str) -> str:
    """The scientific name of a group."""
    return sentence(f"{kinds} are a group, not one fish: {genera}, of the {family}")


def genus_named(count: int, names: str) -> str:
    """One genus or several."""
    return f"genus {names}" if count == 1 else f"genera {names}"


def each_latin(parts: str) -> str:
    """The kinds with their scientific names."""
    return sentence(f"kinds: {parts}")


def group_in_language(kinds: str, language: str, names: str) -> str:
    """What several kinds of a group are called in a language."""
    return sentence(f"in {language} {kinds} are called {names}")


def stands_for_now(scientific: str, label: str, alone: bool) -> str:
    """Whether a scientific name stands for one fish alone now (``alone``: that fish was asked about)."""
    return f"{'Yes' if alone else 'No'}: in current lists {scientific} is the {label} alone."


def bears(fish: str, scientific: str, others: list[tuple[str, str]]) -> str:
    """Which scientific name a fish bears, and whose the others are."""
    rest = "".join(f"; {name} is the {other}" for name, other in others)
    return sentence(f"the {fish} is {scientific}{rest}")


def local_right(words: str, fish: str, owner: str, disputed: bool = True) -> str:
    """A name that is in use for a fish beside its own; somebody doubted it where ``disputed``."""
    other = f'; it is also the own name of another fish, the {owner}' if owner else ""
    lead = "nobody is wrong" if disputed else "yes, by a local name"
    return sentence(f'{lead}: "{words}" is a local name of the {fish}{other}')


def other_there(name: str, place: str, fish: str) -> str:
    """A longer local name that holds the words asked about and means another fish."""
    return sentence(f'"{name}" in {place} is another fish, the {fish}')
