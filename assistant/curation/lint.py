"""Checks that need joins or arithmetic: one function a rule, over one node and what it refers to (layer 4).

``node_findings`` serves an edit (the nodes it touched); ``base_findings`` runs over a whole base in one pass and adds
the rules that need all of it.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Collection, Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from itertools import pairwise

from assistant.curation.findings import Finding
from assistant.curation.lengths import above_the_largest
from assistant.curation.provenance import unfit_source
from assistant.curation.shapes import is_valid, shown
from assistant.curation.siblings import beyond_all, far_values
from assistant.curation.taxonomy import shared_names, taxonomy_findings
from assistant.curation.values import DEFAULT_UNIT, NAMING, OF_RATIOS, UNSEEN, name_fault
from assistant.curation.view import View, many, number, one
from assistant.curation.vocabulary import Vocabulary
from assistant.graph.lines import Index
from assistant.graph.values import Literal, Node, Value
from assistant.iris import OWN, PREFIXES
from assistant.model.schema import BY_TYPE, Kind

STATEMENTS = {"tf:StateStatement": ("states", "ordered"),
              "tf:NumberStatement": ("count", "ratio", "length", "mass", "temperature"),
              "tf:TextStatement": ("text", "relation")}
"""Statement class to the kinds of characters that it fits."""
SCOPE = ("dwc:sex", "dwc:lifeStage", "dwc:reproductiveCondition", "tf:season", "tf:inRegion", "tf:fromLength",
         "tf:toLength", "tf:view", "tf:scopeText")
NUMBERS = ("tf:low", "tf:usualLow", "tf:usualHigh", "tf:high")


@dataclass(frozen=True, slots=True)
class Context:
    """What a rule may look at besides the node."""

    view: View
    vocabulary: Vocabulary
    looked_at: Collection[str] = ()
    """Ids of all nodes that are looked at, so that what is wrong between two of them is told once."""

    def told_of(self, node: Node, other: str) -> bool:
        """True where a fault between two nodes is told of the other one."""
        return other in self.looked_at and node.id < other

    def finding(self, severity: str, rule: str, node: Node, found: str, expected: str, mend: str) -> Finding:
        """A finding on a node."""
        return Finding(severity, rule, node.id, self.view.where(node.id), found, expected, mend)


Rule = Callable[[Node, Context], Iterator[Finding]]


def node_findings(node: Node, context: Context) -> Iterator[Finding]:
    """What the rules say about one node."""
    for rule in RULES:
        yield from rule(node, context)


def base_findings(index: Index, vocabulary: Vocabulary) -> Iterator[Finding]:
    """What the rules say about a whole base, with those that need all of it."""
    nodes = index.all_nodes()
    context = Context(index, vocabulary, nodes.keys())
    for node in nodes.values():
        yield from node_findings(node, context)
    for key, spot in index.double:
        where = f"{index.name(spot.file)}:{index.line(spot)}"
        yield Finding("error", "one place", key, where, f"a second block (the first is at {index.where(key)})",
                      "each subject in one place", "join the two blocks")
    for node, (severity, rule, found, expected, mend) in shared_names(nodes.values()):
        yield context.finding(severity, rule, node, found, expected, mend)
    yield from beyond_findings(nodes.values(), context)
    yield from _unused_states(nodes, context)


# rules for every node ---------------------------------------------------------------------------------------


def references(node: Node, context: Context) -> Iterator[Finding]:
    """Every identifier of our own that is pointed to exists (the record of a change may speak of what is gone)."""
    if "tf:Change" in node.types():
        return
    for predicate, values in node.props.items():
        listed = predicate in context.vocabulary.lists
        for value in () if listed else values:
            if isinstance(value, str) and value.partition(":")[0] in OWN and value not in context.view:
                yield context.finding("error", "dangling reference", node, f"{predicate} {value}, which does not exist",
                                      "an identifier of the base", f"mend the identifier or add {value} first")


def declared(node: Node, context: Context) -> Iterator[Finding]:
    """Every property is declared, and its values come from its list where it has one."""
    for predicate, values in node.props.items():
        if predicate not in context.vocabulary.properties and "owl:Ontology" not in node.types():
            yield context.finding("error", "undeclared property", node, predicate,
                                  "a property that the vocabulary declares", "check its spelling there")
        allowed = context.vocabulary.lists.get(predicate)
        for value in values if allowed is not None else ():
            text = value.value if isinstance(value, Literal) else value
            if text not in (allowed or ()):
                choices = ", ".join(sorted(a.removeprefix("tf:") for a in allowed or ())[:14])
                yield context.finding("error", "value outside its list", node, f"{predicate} {text}",
                                      f"one of {choices}", "choose one of these, or declare a new value first")


def literals(node: Node, context: Context) -> Iterator[Finding]:
    """Literals are valid, in canonical form and free of what no text needs."""
    for predicate, values in node.props.items():
        for value in values:
            fault = _literal_fault(value) if isinstance(value, Literal) else ""
            if not fault and isinstance(value, Literal) and predicate in NAMING:
                fault = name_fault(value.value) and f"a name ({name_fault(value.value)})"
            if fault and isinstance(value, Literal):
                yield context.finding("error", "literal form", node, f"{predicate} {shown(value)}", fault,
                                      "write it in that form")


def _literal_fault(value: Literal) -> str:
    text = value.value
    if not is_valid(value):
        return f"a valid {value.datatype}"
    if value.datatype in ("xsd:integer", "xsd:decimal") and not _is_canonical_number(value):
        return "a number in its shortest form, such as 7 or 7.5"
    if value.datatype in ("xsd:double", "xsd:float"):
        return "a decimal number"
    if text != text.strip() and value.datatype in ("xsd:string", "rdf:langString"):
        return "text without space at its ends"
    if text.isascii() and text.isprintable():
        return ""
    if any(unicodedata.category(c) in UNSEEN for c in text):
        return "text without control characters"
    if value.datatype in ("xsd:string", "rdf:langString") and not unicodedata.is_normalized("NFC", text):
        return "text in composed form (NFC)"
    return ""


def _is_canonical_number(value: Literal) -> bool:
    pattern = r"0|-?[1-9][0-9]*" if value.datatype == "xsd:integer" else r"(0|-?[1-9][0-9]*|-0)\.([0-9]|[0-9]*[1-9])"
    return re.fullmatch(pattern, value.value) is not None


def identifiers(node: Node, context: Context) -> Iterator[Finding]:
    """An identifier starts with what the record belongs to, so that it can be found by it."""
    kind = kind_of(node)
    if kind is None:
        return
    if not node.id.startswith(f"{kind.prefix}:"):
        yield context.finding("error", "identifier", node, node.id, f"an identifier under {PREFIXES[kind.prefix]}",
                              "mint it there")
    owner = next((f for f in kind.fields if f.name == kind.by), None)
    if owner is not None and (target := one(node, owner.term)):
        local, wanted = node.id.partition(":")[2], target.partition(":")[2]
        if not local.startswith(wanted + "."):
            yield context.finding("error", "identifier", node, node.id, f"{kind.prefix}:{wanted}.…",
                                  f"it belongs to {target}: mint it there")


# rules for statements -----------------------------------------------------------------------------------------


def statements(node: Node, context: Context) -> Iterator[Finding]:
    """A statement fits its character: class, states, unit, whole counts."""
    fits = next((STATEMENTS[t] for t in node.types() if t in STATEMENTS), None)
    character = context.view.node(one(node, "tf:character"))
    if fits is None or character is None:
        return
    kind = one(character, "tf:kind").removeprefix("tf:")
    if kind and kind not in fits:
        yield context.finding("error", "kind of value", node, f"{node.types()[0]} on {character.id}",
                              f"a statement class for a character of kind {kind}", "change the class or the character")
    for state in many(node, "tf:state"):
        target = context.view.node(state)
        if target is not None and one(target, "tf:stateOf") != character.id:
            yield context.finding("error", "state of another character", node, state, f"a state of {character.id}",
                                  "choose one of its states, or declare a new one first")
    unit = one(node, "qudt:hasUnit")
    if kind in DEFAULT_UNIT and unit != DEFAULT_UNIT[kind]:
        yield context.finding("error", "unit", node, f"qudt:hasUnit {unit or '(none)'}", DEFAULT_UNIT[kind],
                              "convert the numbers and set the unit")
    if kind == "ratio" and unit not in OF_RATIOS:
        yield context.finding("error", "unit", node, f"qudt:hasUnit {unit}", "no unit, or unit:PERCENT",
                              "take the unit away")
    if kind == "count":
        for predicate in NUMBERS:
            value = number(node, predicate)
            if value is not None and value != int(value):
                yield context.finding("warning", "whole count", node, f"{predicate} {value:g}", "a whole number",
                                      "use tf:mean for a mean")


def numbers(node: Node, context: Context) -> Iterator[Finding]:
    """Numbers stand in order: low, usual low, usual high, high; from before to; a mean inside."""
    chain = [(p, number(node, p)) for p in NUMBERS]
    known = [(p, v) for p, v in chain if v is not None]
    for (p, low), (q, high) in pairwise(known):
        if low > high:
            yield context.finding("error", "order of numbers", node, f"{p} {low:g} above {q} {high:g}",
                                  f"{p} at most {q}", "swap or mend them")
    mean = number(node, "tf:mean")
    if mean is not None and known and not known[0][1] <= mean <= known[-1][1] and len(known) > 1:
        yield context.finding("error", "order of numbers", node, f"tf:mean {mean:g}",
                              f"between {known[0][1]:g} and {known[-1][1]:g}", "mend the mean or the range")
    start, end = number(node, "tf:fromLength"), number(node, "tf:toLength")
    if start is not None and end is not None and start > end:
        yield context.finding("error", "order of numbers", node, f"tf:fromLength {start:g} above tf:toLength {end:g}",
                              "the shorter length first", "swap them")
    if "tf:NumberStatement" in node.types() and not known and mean is None:
        yield context.finding("error", "number missing", node, "no number",
                              "at least one of tf:low, tf:usualLow, tf:usualHigh, tf:high, tf:mean",
                              "add the number or retract the statement")


def doubled(node: Node, context: Context) -> Iterator[Finding]:
    """The same thing is not said twice from the same source; only one of several statements is preferred."""
    if not node.id.startswith(("st:", "range:")) or one(node, "prov:invalidatedAtTime"):
        return
    prefix, taxon = node.id.partition(":")[0], one(node, "tf:taxon").partition(":")[2]
    topic = "tf:character" if prefix == "st" else "dcterms:spatial"
    keys = [k for k in context.view.ids(prefix, taxon) if k != node.id]
    if prefix == "st":
        mark = "." + one(node, topic).partition(":")[2] + "."
        keys = [k for k in keys if mark in k]
    context.view.fetch(keys)
    for other in (n for n in map(context.view.node, keys) if n is not None):
        if one(other, topic) != one(node, topic) or one(other, "prov:invalidatedAtTime") \
                or context.told_of(node, other.id):
            continue
        if _said(node) == _said(other):
            yield context.finding("error", "said twice", node, f"the same as {other.id}", "each thing once",
                                  "retract one of the two")
        both = one(node, "tf:preferred") == one(other, "tf:preferred") == "true"
        if both and _scope(node) == _scope(other):
            yield context.finding("error", "two preferred", node, f"tf:preferred, as is {other.id}",
                                  "one preferred statement", "keep the mark on one and say why")


def _said(node: Node) -> frozenset[tuple[str, Value]]:
    left_out = ("prov:wasAttributedTo", "dcterms:created", "skos:editorialNote", "tf:preferred", "tf:preferredBecause")
    return frozenset((p, v) for p, values in node.props.items() for v in values if p not in left_out)


def _scope(node: Node) -> tuple[tuple[str, ...], ...]:
    return tuple(tuple(many(node, p)) for p in (*SCOPE, "tf:area"))


def provenance(node: Node, context: Context) -> Iterator[Finding]:
    """Basis, source, preference and retraction agree with one another."""
    sources = many(node, "dcterms:source")
    if unfit := unfit_source(one(node, "tf:basis"), sources, one(node, "skos:editorialNote"), context.view):
        yield context.finding("error", "basis and source", node, *unfit)
    if one(node, "tf:preferred") == "true" and node.id.startswith("st:") and not one(node, "tf:preferredBecause"):
        yield context.finding("warning", "preferred without a reason", node, "tf:preferred true",
                              "a reason in tf:preferredBecause", "say why this one is to be gone by")
    gone, reason = one(node, "prov:invalidatedAtTime"), one(node, "tf:retractedBecause")
    if bool(gone) != bool(reason):
        yield context.finding("error", "retraction", node, "a retraction without " + ("reason" if gone else "date"),
                              "both a date and a reason", "add the missing one")
    start, end = one(node, "schema:validFrom"), one(node, "schema:validThrough")
    if start and end and start > end:
        yield context.finding("error", "validity", node, f"from {start} through {end}", "the first day first",
                              "swap them")


def bounds(node: Node, context: Context) -> Iterator[Finding]:
    """Bounds of frequency words and of length limits stand in order."""
    for first, second in (("tf:low", "tf:point"), ("tf:point", "tf:high"), ("tf:lowerBound", "tf:upperBound")):
        low, high = _exact(one(node, first)), _exact(one(node, second))
        if low is not None and high is not None and low > high and one(node, "tf:point" if "point" in first + second
                                                                         else first):
            yield context.finding("error", "order of numbers", node, f"{first} {low} above {second} {high}",
                                  f"{first} at most {second}", "swap or mend them")


def _exact(text: str) -> Decimal | None:
    try:
        return Decimal(text)
    except InvalidOperation:
        return None


def look_alikes(node: Node, context: Context) -> Iterator[Finding]:
    """A pair of look-alikes stands once, under its own two taxa."""
    if "tf:LookAlike" not in node.types():
        return
    first, second = (one(node, p).partition(":")[2] for p in ("tf:taxon", "tf:otherTaxon"))
    if first == second:
        yield context.finding("error", "look-alike", node, "a taxon beside itself", "two taxa", "mend tf:otherTaxon")
    if node.id != f"alike:{first}.{second}":
        yield context.finding("error", "look-alike", node, node.id, f"alike:{first}.{second}", "mint it so")
    mirrored = f"alike:{second}.{first}"
    if mirrored in context.view and first != second and not context.told_of(node, mirrored):
        yield context.finding("error", "look-alike", node, f"{mirrored} says the same pair",
                              "each pair once", "join the two records")


def siblings(node: Node, context: Context) -> Iterator[Finding]:
    """A number far from those of the other species of its genus is worth a second look."""
    for found, expected in far_values(node, context.view):
        yield context.finding("warning", "far from its relatives", node, found, expected,
                              "look it up again; a note (skos:editorialNote) settles it")


def beyond_findings(nodes: Iterable[Node], context: Context) -> Iterator[Finding]:
    """A number that no other fish of the base comes near is a slip, unless a note says otherwise."""
    for node, found, expected in beyond_all(nodes, context.view):
        yield context.finding("error", "beyond every fish", node, found, expected,
                              "mend the number or its unit; where it is so, a note (note=…) says how it is known")


def lengths(node: Node, context: Context) -> Iterator[Finding]:
    """A usual length does not lie above the largest length of the same fish."""
    for found, expected in above_the_largest(node, context.view, SCOPE):
        yield context.finding("warning", "usual above largest", node, found, expected,
                              "mend one of the two, or name the fish of which it holds")


def taxonomy(node: Node, context: Context) -> Iterator[Finding]:
    """Parents, ranks, crosses and names of taxa agree with one another."""
    for severity, rule, found, expected, mend in taxonomy_findings(node, context.view):
        yield context.finding(severity, rule, node, found, expected, mend)


RULES: tuple[Rule, ...] = (references, declared, literals, identifiers, statements, numbers, bounds, doubled,
                           provenance, look_alikes, siblings, lengths, taxonomy)


def kind_of(node: Node) -> Kind | None:
    """The kind of record that a node is, None for vocabulary, changes and agents."""
    return next((BY_TYPE[t] for t in node.types() if t in BY_TYPE), None)


def _unused_states(nodes: dict[str, Node], context: Context) -> Iterator[Finding]:
    used: set[str] = set()
    for node in nodes.values():
        if not node.id.startswith("state:"):
            used.update(v for v in (*node.props.get("tf:state", ()), *node.props.get("tf:needsState", ()))
                        if isinstance(v, str))
    umbrellas = {one(n, "skos:broader") for n in nodes.values() if n.id.startswith("state:")}
    for key, node in nodes.items():
        character = nodes.get(one(node, "tf:stateOf")) if key.startswith("state:") else None
        if character is None or key in used or key in umbrellas or one(character, "tf:use") == "tf:reserved":
            continue
        yield context.finding("hint", "state never used", node, "no statement uses it", "a use",
                              "state it of a taxon, or mark the character as reserved")
