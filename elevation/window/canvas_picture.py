"""The picture on the canvas: what of the display list is made anew, and what is painted again."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from msgspec.structs import replace
from PySide6.QtCore import QRect, QRectF
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QWidget

from elevation.findings.model import Finding
from elevation.output.painters.replay import Placing, Replay
from elevation.room.model import Ref, Room
from elevation.room.style import style_for
from elevation.session.session import Session
from elevation.setting_out.model import SetOut, TreatmentOut
from elevation.sheet.annotation import Annotation, lay_annotation
from elevation.sheet.annotation.marks import RADIUS
from elevation.sheet.annotation.remembered import AnnotationKeeper
from elevation.sheet.draw_inside import band_group, zone_group
from elevation.sheet.draw_sag import sag_groups
from elevation.sheet.drawing import View, draw_face, draw_obstacle, draw_opening, draw_treatment, opening_title, wall_title
from elevation.sheet.inks import colour
from elevation.sheet.records import Dimension, Group, Ink
from elevation.window.clearance_marks import clearance_groups
from elevation.window.lit import fabrics_of, lit_groups
from elevation.window.picking import TARGET_PX
from elevation.window.same_groups import same_where_equal
from elevation.window.shown import Shown
from elevation.window.sight import is_in_sight
from elevation.window.standing_layers import StandingLayers
from elevation.window.texts import language
from elevation.window.unfolded_beside import UnfoldedBeside
from elevation.window.viewport import PX_PER_PAPER_MM, Viewport, fitted
from elevation.words import Style

BORDER_PX = 10.0
"""Desk that stays in sight around the paper."""
MARGIN_MM = 4.0
"""Paper around everything that is drawn, paper mm."""
MOST_MARKED = 15
"""So many findings, the heaviest, have a mark on the wall: more would hide it, and whatever is pointed at is ringed."""
_SAME_SCALE = 1e-6


class Kept:
    """Groups by what they were drawn from: what is equal to the last time gives the very same groups.

    Attributes
    ----------
    drawn : int
        How often something was really drawn.
    """

    def __init__(self) -> None:
        self.drawn = 0
        self._known: dict[Any, tuple[Any, tuple[Group, ...]]] = {}

    def groups(self, key: Any, source: Any, draw: Any) -> tuple[Group, ...]:
        """The groups of ``key``, made by ``draw()`` if ``source`` is another than the last time."""
        found = self._known.get(key)
        if found is not None and (found[0] is source or found[0] == source):
            return found[1]
        made: tuple[Group, ...] = draw()
        self.drawn += 1
        self._known[key] = (source, made)
        return made

    def keep_only(self, keys: set[Any]) -> None:
        """Forget what is no longer there."""
        if len(self._known) > len(keys):
            self._known = {key: value for key, value in self._known.items() if key in keys}


class CanvasPicture:
    """Makes and paints the groups of the wall shown.

    Parameters
    ----------
    session : Session

    Attributes
    ----------
    width_px : float or None
        Width of the canvas: treatments beside it are not drawn until they come into sight. None draws all.
    """

    def __init__(self, session: Session) -> None:
        self._session = session
        self.replay = Replay()
        self.kept = Kept()
        self.width_px: float | None = None
        self._marks = Kept()
        self._clear: tuple[Group, ...] = ()
        self._rungs: dict[str, str] = {}
        self._keeper = AnnotationKeeper()
        self.beside = UnfoldedBeside(session, Kept())
        self._flat: tuple[float, float, float, float] | None = None
        self._annotated: tuple[tuple[Any, ...], Annotation] | None = None
        self._last: tuple[Group, ...] = ()
        self._standing: StandingLayers | None = None

    # -- making --------------------------------------------------------------------

    def groups(self, viewport: Viewport, shown: Shown, preview: Room | None = None) -> tuple[Group, ...]:
        """The groups to paint, back to front.

        Parameters
        ----------
        viewport : Viewport
            Annotation is laid for its scale.
        shown : Shown
        preview : Room or None
            Shown in place of the session's room.
        """
        session = self._session
        if not session.wall_id:
            return ()
        room = session.room if preview is None else preview
        set_out = session.pipeline.set_out_of(room, session.wall_id, session.scheme_id)
        findings = session.pipeline.findings_of(room, session.wall_id, session.scheme_id)
        groups = [*self._geometry(set_out, shown, viewport), *self._annotation(room, set_out, findings, viewport).groups]
        self._flat = None
        if shown.unfolded:
            # Where the dimensions of this wall stand, the walls beside it are drawn.
            groups = [group for group in groups if group.layer not in ("dimension", "held")]
            groups += self.beside.groups(room, viewport, shown)
            self._flat = self.beside.extent(room, viewport.mm_per_paper)
        elif shown.clearances:
            seen = tuple(one for one in set_out.treatments if is_in_sight(one, viewport, self.width_px))
            source = (
                seen, set_out.treatments, set_out.ceiling, set_out.floor, set_out.width_mm, set_out.ends, set_out.crown_mm,
                style_for(room), viewport.mm_per_paper, shown.light,
            )  # fmt: skip
            groups += self._marks.groups(
                "clearance", source, lambda: self._clearances(room, set_out, seen, viewport, shown)
            )
        if shown.sag:
            bent = (set_out.treatments, style_for(room), viewport.mm_per_paper)
            groups += self._marks.groups("sag", bent, lambda: sag_groups(set_out, self._style(room), viewport.mm_per_paper))
        if shown.person:
            groups += self._person(room, set_out, viewport)
        if shown.light != "drawn":
            lit = (set_out, shown.light, shown.cloth, style_for(room), fabrics_of(room, set_out))
            groups += self._marks.groups(
                "light", lit, lambda: lit_groups(room, set_out, self._session.trade, shown, self._style(room))
            )
        if shown.guides:
            wall = (set_out, style_for(room), viewport.mm_per_paper)
            groups += self._marks.groups("guide", wall, lambda: self._guides(room, set_out, viewport))
        groups += self._inside(room, set_out, shown, viewport)
        return shown.of(groups)

    def _guides(self, room: Room, set_out: SetOut, viewport: Viewport) -> tuple[Group, ...]:
        # Loaded when they are first shown.
        from elevation.sheet.draw_guides import guide_groups

        return guide_groups(set_out, self._style(room), viewport.mm_per_paper)

    def _person(self, room: Room, set_out: SetOut, viewport: Viewport) -> tuple[Group, ...]:
        # Loaded when it is first shown.
        from elevation.sheet.draw_person import person_group

        style, scale, trade = self._style(room), viewport.mm_per_paper, self._session.trade
        wall = (set_out.width_mm, set_out.openings, set_out.obstacles, set_out.floor, trade, style, scale)
        return self._marks.groups("person", wall, lambda: (person_group(set_out, trade, style, scale),))

    def _inside(self, room: Room, set_out: SetOut, shown: Shown, viewport: Viewport) -> Iterable[Group]:
        """What likely stands and runs inside the wall; a drag of what hangs leaves it the very same groups."""
        made: list[Group] = []
        if shown.zones and set_out.zones:
            source = (set_out.zones, set_out.ceiling, set_out.openings, viewport.mm_per_paper)
            made += self._marks.groups(
                "zone", source, lambda: (zone_group(set_out, self._style(room), viewport.mm_per_paper),)
            )
        if shown.bands and set_out.bands:
            made += self._marks.groups("band", set_out.bands, lambda: (band_group(set_out, self._style(room)),))
        return made

    def _style(self, room: Room) -> Style:
        return replace(style_for(room), language=language())

    def _clearances(
        self, room: Room, set_out: SetOut, seen: tuple[TreatmentOut, ...], viewport: Viewport, shown: Shown
    ) -> tuple[Group, ...]:
        made = clearance_groups(set_out, self._style(room), viewport.mm_per_paper, seen, is_lit=shown.light != "drawn")
        self._clear = same_where_equal(made, self._clear)
        return self._clear

    def _geometry(self, set_out: SetOut, shown: Shown, viewport: Viewport) -> Iterable[Group]:
        kept, view = self.kept, View(shown.cloth, shown.stack)
        face = (
            set_out.wall, set_out.wall_name, set_out.width_mm, set_out.known_width, set_out.ends, set_out.ceiling,
            set_out.floor, set_out.crown_mm, set_out.baseboard_mm, set_out.openings,
        )  # fmt: skip
        keys: set[Any] = {"face"}
        groups = [*kept.groups("face", face, lambda: (draw_face(set_out, wall_title(set_out)),))]
        for opening in set_out.openings:
            keys.add(opening.ref)
            groups += kept.groups(opening.ref, opening, lambda it=opening: (draw_opening(it, opening_title(it)),))
        for obstacle in set_out.obstacles:
            keys.add(obstacle.ref)
            groups += kept.groups(obstacle.ref, obstacle, lambda it=obstacle: (draw_obstacle(it),))
        trade = self._session.trade
        for treatment in set_out.treatments:
            keys.add(treatment.ref)
            if not is_in_sight(treatment, viewport, self.width_px):
                continue
            groups += kept.groups(
                treatment.ref,
                (treatment, set_out.floor, view),
                lambda it=treatment: draw_treatment(it, set_out.floor, trade, view),
            )
        kept.keep_only(keys)
        return groups

    def _annotation(self, room: Room, set_out: SetOut, findings: tuple[Finding, ...], viewport: Viewport) -> Annotation:
        source = (set_out, findings, viewport.mm_per_paper)
        if self._annotated is not None and all(a is b or a == b for a, b in zip(self._annotated[0], source, strict=True)):
            return self._annotated[1]
        style = replace(style_for(room), language=language())
        told = findings[:MOST_MARKED]
        made = lay_annotation(
            set_out, told, style, viewport.mm_per_paper, room=room, previous=self._rungs, keeper=self._keeper
        )
        before = self._annotated[1].groups if self._annotated is not None else ()
        made = replace(made, groups=same_where_equal(made.groups, before))
        self._rungs = made.rungs
        self._annotated = (source, made)
        return made

    def finding_at(self, viewport: Viewport, x: float, y: float) -> Finding | None:
        """The finding whose mark stands at pixel (x, y)."""
        session = self._session
        if not session.wall_id:
            return None
        findings = session.findings()
        wall_x, wall_y = viewport.to_wall(x, y)
        at = (wall_x / viewport.mm_per_paper, wall_y / viewport.mm_per_paper)
        slack = TARGET_PX / PX_PER_PAPER_MM - RADIUS
        for box, text, rung in self._annotation(session.room, session.set_out(), findings, viewport).labels:
            inside = box[0] - slack <= at[0] <= box[2] + slack and box[1] - slack <= at[1] <= box[3] + slack
            if rung == "mark" and inside:
                return findings[int(text) - 1]
        return None

    def fitted(self, width: float, height: float, shown: Shown) -> Viewport:
        """The viewport that shows the whole wall with its dimensions in a widget of that size."""
        session = self._session
        if not session.wall_id:
            return Viewport()
        set_out = session.set_out()
        low = (0.0, min([0.0, *(y for _, y in set_out.floor.points)]))
        high = (set_out.width_mm, max([1000.0, *(y for _, y in set_out.ceiling.points)]))
        if shown.unfolded:
            return self._fitted_flat(width, height)
        border = (60.0, 60.0, 60.0, 60.0)
        viewport = fitted(low, high, (width, height), border)
        if not shown.dimensions:
            return viewport
        # How much room annotation needs depends on the scale a little; two looks settle it.
        for _ in range(3):
            extent = self._extent(viewport)
            unit = viewport.mm_per_paper
            sides = (-extent[0], extent[3] - high[1] / unit, extent[2] - high[0] / unit, low[1] / unit - extent[1])
            left, top, right, bottom = (BORDER_PX + (max(side, 0.0) + MARGIN_MM) * PX_PER_PAPER_MM for side in sides)
            better = fitted(low, high, (width, height), (left, top, right, bottom))
            if abs(better.px_per_mm - viewport.px_per_mm) < _SAME_SCALE * viewport.px_per_mm:
                # Settled: the annotation that was laid for this very scale is the one that is painted.
                break
            viewport = better
        return viewport

    def _fitted_flat(self, width: float, height: float) -> Viewport:
        """The viewport that shows all walls of the row."""
        edge = BORDER_PX + MARGIN_MM * PX_PER_PAPER_MM
        viewport = Viewport()
        for _ in range(3):
            left, bottom, right, top = self.beside.extent(self._session.room, viewport.mm_per_paper)
            viewport = fitted((left, bottom), (right, top), (width, height), (edge, edge, edge, edge))
        return viewport

    def _extent(self, viewport: Viewport) -> tuple[float, float, float, float]:
        session = self._session
        return self._annotation(session.room, session.set_out(), session.findings(), viewport).extent

    # -- painting --------------------------------------------------------------------

    def paint(
        self,
        painter: QPainter,
        canvas: QWidget,
        groups: tuple[Group, ...],
        viewport: Viewport,
        desk: QColor,
        *,
        is_dragging: bool,
    ) -> None:
        """Paint desk, paper and groups; while something is dragged, what stands still is kept as pixels."""
        placing = viewport.placing
        if not is_dragging or (self._standing is not None and self._standing.placing != placing):
            self._standing = None
        if is_dragging and self._standing is None:
            self._standing = StandingLayers(canvas, placing, self._last)
        sheet = self.sheet(placing)
        # The desk shows beside the sheet only, which mostly fills the canvas: nothing so large is painted twice.
        in_sight = sheet.intersected(canvas.rect())
        for part in _beside(in_sight, canvas.width(), canvas.height()):
            painter.fillRect(part, desk)
        self._paint_paper(painter, in_sight, sheet)
        if self._standing is None:
            self.replay.paint(groups, painter, placing, (canvas.width(), canvas.height()))
        else:
            self._standing.paint(groups, painter, self.replay)
        self._last = groups
        self.replay.forget_all_but(groups)

    def sheet(self, placing: Placing) -> QRect:
        """Where the sheet lies on the canvas; empty where nothing is drawn."""
        if self._annotated is None:
            return QRect()
        left, bottom, right, top = self._annotated[1].extent
        if self._flat is not None:
            of_paper = placing.px_per_wall_mm / placing.px_per_paper_mm
            left, bottom, right, top = (edge * of_paper for edge in self._flat)
        unit = placing.px_per_paper_mm
        return QRectF(
            placing.wall_x + (left - MARGIN_MM) * unit,
            placing.wall_y - (top + MARGIN_MM) * unit,
            (right - left + 2 * MARGIN_MM) * unit,
            (top - bottom + 2 * MARGIN_MM) * unit,
        ).toAlignedRect()

    def _paint_paper(self, painter: QPainter, in_sight: QRect, sheet: QRect) -> None:
        # Filled only: outlined with a pen, a sheet this large takes longer than much of what stands on it.
        painter.fillRect(in_sight, QColor(colour(Ink.PAPER)))
        if sheet.isEmpty():
            return
        for side in _outline(sheet):
            painter.fillRect(side, QColor(0, 0, 0, 45))

    def paint_lit(self, painter: QPainter, groups: tuple[Group, ...], viewport: Viewport, ref: Ref, field: str) -> None:
        """Paint the dimension of a field again, in the ink of what is held."""
        lit = [
            replace(record, ink=Ink.HELD)
            for group in groups
            for record in group.records
            if isinstance(record, Dimension) and record.ref == ref and _is_same_field(record.field, field)
        ]
        if lit:
            group = Group(ref, "dimension", "", tuple(lit))
            Replay().paint((group,), painter, viewport.placing)

    def forget_cached(self) -> None:
        """The canvas has another size, ratio or desk."""
        self._standing = None


def _beside(sheet: QRect, width: int, height: int) -> tuple[QRect, ...]:
    """What of a canvas lies beside the part of the sheet that is in sight."""
    if sheet.isEmpty():
        return (QRect(0, 0, width, height),)
    right, bottom = sheet.x() + sheet.width(), sheet.y() + sheet.height()
    return (
        QRect(0, 0, width, sheet.y()),
        QRect(0, bottom, width, height - bottom),
        QRect(0, sheet.y(), sheet.x(), sheet.height()),
        QRect(right, sheet.y(), width - right, sheet.height()),
    )


def _outline(sheet: QRect) -> tuple[QRect, ...]:
    """Four strips of one pixel around a sheet, none lying on another."""
    left, top, width, height = sheet.x(), sheet.y(), sheet.width(), sheet.height()
    return (
        QRect(left, top, width, 1),
        QRect(left, top + height, width, 1),
        QRect(left, top + 1, 1, height - 1),
        QRect(left + width, top, 1, height + 1),
    )


def _is_same_field(one: str, other: str) -> bool:
    return one == other or one.partition(".")[0] == other.partition(".")[0] or {one, other} <= {"left", "gap"}
