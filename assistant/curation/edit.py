"""Adding, correcting and retracting records: functions that lay a change over a base (layer 4)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date

from assistant.curation.lookup import Lookup
from assistant.curation.mint import mint, place_file, stem
from assistant.curation.records import Fields, build_node, kind_named, own_words, set_fields
from assistant.curation.taxonomy import NAMED_RANKS, accepted
from assistant.curation.view import Draft, one, rests_on
from assistant.curation.wanted import filled, refuse_unfit
from assistant.errors import DataError, UsageError
from assistant.graph.values import Literal, Node, Value
from assistant.model.build import kind_of

OWN_FIELDS = ("prov:wasAttributedTo", "dcterms:created", "prov:invalidatedAtTime", "tf:retractedBecause")
"""Properties that the tool sets itself."""


def add_record(draft: Draft, kind_name: str, fields: Fields, by: str, on: date, lookup: Lookup | None = None) -> str:
    """Add a record; gives its id. ``by`` is an agent's id."""
    kind, lookup = kind_named(kind_name), lookup or Lookup(draft)
    fields = filled(kind, fields, draft)
    refuse_unfit(kind, fields, lookup)
    node = build_node(kind, fields, lookup)
    return put_new(draft, node, by, on)


def put_new(draft: Draft, node: Node, by: str, on: date) -> str:
    """Lay a new node over a base: mint its id, set who and when, choose its file."""
    if node.id and node.id in draft:
        raise DataError(f"{node.id} exists already", "correct it instead, or choose another id")
    if any(t.endswith("Statement") for t in node.types()):
        node.props["prov:wasAttributedTo"] = [by]
        node.props["dcterms:created"] = [Literal(on.isoformat(), "xsd:date")]
    if "tf:LookAlike" in node.types():
        _refuse_held_pair(draft, one(node, "tf:taxon"), one(node, "tf:otherTaxon"))
    if not node.id:
        node = Node(mint(node, draft), node.props)
    draft.put(node, place_file(node, draft))
    return node.id


def _refuse_held_pair(draft: Draft, first: str, second: str) -> None:
    """DataError where a pair of look-alikes stands already, whichever of the two it is listed under."""
    one_way, other_way = (f"alike:{a.partition(':')[2]}.{b.partition(':')[2]}" for a, b in
                          ((first, second), (second, first)))
    held = next((key for key in (one_way, other_way) if first != second and key in draft), "")
    if held:
        raise DataError(f"this pair is held already: {held} says the same pair",
                        f"correct it: tellfin correct {held} …")


def name_new_species(draft: Draft, by: str, on: date) -> None:
    """Give each new species of a change that has no accepted name yet one: its label, with the source of the taxon."""
    for key, (old, taxon) in draft.changed().items():
        if old is not None or taxon is None or one(taxon, "dwc:taxonRank") not in NAMED_RANKS or accepted(key, draft):
            continue
        for label in taxon.props.get("skos:prefLabel", [])[:1]:
            put_new(draft, Node("", {
                "rdf:type": ["tf:Name"], "tf:nameOf": [key], "skosxl:literalForm": [label],
                "dcterms:language": [Literal(label.lang if isinstance(label, Literal) and label.lang else "en")],
                "tf:nameKind": ["tf:accepted"],
                **{p: list(taxon.props[p]) for p in ("dcterms:source", "tf:basis") if p in taxon.props}}), by, on)


def correct_record(draft: Draft, key: str, fields: Fields, by: str, on: date, lookup: Lookup | None = None) -> str:
    """Change fields of a record; gives the id it then has.

    A statement whose taxon, character, scope or first source changes says something else: the old one is retracted
    and a new one takes its place. Other records move to the identifier that their new content asks for.
    """
    old = existing(draft, key)
    kind = kind_of(old)
    if kind is None:
        raise UsageError(f"{key} is no record that can be corrected", "vocabulary is changed in its file")
    if not fields:
        raise UsageError("nothing to correct", "give the fields that change, such as value=9-11")
    new = Node(old.id, {p: list(v) for p, v in old.props.items()}, old.file, old.line)
    set_fields(new, kind, own_words(kind, fields), lookup or Lookup(draft))
    return put_corrected(draft, old, new, by, on)


def put_corrected(draft: Draft, old: Node, new: Node, by: str, on: date) -> str:
    """Lay the corrected form of a record over a base, under a new id where its content asks for one."""
    if one(old, "prov:invalidatedAtTime"):
        raise DataError(f"{old.id} was retracted", "add a new statement instead")
    if stem(old) == stem(new):
        draft.nodes[old.id] = new
        return old.id
    fresh = Node("", {p: list(v) for p, v in new.props.items() if p not in OWN_FIELDS})
    if old.id.startswith("st:"):
        key = put_new(draft, fresh, by, on)
        retract_record(draft, old.id, f"replaced by {key}", on)
        return key
    draft.drop(old.id)
    return put_new(draft, fresh, by, on)


def retract_record(draft: Draft, key: str, because: str, on: date) -> None:
    """Withdraw a record: a statement is kept with date and reason, any other is taken out (history holds it)."""
    node = existing(draft, key)
    if not because.strip():
        raise UsageError("a retraction needs a reason", "give --why")
    if not key.startswith("st:"):
        draft.drop(key)
        return
    if one(node, "prov:invalidatedAtTime"):
        raise DataError(f"{key} was retracted already", f"on {one(node, 'prov:invalidatedAtTime')}")
    copy = draft.edited(key)
    copy.props["prov:invalidatedAtTime"] = [Literal(on.isoformat(), "xsd:date")]
    copy.props["tf:retractedBecause"] = [Literal(because.strip())]
    for predicate in ("tf:preferred", "tf:preferredBecause"):
        copy.props.pop(predicate, None)


def refuse_needed(draft: Draft, keys: Sequence[str]) -> None:
    """DataError where records that stay in the base name one that was just taken out of it."""
    for key in keys:
        left = [] if key in draft else rests_on(draft, key)
        if left:
            hint = "retract or correct those first"
            if key.startswith("taxon:"):
                hint += "; a taxon that is no longer held apart is lumped (tellfin lump)"
            raise DataError(f"{key} cannot go while other records name it ({len(left)}, such as {', '.join(left[:2])})",
                            hint)


def existing(draft: Draft, key: str) -> Node:
    """The node of an id. DataError with near ids when there is none."""
    node = draft.node(key)
    if node is None:
        prefix = key.partition(":")[0]
        near = Lookup(draft).candidates(prefix, key.partition(":")[2]) if len(draft.ids(prefix)) < 20000 else []
        raise DataError(f"there is no record {key!r}", f"did you mean {', '.join(near)}?" if near else
                        "ids look like st:TAXON.CHARACTER.SCOPE.SOURCE")
    return node


def apply_table(draft: Draft, patch: Mapping[str, object], by: str, on: date, why: str) -> None:
    """Apply a patch given as a table: lists of records under "add", "correct" and "retract"."""
    unknown = sorted(set(patch) - {"add", "correct", "retract", "why", "source"})
    if unknown:
        raise UsageError(f"a patch has no part {unknown[0]!r}", "its parts are add, correct, retract, why, source")
    lookup = Lookup(draft)
    if not any(_rows(patch, part) for part in ("add", "correct", "retract")):
        raise DataError("the patch holds no record", "give records under add, correct or retract")
    for item in _rows(patch, "add"):
        fields = dict(item)
        add_record(draft, fields.pop("kind", "statement"), fields, by, on, lookup)
    for item in _rows(patch, "correct"):
        fields = dict(item)
        correct_record(draft, _key(fields), fields, by, on, lookup)
    for item in _rows(patch, "retract"):
        retract_record(draft, _key(dict(item)), item.get("because", why), on)


def _key(fields: dict[str, str]) -> str:
    key = fields.pop("id", "")
    if not key:
        raise UsageError("a correction or retraction needs the id of its record",
                         'for example {"id": "st:…", "low": 9}')
    return key


def _rows(patch: Mapping[str, object], part: str) -> list[dict[str, str]]:
    items = patch.get(part, [])
    if isinstance(items, Mapping):
        items = [items]
    if not isinstance(items, list) or not all(isinstance(i, Mapping) for i in items):
        raise UsageError(f'the part "{part}" of a patch is no list of records', "each record is a table of fields")
    return [{str(k).replace("_", "-"): _text(v) for k, v in item.items()} for item in items]


def _text(value: object) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, (str, int, float)):
        return str(value)
    if isinstance(value, Sequence):
        return "|".join(_text(v) for v in value)
    if value is None:
        return ""
    raise UsageError("a field of a patch is neither text nor number nor a list of them", "write simple values")


def apply_nodes(draft: Draft, nodes: Mapping[str, Node], by: str, on: date, correct: bool) -> None:
    """Apply a patch given as Turtle: new nodes, or with ``correct`` the properties that replace those of old ones."""
    if not nodes:
        raise DataError("the patch holds no record", "write the records as Turtle or JSON")
    for key, node in nodes.items():
        if "tf:Change" in node.types() or key.startswith("change:"):
            raise DataError("a patch cannot write history", "leave change: nodes out")
        if not correct:
            put_new(draft, Node(key, node.props), by, on)
            continue
        old = existing(draft, key)
        new = Node(key, {p: list(v) for p, v in old.props.items()}, old.file, old.line)
        replaced: dict[str, list[Value]] = {p: list(v) for p, v in node.props.items()}
        new.props.update(replaced)
        put_corrected(draft, old, new, by, on)
