"""Day and evening on the canvas: made only while one of them is shown."""

from __future__ import annotations

from elevation.room.find import scheme_of
from elevation.room.model import Room
from elevation.setting_out.model import SetOut
from elevation.sheet.records import Group
from elevation.trade.model import Trade
from elevation.window.shown import Shown
from elevation.words import Style


def fabrics_of(room: Room, set_out: SetOut) -> tuple[object, ...]:
    """What the light on a wall depends on beside where things landed: the cloth of every layer."""
    scheme = None if set_out.scheme is None else scheme_of(room, set_out.wall, set_out.scheme)
    treatments = () if scheme is None else scheme.treatments
    return tuple(layer.fabric for treatment in treatments for layer in treatment.layers)


def lit_groups(room: Room, set_out: SetOut, trade: Trade, shown: Shown, style: Style) -> tuple[Group, ...]:
    """The tints of a wall; none where it is shown as drawn."""
    if shown.light == "drawn":
        return ()
    # Loaded when it is first shown.
    from elevation.sheet.draw_light import light_group

    return (light_group(room, set_out, trade, shown.light, shown.cloth, style),)
