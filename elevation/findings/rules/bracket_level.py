"""bracket-level: the brackets of one rod, as hung, are not level.

Broken; every mount; every arrangement. Each bracket that is off the height of the others by more than one graduation is
named. Where that comes from readings to a floor whose own line nobody measured, the floor may be what is out of level:
consider. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_name, built_height
from elevation.findings.limits import authority_of, is_own, said_limit
from elevation.findings.looking import bracket_at, layer_at, wall_of_scene
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import noun_of, where
from elevation.findings.rules.uneven_rods import most_mm
from elevation.room.find import layer_of
from elevation.setting_out.model import BracketOut, LayerOut, TreatmentOut
from elevation.units.tolerance import exceeds
from elevation.words import Message, Mm, msg


def leans_mm(layer: LayerOut, bracket: BracketOut) -> float:
    """How much higher than the rod's middle a bracket of a rod out of level by plan belongs, in mm."""
    support = layer.support
    return support.tilt * (bracket.x_mm - (support.left_mm + support.right_mm) / 2)


def wanted_mm(layer: LayerOut) -> float | None:
    """The height that the brackets of a rod should have, in mm; None for fewer than two.

    It is the height that most of them have, in the middle of a rod that is to lean; where as many have another, the one
    nearer to the plan.
    """
    if len(layer.brackets) < 2:
        return None
    votes: dict[float, int] = {}
    for bracket in layer.brackets:
        key = round(bracket.height_mm - leans_mm(layer, bracket), 3)
        votes[key] = votes.get(key, 0) + 1
    plan = layer.support.height_mm
    return max(votes, key=lambda key: (votes[key], -abs(key - plan), key))


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    most = most_mm(scene, "bracket-level")
    for layer in treatment.layers:
        wanted = wanted_mm(layer)
        if wanted is None:
            continue
        for bracket in layer.brackets:
            off = bracket.height_mm - leans_mm(layer, bracket) - wanted
            if not exceeds(abs(off), most, scene.half_mm):
                continue
            is_sure = _is_sure(scene, layer, bracket)
            text = _text(scene, treatment, layer, bracket, off, is_sure)
            if is_own(scene, "bracket-level"):
                text = msg("{text} Limit: {limit}.", text=text, limit=said_limit(scene, "bracket-level"))
            yield Finding(
                "bracket-level",
                Weight.BROKEN if is_sure else Weight.CONSIDER,
                bracket.ref,
                text,
                authority_of(scene, "bracket-level"),
                measured_mm=abs(off),
                limit_mm=most,
                at=(bracket.x_mm, bracket.height_mm),
                caution=msg(
                    "Hang it again from a ladder that stands firm, with someone to hold the {support}.",
                    support=noun_of(layer),
                ),
            )


def _is_sure(scene: Scene, layer: LayerOut, bracket: BracketOut) -> bool:
    """Whether it is the rod that is out of level: a height was read, or readings to a floor whose own line is known."""
    own = next(one for one in layer_of(scene.room, layer.ref).brackets if one.id == bracket.ref[-1])
    return own.height is not None or bool(wall_of_scene(scene).floor)


def _text(
    scene: Scene, treatment: TreatmentOut, layer: LayerOut, bracket: BracketOut, off: float, is_sure: bool
) -> Message:
    params: dict[str, object] = {
        "where": where(treatment),
        "bracket": bracket_name(scene, bracket.ref),
        "off": Mm(abs(off)),
    }
    if not is_sure:
        if off > 0:
            return msg(
                "{where}: by its readings to the floor {bracket} hangs {off} higher than the {support}'s others, or "
                "the floor"
                " is not level. Lay a level on the {support}.",
                support=noun_of(layer),
                **params,
            )
        return msg(
            "{where}: by its readings to the floor {bracket} hangs {off} lower than the {support}'s others, or the floor"
            " is not level. Lay a level on the {support}.",
            support=noun_of(layer),
            **params,
        )
    if off > 0:
        return msg(
            "{where}: {bracket} hangs {off} higher than the {support}'s other brackets.", support=noun_of(layer), **params
        )
    return msg(
        "{where}: {bracket} hangs {off} lower than the {support}'s other brackets.", support=noun_of(layer), **params
    )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    wanted = wanted_mm(layer_at(scene, finding.subject))
    if wanted is not None:  # pragma: no branch - the finding was made of it
        bracket = bracket_at(scene, finding.subject)
        up = leans_mm(layer_at(scene, finding.subject), bracket)
        yield from built_height(scene, bracket.ref, wanted + up)


RULE = Rule("bracket-level", msg("brackets of one rod level"), _find, changes=_changes, mounts=EVERY_MOUNT)
