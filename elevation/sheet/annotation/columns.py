"""Which heights stand in which column left and right of the wall."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct
from msgspec.structs import replace

from elevation.room.model import Ref, Treatment
from elevation.setting_out.model import SetOut
from elevation.sheet.annotation import treatment_chains, wall_chains
from elevation.sheet.annotation.bands import Slot
from elevation.sheet.annotation.model import Chain
from elevation.sheet.annotation.remembered import AnnotationKeeper
from elevation.units.format import format_length
from elevation.words import Style, msg, say

LEFT = 3
"""Columns of heights at the left, before the whole height."""
RIGHT = 2
"""Columns of heights, and of finished lengths, at the right."""


class Columns(Struct, frozen=True, gc=False):
    """Columns left and right, nearest first, with the opening numbers over each, and facts that found no column."""

    left: tuple[Slot, ...]
    right: tuple[Slot, ...]
    left_headers: tuple[str, ...]
    right_headers: tuple[str, ...]
    unshown: tuple[tuple[Ref, str], ...]


def columns(set_out: SetOut, treatments: Mapping[Ref, Treatment], style: Style, keep: AnnotationKeeper) -> Columns:
    """Share out the heights: equal ones once, the first columns at the left, more at the right, the rest as text."""
    found = _heights(set_out, treatments, style, keep)
    several = len(found) > 1
    left: list[Slot] = [(chain,) for chain, _ in found[:LEFT]]
    left_headers = [_numbers(numbers) if several else "" for _, numbers in found[:LEFT]]
    whole = wall_chains.whole_height(set_out, style)
    if whole is not None and not any(len(slot[0].segments) == 1 and _same_span(slot[0], whole) for slot in left):
        left.append((whole,))
        left_headers.append("")
    right: list[Slot] = [
        (chain,) for laid in set_out.treatments for chain in treatment_chains.finished(set_out, laid, style)
    ]
    right = _distinct(right)[:RIGHT]
    right_headers = ["" for _ in right]
    for chain, numbers in found[LEFT : LEFT + RIGHT]:
        right.append((_at_right(set_out, chain),))
        right_headers.append(_numbers(numbers))
    for chain in wall_chains.far_heights(set_out, style):
        right.append((chain,))
        right_headers.append("")
    unshown = tuple((chain.owner, _as_text(chain, numbers, style)) for chain, numbers in found[LEFT + RIGHT :])
    return Columns(tuple(left), tuple(right), tuple(left_headers), tuple(right_headers), unshown)


def _heights(
    set_out: SetOut, treatments: Mapping[Ref, Treatment], style: Style, keep: AnnotationKeeper
) -> list[tuple[Chain, list[int]]]:
    found: dict[tuple[tuple[int, int], ...], tuple[Chain, list[int]]] = {}
    covered: set[Ref] = set()
    for laid in set_out.treatments:
        covered.update(opening.ref for opening in laid.openings)
        metal = keep.metal(set_out, laid, treatments.get(laid.ref), style)
        chain = metal.heights
        if chain is not None:  # pragma: no branch - a treatment has an opening, which has heights
            found.setdefault(_signature(chain), (chain, []))[1].extend(opening.number for opening in laid.openings)
        for single in metal.floor_to_rod:
            found.setdefault(_signature(single), (single, []))[1].extend(opening.number for opening in laid.openings)
    shown = [{round(segment.high) for segment in chain.segments} for chain, _ in found.values()]
    for opening in set_out.openings:
        if opening.ref in covered:
            continue
        levels = {round(level[0]) for level in wall_chains.opening_levels(opening)}
        if any(levels <= heights for heights in shown):
            continue
        chain = wall_chains.opening_heights(set_out, opening, style)
        if chain is not None:
            found.setdefault(_signature(chain), (chain, []))[1].append(opening.number)
    return list(found.values())


def _at_right(set_out: SetOut, chain: Chain) -> Chain:
    """The chain with its extension lines from the right-hand outline."""
    return Chain(
        chain.owner,
        tuple(
            replace(
                segment,
                low_from=wall_chains.edge_mm(set_out, segment.low, "right"),
                high_from=wall_chains.edge_mm(set_out, segment.high, "right"),
            )
            for segment in chain.segments
        ),
    )


def _signature(chain: Chain) -> tuple[tuple[int, int], ...]:
    return tuple((round(segment.low), round(segment.high)) for segment in chain.segments)


def _same_span(chain: Chain, whole: Chain) -> bool:
    return abs(chain.low - whole.low) < wall_chains.LEAST_MM and abs(chain.high - whole.high) < wall_chains.LEAST_MM


def _distinct(slots: list[Slot]) -> list[Slot]:
    seen: dict[tuple[tuple[int, int], ...], Slot] = {}
    for slot in slots:
        seen.setdefault(_signature(slot[0]), slot)
    return list(seen.values())


def _numbers(numbers: list[int]) -> str:
    """1, 2, 3, 7 as ``1–3, 7``."""
    parts: list[str] = []
    start = last = None
    for number in [*sorted(set(numbers)), None]:
        if last is not None and number == last + 1:
            last = number
            continue
        if start is not None and last is not None:
            parts.append(str(start) if start == last else f"{start}–{last}" if last > start + 1 else f"{start}, {last}")
        start = last = number
    return ", ".join(parts)


def _as_text(chain: Chain, numbers: list[int], style: Style) -> str:
    heights = " / ".join(
        format_length(segment.high, style.unit, style.graduation_mm, decimal_mark=style.decimal_mark)
        for segment in chain.segments
    )
    return say(msg("opening {numbers}: heights {heights}", numbers=_numbers(numbers), heights=heights), style)
