"""The wording of lists and of what the base lacks (layer 4).

Functions take values already put into words; facts about fishes come from the base, never from here.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from assistant.dialogue.wording.info import STATUS_SAID
from assistant.text import join, sentence


def list_lead(count: int, what: str, names: str) -> str:
    """Fishes found."""
    if count == 1:
        one = what.replace(" that are ", " that is ").replace(" that were ", " that was ")
        return sentence(f"only 1 {one}: {names}")
    return sentence(f"{count} {what}: {names}")


def of_life(sides: Sequence[tuple[str, str]]) -> str:
    """Sides of life with what is asked of each."""
    return "(" + "; ".join(f"{side}: {value}" for side, value in sides) + ")"


AS_RECORDED = "These are the fishes of which the base says so; it tells the main points of a life, not all of it."


def only_in(name: str, places: str) -> str:
    """A fish of which something is said in some places only."""
    return f"{name} (in {places})"


def spawning_in(fishes: str, seasons: Sequence[str]) -> str:
    """Fishes that spawn in a season."""
    return f"{fishes} that spawn in {join(list(seasons), 'or')}"


def list_none(what: str) -> str:
    """Nothing found."""
    return f"None: I hold no {what}."


def none_as_rule(what: str) -> str:
    """Nothing found that is so in most fish of its kind, but some in which it occurs."""
    return f"As a rule none: no {what}."


def none_of_life(what: str) -> str:
    """No fish of which such a side of life is told."""
    return f"None that the base tells of, among the {what}."


def fishes(count: int, of_last: bool = False) -> str:
    """Fishes of whatever group, or ``of_last`` those of the list before that are left."""
    return ("fish" if count == 1 else "fishes") + (" of the last list" if of_last else "")


def with_what(what: str) -> str:
    """A condition in a list."""
    return f"with {what}"


def of_length(length: str, longer: bool, within: bool = False) -> str:
    """A bound on the largest length, which the ones ``within`` it may just reach."""
    return f"of which the largest known is {'no longer' if within else 'longer' if longer else 'shorter'} than {length}"


def of_usual(length: str, longer: bool) -> str:
    """A bound on the usual length of grown fish."""
    return f"that usually grow {'longer than' if longer else 'no longer than'} {length}"


def of_weight(weight: str, heavier: bool, within: bool = False) -> str:
    """A bound on the largest weight, which the ones ``within`` it may just reach."""
    side = "no heavier" if within else "heavier" if heavier else "lighter"
    return f"of which the heaviest known is {side} than {weight}"


def with_value(name: str, value: str) -> str:
    """A fish with what is said of it."""
    return sentence(f"{name}: {value}")


def in_order(count: int, shown: int, what: str, feature: str, least_first: bool) -> str:
    """What stands over fishes in the order of a feature, or of their size where none is named."""
    if feature:
        first = f"{count} {what} by {feature}, the {'least' if least_first else 'greatest'} first"
    else:
        first = f"{count} {what}, the {'smallest' if least_first else 'biggest'} first"
    return sentence(f"{first}{f' ({shown} of them)' if shown < count else ''}:")


def no_order(words: str) -> str:
    """A feature that has no more and less."""
    return f'Of "{words}" I hold what is seen there, not how much or how big, so I cannot put fishes in that order.'


def none_told(feature: str) -> str:
    """A feature of which nothing is said for any fish asked about."""
    return f"Nothing is stated for any of these on {feature}, so I cannot put them in that order."


def in_place(place: str) -> str:
    """A place in a list."""
    return f"in {place}"


AT_HOME, BROUGHT_IN = "that are native there", "that were brought in"
FROM_ELSEWHERE = "native nowhere in what the base lists, only brought in"


def not_told(count: int) -> str:
    """Fishes left out because nothing is stated."""
    return f"For {count} more nothing is stated on that, so they are left out."


def doubtful(names: str, also: bool = True) -> str:
    """Fishes that show it at times."""
    return f"Sometimes{' also' if also else ''}: {names}."


def counts_held(species: int, crosses: int, statements: int, ranges: int) -> str:
    """What the base holds."""
    return (
        f"The base holds {species} species and {crosses} hybrids, {statements} trait statements and {ranges} range "
        "statements."
    )


def lacking(label: str, count: int, among: int, names: str, where: str = "") -> str:
    """Taxa without a value, of those of families in which it is stated of some."""
    taxa = "taxon" if among == 1 else "taxa"
    return f"{NO_VALUE}{label} is held, own or inherited, for {count} of {among} {taxa}{where}: {names}."


NO_VALUE = "No value for "


def lacking_none(label: str, among: int, where: str = "") -> str:
    """Every taxon of the families in which a character is stated has a value."""
    taxa = "the 1 taxon" if among == 1 else f"all {among} taxa"
    return f"None{where} that should have it: of the families in which {label} is stated at all, {taxa} have a value."


def lacking_elsewhere(count: int, families: str) -> str:
    """Taxa of families in which a character is stated of none."""
    more = f"{count} more {'taxon has' if count == 1 else 'taxa have'}"
    return f"{more} no value, of families in which it is stated of none and may not apply: {families}."


def unstated_everywhere(label: str, where: str) -> str:
    """A character that is stated of none of the fishes asked about, nor of their kin."""
    return f"{label[:1].upper()}{label[1:]} is stated of no taxon{where}, nor of any other of their families."


AMONG_CROSSES = " among the crosses"
"""What limits a list to hybrids."""


def among(kinds: str, place: str) -> str:
    """The fishes asked about, where they are limited: " among the sunfishes in Ohio"."""
    return f"{f' among {kinds}' if kinds else ''}{f' in {place}' if place else ''}"


def by_character(where: str, count: int, rows: Sequence[tuple[str, int, int]]) -> str:
    """Which characters have the most gaps."""
    told = "; ".join(f"{label} {lacking} of {among}" for label, lacking, among in rows)
    counted = "counted in families in which they are stated at all"
    return f"{count} characters have gaps{where}, {counted}; the most: {told}."


def by_character_none(where: str) -> str:
    """No character has a gap."""
    return f"None: every character that is stated in a family has a value for each of its taxa{where}."


def no_range(place: str, count: int, names: str) -> str:
    """Taxa without a range statement for a place."""
    return f"No range statement for {place} is held for {count} taxa: {names}."


NONE_SO = "None: every statement on it that I hold rests on more than that."


def one_source(name: str, count: int, total: int) -> str:
    """How many statements stand on characters for which one source alone is named."""
    return f"{name[:1].upper()}{name[1:]}: {count} of {total} statements rest on a single source."


def namely(names: str) -> str:
    """The characters that such statements are about."""
    return f"They are on {names}."


def from_memory(name: str, count: int, total: int) -> str:
    """How many statements rest on memory alone."""
    return f"{name[:1].upper()}{name[1:]}: {count} of {total} statements {MEMORY_TAIL}"


def unit_none(kind: str, count: int) -> str:
    """All number statements have units."""
    return f"None: all {count} {kind} statements have a unit."


def unit_some(kind: str, missing: int, count: int, names: str) -> str:
    """Number statements without unit."""
    return f"{missing} of {count} {kind} statements lack a unit: {names}."


def coverage_lead(name: str, told: int, total: int, what: str) -> str:
    """How much is stated of a taxon."""
    return f"{name[:1].upper()}{name[1:]}: {told} of the {total} {what} known in its family are stated."


def counted_among(label: str, rows: Sequence[tuple[str, str]], among: int) -> str:
    """Of which fishes of a list a count is held, each with it."""
    if not rows:
        return f"None of these {among}: no value for {label} is held."
    every = "The one has" if among == 1 else "Both have" if among == 2 else f"All {among} have"
    some = f"{len(rows)} of these {among} {'has' if len(rows) == 1 else 'have'}"
    told = "; ".join(f"{name} - {words}" for name, words in rows)
    return f"{every if len(rows) == among else some} a value for {label}: {told}."


def none_arrived(kinds: str, place: str) -> str:
    """No kind of a group is listed for a place."""
    return f"Not as far as is held: no {kinds} are listed for {place}, and that is not proof that there are none."


def not_counted(label: str, names: str) -> str:
    """The fishes of a list of which no value is held."""
    return f"No value for {label} is held for {names}."


GAPS = "Gaps: "


def gaps(names: str) -> str:
    """Characters with nothing stated."""
    return f"{GAPS}{names}."


KINDS_OF_CHARACTERS = {"": "observable characters", "numeric": "counts, ratios and lengths",
                       "colour-only": "characters of colour and pattern"}
"""What is said of the characters looked through, by the kind of them that is asked for."""
def eaten_by(food: str, fishes: str, more: int) -> str:
    """The fishes of whose food a thing is told."""
    rest = f" and {more} more" if more > 0 else ""
    return sentence(f"by what is told of their food, {food}: {fishes}{rest}")


def eaten_by_none(food: str) -> str:
    """A thing is told of the food of no fish."""
    return f"I can't say: of no fish here is it told that it eats {food}; only the main kinds of food are held."


LIST_NEEDS = (
    "Tell me a group, a place or a feature, for instance: which sunfishes live in Ohio, or which catfishes have a "
    "forked tail?"
)


def member_yes(names: str, group: str) -> str:
    """Members among named fishes."""
    return sentence(
        f"of these, {names} {'is one' if ' and ' not in names and ',' not in names else 'are'} of the {group}"
    )


def member_no(names: str) -> str:
    """Non-members among named fishes."""
    return f"Not: {names}."


def invasive_lead(count: int, names: str, where: str = "") -> str:
    """Newcomers to watch for."""
    what = f"of those brought in by people {where}" if where else "held here"
    return sentence(f"{count} {what} {'come' if count > 1 else 'comes'} with a warning of that kind: {names}")


def not_native(name: str, place: str) -> str:
    """A fish asked after as native that is not."""
    return f"No: the {name} is not native to {place}."


def namesake(kin: str, name: str, place: str, status: str) -> str:
    """A kin of like name that lives in the place."""
    told = STATUS_SAID[status].format(name=kin, place=place)
    return sentence(f"{told}; it is the fish called {name} there")


def states_not_waters(region: str) -> str:
    """That a region named after waters is told by its states."""
    return f"That is told of states and provinces on {region}, not of these waters themselves."


def placed_from_memory(count: int, among: int) -> str:
    """How many fishes of a list are told of its place from memory alone."""
    return f"That is {MEMORY_SAYS}" if count == among else f"Of {count} of these {among} that is told {MEMORY_SAYS}"


def only_of_states(name: str, waters: str) -> str:
    """That of some waters nothing is held of a fish, only of some states on them."""
    return f"I can't say for {waters} itself: the {name} is told of some states and provinces on it, not of its waters."


def parts_of(place: str) -> str:
    """A place of which only a part is meant."""
    return f"parts of {place}"


def is_unwanted(name: str, native: bool) -> str:
    """A fish that the base warns of."""
    tail = " where it is not native" if native else ""
    return f"Yes: the base warns of the {name} as an unwanted newcomer{tail}."


def brought_elsewhere(name: str, native: bool) -> str:
    """A fish brought to places, with no warning held."""
    if not native:
        return f"The {name} was brought in by people; no warning that it is unwanted is held here."
    return (
        f"In places: the {name} is native in one part of the continent and was brought to others; no warning that it "
        "is unwanted there is held here."
    )


def not_brought(name: str) -> str:
    """A fish brought nowhere that the base lists."""
    return f"No: the base lists no place to which the {name} was brought."


def no_newcomers(where: str) -> str:
    """No fish with a warning of that kind."""
    return f"None {where or 'here'} that the base warns of." if where else "None that the base warns of."


def also_brought(names: str) -> str:
    """Other fishes brought to a place."""
    return f"Brought in there without such a warning: {names}."


INVASIVE_NOTE = (
    "Whether one is unwanted depends on the place; report a suspected one to the local agency before you act."
)


def in_family(family: str, names: str) -> str:
    """Fishes of the family outside the genus asked for."""
    return f"Outside that genus, in the {family}: {names}."


def only_in_family(family: str, names: str) -> str:
    """Fishes of the family where none of the genus asked for is found."""
    return f"In the {family} only: {names}."


def whole_families(names: str, there: bool) -> str:
    """Families of which every kind (of the place asked about) is in a list."""
    return f"Among them every kind held{' there' if there else ''} of: {names}."


def thin(least: int, count: int, names: str) -> str:
    """Taxa with few statements."""
    if not count:
        return f"None: every taxon has {least} statements of its own or more."
    return f"{count} taxa have fewer than {least} statements of their own: {names}."


ONE_SPEAKS = "only one source held speaks of it there."
NONE_SPEAKS = "no source held speaks of it there."
IN_ALL = "all kinds together, crosses and groups aside"
MEMORY_SAYS = "from memory, unchecked."
MEMORY_TAIL = f"are {MEMORY_SAYS}"


def unsourced(count: int, total: int, names: str) -> str:
    """Statements without a source."""
    return f"{count} of {total} statements name no source: {names}."


def unsourced_none(total: int, memory: int) -> str:
    """Every statement names what it rests on."""
    return (
        f"None: each of the {total} trait statements names what it rests on; {memory} of them rest on memory alone, "
        "and are told as unchecked."
    )


def most_told(rows: Sequence[tuple[str, int]], least: bool) -> str:
    """The fishes of which the most or the least is stated."""
    (name, count), *others = rows
    rest = ", ".join(f"{other} {n}" for other, n in others)
    return sentence(f"the {name} has the {'fewest' if least else 'most'} statements of its own, {count}; then {rest}")


NO_CONFLICT = "where several sources speak of the same feature there, they say the same."


def none_of_one(fish: str, features: str, why: str) -> str:
    """No sources that differ on (some features of) a fish."""
    return f"None on {features} of the {fish}: {why}" if features else f"None on the {fish}: {why}"


def nothing_told(what: str, fish: str, many: bool) -> str:
    """Whether a fish or several have a feature is not held."""
    return f"Whether the {fish} {'have' if many else 'has'} {what} is not told in this base."


def conflicts(count: int) -> str:
    """How many features have sources that differ."""
    return f"{count} feature{'' if count == 1 else 's'} on which the sources held do not say the same; {NONE_DROPPED}"


NONE_DROPPED = "none is dropped:"
Listing = Callable[[str], str]
NOT_SAME = "do not say the same"


def disagreeing(what: str, where: str, taxa: int, features: int, grave_taxa: int, grave: int) -> str:
    """Of how many fishes sources differ, and of how many their values exclude each other."""
    of_taxa = f"{taxa} tax{'on' if taxa == 1 else 'a'}{where}"
    if what:
        first = f"The sources held {NOT_SAME} about {what} of {of_taxa}"
        second = f"of {grave_taxa} of them two values exclude each other"
    else:
        first = f"The sources held {NOT_SAME} on {features} feature{'' if features == 1 else 's'} of {of_taxa}"
        in_taxa = f"{grave_taxa} tax{'on' if grave_taxa == 1 else 'a'}"
        second = f"on {grave} of them ({in_taxa}) two values exclude each other"
    mild = "none of the values exclude each other, they differ in reach"
    return f"{first}; {second if grave else mild}; {NONE_DROPPED}"


def none_disagree(what: str, where: str, spoken: int) -> str:
    """No disagreement found."""
    if not what:
        return f"None: wherever several sources held speak of the same feature of a taxon{where}, they say the same."
    several = f"where several sources speak of it ({spoken} tax{'on' if spoken == 1 else 'a'}) they say the same"
    return f"None for {what}{where}: {several if spoken else 'of no taxon does more than one source held speak of it'}."


def more_excluding(names: str) -> str:
    """Further disagreements whose values exclude each other."""
    return f"Excluding values too: {names}."


def only_differing(names: str) -> str:
    """Disagreements whose values can both hold."""
    return f"Different, but both can hold: {names}."


def feature_of(fish: str, feature: str) -> str:
    """A feature of a fish in a list."""
    return f"{fish} ({feature})"


def conflict(name: str, values: list[str]) -> str:
    """The values of one feature of a fish."""
    return f"{name}: {'; '.join(values)}."


def by_source(value: str, source: str) -> str:
    """A value with its source."""
    return f"{value} ({source})" if source else value


def not_only(name: str, place: str) -> str:
    """That a fish lives in other places too."""
    return sentence(f"no: the {name} lives in other places than {place}, too")


def only_held_of(name: str, place: str) -> str:
    """That no other place is held for a fish."""
    return sentence(f"yes, as far as the base tells: the {name} is held of no other state or province than {place}")


def there_untold(place: str, names: str) -> str:
    """Fishes of a place of which the kind of water asked for is not told."""
    return sentence(f"also in {place}, though of these the base says nothing on such water: {names}")
