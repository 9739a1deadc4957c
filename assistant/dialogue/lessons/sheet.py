"""Everything a printed lesson sheet holds besides the drawings: table, key, words, safety, sources (layer 4)."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from assistant.dialogue.beside.comparison import Comparison, Row, compare
from assistant.dialogue.lessons.key import LessonKey, lesson_key
from assistant.dialogue.lessons.levels import lead_words, young
from assistant.dialogue.wording import lesson as say
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Caution, Source, Term
from assistant.reasoning.advice import kin
from assistant.reasoning.size import own_sizes
from assistant.text import join, key, sentence, singular, unique
from assistant.units import show_rough_span

SAFETY_TOPICS = ("touching", "holding", "wet-hands", "unhooking", "release", "cold-water")
"""Topics of the safety strip, one line each; a caution on the fishes of the sheet goes before a general one."""
EATING = "eat"
"""The act that calls for a warning of what is poisonous about some fishes."""
ALWAYS_TWO = ("holding",)
MOST_TERMS = 9
SHEET_ROWS, WIDE, WIDE_ROWS = 9, 5, 8
"""Rows of a table, and of one for so many fishes or more, whose cells are narrow and run over several lines."""


@dataclass(frozen=True, slots=True)
class FishLine:
    """One fish of the sheet: names and how long it grows (empty where nothing is held)."""

    taxon: str
    name: str
    scientific: str
    size: str


@dataclass(frozen=True, slots=True)
class Sheet:
    """The content of a lesson sheet."""

    title: str
    level: str
    fishes: tuple[FishLine, ...]
    table: Comparison
    key: LessonKey
    terms: tuple[tuple[str, str, str], ...]
    safety: tuple[tuple[str, str], ...]
    """The fishes that a caution is about (empty where it holds for every fish), and what it says."""
    sources: tuple[str, ...]


def lesson_sheet(kb: KnowledgeBase, taxa: Sequence[str], look: str = "picture", level: str = "plain",
                 title: str = "") -> Sheet:
    """The sheet for two to eight fishes. Raises UsageError for a wrong number of them."""
    table = compare(kb, taxa, look, level, WIDE_ROWS if len(taxa) >= WIDE else SHEET_ROWS)
    made = lesson_key(kb, table.taxa, look, level)
    cautions = safety_of(kb, table.taxa)
    terms = terms_in(kb, [*_texts(table.rows), *_leads(kb, made)], level)
    safety = tuple((about_whom(kb, table.taxa, c), c.text) for c in cautions)
    return Sheet(title or say.sheet_title(table.names), level, tuple(_fish(kb, t) for t in table.taxa), table, made,
                 terms, safety, sources_of(kb, table.rows, cautions))


def _fish(kb: KnowledgeBase, taxon: str) -> FishLine:
    found = own_sizes(kb, taxon)
    size = ""
    if found.usual_low is not None and found.usual_high is not None:
        size = say.grows(show_rough_span(found.usual_low, found.usual_high), found.usual_low == found.usual_high)
    elif found.largest is not None:
        size = say.grows_to(show_rough_span(found.largest, found.largest))
    return FishLine(taxon, speak.fish(kb, taxon), speak.scientific_of(kb, taxon), size)


def _texts(rows: Iterable[Row]) -> list[str]:
    return [text for r in rows for text in (r.feature, *(c.text for c in r.cells))]


def _leads(kb: KnowledgeBase, made: LessonKey) -> list[str]:
    return [lead_words(kb, c.character, lead, made.level) for c in made.key.couplets for lead in c.leads]


def terms_in(kb: KnowledgeBase, texts: Iterable[str], level: str, most: int = MOST_TERMS) -> tuple[tuple[str, str,
                                                                                                         str], ...]:
    """The glossary terms in some texts: (term, meaning, where to look), in the order of the words they show.

    Those with a place on the fish are taken first, and last those that only stand in the name of another ("fin" beside
    "anal fin"), which the trade is not told at all.
    """
    typed = [key(t).split() for t in texts]
    words = " / ".join(["", *(" ".join(t) for t in typed), *(" ".join(map(singular, t)) for t in typed), ""])
    found = [t for t in kb.all("term") if any(f" {key(n)} " in words for n in (t.label, *t.words))]
    parts = {part for t in found for part in key(t.label).split() if " " in key(t.label)}
    found = [t for t in found if level != "trade" or key(t.label) not in parts]
    found.sort(key=lambda t: (key(t.label) in parts, not t.where, t.label))
    shown = [(_shown(kb, t, words, level), t.plain, t.where) for t in found[:most]]
    return tuple(sorted(shown, key=lambda row: key(row[0])))


def _shown(kb: KnowledgeBase, term: Term, words: str, level: str) -> str:
    """The term as it stands in the texts, the glossary's own word in brackets where that is another."""
    if f" {key(term.label)} " in words:
        return term.label
    used = next(n for n in term.words if f" {key(n)} " in words)
    return used if level == "young" and young(kb, term.label) == used else say.also_called(used, term.label)


def safety_of(kb: KnowledgeBase, taxa: Sequence[str]) -> tuple[Caution, ...]:
    """The cautions for a lesson with these fishes: what is poisonous about them, then one or two of each topic, those
    about these fishes first.
    """
    mine = frozenset(k for t in taxa for k in kin(kb, t))
    out: list[Caution] = []
    for topic in SAFETY_TOPICS:
        fitting = [c for c in kb.all("caution") if c.topic == topic and (not c.about or mine & set(c.about))]
        fitting.sort(key=lambda c: (not c.about, not (c.lead and c.about), -len(c.words), c.id))
        out += fitting[: 2 if topic in ALWAYS_TWO else 1]
    poisonous = (c for c in kb.all("caution") if c.lead and EATING in c.acts and mine & set(c.about))
    return (*sorted(poisonous, key=lambda c: c.id), *out)


def about_whom(kb: KnowledgeBase, taxa: Sequence[str], caution: Caution) -> str:
    """Those of some fishes that a caution is about, by name; empty for a caution about no fish in particular."""
    if not caution.about:
        return ""
    meant = [t for t in taxa if kin(kb, t) & set(caution.about)]
    return say.ALL_OF_THESE if len(meant) == len(taxa) else sentence(join([speak.fish(kb, t) for t in meant]))


def sources_of(kb: KnowledgeBase, rows: Iterable[Row], cautions: Iterable[Caution]) -> tuple[str, ...]:
    """As few sources as back every cell and caution with one at least, in alphabetical order."""
    wanted = [frozenset(_sources(kb, c.statements)) for r in rows for c in r.cells if c.statements]
    wanted += [frozenset(c.source) for c in cautions]
    left = [w for w in wanted if w]
    chosen: list[str] = []
    while left:
        counts = Counter(s for w in left for s in w)
        best = min(counts, key=lambda s: (_rank(kb, s), -counts[s], s))
        chosen.append(best)
        left = [w for w in left if best not in w]
    return _listed([s for k in chosen if (s := kb.find("source", k)) is not None])


def _listed(sources: Iterable[Source]) -> tuple[str, ...]:
    """Sources by author and year, the titles of one author in one line; publisher and address stand in the base."""
    titles: dict[str, list[str]] = {}
    for source in sorted(sources, key=lambda s: (s.authors, s.year, s.title)):
        head = " ".join(x for x in (source.authors, source.year) if x)
        titles.setdefault(head, []).append(source.title)
    lines = [say.source_line(head, unique(found)) for head, found in titles.items()]
    return tuple(sorted(lines, key=str.casefold))


def _sources(kb: KnowledgeBase, statements: Iterable[str]) -> Iterable[str]:
    for statement in statements:
        record = kb.record_at(statement)
        yield from record.source if record is not None else ()


def _rank(kb: KnowledgeBase, source: str) -> int:
    """Published works go before common practice, and that before memory."""
    found = kb.find("source", source)
    return {"memory": 2, "common-practice": 1}.get(found.kind if found is not None else "", 0)
