"""All rods of a room set to one height, in one edit."""

from __future__ import annotations

from elevation.room.edits import replace_at, replace_rod
from elevation.room.find import layer_of, treatment_of
from elevation.room.model import Held, Ref, Room
from elevation.setting_out.model import LayerOut
from elevation.setting_out.room_rods import datum_steps, rods_elsewhere
from elevation.setting_out.whole import set_out
from elevation.trade.model import Trade
from elevation.units import length_of, quantise
from elevation.units.tolerance import TOUCH_MM

_DOWN = ("below-ceiling", "below-head")


def level_rods(room: Room, ref: Ref, trade: Trade) -> Room:
    """A room in which every front rod stands as high as the one at ``ref``, and that wishes it to stay so.

    What each rod holds (above the casing, below the ceiling ...) it goes on holding, with the figure at the nearest
    graduation that brings it there.

    Parameters
    ----------
    room : Room
    ref : Ref
        The treatment whose front rod gives the height, or anything in it.
    trade : Trade

    Raises
    ------
    NoSuch
        The treatment is not there.
    """
    treatment_of(room, ref)
    here = set_out(room, ref[0], ref[1], trade)
    own = next(one for one in here.treatments if one.ref == ref[:3])
    wanted_mm = own.layers[0].support.height_mm
    made = replace_at(room, (), one_height=True)
    steps = datum_steps(room, ref[0])
    for treatment in here.treatments:
        if treatment.ref != own.ref and treatment.mount == "wall" and not treatment.layers[0].support.tilt:
            made = _raised(made, treatment.layers[0], wanted_mm)
    for rod in rods_elsewhere(room, ref[0], ref[1], trade):
        made = _raised(made, rod.treatment.layers[0], wanted_mm - steps.get(rod.treatment.ref[0], 0.0))
    return made


def _raised(room: Room, landed: LayerOut, wanted_mm: float) -> Room:
    held = layer_of(room, landed.ref).rod.height
    by_mm = wanted_mm - landed.support.plan_mm
    at_mm = quantise(held.at.mm + (-by_mm if held.hold in _DOWN else by_mm), room.graduation_mm)
    if abs(at_mm - held.at.mm) <= TOUCH_MM:
        return room
    return replace_rod(room, landed.ref, height=Held(held.hold, length_of(at_mm, room.unit, room.graduation_mm)))
