"""Sheets on a printer at true size: one mm of the sheet is one mm of paper, whatever the printer's own wishes are."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QMarginsF, QSizeF
from PySide6.QtGui import QPageLayout, QPageSize, QPainter
from PySide6.QtPrintSupport import QPrinter

from elevation.errors import BadOutput, said
from elevation.output.painters.replay import replay
from elevation.sheet.records import Page, Picture

_MM_PER_INCH = 25.4
_KNOWN = {
    "a4": QPageSize.PageSizeId.A4,
    "a3": QPageSize.PageSizeId.A3,
    "letter": QPageSize.PageSizeId.Letter,
    "tabloid": QPageSize.PageSizeId.Tabloid,
    "a2": QPageSize.PageSizeId.A2,
    "c": QPageSize.PageSizeId.AnsiC,
}


def layout_of(page: Page) -> QPageLayout:
    """The page as a printer is told of it: a sheet by its name where it has one, turned where it is wider than high."""
    short, long = sorted((page.width_mm, page.height_mm))
    known = _KNOWN.get(page.name)
    if known is not None:
        size = QPageSize(known)
    else:
        size = QPageSize(QSizeF(short, long), QPageSize.Unit.Millimeter, page.name, QPageSize.SizeMatchPolicy.ExactMatch)
    turned = QPageLayout.Orientation.Landscape if page.width_mm > page.height_mm else QPageLayout.Orientation.Portrait
    layout = QPageLayout(size, turned, QMarginsF(0, 0, 0, 0))
    # The paper's own edge is where the sheet begins, also where a printer cannot print as far as that.
    layout.setMode(QPageLayout.Mode.FullPageMode)
    return layout


def print_pages(pictures: Sequence[Picture], printer: QPrinter) -> None:
    """Print the pages, each on paper of its own size, nothing scaled.

    Parameters
    ----------
    pictures : sequence of Picture
        At least one, each with a page.
    printer : QPrinter

    Raises
    ------
    BadOutput
        The printer cannot be begun with.
    """
    pages = [picture.page for picture in pictures if picture.page is not None]
    if not pictures or len(pages) != len(pictures):
        raise ValueError("only pictures with pages can be printed")
    printer.setFullPage(True)
    printer.setPageLayout(layout_of(pages[0]))
    painter = QPainter()
    if not painter.begin(printer):
        raise BadOutput(
            printer.printerName(),
            "",
            said("does not take what is to be printed"),
            said("look whether it is on, or export a PDF and print that"),
        )
    try:
        for number, (picture, page) in enumerate(zip(pictures, pages, strict=True)):
            if number:
                printer.setPageLayout(layout_of(page))
                printer.newPage()
            replay(picture, painter, printer.resolution() / _MM_PER_INCH)
    finally:
        painter.end()
