"""Two things timed in turn in one process; only their ratio is worth anything."""

from __future__ import annotations

import gc
import statistics
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager

from msgspec import Struct

from elevation.window.start import collect_again


class Row(Struct, frozen=True):
    """One row of the table: ratio is work over reference, both medians in ms."""

    name: str
    work_ms: float
    reference_ms: float
    at_most: float
    p95: float | None = None
    note: str = ""

    @property
    def ratio(self) -> float:
        """Median of the work over the median of the reference."""
        return self.work_ms / self.reference_ms if self.reference_ms else float("inf")


def once(work: Callable[[], object]) -> float:
    """Milliseconds of one call."""
    start = time.perf_counter()
    work()
    return (time.perf_counter() - start) * 1000


@contextmanager
def collecting() -> Iterator[None]:
    """The collector as the program has it once its first picture stands."""
    before = gc.get_threshold()
    gc.collect()
    collect_again()
    try:
        yield
    finally:
        gc.unfreeze()
        gc.set_threshold(*before)


def alternate(
    work: Callable[[], object], reference: Callable[[], object], runs: int, warm: int = 5
) -> tuple[list[float], list[float]]:
    """Times of both in turn (A B A B ...), the first ``warm`` pairs left out."""
    gc.collect()
    ours, theirs = [], []
    for run in range(runs + warm):
        a, b = once(work), once(reference)
        if run >= warm:
            ours.append(a)
            theirs.append(b)
    return ours, theirs


def row(name: str, ours: list[float], theirs: list[float], at_most: float, note: str = "") -> Row:
    """A row from alternating times."""
    reference = statistics.median(theirs)
    p95 = statistics.quantiles(ours, n=20)[-1] / reference if len(ours) > 20 else None
    return Row(name, statistics.median(ours), reference, at_most, p95, note)
