"""The same again: a wall, an opening or a treatment once more, and *same as* for many openings at once.

What is held is carried, not where it landed: each rod finds its own height and ends from its own window. What holds only
where it stood (a distance to a corner, a stud that was found) is turned into what it means for the treatment itself.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import partial

from msgspec.structs import replace

from elevation.errors import BadInput, said
from elevation.room.carrying import PARTS, Part, carry, copied, with_rod
from elevation.room.corners import AROUND
from elevation.room.edits import changed, edit_at, new_id, put_opening, put_scheme, put_treatment
from elevation.room.find import children, opening_of, scheme_of, treatment_of, wall_of
from elevation.room.model import Held, Layer, Opening, Ref, Room, Scheme, Treatment, Wall, WallEnd
from elevation.setting_out.model import LayerOut, OpeningOut, TreatmentOut
from elevation.setting_out.whole import set_out
from elevation.trade.model import Trade
from elevation.units import Length, length_of
from elevation.units.tolerance import TOUCH_MM


def duplicate_wall(room: Room, wall_id: str, name: str) -> tuple[Room, Ref]:
    """Add a copy of a wall with all that is on it, right after the original.

    The copy stands in no corner yet (a neighbour has only one wall beside it), and nothing on it is hung yet.

    Returns
    -------
    room, ref : Room, Ref
        The new room and where the copy stands.
    """
    wall = wall_of(room, wall_id)
    index = room.walls.index(wall) + 1
    schemes = tuple(changed(scheme, treatments=tuple(_unhung(one) for one in scheme.treatments)) for scheme in wall.schemes)
    copy = replace(
        wall,
        id=new_id(children(room), "wall-"),
        name=name,
        left=_alone(wall.left),
        right=_alone(wall.right),
        schemes=schemes,
    )
    return replace(room, walls=(*room.walls[:index], copy, *room.walls[index:])), (copy.id,)


def _alone(end: WallEnd) -> WallEnd:
    return changed(end, neighbour=None)


def _unhung(treatment: Treatment) -> Treatment:
    return replace(copied(treatment, treatment.openings, treatment.layers), id=treatment.id, name=treatment.name)


def duplicate_opening(room: Room, ref: Ref, trade: Trade) -> tuple[Room, Ref]:
    """Add a copy of an opening where the wall is free, and in every scheme a copy of the treatment that covers it alone.

    The copy stands to the right of the original, as far from its neighbour as the original from its own where there is
    room for it, else in the middle of the next free wall, else on the left. Nothing else moves.

    Raises
    ------
    BadInput
        No free part of the wall is wide enough.
    """
    wall, opening = wall_of(room, ref[0]), opening_of(room, ref)
    left_mm = _free_place(room, wall, opening, trade)
    fresh = replace(opening, id="", left=length_of(left_mm, room.unit, room.graduation_mm), gap=None)
    made, new = put_opening(room, wall.id, fresh)
    for scheme in wall.schemes:
        covering = [one for one in scheme.treatments if one.openings == (opening.id,)]
        for treatment in covering:
            made, _ = duplicate_treatment(made, (wall.id, scheme.id, treatment.id), (new[1],), trade)
    return made, new


def _free_place(room: Room, wall: Wall, opening: Opening, trade: Trade) -> float:
    out = set_out(room, wall.id, None, trade)
    at = next(index for index, one in enumerate(out.openings) if one.ref[1] == opening.id)
    own = out.openings[at]
    need_mm = own.right_mm - own.left_mm + 2 * own.casing_mm
    spans = _free_spans(out.openings, out.width_mm if out.known_width else None)
    wished_mm = spans[at][1] - spans[at][0]
    for start, stop in (*spans[at + 1 :], *reversed(spans[: at + 1])):
        if stop - start < need_mm + 2 * TOUCH_MM:
            continue
        before_mm = min(wished_mm, (stop - start - need_mm) / 2)
        return start + before_mm + own.casing_mm
    raise BadInput(
        wall.name or "wall",
        "",
        said("no free part of it is as wide as this window with its casing"),
        said("type the wall's true width first, or add the window to another wall"),
    )


def _free_spans(openings: Sequence[OpeningOut], width_mm: float | None) -> list[tuple[float, float]]:
    """The free wall before each opening and after the last one; without a known width the last one has no end."""
    spans, edge = [], 0.0
    for opening in openings:
        spans.append((edge, opening.left_mm - opening.casing_mm))
        edge = opening.right_mm + opening.casing_mm
    spans.append((edge, float("inf") if width_mm is None else width_mm))
    return spans


def duplicate_treatment(room: Room, ref: Ref, openings: tuple[str, ...], trade: Trade) -> tuple[Room, Ref]:
    """Add a copy of a treatment to its scheme, before other openings of the same wall.

    Parameters
    ----------
    room : Room
    ref : Ref
        The treatment, or anything in it.
    openings : tuple of str
        Ids of the openings that the copy covers.
    trade : Trade

    Returns
    -------
    room, ref : Room, Ref
        The new room and where the copy stands.
    """
    treatment = treatment_of(room, ref)
    layers = _handed_on(room, ref, (ref[0], openings), trade)
    return put_treatment(room, ref[:2], copied(treatment, openings, layers))


def bare_openings(room: Room, ref: Ref) -> tuple[str, ...]:
    """Ids of the openings of the wall before which nothing hangs in the scheme at ``ref``, the nearest one first."""
    wall = wall_of(room, ref[0])
    scheme = scheme_of(room, ref[0], ref[1])
    covered = {key for treatment in scheme.treatments for key in treatment.openings} if scheme is not None else set()
    order = {opening.id: index for index, opening in enumerate(wall.openings)}
    middle = 0.0
    if len(ref) > 2:
        places = [order[key] for key in treatment_of(room, ref).openings if key in order]
        middle = sum(places) / len(places) if places else 0.0
    free = [key for key in order if key not in covered]
    # Of two that are as near the one to the right: people walk along a wall from left to right.
    return tuple(sorted(free, key=lambda key: (abs(order[key] - middle), -order[key])))


def same_as(room: Room, ref: Ref, targets: Iterable[Ref], trade: Trade, parts: Iterable[Part] = PARTS) -> Room:
    """Carry what one treatment holds to the treatments of many openings; one edit, so one undo.

    Parameters
    ----------
    room : Room
    ref : Ref
        The treatment to take from, or anything in it.
    targets : iterable of Ref
        (wall, opening) of each chosen opening, on any wall. On another wall the scheme of the same name is meant, else
        its first one; a wall without a scheme gets one. Where nothing hangs before an opening a whole copy is hung.
    trade : Trade
    parts : iterable of Part
        What is carried.

    Returns
    -------
    Room
        The very same room where nothing changed.

    Raises
    ------
    NoSuch
        The treatment, a wall or an opening is not there.
    """
    wanted = tuple(parts)
    source = treatment_of(room, ref)
    made, done = room, {ref[:3]}
    for target in targets:
        opening = opening_of(room, target)
        made, scheme_ref = _scheme_for(made, ref, target[0])
        scheme = scheme_of(made, *scheme_ref)
        assert scheme is not None  # it was named
        there = next((one for one in scheme.treatments if opening.id in one.openings), None)
        if there is None:
            layers = _handed_on(room, ref, (target[0], (opening.id,)), trade)
            made, new = put_treatment(made, scheme_ref, copied(source, (opening.id,), layers))
            done.add(new)
        elif (*scheme_ref, there.id) not in done:
            where = (*scheme_ref, there.id)
            done.add(where)
            layers = _handed_on(room, ref, (target[0], there.openings), trade)
            made = edit_at(made, where, partial(_carried, source, layers, wanted))
    return made


def _carried(source: Treatment, layers: tuple[Layer, ...], parts: tuple[Part, ...], treatment: Treatment) -> Treatment:
    return carry(treatment, source, layers, parts)


def _scheme_for(room: Room, ref: Ref, wall_id: str) -> tuple[Room, tuple[str, str]]:
    """The scheme of another wall that goes with the one at ``ref``; made where the wall has none."""
    if wall_id == ref[0]:
        return room, (wall_id, ref[1])
    scheme = scheme_of(room, ref[0], ref[1])
    name = scheme.name if scheme is not None else ""
    schemes = wall_of(room, wall_id).schemes
    if not schemes:
        room, made = put_scheme(room, wall_id, Scheme(id="s1", name=name))
        return room, (made[0], made[1])
    found = next((one for one in schemes if one.name == name), schemes[0])
    return room, (wall_id, found.id)


def _handed_on(room: Room, ref: Ref, to: tuple[str, tuple[str, ...]], trade: Trade) -> tuple[Layer, ...]:
    """The layers at ``ref`` with what holds only there turned into what it means for the treatment itself."""
    treatment = treatment_of(room, ref)
    landed = _landed(room, ref, trade)
    if landed is None:
        return treatment.layers
    wall_id, openings = to
    stands = [one.id for one in wall_of(room, wall_id).openings]
    is_first, is_last = stands[0] in openings, stands[-1] in openings
    made = []
    for layer, out in zip(treatment.layers, landed.layers, strict=True):
        left, right = layer.rod.left, layer.rod.right
        if left.hold == AROUND or (left.hold == "from-corner" and not is_first):
            left = _beyond(room, landed.openings[0].left_mm - out.support.left_mm)
        if right.hold == AROUND or (right.hold == "from-corner" and not is_last):
            right = _beyond(room, out.support.right_mm - landed.openings[-1].right_mm)
        made.append(with_rod(layer, left, right, _places(room, layer, out)))
    return tuple(made)


def _landed(room: Room, ref: Ref, trade: Trade) -> TreatmentOut | None:
    out = set_out(room, ref[0], ref[1], trade)
    return next((one for one in out.treatments if one.ref == ref[:3]), None)


def _length(room: Room, mm: float) -> Length:
    return length_of(mm, room.unit, room.graduation_mm)


def _beyond(room: Room, mm: float) -> Held:
    return Held("beyond-opening", _length(room, mm))


def _places(room: Room, layer: Layer, out: LayerOut) -> dict[str, Held]:
    """Brackets that stand on a stud of that wall, held from the nearer end of the rod instead."""
    landed = {bracket.ref[4]: bracket.x_mm for bracket in out.brackets}
    places: dict[str, Held] = {}
    for bracket in layer.brackets:
        # A rod that its packet holds without brackets sets none out.
        if bracket.place.hold != "from-wall-left" or bracket.id not in landed:
            continue
        from_left = landed[bracket.id] - out.support.left_mm
        from_right = out.support.right_mm - landed[bracket.id]
        if from_left <= from_right:
            places[bracket.id] = Held("from-left-end", _length(room, from_left))
        else:
            places[bracket.id] = Held("from-right-end", _length(room, from_right))
    return places
