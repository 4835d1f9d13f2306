"""tension-rod: a tension rod presses against nothing, does not fit its opening, or carries more than its packet allows.

Every mount; layers on a tension rod. Stop where it has no two jambs to press against (ends more than half a graduation
off them), or the opening is outside the range of its packet; broken where its cloth weighs more than the packet says it
holds. Range and load are the packet's: nothing is said until they are typed. Cloth weighs what
the set-out says.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing_support import hang_on, press_between
from elevation.findings.looking import layer_at, treatment_at
from elevation.findings.model import EVERY_MOUNT, INSIDE, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import where
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.units.tolerance import exceeds, falls_short, less_ratio
from elevation.words import Message, Mm, Ratio, msg

_LB = 0.45359237  # kg, by definition


def gap_mm(treatment: TreatmentOut, layer: LayerOut) -> float | None:
    """How far the rod's ends stand from the jambs, the farther one, in mm; None where it hangs before the wall."""
    if treatment.mount not in INSIDE:
        return None
    opening, support = treatment.openings[0], layer.support
    return max(abs(support.left_mm - opening.left_mm), abs(support.right_mm - opening.right_mm))


def weight_kg(layer: LayerOut) -> float | None:
    """What the cloth of a layer weighs, in kg; None while a panel's length is not known."""
    masses = [panel.mass_kg for panel in layer.panels]
    if not masses or any(mass is None for mass in masses):
        return None
    return sum(mass or 0.0 for mass in masses)


def _packet() -> Message:
    return msg("the rod's own packet")


def _mass(scene: Scene, kg: float) -> Message:
    if scene.room.unit == "in":
        return msg("{mass} lb", mass=Ratio(kg / _LB, 1))
    return msg("{mass} kg", mass=Ratio(kg, 1))


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        if layer.support.kind == "tension-rod":
            found = _one(scene, treatment, layer)
            if found is not None:
                yield found


def _one(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Finding | None:
    support = layer.support
    at = ((support.left_mm + support.right_mm) / 2, support.height_mm)

    def told(weight: Weight, text: Message, measured: float | None = None, limit: float | None = None) -> Finding:
        return Finding("tension-rod", weight, layer.ref, text, _packet(), measured, limit, at)

    gap = gap_mm(treatment, layer)
    name = where(treatment)
    if gap is None:
        text = msg(
            "{where}: a tension rod presses between two jambs; before the wall it presses against nothing.", where=name
        )
        return told(Weight.STOP, text)
    if exceeds(gap, 0.0, scene.half_mm):
        text = msg(
            "{where}: an end of the tension rod is {gap} off the jamb that it should press against.",
            where=name,
            gap=Mm(gap),
        )
        return told(Weight.STOP, text, gap, 0.0)
    long, least, most = support.length_mm, support.least_mm, support.most_mm
    if least is not None and falls_short(long, least, scene.half_mm):
        text = msg("{where}: the opening is {long} wide, {by} less than the {limit} the tension rod starts at.",
                   where=name, long=Mm(long), by=Mm(least - long), limit=Mm(least))  # fmt: skip
        return told(Weight.STOP, text, long, least)
    if most is not None and exceeds(long, most, scene.half_mm):
        text = msg("{where}: the opening is {long} wide, {by} more than the {limit} the tension rod reaches.",
                   where=name, long=Mm(long), by=Mm(long - most), limit=Mm(most))  # fmt: skip
        return told(Weight.STOP, text, long, most)
    weight = weight_kg(layer)
    if weight is not None and support.holds_kg is not None and less_ratio(support.holds_kg, weight):
        text = msg(
            "{where}: the cloth weighs about {weight}, and the tension rod holds {holds}.",
            where=name,
            weight=_mass(scene, weight),
            holds=_mass(scene, support.holds_kg),
        )
        return told(Weight.BROKEN, text)
    return None


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    treatment, layer = treatment_at(scene, finding.subject), layer_at(scene, finding.subject)
    if gap_mm(treatment, layer) is not None:
        yield from press_between(scene, layer.ref)
    yield from hang_on(scene, layer.ref, "rod")


RULE = Rule("tension-rod", msg("the tension rod between its jambs"), _find, changes=_changes, mounts=EVERY_MOUNT)
