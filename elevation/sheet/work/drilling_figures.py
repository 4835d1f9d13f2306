"""The figures that a bracket is marked by, in words: from both sides, with the sums that prove them."""

from __future__ import annotations

from elevation.planning.drilling import DrillPlace, Sides
from elevation.sheet.annotation.figures import figures
from elevation.units.format import format_length
from elevation.words import Message, Mm, Style, msg, say


def card_line(place: DrillPlace, style: Style) -> str:
    """What to do where the printer did not keep the size: the plate's figures, to be drawn on card by hand."""
    fine = 25.4 / 32 if style.unit == "in" else 0.5
    holes = [
        format_length(abs(hole), style.unit, fine, decimal_mark=style.decimal_mark, with_unit=True)
        for hole in place.kit.holes_mm
    ]
    sides = (msg("{hole} left"), msg("{hole} right")) if place.on == "ceiling" else (msg("{hole} down"), msg("{hole} up"))
    told = ", ".join(
        say(msg("in the crossing"), style) if hole == 0 else say(Message(sides[hole > 0].template, {"hole": figure}), style)
        for hole, figure in zip(place.kit.holes_mm, holes, strict=True)
    )
    return say(
        msg(
            "If a bar is off, leave the print: cross two lines on card and mark the holes from there: {holes}.", holes=told
        ),
        style,
    )


def figure_lines(place: DrillPlace, style: Style) -> tuple[str, ...]:
    """The figures to mark a bracket's middle and the rod's axis by, each place from two sides with its sum."""
    lines = [*sides_lines(place.upright, style), *sides_lines(place.along, style)]
    beside = beside_line(place, style)
    if beside:
        lines.append(beside)
    if place.out is not None:
        lines.append(say(msg("{figure} {where}", figure=Mm(place.out[1]), where=place.out[0]), style))
    return tuple(lines)


def beside_line(place: DrillPlace, style: Style) -> str:
    """How far a bracket's middle is from the nearest edge, and where that is itself; empty where there is none."""
    if place.beside is None or place.edge_mm is None:
        return ""
    where, away = place.beside
    return say(
        msg("{figure} {where}, itself {edge} from the left end", figure=Mm(away), where=where, edge=Mm(place.edge_mm)),
        style,
    )


def sides_lines(sides: Sides, style: Style) -> tuple[str, ...]:
    """Both figures of a place between two datums and what they add up to; the figures are rounded so that they do."""
    if sides.second_mm is None or sides.whole_mm is None:
        return (say(msg("{figure} {where}", figure=Mm(sides.first_mm), where=sides.first), style),)
    parts = figures((sides.first_mm, sides.second_mm), style)
    whole = figures((sides.whole_mm,), style)[0]
    unit = " in" if style.unit == "in" else " mm"
    return (
        say(_said("{figure} {where}", parts[0] + unit, sides.first), style),
        say(_said("{figure} {where}", parts[1] + unit, sides.second), style),
        say(msg("check: together {figure}, {where}", figure=whole + unit, where=sides.whole), style),
    )


def first_figure(sides: Sides, style: Style) -> str:
    """The first figure of a place with its unit, as it stands beside the second."""
    return _parts(sides, style)[0] + (" in" if style.unit == "in" else " mm")


def _parts(sides: Sides, style: Style) -> tuple[str, ...]:
    alone = sides.second_mm is None or sides.whole_mm is None
    return figures((sides.first_mm,) if alone or sides.second_mm is None else (sides.first_mm, sides.second_mm), style)


def sides_figures(sides: Sides, style: Style) -> str:
    """Both figures of a place and their sum as one line: ``86 over the floor + 10 under the ceiling = 96 in``."""
    if sides.second_mm is None or sides.whole_mm is None:
        return say(msg("{figure} {where}", figure=Mm(sides.first_mm), where=sides.first), style)
    parts = figures((sides.first_mm, sides.second_mm), style)
    return say(
        msg(
            "{first} {where_first} + {second} {where_second} = {whole}",
            first=parts[0],
            where_first=sides.first,
            second=parts[1],
            where_second=sides.second,
            whole=Mm(sides.whole_mm),
        ),
        style,
    )


def _said(template_text: str, figure: str, where: Message) -> Message:
    return Message(template_text, {"figure": figure, "where": where})
