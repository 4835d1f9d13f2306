"""Print pages through the system's own dialog, at true size."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QWidget

from elevation.errors import Missing, said
from elevation.sheet.records import Picture


def ask_and_print(pages: Sequence[Picture], parent: QWidget) -> int:
    """Ask for a printer and pages, and print them; how many were printed, 0 where it was given up.

    Raises
    ------
    Missing
        Qt came without its printing part, or this machine knows no printer.
    BadOutput
        The printer does not take it.
    """
    try:
        from PySide6.QtPrintSupport import QAbstractPrintDialog, QPrintDialog, QPrinter

        from elevation.output.painters.printing import layout_of, print_pages
    except ImportError as error:
        raise Missing(
            said("this program"),
            "",
            said("cannot print here: Qt's printing part is missing ({reason})", reason=str(error)),
            said("export a PDF and print that at 100 %"),
        ) from error
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setDocName(pages[0].title)
    printer.setFullPage(True)
    if pages[0].page is not None:
        printer.setPageLayout(layout_of(pages[0].page))
    dialog = QPrintDialog(printer, parent)
    dialog.setOption(QAbstractPrintDialog.PrintDialogOption.PrintPageRange, len(pages) > 1)
    dialog.setMinMax(1, len(pages))
    dialog.setFromTo(1, len(pages))
    try:
        if dialog.exec() != QPrintDialog.DialogCode.Accepted:
            return 0
        chosen = chosen_pages(pages, printer.fromPage(), printer.toPage())
        print_pages(chosen, printer)
    finally:
        dialog.deleteLater()
    return len(chosen)


def chosen_pages(pages: Sequence[Picture], first: int, last: int) -> Sequence[Picture]:
    """The pages from ``first`` to ``last`` (from 1, both counted in); all where the dialog names none (0)."""
    if first < 1 and last < 1:
        return pages
    first = max(first, 1)
    return pages[first - 1 : max(last, first)] or pages
