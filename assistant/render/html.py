"""Self-contained printable pages: lesson sheets, comparisons, keys, quizzes; no script, no network (layer 5)."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache
from typing import Any

from assistant.dialogue.beside.comparison import Comparison
from assistant.dialogue.lessons.key import LessonKey
from assistant.dialogue.lessons.levels import lead_words
from assistant.dialogue.lessons.sheet import Sheet
from assistant.dialogue.wording import lesson as say
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.key import Key
from assistant.render.drawing import RING, draw_fish, drawable
from assistant.render.markdown import end_words

MOST_RINGS = 6
SMALL_RING = 1.6 * RING
"""The radius of a call-out where three drawings stand side by side."""
NO_BREAK = "\u00a0"
_MEASURE = re.compile(r"(\d) (?=(?:in|mm|cm|m|ft|lb|oz|g|kg|°[CF])\b)")


@cache
def _environment() -> Any:  # Any: jinja2 is imported only when a page is made
    from jinja2 import Environment, PackageLoader, StrictUndefined

    made = Environment(loader=PackageLoader("assistant.render"), autoescape=True, undefined=StrictUndefined,
                       trim_blocks=True, lstrip_blocks=True)
    made.filters["unbroken"] = unbroken
    return made


def unbroken(text: str) -> str:
    """A text whose numbers stay on one line with their units.

    >>> unbroken("usually 6 in (152 mm) long").count(NO_BREAK)
    2
    """
    return _MEASURE.sub(rf"\g<1>{NO_BREAK}", text)


def render_page(template: str, title: str, **values: Any) -> str:  # Any: what the template takes
    """A page from a template, the style sheet inside it."""
    from markupsafe import Markup

    environment = _environment()
    css = Markup(environment.loader.get_source(environment, "page.css")[0])
    return str(environment.get_template(template).render(title=title, css=css, words=say, **values))


def sheet_page(kb: KnowledgeBase, sheet: Sheet) -> str:
    """A lesson sheet with a drawing of every fish."""
    from markupsafe import Markup

    features = [r.character for r in sheet.table.rows]
    places = [drawable(kb, t, features) for t in sheet.table.taxa]
    shown = [c for c in features if all(c in found for found in places)][:MOST_RINGS]
    rings = {c: str(number) for number, c in enumerate(shown, 1)}
    few = len(sheet.fishes) in (2, 4)
    told = [{r.character for r in sheet.table.rows if r.cells[i].statements} for i in range(len(sheet.table.taxa))]
    drawings = {t: Markup(draw_fish(kb, t, {c: n for c, n in rings.items() if c in told[i]},
                                    RING if few else SMALL_RING)) for i, t in enumerate(sheet.table.taxa)}
    table = replace(sheet.table, rows=tuple(sorted(sheet.table.rows, key=lambda r: r.character not in rings)))
    return render_page("sheet.html", sheet.title, sheet=sheet, table=table, few=few, rings=rings, drawings=drawings,
                       couplets=couplet_values(kb, sheet.key.key, sheet.level),
                       how=say.key_how(len(sheet.key.key.taxa), sheet.key.key.look))


def comparison_page(table: Comparison, shared: bool = False) -> str:
    """A comparison as a page."""
    return render_page("compare.html", table.title, table=table, shared=shared)


def key_page(kb: KnowledgeBase, found: LessonKey) -> str:
    """A key as a page."""
    return render_page("key.html", found.title, couplets=couplet_values(kb, found.key, found.level), notes=found.notes,
                       how=say.key_how(len(found.key.taxa), found.key.look))


def couplet_values(kb: KnowledgeBase, key: Key, level: str) -> Sequence[Mapping[str, object]]:
    """The couplets as a template takes them."""
    return [{"number": c.number, "leads": [
        {"text": lead_words(kb, c.character, lead, level), "goes_to": lead.goes_to, "end": end_words(kb, lead,
                                                                                                     scientific=False)}
        for lead in c.leads]} for c in key.couplets]
