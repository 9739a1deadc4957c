"""Rows of the recogniser table for lessons and the keeping of the base that stand whatever the words lean to (layer 4).

Each wish is told by two or more of the cues of ``cues.WISHES`` together; rows are kept together by what they answer.
"""

from __future__ import annotations

from assistant.dialogue.recogniser.intent_row import Row

LESSON_ROWS: tuple[Row, ...] = (
    Row("list", 93, ("which-group", "group", "seen", "have-verb",
                     "!story|held-seen|asks-name|confirm|taxon|hybrid|which-of|contrast|why|sources|len|quiz|key|what-is"),
        ("which sunfish have a plain black ear, no red no white",)),
    # Asked in the midst of a quiz.
    Row("describe", 95, ("asked-quiz", "describe", "one-fish", "short10", "!seen|rules|hurt|contrast|key|quiz"),
        ("quiz on basses / skip it, just describe shoal bass",)),
    Row("rules", 95, ("asked-quiz", "rules|rules-open", "fish|water", "asking-form", "!seen|hurt|key|quiz"),
        ("quiz about walleye / real question, sauger closed when",)),
    Row("list", 95, ("asked-quiz", "which-group", "group", "asking-form",
                     "!seen|part|have-verb|hurt|rules|quiz|two-kinds"),
        ("quiz me on crappies / which crappies exist, first",)),
    # A fish or a question let go.
    Row("undo", 95, ("self-drop", "fish-gone", "held-last", "short10",
                     "!seen|fish|place|hurt|quiz|key|rules|asked-quiz|asked-key|question-mark|names|question|asks-how|"
                     "asks-what|asks-where"),
        ("musky or tiger? bars all over it / nah forget it, he's off the hook",
         "walleye. white tail tip / oh well, she got loose")),
    Row("next-question", 94, ("asked-character", "cant-agree", "!seen|fish|quiz|key|rules|asks-what|asks-how|why"),
        ("sunfish, orange belly / they can't agree on that one, go on", "sunfish, orange belly / the kids are split")),
    Row("key", 97, ("asked-key", "cant-agree", "!fish|quiz|rules|seen"),
        ("make a key to the trouts / we can't agree on that, move on",)),
    Row("key", 97, ("asked-key", "fish", "start-over|another-fish", "!seen|quiz|rules"),
        ("make a key to walleye, sauger and yellow perch / take the sauger out and start again",)),
    Row("quiz", 97, ("asked-quiz", "fish", "order", "!seen|rules|hurt|question-mark|asks-what|asks-how"),
        ("quiz me on walleye, sauger and yellow perch / drop the sauger and add the flier",)),
    Row("quiz", 97, ("asked-quiz", "undo|undo-weak|retract", "ends-letter", "short6", "!start-over|help|fish"),
        ("quiz me on pikes / a. no wait b",)),
    Row("quiz", 97, ("start-over", "after-quiz", "count|quiz", "!seen|rules|hurt|another-fish|key"),
        ("quiz me on catfishes, four questions / stop there, start over with six",
         "quiz me on sunfishes / restart the quiz", "quiz me on pikes, 3 questions / from scratch, five this time")),
    # What was said, made into items.
    Row("quiz", 95, ("true-false", "turn-into", "held-last", "!rules|hurt|asked-quiz|asked-key|asks-name"),
        ("which sunfishes have a forked tail / turn that into three true-or-false lines",
         "tell me about the flier / write me four true or false statements from that")),
    Row("quiz", 94, ("true-false", "count|lesson-table", "short10",
                     "!rules|hurt|asked-quiz|asked-key|asks-name|key|fish|story"),
        ("which catfishes have a forked tail / 4 true or false items please",)),
    # A key by questions, and two kinds told apart in order.
    Row("key", 95, ("asks-me", "till-known", "!rules|water|hurt|asked-quiz|asked-key|tackle-word|asked-character"),
        ("keep asking me stuff till you figure out my fish", "question me until you know what I caught")),
    Row("contrast", 95, ("check-order", "two-kinds|held-two",
                         "!seen|held-seen|rules|water|hurt|quiz|key|asked-key|asked-quiz|in-order"),
        ("walleye sauger saugeye, what do i check and in what order",
         "spotted bass or largemouth, what order do i check")),
    Row("contrast", 94, ("versus", "two-kinds", "two-mentions", "one-of-them",
                         "!seen|held-seen|story|rules|size|weight|habitat|range|place|water|eat|tackle|handling|hybrid|"
                         "names|list|quiz|key|hurt|asks-what|asks-many|asks-where|bigger-than|outside"),
        ("is it a grinnel or one of them snakeheads", "bullhead or one of those madtoms?")),
    Row("describe", 93, ("describe-it", "held-fish|held-two", "short6",
                         "!fish|seen|part|place|rules|hurt|quiz|key|asked-key|asked-quiz|after-hybrids|contrast|size|"
                         "habitat|sources|after-contrast"),
        ("stump knocker, what is it really / well describe the thing",)),
    Row("sources", 94, ("after-sources", "part|seen", "what-about|names-next", "short6",
                        "!fish|counted|telling|story|held-seen|asks-how|asks-do|yes-no|why|how-sure|place|rules|size|"
                        "more-figures|cant-agree|sources-weak|help|undo|have-verb|describe"),
        ("source for flier tongue teeth / and its dorsal spine count?",)),
    Row("@same", 93, ("sameness", "after-size|after-weight|after-habitat|after-range|after-tackle|after-handling",
                      "one-fish", "short6", "!seen|contrast|two-fish|two-kinds|overlap|vs|versus|place|names|"
                      "same-kind|same-one"),
        ("brown trout, how big do they get / rainbow the same?", "what do warmouth eat / rock bass the same?")),
    # In which units it may be told.
    Row("help", 95, ("self-units", "short10", "question|asking-form|question-mark|yes-no|asks-can",
                     "!fish|seen|len|wt|place|water|rules|quiz|key|hurt|part|after-info"),
        ("does it matter if i give you cm or inches", "do you understand pounds and ounces")),
    # On paper.
    Row("help", 95, ("on-paper", "these-tables", "question|asking-form|question-mark|self-can|asks-can",
                     "!fish|seen|quiz|key|rules|hurt|asked-quiz|asked-key|after-quiz|after-key|fishing-licence|"
                     "story|water|place|date|lesson-cards|lesson-words|size|weight|sources"),
        ("is there a way to get these tables on paper for the class?", "how do I print this?")),
    Row("help", 95, ("on-paper",
                     "after-contrast|after-list|after-describe|after-names|after-term|after-size|after-range", "short6",
                     "!fish|seen|quiz|key|rules|hurt|asked|story|water|place|lesson-cards|lesson-words"),
        ("compare bluegill and redear / print that please",)),
    # What no base of fishes can say of lessons.
    Row("out-of-scope", 94, ("lesson-standard", "!seen|quiz|key|held-seen|rules|hurt"),
        ("which state science standard does a fin lesson satisfy, by number?",
         "what NGSS performance expectation goes with keys")),
    Row("out-of-scope", 94, ("lesson-standard", "quiz|key", "asks-what|asks-do|question-mark", "!seen|hurt|rules")),
    # Hybrids and keys.
    Row("why", 95, ("hybrid-word", "key|key-word", "spoil|why", "question|asking-form|question-mark|why",
                    "!seen|quiz|asked-key|asked-quiz|rules|two-fish|sources"),
        ("why do hybrid sunfish spoil the keys my pupils make?", "do hybrids mess up a key?",
         "can a dichotomous key handle hybrids?")),
    # The keeping of the base.
    Row("list", 95, ("unlike-values", "kinds-held|list|group|plural-group|asks-any",
                     "!one-fish|two-fish|held-seen|rules|water|story|quiz|key|hurt|why|contrast|taken-from"),
        ("taxa holding two unlike values for max-total-length", "which taxa have clashing values for dorsal spines",
         "any species whose sources disagree about anal ray counts", "sunfishes with conflicting statements")),
    Row("why", 95, ("side-with", "of-sources", "after-sources|after-list|after-why|after-describe",
                    "!seen|rules|place|water|tackle|bite|hurt|quiz|key|eat|asks-name|contrast|two-fish|two-kinds|"
                    "held-seen|size|weight|names|fishing-time|handling|tackle-word|range"),
        ("upper-jaw-reach for L. gibbosus: which sources say what? / and which one do you go with, on what grounds",)),
    Row("why", 94, ("side-with", "of-sources", "sources|sources-weak", "one-fish",
                    "!asks-any|rules|place|water|tackle|bite|hurt|quiz|key|eat|asks-name|contrast|held-seen|size|weight|"
                    "names|fishing-time|handling|tackle-word|range"),
        ("which source do you trust on the lateral line scales of Salvelinus namaycush",)),
    Row("names", 95, ("concept-now", "taxon",
                      "!seen|held-seen|rules|two-fish|contrast|quiz|key|tackle|asked"),
        ("an old sheet has M. salmoides from Ohio; which concept is that now",
         "Stizostedion vitreum in an older record, what would that be today")),
    Row("names", 94, ("concept-only", "taxon", "many-names",
                      "!seen|held-seen|rules|rules-act|water|place|contrast|quiz|key|tackle|habitat|hybrid|asked|len|wt"),
        ("Does M. salmoides now denote only the Florida bass?",
         "is Micropterus salmoides restricted to the Florida bass these days")),
    Row("names", 94, ("old-sheet", "taxon", "question|asking-form|question-mark|names",
                      "!seen|held-seen|rules|two-fish|contrast|quiz|key|tackle|size|weight|asked|hybrid|story|range|"
                      "why|asks-where|sources|part"),
        ("jar labelled Eupomotis gibbosus, what do we file it under",)),
    Row("sources", 95, ("cited-for", "taxon|part|old-genus|held-last",
                        "!rules|fishing-licence|water|story|key|quiz|hurt|asked|handling|tackle|eat|held-seen"),
        ("which paper is cited for splitting Amia ocellicauda from A. calva?",
         "cite for the difference between sauger and walleye dorsal fin spots",
         "who split the spotted sunfish and the redspotted sunfish and where was it published")),
    Row("list", 94, ("kinds-held", "list|seen-many", "asks-where", "seen", "part",
                     "!one-fish|two-fish|held-seen|story|pointing|my-catch|rules|tackle|quiz|key|hurt|why|contrast|asked|yes-no|place"),
        ("taxa where adipose-fin is present but body-covering is scaleless",)),
    Row("weight", 95, ("length-left", "wt", "one-fish|held-fish",
                       "!len|seen|held-seen|rules|water|asks-name|contrast|quiz|key|tackle|handling"),
        ("E. niger, label says 750 g, length blank. What TL would you expect?",
         "Micropterus dolomieu 1.2 kg, no length on the label, what length would that be",
         "weight recorded 900 g for Sander vitreus, TL not recorded, expected length?")),
    Row("list", 94, ("other-state", "after-list", "short6",
                     "!fish|rules|contrast|quiz|key|hurt|story|place|water|undo"),
        ("what fish have one chin barbel / with four, then?", "which fish have 3 anal spines / and six?")),
    Row("hybrids", 94, ("by-look", "hybrid-word", "fish|held-fish", "!seen|rules|quiz|key|hurt|place|sources|names"),
        ("bluegill and pumpkinseed share my pond, can I prove a cross just by looking",
         "can you tell a tiger musky hybrid by eye alone")),
    Row("term", 94, ("put-plainly", "key|key-word|term|term-word|part",
                     "!fish|seen|water|rules|list|hybrid|story|letting-go"),
        ("How would you put 'dichotomous' to a grade five class?", "how would I explain operculum to my pupils")),
    Row("list", 95, ("tally", "after-list", "short10",
                     "!fish|seen|rules|quiz|key|asked|place|water|part|hurt|gaps|which-group|story|size|weight"),
        ("which Morone statements rest on memory alone / tally by species",
         "which fishes have an adipose fin / break that down by family")),
    # Sources.
    Row("sources", 95, ("book-says", "fish|held-last|part", "!rules|water|story|names|place|key|quiz|why"),
        ("what book says the rock bass has 6 anal spines", "describe the warmouth / tongue teeth, whose record?")),
    Row("sources", 95, ("book-says", "range", "place", "one-fish", "!rules|water|story|names|key|quiz"),
        ("on what authority is the redbreast given as native in Maine?",)),
    Row("sources", 95, ("taken-from", "identify-part|counted", "one-fish|held-last",
                        "!rules|water|story|names|place|key|quiz|name-origin|asked|tackle|eat|range|why"),
        ("where is the dorsal spine count for Pomoxis annularis taken from?",)),
)
