"""Drilling plates on paper: each at true size, what it is for, and how it is cut and used."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.plate import HOLE_MM, NOTCH_MM, Plate, size_of
from elevation.sheet.paths import circle
from elevation.sheet.records import Ink, Line, Path, Pen, Picture, Polyline, Record
from elevation.sheet.work.moved import moved
from elevation.sheet.work.page import Part, Sheet, together
from elevation.sheet.work.parts import BODY, SMALL, gap, heading, paragraph, step
from elevation.words import Message, Mm, Style, msg, say, term

_CUT = Pen(Ink.OUTLINE, 0.35)
_MARK = Pen(Ink.THIN, 0.18, (2.0, 1.2))


def plate_sheet(found: Sequence[Plate], withheld: Sequence[str], sheet: Sheet) -> tuple[Picture, ...]:
    """The pages of drilling plates.

    Parameters
    ----------
    found : sequence of Plate
    withheld : sequence of str
        Treatments that must not be drilled for.
    sheet : Sheet
    """
    style, width = sheet.style, sheet.width
    parts: list[Part] = [paragraph(say(_ABOUT, style), width, SMALL)]
    parts.extend(
        step(str(number), say(text, style), width, cautions=[say(one, style) for one in cautions])
        for number, (text, cautions) in enumerate(_STEPS, start=1)
    )
    if withheld:
        text = msg("Withheld, since they cannot be built as drawn: {names}.", names=", ".join(withheld))
        parts.append(paragraph(say(text, style), width, BODY))
    for plate in found:
        parts.append(gap(2.0))
        parts.extend(together(_plate(plate, width, style), sheet.page))
    return sheet.lay(msg("Drilling plates"), parts)


_ABOUT = msg(
    "One plate serves every bracket of its kind. As DXF or SVG a cutting machine makes it of card, board or plastic "
    "2 to 4 mm thick: layer CUT is cut, layer MARKS only scored. Here it is drawn at true size."
)
_STEPS: tuple[tuple[Message, tuple[Message, ...]], ...] = (
    (
        msg(
            "Lay the bracket in hand on the plate: its holes must show the plate's holes. Else measure it and type its kit."
        ),
        (),
    ),
    (
        msg("At the wall draw the level line and the bracket's middle, each from two sides, as the hanging sheet says."),
        (),
    ),
    (
        msg("Lay the plate so that its notches stand on both lines, cut-off corners up. Prick through the holes."),
        (msg("Before drilling: detect cables and pipes here, current off where a cable may run; eyes and lungs covered."),),
    ),
)


def _plate(plate: Plate, width: float, style: Style) -> list[Part]:
    left, bottom, right, top = size_of(plate)
    size = msg("{width} by {height}", width=Mm(right - left, about=True), height=Mm(top - bottom, about=True))
    parts = [heading(say(term(plate.kit.name), style), width)]
    uses = "; ".join(say(use, style) for use in plate.uses)
    told = msg("For {uses}. {size}, holes {hole} wide.", uses=uses, size=size, hole=f"{HOLE_MM:g} mm")
    parts.append(paragraph(say(told, style), width, SMALL, sticks=True))
    if plate.on == "ceiling":
        text = msg(
            "Under the ceiling: the notches left and right stand on the rod's line, the cut-off corners into the room."
        )
        parts.append(paragraph(say(text, style), width, SMALL, sticks=True))
    records: list[Record] = [
        Polyline(plate.outline, _CUT, True),
        *(Path(circle(x, y, HOLE_MM / 2), _CUT) for x, y in plate.holes),
        *(Line(a, b, _MARK) for a, b in plate.marks),
    ]
    parts.append(Part(top - bottom + NOTCH_MM, moved(records, -left + 2.0, -top)))
    return parts
