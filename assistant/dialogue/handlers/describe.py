"""What a fish looks like: a portrait, one part of it, a yes or no, or a line on each of several (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue import phrases as say
from assistant.dialogue import speak
from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.aspects import aspects, phrases_of
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers.contrast import look_alikes
from assistant.dialogue.lesson_request import fishes_of, level_of
from assistant.dialogue.levels import character_words, value_words, young
from assistant.dialogue.parts import characters_asked, part_word
from assistant.dialogue.portrait import COLOUR, SHAPE, features
from assistant.dialogue.sexes import asks_sexes, sexes_told
from assistant.dialogue.subjects import named, species_of, subjects, unclear
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character, Range
from assistant.model.stems import NEGATORS
from assistant.reasoning.contrast import Told, tell
from assistant.reasoning.evidence import below, distribution
from assistant.reasoning.size import size_range
from assistant.text import join, key, singular, unique

SHOWN, SHOWN_ALL, IN_GROUP, PLACES, PARTS_NAMED, MOST_LINES = 6, 14, 5, 6, 3, 16
FEW = 0.2
"""Share of fish from which a mark is worth telling of."""
MOST, ALL = 0.6, 0.97
WHETHER = ((MOST, say.YES), (FEW, say.SOMETIMES), (0.06, say.MOSTLY_NOT), (0.02, say.HARDLY))
"""From what share of fish on a question whether they show a mark is answered how; below all of them with no."""
WHETHER_ASKED = frozenset({"asks-do", "asks-can", "have-verb", "lacking", "without", "always"})
HOW_MANY = "how many"
ON_BACK = frozenset({"back", "top", "dorsal"})
YOUNG = "young"
NUMERIC, PRESENT = "numeric", ".present"
HYBRID_TEXTS = ("appearance", "hybrid-note", "characters-to-check", "fertility")


def handle(turn: Turn) -> tuple[Answer, Held]:
    """Describe the fish of the line or the one held; ask which where there is none or the name means several."""
    kb, held = turn.kb, turn.held
    several = unclear(turn)
    if several and not named(turn):
        return which(turn, several[0].words, several[0].ids), held
    fish = subjects(turn)
    asked = _how_many(turn, fish) or characters_asked(kb, turn.reading) or _counted(turn, fish)
    if not fish:
        return _no_fish(), held
    if asks_sexes(turn) and kb.find("taxon", fish[0]) is not None:
        return Answer("describe", sexes_told(turn, fish[0]), taxa=tuple(fish)), held
    kinds = species_of(kb, fish)
    if len(fish) == 1 and kb.find("taxon", fish[0]) is not None and kb.taxon(fish[0]).is_species:
        return _one(turn, fish[0], asked), held
    if "each-line" in turn.cues and len(fish) == 1:
        return _each(turn, fish, fishes_of(turn) or kinds), held
    if asked and kinds:
        return _parts_of_several(turn, fish, kinds, asked), held
    return _several(turn, fish, kinds), held


def _how_many(turn: Turn, fish: Sequence[str]) -> tuple[str, ...]:
    """The counts told of the fishes of what "how many" asks for ("how many spines on its back")."""
    kb = turn.kb
    if HOW_MANY not in turn.reading.text.lower():
        return ()
    words = {singular(w) for w in turn.reading.words} | ({"dorsal"} if ON_BACK & set(turn.reading.words) else set())
    counts = _counts_told(kb, fish)
    shared = {c: len(words & {singular(w) for w in key(kb.character(c).label).split()}) for c in counts}
    best = max(shared.values(), default=0)
    return tuple(c for c in counts if best and shared[c] == best)


def _uncounted(turn: Turn) -> str:
    """What "how many" asks the number of, where it is nothing that the base counts ("how many bones")."""
    words = turn.reading.words
    at = next((i for i in range(len(words) - 2) if words[i : i + 2] == ("how", "many")), -1)
    return words[at + 2] if at >= 0 else ""


def _counted(turn: Turn, fish: Sequence[str]) -> tuple[str, ...]:
    """The counts told of the fishes, where the line asks for numbers alone ("meristics only")."""
    return _counts_told(turn.kb, fish) if NUMERIC in aspects(turn.kb, turn.reading) else ()


def _counts_told(kb: KnowledgeBase, fish: Sequence[str]) -> tuple[str, ...]:
    """The counts of which something is told of some fishes, their own or inherited."""
    told = (c for t in species_of(kb, tuple(fish)) for k in kb.lineage(t) for c in kb.told_of(k))
    return unique(c for c in told if kb.character(c).kind == "count" and kb.character(c).use == "identify")


def _no_fish() -> Answer:
    asked = Asked("fish", say.WHICH_FISH)
    return Answer(
        "describe",
        (Block("lead", say.WHICH_FISH_LEAD, claim=False), Block("next", say.WHICH_FISH, claim=False)),
        asked=asked,
    )


def which(turn: Turn, words: str, ids: Sequence[str], intent: str = "describe") -> Answer:
    """A name that means several fishes: say which, and ask."""
    kb = turn.kb
    choices = tuple((i, speak.fish(kb, i)) for i in ids)
    text = say.which_of(words, say.both_names([c for _, c in choices]))
    refs = tuple(f"name:{n.id}" for i in ids for n in kb.names(i) if n.text.lower() == words.lower()) or tuple(
        f"taxon:{i}" for i in ids
    )
    blocks = (Block("lead", text, statements=refs), Block("next", say.WHICH_FISH, claim=False))
    return Answer(intent, blocks, tuple(ids), asked=Asked("which", say.WHICH_FISH, choices=choices))


def _one(turn: Turn, taxon: str, asked: tuple[str, ...]) -> Answer:
    whether = turn.cues & WHETHER_ASKED and "range" not in turn.cues
    bare = all(x.endswith(PRESENT) for s in turn.reading.seen for x in s.observation.states)
    if (whether or turn.reading.seen) and (elsewhere := _elsewhere(turn, taxon)):
        return Answer("describe", tuple(elsewhere), (taxon,))
    open_asked = bool(turn.cues & {"asks-what", "asks-how", "asks-many", "asks-where"})
    either = ({"or", "y/n"} & set(turn.reading.words) or bare or open_asked) and not whether
    if turn.reading.seen and not either and (whether or len({turn.kb.character(c).part for c in asked}) == 1):
        block = _yes_no(turn, taxon)
        if block is not None:
            return Answer("describe", (block,), (taxon,))
    if asked:
        return Answer("describe", tuple(_parts(turn, taxon, asked)), (taxon,))
    if counted := _uncounted(turn):
        text = say.nothing_on(speak.fish(turn.kb, taxon), say.the_number(counted))
        return Answer("describe", (Block("lead", text, statements=(f"taxon:{taxon}",)),), (taxon,))
    if "describe-young" in turn.cues:
        young = _young(turn, taxon)
        if young:
            return Answer("describe", tuple(young), (taxon,))
    return Answer("describe", tuple(portrait(turn, taxon)), (taxon,))


def _elsewhere(turn: Turn, taxon: str) -> list[Block]:
    """Where the marks are that words of the line may mean ("a black spot"), if the fish has none on the part they are
    read of or no part is read at all: marks that it has, else parts on which such a mark is told of others."""
    kb = turn.kb
    seen = next((s for s in turn.reading.seen if s.observation.states), None)
    here = seen.observation.character if seen is not None else ""
    if seen is not None:
        found = distribution(kb, taxon, here)
        if found is not None and found.share({x for s in seen.observation.states for x in below(kb, s)}) >= FEW:
            return []
    spoken = {p for p in phrases_of(turn.reading.words) if " " in p and (seen is None or key(seen.words) in p)}
    others = unique(c for k in kb.lineage(taxon) for c in kb.told_of(k) if c != here)
    able = {c: hits for c in others if (hits := {v for s in kb.states(c) for v in s.values} & spoken)}
    told = {c: x for c in able if (x := tell(kb, kb.character(c), taxon)) is not None}
    shown = {c: {v for s, p in x.states if p >= FEW for v in kb.state(s).values} & spoken for c, x in told.items()}
    meant = [c for c in told if shown[c]] or list(told)[:PARTS_NAMED]
    if not meant:
        return []
    lacking = bool(NEGATORS & set(turn.reading.words) or turn.cues & {"lacking", "without"})
    if len(meant) == 1 and (lacking or turn.cues & WHETHER_ASKED):
        states = [s.id for s in kb.states(meant[0]) if set(s.values) & able[meant[0]]]
        if block := _whether(turn, taxon, meant[0], states, not lacking):
            return [block]
    points = [_point(turn, kb.character(c), told[c]) for c in meant]
    if seen is not None and " " in key(seen.words) and (own := tell(kb, kb.character(here), taxon)) is not None:
        points.append(_point(turn, kb.character(here), own))
    words = max((v for c in meant for v in shown[c] or able[c]), key=lambda v: (len(v), v))
    return [Block("lead", say.may_be(words, speak.fish(kb, taxon)), claim=False), *points]


def _point(turn: Turn, character: Character, told: Told) -> Block:
    """What is said of a character of a fish, as a line of a list."""
    value = speak.told_words(turn.kb, told, character, turn.held.units)
    return Block("point", say.entry(speak.heading(character), value),
                 statements=speak.short_ids(told.statements))


def _yes_no(turn: Turn, taxon: str) -> Block | None:
    seen = next((s.observation for s in turn.reading.seen if s.observation.states), None)
    return _whether(turn, taxon, seen.character, seen.states, seen.seen) if seen is not None else None


def _whether(turn: Turn, taxon: str, character: str, states: Sequence[str], shown: bool) -> Block | None:
    """Whether a fish shows (or lacks) some states, in the words of the share that does, with what is told of it."""
    kb = turn.kb
    found, told = distribution(kb, taxon, character), tell(kb, kb.character(character), taxon)
    if found is None or told is None:
        return None
    share = found.share({leaf for s in states for leaf in below(kb, s)})
    share = share if shown else 1.0 - share
    word = next((w for least, w in WHETHER if share >= least and not (least == MOST and told.only)), say.NO)
    if word == say.YES and "always" in turn.cues and share < ALL:
        word = say.NOT_ALWAYS
    clause = speak.told_clause(kb, told, kb.character(character), turn.held.units)
    text = say.yes_no(word, speak.fish(kb, taxon), clause)
    return Block("lead", text, statements=speak.short_ids(told.statements))


def _parts(turn: Turn, taxon: str, asked: tuple[str, ...]) -> list[Block]:
    kb = turn.kb
    out = []
    for name in asked:
        character = kb.character(name)
        told = tell(kb, character, taxon)
        if told is None:
            continue
        out.append((character.use != "identify", told.inherited_from is not None, _point(turn, character, told)))
    numeric = NUMERIC in aspects(kb, turn.reading) and len(asked) > 1
    label = say.COUNTS if numeric else kb.character(asked[0]).label if len(asked) == 1 else _parts_named(turn, asked)
    if not out:
        refs = speak.short_ids(s.id for s in kb.statements(taxon)[:1]) or (f"taxon:{taxon}",)
        return [Block("lead", say.nothing_on(speak.fish(kb, taxon), label), statements=refs)]
    out.sort(key=lambda x: (x[0], x[1]))
    most = SHOWN_ALL if "more" in turn.cues or numeric else SHOWN
    blocks = [b for _, _, b in out[:most]]
    if len(blocks) == 1:
        return [
            Block("lead", say.describe_single(speak.fish(kb, taxon), blocks[0].text), statements=blocks[0].statements)
        ]
    return [Block("lead", say.part_of(speak.fish(kb, taxon), label), claim=False), *blocks]


def _parts_named(turn: Turn, asked: Sequence[str]) -> str:
    """The parts asked about by the words typed; that of the first character where none of its words is."""
    words = {singular(w) for w in turn.reading.words}
    names = unique(part_word(turn.kb, turn.reading, c) for c in asked)
    typed = [n for n in names if {singular(w) for w in key(n).split()} <= words]
    typed = [n for n in typed if not any(n != o and f" {n} " in f" {o} " for o in typed)]
    return join(typed[:PARTS_NAMED]) or names[0]


def _young(turn: Turn, taxon: str) -> list[Block]:
    kb = turn.kb
    rows = [
        s
        for key in (taxon, *kb.taxon(taxon).parents)
        for s in kb.statements(key)
        if s.stage == "juvenile" or s.character == "juvenile-note"
    ]
    blocks = [
        Block("point", say.capital(speak.statement_words(kb, s, turn.held.units)), statements=(f"st:{s.id}",))
        for s in rows[:SHOWN]
    ]
    return [Block("lead", say.part_of(speak.fish(kb, taxon), say.YOUNG), claim=False), *blocks] if blocks else []


def portrait(turn: Turn, taxon: str) -> list[Block]:
    """A fish described: shape, then a feature a region, size, range and the look-alike to watch."""
    kb = turn.kb
    near = look_alikes(kb, taxon)
    others = [t for t, _ in near if not kb.taxon(t).is_hybrid][:2] or _siblings(kb, taxon)
    out = [_lead(turn, taxon)]
    if "shorter" not in turn.cues:
        out += _hybrid_texts(turn, taxon)
    most = 2 if "shorter" in turn.cues else SHOWN_ALL if "more" in turn.cues else SHOWN
    chosen = features(kb, taxon, others, most)
    colour = tell(kb, kb.character(COLOUR), taxon) if kb.find("character", COLOUR) else None
    if colour is not None and "shorter" not in turn.cues and all(c.id != COLOUR for c, _ in chosen):
        chosen = [(kb.character(COLOUR), colour), *chosen]
    simple = level_of(turn.reading.text.lower(), turn.cues) == YOUNG
    out += [_young_point(turn, c, told) if simple else _point(turn, c, told) for c, told in chosen]
    out += [*_size(turn, taxon), *_range(turn, taxon, simple)]
    if near:
        other, record = near[0]
        found = kb.record_at(f"alike:{record}")
        settles = found.settles if found else ""
        text = say.look_alike(speak.fish(kb, other), young(kb, settles) if simple else settles)
        out.append(Block("point", text, statements=(f"alike:{record}",)))
    return out


def _young_point(turn: Turn, character: Character, told: Told) -> Block:
    """A feature in the words of children, without the trade's term."""
    kb = turn.kb
    value = value_words(kb, told, YOUNG)
    value = say.from_memory(value) if told.basis == "memory" else value
    return Block("point", say.entry(character_words(kb, character.id, YOUNG), value),
                 statements=speak.short_ids(told.statements))


def _siblings(kb: KnowledgeBase, taxon: str) -> list[str]:
    parent = kb.taxon(taxon).parent
    return [t for t in kb.children.get(parent or "", ()) if t != taxon and kb.taxon(t).is_species][:2]


def _lead(turn: Turn, taxon: str) -> Block:
    kb = turn.kb
    told = tell(kb, kb.character(SHAPE), taxon) if kb.find("character", SHAPE) else None
    shape = speak.states_words(kb, told.states[:1], clause=True) if told else ""
    first = (kb.taxon(taxon).parents or (taxon,))[0]
    above = [kb.taxon(t) for t in kb.lineage(first) if kb.taxon(t).rank == "family"]
    ids = speak.short_ids(told.statements) if told else (f"taxon:{taxon}",)
    text = say.describe_lead(
        speak.fish(kb, taxon), speak.scientific_of(kb, taxon), shape, above[0].label if above else ""
    )
    return Block("lead", text, statements=ids)


def _hybrid_texts(turn: Turn, taxon: str) -> list[Block]:
    kb = turn.kb
    rows = [s for name in HYBRID_TEXTS for s in kb.statements(taxon) if s.character == name and s.text]
    return [
        Block("point", say.capital(speak.statement_words(kb, s, turn.held.units)), statements=(f"st:{s.id}",))
        for s in rows[:3]
    ]


def _size(turn: Turn, taxon: str) -> list[Block]:
    sizes = size_range(turn.kb, taxon)
    ids = speak.short_ids((*sizes.usual_statements, *sizes.largest_statements))
    told = sizes.usual_high is not None or sizes.largest is not None
    return (
        [Block("point", say.describe_size(speak.length_range(sizes, turn.held.units)), statements=ids)]
        if told and ids
        else []
    )


def _range(turn: Turn, taxon: str, simple: bool = False) -> list[Block]:
    kb = turn.kb
    rows = [r for key in kb.lineage(taxon) if kb.taxon(key).is_species for r in kb.ranges(key)]
    native, brought = _places(kb, rows, ("native",)), _places(kb, rows, ("introduced", "stocked"))
    brought = "" if simple and native else brought
    if not native and not brought:
        return []
    ids = tuple(f"range:{r.id}" for r in rows if r.status in ("native", "introduced", "stocked"))[:40]
    return [Block("point", say.describe_range(native, brought), statements=ids)]


def _places(kb: KnowledgeBase, rows: Sequence[Range], status: tuple[str, ...]) -> str:
    labels = list(dict.fromkeys(p.label for r in rows if r.status in status and (p := kb.place(r.place)) is not None))
    return say.places_short(
        join(labels[:PLACES]) if len(labels) <= PLACES else ", ".join(labels[:PLACES]), max(0, len(labels) - PLACES)
    )


def _several(turn: Turn, fish: tuple[str, ...], kinds: tuple[str, ...]) -> Answer:
    """A group, a family, or several fishes: a line on each."""
    kb = turn.kb
    listed = len(fish) > 1
    order = kinds if listed else tuple(sorted(kinds, key=lambda t: (-len(kb.ranges(t)), t)))
    out: list[Block] = []
    if not listed:
        text = say.group_lead(speak.fish(kb, fish[0]), len(kinds), speak.fishes(kb, order[:IN_GROUP]))
        out.append(Block("lead", text, statements=tuple(f"taxon:{t}" for t in order[:IN_GROUP])))
    for taxon in order[: 8 if listed else IN_GROUP]:
        out.append(_line(turn, taxon, "lead" if listed and not out else "point"))
    return Answer("describe", tuple(out), fish if listed else (*fish, *order[:IN_GROUP]))


def _each(turn: Turn, fish: tuple[str, ...], kinds: tuple[str, ...]) -> Answer:
    """A line on each kind of a group, those of the place named where one is."""
    kb = turn.kb
    where = [p.label for k in turn.reading.places if (p := kb.place(k)) is not None]
    head = Block("lead", say.each_kind(speak.fish(kb, fish[0]), min(len(kinds), MOST_LINES), len(kinds), join(where)),
                 statements=tuple(f"taxon:{t}" for t in kinds[:MOST_LINES]))
    lines = [_line(turn, t, "point") for t in kinds[:MOST_LINES]]
    return Answer("describe", (head, *lines), (*fish, *kinds[:IN_GROUP]))


def _line(turn: Turn, taxon: str, kind: str) -> Block:
    kb = turn.kb
    near = [t for t, _ in look_alikes(kb, taxon) if not kb.taxon(t).is_hybrid][:1] or _siblings(kb, taxon)[:1]
    told = features(kb, taxon, near, 2)
    words = [f"{c.label}: {speak.told_words(kb, t, c, turn.held.units)}" for c, t in told]
    ids = speak.short_ids(s for _, t in told for s in t.statements) or (f"taxon:{taxon}",)
    return Block(kind, say.entry(speak.fish_both(kb, taxon), "; ".join(words)), statements=ids)


def _parts_of_several(turn: Turn, fish: tuple[str, ...], kinds: tuple[str, ...], asked: tuple[str, ...]) -> Answer:
    kb = turn.kb
    out: list[Block] = []
    for name in asked[:SHOWN]:
        character = kb.character(name)
        told = [t for k in kinds[:8] if (t := tell(kb, character, k)) is not None]
        if told:
            text = "; ".join(
                say.each(speak.fish(kb, t.taxon), speak.told_words(kb, t, character, turn.held.units)) for t in told
            )
            out.append(
                Block(
                    "point" if out else "lead",
                    say.entry(speak.heading(character), text),
                    statements=speak.short_ids(s for t in told for s in t.statements),
                )
            )
    if not out:
        return Answer(
            "describe",
            (Block("lead", say.nothing_on(speak.fishes(kb, fish), kb.character(asked[0]).label), claim=False),),
            fish,
        )
    return Answer("describe", tuple(out), fish)
