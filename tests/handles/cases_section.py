"""Projections: the folds' depth is the set-out's own (tested against elliptic integrals), the rest is worked by hand."""

from __future__ import annotations

import math

from msgspec.structs import replace

from elevation.room.edits import replace_at
from elevation.room.model import Obstacle, Room, Stool
from elevation.setting_out.whole import set_out_afresh
from elevation.trade.tables import load_trade
from tests.handles.case import Case, fact
from tests.handles.rooms import BACK, INCH, LAYER, LAYER_FRONT, WINDOW, held, inch, room, with_rod

PROJECTION = fact("rod.projection", *LAYER)
_TRADE = load_trade()


def half_fold_in(start: Room, index: int = 0) -> float:
    """Half the depth of a layer's folds, inches."""
    landed = set_out_afresh(start, "a", "s", _TRADE).treatments[0].layers[index]
    return max((panel.fold_depth_mm for panel in landed.panels), default=0.0) / 2 / INCH


def next_mark(value_in: float) -> float:
    """The next sixteenth of an inch at or past a place."""
    return math.ceil(value_in * 16 - 1e-9) / 16


def text(value_in: float) -> str:
    whole, rest = divmod(round(value_in * 16), 16)
    if not rest:
        return f"{whole} in"
    part = math.gcd(rest, 16)
    return f"{whole} {rest // part}/{16 // part} in"


STOOLED = room(openings=(replace(WINDOW, stool=Stool(inch(1), inch(1), inch(3))),))
_RADIATOR = Obstacle("x", "hot-water-radiator", inch(50), inch(4), inch(40), inch(16), projection=inch(4))
HEATED = room(obstacles=(_RADIATOR,))
TWO_LAYERS = room(layer=with_rod(projection=inch(9)), layers=(replace(BACK, panels=LAYER_FRONT.panels),))
IN_REVEAL = room(
    openings=(replace(WINDOW, reveal=inch(6)),),
    layer=with_rod(
        height=held("below-head", 2), left=held("inside-opening", 0), right=held("inside-opening", 0), projection=inch(2)
    ),
)
IN_REVEAL = replace_at(IN_REVEAL, LAYER[:3], mount="reveal")
_OUT = {
    "stool": next_mark(3 + half_fold_in(STOOLED)),
    "heater": next_mark(4 + half_fold_in(HEATED)),
    "layer": next_mark(2 + half_fold_in(TWO_LAYERS) + half_fold_in(TWO_LAYERS, 1)),
}

SECTION = (
    Case(
        "projection-stool", STOOLED, "projection", LAYER, _OUT["stool"], "clear the stool", PROJECTION, text(_OUT["stool"])
    ),
    Case("projection-heater", HEATED, "projection", LAYER, _OUT["heater"], "just clear", PROJECTION, text(_OUT["heater"])),
    Case("projection-layer", TWO_LAYERS, "projection", LAYER, _OUT["layer"], "other", PROJECTION, text(_OUT["layer"])),
    # 3/4 in conduit is 0.922 in thick: its centre line no nearer than 0.461 in, the next sixteenth is 1/2 in.
    Case("projection-wall", room(), "projection", LAYER, None, "the wall", PROJECTION, "1/2 in"),
    Case("projection-sash", IN_REVEAL, "projection", LAYER, None, "the sash", PROJECTION, "1/2 in"),
    # 600 mm are 23 5/8 in less 0.04 mm: the last sixteenth before that.
    Case("projection-far", room(), "projection", LAYER, None, "farther out", PROJECTION, "23 9/16 in"),
)
