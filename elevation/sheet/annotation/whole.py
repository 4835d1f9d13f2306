"""A wall's annotation, laid for one scale."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from elevation.findings.model import Finding
from elevation.room.model import Ref, Room, Treatment
from elevation.setting_out.model import SetOut
from elevation.sheet.annotation import marks, treatment_chains, wall_chains
from elevation.sheet.annotation.bands import Frame, SideOut, share
from elevation.sheet.annotation.columns import Columns, columns
from elevation.sheet.annotation.keys import key_table as key_table_records
from elevation.sheet.annotation.keys import opening_numbers
from elevation.sheet.annotation.ladder import PAST
from elevation.sheet.annotation.letters import letter, letter_room
from elevation.sheet.annotation.model import FIGURE, Annotation, Box, Chain, KeyLine, overlap
from elevation.sheet.annotation.remembered import AnnotationKeeper
from elevation.sheet.records import Group, Ink, Record, Text
from elevation.sheet.type_metrics import CAP, DESCENT, shorten, text_width
from elevation.words import Style, msg, say

OVERHANG = 12.0
"""Labels of lines above and below the wall may stand this far beyond its ends, paper mm."""
HEADER = 2.8
"""Type size of the opening numbers over a column of heights."""


def lay_annotation(
    set_out: SetOut,
    findings: Sequence[Finding],
    style: Style,
    mm_per_paper: float,
    area: Box | None = None,
    *,
    room: Room | None = None,
    previous: Mapping[str, str] | None = None,
    key_table: bool = True,
    keeper: AnnotationKeeper | None = None,
) -> Annotation:
    """Lay dimensions, held marks and finding marks.

    Parameters
    ----------
    set_out : SetOut
    findings : sequence of Finding
        In the order of their numbers.
    style : Style
        How figures are written.
    mm_per_paper : float
        Wall mm for one paper mm (24.0 at 1:24).
    area : (float, float, float, float) or None
        Left, bottom, right, top in wall mm that labels stay within along their lines; None: the wall and a little more.
    room : Room or None
        Says what is held.
    previous : mapping or None
        ``rungs`` of the last laying: labels keep their rung until it no longer fits by 1 mm.
    key_table : bool
        Draw the key table under the drawing; False where a sheet shows it in its margin.
    keeper : AnnotationKeeper or None
        Remembers what did not change since the last laying of this wall.

    Returns
    -------
    Annotation
    """
    scale = mm_per_paper
    rungs = previous or {}
    treatments = _treatments(room, set_out)
    foot = wall_chains.foot_mm(set_out) / scale
    top = max(height for _, height in set_out.ceiling.points) / scale
    width = set_out.width_mm / scale
    across = _bounds(area, width, scale)

    keep = AnnotationKeeper() if keeper is None else keeper

    reaches, rods, stacks = _along(set_out, treatments, style, keep)
    bottom_slots = [*share(stacks, scale)]
    chain = wall_chains.measuring_chain(set_out, style)
    if chain is not None:
        bottom_slots.append((chain,))
    bottom_slots.append((wall_chains.whole_width(set_out, style),))
    top_slots = [*share(reaches, scale), *share(rods, scale)]
    metal = _metal(set_out)
    upright = columns(set_out, treatments, style, keep)

    every = [chain for slot in (*bottom_slots, *top_slots, *upright.left, *upright.right) for chain in slot]
    room_of_letter = letter_room(len({segment.texts[-1] for chain in every for segment in chain.segments}), FIGURE)

    height = (min(0.0, foot), top)
    sides = (
        keep.side(Frame("bottom", foot, scale), bottom_slots, across, room_of_letter, rungs),
        keep.side(Frame("top", top, scale), top_slots, across, room_of_letter, rungs),
        keep.side(Frame("left", min(0.0, metal[0] / scale - 2.0), scale), upright.left, height, room_of_letter, rungs),
        keep.side(Frame("right", max(width, metal[1] / scale + 2.0), scale), upright.right, height, room_of_letter, rungs),
    )
    return _Assembly(set_out, findings, style, scale, (0.0, foot, width, top), sides, upright, key_table, keep).annotation()


def _metal(set_out: SetOut) -> tuple[float, float]:
    """How far rods stand out past the wall's ends, wall mm: columns of heights keep clear of them."""
    supports = [layer.support for laid in set_out.treatments for layer in laid.layers]
    left = min((support.metal_left_mm for support in supports), default=0.0)
    right = max((support.metal_right_mm for support in supports), default=set_out.width_mm)
    # Metal that stays inside the wall moves nothing.
    return (left if left < 0.0 else 1e9), (right if right > set_out.width_mm else -1e9)


def _bounds(area: Box | None, width: float, scale: float) -> tuple[float, float]:
    low, high = -OVERHANG, width + OVERHANG
    if area is None:
        return low, high
    # Where the wall runs out of the area, its labels may go with it: they belong to what is out of sight too.
    return max(low, min(0.0, area[0] / scale)), min(high, max(width, area[2] / scale))


def _treatments(room: Room | None, set_out: SetOut) -> dict[Ref, Treatment]:
    if room is None:
        return {}
    return {
        (wall.id, scheme.id, treatment.id): treatment
        for wall in room.walls
        if wall.id == set_out.wall
        for scheme in wall.schemes
        for treatment in scheme.treatments
    }


def _along(
    set_out: SetOut, treatments: Mapping[Ref, Treatment], style: Style, keep: AnnotationKeeper
) -> tuple[list[Chain], list[Chain], list[Chain]]:
    reaches: list[Chain] = []
    rods: list[Chain] = []
    stacks: list[Chain] = []
    for laid in set_out.treatments:
        metal = keep.metal(set_out, laid, treatments.get(laid.ref), style)
        if metal.reach is not None:  # pragma: no branch - a treatment has a rod and an opening, so it has reaches
            reaches.append(metal.reach)
        rods.extend(metal.rods)
        stack = treatment_chains.stacks(set_out, laid, style)
        if stack is not None:
            stacks.append(stack)
    return reaches, rods, stacks


class _Assembly:
    """Turns laid sides into groups of records, in a fixed order."""

    def __init__(
        self,
        set_out: SetOut,
        findings: Sequence[Finding],
        style: Style,
        scale: float,
        wall: Box,
        sides: tuple[SideOut, ...],
        upright: Columns,
        key_table: bool,
        keep: AnnotationKeeper,
    ) -> None:
        self.set_out = set_out
        self.findings = findings
        self.style = style
        self.scale = scale
        self.wall = wall
        self.sides = sides
        self.upright = upright
        self.has_table = key_table
        self.keep = keep
        self.ends: list[tuple[float, ...]] = []
        self.labels: list[tuple[Box, str, str]] = []
        self.rungs: dict[str, str] = {}

    def annotation(self) -> Annotation:
        keys = self._keys()
        owners: dict[Ref, list[Record]] = {wall_chains.wall_ref(self.set_out): []}
        held: dict[Ref, list[Record]] = {}
        for treatment in self.set_out.treatments:
            owners[treatment.ref] = []
        for side in self.sides:
            made = self.keep.records(side, keys)
            for owner, records in made.owners.items():
                owners[owner].extend(records)
            for owner, records in made.held.items():
                held.setdefault(owner, []).extend(records)
            self.labels.extend(made.labels)
            self.rungs.update(made.rungs)
            self.ends.append(made.ends)
        self._headers(owners)
        self._opening_numbers(owners)
        names = self._names()
        groups = [
            Group(owner, "dimension", say(msg("Dimensions: {name}", name=names[owner]), self.style), tuple(records))
            for owner, records in owners.items()
        ]
        groups.extend(
            Group(owner, "held", say(msg("Held: {name}", name=names[owner]), self.style), tuple(records))
            for owner, records in held.items()
        )
        groups.extend(self._findings())
        lines = tuple(KeyLine(text, figure) for figure, text in keys.items())
        unshown = self.upright.unshown
        extent = self._extent()
        if self.has_table:
            records, low = key_table_records(lines, unshown, extent, self.scale)
            extent = (extent[0], low, extent[2], extent[3])
            if records:
                groups.append(Group((), "title", say(msg("Key"), self.style), records))
        return Annotation(tuple(groups), lines, extent, tuple(self.labels), self.rungs, unshown)

    def _keys(self) -> dict[str, str]:
        keys: dict[str, str] = {}
        for side in self.sides:
            for item in side.laid:
                if item.label.rung == "key" and item.label.figure not in keys:
                    keys[item.label.figure] = letter(len(keys))
        return keys

    def _names(self) -> dict[Ref, str]:
        names = {wall_chains.wall_ref(self.set_out): self.set_out.wall_name or self.set_out.wall}
        for treatment in self.set_out.treatments:
            names[treatment.ref] = treatment.name or treatment.ref[-1]
        return names

    def _headers(self, owners: dict[Ref, list[Record]]) -> None:
        # Over each column of heights: the numbers of the openings that it belongs to, where there are several columns.
        for side, slots, headers in (
            (self.sides[2], self.upright.left, self.upright.left_headers),
            (self.sides[3], self.upright.right, self.upright.right_headers),
        ):
            for line, slot, header in zip(side.lines, slots, headers, strict=True):
                if not header:
                    continue
                text = shorten(header, HEADER, 6.4)
                x = side.frame.across(line)
                y = slot[0].high / self.scale + 2.6
                half = text_width(text, HEADER) / 2
                box = (x - half, y - DESCENT * HEADER, x + half, y + CAP * HEADER)
                while any(overlap(box, other) for other, _, _ in self.labels):
                    y += 1.0
                    box = (x - half, y - DESCENT * HEADER, x + half, y + CAP * HEADER)
                record = Text((x * self.scale, y * self.scale), text, HEADER, Ink.QUIET, "middle")
                owners[slot[0].owner].append(record)
                self.labels.append((box, text, "note"))

    def _opening_numbers(self, owners: dict[Ref, list[Record]]) -> None:
        crossing = set(self.ends[0])
        records, labels = opening_numbers(self.set_out, self.wall[1], sorted(crossing), self.scale)
        owners[wall_chains.wall_ref(self.set_out)].extend(records)
        self.labels.extend((box, text, "note") for box, text in labels)

    def _findings(self) -> list[Group]:
        rods = [layer.support for treatment in self.set_out.treatments for layer in treatment.layers]
        middles = [((rod.left_mm + rod.right_mm) / 2, rod.height_mm) for rod in rods]
        places = marks.places(self.findings, self.scale, self.wall, middles)
        by_subject: dict[Ref, list[Record]] = {}
        for index, place in places.items():
            finding = self.findings[index]
            at = finding.at
            assert at is not None
            records = by_subject.setdefault(finding.subject, [])
            records.extend(marks.pointer(finding.weight, place, at, self.scale))
            middle = (place[0] * self.scale, place[1] * self.scale)
            records.extend(marks.finding_mark(finding.weight, index + 1, middle, self.scale))
            self.labels.append((marks.mark_box(place), str(index + 1), "mark"))
        title = say(msg("Findings"), self.style)
        return [Group(subject, "finding", title, tuple(records)) for subject, records in by_subject.items()]

    def _extent(self) -> Box:
        _, bottom, _, top = self.wall
        bottom_side, top_side, left_side, right_side = self.sides
        lefts, lows, rights, highs = zip(*(box for box, _, _ in self.labels), strict=True) if self.labels else ((),) * 4
        level = (*self.ends[0], *self.ends[1])
        upright = (*self.ends[2], *self.ends[3])
        return (
            min((left_side.frame.outline - max(left_side.depth, 3.0), *lefts, *(end - PAST for end in level[::2]))),
            min((bottom - bottom_side.depth, *lows, *(end - PAST for end in upright[::2]))),
            max((right_side.frame.outline + max(right_side.depth, 3.0), *rights, *(end + PAST for end in level[1::2]))),
            max((top + max(top_side.depth, 1.0), *highs, *(end + PAST for end in upright[1::2]))),
        )
