"""Where handles stick while the lines of proportion are shown, and only then."""

from __future__ import annotations

from collections.abc import Iterable

from elevation.findings.model import Scene, Sticking
from elevation.handles import hem, rod_ends, rod_height
from elevation.handles.model import Handle
from elevation.handles.ranks import NEIGHBOUR, PROPORTION
from elevation.planning.guides import SHARES, Guide, guides_of
from elevation.room.find import layer_of
from elevation.room.mounting import INSIDE
from elevation.setting_out.model import TreatmentOut
from elevation.setting_out.room_rods import rods_elsewhere
from elevation.words import Message, msg

_LONG = (
    msg("the rod is a third of the wall's width"),
    msg("the rod is half of the wall's width"),
    msg("the rod is two thirds of the wall's width"),
)


def guide_places(handle: Handle, scene: Scene, alone: bool) -> Iterable[Sticking]:
    """Places on the lines of proportion for one handle; computed once, at press.

    Parameters
    ----------
    handle : Handle
        A rod's height or end, or a hem; others have none.
    scene : Scene
    alone : bool
        Only this end moves where both would.
    """
    treatment = next((one for one in scene.set_out.treatments if one.ref == handle.ref[:3]), None)
    if treatment is None or treatment.mount in INSIDE:
        return
    if handle.axis == rod_height.AXIS:
        yield from _heights(handle, scene, treatment)
    elif handle.axis in (rod_ends.LEFT, rod_ends.RIGHT):
        yield from _ends(handle, scene, treatment, alone)
    elif handle.axis == hem.AXIS:
        for guide in guides_of(scene.set_out):
            if guide.axis == "y" and guide.kind in ("wall", "level"):
                yield _at(handle, guide)


def _at(handle: Handle, guide: Guide) -> Sticking:
    rank = NEIGHBOUR if guide.kind in ("level", "edge") else PROPORTION
    return Sticking(handle.axis, handle.ref, guide.at_mm, guide.reason, rank)


def _heights(handle: Handle, scene: Scene, treatment: TreatmentOut) -> Iterable[Sticking]:
    for guide in guides_of(scene.set_out):
        if guide.axis == "y" and (guide.kind != "gap" or guide.about == treatment.ref):
            yield _at(handle, guide)
    for rod in rods_elsewhere(scene.room, scene.set_out.wall, scene.set_out.scheme, scene.trade):
        step = rod.height_mm - rod.treatment.layers[0].support.height_mm
        for opening in rod.treatment.openings:
            reason = msg("level with a head on the wall {wall}", wall=rod.wall_name)
            yield Sticking(handle.axis, handle.ref, opening.top_mm + step, reason, NEIGHBOUR)


def _ends(handle: Handle, scene: Scene, treatment: TreatmentOut, alone: bool) -> Iterable[Sticking]:
    for guide in guides_of(scene.set_out):
        if guide.axis == "x" and guide.kind in ("wall", "edge"):
            yield _at(handle, guide)
    for value, reason in _lengths(handle, scene, treatment, alone):
        yield Sticking(handle.axis, handle.ref, value, reason, PROPORTION)


def _lengths(handle: Handle, scene: Scene, treatment: TreatmentOut, alone: bool) -> Iterable[tuple[float, Message]]:
    """Where the rod is as long as a part of the wall: both ends move about their middle unless one moves alone."""
    layer = next((one for one in treatment.layers if one.ref == handle.ref[:4]), None)
    if layer is None or not scene.set_out.known_width:
        return
    support, rod = layer.support, layer_of(scene.room, layer.ref).rod
    if (rod.right if handle.axis == rod_ends.LEFT else rod.left).hold == "rod-length":
        return  # this end carries the rod and leaves its length
    out = -1.0 if handle.axis == rod_ends.LEFT else 1.0
    own, other = (support.left_mm, support.right_mm) if out < 0 else (support.right_mm, support.left_mm)
    is_mirrored = handle.both_mm is not None and not alone
    for (share, _), reason in zip(SHARES, _LONG, strict=True):
        length = scene.set_out.width_mm * share
        value = own + out * (length - support.length_mm) / 2 if is_mirrored else other + out * length
        yield value, reason
