"""What a word means, in words that a child follows, with where to look on the fish (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.asked_about import asked_about
from assistant.dialogue.aspects import aspects, phrases_of
from assistant.dialogue.conversation import Held
from assistant.dialogue.lessons.words import CUE, words_for_lesson
from assistant.dialogue.reader.terms_named import by_meaning, by_stem, outermost, terms_named
from assistant.dialogue.sea_life import RUN_WORD, of_all
from assistant.dialogue.subjects import named, species_of
from assistant.dialogue.telling import plain
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import care, speak
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Term
from assistant.model.stems import DROPPED
from assistant.reasoning.evidence import about
from assistant.text import key, singular

_QUOTED = re.compile(r"(?<!\w)[\"'\u2018\u201c]([^\W\d_][\w -]{1,30})[\"'\u2019\u201d](?!\w)")
"""A word set in quotation marks: the one that is asked about."""
FEW = 3
LONGEST_WORD = 20
"""A longer one is a mash of letters, which is not said again."""
SUGGESTED = ("adipose-fin", "lateral-line", "operculum", "truncate")
DIFFERING = frozenset({"contrast", "vs", "versus", "sameness", "term-diff"})
YOUNG = ("fry", "fingerling", "young-of-the-year")
ASKING = frozenset(
    [
        "mean",
        "means",
        "meaning",
        "define",
        "explain",
        "word",
        "term",
        "huh",
        "say",
        "list",
        "need",
        "lesson",
        "vocabulary",
        "called",
        "for",
    ]
)


HOW_LOOK = "how-look"
"""The cue of a line that asks how a feature is looked at or counted."""
COUNTING = frozenset({"count", "counted", "counting"})


def handle(turn: Turn) -> tuple[Answer, Held]:
    """The words named in the line explained; the last ones again for a follow-up; a list of words for a lesson."""
    kb, reading, held = turn.kb, turn.reading, turn.held
    sides = aspects(kb, reading)
    if "vocabulary" in sides or CUE in turn.cues:
        return words_for_lesson(turn), held
    if HOW_LOOK in turn.cues and (blocks := _characters(turn)):
        return Answer("term", tuple(blocks)), held
    terms = _terms(turn)
    if "names-young" in turn.cues:
        terms = [t for k in YOUNG if (t := kb.find("term", k)) is not None]
    if not terms and "term" in turn.cues:
        terms = by_stem(kb, reading.words)
    if not terms and turn.cues & {"names", "term"}:
        terms = by_meaning(kb, reading.words)
    if not terms and (not _strange(turn) or sides & {"plain-young"} or turn.cues & {"plainer"}):
        terms = _last(turn)
    if not terms and (shares := _frequencies(turn)):
        return Answer("term", tuple(shares)), held
    terms = terms or _by_part(turn)
    if terms and RUN_WORD in turn.cues and "term" not in turn.cues and species_of(kb, asked_about(turn)[0]):
        return _of_a_life(turn, terms), held
    if terms:
        same = [Block("lead", care.NOT_THE_SAME, claim=False)] if len(terms) > 1 and "same" in reading.words else []
        fish = named(turn) if len(named(turn)) == 1 else ()
        shown = [b for t in terms[:FEW] for b in (*_told(t), *_of_fish(turn, t, fish))]
        first, *rest = [*same, *shown]
        return Answer("term", (first._replace(kind="lead"), *rest), fish), held
    if blocks := _characters(turn):
        return Answer("term", tuple(blocks)), held
    return _unknown(turn), held


def _of_a_life(turn: Turn, terms: Sequence[Term]) -> Answer:
    """Whether a word for a life between the sea and fresh water holds of the fish spoken of, and what it means."""
    from assistant.dialogue.handlers import handler_of

    answer, _ = handler_of("habitat")(turn)
    meant = [b for t in terms[:FEW] for b in _told(t)]
    blocks = list(answer.blocks)
    said = of_all(turn, species_of(turn.kb, asked_about(turn)[0]))
    if said and not blocks[0].text.startswith(said):
        lead = Block("lead", f"{said}.", statements=blocks[0].statements)
        blocks = [lead, *(b._replace(kind="point") for b in blocks)]
    return answer._replace(intent="term", blocks=(*blocks, *meant))


def _terms(turn: Turn) -> list[Term]:
    kb = turn.kb
    if turn.cues & DIFFERING and len(both := terms_named(kb, turn.reading)) > 1:
        return both
    keys = dict.fromkeys(i for m in turn.reading.of("term") for i in m.ids)
    if not keys:
        keys = dict.fromkeys(
            thing for p in phrases_of(turn.reading.words) for kind, thing, _ in kb.spoken(p) if kind == "term"
        )
    return outermost([t for k in keys if (t := kb.find("term", k)) is not None])


def _frequencies(turn: Turn) -> list[Block]:
    """The words for how many fish show a thing ("usually") that stand in the line, with the shares meant by them."""
    found = {key(w): f for f in turn.kb.all("frequency") for w in (f.label, *f.words)}
    told = dict.fromkeys(p for p in phrases_of(turn.reading.words) if p in found)
    told = {p: None for p in told if not any(p != o and p in o for o in told)}
    return [
        Block("lead" if i == 0 else "point", care.share_meant(p, round(100 * found[p].low), round(100 * found[p].high)),
              statements=(f"freq:{found[p].id}",))
        for i, p in enumerate(told)
    ]


def _by_part(turn: Turn) -> list[Term]:
    """Terms of which a word of the line is a part ("tubercle" of "nuptial tubercle")."""
    words = {singular(w) for w in _strange(turn).split() if len(w) > 4}
    return [t for t in turn.kb.all("term") if words & set(key(t.label).split())][:FEW]


def _last(turn: Turn) -> list[Term]:
    """The words explained in the last answer."""
    kb, last = turn.kb, turn.held.last
    if last is None or turn.held.intent != "term":
        return []
    keys = dict.fromkeys(s.removeprefix("term:") for b in last.blocks for s in b.statements if s.startswith("term:"))
    return [t for k in keys if (t := kb.find("term", k)) is not None]


def _told(term: Term) -> list[Block]:
    own = (f"term:{term.id}",)
    out = [Block("point", say.titled(term.label, term.plain), statements=own)]
    if term.where:
        out.append(Block("point", care.term_where(term.where), statements=own))
    return out


def _of_fish(turn: Turn, term: Term, fish: Sequence[str]) -> list[Block]:
    """What is stated of the fish named where the word is one of its features, too."""
    kb = turn.kb
    if kb.find("character", term.id) is None:
        return []
    return [Block("point", say.titled(label(kb, t), speak.statement_words(kb, s, turn.held.units)),
                  statements=(f"st:{s.id}",)) for t in fish for s in about(kb, t, term.id)[0][:1]]


def _characters(turn: Turn) -> list[Block]:
    """A feature or one of its states that is no word of the glossary: how to look and what is meant."""
    kb = turn.kb
    out: list[Block] = []
    mentions = turn.reading.of("state", "character")
    pairs = [(m.kind, i) for m in mentions for i in m.ids]
    if HOW_LOOK in turn.cues and COUNTING & set(turn.reading.words):
        pairs = [p for p in pairs if p[0] == "character" and kb.character(p[1]).kind == "count"] or pairs
    if not pairs:
        pairs = [
            (k, i)
            for p in phrases_of(turn.reading.words)
            for k, i, how in kb.spoken(p)
            if k in ("state", "character") and " " in p
        ]
    for kind, thing in dict.fromkeys(pairs):
        character = kb.find("character", thing.partition(".")[0])
        if character is None:
            continue
        own = (f"char:{character.id}",) if kind == "character" else (f"state:{thing}",)
        if kind == "state":
            state = kb.state(thing)
            out.append(
                Block(
                    "lead",
                    say.titled(
                        state.label,
                        f"one form of the {character.label}" + (f" ({state.trade})." if state.trade else "."),
                    ),
                    statements=own,
                )
            )
        else:
            out.append(
                Block("lead", say.titled(character.label, character.question or character.how), statements=own)
            )
        if character.how:
            out.append(
                Block("point", care.term_where(character.how.rstrip(".")), statements=(f"char:{character.id}",))
            )
    return out[:4]


def _strange(turn: Turn) -> str:
    """The words of the line that ask for a meaning the base does not hold."""
    if quoted := _QUOTED.search(turn.reading.text):
        return quoted[1].lower()
    words = [w for w in turn.reading.words
             if w not in DROPPED and w not in ASKING and not w.isdigit() and len(w) <= LONGEST_WORD]
    return " ".join(w for w in words[:4] if not _trails(turn.kb, w))


def _trails(kb: KnowledgeBase, word: str) -> bool:
    """True for a word that only hangs on a question ("again")."""
    return any(kind == "cue" and thing == "cue-trailing" for kind, thing, _ in kb.spoken(word))


def _unknown(turn: Turn) -> Answer:
    kb = turn.kb
    terms = [t for k in SUGGESTED if (t := kb.find("term", k)) is not None]
    rest = [Block("help", care.term_near(say.names_with([t.label for t in terms])), claim=False)] if terms else []
    return plain("term", care.term_unknown(_strange(turn)), rest=rest)
