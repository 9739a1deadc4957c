"""In what manner a line names its fishes: by nickname, in scientific names, two right beside each other (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.dialogue.called_so import LOCAL_KINDS, names_like
from assistant.dialogue.reader.reading import Mention, Reading
from assistant.dialogue.subjects import species_of
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Name
from assistant.text import key, singular, word_set


def named_how(kb: KnowledgeBase, reading: Reading) -> set[str]:
    """ "binomials" for two scientific names between which a fish named in plain words is to be placed, "names-abut" for
    a line that opens with two names and nothing between them ("sauger walleye, a lake in ..."), "one-for-other" for two
    names of which one may stand for the other ("bream", "bluegill"), "said-to-be" for one fish that somebody holds the
    catch to be ("buddy bets its a pumpkinseed")."""
    told = sorted(reading.of("taxon", "hybrid", "group"), key=lambda m: m.start)
    written = [m for m in told if scientific(kb, m)]
    out = {"binomials"} if len({m.words for m in written}) > 1 and len(told) > len(written) else set()
    if len(told) == 2 and told[0].ids != told[1].ids and not reading.text[: told[0].start].strip():
        between = reading.text[told[0].end : told[1].start]
        out |= {"names-abut"} if between and not between.strip(" /") else set()
    claimed = {m.ids for m in told if m.kind != "group" and _SAID_TO_BE.search(reading.text[: m.start].lower())}
    out |= {"said-to-be"} if len(claimed) == 1 else set()
    return out | ({"one-for-other"} if borne_by_other(kb, told)[1] else set())


_SAID_TO_BE = re.compile(
    r"\b(?:says?|said|swears?|swore|bets?|thinks?|claims?|claimed|insists?|reckons?|figures?|told me)"
    r"(?: (?:me|you|us|a beer|lunch|(?:\d+|an?|five|ten|twenty) (?:bucks?|dollars?|beers?)))? ?(?:that )?"
    r"(?:it'?s|it is|it was|this is|that'?s|that is|we had|i had|i got|we got) (?:an? |just an? |only an? )?$")
"""Words by which somebody holds a catch to be the fish that is named right behind them."""


def borne_by_other(kb: KnowledgeBase, told: Sequence[Mention]) -> tuple[str, tuple[Name, ...]]:
    """Of two names that a line tells the looser one, and its records as a name of what the other one means."""
    if len(told) != 2 or key(told[0].words) == key(told[1].words):
        return "", ()
    loose, other = sorted(told, key=lambda m: (-len(species_of(kb, m.ids)), m.kind == "group"))
    for one, two in ((loose, other), (other, loose)):
        shared = [t for t in species_of(kb, one.ids) if t in species_of(kb, two.ids) and not kb.taxon(t).is_hybrid]
        records = tuple(n for t in shared for n in names_like(kb, t, one.words)[:1] if n.kind in LOCAL_KINDS)
        if records:
            return one.words, records
    return "", ()


def scientific(kb: KnowledgeBase, mention: Mention) -> bool:
    """True for the scientific name of a species, its genus written out or cut to its first letter."""
    typed = key(mention.words).split()
    found = [t for i in mention.ids if (t := kb.find("taxon", i)) is not None]
    return len(typed) > 1 and any(key(t.scientific).split()[1:] == typed[1:] and
                                  key(t.scientific).startswith(typed[0][:1]) for t in found)


def nickname(kb: KnowledgeBase, mention: Mention) -> bool:
    """True for a group word that is neither the label nor the plural of the group (or the name of the taxon)."""
    found = [g for i in mention.ids if (g := kb.find("group", i) or kb.find("taxon", i)) is not None]
    labels = " ".join(
        key(text) for g in found for text in (g.label, getattr(g, "plural", ""), getattr(g, "scientific", ""))
    )
    known = {singular(w) for w in labels.split()}
    return bool(found) and not any(singular(w) in known for w in key(mention.words).split())


_ASKERS = word_set("how which what whats does do")
ENDING = 2
"""Words behind two names that end a line ("pike or muskie ya think")."""


_MINE = word_set("mine it its this my had was has")
_EACH_OF_THEM = re.compile(r"\beach\b(?! (?:jaw|side|cheek|scale|eye|fin|lobe)\b)", re.IGNORECASE)


def own_evidence(reading: Reading) -> bool:
    """True where two names are followed by what a fish in the hand shows ("bowfin vs burbot, mine has a whisker").

    What "both" or "they" show is told of the kinds named, not of a catch.
    """
    mentions = reading.of("taxon", "hybrid", "group")
    names = [m.end for m in mentions]
    told = [s for s in reading.seen if not s.retract and names and s.start >= max(names)]
    if {"both", "they", "theyre"} & set(reading.words) or _EACH_OF_THEM.search(reading.text):
        return False
    before = [s for s in reading.seen if not s.retract and names and s.end <= min(m.start for m in mentions)]
    if not told and len(before) < 2:
        return False
    if not told:
        ends = len(key(reading.text[max(names) :]).split()) <= ENDING
        return ends or not _ASKERS & set(reading.words)
    between = reading.text[max(names) : told[0].start]
    parted = bool(re.search(r"[,;:.?]|\s-+\s", between)) and not reading.text.rstrip().endswith("?")
    return parted or bool(_MINE & set(key(between).split()))
