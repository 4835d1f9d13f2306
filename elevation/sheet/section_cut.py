"""Where a wall is cut upright, and what the cut meets: the facts that a section is drawn and dimensioned from.

In a section ``z`` runs from the wall's face out into the room (mm; negative: into the wall and its reveal), ``y`` up
from the datum as in the elevation, so heights run across from one to the other.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from elevation.room.model import Ref, Wall
from elevation.setting_out.model import (
    LayerOut,
    ObstacleOut,
    OpeningOut,
    PanelOut,
    Profile,
    SetOut,
    Span,
    TreatmentOut,
    ZoneOut,
)
from elevation.setting_out.tilt import axis_at
from elevation.sheet.paths import head_at, height_at
from elevation.trade.model import CutRow, Trade
from elevation.trade.tables import limit_of

INSIDE = frozenset({"reveal", "sash"})
_UNKNOWN = "not-known"
_MARGIN_MM = 110.0
_LEAST_ROOM_MM = 280.0
_BEHIND_SASH_MM = 40.0


class Stock(Struct, frozen=True, gc=False):
    """Thicknesses that nobody measured and that are only drawn, in mm: casing and apron, baseboard, sash."""

    casing_mm: float
    baseboard_mm: float
    sash_mm: float
    reveal_mm: float


class Hanging(Struct, frozen=True, gc=False):
    """A layer as the section shows it: the panel nearest to the cut, and whether its cloth is cut as drawn."""

    layer: LayerOut
    panel: PanelOut | None
    is_cut: bool
    hem_mm: float | None = None
    """Height of the hem as drawn, where the panel comes nearest to the cut."""
    place_mm: float = 0.0
    """From the wall's left end to that place."""

    @property
    def centre_mm(self) -> float:
        """Wall's face to the rod's centre line."""
        return self.layer.support.projection_mm

    @property
    def back_mm(self) -> float:
        """Wall's face to the back of the cloth (the rod's own back where no cloth hangs)."""
        return self.centre_mm - self._half()

    @property
    def front_mm(self) -> float:
        """Wall's face to the front of the cloth."""
        return self.centre_mm + self._half()

    def _half(self) -> float:
        depth = self.layer.support.diameter_mm if self.panel is None else self.panel.fold_depth_mm
        return max(depth, 2.0) / 2


class Cut(Struct, frozen=True, gc=False):
    """An upright cut through a wall.

    Attributes
    ----------
    station_mm : float
        Where it is cut, from the wall's left end.
    floor_mm, ceiling_mm : float
        The ceiling's height there, and the floor's under the front cloth where that comes nearest: a stepped cut.
    known_ceiling, known_floor : bool
    crown_mm, baseboard_mm : float
    row : CutRow
        How the substrate is drawn.
    thick_mm : float
        How thick the wall is drawn; nothing is reckoned from it.
    opening : OpeningOut or None
        The opening that is cut.
    head_mm, casing_top_mm : float
        Height of the opening's head and of its casing's upper edge, at the station.
    obstacles : tuple of (ObstacleOut, bool)
        What stands before the wall near the cloth, and whether the cut goes through it.
    zones : tuple of ZoneOut
        Headers, lintels, studs that the cut goes through.
    treatment : TreatmentOut or None
    hangings : tuple of Hanging
        Its layers, front to back.
    stock : Stock
    room_mm : float
        How far out from the wall's face the section shows.
    """

    wall: str
    station_mm: float
    floor_mm: float
    ceiling_mm: float
    known_ceiling: bool
    known_floor: bool
    crown_mm: float
    baseboard_mm: float
    row: CutRow
    thick_mm: float
    opening: OpeningOut | None
    head_mm: float
    casing_top_mm: float
    obstacles: tuple[tuple[ObstacleOut, bool], ...]
    zones: tuple[ZoneOut, ...]
    treatment: TreatmentOut | None
    hangings: tuple[Hanging, ...]
    stock: Stock
    room_mm: float

    @property
    def sash_mm(self) -> float:
        """Where the sash's face on the room's side stands (negative)."""
        if self.opening is None:
            return 0.0
        return -(self.stock.reveal_mm if self.opening.reveal_mm is None else self.opening.reveal_mm)

    @property
    def bounds(self) -> tuple[float, float, float, float]:
        """Left, bottom, right and top of what is drawn: z and y in mm."""
        return -self.thick_mm, self.floor_mm, self.room_mm, self.ceiling_mm


def treatment_shown(set_out: SetOut, selection: Ref | None) -> TreatmentOut | None:
    """The treatment that a section is cut through: the one selected, one before an opening selected, else the first."""
    if not set_out.treatments:
        return None
    if selection:
        for treatment in set_out.treatments:
            if selection[: len(treatment.ref)] == treatment.ref or any(
                opening.ref == selection for opening in treatment.openings
            ):
                return treatment
    return set_out.treatments[0]


def station_of(set_out: SetOut, treatment: TreatmentOut | None) -> float:
    """Where a wall is cut: in the middle of the treatment's first opening, else of the first opening, else of the wall."""
    if treatment is not None:
        # A treatment that covers nothing is not set out.
        return (treatment.openings[0].left_mm + treatment.openings[0].right_mm) / 2
    if set_out.openings:
        return (set_out.openings[0].left_mm + set_out.openings[0].right_mm) / 2
    return set_out.width_mm / 2


def treatment_at(set_out: SetOut, station_mm: float) -> TreatmentOut | None:
    """The treatment whose rod runs past a station; None where nothing hangs."""
    for treatment in set_out.treatments:
        for layer in treatment.layers:
            if layer.support.metal_left_mm <= station_mm <= layer.support.metal_right_mm:
                return treatment
    return None


def cut_at(
    wall: Wall, set_out: SetOut, trade: Trade, treatment: TreatmentOut | None, station_mm: float | None = None
) -> Cut:
    """The facts of a section.

    Parameters
    ----------
    wall : Wall
        Says what the wall is made of.
    set_out : SetOut
    trade : Trade
    treatment : TreatmentOut or None
        What hangs in it.
    station_mm : float or None
        From the wall's left end; None: ``station_of`` the treatment.
    """
    x = station_of(set_out, treatment) if station_mm is None else station_mm
    row = trade.cuts.get(wall.substrate, trade.cuts[_UNKNOWN])
    stock = Stock(
        limit_of(trade, "assumed-casing-thick"),
        limit_of(trade, "assumed-baseboard-thick"),
        limit_of(trade, "assumed-sash-thick"),
        limit_of(trade, "assumed-reveal"),
    )
    opening = next((one for one in set_out.openings if one.left_mm <= x <= one.right_mm), None)
    head = casing_top = 0.0
    thick = row.thick_mm
    if opening is not None:
        head = head_at(opening, x, 0.0)
        casing_top = head_at(opening, x, opening.casing_mm)
        reveal = stock.reveal_mm if opening.reveal_mm is None else opening.reveal_mm
        thick = max(thick, reveal + stock.sash_mm + _BEHIND_SASH_MM)
    hangings = () if treatment is None else tuple(_hanging(_at(layer, x), x) for layer in treatment.layers)
    obstacles = _before(set_out, hangings, x)
    zones = tuple(zone for zone in set_out.zones if zone.left_mm <= x <= zone.right_mm and zone.kind != "keep-off")
    fronts = [
        _LEAST_ROOM_MM,
        *(hanging.front_mm + _on_floor(hanging) for hanging in hangings),
        *(obstacle.out_mm for obstacle, _ in obstacles),
    ]
    if treatment is not None and treatment.pelmet is not None:
        fronts.append(treatment.pelmet.out_mm)
    if opening is not None:
        fronts += [box[4] for box in opening.sweep]
    foot = next((hanging.place_mm for hanging in hangings if hanging.panel is not None), x)
    return Cut(
        set_out.wall,
        x,
        height_at(set_out.floor, foot),
        height_at(set_out.ceiling, x),
        set_out.ceiling.known,
        set_out.floor.known,
        set_out.crown_mm,
        set_out.baseboard_mm,
        row,
        thick,
        opening,
        head,
        casing_top,
        obstacles,
        zones,
        treatment,
        hangings,
        stock,
        max(fronts) + _MARGIN_MM,
    )


def _on_floor(hanging: Hanging) -> float:
    """How much cloth lies on the floor before the wall, mm."""
    panel = hanging.panel
    if panel is None or panel.target_gap_mm is None:
        return 0.0
    return max(0.0, -panel.target_gap_mm)


def _at(layer: LayerOut, x: float) -> LayerOut:
    """A layer as high as it hangs at ``x``, where its rod is not level."""
    support = layer.support
    up = axis_at(support, x) - support.height_mm
    if up == 0.0:
        return layer
    return replace(
        layer,
        support=replace(support, height_mm=support.height_mm + up, line=None),
        panels=tuple(
            replace(
                panel,
                top_mm=panel.top_mm + up,
                hem=tuple((at, y + axis_at(support, at) - support.height_mm) for at, y in panel.hem),
                hem_low_mm=panel.hem_low_mm + up,
            )
            for panel in layer.panels
        ),
        brackets=tuple(replace(bracket, height_mm=support.height_mm + up) for bracket in layer.brackets),
    )


def _hanging(layer: LayerOut, x: float) -> Hanging:
    panel = min(layer.panels, key=lambda panel: _away(panel.drawn, x), default=None)
    if panel is None:
        return Hanging(layer, None, False, None, x)
    place = min(max(x, panel.drawn[0]), panel.drawn[1])
    hem = height_at(Profile(panel.hem), place) if panel.hem else None
    return Hanging(layer, panel, _away(panel.drawn, x) == 0.0, hem, place)


def _away(span: Span, x: float) -> float:
    return max(span[0] - x, x - span[1], 0.0)


def _before(set_out: SetOut, hangings: tuple[Hanging, ...], x: float) -> tuple[tuple[ObstacleOut, bool], ...]:
    """What the cut meets, and what stands where the cloth travels; the swing of a door is no body."""
    spans = [
        (min(panel.open[0], panel.closed[0], panel.drawn[0]), max(panel.open[1], panel.closed[1], panel.drawn[1]))
        for hanging in hangings
        for panel in hanging.layer.panels
    ]
    found = []
    for obstacle in set_out.obstacles:
        if obstacle.kind == "door-swing":
            continue
        is_cut = obstacle.left_mm <= x <= obstacle.right_mm
        if is_cut or any(obstacle.left_mm < right and left < obstacle.right_mm for left, right in spans):
            found.append((obstacle, is_cut))
    return tuple(found)
