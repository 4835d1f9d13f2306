"""Room to set-out to findings to handles, each run at most once for one room."""

from __future__ import annotations

from collections.abc import Collection

from elevation.findings.all_rules import find
from elevation.findings.model import Finding, Scene
from elevation.handles.model import Handle
from elevation.handles.remembered import HandleKeeper, Key
from elevation.room.model import Room
from elevation.setting_out.memo import Memo
from elevation.setting_out.model import SetOut
from elevation.setting_out.whole import set_out
from elevation.trade.model import Trade


class Pipeline:
    """What follows from a room, remembered for the last two rooms: the committed one and a candidate.

    The memos count their runs (``set_out.calls``), so that a test can hold a drag to one run a picture.
    """

    def __init__(self, trade: Trade) -> None:
        self.trade = trade
        self.set_out = Memo(set_out)
        self.scene = Memo(Scene)
        self.findings = Memo(find)
        self.handle_keeper = HandleKeeper()
        self.handles = Memo(self.handle_keeper.handles)

    def set_out_of(self, room: Room, wall_id: str, scheme_id: str | None) -> SetOut:
        """The wall dressed in the scheme."""
        return self.set_out(room, wall_id, scheme_id, self.trade)

    def scene_of(self, room: Room, wall_id: str, scheme_id: str | None) -> Scene:
        """What rules look at; the same object for the same room, wall and scheme."""
        return self.scene(room, self.set_out_of(room, wall_id, scheme_id), self.trade)

    def findings_of(self, room: Room, wall_id: str, scheme_id: str | None) -> tuple[Finding, ...]:
        """What the rules find, sorted by weight."""
        return self.findings(self.scene_of(room, wall_id, scheme_id))

    def handles_of(self, room: Room, wall_id: str, scheme_id: str | None) -> tuple[Handle, ...]:
        """What can be dragged on the wall."""
        return self.handles(room, self.set_out_of(room, wall_id, scheme_id), self.trade)

    def some_handles_of(self, room: Room, wall_id: str, scheme_id: str | None, keys: Collection[Key]) -> dict[Key, Handle]:
        """Those of them that have one of ``keys``, without making the others."""
        return self.handle_keeper.some(room, self.set_out_of(room, wall_id, scheme_id), self.trade, keys)
