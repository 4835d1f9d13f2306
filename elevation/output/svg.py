"""A picture as SVG: millimetres, named groups, type embedded, the same bytes for the same picture.

Wall and sheet coordinates are turned into sheet mm with y down here, once; nothing in the file is transformed
but turned text. Coordinates have three decimals (0.001 mm).
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterable

from elevation.output.dimension_lines import dimension_lines
from elevation.output.svg_font import font_faces
from elevation.setting_out.model import Point
from elevation.sheet.inks import colour
from elevation.sheet.paths import bounds as step_bounds
from elevation.sheet.records import LAYERS, Dimension, Fill, Gradient, Group, Line, Path, Pen, Picture, Polyline, Text
from elevation.sheet.type_files import FAMILY
from elevation.sheet.type_metrics import text_width

_ANCHOR = {"left": "start", "middle": "middle", "right": "end"}
_UNSAFE_IN_ID = re.compile(r"[^A-Za-z0-9-]")
# XML 1.0 allows no other control characters, not even as references.
_NOT_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_FRAMES = ("paper", "wall")


def to_svg(picture: Picture) -> bytes:
    """The picture as an SVG document.

    Parameters
    ----------
    picture : Picture
        With a page: the document has its size. Without one: the size of what is drawn.

    Returns
    -------
    bytes
        UTF-8.
    """
    return _Writer(picture).document().encode("utf-8")


def number(value: float) -> str:
    """A coordinate with at most three decimals, the shortest way to write it."""
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def escaped(text: str) -> str:
    """Text made safe for XML content and attributes; characters that XML cannot hold are replaced."""
    clean = _NOT_XML.sub("\ufffd", text)
    return clean.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace('"', "&quot;")


def _identifier(layer: str, ref: tuple[str, ...]) -> str:
    # Ids are the layer and the Ref; what XML names cannot hold is written as its code.
    parts = (_UNSAFE_IN_ID.sub(lambda found: f"_{ord(found[0]):x}_", part) for part in ref)
    return ".".join((layer, *parts))


class _Writer:
    """One document: collects the type and gradients used while it writes the groups."""

    def __init__(self, picture: Picture) -> None:
        self.picture = picture
        self.used: dict[str, set[str]] = {}
        self.gradients: dict[str, str] = {}
        self.scale = picture.scale
        if picture.page is not None:
            self.width, self.height = picture.page.width_mm, picture.page.height_mm
            self.left, self.top = 0.0, self.height
        else:
            left, bottom, right, self.top = _extent(picture)
            self.left, self.width, self.height = left, right - left, self.top - bottom

    def document(self) -> str:
        rank = {layer: place for place, layer in enumerate(LAYERS)}
        groups = sorted(self.picture.groups, key=lambda group: rank[group.layer])
        seen: Counter[str] = Counter()
        body = "\n".join(self._group(group, seen) for group in groups)
        width, height = number(self.width), number(self.height)
        style = font_faces(self.used)
        gradients = "\n".join(self.gradients[key] for key in self.gradients)
        defs = (
            f"<defs>\n<style>{style}\ntext{{font-kerning:none;font-variant-ligatures:none}}</style>\n{gradients}\n</defs>"
        )
        return (
            '<?xml version="1.0" encoding="UTF-8"?>\n'
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" viewBox="0 0 {width} {height}"'
            ' role="img" aria-labelledby="picture-title picture-description">\n'
            f'<title id="picture-title">{escaped(self.picture.title)}</title>\n'
            f'<desc id="picture-description">{escaped(self.picture.description)}</desc>\n{defs}\n'
            f'<g fill="none" stroke-linecap="butt" stroke-linejoin="miter" stroke-miterlimit="4"'
            f' font-family="\'{FAMILY}\',sans-serif" xml:space="preserve">\n{body}\n</g>\n</svg>\n'
        )

    def _group(self, group: Group, seen: Counter[str]) -> str:
        name = _identifier(group.layer, group.ref)
        seen[name] += 1
        if seen[name] > 1:
            name = f"{name}.{seen[name]}"
        wall = group.frame == "wall"
        place = self._on_wall if wall else self._on_paper
        scale = self.scale if wall else 1.0
        records = "\n".join(self._record(record, place, scale) for record in group.records)
        title = f"<title>{escaped(group.title)}</title>\n" if group.title else ""
        return f'<g id="{name}" class="{group.layer}">\n{title}{records}\n</g>'

    def _on_wall(self, x: float, y: float) -> Point:
        origin = self.picture.origin
        return origin[0] + x / self.scale - self.left, self.top - (origin[1] + y / self.scale)

    def _on_paper(self, x: float, y: float) -> Point:
        return x - self.left, self.top - y

    def _record(self, record: object, place: _Place, scale: float) -> str:
        if isinstance(record, Line):
            (x1, y1), (x2, y2) = place(*record.a), place(*record.b)
            return f'<path d="M{number(x1)} {number(y1)}L{number(x2)} {number(y2)}"{_stroke(record.pen)}/>'
        if isinstance(record, Polyline):
            points = " ".join(f"{number(x)},{number(y)}" for x, y in (place(*point) for point in record.points))
            return f'<{"polygon" if record.closed else "polyline"} points="{points}"{_stroke(record.pen)}/>'
        if isinstance(record, Path):
            return f'<path d="{_path(record.steps, place)}"{_stroke(record.pen)}/>'
        if isinstance(record, Fill):
            paint = self._paint(record.paint, place)
            return f'<path d="{_path(record.steps, place)}" fill-rule="evenodd"{paint}/>'
        if isinstance(record, Text):
            return self._text(record, place)
        assert isinstance(record, Dimension)
        inner = "".join(self._record(part, place, scale) for part in dimension_lines(record, scale))
        return f'<g class="rung-{record.rung}">{inner}</g>'

    def _text(self, record: Text, place: _Place) -> str:
        if not record.text:
            return ""
        self.used.setdefault(record.weight, set()).update(record.text)
        x, y = (number(value) for value in place(*record.at))
        turn = f' transform="rotate({number(-record.turn)} {x} {y})"' if record.turn else ""
        cut = {"regular": "", "semibold": ' font-weight="600"', "italic": ' font-style="italic"'}[record.weight]
        anchor = "" if record.align == "left" else f' text-anchor="{_ANCHOR[record.align]}"'
        # A viewer that lacks the embedded type still keeps each text inside its room.
        length = number(text_width(record.text, record.height, record.weight))
        return (
            f'<text x="{x}" y="{y}" font-size="{number(record.height)}"{cut}{anchor}'
            f' textLength="{length}" lengthAdjust="spacingAndGlyphs"'
            f"{_coloured('fill', record.ink)}{turn}>{escaped(record.text)}</text>"
        )

    def _paint(self, paint: str | Gradient, place: _Place) -> str:
        if isinstance(paint, str):
            return _coloured("fill", paint)
        (x1, y1), (x2, y2) = place(*paint.a), place(*paint.b)
        stops = "".join(
            f'<stop offset="{number(stop.at)}"{_coloured("stop", stop.colour, "stop-color")}/>' for stop in paint.stops
        )
        inner = (
            f' gradientUnits="userSpaceOnUse" x1="{number(x1)}" y1="{number(y1)}" x2="{number(x2)}"'
            f' y2="{number(y2)}">{stops}</linearGradient>'
        )
        if inner not in self.gradients:
            self.gradients[inner] = f'<linearGradient id="gradient-{len(self.gradients) + 1}"{inner}'
        name = self.gradients[inner].split('"', 2)[1]
        return f' fill="url(#{name})"'


_Place = Callable[[float, float], Point]


def _coloured(kind: str, ink: str, attribute: str = "") -> str:
    text = colour(ink)
    alpha = f' {kind}-opacity="{number(int(text[7:9], 16) / 255)}"' if len(text) == 9 else ""
    return f' {attribute or kind}="{text[:7]}"{alpha}'


def _stroke(pen: Pen) -> str:
    dash = f' stroke-dasharray="{" ".join(number(part) for part in pen.dash)}"' if pen.dash else ""
    return f'{_coloured("stroke", pen.ink)} stroke-width="{number(pen.width)}"{dash}'


def _path(steps: Iterable[tuple[str | float, ...]], place: _Place) -> str:
    out = []
    for step in steps:
        numbers = [float(value) for value in step[1:]]
        pairs = (place(x, y) for x, y in zip(numbers[::2], numbers[1::2], strict=True))
        out.append(str(step[0]) + " ".join(f"{number(x)} {number(y)}" for x, y in pairs))
    return "".join(out)


def _extent(picture: Picture) -> tuple[float, float, float, float]:
    """What a picture without a page covers, in sheet mm, y up, with a margin of 5 mm."""
    boxes = [
        box
        for group in picture.groups
        for record in group.records
        for box in _boxes(record, picture, group.frame == "wall")
    ]
    if not boxes:
        return 0.0, 0.0, 10.0, 10.0
    margin = 5.0
    return (
        min(box[0] for box in boxes) - margin,
        min(box[1] for box in boxes) - margin,
        max(box[2] for box in boxes) + margin,
        max(box[3] for box in boxes) + margin,
    )


def _boxes(record: object, picture: Picture, wall: bool) -> Iterable[tuple[float, float, float, float]]:
    scale = picture.scale if wall else 1.0
    x0, y0 = picture.origin if wall else (0.0, 0.0)
    if isinstance(record, Dimension):
        for part in dimension_lines(record, scale):
            yield from _boxes(part, picture, wall)
        return
    reach = 0.0
    points: tuple[Point, ...]
    if isinstance(record, Line):
        points = (record.a, record.b)
    elif isinstance(record, Polyline):
        points = record.points
    elif isinstance(record, Path | Fill):
        left, bottom, right, top = step_bounds(record.steps)
        points = ((left, bottom), (right, top))
    else:
        assert isinstance(record, Text)
        points = (record.at,)
        reach = max(text_width(record.text, record.height, record.weight), record.height)
    xs, ys = [x0 + x / scale for x, _ in points], [y0 + y / scale for _, y in points]
    yield min(xs) - reach, min(ys) - reach, max(xs) + reach, max(ys) + reach
