"""Ready-made panels for one layer, in words: best length for this height, height for the next, widths, panels in hand."""

from __future__ import annotations

from msgspec import Struct

from elevation.room.model import Room
from elevation.setting_out.model import LayerOut, PanelOut
from elevation.setting_out.ready_width import ready_width
from elevation.trade.model import Trade
from elevation.trade.ready import Fit, WidthFit, best, fits, next_longer
from elevation.trade.tables import limit_of
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, Ratio, msg, msg_plural, term


class Ready(Struct, frozen=True, gc=False):
    """What ready-made panels would do in one layer.

    ``wished_mm`` is the finished length that would hang as wished; ``best`` and ``longer`` what the shops have.
    ``in_hand`` is the panel of the layer that is known by a length of its own, ``off_mm`` by how much its label may be
    wrong (0: it was measured). ``width`` is the ready-made width that comes nearest to the fullness wished, ``fullness``.
    """

    wished_mm: float
    best: Fit | None
    longer: Fit | None
    in_hand: PanelOut | None
    off_mm: float
    width: WidthFit | None = None
    fullness: float = 0.0


def ready_for(room: Room, layer: LayerOut, trade: Trade) -> Ready | None:
    """Ready-made panels for a layer, of the market of the room's unit; None where no hem is wished or no panel hangs."""
    if not layer.panels:
        return None
    panel = min(layer.panels, key=lambda one: one.hem_low_mm)
    wished = _wished(room, panel, layer, trade)
    if wished is None or wished <= 0:
        return None
    found = fits(trade.ready_made.values(), room.unit, wished, layer.support.height_mm)
    chosen = best(found, _limit(room, trade, "hem-low") + room.graduation_mm / 2)
    known = panel if panel.length_by else None
    off = _limit(room, trade, "label-off") if panel.length_by == "label" else 0.0
    width, fullness = ready_width(room, layer, trade)
    return Ready(wished, chosen, next_longer(found, chosen), known, off, width, fullness)


def _limit(room: Room, trade: Trade, limit_id: str) -> float:
    own = room.limits.get(limit_id)
    return limit_of(trade, limit_id) if own is None else own.mm


def _wished(room: Room, panel: PanelOut, layer: LayerOut, trade: Trade) -> float | None:
    """The finished length that would hang as wished: to the hem's own height or length, else clear of the real floor."""
    if layer.wish.length_mm is not None:
        return layer.wish.length_mm
    if layer.wish.hem_mm is not None:
        return panel.top_mm - layer.wish.hem_mm
    if not panel.length_by:
        return panel.finished_length_mm
    if panel.gap_low_mm is None:
        return None
    floor = panel.hem_low_mm - panel.gap_low_mm
    gap = _limit(room, trade, "hem-clear-default") if panel.target_gap_mm is None else panel.target_gap_mm
    return panel.top_mm - floor - gap


def ready_lines(ready: Ready, layer: LayerOut) -> tuple[Message, ...]:
    """The same, line by line."""
    lines: list[Message] = []
    panel = ready.in_hand
    if panel is not None and panel.finished_length_mm is not None:
        lines += _in_hand(panel, ready, layer)
    if ready.best is not None:
        lines.append(_fitting(ready.best))
    if ready.longer is not None:
        lines.append(
            msg(
                "Ready-made {name} would hang as wished from a rod at {height}, {by} higher.",
                name=term(ready.longer.row.name),
                height=Mm(ready.longer.rod_mm),
                by=Mm(ready.longer.over_mm),
            )
        )
    if ready.width is not None:
        lines.append(_wide(ready.width, ready.fullness))
    return tuple(lines)


def _wide(fit: WidthFit, wished: float) -> Message:
    return msg_plural(
        "{count} ready-made piece {wide} wide in each panel makes it {got} times as full ({wished} are wished).",
        "{count} ready-made pieces {wide} wide in each panel make it {got} times as full ({wished} are wished).",
        count=fit.count,
        wide=term(fit.row.name),
        got=Ratio(fit.fullness, 2),
        wished=Ratio(wished, 2),
    )


def _fitting(fit: Fit) -> Message:
    name = term(fit.row.name)
    if abs(fit.over_mm) <= TOUCH_MM:
        return msg("Ready-made {name} hangs just as wished.", name=name)
    if fit.over_mm > 0:
        return msg("Ready-made {name} hangs {by} lower than wished.", name=name, by=Mm(fit.over_mm))
    return msg("Ready-made {name} hangs {by} higher than wished.", name=name, by=Mm(-fit.over_mm))


def _in_hand(panel: PanelOut, ready: Ready, layer: LayerOut) -> list[Message]:
    long = panel.finished_length_mm or 0.0
    height = layer.support.height_mm + long - ready.wished_mm
    lines = [
        msg("The panel in hand, {long} long, hangs as wished from a rod at {height}.", long=Mm(long), height=Mm(height))
    ]
    if ready.off_mm > 0 and panel.gap_low_mm is not None:
        lines.append(
            msg(
                "That is its label; panels are off by up to {off}. Until it is measured its hem hangs from {low} to {high} "
                "over the floor: measure it before you mark.",
                off=Mm(ready.off_mm, about=True),
                low=Mm(panel.gap_low_mm - ready.off_mm),
                high=Mm(panel.gap_low_mm + ready.off_mm),
            )
        )
    return lines
