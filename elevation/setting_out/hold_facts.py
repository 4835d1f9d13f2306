"""What holding depends on whatever is held: how walls are built, how hard somebody tugs, where a fixing finds a hold."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.room.find import wall_of
from elevation.room.model import Room, Wall
from elevation.setting_out.framing import FRAMING
from elevation.setting_out.model import ZoneOut
from elevation.trade.fixing import Strength, screw_strength
from elevation.trade.model import FixingRow, Trade
from elevation.trade.section import GRAVITY
from elevation.trade.tables import limit_of
from elevation.units.tolerance import TOUCH_MM

USUAL = "screw-8"
USUAL_THROUGH_LATH = "screw-8-3"

_MASONRY = frozenset({"masonry", "dabs", "battens"})
_HOLLOW = frozenset({"studs", "dabs", "battens"})


class HoldFacts(Struct, frozen=True, gc=False):
    """What holding depends on besides the treatment: the wall's kind, how that is built, how hard somebody tugs (N).

    ``irons_mm`` is the farthest from one angle iron of a pelmet to the next. ``sides`` are the kinds of the walls round its
    left and right corner: empty where none is named there.
    """

    substrate: str
    build: str
    tug_n: float
    irons_mm: float
    sides: tuple[str, str] = ("", "")


def hold_facts(room: Room, wall: Wall, trade: Trade) -> HoldFacts:
    """The facts of one wall."""
    tug = limit_of(trade, "tug-children" if room.children else "tug")
    if room.tug_kg is not None:
        tug = room.tug_kg * GRAVITY
    own = room.limits.get("pelmet-irons")
    irons = limit_of(trade, "pelmet-irons") if own is None else own.mm
    left, right = (wall_of(room, end.neighbour).substrate if end.neighbour else "" for end in (wall.left, wall.right))
    return HoldFacts(wall.substrate, build_of(wall.substrate, trade), tug, irons, (left, right))


def build_of(substrate: str, trade: Trade) -> str:
    """How a wall of that kind is built; ``unknown`` where that is no row."""
    row = trade.substrates.get(substrate)
    return "unknown" if row is None else row.build


def at_framing(x_mm: float, y_mm: float, zones: Sequence[ZoneOut]) -> bool:
    """Whether wood or metal of the wall's framing likely stands behind a place."""
    return any(
        zone.kind in FRAMING
        and zone.left_mm - TOUCH_MM <= x_mm <= zone.right_mm + TOUCH_MM
        and zone.bottom_mm - TOUCH_MM <= y_mm <= zone.top_mm + TOUCH_MM
        for zone in zones
    )


def finds_hold(row: FixingRow, build: str, substrate: str, is_wood: bool, is_chosen: bool) -> bool:
    """Whether a fixing finds what it holds in at a place of a wall.

    Parameters
    ----------
    row : FixingRow
    build, substrate : str
        Of that wall.
    is_wood : bool
        Wood stands behind the place.
    is_chosen : bool
        Somebody chose the fixing: she has found the battens.
    """
    fits = {
        "wood": is_wood or (build == "battens" and is_chosen),
        "board": build in _HOLLOW and substrate != "plaster-lath",
        "board-steel": substrate == "board-metal-studs",
        "masonry": build in _MASONRY,
    }
    return fits[row.into]


def face_of(substrate: str, trade: Trade) -> float:
    """How thick what lies over a wall's framing usually is, in mm."""
    return limit_of(trade, "face-lath" if substrate == "plaster-lath" else "face-board")


def row_strength(row: FixingRow, face_mm: float, trade: Trade, wood_mm: float | None = None) -> Strength | None:
    """What one fixing holds as its row says; None for a screw that is too short.

    Parameters
    ----------
    row : FixingRow
    face_mm : float
        What lies over the wood there.
    trade : Trade
    wood_mm : float or None
        How thick the wood is where that is no stud.
    """
    if row.into != "wood":
        return Strength(row.pull_n or None, row.shear_n or None)
    return screw_strength(
        row,
        face_mm + limit_of(trade, "bracket-thick"),
        face_mm == 0.0,
        limit_of(trade, "wood-gravity"),
        limit_of(trade, "stays"),
        wood_mm,
    )
