"""The sewing sheet: pieces on the bolt, then a page or two a window: panels to make, or ready-made ones to alter."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from elevation.planning.cloth_words import amount
from elevation.planning.ready_words import Ready
from elevation.planning.sewing.altering_steps import altering_steps
from elevation.planning.sewing.model import Alteration, BoltPlan, SewnPanel
from elevation.planning.sewing.said import mark_rows
from elevation.planning.sewing.steps import cutting_steps, making_steps
from elevation.planning.sewing.valances import HungValance
from elevation.planning.sewing.whole import SewnLayer
from elevation.sheet.records import Picture
from elevation.sheet.work.hanging import step_parts
from elevation.sheet.work.page import Part, Sheet
from elevation.sheet.work.parts import SMALL, gap, heading, paragraph
from elevation.sheet.work.sewing_bolt import bolt_parts, piece_table
from elevation.sheet.work.sewing_marks import Fit, marks_parts
from elevation.sheet.work.sewing_panel import HIGHS, made_flat, panel_parts, ready_flat
from elevation.sheet.work.sewing_valance import valance_parts
from elevation.trade.model import Trade
from elevation.trade.tables import row_of
from elevation.words import Message, Mm, Style, msg, say, term

_NOTICE = msg("Cut and hem only by what was measured; the last hem is sewn on the hung panel.")


def cutting_sheet(bolts: Sequence[BoltPlan], sheet: Sheet) -> tuple[Picture, ...]:
    """The pages for the cutting table: every bolt of a room.

    Parameters
    ----------
    bolts : sequence of BoltPlan
    sheet : Sheet
    """
    style, width = sheet.style, sheet.width

    def made(fit: Fit) -> tuple[Picture, ...]:
        parts: list[Part] = []
        for bolt in bolts:
            parts.append(heading(_bolt_title(bolt, style), width))
            parts.append(paragraph(say(_bolt_words(bolt), style), width, SMALL, sticks=True))
            parts.extend(bolt_parts(bolt, width, style, is_tight=fit.is_small))
            parts.extend(piece_table(bolt, width, style, is_tight=fit.is_small))
        parts.append(heading(say(msg("At the table"), style), width))
        parts.extend(step_parts(cutting_steps(bolts), width, style))
        return sheet.lay(msg("Sewing sheet: cloth on the bolt"), parts, _NOTICE)

    return _fewest(made)


def _fewest(made: Callable[[Fit], tuple[Picture, ...]]) -> tuple[Picture, ...]:
    """The pages as they are read best; drawn tighter, and only then set smaller, where that saves one."""
    best: tuple[Picture, ...] = ()
    for how in (*(Fit(high) for high in HIGHS), Fit(HIGHS[-1], is_small=True)):
        pages = made(how)
        if len(pages) == 1:
            return pages
        # Where one page is never enough, low drawings at least keep tables together.
        if not best or len(pages) < len(best) or (not how.is_small and len(pages) == len(best)):
            best = pages
    return best


def _bolt_title(bolt: BoltPlan, style: Style) -> str:
    uses = {"face": msg("face"), "lining": msg("lining"), "interlining": msg("interlining")}
    return say(
        msg(
            "{cloth} · {use}, {width} wide, {bought}",
            cloth=bolt.name,
            use=uses[bolt.use],
            width=Mm(bolt.width_mm, about=True),
            bought=amount(bolt.bought_mm, style.unit),
        ),
        style,
    )


def _bolt_words(bolt: BoltPlan) -> Message:
    words = [msg("The squared end is on the left, tops point to it; marks run from there.")]
    if bolt.repeat_mm > 0:
        words.append(
            msg("Its pattern repeats every {repeat}, half a repeat lower on each next width.", repeat=Mm(bolt.repeat_mm))
            if bolt.half_drop
            else msg("Its pattern repeats every {repeat}.", repeat=Mm(bolt.repeat_mm))
        )
    if bolt.one_way:
        words.append(msg("Pile or print runs one way: never turn a piece round."))
    if bolt.turned:
        words.append(msg("Turned on its side: each panel is one stretch of it, its drop across the cloth."))
    if bolt.washed:
        words.append(msg("Drawn as it is after the wash."))
    found = words[0]
    for word in words[1:]:
        found = msg("{first} {then}", first=found, then=word)
    return found


def window_sheet(
    layers: Sequence[SewnLayer],
    ready: Sequence[Ready | None],
    valance: HungValance | None,
    sheet: Sheet,
    trade: Trade,
) -> tuple[Picture, ...]:
    """The pages of one window, its layers front to back.

    Parameters
    ----------
    layers : sequence of SewnLayer
    ready : sequence of Ready or None
        What the shops have, for each layer.
    valance : HungValance or None
    sheet : Sheet
        With its state, and its band where there is a *stop*.
    trade : Trade
    """
    style, width = sheet.style, sheet.width

    def made(fit: Fit) -> tuple[Picture, ...]:
        parts: list[Part] = []
        for layer, shops in zip(layers, ready, strict=True):
            parts.extend(_layer(layer, shops, len(layers), width, style, trade, fit))
        if valance is not None:
            parts.extend(valance_parts(valance, width, style, trade, fit))
        return sheet.lay(msg("Sewing sheet"), parts, _NOTICE)

    return _fewest(made)


def _layer(
    layer: SewnLayer, shops: Ready | None, count: int, width: float, style: Style, trade: Trade, fit: Fit
) -> list[Part]:
    row = row_of(trade.headings, layer.hung.layer.heading, "heading")
    parts = [heading(_layer_title(layer, count, term(row.name), style), width)]
    if layer.panels:
        parts.extend(_made(layer, width, style, trade, fit))
        steps = making_steps(layer, row, trade)
    elif layer.alterations:
        parts.extend(_ready(layer.alterations, width, style, fit))
        steps = altering_steps(layer, shops)
    else:
        text = msg("How long these panels become is not known yet: measure from rod to floor, or type a finished length.")
        return [*parts, paragraph(say(text, style), width)]
    return [*parts, gap(1.0), *step_parts(steps, width, style)]


def _layer_title(layer: SewnLayer, count: int, name: Message, style: Style) -> str:
    text = (
        msg("Panels to make, {heading}", heading=name) if layer.made else msg("Ready-made panels, {heading}", heading=name)
    )
    if count > 1:
        depth = [other.ref for other in layer.hung.laid.layers].index(layer.hung.layer.ref)
        text = msg("{panels}, front", panels=text) if depth == 0 else msg("{panels}, back", panels=text)
    return say(text, style)


def _made(layer: SewnLayer, width: float, style: Style, trade: Trade, fit: Fit) -> list[Part]:
    seam = trade.allowances["seam"].length_mm
    parts = panel_parts([made_flat(panel, seam, style) for panel in layer.panels], width, style, fit.high)
    parts.extend(paragraph(text, width, SMALL) for text in _otherwise(layer.panels, style))
    for group in _alike(layer.panels, style):
        names = [panel.name.mark for panel in group]
        parts.extend(marks_parts(group[0].marks, names, width, style, fit))
    return parts


def _otherwise(panels: Sequence[SewnPanel], style: Style) -> list[str]:
    """What to say where the drawing of the wall has much other cloth than whole widths make."""
    found: dict[tuple[float, float], list[str]] = {}
    for panel in panels:
        if abs(panel.drawn_mm - panel.hemmed_mm) > _MUCH * panel.hemmed_mm:
            found.setdefault((panel.drawn_mm, panel.hemmed_mm), []).append(say(panel.name.mark, style))
    return [
        say(
            msg(
                "{panels}: the wall is drawn with {drawn} of flat cloth, whole widths make {flat}. Type that width, and "
                "folds, rings and stack follow.",
                panels=", ".join(marks),
                drawn=Mm(drawn),
                flat=Mm(flat, about=True),
            ),
            style,
        )
        for (drawn, flat), marks in found.items()
    ]


_MUCH = 0.1
"""A tenth more or less cloth is not seen in the folds (common practice, no source)."""


def _alike(panels: Sequence[SewnPanel], style: Style) -> list[list[SewnPanel]]:
    """Panels whose marks read the same on the tape are told together."""
    found: dict[object, list[SewnPanel]] = {}
    for panel in panels:
        found.setdefault((panel.marks.kind, mark_rows(panel.marks, style)), []).append(panel)
    return list(found.values())


def _ready(panels: Sequence[Alteration], width: float, style: Style, fit: Fit) -> list[Part]:
    """Panels that were measured are drawn; one that only has a label is not."""
    parts = panel_parts([ready_flat(one, style) for one in panels if one.what != "measure"], width, style, fit.high)
    alike: dict[object, list[Alteration]] = {}
    for one in panels:
        if one.marks is not None and one.what != "measure":
            alike.setdefault(mark_rows(one.marks, style), []).append(one)
    for group in alike.values():
        if group[0].marks is not None:
            parts.extend(marks_parts(group[0].marks, [one.name.mark for one in group], width, style, fit))
    return parts
