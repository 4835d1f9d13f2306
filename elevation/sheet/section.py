"""The section: the wall cut upright through a treatment, drawn and dimensioned as one display list.

Its groups stand in frame ``wall`` with z (out from the wall's face) along x, so that every output replays them as it does
an elevation, and heights run across from one to the other.
"""

from __future__ import annotations

from collections.abc import Mapping

from elevation.room import find
from elevation.room.model import Room, Treatment
from elevation.setting_out.model import TreatmentOut
from elevation.sheet.annotation import marks
from elevation.sheet.annotation.bands import Frame, Laid, SideOut, dimension, lay_side
from elevation.sheet.annotation.keys import key_table
from elevation.sheet.annotation.ladder import PAST
from elevation.sheet.annotation.letters import letter, letter_room
from elevation.sheet.annotation.model import FIGURE, Annotation, Box, Chain, KeyLine
from elevation.sheet.draw_titles import ENGLISH, obstacle_title, opening_title
from elevation.sheet.drawing import in_order
from elevation.sheet.facts import title_of
from elevation.sheet.records import Group, Record
from elevation.sheet.section_before import obstacle_records
from elevation.sheet.section_chains import SectionChains, chains_of
from elevation.sheet.section_cut import Cut
from elevation.sheet.section_dress import blind_records, pelmet_records
from elevation.sheet.section_hung import board_records, bracket_records, cloth_records, rod_records
from elevation.sheet.section_opening import opening_records
from elevation.sheet.section_wall import SLAB_MM, wall_records
from elevation.trade.model import Trade
from elevation.words import Message, Style, msg, say

_OVERHANG = 14.0
"""Labels may stand this far beyond the drawing along their lines, paper mm."""


def draw_section(cut: Cut, trade: Trade, style: Style = ENGLISH) -> tuple[Group, ...]:
    """The section without annotation, in the order in which it is laid down; independent of scale.

    Parameters
    ----------
    cut : Cut
    trade : Trade
        Headings and brackets, to know how they look.
    style : Style
        How the groups' titles are said.
    """
    return in_order([*standing_groups(cut, style), *hung_groups(cut, trade, style)])


def standing_groups(cut: Cut, style: Style = ENGLISH) -> tuple[Group, ...]:
    """What stands in a section whatever hangs there: wall, opening, things before the wall."""
    groups = [Group((cut.wall,), "wall", say(msg("Wall in section"), style), tuple(wall_records(cut)))]
    if cut.opening is not None:
        groups.append(Group(cut.opening.ref, "opening", opening_title(cut.opening, style), tuple(opening_records(cut))))
    # What the cut goes through stands before what is beyond it.
    for obstacle, is_cut in sorted(cut.obstacles, key=lambda one: one[1]):
        records = tuple(obstacle_records(obstacle, is_cut=is_cut))
        groups.append(Group(obstacle.ref, "obstacle", obstacle_title(obstacle, style), records))
    return tuple(groups)


def hung_groups(cut: Cut, trade: Trade, style: Style = ENGLISH) -> tuple[Group, ...]:
    """What hangs in a section: board, bracket, rod and cloth of each layer, the far layer first."""
    groups: list[Group] = []
    if cut.treatment is not None:
        name = title_of(cut.treatment, style)
        for hanging in reversed(cut.hangings):
            ref = hanging.layer.ref
            row = trade.headings.get(hanging.layer.heading)
            parts: tuple[tuple[str, Message, list[Record]], ...] = (
                ("board", msg("Mounting board in section, {where}", where=name), board_records(hanging)),
                ("bracket", msg("Bracket in section, {where}", where=name), bracket_records(cut, hanging, trade)),
                ("rod", msg("Rod in section, {where}", where=name), rod_records(hanging)),
                ("panel-drawn", msg("Cloth in section, {where}", where=name), cloth_records(cut, hanging, row)),
            )
            groups.extend(
                Group(ref, layer, say(title, style), tuple(records)) for layer, title, records in parts if records
            )
        groups.extend(_dress(cut, cut.treatment, style))
    return tuple(groups)


def _dress(cut: Cut, treatment: TreatmentOut, style: Style) -> list[Group]:
    """Blinds behind and the pelmet before what hangs, where the cut goes through them."""
    name = title_of(treatment, style)
    made: list[Group] = []
    blinds = [record for blind in treatment.blinds for record in blind_records(cut, blind)]
    if blinds:
        made.append(Group(treatment.ref, "board", say(msg("Blind in section, {where}", where=name), style), tuple(blinds)))
    pelmet = [] if treatment.pelmet is None else pelmet_records(cut, treatment.pelmet)
    if pelmet:
        made.append(
            Group(treatment.ref, "bracket", say(msg("Pelmet in section, {where}", where=name), style), tuple(pelmet))
        )
    return made


def lay_section(
    cut: Cut,
    treatment: Treatment | None,
    style: Style,
    mm_per_paper: float,
    *,
    has_opening: bool = True,
    previous: Mapping[str, str] | None = None,
    has_table: bool = True,
) -> Annotation:
    """Lay the dimensions of a section.

    Parameters
    ----------
    cut : Cut
    treatment : Treatment or None
        Says what is held.
    style : Style
    mm_per_paper : float
    has_opening : bool
        With the opening's own heights, at the left.
    previous : mapping or None
        ``rungs`` of the last laying.
    has_table : bool
        Draw the key table under the drawing.
    """
    scale, rungs = mm_per_paper, previous or {}
    chains = chains_of(cut, treatment, style, has_opening=has_opening)
    left, bottom, right, top = (value / scale for value in cut.bounds)
    slab = SLAB_MM / scale
    across = (left - _OVERHANG, right + _OVERHANG)
    up = (bottom - _OVERHANG / 2, top + _OVERHANG / 2)
    every = [chain for side in (chains.left, chains.right, chains.top, chains.bottom) for chain in side]
    room = letter_room(len({segment.texts[-1] for chain in every for segment in chain.segments}), FIGURE)
    sides = tuple(
        lay_side(frame, [(chain,) for chain in slots], bounds, room, rungs)
        for frame, slots, bounds in _sides(chains, (left, bottom - slab, right, top + slab), scale, across, up)
    )
    return _assembled(cut, sides, (left, bottom - slab, right, top + slab), style, scale, has_table=has_table)


def _sides(
    chains: SectionChains, box: Box, scale: float, across: tuple[float, float], up: tuple[float, float]
) -> tuple[tuple[Frame, tuple[Chain, ...], tuple[float, float]], ...]:
    left, bottom, right, top = box
    return (
        (Frame("bottom", bottom, scale), chains.bottom, across),
        (Frame("top", top, scale), chains.top, across),
        (Frame("left", left, scale), chains.left, up),
        (Frame("right", right, scale), chains.right, up),
    )


def _assembled(
    cut: Cut, sides: tuple[SideOut, ...], box: Box, style: Style, scale: float, *, has_table: bool
) -> Annotation:
    laid = [(item, side.frame) for side in sides for item in side.laid]
    keys: dict[str, str] = {}
    for item, _ in laid:
        if item.label.rung == "key" and item.label.figure not in keys:
            keys[item.label.figure] = letter(len(keys))
    dimensions: list[Record] = []
    held: list[Record] = []
    labels: list[tuple[Box, str, str]] = []
    rungs: dict[str, str] = {}
    for item, frame in laid:
        text = keys[item.label.figure] if item.label.rung == "key" else item.label.text
        dimensions.append(dimension(item, frame, text))
        labels.append((item.box, text, item.label.rung))
        rungs[item.place] = item.label.step
        if item.segment.held:
            held.extend(_held(item, frame))
    owner = cut.treatment.ref if cut.treatment is not None else (cut.wall,)
    groups = [Group(owner, "dimension", say(msg("Dimensions of the section"), style), tuple(dimensions))]
    if held:
        groups.append(Group(owner, "held", say(msg("Held in the section"), style), tuple(held)))
    lines = tuple(KeyLine(text, figure) for figure, text in keys.items())
    extent = _extent(sides, box, [label[0] for label in labels], scale)
    if has_table:
        records, low = key_table(lines, (), extent, scale)
        extent = (extent[0], low, extent[2], extent[3])
        if records:
            groups.append(Group((), "title", say(msg("Key"), style), records))
    return Annotation(tuple(groups), lines, extent, tuple(labels), rungs)


def _held(item: Laid, frame: Frame) -> tuple[Record, ...]:
    middle = (item.segment.low + item.segment.high) / 2 / frame.scale
    outward = -1.4 if item.side in ("top", "left") else 1.4
    aside = 0.0 if item.label.leader is None else 1.8
    return marks.held_mark(frame.wall(middle + aside, item.line + outward), frame.scale)


def _extent(sides: tuple[SideOut, ...], box: Box, boxes: list[Box], scale: float) -> Box:
    bottom, top, left, right = sides
    level = [item.segment for side in (bottom, top) for item in side.laid]
    upright = [item.segment for side in (left, right) for item in side.laid]
    return (
        min([box[0] - max(left.depth, 3.0), *(b[0] for b in boxes), *(s.low / scale - PAST for s in level)]),
        min([box[1] - max(bottom.depth, 3.0), *(b[1] for b in boxes), *(s.low / scale - PAST for s in upright)]),
        max([box[2] + max(right.depth, 3.0), *(b[2] for b in boxes), *(s.high / scale + PAST for s in level)]),
        max([box[3] + max(top.depth, 3.0), *(b[3] for b in boxes), *(s.high / scale + PAST for s in upright)]),
    )


def treatment_of(room: Room, cut: Cut) -> Treatment | None:
    """The treatment of a cut as it was decided."""
    return None if cut.treatment is None else find.treatment_of(room, cut.treatment.ref)
