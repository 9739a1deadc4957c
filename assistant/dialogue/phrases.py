"""The wording of answers: every sentence that the core handlers say stands here, once (layer 4).

House tone: the answer first, short plain words, no lecture. Functions take values already put into words.
"""

from __future__ import annotations

from assistant.text import join, sentence

SCOPE_WORDS = {"juvenile": "young", "adult": "adult", "breeding": "breeding", "non-breeding": "non-breeding",
               "male": "males", "female": "females"}
SEX_PLURAL = {"male": "males", "female": "females"}
YOUNG = "young fish"


# --- small pieces -----------------------------------------------------------------------------------------------

def span(low: str, high: str) -> str:
    """Two bounds."""
    return f"{low} to {high}"


def either(a: str, b: str) -> str:
    """Two neighbouring numbers."""
    return f"{a} or {b}"


def usual_with_extremes(usual: str, extreme: str) -> str:
    """The usual range with the extreme one in brackets."""
    return f"usually {usual} ({extreme})"


def from_memory(text: str) -> str:
    """A value nobody has looked up."""
    return f"{text} [from memory, unchecked]"


def number_of(number: str, label: str) -> str:
    """A count with what is counted."""
    return f"{number} {label.removeprefix('number of ')}"


def denied(text: str) -> str:
    """Something said not to be there."""
    return f"not {text}"


def hedged(text: str) -> str:
    """Something said with doubt."""
    return f"perhaps {text}"


def statement_line(label: str, value: str, about: str) -> str:
    """A statement as label and value."""
    return f"{label}: {value}" + (f" ({about})" if about else "")


def under(length: str) -> str:
    """Fish up to a length."""
    return f"fish under {length}"


def page(text: str) -> str:
    """A page or part of a source."""
    return f"p. {text}" if text and text[0].isdigit() else text


# --- contrast ---------------------------------------------------------------------------------------------------

def contrast_lead(first: str, second: str, label: str, a: str, b: str) -> str:
    """The deciding feature of two fishes."""
    return sentence(f"look first at the {label}. The {first} has {a}; the {second} has {b}")


def contrast_lead_clause(first: str, second: str, a: str, b: str) -> str:
    """The deciding feature of two fishes as what each has."""
    return sentence(f"the {first} has {a}; the {second} has {b}")


def contrast_lead_many(names: str, label: str, told: str) -> str:
    """The deciding feature of three or more fishes."""
    return sentence(f"to sort {names}, look first at the {label}: {told}")


def contrast_point(label: str, told: str) -> str:
    """A further feature."""
    return f"{label[:1].upper()}{label[1:]}: {told}."


def each(name: str, value: str) -> str:
    """One fish's value in a comparison."""
    return f"{name} - {value}"


def not_told() -> str:
    """Nothing held of one fish."""
    return "nothing held"


def alike(told: str) -> str:
    """What the fishes share."""
    return f"No help, the same in each: {told}."


def described(label: str, value: str) -> str:
    """A label with its value."""
    return f"{label} ({value})"


def size_point(told: str) -> str:
    """How the lengths differ."""
    return f"Size when grown: {told}."


def inseparable(names: str) -> str:
    """Nothing in the base separates them."""
    return f"Nothing that I hold separates {names} by eye; a biologist would want counts on a dead fish or a genetic test."


def hard_pair(settles: str) -> str:
    """A pair listed as hard to tell."""
    return sentence(f"these two are hard to tell; what settles it is {settles}")


def misleading(who: str, taxon: str, often: str, value: str) -> str:
    """Something that fools people."""
    return sentence(f"careful: {who} of the {taxon} {often or 'can'} show {value}")


def crosses(names: str) -> str:
    """Hybrids between compared fishes."""
    return sentence(f"the two cross ({names}); a fish with marks of both may be a hybrid, and looks alone cannot prove that")


def place_helps(names: str, place: str, status: str) -> str:
    """Where the place decides."""
    return sentence(f"the place helps: in {place} the {names} {status}")


STATUS = {
    "native": "is native", "introduced": "is introduced", "stocked": "is stocked", "reintroduced": "was brought back",
    "absent": "is not expected", "extirpated": "has died out", "uncertain": "is uncertain", "vagrant": "strays in",
}


def one_fish_contrast(name: str, others: str) -> str:
    """A contrast asked with one fish only."""
    return sentence(f"tell me which fish to set beside the {name}; it is most often mixed up with {others}")


def contrast_same(name: str) -> str:
    """The same fish twice."""
    return sentence(f"both names mean the {name}: it is one and the same fish")


CONTRAST_NEEDS_TWO = "Name two fishes and I will set them side by side, for instance white crappie and black crappie."
WHICH_TWO = "Which two fishes shall I compare?"


def more_left(count: int) -> str:
    """Further points not shown."""
    return f"{count} more differences are held; say \"more\" to see them."


# --- describe ---------------------------------------------------------------------------------------------------

def describe_lead(name: str, scientific: str, shape: str, family: str) -> str:
    """The first sentence of a description."""
    kind = f", of the {family}" if family else ""
    body = f", has {shape}" if shape else ""
    return sentence(f"the {name} ({scientific}){kind}{body}")


def describe_point(label: str, value: str) -> str:
    """A feature of a fish."""
    return f"{label[:1].upper()}{label[1:]}: {value}."


def describe_size(told: str) -> str:
    """How big."""
    return f"Length: {told}."


def describe_range(native: str, introduced: str) -> str:
    """Where, in short."""
    parts = [f"native to {native}"] if native else []
    parts += [f"introduced in {introduced}"] if introduced else []
    return f"Where: {'; '.join(parts)}."


def places_short(shown: str, more: int) -> str:
    """A list of places cut short."""
    return f"{shown} and {more} more" if more else shown


def look_alike(other: str, settles: str) -> str:
    """The fish to watch for."""
    tail = f"; {settles} settles it" if settles else ""
    return f"Most easily taken for the {other}{tail}."


def describe_part(name: str, told: str) -> str:
    """One part of a fish."""
    return sentence(f"the {name} has {told}")


def part_of(name: str, part: str) -> str:
    """Lead for a part with several features."""
    return f"The {part} of the {name}:"


def nothing_on(name: str, part: str) -> str:
    """Nothing held about a part."""
    return f"The base holds nothing on the {part} of the {name}."


def yes_no(answer: str, name: str, told: str) -> str:
    """A yes/no question about a feature."""
    return f"{answer}: the {name} has {told}."


YES, NO, SOMETIMES, MOSTLY_NOT = "Yes", "No", "Sometimes", "Mostly not"


def group_lead(name: str, count: int, shown: str) -> str:
    """A genus, family or group described."""
    return sentence(f"{name}: {count} kinds are held, among them {shown}")


def one_line(name: str, told: str) -> str:
    """One fish in a line."""
    return f"{name[:1].upper()}{name[1:]}: {told}."


WHICH_FISH = "Which fish do you mean?"
WHICH_FISH_LEAD = "I have no fish in mind yet. Name one, or tell me what you saw."


def which_of(words: str, names: str) -> str:
    """A name that means several fishes."""
    return sentence(f"\"{words}\" can mean {names}")


# --- identify ---------------------------------------------------------------------------------------------------

def lead_sure(name: str, because: str) -> str:
    """One fish, no doubt worth naming."""
    return sentence(f"that is a {name}" + (f": {because}" if because else ""))


def lead_likely(name: str, because: str) -> str:
    """One fish, probably."""
    return sentence(f"most likely a {name}" + (f": {because}" if because else ""))


def lead_between(names: str) -> str:
    """Two or three fishes left."""
    return sentence(f"between {names}, and what you saw does not settle it yet")


def lead_not_enough(names: str, group: str) -> str:
    """Too little to name a fish."""
    if group:
        return sentence(f"not enough to name the species; it looks like one of the {group}" + (f", perhaps {names}" if names else ""))
    return sentence("not enough to name it yet" + (f"; {names} would fit so far" if names else ""))


def lead_none(clash: str) -> str:
    """Nothing known fits."""
    return sentence("none of the fishes I know fits all of that" + (f": {clash} do not go together" if clash else ""))


def lead_nothing_seen() -> str:
    """Nothing to go by."""
    return "Tell me what you saw and I will narrow it down: shape, mouth, ear flap, fins, marks, where and how long."


def guess_yes(name: str, because: str) -> str:
    """A guess confirmed."""
    return sentence(f"yes, {name} fits" + (f": {because}" if because else ""))


def guess_no(name: str, other: str, because: str) -> str:
    """A guess turned down."""
    return sentence(f"probably not a {name}; {other} fits better" + (f", because you saw {because}" if because else ""))


def guess_open(name: str, other: str) -> str:
    """A guess that stays open."""
    return sentence(f"it may be a {name}, but I cannot tell it from {other} by what you saw")


def guess_unchecked(name: str) -> str:
    """A guess without evidence."""
    return sentence(f"I cannot tell whether it is a {name} before you tell me what you saw")


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
    return sentence(f"a {name} is possible too; looks alone cannot prove or rule out a hybrid")


def out_of_range(name: str, place: str, others: str) -> str:
    """A fish where it is not expected."""
    text = f"the {name} is not expected in {place}"
    return sentence(text + (f"; check for {others}, and ask the state's agency to confirm such a find" if others else ""))


def range_doubt(name: str, place: str) -> str:
    """A place about which nothing is held."""
    return sentence(f"whether the {name} lives in {place} is not held, so the place did not count")


def too_small(length: str) -> str:
    """A fish too small to name."""
    return sentence(f"a fish of {length} is too small to name from marks that come with growth; take the group and leave it there")


def longer_than_known(name: str, length: str, largest: str) -> str:
    """A fish bigger than its kind grows."""
    return sentence(f"{length} is longer than the largest {name} I hold ({largest}); measure again or think of a bigger relative")


def clash(what: str) -> str:
    """Evidence that does not go together."""
    return sentence(f"does not go together in any one fish I know: {what}. Look at those again")


def caution_grip(text: str) -> str:
    """One line of care."""
    return sentence(text)


def took_in(what: str) -> str:
    """What was read from the text."""
    return sentence(f"I took in: {what}")


def unread(words: str) -> str:
    """Something not understood."""
    return sentence(f"I could not use \"{words}\"")


def likeness(name: str) -> str:
    """A fish named only to compare."""
    return sentence(f"you compared it with the {name}")


def settles(label: str, told: str) -> str:
    """What would settle it between the candidates."""
    return sentence(f"what settles it is the {label}: {told}")


# --- questions back ---------------------------------------------------------------------------------------------

def ask(question: str, how: str) -> str:
    """A question back with how to look."""
    return question + (f" {sentence(how)}" if how else "")


NOTHING_TO_ASK = "Nothing else that can be seen on a live fish would change that."
WHERE_ASK = "Where was it caught?"
LENGTH_ASK = "How long is it?"


def passed_over(label: str) -> str:
    """A question left aside."""
    return sentence(f"no matter, leave the {label} aside")


def look_at(label: str, told: str) -> str:
    """A feature to look at on a fish named."""
    return f"{label[:1].upper()}{label[1:]}: {told}."


def look_lead(name: str) -> str:
    """What to look at on a fish named."""
    return sentence(f"on a {name} look at these first")


# --- why and sources --------------------------------------------------------------------------------------------

def why_lead(name: str, told: str) -> str:
    """The grounds in one sentence."""
    return sentence(f"{name} because of {told}")


def why_point(seen: str, of: str) -> str:
    """One ground: what was seen, and what the base says."""
    return f"You saw {seen}; {of}."


def why_statement(name: str, told: str) -> str:
    """A statement as a ground."""
    return f"The {name}: {told}."


def why_not_lead(name: str, against: str) -> str:
    """Why not another fish."""
    return sentence(f"a {name} is less likely because {against}")


def why_not_open(name: str, how: str) -> str:
    """Another fish that stays possible."""
    return sentence(f"nothing you saw rules out a {name} ({how})")


def sure_lead(word: str, name: str, how: str) -> str:
    """How sure."""
    return sentence(f"{word}: {name}, {how}")


SURE_WORDS = {"sure": "Sure", "likely": "Likely, not certain", "between": "Undecided", "not-enough": "Not enough to go by",
              "none-fits": "Nothing I know fits"}


def sure_rest(rest: str) -> str:
    """The share of what else it could be."""
    return sentence(f"the rest goes to {rest}")


def threshold(word: str, meaning: str) -> str:
    """What a verdict word stands for."""
    return f"\"{word}\" means: {meaning}"


def change_mind(label: str, told: str, other: str) -> str:
    """What would turn the verdict."""
    return f"{label[:1].upper()}{label[1:]}: {told} would point to {other}."


def change_lead(name: str) -> str:
    """Lead of what would turn the verdict."""
    return sentence(f"I would give up the {name} for one of these")


def strongest(what: str) -> str:
    """The strongest ground."""
    return sentence(f"the strongest of these is {what}")


WHY_NOTHING = "I have not told you anything about a fish yet. Ask about one, or tell me what you saw."
WHY_UNKNOWN = "The base does not hold the reason for that; it holds what fishes look like, where they live and who said so."


def alternatives(names: str) -> str:
    """What else it could be."""
    return sentence(f"it could also be {names}")


def sources_lead(count: int, name: str) -> str:
    """Lead of a list of sources."""
    of = f" about the {name}" if name else ""
    return f"{count} source{'s' if count != 1 else ''} stand{'' if count != 1 else 's'} behind what I said{of}."


def source_line(cited: str, basis: str, used: str) -> str:
    """A source with its basis and what it was used for."""
    return f"{cited} [{basis}]" + (f" - {used}" if used else "")


BASIS_WORDS = {"read": "text read", "memory": "from memory, unchecked", "common-practice": "common practice, no source"}


def what_read(text: str) -> str:
    """How much of a source was opened."""
    return text.removeprefix("read:").strip()


def base_sources(read: int, total: int, species: int) -> str:
    """Where the base as a whole comes from."""
    return (f"The base rests on {total} sources (books, papers, agency pages); {read} of them were opened and read, the rest are marked "
            f"\"from memory, unchecked\". Every statement on its {species} kinds of fish names its source. It is not peer reviewed.")


def more_sources(count: int) -> str:
    """Sources not shown."""
    return f"{count} more; say \"more\" to see them."


NO_SOURCES = "I have not made a statement yet, so there is nothing to give a source for. Ask about a fish first."


# --- undo -------------------------------------------------------------------------------------------------------

UNDONE = "Taken back."
NOTHING_TO_UNDO = "There is nothing to take back yet."
STARTED_OVER = "Cleared. We start over: which fish is it about, or what did you see?"


def back_to(what: str) -> str:
    """What holds after going back."""
    return sentence(f"taken back; we are at {what} again")


def left_out(what: str) -> str:
    """An observation taken back."""
    return sentence(f"taken back: {what}")


def corrected(what: str) -> str:
    """An observation replaced."""
    return sentence(f"corrected: {what}")


NOTHING_LEFT = "Nothing is left to go by."


# --- help, small talk, outside ----------------------------------------------------------------------------------

HELP_LEAD = "I know freshwater fishes of North America. Just type what you want to know."
HELP_POINTS = (
    "Name a catch: \"black ear, long side fins, dark smudge at the back of the top fin, Ohio\".",
    "Tell two apart: \"white crappie or black crappie?\"",
    "Ask about one: \"tell me about the flier\", \"how big do rock bass get\", \"what do redears eat\".",
    "Rules of the invented demo waters, handling, bait, names, words: just ask.",
    "For a class: \"make me a key for ...\", \"quiz me on ...\".",
    "At any time: why, sources, next, undo, start over, units metric.",
)


def help_counts(species: int, crosses_held: int, statements: int) -> str:
    """How much is held."""
    return f"The base holds {species} kinds of fish, {crosses_held} crosses and {statements} statements with their sources."


HELP_CURATE = ("To check the base (a validation report): tellfin check. To edit or import a sheet, see tellfin --help: the command lists what "
               "a curator needs.")
HELP_SALT = "Only fishes of fresh water (and those that run up from the sea); I do not know marine fishes."
GREETING = "Hello. Tell me about a fish you saw, or ask me to tell two apart."
THANKS = "Glad it helped. Ask again any time."
BYE = "Good fishing, and go gently with the ones you put back."
CHATTER = "I am a plain assistant that knows freshwater fishes. Tell me about one you saw, or ask how to tell two apart."
OUTSIDE = "That is outside what I know; I only cover freshwater fishes of North America."
OUTSIDE_WAY_ON = "Try naming a fish, telling me what one looked like, or asking how to tell two apart; \"help\" shows more."


def outside_fish(words: str) -> str:
    """A fish that the base lacks."""
    return sentence(f"the base does not hold \"{words}\"; I only cover freshwater fishes of North America")


ABUNDANCE = ("How many fish live in a water is not held here, and it changes by the year; I can't say. The state's fish and wildlife agency "
             "surveys its waters and can tell.")
MEDDLING = "I can't do that. I only answer questions about freshwater fishes; \"help\" shows how to ask."
MEDICAL = ("That is a question for your doctor; I can't give medical advice. For eating fish from a water, follow your state's fish "
           "consumption advice.")
NOT_UNDERSTOOD = "I did not understand that. Try naming a fish, asking how to tell two apart, or type help."
EMPTY = "Type a question about a fish, for instance how to tell a white crappie from a black crappie. \"help\" shows more."
NOT_BUILT = "I cannot answer that kind of question yet."
HOSTILE = "I may well have got something wrong. Ask me \"why\" or \"sources\" and I will show what I went by; I only know freshwater fishes."


def also(what: str) -> str:
    """A second wish in the same line."""
    return f"You also asked {what}; ask it again and I will take it next."


ALSO = {
    "rules": "about keeping it", "handling": "how to handle it", "tackle": "about bait and tackle", "size": "about its size",
    "weight": "about its weight", "habitat": "where and how it lives", "names": "about its names", "range": "where it occurs",
    "contrast": "how to tell it apart", "describe": "what it looks like", "hybrids": "about hybrids", "list": "for a list",
    "term": "what a word means", "sources": "for the sources", "why": "for the reasons",
    "key": "for a key", "quiz": "for a quiz", "next-question": "what to look at", "help": "how I work",
}


def both_names(words: list[str]) -> str:
    """Names in a list with or."""
    return join(words, "or")


def family_of(label: str) -> str:
    """A genus or family as a group of fishes."""
    return label if label.endswith(("s", "family")) else f"{label} kind"


def ask_choices(question: str, choices: list[str], how: str) -> str:
    """A question with its choices."""
    offered = f" ({'; '.join(choices)}; or not sure)" if choices else ""
    return f"{question}{offered}" + (f" {sentence(how)}" if how and not choices else "")


def capital(text: str) -> str:
    """A statement as a sentence."""
    return sentence(text)


def describe_single(name: str, told: str) -> str:
    """The one thing held about a part."""
    return f"{name[:1].upper()}{name[1:]} - {told[:1].lower()}{told[1:]}"


RESTS_ON = "That rests on these statements of the base:"


def says(name: str, told: str, cited: str, basis: str) -> str:
    """What the base says of a fish, and who says so."""
    return f"{name}, {told} [{cited}; {basis}]" if cited else f"{name}, {told} [{basis}]"


def percent(probability: float) -> str:
    """A probability as a rounded percentage; never 0 or 100."""
    value = round(probability * 100)
    return "over 99 %" if value >= 100 else "under 1 %" if value < 1 else f"{value} %"


def with_share(name: str, how: str) -> str:
    """A fish with its share."""
    return f"{name} ({how})"


def you_saw(told: str) -> str:
    """What was seen, as a reason."""
    return f"you saw {told}"


def because_differs(label: str, name: str, told: str) -> str:
    """Why a feature matters."""
    return sentence(f"because the {label} differs among {name}: {told}")


def used_for(labels: list[str], count: int) -> str:
    """What a source was used for."""
    if not labels:
        return ""
    return "for " + join(labels) + (f" and {count - len(labels)} more" if count > len(labels) else "")


def so_far(fish: str, seen: str, place: str, length: str) -> str:
    """What is held in the conversation."""
    parts = [f"fish: {fish}" if fish else "", f"seen: {seen}" if seen else "", f"place: {place}" if place else "",
             f"length: {length}" if length else ""]
    told = "; ".join(p for p in parts if p)
    return sentence(f"so far: {told}") if told else "Nothing yet. Which fish is it about, or what did you see?"


def observer(label: str, share: str, scopes: str) -> str:
    """How far a feature can be trusted."""
    text = f"an ordinary observer gets the {label} wrong in about {share} in 100"
    return sentence(text + (f"; it changes with {scopes}" if scopes else ""))


def observers(colour: str, counts: str, scopes: str) -> str:
    """Why colour is weak evidence."""
    return sentence(f"colour is the weaker evidence: ordinary observers get colour marks wrong in about {colour} in 100, counts in about {counts}"
                    + (f", and colour changes with {scopes}" if scopes else ""))


def in_common(label: str, name: str, told: str) -> str:
    """A feature that a group shares."""
    return f"{label[:1].upper()}{label[1:]} in {name}: {told}."


def rests_on(told: str, cited: str, basis: str) -> str:
    """A record with its source."""
    return f"{told} [{cited}; {basis}]" if cited else f"{told} [{basis}]"


def size_line(label: str, a: float | None, b: float | None, c: float | None) -> str:
    """A standard-weight line as a formula of length in mm and weight in g."""
    if a is None or b is None:
        return label
    square = f" + {c:g} (log10 length) squared" if c else ""
    return f"{label}: formula log10 weight in g = {a:g} + {b:g} x log10 length in mm{square}"


def up_to(length: str) -> str:
    """The largest known length."""
    return f"largest known {length}"


def labelled(label: str, value: str) -> str:
    """A measure with what is measured."""
    return f"{label} {value}"
