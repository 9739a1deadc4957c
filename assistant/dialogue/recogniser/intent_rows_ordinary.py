"""Rows of the recogniser table for ordinary questions that a few words make plain: scores from 93 (layer 4).

They stand whatever the words of a line lean to, as those of ``intent_rows_sure`` do: what a water holds, what a fish is
called in the rules, whether it may live after it came up from the deep, on what ground it spawns.
"""

from __future__ import annotations

from assistant.dialogue.recogniser.intent_row import Row

ORDINARY_ROWS: tuple[Row, ...] = (
    # Fishes of a kind of water, and of a water that the base does not know.
    Row("list", 93, ("asks-what|asks-name|which-group", "may-catch", "asks-can|might-do", "place",
                     "waters|unknown-place|life-part",
                     "!fish|seen|keep|rules|rules-act|rules-open|len|wt|date|tackle-word|water|my-catch|hurt|outside|"
                     "held-seen|asks-how|count|eat|fishing-licence|pointing|bait-only|bigger-than|hook-numbers"),
        ("What might families catch in a Massachusetts town pond?", "what can kids catch in a pond in ohio")),
    Row("list", 93, ("whats-in", "place", "waters|unknown-place|life-part",
                     "!fish|seen|keep|rules|rules-act|rules-open|len|wt|tackle|tackle-word|water|asks-name|my-catch|hurt|"
                     "outside|held-seen|asks-how|eat"),
        ("whats in a typical pond in ohio", "what swims in a Vermont creek")),
    Row("range", 93, ("unknown-place", "yes-no", "one-fish", "no-ask", "waters", "short10",
                      "!seen|len|wt|date|water|tackle-word|bite|fishing-time|forecast|life-part|eat|edible|rules-act|"
                      "rules-open|unlawful|story|cross|two-fish|temp|ice-safety|bait-only|outside|asks-can"),
        ("are round gobies in moosehead lake",)),
    # How it stands as a species at risk.
    Row("habitat", 93, ("at-risk", "fish|held-fish", "short10",
                        "!seen|list|which-group|water|hybrid|rules-act|keep|len|wt|quiz|key|hurt|term-word|sources|"
                        "contrast|names|fish-word"),
        ("what is a walleye / is it endangered", "conservation status of the lake sturgeon",
         "is the spotted gar threatened in Ontario")),
    # After the deep.
    Row("handling", 93, ("up-from", "len", "letting-go|keep|asks-can|handling", "fish|held-fish|fishy|held-last",
                         "!seen|place|water|held-place|rules-act|quiz|key|contrast|tackle-word|how-deep|asks-name"),
        ("brought a perch up from 45 ft, put back or keep",)),
    # On what ground, and of what parents.
    Row("habitat", 93, ("after-spawning", "on-what", "short6", "held-fish",
                        "!fish|seen|tackle|tackle-word|bite|rules|place|water|eat|names|sources|hurt|asks-how"),
        ("when do bluegill spawn / on what", "when do brook trout spawn / over what")),
    Row("hybrids", 94, ("makes-cross", "cross|held-cross", "short6|asks-what|which-group|what-is",
                        "!seen|rules|rules-act|keep|len|wt|place|water|quiz|key|hurt|tackle|tackle-word|life-part|"
                        "habitat|size|weight|two-fish|names|sources|eat|term-word|contrast"),
        ("tiger musky 130 cm, harrowelt, july / what two fish make one anyway", "whats a splake made from")),
    # What a fish is called where it counts.
    Row("names", 95, ("book-name", "local-name|unclear|group-nickname",
                      "what-is|what-is-a|asks-what|names|names-weak|called-next|names-of",
                      "!seen|len|wt|place|water|two-fish|hurt|quiz|key|sources|keep|rules-open|asks-can|size|contrast"),
        ("grandpa's jackfish is what on my licence", "what would the rulebook call a speckled perch")),
    # With the sources of what was said, and why it is not another fish.
    Row("sources", 93, ("with-sources", "after-list|after-describe|after-contrast|after-habitat|after-range|after-size",
                        "short6", "no-ask", "!fish|seen|place|water|count|asked|asked-quiz|asked-key|len|wt|date"),
        ("centrarchids in the base with five or more anal spines / with sources",)),
    Row("why", 93, ("why-not", "held-seen", "like|fish", "short10",
                    "!seen|rules|keep|place|water|quiz|key|contrast|two-fish|len|wt|hurt|asks-how|asks-can|names"),
        ("bass, jaw goes well past the eye / so not a smallie",)),
    # A name to give.
    Row("out-of-scope", 93, ("good-name",
                             "!fish|seen|place|water|term-word|part|hurt|quiz|key|rules|list|story|outside"),
        ("whats a good name for my kids pet hamster", "good name for my new fishing boat")),
)
