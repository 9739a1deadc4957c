"""Changes in words: what a record says, and what is different between two forms of it (layer 4)."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.curation.records import number_text, scope_text, value_text
from assistant.curation.view import View, many, one, same_props
from assistant.graph.values import Literal, Node, Value
from assistant.model.schema import BY_TYPE, KINDS

_FIELDS = {f.term: f.name.replace("_", " ") for kind in reversed(KINDS) for f in reversed(kind.fields)
           if not f.term.startswith("tf:")}
"""Properties of other vocabularies by the options that set them."""
_QUIET = ("rdf:type", "prov:wasAttributedTo", "dcterms:created")
Pair = tuple[Node | None, Node | None]


def describe_changes(changed: Mapping[str, Pair], before: View, after: View) -> list[str]:
    """One line a changed record, in the order of ids."""
    return [line for key in sorted(changed) for line in describe_change(*changed[key], before, after)]


def describe_change(old: Node | None, new: Node | None, before: View, after: View) -> list[str]:
    """What happened to one record, in words."""
    if old is None and new is not None:
        if one(new, "prov:invalidatedAtTime"):
            return [f"new {kind_word(new)}, already retracted: {say(new, after)} ({one(new, 'tf:retractedBecause')})"]
        return [f"new {kind_word(new)}: {say(new, after)}"]
    if new is None and old is not None:
        return [f"{kind_word(old)} removed: {say(old, before)}"]
    if old is None or new is None or same_props(old.props, new.props):
        return []
    if one(new, "prov:invalidatedAtTime") and not one(old, "prov:invalidatedAtTime"):
        return [f"{kind_word(new)} retracted: {say(new, after)} ({one(new, 'tf:retractedBecause')})"]
    if one(old, "prov:invalidatedAtTime") and not one(new, "prov:invalidatedAtTime"):
        return [f"{kind_word(new)} stands again: {say(new, after)} (was retracted on "
                f"{one(old, 'prov:invalidatedAtTime')})"]
    return [f"{head(new, after)}: {difference}" for difference in differences(old, new, before, after)]


def differences(old: Node, new: Node, before: View, after: View) -> list[str]:
    """The properties that differ, each as "old → new"."""
    out: list[str] = []
    value_terms = ("tf:state", "tf:low", "tf:usualLow", "tf:usualHigh", "tf:high", "tf:mean", "tf:spread",
                   "tf:sampleSize", "qudt:hasUnit", "tf:text")
    is_statement = new.id.startswith("st:")
    if is_statement and any(set(old.props.get(t, [])) != set(new.props.get(t, [])) for t in value_terms):
        out.append(f"{value_words(old, before)} → {value_words(new, after)}, source {sources(new)}")
    for term in sorted(set(old.props) | set(new.props)):
        if is_statement and term in value_terms:
            continue
        first, second = old.props.get(term, []), new.props.get(term, [])
        if set(first) != set(second) and term not in _QUIET:
            out.append(f"{term_word(term)} {values_words(first, before)} → {values_words(second, after)}")
    return out or ["entered anew"]


def say(node: Node, view: View) -> str:
    """A record in one line."""
    if node.id.startswith("st:"):
        scope = scope_text(node)
        return (f"{head(node, view)}: {value_words(node, view)}" + (f" [{scope}]" if scope else "")
                + f", source {sources(node)} ({one(node, 'tf:basis').removeprefix('tf:')})")
    if node.id.startswith("name:"):
        return f'{label(one(node, "tf:nameOf"), view)}: "{one(node, "skosxl:literalForm")}" ' \
               f'({one(node, "tf:nameKind").removeprefix("tf:")})'
    if node.id.startswith("range:"):
        return f'{head(node, view)}: {one(node, "tf:rangeStatus").removeprefix("tf:")}, source {sources(node)}'
    if node.id.startswith("alike:"):
        return f'{label(one(node, "tf:taxon"), view)} and {label(one(node, "tf:otherTaxon"), view)}'
    title = one(node, "skos:prefLabel") or one(node, "dcterms:title")
    return f"{node.id} ({title})" if title else node.id


def head(node: Node, view: View) -> str:
    """What a record is about."""
    if node.id.startswith("st:"):
        return f'{label(one(node, "tf:taxon"), view)}, {label(one(node, "tf:character"), view)}'
    if node.id.startswith("range:"):
        return f'{label(one(node, "tf:taxon"), view)} in {label(one(node, "dcterms:spatial"), view)}'
    return say(node, view)


def value_words(node: Node, view: View) -> str:
    """The value of a statement in words, with its frequency."""
    if node.props.get("tf:state"):
        text = " or ".join(label(s, view) for s in many(node, "tf:state"))
    elif node.props.get("tf:text"):
        text = value_text(node)
    else:
        text = number_text(node).replace("-", "–")
    word = one(node, "tf:frequency").partition(":")[2].replace("-", " ")
    return f"{word} {text}" if word and node.props.get("tf:state") else text


def sources(node: Node) -> str:
    """The keys of a record's sources."""
    return ", ".join(s.partition(":")[2] for s in many(node, "dcterms:source")) or "none"


def label(key: str, view: View) -> str:
    """The label of a record, or its id."""
    node = view.node(key)
    return (one(node, "skos:prefLabel") or key) if node else key


def waiting_words(number: int) -> str:
    """What is said of records that a split or a lump left undecided."""
    those = "1 record waits" if number == 1 else f"{number} records wait"
    return (f"{those} on retired taxa and say nothing of what these became until someone decides: "
            "tellfin split --queue lists them")


def kind_word(node: Node) -> str:
    """The kind of a record in a word."""
    return next((BY_TYPE[t].name for t in node.types() if t in BY_TYPE), "record")


def term_word(term: str) -> str:
    """A property in words.

    >>> term_word("tf:rangeStatus"), term_word("bibo:locator"), term_word("prov:invalidatedAtTime")
    ('range status', 'page', 'retracted on')
    """
    name = term.partition(":")[2]
    if term == "rdf:type":
        return "class"
    return _FIELDS.get(term) or "".join(f" {c.lower()}" if c.isupper() else c for c in name)


def values_words(values: list[Value], view: View) -> str:
    """Values in words; "(none)" for none."""
    texts = sorted(v.value if isinstance(v, Literal) else label(v, view) for v in values)
    return ", ".join(texts) if texts else "(none)"
