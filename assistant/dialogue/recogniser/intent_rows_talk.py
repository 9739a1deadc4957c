"""Rows of the recogniser table for what is said in the course of a talk: scores from 93 (layer 4).

They stand whatever the words of a line lean to, as those of ``intent_rows_ordinary`` do: two fishes mixed up, the next
one of the same question, what a naming rests on, a length put right, two people who call a fish by two names.
"""

from __future__ import annotations

from assistant.dialogue.recogniser.intent_row import Row

TALK_ROWS: tuple[Row, ...] = (
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
    Row("contrast", 95, ("doubted", "after-rules", "fish", "held-fish", "short10",
                         "!of-held-kind|seen|two-fish|rules|rules-act|keep|water|place|len|wt|date|count|hurt|quiz|key|size|weight|"
                         "handling|tackle|names|hybrid|cross|habitat|eat"),
        ("walleye in Quillander, can I keep it / or is it a sauger",
         "caught a northern snakehead in Drennick Reservoir / could it be a bowfin")),
    Row("contrast", 95, ("hesitates", "what-if", "after-rules", "fish", "held-fish", "short10",
                         "!seen|two-fish|rules|rules-act|keep|water|place|len|wt|date|count|hurt|quiz|key|size|weight|"
                         "tackle|names|hybrid|cross|habitat|eat"),
        ("snakehead outta Drennick Reservoir, throw it back or what / hold up, what if its a bowfin",)),
    Row("@same", 93, ("doubted", "after-rules", "one-fish", "of-held-kind", "short6", "!seen|hurt|quiz|key"),
        ("bass in Quillander, can I keep it? / might be a smallmouth",)),
    Row("contrast", 94, ("why-not", "after-describe", "held-fish", "fish|like", "short6",
                         "!held-seen|seen|two-fish|rules|rules-act|water|place|hurt|quiz|key|size|weight|handling|"
                         "tackle|names|hybrid|cross|habitat|eat|sources|asks-kin"),
        ("describe the spotted bass / why not largemouth?", "tell me about the walleye / why not a sauger")),
    # The next fish of the same question, told by what it is among its kind.
    Row("@same", 93, ("what-about", "after-info", "one-fish", "no-ask", "short6", "the-one|group-ones",
                      "!seen|two-fish|place|date|part|sex|stage|len|wt|contrast|size|weight|after-contrast"),
        ("whats a spotted gar look like / and the big alligator ones",)),
    Row("@same", 93, ("just-that", "after-info", "one-fish", "no-ask", "short6",
                      "!seen|two-fish|place|water|date|part|sex|stage|len|wt|weight|weight-unit|after-contrast|asked"),
        ("how long do bass get / only the smallmouth",)),
    Row("contrast", 95, ("which-of|who-has", "after-contrast", "held-two", "seen|part", "short10",
                         "!fish|group|rules|rules-act|water|place|len|wt|hurt|quiz|key|why|sources|names|"
                         "kinds-held|eat|habitat|tackle|handling|size|weight|hybrid|asks-name|yes-no"),
        ("longear or redbreast, creek in alabama / which ones ear got the white rim",
         "bluegill or green sunfish / which ones got the bigger mouth", "channel or blue cat / which ones got spots",
         "walleye vs sauger / and which ones got a spot on the dorsal fin")),
    Row("tackle", 94, ("bait-thing", "asks-do", "yes-no", "leans-tackle", "one-fish|group", "short6", "no-ask",
                       "!seen|rules|rules-act|water|place|hurt|quiz|key|eat|fish-eats|edible|story|two-kinds|held-seen"),
        ("will fliers take a popper", "would a bowfin take a frog", "do gar hit spinners")),
    Row("tackle", 95, ("bait-thing", "both|answer-either|which-of", "held-fish", "short10",
                       "!seen|rules|rules-act|water|place|hurt|quiz|key|eat|fish-eats|story|contrast|asks-name"),
        ("what do fliers eat / and redears / either one on a popper?",
         "how big do bluegill get / and green sunfish / would both take a fly")),
    Row("habitat", 95, ("eaten-by", "fish|group",
                        "!seen|rules|rules-act|water|hurt|quiz|key|story|contrast|asks-can|tackle-word|two-kinds|edible"),
        ("what eats trout", "what preys on walleye", "predators of the bluegill", "what fish eat sunfish")),
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
    Row("describe", 95, ("length-of-answer", "after-describe", "short10", "!fish|seen|len|wt|water|place|rules"),
        ("Describe the redear sunfish for third graders. / Half that length", "describe a burbot / half as long please",
         "tell me about the bowfin / too long, cut it in half")),
    Row("identify", 94, ("half", "confirm", "one-fish", "held-seen", "short10",
                         "!rules|size|weight|tackle|handling|names|hybrid|contrast|quiz|key|len|wt"),
        ("big mouth, long pointed side fins, dark spot in the soft dorsal / could it be half green sunfish?",)),
    Row("identify", 94, ("after-contrast", "held-seen", "asks-name|what-it-is", "short6",
                         "!fish|seen|rules|sources|names|quiz|key|which-of|tackle|handling|size|weight|hybrid"),
        ("channel cat vs blue cat, mine has zero spots / so which is it",
         "sauger vs walleye, mine has no white tip on the tail / which one is it then")),
    Row("contrast", 95, ("versus", "two-kinds", "neither-one", "seen",
                         "!held-seen|story|rules|size|weight|habitat|range|tackle|handling|sources|hybrid|eat"),
        ("lil flathead or a bullhead? neither ones tail is forked", "warmouth or rock bass? neither has a forked tail",
         "golden shiner or rudd, neither of them has spots")),
    Row("identify", 94, ("something", "stay-in|in-bucket", "short10",
                         "!fish|seen|rules|rules-act|asks-can|asks-do|asks-how|asks-what|asks-any|hurt|quiz|key|keep"),
        ("something flat and spiny in my livewell, help", "got something long and slimy in the cooler")),
    Row("names", 94, ("unclear|place", "local-name", "ice-fishing", "question-mark", "no-ask", "short10",
                      "!seen|tackle|habitat|size|weight|handling|rules|len|wt|two-kinds|bait-thing|asks-when|quiz|key"),
        ("lawyer fish through the ice on huron?", "lawyer through the ice?",
         "togue through the ice in maine?")),
    Row("contrast", 95, ("length-of-answer", "after-contrast", "short10", "!fish|seen|len|wt|water|place|rules"),
        ("walleye vs sauger / make it half that long",)),
    Row("undo", 93, ("correct", "len", "held-length", "no-ask", "short10", "after-weight|after-size",
                     "!fish|seen|water|place|rules|wt|date"),
        ("black crappie fifteen and a half, guess it for me / oops 14 flat, ruler was off",)),
    Row("undo", 95, ("correction", "len", "held-length", "no-ask", "short10", "!fish|seen|water|rules|wt|answer"),
        ("broken stripes and a humped back, 17 inches / 27 not 17",)),
    Row("names", 93, ("sameness", "two-mentions", "local-name|unclear|group-nickname", "short10", "asks-do|question",
                      "!seen|hybrid|rules|size|contrast|water|eat|tackle|habitat|handling|weight"),
        ("are goggle-eye and rock bass the same fish",)),
    Row("rules", 93, ("water", "date", "len", "two-fish", "!seen|asks-name|contrast|habitat|tackle|hurt|list"),
        ("Tidderbrack Creek, 2026-10-05: 20 in fish, bowfin or northern snakehead, cannot tell",)),
    # What a fish weighed, told beside what it looked like.
    Row("identify", 93, ("wt", "seen", "no-ask|much-weight|seen-3|group",
                         "!taxon|len|rules|water|weight-to-length|question-mark|question|asks-how|asks-what|asks-can|asked|correct|contrast|hurt|handling|tackle|list|size|"
                         "names|why|sources"),
        ("weighed four pounds, silver with broken stripes", "a gar, 80 pounds, wide snout")),
    # A mark told of one of those called so; the length of one's own, told after how big they get.
    Row("identify", 93, ("pointing", "after-names", "seen", "no-ask", "short10",
                         "!fish|contrast|list|rules|question-mark|question|size|hurt|water|quiz|key"),
        ("whats a brim exactly / the one with the red ear",)),
    Row("size", 93, ("after-size", "len", "held-fish", "have-verb", "no-ask", "short6",
                     "!fish|seen|rules|water|date|correct|place|wt|hurt"),
        ("size of musky / mine has 1 m 30",)),
    # Whether they will bite, or the way is in vain.
    Row("out-of-scope", 93, ("forecast", "bite", "!fish|seen|hurt|asks-name|quiz|key|rules-open|asks-what|asks-when|"
                             "tackle-word|bait-only|asks-how|place|water"),
        ("fish gonna bite saturday mornin or am i wastin gas",)),
    # Either of two fishes pointed to in a place.
    Row("range", 93, ("answer-either|both", "two-fish", "place", "held-last", "short6", "no-ask", "question-mark",
                      "!seen|rules|rules-act|water|contrast|vs|versus|len|wt|date|hurt|quiz|key|asks-how|asks-can"),
        ("what do fliers eat / both flier and redear in ohio?",)),
    Row("tackle", 93, ("steals", "bait-thing", "asks-name", "!wild-animal|animal|seen|hurt|rules|water|quiz|key"),
        ("what kind of fish keeps stealing our worms",)),
    # A length told again after a verdict, and why it is another; fish that steal bait.
    Row("rules", 95, ("after-rules", "correct", "len", "held-length", "short10",
                      "!taxon|seen|hurt|weight|tackle|question-mark"),
        ("keeper walley? / lake skarrowin, 47 cm, july 5 / remeasured, 45, he wouldnt hold still",)),
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
    Row("next-question", 94, ("now-what", "held-seen",
                              "!seen|fish|two-kinds|rules|quiz|key|asked-key|asked-quiz|hurt|place|after-contrast"),
        ("silver panfish with black flecks / what else do i look at",)),
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
    # Which source gives a figure just told of or not; in what kind of water it lives, at what depth to fish for it.
    Row("sources", 95, ("who-gives", "count|len", "after-list|after-sources|after-describe|after-size", "short6",
                        "!fish|seen|rules|quiz|key|place|water|tackle|weight"),
        ("conflicting pore counts, Esox lucius / who gives six?",)),
    Row("sources", 95, ("what-about", "count|len", "after-sources", "no-ask", "short6",
                        "!fish|seen|rules|quiz|key|place|water|wt|part|date|other|more-figures"),
        ("Which reference gives 310 mm as max TL for L. cyanellus? / And the 250?",)),
    Row("habitat", 95, ("what-water", "one-fish|group|held-fish",
                        "!seen|rules|rules-act|water|quiz|key|hurt|two-fish|contrast|list|names|tackle|tackle-word|"
                        "asks-name|names-next|my-catch"),
        ("My class in New Jersey hopes to dip-net a bluespotted sunfish. What sort of water?",
         "hoping to find a longear in ohio. what kind of stream")),
    Row("tackle", 95, ("how-deep", "after-tackle", "held-fish", "short6",
                       "!fish|seen|rules|water|quiz|key|hurt|habitat|size|weight|date|asks-do"),
        ("hook size for red ears, crickets ok? / how deep", "best bait for crappie / how far down")),
    # Whether it is good to eat, asked in two or three words; a talk of rules closed with thanks.
    Row("handling", 95, ("edible", "held-fish", "short6",
                         "!fish|seen|rules|rules-act|water|place|quiz|key|story|comparing|which-of|asks-who|two-fish|"
                         "they-eat|eaten-by|cooking|kitchen"),
        ("whats a longear like / how do they nest / decent eatin?", "how do bluegill nest / any good to eat")),
    Row("small-talk", 95, ("thanks-close", "after-rules", "short10",
                           "!question|question-mark|yes-no|asking-form|fish|seen|len|wt|count|date|place|water|what-about|"
                           "undo|correct|correction"),
        ("16 in largemouth, keeper? / Sallowgum Lake, mid april / ok ill toss it back, thanks",
         "walleye in Quillander, can I keep it / alright she goes back in. thanks")),
    # One of two fishes that somebody would kill, two or more to be sorted, two right beside each other in a place.
    Row("contrast", 94, ("guess", "versus", "two-kinds", "handling", "somebody|wants-to", "short10",
                         "!seen|held-seen|rules|water|quiz|key|hurt|eat|edible|asks-how|asks-can|asks-what|my-catch"),
        ("grinnel or a snakehead? buddy wants to kill it", "bowfin or a snakehead? my neighbor wants to bonk it")),
    Row("contrast", 94, ("whats-what", "two-kinds|two-fish", "short10",
                         "!seen|held-seen|rules|water|quiz|key|hurt|size|weight|tackle|habitat|eat"),
        ("white bass, wiper, striper. whats what", "pike pickerel musky what's what")),
    Row("contrast", 93, ("names-abut", "two-kinds", "no-ask", "place|waters|unknown-place", "short10",
                         "!question|question-mark|seen|held-seen|rules|water|len|wt|quiz|key|hurt|hybrid|tackle-word|"
                         "bait-only|date|called-next|list|which-group|in-order"),
        ("sauger walleye, cloudy lake in north dakota", "longear redbreast, creek in alabama")),
    # Which of two scientific names a fish bears now; a local name that is said to be wrong.
    Row("names", 95, ("binomials", "versus|vs",
                      "!seen|contrast|sources|rules|place|water|size|weight|habitat|quiz|key|hurt|hybrid|asks-how"),
        ("Largemouth now M. nigricans or M. salmoides?", "Northern sunfish: L. peltastes or L. megalotis?")),
    Row("names", 94, ("one-for-other", "disputed|confirm", "!said-to-be",
                      "!seen|held-seen|rules|water|len|wt|quiz|key|hurt|hybrid|size|weight|eat|tackle|versus|vs|contrast|"
                      "like|part|keep|story"),
        ("my granddad calls it a bream but its a bluegill, is he wrong",)),
    Row("names", 94, ("folks-say", "disputed|confirm", "two-mentions|two-kinds",
                      "!seen|held-seen|rules|water|len|wt|quiz|key|hurt|hybrid|size|weight|eat|tackle|versus|vs"),
        ("everbody down the bayou calls it white perch but its a crappie, am i wrong",
         "everyone down here calls it bream but its a bluegill, am i right")),
    # A loose name beside the fish that bears it; whether a kind has come to a place by now, and what is to be done
    # with one that is caught; which fishes of a list have a count.
    Row("names", 94, ("sameness", "names-weak", "many-names", "two-mentions", "short10",
                      "!seen|held-seen|story|part|quiz|key|rules|size|weight|habitat|tackle|handling|hybrid|cross|sex|"
                      "stage|taste|meat|looks|asks-how|water|eat"),
        ("is a mud fish the same as a bowfin", "is a mud cat the same as a flathead")),
    Row("range", 94, ("arrived", "place", "fish|held-fish", "yes-no|question-mark|range|asks-any|asks-do",
                      "!seen|rules|rules-act|rules-open|open-word|quiz|key|hurt|contrast|names|tackle|tackle-word|asks-name|"
                      "water|hybrid|my-catch|handling|size|weight|len|wt|call-it|bite|asks-how|asks-when|asks-what|"
                      "life-part|how-deep|two-kinds|story|nests|list|spawn"),
        ("snakeheads made it to arkansas yet?", "have snakeheads shown up in Maryland",
         "has the snakehead spread to Georgia yet")),
    Row("handling", 95, ("if-landed", "what-then", "held-fish|fish",
                         "!seen|held-seen|rules|keep|may-keep|water|len|wt|quiz|key|hurt|contrast|size|weight|edible|eat|"
                         "cooking|names|hybrid"),
        ("snakeheads made it to arkansas yet? / what do i do if i land one",
         "is the round goby invasive / if i hook one what am i supposed to do")),
    Row("list", 96, ("counts-of", "have-verb", "asks-what|which-of", "after-list", "part", "pointing|these-tables",
                     "!fish|group|rules|water|story|quiz|key|contrast|sources|place|hurt|len|wt|why|asks-name"),
        ("Which Ambloplites does the base hold? / and of these, which have anal spine counts",)),
    # The answers of a key apart from it.
    Row("key", 97, ("asked-key", "lesson-answers", "!fish|quiz|rules|seen"),
        ("make a simple key for perch, walleye and sauger / Answers on their own sheet",)),
    # Which kinds of a group have a mark, with "got" for "have"; whether a fish would last in a kind of water.
    Row("list", 94, ("which-group", "group", "seen", "story", "asks-what", "no-ask",
                     "!my-catch|names-next|asks-name|what-it-is|tells-it|somebody|held-seen|confirm|taxon|hybrid|which-of|"
                     "contrast|why|sources|len|wt|quiz|key|what-is|date|water|about-it|rules|hurt|seen-3|asks-do"),
        ("which bass got a jaw that stops before the back of the eye", "which sunfish got a red edge on the ear",
         "what trout got a forked tail")),
    Row("habitat", 95, ("last-there", "fish|held-fish", "waters|water-heat|asks-can|asks-do",
                        "!seen|rules|rules-act|hurt|quiz|key|tackle|tackle-word|names|eat|edible|letting-go|asks-how|"
                        "place|water|which-group|list|contrast|pet|moving-fish"),
        ("trout, black specks all over, pink streak / no red slash under the chin / would it make it in a warm pond",
         "would a rainbow trout last in a warm pond", "could a brook trout make it in a hot shallow pond")),
    # What to do where two fishes that look alike have rules of their own.
    Row("rules", 95, ("rules-differ", "held-two|two-fish|two-kinds|held-fish",
                      "!seen|quiz|key|hurt|place|water|len|date|size|names|why|habitat|sources"),
        ("brookie or splake? wormy back, tail forked some / so what do i do if the law treats em different",
         "walleye vs sauger / what if the limits are different and i cant tell",
         "pike vs musky / what do i do when one is legal and the other isnt")),
    # What a part of a fish is for.
    Row("why", 94, ("what-for", "part", "one-fish|group|held-fish", "asks-what|why",
                    "!rules|tackle|tackle-word|eat|edible|quiz|key|hurt|water|len|contrast|identify|names|size|count|"
                    "sources"),
        ("what does a walleye need those big eyes for", "what does a paddlefish use its long snout for")),
)
