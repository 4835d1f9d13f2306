"""A second layer behind the first: its own rod on the same brackets, a sheer as a rule."""

from __future__ import annotations

from msgspec.structs import replace

from elevation.errors import BadInput, said
from elevation.room.edits import put_layer, replace_at
from elevation.room.find import treatment_of
from elevation.room.model import Bracket, Fabric, Layer, Ref, Room
from elevation.trade.model import Trade
from elevation.units import Length, length_of

# Wall (or sash) to the centre of the back rod, and from it to that of the front one, in inches and mm: room for folds of
# about 2 1/2 in on each. Common practice, no source.
_BACK = (2.0, 50.0)
_APART = (2.75, 70.0)
_DOUBLE = {"wall": ("double-front", "double-back"), "ceiling": ("double-front-ceiling", "double-back-ceiling")}
"""The double bracket of a mount, and the back rod's place on it."""

_SECTION = ("conduit-1/2", "tube-16")


def with_back_layer(room: Room, ref: Ref, trade: Trade) -> tuple[Room, Ref]:
    """One layer more behind the treatment at ``ref``, and the ref of that layer.

    It is held as the front one is and has as many panels of a sheer cloth. On the wall and under the ceiling both hang on
    double brackets; the front rod moves out far enough that the two do not touch.

    Raises
    ------
    BadInput
        The treatment has two layers already.
    """
    treatment = treatment_of(room, ref[:3])
    if len(treatment.layers) > 1:
        raise BadInput(treatment.name or treatment.id, "", said("has two layers already"), said("take one away first"))
    front = treatment.layers[0]
    at = 0 if room.unit == "in" else 1
    scale = 25.4 if room.unit == "in" else 1.0
    back_mm, apart_mm = _BACK[at] * scale, _APART[at] * scale
    out_mm = max(front.rod.projection.mm, back_mm + apart_mm)
    marked = _out(room, out_mm, front.rod.projection)
    rod = replace(front.rod, projection=_out(room, back_mm, None))
    if front.rod.kind == "rod":
        rod = replace(rod, section=_SECTION[at], diameter=None, stock=None)
    doubled = treatment.mount in _DOUBLE and front.rod.kind == "rod"
    _, back_kit = _DOUBLE.get(treatment.mount, ("", ""))
    back = Layer(
        id="",
        rod=rod,
        brackets=tuple(replace(b, kit=back_kit, rings_pass=None) if doubled else b for b in front.brackets),
        heading=front.heading,
        fabric=Fabric("voile", "#ece6d8", "sheer"),
        hem=front.hem,
        panels=tuple(replace(panel, stack=None, drawn=None, measured_length=None) for panel in front.panels),
    )
    brackets = tuple(_double(bracket, treatment.mount, trade) if doubled else bracket for bracket in front.brackets)
    moved = replace(front, rod=replace(front.rod, projection=marked), brackets=brackets)
    room = replace_at(room, ref[:3], layers=(moved,))
    return put_layer(room, ref[:3], back)


def _out(room: Room, mm: float, before: Length | None) -> Length:
    return before if before is not None and before.mm == mm else length_of(mm, room.unit, room.graduation_mm)


def _double(bracket: Bracket, mount: str, trade: Trade) -> Bracket:
    """The front bracket as one that carries a second rod behind the first, and lets rings by as its own kit does."""
    row = trade.brackets.get(bracket.kit)
    passes = bracket.rings_pass if bracket.rings_pass is not None else row is not None and row.rings_pass
    return replace(bracket, kit=_DOUBLE[mount][0], rings_pass=True if passes else None)
