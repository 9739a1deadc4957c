"""Rows of the recogniser table on a fish just caught, asked at the rod or at the dock: scores from 93 (layer 4).

They stand whatever the words of a line lean to, as those of ``intent_rows_sure`` do.
"""

from __future__ import annotations

from assistant.dialogue.recogniser.intent_row import Row

CATCH_ROWS: tuple[Row, ...] = (
    # A length told after the rules were: is it one to keep.
    Row("rules", 93, ("after-rules", "len", "held-fish", "short6", "no-ask",
                      "!fish|seen|size|weight|wt|girth|part|term-word|habitat|contrast|plausible"),
        ("walleye limit on lake skarrowin / mines 43 cm", "can i keep pike in Harrowelt / its 25 inches")),
    # Whether all of the catch may be kept, how many at a water, and in whose bag a fish counts.
    Row("rules", 94, ("all-mine", "water|place|held-place|fish|held-fish",
                      "!quiz|key|hurt|contrast|tackle|hybrid|names|sources|asks-name|asks-how|list"),
        ("redear on Vennimoor Lake / got four of em, all mine?",)),
    Row("rules", 93, ("asks-many", "date", "fish|group", "place|unknown-place|water",
                      "!seen|hurt|quiz|key|contrast|names|range|size|weight|counted|list|which-group|hybrid|tackle|"
                      "part|life-part|on-average|eat"),
        ("how many perch on simcoe thru the ice this winter", "how many walleye in ohio this spring")),
    Row("rules", 94, ("on-my-count", "fish|held-fish", "!seen|quiz|key|hurt|contrast|tackle|names|sources|size|weight"),
        ("saugeye / does it count against my walleye limit in Harrowelt",)),
    # What it weighs.
    Row("weight", 95, ("girth", "len", "weight|one-fish|held-fish",
                       "!seen|wt|rules|rules-act|water|contrast|quiz|key|list"),
        ("33 inch muskie, fifteen around the middle. whats that weigh", "flathead 30 long 19 round")),
    Row("weight", 93, ("weight-go", "len", "fish|held-fish",
                       "!wt|seen|rules|rules-act|water|contrast|bigger-than|quiz|key|asks-name|gear-weight|tackle"),
        ("22in channel cat goes about what", "14 inch walleye ought to go how much")),
    Row("weight", 93, ("weight-guess", "len", "one-fish|held-fish",
                       "!wt|seen|held-seen|rules|rules-act|water|contrast|quiz|key|asks-name|story"),
        ("black crappie fifteen and a half, guess it for me", "10 inch bluegill, take a guess")),
    Row("weight", 94, ("weight-unit", "len", "fish|held-fish",
                       "!wt|seen|rules|rules-act|keep|water|contrast|bigger-than|quiz|key|asks-name|gear-weight|tackle|"
                       "which-group|list|handling|asks-where"),
        ("walleye / it's 30 inches, poundage?", "30 inch channel cat in pounds")),
    Row("weight", 94, ("weight-unit", "short", "held-fish", "held-length|after-size",
                       "!fish|seen|len|wt|after-weight|rules|contrast|quiz|key|asked-quiz|asked-key"),
        ("8 3/4 gill / with the tail pinched tho / ounces?", "how big do bluegill get / in ounces?")),
    Row("size", 94, ("that-big", "len", "one-fish|held-fish",
                     "!wt|seen|rules|rules-act|keep|water|contrast|quiz|key|asks-name|weight|tackle"),
        ("13 1/4 yellow perch, thats a jumbo aint it", 'is a 14" gill even a thing')),
    Row("weight", 94, ("girth", "weight", "fish|held-fish",
                       "!seen|rules|rules-act|water|contrast|quiz|key|asks-name|handling"),
        ("yellow perch eleven inches, 7.5 round the middle, weight?", "musky 44 inches by 20 girth, how heavy")),
    # What it is.
    Row("identify", 94, ("guess", "seen", "own-evidence", "two-kinds",
                         "!quiz|key|hurt|contrast|which-group|term|hybrid|rules|water|held-seen|sources|size|weight"),
        ("pike or muskie? seven pores under one jaw, only the upper half of the cheek is scaled",
         "walleye or sauger? no white corner on the tail, rows of spots in the first dorsal")),
    Row("next-question", 94, ("noted-nothing", "!seen|fish|rules|hurt|quiz|key|asked|held-seen|contrast|names"),
        ("Hooked something off the jetty but took no notes, sorry", "caught a fish, didnt get a good look at it")),
    Row("handling", 94, ("touch-safety", "fish|held-fish|fishy|group",
                         "!seen|rules-act|len|water|quiz|key|contrast|hurt|asks-name|tackle"),
        ("Safety rules for pupils touching live sunfish at a pond?", "can my class touch a live bluegill safely")),
    Row("handling", 94, ("harms", "fish|held-fish", "part|seen",
                         "!seen-many|held-seen|asks-name|hurt|rules|contrast|two-kinds|which-group|quiz|key|water"),
        ("flat heads got teeth thatll cut a thumb?", "does a channel cat have teeth that will cut my hand")),
    Row("handling", 94, ("letting-go", "temp", "fish|held-fish|fishy",
                         "!seen|rules|rules-act|water|quiz|key|contrast|asks-name|size|weight|tackle|bite"),
        ("channel cat 27 1/2 long, whats it go / turning it loose, 95 out. anything special",
         "tell me about musky / letting it go, its 88 outside today")),
    # What it is caught on.
    Row("tackle", 94, ("gear-weight", "fish|held-fish|fishy", "!seen|rules|water|hurt|quiz|key|contrast|bigger-than"),
        ("jig weight for walleye, 20 foot ledge", "how heavy a sinker for blue cats, 30 foot of current")),
    Row("tackle", 94, ("circle-hook", "fish|held-fish|fishy",
                       "!seen|rules|water|hurt|letting-go|hook-left|handling|quiz|key|bigger-than|term|story"),
        ("are circle hooks any good for bluegill with the grandkids", "circle hooks for catfish worth it")),
    Row("tackle", 93, ("throw-ask", "fish|held-fish|fishy",
                       "!seen|rules|rules-act|water|hurt|edible|quiz|key|contrast|names|story|bait-only|term"),
        ("does the flier live in swamps / hits what", "largemouth / what to throw to thin em out of the pond")),
    Row("tackle", 93, ("tackle", "both", "two-fish|held-two",
                       "!seen|contrast|rules|handling|quiz|key|names|weight|size|eat|edible|hurt"),
        ("bluegill vs redear / do both bite crickets",)),
    # How it is held, shown and made ready.
    Row("handling", 95, ("grip-way", "fish|held-fish|fishy",
                         "!seen|rules|water|quiz|key|asks-name|term|names|hurt|which-group|story"),
        ("lipping a walleye same as a bass, bad idea?", "can i grab a musky by the eye sockets")),
    Row("handling", 93, ("photo-wish", "fish|held-fish|fishy",
                         "!seen|rules|water|quiz|key|asks-name|self-sending|describe|contrast|list|place|"
                         "asked"),
        ("40 lb flathead at the boat, want one pic before she swims", "how do i hold a pike for a photo")),
    Row("handling", 94, ("air-time", "fish|held-fish|fishy", "after-handling|photo-wish|handling",
                         "!seen|rules|water|quiz|key|asks-name|cooking|meat"),
        ("want a quick pic of my musky before release / how long up",)),
    Row("handling", 93, ("clean-ask", "fish|held-fish|fishy|story",
                         "!rules|water|quiz|key|list|which-group|bait-thing"),
        ("ok got a perch here, the gold kind w dark bars. best way to clean it",)),
    # Whether it may go elsewhere, and whether it was there before.
    Row("rules", 93, ("loose-elsewhere", "waters|water", "fish|held-fish|fishy",
                      "asks-can|keep|rules|question-mark|wants-to",
                      "!seen|hurt|quiz|key|asks-name|range|bait-left|cooking"),
        ("pulling green sunfish outta my stock tank, ok to turn em loose in the creek",)),
    Row("rules", 93, ("place-side", "asks-many", "fish|held-fish|fishy",
                      "!seen|hurt|quiz|key|contrast|names|range|habitat|size|weight|counted|list|which-group|hybrid"),
        ("how many sauger on the indiana side of the ohio", "walleye on the ontario side, how many a day")),
    Row("range", 93, ("stocked-there", "place", "fish|held-fish",
                      "!seen|rules|water|story|contrast|tackle|keep|asks-can|handling|quiz|key|hybrid|loose-elsewhere"),
        ("blues in texas, always been there or planted", "walleye in montana, somebody put em in")),
    Row("range", 93, ("range-else", "held-fish|one-fish", "short6",
                      "!seen|rules|rules-act|water|story|contrast|tackle|keep|handling|quiz|key|hybrid|habitat|names|hurt|"
                      "after-rules|after-tackle|sources|look|after-next-question|asked-quiz|asked-key"),
        ("flier, 12 spines, big anal fin / found anywhere else",
         "tell me about the flier / what other states is it in")),
    # Which of those just described.
    Row("contrast", 94, ("comparing", "which-of", "held-fish", "after-describe", "part|seen",
                         "!fish|len|wt|size|weight|rules|water|place|story|quiz|key|asked|sources|which-group|tackle|"
                         "held-seen|unheld|lacking"),
        ("describe a bowfin / and the northern snakehead / which has the longer fin underneath",)),
    # What it is.
    Row("identify", 93, ("after-identify", "len", "held-seen", "no-ask", "short6",
                         "!fish|seen|keep|rules|rules-act|weight|weight-unit|size|story|undo|undo-weak|correct|question|"
                         "that-big|water"),
        ("crappie, no bars, specks everywhere / 9 inches if that matters",)),
    Row("identify", 94, ("disputed", "seen-many", "group|one-fish",
                         "!two-kinds|two-fish|rules|keep|quiz|key|why|sources|contrast|hybrid|asks-how|size|weight|"
                         "tackle|asks-where|which-group|list"),
        ("bony plate under the chin, ringed spot up by the tail, short fin underneath. buddy says snakehead",
         "spines in the back fin, red eye, six spines in the anal fin. dad says warmouth")),
    Row("identify", 93, ("after-contrast|after-describe", "counted", "answer", "short6", "no-ask", "held-two",
                         "!fish|question|question-mark|asked|rules|undo|undo-weak|correct"),
        ("warmouth vs rock bass / spines in the anal fin, how many each / mines got six",
         "yellow perch vs walleye / which has more anal rays / ours counted 7")),
    Row("identify", 93, ("some-kind", "group", "short", "no-ask", "!taxon|two-kinds|held-last|place|water|tackle"),
        ("some kinda bullhead",)),
    Row("identify", 93, ("what-it-is", "group",
                         "!taxon|two-kinds|held-last|rules|quiz|key|term|which-group|hybrid|names|tackle|hurt|"
                         "contrast|range|habitat|list|like|vs|versus|outside|place|eat|edible"),
        ("hand size panfish out the farm pond. what is it",)),
    Row("identify", 93, ("all-told", "group|hint|like",
                         "!taxon|two-kinds|held-last|question-mark|asks-what|asks-how|asks-can|rules|quiz|key|tackle|hurt|"
                         "contrast|range|list|vs|versus|outside|eat|edible"),
        ("some bream, greenish, hand size, thats all i remember",)),
    Row("hybrids", 94, ("pairs-with", "two-fish|two-kinds", "asks-name|names|asks-what|names-of",
                        "!seen|held-seen|rules|quiz|key|tackle|sources|place|water|list|name-origin|names-young"),
        ("walleye n sauger had a kid, whats it called", "if a bluegill and a redear make babies what do you call em")),
    Row("hybrids", 93, ("pairs-with", "two-fish|two-kinds",
                        "!seen|held-seen|rules|names|quiz|key|tackle|sources|place|water|list"),
        ("If a bluegill pairs with a redear, what would the young look like?",)),
    # Which of two it is, where a mark told is the same in both.
    Row("contrast", 93, ("versus", "two-fish|two-kinds", "answer-either|both", "seen",
                         "!held-seen|story|confirm|rules|size|weight|habitat|range|tackle|handling|names|sources|"
                         "hybrid|eat"),
        ("buffalo or grass carp, big scales no whiskers on either",)),
    Row("contrast", 93, ("now-what", "two-kinds|two-fish|group",
                         "!held-seen|story|rules|tackle|handling|quiz|key|habitat"),
        ("both kinds of crappie come up 6 spines on me, so now what do i look at",)),
    # One more fish beside the one spoken of.
    Row("contrast", 93, ("fools", "fish", "held-fish", "short10",
                         "!seen|rules|rules-act|place|water|quiz|key|hurt|tackle|names|sources|size|weight|why|story"),
        ("tell me about the yellow bass / would a hybrid striper fool me on that",)),
    Row("contrast", 95, ("vs", "one-fish", "held-fish", "short6", "no-ask", "after-describe",
                         "!seen|rules|handling|tackle|size|weight|hybrid|len|wt|water|place|quiz|key"),
        ("tell me about the white crappie / vs a black one", "describe a bowfin / vs a snakehead")),
    # Words, thanks and motors.
    Row("term", 93, ("word-unknown", "term-word",
                     "!fish|held-seen|place|water|len|wt|story|quiz|key|tackle-word|contrast|asked"),
        ("buddy keeps going on bout a kype and i just nod", "i keep hearing about milt")),
    Row("small-talk", 94, ("how-are-you", "short10",
                           "!fish|seen|held-seen|place|water|rules|quiz|key|names|tackle-word|asked|part|term-word|hurt"),
        ("evening. nothin biting tonight, how are you",)),
    Row("small-talk", 93, ("thanks-close", "short10",
                           "!question|question-mark|yes-no|fish|seen|len|wt|place|water|asked-quiz|asked-key|rules|undo|"
                           "correct|part|term-word|hurt|tackle-word|asks-how|asks-can"),
        ("walleye / thas what unc said too, preciate it",)),
    Row("out-of-scope", 93, ("motor", "!fish|fishy|seen|held-seen|rules|rules-act|water|ice-safety|ice-load|hurt|"
                                      "creature|term-word"),
        ("my 2 stroke wont idle after i swapped the plugs",)),
)
