"""Drawn fishes: a pure function of the base, sound SVG, what is told firm and what is not faint."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

import pytest

from assistant.model.knowledge import KnowledgeBase
from assistant.render.drawing import draw_fish, drawable
from assistant.render.drawing_canvas import Canvas, outline_of
from assistant.render.drawing_head import eye_place, mouth_line
from assistant.render.drawing_plans import PLANS
from assistant.render.drawing_shapes import Curve, Frame, smooth, span
from assistant.render.drawing_traits import ink, plan_of, read_traits

NUMBERED, NUMBER = ("d", "cx", "cy", "r", "rx", "ry", "x", "y"), re.compile(r"nan|inf|-?\d+(?:\.\d+)?")
SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("step", [pytest.param(5, id="fifth"), pytest.param(1, id="all", marks=pytest.mark.long)])
def test_every_fish_can_be_drawn(kb: KnowledgeBase, step: int) -> None:
    """Each species and cross gives sound SVG with a title, a description, and nothing outside its picture."""
    for taxon in kb.species[::step]:
        root = ET.fromstring(draw_fish(kb, taxon))
        assert root.tag == SVG + "svg" and root.get("role") == "img"
        assert kb.taxon(taxon).label in (root.findtext(SVG + "title") or "")
        numbers = [x for e in root.iter() for n, value in e.attrib.items() if n in NUMBERED
                   for x in NUMBER.findall(value)]
        assert len(numbers) > 300 and all(-80 < float(x) < 760 for x in numbers)


def test_plans_of_the_base_are_known(kb: KnowledgeBase) -> None:
    """Every species takes a body plan, and the drawing knows each plan that the base names."""
    plans = {plan_of(kb, t) for t in kb.species}
    assert plans <= set(PLANS) and len(plans) >= 8


def test_drawing_is_pure(kb: KnowledgeBase) -> None:
    """The same fish is drawn the same, whatever was drawn before."""
    first = draw_fish(kb, "esox-lucius")
    draw_fish(kb, "lepomis-gibbosus")
    assert draw_fish(kb, "esox-lucius") == first


def test_statements_change_the_drawing(kb: KnowledgeBase) -> None:
    """Fishes of one plan that differ in statements differ in their drawing: bars, spots, blotch."""
    assert draw_fish(kb, "lepomis-macrochirus").replace("macrochirus", "") != draw_fish(kb,
        "lepomis-gibbosus").replace("gibbosus", "")


def test_what_is_not_told_is_faint(kb: KnowledgeBase) -> None:
    """A fish with an untold pectoral fin form gets a dashed fin; one with a told form a firm one."""
    told = next(t for t in kb.species if read_traits(kb, t).one("pectoral-fin-form") == "long-pointed")
    untold = next(t for t in kb.species if not read_traits(kb, t).knows("pectoral-fin-form")
                  and not read_traits(kb, t).shows("pectoral-fins", "absent"))
    assert 'stroke-opacity=".7"' in _pectoral(kb,
        untold) and 'stroke-dasharray="3 2.4" stroke-opacity=".7"' not in draw_fish(kb, told)


def _pectoral(kb: KnowledgeBase, taxon: str) -> str:
    return next(p for p in draw_fish(kb, taxon).split("<path") if 'stroke-opacity=".7"' in p and "3 2.4" in p)


@pytest.mark.parametrize(("states", "characters"), [
    ("adipose-fin.present", ("adipose-fin",)), ("barbels.eight", ("barbels",)), ("spiny-dorsal-blotch.present",
                                                                                 ("spiny-dorsal-blotch",))])
def test_features_told_have_a_place(kb: KnowledgeBase, states: str, characters: tuple[str, ...]) -> None:
    """A feature that the base tells of can be pointed at in the drawing."""
    character, _, state = states.partition(".")
    taxon = next(t for t in kb.species if read_traits(kb, t).shows(character, state))
    assert drawable(kb, taxon, characters) == frozenset(characters)


def test_rings_bear_their_numbers(kb: KnowledgeBase) -> None:
    """Call-outs are drawn with their numbers and do not touch."""
    rings = {"body-form": "1", "eye-size": "2", "caudal-fin-shape": "3", "dorsal-fin-arrangement": "4"}
    root = ET.fromstring(draw_fish(kb, "micropterus-dolomieu", rings))
    texts = list(root.iter(SVG + "text"))
    assert sorted(t.text or "" for t in texts) == ["1", "2", "3", "4"]
    places = [(float(t.get("x") or 0), float(t.get("y") or 0)) for t in texts]
    assert all(abs(a[0] - b[0]) > 28 or abs(a[1] - b[1]) > 28 for i, a in enumerate(places) for b in places[:i])


def test_curve_runs_through_its_points() -> None:
    """A curve meets its points and stays flat beyond them."""
    curve = Curve(((0, 0), (1, 2), (2, 1)))
    assert [curve(u) for u in (-1, 0, 1, 2, 3)] == [0, 0, 2, 1, 1]
    assert smooth([(0, 0), (1, 1), (2, 0)]).startswith("M0 0C") and span(0, 1, 3) == [0, 0.5, 1]


def test_inks_follow_colour_words() -> None:
    """The first colour word counts, the longer one where two begin there."""
    assert ink("blue-green-flecks") == ink("blue-green") != ink("blue")
    assert ink("no-colour-here") == ""


def widths(svg: str, colour: str) -> list[float]:
    """The widths of the lines in a colour."""
    lines = ET.fromstring(svg).iter(SVG + "path")
    return [float(e.get("stroke-width", "0")) for e in lines if e.get("stroke") == colour]


def test_a_red_rim_of_the_ear_is_broad_and_stays_uncovered(kb: KnowledgeBase) -> None:
    """The redear's rim is a line of five or more, and the call-out of the flap ends outside of it."""
    svg = draw_fish(kb, "lepomis-microlophus", {"opercular-flap-edge": "1"})
    assert max(widths(svg, "#c23b2a")) >= 5
    root = ET.fromstring(svg)
    flap = next(e for e in root.iter(SVG + "ellipse") if e.get("fill") == "#171d20")
    dot = next(e for e in root.iter(SVG + "circle") if e.get("r") == "2.4")
    assert float(dot.get("cy", 0)) + 2.4 < float(flap.get("cy", 0)) - float(flap.get("ry", 0))


def test_colours_of_the_statements_are_drawn(kb: KnowledgeBase) -> None:
    """The rainbow trout has a pink band, the brown trout red spots that no black one covers."""
    assert widths(draw_fish(kb, "oncorhynchus-mykiss"), "#cf8d8a")
    spots = [e for e in ET.fromstring(draw_fish(kb, "salmo-trutta")).iter(SVG + "circle") if e.get("fill-opacity")]
    red = {(e.get("cx"), e.get("cy")) for e in spots if e.get("fill") == "#b8322c"}
    assert len(red) > 20 and not red & {(e.get("cx"), e.get("cy")) for e in spots if e.get("fill") == "#26302f"}


def test_callouts_at_one_place_end_apart(kb: KnowledgeBase) -> None:
    """Lines to several marks of the side end at several points, and a larger ring has larger figures."""
    marks = {c: str(i) for i, c in enumerate(("body-spots", "body-bars", "body-mottling", "body-colour"), 1)}
    svg = ET.fromstring(draw_fish(kb, "lepomis-gibbosus", marks, 24))
    dots = [(e.get("cx"), e.get("cy")) for e in svg.iter(SVG + "circle") if e.get("r") == "2.4"]
    assert len(dots) == len(set(dots)) == 4
    assert all(float(e.get("font-size", "0")) > 30 for e in svg.iter(SVG + "text"))


def test_a_slender_fish_takes_less_room(kb: KnowledgeBase) -> None:
    """The picture of a pike is lower than that of a sunfish."""
    high = [float((ET.fromstring(draw_fish(kb, t)).get("viewBox") or "").split()[3])
            for t in ("esox-lucius", "lepomis-gibbosus")]
    assert high[0] < .6 * high[1]


def test_pale_whiskers_are_seen_on_white_paper(kb: KnowledgeBase) -> None:
    """Pale chin whiskers of the yellow bullhead have ink under them; dark ones are as broad."""
    pale = draw_fish(kb, "ameiurus-natalis")
    assert sum(w > 4 for w in widths(pale, "#1f2b2c")) >= 2 and sum(w > 2 for w in widths(pale, "#ffffff")) >= 2


def test_spotted_fish_have_their_spots(kb: KnowledgeBase) -> None:
    """The black crappie has its speckles, and the pale spots of its fins lie in dark ink."""
    root = ET.fromstring(draw_fish(kb, "pomoxis-nigromaculatus"))
    dark = [e for e in root.iter(SVG + "circle") if e.get("fill") == "#26302f"]
    clear = [e.get("fill-opacity") for e in dark]
    assert clear.count(".92") > 30 and clear.count(".62") > 20


def dots(svg: str) -> list[tuple[float, float]]:
    """Where the lines of the call-outs end, in the order of their numbers."""
    root = ET.fromstring(svg)
    return [(float(e.get("cx", 0)), float(e.get("cy", 0))) for e in root.iter(SVG + "circle") if e.get("r") == "2.4"]


def test_a_callout_ends_where_its_mark_is_drawn(kb: KnowledgeBase) -> None:
    """Marks in the fins are pointed at where they are drawn, the colour of the lower fins on a fin of that colour."""
    taxa = [t for t in kb.species if read_traits(kb, t).one("median-fin-marks") == "brown-black-blotches"]
    for taxon in taxa:
        svg = draw_fish(kb, taxon, {"median-fin-marks": "1"})
        spots = [(float(e.get("cx", 0)), float(e.get("cy", 0))) for e in ET.fromstring(svg).iter(SVG + "circle")
                 if e.get("fill-opacity") == ".75"]
        (x, y), = dots(svg)
        assert min(abs(x - a) + abs(y - b) for a, b in spots) < 4, taxon
    coloured = [t for t in kb.species if (r := read_traits(kb, t)).colour("lower-fin-colour")
                and r.colour("pelvic-fin-colour") and r.count("anal-soft-rays", 0)]
    assert taxa and coloured
    for taxon in coloured:
        colour, fin = (draw_fish(kb, taxon, {c: "1"}) for c in ("lower-fin-colour", "anal-fin-base"))
        assert dots(colour) == dots(fin), taxon


def test_a_mark_that_is_not_drawn_has_no_callout(kb: KnowledgeBase) -> None:
    """A colour or mark that the drawing leaves out is not pointed at."""
    marks = [c.id for c in kb.characters if c.colouring]
    for taxon in kb.species[::12]:
        traits = read_traits(kb, taxon)
        assert not {"nape-patch", "gill-cover-spots"} & drawable(kb, taxon, marks)
        assert not traits.looked_up
    assert "body-spots" in drawable(kb, kb.species[0], marks)


def test_the_dress_of_spawning_fish_is_not_drawn(kb: KnowledgeBase) -> None:
    """A colour told of spawning fish alone does not colour the fish of the sheet."""
    alone = [s for t in kb.species for s in kb.statements(t) if s.breeding and s.character == "pelvic-fin-colour"
             and all(x.breeding for x in kb.statements_on(t, s.character))]
    assert alone and all(not read_traits(kb, s.taxon).states.get("pelvic-fin-colour") for s in alone)


def head_of(kb: KnowledgeBase, taxon: str) -> Canvas:
    """The outline of a fish on which its head can be measured."""
    traits = read_traits(kb, taxon)
    return Canvas(traits, Frame(0, 0, 1), *outline_of(traits), taxon, (0, 0))


def test_the_mouth_lies_within_the_head(kb: KnowledgeBase) -> None:
    """The line of the mouth runs between the outline above and the chin from tip to corner, in every fish."""
    for taxon in kb.species:
        canvas = head_of(kb, taxon)
        start, end, _ = mouth_line(canvas)
        assert all(canvas.bottom(u) < v < canvas.top(u) for u, v in (
            end, ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2))), taxon


def test_what_only_young_fish_show_is_not_drawn(kb: KnowledgeBase) -> None:
    """The grass pickerel, whose band is told of young fish alone, is drawn without it, and so is every other fish."""
    young = [(t, s.character) for t in kb.species for s in kb.statements(t) if s.stage == "juvenile"
             and kb.character(s.character).is_stated and all(x.stage == "juvenile"
                                                             for x in kb.statements_on(t, s.character))]
    assert ("esox-americanus-vermiculatus", "stripe-pattern") in young
    assert not [(t, c) for t, c in young if read_traits(kb, t).knows(c)]


def test_snouts_of_other_length_are_drawn_otherwise(kb: KnowledgeBase) -> None:
    """The eye lies nearer to the tip in a short snout than in a long one, and stays below the outline of the head."""
    places = []
    for taxon in ("esox-americanus-americanus", "esox-americanus-vermiculatus", "esox-niger"):
        canvas = head_of(kb, taxon)
        u, v, radius = eye_place(canvas)
        assert v + radius <= canvas.top(u) + .001
        places.append(u)
    assert places == sorted(set(places))
    assert "snout-length" in drawable(kb, "esox-niger", ["snout-length"])


def test_what_a_glance_would_show_and_the_drawing_does_not_has_no_callout(kb: KnowledgeBase) -> None:
    """A shape seen at a glance that the drawing leaves out is not pointed at; one to be felt for is, where it lies."""
    assert drawable(kb, "esox-lucius", ["head-size", "caudal-peduncle-form", "head-scales"]) == {"head-scales"}
