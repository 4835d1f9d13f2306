"""Pages to work by: parts under each other on upright sheets, with a head and a foot on each. Paper mm, y up.

A part is as high as it is; the pages are filled from the top. Type is large enough for arm's length.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.sheet import furniture
from elevation.sheet.dates import sheet_date
from elevation.sheet.paper import A4, LETTER
from elevation.sheet.paths import rectangle
from elevation.sheet.records import Fill, Group, Ink, Line, Page, Pen, Picture, Polyline, Record, Text
from elevation.sheet.type_metrics import shorten, text_width
from elevation.sheet.work.moved import moved
from elevation.words import Message, Style, msg, say

MARGIN = 15.0
"""Left and right, mm; printers leave up to 13 mm of an edge blank."""
WHITE = "#ffffff"
"""Sheets to work by are printed often: nothing is printed where nothing is said."""
_TOP, _BOTTOM = 14.0, 14.0
_HEAD, _FOOT = 17.0, 8.0


class Part(Struct, frozen=True):
    """What stays together on one page.

    Attributes
    ----------
    height : float
        With the space under it, paper mm.
    records : tuple of Record
        From its upper left corner: x to the right, y up (so never above 0).
    sticks : bool
        A heading, or words about what comes under them: never the last of a page.
    head : Part or None
        Of a table's row: what stands over the row again where a page begins with it.
    """

    height: float
    records: tuple[Record, ...]
    sticks: bool = False
    head: Part | None = None


class Head(Struct, frozen=True):
    """The words on top of each page: what it is, what it is for (room, wall, treatment), and PLANNED or AS BUILT."""

    title: str
    subject: str
    state: str = ""


def upright(unit: str) -> Page:
    """The sheet that people print on at home where they measure in ``unit``, standing upright."""
    page = LETTER if unit == "in" else A4
    return Page(page.name, page.height_mm, page.width_mm)


def width_of(page: Page) -> float:
    """Room for parts from left to right."""
    return page.width_mm - 2 * MARGIN


def height_of(page: Page) -> float:
    """Room for parts from top to bottom of one page."""
    return page.height_mm - _TOP - _BOTTOM - _HEAD - _FOOT


def together(parts: Sequence[Part], page: Page) -> tuple[Part, ...]:
    """The parts as one, so that no page ends within them; as they are where a page does not hold them all."""
    high = sum(part.height for part in parts)
    if not parts or high > height_of(page):
        return tuple(parts)
    down = 0.0
    records: list[Record] = []
    for part in parts:
        records.extend(moved(part.records, 0.0, -down))
        down += part.height
    return (Part(high, tuple(records)),)


def lay(
    parts: Sequence[Part],
    head: Head,
    page: Page,
    style: Style,
    *,
    band: str = "",
    date: str | None = None,
    notice: Message | None = None,
) -> tuple[Picture, ...]:
    """The parts on as many pages as they need.

    Parameters
    ----------
    parts : sequence of Part
    head : Head
    page : Page
    style : Style
    band : str
        What a *stop* says across every page; empty for none.
    date : str or None
        None: today, or the day of SOURCE_DATE_EPOCH.
    notice : Message or None
        What stands at the foot of every page.

    Returns
    -------
    tuple of Picture
        At least one; a part higher than a page stands alone on one and runs out of it.
    """
    room = height_of(page) - (furniture.STOP_HEIGHT + 3.0 if band else 0.0)
    pages: list[list[tuple[float, Part]]] = [[]]
    used = 0.0
    for index, part in enumerate(parts):
        need = part.height
        if part.sticks:
            # With all that sticks to what follows: a heading, a table's head, and its first row.
            for other in parts[index + 1 :]:
                need += other.height
                if not other.sticks:
                    break
        if pages[-1] and used + need > room + 1e-6:
            pages.append([])
            used = 0.0
            if part.head is not None:
                pages[-1].append((used, part.head))
                used += part.head.height
        if not part.records and not pages[-1] and len(pages) > 1:
            continue
        pages[-1].append((used, part))
        used += part.height
    day = date if date is not None else sheet_date()
    foot = "" if notice is None else say(notice, style)
    return tuple(
        _page(placed, head, page, style, band, day, foot, number, len(pages))
        for number, placed in enumerate(pages, start=1)
    )


class Sheet(Struct, frozen=True):
    """What a sheet to work by is about, how it is said and on what it is printed: what all their makers share.

    Attributes
    ----------
    subject : str
        Room, wall and treatment, or the rooms.
    style : Style
    paper : Page or None
        None: the small sheet of the unit, upright.
    state : str
        PLANNED or AS BUILT; empty where neither is meant.
    band : str
        What a *stop* says across every page; empty for none.
    date : str or None
        None: today, or the day of SOURCE_DATE_EPOCH.
    """

    subject: str
    style: Style
    paper: Page | None = None
    state: str = ""
    band: str = ""
    date: str | None = None

    @property
    def page(self) -> Page:
        """The paper that it is laid on."""
        return self.paper or upright(self.style.unit)

    @property
    def width(self) -> float:
        """Room for parts from left to right."""
        return width_of(self.page)

    @property
    def day(self) -> str:
        """The date that stands on it."""
        return sheet_date() if self.date is None else self.date

    def lay(self, title: Message, parts: Sequence[Part], notice: Message | None = None) -> tuple[Picture, ...]:
        """The parts under this title, on as many pages as they need; ``notice`` stands at the foot of each."""
        head = Head(say(title, self.style), self.subject, self.state)
        return lay(parts, head, self.page, self.style, band=self.band, date=self.date, notice=notice)


def _page(
    placed: Sequence[tuple[float, Part]],
    head: Head,
    page: Page,
    style: Style,
    band: str,
    date: str,
    foot: str,
    number: int,
    count: int,
) -> Picture:
    left, right = MARGIN, page.width_mm - MARGIN
    top = page.height_mm - _TOP
    count_text = say(msg("Page {number} of {count}", number=number, count=count), style)
    records: list[Record] = [
        Fill(rectangle(0.0, 0.0, page.width_mm, page.height_mm), WHITE),
        *head_records(head, left, right, top, date),
        Line((left, _BOTTOM + 5.0), (right, _BOTTOM + 5.0), Pen(Ink.THIN, 0.25)),
        Text((right, _BOTTOM), count_text, 3.0, Ink.QUIET, "right"),
        Text((left, _BOTTOM), shorten(foot, 3.0, right - left - text_width(count_text, 3.0) - 6.0), 3.0, Ink.QUIET),
    ]
    start = top - _HEAD
    if band:
        records.extend(furniture.stop_band(band, left, start, right - left))
        start -= furniture.STOP_HEIGHT + 3.0
    body = [record for down, part in placed for record in moved(part.records, left, start - down)]
    name = " · ".join(text for text in (head.title, head.subject, count_text if count > 1 else "") if text)
    groups = (
        Group((), "sheet", head.title, tuple(records), "paper"),
        Group((), "title", head.subject or head.title, tuple(body), "paper"),
    )
    return Picture(groups, 1.0, (0.0, 0.0), page, name, name)


def head_records(head: Head, left: float, right: float, top: float, date: str) -> tuple[Record, ...]:
    """The words on top of a page, from ``top`` down, and the line under them."""
    state = " · ".join(text for text in (head.state, date) if text)
    aside = text_width(state, 3.3) + 4.0
    return (
        Text((left, top - 5.4), shorten(head.title, 6.6, right - left - aside, "semibold"), 6.6, weight="semibold"),
        Text((right, top - 5.4), state, 3.3, Ink.QUIET, "right"),
        Text((left, top - 11.0), shorten(head.subject, 4.0, right - left), 4.0, Ink.QUIET),
        Line((left, top - 13.4), (right, top - 13.4), Pen(Ink.OUTLINE, 0.5)),
    )


def box(left: float, base: float, side: float = 4.0) -> Polyline:
    """An empty box to tick."""
    return Polyline(
        ((left, base), (left + side, base), (left + side, base + side), (left, base + side)), Pen(Ink.OUTLINE, 0.35), True
    )
