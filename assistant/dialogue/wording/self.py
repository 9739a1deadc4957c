"""The wording of answers about the assistant itself: what it holds, keeps, reads and how far it is right (layer 4)."""

from __future__ import annotations

REPORT = (
    'I may be wrong there. Tell me which point, and I can show what it rests on ("sources"). In the base it is put '
    "right with commands, not in talk: tellfin correct or retract, with a source; where sources disagree both are kept."
)
KEPT = (
    "I hold the fish, the place and the marks of this talk until it ends; nothing typed is added to the base, and I "
    "learn nothing from it. The prompt keeps the lines typed in a file on this computer, unless it is started with "
    "--no-history."
)
LANGUAGES = (
    "I read and answer in English only; of many fishes I hold French names, and of some Spanish ones: ask for them."
)
UNITS = (
    'Either is read: inches, feet, cm or mm, and pounds, ounces, kg or grams ("14 in", "36 cm", "2 lb 3 oz"). I answer '
    'in the units you type, with the others in brackets; "units metric" or "units us" fixes them.'
)
RECALL = "I do not keep your questions word for word, only the fish, the place and the marks told; ask it again."
WHAT_TO_TYPE = "Type a question about a fish, or tell what one looked like and where it was. For instance:"
WHO = (
    "I am a computer program, no person: each answer is put together from a base of freshwater fishes in which every "
    "statement names its source."
)
NO_ANGLER = (
    "No: I am a computer program and have never wet a line. What I know of fishes comes from what others wrote down; "
    "ask me about yours."
)
ASKED = (
    "Because it parts the fishes still in question best: I ask first for what splits them most and is easily seen. "
    'Type "skip" where you cannot tell.'
)
LOST = 'Sorry. Ask for the word or the part that is not plain and I will explain it; "shorter" gives less.'
NO_FISH = "That animal is no fish; I only know fishes of fresh water."
FLATFISH = "By that it is a flatfish, and the base holds none of these: I only know fishes of fresh water."
NO_NET = (
    "I do not go online: I know only what this base holds. A curator adds a value with its source by hand (tellfin "
    "add) or from a sheet (tellfin import)."
)
NO_ERRANDS = (
    "I can't: I call, write to and report to nobody, and order, book or save nothing; I only answer questions about "
    "fishes. The state's fish and wildlife agency takes calls on poaching and on tagged fish; in danger call the "
    "emergency line yourself."
)
NO_WRITING = (
    "I can't write that: I only cover freshwater fishes of North America and answer questions about them."
)
SAME_ONE = (
    "I can't know whether it is the same fish: nothing told here marks one fish from another of its kind. A tag, a "
    "clipped fin, an old scar or photographs of both times could tell."
)
MOON = (
    "Nothing is held here on the moon, so I can't say whether it changes the bite or the spawning; nobody can promise "
    "you a bite."
)
FORECAST = (
    "I can't tell ahead what will bite, how many or how big: no weather, water level or report of catches is held "
    "here, and a day of fishing depends on all of them."
)
NOW_BITE = (
    "I can't see what is biting now: no report of catches is held here. A bait shop near the water knows, and so may "
    "the catch reports of the state's fish and wildlife agency."
)
NO_SPOTS = (
    "I can't tell you of anybody's spot: no fishing spots and no coordinates are held here. Whoever fished there may."
)
NOW_WATER = (
    "I can't see how a water stands now: no river stage, lake level, flow or water temperature is held here. The "
    "public river gauges and whoever runs the dam post them."
)
OTHER_GAME = (
    "I can't say: I only know freshwater fishes, and no season on birds or other game is held here. The wildlife "
    "agency of the state posts its hunting seasons."
)
STOCKING = (
    "I can't see when a water is or was stocked: no stocking dates are held here. The state's fish and wildlife agency "
    "or its hatchery posts them."
)
PRICE = (
    "What a fish or a mount of one costs or brings is not held here; I only know what fishes look like, where they "
    "live and how to treat them. Whether one may be sold at all is for the rules of the state."
)
OWNED_UP = "That is handsome of you. I am here for the next fish."
PLAIN_ENOUGH = "Your English does well here. Short, plain words are best: the fish, how it looked, and where it was."
SAME_TO_YOU = "Thank you, and the same to you. Tell me about a fish whenever you like."
STOP = "All right. Ask again any time."
NOTHING_ASKED = "I have not asked you anything yet. Name a fish, or tell me what one looked like."
NOTHING_SAID = "I have not said anything yet. Name a fish, or tell me what one looked like."


def known_fishing(name: str) -> str:
    """What can be told of catching a fish, where a line asks whether it will be caught."""
    return f"What I can tell of the {name}: the best time, bait and depth, and the spawning season. Ask for one."


def converted(words: str, other: str) -> str:
    """A typed measure in the other units."""
    return f"{words} is {other}."


def covers(species: int, hybrids: int) -> str:
    """Which fishes are held, and which not."""
    return (
        f"Not all: {species} species and {hybrids} hybrids of the fresh waters of the United States and Canada, native "
        "and brought in. Sea fishes and the fishes of other continents are not held."
    )


def trust(read: int, sources: int) -> str:
    """How far the assistant is right, in general."""
    return (
        f"I can be wrong. What I say rests on {sources} sources, {read} of them opened and read; curators enter it "
        'and it is not peer reviewed. A fish is named with how sure that is; ask "why" or "sources" after any answer.'
    )


def dated(newest: str) -> str:
    """How new the base is."""
    return (
        f"The newest sources in the base are of {newest}; each rule answer tells as of when its rules stand. What was "
        "changed from version to version: tellfin history; the version of the program: tellfin --version."
    )


def strange_word(word: str) -> str:
    """A word asked about that the base does not hold."""
    return f'No fish and no fishing word "{word}" is held here; it may be spelt otherwise, or be used only near you.'
