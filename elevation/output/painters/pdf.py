"""Sheets as one PDF: exact scale, vector, selectable text, a page a picture."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMarginsF, QSizeF
from PySide6.QtGui import QPageLayout, QPageSize, QPainter, QPdfWriter

from elevation.errors import BadOutput, said
from elevation.output.painters.application import ensure_application
from elevation.output.painters.replay import replay
from elevation.sheet.records import Page, Picture

_DPI = 1200
_MM_PER_INCH = 25.4
_GLYPHS_TO_TEXT = re.compile(rb"beginbfrange[<>\[\]0-9A-F\s]*endbfrange")


def _layout(page: Page) -> QPageLayout:
    # Exact matching: Qt otherwise takes a page of nearly A4 for A4. Portrait with its own size: landscape
    # would swap a custom size.
    size = QPageSize(
        QSizeF(page.width_mm, page.height_mm),
        QPageSize.Unit.Millimeter,
        page.name,
        QPageSize.SizeMatchPolicy.ExactMatch,
    )
    return QPageLayout(size, QPageLayout.Orientation.Portrait, QMarginsF(0, 0, 0, 0))


def _with_spaces(data: bytes) -> bytes:
    # Qt sets a tab with the glyph of the space, finds the tab first when it looks for what the glyph means, and
    # so "North wall" would be found and copied with a tab in it. The tables it writes are not compressed, and the
    # repair is as long as what it replaces, so that nothing in the file moves.
    return _GLYPHS_TO_TEXT.sub(lambda found: found[0].replace(b"<0009>", b"<0020>"), data)


def to_pdf(pictures: Sequence[Picture], before_page: Callable[[int], None] | None = None) -> bytes:
    """PDF bytes with one page for each picture, in order.

    Parameters
    ----------
    pictures : sequence of Picture
        At least one, each with a page. One mm of paper is one mm on the page.
    before_page : callable or None
        Told the number of each page (from 0) before it is painted; what it raises ends the work.

    Raises
    ------
    BadOutput
        Where Qt cannot make it.
    """
    pages = [picture.page for picture in pictures if picture.page is not None]
    if not pictures or len(pages) != len(pictures):
        raise ValueError("a PDF needs pictures with pages")
    ensure_application()
    kept = QByteArray()
    buffer = QBuffer(kept)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(_DPI)
    writer.setTitle(pictures[0].title)
    writer.setCreator("Elevation")
    writer.setPageLayout(_layout(pages[0]))
    painter = QPainter()
    if not painter.begin(writer):
        raise BadOutput("PDF", "", said("could not be begun"), "")
    try:
        for number, (picture, page) in enumerate(zip(pictures, pages, strict=True)):
            if before_page is not None:
                before_page(number)
            if number:
                writer.setPageLayout(_layout(page))
                writer.newPage()
            replay(picture, painter, _DPI / _MM_PER_INCH)
    finally:
        painter.end()
    buffer.close()
    return _with_spaces(bytes(kept.data()))
