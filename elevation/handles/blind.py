"""How far a blind behind is let down."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec.structs import replace

from elevation.findings.model import Sticking
from elevation.findings.naming import opening_name
from elevation.handles.context import Context, Family, HoldFigure, Scale, dressed_layers, make
from elevation.handles.model import Handle
from elevation.handles.ranks import NEIGHBOUR, PROPORTION
from elevation.room.edits import replace_at
from elevation.room.find import treatment_of
from elevation.room.model import Ref, Room
from elevation.units import Length
from elevation.words import msg

AXIS = "blind-drop"


def _hold(ref: Ref) -> HoldFigure:
    def write(room: Room, figure: Length, _alone: bool) -> Room:
        blind = treatment_of(room, ref).blind
        # Not let down at all it is raised.
        return (
            room if blind is None else replace_at(room, ref, blind=replace(blind, drop=figure if figure.mm > 0 else None))
        )

    return write


def _handles(context: Context) -> Iterable[Handle]:
    for dressed in dressed_layers(context):
        treatment, own = dressed.landed_treatment, dressed.treatment.blind
        if own is None or not treatment.blinds or dressed.landed is not treatment.layers[0]:
            continue
        blind, opening = treatment.blinds[0], treatment.openings[0]
        low = min(opening.bottom_mm, blind.bottom_mm)
        yield make(
            AXIS,
            treatment.ref,
            ((blind.left_mm + blind.right_mm) / 2, blind.hem_mm),
            "y",
            blind.hem_mm,
            (low, blind.bottom_mm),
            Scale(blind.bottom_mm, -1),
            own.drop,
            _hold(treatment.ref),
            msg("lower edge of the blind, {opening}", opening=opening_name(opening)),
            msg("let down"),
            low_why=msg("the sill"),
            high_why=msg("raised"),
        )


def _places(handle: Handle, context: Context, _alone: bool) -> Iterable[Sticking]:
    treatment = next(one for one in context.set_out.treatments if one.ref == handle.ref)
    opening = treatment.openings[0]
    yield Sticking(AXIS, handle.ref, opening.glass_bottom_mm, msg("just covers the glass"), NEIGHBOUR)
    yield Sticking(
        AXIS, handle.ref, (opening.glass_bottom_mm + opening.glass_top_mm) / 2, msg("half the glass covered"), PROPORTION
    )


FAMILY = Family(frozenset({AXIS}), _handles, _places)
