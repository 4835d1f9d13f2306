"""The drilling sheet, at true size: one bracket a page, and the same print turned over for its counterpart.

Two bars, one each way, say whether the printer kept the size; beyond 1/32 in across the plate the print is not to be used.
Parts: head, level line with the rod's axis, crosses of the screws, the plate, the bars, figures to mark by.
"""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.drilling import DrillPlace, mirrored
from elevation.sheet.paths import circle, rectangle
from elevation.sheet.records import Fill, Group, Ink, Line, Path, Pen, Picture, Polyline, Record, Text
from elevation.sheet.type_metrics import wrap
from elevation.sheet.work.drilling_figures import card_line, figure_lines
from elevation.sheet.work.moved import moved
from elevation.sheet.work.page import MARGIN, WHITE, Head, Sheet, head_records
from elevation.sheet.work.parts import BODY, SMALL, paragraph, step
from elevation.sheet.work.true_size import AXIS, CROSS, LINE, PLATE, WIDE, bar_along, bar_up
from elevation.units.format import format_length
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Style, msg, msg_plural, say, term

_FEET = 34.0
"""Where everything over the bar begins."""


def drilling_sheets(places: Sequence[DrillPlace], diameter_mm: float, sheet: Sheet) -> tuple[Picture, ...]:
    """A page for each bracket, one for both of a mirrored pair.

    Parameters
    ----------
    places : sequence of DrillPlace
        Of one treatment.
    sheet : Sheet
    diameter_mm : float
        Of the rod, drawn at its axis.

    Returns
    -------
    tuple of Picture
        True size.
    """
    return tuple(_sheet(pair, diameter_mm, sheet) for pair in mirrored(places))


def withheld(reasons: Sequence[str], sheet: Sheet) -> Picture:
    """What stands in place of the drilling sheet of a treatment that cannot be built as drawn."""
    text = msg("No holes are shown: as it stands it cannot be built, or it would be unsafe. First mend this:")
    return _held(msg("Drilling sheet withheld"), text, reasons, sheet)


def waiting(reasons: Sequence[str], sheet: Sheet) -> Picture:
    """What stands in place of the drilling sheet of a treatment whose rod hangs by a length that nobody measured."""
    text = msg("No holes are shown yet: the rod's height rests on what a packet says. First measure:")
    return _held(msg("Drilling sheet waits"), text, reasons, sheet)


def _held(title: Message, text: Message, reasons: Sequence[str], sheet: Sheet) -> Picture:
    width = sheet.width
    steps = [step(str(number), reason, width) for number, reason in enumerate(reasons, start=1)]
    return sheet.lay(title, [paragraph(say(text, sheet.style), width), *steps])[0]


def _sheet(pair: tuple[DrillPlace, ...], diameter: float, sheet: Sheet) -> Picture:
    place, style, page = pair[0], sheet.style, sheet.page
    left, right = MARGIN, page.width_mm - MARGIN
    marks = ", ".join(one.mark for one in pair)
    many = msg_plural("Drilling sheet: bracket {marks}", "Drilling sheet: brackets {marks}", count=len(pair), marks=marks)
    title = say(many, style)
    records: list[Record] = [
        Fill(rectangle(0.0, 0.0, page.width_mm, page.height_mm), WHITE),
        *head_records(Head(title, sheet.subject), left, right, page.height_mm - 14.0, sheet.day),
    ]
    top = page.height_mm - 33.0
    how = _how(pair, style)
    records.extend(_lines(how, left, top, right - left, SMALL))
    top -= SMALL * 1.3 * len(wrap(how, SMALL, right - left)) + 5.0
    # Figures stand at the left, the plate at the right: so the level line has no bar and no text in its way.
    split = left + (right - left) * 0.5
    records.extend(_figures(pair, left, split - 4.0, top, style))
    middle = (split + right - 12.0) / 2
    axis = (middle, (top + _FEET) / 2 + _off_middle(place))
    records.extend(moved(template(place, diameter, split - middle, right - 12.0 - middle, style), *axis))
    records.extend(bar_along(place, left, style))
    records.extend(bar_up(place, right - 3.0, _FEET, style))
    records.extend(_caution(place, left, split - 4.0, style))
    description = say(
        msg("True size template of bracket {marks}: print at 100 percent, without fitting to the page.", marks=marks), style
    )
    name = f"{title} · {sheet.subject}"
    return Picture((Group(place.ref, "sheet", title, tuple(records), "paper"),), 1.0, (0.0, 0.0), page, name, description)


def template(place: DrillPlace, diameter: float, left: float, right: float, style: Style) -> tuple[Record, ...]:
    """Plate, level line, upright line and crosses at true size, the rod's axis in the middle (0, 0).

    Parameters
    ----------
    place : DrillPlace
    diameter : float
        Of the rod.
    left, right : float
        How far the level line runs.
    style : Style
    """
    kit = place.kit
    is_ceiling = place.on == "ceiling"
    high, low = (kit.plate_width_mm / 2,) * 2 if is_ceiling else (kit.plate_above_mm, kit.plate_below_mm)
    half = kit.plate_width_mm / 2
    records: list[Record] = [
        Line((left, 0.0), (right, 0.0), WIDE),
        Line((0.0, -low - 14.0), (0.0, high + 14.0), AXIS),
        Polyline(((-half, -low), (half, -low), (half, high), (-half, high)), PLATE, True),
    ]
    if not is_ceiling and diameter > 0:
        records.append(Path(circle(0.0, 0.0, diameter / 2), Pen(Ink.THIN, 0.25, (1.0, 1.0))))
    for hole in kit.holes_mm:
        at = (hole, 0.0) if is_ceiling else (0.0, hole)
        records.extend(_cross(at))
        if abs(hole) < TOUCH_MM:
            continue  # it is where the lines cross: a figure would stand on the line
        fine = 25.4 / 32 if style.unit == "in" else 0.5
        figure = format_length(abs(hole), style.unit, fine, decimal_mark=style.decimal_mark, with_unit=True)
        where = (at[0], -8.0 - SMALL) if is_ceiling else (half + 4.0, at[1] - SMALL / 3)
        records.append(Text(where, figure, SMALL, Ink.QUIET, "middle" if is_ceiling else "left"))
    name = msg("rod's line") if is_ceiling else msg("level")
    records.append(Text((left, 1.4), say(name, style), SMALL, Ink.TEXT, weight="semibold"))
    if is_ceiling:
        records.append(Text((0.0, half + 15.0), say(msg("into the room"), style), SMALL, Ink.TEXT, "middle"))
        records.append(Text((0.0, -half - 15.0 - SMALL), say(msg("towards the wall"), style), SMALL, Ink.TEXT, "middle"))
    else:
        records.append(Text((0.0, high + 15.0), say(msg("up"), style), SMALL, Ink.TEXT, "middle"))
    return tuple(records)


def _cross(at: tuple[float, float]) -> tuple[Record, ...]:
    x, y = at
    return (
        Line((x - CROSS, y), (x + CROSS, y), LINE),
        Line((x, y - CROSS), (x, y + CROSS), LINE),
        Path(circle(x, y, 2.5), LINE),
    )


def _off_middle(place: DrillPlace) -> float:
    """How far over the middle of its plate the axis is."""
    return 0.0 if place.on == "ceiling" else (place.kit.plate_below_mm - place.kit.plate_above_mm) / 2


def _how(pair: tuple[DrillPlace, ...], style: Style) -> str:
    place = pair[0]
    if place.on == "ceiling":
        text = msg(
            "Print at 100 percent. Lay the thick line on the rod's line that you drew on the ceiling, prick "
            "through the crosses."
        )
    else:
        text = msg(
            "Print at 100 percent. Lay the thick line, which is the rod's axis, on the level line that you drew, prick "
            "through the crosses."
        )
    if len(pair) > 1:
        text = msg(
            "{text} For bracket {mark} turn this same print over and prick from the back: what the printer got wrong is "
            "then the same on both sides.",
            text=text,
            mark=pair[1].mark,
        )
    return say(text, style)


def _figures(pair: tuple[DrillPlace, ...], left: float, right: float, top: float, style: Style) -> tuple[Record, ...]:
    """The figures of each bracket of the pair, one under the other."""
    wide = right - left
    records: list[Record] = []
    y = top
    for place in pair:
        title = say(msg("Bracket {mark}, {kit}", mark=place.mark, kit=term(place.kit.name)), style)
        records.extend(_lines(title, left, y, wide, BODY, "semibold"))
        y -= BODY * 1.3 * len(wrap(title, BODY, wide, "semibold")) + 2.0
        for line in figure_lines(place, style):
            records.extend(_lines(line, left, y, wide, BODY))
            y -= BODY * 1.3 * len(wrap(line, BODY, wide)) + 0.8
        y -= 5.0
    card = card_line(pair[0], style)
    records.extend(_lines(card, left, y, wide, SMALL))
    return tuple(records)


def _caution(place: DrillPlace, left: float, right: float, style: Style) -> tuple[Record, ...]:
    texts = [
        msg("Before drilling: detect cables and pipes here, current off where a cable may run; eyes and lungs covered."),
        msg("The packet of the fixing says drill and depth. Measure the bracket in hand: its holes govern."),
    ]
    if place.on == "ceiling":
        texts.append(msg("Fix into a joist; never into board alone. Somebody holds the ladder."))
    wide = right - left - 3.6
    said = [say(text, style) for text in texts]
    high = sum(len(wrap(text, SMALL, wide)) * SMALL * 1.3 + 1.0 for text in said)
    y = _FEET + high
    records: list[Record] = [Fill(rectangle(left, _FEET, left + 1.2, y), Ink.ACCENT)]
    for text in said:
        records.extend(_lines(text, left + 3.6, y, wide, SMALL))
        y -= len(wrap(text, SMALL, wide)) * SMALL * 1.3 + 1.0
    return tuple(records)


def _lines(text: str, left: float, top: float, width: float, size: float, weight: str = "regular") -> tuple[Record, ...]:
    return tuple(
        Text(
            (left, top - size - number * size * 1.3),
            line,
            size,
            Ink.TEXT,
            weight="semibold" if weight == "semibold" else "regular",
        )
        for number, line in enumerate(wrap(text, size, width, weight))
    )
