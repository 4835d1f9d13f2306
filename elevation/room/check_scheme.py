"""What a scheme with its treatments, layers, rods, brackets and panels may be."""

from __future__ import annotations

import re

from elevation.errors import said
from elevation.room.bounds import DEEP_MM, FAR_MM, TALL_MM, Place, check_count, check_length
from elevation.room.check_corners import check_legs
from elevation.room.check_dress import check_blind, check_pelmet, check_tie
from elevation.room.check_offer import check_offer
from elevation.room.check_wall import LOW_MM
from elevation.room.model import Bracket, Built, Held, Hem, Layer, Panel, Rod, Scheme, Treatment, Wall
from elevation.room.nearest import advice, quoted

HEIGHT_HOLDS = (
    "above-head", "above-casing", "below-ceiling", "above-floor", "bracket-drop", "below-head", "above-sill",
    "share-of-opening",
)  # fmt: skip
"""What a rod's height may be held by."""

END_HOLDS = ("beyond-opening", "beyond-casing", "from-corner", "around-corner", "rod-length", "inside-opening")
"""What a rod's end may be held by."""

BRACKET_HOLDS = ("from-left-end", "from-right-end", "from-centre", "from-wall-left")
"""What a bracket may be held by."""

_MOST_DROP_MM = 500.0
"""No ring or hook is longer."""

_MOST_KG = 200.0
"""No packet of a tension rod says more."""

_MOST_BEND_MM = 5000.0
"""A wider bend is a bow window, and no corner."""

_MOST_PANEL_KG = 100.0
"""A heavier piece of cloth is a stage curtain."""

_MOST_GRAMS = 3000.0
"""No cloth that hangs at a window weighs more a square metre."""

_MOST_SHRINKS = 0.3
"""No cloth sold for curtains loses more of its length."""

_MOST_FULLNESS = 6.0
"""No heading gathers more."""

MOST_FIXING_KG = 2000.0
"""No packet of a fixing for a rod says more."""

_COLOUR = re.compile(r"#[0-9a-fA-F]{6}\Z")
_PARKS = re.compile(r"(left|right)-of:(.+)\Z")


def check_scheme(scheme: Scheme, wall: Wall, place: Place) -> None:
    """Refuse a scheme that cannot be on this wall.

    Raises
    ------
    BadInput
        With the place of the first fault.
    """
    check_length(scheme.clear_glass_to, place.at("clear_glass_to"), 0, FAR_MM)
    for index, treatment in enumerate(scheme.treatments):
        _check_treatment(treatment, wall, place.item("treatments", index))


def _check_treatment(treatment: Treatment, wall: Wall, place: Place) -> None:
    known = tuple(opening.id for opening in wall.openings)
    if not treatment.openings:
        raise place.at("openings").bad(said("is empty"), said("name the openings that it covers"))
    for index, key in enumerate(treatment.openings):
        if key not in known:
            raise place.item("openings", index).bad(
                said("is {key}, but no opening has that id", key=quoted(key)), advice(key, known)
            )
        if key in treatment.openings[:index]:
            raise place.item("openings", index).bad(
                said("is {key} a second time", key=quoted(key)), said("name each opening once")
            )
    if treatment.mount in ("reveal", "sash") and len(treatment.openings) > 1:
        raise place.at("openings").bad(
            said("are {count}, but a rod in a reveal or on a sash has one", count=len(treatment.openings)),
            said("make a treatment for each opening"),
        )
    check_legs(treatment, place)
    if not treatment.layers:
        raise place.at("layers").bad(said("is empty"), said("a treatment has at least one layer"))
    if treatment.pelmet is not None:
        check_pelmet(treatment.pelmet, place.at("pelmet"))
    if treatment.blind is not None:
        check_blind(treatment.blind, place.at("blind"))
    if treatment.offer is not None:
        check_offer(treatment.offer, place.at("offer"))
    for index, layer in enumerate(treatment.layers):
        _check_layer(layer, place.item("layers", index))


def _check_layer(layer: Layer, place: Place) -> None:
    _check_rod(layer.rod, place.at("rod"))
    for index, bracket in enumerate(layer.brackets):
        _check_bracket(bracket, place.item("brackets", index))
    for key in ("colour", "ink"):
        colour = getattr(layer.fabric, key)
        if not _COLOUR.match(colour):
            raise (
                place.at("fabric")
                .at(key)
                .bad(said("is {value}", value=quoted(colour)), said('write for example "#b9704a"'))
            )
    grams = layer.fabric.grams
    if grams is not None and not 0 < grams <= _MOST_GRAMS:
        raise (
            place.at("fabric")
            .at("grams")
            .bad(said("is {grams} g", grams=grams), said("it must be more than 0 and at most {most}", most=_MOST_GRAMS))
        )
    _check_making(layer, place)
    check_length(layer.ring, place.at("ring"), 3, 300)
    if layer.board is not None:
        for key, low_mm, high_mm in (("left", 0, FAR_MM), ("right", 0, FAR_MM), ("height", 20, 600), ("thickness", 5, 100)):
            check_length(getattr(layer.board, key), place.at("board").at(key), low_mm, high_mm)
    if layer.tie is not None:
        check_tie(layer.tie, place.at("tie"))
    check_length(layer.drop, place.at("drop"), 0, _MOST_DROP_MM)
    _check_hem(layer.hem, place.at("hem"))
    for key in Built.__struct_fields__:
        far_mm = FAR_MM if key == "bracket_to_bracket" else TALL_MM
        check_length(getattr(layer.built, key), place.at("built").at(key), 0, far_mm, above=True)
    for index, panel in enumerate(layer.panels):
        _check_panel(panel, layer, place.item("panels", index))


def _check_making(layer: Layer, place: Place) -> None:
    fabric, there = layer.fabric, place.at("fabric")
    check_length(fabric.width, there.at("width"), 50, 6000)
    check_length(fabric.repeat, there.at("repeat"), 5, 3000)
    check_length(fabric.repeat_across, there.at("repeat_across"), 5, 3000)
    if fabric.shrinks is not None and not 0 <= fabric.shrinks <= _MOST_SHRINKS:
        raise there.at("shrinks").bad(
            said("is {share}", share=fabric.shrinks),
            said("it must be from 0 to {most}, for example 0.03 for 3 %", most=_MOST_SHRINKS),
        )
    making, here = layer.making, place.at("making")
    if making.fullness is not None and not 1 <= making.fullness <= _MOST_FULLNESS:
        raise here.at("fullness").bad(
            said("is {share}", share=making.fullness),
            said("it must be from 1 to {most}, for example 2 for twice", most=_MOST_FULLNESS),
        )
    for key in ("heading", "hem"):
        check_length(getattr(making, key), here.at(key), 0, 1000)
    check_length(making.settles, here.at("settles"), 0, 300)


def _check_hold(held: Held, holds: tuple[str, ...], place: Place) -> None:
    if held.hold not in holds:
        raise place.at("hold").bad(
            said("is {value}, which does not belong here", value=quoted(held.hold)), advice(held.hold, holds)
        )
    check_length(held.at, place.at("at"), -FAR_MM, FAR_MM)
    if held.hold == "share-of-opening":
        if not 0 < held.share <= 1:
            raise place.at("share").bad(
                said("is {share}", share=held.share), said("it must be more than 0 and at most 1, for example 0.5")
            )
    elif held.share != 0:
        raise place.at("share").bad(said('stands beside "{hold}"', hold=held.hold), said('only "share-of-opening" has one'))
    if held.hold == "bracket-drop":
        check_length(held.at, place.at("at"), 0, TALL_MM)
    if held.hold == "rod-length":
        check_length(held.at, place.at("at"), 0, FAR_MM, above=True)


def _check_rod(rod: Rod, place: Place) -> None:
    _check_hold(rod.height, HEIGHT_HOLDS, place.at("height"))
    _check_hold(rod.left, END_HOLDS, place.at("left"))
    _check_hold(rod.right, END_HOLDS, place.at("right"))
    if rod.left.hold == rod.right.hold == "rod-length":
        raise (
            place.at("right")
            .at("hold")
            .bad(
                said('is "rod-length" like the left one'),
                said("the other end must say where the rod is: beyond-opening, for example"),
            )
        )
    check_length(rod.diameter, place.at("diameter"), 1, 300)
    check_length(rod.wall, place.at("wall"), 0, 150)
    if rod.wall is not None and rod.diameter is not None and 2 * rod.wall.mm > rod.diameter.mm:
        raise place.at("wall").bad(
            said("is {wall}, more than half the diameter", wall=rod.wall.text),
            said("write 0 for a solid rod, or the wall of its tube"),
        )
    check_length(rod.projection, place.at("projection"), 0, DEEP_MM, above=True)
    check_length(rod.stock, place.at("stock"), 0, FAR_MM, above=True)
    check_length(rod.overlap, place.at("overlap"), 0, 1000)
    check_length(rod.bend, place.at("bend"), 0, _MOST_BEND_MM, above=True)
    packet, there = rod.packet, place.at("packet")
    for key in ("least", "most", "spacing", "stack", "least_bend"):
        check_length(getattr(packet, key), there.at(key), 0, FAR_MM, above=True)
    check_length(packet.arm, there.at("arm"), 0, 1000)
    if packet.least is not None and packet.most is not None and packet.most.mm < packet.least.mm:
        raise there.at("most").bad(
            said("is {most}, less than the least", most=packet.most.text), said("write the range as the packet does")
        )
    if packet.holds_kg is not None and not 0 < packet.holds_kg <= _MOST_KG:
        raise there.at("holds_kg").bad(
            said("is {holds_kg} kg", holds_kg=packet.holds_kg),
            said("it must be more than 0 and at most {most}", most=_MOST_KG),
        )


def _check_bracket(bracket: Bracket, place: Place) -> None:
    _check_hold(bracket.place, BRACKET_HOLDS, place.at("place"))
    check_length(bracket.height, place.at("height"), -LOW_MM, TALL_MM)
    for key in ("pull_kg", "shear_kg"):
        kg = getattr(bracket, key)
        if kg is not None and not 0 < kg <= MOST_FIXING_KG:
            raise place.at(key).bad(
                said("is {holds_kg} kg", holds_kg=kg),
                said("it must be more than 0 and at most {most}", most=MOST_FIXING_KG),
            )


def _check_hem(hem: Hem, place: Place) -> None:
    check_length(hem.at, place.at("at"), 0, TALL_MM, above=hem.target == "length")
    if hem.target == "length" and hem.at is None:
        raise place.bad(said('is a "length" but has no "at"'), said("add the finished length"))


def _check_panel(panel: Panel, layer: Layer, place: Place) -> None:
    check_length(panel.flat_width, place.at("flat_width"), 0, FAR_MM, above=True)
    check_count(panel.count, place.at("count"), 1, 100)
    for key in ("label_length", "measured_length", "hung_length", "stack"):
        check_length(getattr(panel, key), place.at(key), 0, FAR_MM, above=True)
    if panel.weight_kg is not None and not 0 < panel.weight_kg <= _MOST_PANEL_KG:
        raise place.at("weight_kg").bad(
            said("is {weight_kg} kg", weight_kg=panel.weight_kg),
            said("it must be more than 0 and at most {most}", most=_MOST_PANEL_KG),
        )
    check_length(panel.drawn, place.at("drawn"), 0, FAR_MM)
    ids = tuple(bracket.id for bracket in layer.brackets)
    places = ("left", "right", *(f"{side}-of:{key}" for key in ids for side in ("left", "right")))
    if panel.parks in ("left", "right"):
        return
    found = _PARKS.match(panel.parks)
    if found is None:
        raise place.at("parks").bad(
            said("is {value}, which is no place to park", value=quoted(panel.parks)), advice(panel.parks, places)
        )
    if found[2] not in ids:
        raise place.at("parks").bad(
            said(
                "is {value}, but no bracket of this layer has the id {bracket}",
                value=quoted(panel.parks),
                bracket=quoted(found[2]),
            ),
            advice(panel.parks, places),
        )
