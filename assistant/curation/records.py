"""Records from fields in words ("taxon=…", "value=9-11") and back, driven by the schema table (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from decimal import Decimal, InvalidOperation

from assistant.curation.lookup import Lookup
from assistant.curation.values import decimal_literal, number_props, parse_scope
from assistant.curation.view import many, one
from assistant.errors import DataError, UsageError
from assistant.graph.values import Literal, Node, Value
from assistant.model.schema import BY_NAME, Field, Kind

Fields = Mapping[str, str]
_TAGGED = re.compile(r"(.*\S)@([A-Za-z]{2,3}(?:-[A-Za-z0-9]{1,8})*)\Z", re.S)
_BOOLEANS = {"true": "true", "yes": "true", "1": "true", "false": "false", "no": "false", "0": "false"}
STATEMENT_TYPES = {"states": "tf:StateStatement", "ordered": "tf:StateStatement", "text": "tf:TextStatement",
                   "relation": "tf:TextStatement"}
VALUE_TERMS = ("tf:state", "tf:low", "tf:usualLow", "tf:usualHigh", "tf:high", "tf:mean", "tf:spread", "tf:sampleSize",
               "qudt:hasUnit", "tf:text")
NUMBER_FIELDS = frozenset({"low", "high", "usual-low", "usual-high", "usual_low", "usual_high"})
"""Fields of the numbers of a statement, each of which may be corrected by itself but makes no new statement."""
_COLUMNS = {"range": {"region": "place"}, "statement": {"region": "regions", "place": "regions"},
            "name": {"name": "text", "region": "regions", "place": "regions"}}
"""Columns of sheets by the kind of record, with the option that stands for each."""
_SCOPE_TERMS = ("dwc:sex", "dwc:lifeStage", "dwc:reproductiveCondition", "tf:season", "tf:inRegion", "tf:fromLength",
                "tf:toLength", "tf:view", "tf:scopeText")


def kind_named(name: str) -> Kind:
    """The kind of record of a name; UsageError with the names there are."""
    if name not in BY_NAME:
        raise UsageError(f"there is no kind of record {name!r}", f"one of {', '.join(sorted(BY_NAME))}")
    return BY_NAME[name]


def own_words(kind: Kind, fields: Fields) -> dict[str, str]:
    """The fields under the names that the options have, where those of the columns of a sheet were given."""
    other = _COLUMNS.get(kind.name, {}) | {"source-key": "id" if kind.name == "source" else "source"}
    out: dict[str, str] = {}
    for name, text in fields.items():
        own = other.get(name.replace("_", "-"), name)
        if own in out:
            raise UsageError(f"{own!r} is given twice, once as {name!r}", "give it once")
        out[own] = text
    return out


def build_node(kind: Kind, fields: Fields, lookup: Lookup) -> Node:
    """A node without an id yet ("" unless ``id`` is given). DataError or UsageError for a field that does not fit."""
    bounds = sorted(NUMBER_FIELDS & set(fields))
    if kind.name == "statement" and bounds and not {"value", "class"} & set(fields):
        raise UsageError(f"a new statement takes its numbers as one value, not by {', '.join(bounds)}",
                         "give value=6-9, or value='6(7-8)9' where the usual ones are known")
    node = Node(_given_id(kind, fields), {"rdf:type": [_class_of(kind, fields)]})
    set_fields(node, kind, fields, lookup)
    return node


def set_fields(node: Node, kind: Kind, fields: Fields, lookup: Lookup) -> None:
    """Set fields of a node from text; an empty text takes the property away. ``value`` and ``scope`` are understood."""
    named = {f.name.replace("_", "-"): f for f in kind.fields} | {f.name: f for f in kind.fields}
    if kind.name != "statement" and ("value" in fields or "scope" in fields):
        raise UsageError(f"a {kind.name} has no field 'value' or 'scope'", "these belong to statements")
    last = {n for n, f in named.items() if f.term in VALUE_TERMS or f.term in _SCOPE_TERMS}
    _set_plain(node, kind, named, {n: t for n, t in fields.items() if n not in last}, lookup)
    if kind.name == "statement":
        _statement_fields(node, fields, lookup)
    _set_plain(node, kind, named, {n: t for n, t in fields.items() if n in last}, lookup)


def _set_plain(node: Node, kind: Kind, named: Mapping[str, Field], fields: Fields, lookup: Lookup) -> None:
    for name, text in fields.items():
        if name in ("id", "class", "value", "scope"):
            continue
        if name not in named:
            allowed = sorted({f.name.replace("_", "-") for f in kind.fields} | {"id"})
            raise UsageError(f"a {kind.name} has no field {name!r}", f"one of {', '.join(allowed)}")
        field = named[name]
        values = [_value(field, part, lookup, node) for part in _parts(field, text)]
        _put(node, field.term, values)


def _statement_fields(node: Node, fields: Fields, lookup: Lookup) -> None:
    if "scope" in fields:
        scope = parse_scope(fields["scope"])
        for term in _SCOPE_TERMS:
            _put(node, term, scope.props.get(term, []))
        _put(node, "tf:inRegion", [lookup.place(p) for p in scope.places])
    if "value" not in fields:
        return
    character = lookup.view.node(one(node, "tf:character"))
    if character is None:
        raise UsageError("a value needs its character", "give character=…")
    kind = one(character, "tf:kind").removeprefix("tf:")
    node.props["rdf:type"] = [fields.get("class") or STATEMENT_TYPES.get(kind, "tf:NumberStatement")]
    for term in VALUE_TERMS:
        node.props.pop(term, None)
    node.props.update(value_props(fields["value"], character, lookup))


def value_props(text: str, character: Node, lookup: Lookup) -> dict[str, list[Value]]:
    """The properties of a value as written for a character."""
    kind = one(character, "tf:kind").removeprefix("tf:")
    if not text.strip():
        raise DataError("the value is empty", f"a value for {character.id}")
    if kind in ("states", "ordered"):
        states = {lookup.state(character.id, part) for part in text.split("|") if part.strip()}
        return {"tf:state": sorted(states)}
    if kind in ("text", "relation"):
        return {"tf:text": [Literal(text.strip(), "rdf:langString", "en")]}
    return number_props(text, kind)


def _parts(field: Field, text: str) -> list[str]:
    if not text.strip():
        return []
    return [p.strip() for p in text.split("|") if p.strip()] if field.many else [text.strip()]


def _put(node: Node, term: str, values: list[Value]) -> None:
    if values:
        node.props[term] = values
    else:
        node.props.pop(term, None)


def _value(field: Field, text: str, lookup: Lookup, node: Node) -> Value:
    plain = _literal(field, text)
    if plain is not None:
        return plain
    if field.value == "taxon":
        return lookup.taxon(text)
    if field.value == "char":
        return lookup.character(text)
    if field.value == "src":
        return lookup.source(text)
    if field.value == "place":
        return lookup.place(text)
    if field.value == "state" and "." not in text:
        return lookup.state(one(node, "tf:character"), text)
    if field.value == "curie":
        return text
    if field.value == "tf":
        text = text.replace(" ", "-")
    return text if text.startswith(f"{field.value}:") else f"{field.value}:{text}"


def _literal(field: Field, text: str) -> Value | None:
    if field.value == "text":
        return Literal(text)
    if field.value == "lang":
        tagged = _TAGGED.fullmatch(text)
        return Literal(*(tagged.group(1), "rdf:langString", tagged.group(2).lower()) if tagged
                       else (text, "rdf:langString", "en"))
    if field.value == "date":
        return Literal(text, "xsd:date")
    if field.value == "int":
        return Literal(str(int(text)) if text.isascii() and text.isdigit() else text, "xsd:integer")
    if field.value == "bool":
        return Literal(_BOOLEANS.get(text.lower(), text), "xsd:boolean")
    if field.value in ("number", "decimal"):
        try:
            return decimal_literal(Decimal(text))
        except InvalidOperation:
            raise DataError(f"{field.name} {text!r} is no number", "write 8 or 8.5") from None
    return None


def _given_id(kind: Kind, fields: Fields) -> str:
    text = fields.get("id", "").strip()
    return text if not text or ":" in text else f"{kind.prefix}:{text}"


def _class_of(kind: Kind, fields: Fields) -> str:
    wanted = fields.get("class", "")
    if wanted:
        return wanted
    if kind.name == "source":
        return {"common-practice": "tf:Practice", "memory": "tf:Recollection"}.get(
            fields.get("kind", ""), "bibo:Document")
    if kind.name == "size":
        return {"size-categories": "tf:SizeCategories", "length-conversion": "tf:LengthConversion"}.get(
            fields.get("kind", ""), "tf:StandardWeight")
    return kind.types[0]


def pairs(words: Iterable[str]) -> dict[str, str]:
    """Words of the form name=value as a table; a name given twice joins its values with "|"."""
    out: dict[str, str] = {}
    for word in words:
        name, mark, value = word.partition("=")
        if not mark or not name.strip():
            raise UsageError(f"{word!r} is not of the form name=value", "for example character=gill-rakers value=9-11")
        name = name.strip().lower()
        out[name] = f"{out[name]}|{value}" if name in out else value
    return out


def value_text(node: Node) -> str:
    """The value of a statement as it is written in a cell; the inverse of ``value_props``."""
    if node.props.get("tf:state"):
        return "|".join(s.partition(".")[2] for s in many(node, "tf:state"))
    if node.props.get("tf:text"):
        return one(node, "tf:text")
    return number_text(node)


_UNIT_WORDS = {"unit:MilliM": " mm", "unit:GM": " g", "unit:DEG_C": " C", "unit:PERCENT": " %"}


def number_text(node: Node) -> str:
    """The numbers of a statement as written: "8(9-10)11 mm; mean 9.4; n 20"."""
    low, ulow, uhigh, high = (short(one(node, t)) for t in ("tf:low", "tf:usualLow", "tf:usualHigh", "tf:high"))
    usual = f"{ulow}-{uhigh}" if ulow and uhigh else ""
    if usual:
        text = f"{low}({usual}){high}"
    elif low and high:
        text = low if low == high else f"{low}-{high}"
    else:
        text = f">={low}" if low else f"<={high}" if high else ""
    text += _UNIT_WORDS.get(one(node, "qudt:hasUnit"), "") if text else ""
    extra = [f"{word} {short(one(node, t))}" for word, t in (("mean", "tf:mean"), ("sd", "tf:spread"),
                                                             ("n", "tf:sampleSize")) if one(node, t)]
    return "; ".join(([text] if text else []) + extra)


def short(text: str) -> str:
    """A decimal without a needless tail.

    >>> short("8.0"), short("8.50"), short("")
    ('8', '8.5', '')
    """
    return text.rstrip("0").rstrip(".") if "." in text else text


_SCOPE_WORDS = (("dwc:lifeStage", ""), ("dwc:sex", ""), ("dwc:reproductiveCondition", ""), ("tf:season", "season="),
                ("tf:view", ""))


def scope_text(node: Node) -> str:
    """The scope of a statement as it is written in a cell; the inverse of ``parse_scope``."""
    parts = [mark + one(node, t).removeprefix("tf:") for t, mark in _SCOPE_WORDS if one(node, t)]
    if one(node, "tf:fromLength"):
        parts.append(f">={short(one(node, 'tf:fromLength'))} mm")
    if one(node, "tf:toLength"):
        parts.append(f"<={short(one(node, 'tf:toLength'))} mm")
    if node.props.get("tf:inRegion"):
        parts.append("region=" + "|".join(p.partition(":")[2] for p in many(node, "tf:inRegion")))
    if one(node, "tf:scopeText"):
        parts.append(one(node, "tf:scopeText"))
    return "; ".join(parts)
