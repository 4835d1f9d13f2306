"""Stack-back: what a panel takes along the rod when it is pushed open.

Three bases, always said: a stack squeezed by hand and measured; flat cloth on hand-drawn rings; pleats built up from their
number and the thickness of their bundles.
"""

from __future__ import annotations

from msgspec import Struct

from elevation.trade.model import BodyRow, HeadingRow
from elevation.words import Message, Mm, msg

CLOTH_MM = 1371.6
"""The width of cloth (54 in) that stack figures are given for."""


class Stack(Struct, frozen=True, gc=False):
    """A stack in mm: the least and most to expect, the usual figure, and what it rests on."""

    low_mm: float
    typical_mm: float
    high_mm: float
    basis: Message


def stack_of(
    flat_mm: float,
    heading: HeadingRow,
    body: BodyRow,
    measured_mm: float | None = None,
    packet_mm: float | None = None,
) -> Stack:
    """The stack of one panel.

    Parameters
    ----------
    flat_mm : float
        Flat width of all its pieces together.
    heading, body : rows of the trade's tables
    measured_mm : float or None
        The stack squeezed together by hand and measured; it overrides the tables.
    packet_mm : float or None
        What the track's own sheet says; it overrides the tables, not the measure.
    """
    if measured_mm is not None:
        return Stack(measured_mm, measured_mm, measured_mm, _MEASURED)
    if packet_mm is not None:
        return Stack(packet_mm, packet_mm, packet_mm, _PACKET)
    widths = flat_mm / CLOTH_MM
    if heading.stack_model == "pleated-on-cord":
        factor, basis = body.pleated_factor, _PLEATED
    else:
        factor, basis = body.stack_factor, flat_basis(heading.stack_mm * body.stack_factor)
    scale = widths * factor
    plus = heading.stack_plus_mm
    return Stack(
        scale * heading.stack_low_mm + plus,
        scale * heading.stack_mm + plus,
        scale * heading.stack_high_mm + plus,
        basis,
    )


_MEASURED = msg("measured: squeezed together by hand")
_PACKET = msg("as the track's own sheet says")
_PLEATED = msg(
    "pleats by number and bundle, after the published table for pairs on cord-drawn rods; hand-drawn rings stack tighter"
)


def flat_basis(per_width_mm: float) -> Message:
    """What the default for flat cloth on hand-drawn rings rests on."""
    return msg(
        "flat cloth drawn by hand: about {stack} for each {cloth} of it, common practice; squeeze yours and type it",
        stack=Mm(per_width_mm),
        cloth=Mm(CLOTH_MM),
    )


def traverse_pair_stack(rod_mm: float, heading: HeadingRow, overlap_mm: float, return_mm: float) -> float:
    """Both stacks together of a pleated pair on a cord-drawn rod before the cloth is chosen.

    Parameters
    ----------
    rod_mm : float
        Face of the rod.
    heading : HeadingRow
        A pleated one; its usual fullness is taken.
    overlap_mm : float
        By how much the leading edges overlap, in all.
    return_mm : float
        Return to the wall at each end.
    """
    flat = (rod_mm + overlap_mm + 2 * return_mm) * heading.fullness_typical
    return flat / CLOTH_MM * heading.stack_mm + 2 * heading.stack_plus_mm


def traverse_one_way_stack(rod_mm: float, heading: HeadingRow, return_mm: float) -> float:
    """The stack of one pleated panel that draws one way on a cord-drawn rod: no overlap, one leading edge."""
    flat = (rod_mm + 2 * return_mm) * heading.fullness_typical
    return flat / CLOTH_MM * heading.stack_mm + heading.stack_plus_mm


def traverse_rod_for_glass(glass_mm: float, heading: HeadingRow, overlap_mm: float, return_mm: float) -> float:
    """The face of the rod that leaves ``glass_mm`` clear between the two stacks of a pleated pair.

    The stack grows with the rod in proportion, so the rod is found without trying.
    """
    share = heading.fullness_typical * heading.stack_mm / CLOTH_MM
    fixed = 2 * heading.stack_plus_mm + share * (overlap_mm + 2 * return_mm)
    return (glass_mm + fixed) / (1 - share)
