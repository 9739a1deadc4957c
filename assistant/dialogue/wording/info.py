"""The wording of information answers: ranges, sizes, weights, names, and what all of them share (layer 4).

Functions take values already put into words; facts about fishes come from the base, never from here.
"""

from __future__ import annotations

from assistant.dialogue.wording.core import UNCHECKED
from assistant.text import article, join, sentence

WHICH_FISH = "Which fish is it about?"
WHERE = "Where is that? A state or province will do."
LENGTH = "How long is it, in inches or centimetres?"


def unchecked(text: str) -> str:
    """A claim nobody has looked up."""
    return noted(text, UNCHECKED)


def noted(text: str, note: str) -> str:
    """A sentence with a note in brackets at its end, where there is one."""
    return f"{text.rstrip('.')} ({note})." if note else text


def an(name: str) -> str:
    """A name with its indefinite article."""
    return f"{article(name)} {name}"


def titled(label: str, text: str) -> str:
    """A point under the name of a fish."""
    return f"{label[:1].upper()}{label[1:]}: {text}"


def taken_as(words: str, name: str) -> str:
    """A loose name taken for one fish."""
    return f'"{words}" is used for several fishes; this is for the {name}. Name another if you meant it.'


def of_family(family: str, count: int) -> str:
    """Fishes of a family."""
    return f"{'fish' if count == 1 else 'fishes'} of the {family}"


def ids_or_none(names: str, topic: str) -> str:
    """Nothing held of a side of some fishes."""
    return f"{topic[:1].upper()}{topic[1:]} of the {names} is not held in this base."


def more(count: int) -> str:
    """Further points not shown."""
    return f'{count} more held; say "more" to see them.'


def names_with(names: list[str], last: str = "and") -> str:
    """Names in a list."""
    return join(names, last)


# --- range ----------------------------------------------------------------------------------------------------

STATUS_VERB = {
    "native": "is native",
    "introduced": "is introduced, not native,",
    "stocked": "is stocked, not native,",
    "reintroduced": "was brought back",
    "absent": "is not expected",
    "extirpated": "has died out",
    "uncertain": "is uncertain",
    "vagrant": "is only a stray",
}
STATUS_LIST = {
    "native": "Native",
    "introduced": "Introduced",
    "stocked": "Stocked",
    "reintroduced": "Brought back",
    "absent": "Not there",
    "extirpated": "Died out",
    "uncertain": "Uncertain",
    "vagrant": "Strays",
}
ANSWER_OF = {
    "native": "Yes",
    "introduced": "Introduced, not native",
    "stocked": "Stocked, not native",
    "reintroduced": "Yes, brought back",
    "absent": "No",
    "extirpated": "Not any more",
    "uncertain": "Uncertain",
    "vagrant": "Only as a stray",
}


def range_here(name: str, place: str, status: str, where: bool = False, arrived: bool = False) -> str:
    """The status of a fish in a place; ``where``: asked where it lives, so without a yes; ``arrived``: if it came."""
    said = STATUS_SAID[status].format(name=name, place=place)
    answer = ANSWER_OF["native"] if arrived and status in ("introduced", "stocked") else ANSWER_OF[status]
    return sentence(said if where else f"{answer}: {said}")


STATUS_SAID = {
    "native": "the {name} is native to {place}",
    "introduced": "the {name} lives in {place} because people brought it there; it is not native",
    "stocked": "the {name} is put into waters of {place} by stocking; it is not native there",
    "reintroduced": "the {name} was native to {place}, died out and was brought back",
    "absent": "the {name} is not expected in {place}",
    "extirpated": "the {name} was native to {place} and has died out there",
    "uncertain": "whether the {name} lives in {place} is uncertain",
    "vagrant": "the {name} strays into {place} at times",
}


def range_unknown(name: str, place: str) -> str:
    """Nothing held of a fish in a place."""
    return (
        f"Unknown: the base does not list the {name} for {place}, neither as native nor as introduced, and that is "
        "not proof that it is missing."
    )


def range_invented(place: str) -> str:
    """An invented place."""
    return f"{place} is invented, made up to practise with fishing rules; no ranges are held for it."


def no_such_place(words: str) -> str:
    """A place that the base does not know."""
    return f"I do not know a place called {words}; name a state or province."


def range_also(status: str, place: str) -> str:
    """A second, differing statement of the same place."""
    return f"Sources differ: one says that it {STATUS_VERB[status]} in {place}."


def range_part(area: str) -> str:
    """The part of a place meant."""
    return f"That holds for part of it: {area}."


def range_part_of(name: str, status: str, part: str) -> str:
    """A status known for a part of the place asked about only."""
    return sentence(f"in a part of it ({part}) the {name} {STATUS_VERB[status].rstrip(',')}")


def range_wider(name: str, status: str, part: str, place: str) -> str:
    """A status known for a wider area only."""
    return sentence(f"the {name} {STATUS_VERB[status]} in {part}, which takes in at least part of {place}")


def range_lead(name: str, status: str, places: str) -> str:
    """Where a fish is native, or what it is where it is none."""
    return sentence(RANGE_LEADS.get(status, RANGE_LEADS["uncertain"]).format(name=name, places=places))


RANGE_LEADS = {
    "native": "the {name} is native to {places}",
    "reintroduced": "the {name} died out and was brought back in {places}",
    "introduced": "the {name} was brought by people to {places}; it is not native there",
    "stocked": "the {name} is stocked in {places}; it is not native there",
    "vagrant": "the {name} strays into {places} at times",
    "uncertain": "whether the {name} lives in {places} is uncertain",
    "extirpated": "the {name} has died out in {places}",
    "absent": "the {name} is not expected in {places}",
}


def range_line(status: str, places: str) -> str:
    """Where a fish has another status."""
    return f"{STATUS_LIST[status]}: {places}."


def range_nothing(name: str) -> str:
    """No range held at all."""
    return f"The base holds no range for the {name}."


def range_cross(name: str, a: str, b: str, origin: str) -> str:
    """A cross has no range of its own."""
    tail = f" ({origin})" if origin else ""
    return sentence(f"the {name}{tail} can turn up where both parents live, {a} and {b}, and where it is stocked")


def group_here(count: int, total: int, names: str, place: str) -> str:
    """How many of a group live in a place."""
    return sentence(f"{count} of the {total} {names} held are listed for {place}")


def counted(places: str, rest: int) -> str:
    """Places cut short."""
    return f"{places} and {rest} more" if rest else places


# --- size and weight ------------------------------------------------------------------------------------------


def size_lead(name: str, usual: str, largest: str) -> str:
    """Usual and largest length."""
    if usual and largest:
        return sentence(f"the {name} usually reaches {usual}; the largest known is {largest}")
    if usual:
        return sentence(f"the {name} usually reaches {usual}; no largest length is held")
    return sentence(f"the largest {name} held is {largest}; no usual length is held")


def size_biggest(name: str, largest: str, usual: str) -> str:
    """Largest length first."""
    tail = f"; usual adults are {usual}" if usual else ""
    return sentence(f"the largest {name} held is {largest}{tail}")


def figures_of_parent(name: str) -> str:
    """Said behind figures of the larger parent of a cross."""
    return f"No largest length is held of the {name} itself; these are the figures of its larger parent."


def of_parent(name: str, parent: str, usual: str, largest: str) -> str:
    """What a parent of a cross reaches, where no largest length is held of the cross."""
    return (f"No largest length is held of the {name} itself; its larger parent, the {parent}, usually reaches "
            f"{usual}; the largest known is {largest}.")


def size_none(name: str) -> str:
    """No length held."""
    return f"The base holds no length for the {name}."


FITS = {
    "small": "small for",
    "ordinary": "ordinary (within the usual length) for",
    "top": "at the upper end of the usual lengths for",
    "large": "large, above the usual length, for",
    "huge": "very big, near the largest known, for",
    "beyond": "longer than the largest known for",
}


def size_verdict(length: str, name: str, fit: str, usual: str, largest: str) -> str:
    """How a length compares with the usual and the largest."""
    tail = f"; the largest known is {largest}" if largest else ""
    usual_text = f": usual adults are {usual}" if usual else ":"
    return sentence(f"{length} is {FITS[fit]} the {name}{usual_text}{tail}".replace(":;", ";"))


def size_share(length: str, share: str, name: str) -> str:
    """A length as a share of the largest, where no usual length is held."""
    return sentence(f"{length} is {share} of the largest {name} held; no usual length is held to judge it by")


def size_beyond() -> str:
    """A length that is not believable."""
    return (
        "Measure again, snout to tail with the mouth shut, and check the kind: a hybrid or another fish may have "
        "been taken for it."
    )


CATEGORY = {
    "below stock": "shorter than the stock length",
    "stock": "stock",
    "quality": "quality",
    "preferred": "preferred",
    "memorable": "memorable",
    "trophy": "trophy",
}


def size_category(category: str, above: str) -> str:
    """The size category that fisheries workers use, and the next one."""
    word = CATEGORY[category] if category == "below stock" else f'a "{CATEGORY[category]}" fish'
    return f"On the scale of sizes that fisheries workers use it is {word}" + (
        f"; next is {above}." if above else ", the top of the scale."
    )


def size_scale(steps: str) -> str:
    """The size categories of a kind."""
    return f"Fisheries scale of sizes: {steps}."


def step(word: str, length: str) -> str:
    """One step of the scale."""
    return f"{word} from {length}"


def size_age(name: str, age: str) -> str:
    """Greatest age."""
    return (
        f"The {name} can reach {age} years; a length alone does not tell the age, for growth varies from water to "
        "water."
    )


AGE_UNKNOWN = "No age is held for it, and a length alone does not tell the age: growth varies from water to water."
KEEPER = "What counts as a keeper is set by the local rule, or by taste where there is none; check the local rule."


def maturity(name: str, length: str) -> str:
    """Length at first maturity."""
    return sentence(f"the {name} first matures at about {length}")


def heaviest(name: str, weight: str, where: str = "") -> str:
    """The largest weight held, with the one place that it is told of."""
    return sentence(f"the heaviest {name} held is {weight}{f' ({where})' if where else ''}")


RECORD = (
    "A record is decided by the agency or a record body: have the fish weighed on a certified scale before "
    "witnesses, take photographs, and ask them. The base holds the largest figures its sources give, not official "
    "records."
)


def weight_beyond(name: str) -> str:
    """A weight that no fish held has reached."""
    return (
        f"That would be larger than any {name} held here: possible only as a record, so check the scale and the kind "
        "(a hybrid may be mistaken for it)."
    )


def record_share(weight: str, share: str) -> str:
    """How near to the largest weight."""
    return sentence(f"that is {share} of the heaviest held, {weight}")


def weight_lead(name: str, length: str, weight: str) -> str:
    """Standard weight for a length."""
    return sentence(f"{an(name)} of {length} in good shape weighs about {weight}")


def weight_girth(weight: str, low: str, high: str) -> str:
    """Weight from length and girth."""
    return (
        f"By length and girth it comes to about {weight}; between {low} and {high}, for the formula is a rough one."
    )


def weight_standard_note(name: str) -> str:
    """What a standard weight is."""
    return (
        f"That is the published standard weight of the {name}, the weight of a well-fed fish; thin ones weigh a "
        "fifth less, fat ones a tenth more."
    )


def weight_median_note(name: str) -> str:
    """What a median line is."""
    return f"That is the published middle weight of the {name}: half of them weigh more, half less."


def length_lead(name: str, weight: str, length: str) -> str:
    """Length at which a weight is reached."""
    return sentence(f"{an(name)} of {weight} is about {length} long if it is in good shape; a thin one is longer")


def condition_lead(name: str, weight: str, length: str, percent: str, word: str) -> str:
    """Relative weight."""
    return sentence(f"{weight} at {length} is {percent} of the standard weight for the {name}: {word}")


CONDITION = {
    "thin": "thin",
    "lean": "a little lean",
    "good": "in good shape",
    "fat": "fat",
    "odd": "hard to believe, so measure and weigh again",
}
LIMIT = {
    "below-minimum": "It is shorter than the fish the line was made for, so take the figure with care.",
    "above-data": "It is longer than the fish the line was made for or than any held, so take the figure with care.",
    "line-in-doubt": 'The published line itself is in doubt by about one part in twenty, so read it as "about".',
    "other-length-given": "The line takes another kind of length (for instance to the fork), so the figure is rough.",
    "kin": "No line is held for this kind; a near relative's was used, so the figure is rough.",
    "converted": "The length given was first turned into total length.",
}


def no_weight_line(name: str) -> str:
    """No standard weight held."""
    return (
        f"The base holds no standard-weight line for the {name} or a near relative, so I can't work out a weight; a "
        "length and a girth would do (in pounds or kg)."
    )


WEIGHT_NEEDS = (
    "Tell me a length (and the girth if you have it), or a weight, and I will work out the other in pounds or kg."
)


# --- names ----------------------------------------------------------------------------------------------------


def name_means(words: str, fish: str) -> str:
    """A name with one meaning."""
    return sentence(f'"{words}" is a name of the {fish}')


def name_means_in(words: str, fish: str, region: str) -> str:
    """A name with its region."""
    return sentence(f'"{words}" means the {fish} in {region}')


def name_several(words: str, fishes: str, family: str = "") -> str:
    """A name with several meanings, and the family where all belong to one."""
    of = f" of the {family}" if family else ""
    return sentence(f'"{words}" is used for several fishes{of}: {fishes}')


def name_here(words: str, place: str, fishes: str) -> str:
    """What a name usually means in a place."""
    return sentence(f'in {place} "{words}" usually means the {fishes}')


def name_not_told(words: str, place: str, fishes: str) -> str:
    """A name whose use in a place is not told."""
    return f'No source tells what "{words}" means in {place}; of the fishes called so, these live there: {fishes}.'


def name_elsewhere(fishes: str) -> str:
    """The other fishes that bear a name, of which no region is told."""
    return sentence(f"elsewhere it is also used for the {fishes}")


def name_region(fish: str, region: str) -> str:
    """Where a fish bears the name asked about."""
    return sentence(f"the {fish}: {region}") if region else sentence(f"the {fish}: no region held")


def name_synonym(words: str, fish: str, scientific: str) -> str:
    """An older scientific name."""
    return sentence(f"{words} is an older name; the current one is {scientific}, the {fish}")


def scientific_lead(fish: str, scientific: str) -> str:
    """Scientific name."""
    return sentence(f"the scientific name of the {fish} is {scientific}")


def according(scientific: str, author: str, list_name: str) -> str:
    """Authorship and list."""
    parts = [f"described by {author}"] if author else []
    parts += [f"name according to {list_name}"] if list_name else []
    return sentence(f"{scientific}: {', '.join(parts)}") if parts else ""


def older_names(names: str) -> str:
    """Synonyms."""
    return f"Older scientific names: {names}."


def also_called(fish: str, names: str) -> str:
    """Local names."""
    return sentence(f"the {fish} is also called {names}")


def also_called_in(fish: str, place: str, names: str) -> str:
    """Local names of a place."""
    return sentence(f"in {place} the {fish} is also called {names}")


def in_language(fish: str, language: str, names: str) -> str:
    """Names in another language."""
    return sentence(f"in {language} the {fish} is called {names}")


def no_name_in(fish: str, where: str) -> str:
    """No name held."""
    return f"No {where} name is held for the {fish}."


LANGUAGES = {"fr": "French", "es": "Spanish", "en": "English"}
NO_ORIGIN = "Where the name comes from is not held; I hold the names themselves, and where they are used."
MISUSED = "elsewhere other fishes are called so, too"
NAMES_NEED = "Name a fish, or a local name, and I will tell you what else it is called and where."


def both_in_family(names: str, family: str) -> str:
    """Several taxa of one family."""
    return sentence(f"{names} belong to one family, the {family}")


def apart_in_family(a: str, b: str, first: str, second: str) -> str:
    """Taxa of different families."""
    belong = "belong" if a.endswith("s") else "belongs"
    return sentence(f"no, the {a} {belong} to the {first} and the {b} to the {second}")


def word_fishes(word: str, names: str) -> str:
    """Fishes with a word in their names."""
    return sentence(f'several fishes have "{word}" in their names: {names}')
