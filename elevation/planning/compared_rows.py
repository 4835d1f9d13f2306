"""The table of schemes side by side: one row a figure, a cell a scheme; what reads the same differs in nothing."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from msgspec import Struct

from elevation.findings.model import Finding
from elevation.planning.buying.model import BuyingList
from elevation.planning.buying.said import sum_said, unpriced_said
from elevation.planning.cloth_words import amount
from elevation.planning.daylight import kept_over_wall
from elevation.planning.daylight_words import share_said
from elevation.planning.house import counts_said
from elevation.room.model import Room
from elevation.room.style import style_for
from elevation.setting_out.model import LayerOut, SetOut, TreatmentOut
from elevation.setting_out.profile import height_at
from elevation.trade.model import Trade
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, Percent, Ratio, Style, msg, say

_MOST_LENGTHS = 3
"""More lengths than this in one cell are told as the least and the greatest."""


class Seen(Struct, frozen=True):
    """One scheme of those compared; ``id`` is None for the bare wall."""

    id: str | None
    name: Message
    set_out: SetOut
    findings: tuple[Finding, ...]


class Row(Struct, frozen=True):
    """One figure of every scheme, in their order; None where a scheme has none. ``differs``: it does not read the same."""

    label: Message
    values: tuple[Message | None, ...]
    differs: bool


def rows_of(room: Room, shown: Sequence[Seen], bought: Sequence[BuyingList], trade: Trade) -> tuple[Row, ...]:
    """The figures of some schemes of one wall, a row each; a row that has no figure at all is left out.

    Parameters
    ----------
    room : Room
    shown : sequence of Seen
    bought : sequence of BuyingList
        What each of them is bought for.
    trade : Trade
    """
    style = style_for(room)
    laid = [one.set_out for one in shown]
    table: tuple[tuple[Message, Sequence[Message | None]], ...] = (
        (msg("Rod over the floor"), [_each(wall, _height, style) for wall in laid]),
        (msg("Rod, end to end"), [_each(wall, _length, style) for wall in laid]),
        (msg("Beyond the opening"), [_each(wall, _reach, style) for wall in laid]),
        (msg("Glass clear, open"), [_glass(wall, is_open=True) for wall in laid]),
        (msg("Glass clear, closed"), [_glass(wall, is_open=False) for wall in laid]),
        (msg("Daylight kept, closed"), [_daylight(room, wall, trade) for wall in laid]),
        (msg("Panels, flat"), [_each_layer(wall, _flat, style) for wall in laid]),
        (msg("Panels, long"), [_each_layer(wall, _long, style) for wall in laid]),
        (msg("Fullness"), [_each_layer(wall, _fullness, style) for wall in laid]),
        (msg("Hem over the floor"), [_each(wall, _hem, style) for wall in laid]),
        (msg("Cloth to buy"), [_cloth(one, style.unit) for one in bought]),
        (msg("Cost"), [_cost(one) for one in bought]),
        (msg("Findings"), [_found(one) for one in shown]),
    )
    rows = (Row(label, tuple(values), _differ(values, style)) for label, values in table)
    return tuple(row for row in rows if any(value is not None for value in row.values))


def _differ(values: Iterable[Message | None], style: Style) -> bool:
    # By what is read: two heights that both read 84 in are one height to whoever holds the tape.
    return len({None if value is None else say(value, style) for value in values}) > 1


def _joined(values: Iterable[Message | None], style: Style) -> Message | None:
    """What is said of several things, each wording once, in their order."""
    once = {say(value, style): value for value in values if value is not None}
    lengths = [length.value for value in once.values() if isinstance(length := value.params.get("length"), Mm)]
    if len(once) == len(lengths) > _MOST_LENGTHS:
        return msg("{low} to {high}", low=Mm(min(lengths)), high=Mm(max(lengths)))
    found: Message | None = None
    for value in once.values():
        found = value if found is None else msg("{first} / {second}", first=found, second=value)
    return found


Told = Callable[[SetOut, TreatmentOut], Message | None]


def _each(wall: SetOut, tell: Told, style: Style) -> Message | None:
    return _joined((tell(wall, laid) for laid in wall.treatments), style)


def _each_layer(wall: SetOut, tell: Callable[[LayerOut, Style], Message | None], style: Style) -> Message | None:
    return _joined((tell(layer, style) for laid in wall.treatments for layer in laid.layers), style)


def _height(wall: SetOut, laid: TreatmentOut) -> Message:
    support = laid.layers[0].support
    floor = height_at(wall.floor, (support.left_mm + support.right_mm) / 2)
    return msg("{length}", length=Mm(support.height_mm - floor))


def _length(_wall: SetOut, laid: TreatmentOut) -> Message:
    return msg("{length}", length=Mm(laid.layers[0].support.length_mm))


def _reach(_wall: SetOut, laid: TreatmentOut) -> Message | None:
    if not laid.openings:  # pragma: no cover - a treatment that covers nothing is not set out
        return None
    clear = laid.clearances
    left, right = clear.left_of_opening_mm, clear.right_of_opening_mm
    if abs(left - right) <= TOUCH_MM:
        return msg("{reach} each", reach=Mm(left))
    return msg("{left} left, {right} right", left=Mm(left), right=Mm(right))


def _hem(_wall: SetOut, laid: TreatmentOut) -> Message | None:
    low, high = laid.clearances.hem_to_floor_low_mm, laid.clearances.hem_to_floor_high_mm
    if low is None or high is None:
        return None
    if high <= 0:
        return msg("lies on it")
    return msg("{length}", length=Mm(low)) if low >= 0 else msg("touches it")


def _flat(layer: LayerOut, style: Style) -> Message | None:
    widths = [panel.flat_width_mm / panel.count for panel in layer.panels for _ in range(panel.count)]
    counts: dict[str, tuple[int, float]] = {}
    for width in widths:
        key = say(msg("{length}", length=Mm(width)), style)
        counts[key] = (counts.get(key, (0, width))[0] + 1, width)
    return _joined((msg("{count} × {width}", count=count, width=Mm(width)) for count, width in counts.values()), style)


def _long(layer: LayerOut, style: Style) -> Message | None:
    lengths = [panel.finished_length_mm for panel in layer.panels if panel.finished_length_mm is not None]
    return _joined((msg("{length}", length=Mm(length)) for length in lengths), style)


def _fullness(layer: LayerOut, _style: Style) -> Message | None:
    full = [panel.fullness for panel in layer.panels if panel.fullness is not None]
    return msg("{ratio}", ratio=Ratio(min(full), 1)) if full else None


def _glass(wall: SetOut, *, is_open: bool) -> Message | None:
    """Of all glass behind treatments together; where nothing hangs before it glass is simply clear."""
    area = sum(laid.glass.area_mm2 for laid in wall.treatments)
    if area <= 0:
        return msg("{share}", share=Percent(1.0)) if wall.openings and not wall.treatments else None
    clear = sum(
        laid.glass.area_mm2 * (laid.glass.clear_open if is_open else laid.glass.clear_closed) for laid in wall.treatments
    )
    return msg("{share}", share=Percent(clear / area))


def _daylight(room: Room, wall: SetOut, trade: Trade) -> Message | None:
    """What the closed cloth of all treatments keeps; from the least to the most where some cloth is not chosen yet."""
    if not wall.openings:
        return None
    kept, _ = kept_over_wall(room, wall, trade, "closed")
    return share_said(kept)


def _cloth(bought: BuyingList, unit: str) -> Message | None:
    """Face cloth, linings and interlinings that are bought off the bolt; ready-made panels take none."""
    cloths = [line for line in bought.lines if line.part.startswith("cloth:") and line.measure == "length"]
    total = sum(line.bought for line in cloths)
    return amount(total, unit) if total > 0 else None


def _cost(bought: BuyingList) -> Message | None:
    """What is known of the cost: never a sum that keeps silent about what has no price."""
    if not bought.windows:
        return None
    whole = bought.total()
    known = sum_said(whole)
    if not whole.unpriced:
        return known
    if known is None or not any(whole.cents.values()):
        return unpriced_said(whole)
    return msg("{known} and {rest}", known=known, rest=unpriced_said(whole))


def _found(one: Seen) -> Message | None:
    if one.id is None:
        return None
    return counts_said(one.findings, 0) if one.findings else msg("none")
