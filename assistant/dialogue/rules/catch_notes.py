"""Circumstances said beside a catch: age, ice, side, licences, a dead or deep-hooked fish, doubt (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from assistant.dialogue.rules.catch_measures import count_of, read_times
from assistant.dialogue.rules.catch_query import Circumstances

ResolvePlace = Callable[[str], tuple[str, ...]]
ADULT, CHILD = 18, 10
"""Ages taken for "an adult" and "a child" where no number is given."""

_FLAGS: tuple[tuple[str, dict[str, object]], ...] = (
    (r"\b(?:caught |fishing )?(?:through|on|under) (?:the )?ice\b|\bice[- ]fishing\b", {"on_ice": True}),
    (r"\b(?:in |on )?open[- ]water\b|\bfrom (?:a|the|my) (?:boat|canoe|kayak)\b|\bno ice\b",
     {"on_ice": False}),
    (r"\b(?:it is |it's |it was |is |was )?(?:already |now )?(?:dead|dying|belly[- ]up|not going to make it|"
     r"won't live)\b(?: already)?", {"dead": True}),
    (r"\b(?:is |was )?(?:deep(?:ly)?[- ]hooked|hooked deep(?:ly)?|gut[- ]hooked|swallowed the (?:hook|bait|lure))\b",
     {"deep_hooked": True}),
    (r"\b(?:with )?(?:a |its |the )?(?:torn|ragged|split|worn|frayed|damaged|bitten|broken) tail(?: fin)?\b"
     r"|\b(?:the |its )?tail(?: fin)? (?:is |was )?(?:torn|ragged|split|worn|frayed|damaged|bitten off|broken)\b",
     {"tail_torn": True}),
    (r"\b(?:i |we )?(?:can ?not|can't|could not|couldn't) (?:tell|say|be sure)(?: which| them apart| what it is)?\b"
     r"|\b(?:i'm |i am |we are |we're )?(?:not sure|unsure|uncertain|no idea)(?: which(?: one)?| what it is)?\b"
     r"|\bsame doubts?\b|\bor so i think\b|\bi don't know which\b|\bin doubt\b|\bdoubtful\b", {"doubt": True}),
    (r"\b(?:my|our|a|his|her|the)?\s*(?:own\s+)?(?:private|farm|backyard|golf[- ]course|neighbou?r's|stock)\s+"
     r"(?:pond|lake|water|tank)\b|\b(?:my|our) (?:own )?pond\b", {"private": True}),
)
_LICENCES = re.compile(
    r"\b(?:with |holding |have |i have )?(?:both|either|a|my|one|no|two|the)?\s*(?:[\w-]+ )?(?:side'?s? )?licen[cs]es?"
    r"(?: (?:only|of both|from both(?: sides)?|held))?\b", re.IGNORECASE)
_AGE = re.compile(
    r"\b(?:(?:the |an |our )?(?:angler|child|kid|boy|girl|son|daughter|nephew|niece|grandson|granddaughter|he|she|i|"
    r"i'm|who|is|am|he's|she's)\s+)*(?:(?:is|am|'m|are)\s+)?(?:aged?|of age)\s*(?P<a>\d{1,2}|[a-z]+)\b"
    r"|\b(?:(?:the |an |my |our )?(?:angler|child|kid|boy|girl|son|daughter|nephew|niece|grandson|granddaughter)"
    r"(?: is| am|'s| of)?|(?:i am|i'?m|s?he(?: is|'?s))),?\s+(?P<b>\d{1,2})(?:\s+years?(?: old)?| y/?o)?\b"
    r"(?!\s*(?:cm|in|mm|kept))"
    r"|\b(?P<c>\d{1,2}|[a-z]+)[ -]?(?:years?[ -]?old|yr[ -]?old|y/?o)(?: angler| child| kid| boy| girl)?\b",
    re.IGNORECASE)
_ADULT = re.compile(r"\b(?:an |the )?(?:adults?|grown-?ups?|parents?|father|mother|dad|mum|mom)"
                    r"(?: (?:is |was )?(?:angler|fishing|holding the rod|holds the rod))?\b", re.IGNORECASE)
_ROD = re.compile(r"\b(?:with )?(?:an? |the )?(?:adult|grown-?up|parent|father|mother|dad|mum|mom) "
                  r"(?:is |was )?(?:holding|holds|held) the rod\b", re.IGNORECASE)
_CHILD = re.compile(r"\b(?:a |the |my )?(?:child|children|kids?|boys?|girls?)"
                    r"(?: (?:is )?(?:fishing|angler|holding the rod))?\b", re.IGNORECASE)
_SIDE_UNKNOWN = re.compile(
    r"\b(?:which |the )?side (?:is |was )?(?:not known|unknown|not sure|unclear|uncertain)\b|\bunknown side\b"
    r"|\b(?:not sure|don't know|do not know|unsure|no idea)(?: of)? (?:which|what|the) side\b"
    r"|\b(?:somewhere )?(?:on|near|by) the (?:line|border|middle)\b", re.IGNORECASE)
_SIDE = re.compile(r"\b(?:on |from |in )?(?:the )?(?P<side>[\w-]+(?: [\w-]+)?) (?:side|waters|half|shore|bank)\b",
                   re.IGNORECASE)
_AWAY = re.compile(
    r"\b(?:(?:an?|the|its) )?(?:small )?(?:inlet|tributary|feeder(?: creek| stream)?|outlet|stream|brook|creek)"
    r"(?: \w+ing)?(?: (?:of|into|to|from|above|for|at))+ (?:the )?(?=[A-Z\w])|\b(?:inlet|tributary|feeder creek)\b",
    re.IGNORECASE)


def read_notes(text: str, resolve_place: ResolvePlace) -> tuple[Circumstances, str]:
    """The circumstances that a text tells and the text without them."""
    about = Circumstances()
    times, text = read_times(text)
    about, text = _age(replace(about, moments=times), text)
    text, unknown = _SIDE_UNKNOWN.subn(" ", text)
    for pattern, values in _FLAGS:
        if re.search(pattern, text, re.IGNORECASE):
            about = replace(about, **values)  # type: ignore[arg-type]
            text = re.sub(pattern, " ", text, flags=re.IGNORECASE)
    licences = _LICENCES.findall(text)
    if licences:
        about = replace(about, licences=tuple(x.strip().lower() for x in licences if x.strip()))
        text = _LICENCES.sub(" ", text)
    if not unknown:
        about, text = _side(about, text, resolve_place)
    away = _AWAY.search(text)
    if away:
        about, text = replace(about, away=True), text[:away.start()] + " " + text[away.end():]
    return about, text


def _age(about: Circumstances, text: str) -> tuple[Circumstances, str]:
    """The angler's age: whoever holds the rod, else the age said, else that of "an adult" or "a child"."""
    rod = _ROD.search(text)
    if rod:
        return replace(about, age=ADULT), _CHILD.sub(" ", _AGE.sub(" ", text[:rod.start()] + " " + text[rod.end():]))
    for match in _AGE.finditer(text):
        years = count_of(match["a"] or match["b"] or match["c"])
        if years is not None and 1 < years < 100:
            return replace(about, age=years), text[:match.start()] + " " + text[match.end():]
    for pattern, years in ((_ADULT, ADULT), (_CHILD, CHILD)):
        match_word = pattern.search(text)
        if match_word:
            rest = _CHILD.sub(" ", pattern.sub(" ", text))
            return replace(about, age=years), rest
    return about, text


def _side(about: Circumstances, text: str, resolve_place: ResolvePlace) -> tuple[Circumstances, str]:
    """"HRW side", "(Quillander side)" or a jurisdiction in brackets after the water."""
    for match in _SIDE.finditer(text):
        words = match["side"].split()
        for said in (match["side"], words[-1]):
            found = resolve_place(said)
            if len(found) == 1:
                start = match.end() - len(match[0]) + match[0].lower().index(said.lower())
                cut = match.start() if said == match["side"] else start
                return replace(about, side=found[0]), text[:cut] + " " + text[match.end():]
    for match in re.finditer(r"\(([^()]*)\)", text):
        found = resolve_place(match[1].strip())
        if len(found) == 1:
            return replace(about, side=found[0]), text[:match.start()] + text[match.end():]
    return about, text
