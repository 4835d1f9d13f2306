"""The buying list as plain values, and the tally that its lines are added up in.

A part has a name of its own for tables and prices: ``kind:row`` (``bracket:shop-strap``).
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Literal

from msgspec import Struct

from elevation.room.model import Offer, Ref
from elevation.trade.model import PriceRow
from elevation.trade.yardage import exact
from elevation.words import Message

Measure = Literal["piece", "length"]

GROUPS = (
    "rods", "brackets", "ends", "rings", "panels", "cloth", "fixings", "boards", "dress", "tools", "consumables",
)  # fmt: skip
"""Groups of lines in the order in which they are read in the shop."""

HOUSE = -1
"""Stands for no window: tools and consumables belong to the house."""


class Window(Struct, frozen=True):
    """A treatment that things are bought for: where it is, what it is called, what a shop asks for it (None: not asked)."""

    room: int
    ref: Ref
    name: Message
    offer: Offer | None = None

    @property
    def offered(self) -> dict[str, int] | None:
        """The shop's price in cents, by currency."""
        return None if self.offer is None else {self.offer.currency: round(self.offer.price * 100)}


class Line(Struct, frozen=True):
    """One line of the list.

    Attributes
    ----------
    part : str
    group : str
        One of ``GROUPS``.
    name : Message
    measure : str
        ``piece``; or ``length``, whose amounts are mm.
    needed, shelf, bought, left : float
        What is needed; how much of it is there already; how much comes from the shop (whole packs); what is over then.
    packs : int
        How many packs (or steps of length) that is; 0 where nothing is bought.
    pack : float
        How much is in one.
    price : PriceRow or None
    cents : int or None
        What it costs in hundredths of the currency; None where no price is known, 0 where nothing is bought.
    shares : dict
        By the index of the window (``HOUSE`` for none): its share of ``cents``, together all of it; empty without a price.
    notes : tuple of Message
    windows : tuple of int
        Windows that it is for.
    """

    part: str
    group: str
    name: Message
    measure: Measure
    needed: float
    shelf: float
    bought: float
    left: float
    packs: int
    pack: float
    price: PriceRow | None
    cents: int | None
    shares: Mapping[int, int]
    notes: tuple[Message, ...]
    windows: tuple[int, ...]


class Sum(Struct, frozen=True):
    """What lines cost together, by currency in cents, and how many of them have no price.

    ``shared`` counts those without a price that are for other windows too: ``unpriced`` leaves them out, so that the rows
    of all windows and these, once, add up to everything.
    """

    cents: Mapping[str, int]
    unpriced: int
    shared: int = 0


class BuyingList(Struct, frozen=True):
    """All lines, in the order of ``GROUPS``, and the windows that they are for."""

    windows: tuple[Window, ...]
    lines: tuple[Line, ...]

    def total(self) -> Sum:
        """What everything costs; a line without a price is counted, never taken for nothing."""
        cents: dict[str, int] = {}
        for line in self.lines:
            if line.price is not None and line.cents is not None:
                cents[line.price.currency] = cents.get(line.price.currency, 0) + line.cents
        return Sum(cents, sum(line.cents is None for line in self.lines))

    def of_window(self, index: int) -> Sum:
        """A window's share of the lines that are for it; ``HOUSE`` for what is for none."""
        cents: dict[str, int] = {}
        unpriced = shared = 0
        for line in self.lines:
            if index not in line.windows:
                continue
            if line.price is not None and line.cents is not None:
                cents[line.price.currency] = cents.get(line.price.currency, 0) + line.shares.get(index, 0)
            if line.cents is None:
                unpriced += len(line.windows) == 1
                shared += len(line.windows) > 1
        return Sum(cents, unpriced, shared)

    def offered(self) -> dict[str, int] | None:
        """What shops ask for all windows, in cents by currency; None while one of them has no offer."""
        found: dict[str, int] = {}
        for window in self.windows:
            if window.offered is None:
                return None
            for currency, cents in window.offered.items():
                found[currency] = found.get(currency, 0) + cents
        return found or None


class _Entry:
    """One line while it is added up."""

    def __init__(self, group: str, name: Message, measure: Measure, step: float | None) -> None:
        self.group, self.name, self.measure, self.step = group, name, measure, step
        self.needed = Fraction(0)
        self.shelf = Fraction(0)
        self.weights: dict[int, Fraction] = {}
        self.notes: list[Message] = []


class Tally:
    """Adds up what is needed, part by part."""

    def __init__(self) -> None:
        self._entries: dict[str, _Entry] = {}

    def add(
        self,
        part: str,
        group: str,
        name: Message,
        amount: float,
        window: int = HOUSE,
        *,
        measure: Measure = "piece",
        step: float | None = None,
        there: float = 0.0,
        notes: tuple[Message, ...] = (),
    ) -> None:
        """Add to a part.

        Parameters
        ----------
        part, group : str
        name : Message
        amount : float
            Pieces, or mm.
        window : int
            What it is for.
        measure : str
        step : float or None
            Lengths: the shop cuts them in such steps, mm.
        there : float
            How much of the amount is in her hand already.
        notes : tuple of Message
        """
        entry = self._entries.setdefault(part, _Entry(group, name, measure, step))
        entry.needed += exact(amount)
        entry.shelf += exact(there)
        entry.weights[window] = entry.weights.get(window, Fraction(0)) + exact(amount)
        entry.notes.extend(note for note in notes if note not in entry.notes)

    def weigh(self, part: str, weights: Mapping[int, float]) -> None:
        """Say by what a part's cost is shared, where that is not by how many each window takes."""
        self._entries[part].weights = {window: exact(weight) for window, weight in weights.items()}

    def lines(
        self, shelf: Mapping[str, float], packs: Mapping[str, float], prices: Mapping[str, PriceRow]
    ) -> Iterator[Line]:
        """The lines in the order of their groups.

        Parameters
        ----------
        shelf : mapping
            By part: how much of it lies there.
        packs : mapping
            By kind of part: how many are in one pack.
        prices : mapping
            By part.
        """
        for group in GROUPS:
            for part, entry in self._entries.items():
                if entry.group == group:
                    yield _line(part, entry, shelf.get(part, 0.0), packs, prices.get(part))


def _line(part: str, entry: _Entry, on_shelf: float, packs: Mapping[str, float], price: PriceRow | None) -> Line:
    there = min(entry.needed, entry.shelf + exact(on_shelf))
    missing = entry.needed - there
    if price is not None and price.is_length != (entry.measure == "length"):
        # "4.50 for 10" says nothing about a length, nor "9.00 for a yard" about pieces.
        price = None
    if entry.measure == "length":
        pack = exact(entry.step or 1.0)
    elif price is not None:
        pack = exact(price.pack)
    else:
        pack = exact(packs.get(part.partition(":")[0], 1.0))
    count = math.ceil(missing / pack)
    bought = count * pack
    cents = _cents(bought, price) if count else 0
    return Line(
        part=part,
        group=entry.group,
        name=entry.name,
        measure=entry.measure,
        needed=float(entry.needed),
        shelf=float(there),
        bought=float(bought),
        left=float(bought - missing),
        packs=count,
        pack=float(pack),
        price=price,
        cents=cents,
        shares={} if cents is None else _parted(cents, entry.weights),
        notes=tuple(entry.notes),
        windows=tuple(entry.weights),
    )


def _cents(bought: Fraction, price: PriceRow | None) -> int | None:
    if price is None:
        return None
    # Half a cent goes up, as in a shop.
    return math.floor(bought / exact(price.pack) * exact(price.price) * 100 + Fraction(1, 2))


def _parted(cents: int, weights: Mapping[int, Fraction]) -> dict[int, int]:
    """Cents shared out by weight so that they add up: what is over goes to those who were rounded down most."""
    whole = sum(weights.values(), Fraction(0))
    if whole <= 0:
        return dict.fromkeys(weights, 0)
    exactly = {key: cents * weight / whole for key, weight in weights.items()}
    shares = {key: math.floor(value) for key, value in exactly.items()}
    over = cents - sum(shares.values())
    for key in sorted(exactly, key=lambda one: (shares[one] - exactly[one], one))[:over]:
        shares[key] += 1
    return shares
