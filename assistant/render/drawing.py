"""A fish drawn from its statements: a pure function from the base to an SVG side view (layer 5).

What the base tells is drawn in firm lines, what it does not is left out or drawn faint and dashed. The drawing is a
diagram, not to scale and not a portrait.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from html import escape

from assistant.model.knowledge import KnowledgeBase
from assistant.render.drawing_canvas import FAINT, INK, PAPER, Canvas, Style, ahead, blend, body_ring, outline_of
from assistant.render.drawing_fins import draw_adipose, draw_anal, draw_dorsal, draw_pectoral, draw_pelvic, draw_tail
from assistant.render.drawing_head import body_ink, draw_head
from assistant.render.drawing_marks import draw_fin_marks, draw_marks, draw_skin
from assistant.render.drawing_shapes import Frame, Point, number, smooth, span
from assistant.render.drawing_traits import Traits, read_traits

WIDE, HIGH = 640, 330
MARGIN = 30
EDGE = 12
"""Free room above and below a fish; a slender one takes no more of the page than it needs."""
APART = .055
"""How far apart the lines of several call-outs at one place end, in lengths of the fish."""
RING = 15.0
"""Radius of the ring of a call-out."""
NOT_TO_SCALE = "drawn from the base, not to scale"
NO_RINGS: Mapping[str, str] = {}


def draw_fish(kb: KnowledgeBase, taxon: str, callouts: Mapping[str, str] = NO_RINGS, ring: float = RING) -> str:
    """The SVG of a taxon or cross; ``callouts`` gives the ring number that stands at the place of a character.

    ``ring`` is the radius of a call-out, larger where the picture is printed small.
    """
    canvas = _drawn(kb, taxon)
    _rings(kb, canvas, callouts, ring)
    return _framed(kb, taxon, canvas, ring if callouts else 0.0)


def drawable(kb: KnowledgeBase, taxon: str, characters: Iterable[str]) -> frozenset[str]:
    """Those of some characters that have a place on the drawing of a taxon."""
    canvas = _drawn(kb, taxon)
    return frozenset(c for c in characters if place_of(kb, canvas, c) is not None)


def _drawn(kb: KnowledgeBase, taxon: str) -> Canvas:
    traits = read_traits(kb, taxon)
    canvas = _canvas(traits, taxon)
    draw_tail(canvas)
    draw_dorsal(canvas)
    draw_anal(canvas)
    draw_adipose(canvas)
    draw_pelvic(canvas)
    draw_fin_marks(canvas)
    _body(canvas)
    draw_head(canvas)
    draw_pectoral(canvas)
    return canvas


def _canvas(traits: Traits, taxon: str) -> Canvas:
    top, bottom = outline_of(traits)
    lead = max(.02, ahead(traits))
    tail = traits.plan.tail * (1.45 if traits.shows("caudal-fin-shape", "shark-like") else 1.0)
    up = max(v for _, v in top.points) + traits.plan.dorsal_height * (
        1.5 if traits.shows("dorsal-fin-form", "sail-like") else 1.0)
    down = -min(v for _, v in bottom.points) + traits.plan.pectoral_length * .5
    scale = min((WIDE - 2 * MARGIN) / (lead + 1 + tail), (HIGH - 10) / (up + down))
    left = (WIDE - (lead + 1 + tail) * scale) / 2
    frame = Frame(left + lead * scale, HIGH / 2 + (up - down) / 2 * scale, scale)
    half = min(HIGH / 2, (up + down) / 2 * scale + EDGE)
    return Canvas(traits, frame, top, bottom, f"fish-{taxon}", (HIGH / 2 - half, HIGH / 2 + half))


def _body(canvas: Canvas) -> None:
    t = canvas.traits
    clip, tint = f"{canvas.name}-body", f"{canvas.name}-tint"
    side = body_ink(canvas)
    back = t.colour("back-colour") or t.colour("body-colour") or "#7f8577"
    belly = blend(t.colour("breast-colour"), PAPER, .5) if t.colour("breast-colour") else "#fbf8ef"
    canvas.pieces.append(
        f'<linearGradient id="{tint}" x1="0" y1="0" x2="0" y2="1">'
        f'<stop offset="0" stop-color="{blend(back, PAPER, .78)}"/>'
        f'<stop offset=".42" stop-color="{side}"/><stop offset="1" stop-color="{belly}"/></linearGradient>')
    ring = [canvas.frame.at(*p) for p in body_ring(canvas)]
    half = len(ring) // 2
    line = smooth([*ring[half:], *ring[:half]])
    data = line + "Z"
    canvas.pieces.append(f'<clipPath id="{clip}"><path d="{data}"/></clipPath>')
    canvas.path(data, fill=f"url(#{tint})", stroke="none")
    canvas.open_group(clip_path=f"url(#{clip})")
    _hatch(canvas)
    draw_skin(canvas)
    draw_marks(canvas)
    canvas.close_group()
    style: Style = {} if t.knows("body-form") or t.plan_known else dict(FAINT)
    canvas.path(line, stroke_width=1.7, stroke_linejoin="round", **style)


def _hatch(canvas: Canvas) -> None:
    """Fine lines along the back and the belly that round the body, as in an engraving."""
    for i, share in enumerate((.97, .93, .885, .84, .79, .74, .685, .63)):
        canvas.curve([canvas.inside(u, share) for u in span(.05 + .012 * i, .985, 16)], stroke_width=.7,
                     stroke_opacity=.5 - .045 * i)
    for i, share in enumerate((-.97, -.93, -.88)):
        canvas.curve([canvas.inside(u, share) for u in span(.12, .96, 14)], stroke_width=.6,
                     stroke_opacity=.34 - .08 * i)


CALLED = {"barbels": "mouth-barbels", "body-bars": "bars", "body-bar-count": "bars", "body-spots": "spots",
          "lateral-line": "lateral-line",
          "lateral-line-scales": "lateral-line", "soft-dorsal-blotch": "soft-dorsal-fin",
          "spiny-dorsal-blotch": "spiny-dorsal-fin",
          "barbel-colour": "mouth-barbels"}
"""Characters whose place is more exact than that of their body part."""


def place_of(kb: KnowledgeBase, canvas: Canvas, character: str) -> Point | None:
    """Where a character is seen on the drawn fish; nowhere for what a glance shows and the drawing does not."""
    found = kb.character(character)
    if (found.colouring or found.look == "glance") and character not in canvas.traits.looked_up:
        return None
    names = (CALLED.get(character, ""), found.part, {"soft-dorsal-fin": "dorsal-fin", "spiny-dorsal-fin": "dorsal-fin",
             "unpaired-fins": "dorsal-fin", "fins": "dorsal-fin", "lower-fins": "anal-fin"}.get(found.part, ""))
    return next((canvas.anchors[n] for n in names if n in canvas.anchors), None)


def _rings(kb: KnowledgeBase, canvas: Canvas, callouts: Mapping[str, str], ring: float) -> None:
    """Numbers beside the fish with a line to the place of each feature."""
    spots = _ends(canvas, [(index, place) for c, index in callouts.items()
                           if (place := place_of(kb, canvas, c)) is not None])
    upper = sorted((s for s in spots if s[1][1] <= HIGH / 2), key=lambda s: s[1][0])
    lower = sorted((s for s in spots if s[1][1] > HIGH / 2), key=lambda s: s[1][0])
    above, below = canvas.room
    for row, y in ((upper, above + 2.0 - ring), (lower, below + ring - 2.0)):
        for (index, (x, at)), beside in zip(row, _spread([s[1][0] for s in row], ring), strict=True):
            edge = y + (ring if y < at else -ring)
            line = f'<path d="M{number(beside)} {number(edge)}L{number(x)} {number(at)}" fill="none" '
            canvas.pieces.append(
                f'{line}stroke="{PAPER}" stroke-width="3"/>{line}stroke="{INK}" stroke-width=".9"/>'
                f'<circle cx="{number(x)}" cy="{number(at)}" r="2.4" fill="{INK}" stroke="{PAPER}"/>'
                f'<circle cx="{number(beside)}" cy="{number(y)}" r="{number(ring)}" fill="#ffffff" '
                f'stroke="{INK}" stroke-width="1.3"/>'
                f'<text x="{number(beside)}" y="{number(y + .44 * ring)}" text-anchor="middle" '
                f'font-size="{number(1.27 * ring)}" font-weight="700" fill="{INK}">{index}</text>')


def _ends(canvas: Canvas, marked: Sequence[tuple[str, Point]]) -> list[tuple[str, Point]]:
    """Where the lines of the call-outs end in the picture, those that share a place side by side along the fish."""
    shared: dict[Point, list[str]] = {}
    for index, place in marked:
        shared.setdefault(place, []).append(index)
    return [(index, canvas.frame.at(u + APART * (k - (len(found) - 1) / 2), v))
            for (u, v), found in shared.items() for k, index in enumerate(found)]


def _spread(places: Sequence[float], ring: float) -> list[float]:
    """Places moved apart so that rings do not touch, in their order and inside the picture."""
    least = 2 * ring + 4
    out: list[float] = []
    for place in places:
        out.append(max(place, out[-1] + least) if out else max(ring + 2, place))
    over = (out[-1] - (WIDE - ring - 2)) if out else 0.0
    for i in range(len(out) - 1, -1, -1):
        limit = WIDE - ring - 2 if i == len(out) - 1 else out[i + 1] - least
        out[i] = min(out[i], limit) if over > 0 else out[i]
    return out


def description(kb: KnowledgeBase, traits: Traits) -> str:
    """What the drawing shows, in words, for readers who do not see it."""
    told = []
    for character, states in traits.states.items():
        state = next((s for s in kb.states(character) if s.id == f"{character}.{states[0]}"), None)
        if state is not None and kb.character(character).look == "glance" and state.clause:
            told.append(state.clause.partition("|")[0])
    return "; ".join(told)


def _framed(kb: KnowledgeBase, taxon: str, canvas: Canvas, ring: float) -> str:
    label = kb.taxon(taxon).label
    name = canvas.name
    above, below = canvas.room[0] - 2 * ring, canvas.room[1] + 2 * ring
    return (f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 {number(above)} {WIDE} {number(below - above)}" '
            f'overflow="visible" role="img" aria-labelledby="{name}-title {name}-desc" '
            f'font-family="Georgia, serif"><title id="{name}-title">{escape(label)}, {NOT_TO_SCALE}</title>'
            f'<desc id="{name}-desc">{escape(description(kb, canvas.traits))}</desc>{"".join(canvas.pieces)}</svg>')
