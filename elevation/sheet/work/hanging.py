"""The hanging sheet: numbered steps for this very wall, lines for what is read afterwards, and what if it goes wrong."""

from __future__ import annotations

import re
from collections.abc import Sequence

from elevation.planning.drilling import DrillPlace
from elevation.planning.hang_step import HangStep
from elevation.planning.mishaps import MISHAPS, WITHOUT_HOLES
from elevation.sheet.records import Picture
from elevation.sheet.work.drilling_figures import beside_line, first_figure, sides_figures, sides_lines
from elevation.sheet.work.page import Part, Sheet
from elevation.sheet.work.parts import SMALL, TableColumn, heading, paragraph, step, table
from elevation.units.format import LESS, MORE
from elevation.words import Mm, Style, msg, say

SIGNED = re.compile(rf"\w[{MORE}{LESS}](?!\w)")
"""A sign tight behind a figure: it was rounded. A sum's plus stands between blanks."""


def hanging_sheet(steps: Sequence[HangStep], sheet: Sheet) -> tuple[Picture, ...]:
    """The pages for the ladder.

    Parameters
    ----------
    steps : sequence of HangStep
    sheet : Sheet
        With its state, and its band where there is a *stop*.

    Returns
    -------
    tuple of Picture
    """
    style, width = sheet.style, sheet.width
    parts = _signs(steps, width, style) + step_parts(steps, width, style)
    parts.append(heading(say(msg("It went wrong"), style), width))
    is_drilled = any(one.places or one.ends for one in steps)
    rows = [
        (say(mishap.what, style), say(msg("{verdict}: {then}", verdict=mishap.verdict, then=mishap.then), style))
        for mishap in (MISHAPS if is_drilled else WITHOUT_HOLES)
    ]
    columns = (TableColumn(say(msg("What"), style), 2.0), TableColumn(say(msg("Stop or go on"), style), 5.0))
    parts.extend(table(columns, rows, width, SMALL))
    parts.append(
        paragraph(
            say(
                msg("Local codes, the packet in hand and licensed trades govern; this sheet does not replace them."), style
            ),
            width,
            SMALL,
        )
    )
    return sheet.lay(msg("Hanging sheet"), parts)


def _signs(steps: Sequence[HangStep], width: float, style: Style) -> list[Part]:
    """What a plus or minus behind a figure says, over the steps; nothing where no figure has one.

    Who stands on the ladder has not seen the elevation, whose margin says it too.
    """
    told = [line for one in steps for line in (*_axes(one, style), *_ends(one, style))]
    told += [say(text, style) for one in steps for text in one.details]
    told += [sides_figures(sides, style) for one in steps for place in one.places for sides in (place.upright, place.along)]
    if not any(SIGNED.search(line) for line in told):
        return []
    return [
        paragraph(say(msg("{more} {less} a little more, less than the figure", more=MORE, less=LESS), style), width, SMALL)
    ]


def step_parts(steps: Sequence[HangStep], width: float, style: Style) -> list[Part]:
    """Numbered steps with their details, cautions and places."""
    parts: list[Part] = []
    for number, one in enumerate(steps, start=1):
        parts.append(
            step(
                str(number),
                say(one.text, style),
                width,
                details=[*(say(text, style) for text in one.details), *_axes(one, style), *_ends(one, style)],
                cautions=[say(text, style) for text in one.cautions],
            )
        )
        if one.places:
            parts.extend(_places(one.places, width, style))
    return parts


def _axes(one: HangStep, style: Style) -> list[str]:
    """The figures of rods' axes, rounded as they stand in the table of places."""
    lines = [line for place in one.axes for line in sides_lines(place.upright, style)]
    for place in one.levels:
        text = msg(
            "at bracket {mark}: {height} over the floor right there",
            mark=place.mark,
            height=first_figure(place.upright, style),
        )
        lines.append(say(text, style))
    return lines


def _ends(one: HangStep, style: Style) -> list[str]:
    """Each end that carries the rod: its figures from two sides, how far out it stands."""
    lines = []
    for end in one.ends:
        told = [sides_figures(end.upright, style)]
        if end.along is not None:
            told.append(sides_figures(end.along, style))
        if end.out is not None:
            told.append(say(msg("{figure} {where}", figure=Mm(end.out[1]), where=end.out[0]), style))
        lines.append(say(msg("{end}: {figures}", end=end.name, figures="; ".join(told)), style))
    return lines


def _places(places: Sequence[DrillPlace], width: float, style: Style) -> tuple[Part, ...]:
    """Each bracket: its figures from both sides with their sum."""
    columns = (
        TableColumn(say(msg("Bracket"), style), 1.0),
        TableColumn(say(msg("Axis"), style), 4.0),
        TableColumn(say(msg("Middle"), style), 4.0),
        TableColumn(say(msg("Beside"), style), 3.2),
    )
    rows = [
        (
            place.mark,
            sides_figures(place.upright, style),
            sides_figures(place.along, style),
            beside_line(place, style),
        )
        for place in places
    ]
    return table(columns, rows, width, SMALL)
