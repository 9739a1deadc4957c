"""How names are written, who gave them, what their Latin words stand for, what a place or a group calls (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.asked_about import kinds_name
from assistant.dialogue.kinship import MOST_GENERA, above, family_words
from assistant.dialogue.subjects import species_of
from assistant.dialogue.telling import place_names
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import names as say
from assistant.dialogue.wording.speak import fish as label
from assistant.dialogue.wording.speak import scientific_of
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Name
from assistant.reasoning.names import UNDERSTOOD
from assistant.reasoning.place_prior import expand_places
from assistant.text import fold, join, key, singular, unique

MOST_NAMES, MOST_KINDS = 8, 20
SYNONYM = "synonym"


def forms(turn: Turn) -> list[Block]:
    """How the names of the line are written, alone and in the plural."""
    kb, cues = turn.kb, turn.cues
    mentions = [m for m in turn.reading.of("taxon", "hybrid", "group") if m.words]
    words = unique(m.words.lower() for m in mentions)
    single = unique(_single(w) for w in words)
    if not words:
        return []
    ids = tuple(f"taxon:{t}" for m in mentions[:1] for t in species_of(kb, m.ids)[:3])
    if "name-plural" in cues or (len(words) == 2 and len(single) == 1):
        return [Block("point", say.plural_forms(single[0], plural(single[0])), statements=ids)]
    if "name-spelling" not in cues and "name-saying" not in cues and not _spellings(turn, words):
        return []
    out = [Block("point", say.NO_SOUND, claim=False)] if "name-saying" in cues else []
    odd = [w for w in words if not _proper(kb, w)]
    good = [w for w in words if w not in odd]
    fish = kinds_name(kb, mentions[0].ids[0], 1)
    if len(good) > 1:
        out.append(Block("point", say.both_spelt(join([f'"{w}"' for w in good]), fish), statements=ids))
    else:
        out.append(Block("point", say.spelt(good[0] if good else fish, fish), statements=ids))
    out += [Block("point", say.not_standard(w), statements=ids) for w in odd]
    return out


def _spellings(turn: Turn, words: Sequence[str]) -> bool:
    """True for a choice between spellings of one word ("muskie or musky")."""
    from assistant.model.spelling import distance

    return len(words) == 2 and "versus" in turn.cues and fold(words[0])[:2] == fold(words[1])[:2] and distance(
        words[0], words[1], 3) < 3


def _proper(kb: KnowledgeBase, words: str) -> bool:
    """True for words that are a name as the base writes it, no slip that is merely understood."""
    hows = {how for kind, _, how in kb.spoken(key(words)) if kind in ("taxon", "group")}
    hows |= {how for kind, _, how in kb.spoken(_single(words)) if kind in ("taxon", "group")}
    return bool(hows - {*UNDERSTOOD, "hidden"})


def _single(words: str) -> str:
    *first, last = key(words).split() or [""]
    return " ".join([*first, singular(last)])


def plural(name: str) -> str:
    """The English plural of a name by its ending.

    >>> plural("bluegill"), plural("white bass"), plural("musky"), plural("pickerel")
    ('bluegills', 'white basses', 'muskies', 'pickerels')
    """
    if name.endswith(("s", "x", "sh", "ch")):
        return f"{name}es"
    return f"{name[:-1]}ies" if name.endswith("y") and name[-2:-1] not in "aeiou" else f"{name}s"


def author(turn: Turn, asked: Sequence[str]) -> list[Block]:
    """Who described the fishes asked about, and when."""
    kb = turn.kb
    records = [kb.taxon(t) for t in species_of(kb, tuple(asked))[:MOST_KINDS]]
    return [
        Block("point", say.authored(r.label, r.scientific, r.authorship), statements=(f"taxon:{r.id}",))
        for r in records
        if r.authorship
    ]


def latin_word(turn: Turn) -> list[Block]:
    """What a word of a scientific name stands for; what it means in Latin is not held."""
    kb = turn.kb
    out: list[Block] = []
    for mention in turn.reading.of("taxon", "group"):
        word = key(mention.words)
        for taxon in mention.ids[:2]:
            record = kb.find("taxon", taxon)
            if record is None:
                continue
            parts = key(record.scientific).split()
            if record.is_species and len(parts) > 1 and word == parts[1]:
                text = say.part_of_name(word, record.scientific, record.label)
            elif not record.is_species and word == parts[0]:
                families = [family_words(kb, f) for f in above(kb, species_of(kb, (taxon,)), "family")]
                text = say.genus_is(record.scientific, record.label, join(families))
            else:
                continue
            out.append(Block("point", text, statements=(f"taxon:{taxon}",)))
    return [Block("point", say.NO_MEANING, claim=False), *out] if out else []


def formerly(turn: Turn, asked: Sequence[str]) -> list[Block]:
    """That a scientific name of the line is an older one of a fish named or held, and which fish bears it now."""
    kb = turn.kb
    words = {key(m.words) for m in turn.reading.of("taxon")}
    english = [m.ids[0] for m in turn.reading.of("taxon") if len(m.ids) == 1 and any(
        (kind, how) == ("taxon", "accepted") for kind, _, how in kb.spoken(key(m.words)))]
    for taxon in (*english, *turn.held.taxa[:1], *asked[:1]):
        record = kb.find("taxon", taxon)
        if record is None or not record.is_species:
            continue
        latin = [n for n in kb.names(taxon) if n.language == "la" and n.kind in (SYNONYM, "ambiguous")]
        for n in latin:
            told = key(n.text)
            if words & {told, told.split()[-1]} and told != key(record.scientific):
                taken = next((thing for kind, thing, how in kb.spoken(told)
                              if kind == "taxon" and thing != taxon and how == "scientific"), "")
                text = say.formerly(n.text, record.label, record.scientific, label(kb, taken) if taken else "")
                fishes = (f"taxon:{taxon}", *((f"taxon:{taken}",) if taken else ()))
                return [Block("point", text, statements=(f"name:{n.id}", *fishes))]
    return []


LATIN_ENDS = ("us", "is", "on", "ops", "mus", "er", "yx", "a", "as", "ys")
SHORTEST_GENUS = 6


def old_genus(kb: KnowledgeBase, words: Iterable[str]) -> tuple[str, tuple[Name, ...]]:
    """A word of a line that is an older genus name, with the synonyms that begin with it; empty where none is."""
    latin = [w for w in words if len(w) >= SHORTEST_GENUS and w.endswith(LATIN_ENDS)]
    if not latin:
        return "", ()
    known: dict[str, tuple[Name, ...]] = kb.derived("old-genera", _old_genera)
    return next(((w, known[w]) for w in latin if w in known), ("", ()))


def _old_genera(kb: KnowledgeBase) -> dict[str, tuple[Name, ...]]:
    """Synonyms by their genus, for genera of which no taxon is held."""
    own = {key(t.scientific).split()[0] for t in kb.all("taxon")}
    out: dict[str, list[Name]] = {}
    for n in (n for t in kb.all("taxon") for n in kb.names(t.id) if n.kind == SYNONYM):
        if (genus := key(n.text).split()[0]) not in own:
            out.setdefault(genus, []).append(n)
    return {genus: tuple(names) for genus, names in out.items()}


def told_old_genus(turn: Turn) -> list[Block]:
    """What an older genus name of the line was used for, and where these fishes stand now."""
    kb = turn.kb
    word, names = old_genus(kb, turn.reading.words)
    if not names:
        return []
    taxa = unique(n.taxon for n in names)
    now = join([kb.taxon(g).scientific for g in above(kb, taxa, "genus")])
    fishes = join([label(kb, t) for t in taxa[:MOST_NAMES]])
    ids = tuple(f"name:{n.id}" for n in names)
    return [Block("point", say.old_genus(word.capitalize(), fishes, now), statements=ids)]


def people_call(turn: Turn) -> bool:
    """True for a place whose people "call" a fish something ("what do folks in Florida call a crappie")."""
    text = turn.reading.text
    return any(_CALL.match(text[m.end :]) for m in turn.reading.of("place", "water"))


_CALL = re.compile(r"(?:ns?|ers?|ians?|ites?)?\s+(?:(?:people|folks|anglers|fishermen|they|locals)\s+)?"
                   r"(?:call|calls|say for|use for|name)\b(?! (?:it|that|this|them|em|him|these|those)\b)",
                   re.IGNORECASE)


def place_again(turn: Turn) -> list[Block]:
    """What a fish is called in another place, where the last answer told what it is called in one ("and Maine?")."""
    held = turn.held
    if held.last is None or not held.last.blocks or not held.taxa:
        return []
    lead = held.last.blocks[0]
    names = [n for s in lead.statements if isinstance(n := turn.kb.record_at(s), Name)]
    regions = sorted({r for n in names for r in n.regions})
    places = unique(p for r in regions for p in (r, *sorted(expand_places(turn.kb, (r,)))))
    if not any(lead.text == b.text for p in places for b in in_place(turn, held.taxa[:1], (p,))):
        return []
    return in_place(turn, held.taxa[:1])


def in_place(turn: Turn, asked: Sequence[str], of: tuple[str, ...] = ()) -> list[Block]:
    """What the fishes asked about are called in the place of the line (or in others), names told of it first."""
    kb, places = turn.kb, of or turn.reading.places
    wanted = expand_places(kb, places)
    out: list[Block] = []
    for one in asked[:MOST_GENERA]:
        kinds = _with_namesakes(kb, species_of(kb, (one,)))
        own = {key(label(kb, t)) for t in kinds} | {_single(m.words) for m in turn.reading.mentions}
        near: dict[str, list[Name]] = {}
        for n in (n for t in kinds for n in kb.names(t)):
            local = n.kind not in (SYNONYM, "accepted", *UNDERSTOOD) and wanted & expand_places(kb, n.regions)
            if local and not {_single(n.text), key(n.text)} & own:
                near.setdefault(_single(n.text).replace(" ", ""), []).append(n)
        ranked = sorted(near.values(), key=lambda ns: (
            not any(set(places) & set(n.regions) for n in ns), -len({n.taxon for n in ns}), ns[0].text))
        name, place = kinds_name(kb, one), place_names(kb, places)
        if not ranked:
            out.append(Block("point", say.none_of_place(name, place), claim=False))
            continue
        shown = [_best(ns) for ns in ranked[:MOST_NAMES]]
        many = len(species_of(kb, (one,))) > 1
        text = say.place_names_of(name, place, join([n.text for n in shown]), many)
        out.append(Block("point", text, statements=tuple(f"name:{n.id}" for n in shown)))
    return out


def others_called(kb: KnowledgeBase, words: str, apart: Sequence[str], places: Sequence[str]) -> list[Block]:
    """Other fishes of a place whose local name there holds the words of a name ("crapet sac-à-lait")."""
    wanted, spelt = expand_places(kb, places), f" {_single(words)} "
    found = [n for t in kb.species if t not in apart for n in kb.names(t)
             if n.kind not in (SYNONYM, "accepted", *UNDERSTOOD) and key(n.text) != key(words)
             and spelt in f" {_single(n.text)} " and wanted & expand_places(kb, n.regions)]
    return [Block("point", say.other_there(n.text, place_names(kb, n.regions), label(kb, n.taxon)),
                  statements=(f"name:{n.id}",)) for n in found[:MOST_NAMES]]


def _with_namesakes(kb: KnowledgeBase, kinds: tuple[str, ...]) -> tuple[str, ...]:
    """A species with those of its genus whose accepted name ends in its own ("eyetail bowfin" beside "bowfin")."""
    if len(kinds) != 1:
        return kinds
    end = f" {key(label(kb, kinds[0]))}"
    beside = species_of(kb, above(kb, kinds, "genus"))
    return (*kinds, *(t for t in beside if t not in kinds and key(label(kb, t)).endswith(end)))


def _best(names: Iterable[Name]) -> Name:
    """The fullest spelling of one name: accents before none."""
    return min(names, key=lambda n: (n.text == fold(n.text), n.id))


def group_latin(turn: Turn, asked: Sequence[str]) -> list[Block]:
    """Genus and family of a group that is asked for by its scientific name, then its kinds with theirs."""
    kb = turn.kb
    if len(asked) != 1 or len(kinds := species_of(kb, tuple(asked))) < 2:
        return []
    families, genera = above(kb, kinds, "family"), above(kb, kinds, "genus")
    names = join([kb.taxon(g).scientific for g in genera[:MOST_NAMES]])
    family = join([family_words(kb, f) for f in families[:3]])
    ids = tuple(f"taxon:{t}" for t in (*genera[:MOST_NAMES], *families[:3]))
    head = say.group_latin(kinds_name(kb, asked[0]), say.genus_named(len(genera), names), family)
    told = [f"{label(kb, t)} ({scientific_of(kb, t)})" for t in kinds[:MOST_KINDS]]
    rest = Block("point", say.each_latin(join(told)), statements=tuple(f"taxon:{t}" for t in kinds[:MOST_KINDS]))
    return [Block("point", head, statements=ids), rest]
