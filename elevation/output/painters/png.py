"""A sheet as PNG, with its true resolution written in the file."""

from __future__ import annotations

from PySide6.QtCore import QBuffer, QByteArray, QIODevice
from PySide6.QtGui import QColor, QImage, QImageWriter, QPainter

from elevation.errors import BadInput, BadOutput, said
from elevation.output.painters.application import ensure_application
from elevation.output.painters.replay import replay
from elevation.sheet.inks import colour
from elevation.sheet.records import Ink, Picture

_MOST_PIXELS = 400_000_000
_MM_PER_INCH = 25.4


def to_png(picture: Picture, dpi: int) -> bytes:
    """The picture's page as PNG bytes.

    Parameters
    ----------
    picture : Picture
        With a page.
    dpi : int
        Pixels per inch of paper; the file says so (pHYs), so that it prints at true size.

    Raises
    ------
    BadInput
        Where the image would be larger than any program could open.
    BadOutput
        Where Qt cannot make it.
    """
    if picture.page is None:
        raise ValueError("only a picture with a page can be written")
    ensure_application()
    px = dpi / _MM_PER_INCH
    width, height = round(picture.page.width_mm * px), round(picture.page.height_mm * px)
    if width * height > _MOST_PIXELS:
        raise BadInput(
            said("command line"),
            "--dpi",
            said("{dpi} makes an image of {width} x {height} pixels", dpi=dpi, width=width, height=height),
            said("use fewer dpi"),
        )
    image = QImage(width, height, QImage.Format.Format_RGB32)
    if image.isNull():
        raise BadOutput(
            "PNG",
            "",
            said("an image of {width} x {height} pixels does not fit in memory", width=width, height=height),
            said("use fewer dpi"),
        )
    per_metre = round(dpi / 0.0254)
    image.setDotsPerMeterX(per_metre)
    image.setDotsPerMeterY(per_metre)
    image.setText("Title", picture.title)
    image.setText("Description", picture.description)
    image.fill(QColor(colour(Ink.PAPER)))
    painter = QPainter(image)
    try:
        replay(picture, painter, px)
    finally:
        painter.end()
    kept = QByteArray()
    buffer = QBuffer(kept)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    if not QImageWriter(buffer, QByteArray(b"png")).write(image):
        raise BadOutput("PNG", "", said("could not be encoded"), said("use fewer dpi"))
    buffer.close()
    return bytes(kept.data())
