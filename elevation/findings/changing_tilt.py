"""Changes of how level a rod hangs."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from msgspec.structs import replace

from elevation.findings.looking import noun_at
from elevation.findings.model import Change, Scene
from elevation.room.corners import goes_round
from elevation.room.edits import edit_at
from elevation.room.find import treatment_of
from elevation.room.model import Built, Ref, Room, Treatment
from elevation.setting_out.tilt import TILTS
from elevation.words import Message, msg


def _label(tilt: str, support: Message) -> Message:
    if tilt == "head":
        return msg("Hang the {support} parallel to the head", support=support)
    if tilt == "ceiling":
        return msg("Hang the {support} parallel to the ceiling", support=support)
    if tilt == "split":
        return msg("Hang the {support} half way between head and ceiling", support=support)
    return msg("Hang the {support} level", support=support)


def with_tilt(room: Room, ref: Ref, tilt: str) -> Room:
    """A room in which all rods of the treatment at ``ref`` hang so: one would look crooked beside the other.

    A rod that hangs another way is a plan again.
    """

    def put(treatment: Treatment) -> Treatment:
        layers = tuple(
            layer if layer.rod.tilt == tilt else replace(layer, rod=replace(layer.rod, tilt=tilt), built=Built())
            for layer in treatment.layers
        )
        return replace(treatment, layers=layers)

    return edit_at(room, ref[:3], put)


def can_lean(room: Room, ref: Ref) -> bool:
    """Whether the rods of a treatment may hang out of level: one that goes round a corner may not."""
    return not goes_round(treatment_of(room, ref[:3]))


def tilt_to(scene: Scene, ref: Ref, *tilts: str) -> Iterator[Change]:
    """Hang the rods of a treatment level, or along one of the lines beside them."""
    if not can_lean(scene.room, ref):
        return
    now = {layer.rod.tilt for layer in treatment_of(scene.room, ref[:3]).layers}
    for tilt in tilts:
        assert tilt in TILTS
        if now != {tilt}:
            yield Change(_label(tilt, noun_at(scene, ref)), partial(_hung, ref, tilt))


def _hung(ref: Ref, tilt: str, room: Room) -> Room:
    return with_tilt(room, ref, tilt)
