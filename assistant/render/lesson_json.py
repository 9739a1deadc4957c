"""Comparisons, keys and quizzes as JSON values (layer 5)."""

from __future__ import annotations

from typing import Any

from assistant.dialogue.beside.comparison import Comparison, Row
from assistant.dialogue.lessons.key import LessonKey
from assistant.dialogue.lessons.levels import lead_words
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase


def comparison_json(found: Comparison) -> dict[str, Any]:  # Any: a JSON object
    """A comparison: fishes, separating and shared features with the statements they rest on, remarks."""
    fishes = [{"id": t, "name": n, "scientific": s} for t, n, s in zip(found.taxa, found.names, found.scientific,
                                                                       strict=True)]
    return {"fishes": fishes, "look": found.look, "level": found.level,
            "separating": [_row(found, r) for r in found.rows],
            "shared": [_row(found, r) for r in found.shared], "remarks": list(found.notes)}


def _row(found: Comparison, row: Row) -> dict[str, Any]:  # Any: a JSON object
    return {"character": row.character, "feature": row.feature, "separation": round(row.separation, 3), "cells": [
        {"fish": taxon, "text": c.text, "basis": c.basis or None, "told_of_group": c.shared,
         "statements": list(c.statements)}
        for taxon, c in zip(found.taxa, row.cells, strict=True)]}


def key_json(kb: KnowledgeBase, found: LessonKey) -> dict[str, Any]:  # Any: a JSON object
    """A key: title, fishes, couplets with their two leads, remarks."""
    couplets = [{"number": c.number, "from": c.back or None, "character": c.character, "leads": [
        {"text": lead_words(kb, c.character, lead, found.level), "states": list(lead.states), "low": lead.low,
         "high": lead.high, "goes_to": lead.goes_to or None, "fishes": [] if lead.goes_to else list(lead.taxa)}
        for lead in c.leads]} for c in found.key.couplets]
    fishes = [{"id": t, "name": speak.fish(kb, t), "scientific": speak.scientific_of(kb, t)} for t in found.key.taxa]
    return {"title": found.title, "look": found.key.look, "level": found.level, "fishes": fishes, "couplets": couplets,
            "remarks": list(found.notes)}
