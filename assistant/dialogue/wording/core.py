"""The wording of answers: every sentence that the core handlers say stands here, once (layer 4).

House tone: the answer first, short plain words, no lecture. Functions take values already put into words.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.text import join, lower_first, sentence, singular

SCOPE_WORDS = {
    "juvenile": "young",
    "adult": "adult",
    "breeding": "breeding",
    "non-breeding": "non-breeding",
    "male": "males",
    "female": "females",
}
SEX_PLURAL = {"male": "males", "female": "females"}
YOUNG, YOUNG_WORD = "young fish", "young"


def span(low: str, high: str) -> str:
    """Two bounds."""
    return f"{low} to {high}"


def either(a: str, b: str) -> str:
    """Two neighbouring numbers."""
    return f"{a} or {b}"


def usual_with_extremes(usual: str, extreme: str) -> str:
    """The usual range with the extreme one in brackets."""
    return f"usually {usual} ({extreme})"


def with_bracket(text: str, more: str) -> str:
    """Words with a remark behind them: "blue-black (breeding males)"."""
    return f"{text} ({more})"


def each_kind(group: str, shown: int, count: int, where: str) -> str:
    """The head of a line on each kind of a group."""
    some = f"the first {shown} of {count}" if shown < count else f"{count}"
    return f"{some[:1].upper()}{some[1:]} kinds of {group}{f' in {where}' if where else ''}, a line on each:"


UNCHECKED = "from memory, unchecked"


def from_memory(text: str) -> str:
    """A value nobody has looked up."""
    return f"{text} [{UNCHECKED}]"


BOUNDS = {"least": "{} or more", "most": "{} or less", "about": "about {}", "usual": "usually {}"}
"""A number of which only a bound, a mean or the commonest is stated."""


def number_of(number: str, label: str) -> str:
    """A count with what is counted."""
    counted = label.removeprefix("number of ")
    return f"{number} {singular(counted) if number == '1' else counted}"


def bound(text: str, least: bool) -> str:
    """A count as a bound."""
    return f"{'at least' if least else 'at most'} {text}"


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


def _the(label: str) -> str:
    """A feature with its article; what is asked with "how" or "where" has none ("where the dorsal fin begins")."""
    return label if label.startswith(("how ", "where ")) else f"the {label}"


def contrast_lead(first: str, second: str, label: str, a: str, b: str) -> str:
    """The deciding feature of two fishes."""
    return sentence(f"look first at {_the(label)}. The {first} {has(a)}; the {second} {has(b)}")


def contrast_lead_many(names: str, label: str, told: str) -> str:
    """The deciding feature of three or more fishes."""
    return sentence(f"to sort {names}, look first at {_the(label)}: {told}")


def entry(label: str, told: str) -> str:
    """What is told under a label, as a sentence: "Scales: rough."."""
    return f"{label[:1].upper()}{label[1:]}: {told}."


def taken_for(words: str, chosen: str, others: str) -> str:
    """What a word for several fishes was taken for."""
    return f'"{words}" is taken for {chosen} here; say {others} for another.'


def goes_by(words: str, fishes: str, too: str) -> str:
    """Which fishes a loose name stands for, and that the fish it was set against goes by it too."""
    also = f", and the {too} itself goes by it too" if too else ""
    return f'"{words}" is used for {fishes}{also}.'


def each(name: str, value: str) -> str:
    """One fish's value in a comparison."""
    return f"{name} - {value}"


WORDS_ONLY = "I have no pictures, only words; this is how it looks."


def unheld_mark(heading: str, names: str) -> str:
    """A mark that is held of none of the fishes set side by side."""
    return f"{heading[:1].upper()}{heading[1:]}: not held of {names}."


def not_told() -> str:
    """Nothing held of one fish."""
    return "nothing held"


def alike(told: str) -> str:
    """What the fishes share."""
    return f"No help, the same in each: {told}."


def size_point(told: str) -> str:
    """How the lengths differ."""
    return f"Size when grown: {told}."


def inseparable(names: str) -> str:
    """Nothing in the base separates them."""
    return (
        f"Nothing that I hold separates {names} by eye; a biologist would want counts on a dead fish or a genetic test."
    )


def hard_pair(settles: str) -> str:
    """A pair listed as hard to tell."""
    return sentence(f"these two are hard to tell apart; look at this: {_deciding(settles)}")


def _deciding(settles: str) -> str:
    """What settles a pair as it stands after a colon: without a closing "settle it" of its own."""
    return lower_first(settles.removesuffix(" settles it").removesuffix(" settle it"))


def misleading(who: str, taxon: str, often: str, value: str) -> str:
    """Something that fools people."""
    return sentence(f"careful: {who} of the {taxon} {often or 'can'} show {value}")


def sexes_lead(taxon: str) -> str:
    """What is held on the sexes follows."""
    return f"What the base holds of one sex of the {taxon}, or of breeding fish:"


def sex_unsettled(lead: str) -> str:
    """That the sex of the one fish asked about is not settled by what follows."""
    return f"Of one fish I can't tell it for sure. {lead}"


def who_words(name: str, sex: str, stage: str, breeding: str) -> str:
    """The fish of one sex or age, or breeding ones: "breeding male bluegill"."""
    return " ".join(YOUNG_WORD if x == "juvenile" else x for x in (breeding, stage, sex, name) if x)


def nothing_apart(name: str) -> str:
    """Nothing is told of such fish alone."""
    return f"Nothing is held that sets the {name} apart from others of its kind; of all of them is told:"


def sex_point(heading: str, who: str, values: str) -> str:
    """A feature of one sex or of breeding fish."""
    return sentence(f"{heading}, {who}: {values}")


def no_sexes(taxon: str) -> str:
    """Nothing is held on the sexes."""
    return sentence(f"I can't tell: the base holds nothing on how males and females of the {taxon} differ")


SEXES_DOUBT = "Where a feature is not listed, nothing is held that sets males and females apart."


def crosses(names: str) -> str:
    """Hybrids between compared fishes."""
    return sentence(
        f"the two cross ({names}); a fish with marks of both may be a hybrid, and looks alone cannot prove that"
    )


def place_helps(names: str, place: str, status: str) -> str:
    """Where the place decides."""
    return sentence(f"the place helps: in {place} the {names} {status}")


STATUS = {
    "native": "is native",
    "introduced": "is introduced",
    "stocked": "is stocked",
    "reintroduced": "was brought back",
    "absent": "is not expected",
    "extirpated": "has died out",
    "uncertain": "is uncertain",
    "vagrant": "strays in",
}


def one_fish_contrast(name: str, others: str) -> str:
    """A contrast asked with one fish only."""
    return sentence(f"tell me which fish to set beside the {name}; it is most often mixed up with {others}")


CONTRAST_NEEDS_TWO = "Name two fishes and I will set them side by side, for instance white crappie and black crappie."
WHICH_TWO = "Which two fishes shall I compare?"


def more_left(count: int, names: Sequence[str] = ()) -> str:
    """Further points not shown, by the features they are on."""
    told = "1 more difference is held" if count == 1 else f"{count} more differences are held"
    features = f" ({'; '.join(names)})" if names else ""
    return f'{told}{features}; say "more" to see {"it" if count == 1 else "them"}.'


def no_other(denial: str) -> str:
    """A denial that leaves room for a mark told elsewhere: "no other marks"."""
    return f"no other {denial.removeprefix('no ')}" if denial.startswith("no ") else denial


def has(told: str) -> str:
    """What a fish has, with its frequency word before the verb: "usually has a dark blotch"."""
    word, _, rest = told.partition(" ")
    return f"{word} has {rest}" if rest and word in HOW_OFTEN else f"has {told}"


HOW_OFTEN = frozenset({"usually", "often", "sometimes"})


def describe_lead(name: str, scientific: str, shape: str, family: str, parents: str = "") -> str:
    """The first sentence of a description."""
    kind = f"{f', a cross of {parents}' if parents else ''}{f', of the {family}' if family else ''}"
    body = f", {has(shape)}" if shape else ""
    return sentence(f"the {name} ({scientific}){kind}{body}")


def describe_size(told: str) -> str:
    """How big."""
    return f"Length: {told}."


def describe_range(native: str, introduced: str, memory: str = "") -> str:
    """Where, in short, and how much of it rests on memory."""
    parts = [f"native to {native}"] if native else []
    parts += [f"introduced in {introduced}"] if introduced else []
    return f"Where: {'; '.join(parts)}{f' [{memory}]' if memory else ''}."


def memory_of_places(count: int, among: int) -> str:
    """How many of some places are told from memory alone; empty where none is."""
    if not count:
        return ""
    return UNCHECKED if count == among else f"{count} of {among} places {UNCHECKED}"


def places_short(shown: str, more: int) -> str:
    """A list of places cut short."""
    return f"{shown} and {more} more" if more else shown


def look_alike(other: str, settles: str) -> str:
    """The fish to watch for."""
    tail = f"; to tell them apart: {_deciding(settles)}" if settles else ""
    return f"Most easily taken for the {other}{tail}."


def part_of(name: str, part: str) -> str:
    """Lead for a part with several features."""
    return f"The {part} of the {name}:"


def one_fish(name: str) -> str:
    """Two names of one fish."""
    return sentence(f"yes, the same fish: both are names of the {name}")


COUNTS = "counts"
"""What is told where only numbers are asked for."""


def may_be(words: str, name: str) -> str:
    """The parts of a fish that some words for a mark may mean."""
    return f'Where to look for "{words}" on the {name}:'


def the_number(what: str) -> str:
    """A count of something."""
    return f"number of {what}"


def nothing_on(name: str, part: str) -> str:
    """Nothing held about a part."""
    return f"Nothing on the {part} of the {name} is told: that is not held in this base."


def has_told(name: str, told: str) -> str:
    """What a fish has, as a sentence of its own: counts."""
    return f"The {name} {has(told)}."


def yes_no(answer: str, name: str, told: str) -> str:
    """A yes/no question about a feature."""
    return f"{answer}: the {name} {has(told)}."


YES, NO, OFTEN, SOMETIMES, MOSTLY_NOT = "Yes", "No", "Often", "Sometimes", "Mostly not"
HARDLY, NOT_ALWAYS, ALWAYS_SO = "Hardly ever", "Not always", "Yes, as far as is held"


def group_lead(name: str, count: int, shown: str) -> str:
    """A genus, family or group described."""
    return sentence(f"{name}: {count} kinds are held, among them {shown}")


WHICH_FISH = "Which fish do you mean?"
WHICH_KIND = "Which of them do you mean? Name it, or tell what you saw of yours."
WHICH_FISH_LEAD = "I have no fish in mind yet. Name one, or tell me what you saw."


def which_of(words: str, names: str) -> str:
    """A name that means several fishes."""
    return sentence(f'"{words}" can mean {names}')


def settles(label: str, told: str) -> str:
    """What would settle it between the candidates."""
    return sentence(f"what settles it is the {label}: {told}")


def ask(question: str, how: str) -> str:
    """A question back with how to look."""
    return question + (f" {sentence(how)}" if how else "")


HELP_LEAD = "I know freshwater fishes of North America. Just type what you want to know."
HELP_LESSON = ("That I do not make. For a lesson there are: a key, a quiz or worksheet with its answers, cards, "
               "a list of words, a table of fishes side by side, and \"tellfin sheet\" for a drawn page.")
HELP_POINTS = (
    'Name a catch: "black ear, long side fins, dark smudge at the back of the top fin, Ohio".',
    'Tell two apart: "white crappie or black crappie?"',
    'Ask about one: "tell me about the flier", "how big do rock bass get", "what do redears eat".',
    "Rules of the invented demo waters, handling, bait, names, words: just ask.",
    'For a class: "make me a key for ...", "quiz me on ...", "a worksheet on ...", "cards for ...", "a word list".',
    "At any time: why, sources, next, undo, start over, units metric.",
)


def help_counts(species: int, crosses_held: int, statements: int) -> str:
    """How much is held."""
    held = f"{species} kinds of fish, {crosses_held} crosses and {statements} statements"
    return f"The base holds {held} with their sources."


HELP_CURATE = (
    "The base is changed with commands, not in talk: tellfin add, correct and retract for statements, each with its "
    "source; tellfin import for a sheet and tellfin export to get one as a table (CSV) for a spreadsheet; tellfin "
    "history and undo to see and take back. To check the base (a validation report): tellfin check. tellfin --help "
    "lists the rest."
)
HELP_SALT = "Only fishes of fresh water (and those that run up from the sea); I do not know marine fishes."
GREETING = "Hello. Tell me about a fish you saw, or ask me to tell two apart."
THANKS = "Glad it helped. Ask again any time."
BYE = "Good fishing, and go gently with the ones you put back."
IN_METRIC = "Lengths and weights come in metric from here on."

IN_INCHES = "Lengths and weights come in inches and pounds from here on."

CHATTER = (
    "I am a plain assistant that knows freshwater fishes. Tell me about one you saw, or ask how to tell two apart."
)
OUTSIDE = "That is outside what I know; I only cover freshwater fishes of North America."
OUTSIDE_WAY_ON = (
    'Try naming a fish, telling me what one looked like, or asking how to tell two apart; "help" shows more.'
)


def known_fish(name: str) -> str:
    """A fish of the base named in a line that is otherwise beyond it."""
    return sentence(f"the {name} I do know: ask what it looks like, how to tell it, where it lives or how to let it go")


def outside_fish(words: str) -> str:
    """A fish that the base lacks."""
    text = f'the base does not hold "{words}"; I only cover freshwater fishes of North America, not every one of them'
    return sentence(text)


ABUNDANCE = (
    "How many fish live in a water is not held here, and it changes by the year; I can't say. "
    "The state's fish and wildlife agency surveys its waters and can tell."
)
MEDDLING = 'I can\'t do that. I only answer questions about freshwater fishes; "help" shows how to ask.'
MEDICAL = (
    "That is a question for your doctor; I can't give medical advice. For eating fish from a water, "
    "follow your state's fish consumption advice."
)
PET = (
    "I do not know fish medicine: ask a vet or an aquarium shop. Never let a fish kept at home go into a pond or river."
)
NOT_UNDERSTOOD = (
    "I did not understand that; I only know freshwater fishes. Try naming a fish, telling me what one looked like, "
    "asking how to tell two apart, or type help."
)
EMPTY = (
    'Type a question about a fish, for instance how to tell a white crappie from a black crappie. "help" shows more.'
)
HOSTILE = (
    'I may well have got something wrong. Ask me "why" or "sources" and I will show what I went by; '
    "I only know freshwater fishes."
)


def also(what: str) -> str:
    """A second wish in the same line."""
    return f"You also asked {what}; ask it again and I will take it next."


ALSO = {
    "rules": "about keeping it",
    "handling": "how to handle it",
    "tackle": "about bait and tackle",
    "size": "about its size",
    "weight": "about its weight",
    "habitat": "where and how it lives",
    "names": "about its names",
    "range": "where it occurs",
    "contrast": "how to tell it apart",
    "describe": "what it looks like",
    "hybrids": "about hybrids",
    "list": "for a list",
    "term": "what a word means",
    "sources": "for the sources",
    "why": "for the reasons",
    "key": "for a key",
    "quiz": "for a quiz",
    "help": "how I work",
}


def both_names(words: list[str]) -> str:
    """Names in a list with or."""
    return join(words, "or")


def capital(text: str) -> str:
    """A statement as a sentence."""
    return sentence(text)


def describe_single(name: str, told: str) -> str:
    """The one thing held about a part."""
    return f"{name[:1].upper()}{name[1:]} - {told[:1].lower()}{told[1:]}"


def up_to(length: str) -> str:
    """The largest known length."""
    return f"largest known {length}"


def labelled(label: str, value: str) -> str:
    """A measure with what is measured."""
    return f"{label} {value}"
