"""Candidate changes of what a treatment is fixed to."""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.looking import treatment_at
from elevation.findings.model import INSIDE, Change, Scene
from elevation.room.model import Ref
from elevation.room.mounting import Mount, mounted
from elevation.words import Message, msg


def _label(mount: Mount) -> Message:
    if mount == "ceiling":
        return msg("Fix the rod to the ceiling")
    if mount == "reveal":
        return msg("Hang it in the reveal, in sockets")
    if mount == "sash":
        return msg("Hang it on the sash")
    return msg("Fix the rod to the wall over the opening")


def mount_on(scene: Scene, ref: Ref, mount: Mount) -> Iterator[Change]:
    """The treatment at ``ref`` fixed to something else; inside an opening only where it covers one."""
    treatment = treatment_at(scene, ref)
    if treatment.mount == mount or (mount in INSIDE and len(treatment.openings) > 1):
        return
    yield Change(_label(mount), lambda room: mounted(room, ref, mount, scene.trade))
