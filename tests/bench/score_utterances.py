"""Score the assistant on our own utterances: ``python -m tests.bench.score_utterances [open|unseen|FILE] [--show N]``.

Failing lines are shown for every set but the unseen one; of the unseen set nothing but the scores is printed.
"""

from __future__ import annotations

import argparse
import csv
import re
import time
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import respond
from assistant.dialogue.wording.speak import scientific_of
from assistant.loading import open_base
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import below
from assistant.reasoning.observed import Observation
from assistant.render.plain import render_plain

CASES = Path(__file__).parent.parent / "cases"
CLOCK = date(2026, 7, 4)
SAME = (
    {"Amia calva", "Amia ocellicauda"},
    {"Esox americanus", "Esox americanus americanus", "Esox americanus vermiculatus"},
    {"Micropterus nigricans", "Micropterus salmoides"},
)


@dataclass(frozen=True)
class Case:
    """One line of the file with the expected readings."""

    conversation: str
    say: str
    intents: tuple[str, ...]
    taxa: tuple[str, ...]
    observed: str
    length: str
    weight: str
    place: str
    says_any: str
    says_none: str


def unescape(text: str) -> str:
    """The typed text behind the escapes of the file."""
    return re.sub(
        r"\\(n|t|\\|x[0-9a-fA-F]{2})",
        lambda m: {"n": "\n", "t": "\t", "\\": "\\"}.get(m.group(1)) or chr(int(m.group(1)[1:], 16)),
        text,
    )


def cases(path: Path) -> Iterator[Case]:
    """The rows of a file of utterances."""
    with path.open(encoding="utf-8", newline="") as stream:
        lines = (line for line in stream if not line.startswith("#"))
        for row in csv.DictReader(lines, delimiter="\t", quoting=csv.QUOTE_NONE):
            cell = {k: ("" if v is None or v.strip() == "-" else v.rstrip("\n")) for k, v in row.items()}
            yield Case(
                row["conversation"],
                unescape(row["say"]),
                tuple(cell["intent"].split("|")),
                tuple(t.strip() for t in cell["taxa"].split(";") if t.strip()),
                cell["observed"],
                cell["length_mm"],
                cell["weight_g"],
                cell["place"],
                cell["says_any"],
                cell["says_none"],
            )


def occurs(word: str, text: str) -> bool:
    """A word of up to three letters or a number as a whole word, a longer one or a sign anywhere."""
    word = word.strip().lower()
    if re.fullmatch(r"[\d./,-]+", word) or (len(word) <= 3 and word.isalnum()):
        return re.search(r"(?<!\w)" + re.escape(word) + r"(?!\w)", text) is not None
    return word in text


def equal(name: str, other: str) -> bool:
    """True when two scientific names count as the same."""
    return name == other or any({name, other} <= same for same in SAME)


def covers(kb: KnowledgeBase, wanted: str, got: tuple[str, ...]) -> bool:
    """True when a wanted name is among the ids got, a genus or family by itself or a member."""
    for taxon in got:
        if kb.find("taxon", taxon) is None:
            continue
        names = [scientific_of(kb, taxon)] + [kb.taxon(t).scientific for t in kb.lineage(taxon)[1:]]
        if any(equal(wanted, n) for n in names):
            return True
    group = next((g for g in got if kb.find("group", g) is not None), None)
    return group is not None and any(
        equal(wanted, kb.taxon(t).scientific) for m in kb.members(group) for t in kb.lineage(m)
    )


def taxa_right(kb: KnowledgeBase, case: Case, answer: Answer, held: Held) -> bool:
    """The expected fishes lead or are all named."""
    got = answer.taxa or held.taxa
    shown = tuple(c.taxon for c in answer.candidates[:6])
    if all(covers(kb, w, got + shown) for w in case.taxa):
        return True
    lead = (shown or got)[:1]
    return case.intents[0] == "identify" and any(covers(kb, w, lead) for w in case.taxa)


def observed_right(kb: KnowledgeBase, case: Case, seen: tuple[Observation, ...]) -> bool:
    """Everything expected was read and what is taken back is no longer held.

    A state stands for the one it is a kind of, and that for each of its kinds: "two fins on the back" may be two
    separate ones, and who writes the row cannot know how finely the base parts them. What a denial leaves is told.
    """
    for item in (x.strip() for x in case.observed.split(";")):
        sign = item[0] if item[0] in "!~" else ""
        character, _, states = item.lstrip("!~").partition("=")
        wanted = states.split("|")
        hits = [o for o in seen if o.character == character and _matches(kb, o, wanted)]
        if sign == "~" and any(h.seen for h in hits):
            return False
        if sign == "!" and not any(not h.seen for h in hits):
            others = [o for o in seen if o.character == character and o.seen and not _matches(kb, o, wanted)]
            if not others:
                return False
        if not sign and not any(h.seen for h in hits) and not _other_of_two(kb, character, wanted, seen):
            return False
    return True


def _other_of_two(kb: KnowledgeBase, character: str, wanted: list[str], seen: tuple[Observation, ...]) -> bool:
    """True where what was denied of a character leaves no state but those wanted ("not striped": no stripes)."""
    if kb.find("character", character) is None:
        return False
    broad = {s.broader for s in kb.states(character)}
    leaves = {s.id for s in kb.states(character)} - broad
    denied = {leaf for o in seen if o.character == character and not o.seen for s in o.states for leaf in below(kb, s)}
    return bool(denied) and bool(leaves - denied) and leaves - denied <= {f"{character}.{w}" for w in wanted}


def _matches(kb: KnowledgeBase, o: Observation, wanted: list[str]) -> bool:
    if o.value is not None:
        return any(w.replace(".", "").isdigit() and o.value <= float(w) <= (o.value_high or o.value) for w in wanted)
    named = {f"{o.character}.{w}" for w in wanted}
    wide = {leaf for w in named if kb.find("state", w) is not None for leaf in below(kb, w)}
    return any(s in named or s in wide or named & set(below(kb, s)) for s in o.states)


def near(text: str, values: list[float]) -> bool:
    """True when the expected number is among the values, to half a per cent."""
    return any(abs(v - float(text)) <= 0.005 * float(text) for v in values)


def marks(kb: KnowledgeBase, case: Case, answer: Answer, held: Held) -> dict[str, bool]:
    """Right or wrong by column, for the columns that the case checks."""
    text = render_plain(answer).lower()
    out = {"intent": answer.intent in case.intents}
    if case.taxa:
        out["taxa"] = taxa_right(kb, case, answer, held)
    if case.observed:
        out["observed"] = observed_right(kb, case, tuple(s.observation for s in held.seen))
    if case.length:
        out["length"] = near(
            case.length, [float(v) for m in held.lengths for v in (m.low, m.high, (m.low + m.high) / 2)]
        )
    if case.weight:
        out["weight"] = near(case.weight, [float(v) for m in held.weights for v in (m.low, m.high)])
    if case.place:
        places = [p for key in held.places if (p := kb.place(key)) is not None]
        wider = [p for x in places if not x.code and len(x.covers) == 1 and (p := kb.place(x.covers[0])) is not None]
        codes = {p.code for p in (*places, *wider)}
        out["place"] = bool(codes & set(case.place.split("|")))
    if case.says_any:
        out["says"] = all(any(occurs(w, text) for w in g.split("|")) for g in case.says_any.split(" ; "))
    if case.says_none:
        out["says-none"] = not any(occurs(w, text) for w in case.says_none.split("|"))
    return out


def main() -> None:
    """Run one set and print scores by column and the speed."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("which", nargs="?", default="open", help="open, unseen, or a file of the same form")
    parser.add_argument("--show", type=int, default=0)
    parser.add_argument("--column", default="")
    args = parser.parse_args()
    base = open_base()
    own = {"open", "unseen"}
    path = CASES / f"utterances_{args.which}.tsv" if args.which in own else Path(args.which)
    scores: dict[str, list[bool]] = defaultdict(list)
    by_intent: dict[str, list[bool]] = defaultdict(list)
    times: list[float] = []
    held, current, shown = Held(), "", 0
    for case in cases(path):
        if case.conversation != current:
            held, current = Held(), case.conversation
        start = time.perf_counter()
        try:
            answer, held = respond(base, case.say, held, CLOCK)
        except Exception as error:  # a crash is a wrong answer here, and the run goes on
            answer = Answer(f"crash {type(error).__name__}: {error}", ())
        times.append(time.perf_counter() - start)
        found = marks(base.kb, case, answer, held)
        for column, right in found.items():
            scores[column].append(right)
        scores["all"].append(all(found.values()))
        by_intent[case.intents[0]].append(found["intent"])
        wrong = [c for c, right in found.items() if not right]
        if args.which != "unseen" and wrong and shown < args.show and (not args.column or args.column in wrong):
            shown += 1
            print(f"{case.conversation} {case.say[:110]!r}: {wrong} got {answer.intent} {answer.taxa[:4]}")
            wanted = f"{case.intents} {case.taxa} | {case.observed} | {case.says_any}"
            print(f"    want {wanted}: {render_plain(answer)[:120]!r}")
    for column, values in scores.items():
        print(f"{column:10} {100 * sum(values) / len(values):6.1f} % of {len(values)}")
    print("intent by intent: " + ", ".join(f"{k} {sum(v)}/{len(v)}" for k, v in sorted(by_intent.items())))
    times.sort()
    median, late = 1000 * times[len(times) // 2], 1000 * times[int(0.95 * len(times))]
    print(f"median {median:.1f} ms, 95th {late:.1f} ms, longest {1000 * times[-1]:.0f} ms")


if __name__ == "__main__":
    main()
