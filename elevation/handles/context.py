"""What the families of handles look at, and the lengths that they write."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from elevation.findings.model import Sticking
from elevation.findings.naming import where
from elevation.findings.shapes import extremes
from elevation.handles.model import Handle
from elevation.room.corners import SHARED, lead_ref
from elevation.room.find import layer_of
from elevation.room.model import Layer, Ref, Room, Treatment, Wall
from elevation.setting_out.model import LayerOut, OpeningOut, Point, SetOut, Span, TreatmentOut
from elevation.trade.model import Trade
from elevation.units import Length, length_of
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, msg

_FINER = (1, 2, 4)
_OTHER_MARKS = (("mm", 1.0), ("mm", 0.1), ("in", 25.4 / 64))


class Context(Struct, frozen=True, gc=False):
    """A room, one of its walls, and that wall set out."""

    room: Room
    wall: Wall
    set_out: SetOut
    trade: Trade


class Dressed(Struct, frozen=True, gc=False):
    """One layer as decided and as it landed, with the treatment that it belongs to."""

    treatment: Treatment
    landed_treatment: TreatmentOut
    layer: Layer
    landed: LayerOut


def place_of(dressed: Dressed) -> Message:
    """The openings that a layer covers; of two layers also which of them it is, for both have handles of the same name."""
    name, layers = where(dressed.landed_treatment), dressed.treatment.layers
    if len(layers) == 1:
        return name
    if dressed.landed.ref[3] == layers[0].id:
        return msg("{name}, front layer", name=name)
    if len(layers) == 2:
        return msg("{name}, back layer", name=name)
    return msg("{name}, layer {layer}", name=name, layer=dressed.landed.ref[3])


def dressed_layers(context: Context) -> tuple[Dressed, ...]:
    """The layers of the scheme that was set out, in order."""
    set_out = context.set_out
    scheme = next((scheme for scheme in context.wall.schemes if scheme.id == set_out.scheme), None)
    if scheme is None:  # pragma: no cover - treatments are set out of a scheme only
        return ()
    treatments = {treatment.id: treatment for treatment in scheme.treatments}
    found: list[Dressed] = []
    for landed_treatment in set_out.treatments:
        treatment = treatments[landed_treatment.ref[2]]
        layers = {layer.id: layer for layer in treatment.layers}
        found.extend(
            as_led(context, Dressed(treatment, landed_treatment, layers[landed.ref[3]], landed))
            for landed in landed_treatment.layers
        )
    return tuple(found)


UNMEASURED_MM = 3000.0
"""How far beyond an assumed wall end or ceiling things can be dragged: what was not measured is no limit."""


def right_end_mm(set_out: SetOut) -> float:
    """The farthest that anything can stand to the right: the wall's right end where that was measured."""
    return set_out.width_mm if set_out.known_width else set_out.width_mm + UNMEASURED_MM


def ceiling_over_mm(set_out: SetOut, left_mm: float, right_mm: float) -> float:
    """The highest that anything can stand between two x: under the ceiling's lowest point there."""
    lowest_mm, _ = extremes(set_out.ceiling, left_mm, right_mm)
    return lowest_mm if set_out.ceiling.known else lowest_mm + UNMEASURED_MM


def rounded(room: Room, mm: float, before: Length | None) -> Length:
    """``mm`` at the room's nearest graduation; ``before`` itself where that says the same."""
    return kept(length_of(mm, room.unit, room.graduation_mm), before)


def kept(length: Length, before: Length | None) -> Length:
    """``length``, or ``before`` where both are as long: what somebody typed is not written anew for nothing."""
    return before if before is not None and abs(length.mm - before.mm) <= TOUCH_MM else length


def exact(room: Room, mm: float, before: Length | None = None) -> Length:
    """``mm`` as exactly as marks down to a quarter of the room's graduation say it, or fine marks of the other unit.

    For what has to follow when something else was moved, so that what stood still does not creep, even where some
    lengths were typed in inches and others in millimetres.
    """
    marks = [(room.unit, room.graduation_mm / finer) for finer in _FINER]
    for unit, mark_mm in (*marks, *_OTHER_MARKS):
        length = length_of(mm, unit, mark_mm)
        if abs(length.mm - mm) <= TOUCH_MM:
            return kept(length, before)
    return rounded(room, mm, before)


def shifted(room: Room, length: Length, by_mm: float) -> Length:
    """A length that grew by ``by_mm`` because something beside it moved."""
    return exact(room, length.mm + by_mm, length)


class Scale(Struct, frozen=True, gc=False):
    """How a held figure stands on the wall: ``coordinate = base + sign * figure``."""

    base_mm: float
    sign: int

    def shown_mm(self, value_mm: float) -> float:
        """The figure of a wall coordinate."""
        return (value_mm - self.base_mm) * self.sign

    def from_shown(self, figure_mm: float) -> float:
        """The wall coordinate of a figure."""
        return self.base_mm + self.sign * figure_mm


HoldFigure = Callable[[Room, Length, bool], Room]
"""``(room, figure, alone) -> Room``: holds exactly this figure."""

AS_FAR = msg("as far as it goes")


def make(
    axis: str,
    ref: Ref,
    at: Point,
    along: Literal["x", "y"],
    value_mm: float,
    span: Span,
    scale: Scale,
    before: Length | None,
    hold: HoldFigure,
    name: Message,
    shown_as: Message,
    *,
    both_mm: Span | None = None,
    low_why: Message = AS_FAR,
    high_why: Message = AS_FAR,
) -> Handle:
    """A handle whose figure stands on ``scale`` and is written by ``hold``.

    Parameters
    ----------
    axis, ref, at, along, value_mm, name, shown_as, both_mm, low_why, high_why
        As in ``Handle``.
    span : (float, float)
        Hard range of the coordinate; it is widened to hold ``value_mm``, so that what stands wrong can be moved.
    scale : Scale
        How the held figure stands on the wall.
    before : Length or None
        The figure held now.
    hold : callable
        Writes a figure.
    """

    def hold_kept(room: Room, figure: Length, alone: bool) -> Room:
        return hold(room, kept(figure, before), alone)

    def move(room: Room, to_mm: float, alone: bool) -> Room:
        return hold(room, rounded(room, scale.shown_mm(to_mm), before), alone)

    return Handle(
        axis, ref, at, along, value_mm, min(span[0], value_mm), max(span[1], value_mm), name, shown_as,
        scale.shown_mm, scale.from_shown, move, hold_kept, both_mm, low_why, high_why,
    )  # fmt: skip


class Family(Struct, frozen=True, gc=False):
    """One kind of handle: its axes, how its handles are made, and where they may stick for its own reasons.

    ``handles`` is ``(context) -> handles``; ``places`` is ``(handle, context, alone) -> stickings``.
    """

    axes: frozenset[str]
    handles: Callable[[Context], Iterable[Handle]]
    places: Callable[[Handle, Context, bool], Iterable[Sticking]]


def dressed_of(context: Context, handle: Handle) -> Dressed:
    """The layer that a handle of a rod, bracket, hem or panel belongs to."""
    return next(dressed for dressed in dressed_layers(context) if dressed.landed.ref == handle.ref[:4])


def as_led(context: Context, dressed: Dressed) -> Dressed:
    """A layer with the rod of its treatment's first leg, where what all legs have in common is decided."""
    if dressed.treatment.continues is None:
        return dressed
    lead = lead_ref(context.room, dressed.landed.ref)
    if lead == dressed.landed.ref:
        return dressed
    rod = layer_of(context.room, lead).rod
    shared = {name: getattr(rod, name) for name in SHARED}
    return replace(dressed, layer=replace(dressed.layer, rod=replace(dressed.layer.rod, **shared)))


def uncovered(context: Context, treatment: TreatmentOut) -> tuple[OpeningOut, ...]:
    """The openings of the wall that a treatment does not cover."""
    covered = {opening.ref for opening in treatment.openings}
    return tuple(opening for opening in context.set_out.openings if opening.ref not in covered)
