"""Bars in good order: what is left over in one long piece, and alike cuts beside each other."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.cutting.model import Packed, Sizes


def one_offcut(packed: Sequence[Packed], sizes: Sizes) -> tuple[Packed, ...]:
    """The same bars, the emptiest of each kind that is bought emptied further into the others: one long offcut is of use.

    Pieces move as long as one of them fits a fuller bar's rest, the longest that fits first.
    """
    bars = [(bar.kind, list(bar.takes)) for bar in packed]

    def rest(at: int) -> int:
        kind, takes = bars[at]
        return sizes.rooms[kind] - sum(many * width for many, width in zip(takes, sizes.widths, strict=True))

    bought = [at for at, (kind, _) in enumerate(bars) if sizes.counts[kind] is None]
    if len(bars) > 1 and bought:
        emptiest = max(bought, key=lambda at: (rest(at), -at))
        for size, width in enumerate(sizes.widths):
            for at in sorted((at for at in range(len(bars)) if at != emptiest), key=lambda at: (rest(at), at)):
                while bars[emptiest][1][size] > 0 and rest(at) >= width:
                    bars[emptiest][1][size] -= 1
                    bars[at][1][size] += 1
    return tuple(Packed(kind, tuple(takes)) for kind, takes in bars if any(takes))


def in_order(packed: Sequence[Packed], sizes: Sizes) -> tuple[Packed, ...]:
    """Bars that are there first, then by kind; alike ones beside each other, those with the longest pieces first."""
    return tuple(
        sorted(packed, key=lambda bar: (sizes.counts[bar.kind] is None, bar.kind, tuple(-many for many in bar.takes)))
    )
