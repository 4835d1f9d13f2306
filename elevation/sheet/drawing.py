"""A dressed wall as geometry: set-out in, groups of the display list out.

Nothing here depends on scale, so zooming draws nothing anew; everything is a pure function of frozen values, so that
what did not change need not be drawn again.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from elevation.room.model import Ref
from elevation.setting_out.as_built import seen_floor
from elevation.setting_out.model import LayerOut, PanelOut, Profile, SetOut, Span, TreatmentOut
from elevation.sheet import inks
from elevation.sheet.draw_board import board_group
from elevation.sheet.draw_cloth import cloth_records, outline_path
from elevation.sheet.draw_drape import hang, hem_at
from elevation.sheet.draw_dress import blind_group, pelmet_group
from elevation.sheet.draw_face import GHOST_DASH, draw_face
from elevation.sheet.draw_heading import before_rod, heading_kind, heading_records
from elevation.sheet.draw_lining import lining_records
from elevation.sheet.draw_obstacle import draw_obstacle
from elevation.sheet.draw_opening import draw_opening
from elevation.sheet.draw_pattern import pattern_records
from elevation.sheet.draw_pool import pool_records
from elevation.sheet.draw_rod import bracket_records, rod_records
from elevation.sheet.draw_tied import tied_records
from elevation.sheet.draw_titles import ENGLISH, bracket_title, opening_title, panel_title, rod_title, wall_title
from elevation.sheet.leaning import lean
from elevation.sheet.paths import height_at, path_through
from elevation.sheet.records import LAYERS, NARROW, WIDE, Group, Ink, Path, Pen, Record
from elevation.trade.model import Trade
from elevation.words import Style

Position = Literal["open", "closed", "drawn"]
Cover = tuple[float, float, float]  # left, right and top of cloth that hides what is behind it

_GHOST = Pen(Ink.GHOST, NARROW, GHOST_DASH)
_HALO = Pen(inks.with_alpha(Ink.PAPER, 0.6), WIDE)


class View(Struct, frozen=True, gc=False):
    """What of the treatments is shown.

    Attributes
    ----------
    panels : str
        The position in which panels are drawn: ``drawn`` (as the file says), ``open``, ``closed``; ``none`` for no cloth.
    stack : bool
        Dashed outlines of the open position, where the panels are drawn otherwise, and of the closed one where open.
    """

    panels: Literal["open", "closed", "drawn", "none"] = "drawn"
    stack: bool = True


AS_DRAWN = View()


def draw_wall(set_out: SetOut, trade: Trade, view: View = AS_DRAWN, style: Style = ENGLISH) -> tuple[Group, ...]:
    """The whole wall without annotation, in the order in which it is laid down.

    Parameters
    ----------
    set_out : SetOut
        Wall mm, y up.
    trade : Trade
        Headings and rod ends, to know how they look.
    view : View
        Which position of the panels is drawn.
    style : Style
        How the groups' titles are said.

    Returns
    -------
    tuple of Group
        Sorted by layer; each group's ``ref`` is the real Ref of what it draws.
    """
    groups = [draw_face(set_out, wall_title(set_out, style))]
    groups.extend(draw_opening(opening, opening_title(opening, style)) for opening in set_out.openings)
    groups.extend(draw_obstacle(obstacle, style) for obstacle in set_out.obstacles)
    for treatment in set_out.treatments:
        groups.extend(draw_treatment(treatment, set_out.floor, trade, view, style))
    return in_order(groups)


def in_order(groups: list[Group]) -> tuple[Group, ...]:
    """The groups by layer, those of one layer in the order given."""
    return tuple(sorted(groups, key=lambda group: LAYERS.index(group.layer)))


def draw_treatment(
    treatment: TreatmentOut, floor: Profile, trade: Trade, view: View, style: Style = ENGLISH
) -> tuple[Group, ...]:
    """One treatment: panels, rods and brackets of its layers, the far layer first.

    Depends on nothing but its arguments: keep the result while they are the same objects.
    """
    planes: list[list[Group]] = []
    nearer: list[Cover] = []
    for layer in treatment.layers:
        groups, covers = _draw_layer(treatment, layer, floor, trade, view, style, nearer)
        planes.append(groups)
        if layer.body != "sheer":
            nearer.extend(covers)
    around = [blind_group(treatment, style)] if treatment.blinds else []
    if treatment.pelmet is not None:
        around.append(pelmet_group(treatment, treatment.pelmet, style))
    return in_order([*(group for groups in reversed(planes) for group in groups), *around])


def panel_span(panel: PanelOut, position: Position) -> Span:
    """Left and right of the cloth in a position, mm."""
    return {"open": panel.open, "closed": panel.closed, "drawn": panel.drawn}[position]


def _draw_layer(
    treatment: TreatmentOut,
    layer: LayerOut,
    floor: Profile,
    trade: Trade,
    view: View,
    style: Style,
    nearer: Sequence[Cover],
) -> tuple[list[Group], list[Cover]]:
    """One layer, and what its cloth hides; rods come after all cloth, so a far one is cut where near cloth hangs."""
    line, height_mm = layer.support.line, layer.support.height_mm
    if line is not None:
        floor = seen_floor(floor, line, height_mm)
    boards = [] if layer.board is None else [board_group(layer.ref, layer.board, treatment, style)]
    kind = heading_kind(trade.headings.get(layer.heading))
    hanging_here = (*layer.panels, *layer.guests)
    names = [panel_title(number, treatment, style) for number in range(1, len(hanging_here) + 1)]
    groups: list[Group] = [*boards]
    hidden: list[Span] = [(left, right) for left, right, top in nearer if top > layer.support.height_mm]
    covers: list[Cover] = []
    if view.panels != "none":
        for panel, name in zip(hanging_here, names, strict=True):
            span = panel_span(panel, view.panels)
            if span[1] - span[0] <= 1e-6:
                continue
            if panel.on_mm:
                panel = replace(panel, fold_count=panel.folds_over(view.panels))
            drape = hang(panel, span, kind, layer.colour, layer.body, floor)
            # What never draws hangs tied for good.
            if panel.tie is not None and (view.panels == "drawn" or panel.stationary):
                hanging = tied_records(panel, panel.tie, drape, layer.pattern)
            else:
                marks = (
                    [] if layer.pattern is None else pattern_records(panel, drape, layer.pattern, layer.colour, layer.body)
                )
                hanging = [*cloth_records(drape, marks), *pool_records(panel, drape, floor)]
                # Cloth that passes a corner has its leading edge before the next wall.
                if layer.is_lined and not panel.on_mm:
                    hanging += lining_records(panel, drape, trade.allowances["lining-up"].length_mm)
            records = _along([*hanging, *heading_records(panel, drape, kind, layer.support)], layer)
            # A guest is drawn with the layer that it comes before.
            groups.append(Group((*layer.ref, panel.ref[-1]), f"panel-{view.panels}", name, tuple(records)))
            hidden.extend(before_rod(panel, drape, kind, layer.support))
            covers.append((*span, drape.top_mm))
    if view.stack:
        groups.extend(replace(one, records=tuple(_along(one.records, layer))) for one in _ghosts(layer, names, floor, view))
    shapes = (_end_shape(layer.support.left_ends, layer, trade), _end_shape(layer.support.right_ends, layer, trade))
    support_records = _along(rod_records(layer.support, shapes, hidden), layer)
    if support_records:
        groups.append(Group(layer.ref, "rod", rod_title(treatment, style, layer.support.kind), tuple(support_records)))
    for number, bracket in enumerate(layer.brackets, 1):
        before = [top for left, right, top in (*covers, *nearer) if left <= bracket.x_mm <= right]
        if line is not None:
            before = [top + bracket.height_mm - height_mm for top in before]
        pieces = bracket_records(bracket, layer.support.diameter_mm, max(before, default=None))
        if pieces:
            groups.append(Group(bracket.ref, "bracket", bracket_title(number, treatment, style), tuple(pieces)))
    return groups, covers


def _along(records: Sequence[Record], layer: LayerOut) -> list[Record]:
    """Rod and cloth along the line that was read, where it is not level."""
    line = layer.support.line
    return list(records) if line is None else lean(records, line, layer.support.height_mm)


def _end_shape(row_id: str, layer: LayerOut, trade: Trade) -> str:
    """What an end of a rod looks like, by its row."""
    row = trade.ends.get(row_id or layer.support.ends)
    return row.shape if row is not None else "none"


def _ghosts(layer: LayerOut, names: list[str], floor: Profile, view: View) -> list[Group]:
    """Dashed outlines of where the panels also stand: open, or closed where they are shown open."""
    other: Position = "closed" if view.panels == "open" else "open"
    groups: list[Group] = []
    for panel, name in zip((*layer.panels, *layer.guests), names, strict=True):
        span = panel_span(panel, other)
        shown: Span = panel_span(panel, view.panels) if view.panels != "none" else (0.0, 0.0)
        if span[1] - span[0] <= 1e-6 or max(abs(span[0] - shown[0]), abs(span[1] - shown[1])) < 1.0:
            continue
        groups.append(Group((*layer.ref, panel.ref[-1]), "stack", name, _ghost(panel, span, floor)))
    return groups


def _ghost(panel: PanelOut, span: Span, floor: Profile) -> tuple[Record, ...]:
    """The outline of the other position but for the fixed edge, which both share; haloed to be seen on any cloth."""
    left, right = span
    lead, fixed = (right, left) if panel.side == "left" else (left, right)
    hem_lead = max(hem_at(panel.hem, lead), height_at(floor, lead))
    hem_fixed = max(hem_at(panel.hem, fixed), height_at(floor, fixed))
    steps = path_through(((fixed, panel.top_mm), (lead, panel.top_mm), (lead, hem_lead), (fixed, hem_fixed)))
    return (Path(steps, _HALO), Path(steps, _GHOST))


__all__ = [
    "Position", "Ref", "View", "draw_face", "draw_obstacle", "draw_opening", "draw_treatment", "draw_wall", "in_order",
    "opening_title", "outline_path", "panel_span", "wall_title",
]  # fmt: skip
