"""The wording of answers about fishing rules: every sentence of the rules handler stands here, once (layer 4).

House tone: the verdict first, then the reason with its numbers, then what it rests on. Nothing here calls an act
lawful: rules "would let you", and somebody official has the last word.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.text import join, lower_first, sentence

ANY_FISH = "any fish"
VERDICT = {
    "keep": "Keep",
    "release": "Release",
    "closed": "Closed",
    "do-not-release": "Do not release",
    "unknown": "Unknown",
}
ACT = {
    "keep": "these rules would let you keep it; letting it go is always fine",
    "release": "put it back",
    "closed": "fishing for it is not open; one caught by accident goes back at once",
    "do-not-release": "it must not go back alive",
}
ACT_MANY = {
    "keep": "these rules would let you keep them; letting them go is always fine",
    "release": "put them back",
    "closed": "fishing for them is not open; those caught by accident go back at once",
    "do-not-release": "they must not go back alive",
}
NOTHING_CERTAIN = "no lawful act is certain"
RELEASE_CERTAIN = "whether it may be kept is not certain; letting it go is fine"
NOT_KNOWN = "the rules held do not answer this"


# --- small pieces ------------------------------------------------------------------------------------------------


def rule(tag: str, field: str = "") -> str:
    """A rule with the field that binds, for the end of a sentence."""
    return f" ({field}, rule {tag})" if field else f" (rule {tag})"


def rules(tags: str) -> str:
    """Several rules, for the end of a sentence."""
    return f" ({tags})" if tags else ""


ITS_LENGTH = "its length"
THIS_FISH = "this fish"
THAT_WATER = "that water"
FIELD_OF = {"bag": "bag", "length": "length rule", "season": "season"}


def one_of_many(names: list[str]) -> str:
    """Many possible fishes."""
    return f"one of several fishes ({', '.join(names)} and others)"


# --- the verdict --------------------------------------------------------------------------------------------------


def verdict_lead(word: str, why: str, act: str) -> str:
    """The verdict and its reason."""
    return f"{VERDICT[word]}: {act}. {why}"


def sequence_lead(words: str) -> str:
    """The verdicts of several fish, places or days."""
    return f"Verdict: {words}."


def step_lead(number: int, what: str, text: str) -> str:
    """One of several."""
    return f"{number}. {what}. {text}" if what else f"{number}. {text}"


def may_keep(fish: str, place: str, fewer: str, length: str) -> str:
    """Why it may be kept."""
    size = f" at {length}" if length else ""
    return sentence(f"{fish}{size} {place}: {fewer}")


def counts_so_far(counts: list[str]) -> str:
    """The counts beside a verdict that hangs on something else."""
    return sentence(f"counts so far: {join(counts)}")


OPEN_NO_LIMIT = "the rule states no limit"


def protected(fish: str, tag: str) -> str:
    """On the protected list."""
    return sentence(f"{fish} is protected here and always goes back; no rule of a single water loosens that{tag}")


def prohibited(fish: str, tag: str) -> str:
    """On the prohibited list."""
    return sentence(
        f"{fish} is on the prohibited list: kill it, photograph it, report it, and never carry it alive{tag}"
    )


def closed_water(place: str, opens: str, tag: str) -> str:
    """All fishing closed."""
    when = f"; it opens again on {opens}" if opens else ""
    return sentence(f"{place} is closed to all fishing on this day{when}{tag}")


def closed_season(fish: str, place: str, opens: str, tag: str) -> str:
    """Season not open."""
    when = f" and opens on {opens}" if opens else ""
    return sentence(f"the season for {fish} {place} is closed on this day{when}; it may not be aimed for either{tag}")


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
    return sentence(f"{fish} {place} may be caught and released only{until}{when}{tag}")


def wrong_length(length: str, limit: str, tag: str) -> str:
    """The length forbids it."""
    return sentence(f"{length} does not fit the length rule: {limit}{tag}")


def one_over(length: str, limit: str, have: int, tag: str) -> str:
    """One-over used up."""
    used = f"{have} kept already" if have else "none allowed"
    return sentence(f"{length} is over the mark, and of such fish {limit}; {used}{tag}")


FULL = {
    "bag": "the day's bag is full",
    "sub-limit": "the limit within the bag is full",
    "umbrella": "the limit over all these fish together is full",
    "total-across-waters": "the day's total across waters is full",
    "possession": "the possession limit is full",
    "one-over": "the number of large fish is full",
}
FIELD = {
    "bag": "daily bag",
    "sub-limit": "limit within the bag",
    "umbrella": "limit over several kinds",
    "possession": "possession",
    "total-across-waters": "total across waters",
    "length": "length",
    "season": "season",
    "access": "who may fish",
    "hours": "hours",
    "list": "list",
    "validity": "rule year",
    "one-over": "length",
}


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


def kept_unsure_over(low: int, high: int, limit: str, tag: str) -> str:
    """Lengths of kept fish decide."""
    some = f"{low} to {high}" if low else f"up to {high}"
    return sentence(
        f"it depends on the fish kept already: {some} of them may be over the mark, and the rule allows {limit}{tag}"
    )


def age_unsaid(place: str, age: int, tag: str) -> str:
    """Age decides."""
    return sentence(f"{place} is for anglers under {age} only, and the angler's age was not told{tag}")


def time_unsaid(starts: str, ends_at: str, tag: str) -> str:
    """The hour decides."""
    return sentence(f"no fishing from {starts} to {ends_at} here, and the hour was not told{tag}")


def ice_unsaid(fish: str, tag: str) -> str:
    """Ice or open water decides."""
    return sentence(f"the season for {fish} holds in open water only; was it through the ice?{tag}")


def which_it_may_be(fish: str) -> str:
    """One of several candidates."""
    return f"{fish}, which it may be"


def as_it_may_be(fish: str, text: str) -> str:
    """A reason that holds for one of several candidates, and so for all."""
    return f"It may be {fish}, and then: {text[:1].lower()}{text[1:]}"


def no_rule(fish: str, place: str, may_go_back: bool) -> str:
    """No rule found."""
    do = (
        "let it go, or ask the agency before you keep it"
        if may_go_back
        else ("photograph it, hold it at the spot, phone the agency, and never carry it alive")
    )
    return sentence(
        f"the rules held for {place} say nothing of {fish}. No rule found is not the same as no limit: {do}"
    )


def in_year_held(days: str, verdict: str, one_day: bool) -> str:
    """What the rules held say of the same day or days of their own year."""
    return f"By the rules of the year held, {'on ' if one_day else ''}{days}: {lower_first(verdict)}"


def if_it_is(fish: str, verdict: str) -> str:
    """What holds for some of the fishes that a loose name may mean."""
    return f"If it is surely {fish}: {lower_first(verdict)}"


def listed_in_year(verdict: str, day: str) -> str:
    """What the rules held say of a fish that must not go back, on the same day of their own year."""
    return f"{verdict} So say the rules of the year held, on {day}."


CAUGHT_AS_KEPT = "The fish caught are taken as kept; those put back at once do not count."


def outside_year(place: str, first: str, last: str, day: str, yet: bool) -> str:
    """No rule year for the day; ``yet``: it lies ahead."""
    return sentence(
        f"no rules are held for {place} on {day}{' yet' if yet else ''}: those held run from {first} to {last}, and "
        "another year's rules are not borrowed"
    )


def no_lawful_act(names: str) -> str:
    """Candidates that demand opposite things."""
    return sentence(
        f"it may be {names}, and their rules ask for opposite things. Photograph it, hold it at the spot, phone the "
        "agency, and never carry it alive"
    )


def no_place(fish: str) -> str:
    """What is needed first, for a fish where one is known."""
    about = f" for {fish}" if fish else ""
    return (
        f"Where was it? Rules{about} differ from water to water, so I need the water (or at least the state or "
        "province) first."
    )


SEVERAL_PLACES = "More than one place has that name; which one is it?"
PRIVATE = (
    "Private water: no rules are held for it. Whose fish they are and what the law still asks there differs, so "
    "ask the owner "
    "and the agency."
)
NO_FISH = "Which fish is it? The rule depends on that."


def unknown_fish(name: str) -> str:
    """A name that the base does not hold."""
    return f'I know no fish called "{name}".'


def every_day(month: str) -> str:
    """A verdict that does not change within a month."""
    return sentence(f"the same holds on every day of {month}")


NO_DATE = "Which day? Seasons and bags depend on it."


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


def kept(count: int) -> str:
    """Fish kept today, as told."""
    return f"{count} kept today, as told" if count else "nothing kept today, as told"


def stored(count: int) -> str:
    """Fish stored, as told."""
    return f"{count} stored from before"


def replaced(fields: list[tuple[str, str, str, str]]) -> str:
    """What a special rule overwrote: (field, stronger rule, weaker rule, what that one says)."""
    return sentence(
        "here "
        + "; ".join(
            f"the {field} of rule {by} stands in place of that of {weak}" + (f" ({was})" if was else "")
            for field, by, weak, was in fields
        )
    )


def conflict(first: str, second: str, field: str) -> str:
    """Two rules of equal rank."""
    return sentence(
        f"rules {first} and {second} disagree about the {field}; the stricter was taken, and whoever keeps the rules "
        "should settle it"
    )


REMARK = {
    "name-not-needed": "The exact name is not needed for this: every fish it may be stands under the same answer.",
    "dead-suits-all": (
        "Keeping it dead is lawful for every fish it may be, as long as no bag is full; letting it go is not."
    ),
    "dead-still-goes-back": "Dead or dying, it still goes back: being dead does not make it yours to keep.",
    "cut-the-line": "Hooked deep: cut the line close to the hook and let it go.",
    "measured-as-it-is": "A torn tail is measured as it is; nothing is added.",
    "not-covered-by-water-rule": (
        "An inlet or side water is not covered by the special rule of the water named; the general one was used."
    ),
    "one-limit": "One limit for the whole water, whatever licences are held.",
    "never-carry-alive": "Never carry it away alive.",
    "order-in-force": "An emergency order is in force here.",
}


def order(number: str, until: str, hours: list[str]) -> str:
    """An emergency order, with the hours it closes."""
    known = f"emergency order {number} is in force here" + (f" through {until}" if until else "")
    return sentence(known + (f": no fishing {join(hours)}" if hours else ""))


def no_fishing(hours: list[str], tag: str) -> str:
    """Hours without fishing."""
    return sentence(f"no fishing {join(hours)}{tag}")


def from_hour(starts: str, ends_at: str) -> str:
    """A part of the day."""
    return f"from {starts} to {ends_at}"


def obligations(texts: list[str]) -> str:
    """What else is demanded."""
    return "Also: " + " ".join(texts)


def obligations_if(name: str, texts: list[str]) -> str:
    """What is demanded if it is this fish."""
    return f"If it is {name}: " + " ".join(texts)


def obligation(text: str, tag: str) -> str:
    """One demand with its rule."""
    return f"{text.rstrip('.')}{tag}."


def standing(as_of: str, first: str, last: str) -> str:
    """The short form of what is always said, for invented rules."""
    known = f" (as of {as_of}, rule year {first} to {last})" if as_of else ""
    return (
        f"Demo rules only{known}: invented for invented waters, law nowhere. For the real water check the "
        f"current official rules, "
        "recent orders and signs."
    )


def standing_again(as_of: str, invented: bool, doubt: str) -> str:
    """What is always said, in one line, once it was said in full."""
    what = "Demo rules only" if invented else "Rules as entered in this base"
    known = f" (as of {as_of})" if as_of else ""
    return f"{what}{known}; check the current official rules. Not legal advice{f'; {doubt}' if doubt else ''}."


def standing_own(as_of: str, first: str, last: str) -> str:
    """The same for rules that somebody entered for a real place."""
    known = f" (as of {as_of}, rule year {first} to {last})" if as_of else ""
    return (
        f"Rules as entered in this base{known}. Check the current official rules of the exact water, recent "
        f"orders and signs."
    )


DOUBT_BACK = "if in doubt, put the fish back"
DOUBT_MEASURE = "if in doubt, measure again or put the fish back"
DOUBT_PHONE = "if in doubt, photograph it and phone the agency"


NAME_GIVEN, LENGTH_GIVEN = "name", "length"


def advice_note(doubt: str, given: Sequence[str]) -> str:
    """What is always said of any verdict, and on what it rests of what was told."""
    rests = f" It rests on the {join(given)} you gave: {doubt}." if doubt and given else ""
    return f"Not legal advice; the agency or an officer has the last word.{rests}"


# --- questions back -----------------------------------------------------------------------------------------------

ASK = {
    "place": "Which water is it?",
    "segment": "Which part of the river was it?",
    "side": "Which side of the border were you on?",
    "date": "Which day is it for?",
    "time": "At what hour?",
    "fish": "Which fish is it, or what does it look like?",
    "length": "How long is it exactly (total length, tail pressed together)?",
    "total-length": "What is its total length, mouth shut and tail pressed together?",
    "kept": "How many have you kept today?",
    "kept-lengths": "How long were the fish you kept?",
    "kept-kinds": "Which kinds were the fish you kept?",
    "age": "How old is the angler?",
    "ice": "Was it caught through the ice?",
}
ASK_KIND = {
    "place": "place",
    "segment": "place",
    "side": "side",
    "date": "date",
    "time": "time",
    "fish": "fish",
    "length": "length",
    "total-length": "length",
    "kept": "count",
    "kept-lengths": "kept-lengths",
    "kept-kinds": "kept-kinds",
    "age": "age",
    "ice": "ice",
}
