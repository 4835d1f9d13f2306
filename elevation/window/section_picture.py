"""The section as the canvas beside the elevation shows it: made only while it is seen, and only what changed."""

from __future__ import annotations

from typing import Any

from msgspec.structs import replace
from PySide6.QtCore import QRect

from elevation.output.painters.replay import Placing
from elevation.room.find import wall_of
from elevation.room.model import Room
from elevation.room.style import style_for
from elevation.session.session import Session
from elevation.setting_out.model import SetOut
from elevation.sheet.annotation import Annotation
from elevation.sheet.records import Group
from elevation.sheet.section import hung_groups, lay_section, standing_groups, treatment_of
from elevation.sheet.section_cut import Cut, cut_at, treatment_shown
from elevation.window.canvas_picture import CanvasPicture
from elevation.window.same_groups import same_where_equal
from elevation.window.shown import Shown
from elevation.window.texts import language
from elevation.window.viewport import Viewport

_HUNG = ("treatment", "hangings")


class SectionPicture(CanvasPicture):
    """Makes and paints the section of what is selected.

    Parameters
    ----------
    session : Session
    elevation : CanvasPicture
        What it stands beside: their sheets are as high as each other.

    Attributes
    ----------
    made : int
        How often a cut was really worked out.
    """

    def __init__(self, session: Session, elevation: CanvasPicture) -> None:
        super().__init__(session)
        self._elevation = elevation
        self.made = 0
        self._cut: tuple[tuple[Any, ...], Cut] | None = None
        self._hung: tuple[Group, ...] = ()

    def cut(self, room: Room) -> Cut:
        """The cut through what is selected, kept as long as nothing that it meets is another."""
        session = self._session
        set_out = session.pipeline.set_out_of(room, session.wall_id, session.scheme_id)
        treatment = treatment_shown(set_out, session.selection)
        wall = wall_of(room, session.wall_id)
        source = (treatment, wall.substrate, *_of_wall(set_out))
        if self._cut is not None and all(a is b or a == b for a, b in zip(self._cut[0], source, strict=True)):
            return self._cut[1]
        self.made += 1
        made = cut_at(wall, set_out, session.trade, treatment)
        self._cut = (source, made)
        return made

    def groups(self, viewport: Viewport, shown: Shown, preview: Room | None = None) -> tuple[Group, ...]:
        """The groups to paint, back to front."""
        session = self._session
        if not session.wall_id:
            return ()
        room = session.room if preview is None else preview
        cut = self.cut(room)
        style = replace(style_for(room), language=language())
        behind = tuple(getattr(cut, name) for name in Cut.__struct_fields__ if name not in _HUNG)
        groups = [
            *self.kept.groups("standing", behind, lambda: standing_groups(cut, style)),
            *self.kept.groups("hung", cut, lambda: self._hang(cut, room)),
            *self._lay(room, cut, viewport).groups,
        ]
        return shown.of(groups)

    def _hang(self, cut: Cut, room: Room) -> tuple[Group, ...]:
        style = replace(style_for(room), language=language())
        self._hung = same_where_equal(tuple(map(_drawn, hung_groups(cut, self._session.trade, style))), self._hung)
        return self._hung

    def _lay(self, room: Room, cut: Cut, viewport: Viewport) -> Annotation:
        decided = treatment_of(room, cut)
        source = (cut, decided, viewport.mm_per_paper)
        if self._annotated is not None and all(a is b or a == b for a, b in zip(self._annotated[0], source, strict=True)):
            return self._annotated[1]
        style = replace(style_for(room), language=language())
        made = lay_section(cut, decided, style, viewport.mm_per_paper, has_opening=False, previous=self._rungs)
        before = self._annotated[1].groups if self._annotated is not None else ()
        made = replace(made, groups=same_where_equal(made.groups, before))
        self._rungs = made.rungs
        self._annotated = (source, made)
        return made

    def sheet(self, placing: Placing) -> QRect:
        """Where the sheet lies, level with the elevation's."""
        own, beside = super().sheet(placing), self._elevation.sheet(placing)
        if own.isEmpty() or beside.isEmpty():
            return own
        top, bottom = min(own.top(), beside.top()), max(own.bottom(), beside.bottom())
        return QRect(own.left(), top, own.width(), bottom - top + 1)

    def extent(self, viewport: Viewport) -> tuple[float, float, float, float]:
        """Left, bottom, right, top of the section with its dimensions, paper mm."""
        room = self._session.room
        return self._lay(room, self.cut(room), viewport).extent


def _of_wall(set_out: SetOut) -> tuple[Any, ...]:
    return (
        set_out.openings, set_out.obstacles, set_out.zones, set_out.ceiling, set_out.floor, set_out.crown_mm,
        set_out.baseboard_mm, set_out.width_mm, set_out.wall,
    )  # fmt: skip


def _drawn(group: Group) -> Group:
    """Cloth in section is the same however far it is drawn: it stands with the rods, whose layer is always shown."""
    return group if group.layer != "panel-drawn" else replace(group, layer="rod")
