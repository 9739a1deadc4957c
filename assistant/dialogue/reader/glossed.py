"""Glossary terms and features that a line names outside the names of fishes (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.mentions import Decided
from assistant.dialogue.reader.reading import Mention
from assistant.dialogue.reader.tokens import Token
from assistant.model.spelling import distance
from assistant.text import key, unique

LONG_TERM, OFF = 7, 2
"""Letters of a word that may be a term misspelt, and how many of them may be off."""

_ENDINGS = ("ing", "ed", "s", "er", "ers")
"""Endings of a plain word that is none of the glossary misspelt ("pulling")."""

CLASS_ASKING = "class-asking"
"""The cue of a line that tells of somebody of a class who asks."""


def terms_of(tokens: Sequence[Token], decided: Decided, lexicon: Lexicon) -> tuple[Mention, ...]:
    """Glossary terms and features named in the line, longest first."""
    out: list[Mention] = []
    taken: set[int] = set(decided.strong) | _people(tokens, lexicon)
    for size in (5, 4, 3, 2, 1):
        for i in range(len(tokens) - size + 1):
            span = set(range(i, i + size))
            if span & taken or tokens[i].clause != tokens[i + size - 1].clause:
                continue
            entries = lexicon.spoken(" ".join(t.word for t in tokens[i : i + size]))
            made = [(kind, unique(e[1] for e in entries if e[0] == kind)) for kind in ("term", "character")]
            for kind, ids in made:
                if ids:
                    words = " ".join(t.word for t in tokens[i : i + size])
                    out.append(Mention(kind, ids, words, tokens[i].start, tokens[i + size - 1].end, True, len(ids) > 1))
            if any(ids for _, ids in made):
                taken |= span
    out += (m for i, t in enumerate(tokens) if i not in taken and (m := _misspelt_term(t, lexicon)) is not None)
    return tuple(out)


def _people(tokens: Sequence[Token], lexicon: Lexicon) -> set[int]:
    """Where words stand by which somebody of a class asks ("a pupil wonders"), which name no part of a fish."""
    runs = (range(i, i + size) for size in (2, 3, 4) for i in range(len(tokens) - size + 1))
    return {i for run in runs if CLASS_ASKING in lexicon.cues(" ".join(tokens[i].word for i in run)) for i in run}


def _misspelt_term(token: Token, lexicon: Lexicon) -> Mention | None:
    """A glossary term spelt nearly as a long word that the base does not know ("anadromus"), its first letter right."""
    word = token.word
    if len(word) < LONG_TERM or lexicon.known(word) or any(
            lexicon.known(word.removesuffix(e)) for e in _ENDINGS if word.endswith(e)):
        return None
    off = OFF if len(word) > LONG_TERM else 1
    terms = ((t.id, key(t.label)) for t in lexicon.kb.all("term"))
    near = [t for t, label in terms if label[:1] == word[0] and distance(word, label, off) <= off]
    return Mention("term", (near[0],), token.word, token.start, token.end, False) if len(near) == 1 else None
