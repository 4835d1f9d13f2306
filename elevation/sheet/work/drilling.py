"""The drilling sheet, at true size: one bracket a page, and the same print turned over for its counterpart.

Two bars, one each way, say whether the printer kept the size; beyond 1/32 in across the plate the print is not to be used.
Parts: head, level line with the rod's axis, crosses of the screws, the plate, the bars, figures to mark by.
"""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.drilling import DrillPlace, Sides, mirrored
from elevation.sheet.annotation.figures import figures
from elevation.sheet.paths import rectangle
from elevation.sheet.records import Fill, Group, Ink, Line, Page, Path, Pen, Picture, Polyline, Record, Text
from elevation.sheet.type_metrics import wrap
from elevation.sheet.work.moved import moved
from elevation.sheet.work.page import MARGIN, WHITE, Head, head_records, lay, upright, width_of
from elevation.sheet.work.parts import BODY, SMALL, paragraph, step
from elevation.units.format import format_length
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, Style, msg, msg_plural, say, term

MOST_OFF_MM = 25.4 / 32
"""So much may two holes of one plate be off by the printer."""
_LINE = Pen(Ink.OUTLINE, 0.25)
_WIDE = Pen(Ink.OUTLINE, 0.5)
_AXIS = Pen(Ink.THIN, 0.25, (6.0, 1.0, 1.0, 1.0))
_PLATE = Pen(Ink.THIN, 0.25, (2.0, 1.2))
_CROSS = 7.0
_BAR_BASE, _FEET = 19.0, 34.0
"""Where the bar along the sheet lies, and where everything over it begins."""
_CIRCLE = 0.5522847498307936


def drilling_sheets(
    places: Sequence[DrillPlace],
    subject: str,
    diameter_mm: float,
    style: Style,
    page: Page | None = None,
    date: str = "",
) -> tuple[Picture, ...]:
    """A page for each bracket, one for both of a mirrored pair.

    Parameters
    ----------
    places : sequence of DrillPlace
        Of one treatment.
    subject : str
        Room, wall, treatment.
    diameter_mm : float
        Of the rod, drawn at its axis.
    style : Style
    page : Page or None
        None: the small sheet of the unit, upright.
    date : str

    Returns
    -------
    tuple of Picture
        True size.
    """
    page = page or upright(style.unit)
    return tuple(_sheet(pair, subject, diameter_mm, style, page, date) for pair in mirrored(places))


def withheld(reasons: Sequence[str], subject: str, style: Style, page: Page | None = None, date: str = "") -> Picture:
    """What stands in place of the drilling sheet of a treatment that cannot be built as drawn."""
    page = page or upright(style.unit)
    width = width_of(page)
    text = say(msg("No holes are shown: as it stands it cannot be built, or it would be unsafe. First mend this:"), style)
    parts = [paragraph(text, width), *(step(str(n), reason, width) for n, reason in enumerate(reasons, start=1))]
    return lay(parts, Head(say(msg("Drilling sheet withheld"), style), subject), page, style, date=date)[0]


def waiting(reasons: Sequence[str], subject: str, style: Style, page: Page | None = None, date: str = "") -> Picture:
    """What stands in place of the drilling sheet of a treatment whose rod hangs by a length that nobody measured."""
    page = page or upright(style.unit)
    width = width_of(page)
    text = say(msg("No holes are shown yet: the rod's height rests on what a packet says. First measure:"), style)
    parts = [paragraph(text, width), *(step(str(n), reason, width) for n, reason in enumerate(reasons, start=1))]
    return lay(parts, Head(say(msg("Drilling sheet waits"), style), subject), page, style, date=date)[0]


def _sheet(pair: tuple[DrillPlace, ...], subject: str, diameter: float, style: Style, page: Page, date: str) -> Picture:
    place = pair[0]
    left, right = MARGIN, page.width_mm - MARGIN
    marks = ", ".join(one.mark for one in pair)
    many = msg_plural("Drilling sheet: bracket {marks}", "Drilling sheet: brackets {marks}", count=len(pair), marks=marks)
    title = say(many, style)
    records: list[Record] = [
        Fill(rectangle(0.0, 0.0, page.width_mm, page.height_mm), WHITE),
        *head_records(Head(title, subject), left, right, page.height_mm - 14.0, date),
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
    records.extend(_bars(place, left, right, style))
    records.extend(_caution(place, left, split - 4.0, style))
    description = say(
        msg("True size template of bracket {marks}: print at 100 percent, without fitting to the page.", marks=marks), style
    )
    name = f"{title} · {subject}"
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
        Line((left, 0.0), (right, 0.0), _WIDE),
        Line((0.0, -low - 14.0), (0.0, high + 14.0), _AXIS),
        Polyline(((-half, -low), (half, -low), (half, high), (-half, high)), _PLATE, True),
    ]
    if not is_ceiling and diameter > 0:
        records.append(Path(circle(0.0, 0.0, diameter / 2), Pen(Ink.THIN, 0.25, (1.0, 1.0))))
    for hole in kit.holes_mm:
        at = (hole, 0.0) if is_ceiling else (0.0, hole)
        records.extend(_cross(at))
        if abs(hole) < TOUCH_MM:
            continue  # it is where the lines cross: a figure would stand on the line
        figure = format_length(abs(hole), style.unit, 25.4 / 32 if style.unit == "in" else 0.5, with_unit=True)
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
        Line((x - _CROSS, y), (x + _CROSS, y), _LINE),
        Line((x, y - _CROSS), (x, y + _CROSS), _LINE),
        Path(circle(x, y, 2.5), _LINE),
    )


def circle(x: float, y: float, radius: float) -> tuple[tuple[str | float, ...], ...]:
    """A circle of four cubics."""
    bend = radius * _CIRCLE
    return (
        ("M", x + radius, y),
        ("C", x + radius, y + bend, x + bend, y + radius, x, y + radius),
        ("C", x - bend, y + radius, x - radius, y + bend, x - radius, y),
        ("C", x - radius, y - bend, x - bend, y - radius, x, y - radius),
        ("C", x + bend, y - radius, x + radius, y - bend, x + radius, y),
        ("Z",),
    )


def bar_lengths(unit: str) -> tuple[float, float]:
    """The check bars along and up the sheet, mm: round lengths on the reader's tape."""
    return (6 * 25.4, 7 * 25.4) if unit == "in" else (150.0, 180.0)


def allowed_off(place: DrillPlace, bar_mm: float) -> float:
    """How far a bar may be off so that the plate's outermost holes are off by no more than 1/32 in."""
    holes = place.kit.holes_mm
    across = max(holes) - min(holes) if len(holes) > 1 else 25.4
    return MOST_OFF_MM * bar_mm / max(across, 25.4)


def _off_middle(place: DrillPlace) -> float:
    """How far over the middle of its plate the axis is."""
    return 0.0 if place.on == "ceiling" else (place.kit.plate_below_mm - place.kit.plate_above_mm) / 2


def _bars(place: DrillPlace, left: float, right: float, style: Style) -> tuple[Record, ...]:
    along, up = bar_lengths(style.unit)
    x, y = right - 3.0, _FEET
    return (
        *check_bar(place, along, left, _BAR_BASE, style),
        *_bar((x, y), (x, y + up)),
        Text((x - 1.8, y + up / 2), _bar_words(place, up, style), SMALL, Ink.TEXT, "middle", 90.0),
    )


def check_bar(place: DrillPlace, length: float, left: float, base: float, style: Style) -> tuple[Record, ...]:
    """A bar along the sheet that says whether the printer kept the size.

    Parameters
    ----------
    place : DrillPlace
        Its plate says how far the bar may be off.
    length, left, base : float
        Of the bar on the sheet.
    style : Style
    """
    text = Text((left + length / 2, base + 1.8), _bar_words(place, length, style), SMALL, Ink.TEXT, "middle")
    return (*_bar((left, base), (left + length, base)), text)


def _bar_words(place: DrillPlace, length: float, style: Style) -> str:
    fine = 25.4 / 32 if style.unit == "in" else 0.5
    off = allowed_off(place, length)
    low, high = (
        format_length(value, style.unit, fine, decimal_mark=style.decimal_mark, with_unit=True, sign=False)
        for value in (length - off, length + off)
    )
    whole = format_length(length, style.unit, fine, decimal_mark=style.decimal_mark, with_unit=True)
    return say(msg("{whole}: use the print only if this measures {low} to {high}", whole=whole, low=low, high=high), style)


def _bar(a: tuple[float, float], b: tuple[float, float]) -> tuple[Record, ...]:
    dx, dy = (0.0, 3.0) if a[1] == b[1] else (3.0, 0.0)
    return (
        Line(a, b, _WIDE),
        Line((a[0] - dx, a[1] - dy), (a[0] + dx, a[1] + dy), _LINE),
        Line((b[0] - dx, b[1] - dy), (b[0] + dx, b[1] + dy), _LINE),
    )


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


def card_line(place: DrillPlace, style: Style) -> str:
    """What to do where the printer did not keep the size: the plate's figures, to be drawn on card by hand."""
    fine = 25.4 / 32 if style.unit == "in" else 0.5
    holes = [
        format_length(abs(hole), style.unit, fine, decimal_mark=style.decimal_mark, with_unit=True)
        for hole in place.kit.holes_mm
    ]
    sides = (msg("{hole} left"), msg("{hole} right")) if place.on == "ceiling" else (msg("{hole} down"), msg("{hole} up"))
    told = ", ".join(
        say(msg("in the crossing"), style) if hole == 0 else say(Message(sides[hole > 0].template, {"hole": figure}), style)
        for hole, figure in zip(place.kit.holes_mm, holes, strict=True)
    )
    return say(
        msg(
            "If a bar is off, leave the print: cross two lines on card and mark the holes from there: {holes}.", holes=told
        ),
        style,
    )


def figure_lines(place: DrillPlace, style: Style) -> tuple[str, ...]:
    """The figures to mark a bracket's middle and the rod's axis by, each place from two sides with its sum."""
    lines = [*sides_lines(place.upright, style), *sides_lines(place.along, style)]
    beside = beside_line(place, style)
    if beside:
        lines.append(beside)
    if place.out is not None:
        lines.append(say(msg("{figure} {where}", figure=Mm(place.out[1]), where=place.out[0]), style))
    return tuple(lines)


def beside_line(place: DrillPlace, style: Style) -> str:
    """How far a bracket's middle is from the nearest edge, and where that is itself; empty where there is none."""
    if place.beside is None or place.edge_mm is None:
        return ""
    where, away = place.beside
    return say(
        msg("{figure} {where}, itself {edge} from the left end", figure=Mm(away), where=where, edge=Mm(place.edge_mm)),
        style,
    )


def sides_lines(sides: Sides, style: Style) -> tuple[str, ...]:
    """Both figures of a place between two datums and what they add up to; the figures are rounded so that they do."""
    if sides.second_mm is None or sides.whole_mm is None:
        return (say(msg("{figure} {where}", figure=Mm(sides.first_mm), where=sides.first), style),)
    parts = figures((sides.first_mm, sides.second_mm), style)
    whole = figures((sides.whole_mm,), style)[0]
    unit = " in" if style.unit == "in" else " mm"
    return (
        say(_said("{figure} {where}", parts[0] + unit, sides.first), style),
        say(_said("{figure} {where}", parts[1] + unit, sides.second), style),
        say(msg("check: together {figure}, {where}", figure=whole + unit, where=sides.whole), style),
    )


def first_figure(sides: Sides, style: Style) -> str:
    """The first figure of a place with its unit, as it stands beside the second."""
    return _parts(sides, style)[0] + (" in" if style.unit == "in" else " mm")


def _parts(sides: Sides, style: Style) -> tuple[str, ...]:
    alone = sides.second_mm is None or sides.whole_mm is None
    return figures((sides.first_mm,) if alone or sides.second_mm is None else (sides.first_mm, sides.second_mm), style)


def sides_figures(sides: Sides, style: Style) -> str:
    """Both figures of a place and their sum as one line: ``86 over the floor + 10 under the ceiling = 96 in``."""
    if sides.second_mm is None or sides.whole_mm is None:
        return say(msg("{figure} {where}", figure=Mm(sides.first_mm), where=sides.first), style)
    parts = figures((sides.first_mm, sides.second_mm), style)
    return say(
        msg(
            "{first} {where_first} + {second} {where_second} = {whole}",
            first=parts[0],
            where_first=sides.first,
            second=parts[1],
            where_second=sides.second,
            whole=Mm(sides.whole_mm),
        ),
        style,
    )


def _said(template_text: str, figure: str, where: Message) -> Message:
    return Message(template_text, {"figure": figure, "where": where})


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
