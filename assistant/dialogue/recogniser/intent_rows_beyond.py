"""Rows of the recogniser table on what no base of fishes holds: the day's bite, waters, prices (layer 4).

Scores from 93: they stand whatever the words of a line lean to, as those of ``intent_rows_sure`` do.
"""

from __future__ import annotations

from assistant.dialogue.recogniser.intent_row import Row

BEYOND_ROWS: tuple[Row, ...] = (
    # How it is out there now.
    Row("out-of-scope", 95, ("now-water", "!fish|fishy|group|seen|hurt|quiz|key|why|term|what-is-a|rules|tackle-word"),
        ("river stage at cincinnati right now??", "what is the water temp on lake erie today",
         "lake level at kentucky lake", "is the river running high this morning")),
    Row("out-of-scope", 94, ("now-report", "!seen|hurt|quiz|key|tackle-word|rules"),
        ("whats the fishing report for lake erie", "any catch reports on sauger below the dam")),
    Row("out-of-scope", 94, ("now-bite",
                             "!seen|hurt|asks-name|quiz|key|rules-open|rules|asks-what|asks-how|asks-when|which-group|"
                             "tackle-word|tackle|bait-only|fishing-time|contrast|versus|vs|why|handling|not-biting|"
                             "ice-safety"),
        ("are walleye biting on lake erie right now", "is redfish bitin off folly beach pier",
         "are white bass running in the river yet")),
    Row("out-of-scope", 94, ("bite", "this-moment", "yes-no|asks-who", "fish|fishy|group",
                             "!seen|hurt|asks-name|quiz|key|rules-open|rules|asks-what|asks-how|asks-when|which-group|"
                             "tackle-word|tackle|bait-only|fishing-time|contrast|versus|vs|why|handling|not-biting|"
                             "ice-safety|story|keep"),
        ("are the eyes biting on mille lacs right now", "are crappie biting at clear lake this morning")),
    Row("out-of-scope", 93, ("asks-many", "live-there", "fish|fishy",
                             "!seen|rules|keep|list|part|which-group|quiz|key"),
        ("how many bluegill live in the lake by my house",)),
    Row("out-of-scope", 93, ("hostile", "short10", "!fish|seen|hurt|asked|quiz|key")),
    # Another animal at the bait or the catch.
    Row("out-of-scope", 94, ("wild-animal", "steals",
                             "!seen|held-seen|hurt|rules|rules-act|quiz|key|harms|asks-can|fish|group|tackle-word|hook-in"),
        ("what kind of turtle keeps stealing our worms", "raccoon is stealing our bait what do we do",
         "which animal took the fish off our stringer")),
    # What it costs.
    Row("out-of-scope", 94, ("price",
                             "!seen|hurt|quiz|key|rules-act|fishing-licence|penalty|tackle-word|tackle|asks-can|term|"
                             "water"),
        ("bluegill / whats it bring a pound at the market", "how much does catfish sell for per pound",
         "price of walleye fillets", "what is paddlefish caviar selling for")),
    Row("out-of-scope", 94, ("is-biting", "yes-no", "fish|fishy|held-fish", "short6",
                             "!seen|hurt|tackle-word|bait-thing|place|water|which-lure|rules|quiz|key|asks-what|"
                             "asks-when|asks-where|asks-how|pressure|fishing-time|temp"),
        ("are the walleye biting", "are crappie bitin yet", "tell me about walleye / are they biting")),
    # What no word can be read in.
    Row("out-of-scope", 93, ("noise", "held-last"), ("can I keep a walleye on Vennimoor Lake / ;;;///asd",)),
    # What is to be written for somebody.
    Row("out-of-scope", 95, ("written-work", "write-for-me", "!fish|seen|hurt|quiz|key|rules|term|describe|contrast"),
        ("write my boy's book report and forget the fish", "never mind fish, do my math homework",
         "can you write a cover letter for me")),
    # Other seasons, and when a water is stocked.
    Row("out-of-scope", 95, ("other-game", "!fish|seen|hurt|quiz|key"),
        ("is duck season open in ohio", "when does deer season start in michigan", "can i hunt turkey in iowa now")),
    Row("out-of-scope", 94, ("stocking-when", "!hybrid|makes-cross|seen|hurt|quiz|key|taken-from|sources|why|two-kinds|"
                             "contrast|vs"),
        ("when does the stocking truck come", "when do they stock trout in the creek")),
    # Whether it is the fish of another day, and what goes with it on the plate.
    Row("out-of-scope", 93, ("met-again", "caught-before", "pointing|yes-no|question-mark|asks-how",
                             "!same-kind|two-fish|two-kinds|contrast|size|weight|rules|seen|tackle|tackle-word|"
                             "names|quiz|key|place|water"),
        ("was this the same largemouth i let go last year",)),
    Row("out-of-scope", 93, ("kitchen", "fish|asks-what", "short6",
                             "!seen|cooking|rules|hurt|sources|story|bite|tackle"),
        ("what sauce goes with walleye",)),
)
