"""Candidate changes where the wall leaves little room beside an opening: one way to draw, or a socket in the side wall."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from elevation.findings.looking import ends_of, layer_at, noun_at, outer, treatment_at, wall_of_scene
from elevation.findings.model import BEFORE_WALL, Change, Scene
from elevation.room.edits import edit_at, remove, replace_rod
from elevation.room.find import layer_of
from elevation.room.model import Held, Layer, Panel, Ref, Room
from elevation.room.mounting import socket_gap
from elevation.units import length_of
from elevation.words import msg

_SQUARE = 1e-9


def narrow_side(scene: Scene, ref: Ref, side: str) -> Iterator[Change]:
    """Ways for a side with no room for a stack: cloth that draws the other way, or a socket in the side wall."""
    if treatment_at(scene, ref).mount in BEFORE_WALL:
        yield from one_way(scene, ref, "right" if side == "left" else "left")
        yield from socket_in_wall(scene, ref, side)


def room_beside(scene: Scene, ref: Ref, side: str) -> float:
    """Wall beside the outer opening on a side, in mm."""
    opening = outer(treatment_at(scene, ref).openings, side)
    return opening.left_mm if side == "left" else scene.set_out.width_mm - opening.right_mm


def one_way(scene: Scene, ref: Ref, to: str) -> Iterator[Change]:
    """All the cloth of a pair as one panel that draws to the roomier side; only offered where ``to`` is that side."""
    panels = layer_of(scene.room, ref).panels
    other = "right" if to == "left" else "left"
    is_pair = len(panels) == 2 and {panel.parks for panel in panels} == {"left", "right"}
    if not is_pair or any(panel.stationary for panel in panels):
        return
    if room_beside(scene, ref, to) <= room_beside(scene, ref, other):
        return
    label = (
        msg("Draw all the cloth one way, to the left") if to == "left" else msg("Draw all the cloth one way, to the right")
    )
    yield Change(label, lambda room: edit_at(room, ref[:4], lambda layer: _joined(layer, to, room)))


def _joined(layer: Layer, to: str, room: Room) -> Layer:
    kept = next(panel for panel in layer.panels if panel.parks == to)
    gone = next(panel for panel in layer.panels if panel.parks != to)
    whole: Panel
    if kept.flat_width.mm == gone.flat_width.mm:
        whole = replace(kept, count=kept.count + gone.count)
    else:
        flat_mm = kept.flat_width.mm * kept.count + gone.flat_width.mm * gone.count
        whole = replace(kept, flat_width=length_of(flat_mm, room.unit, room.graduation_mm), count=1)
    # A stack that was squeezed and measured was that of the one panel.
    return replace(layer, panels=(replace(whole, stack=None, drawn=None),))


def socket_in_wall(scene: Scene, ref: Ref, side: str) -> Iterator[Change]:
    """The rod's end in a socket on the side wall, in place of the end bracket there; only in a square corner."""
    wall = wall_of_scene(scene)
    end = wall.left if side == "left" else wall.right
    ends = ends_of(layer_at(scene, ref))
    if end.kind != "corner" or abs(end.angle - 90.0) > _SQUARE or ends is None:
        return
    if side == "right" and not scene.set_out.known_width:
        return
    gap, socket = socket_gap(scene.room, scene.trade)
    bracket = ends[0] if side == "left" else ends[1]
    held = Held("from-corner", gap)

    def fix(room: Room) -> Room:
        room = replace_rod(room, ref[:4], **{side: held, f"{side}_ends": socket})
        return remove(room, bracket.ref)

    label = (
        msg("Put the left end of the {support} in a socket on the side wall", support=noun_at(scene, ref))
        if side == "left"
        else msg("Put the right end of the {support} in a socket on the side wall", support=noun_at(scene, ref))
    )
    yield Change(label, fix)
