"""What the parts of a drawn fish share: outline, ink, the pieces drawn so far, places for call-outs (layer 5)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from assistant.render.drawing_plans import DEPTHS
from assistant.render.drawing_shapes import Curve, Frame, Point, number, smooth, span
from assistant.render.drawing_traits import Traits

Style = dict[str, str | float]
INK, PAPER, FIN = "#1f2b2c", "#f7f3e8", "#ece5d2"
FAINT: Mapping[str, str] = {"stroke-dasharray": "3 2.4", "stroke-opacity": ".45"}
"""How a line looks that stands for something not told."""


@dataclass
class Canvas:
    """One fish being drawn."""

    traits: Traits
    frame: Frame
    top: Curve
    bottom: Curve
    name: str
    room: tuple[float, float]
    """The upper and lower edge of what the fish takes of the picture."""
    pieces: list[str] = field(default_factory=list)
    anchors: dict[str, Point] = field(default_factory=dict)

    def path(self, data: str, **style: str | float) -> None:
        """Add a path; style names have underscores for hyphens, ink lines by default."""
        self.pieces.append(element("path", {"d": data, "fill": "none", "stroke": INK, "stroke-width": "1",
                                            **_named(style)}))

    def circle(self, centre: Point, radius: float, **style: str | float) -> None:
        """Add a circle at a place of the fish; the radius is in units of the fish."""
        x, y = self.frame.at(*centre)
        self.pieces.append(element("circle", {
            "cx": number(x), "cy": number(y), "r": number(radius * self.frame.scale), "fill": INK, "stroke": "none",
            **_named(style)}))

    def ellipse(self, centre: Point, wide: float, high: float, degrees: float = 0, **style: str | float) -> None:
        """Add an ellipse at a place of the fish, half-axes in units of the fish."""
        x, y = self.frame.at(*centre)
        turn = {"transform": f"rotate({number(degrees)} {number(x)} {number(y)})"} if degrees else {}
        self.pieces.append(element("ellipse", {
            "cx": number(x), "cy": number(y), "rx": number(wide * self.frame.scale),
            "ry": number(high * self.frame.scale),
            "fill": INK, "stroke": "none", **turn, **_named(style)}))

    def curve(self, points: Sequence[Point], **style: str | float) -> None:
        """Add a smooth curve through places of the fish."""
        self.path(smooth([self.frame.at(*p) for p in points]), **style)

    def shape(self, points: Sequence[Point], **style: str | float) -> None:
        """Add a closed smooth shape through places of the fish."""
        self.path(smooth([self.frame.at(*p) for p in points], closed=True), **style)

    def open_group(self, **attributes: str) -> None:
        """Begin a group of pieces."""
        self.pieces.append("<g" + "".join(f' {k.replace("_", "-")}="{v}"' for k, v in attributes.items()) + ">")

    def close_group(self) -> None:
        """End the group begun last."""
        self.pieces.append("</g>")

    def mark(self, part: str, place: Point) -> None:
        """Remember where a body part lies, for call-outs."""
        self.anchors.setdefault(part, place)

    def inside(self, u: float, share: float) -> Point:
        """A place on the side: ``share`` 1 is the back, 0 the middle line, -1 the belly."""
        return u, share * (self.top(u) if share >= 0 else -self.bottom(u))


def _named(style: Mapping[str, str | float]) -> dict[str, str]:
    return {k.replace("_", "-"): v if isinstance(v, str) else f"{v:g}" for k, v in style.items()}


def element(tag: str, attributes: Mapping[str, str]) -> str:
    """An empty element."""
    return f"<{tag}" + "".join(f' {k}="{v}"' for k, v in attributes.items()) + "/>"


def outline_of(traits: Traits) -> tuple[Curve, Curve]:
    """The upper and lower outline: the plan, as deep as the body form told, with the profile told."""
    plan = traits.plan
    deep = _depth(traits) / plan.depth
    rows = [(u, top * deep, bottom * deep) for u, top, bottom in plan.outline]
    if traits.shows("dorsal-fin-arrangement", "continuous-with-tail"):
        rows = [(u, top * _taper(u), bottom * _taper(u)) for u, top, bottom in rows]
    rows = [*snout_of(traits), *rows[1:]] if snout_of(traits) else rows
    nape = {"concave": -.016, "strongly-concave": -.032, "convex": .012}.get(traits.one("head-profile"), 0.0)
    hump = .03 if traits.shows("back-profile", "humped") else .014 if traits.shows("back-profile", "arched",
                                                                                   "raised") else 0.0
    top = [(u, t + nape * _bell(u, .15, .08) + hump * _bell(u, .33, .11)) for u, t, _ in rows]
    return Curve(tuple(top)), Curve(tuple((u, b) for u, _, b in rows))


def _taper(u: float) -> float:
    return 1 - .86 * max(0.0, (u - .55) / .45) ** 2


BEAKS = {"long-slender-beak": (.2, .011), "long-toothed-beak": (.12, .018), "mid-beak": (.11, .018),
         "short-broad-beak": (.075, .028)}
"""How far a beak runs ahead of the head, and half its height."""
PADDLE, CONE = .32, .06
"""How far a paddle and an overhanging cone run ahead of the head."""


def snout_of(traits: Traits) -> list[tuple[float, float, float]]:
    """The outline ahead of the head of a fish with a beak, a paddle or an overhanging snout; empty for other fishes."""
    if beak := BEAKS.get(traits.one("snout-form")):
        long, high = beak
        return [(-long, high * .5, -high * .5), (-long * .94, high * .9, -high * .9), (-long * .5, high * .8,
                                                                                       -high * .85),
                (.0, high * 1.25, -high * 1.45)]
    if traits.shows("snout-form", "paddle"):
        return [(-PADDLE, .008, -.004), (-PADDLE * .93, .017, -.01), (-PADDLE * .5, .014, -.006), (-.03, .02, -.008),
                (.01, .024, -.03)]
    if traits.shows("snout-form", "conical-overhanging", "shovel"):
        return [(-CONE, -.004, -.012), (-CONE * .7, .008, -.017), (-.005, .028, -.026)]
    return []


def ahead(traits: Traits) -> float:
    """How far the snout runs ahead of the head."""
    found = snout_of(traits)
    return -found[0][0] if found else 0.0


def _depth(traits: Traits) -> float:
    form = traits.one("body-form")
    ratio = traits.numbers.get("standard-length-over-depth", 0.0)
    if ratio > 1.5:
        return min(max(1 / ratio, .06), .6)
    if not form or form in traits.plan.forms or form not in DEPTHS:
        return traits.plan.depth
    return (DEPTHS[form] + traits.plan.depth) / 2 if form == "moderately-deep" else DEPTHS[form]


def _bell(u: float, middle: float, width: float) -> float:
    return max(0.0, 1 - ((u - middle) / width) ** 2) ** 2


def body_ring(canvas: Canvas) -> Iterator[Point]:
    """The outline of the body as places of the fish, from the snout over the back and home along the belly."""
    long = ahead(canvas.traits)
    steps = [*(span(-long, -.02, 6) if long else ()), .0, .012, .03, *span(.06, 1.0, 22)]
    yield from ((u, canvas.top(u)) for u in steps)
    yield from ((u, canvas.bottom(u)) for u in reversed(steps))


def blend(first: str, second: str, share: float) -> str:
    """A mixture of two inks; ``share`` is how much of the first."""
    a, b = (tuple(int(c[i : i + 2], 16) for i in (1, 3, 5)) for c in (first, second))
    return "#" + "".join(f"{round(x * share + y * (1 - share)):02x}" for x, y in zip(a, b, strict=True))
