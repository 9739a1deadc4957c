"""Body plans for drawn fishes: outlines and where things sit when nothing is told (layer 5).

A plan is a way of drawing, not a statement: which plan a fish takes, and all that departs from it, is told by the base.
Heights are shares of the length without the tail.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from assistant.render.drawing_shapes import Point


@dataclass(frozen=True, slots=True)
class Plan:
    """Outline above and below, body forms that it is drawn for, eye, gill cover, fins (starts and lengths of bases)."""

    outline: tuple[tuple[float, float, float], ...]
    forms: frozenset[str]
    eye: tuple[float, float, float]
    gill: float
    mouth: float
    dorsal: tuple[float, float]
    dorsal_height: float
    anal: tuple[float, float]
    anal_height: float
    pectoral: Point
    pectoral_length: float
    pelvic: str
    tail: float
    tail_height: float

    @property
    def depth(self) -> float:
        """The greatest depth."""
        return max(top - bottom for _, top, bottom in self.outline)


PLANS: Mapping[str, Plan] = {
    "sunfish": Plan(
        ((0, .004, -.012), (.025, .045, -.04), (.07, .09, -.068), (.14, .145, -.11), (.24, .205, -.165), (.35, .24,
                                                                                                          -.205),
         (.47, .24, -.222), (.59, .21, -.208), (.70, .158, -.16), (.80, .105, -.105), (.88, .075, -.075), (1, .072,
                                                                                                           -.072)),
        frozenset({"deep-compressed"}), (.125, .05, .034), .305, -.004, (.33, .47), .105, (.60, .22), .1, (.325,
                                                                                                           -.045), .2,
        "thoracic", .2, .15),
    "bass": Plan(
        ((0, -.002, -.02), (.03, .032, -.05), (.09, .07, -.085), (.18, .11, -.115), (.30, .142, -.14), (.43, .15,
                                                                                                        -.152),
         (.56, .138, -.148), (.68, .11, -.12), (.79, .078, -.082), (.89, .056, -.056), (1, .056, -.056)),
        frozenset({"elongate-robust", "elongate"}), (.145, .045, .025), .31, -.006, (.33, .48), .085, (.64, .16), .085,
        (.325, -.04), .14, "thoracic", .19, .125),
    "perch": Plan(
        ((0, .0, -.012), (.04, .03, -.035), (.10, .058, -.058), (.19, .09, -.082), (.29, .115, -.1), (.41, .12, -.112),
         (.54, .106, -.108), (.67, .083, -.088), (.79, .056, -.06), (.89, .042, -.042), (1, .042, -.042)),
        frozenset({"elongate-robust", "elongate"}), (.125, .03, .023), .28, -.008, (.29, .55), .1, (.62, .15), .085,
        (.295, -.035), .13, "thoracic", .17, .12),
    "pike": Plan(
        ((0, .006, -.012), (.05, .02, -.026), (.12, .034, -.04), (.20, .05, -.052), (.30, .068, -.065), (.44, .078,
                                                                                                         -.076),
         (.60, .08, -.08), (.72, .074, -.074), (.82, .058, -.058), (.90, .04, -.04), (1, .04, -.04)),
        frozenset({"elongate-cylindrical", "elongate", "elongate-robust"}), (.165, .03, .0165), .285, -.006, (.70,
                                                                                                              .16), .09,
        (.73, .13), .085, (.295, -.045), .1, "abdominal", .15, .11),
    "trout": Plan(
        ((0, .0, -.012), (.03, .032, -.038), (.09, .062, -.066), (.18, .09, -.09), (.30, .112, -.11), (.44, .12, -.12),
         (.57, .112, -.114), (.70, .086, -.088), (.81, .058, -.06), (.90, .044, -.044), (1, .05, -.05)),
        frozenset({"elongate-robust", "elongate"}), (.105, .024, .019), .235, -.012, (.45, .14), .09, (.71, .12), .08,
        (.25, -.06), .12, "abdominal", .17, .13),
    "catfish": Plan(
        ((0, .0, -.03), (.03, .03, -.045), (.10, .062, -.062), (.20, .095, -.078), (.30, .112, -.092), (.43, .106,
                                                                                                        -.106),
         (.57, .094, -.104), (.70, .078, -.086), (.81, .06, -.064), (.91, .044, -.046), (1, .046, -.046)),
        frozenset({"elongate-robust", "elongate", "moderately-deep"}), (.12, .03, .0135), .255, -.02, (.33, .085), .12,
        (.60, .25), .075, (.26, -.062), .12, "abdominal", .18, .13),
    "carp": Plan(
        ((0, -.006, -.03), (.03, .035, -.055), (.09, .082, -.08), (.18, .13, -.108), (.29, .17, -.13), (.41, .176,
                                                                                                        -.145),
         (.55, .155, -.142), (.68, .118, -.116), (.79, .084, -.084), (.89, .062, -.062), (1, .062, -.062)),
        frozenset({"moderately-deep", "elongate-robust", "elongate"}), (.13, .04, .019), .26, -.022, (.40, .2), .1,
        (.72, .09), .09, (.27, -.075), .13, "abdominal", .19, .15),
    "eel-like": Plan(
        ((0, .004, -.018), (.03, .034, -.038), (.08, .062, -.058), (.16, .082, -.074), (.28, .09, -.088), (.44, .086,
                                                                                                           -.092),
         (.60, .078, -.082), (.76, .064, -.066), (.90, .048, -.05), (1, .038, -.04)),
        frozenset({"elongate-cylindrical", "elongate", "elongate-robust"}), (.075, .022, .0115), .2, -.006,
        (.33, .55), .05, (.55, .36), .045, (.215, -.03), .085, "abdominal", .12, .07),
    "goby": Plan(
        ((0, -.004, -.03), (.03, .04, -.05), (.09, .085, -.066), (.17, .108, -.08), (.27, .112, -.09), (.40, .1, -.09),
         (.55, .084, -.078), (.70, .064, -.062), (.83, .048, -.048), (.92, .044, -.044), (1, .046, -.046)),
        frozenset({"elongate-robust", "elongate", "moderately-deep", "elongate-cylindrical"}), (.105, .073, .026), .27,
        -.018,
        (.30, .58), .085, (.56, .3), .065, (.285, -.02), .18, "thoracic", .17, .1),
}
"""By the name that the base gives to a plan."""
OTHER = "bass"
"""The plan drawn for a fish of which the base names none (faint all over)."""
DEPTHS: Mapping[str, float] = {
    "deep-compressed": .45, "moderately-deep": .365, "elongate-robust": .28, "elongate-cylindrical": .17,
    "eel-like": .12,
    "flattened": .2, "elongate": .25,
}
"""The depth that a body form is drawn with where the plan is made for another form."""
