"""The walls round the corners, unfolded beside the wall shown: made only while that is switched on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec.structs import replace

from elevation.room.find import wall_of
from elevation.room.model import Room
from elevation.room.style import style_for
from elevation.setting_out.model import SetOut
from elevation.sheet.annotation.model import Box
from elevation.sheet.drawing import View
from elevation.sheet.records import Group
from elevation.sheet.unfolded import Unfolded, corner_group, measured_group, unfold, unfolded_extent, wall_groups
from elevation.sheet.work.moved import moved
from elevation.window.lit import fabrics_of, lit_groups
from elevation.window.same_groups import same_where_equal
from elevation.window.shown import Shown
from elevation.window.texts import language
from elevation.window.viewport import Viewport
from elevation.words import Style

if TYPE_CHECKING:
    from elevation.session.session import Session
    from elevation.window.canvas_picture import Kept

_LOOSE = frozenset({"chain", "proportions", "missing", "zones", "bands", "beside", "corners"})
_SEEN = tuple(name for name in SetOut.__struct_fields__ if name not in _LOOSE)
"""What of a wall is drawn."""


class UnfoldedBeside:
    """The neighbours of the wall shown, where they stand when the walls are laid flat.

    Parameters
    ----------
    session : Session
    kept : Kept
        Keeps what did not change.
    """

    def __init__(self, session: Session, kept: Kept) -> None:
        self._session = session
        self._kept = kept
        self._drawn: dict[str, tuple[Group, ...]] = {}

    def row(self, room: Room) -> tuple[Unfolded, ...]:
        """The walls of the row, the wall shown at its own place."""
        session = self._session
        row = unfold(room, wall_of(room, session.wall_id), session.scheme_id, session.trade)
        here = next(one for one in row if one.set_out.wall == session.wall_id)
        return tuple(Unfolded(one.set_out, one.left_mm - here.left_mm, one.step_mm - here.step_mm) for one in row)

    def groups(self, room: Room, viewport: Viewport, shown: Shown) -> list[Group]:
        """The other walls, the corner lines with their angles, and what is measured along each wall."""
        style = replace(style_for(room), language=language())
        unit, view, trade = viewport.mm_per_paper, View(shown.cloth, shown.stack), self._session.trade
        found: list[Group] = []
        row = self.row(room)
        keys: set[object] = set()
        for index, one in enumerate(row):
            wall = one.set_out.wall
            seen = tuple(getattr(one.set_out, name) for name in _SEEN)
            if wall != self._session.wall_id:
                keys.add(wall)
                source = (seen, one.left_mm, one.step_mm, view)
                made = self._kept.groups(wall, source, lambda it=one: wall_groups(it, trade, style, view))
                # One rod that moves draws its wall anew, but what came out equal is the very same object as before.
                self._drawn[wall] = made = same_where_equal(made, self._drawn.get(wall, ()))
                found += made
                if shown.light != "drawn":
                    keys.add((wall, "light"))
                    found += self._lit(room, one, shown, style)
            keys.add((wall, "along"))
            before = row[index - 1] if index else None
            measured = (seen, one.left_mm, one.step_mm, unit, style, None if before is None else before.set_out.ceiling)

            def along(it: Unfolded = one, last: Unfolded | None = before) -> tuple[Group, ...]:
                corner = () if last is None else (corner_group(last, it, style, unit),)
                return (measured_group(it, style, unit), *corner)

            found += self._kept.groups((wall, "along"), measured, along)
        self._kept.keep_only(keys)
        return found

    def _lit(self, room: Room, one: Unfolded, shown: Shown, style: Style) -> tuple[Group, ...]:
        source = (one.set_out, one.left_mm, one.step_mm, shown.light, shown.cloth, style, fabrics_of(room, one.set_out))

        def made() -> tuple[Group, ...]:
            groups = lit_groups(room, one.set_out, self._session.trade, shown, style)
            return tuple(replace(group, records=moved(group.records, one.left_mm, one.step_mm)) for group in groups)

        return self._kept.groups((one.set_out.wall, "light"), source, made)

    def extent(self, room: Room, unit: float) -> Box:
        """All that the row takes up, wall mm from the origin of the wall shown."""
        return unfolded_extent(self.row(room), unit)
