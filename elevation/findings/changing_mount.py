"""Candidate changes of what a treatment is fixed to."""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.looking import treatment_at
from elevation.findings.model import INSIDE, Change, Scene
from elevation.findings.naming import noun_of
from elevation.room.model import Ref
from elevation.room.mounting import Mount, mounted
from elevation.setting_out.model import TreatmentOut
from elevation.words import Message, msg


def _label(mount: Mount, treatment: TreatmentOut) -> Message:
    # A tension rod is left behind in the reveal.
    layer = treatment.layers[0]
    support = noun_of(layer) if layer.support.kind == "track" else msg("rod")
    if mount == "ceiling":
        return msg("Fix the {support} to the ceiling", support=support)
    if mount == "reveal":
        return msg("Hang it in the reveal, in sockets")
    if mount == "sash":
        return msg("Hang it on the sash")
    return msg("Fix the {support} to the wall over the opening", support=support)


def mount_on(scene: Scene, ref: Ref, mount: Mount) -> Iterator[Change]:
    """The treatment at ``ref`` fixed to something else; inside an opening only where it covers one."""
    treatment = treatment_at(scene, ref)
    if treatment.mount == mount or (mount in INSIDE and len(treatment.openings) > 1):
        return
    yield Change(_label(mount, treatment), lambda room: mounted(room, ref, mount, scene.trade))
