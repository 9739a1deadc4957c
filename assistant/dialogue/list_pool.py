"""Which fishes a list is chosen from: a group, all kinds, or those of the list before (layer 4)."""

from __future__ import annotations

from assistant.dialogue.beside.left_out import left_out, set_aside
from assistant.dialogue.fitting import fitting
from assistant.dialogue.observing import other_state
from assistant.dialogue.ranking import other_end
from assistant.dialogue.reader.reading import Seen
from assistant.dialogue.subjects import groups, named, side_by_side, species_of, unclear
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.living import living_in
from assistant.text import key, unique

MOST_SHOWN = 40
"""Fishes of a list up to which "those" are the ones that it named."""
OF_THOSE = frozenset({"those", "these", "them"})
POINTING = OF_THOSE | {"it", "that", "one", "ones", "such", "this", "either"}
AT_LARGE, ASKED_FOR = frozenset({"fish", "fishes"}), frozenset({"which", "what", "any", "all"})
"""The word for every fish, and what stands before it where it opens a list of its own ("which fishes ...")."""
LISTED, LATER = ("list", "range"), "later-place"


def pool_of(turn: Turn, sides: frozenset[str]) -> tuple[tuple[str, ...], str]:
    """The fishes to choose from and the group they are asked for by; the last list for a narrowing follow-up."""
    kb, reading, held = turn.kb, turn.reading, turn.held
    wider = groups(reading)
    if anew(turn):
        return kinds_held(kb), ""
    if aside := set_aside(turn):
        return tuple(t for t in kinds_held(kb) if t not in aside), ""
    if taking_out(turn):
        gone = left_out(turn, held.shown)
        return tuple(t for t in held.shown if t not in gone and (x := kb.find("taxon", t)) and x.is_species), ""
    if LATER in turn.cues and held.intent == "list" and not wider and len(held.shown) > 1:
        return tuple(t for t in held.shown if (x := kb.find("taxon", t)) is not None and x.is_species), ""
    if wider:
        side = side_by_side(reading)
        taxa = unique(s for m in side for s in species_of(kb, m.ids[:1] if m.kind == "group" else m.ids))
        taxa = taxa or species_of(kb, (wider[0].ids[0],))
        for m in wider[1:] if not side else [m for m in wider if m not in side]:
            both = tuple(t for t in taxa if t in species_of(kb, (m.ids[0],)))
            taxa = both or unique((*taxa, *species_of(kb, (m.ids[0],))))
        few = len(held.shown) < MOST_SHOWN
        of_those = tuple(t for t in taxa if t in held.shown) if OF_THOSE & set(reading.words) and few else ()
        return of_those if of_those and held.intent == "list" else taxa, wider[0].ids[0]
    own = named(turn)
    if own:
        higher = tuple(t for t in own if not kb.taxon(t).is_species)
        return (species_of(kb, higher), higher[0]) if higher else (own, "")
    if loose := [m for m in unclear(turn) if m.words]:
        wide = [thing for m in loose for kind, thing, _ in kb.spoken(key(m.words)) if kind == "group"]
        return species_of(kb, tuple(wide[:1]) or loose[0].ids), wide[0] if wide else ""
    if _other_end(turn, sides) or of_other_place(turn):
        above = [t for t in held.taxa if (x := kb.find("taxon", t)) is None or not x.is_species]
        told = set(species_of(kb, held.shown)) <= set(species_of(kb, tuple(above)))
        if of_other_place(turn) and held.seen and not told:
            return kinds_held(kb), ""
        return species_of(kb, tuple(above)) or kinds_held(kb), above[0] if above else ""
    if held.intent == "list" and other_state(held, reading) and not OF_THOSE & set(reading.words):
        above = [t for t in held.taxa if (x := kb.find("taxon", t)) is None or not x.is_species]
        every = species_of(kb, tuple(above))
        return (every, above[0]) if above and set(species_of(kb, held.shown)) <= set(every) else (kinds_held(kb), "")
    if held.intent in LISTED and len(held.shown) > 1:
        return last_listed(turn), ""
    return kinds_held(kb), ""


def with_crosses(kb: KnowledgeBase, pool: tuple[str, ...]) -> tuple[str, ...]:
    """Some kinds with the crosses held among them ("which trouts have worm tracks, crosses too")."""
    return unique((*pool, *(t for t in kb.species if (p := kb.taxon(t).parents) and set(p) <= set(pool))))


def taking_out(turn: Turn) -> bool:
    """True for a line that takes fishes out of the list before ("leave out the lakers"), be they in it or not."""
    held, told = turn.held, named(turn) or groups(turn.reading)
    if held.intent != "list" or not held.shown or not told:
        return False
    return "retract" in turn.cues or bool(len(held.shown) > 1 and left_out(turn, held.shown))


def last_listed(turn: Turn) -> tuple[str, ...]:
    """The fishes of the list before, those too that were too many to be held."""
    kb, held = turn.kb, turn.held
    shown = tuple(t for t in held.shown if (x := kb.find("taxon", t)) is not None and x.is_species)
    if held.intent != "list" or len(shown) < MOST_SHOWN or not (held.seen or held.places):
        return shown
    fits = fitting(kb, kinds_held(kb), [s.observation for s in held.seen]).fits
    every = tuple(living_in(kb, [f.taxon for f in fits], held.places))
    return every if set(shown) <= set(every) else shown


def kinds_held(kb: KnowledgeBase) -> tuple[str, ...]:
    """Every species of the base, crosses left out."""
    return tuple(t for t in kb.species if not kb.taxon(t).is_hybrid)


def of_other_place(turn: Turn) -> bool:
    """True for "what about quebec" after a list of the fishes of another place: the whole group is asked for anew."""
    reading, held = turn.reading, turn.held
    return (bool(reading.places) and held.intent == "list" and bool(turn.cues & {"what-about", "same-again"})
            and not reading.seen and not OF_THOSE & set(reading.words))


def _other_end(turn: Turn, sides: frozenset[str]) -> bool:
    """True for "and the smallest?" after a list that began with the biggest."""
    order = turn.held.order if turn.held.intent == "list" else None
    return order is not None and other_end(turn, sides) not in (None, order.least_first)


MOST_OTHER = 6
"""Words of a line up to which "and pike?" asks of other fishes what the last list asked."""
FEWEST = 2
"""Words of a question that names a group and nothing more ("sunfish?")."""


def same_of_others(turn: Turn) -> bool:
    """True for "and pike?" after a list of the fishes with a feature: the same is asked of other fishes."""
    return bool(_going_on(turn) and turn.held.seen and (groups(turn.reading) or named(turn)))


def only_there(turn: Turn) -> bool:
    """True for "and bluegill?" after a list of the fishes of a place: whether that one lives there."""
    kinds = named(turn) and all(turn.kb.taxon(t).is_species for t in named(turn))
    return bool(_going_on(turn) and kinds and not groups(turn.reading) and turn.held.places and not turn.held.seen)


def _going_on(turn: Turn) -> bool:
    """True for a short line after a list by which something is said of other fishes, and nothing of a mark or place."""
    reading, held = turn.reading, turn.held
    told = reading.seen or reading.measures or reading.places or OF_THOSE & set(reading.words)
    short = len(reading.words) <= FEWEST and reading.question
    asked = bool(turn.cues & {"what-about", "same-again", "correct"})
    going_on = (asked or short) and len(reading.words) <= MOST_OTHER
    return going_on and not told and held.intent == "list" and held.order is None


def seen_so_far(turn: Turn) -> tuple[Seen, ...]:
    """What is asked for now, on top of what the last list was narrowed by where this line narrows it further."""
    if same_of_others(turn):
        return turn.held.seen
    own = tuple(s for s in turn.reading.seen if not s.retract)
    told = {s.observation.character for s in own}
    before = () if groups(turn.reading) or anew(turn) or turn.held.intent != "list" else turn.held.seen
    return (*(s for s in before if s.observation.character not in told), *own)


def anew(turn: Turn) -> bool:
    """True for a line that asks of all fishes ("which fishes have barbels in Ohio"), whatever was listed before."""
    words = turn.reading.words
    at_large = any(w in AT_LARGE and (not i or words[i - 1] in ASKED_FOR) for i, w in enumerate(words))
    told = bool(turn.reading.seen or turn.reading.places) and not (groups(turn.reading) or named(turn))
    return at_large and told and not POINTING & set(words)


def narrows(turn: Turn) -> bool:
    """True for a line that names no group of its own after a list."""
    return turn.held.intent in LISTED and not (groups(turn.reading) or named(turn) or anew(turn))


def of_last_list(turn: Turn) -> bool:
    """True where the fishes asked for are chosen from those of the list before and from no group."""
    pool, name = pool_of(turn, frozenset())
    return narrows(turn) and not name and pool == last_listed(turn) and len(pool) > 1
