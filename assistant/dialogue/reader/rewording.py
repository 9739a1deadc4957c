"""Lines put in fuller words where they leave out what they said just before (layer 4)."""

from __future__ import annotations

import re

from assistant.dialogue.reader.lexicon import Lexicon
from assistant.text import key, word_set

_HOW_MANY_MORE = re.compile(
    r"\b(?P<ask>how many) (?P<what>spines|rays|scales|bars|stripes|whiskers|pores)\b(?P<first>[^?.;]{0,40}?)"
    r"(?P<join>\s*(?:,|&|\band\b|\bn\b)\s*(?:and )?)(?:how many|many) (?=(?:on|in|below|under|underneath|behind|at)\b)",
    re.IGNORECASE)
_IS_IT_A = re.compile(
    r"^(?:so |ok |and )*(?:an? |the )?(?P<fish>[a-z' -]{3,30}?),? (?:is|was|are) (?:it|he|that|this|they) "
    r"(?:really |actually |even |truly )?(?P<kind>(?:an? )?(?:true |real )?[a-z ]{3,20}?)(?: at all)?\s*\??$",
    re.IGNORECASE)
_KIND_BEHIND = re.compile(
    r"\b(?P<kind>[a-z]{4,})s? (?P<one>[a-z]{3,}) (?P<join>or|n|and|vs|versus|&) (?P<two>[a-z]{3,})\b", re.IGNORECASE)
_NO_LESS = re.compile(r"\b(?:no|not) (?P<word>less|fewer|more) than(?= (?:\d|[a-z]+\b))", re.IGNORECASE)
_NOT_A = re.compile(
    r"\b(?:not|nary) (?:a|one|any)(?: single)? (?P<mark>scale|spot|speck|stripe|bar|whisker|mark|line|freckle|dot)s?\b",
    re.IGNORECASE)
_AT_ALL = re.compile(r"(?<=[a-z]) at all(?= (?:and|or|on|in|but|just|with)\b)", re.IGNORECASE)
_NOBODY_SAW = re.compile(
    r"\b(?:nobody|no one|none of (?:us|them|the \w+)|not one (?:\w+|of (?:us|them|the \w+))|neither of us) "
    r"(?:(?:could|can|ever) )?(?:saw|see|seen|found|find|noticed|notice|made out|make out) "
    r"(?:an?|any|one|the)(?: single)? (?=[a-z])", re.IGNORECASE)
_RED_AS = re.compile(
    r"\b(?P<colour>[a-z]+) as (?:an? |the )?(?P<like>[a-z]+(?: [a-z]+)?)(?=\s*(?:[,.;:?!]|$|and\b|with\b))",
    re.IGNORECASE)
_OTHER_FIN = re.compile(
    r"(?<=\bfin )(?P<between>[^.;!?]{0,60}?\b(?:top|bottom|upper|lower|back|front|hind)) one\b", re.IGNORECASE)
_JOINED_BUT = re.compile(
    r"\b(?P<what>joined|notched|scaled|spotted),? but (?=(?:only|just|barely|hardly|not (?:deep|much))\b)",
    re.IGNORECASE)
_DEVOID = re.compile(r"\b(?:devoid|destitute|bereft|void|bare|innocent) of (?:any |all )?(?=[a-z])", re.IGNORECASE)
_WANTING = re.compile(r"(?<=[a-z]) (?:wanting|obsolete)(?=\s*(?:[,.;:]|$))", re.IGNORECASE)
_A_BIT = re.compile(r"\b(?:just )?a (?:little |wee )?(?:bit|tad|touch) (?=[a-z]{4,}ed\b)", re.IGNORECASE)
_DOZEN = re.compile(
    r"\b(?P<half>half )?a dozen (?=(?:\w+ ){0,2}(?:spines?|rays?|bars?|stripes?|scales?|whiskers?|pores?|spots?)\b)",
    re.IGNORECASE)
_PRICKLES = re.compile(r"\b(?:prick(?:le|ler|er)s|pokeys|pokies|stickers)(?= (?:in|on|up)\b)", re.IGNORECASE)
_MORE_BELOW = re.compile(r"\b(?P<count>\w+) more (?:in|on) the one (?:underneath|below|beneath)\b", re.IGNORECASE)
_GAPE = re.compile(r"\bgape\b", re.IGNORECASE)
_RUFF = re.compile(r"\b(?P<what>tongue|scales|skin|feels) ruff\b", re.IGNORECASE)
_OF_IT = re.compile(r"\b(?P<place>base|edge|tip|tips|end|middle|rim|margin|corner|corners) of it\b", re.IGNORECASE)
_RUN_ON_LIKE = re.compile(r"\b(?P<fish>[a-z]{3,12})like\b", re.IGNORECASE)
_ROUND = re.compile(
    r"(?<!ring )(?<!rings )(?<!halo )(?<!halos )(?<!circle )(?<!circles )"
    r"\bround(?= (?:the|its?|his|her|their|them|em|each|every|that|my)\b)"
    r"|(?<=\bway )round\b(?! is\b)|(?<=\bgoes )round\b|(?<=\bgo )round\b|(?<=\bruns )round\b", re.IGNORECASE)
_IN_LINES = re.compile(
    r"\bin (?:an?|one|two|three|four|a few|a couple(?: of)?)(?: or (?:one|two|three|four|so))? "
    r"(?:(?:plain|short|simple|quick|easy) )*(?:sentences?|lines?)(?: or (?:two|three|so))?(?=\s*(?:[,.?!:]|$))",
    re.IGNORECASE)
_LATERAL = re.compile(
    r"(?P<the>^|(?<=[,.;:] )|(?<=\band )|\b(?:the|no) )line "
    r"(?:of pores(?! to\b)(?: (?:down|on|along) (?:its|the|his|each) (?:side|flank)s?)?|"
    r"(?:down|on|along) (?:its|the|his|her) (?:side|flank)(?= (?:dips|sags|bends|curves|drops|bows|swoops|comes in|"
    r"(?:is |was )?(?:broken|split|cut|in two|in pieces|straight|curved|complete|incomplete|whole|unbroken)|"
    r"stops|ends|continues|runs out|in two)))\b", re.IGNORECASE)
"""The line of pores, told by where it runs and how."""
_TELLING = re.compile(r"\b(?:what|whats|describe|tell|explain|say|give)\b", re.IGNORECASE)
NAMES = ("taxon", "hybrid")
KINDS = (*NAMES, "group")


def in_full(line: str, lexicon: Lexicon) -> str:
    """The line with what it leaves out or puts crookedly in full words.

    The line along the side is the lateral one, lines and sentences to be answered in are brief ones, dozens are
    numbers and prickles spines, what nobody saw is
    not there, a colour likened to a thing is that colour, "the bottom one" behind a fin is a fin, what is counted
    is said again ("how many spines on top n how many below"), two kinds have their names ("crappie black or
    white"), a likeness in one word is two ("perchlike"), an "it" is the part it stands for, "no less than" is a
    bound, and a question on the fish named before it is one ("pirate perch, is it a perch?").
    """
    line = _LATERAL.sub(r"\g<the>lateral line", _ROUND.sub("around", _GAPE.sub("jaws", line)))
    line = _IN_LINES.sub("briefly", line) if _TELLING.search(line) else line
    line = _RUN_ON_LIKE.sub(lambda m: f"{m['fish']}-like" if _names(m["fish"], KINDS, lexicon) else m.group(), line)
    line = _PRICKLES.sub("spines", line)
    line = _DOZEN.sub(lambda m: "6 " if m["half"] else "12 ", line)
    line = _MORE_BELOW.sub(r"\g<count> spines in the anal fin", line) if "spines" in line else line
    line = _A_BIT.sub("slightly ", line)
    line = _RUFF.sub(r"\g<what> rough", line)
    line = _NO_LESS.sub(lambda m: "at most" if m["word"].lower() == "more" else "at least", line)
    line = _NOBODY_SAW.sub("no ", _AT_ALL.sub("", line))
    line = _OTHER_FIN.sub(r"\g<between> fin", line)
    line = _JOINED_BUT.sub(r"\g<what> ", line)
    line = _WANTING.sub(" absent", _DEVOID.sub("without ", line))
    line = _RED_AS.sub(lambda found: _colour_alone(found, lexicon), line)
    line = _NOT_A.sub(r"no \g<mark>s", line)
    line = _OF_IT.sub(lambda found: _part_meant(found, lexicon), line)
    line = _KIND_BEHIND.sub(lambda found: _kinds_in_full(found, lexicon), line)
    line = _HOW_MANY_MORE.sub(r"\g<ask> \g<what>\g<first>\g<join>\g<ask> \g<what> ", line)
    found = _IS_IT_A.match(line.strip())
    if found is None or not _names(found["fish"], NAMES, lexicon) or not _names(found["kind"], KINDS, lexicon):
        return line
    name = found["fish"].strip()
    return f"is {'an' if name[0] in 'aeiou' else 'a'} {name} {found['kind'].strip()}?"


def _colour_alone(found: re.Match[str], lexicon: Lexicon) -> str:
    """A colour without what it is likened to ("eyes red as a stop light")."""
    likened = any(lexicon.names_part(w) for w in found["like"].lower().split())
    return found["colour"] if lexicon.head(found["colour"].lower()) in lexicon.tints and not likened else found.group()


def _part_meant(found: re.Match[str], lexicon: Lexicon) -> str:
    """The place on a part with the part named again ("round tail, black bar at the base of it")."""
    words = re.findall(r"[a-z]+", found.string[: found.start()].lower())
    part = next((w for w in reversed(words) if w in PARTS and lexicon.is_part(w)), "")
    return f"{found['place']} of the {part}" if part else found.group()


PARTS = word_set("tail fin fins dorsal ear flap snout jaw lip cheek head")
"""Parts that have a base, an edge or a tip."""


def _kinds_in_full(found: re.Match[str], lexicon: Lexicon) -> str:
    """Two kinds told behind the word for both, each with it ("crappie black or white")."""
    kind, one, two = (found[g].lower() for g in ("kind", "one", "two"))
    kind = kind if lexicon.known(kind) else next(iter(lexicon.mend(kind)), kind)
    before = key(found.string[: found.start()]).split()[-1:]
    longer = any(_names(f"{w} {kind}", NAMES, lexicon) for w in before)
    both = not longer and all(_names(f"{w} {kind}", NAMES, lexicon) for w in (one, two))
    return f"{one} {kind} {found['join']} {two} {kind}" if both else found.group()


def _names(words: str, kinds: tuple[str, ...], lexicon: Lexicon) -> bool:
    """True for words that are the whole name of a fish or of kinds, but for an article."""
    plain = re.sub(r"^(?:an? )?(?:true |real )?", "", key(words))
    return any(e[0] in kinds and e[2] != "ambiguous" for w in (plain, f"{plain}s") for e in lexicon.spoken(w))
