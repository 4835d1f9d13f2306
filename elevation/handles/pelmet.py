"""A pelmet's lower edge, its ends, and how high its top stands over the rod."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from msgspec.structs import replace

from elevation.findings.model import Sticking
from elevation.findings.naming import where
from elevation.handles.context import (
    Context,
    Family,
    HoldFigure,
    Scale,
    ceiling_over_mm,
    dressed_layers,
    make,
    right_end_mm,
)
from elevation.handles.model import Handle
from elevation.handles.ranks import PROPORTION
from elevation.room.edits import replace_at
from elevation.room.find import treatment_of
from elevation.room.model import Pelmet, Ref, Room
from elevation.setting_out.model import PelmetOut, TreatmentOut
from elevation.setting_out.tilt import lowest
from elevation.units import Length
from elevation.words import msg

DEPTH, TOP, LEFT, RIGHT = "pelmet-depth", "pelmet-top", "pelmet-left", "pelmet-right"
_LEAST_MM = 40.0


def _hold(ref: Ref, field: str) -> HoldFigure:
    def write(room: Room, figure: Length, alone: bool) -> Room:
        pelmet = treatment_of(room, ref).pelmet
        if pelmet is None:  # pragma: no cover - the handle is made of it
            return room
        fields: dict[str, Any] = {field: figure}
        if not alone and field in ("left", "right"):
            fields = {"left": figure, "right": figure}
        return replace_at(room, ref, pelmet=replace(pelmet, **fields))

    return write


def _handles(context: Context) -> Iterable[Handle]:
    for dressed in dressed_layers(context):
        treatment, own = dressed.landed_treatment, dressed.treatment.pelmet
        if treatment.pelmet is not None and own is not None and dressed.landed is treatment.layers[0]:
            yield from _upright(context, treatment, treatment.pelmet, own)
            yield from _sideways(context, treatment, treatment.pelmet, own)


def _upright(context: Context, treatment: TreatmentOut, pelmet: PelmetOut, own: Pelmet) -> Iterable[Handle]:
    middle, place = (pelmet.left_mm + pelmet.right_mm) / 2, where(treatment)
    yield make(
        DEPTH,
        treatment.ref,
        (middle, pelmet.bottom_mm),
        "y",
        pelmet.bottom_mm,
        (0.0, pelmet.top_mm - _LEAST_MM),
        Scale(pelmet.top_mm, -1),
        own.depth,
        _hold(treatment.ref, "depth"),
        msg("lower edge of the pelmet, {where}", where=place),
        msg("deep"),
        low_why=msg("the floor"),
        high_why=msg("as shallow as a pelmet is"),
    )
    yield make(
        TOP,
        treatment.ref,
        (middle, pelmet.top_mm),
        "y",
        pelmet.top_mm,
        (pelmet.over_mm, _ceiling_mm(context, pelmet) - context.set_out.crown_mm),
        Scale(pelmet.over_mm, 1),
        own.above,
        _hold(treatment.ref, "above"),
        msg("top of the pelmet, {where}", where=place),
        msg("over the rod"),
        low_why=msg("the rod"),
        high_why=msg("the ceiling"),
    )


def _ceiling_mm(context: Context, pelmet: PelmetOut) -> float:
    """How high its top may stand in its middle."""
    ceiling = context.set_out.ceiling
    if pelmet.tilt and ceiling.known:
        return lowest(ceiling, (pelmet.left_mm, pelmet.right_mm), pelmet.tilt)
    return ceiling_over_mm(context.set_out, pelmet.left_mm, pelmet.right_mm)


def _sideways(context: Context, treatment: TreatmentOut, pelmet: PelmetOut, own: Pelmet) -> Iterable[Handle]:
    middle, place = (pelmet.bottom_mm + pelmet.top_mm) / 2, where(treatment)
    for axis, x, held, sign in ((LEFT, pelmet.left_mm, own.left, -1), (RIGHT, pelmet.right_mm, own.right, 1)):
        base = x - sign * held.mm
        span = (0.0, base) if axis == LEFT else (base, right_end_mm(context.set_out))
        if axis == LEFT:
            name = msg("left end of the pelmet, {where}", where=place)
        else:
            name = msg("right end of the pelmet, {where}", where=place)
        yield make(
            axis,
            treatment.ref,
            (x, middle + pelmet.up_at(x)),
            "x",
            x,
            span,
            Scale(base, sign),
            held,
            _hold(treatment.ref, "left" if axis == LEFT else "right"),
            name,
            msg("beyond the rod"),
            low_why=msg("the wall's end") if axis == LEFT else msg("the rod's end"),
            high_why=msg("the rod's end") if axis == LEFT else msg("the wall's end"),
        )


def _places(handle: Handle, context: Context, _alone: bool) -> Iterable[Sticking]:
    treatment = next(one for one in context.set_out.treatments if one.ref == handle.ref)
    pelmet = treatment.pelmet
    if pelmet is None:  # pragma: no cover - the handle is made of it
        return
    if handle.axis == DEPTH:
        long = [
            p.finished_length_mm for layer in treatment.layers for p in layer.panels if p.finished_length_mm is not None
        ]
        if long:
            sixth, fifth = pelmet.top_mm - max(long) / 6, pelmet.top_mm - max(long) / 5
            yield Sticking(DEPTH, handle.ref, sixth, msg("a sixth of the curtain's length"), PROPORTION)
            yield Sticking(DEPTH, handle.ref, fifth, msg("a fifth of the curtain's length"), PROPORTION)
    elif handle.axis == LEFT:
        edge = min(layer.support.metal_left_mm for layer in treatment.layers)
        yield Sticking(LEFT, handle.ref, edge, msg("just past what ends the rod"))
    elif handle.axis == RIGHT:
        edge = max(layer.support.metal_right_mm for layer in treatment.layers)
        yield Sticking(RIGHT, handle.ref, edge, msg("just past what ends the rod"))


FAMILY = Family(frozenset({DEPTH, TOP, LEFT, RIGHT}), _handles, _places)
