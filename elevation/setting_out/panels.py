"""Panels of one layer: spans, fullness, rings, stack, folds and hem."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.room.model import Layer, Panel, Ref, TieBack
from elevation.setting_out.as_built import seen_floor
from elevation.setting_out.facts import Defaults, WallFacts
from elevation.setting_out.hems import HemTarget, hem_of, length_by, target_of
from elevation.setting_out.model import BracketOut, PanelOut, Profile, SupportOut
from elevation.setting_out.opening import Placed
from elevation.setting_out.tie import tie_of
from elevation.setting_out.travel import Mover, Way, ways_of
from elevation.trade.counting import rings_of
from elevation.trade.folds import fold_depth
from elevation.trade.model import FabricRow, HeadingRow, Trade
from elevation.trade.stack import Stack, stack_of
from elevation.trade.tables import row_of
from elevation.trade.weight import Cloth, cloth_of, weight_of
from elevation.units.tolerance import TOUCH_MM


class Making(Struct, frozen=True, gc=False):
    """What a layer's panels are and where they go: all of them that does not depend on the floor."""

    heading: HeadingRow
    cloth: Cloth
    stacks: tuple[Stack, ...]
    ways: tuple[Way, ...]
    target: HemTarget
    below: float


def making_of(
    layer: Layer,
    covered: tuple[Placed, ...],
    brackets: Sequence[BracketOut],
    support: SupportOut,
    defaults: Defaults,
    trade: Trade,
) -> Making | None:
    """Cloth, stacks and ways of a layer's panels; None where it has none.

    Parameters
    ----------
    layer : Layer
    covered : tuple of Placed
        The openings that the treatment covers.
    brackets : sequence of BracketOut
        Of the layer's rod, left to right.
    support : SupportOut
        That rod.
    defaults, trade
        What holds for the wall and for the trade.
    """
    if not layer.panels:
        return None
    heading = row_of(trade.headings, layer.heading, "heading")
    body = row_of(trade.bodies, layer.fabric.body, "body")
    fabric = layer.fabric
    cloth = cloth_of(
        body,
        _fabric(fabric.row, trade),
        fabric.grams,
        _fabric(fabric.lining, trade),
        _fabric(fabric.interlining, trade),
    )
    stacks = [
        stack_of(
            panel.flat_width.mm * panel.count,
            heading,
            body,
            panel.stack.mm if panel.stack else None,
            support.stack_mm if support.kind == "track" else None,
        )
        for panel in layer.panels
    ]
    movers = [
        Mover(
            panel.parks,
            panel.flat_width.mm * panel.count,
            stack.typical_mm,
            panel.stationary,
            panel.drawn.mm if panel.drawn else None,
        )
        for panel, stack in zip(layer.panels, stacks, strict=True)
    ]
    is_track = support.kind == "track"
    ways = ways_of(
        movers,
        brackets,
        support.left_mm,
        support.right_mm,
        rings=heading.carries == "rings" or is_track,
        parks_outside=heading.parks_outside,
        ring_mm=defaults.parked_ring_mm,
        carried=(True, True) if is_track else support.carried,
        overlap_mm=support.overlap_mm if is_track else 0.0,
    )
    openings = tuple(placed.out for placed in covered)
    below = _below(layer, heading, support, defaults)
    return Making(heading, cloth, tuple(stacks), tuple(ways), target_of(layer.hem, openings, defaults), below)


def panels_of(
    ref: Ref, layer: Layer, making: Making, support: SupportOut, facts: WallFacts, defaults: Defaults
) -> tuple[PanelOut, ...]:
    """Set out every panel of a layer over its floor.

    Parameters
    ----------
    ref : Ref
        Of the layer.
    layer : Layer
    making : Making
    support : SupportOut
        The layer's rod.
    facts, defaults
        What holds for the wall and for the trade.
    """
    return tuple(
        _panel(
            (*ref, panel.id),
            panel,
            making.heading,
            making.cloth,
            stack,
            way,
            making.target,
            support.height_mm,
            making.below,
            facts,
            defaults,
            layer.tie,
            support.line if support.planned_mm is None else None,
        )
        for panel, stack, way in zip(layer.panels, making.stacks, making.ways, strict=True)
    )


def _fabric(row_id: str | None, trade: Trade) -> FabricRow | None:
    return None if row_id is None else row_of(trade.fabrics, row_id, "cloth")


def _below(layer: Layer, heading: HeadingRow, support: SupportOut, defaults: Defaults) -> float:
    """Top of the cloth below the centre line: as measured, else as its heading hangs; under a track from its glides."""
    if layer.drop is not None:
        return layer.drop.mm
    if support.kind == "track":
        return support.diameter_mm / 2 + defaults.track_glide_mm
    return heading.drop_below(support.diameter_mm)


def _panel(
    ref: Ref,
    panel: Panel,
    heading: HeadingRow,
    cloth: Cloth,
    stack: Stack,
    way: Way,
    target: HemTarget,
    rod_height: float,
    below: float,
    facts: WallFacts,
    defaults: Defaults,
    tie: TieBack | None,
    line: Profile | None,
) -> PanelOut:
    flat = panel.flat_width.mm * panel.count
    top = rod_height - below
    closed_wide = way.closed[1] - way.closed[0]
    rings = rings_of(panel.flat_width.mm, heading.pitch_mm, heading.even)
    folds = max(1, round((rings - 1) * heading.folds)) * panel.count
    seen = None
    if line is not None and target.height_mm is not None:
        seen = seen_floor(Profile(((0.0, target.height_mm),)), line, rod_height)
    hem = hem_of(panel, target, top, facts.floor, way.closed, way.drawn, _over(way), defaults.hem_clear_mm, seen)
    weight = weight_of(
        cloth, flat, hem.finished_mm, heading.turned_in_mm + defaults.hem_allowance_mm, panel.count, panel.weight_kg
    )
    # Where the cloth has no more room closed than bunched up, it is not drawn at all, and a ratio would only astonish.
    is_drawn_out = closed_wide > stack.low_mm + TOUCH_MM
    fullness = flat / closed_wide if is_drawn_out and not panel.stationary else None
    return PanelOut(
        ref=ref,
        flat_width_mm=flat,
        count=panel.count,
        finished_length_mm=hem.finished_mm,
        top_mm=top,
        heading_mm=below,
        side=way.side,
        stationary=panel.stationary,
        parks_at_mm=way.open[0] if way.side == "left" else way.open[1],
        travel=way.travel,
        open=way.open,
        closed=way.closed,
        drawn=way.drawn,
        rings=rings * panel.count,
        fullness=fullness,
        stack_low_mm=stack.low_mm,
        stack_mm=stack.typical_mm,
        stack_high_mm=stack.high_mm,
        stack_basis=stack.basis,
        fold_count=folds,
        fold_depth_mm=fold_depth(flat / folds, closed_wide / folds),
        hem=hem.line,
        hem_low_mm=hem.low_mm,
        gap_low_mm=hem.gap_low_mm,
        gap_high_mm=hem.gap_high_mm,
        target_gap_mm=target.gap_mm,
        cannot_pass=way.cannot_pass,
        mass_kg=None if weight is None else weight.kg,
        mass_basis=None if weight is None else weight.basis,
        length_by=length_by(panel),
        tie=None
        if tie is None
        else tie_of(tie, way.side, way.drawn, top, hem.line, stack.typical_mm, facts.floor, defaults),
    )


def _over(way: Way) -> tuple[float, float]:
    """All the wall that the panel hangs before between open and closed."""
    return (
        min(way.open[0], way.closed[0], way.drawn[0]),
        max(way.open[1], way.closed[1], way.drawn[1]),
    )
