"""Fixing a treatment to something else: wall, ceiling, reveal or sash, with holds that make sense there.

What the new mount cannot use is put in its place in one named edit; what it can, stays.
"""

from __future__ import annotations

from math import ceil
from typing import Literal

from msgspec.structs import replace

from elevation.errors import BadInput, said
from elevation.room.edits import edit_at
from elevation.room.model import Bracket, Built, Held, Hem, Layer, Panel, Ref, Rod, Room, Treatment
from elevation.trade.model import BracketRow, Trade
from elevation.units import Length, length_of
from elevation.units.rounding import mm_of_mark

Mount = Literal["wall", "ceiling", "reveal", "sash"]

INSIDE = frozenset({"reveal", "sash"})
"""Mounts that hang inside one opening."""

_INSIDE_HEIGHTS = frozenset({"below-head", "above-sill", "share-of-opening"})
_FLOOR_HEMS = frozenset({"clear", "kiss", "break", "puddle", "apron"})

# Proposals in inches and in mm: common practice, no source.
_ABOVE_CASING = (4.0, 100.0)
_REACH = (11.0, 280.0)
_OUT = (3.5, 90.0)
_BELOW_HEAD = (1.5, 40.0)
_FROM_SASH = (2.0, 50.0)
_ON_SASH = (0.75, 20.0)
_IN_SASH = (1.0, 25.0)
_INSET = (2.0, 50.0)
_ON_SASH_INSET = (0.5, 12.0)


def mounted(room: Room, ref: Ref, mount: Mount, trade: Trade) -> Room:
    """A room in which the treatment at ``ref`` is fixed to something else.

    Parameters
    ----------
    room : Room
    ref : Ref
        The treatment, or anything in it.
    mount : str
    trade : Trade
        Its brackets and ends: those of the new mount.

    Raises
    ------
    BadInput
        A rod in a reveal or on a sash has one opening, and this treatment covers more.
    """

    def fix(treatment: Treatment) -> Treatment:
        if treatment.mount == mount:
            return treatment
        if mount in INSIDE and len(treatment.openings) > 1:
            raise BadInput(
                treatment.name or treatment.id,
                "",
                said("covers {count} openings", count=len(treatment.openings)),
                said("a rod in a reveal or on a sash has one: make a treatment for each opening"),
            )
        layers = tuple(
            # What was read of it where it hung before goes with that place.
            replace(_layer(layer, treatment.mount, mount, len(treatment.layers) - index, room, trade), built=Built())
            for index, layer in enumerate(treatment.layers)
        )
        return replace(treatment, mount=mount, layers=layers)

    return edit_at(room, ref[:3], fix)


def _length(room: Room, figures: tuple[float, float], times: float = 1.0) -> Length:
    """A proposal of its own in each unit, on the room's graduation."""
    mm = figures[0] * 25.4 if room.unit == "in" else figures[1]
    return length_of(mm * times, room.unit, room.graduation_mm)


def _layer(layer: Layer, before: str, mount: Mount, planes: int, room: Room, trade: Trade) -> Layer:
    """One layer of ``planes`` from here to the glass, on its new mount."""
    if mount == "reveal":
        rod = _in_reveal(layer.rod, before, planes, room, trade)
        panels = tuple(replace(panel, parks=end_of(panel)) for panel in layer.panels)
        return replace(layer, rod=rod, brackets=(), panels=panels, hem=_sill(layer.hem))
    if mount == "sash":
        rod = _on_sash(layer.rod, planes, room)
        brackets = _brackets(layer, mount, room, trade)
        panels = tuple(replace(panel, parks=end_of(panel)) for panel in layer.panels)
        return replace(layer, rod=rod, brackets=brackets, panels=panels, hem=_sill(layer.hem))
    rod = layer.rod
    if before in INSIDE:
        ends = "ball-finial" if trade.ends[rod.ends].carries else rod.ends
        rod = replace(rod, projection=_length(room, _OUT), ends=ends, left_ends=None, right_ends=None)
    if mount == "ceiling":
        rod = replace(rod, height=Held("bracket-drop", _length(room, (0.0, 0.0))))
    elif rod.height.hold in _INSIDE_HEIGHTS or rod.height.hold == "bracket-drop":
        rod = replace(rod, height=Held("above-casing", _length(room, _ABOVE_CASING)))
    rod = replace(rod, left=_outside(rod.left, room), right=_outside(rod.right, room))
    return replace(layer, rod=rod, brackets=_brackets(layer, mount, room, trade))


def _outside(held: Held, room: Room) -> Held:
    return Held("beyond-opening", _length(room, _REACH)) if held.hold == "inside-opening" else held


def socket_gap(room: Room, trade: Trade) -> tuple[Length, str]:
    """From a jamb to the end of a rod in a socket, up to the next mark (a hair too long does not go in); and that row."""
    socket = next(row for row in trade.ends.values() if row.shape == "socket")
    marks = ceil(socket.length_mm / room.graduation_mm - 1e-7)
    return length_of(mm_of_mark(marks, room.graduation_mm), room.unit, room.graduation_mm), socket.id


def _in_reveal(rod: Rod, before: str, planes: int, room: Room, trade: Trade) -> Rod:
    """A rod in sockets between the jambs, a little under the head."""
    gap, ends = socket_gap(room, trade)
    height = rod.height if before == "sash" else Held("below-head", _length(room, _BELOW_HEAD))
    return replace(
        rod,
        height=height,
        left=Held("inside-opening", gap),
        right=Held("inside-opening", gap),
        projection=_length(room, _FROM_SASH, planes),
        ends=ends,
        left_ends=None,
        right_ends=None,
        stock=None,
    )


def _on_sash(rod: Rod, planes: int, room: Room) -> Rod:
    """A slim rod over half of the opening: where the sashes of a window that slides up and down meet."""
    inside = Held("inside-opening", _length(room, _IN_SASH))
    return replace(
        rod,
        height=Held("share-of-opening", _length(room, (0.0, 0.0)), 0.5),
        left=inside,
        right=inside,
        projection=_length(room, _ON_SASH, planes),
        ends="bare",
        left_ends=None,
        right_ends=None,
    )


def _sill(hem: Hem) -> Hem:
    return Hem("sill") if hem.target in _FLOOR_HEMS else hem


def end_of(panel: Panel) -> str:
    """The end at which a panel parks once its bracket is gone: the one that it drew away from."""
    where, _, bracket = panel.parks.partition(":")
    if not bracket:
        return panel.parks
    return "right" if where == "left-of" else "left"


def _brackets(layer: Layer, mount: Mount, room: Room, trade: Trade) -> tuple[Bracket, ...]:
    """The same brackets of a kit for that mount; a pair at the ends where there are none."""
    inset = _length(room, _ON_SASH_INSET if mount == "sash" else _INSET)
    old = () if mount == "sash" else layer.brackets
    old = old or (
        Bracket("b1", Held("from-left-end", inset)),
        Bracket("b2", Held("from-right-end", inset)),
    )
    return tuple(replace(bracket, kit=kit_for(bracket, mount, trade), height=None) for bracket in old)


def kit_for(bracket: Bracket, mount: str, trade: Trade) -> str:
    """The kit that a bracket has on that mount: its own, else the first one that treats rings as its own does."""
    now = trade.brackets.get(bracket.kit)
    if now is not None and now.mount == mount:
        return bracket.kit
    passes = bracket.rings_pass if bracket.rings_pass is not None else now is not None and now.rings_pass
    kits: list[BracketRow] = [row for row in trade.brackets.values() if row.mount == mount]
    return next((row.id for row in kits if row.rings_pass == passes), kits[0].id)
