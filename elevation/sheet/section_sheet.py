"""The sheet of a section: the drawing to scale, the facts of the treatment, notes and title block."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.errors import BadInput, said
from elevation.findings.model import Finding, Weight
from elevation.room.model import Room, Treatment
from elevation.setting_out.model import SetOut, TreatmentOut
from elevation.sheet import furniture
from elevation.sheet.annotation import Annotation
from elevation.sheet.blocks import Block, Column, Placed, fact, flow, heading, key_rows, paragraph, text_records
from elevation.sheet.dates import sheet_date
from elevation.sheet.facts import facts_of, state_of, title_of
from elevation.sheet.furniture import STOP_HEIGHT
from elevation.sheet.layouts import BEYOND, Layout, layouts
from elevation.sheet.paper import pages_for, scale_name, scales_for
from elevation.sheet.records import NARROW, Group, Ink, Line, Page, Pen, Picture, Record
from elevation.sheet.section import draw_section, lay_section, treatment_of
from elevation.sheet.section_cut import Cut, cut_at
from elevation.trade.model import Trade
from elevation.units.format import LESS, MORE
from elevation.words import Message, Mm, Style, msg, say


class _Arranged(Struct, frozen=True):
    page: Page
    layout: Layout
    scale: float
    annotation: Annotation
    placed: tuple[Placed, ...]


def section_sheet(
    room: Room,
    set_out: SetOut,
    findings: Sequence[Finding],
    trade: Trade,
    style: Style,
    laid: TreatmentOut | None,
    paper: Page | None = None,
    scale: float | None = None,
    station_mm: float | None = None,
    date: str | None = None,
) -> Picture:
    """The sheet of a section through a treatment, or through the bare wall.

    Parameters
    ----------
    room : Room
    set_out : SetOut
    findings : sequence of Finding
        A stop of this treatment is printed across the sheet.
    trade : Trade
    style : Style
    laid : TreatmentOut or None
    paper : Page or None
        None: the small sheet of the room's unit.
    scale : float or None
        None: the largest standard scale that fits.
    station_mm : float or None
        Where it is cut, from the wall's left end; None: through the middle of the treatment's first opening.
    date : str or None

    Returns
    -------
    Picture
        With a page.

    Raises
    ------
    BadInput
        The scale that was asked for does not fit, or the station lies beyond the wall.
    """
    wall = next(wall for wall in room.walls if wall.id == set_out.wall)
    if station_mm is not None and not 0.0 <= station_mm <= set_out.width_mm:
        raise BadInput(
            said("section"),
            "",
            said("is cut beyond the wall's ends"),
            said("give a place between 0 and the wall's width"),
        )
    cut = cut_at(wall, set_out, trade, laid, station_mm)
    decided = treatment_of(room, cut)
    stopped = [one for one in findings if one.weight is Weight.STOP and laid is not None and one.subject[:3] == laid.ref]
    arranged = _arrange(cut, decided, trade, style, paper, scale, has_stop=bool(stopped))
    scale_text = say(scale_name(arranged.scale, style.unit), style)
    place = next(index for index, one in enumerate(room.walls, 1) if one.id == set_out.wall)
    title = furniture.Title(
        room.name or say(msg("Room"), style),
        set_out.wall_name or set_out.wall,
        title_of(laid, style) if laid is not None else "",
        _kind(cut, style),
        scale_text,
        date if date is not None else sheet_date(),
        f"{place} / {max(1, len(room.walls))}",
    )
    layout, page = arranged.layout, arranged.page
    left, bottom, right, top = arranged.annotation.extent
    drawing = layout.drawing
    origin = (
        round((drawing.left + drawing.right) / 2 - (left + right) / 2, 3),
        round((drawing.bottom + drawing.top) / 2 - (bottom + top) / 2, 3),
    )
    rules = tuple(Line((x1, y1), (x2, y2), Pen(Ink.THIN, NARROW)) for x1, y1, x2, y2 in layout.rules)
    around = _around(arranged, title, style, laid if stopped else None)
    groups = (
        Group((), "sheet", say(msg("Sheet"), style), (*furniture.frame(page), *rules), "paper"),
        *draw_section(cut, trade, style),
        *arranged.annotation.groups,
        Group((), "title", say(msg("Facts and title block"), style), around, "paper"),
    )
    description = say(
        msg(
            "Section of {wall} in {room} at {scale}, seen along the wall.",
            wall=title.wall,
            room=title.room,
            scale=scale_text,
        ),
        style,
    )
    name = " · ".join(part for part in (title.room, title.wall, title.scheme, say(msg("Section"), style)) if part)
    return Picture(groups, arranged.scale, origin, page, name, description)


def _kind(cut: Cut, style: Style) -> str:
    state = state_of((cut.treatment,)) if cut.treatment is not None else None
    place = Mm(cut.station_mm)
    if state is None:
        return say(msg("Section at {place} from the left end", place=place), style)
    return say(msg("Section at {place} from the left end, {state}", place=place, state=state), style)


def _arrange(
    cut: Cut,
    decided: Treatment | None,
    trade: Trade,
    style: Style,
    paper: Page | None,
    scale: float | None,
    *,
    has_stop: bool,
) -> _Arranged:
    scales = (scale,) if scale is not None else (*scales_for(style.unit), *BEYOND)
    pages = pages_for(style.unit) if paper is None else (paper,)
    for page in pages:
        for candidate in scales:
            annotation: Annotation | None = None
            for layout in layouts(page, has_stop):
                if layout.name == "foot":
                    continue
                room = layout.drawing
                height = (cut.ceiling_mm - cut.floor_mm) / candidate
                if height + 30.0 > room.top - room.bottom:
                    continue
                if annotation is None:
                    annotation = lay_section(cut, decided, style, candidate, has_table=False)
                left, bottom, right, top = annotation.extent
                if right - left > room.right - room.left or top - bottom > room.top - room.bottom:
                    continue
                placed = _placed(cut, decided, trade, style, annotation, layout.columns)
                if placed is not None:
                    return _Arranged(page, layout, candidate, annotation, placed)
    wanted = f"1:{scale:g}" if scale is not None else say(msg("the section"), style)
    raise BadInput(
        said("scale"),
        "",
        said("{wanted} does not fit on {choices}", wanted=wanted, choices=" or ".join(page.name for page in pages)),
        said("choose a smaller scale or a larger sheet"),
    )


def _placed(
    cut: Cut,
    decided: Treatment | None,
    trade: Trade,
    style: Style,
    annotation: Annotation,
    columns: Sequence[Column],
) -> tuple[Placed, ...] | None:
    width = min(column.width for column in columns)
    facts: list[Block] = []
    if cut.treatment is not None:
        facts.append(heading(title_of(cut.treatment, style), width))
        facts.extend(fact(label, value, width) for label, value in facts_of(cut.treatment, decided, trade, style))
    keys: list[Block] = []
    if annotation.keys:
        keys.append(heading(say(msg("Key"), style), width))
        keys.extend(key_rows([(key.letter, key.figure) for key in annotation.keys], width))
    notes = [heading(say(msg("In this section"), style), width)]
    notes.extend(paragraph(say(text, style), width, 2.8, Ink.QUIET) for text in _notes(cut))
    for blocks in ([*facts, *keys, *notes], [*facts, *keys], keys):
        placed = flow(blocks, columns)
        if placed is not None:
            return placed
    return None


def _notes(cut: Cut) -> list[Message]:
    """What the section takes for granted, so that nobody measures it off the drawing."""
    notes: list[Message] = [msg("The wall's thickness and the profiles of trim are drawn, not measured.")]
    if cut.opening is not None and cut.opening.reveal_mm is None:
        notes.append(msg("The depth of the reveal was not measured: the sash is dashed where it may stand."))
    if any(hanging.panel is not None for hanging in cut.hangings):
        notes.append(msg("Cloth is drawn as deep as its folds stand when it is closed."))
        if not any(hanging.is_cut for hanging in cut.hangings):
            notes.append(msg("The cut passes beside the cloth as drawn: it hangs beyond."))
    return notes


def _around(arranged: _Arranged, title: furniture.Title, style: Style, stopped: TreatmentOut | None) -> tuple[Record, ...]:
    layout = arranged.layout
    bottom = furniture.inside(arranged.page).bottom
    records: list[Record] = [*text_records(arranged.placed)]
    records.extend(furniture.title_block(title, layout.title_left, bottom, layout.title_width, style))
    bar, wide = furniture.scale_bar(arranged.scale, layout.foot[0], layout.foot[1], style)
    records.extend(bar)
    held = any(group.layer == "held" for group in arranged.annotation.groups)
    texts = [say(msg("dimensions in inches") if style.unit == "in" else msg("dimensions in millimetres"), style)]
    if any(text.endswith((MORE, LESS)) for _, text, _ in arranged.annotation.labels):
        texts.append(say(msg("{more} {less} a little more, less than the figure", more=MORE, less=LESS), style))
    left = layout.foot[0] + wide + 7.0
    right = layout.foot[0] + layout.foot_width
    records.extend(furniture.notes(texts, say(msg("held"), style) if held else "", left, layout.foot[1], right - left))
    if stopped is not None:
        text = say(msg("Stop: do not build as drawn — {names}", names=title_of(stopped, style)), style)
        drawing = layout.drawing
        top = drawing.top + STOP_HEIGHT + 2.0
        records.extend(furniture.stop_band(text, drawing.left, top, drawing.right - drawing.left))
    return tuple(records)
