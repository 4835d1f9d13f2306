"""Stretches of wall as (left, right) pairs: union and common length."""

from __future__ import annotations

from collections.abc import Iterable

from elevation.setting_out.model import Span


def union(spans: Iterable[Span]) -> list[Span]:
    """The stretches covered by at least one span, apart from each other, left to right."""
    ordered = sorted(spans)
    found: list[Span] = []
    for left, right in ordered:
        if right <= left:
            continue
        if found and left <= found[-1][1]:
            if right > found[-1][1]:
                found[-1] = (found[-1][0], right)
        else:
            found.append((left, right))
    return found


def common(spans: Iterable[Span], left_mm: float, right_mm: float) -> float:
    """Length that spans which stand apart have in common with one stretch."""
    total = 0.0
    for left, right in spans:
        a, b = max(left, left_mm), min(right, right_mm)
        if b > a:
            total += b - a
    return total
