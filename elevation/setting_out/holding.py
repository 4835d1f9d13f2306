"""What holds the brackets: each at its worst load, with somebody who tugs at a panel.

A bracket on the wall is a cantilever on two screws, one under the ceiling pulls straight down, one in a reveal is in shear.
No figure is given for a wall that is not known, nor for a fixing whose packet was not read.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from elevation.room.model import Bracket, Rod, Treatment
from elevation.setting_out.carried import HoldOut
from elevation.setting_out.framing import FRAMING
from elevation.setting_out.hold_facts import (
    USUAL,
    USUAL_THROUGH_LATH,
    HoldFacts,
    at_framing,
    face_of,
    finds_hold,
    row_strength,
)
from elevation.setting_out.holding_ends import ends_held
from elevation.setting_out.irons import on_framing
from elevation.setting_out.model import BoardOut, BracketOut, LayerOut, TreatmentOut, ZoneOut
from elevation.trade.fixing import Strength, on_plate, screw_strength, times_held
from elevation.trade.model import FixingRow, Trade
from elevation.trade.section import GRAVITY
from elevation.trade.tables import limit_of

USUAL_OF_BOARD = "screw-10-3"

_BOARD_EDGE_MM = 25.4  # screws stand 1 in off the edges of a mounting board (common practice, no source)


class _Carried(Struct, frozen=True, gc=False):
    """Load in N and its moment about the wall's face in N mm."""

    load_n: float
    moment_nmm: float


def with_fixings(
    made: TreatmentOut, treatment: Treatment, zones: Sequence[ZoneOut], facts: HoldFacts, trade: Trade
) -> TreatmentOut:
    """A treatment with what holds each of its brackets, the ends that carry a rod, and the shelf of its pelmet."""
    layers = tuple(
        _layer(made, layer, own.rod, {bracket.id: bracket for bracket in own.brackets}, zones, facts, trade)
        for layer, own in zip(made.layers, treatment.layers, strict=True)
    )
    pelmet = made.pelmet
    if pelmet is not None and facts.build == "studs":
        pelmet = on_framing(pelmet, zones, facts.irons_mm)
    return replace(made, layers=layers, pelmet=pelmet)


def _layer(
    made: TreatmentOut,
    layer: LayerOut,
    rod: Rod,
    own: Mapping[str, Bracket],
    zones: Sequence[ZoneOut],
    facts: HoldFacts,
    trade: Trade,
) -> LayerOut:
    if all(bracket.load_n is None for bracket in layer.brackets) and layer.loads is None:
        return layer
    brackets = []
    on_board: list[tuple[float, _Carried]] = []
    for bracket in layer.brackets:
        if bracket.load_n is None or bracket.on == "layer":
            # The front layer's bracket carries it.
            brackets.append(bracket)
            continue
        carried = _carried(made, layer, bracket, facts.tug_n)
        held = _held(made.mount, layer, bracket, own[bracket.ref[-1]], carried, zones, facts, trade)
        brackets.append(replace(bracket, fixing=held.fixing, holds_times=held.times, held=held))
        on_board.append((bracket.x_mm, carried))
    board = layer.board
    if board is not None:
        board = replace(board, held=_board_held(board, on_board, zones, facts, trade))
    loads = layer.loads
    if loads is not None and any(layer.support.carried):
        loads = replace(loads, held=ends_held(made.mount, layer, loads, rod, zones, facts, trade))
    return replace(layer, brackets=tuple(brackets), board=board, loads=loads)


def _carried(made: TreatmentOut, layer: LayerOut, bracket: BracketOut, tug_n: float) -> _Carried:
    """The worst load of a bracket, with that of the back rod that hangs on it and a tug at the farther one."""
    arm = max(layer.support.projection_mm, 0.0)
    load, moment, farthest = bracket.load_n or 0.0, (bracket.load_n or 0.0) * arm, arm
    if layer is made.layers[0]:
        for back in made.layers[1:]:
            for other in back.brackets:
                if other.on == "layer" and _nearest(made.layers[0], other) is bracket:
                    out = max(back.support.projection_mm, 0.0)
                    load += other.load_n or 0.0
                    moment += (other.load_n or 0.0) * out
                    farthest = max(farthest, out)
    return _Carried(load + tug_n, moment + tug_n * farthest)


def _nearest(front: LayerOut, other: BracketOut) -> BracketOut | None:
    return min(front.brackets, key=lambda one: abs(one.x_mm - other.x_mm), default=None)


def _held(
    mount: str,
    layer: LayerOut,
    bracket: BracketOut,
    own: Bracket,
    carried: _Carried,
    zones: Sequence[ZoneOut],
    facts: HoldFacts,
    trade: Trade,
) -> HoldOut:
    is_wood = _is_wood(bracket, zones, facts) or layer.board is not None
    key = own.fixing or (_usual(mount, layer, is_wood, facts))
    if facts.build == "unknown":
        return HoldOut(own.fixing or "", None, "wall", carried.load_n)
    if not key:
        return HoldOut("", None, "chosen", carried.load_n)
    row = trade.fixings[key]
    why = _not_there(mount, layer, row, is_wood, own.fixing is not None, facts)
    if why:
        return HoldOut(key, None, why, carried.load_n, factor=row.factor)
    strength = _strength(mount, layer, row, own, facts, trade)
    if strength is None:
        return HoldOut(key, None, "short", carried.load_n, factor=row.factor)
    kit = trade.brackets[bracket.kit]
    count = max(len(kit.holes_mm), 1)
    if mount == "ceiling":
        asked: tuple[float, float] | None = (carried.load_n / count, 0.0)
    elif mount == "wall":
        off_board = carried.moment_nmm - carried.load_n * (0.0 if layer.board is None else layer.board.thick_mm)
        asked = on_plate(carried.load_n, off_board, kit.holes_mm, kit.plate_below_mm)
    else:
        asked = (0.0, carried.load_n / count)
    if asked is None:
        return HoldOut(key, None, "packet", carried.load_n, factor=row.factor)
    times = times_held(*asked, strength)
    return HoldOut(key, times, "" if times else "packet", carried.load_n, *asked, factor=row.factor)


def _is_wood(bracket: BracketOut, zones: Sequence[ZoneOut], facts: HoldFacts) -> bool:
    """Whether wood likely stands behind a bracket's plate; that of a metal stud wall is none."""
    if facts.build == "timber":
        return True
    middle = (bracket.plate[1] + bracket.plate[3]) / 2
    return facts.substrate != "board-metal-studs" and at_framing(bracket.x_mm, middle, zones)


def _usual(mount: str, layer: LayerOut, is_wood: bool, facts: HoldFacts) -> str:
    """The fixing that is taken where none was chosen: a screw where there is wood, else none."""
    if mount == "reveal":
        return USUAL if facts.build in ("timber", "studs") else ""
    if mount != "wall" or not is_wood:
        return ""
    return USUAL_THROUGH_LATH if facts.substrate == "plaster-lath" and layer.board is None else USUAL


def _not_there(mount: str, layer: LayerOut, row: FixingRow, is_wood: bool, is_chosen: bool, facts: HoldFacts) -> str:
    """Why such a fixing cannot hold there; empty where it can."""
    if mount == "ceiling":
        # Only the joists hold: whoever chose a screw has found one.
        return "friction" if row.friction else ""
    if mount != "wall":
        return ""
    if layer.board is not None:
        return "" if row.into == "wood" else "there"
    return "" if finds_hold(row, facts.build, facts.substrate, is_wood, is_chosen) else "there"


def _strength(mount: str, layer: LayerOut, row: FixingRow, own: Bracket, facts: HoldFacts, trade: Trade) -> Strength | None:
    """What one fixing holds: as its packet says, else as its row does."""
    is_faced = mount == "ceiling" or (mount == "wall" and layer.board is None and facts.build != "timber")
    wood = layer.board.thick_mm if layer.board is not None and mount == "wall" else None
    found = row_strength(row, face_of(facts.substrate, trade) if is_faced else 0.0, trade, wood)
    if own.pull_kg is None and own.shear_kg is None:
        return found
    base = found or Strength(None, None)
    return Strength(
        base.pull_n if own.pull_kg is None else own.pull_kg * GRAVITY,
        base.shear_n if own.shear_kg is None else own.shear_kg * GRAVITY,
    )


def _board_held(
    board: BoardOut, hung: Sequence[tuple[float, _Carried]], zones: Sequence[ZoneOut], facts: HoldFacts, trade: Trade
) -> HoldOut:
    """A mounting board through two screws at each piece of framing: the worst piece, loads shared by the lever."""
    middle = (board.bottom_mm + board.top_mm) / 2
    xs = sorted(
        (zone.left_mm + zone.right_mm) / 2
        for zone in zones
        if zone.kind in FRAMING
        and zone.kind != "header"
        and zone.bottom_mm <= middle <= zone.top_mm
        and board.left_mm <= (zone.left_mm + zone.right_mm) / 2 <= board.right_mm
    )
    load = sum(carried.load_n for _, carried in hung)
    if facts.build == "unknown":
        return HoldOut("", None, "wall", load)
    if facts.build != "studs" or facts.substrate == "board-metal-studs":
        return HoldOut("", None, "chosen", load)
    lever = board.top_mm - board.bottom_mm - _BOARD_EDGE_MM
    if len(xs) < 2 or lever <= 0:
        return HoldOut(USUAL_OF_BOARD, None, "there", load)
    row = trade.fixings[USUAL_OF_BOARD]
    before = face_of(facts.substrate, trade) + board.thick_mm
    strength = screw_strength(row, before, False, limit_of(trade, "wood-gravity"), limit_of(trade, "stays"))
    if strength is None:
        return HoldOut(USUAL_OF_BOARD, None, "short", load, factor=row.factor)
    shares = _shared(xs, hung)
    pull, shear = max((share.moment_nmm / lever, share.load_n / 2) for share in shares)
    times = times_held(pull, shear, strength)
    return HoldOut(USUAL_OF_BOARD, times, "" if times else "packet", load, pull, shear, row.factor)


def _shared(xs: Sequence[float], hung: Sequence[tuple[float, _Carried]]) -> list[_Carried]:
    """What each piece of framing takes of the loads on a board: those between two are shared by the lever."""
    loads, moments = [0.0] * len(xs), [0.0] * len(xs)
    for x, carried in hung:
        right = min(max(next((i for i, at in enumerate(xs) if at >= x), len(xs) - 1), 1), len(xs) - 1)
        part = (x - xs[right - 1]) / (xs[right] - xs[right - 1])
        for index, share in ((right - 1, 1 - part), (right, part)):
            loads[index] += carried.load_n * share
            moments[index] += carried.moment_nmm * share
    return [_Carried(load, moment) for load, moment in zip(loads, moments, strict=True)]
