"""The plan as the canvas under the elevation shows it: made only while it is seen, and only what changed."""

from __future__ import annotations

from msgspec.structs import replace
from PySide6.QtCore import QRect, QRectF

from elevation.output.painters.replay import Placing
from elevation.room.model import Room
from elevation.room.style import style_for
from elevation.setting_out.model import SetOut
from elevation.sheet.bay import BayWall, bay_frame, bay_group, bay_of, inner_sides
from elevation.sheet.plan import beside_group, ground_group, plan_extent, treatment_group
from elevation.sheet.plan_frame import Frame
from elevation.sheet.records import Group
from elevation.window.canvas_picture import MARGIN_MM, CanvasPicture
from elevation.window.shown import Shown
from elevation.window.texts import language
from elevation.window.viewport import Viewport
from elevation.words import Style


class PlanPicture(CanvasPicture):
    """Makes and paints the wall seen from above."""

    def groups(self, viewport: Viewport, shown: Shown, preview: Room | None = None) -> tuple[Group, ...]:
        """The groups to paint, back to front."""
        session = self._session
        if not session.wall_id:
            return ()
        room = session.room if preview is None else preview
        set_out = session.pipeline.set_out_of(room, session.wall_id, session.scheme_id)
        bay = bay_of(room, set_out, session.trade)
        frame, style, unit = bay_frame(set_out, bay), self.style(room), viewport.mm_per_paper
        sides = inner_sides(bay)
        ground = (
            set_out.wall, set_out.openings, set_out.obstacles, set_out.angles, set_out.corners, set_out.ends, frame, style,
            unit, sides,
        )  # fmt: skip
        groups: list[Group] = []
        keys: set[object] = {"ground", "beside"}
        for one in reversed(bay):
            laid = one.set_out
            drawn = (
                laid.treatments, laid.openings, laid.obstacles, laid.angles, one.frame, one.turn, one.ends, frame.y0, style,
                unit, shown.cloth,
            )  # fmt: skip
            keys.add((laid.wall, "bay"))
            groups += self.kept.groups(
                (laid.wall, "bay"), drawn, lambda it=one: (bay_group(it, frame.y0, style, unit, shown.cloth),)
            )
        groups += self.kept.groups("ground", ground, lambda: ground_group(set_out, frame, style, unit, bay))
        around = (set_out.beside, set_out.treatments, set_out.angles, frame, sides)
        groups += self.kept.groups("beside", around, lambda: beside_group(set_out, frame, style, bay))
        for treatment in set_out.treatments:
            source = (treatment, set_out.angles, frame, style, unit, shown.cloth)
            keys.add(treatment.ref)
            groups += self.kept.groups(
                treatment.ref,
                source,
                lambda it=treatment: treatment_group(it, set_out.angles, frame, style, unit, shown.cloth),
            )
        self.kept.keep_only(keys)
        return tuple(groups)

    def style(self, room: Room) -> Style:
        """How labels are said in the window."""
        return replace(style_for(room), language=language())

    def set_out(self) -> SetOut:
        """The wall shown."""
        return self._session.set_out()

    def bay(self) -> tuple[BayWall, ...]:
        """The other walls that treatments of the wall shown run over."""
        return bay_of(self._session.room, self.set_out(), self._session.trade)

    def frame(self) -> Frame:
        """Where the plan of the wall shown stands."""
        return bay_frame(self.set_out(), self.bay())

    def extent(self, mm_per_paper: float) -> tuple[float, float, float, float]:
        """Left, bottom, right and top of what is drawn, plan mm."""
        return plan_extent(self.set_out(), self.frame(), mm_per_paper, self.bay())

    def sheet(self, placing: Placing) -> QRect:
        """The paper under the plan."""
        if not self._session.wall_id:
            return QRect()
        mm_per_paper = placing.px_per_paper_mm / placing.px_per_wall_mm
        left, bottom, right, top = self.extent(mm_per_paper)
        margin = MARGIN_MM * mm_per_paper
        scale = placing.px_per_wall_mm
        return QRectF(
            placing.wall_x + (left - margin) * scale,
            placing.wall_y - (top + margin / 2) * scale,
            (right - left + 2 * margin) * scale,
            (top - bottom + margin) * scale,
        ).toAlignedRect()
