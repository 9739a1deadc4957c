"""Rows of the recogniser table for what is asked beside the fish itself: scores from 93 (layer 4).

How a well is aired, what becomes of a fish that dies, which record an answer rests on, the same again in plainer words,
a word of the trade set against another. They stand whatever the words of a line lean to.
"""

from __future__ import annotations

from assistant.dialogue.recogniser.intent_row import Row

FURTHER_ROWS: tuple[Row, ...] = (
    # The same again in plainer words.
    Row("@same", 95, ("put-plainly", "held-fish", "short10",
                      "after-contrast|after-describe|after-identify|after-hybrids|after-range|after-habitat",
                      "!fish|seen|term-word|part|quiz|key|names|rules|hurt|quoted-term|sheet|cant-agree"),
        ("how do i tell a warmouth from a rockbass / in plain words for a ten year old",
         "describe a bowfin / put it simply for my kids")),
    # Crosses of a group, with something that is held of crosses alone.
    Row("hybrids", 95, ("hybrid-word", "hybrid-part", "group|one-fish", "which-group|asks-what|list|of-fish",
                        "!seen|held-seen|contrast|quiz|key|rules|place|water|size|weight|why|story|sources|two-fish"),
        ("Which Lepomis hybrids are held and with what fertility?",)),
    # Airing a well, and a fish that dies though it was to go back.
    Row("handling", 94, ("air-gear", "handling|term-word|in-bucket|live|stay-in",
                         "!seen|quiz|key|pet|tackle-word|asks-name|rules-act"),
        ("does livewell need a pump", "should i run the aerator in the livewell all day")),
    Row("handling", 94, ("dies-anyway", "!seen|quiz|key|pet|place|water|held-place|sources|held-water|after-rules"),
        ("what if it dies anyway", "what if a short fish dies on me")),
    # Spots wanted to the yard, which nobody's base holds.
    Row("out-of-scope", 95, ("pinned", "asks-where", "waters|on-my-fish", "fish",
                             "!seen|quiz|key|hurt|life-part|nests|term|rules"),
        ("where exactly is the secret brookie hole on my creek",)),
    Row("out-of-scope", 95, ("secret-spot", "on-my-fish|of-fish", "fish", "!seen|quiz|key|hurt|sources|term"),
        ("lat long of walleye in my lake",)),
    # The record behind an answer, and how one is entered.
    Row("sources", 95, ("of-sources|leans-sources", "self-record|values-of", "my-answer",
                        "!fish|seen|quiz|key|hurt|rules"),
        ("bluegill max length / which statement got used for the last answer",
         "which record did the answer rest on")),
    # A fish that is not the one of the same name outside the fresh waters, a word set against another.
    Row("names", 95, ("not-name", "outside-fish", "local-name|unclear", "short6", "!seen|quiz|key|rules|like|hurt"),
        ("dogfish not the shark",)),
    Row("term", 94, ("sameness|contrast|versus|vs", "term-word",
                     "!fish|group|seen|hybrid|held-seen|quiz|key|rules|rules-act|measure|story"),
        ("whats the difference between a scientific name and a common one",
         "difference between a gill raker and a gill arch")),
    Row("term", 94, ("term-word", "explain|called-next", "old-sheet", "!fish|seen|quiz|key|why|list"),
        ("limit sheet says aggregate, secretary wont explain",)),
    Row("term", 95, ("one-word", "question-mark", "part", "!held-last|held-fish|fish|term-word|asked|quiz|key"),
        ("barbles?",)),
    # What was seen of a fish that is being named, and told without a question.
    Row("identify", 95, ("after-identify", "held-seen", "seen", "no-ask", "short6", "have-verb",
                         "!fish|question-mark|term|what-is|asks-do|asks-what|asks-how|retract|quiz|key|rules|hurt"),
        ("this a crappie? 6 spines / got bars",)),
    # Why its colours went, where it was kept.
    Row("why", 95, ("why", "fades", "fish|held-fish|fishy", "!rules|quiz|key|hurt|seen-many"),
        ("Why did our class bluegill lose its colours in the bucket?",)),
)
