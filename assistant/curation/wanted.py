"""What a record asks for, in the words of the options: the fields of a kind, and all that is missing or wrong of a new
record at once (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.curation.lookup import Lookup
from assistant.curation.provenance import unfit_source
from assistant.curation.records import Fields, kind_named, own_words
from assistant.curation.values import NAMING, name_fault
from assistant.curation.view import View, many, one
from assistant.errors import DataError, UsageError
from assistant.model.schema import Field, Kind
from assistant.text import slug

TYPED = {
    "taxon": "a fish, by its name or id", "char": "a character, by its label or id",
    "src": "the key of a source, or memory, or common-practice", "place": "a place, by its name, code or id",
    "state": "a state of the character", "number": "a number", "decimal": "a number", "int": "a whole number",
    "bool": "yes or no", "date": "a day, such as 2026-07-04", "unit": "a unit, such as MilliM or GM",
    "agent": "a person", "curie": "the id of a record", "rule": "the id of a rule record",
    "language": "its short code, such as en or fr",
}
"""What is typed for a field, by the kind of its value or its name."""
VALUE = "what is seen: states (spots|bars), numbers (9-11, 8(9-10)11 mm) or text, as the character asks"
VALUES = frozenset({"value", "text", "states", "low", "usual-low", "usual-high", "high", "mean"})
"""Fields of a statement of which one at least must be there."""
MINTED = frozenset({"statement", "range", "look-alike", "name", "taxon"})
"""Kinds whose identifier is made from what they say."""
OWN = frozenset({"entered-by", "entered-on", "retracted-on", "retracted-because"})
"""Fields that the tool sets itself."""
COMMON = ("statement", "name", "range", "look-alike", "source", "rule")
MOST_VALUES = 24
USUAL = {"name": {"language": "en", "kind": "vernacular"}}
"""What a field of a kind is where nothing is typed, in a command as in a sheet."""
_LANGUAGE = re.compile(r"[a-z]{2,3}(-[A-Za-z0-9]{2,8})*")


def option(field: Field) -> str:
    """The name of a field as an option."""
    return field.name.replace("_", "-")


def kinds_listed() -> list[str]:
    """The kinds that are added most, each with the fields it needs."""
    return [f"{name}: {' '.join(f'{n}=' for n in _needed(kind_named(name)))}" for name in COMMON]


def filled(kind: Kind, fields: Fields, view: View) -> dict[str, str]:
    """The fields under their own names, with the source that stands for a basis of its own (memory), and the basis
    that a source has."""
    out = USUAL.get(kind.name, {}) | own_words(kind, fields)
    basis, source = slug(out.get("basis", "")), out.get("source", "")
    if basis and basis != "read" and not source.strip() and f"src:{basis}" in view:
        out["source"] = basis
    if source.strip() and not basis and "|" not in source:
        node = view.node(f"src:{slug(source.strip().removeprefix('src:'))}")
        if node is not None and one(node, "tf:basis"):
            out["basis"] = one(node, "tf:basis").removeprefix("tf:")
    return out


def refuse_unfit(kind: Kind, fields: Fields, lookup: Lookup, early: bool = False) -> None:
    """Raise one error that lists every field that is missing or wrong, a line each with what to type.

    ``early`` looks at the values only where a field is missing: the record is read again when it is made.
    """
    missing = list(_missing(kind, fields, lookup.view))
    wrong = [] if early and not missing else list(_wrong(kind, fields, lookup))
    if wrong or missing:
        told = [*wrong, *(line for _, line in missing)]
        count = f"{len(missing)} field{'' if len(missing) == 1 else 's'}"
        lacks = f"a new {kind.name} lacks {count}: {', '.join(name for name, _ in missing)}" if missing else \
            f"a new {kind.name} has fields that do not fit"
        raise (DataError if wrong else UsageError)(lacks, "\n  ".join(told))


def _needed(kind: Kind) -> list[str]:
    names = [option(f) for f in kind.fields if f.need]
    if kind.name == "statement":
        names.insert(2, "value")
    names = [n for n in names if n not in USUAL.get(kind.name, {})]
    return names if kind.name in MINTED else ["id", *names]


def _missing(kind: Kind, fields: Fields, view: View) -> Iterable[tuple[str, str]]:
    given = {n.replace("_", "-") for n, t in fields.items() if t.strip()}
    by_name = {option(f): f for f in kind.fields}
    for name in _needed(kind):
        if name in given or (name == "value" and given & VALUES):
            continue
        yield name, f"{name}=…  {told(kind, by_name.get(name), name, view)}"


def told(kind: Kind, field: Field | None, name: str, view: View) -> str:
    """What to type for a field: what it is, and what may stand there."""
    if name == "value":
        return VALUE
    if field is None:
        return f"a key of its own: lower-case letters, digits and hyphens (it becomes {kind.prefix}:…)"
    node = view.node(field.term)
    meaning = one(node, "skos:definition") if node is not None else ""
    choices = values_of(field, view)
    typed = TYPED.get(name) or TYPED.get(field.value, "text")
    typed = f"one of {', '.join(choices[:MOST_VALUES])}" if choices else typed
    return f"{meaning}: {typed}" if meaning else typed


def values_of(field: Field, view: View) -> list[str]:
    """The values of a field that takes one of a list; none for any other."""
    if field.value == "freq":
        return [k.partition(":")[2] for k in view.ids("freq")]
    lists = _lists(field, view) if field.value in ("tf", "text") else frozenset()
    if not lists:
        return []
    keys = view.ids("tf")
    view.fetch(keys)
    nodes = [n for n in map(view.node, keys) if n is not None and lists & set(many(n, "skos:inScheme"))]
    return sorted(n.id.partition(":")[2] if field.value == "tf" else one(n, "skos:notation") for n in nodes)


def _lists(field: Field, view: View) -> frozenset[str]:
    node = view.node(field.term)
    return frozenset(many(node, "tf:valuesFrom")) if node is not None else frozenset()


def _wrong(kind: Kind, fields: Fields, lookup: Lookup) -> Iterable[str]:
    by_name = {option(f): f for f in kind.fields}
    for name, text in fields.items():
        field = by_name.get(name.replace("_", "-"))
        if field is None and name not in ("id", "class", *(("value", "scope") if kind.name == "statement" else ())):
            yield f"{name}=…  a {kind.name} has no field {name!r}; one of {', '.join(sorted(by_name))}"
        if field is None or not text.strip():
            continue
        parts = text.split("|") if field.many else [text]
        for part in filter(None, map(str.strip, parts)):
            fault = fault_of(field, part, lookup)
            if fault:
                yield f"{name}={part}  {fault}"
    sources = [f"src:{slug(s.strip().removeprefix('src:'))}" for s in fields.get("source", "").split("|")]
    if unfit := unfit_source(f"tf:{slug(fields.get('basis', ''))}", sources, fields.get("note", ""), lookup.view):
        found, expected, mend = unfit
        yield f"{found}; expected {expected}; {mend}"


def fault_of(field: Field, text: str, lookup: Lookup) -> str:
    """What is wrong with one value; empty where it fits or where only the whole record can tell."""
    look = {"taxon": lookup.taxon, "char": lookup.character, "src": lookup.source, "place": lookup.place}
    if field.value in look:
        try:
            node = lookup.view.node(look[field.value](text))
        except DataError as error:
            return f"{error.message}; {error.hint}"
        if node is not None and one(node, "owl:deprecated") == "true":
            return f"is retired; it became {', '.join(many(node, 'dcterms:isReplacedBy'))}"
    if field.term in NAMING and (fault := name_fault(text)):
        return f"is no name: {fault}"
    if field.name == "language" and not _LANGUAGE.fullmatch(text):
        return "is no language code, such as en or fr"
    if field.value == "freq" and f"freq:{text.removeprefix('freq:')}" not in lookup.view:
        return f"is no word of frequency; one of {', '.join(values_of(field, lookup.view))}"
    if field.value == "tf" and (lists := _lists(field, lookup.view)):
        node = lookup.view.node(f"tf:{text.removeprefix('tf:').replace(' ', '-')}")
        if node is None or not lists & set(many(node, "skos:inScheme")):
            return f"is a value outside its list; one of {', '.join(values_of(field, lookup.view))}"
    return ""
