"""Drilling plates for a cutting machine: one a bracket kit, with notches for the lines drawn at the wall and its holes.

A plate of card or thin board lasts longer than a print and is true to the machine's own accuracy. It carries no words:
what a machine reads as an outline it cuts.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.findings.naming import where
from elevation.planning.dressed import Dressed
from elevation.planning.drilling import DrillPlace, drill_places
from elevation.planning.stops import stopped
from elevation.room.model import Ref
from elevation.setting_out.model import Point
from elevation.trade.model import BracketRow, Trade
from elevation.words import Message, msg, msg_plural

BORDER_MM = 15.0
"""Material round the bracket's plate and its holes: enough to hold it by."""
HOLE_MM = 3.0
"""Holes to prick or to mark through: a sharp pencil or a bradawl fits."""
NOTCH_MM = 4.0
"""Depth of the notches; each is as wide as deep."""
CORNER_MM = 8.0
"""The upper corners are cut off, so that up is known; under a ceiling they point into the room."""

Segment = tuple[Point, Point]


class Plate(Struct, frozen=True):
    """One plate, in mm about the rod's axis (x along the rod, y up; under a ceiling out from the wall).

    Attributes
    ----------
    kit : BracketRow
    on : str
        ``wall``, ``ceiling`` or ``sash``.
    uses : tuple of Message
        The brackets that it serves: room, wall, treatment, numbers.
    outline : tuple of Point
        Closed, counted once round; with the notches.
    holes : tuple of Point
        Middles; each ``HOLE_MM`` wide.
    marks : tuple of Segment
        To be drawn or scored, not cut: the level line, the middle, the bracket's own plate.
    """

    kit: BracketRow
    on: str
    uses: tuple[Message, ...]
    outline: tuple[Point, ...]
    holes: tuple[Point, ...]
    marks: tuple[Segment, ...]


def plates(rooms: Sequence[Dressed], trade: Trade) -> tuple[Plate, ...]:
    """The plates for the brackets of rooms, in the order in which their kits are first met.

    A treatment with a *stop* is left out: nothing of it may be drilled.

    Parameters
    ----------
    rooms : sequence of Dressed
    trade : Trade
    """
    found: dict[str, dict[tuple[int, Ref], tuple[Message, list[str]]]] = {}
    first: dict[str, DrillPlace] = {}
    for at, dressed in enumerate(rooms):
        for wall, findings in zip(dressed.walls, dressed.findings, strict=True):
            stops = stopped(findings)
            for laid in wall.treatments:
                if laid.ref in stops:
                    continue
                name = msg("{name}", name=laid.name) if laid.name else where(laid)
                name = msg("{wall}, {window}", wall=wall.wall_name or wall.wall, window=name)
                if dressed.room.name:
                    name = msg("{room}, {place}", room=dressed.room.name, place=name)
                for place in drill_places(wall, laid, trade):
                    first.setdefault(place.kit.id, place)
                    uses = found.setdefault(place.kit.id, {})
                    uses.setdefault((at, laid.ref), (name, []))[1].append(place.mark)
    return tuple(
        plate_of(first[kit].kit, first[kit].on, tuple(_use(name, marks) for name, marks in uses.values()))
        for kit, uses in found.items()
    )


def _use(name: Message, marks: Sequence[str]) -> Message:
    return msg_plural(
        "{place}: bracket {marks}", "{place}: brackets {marks}", count=len(marks), place=name, marks=", ".join(marks)
    )


def plate_of(kit: BracketRow, on: str, uses: tuple[Message, ...] = ()) -> Plate:
    """The plate of one bracket kit.

    Parameters
    ----------
    kit : BracketRow
        Has holes.
    on : str
    uses : tuple of Message
    """
    is_ceiling = on == "ceiling"
    half = kit.plate_width_mm / 2
    high, low = (half, half) if is_ceiling else (kit.plate_above_mm, kit.plate_below_mm)
    holes = tuple((hole, 0.0) if is_ceiling else (0.0, hole) for hole in kit.holes_mm)
    right = max(half, *(abs(x) for x, _ in holes), 0.0) + BORDER_MM
    top = max(high, *(y for _, y in holes), 0.0) + BORDER_MM
    bottom = -max(low, *(-y for _, y in holes), 0.0) - BORDER_MM
    return Plate(
        kit,
        on,
        uses,
        _outline(right, top, bottom),
        holes,
        (
            ((-right + NOTCH_MM, 0.0), (right - NOTCH_MM, 0.0)),
            ((0.0, bottom + NOTCH_MM), (0.0, top - NOTCH_MM)),
            ((-half, -low), (half, -low)),
            ((half, -low), (half, high)),
            ((half, high), (-half, high)),
            ((-half, high), (-half, -low)),
        ),
    )


def _outline(right: float, top: float, bottom: float) -> tuple[Point, ...]:
    """Once round from the lower left corner: a notch on each side, the upper corners cut off."""
    half, corner = NOTCH_MM / 2, CORNER_MM
    return (
        (-right, bottom),
        *((-half, bottom), (0.0, bottom + NOTCH_MM), (half, bottom)),
        (right, bottom),
        *((right, -half), (right - NOTCH_MM, 0.0), (right, half)),
        *((right, top - corner), (right - corner, top)),
        *((half, top), (0.0, top - NOTCH_MM), (-half, top)),
        *((-right + corner, top), (-right, top - corner)),
        *((-right, half), (-right + NOTCH_MM, 0.0), (-right, -half)),
    )


def size_of(plate: Plate) -> tuple[float, float, float, float]:
    """Left, bottom, right and top of its outline."""
    xs, ys = [x for x, _ in plate.outline], [y for _, y in plate.outline]
    return min(xs), min(ys), max(xs), max(ys)


def side_by_side(found: Sequence[Plate], gap_mm: float = 10.0) -> tuple[tuple[Plate, Point], ...]:
    """Each plate with where its rod's axis lies, so that all stand beside each other from (0, 0) to the right."""
    laid: list[tuple[Plate, Point]] = []
    at = 0.0
    for plate in found:
        left, bottom, right, _ = size_of(plate)
        laid.append((plate, (at - left, -bottom)))
        at += right - left + gap_mm
    return tuple(laid)
