"""The head of a drawn fish: snout, mouth, eye, gill cover, ear flap, whiskers, lines (layer 5)."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.render.drawing_canvas import BEAKS, FAINT, INK, PAPER, Canvas, Style, ahead, blend
from assistant.render.drawing_shapes import Point, span

LOWEST = .55
"""The corner of the mouth lies no lower than this share of the way from the middle line to the chin under it."""
SNOUTS: Mapping[str, float] = {"short-broad": .84, "long": 1.14}
"""How much nearer to the tip, or farther from it, the eye lies behind a short or a long snout."""


def draw_head(canvas: Canvas) -> None:
    """Gill cover, mouth, eye, ear flap and whiskers, over the body."""
    _gill_cover(canvas)
    _head_lines(canvas)
    _mouth(canvas)
    _eye(canvas)
    _ear_flap(canvas)
    _whiskers(canvas)
    canvas.mark("head", (.08, canvas.top(.08) * .8))
    canvas.mark("cheek", (canvas.traits.plan.gill * .66, -.25 * canvas.traits.plan.depth * .4))
    canvas.mark("chin", (.05, canvas.bottom(.05)))
    canvas.mark("throat", (.14, canvas.bottom(.14) * .9))
    canvas.mark("snout", (.015 - .8 * ahead(canvas.traits), .004))


def body_ink(canvas: Canvas) -> str:
    """The tint of the side: the colour told of the whole fish, else that of the back, paler."""
    t = canvas.traits
    told = t.colour("body-colour") or t.colour("back-colour")
    return blend(told, PAPER, .32) if told else blend("#8f9482", PAPER, .22)


def _gill_cover(canvas: Canvas) -> None:
    t, plan = canvas.traits, canvas.traits.plan
    if t.shows("gill-openings", "seven-pores"):
        for u in span(.105, .205, 7):
            canvas.circle((u, .004), .0058, fill=INK)
        canvas.mark("gill-cover", (.155, .004))
        return
    g = plan.gill
    if t.shows("gill-openings", "single-slit"):
        canvas.curve([(g - .004, .015), (g + .006, -.004), (g - .006, -.022)], stroke_width=1.4)
        canvas.mark("gill-cover", (g, .0))
        return
    high, low = canvas.top(g) * .62, canvas.bottom(g - .03)
    rear = g + (.05 if t.shows("gill-cover-length", "very-long") else .012)
    canvas.curve([(g - .07, high), (g - .02, high * .86), (rear, .06 * high), (g - .005, low * .4), (g - .045,
                                                                                                     low * .74),
                  (g - .11, canvas.bottom(g - .11) * .93)], stroke_width=1.35)
    front = plan.eye[0] + (g - plan.eye[0]) * .52
    canvas.curve([(front + .005, high * .55), (front + .012, 0), (front - .005, low * .45), (front - .05, low * .72)],
                 stroke_width=.7, stroke_opacity=.65)
    canvas.mark("gill-cover", (g - .035, .0))
    canvas.mark("shoulder", (g + .035, canvas.top(g) * .45))
    if t.shows("shoulder-spot", "one", "row", "spotted"):
        for u in (g + .035, g + .075, g + .115) if t.shows("shoulder-spot", "row") else (g + .035,):
            canvas.circle((u, canvas.top(g) * .42), .013)


def _mouth(canvas: Canvas) -> None:
    t, plan = canvas.traits, canvas.traits.plan
    if t.shows("mouth-form", "sucking-disc"):
        canvas.ellipse((.008, -.024), .017, .036, 24, fill=blend("#7b5b3f", PAPER, .5), stroke=INK, stroke_width="1.1")
        for share in (.35, .65):
            canvas.ellipse((.008, -.024), .017 * share, .036 * share, 24, fill="none", stroke=INK, stroke_width=".8",
                           stroke_dasharray="1 1.6")
        return canvas.mark("mouth", (.0, -.03))
    start, end, known = mouth_line(canvas)
    style: Style = {} if known else dict(FAINT)
    if t.shows("mouth-position", "underside", "downturned", "subterminal") and not t.shows("mouth-position", "upward"):
        return _low_mouth(canvas)
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2 + .006)
    canvas.curve([start, middle, end], stroke_width=1.5, stroke_linecap="round", **style)
    wide = end[0] - start[0]
    if wide > .05 and known:
        canvas.curve([(start[0] + wide * .35, start[1] + .012), (start[0] + wide * .75, (start[1] + end[1]) / 2 + .018),
                      (end[0] + .004, end[1] + .016), (end[0] + .005, end[1] - .004)], stroke_width=.7,
                      stroke_opacity=.7)
    if t.shows("teeth-form", "sharp", "needle-rows") or t.shows("canine-teeth", "present"):
        for u in span(start[0] + .012, start[0] + wide * .8, 6 if plan.gill > .25 else 4):
            v = start[1] + (end[1] - start[1]) * (u - start[0]) / (wide or 1)
            canvas.curve([(u, v + .003), (u + .003, v - .007)], stroke_width=.7)
    return canvas.mark("mouth", ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2))


def mouth_line(canvas: Canvas) -> tuple[Point, Point, bool]:
    """Both ends of the line of the mouth, and whether its reach is told."""
    t, plan = canvas.traits, canvas.traits.plan
    eye_u, _, radius = eye_place(canvas)
    reach = t.one("upper-jaw-reach")
    end = {"short-of-eye": eye_u - radius - .016, "front-edge-of-eye": eye_u - radius,
           "front-of-pupil": eye_u - radius * .45,
           "mid-eye": eye_u, "rear-edge-of-eye": eye_u + radius, "past-eye": eye_u + radius + .026,
           "large-mouth": eye_u + radius * .5, "small-mouth": eye_u - radius - .004}.get(reach, eye_u * .62)
    if t.one("snout-form") in BEAKS:
        long = BEAKS[t.one("snout-form")][0]
        return (-long, 0.0), (.11, -.014), True
    if t.shows("snout-form", "duck-bill") and not reach:
        end, reach = eye_u * .86, "bill"
    tip = .004 if not t.shows("mouth-position", "upward") else -.002
    slant = .36 if t.shows("mouth-position", "upward", "terminal-oblique") else .26
    drop = slant * end if plan.gill > .24 and plan.depth > .14 else .12 * end
    return (tip, plan.mouth), (end, max(plan.mouth - drop, LOWEST * canvas.bottom(end))), bool(reach)


def _low_mouth(canvas: Canvas) -> None:
    t = canvas.traits
    u = .085 if t.shows("mouth-position", "downturned") else .035
    v = canvas.bottom(u)
    if t.shows("mouth-position", "downturned") or t.shows("lips", "fleshy", "thick-grooved", "papillose"):
        canvas.curve([(u - .022, v + .016), (u - .018, v - .012), (u + .002, v - .022), (u + .022, v - .012),
                      (u + .026, v + .008)],
                     fill=blend("#c98f7e", PAPER, .4), stroke_width=1.1)
        canvas.curve([(u - .016, v - .006), (u + .004, v - .009), (u + .02, v - .004)], stroke_width=.8)
    else:
        canvas.curve([(.01, canvas.bottom(.01) + .004), (.035, canvas.bottom(.035) + .016), (.066,
            canvas.bottom(.06) + .022)],
                     stroke_width=1.5, stroke_linecap="round")
    canvas.mark("mouth", (u, v))


def eye_place(canvas: Canvas) -> tuple[float, float, float]:
    """The middle of the eye and its radius."""
    t, plan = canvas.traits, canvas.traits.plan
    u, v, radius = plan.eye
    if t.one("snout-form") not in BEAKS:
        u *= SNOUTS.get(t.one("snout-length"), 1.0)
        v = min(v, canvas.top(u) - radius)
    radius *= {"small": .75, "large": 1.25}.get(t.one("eye-size"), 1.0)
    radius *= 1.22 if t.shows("eye-form", "large-glassy") else 1.12 if t.shows("eye-form", "raised-froglike") else 1.0
    v = {"below-midline": -.02, "high": v * 1.25}.get(t.one("eye-position"), v)
    if t.shows("eye-form", "raised-froglike"):
        v = canvas.top(u) - radius * .35
    return u, v, radius


def _eye(canvas: Canvas) -> None:
    t = canvas.traits
    u, v, radius = eye_place(canvas)
    iris = t.colour("eye-colour") or ("#d9dcc8" if t.shows("eye-form", "large-glassy") else "#d8cfae")
    if t.shows("suborbital-bar", "present", "vertical", "slants-backward", "slants-forward"):
        lean = {"slants-backward": .03, "slants-forward": -.03}.get(t.one("suborbital-bar"), .0)
        canvas.curve([(u, v - radius), (u + lean, canvas.bottom(u) * .72)], stroke_width=3.4, stroke_opacity=.75,
                     stroke_linecap="round")
    canvas.circle((u, v), radius, fill=iris, stroke=INK, stroke_width="1.2")
    canvas.circle((u, v), radius * (.5 if not t.shows("eye-form", "large-glassy") else .56), fill=INK)
    canvas.circle((u - radius * .18, v + radius * .22), radius * .16, fill="#ffffff")
    if t.shows("eye-form", "large-glassy"):
        canvas.ellipse((u + radius * .3, v - radius * .1), radius * .22, radius * .5, 20, fill="#ffffff",
                       fill_opacity=".7")
    canvas.mark("eye", (u, v))


def _ear_flap(canvas: Canvas) -> None:
    t = canvas.traits
    told = [t.one(f"opercular-flap-{name}") for name in ("length", "edge", "width")]
    if not (told[1] or told[2] or told[0] in ("moderate", "long")):
        return
    long = {"short": .03, "moderate": .044, "long": .064}.get(told[0], .034)
    high = .02 if told[2] == "narrower-than-eye" else .031
    u, v = t.plan.gill + long * .35, canvas.top(t.plan.gill) * .17
    tilt = -14 if t.shows("opercular-flap-angle", "angled-up") else 0
    canvas.ellipse((u, v), long, high, tilt, fill="#171d20", stroke=INK, stroke_width=".8")
    if told[1] in ("pale-or-white-edge", "yellow-orange-edge", "red-or-orange-band", "not-all-dark", "red-or-orange"):
        rim = {"pale-or-white-edge": "#fffdf4", "yellow-orange-edge": "#d9a13a",
               "not-all-dark": "#cfc9b5"}.get(told[1], "#c23b2a")
        edge = [(u + long * .1, v + high), (u + long * .8, v + high * .62), (u + long, v),
                (u + long * .8, v - high * .62), (u + long * .1, v - high)]
        canvas.curve(edge, stroke=PAPER, stroke_width=7.4, stroke_linecap="round")
        canvas.curve(edge, stroke=rim, stroke_width=5.2, stroke_linecap="round")
        canvas.ellipse((u + .004, v), long * 1.16, high * 1.2, tilt, fill="none", stroke=INK, stroke_width=".6")
    if told[1] == "red-or-orange-spot":
        canvas.shape([(u + long * .42, v + high * .72), (u + long * .92, v + high * .2), (u + long * .92,
                                                                                          v - high * .3),
                      (u + long * .42, v - high * .72), (u + long * .55, v)], fill="#c23b2a", stroke="#fffdf4",
                      stroke_width=.9)
    canvas.mark("ear-flap", (u, v + high * 1.5))


def _head_lines(canvas: Canvas) -> None:
    t = canvas.traits
    lines = t.one("head-lines")
    if not lines or lines in ("none", "faint-iridescence"):
        return
    colour = "#2f6ea3" if "blue" in lines else "#9a5b2a" if "orange" in lines else INK
    u0, v0, radius = eye_place(canvas)
    rear = t.plan.gill - .02
    dash: Style = {"stroke_dasharray": "5 3"} if "broken" in lines else {}
    for row, share in enumerate(span(.1, -.78, 5)):
        v1 = share * .8 * t.plan.depth * .42
        first = (u0 - radius * .5 + .012 * row, v0 - radius * 1.1 - .016 * row)
        waves = [(first[0] + (rear - first[0]) * s, first[1] + (v1 - first[1]) * s + .006 * (1 if i % 2 else -1))
                 for i, s in enumerate(span(0, 1, 6))]
        canvas.curve(waves, stroke=colour, stroke_width=1.7 if "faint" not in lines else 1.0,
                     stroke_opacity=.9 if "faint" not in lines else .5, **dash)


def _whiskers(canvas: Canvas) -> None:
    t = canvas.traits
    kind = t.one("barbels")
    chin = t.colour("barbel-colour", INK)
    low = canvas.bottom(.05)
    style: Style = {"stroke_width": 2.6, "stroke_linecap": "round"}
    if kind in ("eight", "whiskers"):
        canvas.curve([(.03, -.028), (.07, -.055), (.15, -.085), (.22, -.082)], stroke=INK, **style)
        canvas.curve([(.045, .042), (.03, .075), (.012, .092)], stroke=INK, stroke_width=2, stroke_linecap="round")
        for whisker in ([(.055, low), (.075, low - .045), (.07, low - .09)],
                        [(.085, low - .006), (.115, low - .05), (.12, low - .095)]):
            canvas.curve(whisker, stroke=INK, stroke_width=4.2, stroke_linecap="round")
            canvas.curve(whisker, stroke=chin, stroke_width=2.4, stroke_linecap="round")
    elif kind == "four":
        under = t.shows("mouth-position", "downturned")
        for k in range(4 if under else 2):
            u = .0 + .016 * k if under else .03 + .02 * k
            canvas.curve([(u, canvas.bottom(max(u, .02)) + .008), (u + .004, canvas.bottom(.03) - .03), (u - .006,
                canvas.bottom(.03) - .062)],
                         **{**style, "stroke_width": 2.4})
    elif kind == "one-chin":
        canvas.curve([(.035, canvas.bottom(.035)), (.042, canvas.bottom(.035) - .03), (.03,
            canvas.bottom(.035) - .055)], **style)
    elif kind in ("two", "two-tiny"):
        long = .012 if kind == "two-tiny" else .035
        canvas.curve([(.05, -.03), (.055, -.03 - long)], **{**style, "stroke_width": 2.0})
    if kind and kind not in ("none",):
        canvas.anchors["mouth-barbels"] = _tip_of_whiskers(kind, low)
    if t.shows("nostril-tubes", "present", "short-not-over-lip", "over-lip"):
        canvas.curve([(.022, canvas.top(.022) * .9), (.01, canvas.top(.022) + .014)], stroke_width=1.6,
                     stroke_linecap="round")


def _tip_of_whiskers(kind: str, low: float) -> Point:
    """Where a call-out meets the whiskers: at a tip, so that its line hides none of them."""
    return {"eight": (.12, low - .1), "whiskers": (.12, low - .1), "four": (.046, low - .068),
            "one-chin": (.03, low - .06)}.get(kind, (.055, low - .02))
