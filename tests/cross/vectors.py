"""Straight strokes of a drawing, read back from its SVG or PDF; mm of paper, y up from any level."""

from __future__ import annotations

import io
import re
import xml.etree.ElementTree as ET
from typing import NamedTuple

import pypdf
from pypdf.generic import ContentStream

SVG = "{http://www.w3.org/2000/svg}"
MM_PER_POINT = 25.4 / 72
_SEGMENT = re.compile(r"M(\S+) (\S+)L(\S+) (\S+)")


class Stroke(NamedTuple):
    x1: float
    y1: float
    x2: float
    y2: float
    width: float

    @property
    def middle(self) -> tuple[float, float]:
        return (self.x1 + self.x2) / 2, (self.y1 + self.y2) / 2

    @property
    def is_oblique(self) -> bool:
        """At 45 degrees, as the strokes at the ends of dimension lines stand."""
        across, up = abs(self.x2 - self.x1), abs(self.y2 - self.y1)
        return 0.5 < across < 6 and abs(across - up) < 0.01


def svg_strokes(data: bytes, kind: str | None = None) -> list[Stroke]:
    """Strokes that are one straight line; ``kind``: only those inside groups of that class."""
    root = ET.fromstring(data)
    groups = root.iter(f"{SVG}g") if kind else [root]
    found = []
    for group in groups:
        if kind and group.get("class") != kind:
            continue
        for path in group.iter(f"{SVG}path"):
            match = _SEGMENT.fullmatch(path.get("d", ""))
            if match and path.get("stroke-width"):
                x1, y1, x2, y2 = map(float, match.groups())
                found.append(Stroke(x1, -y1, x2, -y2, float(path.get("stroke-width", ""))))
    return found


def _times(a: tuple[float, ...], b: tuple[float, ...]) -> tuple[float, ...]:
    # PDF 32000-1, 8.3.4: a new matrix is multiplied in front of the current one.
    return (
        a[0] * b[0] + a[1] * b[2], a[0] * b[1] + a[1] * b[3],
        a[2] * b[0] + a[3] * b[2], a[2] * b[1] + a[3] * b[3],
        a[4] * b[0] + a[5] * b[2] + b[4], a[4] * b[1] + a[5] * b[3] + b[5],
    )  # fmt: skip


def pdf_strokes(data: bytes, number: int = 0) -> list[Stroke]:
    """Every straight segment that is stroked on a page, with the width its line has there."""
    reader = pypdf.PdfReader(io.BytesIO(data))
    stream = ContentStream(reader.pages[number].get_contents(), reader)
    matrix: tuple[float, ...] = (1, 0, 0, 1, 0, 0)
    width, kept, found = 1.0, [], []
    here, segments = (0.0, 0.0), []

    def place(x: float, y: float) -> tuple[float, float]:
        a, b, c, d, e, f = matrix
        return (a * x + c * y + e) * MM_PER_POINT, (b * x + d * y + f) * MM_PER_POINT

    for operands, operator in stream.operations:
        if operator == b"q":
            kept.append((matrix, width))
        elif operator == b"Q":
            matrix, width = kept.pop()
        elif operator == b"cm":
            matrix = _times(tuple(map(float, operands)), matrix)
        elif operator == b"w":
            width = float(operands[0])
        elif operator == b"m":
            here = place(*map(float, operands))
        elif operator == b"l":
            there = place(*map(float, operands))
            segments.append((*here, *there))
            here = there
        elif operator == b"c":
            here = place(*map(float, operands[4:]))
        elif operator in (b"S", b"s"):
            # The drawing is scaled alike both ways, so one factor makes the width.
            factor = abs(matrix[0] * matrix[3] - matrix[1] * matrix[2]) ** 0.5 * MM_PER_POINT
            found += [Stroke(*segment, width * factor) for segment in segments]
            segments = []
        elif operator in (b"f", b"f*", b"n"):
            segments = []
    return found


def overall(strokes: list[Stroke]) -> tuple[float, float, Stroke]:
    """The lowest dimension line that runs across: its length between oblique strokes, their width, and the line.

    Found by what is drawn alone: an oblique stroke at each end, and a horizontal line through both their middles.
    """
    oblique = [stroke for stroke in strokes if stroke.is_oblique and stroke.width > 0.3]
    lines = [stroke for stroke in strokes if stroke.y1 == stroke.y2 and abs(stroke.x2 - stroke.x1) > 20]
    for line in sorted(lines, key=lambda stroke: stroke.y1):
        left, right = sorted((line.x1, line.x2))
        ends = [
            stroke
            for stroke in oblique
            if abs(stroke.middle[1] - line.y1) < 0.01 and left - 0.01 <= stroke.middle[0] <= right + 0.01
        ]
        if len(ends) >= 2:
            widths = {round(stroke.width, 3) for stroke in ends}
            assert len(widths) == 1
            places = [stroke.middle[0] for stroke in ends]
            return max(places) - min(places), widths.pop(), line
    raise AssertionError("no dimension line runs across this drawing")
