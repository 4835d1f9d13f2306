"""double-bracket: a back rod's place on a double bracket has no double bracket in front of it.

Stop; every mount; back layers. Geometry: along the rod within half a graduation, and in height.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_name, bracket_to
from elevation.findings.limits import by_geometry
from elevation.findings.looking import bracket_at, treatment_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import where
from elevation.setting_out.model import BracketOut, TreatmentOut
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg

CARRYING = frozenset({"double-front", "double-front-ceiling"})


def carriers(treatment: TreatmentOut) -> tuple[BracketOut, ...]:
    """The double brackets of the front layer."""
    return tuple(bracket for bracket in treatment.layers[0].brackets if bracket.kit in CARRYING)


def away(bracket: BracketOut, carrying: tuple[BracketOut, ...]) -> tuple[float, BracketOut] | None:
    """The nearest double bracket along the rod, and how far it is, in mm; None where there is none."""
    return min(((abs(one.x_mm - bracket.x_mm), one) for one in carrying), key=lambda pair: pair[0], default=None)


def _hung(treatment: TreatmentOut) -> Iterator[BracketOut]:
    for layer in treatment.layers[1:]:
        for bracket in layer.brackets:
            if bracket.on == "layer":
                yield bracket


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    if len(treatment.layers) < 2:
        return
    carrying = carriers(treatment)
    for bracket in _hung(treatment):
        found = away(bracket, carrying)
        params = {"where": where(treatment), "bracket": bracket_name(scene, bracket.ref)}
        at = (bracket.x_mm, bracket.height_mm)
        if found is None:
            text = msg("{where}: the front layer has no double bracket to carry {bracket} of the back layer.", **params)
            yield Finding("double-bracket", Weight.STOP, bracket.ref, text, by_geometry(), at=at)
        elif exceeds(found[0], 0.0, scene.half_mm):
            text = msg(
                "{where}: {bracket} of the back layer is {by} beside the double bracket that carries it.",
                by=Mm(found[0]),
                **params,
            )
            yield Finding("double-bracket", Weight.STOP, bracket.ref, text, by_geometry(), found[0], 0.0, at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    found = away(bracket_at(scene, finding.subject), carriers(treatment_at(scene, finding.subject)))
    if found is not None:
        yield from bracket_to(scene, finding.subject, found[1].x_mm, scene.half_mm)


def _stickings(_scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    if len(treatment.layers) > 1:
        for bracket in _hung(treatment):
            for one in carriers(treatment):
                yield Sticking("bracket", bracket.ref, one.x_mm, msg("on a double bracket of the front layer"), 0)


RULE = Rule(
    "double-bracket",
    msg("back rods on double brackets"),
    _find,
    changes=_changes,
    stickings=_stickings,
    mounts=EVERY_MOUNT,
)
