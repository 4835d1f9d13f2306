"""near-edge: a bracket is drilled so near the edge of a masonry reveal that the edge may break out.

Consider; wall mounts, masonry walls. The band is from memory (``reveal-keep-off``): the anchor's own sheet governs.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_name, bracket_to
from elevation.findings.limits import authority_of, drilling, limit_mm
from elevation.findings.looking import bracket_at
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import where
from elevation.setting_out.model import BracketOut, TreatmentOut, ZoneOut
from elevation.words import Mm, msg


def _hit(scene: Scene, bracket: BracketOut) -> ZoneOut | None:
    middle = (bracket.plate[1] + bracket.plate[3]) / 2
    tolerance = scene.half_mm
    for zone in scene.set_out.zones:
        if (
            zone.kind == "keep-off"
            and zone.left_mm + tolerance < bracket.x_mm < zone.right_mm - tolerance
            and zone.bottom_mm < middle < zone.top_mm
        ):
            return zone
    return None


def _edge(scene: Scene, zone: ZoneOut) -> tuple[float, float]:
    """Where the reveal's edge is, and which way leads off it (1 to the right)."""
    opening = next(opening for opening in scene.set_out.openings if opening.ref == zone.ref)
    return (opening.left_mm, -1.0) if zone.right_mm <= opening.left_mm else (opening.right_mm, 1.0)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        for bracket in layer.brackets:
            zone = _hit(scene, bracket)
            if zone is None or bracket.built:
                continue
            edge, way = _edge(scene, zone)
            gap = (bracket.x_mm - edge) * way
            yield Finding(
                "near-edge",
                Weight.CONSIDER,
                bracket.ref,
                msg(
                    "{where}: {bracket} is drilled {gap} from the edge of the reveal, which may break out.",
                    where=where(treatment),
                    bracket=bracket_name(scene, bracket.ref),
                    gap=Mm(gap),
                ),
                authority_of(scene, "reveal-keep-off"),
                measured_mm=gap,
                limit_mm=limit_mm(scene, "reveal-keep-off"),
                at=(bracket.x_mm, bracket.height_mm),
                caution=drilling(),
            )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    bracket = bracket_at(scene, finding.subject)
    zone = _hit(scene, bracket)
    if zone is not None:  # pragma: no branch - the finding was made of it
        edge, way = _edge(scene, zone)
        wanted = edge + way * limit_mm(scene, "reveal-keep-off")
        yield from bracket_to(scene, finding.subject, wanted, scene.half_mm)


RULE = Rule("near-edge", msg("brackets off the edges of reveals"), _find, changes=_changes)
