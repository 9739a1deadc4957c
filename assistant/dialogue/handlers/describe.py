"""What a fish looks like: a portrait, one part of it, a yes or no, or a line on each of several (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.aspects import aspects
from assistant.dialogue.conversation import Held, Wanted
from assistant.dialogue.converse import converse
from assistant.dialogue.handlers.contrast import look_alikes
from assistant.dialogue.lessons.levels import character_words, value_words, young
from assistant.dialogue.lessons.request import fishes_of, level_of
from assistant.dialogue.portrait import COLOUR, NARROW, SHAPE, asked_told, features, lacks
from assistant.dialogue.reader.parts import characters_asked, near_words, part_word
from assistant.dialogue.sexes import asks_sexes, sexes_told
from assistant.dialogue.subjects import named, species_of, subjects, unclear
from assistant.dialogue.turn import SHORTER, Turn
from assistant.dialogue.whether import answered, point
from assistant.dialogue.whose import who_told, whose
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character, Range, Term
from assistant.model.stems import DROPPED
from assistant.reasoning.contrast import Told, tell, told_of
from assistant.reasoning.evidence import ANY
from assistant.reasoning.living import remembered
from assistant.reasoning.size import own_sizes
from assistant.text import join, key, singular, unique

SHOWN, SHOWN_ALL, IN_GROUP, PLACES, PARTS_NAMED, MOST_LINES = 6, 14, 5, 6, 3, 16
FEW_KINDS = 3
"""Of more kinds than these what is told of most of them comes first."""
AFRESH = frozenset({"describe", "looks", "explain"})
"""Cues of a line that asks for the whole fish anew."""
COUNTS, ONE_OF_THEM = "counts-of", "know-one"
"""The cues of all counts of a fish, and of how one of a kind just spoken of is known."""
HOW_MANY = frozenset({"many", "lots", "number", "count", "plenty"})
"""Words that ask for a number of something."""
COLOURED, WHAT_COLOUR = "colour", "what-colour"
ON_BACK = frozenset({"back", "top", "dorsal"})
NUMERIC = "numeric"
YOUNG = "young"
HYBRID_TEXTS = ("appearance", "hybrid-note", "characters-to-check", "fertility")

SHELLS, THROAT_TEETH = "shell-crush", "pharyngeal-teeth"
"""The cue of a line that asks how a fish breaks shells, and the character that tells with what."""


PICTURE = "picture"
"""The cue of a line that asks for a picture; there are none, and the words are given."""


def handle(turn: Turn) -> tuple[Answer, Held]:
    """Describe the fish of the line or the one held; ask which where there is none or the name means several."""
    answer, held = _described(turn)
    if PICTURE not in turn.cues or not answer.taxa or not answer.blocks:
        return answer, held
    first, *rest = answer.blocks
    note = Block("lead", say.WORDS_ONLY, claim=False)
    return answer._replace(blocks=(note, first._replace(kind="point"), *rest)), held


def _described(turn: Turn) -> tuple[Answer, Held]:
    """The description without a word on pictures."""
    kb, held = turn.kb, turn.held
    several = unclear(turn)
    if several and not named(turn):
        return which(turn, several[0].words, several[0].ids), held
    fish = subjects(turn)
    if ONE_OF_THEM in turn.cues and (meant := _spoken_of(turn, fish)):
        fish = meant
    if not fish:
        return _no_fish(), held
    if asks_sexes(turn) and kb.find("taxon", fish[0]) is not None:
        return Answer("describe", sexes_told(turn, fish[0]), taxa=tuple(fish)), held
    wanted = _wanted(turn, fish)
    after = held.after(wanted=wanted)
    listed = tuple(t for t in fish if (x := kb.find("taxon", t)) is not None and x.is_species)
    each = held.intent == "list" and "both" in turn.cues and len(listed) > 1
    kinds = listed if each else species_of(kb, fish)
    if len(fish) == 1 and kb.find("taxon", fish[0]) is not None and kb.taxon(fish[0]).is_species:
        return _one(turn, fish[0], wanted), after
    if "each-line" in turn.cues and len(fish) == 1:
        return _each(turn, fish, fishes_of(turn) or kinds), after
    if wanted.characters and kinds:
        return _parts_of_several(turn, fish, kinds, wanted.characters), after
    return _several(turn, fish, kinds), after


def _wanted(turn: Turn, fish: Sequence[str]) -> Wanted:
    """What the line asks of the fish; what was asked of the one before where it only names another fish, or other fish
    of the same kind ("and the warmouth?", "females?", "is it always there").
    """
    kb, before = turn.kb, turn.held.wanted
    if ONE_OF_THEM in turn.cues:
        return Wanted()
    seen = next((s.observation for s in turn.reading.seen if s.observation.states), None)
    shells = (THROAT_TEETH,) if SHELLS in turn.cues else ()
    asked = shells or _all_counts(turn, fish) or _how_many(turn, fish) or characters_asked(kb, turn.reading)
    asked = (_tints(turn, fish, asked) or asked) if WHAT_COLOUR in turn.cues else asked
    asked = asked or _counted(turn, fish)
    if whose(turn) != ANY:
        asked = tuple(c for c in asked if kb.character(c).use == "identify")
    elif not asked and COLOURED in aspects(kb, turn.reading):
        asked = _colours(turn, fish)
    own = Wanted(asked, seen.states if seen is not None else (), whose(turn))
    if turn.held.intent != "describe" or asked or turn.cues & AFRESH:
        return own
    narrow = 0 < len(before.characters) <= NARROW
    if own.who != ANY:
        return before._replace(who=own.who) if narrow and not named(turn) else own
    other = turn.reading.of("taxon", "hybrid", "group")
    return before if other or "always" in turn.cues else own


def _tints(turn: Turn, fish: Sequence[str], asked: Sequence[str]) -> tuple[str, ...]:
    """The colours that are told of the parts asked about ("what shade should the barbels be")."""
    of_part = [turn.kb.character(c) for c in asked]
    if any(COLOURED in key(c.label).split() for c in of_part):
        return tuple(asked)
    parts, words = {c.part for c in of_part}, {w for c in of_part for w in c.words}
    able = (turn.kb.character(c) for c in _colours(turn, fish))
    return tuple(c.id for c in able if c.id != COLOUR and (c.part in parts or words & set(c.words)))


def _colours(turn: Turn, fish: Sequence[str]) -> tuple[str, ...]:
    """The characters of colour that are told of some fishes, that of the whole fish first."""
    kb = turn.kb
    told = told_of(kb, species_of(kb, tuple(fish)))
    able = [c for c in told if COLOURED in key(kb.character(c).label).split() and kb.character(c).use == "identify"]
    return (COLOUR, *(c for c in able if c != COLOUR)) if COLOUR in told else tuple(able)


def _how_many(turn: Turn, fish: Sequence[str]) -> tuple[str, ...]:
    """The counts told of the fishes of what "how many" asks for ("how many spines on its back")."""
    kb = turn.kb
    if not HOW_MANY & set(turn.reading.words):
        return ()
    words = {singular(w) for w in turn.reading.words} | ({"dorsal"} if ON_BACK & set(turn.reading.words) else set())
    words = (words | _term_before(turn)) - DROPPED
    counts = _counts_told(kb, fish)
    alone = unique(m.ids[0] for m in turn.reading.of("character") if len(m.ids) == 1 and m.ids[0] in counts)
    if len(alone) > 1:
        return alone
    shared = {c: len(words & {singular(w) for w in key(kb.character(c).label).split()}) for c in counts}
    best = max(shared.values(), default=0)
    return tuple(c for c in counts if best and shared[c] == best)


def _uncounted(turn: Turn) -> str:
    """What "how many" asks the number of, where it is nothing that the base counts ("how many bones")."""
    word = _after_how_many(turn)
    return "" if word in BARE else word


def _term_before(turn: Turn) -> set[str]:
    """The words of the term just explained, where "how many" names nothing itself ("how many does a cisco have")."""
    last = turn.held.last
    if last is None or last.intent != "term" or _after_how_many(turn) not in BARE:
        return set()
    told = turn.kb.record_at(next(iter(last.blocks[0].statements), ""))
    return {singular(w) for w in key(told.label).split()} if isinstance(told, Term) else set()


def _after_how_many(turn: Turn) -> str:
    words = turn.reading.words
    return next((words[i + 2] for i in range(len(words) - 2) if words[i : i + 2] == ("how", "many")), "")


BARE = frozenset({"does", "do", "did", "has", "have", "should", "would", "are", "is", "of"})
"""Words after "how many" that name nothing to be counted."""


def _counted(turn: Turn, fish: Sequence[str]) -> tuple[str, ...]:
    """The counts told of the fishes, where the line asks for numbers alone ("meristics only")."""
    return _counts_told(turn.kb, fish) if NUMERIC in aspects(turn.kb, turn.reading) else ()


def _all_counts(turn: Turn, fish: Sequence[str]) -> tuple[str, ...]:
    """The counts told of the fishes, where all counts are asked for; those of what the line says is counted ("all scale
    counts").
    """
    if COUNTS not in turn.cues:
        return ()
    told = _counts_told(turn.kb, fish)
    things = {singular(w) for w in turn.reading.words} & COUNTED
    return tuple(c for c in told if things & {singular(w) for w in key(turn.kb.character(c).label).split()}) or told


COUNTED = frozenset({"scale", "ray", "spine", "raker", "pore", "tooth", "vertebra"})
"""Words for what is counted on a fish."""


def _spoken_of(turn: Turn, fish: Sequence[str]) -> tuple[str, ...]:
    """The one of some fishes of which the last answer spoke first; none where it spoke of several."""
    lead = next(iter(turn.held.last.blocks), None) if turn.held.last is not None else None
    said = f" {key(lead.text)} " if lead is not None else ""
    found = tuple(t for t in fish if f" {key(speak.fish(turn.kb, t))} " in said)
    return found if len(found) == 1 else ()


def _counts_told(kb: KnowledgeBase, fish: Sequence[str]) -> tuple[str, ...]:
    """The counts of which something is told of some fishes, their own or inherited."""
    told = (kb.character(c) for c in told_of(kb, species_of(kb, tuple(fish))))
    return tuple(c.id for c in told if c.kind == "count" and c.use == "identify")


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


def _one(turn: Turn, taxon: str, wanted: Wanted) -> Answer:
    asked = wanted.characters
    if blocks := converse(turn, taxon) or answered(turn, taxon, wanted):
        return Answer("describe", blocks, (taxon,))
    if wanted.who != ANY and not (asked and len(asked) > NARROW):
        return Answer("describe", tuple(who_told(turn, taxon, wanted.who, asked)), (taxon,))
    if asked:
        return Answer("describe", tuple(_parts(turn, taxon, asked)), (taxon,))
    if counted := _uncounted(turn):
        text = say.nothing_on(speak.fish(turn.kb, taxon), say.the_number(counted))
        return Answer("describe", (Block("lead", text, statements=(f"taxon:{taxon}",)),), (taxon,))
    return Answer("describe", tuple(portrait(turn, taxon)), (taxon,))


def _parts(turn: Turn, taxon: str, asked: tuple[str, ...]) -> list[Block]:
    """What is told of the characters asked about: of those named outright first, of a part's the most telling first."""
    kb = turn.kb
    known = asked_told(kb, taxon, asked) or asked_told(kb, taxon, near_words(kb, turn.reading))
    numeric = NUMERIC in aspects(kb, turn.reading) and len(asked) > 1
    if not known:
        label = say.COUNTS if numeric else _parts_named(turn, asked) if len(asked) > 1 else kb.character(asked[0]).label
        refs = speak.short_ids(s.id for s in kb.statements(taxon)[:1]) or (f"taxon:{taxon}",)
        return [Block("lead", say.nothing_on(speak.fish(kb, taxon), label), statements=refs)]
    outright = {i for m in turn.reading.of("character") if not m.ambiguous for i in m.ids} | {COLOUR}
    words = turn.reading.words
    how = {words[i + 1] for i in range(len(words) - 1) if words[i] == "how"} - DROPPED
    known.sort(key=lambda x: (not how & set(key(f"{x[0].question} {x[0].label}").split()), x[0].id not in outright))
    name = speak.fish(kb, taxon)
    known = [x for x in known if not lacks(x[1])] or known if all(c.kind == "count" for c, _ in known) else known
    if all(c.kind == "count" for c, _ in known) and len(known) <= NARROW:
        clauses = join([speak.told_clause(kb, told, c, turn.held.units) for c, told in known])
        ids = speak.short_ids(s for _, told in known for s in told.statements)
        return [Block("lead", say.has_told(name, clauses), statements=ids)]
    first, *rest = [point(turn, c, told) for c, told in known[: SHOWN_ALL if "more" in turn.cues or numeric else SHOWN]]
    return [Block("lead", say.describe_single(name, first.text), statements=first.statements), *rest]


def _parts_named(turn: Turn, asked: Sequence[str]) -> str:
    """The parts asked about by the words typed; that of the first character where none of its words is."""
    words = {singular(w) for w in turn.reading.words}
    names = unique(part_word(turn.kb, turn.reading, c) for c in asked)
    typed = [n for n in names if {singular(w) for w in key(n).split()} <= words]
    typed = [n for n in typed if not any(n != o and f" {n} " in f" {o} " for o in typed)]
    return join(typed[:PARTS_NAMED]) or names[0]


def portrait(turn: Turn, taxon: str) -> list[Block]:
    """A fish described: shape, then a feature a region, size, range and the look-alike to watch."""
    kb = turn.kb
    near = look_alikes(kb, taxon)
    others = [t for t, _ in near if not kb.taxon(t).is_hybrid][:2] or _siblings(kb, taxon)
    out = [_lead(turn, taxon)]
    if not turn.cues & SHORTER:
        out += _hybrid_texts(turn, taxon)
    most = 2 if turn.cues & SHORTER else SHOWN_ALL if "more" in turn.cues else SHOWN
    chosen = features(kb, taxon, others, most)
    colour = tell(kb, kb.character(COLOUR), taxon) if kb.find("character", COLOUR) else None
    if colour is not None and not turn.cues & SHORTER and all(c.id != COLOUR for c, _ in chosen):
        chosen = [(kb.character(COLOUR), colour), *chosen]
    simple = level_of(turn.reading.text.lower(), turn.cues) == YOUNG
    out += [_young_point(turn, c, told) if simple else point(turn, c, told) for c, told in chosen]
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
    name, parents = speak.fish(kb, taxon), kb.taxon(taxon).parents
    crossed = speak.fishes(kb, parents) if parents and not all(speak.fish(kb, p) in name for p in parents) else ""
    text = say.describe_lead(name, speak.scientific_of(kb, taxon), shape, above[0].label if above else "", crossed)
    return Block("lead", text, statements=ids)


def _hybrid_texts(turn: Turn, taxon: str) -> list[Block]:
    kb = turn.kb
    rows = [s for name in HYBRID_TEXTS for s in kb.statements(taxon) if s.character == name and s.text]
    return [
        Block("point", say.capital(speak.statement_words(kb, s, turn.held.units)), statements=(f"st:{s.id}",))
        for s in rows[:3]
    ]


def _size(turn: Turn, taxon: str) -> list[Block]:
    sizes = own_sizes(turn.kb, taxon)
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
    home = {r.place for r in rows if r.status == "native"}
    rows = [r for r in rows if r.status == "native" or r.place not in home]
    native, brought = _places(kb, rows, ("native",)), _places(kb, rows, ("introduced", "stocked"))
    brought = "" if simple and native else brought
    if not native and not brought:
        return []
    told = [r for r in rows if r.status == "native" or (brought and r.status in ("introduced", "stocked"))]
    ids = tuple(f"range:{r.id}" for r in told)[:40]
    memory = say.memory_of_places(*remembered(told))
    return [Block("point", say.describe_range(native, brought, memory), statements=ids)]


def _places(kb: KnowledgeBase, rows: Sequence[Range], status: tuple[str, ...]) -> str:
    labels = list(dict.fromkeys(p.label for r in rows if r.status in status and (p := kb.place(r.place)) is not None))
    return say.places_short(
        join(labels[:PLACES]) if len(labels) <= PLACES else ", ".join(labels[:PLACES]), max(0, len(labels) - PLACES)
    )


BARE_NAME = 2
"""Words of a line that is no more than the word for a group."""


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
    if not listed and len(turn.reading.words) <= BARE_NAME:
        out.append(Block("next", say.WHICH_KIND, claim=False))
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
    every = [(c, [t for k in kinds[:8] if (t := tell(kb, c, k)) is not None]) for c in map(kb.character, asked)]
    if not turn.reading.seen and len(kinds) > FEW_KINDS:
        every.sort(key=lambda x: (-len(x[1]), len({speak.told_words(kb, t, x[0], turn.held.units) for t in x[1]}) < 2))
    for character, told in every[:SHOWN]:
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
