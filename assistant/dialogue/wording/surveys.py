"""The wording of rules answers without a verdict: surveys of a place, duties, places without rules, quoted limits.

Layer 4; the wording of verdicts stands in ``rules``.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.text import join, sentence

# --- rules without a fish in hand ---------------------------------------------------------------------------------


ONESELF = frozenset({"i", "we"})
ALL_FISHES = frozenset({"all", "every", "everything", "fishes", "others", "else"})
OTHER_FISHES = "That is for the fish you spoke of; ask for all fishes to hear the rest."


def outlook_lead(place: str, day: str, fish: str) -> str:
    """What the lines below are."""
    what = f"{fish} {place}" if fish else place
    return f"{what[0].upper()}{what[1:]}, {day}, under the rules held:"


def year_held_lead(place: str, held: str, asked: str, fish: str, yet: bool) -> str:
    """What the lines below are, where the month asked about is held for another year alone."""
    what = f"{fish} {place}" if fish else place
    return f"{what[0].upper()}{what[1:]}, {held}, the year held ({asked} is not held{' yet' if yet else ''}):"


def outlook_single(lead: str, line: str, fish: str) -> str:
    """The head and its only line, the fish named once."""
    told = line[len(fish) + 2:] if fish and line.lower().startswith(f"{fish.lower()}: ") else line
    return f"{lead} {told}"


def outlook_line(name: str, parts: list[str], tag: str) -> str:
    """One fish or group."""
    return sentence(f"{name}: {'; '.join(parts)}{tag}").replace("..", ".")


def then(parts: list[str]) -> list[str]:
    """What holds once it is open."""
    return [f"then {parts[0]}", *parts[1:]] if parts else []


def bag(count: int, together: bool, of: str = "") -> str:
    """A daily bag; ``of`` names the fishes that count together where only one of them is spoken of."""
    return f"{count} a day" + (f", all {of} together" if together and of else ", all together" if together else "")


def against_bag(count: int, limit: int) -> str:
    """Whether a number of fish that somebody means to keep is within a daily bag."""
    if count > limit:
        return f"{count} is too many: more than the {limit} a day."
    return f"As far as the number goes, {count} is within the {limit} a day."


def possession(count: int) -> str:
    """A possession limit."""
    return f"{count} in possession"


def sub_limit(count: int, name: str) -> str:
    """A limit within a bag."""
    return f"of these at most {count} {name}"


def shared(count: int, name: str) -> str:
    """An umbrella."""
    return f"they also count toward {count} {name}"


STATED_NO_LIMIT = "no limit, as the rule states"
NO_BAG = "bag not stated"
NONE_KEPT = "none may be kept"
LISTED = {
    "protected": "protected, always goes back",
    "prohibited": "prohibited: not to be released or held alive; kill, photograph, report",
}


OPEN = {"harvest": "Open", "catch-and-release": "For release only", "closed": "Closed"}


def opening(name: str, opens: str) -> str:
    """A fish with the day on which keeping it opens."""
    return f"{name} (until {opens})" if opens else name


def open_line(mode: str, names: str) -> str:
    """The fishes of which a season holds."""
    return sentence(f"{OPEN[mode]}: {names}")


def closed_to_all(opens: str, tag: str) -> str:
    """Closed to all fishing on the day."""
    return sentence("closed to all fishing" + (f"; it opens again on {opens}" if opens else "") + tag)


def closures(days: str, tag: str) -> str:
    """A rule on all fish closes the water for part of the year."""
    return sentence(f"a closure to all fishing holds here in part of the year: {days}{tag}")


def under_age(age: int) -> str:
    """An age rule."""
    return sentence(f"only anglers under {age} may fish here")


def nothing_named(fish: str, place: str) -> str:
    """No rule for the fish asked about."""
    return sentence(
        f"unknown: the rules held for {place} do not name {fish}. No rule found is not the same as no limit; ask the "
        "agency before keeping any"
    )


def not_held(place: str, day: str, first: str, last: str, yet: bool, month: bool = False) -> str:
    """No rule year for the day or ``month``; ``yet``: it lies ahead."""
    held = f": those held run from {first} to {last}" if first else ""
    when = f"{'in' if month else 'on'} {day}{' yet' if yet else ''}"
    return sentence(f"unknown: no rules are held for {place} {when}{held}")


ANOTHER_YEAR = "Another year's rules may differ: go by those of that year."


def in_rule_year(day: str) -> str:
    """The nearest day that is covered."""
    return f"What they say for {day}, which need not hold on the day you ask for:"


def side_heading(place: str, differs: bool) -> str:
    """The side or part that the next lines are for."""
    return f"{place} only:" if differs else f"{place}:"


ON_THE_DAY = {"harvest": "open on this day", "catch-and-release": "release only on this day",
              "closed": "closed on this day"}


def on_side(place: str, side: str) -> str:
    """A border water with the side spoken of."""
    return f"{place}, {side}"


def later(first: str, last: str, label: str, stated: list[str], hours: bool, tag: str) -> str:
    """A rule that begins later in the rule year, with what it states."""
    span = f"from {first}" + (f" through {last}" if last else " on")
    what = f": {'no fishing ' if hours else ''}{'; '.join(stated)}" if stated else ""
    return sentence(f"{span} another rule holds here, {label}{what}{tag}")


# --- topics -------------------------------------------------------------------------------------------------------

MOVE_NO = "No, not without a permit: never move live fish to another water, a pond or a tank on your own."
DUTY_FOUND = {
    "bait": "The bait rule here:",
    "gear": "The gear rule here:",
    "licence": "The licence rule here:",
    "transport": "The rule here:",
    "border": "On this border water:",
}


def duty_lead(topic: str, texts: list[str]) -> str:
    """A rule that speaks of what was asked."""
    return f"{DUTY_FOUND[topic]} {' '.join(texts)}"


NO_DUTY = {
    "bait": (
        "The rules held for {place} say nothing of bait. That is not the same as allowed: check the local bait rule."
    ),
    "gear": (
        "The rules held for {place} say nothing of gear. That is not the same as allowed: check the local gear rule."
    ),
    "hours": (
        "The rules held for {place} set no hours: day or night, the season, bag and length are the same. That is not "
        "the same as allowed: check the local rule on night fishing."
    ),
    "licence": "The rules held for {place} say nothing of licences. Check with the agency whether you need one.",
    "transport": (
        "The rules held for {place} say nothing of carrying fish away alive; that is not the same as allowed."
    ),
}
NO_DUTY_HERE = {
    "bait": (
        "Bait rules differ from place to place, and live fish as bait are banned in many. Check the local rule "
        "for the exact water."
    ),
    "gear": "Rules on hooks, lines and gear differ from place to place. Check the local rule for the exact water.",
    "hours": "Hours differ from water to water, and some are closed at night. Check the rule for the exact water.",
    "licence": (
        "Most places ask for a licence from a certain age, commonly about 16, but the age differs from place to "
        "place and on "
        "some days none is needed. Check with the agency that sells them."
    ),
}


def no_duty(topic: str, place: str) -> str:
    """Nothing held on a topic at a place."""
    return NO_DUTY[topic].replace("{place}", place) if place else NO_DUTY_HERE[topic]


DUMP_NO = "No: leftover bait and bait water do not go into the lake or river."
PENALTY = (
    "It can bring a fine, and in many places the loss of the fish, the gear or the licence; how much differs from "
    "place to place. A fish that is too small, too many or out of season goes back at once; if you kept one by "
    "mistake, tell the agency rather than hide it."
)
SHARED = (
    "Fish that you give away still count as kept by you for the day, so a full bag stays full. Whether anglers may "
    "pool their bags is for the local rule to say; check it before you share a limit."
)
LICENCE_PRICE = (
    "I hold no prices: they differ by state or province, age, residence and length of stay. The agency that sells the "
    "licence lists them."
)
LICENCE_RELEASE = "Letting every fish go is no exemption in most places: the licence is for fishing, not for keeping."


def hour_closed(hour: str, place: str, when: str, part: bool, text: str) -> str:
    """An hour at which nobody may fish, on the day or in ``part`` of the month asked about."""
    rest = " On the other days of the month no rule held closes that hour." if part else ""
    return f"Closed at {hour} on {place}, {when}: {text[0].lower()}{text[1:]}{rest}"


def hour_open(hour: str, place: str, when: str) -> str:
    """An hour that no rule closes."""
    return (f"No rule held for {place} closes {hour}, {when}; season, bag and length hold all the same, so ask for a "
            "fish by name.")


def no_age(place: str) -> str:
    """No rule on age at a place."""
    return f"By age, yes: the rules held for {place} keep nobody from fishing by age, child or adult."


def age_told(place: str, age: int, may: bool | None, tag: str) -> str:
    """An age rule, with yes or no where the angler's age is known."""
    word = "" if may is None else "Yes: " if may else "No: "
    text = f"only anglers under {age} may fish {place}{tag}."
    return word + text if word else text[0].upper() + text[1:]


def be_sure(names: str, marks: str) -> str:
    """The marks that settle which of two fishes it is, one of which may not go back alive."""
    return f"Be sure first which it is, {names}: {marks}."


ITS_CROSSES = "hybrids"
"""The crosses of the fish spoken of."""


def together(names: str, groups: str, at: str, above: str) -> str:
    """Whether kinds share a bag, or only a limit ``above`` their bags."""
    if groups:
        return f"Yes: {names} count together {at}, in the bag of {groups}."
    both = f", but both count toward {above}" if above else ""
    return f"No: {names} do not count in one bag {at}{both}."


def together_unknown(names: str, at: str) -> str:
    """Kinds of which the rules name one or none."""
    return f"Unknown: the rules held do not tell of a bag for each of these {at}: {names}."


MEASURE_EXACT = "Do not stretch it and do not round up: 13.9 is not 14."
CULL = (
    "Culling is swapping a kept fish for a better one. Many places forbid it, some allow it for fish kept alive "
    "in an aerated well. "
    "Count a fish in the livewell as kept unless the local rule says otherwise; check the rule."
)
CULL_HERE = "The rules held here do not allow culling: a fish put in the livewell is kept and counts for the day."
CULL_ALLOWED = "The rule here allows culling."
POSSESSION = (
    "The daily bag is what one person may keep in a day, eaten fish included. Possession is everything you have, "
    "freezer "
    "and earlier days included. Check which of the two the local rule sets, and how high."
)
SELL = (
    "Selling fish caught for sport is forbidden nearly everywhere; it takes a commercial licence. Check with the "
    "agency; no such "
    "rule is held here."
)
UNSURE = (
    "Act by the stricter rule of the two, and where that says no, or you do not know it, let the fish go: whoever "
    "keeps it must be able to say what it is. Photograph it first, and ask the agency if you mean to keep one."
)
PACK = (
    "Fish on the water or on the way home usually must stay recognisable: kind, number and, where a length rule "
    "holds, length. Check "
    "the local rule before filleting or skinning."
)
BORDER = (
    "On a border water the side you are on decides unless the two agree on one table; when unsure, keep to the "
    "stricter, and never "
    "add two bags together. Check both agencies' rules."
)


# --- real places --------------------------------------------------------------------------------------------------


def real_lead(place: str, fish: str) -> str:
    """A real place: nothing held."""
    what = f" on {fish}" if fish else ""
    return (
        f"I hold no rules for {place}{what}: the rules in this base are invented ones for practice, so I will not "
        f"guess a limit."
    )


def real_how(place: str, fish: str) -> str:
    """How to find what holds."""
    line = f" and the line for {fish} (or its group)" if fish else ""
    return (
        f"Check the current official fishing rules of the fish and wildlife agency of {place}: first the exact "
        f"water{line}, then "
        "season, daily bag and length, then recent orders. Signs at the water count, too."
    )


def real_unknown_how(place: str) -> str:
    """The same for a place that the base does not know."""
    where = f" for {place}" if place else ""
    return (
        f"Check the current official fishing rules{where}: the fish and wildlife agency of the state or "
        f"province prints them by "
        "water, with season, daily bag and length, and posts recent orders."
    )


def real_length(length: str) -> str:
    """What to compare."""
    return (
        f"Compare your {length} with the length line there: total length, mouth shut, tail pressed together, no "
        f"rounding up. If it "
        "is close or you are unsure, put it back."
    )


REAL_HELP = "I can still help to name the fish, to measure it and to handle it."
REAL_NOTE = "General information, not legal advice: the agency or an officer has the last word."
UNKNOWN_PLACE = "that water"


def unknown_place(name: str) -> str:
    """A water that the base does not hold."""
    return f"I hold no rules for {name}."


# --- invented waters ----------------------------------------------------------------------------------------------

RULES_INVENTED = (
    "They are invented rules for invented waters, to practise with, and law nowhere: do not fish by them. No real rule "
    "is held here; for real water read the current official rules."
)
WATERS_HELD = "Rules are held for invented waters only, to practise with; no real water has any here."
ASK_WATER = "Ask what is open on one of them, or whether a fish caught there may be kept."


def invented_place(name: str, land: str, water: bool) -> str:
    """A place of the demonstration: made up, and without a list of fishes."""
    what = ("an invented water" if water else "an invented province") + (f" in {land}" if land else "")
    return f"{name} is {what}, made up to practise with fishing rules: no species list is held for it."


def rules_name(place: str, names: str) -> str:
    """The fishes that the rules of a place name."""
    return sentence(f"The rules held for {place} name {names}; whether they live there is not told")


def waters_of(land: str, names: str) -> str:
    """The waters of an invented land."""
    return sentence(f"Waters in {land}: {names}")


# --- a limit that the angler quotes -------------------------------------------------------------------------------


def as_bait(fish: str, law: str) -> str:
    """A fish asked about as bait."""
    told = f" The base tells of {law}." if law else ""
    return f"Ask after {fish} by name: a rule on bait may name the kinds that are allowed.{told}"


def short_of(length: str, limit: str, gap: str, fish: str) -> str:
    """Under the limit quoted."""
    return (f"No: {length} is short of the {limit} minimum you name{_for(fish)}, by {gap}. It goes back; there is no "
            "rounding up.")


def meets(length: str, limit: str, fish: str) -> str:
    """At or over the limit quoted."""
    return f"{length} is not under the {limit} minimum you name{_for(fish)}, so by that number alone it is long enough."


def within(length: str, span: str, fish: str) -> str:
    """Inside a span quoted, or on one of its ends."""
    return (f"{length} lies in the span of {span} you name{_for(fish)}, the ends counted with it. If fish of that span "
            "are protected, it goes back; if only they may be kept, it is long enough.")


def outside(length: str, span: str, fish: str) -> str:
    """Outside a span quoted."""
    return (f"{length} lies outside the span of {span} you name{_for(fish)}. If only fish of that span may be kept, it "
            "goes back; if they are the protected ones, that number does not forbid it.")


def _for(fish: str) -> str:
    return f" for {fish}" if fish else ""


QUOTED_AGAIN = (
    "Measure again on a flat board: mouth shut, tail lobes pressed together, straight to the tip. If it is still "
    "short, "
    "put it back."
)


def quoted_check(place: str) -> str:
    """What one number does not settle."""
    where = f" in {place}" if place else ""
    return f"Season, daily bag and other length rules still count: check the local rule of that water{where}."


def be_sure_first(other: str, fish: str) -> str:
    """Before a fish is let go that an unwanted one looks like, with which it was compared."""
    return sentence(f"make sure first that it is not the {other}, which you set beside the {fish}; "
                    "for that one this holds")


NO_LENGTH = "no minimum or maximum length"
"""What is said of a fish for which no length rule is held, where the length is asked for."""


def rule_named(tag: str, label: str) -> str:
    """A rule asked for by its number."""
    return f"Rule {tag} (invented): {label}."


def not_unwanted(names: Sequence[str]) -> str:
    """Of fishes on which nothing unwanted is held."""
    return sentence(f"of the {join(names)} no such caution is held here; the local rule says what goes back")


def fits_another(other: str, named: str) -> str:
    """Before what holds of an unwanted fish, where the marks told fit one that is not."""
    return (sentence(f"make sure of the fish first: what you saw fits the {other}, not the {named}")
            + f" Only if it is the {named} does the following hold.")


def first_catches(count: int) -> str:
    """What is said where a line tells of more catches than are judged at once."""
    return f"Only the first {count} catches of the line are judged; type the others on a line of their own."
