"""The elevation: the wall drawn to scale with its dimensions, facts, findings, key table and title block."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from msgspec.structs import replace

from elevation.findings.model import Finding, Weight
from elevation.room.called import scheme_line
from elevation.room.model import Ref, Room, Treatment
from elevation.setting_out.model import SetOut, TreatmentOut
from elevation.sheet import furniture
from elevation.sheet.annotation import Annotation, lay_annotation
from elevation.sheet.annotation.marks import finding_mark
from elevation.sheet.annotation.model import Box
from elevation.sheet.blocks import Block, Placed, text_records
from elevation.sheet.dates import sheet_date
from elevation.sheet.draw_inside import zone_group
from elevation.sheet.draw_light import LIGHTS_WITHIN, Mode, light_groups
from elevation.sheet.drawing import View, draw_wall
from elevation.sheet.facts import state_of
from elevation.sheet.layouts import Arranged, Layout, arrange
from elevation.sheet.margins import margins
from elevation.sheet.paper import scale_name
from elevation.sheet.plan import plan_extent, plan_groups, under
from elevation.sheet.records import NARROW, Group, Ink, Line, Page, Pen, Picture, Record
from elevation.sheet.stops import stop_text_within
from elevation.trade.model import Trade
from elevation.units.format import LESS, MORE
from elevation.words import Style, msg, msg_plural, say


def elevation_sheet(
    room: Room,
    set_out: SetOut,
    findings: Sequence[Finding],
    trade: Trade,
    style: Style,
    paper: Page | None = None,
    scale: float | None = None,
    date: str | None = None,
    view: View | None = None,
    light: Mode | None = None,
) -> Picture:
    """The whole sheet of a wall in one scheme.

    Parameters
    ----------
    room : Room
    set_out : SetOut
        The wall, set out in the scheme.
    findings : sequence of Finding
        In the order of their numbers.
    trade : Trade
    style : Style
        How figures and words are said.
    paper : Page or None
        None: the sheet that suits the room's unit and the wall's size.
    scale : float or None
        Wall mm for one paper mm (24.0 for 1:24); None: the largest standard scale that fits.
    date : str or None
        None: today, or the day of SOURCE_DATE_EPOCH.
    view : View or None
        In which position panels are drawn; None: as they hang just now.
    light : str or None
        ``day`` or ``evening``; None: as it is drawn.

    Returns
    -------
    Picture
        With a page.

    Raises
    ------
    BadInput
        The scale asked for does not fit on the paper asked for.
    """
    stopped = _stopped(set_out, findings)
    view = view or View()
    position = "drawn" if view.panels == "none" else view.panels
    arranged = arranged_sheet(room, set_out, findings, trade, style, paper, scale)
    scale_text = say(scale_name(arranged.scale, style.unit), style)
    title = furniture.Title(
        room.name or say(msg("Room"), style),
        set_out.wall_name or set_out.wall,
        scheme_line(room, set_out.wall, set_out.scheme, style),
        _kind(set_out, style, light),
        scale_text,
        date if date is not None else sheet_date(),
        _sheet_number(room, set_out),
    )
    groups = (
        Group((), "sheet", say(msg("Sheet"), style), _sheet(arranged), "paper"),
        *draw_wall(set_out, trade, view),
        *light_groups(room, set_out, trade, light, position, style),
        *inside_where_found(set_out, style, arranged.scale),
        *arranged.annotation.groups,
        Group(
            (),
            "title",
            say(msg("Facts, findings and title block"), style),
            _around(arranged, title, findings, set_out, style, stopped),
            "paper",
        ),
    )
    description = say(
        msg_plural(
            "Elevation of {wall} in {room} at {scale}, {count} finding.",
            "Elevation of {wall} in {room} at {scale}, {count} findings.",
            wall=title.wall,
            room=title.room,
            scale=scale_text,
            count=len(findings),
        ),
        style,
    )
    name = " · ".join(part for part in (title.room, title.wall, title.scheme) if part)
    return Picture(groups, arranged.scale, arranged.origin, arranged.page, name, description)


def arranged_sheet(
    room: Room,
    set_out: SetOut,
    findings: Sequence[Finding],
    trade: Trade,
    style: Style,
    paper: Page | None = None,
    scale: float | None = None,
) -> Arranged:
    """Sheet, scale, annotation and margin of an elevation, decided but not drawn; as ``elevation_sheet``."""
    treatments = _treatments(room, set_out)

    def lay(at: float) -> Annotation:
        return with_plan(lay_annotation(set_out, findings, style, at, room=room, key_table=False), set_out, style, at)

    def fill(annotation: Annotation, layout: Layout) -> Iterable[Sequence[Block]]:
        width = min(column.width for column in layout.columns)
        return margins(set_out, findings, treatments, trade, style, annotation, width)

    has_stop = bool(_stopped(set_out, findings))
    arranged = arrange(set_out, paper, scale, style.unit, lay, fill, has_stop=has_stop)
    told = _told(arranged)
    if told < len(findings):
        # A mark whose number the list had no room to explain would only puzzle.
        annotation = with_plan(
            lay_annotation(set_out, findings[:told], style, arranged.scale, room=room, key_table=False),
            set_out,
            style,
            arranged.scale,
        )
        arranged = replace(arranged, annotation=annotation)
    return arranged


def with_plan(annotation: Annotation, set_out: SetOut, style: Style, scale: float) -> Annotation:
    """The annotation with the plan of the wall under it, where a neighbour stands round one of its corners.

    Elsewhere the plan has a sheet of its own, and the elevation the whole height of the paper.
    """
    if set_out.corners == (None, None):
        return annotation
    left, bottom, right, top = annotation.extent
    frame = under(set_out, bottom * scale, scale)
    plan = plan_extent(set_out, frame, scale)
    extent = (min(left, plan[0] / scale), plan[1] / scale, max(right, plan[2] / scale), top)
    groups = (*annotation.groups, *plan_groups(set_out, frame, style, scale, "drawn"))
    return replace(annotation, groups=groups, extent=extent)


def _told(arranged: Arranged) -> int:
    """How many of the findings the margin had room for."""
    return sum(1 for item in arranged.placed if item.block.mark is not None)


def screen_picture(
    set_out: SetOut,
    findings: Sequence[Finding],
    trade: Trade,
    style: Style,
    mm_per_paper: float,
    *,
    room: Room | None = None,
    view: View | None = None,
    area: Box | None = None,
    previous: Mapping[str, str] | None = None,
) -> tuple[Picture, Annotation]:
    """What a canvas shows: the same drawing and annotation at the screen's scale, without a page.

    Parameters
    ----------
    set_out, findings, trade, style
        As for the sheet.
    mm_per_paper : float
        Wall mm for one paper mm of the screen (96/25.4 px).
    room : Room or None
        Says what is held.
    view : View or None
    area : (float, float, float, float) or None
        Wall mm that labels keep to.
    previous : mapping or None
        ``rungs`` of the annotation laid last.

    Returns
    -------
    (Picture, Annotation)
        The annotation for the next call, and for the key table's size.
    """
    annotation = lay_annotation(set_out, findings, style, mm_per_paper, area, room=room, previous=previous)
    groups = (*draw_wall(set_out, trade, view or View()), *annotation.groups)
    return Picture(groups, mm_per_paper, title=set_out.wall_name or set_out.wall), annotation


def inside_where_found(set_out: SetOut, style: Style, scale: float) -> tuple[Group, ...]:
    """What stands inside the wall, on the sheet of a wall where somebody looked for it."""
    if not any(zone.is_found for zone in set_out.zones):
        return ()
    cloth = [
        (min(panel.open[0], panel.drawn[0]), panel.hem_low_mm, max(panel.open[1], panel.drawn[1]), panel.top_mm)
        for treatment in set_out.treatments
        for layer in treatment.layers
        for panel in layer.panels
    ]
    return (zone_group(set_out, style, scale, cloth),)


def _treatments(room: Room, set_out: SetOut) -> dict[Ref, Treatment]:
    return {
        (wall.id, scheme.id, treatment.id): treatment
        for wall in room.walls
        if wall.id == set_out.wall
        for scheme in wall.schemes
        for treatment in scheme.treatments
    }


def _stopped(set_out: SetOut, findings: Sequence[Finding]) -> tuple[TreatmentOut, ...]:
    stops = [finding.subject for finding in findings if finding.weight is Weight.STOP]
    return tuple(laid for laid in set_out.treatments if any(subject[: len(laid.ref)] == laid.ref for subject in stops))


def _kind(set_out: SetOut, style: Style, light: Mode | None) -> str:
    """What sheet it is, whether it shows a plan or what was read after hanging, and in which light."""
    state = state_of(set_out.treatments)
    kind = msg("Elevation") if state is None else msg("Elevation, {state}", state=state)
    return say(kind if light is None else msg("{first}, {then}", first=kind, then=LIGHTS_WITHIN[light]), style)


def _sheet_number(room: Room, set_out: SetOut) -> str:
    place = next((index for index, wall in enumerate(room.walls, 1) if wall.id == set_out.wall), 1)
    return f"{place} / {max(1, len(room.walls))}"


def _sheet(arranged: Arranged) -> tuple[Record, ...]:
    rules = tuple(Line((x1, y1), (x2, y2), Pen(Ink.THIN, NARROW)) for x1, y1, x2, y2 in arranged.layout.rules)
    return (*furniture.frame(arranged.page), *rules)


def _around(
    arranged: Arranged,
    title: furniture.Title,
    findings: Sequence[Finding],
    set_out: SetOut,
    style: Style,
    stopped: Sequence[TreatmentOut],
) -> tuple[Record, ...]:
    layout = arranged.layout
    records: list[Record] = [*text_records(arranged.placed), *_marks(arranged.placed)]
    bottom = furniture.inside(arranged.page).bottom
    records.extend(furniture.title_block(title, layout.title_left, bottom, layout.title_width, style))
    bar, wide = furniture.scale_bar(arranged.scale, layout.foot[0], layout.foot[1], style)
    records.extend(bar)
    held = any(group.layer == "held" for group in arranged.annotation.groups)
    notes_left = layout.foot[0] + wide + 7.0
    records.extend(
        furniture.notes(
            _notes(arranged.annotation, findings[_told(arranged) :], set_out, style),
            say(msg("held"), style) if held else "",
            notes_left,
            layout.foot[1],
            layout.foot[0] + layout.foot_width - notes_left,
        )
    )
    if stopped:
        drawing = layout.drawing
        text = stop_text_within(stopped, style, drawing.right - drawing.left)
        records.extend(
            furniture.stop_band(text, drawing.left, drawing.top + furniture.STOP_HEIGHT + 2.0, drawing.right - drawing.left)
        )
    return tuple(records)


def _marks(placed: Sequence[Placed]) -> tuple[Record, ...]:
    return tuple(
        record
        for item in placed
        if item.block.mark is not None
        for record in finding_mark(Weight(item.block.mark[0]), item.block.mark[1], (item.left + 3.1, item.top - 3.0))
    )


def _notes(annotation: Annotation, untold: Sequence[Finding], set_out: SetOut, style: Style) -> list[str]:
    """The line beside the scale bar; of findings that the margin had no room for at least the cautions."""
    unit = msg("dimensions in inches") if style.unit == "in" else msg("dimensions in millimetres")
    texts = [say(unit, style)]
    if any(layer.brackets for laid in set_out.treatments for layer in laid.layers):
        texts.append(say(msg("probe for wiring and pipes before drilling"), style))
    if any(zone.is_found for zone in set_out.zones):
        texts.append(say(msg("dashed inside the wall: only likely, probe to confirm"), style))
    texts.extend(dict.fromkeys(say(finding.caution, style) for finding in untold if finding.caution is not None))
    if any(text.endswith((MORE, LESS)) for _, text, _ in annotation.labels):
        texts.append(say(msg("{more} {less} a little more, less than the figure", more=MORE, less=LESS), style))
    return texts
