"""Tie-backs: how high they hold the panels, and how wide the gathered cloth is."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec.structs import replace

from elevation.findings.model import Sticking
from elevation.findings.naming import opening_name, side_name
from elevation.handles.context import Context, Family, HoldFigure, Scale, dressed_layers, dressed_of, make, place_of
from elevation.handles.model import Handle
from elevation.handles.ranks import NEIGHBOUR, PROPORTION
from elevation.room.edits import replace_at
from elevation.room.find import layer_of
from elevation.room.model import Ref, Room
from elevation.setting_out.model import PanelOut
from elevation.units import Length
from elevation.words import msg

HEIGHT, WAIST = "tie-height", "tie-waist"
_NEAREST = 0.06
_LEAST_MM = 20.0


def _hold(ref: Ref, axis: str) -> HoldFigure:
    def write(room: Room, figure: Length, _alone: bool) -> Room:
        tie = layer_of(room, ref).tie
        if tie is None:  # pragma: no cover - the handle is made of it
            return room
        made = replace(tie, hold="above-floor", at=figure) if axis == HEIGHT else replace(tie, waist=figure)
        return replace_at(room, ref[:4], tie=made)

    return write


def _handles(context: Context) -> Iterable[Handle]:
    for dressed in dressed_layers(context):
        own = dressed.layer.tie
        for panel in dressed.landed.panels:
            tie = panel.tie
            if tie is None or own is None:
                continue
            x, y = tie.hook
            is_left = panel.side == "left"
            drop = panel.top_mm - tie.hem_mm
            params = {"side": side_name(panel.side), "where": place_of(dressed)}
            yield make(
                HEIGHT,
                panel.ref,
                (x, y),
                "y",
                y,
                (tie.hem_mm + _NEAREST * drop, panel.top_mm - _NEAREST * drop),
                Scale(tie.floor_mm, 1),
                own.at if own.hold == "above-floor" else None,
                _hold(panel.ref, HEIGHT),
                msg("height of the {side} tie-back, {where}", **params),
                msg("above the floor"),
                low_why=msg("the hem"),
                high_why=msg("the heading"),
            )
            wide = panel.drawn[1] - panel.drawn[0]
            edge = tie.waist[1] if is_left else tie.waist[0]
            scale = Scale(x, 1 if is_left else -1)
            ends = (scale.from_shown(min(_LEAST_MM, wide)), scale.from_shown(wide))
            yield make(
                WAIST,
                panel.ref,
                (edge, y),
                "x",
                edge,
                (min(ends), max(ends)),
                scale,
                own.waist,
                _hold(panel.ref, WAIST),
                msg("waist of the {side} tied panel, {where}", **params),
                msg("wide at the tie-back"),
                low_why=msg("as tight as cloth is gathered") if is_left else msg("the panel's own width"),
                high_why=msg("the panel's own width") if is_left else msg("as tight as cloth is gathered"),
            )


def _places(handle: Handle, context: Context, _alone: bool) -> Iterable[Sticking]:
    dressed = dressed_of(context, handle)
    panel = next(panel for panel in dressed.landed.panels if panel.ref == handle.ref)
    if panel.tie is None:  # pragma: no cover - the handle is made of it
        return
    if handle.axis == WAIST:
        yield from _waists(handle, panel)
        return
    drop = panel.top_mm - panel.tie.hem_mm
    yield Sticking(HEIGHT, handle.ref, panel.tie.hem_mm + drop / 3, msg("a third of the drop up"), PROPORTION)
    yield Sticking(HEIGHT, handle.ref, panel.tie.hem_mm + drop * 2 / 3, msg("two thirds of the drop up"), PROPORTION)
    for opening in dressed.landed_treatment.openings:
        yield Sticking(
            HEIGHT,
            handle.ref,
            opening.bottom_mm,
            msg("level with the sill, {opening}", opening=opening_name(opening)),
            NEIGHBOUR,
        )


def _waists(handle: Handle, panel: PanelOut) -> Iterable[Sticking]:
    if panel.tie is not None:  # pragma: no branch - the handle is made of it
        x = panel.tie.hook[0] + (panel.stack_mm if panel.side == "left" else -panel.stack_mm)
        if handle.low_mm <= x <= handle.high_mm:
            yield Sticking(WAIST, handle.ref, x, msg("as wide as its stack"), PROPORTION)


FAMILY = Family(frozenset({HEIGHT, WAIST}), _handles, _places)
