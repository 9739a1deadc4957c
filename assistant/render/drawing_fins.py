"""The fins of a drawn fish: where they sit, how they are built, what marks they bear (layer 5)."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from assistant.render.drawing_canvas import FAINT, FIN, INK, Canvas, Style, blend
from assistant.render.drawing_shapes import Point, line, smooth, span

Height = Callable[[float], float]
SPINE, RAY = 1.15, .45


@dataclass(frozen=True, slots=True)
class Fin:
    """A fin on the back or the belly: base from ``u`` to ``v`` (both along the body), height over it, spines, rays."""

    part: str
    first: float
    last: float
    height: Height
    spines: int
    rays: int
    above: bool = True
    lean: float = .42
    known: bool = True


def draw_dorsal(canvas: Canvas) -> None:
    """The dorsal fin or fins as they are arranged."""
    for fin in dorsal_fins(canvas):
        draw_fin(canvas, fin)
    canvas.anchors.setdefault("dorsal-fin", next(iter(canvas.anchors.values())) if canvas.anchors else (.5, .1))


def dorsal_fins(canvas: Canvas) -> list[Fin]:
    """The dorsal fins told of, or the plan's own drawn faint."""
    t, plan = canvas.traits, canvas.traits.plan
    start, length = _dorsal_base(canvas)
    high = plan.dorsal_height * {"low-uniform": .68, "tall": 1.22}.get(t.one("dorsal-spine-height"), 1.0)
    spines, rays = t.count("dorsal-spines", 10), t.count("dorsal-soft-rays", 12)
    known = t.knows("dorsal-fin-arrangement")
    if t.shows("dorsal-fin-arrangement", "continuous-with-tail"):
        return [Fin("dorsal-fin", .34, 1.0, lambda s: .045 * min(1, s * 5) * (1 - .4 * s), 0, 60, known=True, lean=.5)]
    if t.shows("dorsal-fin-arrangement", "short-with-one-spine"):
        return [Fin("dorsal-fin", start, start + length, lambda s: high * (1 - .5 * s), 1, 6, lean=.38)]
    if t.shows("dorsal-fin-arrangement", "two-separate"):
        return _two_fins(canvas, start, length, high)
    if t.shows("dorsal-fin-arrangement", "single-soft", "single-notched") or not spines:
        soft = plan.dorsal_height * (1.5 if t.shows("dorsal-fin-form", "sail-like") else 1.0)
        shape = _soft_height(soft, long=length > .26, concave=t.shows("dorsal-fin-edge", "concave"))
        spine = 1 if t.shows("serrated-dorsal-spine", "present") else 0
        return [Fin("dorsal-fin", start, start + length, shape, spine, min(rays, 40), known=known)]
    cut = start + length * _spiny_share(spines, rays)
    dip = .22 if t.shows("dorsal-fin-arrangement", "two-joined-deep-notch") else .5 if t.shows(
        "dorsal-fin-arrangement", "two-joined") else .9
    return [Fin("spiny-dorsal-fin", start, cut, _spiny_height(high, dip), spines, 0, known=known),
            Fin("soft-dorsal-fin", cut, start + length, _rounded(plan.dorsal_height * 1.08, dip if dip < .6 else .85),
                0, rays,
                known=known)]


def _dorsal_base(canvas: Canvas) -> tuple[float, float]:
    t, plan = canvas.traits, canvas.traits.plan
    start, length = plan.dorsal
    soft = t.shows("dorsal-fin-arrangement", "single-soft")
    if soft and t.knows("dorsal-soft-rays"):
        length = min(.55, .05 + .0095 * t.count("dorsal-soft-rays", 10))
    length = {"short": .12, "long": max(length, .33)}.get(t.one("dorsal-base-length"), length)
    start = {"forward": .30, "middle": .44, "far-back": .70}.get(t.one("dorsal-fin-placement"), start)
    if t.shows("dorsal-base-vs-eye-distance", "shorter"):
        start, length = start + .09, length - .1
    if t.shows("mouth-form", "sucking-disc"):
        start, length = .5, .46
    return start, min(length, .97 - start)


def _two_fins(canvas: Canvas, start: float, length: float, high: float) -> list[Fin]:
    t = canvas.traits
    soft_front = t.shows("fin-spines", "soft") or (t.knows("dorsal-spines") and t.count("dorsal-spines", 1) == 0)
    if t.shows("mouth-form", "sucking-disc"):
        hill = _rounded(.05, .3)
        return [Fin("dorsal-fin", .5, .64, hill, 0, 14), Fin("dorsal-fin", .69, .97, hill, 0, 26)]
    spines, rays = t.count("dorsal-spines", 9), t.count("dorsal-soft-rays", 12)
    if soft_front:
        front = .035 + .009 * t.count("dorsal-first-rays", 11)
        hill = _rounded(high, .7)
        return [Fin("dorsal-fin", start, start + front, hill, 0, t.count("dorsal-first-rays", 11)),
                Fin("dorsal-fin", start + front + .02, min(.95, start + front + .5), _even(high * .9), 0, min(rays,
                                                                                                              48))]
    front = length * _spiny_share(spines, rays)
    return [Fin("spiny-dorsal-fin", start, start + front - .02, _spiny_height(high, .2), spines, 0),
            Fin("soft-dorsal-fin", start + front + .025, start + length, _rounded(high * .82, .8), 0, rays)]


def _spiny_share(spines: int, rays: int) -> float:
    return min(.64, max(.3, spines * 1.12 / (spines * 1.12 + rays)))


def _spiny_height(high: float, dip: float) -> Height:
    return lambda s: high * (min(1.0, .42 + 1.9 * s) if s < .3 else 1 - (1 - dip) * ((s - .3) / .7) ** 1.5)


def _rounded(high: float, front: float) -> Height:
    return lambda s: high * (front + (1 - front) * math.sin(min(1, s / .45) * math.pi / 2)) * (1 - .42 * max(0,
        (s - .5) / .5) ** 2)


def _even(high: float) -> Height:
    return lambda s: high * min(1, .55 + 3 * s) * (1 - .3 * max(0, (s - .85) / .15))


def _soft_height(high: float, long: bool, concave: bool) -> Height:
    if long and not concave:
        return _even(high * .72)
    if long:
        return lambda s: high * (1 - .62 * min(1, s * 3.2) + .04 * s) if s > .02 else high * .98
    fall = .75 if concave else .52
    return lambda s: high * min(1, .86 + s * 1.6) * (1 - fall * s**(.7 if concave else 1.1))


def draw_anal(canvas: Canvas) -> None:
    """The anal fin, where there is one."""
    fin = anal_fin(canvas)
    if fin is not None:
        draw_fin(canvas, fin)


def anal_fin(canvas: Canvas) -> Fin | None:
    """The anal fin: as long as its rays tell, with its spines and its outline."""
    t, plan = canvas.traits, canvas.traits.plan
    if t.shows("dorsal-fin-arrangement", "continuous-with-tail"):
        return Fin("anal-fin", .46, 1.0, lambda s: .04 * min(1, s * 5) * (1 - .4 * s), 0, 50, above=False)
    if t.shows("mouth-form", "sucking-disc"):
        return None
    start, length = plan.anal
    end = start + length
    rays, spines = t.count("anal-soft-rays", 10), t.count("anal-spines", 0)
    if t.knows("anal-soft-rays") and (spines < 3):
        length = min(.42, .05 + .0072 * (rays + spines))
    elif t.knows("anal-soft-rays"):
        length = min(.36, .085 + .0085 * (rays + spines))
    length *= {"long": 1.15, "short": .9}.get(t.one("anal-fin-base"), 1.0)
    high = plan.anal_height * {"anal-smaller": .92, "about-equal": 1.15}.get(t.one("anal-vs-dorsal-size"), 1.0)
    if t.shows("anal-fin-placement", "far-back"):
        end = min(.93, end + .06)
    shape: Height = {
        "straight": lambda s: high * (1 - .45 * s), "sickle-shaped": _soft_height(high * 1.15, length > .26, True),
        "rounded": _rounded(high * 1.05, .6)}.get(t.one("anal-fin-margin"), _rounded(high, .72) if spines else
                                                 _even(high * .8) if length > .3 else _soft_height(high, False, False))
    return Fin("anal-fin", end - length, end, shape, spines, min(rays, 46), above=False,
               known=t.knows("anal-soft-rays"))


def draw_fin(canvas: Canvas, fin: Fin) -> None:
    """A fin with its spines, rays and edge; dashed where nothing is told."""
    outer = [edge_at(canvas, fin, s) for s in _stops(fin)]
    base = [base_at(canvas, fin, s) for s in span(1, 0, 9)]
    at = canvas.frame.at
    style: Style = dict(FAINT) if not fin.known else {}
    first = line([at(*base_at(canvas, fin, 0)), at(*outer[0])])
    edge = line([at(*p) for p in outer]) if fin.spines > 1 else smooth([at(*p) for p in outer])
    back = line([at(*p) for p in base])
    data = first + edge.replace("M", "L", 1) + back.replace("M", "L", 1) + "Z"
    canvas.path(data, fill=blend(_fin_ink(canvas, fin), FIN, .55), fill_opacity=.9 if fin.known else .35,
                stroke_width=.9,
                stroke_linejoin="round", **style)
    if not fin.above:
        canvas.anchors["anal-front"] = base_at(canvas, fin, 0)
        canvas.anchors["anal-front-tip"] = edge_at(canvas, fin, .04)
    for s, width in _rods(fin):
        canvas.path(line([at(*base_at(canvas, fin, s)), at(*edge_at(canvas, fin, s, .98 if width < 1 else 1.0))]),
                    stroke_width=width, stroke_opacity=.75 if width > 1 else .5, **style)
    middle = edge_at(canvas, fin, .45, .62)
    canvas.mark(fin.part, middle)
    if fin.above:
        canvas.mark("dorsal-fin", middle)


def _fin_ink(canvas: Canvas, fin: Fin) -> str:
    if not fin.above and (colour := canvas.traits.colour("lower-fin-colour")):
        return colour
    return FIN


def _stops(fin: Fin) -> list[float]:
    """Where the edge bends: at the spine tips and midway between them, or evenly along soft rays."""
    if fin.spines > 1 and not fin.rays:
        return span(0, 1, 2 * fin.spines - 1)
    return span(0, 1, 13)


def edge_at(canvas: Canvas, fin: Fin, s: float, share: float = 1.0) -> Point:
    """A point a share of the way from the base of a fin to its edge, ``s`` of its length from the front."""
    u, v = base_at(canvas, fin, s)
    high = fin.height(s) * share
    if fin.spines > 1 and not fin.rays and fin.spines < 30:
        step = s * (fin.spines - 1)
        high *= .87 if abs(step - round(step)) > .25 else 1.0
    lean = fin.lean + .3 * s
    up = 1 if fin.above else -1
    return u + high * lean, v + up * high * math.sqrt(max(.2, 1 - lean * lean))


def base_at(canvas: Canvas, fin: Fin, s: float) -> Point:
    """The point where a fin stands on the body, ``s`` of its length from the front."""
    u = fin.first + (fin.last - fin.first) * s
    return (u, canvas.top(u) - .006) if fin.above else (u, canvas.bottom(u) + .006)


def _rods(fin: Fin) -> list[tuple[float, float]]:
    """Places along the base and widths of spines and rays."""
    whole = fin.spines + fin.rays
    if fin.spines and not fin.rays:
        return [(s, SPINE) for s in span(0, 1, fin.spines)]
    places = span(0.0, .96, whole) if whole else []
    return [(s, SPINE * 1.3 if i < fin.spines and fin.spines < 3 else SPINE if i < fin.spines else RAY)
            for i, s in enumerate(places)]


def draw_tail(canvas: Canvas) -> None:
    """The tail fin with the form told; dashed where none is."""
    t, plan = canvas.traits, canvas.traits.plan
    if t.shows("dorsal-fin-arrangement", "continuous-with-tail"):
        tip = [(.97, .028), (1.015, .024), (1.042, .011), (1.05, 0), (1.042, -.011), (1.015, -.024), (.97, -.028)]
        canvas.curve(tip, fill=FIN, stroke="none")
        canvas.curve(tip[1:-1], stroke_width=.9)
        canvas.mark("tail-fin", (1.04, 0))
        return
    known = t.knows("caudal-fin-shape")
    style: Style = {} if known else dict(FAINT)
    tip = trailing(canvas)
    at = canvas.frame.at
    up, down = (.985, canvas.top(.985)), (.985, canvas.bottom(.985))
    first, last = tip[0], tip[-1]
    data = (smooth([at(*up), at((up[0] + first[0]) / 2, (up[1] * .9 + first[1]) / 2.05), at(*first)])
            + smooth([at(*p) for p in tip]).replace("M", "L", 1)
            + smooth([at(*last), at((down[0] + last[0]) / 2, (down[1] * .9 + last[1]) / 2.05), at(*down)]).replace("M",
                "L", 1))
    fill = blend(t.colour("tail-fin-colour", FIN), FIN, .5)
    canvas.path(data + "Z", fill=fill, fill_opacity=.9 if known else .35, stroke_width=.9, stroke_linejoin="round",
                **style)
    for i in range(1, len(tip) - 1):
        start = (.992, canvas.top(1) * (1 - 2 * i / (len(tip) - 1)))
        end = (start[0] + (tip[i][0] - start[0]) * .96, start[1] + (tip[i][1] - start[1]) * .96)
        canvas.path(line([at(*start), at(*end)]), stroke_width=RAY, stroke_opacity=.5, **style)
    canvas.mark("tail-fin", (1 + plan.tail * .5, tip[5][1] * .45))
    canvas.mark("tail-base", (.965, 0))


def trailing(canvas: Canvas) -> list[Point]:
    """The rear edge of the tail fin, from the upper tip to the lower."""
    t, plan = canvas.traits, canvas.traits.plan
    shape = t.one("caudal-fin-shape")
    if t.shows("caudal-fin-shape", "shark-like"):
        return [(1 + plan.tail * (.45 + .95 * max(0, y) + .28 * max(0, -y) ** .7) - .02,
                 plan.tail_height * (1.15 * y + .15))
                for y in span(1, -1, 17)]
    notch = {"forked": .5, "slightly-indented": .16, "truncate": .03}.get(shape, .05)
    if shape in ("rounded", "double-truncate"):
        bulge = .42 if shape == "rounded" else .3
        return [(1 + plan.tail * (.98 - bulge * abs(y) ** 2.2), plan.tail_height * .82 * y) for y in span(1, -1, 17)]
    blunt = .1 if t.shows("caudal-lobe-tips", "rounded") or shape != "forked" else .02
    return [(1 + plan.tail * (1 - notch * (1 - abs(y) ** 1.25) - blunt * max(0, abs(y) - .8) * 5), plan.tail_height * y)
            for y in span(1, -1, 17)]


def draw_pelvic(canvas: Canvas) -> None:
    """The pelvic fin where it is told to sit."""
    t, plan = canvas.traits, canvas.traits.plan
    place = t.one("pelvic-fin-position") or plan.pelvic
    if place == "absent":
        return
    u = {"thoracic": plan.pectoral[0] + .035, "jugular": plan.gill - .02, "fused-disc": plan.pectoral[0] + .02}.get(
        place, max(.44, plan.dorsal[0] + .06) if plan.dorsal[0] < .6 else .52)
    if plan.dorsal[0] > .6:
        u = .52 if place in ("abdominal", "separate") else u
    style: Style = {} if t.knows("pelvic-fin-position") else dict(FAINT)
    v = canvas.bottom(u) + .01
    long = plan.pectoral_length * (.78 if place != "fused-disc" else .7)
    if place == "fused-disc":
        points = [(u - .03, v), (u + .0, v - .045), (u + long * .55, v - .06), (u + long * .95, v - .012),
                  (u + long * .7, v)]
    else:
        points = [(u, v), (u + long * .25, v - long * .62), (u + long * .55, v - long * .66), (u + long * .6,
                                                                                               v - long * .1)]
    own, lower = t.colour("pelvic-fin-colour"), t.colour("lower-fin-colour")
    fill = blend(own or lower or FIN, FIN, .5)
    data = smooth([canvas.frame.at(*p) for p in points])
    canvas.path(data + "Z", fill=fill, fill_opacity=.92, stroke_width=.9, stroke_linejoin="round", **style)
    for share in (.25, .5, .75):
        end = (points[1][0] + (points[2][0] - points[1][0]) * share, points[1][1] * .97 + .03 * v)
        canvas.curve([(u + .02 * share, v - .004), end], stroke_width=RAY, stroke_opacity=.5)
    canvas.anchors["pelvic-front"], canvas.anchors["pelvic-front-tip"] = points[0], points[1]
    canvas.mark("pelvic-fin", (u + long * .35, v - long * .35))
    if not (own and lower):
        canvas.mark("lower-fins", (u + long * .35, v - long * .35))


def draw_adipose(canvas: Canvas) -> None:
    """The adipose fin, a free flap or a ridge joined to the tail; dashed where it is not told whether there is one."""
    t = canvas.traits
    if not t.shows("adipose-fin", "present"):
        return
    fill = blend(t.colour("adipose-fin-colour", FIN), FIN, .35)
    if t.shows("adipose-fin-form", "keel-joined-to-tail", "joined-notched", "joined-smooth"):
        points = [(.70, canvas.top(.70)), (.80, canvas.top(.80) + .03), (.92, canvas.top(.92) + .026), (.995,
            canvas.top(.99) + .012),
                  (.995, canvas.top(.99) - .004), (.85, canvas.top(.85) - .006)]
    else:
        u = .83 if t.plan.tail_height < .125 else .80
        points = [(u, canvas.top(u) - .004), (u + .012, canvas.top(u) + .03), (u + .05, canvas.top(u) + .046),
                  (u + .062, canvas.top(u) + .026), (u + .04, canvas.top(u + .04) - .002)]
    canvas.shape(points, fill=fill, stroke_width=.9)
    canvas.mark("adipose-fin", (points[2][0], points[2][1] - .012))


def draw_pectoral(canvas: Canvas) -> None:
    """The pectoral fin, long and pointed, short and rounded or a broad fan."""
    t, plan = canvas.traits, canvas.traits.plan
    if t.shows("pectoral-fins", "absent"):
        return
    form = t.one("pectoral-fin-form")
    long, wide = {"long-pointed": (.235, .042), "short-rounded": (.145, .058), "fan-shaped": (.15, .07),
                  "intermediate": (.18, .05)}.get(form, (plan.pectoral_length, .042))
    style: Style = {} if form else {"stroke-dasharray": "3 2.4", "stroke-opacity": ".7"}
    u, v = plan.pectoral
    v = max(v, canvas.bottom(u) * .75)
    drop = .22 if form == "long-pointed" else .42
    spots = _leaf(u, v, long, wide, drop, pointed=form == "long-pointed", fan=form == "fan-shaped")
    fill = blend(t.colour("pectoral-fin-colour", FIN), FIN, .4)
    canvas.shape(spots, fill=fill, fill_opacity=.86, stroke_width=.95, stroke_linejoin="round", **style)
    for share in (.2, .4, .6, .8):
        i = round(share * (len(spots) - 2)) + 1
        end = (u + (spots[i][0] - u) * .93, v + (spots[i][1] - v) * .93)
        canvas.curve([(u + .012, v - .004), end], stroke_width=RAY, stroke_opacity=.55)
    if t.shows("pectoral-fin-spine", "present"):
        canvas.curve([(u, v + .004), (u + long * .62, v - long * .1)], stroke_width=2.2, stroke_linecap="round")
    canvas.mark("pectoral-fin", (u + long * .6, v - drop * long * .5))
    canvas.mark("pectoral-spine", (u + long * .4, v))


def _leaf(u: float, v: float, long: float, wide: float, drop: float, pointed: bool, fan: bool) -> Sequence[Point]:
    def place(along: float, across: float) -> Point:
        return (u + long * along + drop * across * wide, v - drop * long * along + across * wide)

    if pointed:
        return [place(0, .22), place(.35, .62), place(.75, .42), place(1, .05), place(.7, -.3), place(.3, -.55),
                place(0, -.3)]
    if fan:
        return [place(0, .3), place(.45, .85), place(.85, .62), place(1, 0), place(.85, -.62), place(.45, -.8),
                place(0, -.3)]
    return [place(0, .28), place(.4, .75), place(.8, .72), place(1, .1), place(.82, -.55), place(.4, -.75), place(0,
                                                                                                                  -.3)]


__all__ = ["INK", "draw_adipose", "draw_anal", "draw_dorsal", "draw_pectoral", "draw_pelvic", "draw_tail", "trailing"]
