"""Where the rods of a room's other walls stand, over the datum of one of them.

Every wall has its own datum: the finished floor at its left end. Where a wall names its neighbour the floor goes round
the corner, and the difference is known; other walls are taken to begin at the same height.
"""

from __future__ import annotations

from msgspec import Struct

from elevation.room.corners import datum_steps
from elevation.room.model import Ref, Room, Wall
from elevation.setting_out.model import TreatmentOut
from elevation.setting_out.whole import set_out
from elevation.trade.model import Trade

__all__ = ["RodElsewhere", "datum_steps", "rods_elsewhere"]


class RodElsewhere(Struct, frozen=True, gc=False):
    """A treatment of another wall, that wall's name, and how high its front rod stands over *this* wall's datum."""

    treatment: TreatmentOut
    wall_name: str
    height_mm: float


# What was found for a wall last, and what it was found from; compared with ``is``.
_kept: dict[Ref, tuple[tuple[object, ...], tuple[TreatmentOut, ...]]] = {}
_MOST = 256


def rods_elsewhere(room: Room, wall_id: str, scheme_id: str | None, trade: Trade) -> tuple[RodElsewhere, ...]:
    """The front rods of the treatments on all other walls, wall by wall.

    Parameters
    ----------
    room : Room
    wall_id, scheme_id : str
        The wall that is looked at and its scheme. On another wall the scheme of the same name counts, else its first.
    trade : Trade

    Returns
    -------
    tuple of RodElsewhere
        Heights in mm over the datum of ``wall_id``.
    """
    here = next(wall for wall in room.walls if wall.id == wall_id)
    name = next((scheme.name for scheme in here.schemes if scheme.id == scheme_id), "")
    steps = datum_steps(room, wall_id)
    found: list[RodElsewhere] = []
    for number, wall in enumerate(room.walls, 1):
        if wall is here:
            continue
        called, step_mm = wall.name or str(number), steps.get(wall.id, 0.0)
        found.extend(
            RodElsewhere(treatment, called, treatment.layers[0].support.height_mm + step_mm)
            for treatment in _hung(room, wall, name, trade)
        )
    return tuple(found)


def _hung(room: Room, wall: Wall, scheme_name: str, trade: Trade) -> tuple[TreatmentOut, ...]:
    """The treatments of a wall whose rods count: on wall brackets, level, with a layer."""
    scheme = next((one for one in wall.schemes if one.name == scheme_name), wall.schemes[0] if wall.schemes else None)
    if scheme is None:
        return ()
    facts = (wall, scheme, room.limits, room.graduation, room.unit, room.floor_to_come, trade)
    kept = _kept.get((wall.id,))
    if kept is not None and all(was is now for was, now in zip(kept[0], facts, strict=True)):
        return kept[1]
    out = set_out(room, wall.id, scheme.id, trade)
    hung = tuple(one for one in out.treatments if one.layers and one.mount == "wall" and not one.layers[0].support.tilt)
    if len(_kept) >= _MOST:
        _kept.clear()
    _kept[(wall.id,)] = (facts, hung)
    return hung
