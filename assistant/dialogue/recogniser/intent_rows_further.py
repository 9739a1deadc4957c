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
    # Whether a fish is a male or a female.
    Row("describe", 94, ("sex-asked", "fish|held-fish|strict-name",
                         "!held-cross|asks-name|rules|hurt|quiz|key|hybrid|names|tackle|sources|why|term"),
        ("24 inch walleye in october. hen or no", "is a 30 inch pike likely a female")),
    # Warm water, and whether what is caught may go back into it.
    Row("handling", 95, ("temp|too-warm", "letting-go|handling", "fish|held-fish",
                         "!seen|len|hurt|bite|how-deep|habitat|quiz|key|outside"),
        ("creek at 70 and i keep catching browns, am i ok releasing them",)),
    # The same for another fish, after a word that drops the first.
    Row("@same", 95, ("sameness", "fish", "self-drop|leave-walk", "held-last", "!seen|asks-name|contrast|versus"),
        ("what bait for shell cracker / nvm wife wants trout now, same thing but for stocked rainbows",)),
    # What one of two fishes set against each other takes, told by its mark.
    Row("tackle", 95, ("which-lure|tackle", "one-with|the-one", "after-contrast|after-describe", "short10",
                       "!fish|hurt|rules|size|weight|quiz|key"),
        ("mountain whitefish vs grayling / the one with the sail, what fly",)),
    # A fish of a length seen at a distance, with a guess.
    Row("identify", 94, ("fish-word", "guess|hint", "name-last", "question-mark", "len",
                         "!rules|seen|asks-name|contrast|size-word|size|weight|taxon"),
        ("4 ft fish rolling on top of the backwater, gar?",)),
    # A number of a record put right.
    Row("undo", 95, ("after-why|after-sources|after-help", "count", "denying", "not-name", "short6",
                     "!fish|seen|len|quiz"),
        ("Why was row 14 thrown out on import? Lepomis peltastes, lateral line 63 / My slip, 36 not 63",)),
    # A fish named with the mark by which it is known, to be said yes to.
    Row("describe", 94, ("one-fish", "one-with", "seen", "question-mark", "no-ask",
                         "!held-seen|asks-name|story|contrast|rules|place|size|guess|hint"),
        ("gizard shad, the one with the long string off the back fin, right?",)),
    # What is held from memory alone.
    Row("sources", 94, ("pageless", "fish|held-fish", "self-record|leans-sources", "!seen|rules|quiz|key"),
        ("Moxostoma: statements entered from memory, no page",)),
    # A name that folks have for what they hook.
    Row("names", 95, ("not-name", "local-name|unclear", "denying", "like", "hint", "!seen|quiz|key|rules|hurt|story"),
        ("old boys up here holler mullet when they hook em. aint no mullet is it",)),
    # How the assistant is spoken to, and a name with no more than "what is that".
    Row("help", 95, ("much-help|at-you", "help", "asking-form", "!fish|seen|hurt|rules|quiz|key|len|wt|place"),
        ("got gloves on n one bar of signal, how do i talk to you short",)),
    Row("names", 95, ("what-then", "group-nickname|local-name", "short6", "!held-fish|seen|rules|quiz|key|hurt"),
        ("grinnel. thats what now",)),
    Row("names", 95, ("much-weak-name", "folks-say", "asks-what", "!fish|seen-many|rules|quiz|key|hurt|size|place"),
        ("man on the radio keeps sayin the specks are bitin. specks of what",)),
    # Marks of a catch that may be a cross, and marks so many that nothing else can be meant.
    Row("identify", 94, ("cross-thought", "seen-3", "!held-seen|quiz|key|undo|hurt|rules|names|two-fish|which-group"),
        ("not the pure state fish, I think: lines low on the side broken up, vague spots with no order, one tooth "
         "patch on the tongue",)),
    # The stones of the ear.
    Row("describe", 95, ("ear-stones", "fish|held-fish", "!quiz|key|hurt|seen|rules|sources|contrast"),
        ("got a sheephead, where are the lucky stones in it",)),
    # What goes back, and whether anything must be seen to.
    Row("handling", 95, ("letting-go", "asks-any|asks-how|asks-what", "held-fish", "short10",
                         "!seen|rules|len|hurt|quiz|key|asked-quiz|asked-key"),
        ("bull trout, spots on the side, none on the dorsal / fair enough back it goes. any special way",)),
    # Back to a quiz after something else was asked.
    Row("quiz", 96, ("resume-quiz", "!seen|hurt|rules|key"),
        ("quiz me on bullheads / how big do bullheads get / huh ok. back to the quiz",)),
    # How a length was taken, told after it was judged.
    Row("rules", 95, ("rules-measure", "after-size|after-weight|after-rules", "short10|pointing",
                      "!fish|len|hurt|quiz|key|contrast"),
        ("34in flathead, decent? / i taped it to the middle of the tail not the tip btw",)),
    # How a fish is photographed for others to name.
    Row("handling", 95, ("photo-how", "!seen|hurt|rules|quiz|key"),
        ("how do i take a good picture so somebody can tell me what it is",
         "what should I photograph before I let it go")),
    # Whether a fish changes its colours.
    Row("describe", 94, ("colour-change", "fish|held-fish", "asking-form|question",
                         "!asks-name|seen-many|rules|hurt|quiz|key|why|contrast|dead|after-death|story"),
        ("does the bluegill change colour when spawning",)),
    # Those of a list that grow past a length.
    Row("list", 95, ("after-list|after-range", "asks-any", "len", "short10",
                     "!seen|fish|rules|contrast|weight|quiz|key"),
        ("what cats got a round tail / any of them go over two foot",)),
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
    Row("term", 94, ("sameness|contrast", "term-word",
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
    # The length at which it first breeds, and the one that goes with a weight; fish put into a pond.
    Row("size", 95, ("mature-length", "fish|held-fish|fishy", "!seen|rules|place|water|quiz|key|hurt|len"),
        ("smallest walleye is how long when it spawns", "how big before they spawn, walleye")),
    Row("weight", 95, ("length-of-weight", "wt", "fish|held-fish",
                       "!seen|rules|rules-act|keep|water|quiz|key|hurt|len|tackle-word|tackle"),
        ("whats a good length for a ten pound musky. or is that small",)),
    Row("rules", 94, ("pond-put", "self-order|stock-act|letting-go|live", "question|asks-can|wants-to",
                      "fish|held-fish|fishy", "!seen|hurt|quiz|key|outside|life-part|habitat|tackle|tackle-word|list"),
        ("should i put walleye in my pond",)),
    # No more than "where?", after a fish was told of or named.
    Row("range", 93, ("asks-where", "one-word", "held-fish",
                      "after-describe|after-identify|after-names|after-contrast"),
        ("walleye / where", "this a goldeye? big eye, silvery / where?")),
    # A part in one line for children, or explained by its name; words that need not be known.
    Row("term", 95, ("line-for", "term-word", "short10", "!fish|group|held-seen|quiz|key|list|rules|asks-name"),
        ("Adipose fin: one line a fourth grader can read.", "lateral line in one sentence for third grade")),
    Row("term", 95, ("quoted-term", "explain", "!fish|seen|quiz|key|rules|why|asked-key|asked-quiz"),
        ("bluegill vs pumpkinseed / Explain 'ear flap' for them.",)),
    Row("help", 95, ("at-you", "lesson-words", "yes-no|asks-do", "!fish|group|seen|class-asking|quiz|key"),
        ("do i gotta know fish words to talk to you",)),
    # The catch named anew had it been elsewhere; marks of a fish with a part like another animal's.
    Row("identify", 94, ("what-if", "place", "after-identify", "held-seen", "short10",
                         "!fish|rules|rules-act|keep|date|water|hurt|eat|tackle-word|size|weight|len|legal"),
        ("gar from a texas bayou, dark spots right up onto the top of the head / and if it was down in florida",)),
    Row("identify", 94, ("creature", "seen-many", "fishy", "no-ask",
                         "!hybrid|contrast|vs|list|rules|keep|quiz|key|hurt|tackle|tackle-word|sources|eat|asks-how"),
        ("ok: fish w a suction cup on its belly n frog eyes, lake michigan",)),
    # A water too warm to fish on, what it eats where a bait failed, how good a length is.
    Row("handling", 95, ("temp", "tackle|letting-go|fishing-words", "asks-can|might-do|question",
                         "!seen-many|rules-act|water|quiz|key|contrast|asks-name|len|habitat|bite|tackle-word"),
        ("stream reads 71 f. ok to catch n release browns?",)),
    Row("habitat", 94, ("eats-what", "fish|held-fish|fishy",
                        "!seen-many|rules|water|quiz|key|tackle-word|who-eats|hurt"),
        ("bigmouth buffalo wont touch a worm, so whats it eat",)),
    Row("size", 94, ("hows-that", "len|half", "fish|held-fish", "short10",
                     "!seen|rules|keep|place|water|weight|wt|quiz|key|hurt|tackle"),
        ("pike, 36 and a half, hows that", "18 inch crappie hows that")),
    # Names that belong to kinds elsewhere, and what somebody swears by one.
    Row("names", 95, ("outside-fish", "local-name|unclear", "yes-no|some-kind|confirm", "short10",
                      "!seen|quiz|key|rules|hurt|eat|bite|range|len|wt|size|list"),
        ("is a minnesota dogfish some kinda shark", "dogfish isnt a shark is it")),
    Row("names", 94, ("hearsay|disputed", "local-name", "group", "confirm|question-mark", "name-last",
                      "!seen|quiz|key|rules|hurt|eat|bite|len|wt|size|list|versus|vs|contrast|story|who-wins"),
        ("bait shop guy swears the river is full of jack salmon. thats a salmon?",)),
    # Marks in the flesh, and whether to eat it; whether others have looked it through.
    Row("handling", 95, ("flesh-marks", "eat|edible", "!seen|quiz|key|rules-act|what-is|what-is-a|term"),
        ("yellow grubs in the filets, toss or eat",)),
    Row("sources", 98, ("peer-review", "!fish|seen|quiz|key|rules|hurt"), ("is the base peer reviewed",)),
    # A part named after a printed quiz answers it.
    Row("quiz", 95, ("after-quiz", "one-word", "part", "!question-mark|term|asked-key|fish"),
        ("Four quiz questions on catfishes for my class, please / barbels",)),
    # Whether a fish is of some kind at all.
    Row("names", 94, ("yes-no", "taxon", "group", "strict-name", "name-last", "short6",
                      "!seen|live-there|eat|held-seen|list|rules|quiz|key|hurt|hybrid|confirm"),
        ("american eel, is it a lamprey", "is a burbot a catfish")),
    # A fish that is named and caught, and what is to be done with it.
    Row("handling", 94, ("story", "what-then", "one-fish|group", "short10",
                         "!seen|held-fish|two-fish|rules-act|hurt|contrast|part|quiz|key|size|weight|water|hedge"),
        ("snakehead caught, what now", "landed a bowfin, now what")),
    # What a fish is mistaken for.
    Row("contrast", 94, ("mistaken-with", "one-fish|group|unclear", "asks-what|which-of|list|name-last",
                         "short10|name-last",
                         "!seen|held-seen|two-fish|rules|story|quiz|key|hurt|sources|why|held-fish"),
        ("what gets confused with a walleye", "which fish look like a walleye")),
    # Two fishes in a winter's catch or a bait bucket that are to be told apart.
    Row("contrast", 94, ("versus", "two-fish", "ice-fishing", "short10",
                         "!tackle-word|tackle|bait-thing|how-deep|asks-how|seen|rules|bite|size|weight|eat"),
        ("laker or splake thru the ice",)),
    Row("contrast", 94, ("right-one", "two-fish|two-kinds", "!seen|rules-act|quiz|key|hurt|size|weight|len"),
        ("gizzard shad n threadfin, need the right one for cut bait",)),
    # After a verdict: another fish in its place, another day, whose water it is, how a fish is measured.
    Row("rules", 95, ("after-rules", "held-catch", "cross", "what-about|what-if", "count|one-of-them",
                      "!seen|makes-cross|life-part|size|weight|looks|by-look"),
        ("Vennimoor Lake in the mornin, what can i keep of bluegill / n what if one of the 3 is a gill x pumpkinseed "
         "cross",)),
    Row("rules", 95, ("after-rules", "held-catch", "correct", "date", "short6",
                      "!fish|seen|size|weight|tackle|asks-when|life-part"),
        ("can i keep bass on Sallowgum Lake april 10 / meant july",)),
    Row("rules", 94, ("after-rules", "private-water", "short10", "!fish|seen|term|contrast|quiz|key"),
        ("can i haul a cooler of live bluegill from my pond to my brothers / both ponds are private tho",)),
    Row("rules", 95, ("measure-how", "after-rules|rules|keep|legal|len", "!seen|quiz|key|hurt|weight|girth-word"),
        ("how many redbreast can i keep in north carolina / ok but how do you even measure one right",)),
    # The weight of a lure, crosses without a value, what is held of one part.
    Row("tackle", 95, ("after-tackle", "lure-weight", "short", "!fish|seen|len|wt|rules"),
        ("what do i throw for sauger / how heavy",)),
    Row("list", 95, ("list", "hybrid-word", "values-of|held-word", "denying", "!seen|quiz|key|rules|one-fish"),
        ("List the crosses that hold no fertility value.",)),
    Row("describe", 95, ("in-base", "part", "fish|held-fish", "asks-what|what-is|list",
                         "!seen|quiz|key|rules|group|list-word|which-group|sources|contrast|hybrid-word|denying"),
        ("show what is held on anal-spines for Ambloplites cavifrons",)),
    # A story with three marks or more and no fish named; a fish guessed against something not named.
    Row("identify", 93, ("seen-3", "story|somebody|something|class-asking",
                         "!fish|group|hybrid|cross|contrast|list|list-word|which-group|rules|rules-act|keep|sources|key|"
                         "quiz|handling|hurt|undo|undo-weak|retract|correct|correction|after-key|after-quiz|after-list|"
                         "asked-key|asks-how|tackle-word|outside|eat|len-ask"),
        ("I teach kindergarten, and in Oklahoma my brother snagged something that I told the class about, and they "
         "don't believe me. Nose like a long flat paddle, no scales anywhere, gill covers drawn out to a long point. "
         "Please give me a name so I look honest.",)),
    Row("identify", 93, ("seen-many", "one-fish", "versus", "question-mark", "story|somebody",
                         "!two-fish|two-kinds|rules|rules-act|keep|hurt|quiz|key|hybrid|list|asks-how|size|weight|"
                         "sources"),
        ("somebody traded her a fish in Maine. Just two black spots on the gill cover, the wrist of the tail slender. "
         "Brown trout or the real thing?",)),
    # Eggs that are to be eaten; how long a hurt lasts; a fish of the bowl that is ill.
    Row("handling", 97, ("fry-eggs", "!quiz|key|seen-many|bait-only"),
        ("you ever fry up gar eggs? got a big mess of em", "gar roe any good to eat")),
    Row("handling", 95, ("till-better", "after-handling", "short10", "!fish|seen|quiz|key|rules"),
        ("lil bullhead spiked me in the palm, throbbin bad / how long till it quits",)),
    Row("out-of-scope", 95, ("pet|in-bowl", "fish-ill|ill", "!quiz|key|rules|hurt|wild"),
        ("my pet goldfish in the bowl got white salt specks all over, which medicine",)),
    # Where in the land, in a word; on whose word; which kinds do what.
    Row("range", 94, ("where-abouts", "one-fish|held-fish", "short6",
                      "!seen|tackle|tackle-word|bite|water|rules|quiz|key|hurt"),
        ("bluespotted sunfish, whereabouts",)),
    Row("sources", 95, ("whos-word", "held-last", "short6", "!fish|seen|rules|quiz|key|hurt"),
        ("what kinda sunfish we got in minnesota / which runs the biggest / whos word is that",)),
    Row("list", 93, ("which-group|asks-what", "in-which",
                     "!fish|group|seen|rules|quiz|key|hurt|water|held-seen"),
        ("In which fishes does the father guard the eggs? A handful will do.",)),
    # Reasons that advice tells.
    Row("why", 95, ("grunting", "fish|held-fish", "why|makes|asks-how", "!seen-many|rules|quiz|key|hurt"),
        ("what makes a sheephead grunt when you hoist it", "how does a drum grunt")),
    Row("why", 95, ("lumped-in", "hybrid-word|hybrid", "why|asks-how|what-about", "!seen|quiz|key|hurt|keep"),
        ("how come the rules always lump the hybrid sunnies in w the regular ones",)),
    Row("handling", 95, ("harms-fish", "fish|held-fish|fishy|nests", "!seen|rules-act|quiz|key|eat|range"),
        ("gills are on the beds, what hook / does it hurt anything pulling em off the nest",)),
    # A fish that should not go back alive, one that is held, a photo of it in warm water, a hook cut off.
    Row("rules", 95, ("back-alive", "fish|held-fish|which-of", "!seen|quiz|key|hurt|will-live|dies-anyway|snipped"),
        ("mottled sculpin compared with round goby / which of the two should not go back alive",)),
    Row("handling", 94, ("asks-how", "handling", "held-fish", "short10",
                         "!fish|seen-many|quiz|key|rules|tackle|size|weight|eat|asks-name"),
        ("chain pickerel / mouth is all needles, hows a guy hold it",)),
    Row("handling", 94, ("snipped", "after-handling", "short10", "!fish|seen|quiz|key|rules"),
        ("bluegill swallowed the hook / ok snipped. how should he go back",)),
    Row("next-question", 95, ("officer-looks", "after-contrast|held-two", "!seen|fish|quiz|key|place|water"),
        ("white bass vs wiper vs striper, keep it quick / whats the game warden gonna look at",)),
    # A rule by its number.
    Row("rules", 95, ("rule-number", "asks-what|what-is|explain|rules|term|after-rules",
                      "!seen|quiz|key|sources|why|contrast"),
        ("what does H03 say", "what is rule H12", "explain rule H14")),
    # What the program cannot do on the net.
    Row("out-of-scope", 95, ("go-online", "!seen|quiz|key|hurt|rules|place|water"),
        ("go online, fetch the newest redhorse papers and add their counts",)),
    Row("out-of-scope", 96, ("both-eyes", "!quiz|key|hurt"), ("flat fish, both eyes on one side",)),
    # In a curator's words.
    Row("range", 95, ("native-extent", "fish|held-fish", "!seen|part|quiz|key|two-fish|rules"),
        ("Archoplites interruptus: what native extent is on file",)),
    Row("contrast", 95, ("ranges-cross", "two-fish", "!seen|quiz|key|rules|place"),
        ("list characters on which the scored ranges of spotted bass and Alabama bass cross",)),
    # Who says so in print, the colour of a part of one of two.
    Row("sources", 96, ("in-print", "who-gives|whos-word|sources", "held-last", "!seen|quiz|key|fish"),
        ("how do I tell pike from muskie / and who says so, in print",)),
    Row("describe", 94, ("what-colour", "held-fish", "part", "after-contrast|after-describe|after-names",
                         "!fish|quiz|key|rules|story|own-evidence|why"),
        ("yellow bullhead or brown bullhead / that yellow one, what shade should the chin barbels be",)),
    Row("tackle", 94, ("after-tackle", "bigger-than|smaller-than|leans-size", "short10",
                       "!fish|seen|len|wt|quiz|key|asks-how|weight|size|question-mark"),
        ("what hook for rock bass / no, smaller, they just peck at it",)),
    # How large a part of the fish just told of is.
    Row("describe", 94, ("after-describe", "part", "seen", "size-large|size-small", "question-mark",
                         "creature|bait-thing", "!fish|quiz|key|rules|asks-name|have-verb|on-my-fish"),
        ("what does a warmouth look like / mouth big enough for a crawdad?",)),
    # How a feature is looked at or counted, the colours of breeding fish.
    Row("term", 95, ("how-look", "part|term-word", "short10",
                     "!fish|seen-many|quiz|key|rules|rules-measure|hurt|len|wt|asks-name|key-word"),
        ("how do I count anal rays", "where do I look for the lateral line", "how are gill rakers counted")),
    Row("describe", 94, ("breeding", "colour-asked", "fish|held-fish", "short6",
                         "!seen-many|quiz|key|why|rules|asks-when|sources|two-fish"),
        ("breeding brook trout colour", "spawning colours of a sockeye")),
    # A length against the usual one, what sets two apart in a curator's words.
    Row("size", 95, ("against-usual", "len", "fish|held-fish", "!seen|quiz|key|rules|water|two-fish"),
        ("Walleye, TL 615 mm, my own catch. Where does that sit against the usual range?",)),
    Row("contrast", 95, ("diagnostic-of", "two-fish", "!seen|quiz|key|rules|place"),
        ("Noturus miurus and N. stigmosus: diagnostic states held for each?",)),
    Row("contrast", 95, ("contrast", "two-fish", "elsewhere", "asks-can|have-verb",
                         "!seen|quiz|key|rules|live|pet|place"),
        ("May I have the spotted sunfish and the redspotted sunfish in two columns? It is for an aquarium label.",)),
    Row("out-of-scope", 95, ("stocking-when", "fish", "asks-what|asks-many|question|asks-how", "!seen|quiz|key|hurt"),
        ("what number of muskies did the state put in our river last fall",)),
    # Two told by looking, the names that are accepted, a scale that is not believed.
    Row("contrast", 94, ("by-sight", "two-fish", "!seen|quiz|key|rules|hybrid-word|names"),
        ("can florida bass and largemouth be told by sight",)),
    Row("names", 95, ("accepted-names", "fish", "!seen|quiz|key|rules|asks-how|contrast|list|in-base"),
        ("Accepted names please: Lepomis cyanella; Stizostedion canadense.",)),
    Row("weight", 95, ("scale-doubted", "len", "wt", "!quiz|key|rules|water|place|asks-name"),
        ("19 1/2 in walleye pulled the scale to 3 lb 4 oz, scale lying or what",)),
    # A family by the trade's word for its fishes, alone.
    Row("term", 93, ("one-word", "group-term", "group-nickname", "!seen|asked|quiz|key|held-fish"), ("centrarchid",)),
)
