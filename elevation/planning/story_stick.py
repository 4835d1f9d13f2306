"""Story sticks: what is alike at several windows, marked once on a batten and carried from one to the next.

Three sticks serve a rod on wall brackets: one laid along the casing's head with the brackets' middles, one stood on the
casing with the rod's axis and the holes, and one stood on the floor with the heights of hem, sill, head and axis, which
shows what is not alike in a row of windows before anything is drilled. Windows share a stick where every mark of theirs
falls on the same mark of the tape. Measuring once and carrying the stick keeps one error from becoming many: common
practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from msgspec import Struct

from elevation.findings.naming import where
from elevation.planning.dressed import Dressed
from elevation.planning.drilling import DrillPlace, drill_places
from elevation.planning.drilling_waits import waits_for
from elevation.planning.stops import stopped
from elevation.room.model import Ref, Room
from elevation.setting_out.model import LayerOut, OpeningOut, SetOut, TreatmentOut
from elevation.setting_out.profile import height_at
from elevation.trade.model import Trade
from elevation.units import length_of
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, msg

Way = Literal["along", "up", "floor"]


class Mark(Struct, frozen=True):
    """A mark on a stick: what it is, how far from the stick's zero end, and whether it is what the stick is held to."""

    name: Message
    at_mm: float
    is_held: bool = False


class Stick(Struct, frozen=True):
    """One stick.

    Attributes
    ----------
    way : str
        ``along``: its zero end points left; ``up``: it stands on its zero end on the casing; ``floor``: on the floor, under
        the window's middle.
    unit, graduation_mm : str, float
        Of the tape that the rooms it serves were measured with.
    marks : tuple of Mark
        From the zero end on, on the tape's marks.
    windows : tuple of Message
        At least two.
    """

    way: Way
    unit: str
    graduation_mm: float
    marks: tuple[Mark, ...]
    windows: tuple[Message, ...]


class Sticks(Struct, frozen=True):
    """The sticks of rooms, and the windows that share none of that way with another."""

    sticks: tuple[Stick, ...]
    alone: tuple[tuple[Way, Message], ...]


class _Wanted(Struct, frozen=True):
    unit: str
    graduation_mm: float
    marks: tuple[Mark, ...]
    window: Message


def story_sticks(rooms: Sequence[Dressed], trade: Trade) -> Sticks:
    """The sticks that serve at least two windows of these rooms.

    Only rods on wall brackets count; a treatment with a *stop*, or that waits for a panel to be measured, is left out, as
    its drilling sheet is.

    Parameters
    ----------
    rooms : sequence of Dressed
    trade : Trade
    """
    wanted: dict[Way, list[_Wanted]] = {"along": [], "up": [], "floor": []}
    for dressed in rooms:
        for wall, findings in zip(dressed.walls, dressed.findings, strict=True):
            stops = stopped(findings)
            for laid in wall.treatments:
                if laid.ref not in stops and laid.mount == "wall" and not waits_for(laid):
                    for layer in laid.layers:
                        _of_layer(wanted, dressed.room, wall, laid, layer, trade)
    sticks: list[Stick] = []
    alone: list[tuple[Way, Message]] = []
    for way, every in wanted.items():
        groups: dict[tuple[object, ...], list[_Wanted]] = {}
        for one in every:
            groups.setdefault(_key(one), []).append(one)
        for group in groups.values():
            if len(group) > 1:
                sticks.append(
                    Stick(way, group[0].unit, group[0].graduation_mm, group[0].marks, tuple(one.window for one in group))
                )
            else:
                alone.append((way, group[0].window))
    return Sticks(tuple(sticks), tuple(alone))


def _key(one: _Wanted) -> tuple[object, ...]:
    # Whole hundredths of a mm: marks of the tape that are one mark differ by far less.
    return (one.unit, one.graduation_mm, *((mark.name.template, mark.is_held, round(mark.at_mm, 2)) for mark in one.marks))


def _of_layer(
    wanted: dict[Way, list[_Wanted]], room: Room, wall: SetOut, laid: TreatmentOut, layer: LayerOut, trade: Trade
) -> None:
    places = [place for place in drill_places(wall, laid, trade) if place.ref[:-1] == layer.ref and place.on == "wall"]
    places = [place for place in places if not _hung_before(layer, place.ref)]
    if not places or not laid.openings:
        return
    name = msg("{name}", name=laid.name) if laid.name else where(laid)
    name = msg("{wall}, {window}", wall=wall.wall_name or wall.wall, window=name)
    if room.name:
        name = msg("{room}, {place}", room=room.name, place=name)
    if len(laid.layers) > 1:
        number = laid.layers.index(layer) + 1
        name = msg("{place}, rod {number} from the front", place=name, number=number)
    wanted["along"].append(_Wanted(room.unit, room.graduation_mm, _along(room, laid, layer, places), name))
    up = _up(room, laid, places)
    if up:
        wanted["up"].append(_Wanted(room.unit, room.graduation_mm, up, name))
    heights = _over_floor(room, wall, laid, layer)
    if heights:
        wanted["floor"].append(_Wanted(room.unit, room.graduation_mm, heights, name))


def _hung_before(layer: LayerOut, ref: Ref) -> bool:
    return any(bracket.ref == ref and bracket.is_there for bracket in layer.brackets)


def _along(room: Room, laid: TreatmentOut, layer: LayerOut, places: Sequence[DrillPlace]) -> tuple[Mark, ...]:
    first, last = laid.openings[0], laid.openings[-1]
    support = layer.support
    left, right = first.left_mm - first.casing_mm, last.right_mm + last.casing_mm
    found = [
        (msg("rod's left end"), support.left_mm, False),
        (msg("left edge of the casing") if first.casing_mm > TOUCH_MM else msg("left jamb"), left, True),
        (msg("right edge of the casing") if last.casing_mm > TOUCH_MM else msg("right jamb"), right, False),
        (msg("rod's right end"), support.right_mm, False),
        *((msg("bracket {mark}, middle", mark=str(at)), place.x_mm, False) for at, place in enumerate(places, start=1)),
    ]
    zero = min(x for _, x, _ in found)
    return _marks(room, [(name, x - zero, is_held) for name, x, is_held in found])


def _up(room: Room, laid: TreatmentOut, places: Sequence[DrillPlace]) -> tuple[Mark, ...]:
    """Over the casing of the opening under the first bracket; none where brackets differ or a hole is not above it."""
    foot = _head(laid.openings[0])
    if any(abs(_head(opening) - foot) > TOUCH_MM for opening in laid.openings):
        return ()
    first = places[0]
    holes = sorted({round(y - first.height_mm, 6) for _, y in first.holes})
    for place in places[1:]:
        same = sorted({round(y - place.height_mm, 6) for _, y in place.holes}) == holes
        if not same or abs(place.height_mm - first.height_mm) > TOUCH_MM:
            return ()
    axis = first.height_mm - foot
    if axis <= 0:
        return ()
    casing = laid.openings[0].casing_mm > TOUCH_MM
    found = [
        (msg("top of the casing") if casing else msg("head of the opening"), 0.0, True),
        (msg("rod's axis"), axis, False),
        *((msg("screw"), axis + hole, False) for hole in holes if axis + hole > 0),
    ]
    return _marks(room, found)


def _over_floor(room: Room, wall: SetOut, laid: TreatmentOut, layer: LayerOut) -> tuple[Mark, ...]:
    """Heights over the floor under the middle of the first opening; none where the rod does not hang level."""
    opening, support = laid.openings[0], layer.support
    if support.line is not None:
        return ()
    foot = height_at(wall.floor, (opening.left_mm + opening.right_mm) / 2)
    found = [(msg("floor"), 0.0, True), (msg("rod's axis"), support.height_mm - foot, False)]
    if opening.bottom_mm - foot > TOUCH_MM:
        found.append((msg("sill of the opening"), opening.bottom_mm - foot, False))
    if abs(opening.left_top_mm - opening.right_top_mm) <= TOUCH_MM:
        found.append((msg("head of the opening"), opening.top_mm - foot, False))
    hems = [panel.top_mm - panel.finished_length_mm for panel in layer.panels if panel.finished_length_mm is not None]
    # Cloth that breaks or lies on the floor has no hem to mark.
    if hems and len(hems) == len(layer.panels) and max(hems) - min(hems) <= room.graduation_mm / 2 and min(hems) > foot:
        found.append((msg("hem"), min(hems) - foot, False))
    return _marks(room, found)


def _head(opening: OpeningOut) -> float:
    return opening.casing_top_mm


def _marks(room: Room, found: Sequence[tuple[Message, float, bool]]) -> tuple[Mark, ...]:
    marks = [Mark(name, length_of(max(at, 0.0), room.unit, room.graduation_mm).mm, is_held) for name, at, is_held in found]
    return tuple(sorted(marks, key=lambda mark: mark.at_mm))
