"""What hangs on a rod and how it sags, as plain numbers in mm, N and N/mm2."""

from __future__ import annotations

from msgspec import Struct

from elevation.trade.beam import Sagged


class SpanOut(Struct, frozen=True, gc=False):
    """The rod between two brackets, or from the outer one to its free end (``is_end``).

    ``sag_mm`` is the most that it sags at ``at_mm``, below the line through its brackets (a free end: below its bracket; 0
    where it only lifts); ``neat_mm`` and ``fair_mm`` are the limits that its length sets.
    """

    left_mm: float
    right_mm: float
    at_mm: float
    sag_mm: float
    neat_mm: float
    fair_mm: float
    is_end: bool = False


class HoldOut(Struct, frozen=True, gc=False):
    """What holds a bracket, or a mounting board.

    ``fixing`` is its row in the fixings table ("": none chosen). ``times`` is how many times the worst load, a tug with it,
    the fixing holds (1: just so; its safety factor is taken off already); None where that cannot be told, and ``why`` says
    why: ``wall`` (not known), ``chosen`` (no fixing), ``packet`` (its figures are not typed), ``short`` (no thread left in
    the wood), ``there`` (such a fixing finds nothing to hold in there), ``friction`` (a plug under a ceiling).
    ``load_n`` is the worst load with the tug; ``pull_n`` and ``shear_n`` what it asks of the worst fixing.
    """

    fixing: str = ""
    times: float | None = None
    why: str = ""
    load_n: float = 0.0
    pull_n: float = 0.0
    shear_n: float = 0.0
    factor: float = 0.0


class LoadsOut(Struct, frozen=True, gc=False):
    """What hangs on a rod and what that does to it.

    ``hung_n`` is what all its cloth, rings and glides weigh (what passes a corner: the most of it here), ``rod_n`` the
    rod itself. ``spans`` left to right; none where
    the rod's stiffness is not known. ``line`` is the sagged line and ``slopes`` those at the outer brackets in
    degrees (down into the rod positive), both with the panels as drawn and without the droop of brackets.
    ``stress`` is the most with panels where that is worst, in N/mm2 like ``stress_limit``.
    ``ends_n`` is what sockets or tubes bent back carry at either end, ``held`` what holds them there.
    """

    hung_n: float
    rod_n: float
    spans: tuple[SpanOut, ...] = ()
    line: Sagged | None = None
    stress: float | None = None
    stress_limit: float | None = None
    slopes: tuple[float, float] | None = None
    ends_n: tuple[float | None, float | None] = (None, None)
    held: tuple[HoldOut | None, HoldOut | None] = (None, None)
