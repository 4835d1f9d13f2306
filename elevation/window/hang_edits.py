"""Edits of a layer that are more than setting one fact."""

from __future__ import annotations

import re
from typing import Any

from msgspec.structs import replace

from elevation.errors import BadInput, said
from elevation.room.edits import edit_at, put_bracket, put_panel, put_scheme, put_treatment, remove, replace_at
from elevation.room.find import layer_of, treatment_of, wall_of
from elevation.room.first import FirstFacts, first_room
from elevation.room.model import Bracket, Held, Layer, Panel, Ref, Room, Scheme, Treatment
from elevation.setting_out.model import SetOut
from elevation.trade.model import Trade
from elevation.units import Length, length_of

_HEX = re.compile(r"#?([0-9a-fA-F]{6})")


def rename_colour(ref: Ref, key: str, room: Room, text: Any) -> Room:
    """A room in which cloth (``colour``) or pattern (``ink``) of a layer has the colour in ``text`` (six hex digits).

    Raises
    ------
    BadInput
        It is no colour.
    """
    found = _HEX.fullmatch(str(text).strip())
    if found is None:
        raise BadInput("", "", said('"{text}" is not a colour', text=text), said("write for example #b9704a"))
    colour = f"#{found[1].lower()}"

    def dye(layer: Layer) -> Layer:
        return replace(layer, fabric=replace(layer.fabric, **{key: colour}))

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


def cover(ref: Ref, opening_id: str, room: Room, wanted: Any) -> Room:
    """A room in which the treatment at ``ref`` covers an opening, or leaves it bare.

    Raises
    ------
    BadInput
        It would cover nothing.
    """
    order = [opening.id for opening in wall_of(room, ref[0]).openings]
    now = set(treatment_of(room, ref).openings)
    now = now | {opening_id} if wanted else now - {opening_id}
    if not now:
        raise BadInput("", "", said("a treatment covers at least one opening"), said("take the treatment away instead"))
    return replace_at(room, ref, openings=tuple(key for key in order if key in now))


def is_covered(ref: Ref, opening_id: str, room: Room) -> bool:
    """Whether the treatment at ``ref`` covers an opening."""
    return opening_id in treatment_of(room, ref).openings


def add_treatment(
    room: Room, wall_id: str, scheme_id: str | None, set_out: SetOut, trade: Trade, wanted: str | None
) -> tuple[Room, Ref]:
    """Dress one opening more: the one wanted, else the first that is bare, as a new room would be dressed.

    Raises
    ------
    BadInput
        There is no bare opening, or none can be proposed from what is measured.
    """
    if scheme_id is None:
        room, where = put_scheme(room, wall_id, Scheme(""))
    else:
        where = (wall_id, scheme_id)
    covered = {opening.ref for treatment in set_out.treatments for opening in treatment.openings}
    bare = [opening for opening in set_out.openings if opening.ref not in covered]
    chosen = next((opening for opening in bare if opening.ref[-1] == wanted), bare[0] if bare else None)
    if chosen is None:
        raise BadInput("", "", said("every opening of this wall is dressed"), said("add an opening first"))

    def length(mm: float) -> Length:
        return length_of(mm, room.unit, room.graduation_mm)

    lowest = min((height for _, height in set_out.ceiling.points), default=chosen.casing_top_mm + 300.0)
    facts = FirstFacts(
        width=length(set_out.width_mm),
        ceiling=length(max(lowest, chosen.top_mm + 1.0)),
        opening_width=length(chosen.right_mm - chosen.left_mm),
        opening_height=length(chosen.top_mm - chosen.bottom_mm),
        sill=length(max(chosen.bottom_mm, 0.0)),
        unit=room.unit,
        left=length(chosen.left_mm),
        casing=length(chosen.casing_mm),
    )
    layers = first_room(facts, trade).walls[0].schemes[0].treatments[0].layers
    return put_treatment(room, where, Treatment("", (chosen.ref[-1],), layers))
