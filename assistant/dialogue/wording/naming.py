"""The wording of identifications, grounds, sources and taking back (layer 4): see ``core`` for the rest."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.text import article, join, sentence


def lead_sure(name: str, because: str) -> str:
    """One fish, no doubt worth naming."""
    return sentence(f"that is {article(name)} {name}" + (f": {because}" if because else ""))


def lead_likely(name: str, because: str) -> str:
    """One fish, probably."""
    return sentence(f"most likely {article(name)} {name}" + (f": {because}" if because else ""))


def lead_leaning(name: str, because: str) -> str:
    """One fish ahead, not yet named for good."""
    return sentence(f"it leans to {article(name)} {name}, not settled yet" + (f": {because}" if because else ""))


def lead_between(names: str) -> str:
    """Two or three fishes left."""
    return sentence(f"it is {names}, and what you saw does not settle it yet")


def lead_not_enough(names: str, group: str) -> str:
    """Too little to name a fish."""
    if group:
        return sentence(
            f"not enough to name the species; it looks like one of the {group}"
            + (f", perhaps {names}" if names else "")
        )
    return sentence("not enough to name it yet" + (f"; {names} would fit so far" if names else ""))


def lead_none(clash: str) -> str:
    """Nothing known fits."""
    return sentence("none of the fishes I know fits all of that" + (f": {clash} do not go together" if clash else ""))


NO_PICTURES = "I cannot look at a picture, only read words."


def lead_nothing_seen(picture: bool = False, ruled_out: Sequence[str] = ()) -> str:
    """Nothing to go by, only a picture, or only what it is not."""
    text = "Tell me what you saw and I will narrow it down: shape, mouth, ear flap, fins, marks, where and how long."
    told = sentence(f"noted: not {join([f'{article(n)} {n}' for n in ruled_out], 'or')}") if ruled_out else ""
    return " ".join(x for x in (NO_PICTURES if picture else "", told, text) if x)


def guess_yes(name: str, because: str) -> str:
    """A guess confirmed."""
    return sentence(f"yes, {name} fits" + (f": {because}" if because else ""))


def guess_no(name: str, other: str, because: str) -> str:
    """A guess turned down."""
    why = f", because you saw {because}" if because else ""
    return sentence(f"probably not {article(name)} {name}; {other} fits better{why}")


def guess_open(name: str, other: str) -> str:
    """A guess that stays open."""
    return sentence(f"it may be {article(name)} {name}, but I cannot tell it from {other} by what you saw")


def guess_leaning(name: str, other: str, because: str, likely: bool) -> str:
    """A guess that is likelier than all else without being settled; ``likely`` where it is likelier than not."""
    start = f"most likely yes, {article(name)} {name}" if likely else f"{article(name)} {name} fits best"
    why = f" by {because}" if because else ""
    return sentence(f"{start}{why}; {other} is not ruled out yet")


def guess_cross(name: str, parent: str, marks: str, other: str) -> str:
    """A cross offered by marks of both parents: the look of the one named, and marks that another fish shows."""
    mixed = f"the look of {article(parent)} {parent}" + (f" with {marks}" if marks else "")
    return sentence(f"it could be {article(name)} {name}: {mixed} would suit a cross; rule out a plain {other} first")


def on_your_word(name: str) -> str:
    """A fish that the asker names without telling its marks."""
    return sentence(f"taken as {article(name)} {name} on your word; tell me what you saw of it and I will check that")


def guess_unchecked(name: str) -> str:
    """A guess without evidence."""
    return sentence(f"I cannot tell whether it is {article(name)} {name} before you tell me what you saw")


def candidate(name: str, share: str, supports: str, opposes: str) -> str:
    """A candidate with what speaks for and against it."""
    text = f"{name[:1].upper()}{name[1:]} ({share})"
    text += f": fits {supports}" if supports else ": nothing you saw speaks for it in particular"
    return text + (f"; against it: {opposes}" if opposes else "") + "."


def share(probability: float) -> str:
    """A probability in rough words that do not feign precision."""
    if probability >= 0.97:
        return "nearly certain"
    if probability >= 0.8:
        return f"about {round(probability * 20) * 5} in 100"
    return f"about {max(1, round(probability * 100))} in 100"


def hybrid_doubt() -> str:
    """Looks and hybrids."""
    return "Looks alone cannot prove a hybrid; only a genetic test does."


def cross_possible(name: str) -> str:
    """A cross to keep in mind."""
    return sentence(f"{article(name)} {name} is possible too; looks alone cannot prove or rule out a hybrid")


def of_some(which: str, name: str, what: str) -> str:
    """A mark that some fish of a kind show."""
    return sentence(f"told of {which} of the {name}: {what}")


def fits_unnamed(name: str, because: str) -> str:
    """A fish that fits where those named do not."""
    return sentence(f"if it is none of those you named, {article(name)} {name} would fit better: you saw {because}")


def out_of_range(name: str, place: str, others: str) -> str:
    """A fish where it is not expected."""
    text = f"the {name} is not expected in {place}"
    return sentence(
        text + (f"; check for {others}, and ask the state's agency to confirm such a find" if others else "")
    )


def too_small(length: str) -> str:
    """A fish too small to name."""
    return sentence(
        f"a fish of {length} is too small to name from marks that come with growth; take the group and leave it there"
    )


def lead_too_small(length: str, group: str) -> str:
    """A catch too small to name, with the group that holds."""
    kind = f": a young fish of the {group}, as far as can be told" if group else ""
    return sentence(
        f"too small to name{kind}. At {length} the marks that come with growth are missing; take the group and leave "
        "it there"
    )


def heavier_than_known(name: str, weight: str, heaviest: str) -> str:
    """A fish heavier than its kind grows."""
    return sentence(
        f"{weight} is heavier than the heaviest {name} I hold ({heaviest}); weigh again or think of a bigger relative"
    )


def longer_than_known(name: str, length: str, largest: str) -> str:
    """A fish bigger than its kind grows."""
    return sentence(
        f"{length} is longer than the largest {name} I hold ({largest}); measure again or think of a bigger relative"
    )


def clash(what: str, others: str) -> str:
    """Evidence that does not go together."""
    told = f"{what} with {others}" if others else what
    return sentence(f"does not go together in any one fish I know: {told}. Look at those again")


def clash_with(name: str, what: str) -> str:
    """Evidence that the best fish does not bear out."""
    return sentence(f"that does not go with the {name}: {what}. Look at that again")


NOTHING_TO_ASK = "Nothing else that can be seen on a live fish would change that."


def passed_over(label: str) -> str:
    """A question left aside."""
    article = "" if label.split()[0] in ("how", "where", "what", "which", "whether") else "the "
    return sentence(f"no matter, leave {article}{label} aside")


def look_lead(name: str) -> str:
    """What to look at on a fish named."""
    return sentence(f"on {article(name)} {name} look at these first")


NO_CROSS_BY_EYE = (
    "A cross cannot be ruled out by eye: marks of both parents would make a hybrid likely, a genetic (DNA) test "
    "settles it."
)
LOOK_ASK = "Which of these can you make out?"


def why_lead(name: str, told: str) -> str:
    """The grounds in one sentence."""
    return sentence(f"{name} because of {told}")


def why_point(seen: str, of: str) -> str:
    """One ground: what was seen, and what the base says."""
    return f"You saw {seen}; {of}."


def why_not_lead(name: str, against: str) -> str:
    """Why not another fish."""
    return sentence(f"{article(name)} {name} is less likely because {against}")


def why_not_open(name: str, how: str) -> str:
    """Another fish that stays possible."""
    return sentence(f"nothing you saw rules out {article(name)} {name} ({how})")


def sure_lead(word: str, name: str, how: str) -> str:
    """How sure."""
    return sentence(f"{word}: {name}, {how}")


SURE_WORDS = {
    "sure": "Sure",
    "likely": "Likely, not certain",
    "between": "Undecided",
    "not-enough": "Not enough to go by",
    "none-fits": "Nothing I know fits",
}


def sure_rest(rest: str, left: str) -> str:
    """The share of what else it could be, and what is left for all others."""
    return sentence(f"next: {rest}" + (f"; the other {left} is spread over many fishes" if left else ""))


def threshold(word: str, meaning: str) -> str:
    """What a verdict word stands for."""
    return f'"{word}" means: {meaning}'


def change_mind(label: str, told: str, other: str) -> str:
    """What would turn the verdict."""
    return f"{label[:1].upper()}{label[1:]}: {told} would point to {other}."


def change_lead(name: str) -> str:
    """Lead of what would turn the verdict."""
    return sentence(f"I would give up the {name} for one of these")


def strongest(what: str) -> str:
    """The strongest ground."""
    return sentence(f"the strongest of these is {what}")


def why_nothing(fish: str) -> str:
    """Nothing was said that a reason could be asked of; with the fish that the line names, if one."""
    told = f"I have said nothing of the {fish} yet" if fish else "I have not told you anything about a fish yet"
    return f"{told}. Ask about one, or tell me what you saw, and then ask why."


WHY_UNKNOWN = (
    "The reason for that is not held in this base; it holds what fishes look like, where they live and who said so."
)


CHANGES = "As far as the base tells, that goes with sex, age or season."


def the_other(what: str, said: str) -> str:
    """What the other of two fishes is by what was counted on it."""
    return sentence(f"the other, with {what}: {said[:1].lower()}{said[1:]}")


def settles(label: str, told: str) -> str:
    """What tells two fishes apart beside what was seen."""
    return sentence(f"to settle it look at the {label[:1].lower()}{label[1:]}: {told}")


def alternatives(names: str) -> str:
    """What else it could be."""
    return sentence(f"it could also be {names}")


def sources_lead(count: int, name: str) -> str:
    """Lead of a list of sources."""
    of = f" about the {name}" if name else ""
    return f"{count} source{'s' if count != 1 else ''} stand{'' if count != 1 else 's'} behind what I said{of}."


def all_paged(fish: str) -> str:
    """No source without a page where those are asked for."""
    return f"None: each statement on the {fish} that this rests on names its page or the part that was read."


def unpaged(count: int, fish: str) -> str:
    """Lead of the sources that name no page."""
    return f"Without a page: {count} statement{'s' if count != 1 else ''} on the {fish}."


def no_source_for(fish: str, feature: str) -> str:
    """A feature of a fish of which nothing is held."""
    return f"Nothing is held on {feature} of the {fish}, so there is no source to name for it."


def gives_figure(figure: str, feature: str, fish: str, found: bool) -> str:
    """Lead of the sources that give a figure, or that none held does."""
    if not found:
        return f"No source held gives {figure} for {feature} of the {fish}; what is held of it:"
    return f"What gives {figure} for {feature} of the {fish}:"


def other_figures(count: int, feature: str, fish: str) -> str:
    """Whether more figures for a feature are held than those told."""
    if not count:
        return f"No other figure is held for the {feature} of the {fish}."
    return f"{count} other figure{'s are' if count > 1 else ' is'} held for the {feature} of the {fish}."


def sources_used(count: int, name: str) -> str:
    """Lead of a list of sources of a fish of which nothing was said yet."""
    of = f" for what is held of the {name}" if name else ""
    return f"{count} source{'s are' if count != 1 else ' is'} used{of}."


def most_used(cited: str, count: int) -> str:
    """The source that the most rests on."""
    return f"{cited}: {count} statement{'s' if count != 1 else ''}, more than any other."


def source_line(cited: str, basis: str, used: str) -> str:
    """A source with its basis and what it was used for."""
    return f"{cited} [{basis}]" + (f" - {used}" if used else "")


NO_SOURCE = ", no source"
BASIS_WORDS = {
    "read": "text read", "memory": "from memory, unchecked", "common-practice": f"common practice{NO_SOURCE}",
}


def what_read(text: str) -> str:
    """How much of a source was opened."""
    return text.removeprefix("read:").strip()


def base_sources(read: int, total: int, species: int) -> str:
    """Where the base as a whole comes from."""
    return (
        f"The base rests on {total} sources (books, papers, agency pages); {read} of them were opened and read, "
        f'the rest are marked "from memory, unchecked". Every statement on its {species} kinds of fish names its '
        "source. It is not peer reviewed."
    )


def more_sources(count: int) -> str:
    """Sources not shown."""
    return f'{count} more; say "more" to see them.'


UNDONE = "All right, taken back."


NOTHING_TO_UNDO = "All right; there is nothing to take back yet. Ask, or tell me what you saw."


def started_over_with(name: str) -> str:
    """Started over with another fish named."""
    return sentence(f"cleared; taken as {article(name)} {name} on your word: tell me what you saw, or ask about it")


STARTED_OVER = "Cleared. We start over: which fish is it about, or what did you see?"


def dropped(what: str) -> str:
    """What was told is let go, and nothing is left."""
    return sentence(f"all right, dropped{f': {what}' if what else ''}") + " Ready for another fish, or any question."


def back_to(what: str) -> str:
    """What holds after going back."""
    return sentence(f"all right, taken back; we are at {what} again")


def left_out(what: str) -> str:
    """An observation taken back."""
    return sentence(f"taken back: {what}")


def corrected(what: str) -> str:
    """An observation replaced."""
    return sentence(f"corrected: {what}")


NOTHING_LEFT = "Nothing is left to go by."


def family_of(label: str) -> str:
    """A genus or family as a group of fishes."""
    return label if label.endswith(("s", "family")) else f"{label} kind"


def ask_choices(question: str, choices: list[str], how: str) -> str:
    """A question with its choices."""
    if choices:
        return f"{question.rstrip('?')} ({'; '.join(choices)}; or not sure)?"
    return f"{question.rstrip('?')} (a number, or not sure)?" + (f" {sentence(how)}" if how else "")


RESTS_ON = "That rests on these statements of the base:"


def says(name: str, told: str, cited: str, basis: str) -> str:
    """What the base says of a fish, and who says so."""
    return f"{name}, {told} [{cited}; {basis}]" if cited else f"{name}, {told} [{basis}]"


def percent(probability: float) -> str:
    """A probability as a rounded percentage; never 0 or 100."""
    value = round(probability * 100)
    return "over 99 %" if value >= 100 else "under 1 %" if value < 1 else f"{value} %"


def you_saw(told: str) -> str:
    """What was seen, as a reason."""
    return f"you saw {told}"


def because_differs(label: str, name: str, told: str) -> str:
    """Why a feature matters."""
    return sentence(f"because of the {label}, by which {name} are told apart: {told}")


NO_SPLIT = (
    "No work on that change of names is entered here, so I have none to cite and will not guess at one. Names follow:"
)


def matters(heading: str) -> str:
    """Why a feature is looked at: the pairs it tells apart follow."""
    return f"Because it tells look-alikes apart. {sentence(heading)}"


def used_for(labels: list[str], count: int) -> str:
    """What a source was used for."""
    if not labels:
        return ""
    return "for " + join(labels) + (f" and {count - len(labels)} more" if count > len(labels) else "")


def so_far(fish: str, seen: str, place: str, length: str) -> str:
    """What is held in the conversation."""
    parts = [
        f"fish: {fish}" if fish else "",
        f"seen: {seen}" if seen else "",
        f"place: {place}" if place else "",
        f"length: {length}" if length else "",
    ]
    told = "; ".join(p for p in parts if p)
    return sentence(f"so far: {told}") if told else "Nothing yet. Which fish is it about, or what did you see?"


def observer(label: str, share: str, scopes: str) -> str:
    """How far a feature can be trusted."""
    text = f"an ordinary observer gets the {label} wrong in about {share} in 100"
    return sentence(text + (f"; it changes with {scopes}" if scopes else ""))


def observers(colour: str, counts: str, scopes: str) -> str:
    """Why colour is weak evidence."""
    return sentence(
        f"colour is the weaker evidence{f', for it changes with {scopes}' if scopes else ''}, and a count does not; "
        f"ordinary observers report about {colour} in 100 colour marks and about {counts} in 100 counts wrongly"
    )


def in_common(label: str, name: str, told: str) -> str:
    """A feature that a group shares."""
    return f"{label[:1].upper()}{label[1:]} in {name}: {told}."


def rests_on(told: str, cited: str, basis: str) -> str:
    """A record with its source."""
    return f"{told} [{cited}; {basis.removesuffix(NO_SOURCE)}]" if cited else f"{told} [{basis}]"


def size_line(label: str, a: float | None, b: float | None, c: float | None) -> str:
    """A standard-weight line as a formula of length in mm and weight in g."""
    if a is None or b is None:
        return label
    square = f" + {c:g} (log10 length) squared" if c else ""
    return f"{label}: formula log10 weight in g = {a:g} + {b:g} x log10 length in mm{square}"


AS_SURE_AS_SOURCES = "As sure as its sources, no more and no less. It rests on these statements:"
