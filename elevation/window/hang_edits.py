"""Edits of a layer that are more than setting one fact."""

from __future__ import annotations

import re
from typing import Any

from msgspec.structs import replace

from elevation.errors import BadInput
from elevation.room.edits import edit_at, put_bracket, put_panel, remove
from elevation.room.find import layer_of
from elevation.room.model import Bracket, Held, Layer, Panel, Ref, Room
from elevation.units import Length

_HEX = re.compile(r"#?([0-9a-fA-F]{6})")


def rename_colour(ref: Ref, room: Room, text: Any) -> Room:
    """A room in which the cloth of the layer at ``ref`` has the colour written in ``text`` (six hex digits).

    Raises
    ------
    BadInput
        It is no colour.
    """
    found = _HEX.fullmatch(str(text).strip())
    if found is None:
        raise BadInput("", "", f'"{text}" is not a colour', "write for example #b9704a")
    colour = f"#{found[1].lower()}"

    def dye(layer: Layer) -> Layer:
        return replace(layer, fabric=replace(layer.fabric, colour=colour))

    return edit_at(room, ref, dye)


def add_bracket(room: Room, ref: Ref) -> Room:
    """One bracket more, in the middle of the rod, of the kit that the first one has."""
    layer = layer_of(room, ref)
    zero = Length(0.0, "0 in" if room.unit == "in" else "0 mm")
    kit = layer.brackets[0].kit if layer.brackets else Bracket.__struct_defaults__[0]
    return put_bracket(room, ref, Bracket("", Held("from-centre", zero), kit))[0]


def add_panel(room: Room, ref: Ref) -> Room:
    """One panel more, like the last one, parked at the other side."""
    layer = layer_of(room, ref)
    if layer.panels:
        last = layer.panels[-1]
        panel = replace(last, id="", parks="left" if last.parks == "right" else "right")
    else:
        width = Length(1371.6, "54 in") if room.unit == "in" else Length(1400.0, "1400 mm")
        panel = Panel("", width)
    return put_panel(room, ref, panel)[0]


def remove_last(room: Room, ref: Ref, kind: str) -> Room:
    """Without its last panel, or its last bracket that is not at an end."""
    layer = layer_of(room, ref)
    if kind == "panels":
        return remove(room, (*ref, layer.panels[-1].id)) if layer.panels else room
    inner = [bracket for bracket in layer.brackets if bracket.place.hold not in ("from-left-end", "from-right-end")]
    last = inner[-1] if inner else (layer.brackets[-1] if len(layer.brackets) > 2 else None)
    return room if last is None else remove(room, (*ref, last.id))
