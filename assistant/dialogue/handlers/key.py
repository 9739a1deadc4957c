"""Make a key, or walk one couplet by couplet, with "back" and "not sure" (layer 4)."""

from __future__ import annotations

from dataclasses import replace

from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.beside.left_out import left_out
from assistant.dialogue.beside.set_changed import by_place, changes_set, moved
from assistant.dialogue.conversation import Held
from assistant.dialogue.lessons.key import notes_of, title_of
from assistant.dialogue.lessons.key_doubts import overlaps_at_end, overlaps_told
from assistant.dialogue.lessons.key_told import (
    left_told,
    print_command,
    step_explained,
    ways_to,
    why_asked,
)
from assistant.dialogue.lessons.key_walk import (
    BACK,
    FIRST,
    NOT_SURE,
    SECOND,
    STOP,
    WHICH,
    KeyWalk,
    elsewhere,
    meaning,
    narrowed,
    pass_over,
    start,
    take,
    told_after,
)
from assistant.dialogue.lessons.levels import choice_words, lead_words, question_words, reader_of
from assistant.dialogue.lessons.reply import AGAIN, HINT, LEFT, LOST, PRINT, SKIP, UNSURE, WHY, WORD, reply
from assistant.dialogue.lessons.request import Request, look_of, request_of
from assistant.dialogue.subjects import species_of, unclear
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import lesson as say
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.model.stems import DROPPED
from assistant.reasoning.evidence import about
from assistant.reasoning.key import Key, Lead, build_key
from assistant.text import join, key, singular, unique

INTENT, PAPER_CUE = "key", "lesson-print"
WALK_WORDS = frozenset(["walk", "walked", "walking", "lead", "talk", "take", "questions", "step", "steps", "guide",
                        "through", "thru", "twenty"])
ANSWER_WORDS = 6
"""Words up to which a line is taken for an answer to the couplet asked."""
MOST_TOLD = 24
"""Fishes and groups of a key that its answer names."""
PRINTED = 24
"""Couplets up to which a key is shown whole."""
COLOUR = {"color": "colour"}
NAMED = ("taxon", "hybrid", "group")
REMEMBERED = 4
"""Turns after the end of a walk in which its key can be asked for once more."""
KINDS = 8
"""Species up to which a key takes the genera that are named beside single fishes apart."""
RANK = "family"
WIDER = (RANK, "genus")
"""Ranks from which a walk goes on into a key of the species below."""

FEW_LEFT = 6
"""So many fishes left in a key are named when one drops out."""


def handle(turn: Turn) -> tuple[Answer, Held]:
    """Answer the couplet asked, else make the key that the line asks for and offer to walk it."""
    walk = turn.held.walk if isinstance(turn.held.walk, KeyWalk) else None
    asked = turn.held.asked is not None and turn.held.asked.kind == INTENT
    if walk is not None and asked:
        turn = _without_marks_named(turn, walk)
    look = look_of(turn.reading.text.lower())
    if (fewer := _with_fewer(turn, walk)) is not None:
        return fewer
    if walk is not None and asked and (told := _aside(turn, walk)) is not None:
        return told
    if (over := _after_the_end(turn)) is not None:
        return over
    changes = (bool(turn.reading.of(*NAMED)) or by_place(turn.reading.text)) and changes_set(turn)
    features = _features_left_out(turn, walk) if walk is not None and not changes else frozenset()
    if walk is not None and asked and _described(turn, walk, features):
        from assistant.dialogue.handlers import handler_of

        return handler_of("identify")(turn._replace(held=turn.held.after(walk=None, asked=None)))
    if walk is not None and features:
        return _without(turn, walk, features)
    answers = asked and len(turn.reading.words) <= ANSWER_WORDS and INTENT not in turn.cues and not changes
    if walk is not None and answers and not look and "plainer" not in turn.cues:
        return _step(turn, walk)
    wanted = request_of(turn, walk.key.look if walk else "hand", carried=False)
    if walk is not None and (changes or wanted.taxa) and (changed := _changed(turn, walk, wanted.taxa)):
        return _begin(turn, replace(wanted, taxa=changed, named=changed, level=walk.level))
    if walk is not None and not wanted.taxa:
        if look and look != walk.key.look:
            level = walk.level if wanted.level == "plain" else wanted.level
            wanted = replace(wanted, taxa=walk.key.taxa, level=level)
            return _begin(turn, wanted) if walk.printed or not asked else _looked_anew(turn, walk, wanted)
        if wanted.level not in ("plain", walk.level):
            return _begin(turn, replace(wanted, taxa=walk.key.taxa, look=walk.key.look))
        if asked:
            return _step(turn, walk)
    if not wanted.taxa:
        wanted = request_of(turn, "hand")
    return _begin(turn, wanted)


def _without_marks_named(turn: Turn, walk: KeyWalk) -> Turn:
    """The turn without nicknames of fishes outside the key in a line that tells what was seen ("big mouth, to the
    middle of the eye"): there the words describe.
    """
    reading = turn.reading
    if INTENT in turn.cues or not any(not s.retract for s in reading.seen):
        return turn
    strange = [m for m in reading.of("taxon") if not set(m.ids) & set(walk.key.taxa) and not any(
        _words(m.words) <= _words(turn.kb.taxon(t).label) for t in m.ids)]
    kept = tuple(m for m in reading.mentions if m not in strange)
    return turn._replace(reading=reading._replace(mentions=kept)) if strange else turn


def _with_fewer(turn: Turn, walk: KeyWalk | None) -> tuple[Answer, Held] | None:
    """The key last made or walked again for the fishes that remain when the line takes some out; else None."""
    first = walk
    while first is not None and first.before is not None:
        first = first.before
    before = first.key.taxa if first is not None else turn.held.taxa if turn.held.intent == INTENT else ()
    out = left_out(turn, before)
    rest = tuple(t for t in before if t not in out)
    if not out or len(rest) < 2:
        return None
    wanted = request_of(turn, walk.key.look if walk else "hand", carried=False)
    level = walk.level if walk is not None and wanted.level == "plain" else wanted.level
    return _begin(turn, replace(wanted, taxa=rest, named=rest, level=level), whole=True)


def _aside(turn: Turn, walk: KeyWalk) -> tuple[Answer, Held] | None:
    """What the line asks beside answering the step: why, a word, the key on paper, the fishes left; else None."""
    kb, asks = turn.kb, reply(turn.reading)
    if asks == WHY:
        return _ask(turn, walk, why_asked(kb, walk))
    if asks == WORD:
        meant = [kb.find("term", m.ids[0]) for m in turn.reading.of("term") if m.ids]
        answer, held = _ask(turn, walk, " ".join(say.word_means(t.label, t.plain) for t in meant if t is not None))
        return answer._replace(intent="term"), held
    if asks in (HINT, LOST):
        return _ask(turn, walk, step_explained(kb, walk))
    if asks == AGAIN:
        return _ask(turn, walk, "")
    if asks == LEFT:
        return _ask(turn, walk, left_told(kb, walk))
    if asks == PRINT and not turn.reading.of(*NAMED):
        return _printed(turn, walk, paper=True)
    if "lesson-answers" in turn.cues and not turn.reading.of(*NAMED):
        return _answers(turn, walk)
    return None


def _answers(turn: Turn, walk: KeyWalk) -> tuple[Answer, Held]:
    """The answers of a key apart from it: for each fish the choices that lead to it, and the open step again."""
    kb, ways = turn.kb, ways_to(walk.key)
    lead = Block("lead", say.key_answers(title_of(kb, walk.key.taxa, "", "")), claim=False)
    points = [Block("point", say.key_way(speak.fish(kb, t), ways[t]), statements=(f"taxon:{t}",))
              for t in walk.key.taxa if t in ways]
    answer, held = _ask(turn, walk, "")
    return answer._replace(blocks=(lead, *points, *answer.blocks)), held


def _after_the_end(turn: Turn) -> tuple[Answer, Held] | None:
    """What may be said of a key that was walked to its end: that it be printed, or a letter that comes too late."""
    if turn.held.walk is not None or turn.reading.of(*NAMED):
        return None
    held: Held | None = turn.held
    for _ in range(REMEMBERED):
        held = held.before if held is not None else None
        if held is None or isinstance(held.walk, KeyWalk):
            break
    if held is None or not isinstance(held.walk, KeyWalk):
        return None
    first = held.walk
    while first.before is not None:
        first = first.before
    if reply(turn.reading) == PRINT:
        return _printed(turn, replace(first, at=1), paper=True)
    if turn.held.intent != INTENT or len(turn.reading.words) > 1 or not set(turn.reading.words) & (FIRST | SECOND):
        return None
    return _said(say.key_over(speak.fishes(turn.kb, turn.held.taxa[:2], "or")), turn.held, turn.held.taxa)


def _described(turn: Turn, walk: KeyWalk, left_out: frozenset[str]) -> bool:
    """True for a line that describes the fish by several features, none asked about or only named to be left out."""
    named = {w for c in left_out for w in _label_words(turn.kb, c)}
    told = {s.observation.character for s in turn.reading.seen if not s.retract and not _words(s.words) <= named}
    return len(told) > 1 and walk.couplet.character not in told


def _features_left_out(turn: Turn, walk: KeyWalk) -> frozenset[str]:
    """The features of the key that the line wants left out ("leave out the pores"): those sharing most words."""
    words = _words(turn.reading.text)
    told = words & say.WITHOUT_WORDS
    shown = any(s.observation.seen and not s.retract for s in turn.reading.seen)
    if not told or (shown and told == {"not"}):
        return frozenset()
    named = words - say.WITHOUT_WORDS - DROPPED
    asked = {couplet.character for couplet in walk.key.couplets}
    shared = {c: len(named & _label_words(turn.kb, c)) for c in asked}
    most = max(shared.values(), default=0)
    return frozenset(c for c, n in shared.items() if n and n == most)


def _label_words(kb: KnowledgeBase, character: str) -> set[str]:
    return _words(kb.character(character).label)


def _words(text: str) -> set[str]:
    return {COLOUR.get(w, w) for w in map(singular, key(text).split())}


def _without(turn: Turn, walk: KeyWalk, features: frozenset[str]) -> tuple[Answer, Held]:
    """The key made again for the same fishes without some features."""
    passed = walk.passed | features
    made = build_key(turn.kb, walk.key.taxa, walk.key.look, without=passed, reader=reader_of(walk.level))
    if not made.couplets:
        return _said(say.not_parted(speak.fishes(turn.kb, made.taxa, "or")), turn.held, made.taxa)
    return _printed(turn, KeyWalk(made, 1, walk.level, passed))


def _changed(turn: Turn, walk: KeyWalk, named: tuple[str, ...]) -> tuple[str, ...]:
    """The fishes of the key with those named taken out or put in, as the line says; empty where it says neither."""
    first = walk
    while first.before is not None:
        first = first.before
    out, into = moved(turn, named)
    if not (out or into):
        return ()
    return unique((*(t for t in first.key.taxa if t not in out), *into))


def _kinds(kb: KnowledgeBase, wanted: Request) -> Request:
    """The request with its genera as they are named, where a fish stands beside them and their species are many."""
    ranks = {found.rank for t in wanted.named if (found := kb.find("taxon", t)) is not None}
    mixed = "species" in ranks and ranks & set(WIDER) and all(kb.find("taxon", t) for t in wanted.named)
    return replace(wanted, taxa=wanted.named) if mixed and len(wanted.taxa) > KINDS else wanted


def _looked_anew(turn: Turn, walk: KeyWalk, wanted: Request) -> tuple[Answer, Held]:
    """The walk begun again by what shows on this fish ("cant tell, its dead"), without what could not be seen."""
    unseen = {walk.couplet.character} if reply(turn.reading) in (SKIP, UNSURE) else set()
    passed = walk.passed | unseen
    made = build_key(turn.kb, wanted.taxa, wanted.look, without=passed, reader=reader_of(wanted.level))
    if not made.couplets:
        return _said(say.not_parted(speak.fishes(turn.kb, made.taxa, "or")), turn.held, made.taxa[:8])
    anew = KeyWalk(made, 1, wanted.level, passed)
    return _ask(turn, anew, _head(turn, anew))


def _begin(turn: Turn, wanted: Request, whole: bool = False) -> tuple[Answer, Held]:
    """The key asked for, shown whole or walked as the line says; always ``whole`` where its words ask for no walk."""
    kb, held = turn.kb, turn.held
    wanted = _kinds(kb, wanted)
    words = set() if whole else set(key(turn.reading.text).split())
    if not wanted.taxa:
        families = tuple(t.id for t in kb.all("taxon") if t.rank == RANK)
        begun = start(kb, families, wanted.look, wanted.level)
        how = turn.cues & {"asks-how", "help"} and words & say.USE_WORDS
        return _ask(turn, begun, say.KEY_HOW if how else say.KEY_FROM_FAMILIES) if begun else _said(say.KEY_WHICH, held)
    several = species_of(kb, unique(i for m in unclear(turn) for i in m.ids))
    if len(wanted.taxa) < 2 and words & WALK_WORDS and several:
        wanted = replace(wanted, taxa=several, named=several)
    if len(wanted.taxa) < 2:
        return _said(say.key_one(speak.fishes(kb, wanted.taxa)), held, wanted.taxa)
    made = _made(turn, wanted)
    if not made.couplets:
        text = say.not_parted(speak.fishes(kb, made.taxa, "or"))
        return Answer(INTENT, (Block("lead", text, statements=_any(kb, made)),), made.taxa[:8]), held
    walk = KeyWalk(made, 1, wanted.level)
    if words & WALK_WORDS or len(made.couplets) > PRINTED:
        lead = say.key_long(len(made.taxa), len(made.couplets)) if len(made.couplets) > PRINTED else ""
        return _ask(turn, walk, " ".join([_head(turn, walk), lead]).strip(), wanted.named)
    return _printed(turn, walk, wanted.named, paper=PAPER_CUE in turn.cues)


def _made(turn: Turn, wanted: Request) -> Key:
    """The key asked for, without the features that the line leaves out from the beginning ("without the tail fin")."""
    kb, after = turn.kb, turn.reading.text.lower().partition(say.WITHOUT)[2]
    speaks = {c.id: _words(f"{c.label} {c.question}") for c in kb.characters} if after else {}
    named = (_words(after) & {w for words in speaks.values() for w in words}) - DROPPED
    left_out = {c for c, words in speaks.items() if named <= words} if named else set()
    return build_key(kb, wanted.taxa, wanted.look, without=left_out, reader=reader_of(wanted.level))


def _head(turn: Turn, walk: KeyWalk) -> str:
    groups = [m for m in turn.reading.of("group") if set(walk.key.taxa) <= set(species_of(turn.kb, m.ids))]
    title = title_of(turn.kb, walk.key.taxa, groups[0].ids[0] if groups else "", turn.reading.places[0]
                     if turn.reading.places else "")
    kinds = any(turn.kb.taxon(t).rank in WIDER for t in walk.key.taxa)
    return say.key_title_line(title, len(walk.key.taxa), walk.key.look, kinds)


def _printed(turn: Turn, walk: KeyWalk, named: tuple[str, ...] = (), paper: bool = False) -> tuple[Answer, Held]:
    """The whole key, and the walk offered under it."""
    kb, walk = turn.kb, walk if walk.before is not None else replace(walk, printed=True)
    blocks = [Block("lead", _head(turn, walk), claim=False)]
    doubtful = overlaps_told(kb, walk.key, walk.level)
    for couplet in walk.key.couplets:
        ids = speak.short_ids(statements(kb, walk.key, couplet.number))
        blocks += [Block("point", say.key_line(f"{couplet.number}{letter}",
                                               lead_words(kb, couplet.character, lead, walk.level),
                                               _end(kb, lead)), statements=ids)
                   for letter, lead in zip("ab", couplet.leads, strict=True)]
        if couplet.number in doubtful:
            blocks.append(doubtful[couplet.number])
    blocks += [Block("doubt", note, claim=False) for note in notes_of(kb, walk.key)]
    if paper:
        blocks.append(Block("help", say.key_print(print_command(kb, walk.key, walk.level)), claim=False))
    asked = _asked(kb, walk)
    first = say.key_ask(walk.step, asked.question, [c for _, c in asked.choices])
    blocks.append(Block("next", say.key_offer(first), claim=False))
    taxa = unique((*named, *walk.key.taxa))[:MOST_TOLD]
    return Answer(INTENT, tuple(blocks), taxa, asked=asked), turn.held.after(walk=walk)


def _step(turn: Turn, walk: KeyWalk) -> tuple[Answer, Held]:
    kb = turn.kb
    choice = meaning(kb, walk, turn.reading)
    if choice == STOP:
        return _said(say.KEY_STOPPED, turn.held.after(walk=None), walk.left[:8])
    if choice == BACK:
        return _ask(turn, walk.before or walk, say.KEY_BACK if walk.before else say.KEY_AT_START)
    if choice == NOT_SURE:
        found = pass_over(kb, walk)
        return _ask(turn, found, say.key_passed(kb.character(walk.couplet.character).label)) if isinstance(found,
            KeyWalk) else (
            _ended(turn, walk, found))
    if choice is None and set(key(turn.reading.text).split()) & say.START_WORDS:
        return _ask(turn, walk, "")
    if choice is None and (other := elsewhere(kb, walk, turn.reading)):
        if (rest := narrowed(kb, walk, turn.reading)) is not None:
            noted = speak.seen_words(kb, next(s.observation for s in turn.reading.seen if not s.retract))
            left = rest.left if isinstance(rest, KeyWalk) else rest
            names = speak.fishes(kb, left) if len(left) <= FEW_LEFT else ""
            lead = say.key_narrowed(noted, len(left), len(walk.left), names)
            return _ask(turn, rest, lead) if isinstance(rest, KeyWalk) else _ended(turn, walk, rest)
        return _ask(turn, walk, say.key_elsewhere(kb.character(other).label))
    if choice == WHICH:
        return _ask(turn, walk, say.key_which(turn.reading.answer))
    if choice is None:
        meant = [kb.find("term", m.ids[0]) for m in turn.reading.of("term") if m.ids]
        told = [say.word_means(t.label, t.plain) for t in meant if t is not None]
        return _ask(turn, walk, " ".join(told) or say.key_unread(kb.character(walk.couplet.character).how))
    found = take(walk, int(choice))
    taken = lead_words(kb, walk.couplet.character, walk.couplet.leads[int(choice)], walk.level)
    return _ask(turn, found, say.key_taken(taken)) if isinstance(found, KeyWalk) else _ended(turn, walk, found,
                                                                                                   int(choice))


def _ended(turn: Turn, walk: KeyWalk, taxa: tuple[str, ...], lead: int | None = None) -> tuple[Answer, Held]:
    """The fish that the walk leads to; from a family on into its own key."""
    kb = turn.kb
    if len(taxa) == 1 and kb.taxon(taxa[0]).rank in WIDER:
        below = request_members(kb, taxa[0])
        begun = start(kb, below, walk.key.look, walk.level, told_after(walk, lead)) if len(below) > 1 else None
        if begun is not None:
            return _ask(turn, replace(begun, before=walk), say.key_family(speak.fish(kb, taxa[0]), len(below)))
        taxa = below or taxa
    ids = speak.short_ids(s for t in taxa for s in [x.id for x in about(kb, t, walk.couplet.character)[0]])
    ids = ids or speak.short_ids(s.id for t in taxa for s in kb.statements(t)[:1])
    names = [speak.fish_both(kb, t) for t in taxa]
    text = say.key_end(names[0]) if len(names) == 1 else say.key_end_several(join(names, "or"))
    alike = [speak.fish(kb, x.other) for t in taxa for x in kb.look_alikes(t)
             if x.other not in taxa][:2] if len(taxa) == 1 else []
    blocks = [Block("lead", text, statements=ids)]
    missed = overlaps_at_end(kb, walk.key, walk.level, walk.at, lead) if lead is not None else []
    blocks += missed
    if alike and not missed:
        blocks.append(Block("doubt", say.key_check(join(alike, "and")), statements=speak.short_ids(
            f"alike:{x.id}" for x in kb.look_alikes(taxa[0])[:2])))
    return Answer(INTENT, tuple(blocks), taxa[:8]), turn.held.after(walk=None)


def request_members(kb: KnowledgeBase, taxon: str) -> tuple[str, ...]:
    """The species below a family."""
    from assistant.reasoning.selection import species_below

    return species_below(kb, taxon)


def _ask(turn: Turn, walk: KeyWalk, lead: str, named: tuple[str, ...] = ()) -> tuple[Answer, Held]:
    asked = _asked(turn.kb, walk)
    ids = speak.short_ids(statements(turn.kb, walk.key, walk.at))
    blocks = [Block("lead", lead, statements=ids)] if lead else []
    blocks.append(Block("next", say.key_ask(walk.step, asked.question, [c for _, c in asked.choices]), statements=ids))
    return Answer(INTENT, tuple(blocks), (named or walk.left)[:8], asked=asked), turn.held.after(walk=walk)


def _asked(kb: KnowledgeBase, walk: KeyWalk) -> Asked:
    couplet = walk.couplet
    choices = tuple((letter, choice_words(kb, lead, walk.level))
                    for letter, lead in zip("ab", couplet.leads, strict=True))
    return Asked(INTENT, question_words(kb, couplet.character, walk.level), couplet.character, choices)


def statements(kb: KnowledgeBase, made: Key, number: int) -> list[str]:
    """The statements that a couplet rests on."""
    couplet = made.couplet(number)
    taxa = {t for lead in couplet.leads for t in lead.taxa}
    return [s.id for t in made.taxa if t in taxa for s in about(kb, t, couplet.character)[0]]


def _end(kb: KnowledgeBase, lead: Lead) -> str:
    if lead.goes_to:
        return str(lead.goes_to)
    names = [speak.fish(kb, t) for t in lead.taxa]
    return names[0] if len(names) == 1 else say.together(join(names, "or"))


def _any(kb: KnowledgeBase, made: Key) -> tuple[str, ...]:
    return speak.short_ids(s.id for t in made.taxa for s in kb.statements(t)[:1])


def _said(text: str, held: Held, taxa: tuple[str, ...] = ()) -> tuple[Answer, Held]:
    return Answer(INTENT, (Block("lead", text, claim=False),), taxa), held
