"""A house in one table: its windows numbered through, what hangs before each, and what all of it comes to."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from msgspec import Struct

from elevation.findings.model import Finding, Weight
from elevation.findings.unknowns import unknowns
from elevation.planning.dressed import Dressed
from elevation.planning.made import is_made
from elevation.planning.sewing.valances import valances_of
from elevation.room.find import layer_of
from elevation.room.model import Ref
from elevation.setting_out.cloth import cloth_of_layer
from elevation.setting_out.model import LayerOut, OpeningOut, SetOut, TreatmentOut
from elevation.trade.model import Trade

Found = tuple[int, int, int]
"""How many stops, broken limits and pieces of advice."""


class HouseRow(Struct, frozen=True):
    """A treatment with the openings that it covers, or an opening that nothing hangs before.

    Attributes
    ----------
    room : int
        The number of its room, from 0.
    wall : SetOut
    numbers : tuple of int
        Of its openings in this house, from 1.
    openings : tuple of OpeningOut
    laid : TreatmentOut or None
        None: nothing hangs there.
    found : tuple of int
    """

    room: int
    wall: SetOut
    numbers: tuple[int, ...]
    openings: tuple[OpeningOut, ...]
    laid: TreatmentOut | None
    found: Found


class Totals(Struct, frozen=True):
    """What a house comes to.

    Attributes
    ----------
    rooms, walls, openings, bare, treatments, rods, brackets, rings, panels : int
        ``bare``: openings that nothing hangs before; ``panels``: pieces.
    rod_mm, cloth_mm : float
        All rods and tracks end to end; cloth to be bought off the bolt for panels and valances that are sewn, face alone.
    cloth_unknown : int
        Layers whose cloth cannot be known yet.
    found : tuple of int
        Over all walls.
    missing : int
        Facts that are not measured.
    """

    rooms: int
    walls: int
    openings: int
    bare: int
    treatments: int
    rods: int
    rod_mm: float
    brackets: int
    rings: int
    panels: int
    cloth_mm: float
    cloth_unknown: int
    found: Found
    missing: int


class HouseSchedule(Struct, frozen=True):
    """The rows in the order of rooms, walls and openings, the numbers of openings by (room, Ref), and the totals."""

    rows: tuple[HouseRow, ...]
    numbers: dict[tuple[int, Ref], int]
    totals: Totals


def house_schedule(rooms: Sequence[Dressed], trade: Trade) -> HouseSchedule:
    """The schedule of rooms that are set out.

    Parameters
    ----------
    rooms : sequence of Dressed
    trade : Trade
    """
    numbers: dict[tuple[int, Ref], int] = {}
    rows: list[HouseRow] = []
    for at, dressed in enumerate(rooms):
        for wall, findings in zip(dressed.walls, dressed.findings, strict=True):
            for opening in wall.openings:
                numbers[at, opening.ref] = len(numbers) + 1
            rows.extend(_of_wall(at, wall, findings, numbers))
    return HouseSchedule(tuple(rows), numbers, _totals(rooms, rows, len(numbers), trade))


def _of_wall(at: int, wall: SetOut, findings: Sequence[Finding], numbers: dict[tuple[int, Ref], int]) -> Sequence[HouseRow]:
    rows: list[HouseRow] = []
    covered: set[Ref] = set()
    for laid in wall.treatments:
        covered.update(opening.ref for opening in laid.openings)
        own = [finding for finding in findings if finding.subject[: len(laid.ref)] == laid.ref]
        marks = tuple(numbers[at, opening.ref] for opening in laid.openings)
        rows.append(HouseRow(at, wall, marks, laid.openings, laid, _found(own)))
    for opening in wall.openings:
        if opening.ref not in covered:
            own = [finding for finding in findings if finding.subject[: len(opening.ref)] == opening.ref]
            rows.append(HouseRow(at, wall, (numbers[at, opening.ref],), (opening,), None, _found(own)))
    # In the order of the wall: two treatments before one opening stay beside each other.
    return sorted(rows, key=lambda row: row.numbers[:1] or (len(numbers) + 1,))


def _found(findings: Sequence[Finding]) -> Found:
    weights = Counter(finding.weight for finding in findings)
    return weights[Weight.STOP], weights[Weight.BROKEN], weights[Weight.CONSIDER]


def _totals(rooms: Sequence[Dressed], rows: Sequence[HouseRow], openings: int, trade: Trade) -> Totals:
    walls = [wall for dressed in rooms for wall in dressed.walls]
    laid = [one for wall in walls for one in wall.treatments]
    layers = [layer for one in laid for layer in one.layers]
    rods = [layer.support for layer in layers if layer.support.kind != "tension-rod"]
    wishes = [layer_of(dressed.room, layer.ref) for dressed in rooms for layer in _layers(dressed)]
    cloths = [_cloth(dressed, layer, trade) for dressed in rooms for layer in _layers(dressed)]
    made = [one for is_sewn, one in cloths if is_sewn]
    return Totals(
        rooms=len(rooms),
        walls=len(walls),
        openings=openings,
        bare=sum(row.laid is None for row in rows),
        treatments=len(laid),
        rods=len(layers),
        rod_mm=sum(support.length_mm for support in rods),
        brackets=sum(bracket.on != "layer" for layer in layers for bracket in layer.brackets),
        rings=sum(panel.rings for layer in layers for panel in layer.panels),
        panels=sum(panel.count for layer in wishes for panel in layer.panels),
        cloth_mm=sum(one for one in made if one is not None)
        + sum(one.cloth.face.total_mm for dressed in rooms for one in valances_of(dressed, trade)),
        cloth_unknown=sum(one is None for one in made),
        found=_found([finding for dressed in rooms for findings in dressed.findings for finding in findings]),
        missing=sum(len(unknowns(wall)) for wall in walls),
    )


def _layers(dressed: Dressed) -> Sequence[LayerOut]:
    return [layer for wall in dressed.walls for one in wall.treatments for layer in one.layers]


def _cloth(dressed: Dressed, layer: LayerOut, trade: Trade) -> tuple[bool, float | None]:
    """Whether a layer is sewn, and what of its face is bought (None: not known yet)."""
    mine = layer_of(dressed.room, layer.ref)
    if not is_made(mine):
        return False, None
    cloth = cloth_of_layer(dressed.room, mine, layer, trade)
    return True, None if cloth is None or cloth.face is None else cloth.face.total_mm
