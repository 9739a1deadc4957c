"""Who eats whom in a line: the fish that eats stands before the verb, what it eats after it (layer 4)."""

from __future__ import annotations

import re

from assistant.dialogue.reader.reading import Mention, Reading

_VERB = (r"(?:eat|eats|eating|eatin|prey on|preys on|feed on|feeds on|hunt|hunts|swallow|swallows|"
         r"suck|sucks|drink|drinks)")
_HOW = r"(?:\s+(?:usually|mostly|mainly|really|also|ever|often|even|just|only|still|likes? to|love to))*"
_EATS = re.compile(rf"^{_HOW}\s+{_VERB}\b(?P<food>.*)$")
_PRONOUN = re.compile(rf"\b(?:they|it|he|she|these|those|them)\b{_HOW}\s+{_VERB}\b(?P<food>.*)$")
_WHO = re.compile(rf"\b(?:what|which|wich|any|name|list)\b[\w\s]{{0,12}}\bfish(?:es)?{_HOW}\s+{_VERB}\b(?P<food>.*)$")
_WHERE = re.compile(r"\s+(?:in|at|from|around|near|when|during|and|or|with)\b")
_NOTHING = re.compile(
    r"^[\s\w]*\b(?:people|persons?|humans?|man|men|swimmers?|kids?|children|me|us|you)\b"
    r"|^[\s?.!]*(?:(?:most|mostly|usually|a lot|much|anything|the most|best|well)?[\s?.!]*$"
    r"|(?:it|them|this|that|these|those|one)\s*(?:$|[?.!,;]|(?:raw|fried|cooked|or|and|anyway|anyhow|now|too)\b)"
    r"|(?:(?:just|about|as|pretty|real|really|so)\s+)*(?:good|great|fine|well|better|nice|nicely|poorly|bad)\b)"
)
"""What stands behind the verb where no food is told: people, nothing, the fish itself on the table, or its taste."""
FISH = ("taxon", "hybrid", "group")
_EATERS = re.compile(
    r"^\W*(?:(?:and|so|ok|but|hey|also|then)\W+)*(?:what|which|wich|whatever)(?: (?:other|all|kinds?|sorts?|of|else|"
    r"big|bigger|larger|fish|fishes|animals?|birds?|predators?|things?|creatures?|critters?|would|will|might|"
    r"likes? to))*"
    rf" {_VERB}\W+(?:(?:the|a|an|any|all|young|baby|little|small|adult|grown|these|those|live|wild|kinds?|of)\W+)*$")
_HAVING = re.compile(r"\b(?:predators?|enemies|enemy) (?:of|for|to)(?: (?:the|a|an|any|young|baby|adult))*\W+$")
_OWNED = re.compile(
    r"^(?:'s|s|')?(?:\s+\w+)?\s+(?:predators?|enemies|enemy)\b|^\s+(?:get |gets )?(?:eaten|hunted) by\b")


def food_told(reading: Reading) -> str:
    """What stands after the verb where a fish (or a pronoun) is said or asked to eat something; empty where none."""
    text = reading.text.lower()
    for m in reading.of(*FISH):
        found = _EATS.search(text[m.end :])
        if found and not _NOTHING.match(found["food"]):
            return found["food"].strip(" ?.!")
    found = _PRONOUN.search(text)
    if found and not _NOTHING.match(found["food"]):
        return found["food"].strip(" ?.!")
    return ""


def who_eats(reading: Reading) -> str:
    """The food of "what fish eat crayfish in Ohio", where the eaters are asked for; empty where they are not."""
    found = _WHO.search(reading.text.lower())
    if found is None or _NOTHING.match(found["food"]):
        return ""
    return _WHERE.split(found["food"], maxsplit=1)[0].strip(" ?.!")


def eaten_by(reading: Reading) -> bool:
    """True for "what eats bluegill", "predators of walleye": what feeds on the fish named is asked for.

    >>> bool(_EATERS.match("what fish eats the ")), bool(_EATERS.match("what do "))
    (True, False)
    """
    text = reading.text.lower()
    return any(_EATERS.match(text[: m.start]) or _HAVING.search(text[: m.start]) or _OWNED.match(text[m.end :])
               for m in reading.of(*FISH))


def eaters(reading: Reading) -> tuple[Mention, ...]:
    """The fishes that stand before the verb, where others stand after it as food."""
    text = reading.text.lower()
    named = sorted(reading.of(*FISH), key=lambda m: m.start)
    for i, m in enumerate(named):
        if _EATS.search(text[m.end :]):
            return tuple(named[: i + 1])
    return ()


def prey(reading: Reading) -> tuple[Mention, ...]:
    """The fishes that stand after the verb."""
    food = food_told(reading)
    at = len(reading.text.rstrip(" ?.!")) - len(food)
    return tuple(m for m in reading.of(*FISH) if food and m.start >= at)
