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
    Row("list", 93, ("asks-what|asks-name|which-group", "may-catch", "asks-can|might-do", "place", "group",
                     "waters|unknown-place|life-part",
                     "!taxon|seen|keep|rules|rules-act|rules-open|len|wt|date|tackle-word|water|my-catch|hurt|outside|"
                     "held-seen|asks-how|count|eat|fishing-licence|pointing|bait-only|bigger-than|hook-numbers|bite"),
        ("Which little sunfishes might my club net in a Maryland swamp ditch?",
         "What small catfishes could pupils dip from a Georgia slough?")),
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
    Row("hybrids", 93, ("by-look", "held-cross", "yes-no|asks-can|how-sure|question-mark",
                        "!fish|seen|rules|quiz|key|hurt|place|water|names|size|weight"),
        ("bluegill crossed w a pumpkinseed, is that a thing / so could a biologist be sure just eyeballing it?",)),
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
    # What it comes to: a good one, long enough, one fish or several, and may it go back.
    Row("size", 94, ("good-or-not", "len", "!rules|rules-act|water|contrast|quiz|key|wt|hurt|long-enough"),
        ('22 1/2" brown trout, good one or ordinary', "black crappie at 31 cm, brag or no")),
    Row("rules", 93, ("long-enough", "len", "fish|held-fish", "!seen|contrast|quiz|key|hurt|size|term|tackle|story"),
        ("spotted bass twelve n a half, long enough?", "walleye 14 in, legal or not")),
    Row("names", 94, ("one-kind-or-more", "fish|unclear|local-name", "!rules|quiz|key|hurt|contrast|held-seen|hybrid"),
        ("sand bass, stripe, silver bass.. one fish or three",)),
    Row("contrast", 93, ("sort-me", "two-kinds|two-fish", "!rules|quiz|key|hurt|place|size|weight|names|list|order"),
        ("sort me a mixed stringer: white bass, hybrid, striper",)),
    Row("rules", 96, ("back-in", "held-seen|held-fish|fish", "place|water|waters|held-place|short6",
                      "!seen|hurt|quiz|key|how-deep|up-from|asks-how|handling|tackle|after-handling|pressure"),
        ("long eely thing, bottom fin long, no whiskers / its a philly canal, can it go back in",)),
    Row("sources", 95, ("cant-agree", "taken-from", "counted|part|one-fish", "!rules|water|story|quiz|key|place"),
        ("Two dorsal spine ranges for black crappie disagree. Where did each come from?",)),
    Row("sources", 94, ("cant-agree", "after-sources", "short6", "!fish|seen|rules|place|water|asked-quiz|asked-key"),
        ("what is held for the redbreast / from which sources / do any of them disagree?",)),
    Row("sources", 95, ("taken-from", "after-key|asked-key", "!rules|water|story|place|names"),
        ("key for bluegill, pumpkinseed and black crappie / where was the crappie step taken from?",)),
    # Where it is recorded, all that is held, where two counts meet.
    Row("range", 94, ("native-record", "one-fish|held-fish",
                      "!seen|rules|water|story|quiz|key|sources|contrast|two-fish"),
        ("Provinces with a native record for Lepomis peltastes",)),
    Row("describe", 95, ("full-record", "one-fish", "!seen|rules|water|story|quiz|key|part|contrast|two-fish|sources"),
        ("Full record for Archoplites interruptus", "everything held on the flier")),
    Row("contrast", 94, ("overlaps", "two-fish|held-two", "part|counted|short6|held-two",
                         "!seen|rules|water|story|quiz|key|place|habitat|hybrid"),
        ("Where do P. annularis and P. nigromaculatus overlap in dorsal spines?",)),
    Row("describe", 95, ("counts-of", "one-fish|unclear|held-fish", "short10",
                         "!rules|water|story|quiz|key|contrast|sources|place|hurt|held-seen|two-fish|len|wt|plausible|"
                         "unheld|gaps|why|asks-name|count"),
        ("Enneacanthus chaetodon, counts held", "describe the flier / every count held",
         "scale and ray counts of the warmouth")),
    Row("describe", 94, ("values-of", "one-fish|unclear", "identify-part", "list|held-word|short10",
                         "!rules|water|story|quiz|key|contrast|sources|place|hurt|held-seen|two-fish|len|wt|plausible|"
                         "unheld|gaps|lacking|without|denying|kinds-held|which-group|why|in-order|asks-name"),
        ("list tail-shape values for Acantharchus pomotis", "Lepomis gulosus: jaw length values")),
    # One mark that settles it, which of two has a mark, what somebody holds of it, how far colour goes.
    Row("contrast", 94, ("one-look", "two-fish|two-kinds",
                         "!held-seen|seen|story|rules|hurt|quiz|key|hybrid|place|water"),
        ("pike n musky, give me the one spot to look", "gar or pickerel, one place to check")),
    Row("contrast", 94, ("two-kinds", "versus", "which-of|who-has", "have-verb|who-has", "seen|part",
                         "!held-seen|story|rules|asks-name|hybrid|quiz|key|my-catch|size|weight|place|water|bigger-than|"
                         "heavier-than"),
        ("bowfin or snakehead which ones got the short belly fin",
         "sauger or walleye which ones have the dots on the back fin")),
    Row("contrast", 95, ("two-fish", "versus", "hearsay", "part|seen",
                         "!held-seen|story|my-catch|tells-it|rules|hybrid|quiz|key|size|weight|water|len|wt|tackle|"
                         "handling"),
        ("blue cat or channel? buddy swears no spots = blue",)),
    Row("why", 93, ("by-colour", "why|asks-can|asks-do|asks-how|question",
                    "!seen|held-seen|rules|quiz|key|hurt|tackle-word|story|two-fish|two-kinds|contrast"),
        ("how come nobody trusts color on a sunfish", "can i go by colour on a bass")),
    Row("why", 93, ("by-colour", "why", "!seen|held-seen|rules|quiz|key|hurt|tackle-word|story|two-fish|two-kinds"),
        ("why is color no good for telling sunfish",)),
    Row("why", 93, ("why", "seen", "fish", "have-verb", "short10",
                    "!held-seen|story|rules|hurt|quiz|key|place|water|tackle|tackle-word|bite|handling|hybrid|names|"
                    "prove|how-sure|why-not|two-fish|not-biting|self-asked|eat"),
        ("Why do crappies have such a deep body?",)),
    # The tape: to the fork or to the tip.
    Row("rules", 95, ("fork-told", "tip-told", "asks-name|versus|disputed|hearsay|asks-who|asks-do",
                      "!hurt|quiz|key|what-is|weight|story|held-seen|fish|term|term-diff|sameness|len"),
        ("my club says tip of the tail, the state says fork. which is it",)),
    # One of a kind just spoken of.
    Row("describe", 94, ("know-one", "held-fish", "short10", "after-names|after-describe|after-size|after-range|"
                         "after-habitat|after-hybrids",
                         "!fish|seen|held-seen|quiz|key|rules|two-terms|which-of|sex|stage|how-sure"),
        ("what is a robin in North Carolina / how would i know one",)),
    Row("size", 94, ("the-one", "size", "asking-form", "held-two", "!seen-many|rules|weight|story|quiz|key|place|water|"
                     "len|wt|held-seen|contrast|two-fish|life-part"),
        ("Which sunfishes are in Ontario? / And how long does the longear one get?",)),
    # A picture that was sent.
    Row("out-of-scope", 94, ("picture", "self-sent", "!fish|seen|held-seen|hurt|quiz|key|rules|tackle|handling|like|"
                             "lesson-print|on-paper|release|letting-go"),
        ("sent u the pic whats that fish", "attached a picture, name it please")),
    # A walk through a key left.
    Row("describe", 98, ("asked-key", "leave-walk", "one-fish", "what-is|what-is-a|asks-what|describe", "short10",
                         "!seen|quiz|rules"),
        ("walk me through a key of sunfishes / forget the key, whats a flier",)),
    Row("undo", 98, ("asked-key", "leave-walk", "short6", "!fish|seen|quiz|rules|part|question-mark"),
        ("walk me through naming a fish / ah forget it",)),
    Row("out-of-scope", 94, ("who-wins", "!seen|held-seen|rules|water|quiz|key|hurt|place|names|asked|asks-how|"
                             "after-contrast"),
        ("who wins, gator or a 50 inch musky",)),
    Row("describe", 95, ("all-taxa", "part|counted", "group|taxon",
                         "!rules|water|story|quiz|key|contrast|sources|place|hurt"),
        ("Morone: anal soft rays, all taxa",)),
    # Held in a bucket, hung by the jaw, what fly, named step by step.
    Row("handling", 94, ("in-bucket", "asks-how|asks-can|question", "fish|held-fish|fishy",
                         "!rules|rules-act|keep|water|place|quiz|key|seen|asks-many|count"),
        ("How long can pupils watch a bluegill in a bucket before it goes back?",)),
    Row("handling", 95, ("hung-up", "fish|held-fish|fishy", "!rules|water|place|quiz|key|seen|contrast|two-fish"),
        ("bad to hang a big largemouth off its jaw?", "ok to hang a fish by its lip for a photo")),
    Row("next-question", 94, ("step-by-step", "no-ask|fishy|pointing",
                              "!group|taxon|seen|rules|tackle|handling|hurt|quiz|key-word|lesson-cards|term|release"),
        ("help me work out my fish one step at a time",)),
    Row("help", 95, ("get-rows", "!seen|rules|quiz|key|hurt|tackle|handling|story"),
        ("How do I get the bullhead rows out as a sheet?",)),
    Row("tackle", 93, ("which-lure", "fish|held-fish|fishy",
                       "!seen|rules|rules-act|asks-name|contrast|quiz|key|hurt|names|habitat|eat|caught-on"),
        ("cutts in a wyoming high lake, which fly", "what bait for channel cat in a pond",
         "what are walleye biting on right now")),
    Row("weight", 94, ("no-scale", "len", "fish|held-fish", "!wt|rules|rules-act|quiz|key|hurt|asks-name"),
        ("smallmouth, seventeen n a half, forgot the scale",)),
    # The work of a class.
    Row("out-of-scope", 94, ("grade-work", "!seen|held-seen|fish|hurt|asked-quiz|asked-key|place|rules|len|wt"),
        ("Please grade my students' spelling tests.", "Could you grade thirty worksheets if I paste them in?")),
    # A name to give.
    Row("out-of-scope", 93, ("good-name",
                             "!fish|seen|place|water|term-word|part|hurt|quiz|key|rules|list|story|outside"),
        ("whats a good name for my kids pet hamster", "good name for my new fishing boat")),
    # What a name means, who of two is right, where a range ends.
    Row("names", 94, ("means-what", "local-name|unclear|group-nickname",
                      "!seen|held-seen|len|wt|rules|rules-act|water|two-fish|hurt|quiz|key|hybrid|contrast|size|habitat|"
                      "eat|story|cooking|list|handling|weight|units-us|units-metric"),
        ("dad calls em stumpknockers, meaning what", "my boss wants goggle-eyes. what fish is that",
         "gramps fishes for horned pout, whats that")),
    Row("names", 93, ("after-names", "local-name|unclear", "what-about|no-ask", "short6",
                      "!seen|two-fish|asks-can|asks-where|range|len|wt|water|asks-do|yes-no"),
        ("what is a stumpknocker in georgia / and a speckled trout in ontario",)),
    Row("contrast", 94, ("outside-fish", "one-fish", "vs|versus|contrast", "short10",
                         "!seen|held-seen|story|rules|size|weight|habitat|range|place|water|eat|tackle|handling|hurt|"
                         "quiz|key|names|asks-where|asks-when"),
        ("walleye or zander", "how do I tell a bowfin from an arapaima")),
    Row("contrast", 94, ("settle-ask", "two-kinds|two-fish",
                         "!seen|held-seen|keep|rules-act|water|len|wt|hybrid|quiz|key|size|weight|eat|habitat|overlap|"
                         "unclear|local-name|group-nickname|sameness"),
        ("warden wrote green sunfish on the ticket, I say warmouth. Settle it",
         "my card says spotted bass and the ranger says largemouth, who's right")),
    Row("contrast", 94, ("settle-ask|disputed", "one-fish", "like", "two-mentions",
                         "!seen|held-seen|rules-open|rules-act|keep|water|len|wt|hybrid|quiz|key|size|weight|eat|habitat|"
                         "overlap|names-word|counted-together"),
        ("the officer wrote my white bass down as a striper, what proves it",
         "warden put my smallie down as a largemouth. whats the proof")),
    Row("rules", 94, ("counted-together", "fish", "disputed|hearsay",
                      "!seen|quiz|key|contrast|story|names|hybrid"),
        ("warden says walleye and sauger count together, true?",)),
    Row("contrast", 93, ("young-see", "two-fish|two-kinds",
                         "!seen|held-seen|rules|rules-act|quiz|key|hybrid|size|weight|eat|habitat|tackle|handling|water"),
        ("bluegill and pumpkinseed. what would a kid notice",
         "for a badge sheet: walleye and sauger. what can a ten-year-old see?")),
    Row("identify", 93, ("disputed", "one-fish", "seen",
                         "!held-seen|two-kinds|two-fish|contrast|vs|rules|asks-how|list|sources|quiz|key|hybrid|story|like|"
                         "weight|wt|size|always"),
        ("brother swears its a pumpkinseed. no red on the ear, dark blotch at the back of the top fin",)),
    Row("range", 93, ("how-far", "fish|held-fish",
                      "!seen|keep|water|hybrid|quiz|key|tackle|how-deep|len|contrast|names|size|bite"),
        ("how far west do fliers go", "what is the edge of its range for the redbreast")),
    Row("range", 93, ("stocked-there", "held-fish", "held-place", "after-names|after-identify|after-describe",
                      "!fish|seen|rules|water|contrast|tackle|keep|asks-can|handling|quiz|key|hybrid|loose-elsewhere"),
        ("what is a stumpknocker in georgia / been here all along or brought in",)),
    Row("list", 94, ("equals-sign", "group", "seen|part",
                     "!one-fish|story|held-seen|asks-name|names|rules|key|quiz|sources|two-kinds"),
        ("Micropterus with tongue-teeth = one-patch", "Ameiurus: barbel-colour = white-or-pale")),
    # Bait, stocking and the well are matters of rules; a way to get a fish is tackle.
    Row("rules", 94, ("bait-use", "place|water|unknown-place|held-place", "asks-can|asks-do|question-mark|yes-no",
                      "!seen|hurt|quiz|key|eat|handling|asks-how"),
        ("live shiners from the store, ok to use in ontario?", "are creek chubs legal bait in Michigan?")),
    Row("rules", 94, ("stock-act", "fish|held-fish", "waters|after-why|loose-elsewhere|water|asks-can",
                      "!seen|hurt|quiz|key|tackle|tackle-word|bite|cooking|len|wt|meat|asks-how|asks-many|abundance|"
                      "ice-fishing"),
        ("why are all my pond bluegills runts / so dump in a few bass from the river",
         "can I put in a few catfish from the lake in my pond")),
    Row("rules", 94, ("stay-in", "asks-can", "held-length|len", "place|water|held-place", "fish|held-fish", "short10",
                      "!hurt|quiz|key|asks-how|contrast"),
        ("walleye 18 3/4 in, Lake Skarrowin / can he stay in the livewell",)),
    Row("tackle", 93, ("catch-way", "fish|held-fish",
                       "!seen|rules|rules-act|hurt|handling|letting-go|quiz|key|contrast|names|size|len|wt|cooking|eat|"
                       "meat|story|habitat|asks-name|water|sources|range|after-contrast"),
        ("quiet way to pull croppie off brush from a yak", "trick to getting walleye out of a kayak")),
    # The length in another unit, told after a weight or a size.
    Row("@same", 93, ("units-us|units-metric", "len", "after-weight|after-size", "!seen|fish|wt|photo-wish"),
        ("how much does a 20 inch smallmouth weigh / canada side, so 51 cm if you like",)),
    # When it spawns, the moon told of beside it; how big; whether it lives.
    Row("habitat", 94, ("moon", "habitat|life-part", "when-ask", "fish|held-fish",
                        "!seen|rules|rules-act|water|quiz|key|names|bite|tackle|tackle-word"),
        ("when do shellcrackers bed, full moon in may or before that",)),
    Row("size", 93, ("size", "held-fish", "short6", "question|asks-how|what-about",
                     "after-handling|after-names|after-term|after-range",
                     "!fish|seen|part|tackle|tackle-word|rules|keep|weight|water|place|len|handling|hurt|term-word|key|"
                     "quiz|contrast|meat|nests|live|hook-numbers|bigger-than|big-ones|time-told"),
        ("what is a horned pout / do the whiskers sting / how big they run",)),
    Row("handling", 94, ("will-live", "held-fish|fish|after-handling",
                         "!seen-many|rules|water|quiz|key|meat|range|pet|ill|how-hot|outside"),
        ("pike took the treble way down and the gills are bleeding / so will it live",)),
    # One of two that were compared, by a mark told of it.
    Row("identify", 93, ("after-contrast", "held-two", "seen", "no-ask", "short10", "!both|either-or",
                         "!fish|about-it|asking-form|question|question-mark|retract|which-group|which-of|quiz|key|undo|rules|place|water|hurt|"
                         "versus|vs|contrast|sex|stage|breeding|shorter|plainer|more"),
        ("pike vs musky / cheek and gill cover fully scaled", "walleye vs sauger / white tip on the lower tail lobe")),
    Row("identify", 93, ("after-contrast", "held-two", "counted", "no-ask", "short10",
                         "!fish|about-it|asking-form|question|question-mark|retract|which-group|which-of|quiz|key|undo|rules|place|water|hurt|"
                         "versus|vs|contrast|sex|stage|breeding"),
        ("pike vs musky / 8 pores each side under the jaw",)),
    # Two fishes, told apart or counted side by side.
    Row("contrast", 94, ("off-name", "two-kinds", "!rules|tackle|handling|eat|hybrid|quiz|key|hurt|story|len|wt|place"),
        ("blue cat off a channel cat when neither ones got spots",)),
    Row("contrast", 94, ("much-asks-many", "two-kinds", "identify-part",
                         "!rules|story|quiz|key|hurt|sources|place|water|held-seen"),
        ("how many anal spines on a rock bass and how many on a warmouth",)),
    # The size in some unit, the parents of a cross, the crosses of a fish.
    Row("size", 95, ("units-us|units-metric", "leans-size|size", "held-fish", "short6",
                     "!fish|seen|len|wt|rules|weight|water|place|identify-part|asked|quiz|key|tackle"),
        ("tell me about the flier / big as they come, inches", "tell me about the flier / largest on file, mm")),
    Row("hybrids", 94, ("makes", "cross", "name-last", "short6", "!seen|size|life-part|two-fish|quiz|key|hurt"),
        ("what makes a saugeye", "what makes a tiger trout")),
    Row("hybrids", 94, ("hybrid", "hybrid-word", "one-fish|group", "which-group|asks-what|list", "of-fish",
                        "list|kinds-held|self-record|of-sources",
                        "!seen|held-seen|contrast|quiz|key|rules|place|water|size|weight|why|story|sources|two-kinds"),
        ("Which crosses of Lepomis cyanellus are in the base?", "List the crosses of Salvelinus fontinalis")),
    # A list told by its kinds, one left out of it, kinds of a group held, one kind by many marks.
    Row("list", 93, ("group-ones", "seen",
                     "!asks-name|asking-form|contrast|story|confirm|held-seen|two-kinds|rules|quiz|key|hurt|place|water|question-mark|my-catch"),
        ("sunfish family ones with a big mouth",)),
    Row("list", 95, ("retract", "after-list", "fish", "short10", "!seen|rules|quiz|key|hurt|place|water"),
        ("Which catfishes have a forked tail? / leave out the blue cat",)),
    Row("list", 93, ("covers-kind", "group", "name-last", "short6",
                     "!seen|held-seen|rules|quiz|key|hurt|place|water|taxon"),
        ("yall do catfish?", "do you cover bullheads")),
    Row("identify", 95, ("which-group", "group", "seen-3", "no-ask|asks-what",
                         "!plural-group|story|held-seen|taxon|list|list-weak|hybrid|which-of|contrast|why|sources|"
                         "quiz|key|rules|place|water|kinds-held|names|list-word"),
        ("what sunny has a mouth like a bass, a white rim round the ear and a red belly",)),
    Row("sources", 95, ("more-figures", "after-sources", "short10", "!fish|seen|rules|quiz|key|hurt|place|water"),
        ("Where does 90 mm for bantam sunfish come from? / any other figure on file?",)),
    # A term on a sign beside a fish, a key without a fish named, a fish where it may not belong.
    Row("term", 94, ("quoted-term", "fish", "put-plainly|term|what-is|what-is-a|names",
                     "!seen|list|hybrid|sources|rules|quiz|key|contrast|two-fish|two-kinds"),
        ("A docent wrote 'pharyngeal teeth' on our redear panel. Plain words for that?",)),
    Row("key", 95, ("walk-me|step-by-step", "key",
                    "!fish|seen|quiz|asked-key|hurt|why|term|after-key|after-why|rules|tackle"),
        ("Take my class through a key, one step at a time.",)),
    Row("names", 94, ("called-next", "unclear|group-nickname|leans-names", "fish", "which-of|which-group|asks-what",
                      "!seen|place|water|rules|quiz|key|hurt|contrast|two-kinds|held-seen|story|cross"),
        ("granddad said redeye for half the creek, which ones",)),
    Row("range", 95, ("meant-there", "place", "fish|unclear", "asking-form|question",
                      "!seen|rules|water|two-kinds|quiz|key|story|contrast|hybrid|len|wt|tackle|held-seen"),
        ("robins in a tennessee creek, sposed to be there? redbreast i guess is the right word",
         "carp in a montana lake, are they supposed to be there?")),
    # A hook taken deep, water too warm to go on, live fish carried off.
    Row("handling", 95, ("hook-deep|hook-pulled", "fish|held-fish|fishy",
                         "!seen-many|rules-act|water|quiz|key|contrast|asks-name|names|list|hybrid|who-eats"),
        ("bluegil sucked the hook clear down, yank it or cut it", "crappie took it deep, what now")),
    Row("handling", 95, ("quits-for-heat|heat-limit", "temp|too-warm",
                         "!seen|rules-act|water|quiz|key|contrast|asks-name|len"),
        ("Stream hit 69F by two o'clock. Should I quit on trout?", "creek is 21C, leave the trout alone?")),
    Row("handling", 94, ("heat-limit", "after-handling", "short10",
                         "!seen|fish|rules-act|water|quiz|key|contrast|len|hurt"),
        ("is it ok to catch trout when its hot / whats the cutoff in celsius",)),
    Row("rules", 95, ("live-carried", "waters|unknown-place|live|water", "fish|held-fish|fishy",
                      "asks-can|question-mark|rules|wants-to",
                      "!seen|hurt|quiz|key|tackle|asks-how|asks-name|contrast|list"),
        ("ok to carry a dozen live sunnies to my cousins pond?", "can i haul a few live perch over to our lake")),
    # Two fishes mixed up, one without its colours, another one supposed.
    Row("contrast", 95, ("keeps-calling", "two-fish|two-kinds",
                         "!why|names|local-name|water|place|rules-act|hurt|quiz|key|hybrid"),
        ("i keep calling green sunfish warmouth, how do i quit",)),
    Row("contrast", 95, ("versus", "two-fish|two-kinds", "no-colour", "question|question-mark",
                         "!held-seen|seen|rules|rules-act|water|place|hurt|quiz|key|eat|tackle|hybrid|size|weight"),
        ("black or white crappie when it's been froze in a bucket since tuesday? no colour left",)),
    Row("contrast", 94, ("what-if", "after-identify", "one-fish", "held-fish", "short10",
                         "!seen|rules|rules-act|water|place|hurt|quiz|key|size|weight|handling|tackle|names|hybrid|cross|"
                         "held-catch"),
        ("bass, jaw quits under mid eye, bars up and down, brownish / n if it was a largemouth?",)),
    Row("contrast", 94, ("set-in", "after-contrast", "held-two", "fish", "short10",
                         "!seen|rules|rules-act|water|place|hurt|quiz|key|size|weight|handling|hybrid|why|asks-how"),
        ("smallie vs spotted bass / throw largemouth in there too", "pike vs pickerel / chuck a musky in the mix")),
    Row("contrast", 94, ("set-out", "after-contrast", "held-two", "fish", "short6",
                         "!seen|rules-act|water|place|hurt|quiz|key|size|weight|hybrid|why|asks-how|question-mark"),
        ("bluegill vs pumpkinseed vs redear / get the redear out of there",
         "walleye vs sauger vs perch / toss the perch")),
    # What betrays it, whether a laboratory can tell, what a naming rests on.
    Row("hybrids", 95, ("tell-tale", "after-hybrids|held-cross", "short10",
                        "!fish|seen|rules-act|water|quiz|key|hurt|sources|asks-can|keep"),
        ("can a bluegill cross with a green sunfish / what would give it away",)),
    Row("contrast", 94, ("tell-tale", "after-contrast", "held-two", "short10",
                         "!fish|seen|rules-act|water|quiz|key|hurt|sources|held-seen|asks-can"),
        ("walleye vs sauger / whats the giveaway",)),
    Row("hybrids", 95, ("lab-test", "cross|held-cross|after-hybrids", "short10",
                        "!seen|rules|water|quiz|key|hurt|sources|names|size|weight"),
        ("can a bluegill cross with a green sunfish / could a lab settle it",)),
    Row("why", 95, ("going-by", "held-seen", "short10",
                    "!fish|seen|rules|key|quiz|asked-quiz|asked-key|sources|tackle-word|place|water"),
        ("big mouth sunfish, red eye / what are you going by then",)),
    Row("identify", 94, ("helps-it", "seen", "!fish|rules-act|water|quiz|key|contrast|asks-name|sources|why|hurt"),
        ("a small sunfish / long ear with a pale rim, does that help",)),
    # The fishes of a list one by one, the sources without a page.
    Row("describe", 94, ("after-list", "part", "both", "short10",
                         "!seen|rules|water|quiz|key|hurt|sources|contrast|which-of|comparing|size|weight|place"),
        ("Which sunfishes live in Ohio ponds? / And the tail on each?",)),
    Row("sources", 95, ("pageless", "after-sources", "short10", "!fish|seen|rules|quiz|key|hurt|place|water"),
        ("Which reference carries the Lepomis auritus anal-spine count? / only the ones without a page",)),
    Row("list", 95, ("crosses-too", "group", "seen|place|part|which-group",
                     "!asks-name|story|held-seen|rules|quiz|key|hurt|contrast|why|sources|water|confirm|weight"),
        ("which trouts have them worm tracks on the back, crosses too",
         "which sunfishes have a big mouth, hybrids included")),
    # A weight guessed of a length told, a length told of a fish just spoken of.
    Row("weight", 95, ("wt", "held-length", "held-fish", "after-size|after-weight", "short10",
                       "!fish|len|seen|rules|rules-act|water|place|contrast|quiz|key|tackle|gear-weight"),
        ("is a 14 inch brookie anything special / id guess it went two pounds?",)),
    Row("size", 94, ("len", "held-fish", "short10", "no-ask",
                     "after-names|after-describe|after-range|after-habitat|after-term",
                     "!fish|seen|rules|rules-act|water|weight|wt|girth|quiz|key|contrast|date|bigger-than|tackle-word|"
                     "how-deep|asked-character|part"),
        ("what is a walleye called in quebec / he claims his was 34 inches",)),
    # Whether the assistant goes fishing itself; a talk closed by giving in.
    Row("small-talk", 95, ("self-angler",
                           "!seen|place|water|date|len|wt|asks-how|asks-what|asks-where|asks-when|tackle-word|bait-only|"
                           "rules-act|hurt|quiz|key|two-fish|hybrid|handling"),
        ("what do i put on the hook for rock bass / lol you ever catch one", "do you even fish")),
    Row("small-talk", 95, ("owning-up", "short10",
                           "!question|question-mark|yes-no|fish|seen|len|wt|place|water|asked-quiz|asked-key|rules-act|undo|"
                           "correct|part|term-word|hurt|tackle-word|asks-how|asks-can"),
        ("bass, tongue has a rough patch / fine. i'll apologise to the man",)),
    # A weight beside the fish asked how long it is; a length put right; two names of one fish; a catch on a day.
    Row("weight", 93, ("wt", "weight-to-length", "fish", "short10", "!seen|rules|water|story|contrast|list|hurt"),
        ("a 40 lb crappie how long is it",)),
    Row("undo", 93, ("correct", "len", "held-length", "no-ask", "short10", "after-weight|after-size",
                     "!fish|seen|water|place|rules|wt|date"),
        ("black crappie fifteen and a half, guess it for me / oops 14 flat, ruler was off",)),
    Row("names", 93, ("sameness", "two-mentions", "local-name|unclear|group-nickname", "short10", "asks-do|question",
                      "!seen|hybrid|rules|size|contrast|water|eat|tackle|habitat|handling|weight"),
        ("are goggle-eye and rock bass the same fish",)),
    Row("rules", 93, ("water", "date", "len", "two-fish", "!seen|asks-name|contrast|habitat|tackle|hurt|list"),
        ("Tidderbrack Creek, 2026-10-05: 20 in fish, bowfin or northern snakehead, cannot tell",)),
    # An animal that is no fish.
    Row("out-of-scope", 93, ("creature", "yes-no|asks-what|what-is", "fishy|names-next|asks-name|what-is", "short6",
                             "!fish|seen|tackle|tackle-word|eat|rules|keep|handling|habitat|outside|bite|which-group|list"),
        ("is a crayfish a fish", "what frog is this")),
    # Three marks or more and nothing asked tell of a catch.
    Row("identify", 93, ("seen-3", "no-ask",
                         "!hybrid|hybrid-word|cross|contrast|vs|versus|list|rules|water|keep|sources|key|quiz|handling|hurt|"
                         "equals-sign|undo|undo-weak|retract|correct|correction|after-key|after-quiz|after-list"),
        ("sunny 9 and a half long. ear tip kinda orange edged, no real dot. cheek squiggles but faint. sorta smudge in "
         "the back fin",)),
    # Whether crosses count in the bag just told of; a fish that two people call by two names.
    Row("rules", 94, ("counts-too", "after-rules", "short10", "!seen|quiz|key|hurt|contrast"),
        ("vennimoor lake, 6 gills all about 21 cm, we legal? / them half breed ones count too?",)),
    Row("contrast", 93, ("disputed", "two-fish", "i-think|side-with", "short10",
                         "!seen|held-seen|rules|water|len|wt|hybrid|quiz|key|hurt|size|weight|eat|names"),
        ("dad swears yellow bullhead, i think its a brown",)),
    # How a cross just told of is made sure.
    Row("hybrids", 93, ("settle-ask", "after-hybrids", "held-cross", "short6", "!fish|seen|rules|place|water|quiz|key"),
        ("saugeye whats its ma and pa / how do i prove one",)),
    # What a fish is called in a place; a greeting by the time of day.
    Row("names", 94, ("call-it", "place", "fish", "asks-what|asks-how|question-mark", "short10",
                      "!seen|rules|water|size|weight|contrast|hybrid|quiz|key|part|two-kinds"),
        ("What do people in Quebec call the rock bass?", "what do folks in Louisiana call a crappie")),
    Row("small-talk", 93, ("time-of-day", "one-word", "!after-info|asked"), ("evening",)),
    # How deep to fish for it, in as many words.
    Row("tackle", 93, ("how-deep", "one-fish|group", "short6",
                       "!seen|contrast|rules|handling|hurt|two-kinds|water|size|quiz|key|habitat|nests|asks-do|asks-can|"
                       "asks-where|ice-fishing|asks-how"),
        ("chain pickerel how deep",)),
    # Whether it was there from the first, all of a kind wherever they came from, a spot kept to oneself.
    Row("range", 94, ("of-old", "place|unknown-place|held-place", "fish|held-fish", "short10",
                      "!seen|rules|rules-act|quiz|key|hurt|contrast|names|tackle|tackle-word|asks-name|water|hybrid|"
                      "my-catch|handling|size|weight|len|wt|list|which-group|call-it|bite|asks-how|waters|life-part|how-deep"),
        ("was there always gobys in the great lakes", "have snakeheads always been in maryland")),
    Row("list", 95, ("native-or-not", "group|fishy", "place|held-place",
                     "!one-fish|rules|rules-act|quiz|key|hurt|contrast|names-of|call-it|tackle|yes-no|water|asks-how"),
        ("List every sunfish in Ohio, native or introduced", "which trout live in colorado, native or stocked")),
    Row("out-of-scope", 95, ("secret-spot", "asks-where|asks-any|self-order|place|water|unknown-place|waters",
                             "!seen|quiz|key|hurt|why|makes|asks-how|what-is-a|term|contrast|sources"),
        ("my uncle's honey hole for crappie on kentucky lake, where is it",
         "give me gps coordinates for bluegill beds in clear lake")),
    # Which fish somebody meant by a local name, what to note of a catch, and what to type the first time.
    Row("names", 94, ("what-was-it", "local-name|unclear|group-nickname",
                      "!seen|rules|rules-act|len|wt|water|hurt|quiz|key|hybrid|contrast|size|two-fish|held-seen"),
        ("granny fried jack salmon every spring, what was she cooking",)),
    Row("next-question", 94, ("what-to-note", "fishy|fish-word|letting-go|my-catch|handling|at-you|pet",
                              "asks-what|which-group",
                              "!fish|seen|quiz|key|rules|rules-act|water|hurt|tackle|tackle-word|contrast|term|place"),
        ("What should I note down for you before I let a fish go?",)),
    Row("help", 95, ("self-type", "first-here", "!seen|rules|water|place|hurt|held-last"),
        ("sorry, cat on the keys. first time, what do i type",)),
    # A fish or the cross of it, and one of the two that was caught and weighed.
    Row("contrast", 94, ("hybrid-word", "versus|vs|contrast", "one-fish|two-fish", "two-kinds|versus", "short10",
                         "!cross|seen|held-seen|term-word|place|water|rules|why|asks-can|asks-how|asks-when|asks-where|"
                         "asks-many|asks-do|habitat|range|tackle|names|makes|list|which-group|sources|quiz|key|hurt|eat|"
                         "handling|bigger-than|heavier-than|which-of|comparing|in-order|edible|life-part|fertile"),
        ("hybrid or straight striper, 8 lb, caught under the dam", "is it a hybrid or a pure walleye")),
    Row("contrast", 93, ("guess", "versus", "two-fish", "story", "wt",
                         "!seen|held-seen|rules|water|place|asks-what|asks-how|asks-many|keep|quiz|key|hurt|tackle|"
                         "heavier-than|bigger-than|size|plausible"),
        ("wiper or striper? caught below the dam, 8 pounds",)),
    # Another fish pointed to by words of its name.
    Row("@same", 94, ("what-about", "after-info", "the-one", "one-fish", "no-ask", "short6",
                      "!seen|two-fish|place|date|sex|stage|rules|asked")),
    # Which fish the people of a place mean.
    Row("names", 94, ("folks-say", "taxon|unclear", "asks-name|asks-what|called-next|what-is",
                      "!seen|rules|rules-act|len|wt|water|hurt|quiz|key|hybrid|two-kinds|size|eat|edible|tackle|"
                      "handling|habitat|held-seen|sources|asks-can|asks-how|asks-when|asks-where|bite|why|yes-no"),
        ("folks around here just say perch. kansas. which is it", "locals call it a mudfish. georgia. what is it")),
    Row("contrast", 94, ("hybrid-word", "guess", "versus", "one-fish|two-fish", "short10",
                         "!cross|seen|held-seen|place|water|rules|why|asks-can|asks-how|asks-do|habitat|range|tackle|"
                         "names|makes|sources|quiz|key|hurt|eat|handling|bigger-than|heavier-than"),
        ("striper or hybrid? out of the tailrace",)),
    # A class is shown that one fish is not another; two who looked tell what they saw of one of two.
    Row("contrast", 94, ("not-name", "two-mentions", "like", "lesson-table|plainer|explain|put-plainly|class-asking",
                         "!seen|held-seen|rules|place|water|quiz|key|hurt|names|names-of|sources|size"),
        ("show kids why a bluegill is not a crappie", "how do I show fifth graders that a bowfin is not a snakehead")),
    Row("identify", 93, ("after-contrast", "held-two", "seen", "both", "somebody", "no-ask", "short10",
                         "!fish|about-it|asking-form|question|question-mark|retract|which-of|quiz|key|undo|rules|place|"
                         "water|hurt|versus|contrast"),
        ("pike vs musky / fully scaled cheek, we both looked",)),
)
