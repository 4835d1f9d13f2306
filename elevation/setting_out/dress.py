"""Pelmets and valances before the rods, blinds behind them: where they land, and what glass they cover."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

from elevation.room.model import Blind, Pelmet
from elevation.setting_out.covers import Cover, box
from elevation.setting_out.model import BlindOut, LayerOut, OpeningOut, PelmetOut, SupportOut

_IRON_IN_MM = 50.8
"""The outer angle irons of a shelf stand 2 in in from its ends (common practice, no source)."""

_ALIKE = 1e-9
"""Slopes that only float noise tells apart are one."""

_CORD_IN_MM = 12.0
"""How far in from a blind's end its cord hangs, to draw it (common practice, no source)."""


def pelmet_of(pelmet: Pelmet, layers: Sequence[LayerOut], irons_mm: float) -> PelmetOut:
    """A pelmet before all rods of a treatment.

    Parameters
    ----------
    pelmet : Pelmet
    layers : sequence of LayerOut
        At least one.
    irons_mm : float
        The farthest from one angle iron under its shelf to the next.
    """
    left = min(layer.support.left_mm for layer in layers) - pelmet.left.mm
    right = max(layer.support.right_mm for layer in layers) + pelmet.right.mm
    # It leans with its rods where all of them lean alike; over rods that do not it is level, over the highest end.
    tilt, middle = layers[0].support.tilt, (left + right) / 2
    if any(abs(layer.support.tilt - tilt) > _ALIKE for layer in layers):
        tilt = 0.0
    over = max(_over(layer.support, tilt, middle) for layer in layers)
    top = over + pelmet.above.mm
    return PelmetOut(
        pelmet.kind,
        left,
        top - pelmet.depth.mm,
        right,
        top,
        pelmet.projection.mm,
        over,
        _irons(left, right, irons_mm),
        tilt,
    )


def _over(support: SupportOut, tilt: float, middle_mm: float) -> float:
    """The highest that a rod's centre line reaches over a line of that slope, at ``middle_mm``."""
    own = (support.left_mm + support.right_mm) / 2
    more = abs(support.tilt - tilt) * (support.right_mm - support.left_mm) / 2
    return support.height_mm + tilt * (middle_mm - own) + more


def _irons(left: float, right: float, apart_mm: float) -> tuple[float, ...]:
    """Evenly along a shelf, the outer ones just within its returns."""
    inset = min(_IRON_IN_MM, (right - left) / 4)
    spread = right - left - 2 * inset
    bays = max(1, ceil(spread / apart_mm - 1e-9)) if apart_mm > 0 else 1
    return tuple(left + inset + spread * bay / bays for bay in range(bays + 1))


def blind_of(blind: Blind, opening: OpeningOut) -> BlindOut:
    """The blind of one opening: under its head inside the reveal, or on the wall above its casing."""
    in_reveal = blind.place == "reveal"
    middle = (opening.left_mm + opening.right_mm) / 2
    if blind.width is not None:
        half = blind.width.mm / 2
    else:
        half = (opening.right_mm - opening.left_mm) / 2 + (0.0 if in_reveal else opening.casing_mm)
    if in_reveal:
        # Under a round or sloping head it can only hang where the opening is as wide as it is.
        top = min(opening.left_top_mm, opening.right_top_mm)
        bottom = top - blind.height.mm
        # A reveal that was not measured is taken to be as deep as the box: nothing is found from a guess.
        back = -(blind.projection.mm if opening.reveal_mm is None else opening.reveal_mm)
        out = back + blind.projection.mm
    else:
        bottom = opening.casing_top_mm + blind.above.mm
        top = bottom + blind.height.mm
        back, out = 0.0, blind.projection.mm
    cord_x = None
    if blind.cord != "none":
        cord_x = middle - half + _CORD_IN_MM if blind.cord_side == "left" else middle + half - _CORD_IN_MM
    return BlindOut(
        opening=opening.ref,
        in_reveal=in_reveal,
        left_mm=middle - half,
        bottom_mm=bottom,
        right_mm=middle + half,
        top_mm=top,
        back_mm=back,
        out_mm=out,
        hem_mm=bottom - (blind.drop.mm if blind.drop is not None else 0.0),
        cord=blind.cord,
        cord_x_mm=cord_x,
    )


def boxes_of(pelmet: PelmetOut | None, blinds: Sequence[BlindOut]) -> tuple[Cover, ...]:
    """What always covers the glass behind it."""
    found = [box(blind.left_mm, blind.bottom_mm, blind.right_mm, blind.top_mm) for blind in blinds]
    if pelmet is not None:
        found.append(cover_of(pelmet))
    return tuple(found)


def cover_of(pelmet: PelmetOut) -> Cover:
    """What a pelmet covers."""
    ends = [(x, pelmet.up_at(x)) for x in (pelmet.left_mm, pelmet.right_mm)]
    return Cover(tuple((x, pelmet.bottom_mm + up) for x, up in ends), tuple((x, pelmet.top_mm + up) for x, up in ends))


def dropped_of(blinds: Sequence[BlindOut]) -> tuple[Cover, ...]:
    """What blinds that are let down cover just now."""
    return tuple(
        box(blind.left_mm, blind.hem_mm, blind.right_mm, blind.bottom_mm)
        for blind in blinds
        if blind.hem_mm < blind.bottom_mm
    )
