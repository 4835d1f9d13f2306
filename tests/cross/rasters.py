"""Rasters of one drawing by other programs, and how much two rasters differ.

Everything here runs without Qt. The other programs are poppler's ``pdftoppm`` and ``pdftocairo`` and librsvg's
``rsvg-convert``; ``.ci/run`` installs them.
"""

from __future__ import annotations

import io
import os
import shutil
import subprocess
from pathlib import Path

import numpy as np
from PIL import Image

from elevation.sheet.type_files import font_path

TOLERANCE = 16
"""Two values of a channel (0 to 255) further apart than this are different."""

NEEDED = ("pdftoppm", "pdftocairo", "rsvg-convert")


def missing_programs() -> str:
    """Which of the other programs are not on this machine, for a reason to skip; empty where all are."""
    return ", ".join(name for name in NEEDED if shutil.which(name) is None)


def private_fonts(folder: Path) -> dict[str, str]:
    """An environment in which fontconfig knows the bundled type and nothing else.

    librsvg reads no fonts embedded in an SVG and knows no ``font-kerning``; every other viewer obeys both, so
    the type is installed for it and kerning is switched off where it can be: in fontconfig.
    """
    config = folder / "fonts.conf"
    config.write_text(
        '<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig>'
        f"<dir>{font_path('regular').parent}</dir><cachedir>{folder / 'font-cache'}</cachedir>"
        '<match target="font"><edit name="fontfeatures" mode="append">'
        "<string>kern=0</string><string>liga=0</string><string>clig=0</string></edit></match></fontconfig>",
        encoding="utf-8",
    )
    return os.environ | {"FONTCONFIG_FILE": str(config)}


def opened(data: bytes | Path) -> np.ndarray:
    """An image file as rows x columns x 3 bytes."""
    with Image.open(io.BytesIO(data) if isinstance(data, bytes) else data) as image:
        return np.asarray(image.convert("RGB"))


def of_pdf(pdf: Path, dpi: int, program: str = "pdftoppm") -> np.ndarray:
    out = pdf.with_name(f"{pdf.stem}-{program}")
    form = ["-png"] if program == "pdftocairo" else []
    subprocess.run([program, *form, "-r", str(dpi), "-singlefile", str(pdf), str(out)], check=True)
    return opened(out.with_name(out.name + (".png" if form else ".ppm")))


def of_svg(svg: Path, dpi: int, fonts: dict[str, str]) -> np.ndarray:
    out = svg.with_name(f"{svg.stem}-rsvg.png")
    words = ["rsvg-convert", "-d", str(dpi), "-p", str(dpi), "-b", "white", "-o", str(out), str(svg)]
    subprocess.run(words, check=True, env=fonts)
    return opened(out)


def _same_size(a: np.ndarray, b: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    # A page is rounded up to whole pixels by one program and to the nearest by another, and to whole points by
    # Qt's PDF writer (1/72 in, 4 pixels at 300 dpi); all put the upper left corner in the same place.
    assert abs(a.shape[0] - b.shape[0]) <= 5
    assert abs(a.shape[1] - b.shape[1]) <= 5
    height, width = min(a.shape[0], b.shape[0]), min(a.shape[1], b.shape[1])
    return a[:height, :width], b[:height, :width]


def _apart(a: np.ndarray, b: np.ndarray) -> np.ndarray:
    return np.maximum(a, b) - np.minimum(a, b)


def share_different(a: np.ndarray, b: np.ndarray) -> float:
    """The share of pixels of which any channel differs by more than ``TOLERANCE``, edges included."""
    a, b = _same_size(a, b)
    return float((_apart(a, b).max(axis=2) > TOLERANCE).mean())


def _spread(a: np.ndarray, choose: np.ufunc) -> np.ndarray:
    # The least or greatest of each pixel and its eight neighbours, one axis after the other.
    for axis in (0, 1):
        padded = np.pad(a, [(1, 1) if here == axis else (0, 0) for here in range(3)], mode="edge")
        low, mid, high = (
            padded[tuple(slice(start, start + a.shape[axis]) if here == axis else slice(None) for here in range(3))]
            for start in range(3)
        )
        a = choose(choose(low, mid), high)
    return a


def share_displaced(a: np.ndarray, b: np.ndarray) -> float:
    """The share of pixels that no shift of an edge by one pixel explains.

    A pixel counts where, in any channel and seen from either raster, its value lies more than ``TOLERANCE`` outside
    the range of the other raster's nine pixels around it. A missing, added, recoloured or moved thing counts in full.
    """
    a, b = _same_size(a, b)
    wrong = np.zeros(a.shape[:2], dtype=bool)
    for one, other in ((a, b), (b, a)):
        over = one - np.minimum(one, _spread(other, np.maximum))
        under = np.maximum(one, _spread(other, np.minimum)) - one
        wrong |= np.maximum(over, under).max(axis=2) > TOLERANCE
    return float(wrong.mean())
