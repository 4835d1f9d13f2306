"""Hanging a layer on a rod, a track or a tension rod, with what that needs and nothing that it cannot use."""

from __future__ import annotations

from math import ceil
from typing import Literal

from msgspec.structs import replace

from elevation.errors import BadInput, said
from elevation.room.edits import edit_at
from elevation.room.find import treatment_of
from elevation.room.model import Bracket, Held, Layer, Ref, Rod, Room
from elevation.room.mounting import end_of, socket_gap
from elevation.trade.model import Trade
from elevation.units import Length, length_of

Support = Literal["rod", "track", "tension-rod"]

# Sections that are proposed in inches and in mm.
_SECTIONS: dict[Support, tuple[str, str]] = {
    "rod": ("conduit-3/4", "tube-20"),
    "track": ("track-slim", "track-slim"),
    "tension-rod": ("tension-5/8", "tension-16"),
}


def hung_on(room: Room, ref: Ref, kind: Support, length_mm: float, trade: Trade) -> Room:
    """A room in which the layer at ``ref`` hangs on a rod, a track or a tension rod.

    A track gets fixings as close as its usual spacing asks for, and a heading that runs on glides; a tension rod loses
    brackets and ends and reaches from jamb to jamb.

    Parameters
    ----------
    room : Room
    ref : Ref
        The layer, or anything in it.
    kind : str
    length_mm : float
        How long it is now: a track's fixings are spread over it.
    trade : Trade

    Raises
    ------
    BadInput
        A tension rod presses between the jambs of an opening, and this treatment hangs before the wall.
    """
    treatment = treatment_of(room, ref[:3])
    if kind == "tension-rod" and treatment.mount != "reveal":
        raise BadInput(
            treatment.name or treatment.id,
            "",
            said("hangs before the wall, and a tension rod presses between two jambs"),
            said("hang the treatment in the reveal first"),
        )

    def hang(layer: Layer) -> Layer:
        if layer.rod.kind == kind:
            return layer
        section = _SECTIONS[kind][0 if room.unit == "in" else 1]
        rod = replace(layer.rod, kind=kind, section=section, diameter=None, stock=None)
        if kind == "track":
            return _on_track(layer, rod, room, length_mm, treatment.mount, trade)
        if kind == "tension-rod":
            edge = Held("inside-opening", length_of(0.0, room.unit, room.graduation_mm))
            rod = replace(rod, left=edge, right=edge, left_ends=None, right_ends=None, overlap=None)
            return replace(layer, rod=rod, brackets=())
        if treatment.mount == "reveal":
            gap, ends = socket_gap(room, trade)
            edge = Held("inside-opening", gap)
            rod = replace(rod, left=edge, right=edge, ends=ends, left_ends=None, right_ends=None, overlap=None)
            return replace(layer, rod=rod, brackets=())
        kits = tuple(replace(bracket, kit=_rod_kit(bracket, trade)) for bracket in layer.brackets)
        return replace(layer, rod=replace(rod, overlap=None), brackets=kits)

    return edit_at(room, ref[:4], hang)


def is_clip(kit: str) -> bool:
    """Whether a kit of the bracket table clips a track; no rod hangs in it, and no track in any other."""
    return kit.startswith("track")


def _rod_kit(bracket: Bracket, trade: Trade) -> str:
    """A kit for rods in place of a track's clip."""
    if not is_clip(bracket.kit):
        return bracket.kit
    mount = trade.brackets[bracket.kit].mount
    return next(row.id for row in trade.brackets.values() if row.mount == mount and not is_clip(row.id))


def _on_track(layer: Layer, rod: Rod, room: Room, length_mm: float, mount: str, trade: Trade) -> Layer:
    heading = layer.heading
    if trade.headings[heading].carries == "sleeve":
        heading = next(row.id for row in trade.headings.values() if row.stack_model == "pleated-on-cord")
    panels = tuple(replace(panel, parks=end_of(panel)) for panel in layer.panels)
    rod = replace(rod, ends="cap", left_ends=None, right_ends=None)
    brackets = _fixings(rod, room, length_mm, mount, trade)
    return replace(layer, rod=rod, brackets=brackets, heading=heading, panels=panels)


def spread_fixings(room: Room, ref: Ref, length_mm: float, trade: Trade) -> Room:
    """A room in which the fixings of the track at ``ref`` (a layer) stand evenly, as close as its sheet asks for."""
    mount = treatment_of(room, ref[:3]).mount

    def spread(layer: Layer) -> Layer:
        panels = tuple(replace(panel, parks=end_of(panel)) for panel in layer.panels)
        return replace(layer, brackets=_fixings(layer.rod, room, length_mm, mount, trade), panels=panels)

    return edit_at(room, ref[:4], spread)


def _fixings(rod: Rod, room: Room, length_mm: float, mount: str, trade: Trade) -> tuple[Bracket, ...]:
    inset = _marked(room, trade.limits["track-end"].value / 2)
    own = rod.packet.spacing
    spacing_mm = own.mm if own else room.limits["track-spacing"].mm if "track-spacing" in room.limits else None
    spacing_mm = trade.limits["track-spacing"].value if spacing_mm is None else spacing_mm
    kit = "track-clip" if mount == "wall" else "track-clip-ceiling"
    # Each place goes to its nearest mark, so two neighbours may come out a mark farther apart.
    spread_mm, most_mm = length_mm - 2 * inset.mm, max(spacing_mm - room.graduation_mm, room.graduation_mm)
    bays = max(1, ceil(spread_mm / most_mm - 1e-9))
    places = [Held("from-left-end", inset)]
    places += [Held("from-centre", _marked(room, spread_mm * (bay / bays - 0.5))) for bay in range(1, bays)]
    places.append(Held("from-right-end", inset))
    return tuple(Bracket(f"b{number}", place, kit) for number, place in enumerate(places, 1))


def _marked(room: Room, mm: float) -> Length:
    return length_of(mm, room.unit, room.graduation_mm)
