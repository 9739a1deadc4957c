"""The wording of answers on care, tackle, crosses, life and terms (layer 4).

Functions take values already put into words; facts about fishes come from the base, never from here.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.text import lower_first, sentence

# --- handling -------------------------------------------------------------------------------------------------

CHECK_RULES = (
    "Rules on keeping, killing and moving fish differ by water and year: check the current local rules first."
)
ADVISORY = "Advice on eating fish is given water by water: look up the current local advisory first."
NO_ICE_REPORT = (
    "I can't know how thick the ice of any one water is today: no report of ice is held here. Measure it, and ask "
    "somebody who was on it."
)
NO_ADVICE = (
    "I hold no advice on that. I can tell how to hold, unhook, release, photograph, keep, clean or cook a fish, and "
    "what to do for stings and hooks."
)
LIKE_COMMON = "This is common practice among anglers, not taken from a published text."


def for_whom(names: str, text: str) -> str:
    """Advice that holds for some fishes only, where no fish was named."""
    return f"For {names}: {lower_first(text) if text.startswith('For ') else text}"


def law_note(name: str, clause: str) -> str:
    """A caution that is held as a statement."""
    return sentence(f"the {name} has {clause}")


# --- tackle ---------------------------------------------------------------------------------------------------

NO_TACKLE = "I hold no tackle advice for that fish."
NONE_EATS_BETTER = "All of them are eaten, and which is better is a matter of taste that is not held here."
NO_FIGHT = "Which of them fights harder is a matter of taste and is not held here; this is how they are caught."


def taken(fishes: str, text: str) -> str:
    """Advice that names the bait asked about."""
    return f"Yes, for {fishes}: {lower_first(text)}"


def bait_not_told(fishes: str, thing: str) -> str:
    """Nothing held on a bait for some fishes."""
    return sentence(f"nothing on {thing} is told for {fishes}; this is what they are caught with")


def season_note(text: str, season: str) -> str:
    """Advice that holds in a season."""
    return f"{text.rstrip('.')} ({season})."


# --- hybrids --------------------------------------------------------------------------------------------------

OCCURS = {
    "common": "yes, they cross, and it is one of the more common crosses",
    "uncommon": "yes, they cross, though not often",
    "rare": "yes, they cross, but rarely",
    "": "yes, they are known to cross",
}


def cross_lead(a: str, b: str, how: str, name: str) -> str:
    """Whether two fishes cross."""
    named = f"; the hybrid is called {name}" if name else ""
    return sentence(f"{OCCURS.get(how, OCCURS[''])}: {a} x {b}{named}")


def cross_is(name: str, a: str, b: str, origin: str) -> str:
    """What a cross is."""
    tail = f", {origin}" if origin else ""
    kind = "a cross" if "hybrid" in name else "a hybrid, a cross"
    return sentence(f"the {name} is {kind} of {a} and {b}{tail}")


ORIGIN = {"natural": "arising in nature", "stocked": "mostly raised in hatcheries and stocked"}
ORIGIN_BOTH = "arising in nature and raised for stocking, too"


def cross_unknown(a: str, b: str, why: str) -> str:
    """No cross held."""
    return sentence(f"no hybrid of {a} and {b} is known to this base{why}")


SAME_FAMILY = ", though both are of one family, so I would not rule it out"
OTHER_FAMILY = "; they are of different families, and such fishes do not cross in nature"


def fertile(text: str) -> str:
    """Fertility."""
    return f"Fertility: {text}."


def fertility_of_all(count: int, told: str) -> str:
    """Fertility over all crosses."""
    return f"It depends on the cross. Of the {count} crosses whose fertility is stated: {told}."


def how_common(count: int, told: str) -> str:
    """How common crosses are."""
    return f"Most are uncommon or rare. Of the {count} crosses held: {told}."


def males(text: str) -> str:
    """Sex ratio."""
    return f"Males among them: {text}."


def males_mostly(low: float, high: float, counts: int) -> str:
    """Sex ratio where males are more than half in every count, and never all."""
    share = f"{low:g}" if low == high else f"{low:g} to {high:g}"
    return f"Mostly males, not all: {share} % males{f' in {counts} counts' if counts > 1 else ''}."


def cross_list(name: str, others: str) -> str:
    """Known crosses of a fish."""
    return sentence(f"known crosses of {name}: {others}")


NOT_THE_SAME = "No, they are not the same."


def of_parents(name: str) -> str:
    """Nothing held of a cross itself."""
    return sentence(f"the base holds nothing on that of the {name} itself; this is what it holds of its parents")


def cross_kinds(name: str, others: str) -> str:
    """The crosses of a group that is one of crosses."""
    return sentence(f"the base holds these {name}: {others}")


def cross_list_stocked(name: str, others: str) -> str:
    """Crosses of a fish that are raised and stocked."""
    return sentence(f"crosses of {name} that are mostly raised in hatcheries and stocked: {others}")


def cross_none(name: str) -> str:
    """No cross held for a fish."""
    return f"No hybrid of the {name} is held."


NOT_BY_EYE = (
    "Looks alone cannot prove a hybrid: marks of both parents make it likely, a genetic (DNA) test settles it."
)
NOT_SPECIES = (
    "No: a hybrid is not a new species. It is the young of two species, and it bears the names of both parents with "
    "an x between."
)
def own_species(name: str, scientific: str) -> str:
    """A fish that is a species and no cross."""
    return sentence(f"yes: the {name} is a species of its own, {scientific}, not a cross")


def on_fish(name: str, text: str) -> str:
    """Advice with the fish it is given for, behind the word where it begins with a yes or no."""
    word, mark, rest = text.partition(":")
    if mark and word in ANSWERED:
        return f"{word}, for the {name}:{rest}"
    return f"{name[:1].upper()}{name[1:]}: {text[:1].lower()}{text[1:]}"


ANSWERED = ("Yes", "No", "Hardly")
"""Words with a colon by which advice answers a question."""


HALFWAY = (
    "Mostly in between: counts and shapes lie between those of the parents, and colours are a mix; some marks come "
    "from one parent only."
)
HYBRID_NEEDS = "Name two fishes to ask whether they cross, or one to see what it crosses with."


def halfway_count(n: int, total: int) -> str:
    """How many crosses are described as intermediate."""
    return f"Of the {total} crosses held, {n} are described as lying between their parents in counts or form."


# --- habitat --------------------------------------------------------------------------------------------------

ASPECT = {
    "habitat": "Water",
    "diet": "Food",
    "activity": "Time of activity",
    "spawning-season": "Spawning season",
    "spawning-temperature": "Spawning temperature",
    "spawning-ground": "Spawning ground",
    "parental-care": "Care for the young",
    "nest-habit": "Nests",
    "nest-form": "Nest",
    "air-breathing": "Air breathing",
    "salinity-tolerance": "Salt",
    "life-history": "Spawning (sea or fresh water)",
    "max-age": "Greatest age",
    "conservation-status": "Status",
}


def life_lead(name: str, label: str, told: str) -> str:
    """The side asked about, first."""
    return sentence(f"{label} of the {name}: {told}")


def life_yes(answer: str, name: str, label: str, told: str) -> str:
    """A yes/no question on life."""
    return sentence(f"{answer}. {label[:1].upper()}{label[1:]} of the {name}: {told}")


def inherited(text: str, name: str) -> str:
    """Said of the genus or family."""
    return f"{text} (told of the {name} in general)"


def degrees(low: str, high: str, low_f: str, high_f: str) -> str:
    """A temperature range in both scales."""
    if low == high:
        return f"about {low} °C ({low_f} °F)"
    return f"{low} to {high} °C ({low_f} to {high_f} °F)"


def years(number: str) -> str:
    """A greatest age."""
    return f"{number} years; a length alone does not tell the age, for growth varies"


def nowhere_said(name: str, label: str) -> str:
    """Nothing held of that side of life."""
    return f"The {label} of the {name} is not held in this base."


def eaters_unheld(name: str) -> str:
    """Nothing held of what feeds on a fish."""
    return f'What eats the {name} is not held in this base; "which fish eat fish" lists those that feed on others.'


def where_after(name: str) -> str:
    """Nothing held of where a fish goes when it has spawned."""
    return f"Where the {name} goes after spawning is not held in this base."


SPAWNS_INLAND = "No, it grows at sea but does not spawn there"
SPAWNS_AT_SEA = "No, it goes to the sea to spawn"


def the_reverse(words: list[str]) -> str:
    """That a fish has the other kind of life between the sea and fresh water than the one named."""
    return f"No, the other way round: {' or '.join(words)}" if words else "No"


IN_PART, BOTH, NOT_TOLD_SO, HARDLY = "In part", "Both", "Not that the base tells", "Hardly"
NOT_SPOKEN_OF = "I can't say: nothing here speaks of just that food"


def hardly(names: str) -> str:
    """That fishes told of cold water alone would not last in warm water."""
    return sentence(f"hardly: of {names} the base tells cold water alone")


def yes_of_some(names: str, count: int) -> str:
    """That something asked about a group is told of some kinds of it."""
    return f"Yes, some of them: of {names} the base says so; of {count} more it does not." if count else (
        f"Yes: of all of them the base says so ({names}).")


def depth_not_held(name: str, season: str) -> str:
    """No depth held for a season."""
    return f"How deep the {name} stays in {season} is not held in this base."


def where_in_season(name: str, season: str, many: bool = False) -> str:
    """Nothing held of where a fish keeps in a season; what follows tells of no season."""
    keeps = "keep" if many else "keeps"
    return f"Where the {name} {keeps} in {season} is not held in this base; what follows is not told of that season."


DEPTH = "depth it keeps to"
EGGS, HATCHING, MATURE = "number of eggs", "hatching time of the eggs", "age at first breeding"
COLD = "cold-water limit"
NESTS, NEST_SIZE = "nests", "size of the nest"
OF_GROWN = "What is held speaks of grown fish; of the young nothing is told here."
HABITAT_ASK = "where it lives, when it spawns, what it eats"


# --- terms ----------------------------------------------------------------------------------------------------


MAY_LIVE = "Nobody can promise that it lives; what was just told decides its chances."


def chances(dead: float) -> str:
    """Whether a hurt fish lives, by the share (percent) that died in a trial under the best handling."""
    odds = "often yes, if it is handled right" if dead < 50 else "the chances are poor"
    return f"{odds[:1].upper()}{odds[1:]}, but nobody can promise it."


THIN_ICE = "No, stay off: that is thinner than the least the guideline gives for one person on foot."


def term_where(where: str) -> str:
    """Where to look on the fish."""
    return f"Where to look: {where}."


def term_unknown(words: str) -> str:
    """A word that is not held."""
    return f'"{words}" is not in my glossary.' if words else "Which word shall I explain?"


def term_near(names: str) -> str:
    """Words that are held."""
    return f"Words I can explain, for instance: {names}."


def term_list(count: int) -> str:
    """A list of words."""
    return f"{count} {'word' if count == 1 else 'words'}, in plain language:"


def share_meant(word: str, low: int, high: int) -> str:
    """What a word for a share of fish means in answers."""
    return f'"{word}" is said here where {low} to {high} in 100 fish of the kind show it: a choice made for this base.'


def dead_only(label: str, how: str) -> str:
    """A feature that is not looked for on a live fish, with how it is looked for."""
    return sentence(f"not on a live fish: looking for the {label} would hurt or kill it") + f" {how}"


def live_too(label: str, how: str) -> str:
    """A feature that may be looked at on a live fish that is wet and soon back, with how it is looked at."""
    return sentence(f"the {label} can be looked at on a live fish, with wet hands and in little time") + f" {how}"


ON_LIVE_FISH = ("On live fish keep to what shows from outside, with wet hands and the fish in the water: colours, "
                "marks, the form of the fins and of the mouth.")


def sure_first(fish: str, alike: Sequence[tuple[str, str]]) -> str:
    """Look-alikes to be ruled out before a fish is killed, each with what settles it."""
    others = "; ".join(f"{name} ({lower_first(settles)})" for name, settles in alike)
    return f"Be sure of the {fish} before you kill it. It is mixed up with: {others}."


def if_it_is(fish: str, text: str) -> str:
    """What holds of a fish that is not wanted, before it is settled that it is one."""
    return f"If it is the {fish}: {text[:1].lower()}{text[1:]}"
