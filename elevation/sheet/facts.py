"""The quiet facts of a treatment, as labels and values for the margin."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from elevation.findings.naming import where
from elevation.room.model import Treatment
from elevation.room.mounting import INSIDE
from elevation.setting_out.model import LayerOut, PanelOut, SupportOut, TreatmentOut
from elevation.setting_out.tilt import axis_at
from elevation.sheet.annotation.figures import figure
from elevation.sheet.annotation.wall_chains import LEAST_MM
from elevation.trade.model import Trade
from elevation.words import Message, Mm, Percent, Ratio, Style, msg, msg_plural, say, term

Fact = tuple[str, str]


def title_of(laid: TreatmentOut, style: Style) -> str:
    """A treatment's own name, or the openings that it covers."""
    return laid.name or say(where(laid), style)


def state_of(treatments: Sequence[TreatmentOut]) -> Message | None:
    """Whether a wall is drawn as planned or as built; None where nothing hangs."""
    built = [layer.is_built for laid in treatments for layer in laid.layers]
    if not built:
        return None
    if all(built):
        return msg("AS BUILT")
    return msg("PARTLY AS BUILT") if any(built) else msg("PLANNED")


def facts_of(laid: TreatmentOut, treatment: Treatment | None, trade: Trade, style: Style) -> tuple[Fact, ...]:
    """Rod, height, brackets, panels, stack, glass: label and value each.

    Parameters
    ----------
    laid : TreatmentOut
    treatment : Treatment or None
        Names the rod's section.
    trade : Trade
    style : Style
    """
    found: list[tuple[Message, Message]] = []
    for index, layer in enumerate(laid.layers):
        section = None
        if treatment is not None and index < len(treatment.layers):
            section = trade.sections.get(treatment.layers[index].rod.section)
        found.extend(_of_rod(layer, section.name if section is not None else "", laid, index, style))
        found.extend(_of_panels(layer, style))
    found.extend(_around(laid))
    if laid.openings and any(layer.panels for layer in laid.layers):
        found.append(
            (
                msg("Glass clear"),
                msg(
                    "{open} open, {closed} closed",
                    open=Percent(laid.glass.clear_open),
                    closed=Percent(laid.glass.clear_closed),
                ),
            )
        )
    return tuple((say(label, style), say(value, style)) for label, value in found)


def _around(laid: TreatmentOut) -> Sequence[tuple[Message, Message]]:
    """The pelmet or valance before the rods, and the blind behind them."""
    found: list[tuple[Message, Message]] = []
    pelmet = laid.pelmet
    if pelmet is not None:
        params: dict[str, object] = {
            "length": Mm(pelmet.length_mm),
            "deep": Mm(pelmet.top_mm - pelmet.bottom_mm),
            "out": Mm(pelmet.out_mm),
        }
        size = msg("{length} long, {deep} deep, its front {out} out, top at {top}", top=Mm(pelmet.top_mm), **params)
        if pelmet.tilt:
            left, right = (Mm(pelmet.top_mm + pelmet.up_at(x)) for x in (pelmet.left_mm, pelmet.right_mm))
            size = msg(
                "{length} long, {deep} deep, its front {out} out, leaning with the rod: top at {left} on the left, {right}"
                " on the right",
                left=left,
                right=right,
                **params,
            )
        found.append((msg("Pelmet") if pelmet.kind == "board" else msg("Valance"), size))
    if laid.blinds:
        blind = laid.blinds[0]
        wide, high = Mm(blind.right_mm - blind.left_mm), Mm(blind.top_mm - blind.bottom_mm)
        if blind.in_reveal:
            size = msg("box {wide} by {high} in the reveal", wide=wide, high=high)
        else:
            size = msg("box {wide} by {high} on the wall, {out} out", wide=wide, high=high, out=Mm(blind.out_mm))
        found.append((msg("Blind"), size))
    return found


def _ends(support: SupportOut) -> Message:
    """How high a rod out of level hangs at either end."""
    left, right = axis_at(support, support.left_mm), axis_at(support, support.right_mm)
    return msg(
        "{left} to its centre at the left end, {right} at the right: {by} out of level",
        left=Mm(left),
        right=Mm(right),
        by=Mm(abs(right - left)),
    )


def _of_rod(
    layer: LayerOut, section: str, laid: TreatmentOut, index: int, style: Style
) -> Sequence[tuple[Message, Message]]:
    support = layer.support
    length = Mm(support.length_mm)
    rod = msg("{section}, {length}", section=term(section), length=length) if section else msg("{length}", length=length)
    if support.bend_mm is not None:
        rod = msg("{rod} on this wall, bent round the corner to a radius of {radius}", rod=rod, radius=Mm(support.bend_mm))
    elif abs(support.cut_length_mm - support.length_mm) > LEAST_MM:
        rod = msg("{rod}, cut {cut}", rod=rod, cut=Mm(support.cut_length_mm))
    if support.pieces > 1:
        pieces = msg_plural("in {count} piece", "in {count} pieces", count=support.pieces)
        rod = msg("{rod}, {pieces}", rod=rod, pieces=pieces)
    height = msg("{height} to its centre", height=Mm(support.height_mm))
    if support.line is not None:
        height = _ends(support)
    elif index == 0 and laid.openings:
        height = _over(height, laid, support.height_mm)
    kind = _KINDS.get(support.kind, _KINDS["rod"])
    if len(laid.layers) > 1:
        kind = msg("{kind}, front", kind=kind) if index == 0 else msg("{kind}, back", kind=kind)
    found = [(kind, rod), (msg("Height"), height)]
    if layer.is_built:
        found.append((msg("State"), msg("as built, by readings after hanging")))
    if layer.brackets:
        places = ", ".join(figure(bracket.x_mm, style) for bracket in layer.brackets)
        found.append((msg("Brackets"), msg("{places} from the left end of the wall", places=places)))
    board = layer.board
    if board is not None:
        size = msg(
            "{length} long, {high} high, {thick} thick, across sound fixings",
            length=Mm(board.right_mm - board.left_mm),
            high=Mm(board.top_mm - board.bottom_mm),
            thick=Mm(board.thick_mm),
        )
        found.append((msg("Board"), size))
    return found


_KINDS = {"rod": msg("Rod"), "track": msg("Track"), "tension-rod": msg("Tension rod")}


def _over(height: Message, laid: TreatmentOut, height_mm: float) -> Message:
    """A height with what it is over: the opening, or from inside it its sill."""
    if laid.mount in INSIDE:
        above_mm = height_mm - min(opening.bottom_mm for opening in laid.openings)
        if above_mm < 0:
            return msg("{height}, {below} below the sill", height=height, below=Mm(-above_mm))
        return msg("{height}, {above} above the sill", height=height, above=Mm(above_mm))
    above_mm = laid.clearances.above_opening_mm
    if above_mm < 0:
        return msg("{height}, {below} below the opening's head", height=height, below=Mm(-above_mm))
    return msg("{height}, {above} above the opening", height=height, above=Mm(above_mm))


def _of_panels(layer: LayerOut, style: Style) -> Sequence[tuple[Message, Message]]:
    panels = layer.panels
    if not panels:
        return ()
    found = [(msg("Panels"), _panels(panels, style))]
    ties = [panel.tie for panel in panels if panel.tie is not None]
    if ties:
        size = msg(
            "{height} up, {waist} wide at the waist",
            height=Mm(ties[0].hook[1]),
            waist=Mm(ties[0].waist[1] - ties[0].waist[0]),
        )
        found.append((msg("Tie-backs"), size))
    stacks = [panel for panel in panels if not panel.stationary]
    if stacks:
        widths = " / ".join(dict.fromkeys(figure(panel.stack_mm, style) for panel in stacks))
        found.append((msg("Stack-back"), msg("{widths}: {basis}", widths=widths, basis=stacks[0].stack_basis)))
    return found


def _panels(panels: Sequence[PanelOut], style: Style) -> Message:
    flats = Counter(figure(panel.flat_width_mm, style) for panel in panels)
    text = msg("{panels} flat", panels=", ".join(f"{count} × {flat}" for flat, count in flats.items()))
    lengths = dict.fromkeys(
        figure(panel.finished_length_mm, style) for panel in panels if panel.finished_length_mm is not None
    )
    if lengths:
        text = msg("{panels}, {lengths} long", panels=text, lengths=" / ".join(lengths))
    full = [panel.fullness for panel in panels if panel.fullness is not None]
    if full:
        text = msg("{panels}, fullness {fullness}", panels=text, fullness=Ratio(min(full), 1))
    elif not all(panel.stationary for panel in panels):
        text = msg("{panels}, no fullness: no room to close", panels=text)
    return text


def digest_of(laid: TreatmentOut, style: Style) -> str:
    """The same in one line, where many treatments share the margin."""
    parts: list[str] = []
    for layer in laid.layers:
        support = layer.support
        length, height = figure(support.length_mm, style), figure(support.height_mm, style)
        if support.kind == "track":
            message = msg("track {length}, centre {height}", length=length, height=height)
        elif support.kind == "tension-rod":
            message = msg("tension rod {length}, centre {height}", length=length, height=height)
        else:
            message = msg("rod {length}, centre {height}", length=length, height=height)
        if support.kind == "rod" and abs(support.cut_length_mm - support.length_mm) > LEAST_MM:
            cut = figure(support.cut_length_mm, style)
            message = msg("rod {length}, cut {cut}, centre {height}", length=length, cut=cut, height=height)
        parts.append(say(message, style))
        if layer.brackets:
            places = ", ".join(figure(bracket.x_mm, style) for bracket in layer.brackets)
            parts.append(say(msg("brackets at {places}", places=places), style))
        if layer.panels:
            parts.append(say(_panels(layer.panels, style), style))
    if laid.openings and any(layer.panels for layer in laid.layers):
        parts.append(say(msg("glass clear {open}", open=Percent(laid.glass.clear_open)), style))
    return "; ".join(parts)
