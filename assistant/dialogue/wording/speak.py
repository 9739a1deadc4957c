"""Values of the base put into words: states with how often, numbers with units, fishes, places, sources (layer 4)."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from decimal import Decimal

from assistant.dialogue.wording import core as say
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character, Source, State, Statement
from assistant.model.stems import DROPPED
from assistant.reasoning.contrast import Told, tell
from assistant.reasoning.evidence import LACKING
from assistant.reasoning.observed import Observation
from assistant.reasoning.size import SizeRange
from assistant.text import join, key, singular, unique, word_set
from assistant.units import show_length, show_span, show_weight

PLAIN = 0.86
"""Share of fish from which a state is spoken of without a frequency word."""
WORDED = {"usually": 0.0, "often": 0.0, "sometimes": 0.0}
SHORT_TITLE = 48
PLAIN_PARTS = word_set("fin body form shape")
"""Words that a term of the trade may add to the plain words without saying more."""


def fish(kb: KnowledgeBase, taxon: str) -> str:
    """The English name of a taxon or group."""
    found = kb.find("taxon", taxon)
    if found is not None:
        return str(found.label)
    group = kb.find("group", taxon)
    return str(group.plural or group.label) if group is not None else taxon


def fish_both(kb: KnowledgeBase, taxon: str) -> str:
    """English and scientific name: "bluegill (Lepomis macrochirus)"."""
    found = kb.find("taxon", taxon)
    if found is None:
        return fish(kb, taxon)
    scientific = scientific_of(kb, taxon)
    return f"{found.label} ({scientific})" if found.label.lower() != scientific.lower() else str(found.label)


def scientific_of(kb: KnowledgeBase, taxon: str) -> str:
    """The scientific name; a cross as its parents in alphabetical order with an x between."""
    found = kb.taxon(taxon)
    if found.is_hybrid:
        return " x ".join(sorted(kb.taxon(p).scientific for p in found.parents))
    return found.scientific


def fishes(kb: KnowledgeBase, taxa: Iterable[str], last: str = "and") -> str:
    """Several English names in a list."""
    return join([fish(kb, t) for t in taxa], last)


def often(kb: KnowledgeBase, share: float) -> str:
    """The frequency word of the base for a share of fish; empty where nearly all show it."""
    if share >= PLAIN:
        return ""
    words = [f for f in kb.all("frequency") if f.id in WORDED]
    return min(words, key=lambda f: (abs(f.point - share), f.id)).label if words else ""


def states_words(kb: KnowledgeBase, states: Sequence[tuple[str, float]], clause: bool = False, taxon: str = "") -> str:
    """States with their frequency words, commonest first: "usually white, sometimes plain".

    With ``taxon`` a denial leaves room for the marks that are told of the fish elsewhere ("no other marks").
    """
    parts = []
    for name, share in states:
        state = kb.state(name)
        text = (state.clause if clause else state.label) or state.label
        text = say.no_other(text) if taxon and denies_the_others(kb, state, taxon) else text
        parts.append((word_of(kb, share, len(states)), text))
    return with_words(parts)


def word_of(kb: KnowledgeBase, share: float, among: int) -> str:
    """The frequency word of a state of several; a lone one that nearly all fish show needs none."""
    return often(kb, share) if among > 1 or share < PLAIN else ""


def with_words(parts: Sequence[tuple[str, str]], joined: Callable[[list[str], str], str] = join) -> str:
    """Texts with their frequency words; where these are the same for all, the texts alone, ``joined`` by "or"."""
    if len(parts) > 1 and all(w == parts[0][0] for w, _ in parts):
        return joined([t for _, t in parts], "or")
    return ", ".join(f"{w} {t}".strip() for w, t in parts)


def denies_the_others(kb: KnowledgeBase, state: State, taxon: str) -> bool:
    """True for a denial of marks in a fish that mostly has one of those it does not speak of."""
    wanted: dict[str, set[str]] = {}
    for mark in state.except_for:
        wanted.setdefault(mark.partition(".")[0], set()).add(mark)
    for character, marks in wanted.items():
        told = tell(kb, kb.character(character), taxon) if kb.find("character", character) is not None else None
        if told is not None and told.states and told.states[0][0] in marks:
            return True
    return False


def number_words(character: Character, numbers: tuple[float, float, float, float], units: str = "") -> str:
    """A range in words: "11 or 12", "usually 6 (5 to 7)", lengths in both systems."""
    low, usual_low, usual_high, high = numbers
    usual, extreme = _span(character, usual_low, usual_high, units), _span(character, low, high, units)
    if usual == extreme:
        return usual
    return say.usual_with_extremes(usual, extreme)


def _span(character: Character, low: float, high: float, units: str) -> str:
    if character.kind in ("length", "mass"):
        show = show_length if character.kind == "length" else show_weight
        system = units or "us"
        return show(high, system) if low == high else say.span(show(low, system), show(high, system))
    a, b = plain_number(low), plain_number(high)
    if a == b:
        return a
    return say.either(a, b) if character.kind == "count" and high - low == 1 else say.span(a, b)


def plain_number(value: float | Decimal) -> str:
    """A number without needless zeros."""
    return f"{float(value):.2f}".rstrip("0").rstrip(".")


def told_words(kb: KnowledgeBase, told: Told, character: Character, units: str = "", clause: bool = False) -> str:
    """What the base says of a character in a taxon, with "from memory" where nothing better is known."""
    if told.states:
        text = states_words(kb, told.states, clause, told.taxon)
    elif told.numbers is not None:
        text = bounded(told, number_words(character, told.numbers, units))
    else:
        text = ""
    text = narrowed(kb, told, text, units)
    return say.from_memory(text) if told.basis == "memory" and text else text


def bounded(told: Told, number: str) -> str:
    """A number of which only a bound or a mean is stated, said so: "86 or more", "about 2.3"."""
    return say.BOUNDS[told.bound].format(number) if told.bound else number


def narrowed(kb: KnowledgeBase, told: Told, text: str, units: str = "") -> str:
    """The words with whom they speak of, where that is not every grown fish: "blue-black (breeding males)"."""
    record = kb.record_at(f"st:{told.only}") if told.only and text else None
    return text if record is None else say.with_bracket(text, scope_words(record, units))


def told_clause(kb: KnowledgeBase, told: Told, character: Character, units: str = "") -> str:
    """The same as something a fish "has": "an ear flap with a red spot", "7 or 8 dorsal spines"."""
    if told.numbers is None:
        return told_words(kb, told, character, units, clause=True)
    number = bounded(told, number_words(character, told.numbers, units))
    counted = character.kind == "count"
    text = say.number_of(number, character.label) if counted else say.labelled(character.label, number)
    text = narrowed(kb, told, text, units)
    return say.from_memory(text) if told.basis == "memory" else text


def heading(character: Character) -> str:
    """The name of a character in plain words, with the trade's term in brackets where it brings a word of its own."""
    own = _words_of(character.trade) - _words_of(character.label) - PLAIN_PARTS
    return f"{character.label} ({character.trade})" if own else character.label


def _words_of(text: str) -> set[str]:
    """The words of a name in the singular, small words left out."""
    return {singular(w) for w in key(text).split()} - DROPPED


def seen_words(kb: KnowledgeBase, seen: Observation) -> str:
    """What somebody saw, in words: "a black ear flap", "about 28 scales", "no red spot"."""
    character = kb.character(seen.character)
    if seen.value is not None:
        top = seen.value if seen.value_high is None else seen.value_high
        number = (
            plain_number(seen.value) if top == seen.value else say.span(plain_number(seen.value), plain_number(top))
        )
        text = (
            say.number_of(number, character.label)
            if character.kind == "count"
            else say.labelled(character.label, number)
        )
        text = say.bound(text, seen.at_least) if seen.at_least or seen.at_most else text
    else:
        text = join([kb.state(s).clause or kb.state(s).label for s in seen.states if _known(kb, s)], "or")
    if not seen.seen:
        text = character.label if _only_lacking(seen) else say.denied(text)
    return say.hedged(text) if seen.hedged else text


def _only_lacking(seen: Observation) -> bool:
    """True for states that mean nothing is there; denied, they say that it is."""
    return bool(seen.states) and all(s.rpartition(".")[2] in LACKING for s in seen.states)


def _known(kb: KnowledgeBase, state: str) -> bool:
    return any(s.id == state for s in kb.states(state.partition(".")[0]))


def statement_words(kb: KnowledgeBase, s: Statement, units: str = "") -> str:
    """A statement as "character: value", with whom it speaks of."""
    from assistant.reasoning.evidence import number_range

    character = kb.character(s.character)
    numbers = number_range(s)
    if s.states:
        value = join([kb.state(x).label for x in s.states], "or")
        word = kb.find("frequency", s.frequency) if s.frequency else None
        value = f"{word.label} {value}" if word is not None and word.id != "always" else value
    elif numbers is not None:
        value = number_words(character, numbers, units)
    else:
        value = s.text
    about = join([x for x in (_sex_age(s), s.scope_text) if x])
    return say.statement_line(character.label, value, about)


def _sex_age(s: Statement) -> str:
    words = [say.SCOPE_WORDS.get(x, x) for x in (s.breeding, s.stage, s.sex) if x]
    return " ".join(words)


def scope_words(s: Statement, units: str = "us") -> str:
    """The class of fish that a statement speaks of: "young", "females", "breeding males", "fish under 2 in"."""
    sex = say.SEX_PLURAL.get(s.sex, "fish")
    if s.stage == "juvenile":
        return say.YOUNG
    if s.breeding:
        return f"{say.SCOPE_WORDS.get(s.breeding, s.breeding)} {sex}"
    if s.max_length:
        return say.under(show_length(s.max_length, units or "us"))
    return sex


def source_words(kb: KnowledgeBase, key: str, page: str = "") -> str:
    """One source in words: authors, year, title, publisher, page, how it was used."""
    found = kb.find("source", key)
    if found is None:
        return key
    return cite(found, page)


def short_cite(kb: KnowledgeBase, key: str, page: str = "") -> str:
    """A source in a few words: authors, year, the beginning of the title, page."""
    found = kb.find("source", key)
    if found is None:
        return key
    title = found.title if len(found.title) <= SHORT_TITLE else found.title[:SHORT_TITLE].rsplit(" ", 1)[0] + " ..."
    head = " ".join(p for p in (found.authors, found.year) if p)
    return ", ".join(p for p in (head, title, say.page(page)) if p)


def cite(source: Source, page: str = "") -> str:
    """A source as one line."""
    parts = [p for p in (source.authors, source.year) if p]
    head = " ".join(parts)
    rest = [p for p in (source.title, source.publisher, say.page(page)) if p]
    return ". ".join(unique([x for x in (head.rstrip("."), ", ".join(rest)) if x]))


def short_ids(statements: Iterable[str]) -> tuple[str, ...]:
    """Statement ids as short forms, each once."""
    return unique(s if ":" in s else f"st:{s}" for s in statements)


def length_range(sizes: SizeRange, units: str = "") -> str:
    """The usual lengths of a fish with the largest known in brackets."""
    system = units or "us"
    largest = show_length(sizes.largest, system) if sizes.largest else ""
    if sizes.usual_high is None:
        return say.up_to(largest)
    low = sizes.usual_low if sizes.usual_low is not None else sizes.usual_high
    usual = show_span(low, sizes.usual_high, system)
    return f"{usual}, {say.up_to(largest)}" if largest else usual
