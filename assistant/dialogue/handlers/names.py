"""What a name means and where, what a fish is called, and its scientific name through the years (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.asked_about import carried_on, told_taxa
from assistant.dialogue.aspects import aspects
from assistant.dialogue.beside.sameness import bearing_too, kind_only, sameness
from assistant.dialogue.called_so import LOCAL_KINDS, last_meanings, meant, names_like
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers.contrast import points
from assistant.dialogue.kinship import accepted_of, kin, together
from assistant.dialogue.name_forms import (
    author,
    formerly,
    forms,
    group_latin,
    in_place,
    latin_word,
    others_called,
    people_call,
    place_again,
    told_old_genus,
)
from assistant.dialogue.name_languages import (
    LANGUAGES,
    distinct,
    group_in_language,
    in_language,
    in_languages,
    singular_key,
)
from assistant.dialogue.names_settled import settled as settled_names
from assistant.dialogue.old_names import old_name
from assistant.dialogue.reader.reading import Mention
from assistant.dialogue.subjects import species_of, subjects, unclear
from assistant.dialogue.telling import MEMORY, READ, place_names, plain, trusted
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording import speak
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Name, Taxon
from assistant.model.stems import DROPPED
from assistant.reasoning.contrast import contrast
from assistant.reasoning.living import living_in, status_in
from assistant.reasoning.names import spread
from assistant.reasoning.place_prior import expand_places, narrowest
from assistant.text import join, key, singular, unique

SHOWN = 8
AT_ONCE = 6
NOTES = ("nomenclature-note", "taxonomy-note")


def handle(turn: Turn) -> tuple[Answer, Held]:
    """The meaning of the name typed, or the names of the fish spoken of."""
    kb, reading, held = turn.kb, turn.reading, turn.held
    sides = aspects(kb, reading)
    if (spoken := in_languages(turn, sides)) is not None:
        return spoken, held
    asked = subjects(turn, carried=False) or carried_on(turn)
    local = [m for m in reading.of("taxon", "hybrid", "group") if _is_local(kb, m)]
    if not turn.reading.of("taxon", "hybrid", "group") and (old := told_old_genus(turn)):
        return Answer("names", tuple(b._replace(kind="lead") for b in old)), held
    if not asked or (pointing(turn) and not subjects(turn, carried=False)):
        return _by_word(turn), held
    before, fishes = old_name(turn)
    if before:
        return Answer("names", (*before, *(b for t in fishes[:2] for b in _notes(kb, t))), taxa=fishes), held
    sides |= _sides_again(turn, sides)
    if special := _special(turn, asked, sides):
        first, *rest = special
        head = first._replace(kind="lead")
        return Answer("names", (head, *rest), taxa=told_taxa(turn, asked)), held
    asks_name_of = bool(sides & {"latin", "called", "origin-of-name", "lang-fr", "lang-es"})
    asks_name_of = asks_name_of and not (local and "means-what" in turn.cues)
    old = formerly(turn, asked) if "current-name" in sides or "asks-do" in turn.cues else []
    if old:
        turn_fish = tuple(s.removeprefix("taxon:") for s in old[0].statements if s.startswith("taxon:"))
        borne = kb.spoken(key(kb.taxon(turn_fish[0]).scientific)) if len(turn.reading.of("taxon")) > 1 else ()
        others = unique(t for kind, t, _ in borne if kind == "taxon" and t not in turn_fish)
        more = [b for t in others[:2] for b in (*_scientific(kb, kb.taxon(t))[:1], *_notes(kb, t)[:1])]
        return Answer("names", (old[0]._replace(kind="lead"), *_notes(kb, turn_fish[0]),
                                *_scientific(kb, kb.taxon(turn_fish[0]))[:1], *more), taxa=(*turn_fish, *others)), held
    same = [] if asks_name_of else _same(turn)
    blocks = same or _kinship(turn, asked, sides)
    settled = bool(blocks)
    if same and local and not kind_only(turn, same):
        blocks = [*same, *_meanings(turn, local)]
    if not blocks and turn.reading.places and not subjects(turn, carried=False):
        blocks = place_again(turn) or _again(turn)
    if not blocks and local and not (asks_name_of and len(local[0].ids) == 1):
        blocks = _meanings(turn, local)
    if not blocks:
        blocks = [b for t in species_of(kb, asked)[:3] for b in _called(turn, t, sides)]
    if "origin-of-name" in sides or "name-origin" in turn.cues:
        blocks = [Block("lead", say.NO_ORIGIN, claim=False), *blocks]
    if first_line := settled_names(turn):
        rest = _meanings(turn, local) if same and local else blocks
        blocks, settled = [*first_line, *(b._replace(kind="point") for b in rest)], True
    question = None if asks_name_of or settled else _question(turn, local)
    after = [Block("next", question.question, claim=False)] if question else []
    first, *rest = blocks
    head = Block("lead", first.text, statements=first.statements, claim=first.claim)
    about = told_taxa(turn, _leading(turn, local, asked))
    return Answer("names", (head, *rest, *after), taxa=about, asked=question), held


def _special(turn: Turn, asked: Sequence[str], sides: frozenset[str]) -> list[Block]:
    """The answer to what is asked of a name by cues of its own: kin, spelling, author, Latin, place, a whole group."""
    cues = turn.cues
    if "asks-kin" in cues and (told := kin(turn, asked)):
        return told
    if told := forms(turn):
        return told
    if "name-author" in cues and (told := author(turn, asked)):
        return told
    if "term" in cues and (told := latin_word(turn)):
        return told
    of_place = bool(turn.reading.places) and ("names-of" in cues or people_call(turn))
    of_place = of_place and not ("called-next" in cues and any(_is_local(turn.kb, m) for m in turn.reading.of("taxon")))
    if of_place and not sides & {"latin", "current-name", "lang-fr", "lang-es"} and not settled_names(turn):
        return in_place(turn, asked)
    if "latin" in sides and (told := group_latin(turn, asked)):
        return told
    for side, language in LANGUAGES:
        if side in sides and (told := group_in_language(turn, asked, language)):
            return [*told, *(b for t in species_of(turn.kb, tuple(asked)) for b in in_language(
                turn.kb, turn.kb.taxon(t), language) if b.claim)]
    return []


def _sides_again(turn: Turn, sides: frozenset[str]) -> frozenset[str]:
    """The side that the last answer began with, for a short line that names another fish ("and white crappie")."""
    kb, last = turn.kb, turn.held.last
    if sides or last is None or turn.held.intent != "names" or not last.blocks or len(turn.reading.words) > 6:
        return frozenset()
    before = [kb.taxon(t) for t in last.taxa[:1] if kb.find("taxon", t) is not None]
    texts = {trusted(say.scientific_lead(r.label, speak.scientific_of(kb, r.id)), "") for r in before}
    if last.blocks[0].text in texts:
        return frozenset({"latin"})
    tongues = {n.language.lower().split("-")[0] for s in last.blocks[0].statements if s.startswith("name:")
               for n in [kb.record_at(s)] if isinstance(n, Name)}
    return frozenset(side for side, language in LANGUAGES if tongues == {language})


def pointing(turn: Turn) -> bool:
    """True for "the yellow one", which names no fish but a word of its name."""
    return bool({"one", "ones", "kind"} & set(turn.reading.words)) and len(turn.reading.words) <= 6


# --- what a name means ------------------------------------------------------------------------------------------


def _is_local(kb: KnowledgeBase, mention: Mention) -> bool:
    """True for a name that is not simply the accepted one, or for a group word that is also a name of its kinds."""
    ids = meant(kb, mention)
    if not mention.words or not ids:
        return False
    if len(ids) > 1:
        return mention.kind != "group" or any(names_like(kb, t, mention.words) for t in ids)
    taxon = kb.taxon(ids[0])
    plain_names = {key(taxon.label), key(taxon.scientific)}
    return bool(names_like(kb, taxon.id, mention.words)) and not plain_names & {
        key(mention.words),
        singular_key(mention.words),
    }


def _meanings(turn: Turn, local: Sequence[Mention]) -> list[Block]:
    """What each name means; a word that is also a term of anglers ("slab") is explained as that first."""
    return _as_terms(turn.kb, local) + [
        b
        for words in unique(m.words for m in local)
        for b in _meaning(turn, words, unique(i for m in local if m.words == words for i in meant(turn.kb, m)))
    ]


def _as_terms(kb: KnowledgeBase, local: Sequence[Mention]) -> list[Block]:
    keys = unique(
        thing
        for m in local
        for w in (key(m.words), singular_key(m.words))
        for kind, thing, _ in kb.spoken(w)
        if kind == "term"
    )
    terms = [t for k in keys if (t := kb.find("term", k)) is not None]
    return [Block("point", say.titled(t.label, t.plain), statements=(f"term:{t.id}",)) for t in terms]


def _meaning(turn: Turn, words: str, ids: Sequence[str]) -> list[Block]:
    kb = turn.kb
    found = [(t, _first(names_like(kb, t, words))) for t in ids if kb.find("taxon", t) is not None]
    words = next((n.text for _, n in found if n is not None), words)
    if any(key(kb.taxon(t).scientific) == key(words) for t, _ in found):
        return [b for t, _ in found[:3] for b in (*_scientific(kb, kb.taxon(t))[:1], *_notes(kb, t))]
    if len(found) == 1 or (found and len({t for t, _ in found}) == 1):
        return _one_meaning(turn, words, *found[0])
    if not found:
        return [b for t in species_of(kb, tuple(ids))[:3] for b in _called(turn, t, frozenset())]
    return _several(turn, words, found)


def _first(names: Sequence[Name]) -> Name | None:
    return names[0] if names else None


def _again(turn: Turn) -> list[Block]:
    """The name of several fishes asked about before, now that its place is told."""
    found = last_meanings(turn)
    return _several(turn, found[0][1].text, found) if len(found) > 1 else []


def _one_meaning(turn: Turn, words: str, taxon: str, name: Name | None) -> list[Block]:
    kb = turn.kb
    record = kb.taxon(taxon)
    ids = (f"name:{name.id}",) if name else (f"taxon:{taxon}",)
    if name is not None and name.kind == "synonym":
        text = say.name_synonym(name.text, record.label, record.scientific)
    else:
        text = say.name_means(words, speak.fish_both(kb, taxon))
        where = _regions(kb, name) if name else ""
        if where:
            text = say.name_means_in(words, speak.fish_both(kb, taxon), where)
    out = [Block("point", _basis(text, name), statements=ids)]
    if name is not None and name.kind == "ambiguous":
        out.append(Block("doubt", say.titled(words, say.MISUSED + "."), statements=ids))
    return out + _local_names(turn, record, skip=key(words)) + _notes(kb, taxon)


def _several(turn: Turn, words: str, found: Sequence[tuple[str, Name | None]]) -> list[Block]:
    """A name of several fishes: those of the place held first, then each with its region."""
    kb = turn.kb
    here = _here(turn, found)
    names = {t: f"name:{n.id}" if n else f"taxon:{t}" for t, n in found}
    places = spread(kb, turn.held.places)
    called = {t: len(places & expand_places(kb, n.regions)) if n is not None and n.regions else t in here
              for t, n in found}
    order = sorted(
        dict(found),
        key=lambda t: (
            t not in here,
            t in here and not _read(dict(found)[t]),
            key(words).split()[-1] not in key(label(kb, t)).split(),
            -called[t],
            -len(kb.ranges(t)),
            t,
        ),
    )
    out = []
    if here:
        place = place_names(kb, turn.held.places)
        top = [t for t in order if t in here][:AT_ONCE]
        out.append(
            Block(
                "point",
                say.name_here(words, place, speak.fishes(kb, top, "or")),
                statements=tuple(names[t] for t in top),
            )
        )
    else:
        families = {kb.lineage((kb.taxon(t).parents or (t,))[0])[-1] for t in order}
        family = kb.taxon(families.pop()).label if len(families) == 1 else ""
        text = say.name_several(words, speak.fishes(kb, order[:SHOWN]), family)
        if turn.held.places and (living := living_in(kb, order, turn.held.places)):
            place = place_names(kb, turn.held.places)
            note = say.name_not_told(words, place, speak.fishes(kb, living[:SHOWN], "or"))
            out.append(Block("point", note, statements=tuple(names[t] for t in living[:SHOWN])))
            out += [b for b in in_place(turn, living[:2], turn.held.places) if b.claim]
            out += others_called(kb, words, living, turn.held.places)
        out.append(Block("point", text, statements=tuple(names[t] for t in order[:SHOWN])))
    by_taxon = dict(found)
    for t in order[:SHOWN]:
        name = by_taxon[t]
        if name is not None and (where := _regions(kb, name)):
            out.append(Block("point", _basis(say.name_region(label(kb, t), where), name), statements=(names[t],)))
    silent = [t for t in order[:SHOWN] if here and t not in here and not ((n := by_taxon[t]) and _regions(kb, n))]
    if silent:
        text = say.name_elsewhere(speak.fishes(kb, silent))
        out.append(Block("point", text, statements=tuple(names[t] for t in silent)))
    return out


def _read(name: Name | None) -> bool:
    """True where a source that was read says of a region that the name is used there."""
    return name is not None and bool(name.regions) and name.basis == READ


def _here(turn: Turn, found: Sequence[tuple[str, Name | None]]) -> frozenset[str]:
    """The fishes whose use of the name is told of the place held, those that live there alone if some do; for lack of
    any the natives of it of which no region is told."""
    kb = turn.kb
    if not turn.held.places:
        return frozenset()
    wanted = expand_places(kb, narrowest(kb, turn.held.places))
    told = {t for t, n in found if n is not None and n.regions and wanted & expand_places(kb, n.regions)}
    told = set(living_in(kb, sorted(told), turn.held.places)) or told
    free = {t for t, n in found if n is None or not n.regions}
    native = {t for t in free if (row := status_in(kb, t, wanted)) is not None and row.status == "native"}
    return frozenset(told or native)


def _regions(kb: KnowledgeBase, name: Name) -> str:
    text = name.region_text if any(c.isalpha() for c in name.region_text) else ""
    return join([x for x in (place_names(kb, name.regions), text) if x])


def _basis(text: str, name: Name | None) -> str:
    return trusted(text, MEMORY if name is not None and name.basis == MEMORY else "")


def _question(turn: Turn, local: Sequence[Mention]) -> Asked | None:
    kb = turn.kb
    if turn.held.places:
        return None
    told = [n for m in local if len(ids := meant(kb, m)) > 1 for t in ids for n in names_like(kb, t, m.words)]
    if any(n.regions for n in told):
        return Asked("place", say.WHERE)
    return None


def _leading(turn: Turn, local: Sequence[Mention], asked: tuple[str, ...]) -> tuple[str, ...]:
    """The fishes meant, those of the place held first."""
    ids = unique(i for m in local for i in meant(turn.kb, m)) or asked
    here = _here(
        turn,
        [
            (t, n)
            for m in local
            for t in meant(turn.kb, m)
            if turn.kb.find("taxon", t)
            for n in names_like(turn.kb, t, m.words)[:1]
        ],
    )
    return tuple(sorted(ids, key=lambda t: t not in here)) if here else tuple(ids)


# --- what a fish is called --------------------------------------------------------------------------------------


def _called(turn: Turn, taxon: str, sides: frozenset[str]) -> list[Block]:
    kb = turn.kb
    record = kb.taxon(taxon)
    out: list[Block] = []
    for side, language in LANGUAGES:
        if side in sides or (side == "lang-fr" and any(p == "ca-qc" for p in turn.reading.places)):
            out += in_language(kb, record, language)
    scientific = _scientific(kb, record)
    local = _local_names(turn, record)
    if out:
        return [*out, *scientific[:1]]
    if _in_latin(turn, taxon):
        return [*_notes(kb, taxon), *scientific, *local]
    if "name-older" in turn.cues and len(scientific) > 2:
        return [scientific[-1], *scientific[:-1], *_notes(kb, taxon), *local]
    notes = _notes(kb, taxon)
    if "current-name" in sides and notes and turn.cues & {"asks-when", "asks-do"}:
        return [*notes, *scientific, *local]
    if "latin" in sides or ("current-name" in sides and "called" not in sides):
        return [*scientific, *notes, *local]
    return [*local, *scientific, *_notes(kb, taxon)] if local else [*scientific, *_notes(kb, taxon)]


def _in_latin(turn: Turn, taxon: str) -> bool:
    """True where the line names the fish by its scientific name, in full or abbreviated."""
    return any((kind, thing, how) == ("taxon", taxon, "scientific") for m in turn.reading.of("taxon")
               for kind, thing, how in turn.kb.spoken(key(m.words)))


def _scientific(kb: KnowledgeBase, record: Taxon) -> list[Block]:
    own = (f"taxon:{record.id}",)
    lists = ", ".join(speak.source_words(kb, s) for s in record.source[:1])
    out = [
        Block(
            "point",
            trusted(say.scientific_lead(record.label, speak.scientific_of(kb, record.id)), ""),
            statements=own,
        )
    ]
    if (
        told := say.according(record.scientific, record.authorship, record.according_to or lists)
    ) and not record.is_hybrid:
        out.append(Block("point", told, statements=own))
    older = [n for n in kb.names(record.id) if n.kind == "synonym"]
    if older:
        out.append(
            Block(
                "point",
                say.older_names(", ".join(n.text for n in older[:SHOWN])),
                statements=tuple(f"name:{n.id}" for n in older[:SHOWN]),
            )
        )
    return out


def _local_names(turn: Turn, record: Taxon, skip: str = "") -> list[Block]:
    """Local English names, the most widely used first; those of the place held alone where it has some."""
    kb = turn.kb
    pool = [
        n
        for n in kb.names(record.id)
        if n.kind in LOCAL_KINDS and n.language.startswith("en") and key(n.text) not in (skip, key(record.label))
    ]
    wanted = expand_places(kb, turn.held.places)
    near = [n for n in pool if wanted and wanted & expand_places(kb, n.regions)]
    shown = distinct(sorted(near or pool, key=lambda n: (LOCAL_KINDS.index(n.kind), -len(n.regions))))[:SHOWN]
    if not shown:
        return []
    names = join([n.text for n in shown])
    text = (
        say.also_called_in(record.label, place_names(kb, turn.held.places), names)
        if near
        else say.also_called(record.label, names)
    )
    return [Block("point", text, statements=tuple(f"name:{n.id}" for n in shown))]


def _notes(kb: KnowledgeBase, taxon: str) -> list[Block]:
    out = []
    for s in kb.statements(taxon):
        if s.character in NOTES and (text := s.note or s.text):
            out.append(
                Block(
                    "point",
                    trusted(say.titled(label(kb, taxon), text.rstrip(".") + "."), s.basis),
                    statements=(f"st:{s.id}",),
                )
            )
    return out[:2]


def _same(turn: Turn) -> list[Block]:
    """Whether two names of the line mean one fish, and what tells two fishes apart that they mean."""
    mentions = turn.reading.of("taxon", "hybrid", "group", "likeness")
    meanings = [meant(turn.kb, m) for m in mentions]
    if "asks-do" in turn.cues and len(mentions) > 1:
        meanings[0] = accepted_of(turn.kb, mentions[0], meanings[0])
    blocks = sameness(turn, mentions, meanings)
    apart = unique(i for m, ids in zip(mentions, meanings, strict=True) if m.exact and len(ids) == 1 for i in ids)
    if kind_only(turn, blocks):
        return blocks
    if blocks and len(apart) == 1 and (other := bearing_too(turn.kb, apart[0], mentions, meanings)):
        apart = (*apart, other)
    if blocks and len(apart) == 2:
        found = contrast(turn.kb, apart)
        blocks += [b._replace(kind="point") for b in points(turn, found, found.separating[:1], frozenset())]
    return blocks


# --- kinship and words ------------------------------------------------------------------------------------------


def _kinship(turn: Turn, asked: Sequence[str], sides: frozenset[str]) -> list[Block]:
    """Whether two groups belong together ("are bass sunfish"), for fishes named outright."""
    if (
        len(asked) < 2
        or unclear(turn)
        or not turn.cues & {"asks-do", "names-weak", "equals"}
        or sides & {"current-name", "latin", "called", "origin-of-name", "lang-fr", "lang-es", "lang-en"}
    ):
        return []
    return together(turn, asked)


def _by_word(turn: Turn) -> Answer:
    """No fish named: fishes called by a word of the line, or with it in their names ("the yellow one")."""
    kb = turn.kb
    words = [
        singular(w)
        for w in turn.reading.words
        if w not in DROPPED and len(w) > 2 and w not in ("one", "ones", "name", "call", "called", "fish")
    ]
    for word in words:
        called = {entry[:2] for entry in kb.spoken(word)}
        hits = [
            t.id
            for t in kb.all("taxon")
            if t.is_species and not t.is_hybrid
            and (any(w.startswith(word) for w in key(t.label).split()) or ("taxon", t.id) in called)
        ]
        if hits:
            hits.sort(key=lambda t: (-len(kb.ranges(t)), t))
            choices = tuple((t, label(kb, t)) for t in hits[:6])
            text = say.word_fishes(word, say.names_with([c for _, c in choices]))
            asked = Asked("which", say.WHICH_FISH, choices=choices)
            blocks = (
                Block("lead", text, statements=tuple(f"taxon:{t}" for t, _ in choices)),
                Block("next", say.WHICH_FISH, claim=False),
            )
            return Answer("names", blocks, asked=asked)
    return plain("names", say.NAMES_NEED, asked=Asked("fish", say.WHICH_FISH))
