"""What one treatment hands to another: the things held, part by part, and never what was measured on the thing itself."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Literal, get_args

from msgspec.structs import replace

from elevation.room.corners import AROUND, goes_round
from elevation.room.edits import changed, new_id
from elevation.room.model import Bracket, Built, Held, Layer, Panel, Treatment

Part = Literal["height", "reach", "hem", "heading", "fabric", "rod", "ends", "brackets", "panels"]
"""What can be handed on: the rod's height; how far it reaches; the hem; heading with its drop; cloth; the rod itself
(section, diameter, projection, stock); what ends it; brackets and their places; panels."""

PARTS: tuple[Part, ...] = get_args(Part)


def as_planned(layer: Layer) -> Layer:
    """A layer without what was measured on the very thing: heights as hung, lengths of the panels in hand."""
    return changed(
        layer,
        brackets=tuple(changed(bracket, height=None) for bracket in layer.brackets),
        panels=tuple(changed(panel, measured_length=None, hung_length=None) for panel in layer.panels),
        built=Built(),
    )


def copied(treatment: Treatment, openings: tuple[str, ...], layers: Iterable[Layer]) -> Treatment:
    """A treatment like ``treatment`` for other openings; no id yet, no name or offer of its own, round no corner."""
    made = tuple(as_planned(layer) for layer in layers)
    return replace(treatment, id="", name="", openings=openings, layers=made, continues=None, offer=None)


# Where a rod is fixed decides what may hold it: these go together where that differs.
_FIXED: frozenset[Part] = frozenset({"height", "reach", "rod", "brackets"})


def carry(target: Treatment, source: Treatment, layers: tuple[Layer, ...], parts: Iterable[Part]) -> Treatment:
    """``target`` with ``parts`` of the layers of another treatment, front layer to front layer.

    ``layers`` are those of ``source``, made ready to be handed on. Where the two are fixed to something else (wall,
    ceiling, reveal), rod and brackets are carried together with that, since one cannot be held like the other.
    A layer that it does not have is added where panels are handed on; layers that only it has stay. Ids stay, so that
    what refers to them still holds.
    """
    wanted = frozenset(parts)
    mount = target.mount
    if source.mount != mount and wanted & _FIXED:
        if source.mount in ("reveal", "sash") and len(target.openings) > 1:
            # What hangs inside one opening cannot hang before several: their rod stays as it is.
            wanted = wanted - _FIXED
        else:
            wanted, mount = wanted | _FIXED, source.mount
    made = [_layer(mine, as_planned(theirs), wanted) for mine, theirs in zip(target.layers, layers, strict=False)]
    rest = target.layers[len(made) :]
    if mount != target.mount and mount in ("reveal", "sash"):
        # Between jambs an end is held as those of the rod that brought it there.
        rest = tuple(_layer(mine, as_planned(layers[-1]), frozenset({"reach"})) for mine in rest)
    made.extend(rest)
    if "panels" in wanted:
        for theirs in layers[len(target.layers) :]:
            key = theirs.id if all(layer.id != theirs.id for layer in made) else new_id([one.id for one in made], "l")
            made.append(replace(as_planned(theirs), id=key))
    # Only a rod before the wall goes on round a corner.
    continues = target.continues if mount in ("wall", "ceiling") else None
    whole = changed(target, layers=tuple(made), mount=mount, continues=continues)
    if not goes_round(whole):
        return whole
    return changed(whole, layers=tuple(changed(one, rod=changed(one.rod, tilt="level")) for one in whole.layers))


def _layer(mine: Layer, theirs: Layer, parts: frozenset[Part]) -> Layer:
    rod = mine.rod
    if "height" in parts:
        rod = changed(rod, height=theirs.rod.height, tilt=theirs.rod.tilt)
    if "reach" in parts:
        kind = (theirs if "rod" in parts else mine).rod.kind
        rod = changed(rod, left=_end(rod.left, theirs.rod.left, kind), right=_end(rod.right, theirs.rod.right, kind))
    if "rod" in parts:
        other = theirs.rod
        rod = changed(
            rod,
            kind=other.kind,
            packet=other.packet,
            bend=other.bend,
            overlap=other.overlap,
            section=other.section,
            diameter=other.diameter,
            projection=other.projection,
            stock=other.stock,
        )
    if "ends" in parts:
        other = theirs.rod
        rod = changed(rod, ends=other.ends, left_ends=other.left_ends, right_ends=other.right_ends)
        rod = changed(rod, left_fixing=other.left_fixing, right_fixing=other.right_fixing)
    layer = changed(mine, rod=rod)
    if (rod.height, rod.tilt) != (mine.rod.height, mine.rod.tilt):
        # A rod that is held at another height has to be hung again.
        layer = changed(layer, built=Built())
    if "hem" in parts:
        layer = changed(layer, hem=theirs.hem)
    if "heading" in parts:
        layer = changed(layer, heading=theirs.heading, drop=theirs.drop, ring=theirs.ring)
    if "fabric" in parts:
        layer = changed(layer, fabric=theirs.fabric, making=theirs.making)
    if "brackets" in parts:
        layer = changed(_with_brackets(layer, theirs.brackets), board=theirs.board)
    if "panels" in parts:
        layer = _with_panels(layer, theirs)
    return layer


def _end(mine: Held, theirs: Held, kind: str) -> Held:
    """The end that is handed on; one that goes on round a corner stays unless the rod comes to stand between jambs."""
    stays = mine.hold == AROUND and theirs.hold != "inside-opening" and kind != "tension-rod"
    return mine if stays else theirs


def _with_brackets(layer: Layer, brackets: tuple[Bracket, ...]) -> Layer:
    ids = [*(bracket.id for bracket in layer.brackets), *(panel.id for panel in layer.panels)]
    made: list[Bracket] = []
    for index, bracket in enumerate(brackets):
        if index < len(layer.brackets):
            old = layer.brackets[index]
            # The same bracket at the same place is still as it was hung.
            height = old.height if old.place == bracket.place and old.kit == bracket.kit else None
            made.append(changed(old, place=bracket.place, kit=bracket.kit, rings_pass=bracket.rings_pass, height=height))
        else:
            key = new_id(ids, "b")
            ids.append(key)
            made.append(replace(bracket, id=key))
    kept = {bracket.id for bracket in made}
    gone = [bracket.id for bracket in layer.brackets if bracket.id not in kept]
    parks = {f"{side}-of:{key}": side for key in gone for side in ("left", "right")}
    panels = tuple(changed(panel, parks=parks.get(panel.parks, panel.parks)) for panel in layer.panels)
    return changed(layer, brackets=tuple(made), panels=panels)


def _with_panels(layer: Layer, theirs: Layer) -> Layer:
    # A bracket of theirs is the one of the same order here.
    same = {their.id: mine.id for their, mine in zip(theirs.brackets, layer.brackets, strict=False)}
    ids = [*(bracket.id for bracket in layer.brackets), *(panel.id for panel in layer.panels)]
    made: list[Panel] = []
    for index, panel in enumerate(theirs.panels):
        parks = _parks(panel.parks, same)
        if index < len(layer.panels):
            old = layer.panels[index]
            is_same = (old.flat_width, old.count, old.label_length) == (panel.flat_width, panel.count, panel.label_length)
            measured = old.measured_length if is_same else None
            hung = old.hung_length if is_same else None
            made.append(replace(panel, id=old.id, parks=parks, measured_length=measured, hung_length=hung, drawn=old.drawn))
        else:
            key = new_id(ids, "p")
            ids.append(key)
            made.append(replace(panel, id=key, parks=parks))
    return changed(layer, panels=tuple(made))


def _parks(parks: str, same: Mapping[str, str]) -> str:
    side, mark, bracket = parks.partition("-of:")
    if not mark:
        return parks
    return f"{side}-of:{same[bracket]}" if bracket in same else side


def with_rod(layer: Layer, left: Held, right: Held, places: Mapping[str, Held]) -> Layer:
    """A layer whose rod ends, and those brackets that ``places`` names, are held another way."""
    brackets = tuple(changed(bracket, place=places.get(bracket.id, bracket.place)) for bracket in layer.brackets)
    return changed(layer, rod=changed(layer.rod, left=left, right=right), brackets=brackets)
