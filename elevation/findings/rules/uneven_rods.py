"""uneven-rods: the rods of one wall, or of a room that wishes it, do not stand at one height.

Consider; wall and ceiling mounts; compares the front rods of treatments with the height that most of them have (the
higher where as many have another). Where the room wishes its rods at one height, those of its other walls count too.
More than one graduation is seen. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import rod_height
from elevation.findings.limits import authority_of, is_own, limit_mm, said_limit
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import noun_of, where
from elevation.setting_out.model import TreatmentOut
from elevation.setting_out.room_rods import rods_elsewhere
from elevation.units.tolerance import exceeds
from elevation.words import Message, Mm, msg


def _before_wall(scene: Scene) -> list[TreatmentOut]:
    """Treatments that hang before the wall: a rod inside an opening stands where the opening does.

    One that hangs out of level by choice has no height in common with others.
    """
    return [
        one
        for one in scene.set_out.treatments
        if one.layers and one.mount in BEFORE_WALL and not one.layers[0].support.tilt
    ]


def common_height(scene: Scene) -> float | None:
    """The height that most front rods of the wall have, in mm; None for fewer than two rods.

    Where the room wishes it, the rods of its other walls count too.
    """
    heights = [treatment.layers[0].support.height_mm for treatment in _before_wall(scene)]
    heights += _elsewhere(scene)
    return None if len(heights) < 2 else _most_common(scene, heights)


def _elsewhere(scene: Scene) -> list[float]:
    if not scene.room.one_height:
        return []
    out = scene.set_out
    return [rod.height_mm for rod in rods_elsewhere(scene.room, out.wall, out.scheme, scene.trade)]


def _most_common(scene: Scene, heights: list[float]) -> float:
    grad = scene.room.graduation_mm
    votes: dict[int, int] = {}
    for height in heights:
        mark = round(height / grad)
        votes[mark] = votes.get(mark, 0) + 1
    best = max(votes, key=lambda mark: (votes[mark], mark))
    return max(height for height in heights if round(height / grad) == best)


def most_mm(scene: Scene, limit_id: str) -> float:
    """What rods or brackets may differ by: the room's own limit, else one graduation (or the trade's, if more)."""
    limit = limit_mm(scene, limit_id)
    return limit if is_own(scene, limit_id) else max(limit, scene.room.graduation_mm)


def _find(scene: Scene) -> Iterator[Finding]:
    common = common_height(scene)
    if common is None:
        return
    most = most_mm(scene, "uneven-rods")
    for treatment in _before_wall(scene):
        layer = treatment.layers[0]
        off = layer.support.height_mm - common
        if not exceeds(abs(off), most, scene.half_mm):
            continue
        params: dict[str, object] = {"where": where(treatment), "off": Mm(abs(off)), "support": noun_of(layer)}
        text = _text_of_room(off, params) if scene.room.one_height else _text_of_wall(off, params)
        if is_own(scene, "uneven-rods"):
            text = msg("{text} Limit: {limit}.", text=text, limit=said_limit(scene, "uneven-rods"))
        yield Finding(
            "uneven-rods",
            Weight.CONSIDER,
            layer.ref,
            text,
            authority_of(scene, "uneven-rods"),
            measured_mm=abs(off),
            limit_mm=most,
            at=((layer.support.left_mm + layer.support.right_mm) / 2, layer.support.height_mm),
        )


def _text_of_wall(off: float, params: dict[str, object]) -> Message:
    if off > 0:
        return msg("{where}: the {support} stands {off} higher than the other rods of this wall.", **params)
    return msg("{where}: the {support} stands {off} lower than the other rods of this wall.", **params)


def _text_of_room(off: float, params: dict[str, object]) -> Message:
    if off > 0:
        return msg("{where}: the {support} stands {off} higher than the other rods of this room.", **params)
    return msg("{where}: the {support} stands {off} lower than the other rods of this room.", **params)


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    """The height that most of the room's other rods have, where the room wishes them at one."""
    if not scene.room.one_height or not treatment.layers:
        return
    others = [one.layers[0].support.height_mm for one in _before_wall(scene) if one is not treatment]
    others += _elsewhere(scene)
    if others:
        reason = msg("at the height of the room's other rods")
        yield Sticking("rod-height", treatment.layers[0].ref, _most_common(scene, others), reason)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    common = common_height(scene)
    if common is not None:  # pragma: no branch - the finding was made of it
        yield from rod_height(scene, finding.subject, common, scene.half_mm)


RULE = Rule(
    "uneven-rods",
    msg("rods of one wall at one height"),
    find_in_wall=_find,
    changes=_changes,
    stickings=_stickings,
    mounts=BEFORE_WALL,
)
