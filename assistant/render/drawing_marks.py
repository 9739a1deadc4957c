"""The marks on a drawn fish: scales, bars, stripes, spots, blotches, worm tracks, marks in the fins (layer 5)."""

from __future__ import annotations

from assistant.render.drawing_canvas import INK, Canvas, Style
from assistant.render.drawing_fins import Fin, anal_fin, base_at, dorsal_fins, edge_at, trailing
from assistant.render.drawing_shapes import Point, number, scattered, span

DARK = "#26302f"
ORANGE = "#c9562e"
WARM = {"red-spots": "#b8322c", "orange-red-dots": "#cf5030", "red-brown-dots": "#8d4a33",
        "red-squares-in-rows": "#b8322c",
        "warm-spots": "#cf7a34", "orange-gold-brown": "#c97e2e", "gold-spots": "#c69a3a",
        "yellow-gold-flecks": "#d8b13a",
        "purple-gold-dots": "#8a6a62", "yellow-squares-in-rows": "#d8b13a", "red-and-dark-with-halos": "#b8322c",
        "blue": "#3f6fa5",
        "blue-silver-rows": "#7d9ab0", "light-on-dark": "#fdf8e4", "fine-spots-in-rows": "#8f5a3a"}
"""Inks of spots; other spots are dark."""
MOST_KINDS = 2
"""Kinds of spots drawn on one fish."""


def draw_skin(canvas: Canvas) -> None:
    """What covers the body: scales by their size, plates, or bare skin."""
    t = canvas.traits
    scale = canvas.frame.scale
    along = t.numbers.get("lateral-line-scales") or t.numbers.get("lateral-series-scales") or 0
    if t.shows("body-covering", "bony-plates-in-rows"):
        _plates(canvas)
    elif t.shows("body-covering", "ganoid-diamond-scales"):
        _pattern(canvas, max(5.5, .74 * scale / (along or 58)), diamonds=True)
    elif t.shows("body-covering", "scaled") and not (
            t.shows("scale-size", "very-small") or t.shows("body-covering", "tiny-embedded-scales")):
        step = .74 * scale / along if along else {"small": 5.2, "large": 10.0}.get(t.one("scale-size"), 7.0)
        if step >= 3.6:
            _pattern(canvas, step, diamonds=False)


def _pattern(canvas: Canvas, step: float, diamonds: bool) -> None:
    """A pattern of scales behind the gill cover, fading into the belly."""
    s, name = number(step), f"{canvas.name}-scales"
    half = number(step / 2)
    if diamonds:
        shape = f"M0 0L{half} {half}L{s} 0M0 {s}L{half} {half}L{s} {s}"
    else:
        arc = f"A{half} {half} 0 0 1"
        shape = f"M0 0{arc} 0 {s}M{half} -{half}{arc} {half} {half}M{half} {half}{arc} {half} {number(step * 1.5)}"
    canvas.pieces.append(f'<pattern id="{name}" width="{s}" height="{s}" patternUnits="userSpaceOnUse">'
                         f'<path d="{shape}" fill="none" stroke="{INK}" stroke-width=".5" '
                         'stroke-opacity=".3"/></pattern>')
    g = canvas.traits.plan.gill
    ring = [(g + .02, canvas.top(g) * .8), *((u, canvas.top(u)) for u in span(g + .06, .985, 12)),
            *((u, canvas.bottom(u) * .8) for u in span(.985, g + .04, 12)), (g, canvas.bottom(g) * .5)]
    canvas.shape(ring, fill=f"url(#{name})", stroke="none")


def _plates(canvas: Canvas) -> None:
    for share, count, size in ((.96, 12, .026), (.08, 24, .017), (-.86, 9, .022)):
        for u in span(.24, .93, count):
            if share > .9 and u > .72:
                continue
            x, y = canvas.inside(u, share)
            canvas.curve([(x - size, y), (x, y + size * .5), (x + size, y), (x, y - size * .5), (x - size, y)],
                         stroke_width=.9,
                         fill="#cfcab8")
    canvas.mark("skin", canvas.inside(.5, .08))


def draw_marks(canvas: Canvas) -> None:
    """Everything painted on the side, from the broadest to the finest."""
    _mottling(canvas)
    _bars(canvas)
    _stripes(canvas)
    _vermiculation(canvas)
    _spots(canvas)
    _lateral_line(canvas)
    _tail_base(canvas)
    canvas.mark("side", canvas.inside(.55, .2))
    canvas.mark("back", canvas.inside(.42, .8))
    canvas.mark("belly", canvas.inside(.42, -.85))
    canvas.mark("whole-fish", canvas.inside(.62, .35))


def _mottling(canvas: Canvas) -> None:
    t = canvas.traits
    if t.shows("body-mottling", "saddles", "bold-saddles", "faint-saddles"):
        dark = .3 if t.shows("body-mottling", "faint-saddles") else .58
        for u in (.34, .52, .70, .86):
            wide = .045
            canvas.curve([(u - wide, canvas.top(u - wide)), (u + wide, canvas.top(u + wide)),
                          canvas.inside(u + wide * 1.5, .1),
                          canvas.inside(u + .02, -.12), canvas.inside(u - wide * .5, .3)], closed=True, fill=DARK,
                         fill_opacity=dark, stroke="none")
    elif t.shows("body-mottling", "blotchy", "mottled", "dark-blotches"):
        for i, (a, b) in enumerate(scattered(34)):
            u, share = .1 + .86 * a, .92 - 1.35 * b
            x, y = canvas.inside(u, share)
            canvas.ellipse((x, y), .018 + .016 * ((i * 7) % 5) / 5, .009 + .007 * ((i * 3) % 4) / 4,
                           (i * 37) % 50 - 25, fill=DARK,
                           fill_opacity=".34")


def _bars(canvas: Canvas) -> None:
    t = canvas.traits
    kind = t.one("body-bars")
    if not kind or kind == "none":
        return
    count = min(16, max(4, t.count("body-bar-count", 8)))
    dark = .22 if "faint" in kind else .62 if "bold" in kind or "zebra" in kind else .45
    ink_, lean = (("#fbf4d9", -.05) if "pale" in kind else (DARK, .0))
    g = t.plan.gill
    for i, u in enumerate(span(g + .06, .93, count)):
        low = -.55 if not ("zebra" in kind and i % 2) else .1
        wide = .46 * (.87 - g) / count if "pale" not in kind else .01
        steps = span(.97, low, 7)
        sway = [(.008 if "wavy" in kind or "calico" in kind else .0) * (1 if k % 2 else -1) + lean * (1 - s) * .4
                for k, s in enumerate(steps)]
        left = [canvas.inside(u - wide / 2 + x, s) for s, x in zip(steps, sway, strict=True)]
        right = [canvas.inside(u + wide / 2 * (1 - .5 * (k / 6)) + x, s) for k, (s,
            x) in enumerate(zip(steps, sway, strict=True))]
        canvas.shape([*left, *reversed(right)], fill=ink_, fill_opacity=.95 if "pale" in kind else dark, stroke="none")
    if "chain" in kind or "links" in kind:
        for share in (.55, .1, -.3):
            canvas.curve([canvas.inside(u, share + .08 * (1 if k % 2 else -1)) for k,
                          u in enumerate(span(g + .05, .93, 17))],
                         stroke=DARK, stroke_width=2.6, stroke_opacity=.55)
    canvas.anchors["bars"] = canvas.inside(g + .06 + (.87 - g) / count, .5)


def _stripes(canvas: Canvas) -> None:
    t = canvas.traits
    told = t.states.get("stripe-pattern", ())
    g = t.plan.gill
    if t.shows("stripe-pattern", "single-band") or t.shows("red-lateral-streak", "present"):
        warm = "#b5413a" if t.shows("red-lateral-streak", "present") else ""
        colour = t.colour("stripe-pattern") or warm or DARK
        broken = "broken" in told
        places = span(g * .9, .97, 15 if broken else 2)
        if broken:
            for k, u in enumerate(places):
                x, y = canvas.inside(u, .03)
                canvas.ellipse((x, y), .026, .013 + .004 * (k % 3), fill=colour, fill_opacity=".66")
        else:
            canvas.curve([canvas.inside(u, .05) for u in span(g * .8, .985, 8)], stroke=colour,
                         stroke_width=(.022 if colour == DARK else .045) * canvas.frame.scale,
                         stroke_opacity=.5 if colour == DARK else .8)
        return
    if not t.shows("stripe-pattern", "stripes", "continuous", "broken", "faint"):
        return
    count = min(9, max(3, t.count("stripe-count", 7)))
    dash: Style = {"stroke_dasharray": "14 5"} if t.shows("stripe-pattern", "broken") else {}
    for share in span(.78, -.5, count):
        canvas.curve([canvas.inside(u, share) for u in span(g + .02, .975, 9)], stroke=DARK, stroke_width=2.0,
                     stroke_opacity=.35 if t.shows("stripe-pattern", "faint") else .68, **dash)


def _vermiculation(canvas: Canvas) -> None:
    t = canvas.traits
    if not t.shows("vermiculation", "present", "maze-like"):
        return
    low = .15 if t.shows("vermiculation", "maze-like") else .45
    for i, (a, b) in enumerate(scattered(46)):
        u, share = .2 + .74 * a, .93 - (.93 - low) * b
        x, y = canvas.inside(u, share)
        d = .02
        bend = .009 * (1 if i % 2 else -1)
        canvas.curve([(x - d, y), (x - d * .45, y + bend), (x + d * .2, y - bend * .6), (x + d, y + bend * .9)],
                     stroke="#fbf4d9",
                     stroke_width=2.4, stroke_linecap="round")


def _spots(canvas: Canvas) -> None:
    t = canvas.traits
    kinds = [s for s in t.states.get("body-spots", ()) if not s.startswith("<") and s not in ("none", "no-red-spots")]
    if t.shows("body-spots", "none", "no-red-spots"):
        return
    rings = t.one("spot-halos")
    ringed = [k for k in kinds[:MOST_KINDS] if _is_warm(k)] or kinds
    for place, kind in enumerate(kinds[:MOST_KINDS]):
        rows = "rows" in kind
        size = {"dark-speckles": .0062, "black-dots-in-rows": .0055, "irregular-black-blotches": .014}.get(kind, .0088)
        if t.shows("spot-size-on-back", "large-oval", "large-separated"):
            size *= 1.35
        size *= .8 if rows and "squares" not in kind else 1.0
        for x, y in _spot_places(canvas, rows, kind, place, min(len(kinds), MOST_KINDS)):
            if rings and rings != "absent" and kind in ringed:
                canvas.circle((x, y), size * 1.75, fill="none", stroke="#6d93b5" if rings == "blue" else "#fbf4d9",
                              stroke_width="1.3")
            edge: Style = {"stroke": INK, "stroke_width": ".4"} if kind == "light-on-dark" else {}
            canvas.circle((x, y), size, fill=WARM.get(kind, DARK), fill_opacity=".92", **edge)
        if kind == "red-and-dark-with-halos":
            for x, y in _spot_places(canvas, False, kind, MOST_KINDS, MOST_KINDS):
                canvas.circle((x, y), size * 1.6, fill="none", stroke="#fbf4d9", stroke_width="1.2")
                canvas.circle((x, y), size, fill=DARK)
    canvas.anchors["spots"] = canvas.inside(.56, .35)


def _is_warm(kind: str) -> bool:
    """True for spots that are red, orange or gold all through."""
    return kind in WARM and kind not in ("blue", "blue-silver-rows", "light-on-dark", "fine-spots-in-rows")


def _spot_places(canvas: Canvas, rows: bool, kind: str, place: int = 0, kinds: int = 1) -> list[Point]:
    """Where the spots of one of several kinds lie: beside those of the others, the fewer the more kinds there are."""
    t = canvas.traits
    g = t.plan.gill
    where = t.one("body-spots-distribution")
    if rows:
        return [canvas.inside(u, s) for s in span(.62, -.55, 6) for u in span(g + .05, .94, 20)]
    low = .25 if where == "back-only" else -.55
    start = 1 + 200 * place
    count = (90 if kind == "dark-speckles" else 58) * (3 if kinds > 1 else 5) // 5
    out = []
    for a, b in scattered(count, start):
        share = a**.55 if where == "toward-tail" else a
        out.append(canvas.inside(g * .85 + (.96 - g * .85) * share, .92 - (.92 - low) * b))
    return out


def _lateral_line(canvas: Canvas) -> None:
    t = canvas.traits
    found = t.one("lateral-line")
    if found == "absent" or not (found or t.knows("lateral-line-scales") or t.knows("lateral-line-course")):
        return
    end = .55 if found == "incomplete" else .985
    bow = {"nearly-straight": .0, "strongly-curved": -.35}.get(t.one("lateral-line-course"), .16 if t.plan.depth > .3
                                                               else .06)
    g = t.plan.gill
    canvas.curve([canvas.inside(u, max(-.6, .3 * (1 - (u - g) / (1 - g)) + bow * 4 * (u - g) * (1 - u)))
                  for u in span(g + .015, end, 12)],
                 stroke_width=1.1, stroke_opacity=.7, stroke_dasharray="4 1.6")
    canvas.anchors["lateral-line"] = canvas.inside(.6, .2)
    if t.shows("lateral-line-end", "onto-tail-fin"):
        canvas.curve([(.985, .0), (1.06, .0), (1 + t.plan.tail * .9, .002)], stroke_width=1.1, stroke_dasharray="4 1.6")


def _tail_base(canvas: Canvas) -> None:
    t = canvas.traits
    if t.shows("caudal-base-spot", "present", "ringed-spot"):
        high = canvas.top(.95) * (.5 if t.shows("caudal-base-spot", "ringed-spot") else .0)
        if t.shows("caudal-base-spot", "ringed-spot"):
            canvas.circle((.955, high), .021, fill="#d8a43a", stroke=INK, stroke_width=".8")
        canvas.circle((.955, high), .0135)
        canvas.anchors["tail-base"] = (.955, high)
    if t.shows("caudal-base-dark-bar", "present"):
        canvas.curve([(.965, canvas.top(.965)), (.97, 0), (.965, canvas.bottom(.965))], stroke_width=4,
                     stroke_opacity=.7)
    if t.shows("black-nose-stripe", "present"):
        canvas.curve([(u, canvas.top(u)) for u in span(.32, .0, 8)], stroke_width=5, stroke_opacity=.85)
    if t.shows("pectoral-base-blotch", "present"):
        u, v = t.plan.pectoral
        canvas.ellipse((u - .004, v), .012, .02)
    if t.shows("throat-slash", "present", "faint-or-broken"):
        canvas.curve([(.05, canvas.bottom(.05) + .012), (.1, canvas.bottom(.1) + .014), (.15,
                                                                                         canvas.bottom(.15) + .012)],
                     stroke="#c23b2a", stroke_width=3.2, stroke_linecap="round")
    if t.shows("parr-marks", "present", "kept-in-adults"):
        for u in span(.28, .92, 10):
            canvas.ellipse(canvas.inside(u, .0), .014, .032, fill=DARK, fill_opacity=".32")


def draw_fin_marks(canvas: Canvas) -> None:
    """Marks in the dorsal, anal and tail fins, and on the edges of the lower fins."""
    places = [_marks_in(canvas, fin) for fin in dorsal_fins(canvas)]
    place = _anal_stripe(canvas) or next((p for p in places if p is not None), None)
    if place is not None or (place := canvas.anchors.get("dorsal-fin")) is not None:
        canvas.anchors["unpaired-fins"] = place
    _tail_marks(canvas)
    _lower_edges(canvas)


def _anal_stripe(canvas: Canvas) -> Point | None:
    """A dusky stripe along the anal fin, and where it is seen."""
    fin = anal_fin(canvas) if canvas.traits.shows("median-fin-marks", "dusky-anal-stripe") else None
    if fin is None:
        return None
    canvas.curve([edge_at(canvas, fin, s, .55) for s in span(.05, .95, 9)], stroke=DARK, stroke_width=2.6,
                 stroke_opacity=.5)
    return edge_at(canvas, fin, .5, .55)


def _marks_in(canvas: Canvas, fin: Fin) -> Point | None:
    """The marks of a fin on the back, and where they are seen; None where it bears none."""
    t = canvas.traits
    seen: Point | None = None
    marks = t.one("median-fin-marks") or {"barred-or-mottled": "spots-rows",
                                          "black": "spots-rows"}.get(t.one("dorsal-fin-marks"), "")
    soft = fin.part != "spiny-dorsal-fin"

    def at(s: float, share: float) -> Point:
        (a, b), (c, d) = base_at(canvas, fin, s), edge_at(canvas, fin, s)
        return a + (c - a) * share, b + (d - b) * share

    if marks in ("spots-rows", "bright-spots-rows", "brown-black-blotches", "blue-spots", "pale-spots-in-dark-net",
                 "red-orange-blotches"):
        ink_ = {"blue-spots": "#3f6fa5", "red-orange-blotches": ORANGE,
                "pale-spots-in-dark-net": "#fffbe9"}.get(marks, DARK)
        size = .0085 if "blotches" in marks else .0055
        for row in (.3, .62):
            for s in span(.08, .92, 9 if soft else 7):
                if marks == "pale-spots-in-dark-net":
                    canvas.circle(at(s, row), size * 2.1, fill=DARK, fill_opacity=".62")
                canvas.circle(at(s, row), size, fill=ink_, fill_opacity=".75")
        seen = at(.5, .62)
    if marks == "wavy-bands":
        for row in (.28, .55, .8):
            canvas.curve([at(s, row + .05 * (1 if k % 2 else -1)) for k, s in enumerate(span(.04, .95, 12))],
                         stroke=DARK, stroke_width=2.6,
                         stroke_opacity=.5)
        seen = at(.5, .55)
    if marks == "orange-base-band":
        canvas.curve([at(s, .14) for s in span(.03, .97, 9)], stroke=ORANGE, stroke_width=3, stroke_opacity=.8)
        seen = at(.5, .14)
    if marks == "red-orange-membranes":
        for s in span(.08, .92, 9):
            canvas.curve([at(s, .1), at(s, .85)], stroke=ORANGE, stroke_width=2.2, stroke_opacity=.6)
        seen = at(.5, .5)
    if marks in ("streaks", "streaks-between-spines") and not soft:
        for s in span(.1, .9, 7):
            canvas.curve([at(s, .2), at(s + .03, .75)], stroke=DARK, stroke_width=2, stroke_opacity=.55)
        seen = at(.5, .5)
    blotch = (t.shows("soft-dorsal-blotch", "present", "faint") and fin.part == "soft-dorsal-fin") or (
        t.shows("spiny-dorsal-blotch", "present") and fin.part == "spiny-dorsal-fin")
    if blotch:
        faint = fin.part == "soft-dorsal-fin" and t.one("soft-dorsal-blotch") == "faint"
        x, y = at(.8, .36)
        canvas.ellipse((x, y), .028, .02, -18, fill=DARK, fill_opacity=".45" if faint else ".9")
        canvas.anchors[fin.part] = (x, y)
    if t.shows("dorsal-base-front-spot", "present"):
        canvas.circle(at(.05, .2), .01)
    return seen


def _tail_marks(canvas: Canvas) -> None:
    t = canvas.traits
    tip = trailing(canvas)

    def at(i: int, share: float) -> Point:
        start = (.995, canvas.top(1) * (1 - 2 * i / (len(tip) - 1)))
        return start[0] + (tip[i][0] - start[0]) * share, start[1] + (tip[i][1] - start[1]) * share

    if t.shows("tail-tip-mark", "white"):
        canvas.shape([tip[-1], tip[-2], tip[-4], at(len(tip) - 4, .72), at(len(tip) - 2, .72)], fill="#ffffff",
                     stroke=INK,
                     stroke_width=.8)
        canvas.anchors["tail-fin"] = at(len(tip) - 2, .86)
    spots = t.one("caudal-spots")
    rows = range(2, len(tip) - 2, 2)
    if spots in ("both-lobes", "large-oval-both-lobes", "radiating-rows", "spotted", "upper-lobe-only"):
        for i in rows:
            if spots == "upper-lobe-only" and i > len(tip) // 2 - 1:
                continue
            for share in (.35, .6, .84):
                canvas.circle(at(i, share), .009 if "large" in spots else .006)
    if t.shows("tail-bands", "banded", "regular-vertical", "irregular"):
        for share in (.3, .55, .8):
            canvas.curve([at(i, share) for i in range(0, len(tip), 2)], stroke_width=2.6, stroke_opacity=.5)


def _lower_edges(canvas: Canvas) -> None:
    t = canvas.traits
    edge = t.one("lower-fin-leading-edge")
    if edge in ("", "plain"):
        return
    for part in ("pelvic-front", "anal-front"):
        a, b = canvas.anchors.get(part), canvas.anchors.get(part + "-tip")
        if a is not None and b is not None:
            canvas.curve([a, b], stroke=INK, stroke_width=4.2, stroke_linecap="round")
            canvas.curve([a, b], stroke="#ffffff", stroke_width=2.6, stroke_linecap="round")
            if "black" in edge:
                canvas.curve([(a[0] + .012, a[1]), (b[0] + .012, b[1])], stroke="#101415", stroke_width=2,
                             stroke_linecap="round")
