"""pelmet-framing: angle irons of a pelmet on board or lath that are at no stud, jack, king or header.

Consider; mounts before the wall, walls whose face hangs on studs. The set-out brings irons onto framing that is near them;
what is left is on board alone, which carries little. Common practice, no source; where framing likely is comes from the
set-out's zones.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing_dress import pelmet_ends, pelmet_top
from elevation.findings.limits import common_practice
from elevation.findings.looking import treatment_at, wall_of_scene
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import where
from elevation.setting_out.framing import FRAMING
from elevation.setting_out.irons import framing_behind
from elevation.setting_out.model import PelmetOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, msg, msg_plural


def off_framing(scene: Scene, pelmet: PelmetOut) -> tuple[tuple[float, float | None], ...]:
    """The irons that are at no framing, each with how far off the nearest is (None: there is none), in mm."""
    framing = framing_behind(pelmet, scene.set_out.zones)
    found: list[tuple[float, float | None]] = []
    for x in pelmet.irons_mm:
        away = min((max(zone.left_mm - x, x - zone.right_mm, 0.0) for zone in framing), default=None)
        if away is None or away > TOUCH_MM:
            found.append((x, away))
    return tuple(found)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    pelmet = treatment.pelmet
    if pelmet is None:
        return
    row = scene.trade.substrates.get(wall_of_scene(scene).substrate)
    if row is None or row.build != "studs":
        return
    off = off_framing(scene, pelmet)
    if not off:
        return
    ways = [away for _, away in off if away is not None]
    if ways:
        text = msg_plural(
            "{where}: {count} of the {all} angle irons of the pelmet is not at framing, which is {by} away; board or lath"
            " alone carries little.",
            "{where}: {count} of the {all} angle irons of the pelmet are not at framing, the farthest is {by} from it;"
            " board or lath alone carries little.",
            count=len(off),
            all=len(pelmet.irons_mm),
            where=where(treatment),
            by=Mm(max(ways)),
        )
    else:
        text = msg(
            "{where}: no framing is found or likely at the angle irons of the pelmet; board or lath alone carries little.",
            where=where(treatment),
        )
    yield Finding(
        "pelmet-framing",
        Weight.CONSIDER,
        treatment.ref,
        text,
        common_practice(),
        measured_mm=max(ways) if ways else None,
        limit_mm=0.0,
        at=(off[0][0], pelmet.top_mm),
        caution=_caution(scene),
    )


def _caution(scene: Scene) -> Message:
    if not wall_of_scene(scene).studs:
        return msg("Find a stud and type where it is: the irons are then set onto studs. Detect cables before you drill.")
    return msg("Framing drawn dashed is only likely: probe to confirm, and detect cables, before you drill.")


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    treatment = treatment_at(scene, finding.subject)
    pelmet = treatment.pelmet
    if pelmet is None:  # pragma: no cover - the finding was made of one
        return
    # The shelf lower, until it lies before a header, which runs over an opening.
    for zone in scene.set_out.zones:
        if zone.kind == "header" and zone.top_mm < pelmet.top_mm:
            yield from pelmet_top(scene, finding.subject, zone.top_mm - pelmet.over_mm, is_higher=False)
    # Longer, until its ends come before framing.
    high, off = pelmet.top_mm, [x for x, _ in off_framing(scene, pelmet)]
    upright = [
        (zone.left_mm + zone.right_mm) / 2
        for zone in scene.set_out.zones
        if zone.kind in FRAMING and zone.kind != "header" and zone.bottom_mm <= high <= zone.top_mm
    ]
    inset = pelmet.irons_mm[0] - pelmet.left_mm
    left = [pelmet.left_mm - (x - inset) for x in upright if x < pelmet.irons_mm[0]]
    right = [x + inset - pelmet.right_mm for x in upright if x > pelmet.irons_mm[-1]]
    if left and right and {pelmet.irons_mm[0], pelmet.irons_mm[-1]} <= set(off):
        yield from pelmet_ends(scene, finding.subject, max(min(left), min(right)))
    if left and pelmet.irons_mm[0] in off:
        yield from pelmet_ends(scene, finding.subject, min(left), side="left")
    if right and pelmet.irons_mm[-1] in off:
        yield from pelmet_ends(scene, finding.subject, min(right), side="right")


# The nearest framing may be any way off.
RULE = Rule("pelmet-framing", msg("angle irons at framing"), _find, changes=_changes, mounts=BEFORE_WALL, is_near=False)
