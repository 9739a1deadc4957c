"""One table that says how nodes of the graph and frozen records correspond (layer 2).

A new kind of record is a dataclass plus one entry of ``KINDS``: reading, writing, the snapshot and the check for
unknown predicates all follow this table.
"""

from __future__ import annotations

from decimal import Decimal
from functools import cache
from typing import Any, NamedTuple

from assistant.model import records as r


class Field(NamedTuple):
    """A record field and its property. ``value`` is one of: text, lang, int, number, decimal, bool, date, curie, or
    the prefix of the namespace that a reference must point into (stored without the prefix)."""

    name: str
    term: str
    value: str = "text"
    many: bool = False
    need: bool = False


class Kind(NamedTuple):
    """A class of nodes: its name, the IRI prefix of its members, rdf types and fields; ``by`` groups them by a field.

    ``record`` is the class of its records or, for rules, the name of one in ``regulations``, loaded when it is needed.
    """

    name: str
    prefix: str
    types: tuple[str, ...]
    record: type | str
    fields: tuple[Field, ...]
    by: str = ""


F = Field
_SOURCED = (F("source", "dcterms:source", "src", many=True, need=True), F("basis", "tf:basis", "tf", need=True))
_NOTE = F("note", "skos:editorialNote")
_PREFERRED = F("preferred", "tf:preferred", "bool")

KINDS: tuple[Kind, ...] = (
    Kind("taxon", "taxon", ("dwc:Taxon",), r.Taxon, (
        F("scientific", "dwc:scientificName", need=True), F("rank", "dwc:taxonRank", need=True),
        F("label", "skos:prefLabel", "lang", need=True), F("authorship", "dwc:scientificNameAuthorship"),
        F("parent", "tf:parent", "taxon"), F("parents", "tf:hybridParent", "taxon", many=True),
        F("according_to", "dwc:nameAccordingTo"), *_SOURCED, F("occurrence", "tf:occurrence", "tf"),
        F("origin", "tf:origin", "tf"), F("body_plan", "tf:bodyPlan", "tf"),
        F("replaced_by", "dcterms:isReplacedBy", "taxon", many=True),
        F("deprecated", "owl:deprecated", "bool"), _NOTE)),
    Kind("name", "name", ("tf:Name",), r.Name, (
        F("taxon", "tf:nameOf", "taxon", need=True), F("text", "skosxl:literalForm", "lang", need=True),
        F("language", "dcterms:language", need=True), F("kind", "tf:nameKind", "tf", need=True),
        F("regions", "dcterms:spatial", "place", many=True), F("region_text", "tf:regionText"), *_SOURCED, _NOTE),
        by="taxon"),
    Kind("group", "group", ("tf:Group",), r.Group, (
        F("label", "skos:prefLabel", "lang", need=True), F("plural", "tf:plural", "lang"),
        F("words", "skos:altLabel", "lang", many=True), F("hidden", "skos:hiddenLabel", "lang", many=True),
        F("members", "skos:member", "taxon", many=True, need=True), _NOTE)),
    Kind("character", "char", ("tf:Character",), r.Character, (
        F("kind", "tf:kind", "tf", need=True), F("label", "skos:prefLabel", "lang", need=True),
        F("trade", "tf:tradeLabel", "lang"), F("part", "tf:bodyPart"),
        F("anatomy", "skos:closeMatch", "obo", many=True),
        F("question", "tf:question", "lang"), F("how", "tf:howToLook", "lang"), F("look", "tf:look", "tf", need=True),
        F("error", "tf:observerError", "number", need=True), F("min_length", "tf:smallestFish", "number"),
        F("needs", "tf:needsState", "state", many=True), F("words", "skos:altLabel", "lang", many=True),
        F("hidden", "skos:hiddenLabel", "lang", many=True), F("use", "tf:use", "tf", need=True),
        F("colouring", "tf:colouring", "bool"), _NOTE)),
    Kind("state", "state", ("tf:State",), r.State, (
        F("character", "tf:stateOf", "char", need=True), F("label", "skos:prefLabel", "lang", need=True),
        F("clause", "tf:clause", "lang"), F("trade", "tf:tradeLabel", "lang"), F("order", "tf:order", "int"),
        F("broader", "skos:broader", "state"), F("except_for", "tf:exceptFor", "state", many=True),
        F("share", "tf:shareOfUmbrella", "number"),
        F("values", "tf:valueWords", "lang", many=True),
        F("phrases", "skos:altLabel", "lang", many=True), F("hidden", "skos:hiddenLabel", "lang", many=True),
        F("quality", "skos:closeMatch", "obo", many=True), _NOTE), by="character"),
    Kind("statement", "st", ("tf:StateStatement", "tf:NumberStatement", "tf:TextStatement"), r.Statement, (
        F("taxon", "tf:taxon", "taxon", need=True), F("character", "tf:character", "char", need=True),
        F("states", "tf:state", "state", many=True),
        F("low", "tf:low", "number"), F("usual_low", "tf:usualLow", "number"),
        F("usual_high", "tf:usualHigh", "number"),
        F("high", "tf:high", "number"), F("mean", "tf:mean", "number"), F("sd", "tf:spread", "number"),
        F("n", "tf:sampleSize", "int"), F("unit", "qudt:hasUnit", "unit"), F("text", "tf:text", "lang"),
        F("frequency", "tf:frequency", "freq"), F("sex", "dwc:sex"), F("stage", "dwc:lifeStage"),
        F("breeding", "dwc:reproductiveCondition"), F("season", "tf:season"),
        F("regions", "tf:inRegion", "place", many=True), F("min_length", "tf:fromLength", "number"),
        F("max_length", "tf:toLength", "number"), F("view", "tf:view", "tf"), F("scope_text", "tf:scopeText"),
        F("source", "dcterms:source", "src", many=True, need=True), F("page", "bibo:locator"),
        F("basis", "tf:basis", "tf", need=True), _PREFERRED, F("because", "tf:preferredBecause"),
        F("note", "skos:editorialNote"), F("entered_by", "prov:wasAttributedTo", "agent"),
        F("entered_on", "dcterms:created", "date"), F("retracted_on", "prov:invalidatedAtTime", "date"),
        F("retracted_because", "tf:retractedBecause")), by="taxon"),
    Kind("range", "range", ("tf:Range",), r.Range, (
        F("taxon", "tf:taxon", "taxon", need=True), F("place", "dcterms:spatial", "place", need=True),
        F("area", "tf:area"),
        F("status", "tf:rangeStatus", "tf", need=True), *_SOURCED, _PREFERRED, _NOTE), by="taxon"),
    Kind("look-alike", "alike", ("tf:LookAlike",), r.LookAlike, (
        F("taxon", "tf:taxon", "taxon", need=True), F("other", "tf:otherTaxon", "taxon", need=True),
        F("separable", "tf:separable", "tf", need=True), F("settles", "tf:settledBy"), *_SOURCED, _NOTE), by="taxon"),
    Kind("place", "place", ("geo:Feature",), r.Place, (
        F("label", "skos:prefLabel", "lang", need=True), F("code", "skos:notation"),
        F("kind", "tf:placeKind", "tf", need=True),
        F("within", "geo:sfWithin", "place", many=True), F("covers", "geo:sfContains", "place", many=True),
        F("nicknames", "skos:altLabel", "lang", many=True), F("hidden", "skos:hiddenLabel", "lang", many=True),
        F("invented", "tf:invented", "bool"), _NOTE)),
    Kind("source", "src", ("bibo:Document", "tf:Practice", "tf:Recollection"), r.Source, (
        F("kind", "tf:sourceKind", "tf", need=True), F("authors", "dcterms:creator"), F("year", "dcterms:issued"),
        F("title", "dcterms:title", need=True), F("publisher", "dcterms:publisher"), F("address", "tf:address"),
        F("what_read", "tf:whatWasRead"), F("basis", "tf:basis", "tf"), _NOTE)),
    Kind("frequency", "freq", ("tf:FrequencyWord",), r.Frequency, (
        F("label", "skos:prefLabel", "lang", need=True), F("low", "tf:low", "number", need=True),
        F("high", "tf:high", "number", need=True), F("point", "tf:point", "number", need=True),
        F("words", "skos:altLabel", "lang", many=True), _NOTE)),
    Kind("caution", "caution", ("tf:Caution",), r.Caution, (
        F("topic", "tf:topic", need=True), F("about", "tf:about", "curie", many=True), F("acts", "tf:act", many=True),
        F("text", "tf:text", "lang", need=True), F("words", "skos:altLabel", "lang", many=True),
        F("number", "tf:amount"), F("unit", "tf:unitText"), F("lead", "tf:comesFirst", "bool"), *_SOURCED)),
    Kind("practice", "practice", ("tf:AnglingPractice",), r.Practice, (
        F("topic", "tf:topic", need=True), F("about", "tf:about", "curie", many=True),
        F("text", "tf:text", "lang", need=True),
        F("words", "skos:altLabel", "lang", many=True), F("number", "tf:amount"), F("unit", "tf:unitText"),
        F("season", "tf:season"), *_SOURCED)),
    Kind("size", "size", ("tf:StandardWeight", "tf:SizeCategories", "tf:LengthConversion"), r.SizeRecord, (
        F("kind", "tf:sizeKind", "tf", need=True), F("taxon", "tf:taxon", "taxon", need=True),
        F("label", "skos:prefLabel", "lang"),
        F("a", "tf:intercept", "number"), F("b", "tf:slope", "number"), F("c", "tf:quadratic", "number"),
        F("min_length", "tf:fromLength", "number"), F("max_length", "tf:toLength", "number"),
        F("from_length", "tf:lengthFrom", "tf"), F("to_length", "tf:lengthTo", "tf"), F("stock", "tf:stock", "number"),
        F("quality", "tf:quality", "number"), F("preferred", "tf:preferredLength", "number"),
        F("memorable", "tf:memorable", "number"), F("trophy", "tf:trophy", "number"),
        F("doubt", "tf:doubt"), *_SOURCED, _NOTE),
        by="taxon"),
    Kind("term", "term", ("tf:Term",), r.Term, (
        F("label", "skos:prefLabel", "lang", need=True), F("plural", "tf:plural", "lang"),
        F("plain", "skos:definition", "lang", need=True), F("where", "tf:whereToLook", "lang"),
        F("words", "skos:altLabel", "lang", many=True), F("hidden", "skos:hiddenLabel", "lang", many=True))),
    Kind("word", "word", ("tf:WordFamily",), r.WordFamily, (
        F("head", "skos:prefLabel", "lang", need=True), F("kind", "tf:wordKind", "tf", need=True),
        F("words", "skos:altLabel", "lang", many=True), _NOTE)),
    Kind("leaning", "lean", ("tf:Leaning",), r.Leaning, (
        F("toward", "tf:toward", many=True, need=True),)),
    Kind("rule-set", "rule", ("tf:RuleSet",), "RuleSet", (
        F("label", "skos:prefLabel", "lang", need=True), F("jurisdiction", "tf:underJurisdiction", "place", need=True),
        F("unit", "qudt:hasUnit", "unit", need=True), F("valid_from", "schema:validFrom", "date", need=True),
        F("valid_through", "schema:validThrough", "date", need=True), F("as_of", "tf:asOf", "date", need=True),
        F("invented", "tf:invented", "bool"), *_SOURCED, _NOTE)),
    Kind("placement", "rule", ("tf:Placement",), "Placement", (
        F("place", "tf:atPlace", "place", need=True), F("part_of", "tf:partOf", "place"),
        F("jurisdiction", "tf:underJurisdiction", "place", need=True), F("zone", "tf:inZone", "place"),
        F("water_types", "tf:waterType", "tf", many=True), F("side", "tf:side"), _NOTE)),
    Kind("fish-group", "rule", ("tf:FishGroup",), "RuleGroup", (
        F("label", "skos:prefLabel", "lang", need=True), F("words", "skos:altLabel", "lang", many=True),
        F("jurisdiction", "tf:underJurisdiction", "place", many=True, need=True),
        F("taxa", "skos:member", "taxon", many=True), F("includes", "tf:includesGroup", "rule", many=True),
        F("crosses", "tf:includesCrosses", "bool"), _NOTE)),
    Kind("season-window", "rule", ("tf:SeasonWindow",), "SeasonWindow", (
        F("opens", "tf:opens", need=True), F("closes", "tf:closes", need=True),
        F("mode", "tf:seasonMode", "tf", need=True), F("open_water", "tf:openWaterOnly", "bool"))),
    Kind("length-limit", "rule", ("tf:LengthLimit",), "LengthLimit", (
        F("effect", "tf:lengthEffect", "tf", need=True), F("low", "tf:lowerBound", "decimal"),
        F("low_included", "tf:lowerBoundIncluded", "bool"), F("high", "tf:upperBound", "decimal"),
        F("high_included", "tf:upperBoundIncluded", "bool"), F("unit", "qudt:hasUnit", "unit", need=True))),
    Kind("over-count", "rule", ("tf:OverCount",), "OverCount", (
        F("count", "tf:fishAllowed", "int", need=True), F("length", "tf:longerThan", "decimal", need=True),
        F("included", "tf:boundIncluded", "bool"), F("unit", "qudt:hasUnit", "unit", need=True))),
    Kind("sub-limit", "rule", ("tf:SubLimit",), "SubLimit", (
        F("label", "skos:prefLabel", "lang", need=True), F("taxa", "skos:member", "taxon", many=True, need=True),
        F("count", "tf:fishAllowed", "int", need=True))),
    Kind("closed-hours", "rule", ("tf:ClosedHours",), "ClosedHours", (
        F("starts", "tf:startsAt", need=True), F("ends", "tf:endsAt", need=True))),
    Kind("obligation", "tf", ("tf:Obligation",), "Obligation", (
        F("label", "skos:prefLabel", "lang", need=True), F("text", "tf:text", "lang", need=True),
        F("topic", "tf:topic", need=True), F("words", "skos:altLabel", "lang", many=True))),
    Kind("rule", "rule", ("tf:FishingRule",), "Rule", (
        F("notation", "skos:notation", need=True), F("label", "skos:prefLabel", "lang", need=True),
        F("rule_set", "tf:ruleSet", "rule", many=True, need=True), F("layer", "tf:layer", "tf", need=True),
        F("places", "tf:appliesAt", "place", many=True), F("water_types", "tf:appliesToWaterType", "tf", many=True),
        F("override", "tf:overrideMode", "tf", need=True), F("valid_from", "schema:validFrom", "date", need=True),
        F("valid_through", "schema:validThrough", "date"), F("all_fish", "tf:allFish", "bool"),
        F("taxa", "tf:ofTaxon", "taxon", many=True), F("groups", "tf:ofGroup", "rule", many=True),
        F("seasons", "tf:seasonWindow", "rule", many=True),
        F("daily", "tf:dailyBag", "int"), F("no_daily_limit", "tf:noDailyLimit", "bool"),
        F("possession", "tf:possessionLimit", "int"), F("no_possession_limit", "tf:noPossessionLimit", "bool"),
        F("counting", "tf:counting", "tf"), F("aggregate", "tf:aggregate", "rule"),
        F("sub_limits", "tf:subLimit", "rule", many=True), F("lengths", "tf:lengthLimit", "rule", many=True),
        F("overs", "tf:overCount", "rule", many=True), F("no_length_limit", "tf:noLengthLimit", "bool"),
        F("length_method", "tf:lengthMethod", "tf"), F("closed_hours", "tf:closedHours", "rule", many=True),
        F("under_age", "tf:anglersUnder", "int"), F("obligations", "tf:obligation", "tf", many=True),
        F("border_regime", "tf:borderRegime", "tf"), F("lifts", "tf:lifts", "rule", many=True),
        F("culling", "tf:cullingAllowed", "bool"), F("order_number", "tf:orderNumber"),
        F("rescinded_on", "tf:rescindedOn", "date"), F("reviewer", "tf:reviewer"), F("invented", "tf:invented", "bool"),
        *_SOURCED, _NOTE)),
)

BY_NAME: dict[str, Kind] = {k.name: k for k in KINDS}
BY_TYPE: dict[str, Kind] = {t: k for k in KINDS for t in k.types}

_EMPTY: dict[str, Any] = {"int": None, "number": None, "decimal": None, "bool": False}


def empty(field: Field) -> Any:
    """The value a record holds where the graph says nothing (JSON-able)."""
    if field.many:
        return []
    if field.name in ("parent", "broader"):
        return None
    if field.name == "error" or field.term == "tf:smallestFish":
        return 0.0
    return _EMPTY.get(field.value, "")


def decode(kind: Kind, row: list[Any]) -> Any:
    """A frozen record from its JSON-able row (id first, then the fields in the order of the table)."""
    values = list(row)
    for place, decimal in _to_convert(kind.name):
        value = values[place]
        if not decimal:
            values[place] = tuple(value)
        elif value is not None:
            values[place] = Decimal(value)
    return (kind.record if isinstance(kind.record, type) else _rule_record(kind.record))(*values)


@cache
def _rule_record(name: str) -> type:
    from assistant.model import regulations

    found: type = getattr(regulations, name)
    return found


@cache
def _to_convert(kind: str) -> tuple[tuple[int, bool], ...]:
    """The places of a row that a record holds in another form: lists (False) and decimals (True)."""
    return tuple((i, not f.many) for i, f in enumerate(BY_NAME[kind].fields, start=1) if f.many or f.value == "decimal")
