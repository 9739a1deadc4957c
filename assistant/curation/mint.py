"""Identifiers for new records, and the file each belongs in (layer 4).

An identifier says what the record says in what cannot change: its taxon, character, scope and first source. A
renamed taxon keeps its own.
"""

from __future__ import annotations

import re
from pathlib import Path

from assistant.curation.view import Draft, many, number, one
from assistant.errors import DataError
from assistant.graph.values import Node
from assistant.text import slug

LONGEST = 150
_SCOPE = ("dwc:sex", "dwc:lifeStage", "dwc:reproductiveCondition", "tf:season", "tf:view")
FOLDERS = {"group": "vocabulary/groups.ttl", "freq": "vocabulary/qualifiers.ttl", "term": "vocabulary/glossary.ttl",
           "word": "vocabulary/words.ttl", "place": "places/places.ttl", "caution": "cautions/handling.ttl",
           "practice": "practice/practice.ttl", "size": "sizes/sizes.ttl", "agent": "agents/agents.ttl",
           "tf": "vocabulary/core.ttl", "rule": "regulations/rules.ttl", "char": "vocabulary/characters/body.ttl",
           "state": "vocabulary/characters/body.ttl"}
_SOURCE_FILES = {"tf:agency": "agencies", "tf:paper": "papers", "tf:book": "books"}


def mint(node: Node, draft: Draft) -> str:
    """An unused identifier for a new record whose properties are set."""
    base = stem(node)[:LONGEST].rstrip("-.")
    candidate, number_ = base, 2
    while candidate in draft:
        candidate, number_ = f"{base}.{number_}", number_ + 1
    return candidate


def stem(node: Node) -> str:
    """What the identifier of a record is made from: its own id where content plays no part."""
    kind = node.types()[0] if node.types() else ""
    taxon = _local(one(node, "tf:taxon"))
    source = _local(many(node, "dcterms:source")[0]) if node.props.get("dcterms:source") else "no-source"
    if kind in ("tf:StateStatement", "tf:NumberStatement", "tf:TextStatement"):
        return f"st:{taxon}.{_local(one(node, 'tf:character'))}.{scope_slug(node)}.{source}"
    if kind == "tf:Range":
        return f"range:{taxon}.{_local(one(node, 'dcterms:spatial'))}.{source}"
    if kind == "tf:LookAlike":
        return f"alike:{taxon}.{_local(one(node, 'tf:otherTaxon'))}"
    if kind == "tf:Name":
        return f"name:{_local(one(node, 'tf:nameOf'))}.{slug(one(node, 'skosxl:literalForm')) or 'name'}"
    if node.id:
        return node.id
    if kind == "dwc:Taxon":
        return f"taxon:{slug(one(node, 'dwc:scientificName'))}"
    raise DataError(f"a new {kind or 'record'} needs an identifier", "give id=… (lower-case letters, digits, hyphens)")


def scope_slug(node: Node) -> str:
    """The scope of a statement as a part of its identifier ("any" without one)."""
    bits = [one(node, p) for p in _SCOPE]
    bits[-1] = _local(bits[-1]) if bits[-1] else ""
    bits += [_local(place) for place in many(node, "tf:inRegion")]
    for predicate, word in (("tf:fromLength", "from"), ("tf:toLength", "to")):
        length = number(node, predicate)
        bits.append(f"{word}{int(length)}" if length is not None else "")
    bits.append(slug(one(node, "tf:scopeText"))[:40].strip("-"))
    return slug("-".join(b for b in bits if b)) or "any"


def place_file(node: Node, draft: Draft) -> Path:
    """The file that a new record belongs in: beside its taxon, its like, or by its kind."""
    known = draft.base.file_of(node.id)
    if known is not None:
        return known
    root, prefix = draft.base.folder, node.id.partition(":")[0]
    owner = one(node, "tf:nameOf") if prefix == "name" else one(node, "tf:taxon")
    if prefix == "range":
        return _range_file(owner, draft)
    if prefix in ("st", "name", "alike"):
        return _file_of(owner, draft) or root / "taxa" / "unplaced.ttl"
    if prefix == "taxon":
        return _taxon_file(node, draft)
    if prefix == "src":
        return root / "sources" / f"{_SOURCE_FILES.get(one(node, 'tf:sourceKind'), 'practice')}.ttl"
    if prefix == "state" and (file := _file_of(one(node, "tf:stateOf"), draft)):
        return file
    if prefix == "size" and (siblings := draft.base.ids("size")) and (file := draft.base.file_of(siblings[0])):
        return file
    if prefix == "rule":
        return _rule_file(node, draft)
    if prefix not in FOLDERS:
        raise DataError(f"{node.id} has no place in a base", "use a prefix of the base, such as st: or name:")
    return root / FOLDERS[prefix]


def _file_of(key: str, draft: Draft) -> Path | None:
    return draft.base.file_of(key) or draft.files.get(key)


def _range_file(taxon: str, draft: Draft) -> Path:
    genus = _local(taxon).partition("-")[0]
    for other in draft.base.ids("range", _local(taxon)):
        if file := draft.base.file_of(other):
            return file
    beside = _file_of(taxon, draft)
    parts = beside.relative_to(draft.base.folder).parts if beside else ()
    if len(parts) == 3 and parts[0] == "taxa":
        return draft.base.folder / "ranges" / parts[1] / parts[2]
    return draft.base.folder / "ranges" / f"{genus}.ttl"


def _taxon_file(node: Node, draft: Draft) -> Path:
    root, local = draft.base.folder, _local(node.id)
    parents = many(node, "tf:hybridParent")
    if parents:
        genera = {_local(p).partition("-")[0] for p in parents}
        return root / "hybrids" / (f"{min(genera)}.ttl" if len(genera) == 1 else "intergeneric.ttl")
    if one(node, "dwc:taxonRank") == "family":
        return root / "taxa" / local / "family.ttl"
    if one(node, "dwc:taxonRank") == "genus":
        return root / "taxa" / (_local(one(node, "tf:parent")) or "unplaced") / f"{local}.ttl"
    return _file_of(one(node, "tf:parent"), draft) or root / "taxa" / "unplaced" / f"{local.partition('-')[0]}.ttl"


def _rule_file(node: Node, draft: Draft) -> Path:
    for predicate in ("tf:ruleSet", "tf:jurisdiction", "tf:underJurisdiction"):
        for target in many(node, predicate):
            if (file := _file_of(target, draft)) and target.startswith("rule:"):
                return file
            for other in draft.base.referrers(target):
                if other.startswith("rule:") and (file := draft.base.file_of(other)):
                    return file
    return draft.base.folder / FOLDERS["rule"]


def _local(key: str) -> str:
    return key.partition(":")[2]


def safe_name(text: str) -> str:
    """The text as a file name that stays inside its folder."""
    return re.sub(r"[^a-z0-9-]+", "-", text.lower()).strip("-") or "unnamed"
