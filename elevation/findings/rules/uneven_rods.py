"""uneven-rods: the rods of one wall do not stand at one height.

Consider; wall mounts; compares the front rods of treatments with the height that most of them have (the higher where as
many have another). More than one graduation is seen. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import rod_height
from elevation.findings.limits import authority_of, is_own, limit_mm, said_limit
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import where
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg


def common_height(scene: Scene) -> float | None:
    """The height that most front rods of the wall have, in mm; None for fewer than two rods."""
    heights = [treatment.layers[0].support.height_mm for treatment in scene.set_out.treatments if treatment.layers]
    if len(heights) < 2:
        return None
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
    for treatment in scene.set_out.treatments:
        if not treatment.layers:
            continue
        layer = treatment.layers[0]
        off = layer.support.height_mm - common
        if not exceeds(abs(off), most, scene.half_mm):
            continue
        params = {"where": where(treatment), "off": Mm(abs(off))}
        if off > 0:
            text = msg("{where}: the rod stands {off} higher than the other rods of this wall.", **params)
        else:
            text = msg("{where}: the rod stands {off} lower than the other rods of this wall.", **params)
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


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    common = common_height(scene)
    if common is not None:
        yield from rod_height(scene, finding.subject, common, scene.half_mm)


RULE = Rule("uneven-rods", msg("rods of one wall at one height"), find_in_wall=_find, changes=_changes)
