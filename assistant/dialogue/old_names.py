"""What a scientific name on an old record stands for now, judged by where the record is from (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.telling import place_names
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import info
from assistant.dialogue.wording import keeping as say
from assistant.dialogue.wording import names as wording
from assistant.dialogue.wording.speak import fish as label
from assistant.dialogue.wording.speak import scientific_of
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.living import LIVING, status_in
from assistant.reasoning.place_prior import expand_places
from assistant.text import key, unique

LATIN, OLDER = "la", ("synonym", "ambiguous")
ASKING = frozenset({"concept-now", "concept-only", "old-sheet"})


def old_name(turn: Turn) -> tuple[tuple[Block, ...], tuple[str, ...]]:
    """What the one scientific name of the line stood and stands for, and the fishes; both empty where it is none."""
    kb = turn.kb
    spoken = [(m, _written(kb, key(m.words), m.ids)) for m in turn.reading.of("taxon") if m.ids]
    latin = [name for _, name in spoken if name]
    others = unique(t for m, name in spoken if not name for t in m.ids)
    if not turn.cues & ASKING or len(latin) != 1 or len(others) > 1:
        return (), ()
    written = latin[0]
    own = unique(t for t in kb.species if key(kb.taxon(t).scientific) == key(written))
    older = unique(t for t in kb.species if t not in own and _bore(kb, t, written))
    if (not own and not older) or not set(others) <= {*own, *older}:
        return (), ()
    fishes = (*older, *own)
    blocks = [*_only_of(turn, written, older, own, others), *_by_place(turn, written, older, own)]
    for taxon in older:
        record = kb.taxon(taxon)
        text = wording.formerly(written, record.label, record.scientific, label(kb, own[0]) if own else "")
        blocks.append(Block("point", text, statements=(f"taxon:{taxon}", *_ids(kb, taxon, written))))
    if not older:
        blocks.append(Block("point", info.scientific_lead(label(kb, own[0]), scientific_of(kb, own[0])),
                            statements=(f"taxon:{own[0]}",)))
    return tuple(b._replace(kind="point" if i else "lead") for i, b in enumerate(blocks)), fishes


def _only_of(
    turn: Turn, written: str, older: Sequence[str], own: Sequence[str], others: Sequence[str]
) -> list[Block]:
    """Whether a name stands for the fish named beside it alone now; nothing where none is or it has meant no other."""
    if not others or not own or not older:
        return []
    now, alone = label(turn.kb, own[0]), others[0] == own[0]
    return [Block("point", wording.stands_for_now(written, now, alone), statements=(f"taxon:{own[0]}",))]


def _written(kb: KnowledgeBase, words: str, ids: Sequence[str]) -> str:
    """The scientific name in full for which some words stand ("m salmoides"); empty where they are no such name."""
    parts = words.split()
    if len(parts) < 2:
        return ""
    names = [kb.taxon(t).scientific for t in ids] + [n.text for t in ids for n in kb.names(t) if n.language == LATIN]
    fits = [n for n in names if (own := key(n).split())[1:] == parts[1:] and (
        own[0] == parts[0] or (len(parts[0]) == 1 and own[0].startswith(parts[0])))]
    return fits[0] if fits else ""


def _bore(kb: KnowledgeBase, taxon: str, written: str) -> bool:
    """True for a taxon that the name was used for, which has another now."""
    return any(n.language == LATIN and n.kind in OLDER and key(n.text) == key(written) for n in kb.names(taxon))


def _ids(kb: KnowledgeBase, taxon: str, written: str) -> tuple[str, ...]:
    return tuple(f"name:{n.id}" for n in kb.names(taxon) if n.language == LATIN and key(n.text) == key(written))


def _by_place(turn: Turn, written: str, older: Sequence[str], own: Sequence[str]) -> list[Block]:
    """Which of the fishes the name has stood for lives where the record is from."""
    kb = turn.kb
    places = tuple(p for p in turn.reading.places if (x := kb.place(p)) is not None and not x.invented)
    if not places:
        return []
    wanted, where = expand_places(kb, places), place_names(kb, places)
    rows = {t: status_in(kb, t, wanted) for t in (*older, *own)}
    here = [t for t, row in rows.items() if row is not None and row.status in LIVING]
    ids = tuple(f"range:{row.id}" for row in rows.values() if row is not None)
    if len(rows) == 1:
        taxon, row = next(iter(rows.items()))
        if row is None:
            return []
        return [Block("point", say.listed_as(label(kb, taxon), row.status, where), statements=ids)]
    if len(here) > 1:
        names = say.named_both([label(kb, t) for t in here])
        return [Block("point", say.both_there(written, where, names), statements=ids)]
    if not here:
        names = say.named_both([label(kb, t) for t in rows])
        return [Block("point", say.not_listed(names, where), claim=False)]
    one = here[0]
    out = [Block("point", say.lives_there(written, where, label(kb, one), kb.taxon(one).scientific), statements=ids)]
    if own and one not in own:
        out.append(Block("point", say.not_there(label(kb, own[0]), written, where), claim=False))
    return out
