"""The wording of answers about fishing rules: every sentence of the rules handler stands here, once (layer 4).

House tone: the verdict first, then the reason with its numbers, then what it rests on. Nothing here calls an act lawful:
rules "would let you", and somebody official has the last word.
"""

from __future__ import annotations

from assistant.text import join, sentence

ANY_FISH = "any fish"
VERDICT = {"keep": "Keep", "release": "Release", "closed": "Closed", "do-not-release": "Do not release", "unknown": "Unknown"}
ACT = {
    "keep": "these rules would let you keep it; letting it go is always fine",
    "release": "put it back",
    "closed": "fishing for it is not open; one caught by accident goes back at once",
    "do-not-release": "it must not go back alive",
    "unknown": "no lawful act is certain",
}


# --- small pieces -------------------------------------------------------------------------------------------------

def about(text: str) -> str:
    """A guessed length."""
    return f"about {text}"


def over(text: str) -> str:
    """A length beyond another."""
    return f"over {text}"


def under(text: str) -> str:
    """A length short of another."""
    return f"under {text}"


def from_to(low: str, high: str) -> str:
    """A length somewhere between two."""
    return f"{low} to {high}"


def span(low: int, high: int) -> str:
    """A count between two."""
    return f"{low} to {high}"


def span_both(low: str, high: str, unit: str, other_low: str, other_high: str) -> str:
    """Two lengths in both units."""
    return f"{low} to {high} {unit} ({other_low} to {other_high})"


def ends(low: bool, high: bool) -> str:
    """Which ends of a span belong to it."""
    if low and high:
        return "both ends included"
    if not low and not high:
        return "ends not included"
    return "the lower end included" if low else "the upper end included"


def keep_span(text: str, ends_told: str) -> str:
    """A harvest slot."""
    return f"only fish of {text} may be kept, {ends_told}"


def release_span(text: str, ends_told: str) -> str:
    """A protected slot."""
    return f"fish of {text} go back, {ends_told}"


def minimum(text: str, included: bool) -> str:
    """A minimum length."""
    return f"at least {text}" if included else f"longer than {text}"


def maximum(text: str, included: bool) -> str:
    """A maximum length."""
    return f"at most {text}" if included else f"shorter than {text}"


def release_above(text: str, included: bool) -> str:
    """Everything from a length up goes back."""
    return f"fish of {text} and longer go back" if included else f"fish over {text} go back"


def release_below(text: str, included: bool) -> str:
    """Everything up to a length goes back."""
    return f"fish of {text} and shorter go back" if included else f"fish under {text} go back"


def at_most_over(count: int, text: str, included: bool) -> str:
    """A number of large fish."""
    return f"at most {count} of {text} or longer" if included else f"at most {count} over {text}"


def no_limit(name: str) -> str:
    """A count without a limit, as the rule states it."""
    return f"no limit on {name}, as the rule states"


def of_limit(have: str, limit: int, name: str, kind: str) -> str:
    """A count of a limit."""
    where = " in possession" if kind == "possession" else " over the length" if kind == "one-over" else ""
    return f"{have} of {limit} {name}{where}"


def cross(first: str, second: str) -> str:
    """A cross by its parents."""
    return f"{first} x {second} hybrid"


def words_of(key: str) -> str:
    """An id nobody gave a name."""
    return key.replace("-", " ")


def open_until(last: str) -> str:
    """Open for keeping."""
    return f"open through {last}" if last else "open all year"


def release_only_until(last: str, opens: str) -> str:
    """Open for fishing, not for keeping."""
    until = f" through {last}" if last else ""
    return f"release only{until}" + (f", keeping opens on {opens}" if opens else "")


def closed_until(opens: str) -> str:
    """Not open."""
    return f"closed until {opens}" if opens else "closed"


def rule(tag: str, field: str = "") -> str:
    """A rule with the field that binds, for the end of a sentence."""
    return f" ({field}, rule {tag})" if field else f" (rule {tag})"


def rules(tags: str) -> str:
    """Several rules, for the end of a sentence."""
    return f" ({tags})" if tags else ""


ITS_LENGTH = "its length"
THIS_FISH = "this fish"
FIELD_OF = {"daily": "bag", "possession": "possession limit", "length": "length rule", "season": "season"}


def one_of_many(names: list[str]) -> str:
    """Many possible fishes."""
    return f"one of several fishes ({', '.join(names)} and others)"


# --- the verdict --------------------------------------------------------------------------------------------------

def verdict_lead(word: str, why: str) -> str:
    """The verdict and its reason."""
    return f"{VERDICT[word]}: {ACT[word]}. {why}"


def sequence_lead(words: str) -> str:
    """The verdicts of several fish, places or days."""
    return f"Verdict: {words}."


def step_lead(number: int, what: str, text: str) -> str:
    """One of several."""
    return f"{number}. {what}. {text}" if what else f"{number}. {text}"


def may_keep(fish: str, place: str, fewer: str, length: str) -> str:
    """Why it may be kept."""
    size = f" at {length}" if length else ""
    return sentence(f"{fish}{size} on {place}: {fewer}")


def fewer_than(limits: list[str]) -> str:
    """Kept count not told."""
    return f"keep if you have fewer than {join(limits)} so far today"


def room(counts: list[str]) -> str:
    """Kept count told: what is left."""
    return f"the day is not full: {join(counts)} before this one"


OPEN_NO_LIMIT = "the rule states no limit"
LIMITLESS = "the season is open"


def protected(fish: str, tag: str) -> str:
    """On the protected list."""
    return sentence(f"{fish} is protected here and always goes back; no rule of a single water loosens that{tag}")


def prohibited(fish: str, tag: str) -> str:
    """On the prohibited list."""
    return sentence(f"{fish} is on the prohibited list: kill it, photograph it, report it, and never carry it alive{tag}")


def closed_water(place: str, opens: str, tag: str) -> str:
    """All fishing closed."""
    when = f"; it opens again on {opens}" if opens else ""
    return sentence(f"{place} is closed to all fishing on this day{when}{tag}")


def closed_season(fish: str, place: str, opens: str, tag: str) -> str:
    """Season not open."""
    when = f" and opens on {opens}" if opens else ""
    return sentence(f"the season for {fish} on {place} is closed on this day{when}; it may not be aimed for either{tag}")


def closed_hours(starts: str, ends_at: str, tag: str) -> str:
    """Not at this hour."""
    again = "after midnight" if ends_at == "24:00" else f"at {ends_at}"
    return sentence(f"no fishing from {starts} to {ends_at}; it reopens {again}{tag}")


def closed_ice(fish: str, tag: str) -> str:
    """Season depends on open water."""
    return sentence(f"the season for {fish} holds in open water only, not through ice{tag}")


def not_for_angler(place: str, age: int, tag: str) -> str:
    """An age rule."""
    return sentence(f"{place} is for anglers under {age} only{tag}")


def release_only(fish: str, place: str, last: str, opens: str, tag: str) -> str:
    """Fishing open, keeping not."""
    until = f" through {last}" if last else ""
    when = f"; keeping opens on {opens}" if opens else ""
    return sentence(f"{fish} on {place} may be caught and released only{until}{when}{tag}")


def wrong_length(length: str, limit: str, tag: str) -> str:
    """The length forbids it."""
    return sentence(f"{length} does not fit the length rule: {limit}{tag}")


def one_over(length: str, limit: str, have: int, tag: str) -> str:
    """One-over used up."""
    used = f"{have} kept already" if have else "none allowed"
    return sentence(f"{length} is over the mark, and of such fish {limit}; {used}{tag}")


FULL = {
    "bag": "the day's bag is full", "sub-limit": "the limit within the bag is full",
    "umbrella": "the limit over all these fish together is full",
    "total-across-waters": "the day's total across waters is full", "possession": "the possession limit is full",
    "one-over": "the number of large fish is full",
}
FIELD = {"bag": "daily bag", "sub-limit": "limit within the bag", "umbrella": "limit over several kinds", "possession": "possession",
         "total-across-waters": "total across waters", "length": "length", "season": "season", "access": "who may fish",
         "hours": "hours", "list": "list", "validity": "rule year", "one-over": "length"}


def full(kind: str, count: str, others: str, beyond: int, tag: str) -> str:
    """A count that is full, with the counts that are not."""
    more = f" ({others})" if others else ""
    over_by = f", {beyond} too many already" if beyond > 0 else ""
    return sentence(f"{FULL[kind]}: {count}{over_by}{more}{tag}")


def length_unsure(length: str, limit: str, tag: str) -> str:
    """A guessed length near a bound."""
    return sentence(f"{length} may be on either side of the line, and the rule says {limit}; no rounding up{tag}")


def length_unsaid(limit: str, tag: str) -> str:
    """No length."""
    return sentence(f"it depends on the length: {limit}{tag}")


def length_method(limit: str, tag: str) -> str:
    """Fork length under a total-length rule."""
    return sentence(f"the rule is for total length ({limit}); a fork length does not decide it{tag}")


def kept_unsure(count: str, tag: str) -> str:
    """Kinds or lengths of kept fish decide."""
    return sentence(f"it depends on the fish kept already: perhaps {count}{tag}")


def age_unsaid(place: str, age: int, tag: str) -> str:
    """Age decides."""
    return sentence(f"{place} is for anglers under {age} only, and the angler's age was not told{tag}")


def time_unsaid(starts: str, ends_at: str, tag: str) -> str:
    """The hour decides."""
    return sentence(f"no fishing from {starts} to {ends_at} here, and the hour was not told{tag}")


def ice_unsaid(fish: str, tag: str) -> str:
    """Ice or open water decides."""
    return sentence(f"the season for {fish} holds in open water only; was it through the ice?{tag}")


def no_rule(fish: str, place: str) -> str:
    """No rule found."""
    return sentence(f"the rules held for {place} say nothing of {fish}. No rule found is not the same as no limit: hold it at the "
                    "spot, photograph it, ask the agency, or let it go")


def outside_year(place: str, first: str, last: str, day: str) -> str:
    """No rule year for the day."""
    return sentence(f"the rules held for {place} run from {first} to {last} and say nothing of {day}; another year's rules are "
                    "not borrowed")


def no_lawful_act(names: str) -> str:
    """Candidates that demand opposite things."""
    return sentence(f"it may be {names}, and their rules ask for opposite things. Photograph it, hold it at the spot, phone the "
                    "agency, and never carry it alive")


NO_PLACE = "Where was it? Rules differ from water to water, so I need the water (or at least the state or province) first."
SEVERAL_PLACES = "More than one place has that name; which one is it?"
PRIVATE = ("Private water: no rules are held for it. Whose fish they are and what the law still asks there differs, so ask the owner "
           "and the agency.")
NO_FISH = "Which fish is it? The rule depends on that."
NO_DATE = "Which day? Seasons and bags depend on it."
CHECK_HOLD = "Until that is known, putting it back is the safe way."


def no_rules_for_place(place: str) -> str:
    """A place without rules."""
    return sentence(f"no rules are held for {place}")


# --- what it rests on ---------------------------------------------------------------------------------------------

ASSUMED = {
    "nothing-kept": "nothing kept so far today, as no count was told",
    "nothing-stored": "nothing stored from earlier days",
    "stricter-parent": "the stricter of its two parents, as no rule names this cross",
    "stricter-side": "the stricter side of the border water, field by field",
    "stricter-part": "the stricter part of the river",
    "group-members": "every fish of the group that the rules here name",
    "total-length": "total length, mouth shut, tail pressed together",
    "kept-same-kind": "the fish kept are of the same kind",
    "open-water": "open water",
}


def rests_on(parts: list[str]) -> str:
    """What was taken for granted."""
    return sentence(f"this rests on: {'; '.join(parts)}")


def on_day(day: str, told: bool) -> str:
    """The day the verdict is for."""
    return f"the day {day}" if told else f"today, {day}"


def fish_told(names: str) -> str:
    """The name the verdict rests on."""
    return f"the fish being {names}"


def carried_length(length: str) -> str:
    """A length from earlier in the conversation."""
    return f"the length {length} from before"


def carried_count(count: int) -> str:
    """A count from earlier in the conversation."""
    return f"{count} kept, as told before"


def replaced(fields: list[tuple[str, str, str]]) -> str:
    """What a special rule overwrote: (field, stronger, weaker)."""
    return sentence("here " + "; ".join(f"the {field} of rule {by} stands in place of that of {weak}" for field, by, weak in fields))


def conflict(first: str, second: str, field: str) -> str:
    """Two rules of equal rank."""
    return sentence(f"rules {first} and {second} disagree about the {field}; the stricter was taken, and whoever keeps the rules "
                    "should settle it")


REMARK = {
    "name-not-needed": "The exact name is not needed for this: every fish it may be stands under the same answer.",
    "dead-still-goes-back": "Dead or dying, it still goes back: being dead does not make it yours to keep.",
    "cut-the-line": "Hooked deep: cut the line close to the hook and let it go.",
    "measured-as-it-is": "A torn tail is measured as it is; nothing is added.",
    "not-covered-by-water-rule": "An inlet or side water is not covered by the special rule of the water named; the general one was used.",
    "one-limit": "One limit for the whole water, whatever licences are held.",
    "never-carry-alive": "Never carry it away alive.",
    "order-in-force": "An emergency order is in force here.",
}


def order(number: str, until: str) -> str:
    """An emergency order."""
    return sentence(f"emergency order {number} is in force here" + (f" through {until}" if until else ""))


def obligations(texts: list[str]) -> str:
    """What else is demanded."""
    return "Also: " + " ".join(texts)


def obligation(text: str, tag: str) -> str:
    """One demand with its rule."""
    return f"{text.rstrip('.')}{tag}."


SHORT_NOTE = "Demo rules only"


def standing(as_of: str, first: str, last: str) -> str:
    """The short form of what is always said, for invented rules."""
    known = f" (as of {as_of}; rule year {first} to {last})" if as_of else ""
    return (f"Demo rules only, invented for invented waters{known}; they are law nowhere. For real fishing check the current official "
            "rules of the exact water, recent orders and the signs there.")


def standing_own(as_of: str, first: str, last: str) -> str:
    """The same for rules that somebody entered for a real place."""
    known = f" (as of {as_of}; rule year {first} to {last})" if as_of else ""
    return (f"Rules as entered in this base{known}. Check the current official rules of the exact water, recent orders and the signs "
            "there.")


ADVICE_NOTE = ("General information, not legal advice: the agency or an officer has the last word. It rests on the name and length "
               "you gave; if in doubt, measure again or put the fish back.")


# --- questions back -----------------------------------------------------------------------------------------------

ASK = {
    "place": "Which water is it?", "segment": "Which part of the river was it?", "side": "Which side of the border were you on?",
    "date": "Which day is it for?", "time": "At what hour?", "fish": "Which fish is it, or what does it look like?",
    "length": "How long is it exactly (total length, tail pressed together)?",
    "total-length": "What is its total length, mouth shut and tail pressed together?",
    "kept": "How many have you kept today?", "kept-lengths": "How long were the fish you kept?",
    "kept-kinds": "Which kinds were the fish you kept?", "age": "How old is the angler?", "ice": "Was it caught through the ice?",
}
ASK_KIND = {
    "place": "place", "segment": "place", "side": "side", "date": "date", "time": "time", "fish": "fish", "length": "length",
    "total-length": "length", "kept": "count", "kept-lengths": "kept-lengths", "kept-kinds": "kept-kinds", "age": "age", "ice": "ice",
}


# --- rules without a fish in hand ---------------------------------------------------------------------------------

def outlook_lead(place: str, day: str, fish: str) -> str:
    """What the lines below are."""
    what = f"{fish} on {place}" if fish else place
    return f"{what[0].upper()}{what[1:]}, {day}, under the rules held:"


def outlook_line(name: str, parts: list[str], tag: str) -> str:
    """One fish or group."""
    return sentence(f"{name}: {'; '.join(parts)}{tag}").replace("..", ".")


def bag(count: int, together: bool) -> str:
    """A daily bag."""
    return f"{count} a day" + (" all together" if together else "")


def possession(count: int) -> str:
    """A possession limit."""
    return f"{count} in possession"


def sub_limit(count: int, name: str) -> str:
    """A limit within a bag."""
    return f"of these at most {count} {name}"


def shared(count: int, name: str) -> str:
    """An umbrella."""
    return f"they also count toward {count} {name}"


def umbrella(count: int, name: str) -> str:
    """An umbrella on its own line."""
    return f"{name}: {count} a day in all"


STATED_NO_LIMIT = "no limit, as the rule states"
NO_BAG = "bag not stated"
NONE_KEPT = "none may be kept"
LISTED = {"protected": "protected, always goes back", "prohibited": "prohibited: not to be released or held alive; kill, photograph, report"}


def closures(tag: str) -> str:
    """A rule on all fish closes the water for part of the year."""
    return sentence(f"a closure to all fishing holds here in part of the year{tag}")


def under_age(age: int) -> str:
    """An age rule."""
    return sentence(f"only anglers under {age} may fish here")


def nothing_named(fish: str, place: str) -> str:
    """No rule for the fish asked about."""
    return sentence(f"unknown: the rules held for {place} do not name {fish}. No rule found is not the same as no limit; ask the "
                    "agency before keeping any")


def not_held(place: str, day: str, first: str, last: str) -> str:
    """No rule year for the day."""
    return sentence(f"unknown: the rules held for {place} run from {first} to {last} and say nothing of {day}")


def month_note(month: str) -> str:
    """A month asked about."""
    return f"for {month}"


def side_heading(place: str) -> str:
    """The side or part that the next lines are for."""
    return f"{place}:"


# --- topics -------------------------------------------------------------------------------------------------------

MOVE_NO = "No: do not move live fish to another water."
MOVE_WHY = ("It takes a permit in most places and is an offence without one; fish carry disease and get loose. The same holds for a "
            "private pond, a tank or a neighbor's quarry. Check with the fish and wildlife agency first.")
DUTY_FOUND = {"bait": "The bait rule here:", "gear": "The gear rule here:", "licence": "The licence rule here:",
              "transport": "The rule here:"}


def duty_lead(topic: str, texts: list[str]) -> str:
    """A rule that speaks of what was asked."""
    return f"{DUTY_FOUND[topic]} {' '.join(texts)}"


NO_DUTY = {
    "bait": "The rules held for {place} say nothing of bait. That is not the same as allowed: check the local bait rule.",
    "gear": "The rules held for {place} say nothing of gear. That is not the same as allowed: check the local gear rule.",
    "licence": "The rules held for {place} say nothing of licences. Check with the agency whether you need one.",
    "transport": "The rules held for {place} say nothing of carrying fish away alive; that is not the same as allowed.",
}
NO_DUTY_HERE = {
    "bait": "Bait rules differ from place to place, and live fish as bait are banned in many. Check the local rule for the exact water.",
    "gear": "Rules on hooks, lines and gear differ from place to place. Check the local rule for the exact water.",
    "licence": ("Most places ask for a licence from a certain age, commonly about 16, but the age differs from place to place and on "
                "some days none is needed. Check with the agency that sells them."),
    "transport": MOVE_WHY,
}


def no_duty(topic: str, place: str) -> str:
    """Nothing held on a topic at a place."""
    return NO_DUTY[topic].replace("{place}", place) if place else NO_DUTY_HERE[topic]


MEASURE_EXACT = "Do not stretch it and do not round up: 13.9 is not 14."
CULL = ("Culling is swapping a kept fish for a better one. Many places forbid it, some allow it for fish kept alive in an aerated well. "
        "Count a fish in the livewell as kept unless the local rule says otherwise; check the rule.")
CULL_HERE = "The rules held here do not allow culling: a fish put in the livewell is kept and counts for the day."
CULL_ALLOWED = "The rule here allows culling."
POSSESSION = ("The daily bag is what one person may keep in a day, eaten fish included. Possession is everything you have, freezer "
              "and earlier days included. Check which of the two the local rule sets, and how high.")
SELL = ("Selling fish caught for sport is forbidden nearly everywhere; it takes a commercial licence. Check with the agency; no such "
        "rule is held here.")
PACK = ("Fish on the water or on the way home usually must stay recognisable: kind, number and, where a length rule holds, length. Check "
        "the local rule before filleting or skinning.")
BORDER = ("On a border water the side you are on decides unless the two agree on one table; when unsure, keep to the stricter, and never "
          "add two bags together. Check both agencies' rules.")


# --- real places --------------------------------------------------------------------------------------------------

def real_lead(place: str, fish: str) -> str:
    """A real place: nothing held."""
    what = f" on {fish}" if fish else ""
    return f"I hold no rules for {place}{what}: the rules in this base are invented ones for practice, so I will not guess a limit."


def real_how(place: str, fish: str) -> str:
    """How to find what holds."""
    line = f" and the line for {fish} (or its group)" if fish else ""
    return (f"Look up the current official fishing rules of the fish and wildlife agency of {place}: first the exact water{line}, then "
            "season, daily bag and length, then recent orders. Signs at the water count, too.")


def real_unknown_how(place: str) -> str:
    """The same for a place that the base does not know."""
    where = f" for {place}" if place else ""
    return (f"Look up the current official fishing rules{where}: the fish and wildlife agency of the state or province prints them by "
            "water, with season, daily bag and length, and posts recent orders.")


def real_length(length: str) -> str:
    """What to compare."""
    return (f"Compare your {length} with the length line there: total length, mouth shut, tail pressed together, no rounding up. If it "
            "is close or you are unsure, put it back.")


REAL_HELP = "I can still help to name the fish, to measure it and to handle it."
REAL_NOTE = "General information, not legal advice: the agency or an officer has the last word."
UNKNOWN_PLACE = "that water"


def unknown_place(name: str) -> str:
    """A water that the base does not hold."""
    return f"I hold no rules for {name}."


# --- a limit that the angler quotes -------------------------------------------------------------------------------

def short_of(length: str, limit: str, gap: str) -> str:
    """Under the limit quoted."""
    return (f"No: {length} is short of the {limit} minimum you name, by {gap}. It goes back; there is no rounding up.")


def meets(length: str, limit: str) -> str:
    """At or over the limit quoted."""
    return f"{length} is not under the {limit} minimum you name, so by that number alone it is long enough."


QUOTED_AGAIN = ("Measure again on a flat board: mouth shut, tail lobes pressed together, straight to the tip. If it is still short, "
                "put it back.")
QUOTED_CHECK = "Season, daily bag and other length rules still count: check the local rule of that water."
