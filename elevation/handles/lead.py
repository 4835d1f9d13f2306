"""The leading edge of each panel that draws: how far it is drawn just now."""

from __future__ import annotations

from collections.abc import Iterable

from elevation.findings.model import Sticking
from elevation.findings.naming import opening_name, side_name
from elevation.handles.context import (
    Context,
    Dressed,
    Family,
    HoldFigure,
    Scale,
    dressed_layers,
    dressed_of,
    make,
    place_of,
)
from elevation.handles.model import Handle
from elevation.handles.ranks import NEIGHBOUR, PROPORTION
from elevation.room.edits import replace_at
from elevation.room.model import Ref, Room
from elevation.setting_out.model import PanelOut
from elevation.units import Length
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, msg

AXIS = "lead"


def _edge_mm(panel: PanelOut, span: tuple[float, float]) -> float:
    """The leading edge of a panel that covers ``span``."""
    return span[1] if panel.side == "left" else span[0]


def _beside(dressed: Dressed, panel: PanelOut) -> float | None:
    """Where the panel that comes the other way stops this one, if one does: those between are pushed before it."""
    edge_mm, panels = _edge_mm(panel, panel.drawn), dressed.landed.panels
    if panel.side == "left":
        edges = [p.drawn[0] for p in panels if p.side == "right" and p.drawn[0] >= edge_mm - TOUCH_MM]
        between = [p for p in panels if p is not panel and p.side == "left" and p.drawn[0] >= edge_mm - TOUCH_MM]
        far_mm, sign = min(edges, default=None), -1
        between = [p for p in between if far_mm is not None and p.drawn[1] <= far_mm + TOUCH_MM]
    else:
        edges = [p.drawn[1] for p in panels if p.side == "left" and p.drawn[1] <= edge_mm + TOUCH_MM]
        between = [p for p in panels if p is not panel and p.side == "right" and p.drawn[1] <= edge_mm + TOUCH_MM]
        far_mm, sign = max(edges, default=None), 1
        between = [p for p in between if far_mm is not None and p.drawn[0] >= far_mm - TOUCH_MM]
    if far_mm is None:
        return None
    return far_mm + sign * sum(p.drawn[1] - p.drawn[0] for p in between)


def _hold(ref: Ref, open_mm: float, half_mm: float) -> HoldFigure:
    def write(room: Room, figure: Length, _alone: bool) -> Room:
        # Squeezed to its stack it is open, whatever the stack comes to measure.
        return replace_at(room, ref, drawn=None if figure.mm <= open_mm + half_mm else figure)

    return write


def _handles(context: Context) -> Iterable[Handle]:
    for dressed in dressed_layers(context):
        drawn = {panel.id: panel.drawn for panel in dressed.layer.panels}
        for panel in dressed.landed.panels:
            open_mm = panel.open[1] - panel.open[0]
            most_mm = min(panel.travel[1] - panel.travel[0], panel.flat_width_mm)
            if panel.stationary or most_mm <= open_mm + TOUCH_MM:
                continue
            fixed_mm = panel.drawn[0] if panel.side == "left" else panel.drawn[1]
            scale = Scale(fixed_mm, 1 if panel.side == "left" else -1)
            beside_mm = _beside(dressed, panel)
            far_mm, why = scale.from_shown(most_mm), msg("as far as it draws")
            if beside_mm is not None and scale.shown_mm(beside_mm) < most_mm - TOUCH_MM:
                far_mm, why = beside_mm, msg("the other panel")
            near_mm = scale.from_shown(open_mm)
            value_mm = _edge_mm(panel, panel.drawn)
            is_left = panel.side == "left"
            yield make(
                AXIS,
                panel.ref,
                (value_mm, (panel.top_mm + panel.hem_low_mm) / 2),
                "x",
                value_mm,
                (min(near_mm, far_mm), max(near_mm, far_mm)),
                scale,
                drawn[panel.ref[-1]],
                _hold(panel.ref, open_mm, context.room.graduation_mm / 2),
                msg(
                    "leading edge of the {side} panel, {where}",
                    side=side_name(panel.side),
                    where=place_of(dressed),
                ),
                msg("drawn"),
                low_why=msg("fully open") if is_left else why,
                high_why=why if is_left else msg("fully open"),
            )


def _places(handle: Handle, context: Context, _alone: bool) -> Iterable[Sticking]:
    dressed = dressed_of(context, handle)
    panel = next(panel for panel in dressed.landed.panels if panel.ref == handle.ref)
    for value_mm, reason, rank in _reasons(dressed, panel):
        yield Sticking(handle.axis, handle.ref, value_mm, reason, rank)


def _reasons(dressed: Dressed, panel: PanelOut) -> Iterable[tuple[float, Message, int]]:
    open_mm, closed_mm = _edge_mm(panel, panel.open), _edge_mm(panel, panel.closed)
    yield closed_mm, msg("fully closed"), NEIGHBOUR
    yield (open_mm + closed_mm) / 2, msg("half drawn"), PROPORTION
    for opening in dressed.landed_treatment.openings:
        name = opening_name(opening)
        for edge_mm in (opening.glass_left_mm, opening.glass_right_mm):
            yield edge_mm, msg("at the edge of the glass, {opening}", opening=name), NEIGHBOUR
        yield (opening.left_mm + opening.right_mm) / 2, msg("the middle of {opening}", opening=name), PROPORTION


FAMILY = Family(frozenset({AXIS}), _handles, _places)
