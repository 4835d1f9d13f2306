"""The tape trial and the order of work, as pages."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.hanging import HangStep
from elevation.planning.order import Day
from elevation.sheet.records import Ink, Page, Picture
from elevation.sheet.work.hanging import step_parts
from elevation.sheet.work.page import Head, Part, lay, upright, width_of
from elevation.sheet.work.parts import heading, paragraph
from elevation.words import Style, msg, say


def trial_sheet(
    steps: Sequence[HangStep], subject: str, style: Style, page: Page | None = None, date: str | None = None
) -> tuple[Picture, ...]:
    """The pages of one treatment's tape trial.

    Parameters
    ----------
    steps : sequence of HangStep
    subject : str
        Room, wall, treatment.
    style : Style
    page : Page or None
        None: the small sheet of the unit, upright.
    date : str or None
    """
    page = page or upright(style.unit)
    parts = step_parts(steps, width_of(page), style)
    return lay(parts, Head(say(msg("Tape trial"), style), subject), page, style, date=date)


def order_sheet(
    days: Sequence[Day], subject: str, style: Style, page: Page | None = None, date: str | None = None
) -> tuple[Picture, ...]:
    """The pages of the order of work.

    Parameters
    ----------
    days : sequence of Day
    subject : str
        The rooms.
    style : Style
    page : Page or None
        None: the small sheet of the unit, upright.
    date : str or None
    """
    page = page or upright(style.unit)
    width = width_of(page)
    parts: list[Part] = []
    for day in days:
        parts.append(heading(say(day.name, style), width))
        parts.extend(step_parts(day.steps, width, style))
        if day.wait is not None:
            parts.append(paragraph(say(msg("Wait: {wait}", wait=day.wait), style), width, ink=Ink.HELD))
    return lay(parts, Head(say(msg("Order of work"), style), subject), page, style, date=date)
