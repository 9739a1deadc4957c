"""An answer as the JSON form for programs: one object a turn, no key ever left out (layer 5)."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal
from typing import Any

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.reading import Measure
from assistant.dialogue.wording.speak import scientific_of
from assistant.iris import expand
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.observed import Observation
from assistant.render.plain import render_plain
from assistant.text import unique

Json = dict[str, Any]
ASIDE = ("small-talk", "help", "out-of-scope", "undo")
"""Intents that are about no fish unless they name one."""


def render_json(kb: KnowledgeBase, say: str, conversation: str | None, answer: Answer, held: Held) -> Json:
    """The object of one turn; ``held`` is the conversation after it."""
    return {
        "say": say,
        "conversation": conversation,
        "intent": answer.intent,
        "taxa": [_scientific(kb, t) for t in unique((*_about(answer, held), *answer.wider))],
        "candidates": [_candidate(kb, c.taxon, c.probability, c.supports, c.opposes) for c in answer.candidates],
        "confidence": answer.confidence,
        "observed": [_observed(s.observation) for s in held.seen],
        "place": _place(kb, held),
        "water": _water(kb, held.water),
        "date": held.date or held.season or None,
        "length_mm": _numbers(held.lengths),
        "weight_g": _numbers(held.weights),
        "life_stage": held.stage or None,
        "sex": held.sex or None,
        "verdict": answer.verdict,
        "rules": [_iri(r) for r in answer.rules],
        "blocks": [_block(b.kind, b.text, b.rows, b.statements) for b in answer.blocks],
        "text": render_plain(answer),
        "next": _next(answer),
        "base": base_object(kb),
    }


def _about(answer: Answer, held: Held) -> tuple[str, ...]:
    return answer.taxa or (held.taxa if answer.intent not in ASIDE else ())


def base_object(kb: KnowledgeBase) -> Json:
    """Which base answered: its version and what it holds."""
    taxa, statements = kb.derived("counts", _counts)
    return {"version": kb.version, "taxa": taxa, "statements": statements}


def _counts(kb: KnowledgeBase) -> tuple[int, int]:
    return len(kb.ids("taxon")), sum(len(kb.store.get("statement", t) or ()) for t in kb.ids("statement"))


def _scientific(kb: KnowledgeBase, taxon: str) -> str:
    found = kb.find("taxon", taxon)
    return scientific_of(kb, taxon) if found is not None else taxon


def _iri(short: str) -> str:
    if "://" in short:
        return short
    return expand(short if ":" in short else f"st:{short}")


def _candidate(
    kb: KnowledgeBase, taxon: str, probability: float, supports: Iterable[str], opposes: Iterable[str]
) -> Json:
    return {
        "taxon": _scientific(kb, taxon),
        "label": kb.taxon(taxon).label,
        "probability": round(probability, 6),
        "for": [_iri(s) for s in supports],
        "against": [_iri(s) for s in opposes],
    }


def _observed(seen: Observation) -> Json:
    out: Json = {"character": seen.character, "seen": seen.seen, "hedged": seen.hedged}
    if seen.value is not None:
        out["value"] = _plain(seen.value)
        if seen.value_high is not None and seen.value_high != seen.value:
            out["value_high"] = _plain(seen.value_high)
        out["unit"] = None
    else:
        names = [s.partition(".")[2] for s in seen.states]
        out["state"] = names[0] if names else None
        if len(names) > 1:
            out["states"] = names
    return out


def _plain(value: float | Decimal) -> int | float:
    number = float(value)
    return int(number) if number.is_integer() else round(number, 4)


def _numbers(measures: Iterable[Measure]) -> list[int | float]:
    out: list[int | float] = []
    for m in measures:
        out.append(_plain(m.low))
        if m.high != m.low:
            out.append(_plain(m.high))
    return out


def _place(kb: KnowledgeBase, held: Held) -> str | list[str] | None:
    codes = [p.code or p.label for key in held.places if (p := kb.place(key)) is not None]
    return None if not codes else codes[0] if len(codes) == 1 else codes


def _water(kb: KnowledgeBase, water: str | None) -> str | None:
    if not water:
        return None
    found = kb.place(water)
    return found.label if found is not None else water


def _block(kind: str, text: str, rows: tuple[tuple[str, ...], ...], statements: Iterable[str]) -> Json:
    out: Json = {"kind": kind, "statements": [_iri(s) for s in statements]}
    if rows:
        out["rows"] = [list(r) for r in rows]
    if text or not rows:
        out["text"] = text
    return out


def _next(answer: Answer) -> Json | None:
    asked = answer.asked
    if asked is None:
        return None
    return {
        "character": asked.character or None,
        "question": asked.question,
        "choices": [words for _, words in asked.choices],
    }
