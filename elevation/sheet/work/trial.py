"""The tape trial and the order of work, as pages."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.hang_step import HangStep
from elevation.planning.order import Day
from elevation.sheet.records import Ink, Picture
from elevation.sheet.work.hanging import step_parts
from elevation.sheet.work.page import Part, Sheet
from elevation.sheet.work.parts import heading, paragraph
from elevation.words import msg, say


def trial_sheet(steps: Sequence[HangStep], sheet: Sheet) -> tuple[Picture, ...]:
    """The pages of one treatment's tape trial.

    Parameters
    ----------
    steps : sequence of HangStep
    sheet : Sheet
    """
    return sheet.lay(msg("Tape trial"), step_parts(steps, sheet.width, sheet.style))


def order_sheet(days: Sequence[Day], sheet: Sheet) -> tuple[Picture, ...]:
    """The pages of the order of work.

    Parameters
    ----------
    days : sequence of Day
    sheet : Sheet
    """
    style, width = sheet.style, sheet.width
    parts: list[Part] = []
    for day in days:
        parts.append(heading(say(day.name, style), width))
        parts.extend(step_parts(day.steps, width, style))
        if day.wait is not None:
            parts.append(paragraph(say(msg("Wait: {wait}", wait=day.wait), style), width, ink=Ink.HELD))
    return sheet.lay(msg("Order of work"), parts)
