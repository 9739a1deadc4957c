"""Name the fish from what was seen so far, honestly, and ask for the next thing to look at (layer 4)."""

from __future__ import annotations

import re

from assistant.dialogue import naming
from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.asking import ask_block, next_asked
from assistant.dialogue.beside.contrast_wants import row_ids, row_text
from assistant.dialogue.colour_told import told_by_colour
from assistant.dialogue.conversation import Held
from assistant.dialogue.counted_beside import with_second
from assistant.dialogue.half_named import cross_thought, half_named, of_both, seen_between, two_crossed
from assistant.dialogue.observing import evidence_of, observe
from assistant.dialogue.reader.reading import Mention, Reading
from assistant.dialogue.recogniser.facts import guess_last
from assistant.dialogue.subjects import groups, named, species_of, subjects, unclear
from assistant.dialogue.turn import Turn
from assistant.dialogue.unlike import unlike
from assistant.dialogue.unwelcome import sure_first, unwelcome
from assistant.dialogue.wording import care, speak
from assistant.dialogue.wording import naming as wording
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import LOOKS, contrast, firm_first
from assistant.reasoning.evidence import about
from assistant.reasoning.identify import identify
from assistant.reasoning.observed import NAMING, Candidate, Hint, Identification
from assistant.text import join, unique

MOST_SIDE_BY_SIDE = 4
OPEN = 0.2
"""Probability from which a guess stays open."""
AHEAD, EVEN = 3.0, 0.5
"""A guess so many times as likely as the next fish fits best; likelier than not it is most likely right."""


def handle(turn: Turn) -> tuple[Answer, Held]:
    """Take in what the line says of the fish and answer with candidates, verdict and the next question."""
    turn = told_by_colour(turn)
    asks = bool(turn.held.seen) and "confirm" in turn.cues
    guesses = guessed(turn)
    reading = turn.reading._replace(hints=()) if asks else _wavering(_hearsay(turn), guesses)
    held = observe(turn.kb, turn.held, reading, another_fish(turn))
    if another_fish(turn):
        held = held.after(skipped=frozenset())
    if not asks:
        borne = tuple(g for g in guesses if not _spoken_against(turn, g))
        told = claimed(turn.kb, borne)
        if two_crossed(turn.reading) and seen_between(turn.reading):
            told = tuple(h._replace(kind="either", strict=False) if h.kind == "named" else h for h in told)
        held = held.after(hints=held.hints + tuple(h for h in told if h not in held.hints))
        if cross_thought(turn.reading):
            held = held.after(hints=_with_crosses(turn, held.hints, guesses))
    answer, held = name_it(turn, held if guesses else between_these(turn, held), guesses)
    return with_second(turn, held, answer), held


def _with_crosses(turn: Turn, hints: tuple[Hint, ...], guesses: tuple[str, ...]) -> tuple[Hint, ...]:
    """The hints with what it is worth that somebody wonders whether a catch is a cross: people do so oftener than it is
    one. Of fishes that are guessed it may be a cross of these."""
    kb = turn.kb
    crosses = frozenset(t.id for t in kb.all("taxon") if t.is_hybrid and not t.deprecated)
    if not guesses:
        any_cross = Hint("either", crosses, hedged=not of_both(turn.reading))
        return hints if any_cross in hints else (*hints, any_cross)
    near = frozenset(c for c in crosses if set(kb.taxon(c).parents) & set(guesses))
    own = (Hint("either", near),) if near and of_both(turn.reading) else ()
    return own + tuple(h._replace(taxa=h.taxa | near) if h.kind in ("either", "named") and h.taxa <= set(guesses) else h
                 for h in hints)


def _hearsay(turn: Turn) -> Reading:
    """The reading; what somebody else calls a fish of which several marks are told is no more than hearsay, and of no
    weight where the marks speak against every fish called so.
    """
    if not _of_others(turn):
        return turn.reading._replace(hints=tuple(h for h in turn.reading.hints if not _belied(turn, h)))
    borne = (h for h in turn.reading.hints if h.kind != "group"
             or sum(_spoken_against(turn, t) for t in h.taxa) < MOST_OF_THEM * len(h.taxa))
    hints = (h if h.kind != "group" else h._replace(hedged=True, strict=False) for h in borne)
    return turn.reading._replace(hints=tuple(hints))


def _wavering(reading: Reading, guesses: tuple[str, ...]) -> Reading:
    """The reading without the weight of one loose name where the line wavers between it and another fish's name
    ("smallie or just a spot?"): what is offered is that it is one of them all.
    """
    some = (h for h in reading.hints if h.kind != "group" or not h.taxa < frozenset(guesses))
    return reading._replace(hints=tuple(some))


def _belied(turn: Turn, hint: Hint) -> bool:
    """True for a word for a few kinds that several marks told speak plainly against, each of all of these kinds."""
    told = [s for s in turn.reading.seen if not s.retract]
    if hint.kind != "group" or not hint.seen or len(hint.taxa) > MOST_CALLED or len(told) < MARKS_TOLD:
        return False
    return sum(unlike(turn.kb, sorted(hint.taxa), s) for s in told) >= MARKS_TOLD


def _of_others(turn: Turn) -> bool:
    """True for a line that tells several marks of a fish and what somebody calls it."""
    told = {s.observation.character for s in turn.reading.seen if not s.retract}
    return "disputed" in turn.cues and len(told) >= MARKS_TOLD


def _spoken_against(turn: Turn, taxon: str) -> bool:
    """True for a fish named by somebody else that some mark told speaks plainly against."""
    return _of_others(turn) and any(unlike(turn.kb, (taxon,), s) for s in turn.reading.seen)


MARKS_TOLD, MOST_OF_THEM = 2, 0.6
"""Marks from which a name from others is hearsay, and the share of fishes called so that they must speak against."""
ASIDE = ("describe", "next-question", "term", "hybrids")
"""Intents of what is asked between a comparison and a catch."""
IN_HAND = ("rules", "handling")
"""Intents of what is asked of a fish in hand, which is still that fish when a mark of it is told."""


def between_these(turn: Turn, held: Held) -> Held:
    """What is held of a catch, with the fishes set side by side before it as those it is thought to be one of."""
    spoken_of = _spoken_of(turn)
    if turn.held.seen or not _of_these(turn, spoken_of):
        return held
    loose = tuple(h._replace(strict=False) for h in claimed(turn.kb, spoken_of))
    carried = held.after(hints=held.hints + loose)
    return carried if _borne_out(turn, held, carried, spoken_of) else held


def _spoken_of(turn: Turn) -> tuple[str, ...]:
    """The fishes spoken of; after a cross was told of, its parents with it."""
    found = species_of(turn.kb, turn.held.taxa)
    if turn.held.intent != "hybrids":
        return found
    return tuple(dict.fromkeys(x for t in found for x in (t, *turn.kb.taxon(t).parents)))


def _of_these(turn: Turn, spoken_of: tuple[str, ...]) -> bool:
    """True for a catch told of after some fishes were set side by side, or after one thing was told of two of them."""
    told = turn.held.intent in ASIDE and 1 < len(spoken_of) <= MOST_SIDE_BY_SIDE
    caught = turn.held.intent in IN_HAND and bool(spoken_of) and not named(turn)
    return turn.held.intent == "contrast" or ((told or caught) and not groups(turn.reading))


def _borne_out(turn: Turn, held: Held, carried: Held, spoken_of: tuple[str, ...]) -> bool:
    """False where a mark told speaks against the best of the fishes spoken of, and another fish fits all of them; not
    of a mark of which nothing is held in that fish, where no other fish is known by what was told.
    """
    best = identify(turn.kb, turn.table, evidence_of(carried))
    lead = best.candidates[0].taxon
    if lead not in spoken_of or not best.clashes:
        return True
    free = identify(turn.kb, turn.table, evidence_of(held))
    if free.verdict == "not-enough" and not any(about(turn.kb, lead, c)[0] for c in best.clashes):
        return True
    return free.candidates[0].taxon in spoken_of or bool(free.clashes)


def another_fish(turn: Turn) -> bool:
    """True when the line speaks of a second fish rather than adding to the first."""
    if not (turn.held.seen and turn.reading.seen):
        return False
    cues, words = turn.cues, " ".join(turn.reading.words)
    if _NOT_MINE.search(words):
        return True
    free = turn.held.asked is None or cues >= {"second", "another-fish"} or _THE_OTHER.match(words) is not None
    return free and bool(cues & {"second", "other", "start-over", "another-fish"})


_THE_OTHER = re.compile(r"(?:and )?(?:the )?(?:other|second)\b")
"""How a line begins that tells of the second of two fishes, even where something was asked of the first."""


_NOT_MINE = re.compile(
    r"\b(?:that|those|it) (?:was|were) (?:my |the |his |her |our )?\w+(?: \w+)? (?:pic|pics|photo|picture|fish)\b"
    r".*\b(?:this|mine|ours)\b")
"""Words that what was told before was of somebody else's fish ("dang that was my buddys pic. this one has...")."""


def guessed(turn: Turn) -> tuple[str, ...]:
    """The species and crosses that the line offers as a guess; several for a name that means several."""
    pair = set(two_crossed(turn.reading))
    if crossed := _half_of(turn) or next((c for p in pair for c in turn.kb.crosses_of(p)
                                          if set(turn.kb.taxon(c).parents) == pair), ""):
        return (crossed,)
    own = [t for t in named(turn) if turn.kb.taxon(t).is_species]
    loose = [i for m in unclear(turn) for i in m.ids if turn.kb.find("taxon", i) is not None]
    few = 0 < len(loose) < FEW_CALLED
    own += [*loose, *(i for m in unclear(turn) if few for i in _kinds_of_group(turn.kb, m))]
    if "versus" in turn.cues and (own or few):
        offered = (species_of(turn.kb, m.ids) for m in groups(turn.reading))
        own += [t for kinds in offered if len(kinds) <= SMALL_GROUP for t in kinds]
    if not own and "confirm" in turn.cues and turn.held.seen:
        own += [i for m in groups(turn.reading) for i in m.ids]
    most = MOST_OF_GROUP if few else MOST_CALLED if loose else MOST_GUESSED
    found = tuple(dict.fromkeys(species_of(turn.kb, tuple(own))))[:most]
    return found if "versus" in turn.cues else cross_meant(turn.kb, found) or found


def _half_of(turn: Turn) -> str:
    """The cross guessed by one parent ("mouth like a green sunfish ... half bluegill?"): that with the fish it is
    likened to, else the one of its crosses that what was told fits best; empty where none is guessed or held."""
    kb, told, half = turn.kb, turn.reading.of("taxon"), half_named(turn.reading)
    if len(set(half)) != 1 or not (turn.reading.seen or turn.held.seen):
        return ""
    crosses = kb.crosses_of(half[0])
    other = {i for m in (*told, *turn.reading.of("likeness")) if len(m.ids) == 1 for i in m.ids} - set(half)
    if pair := [c for c in crosses if set(kb.taxon(c).parents) - set(half) <= other]:
        return pair[0] if len(other) == 1 else ""
    posterior = identify(kb, turn.table, evidence_of(observe(kb, turn.held, turn.reading))).posterior
    return max(crosses, key=lambda c: (posterior.get(c, 0.0), c), default="") if not other else ""


def cross_meant(kb: KnowledgeBase, named: tuple[str, ...]) -> tuple[str, ...]:
    """The one cross of some names of which the others are its parents ("a bluegill's body, greengill?")."""
    crosses = [t for t in named if kb.taxon(t).is_hybrid]
    return tuple(crosses) if len(crosses) == 1 and set(named) <= {*crosses, *kb.taxon(crosses[0]).parents} else ()


SMALL_GROUP = 4
"""Kinds of a group that is set whole against a fish ("snakehead or dogfish")."""
MOST_GUESSED, MOST_OF_GROUP, MOST_CALLED, FEW_CALLED = 6, 10, 24, 3
"""So many names are weighed at most, of a loose name all fishes that it may mean; one that means fewer kinds than the
last in a place leaves its group open."""


def _kinds_of_group(kb: KnowledgeBase, mention: Mention) -> tuple[str, ...]:
    """All of the group that a word is the name of, though in some place it means few of it ("trout")."""
    groups = [e[1] for e in kb.spoken(mention.words) if e[0] == "group" and e[2] == "label"]
    return species_of(kb, tuple(groups[:1]))


def claimed(kb: KnowledgeBase, guesses: tuple[str, ...]) -> tuple[Hint, ...]:
    """What a name offered for a catch is worth: the fish named, its look-alikes, and rather firmly its family.

    Anglers name the group far oftener right than the species, so the family weighs more than the name; who wavers
    between two names is mostly right that it is one of them. A mere question ("could it be a sculpin?") after marks
    were told is worth nothing.
    """
    if not guesses:
        return ()
    families = {kb.lineage((kb.taxon(g).parents or (g,))[0])[-1] for g in guesses}
    members = frozenset(m for f in families for m in kb.members(f))
    kind = "either" if len(guesses) > 1 else "named"
    return (Hint(kind, frozenset(guesses), strict=True), Hint("group", members, hedged=True))


def name_it(turn: Turn, held: Held, guesses: tuple[str, ...] = ()) -> tuple[Answer, Held]:
    """The answer to "which fish is it" from what the conversation holds."""
    evidence = evidence_of(held)
    found = identify(turn.kb, turn.table, evidence)
    told = len(held.seen) + sum(1 for h in held.hints if h.seen and (h.word or not guesses))
    if not told and not guesses:
        return nothing_seen(turn, held, found)
    if found.too_small and found.verdict not in ("sure", "likely") and not guesses:
        return _too_small(turn, held, found)
    blocks = _first(turn, held, found, guesses)
    blocks += naming.candidate_points(turn.kb, held, found) if told else []
    focus = guesses[0] if len(guesses) == 1 else ""
    if focus and told:
        blocks += naming.guess_points(turn.kb, held, found, focus)
    if told:
        wavered = _wavered_over(turn, guesses)
        blocks += naming.standing_points(turn.kb, held, found, wavered)
        blocks += _settling(turn, held, found, wavered)
    blocks += naming.doubts(turn.kb, held, found, focus)
    unnamed = _fits_better(turn, held, found)
    blocks += [naming.unnamed_point(turn.kb, held, c) for c in unnamed]
    crossed = bool(focus) and turn.kb.taxon(focus).is_hybrid
    if ("hybrid" in turn.cues or crossed) and not naming.hybrid_doubts(turn.kb, found):
        blocks.append(Block("doubt", wording.NO_CROSS_BY_EYE, claim=False))
    asked = _ask(turn, held, found)
    first = [c.taxon for c in naming.shown(found)][:1]
    called = species_of(turn.kb, subjects(turn, carried=False))
    settled = found.verdict in ("sure", "likely")
    if settled or set(first) & {*guesses, *called}:
        warned = [b for b in unwelcome(turn.kb, first) if b.text not in turn.held.noted]
        name = "" if settled or len({*guesses, *called}) == 1 else speak.fish(turn.kb, first[0])
        warned = [b._replace(text=care.if_it_is(name, b.text)) if name else b for b in warned]
        blocks[1:1] = [*warned, *(sure_first(turn.kb, first[0]) if warned and found.verdict != "sure" else [])]
    blocks += [b for b in naming.grip_caution(turn.kb, first) if b.text not in turn.held.noted]
    if asked is not None:
        blocks.append(ask_block(turn, asked))
    taxa = tuple(c.taxon for c in (*naming.shown(found), *unnamed))
    if guesses and not told:
        taxa = guesses
    if found.verdict in ("sure", "likely"):
        taxa = taxa[:1]
    if held.seen and (focus or "confirm" in turn.cues):
        taxa = tuple(dict.fromkeys((*taxa, *guesses[:3])))
    candidates = () if len(guesses) == 1 and not told else found.candidates
    answer = Answer("identify", tuple(blocks), taxa, candidates, found.verdict, asked=asked)
    return answer, held


def _wavered_over(turn: Turn, guesses: tuple[str, ...]) -> tuple[str, ...]:
    """The fishes offered by "or", those of a group among them ("goldfish or carp"); none where only one is named."""
    if len(guesses) > 1:
        return guesses
    sides = groups(turn.reading) if "versus" in turn.cues else ()
    return species_of(turn.kb, tuple(i for m in sides for i in m.ids))


def _settling(turn: Turn, held: Held, found: Identification, wavered: tuple[str, ...]) -> list[Block]:
    """What tells the two fishes apart that the line wavers between ("golden shiner or rudd"), beside what was seen."""
    if len(wavered) != 2 or found.verdict == "sure" or "versus" not in turn.cues:
        return []
    seen = {s.observation.character for s in held.seen}
    rows = contrast(turn.kb, wavered, LOOKS["hand"]).separating
    told = firm_first(turn.kb, [r for r in rows if None not in r.told and r.character not in seen])[:1]
    return [Block("point", wording.settles(*row_text(turn, wavered, r)), statements=row_ids(r)) for r in told]


def _too_small(turn: Turn, held: Held, found: Identification) -> tuple[Answer, Held]:
    """A fish too small to name: its genus or family where one holds, and nothing more asked."""
    group = naming.group_name(turn.kb, found)
    lead = Block("lead", wording.lead_too_small(naming.length_told(held), group), claim=False)
    taxa = (found.group,) if found.group and group else ()
    return Answer("identify", (lead,), taxa, found.candidates, "not-enough"), held


def _fits_better(turn: Turn, held: Held, found: Identification) -> tuple[Candidate, ...]:
    """The fish that what was seen speaks for, where it speaks against every one of those the asker named."""
    named = {t for h in held.hints if h.kind in NAMING and h.seen for t in h.taxa}
    leading = naming.shown(found)
    if not {c.taxon for c in leading} <= named or any(c.supports or not c.opposes for c in leading):
        return ()
    hints = tuple(h for h in held.hints if h.kind not in NAMING)
    free = identify(turn.kb, turn.table, evidence_of(held.after(hints=hints)))
    return tuple(c for c in free.candidates if c.supports and not c.opposes and c.taxon not in named)[:1]


def _first(turn: Turn, held: Held, found: Identification, guesses: tuple[str, ...]) -> list[Block]:
    lead = naming.lead(turn.kb, held, found)
    asked = turn.cues & {"confirm", "how-sure"} or half_named(turn.reading) or (
        len(guesses) == 1 and turn.kb.taxon(guesses[0]).is_hybrid and guess_last(turn.reading))
    if len(guesses) != 1 or (held.seen and not asked):
        return [lead]
    return [lead._replace(text=_verdict_on(turn, held, found, guesses[0]))]


def _verdict_on(turn: Turn, held: Held, found: Identification, guess: str) -> str:
    kb = turn.kb
    top = found.candidates[0]
    name = speak.fish(kb, guess)
    if not held.seen:
        return wording.guess_unchecked(name) if turn.cues & {"confirm", "disputed"} else wording.on_your_word(name)
    if top.taxon == guess and found.verdict in ("sure", "likely"):
        return wording.guess_yes(name, join(naming.grounds(kb, held, top)[: naming.GROUNDS]))
    share = found.posterior.get(guess, 0.0)
    if (parent := _likened_parent(turn, guess)) and top.taxon not in (parent, guess):
        marks = join(naming.grounds(kb, held, top)[: naming.GROUNDS])
        return wording.guess_cross(name, speak.fish(kb, parent), marks, speak.fish(kb, top.taxon))
    if top.taxon == guess or share >= OPEN:
        other = next((c for c in found.candidates if c.taxon != guess), top)
        if top.taxon == guess and share >= AHEAD * other.probability:
            because = join(naming.grounds(kb, held, top)[: naming.GROUNDS])
            return wording.guess_leaning(name, speak.fish(kb, other.taxon), because, share >= EVEN)
        return wording.guess_open(name, speak.fish(kb, other.taxon))
    return wording.guess_no(name, speak.fish(kb, top.taxon), join(naming.grounds(kb, held, top)[:2]))


def _likened_parent(turn: Turn, guess: str) -> str:
    """The parent of a cross offered as a guess that the line names beside it ("a bluegill's body, greengill?")."""
    named = {i for m in turn.reading.of("taxon", "likeness") if len(m.ids) == 1 for i in m.ids}
    return next((p for p in turn.kb.taxon(guess).parents if p in named), "")


def _ask(turn: Turn, held: Held, found: Identification) -> Asked | None:
    if found.verdict == "sure":
        return None
    return next_asked(turn, held, found.posterior)


def nothing_seen(turn: Turn, held: Held, found: Identification) -> tuple[Answer, Held]:
    """Nothing to go by: say what helps and ask the best first question."""
    asked = next_asked(turn, held, found.posterior)
    names = [h.word or speak.fishes(turn.kb, sorted(h.taxa)[:1]) for h in held.hints if not h.seen and not h.hedged]
    blocks = [Block("lead", wording.lead_nothing_seen("picture" in turn.cues, unique(names)), claim=False)]
    if asked is not None:
        blocks.append(ask_block(turn, asked))
    return Answer("identify", tuple(blocks), (), found.candidates, "not-enough", asked=asked), held
