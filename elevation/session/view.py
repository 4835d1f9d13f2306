"""Which wall is looked at, and in which scheme."""

from __future__ import annotations

from elevation.room.model import Ref, Room


class View:
    """A wall and a scheme of the room; always ones that are there.

    Attributes
    ----------
    wall_id : str
        Empty in a room without walls.
    scheme_id : str or None
        None for a bare wall.
    """

    def __init__(self, room: Room) -> None:
        self.wall_id = ""
        self.scheme_id: str | None = None
        self.settle(room)

    def settle(self, room: Room) -> bool:
        """Stay with what is shown if ``room`` has it, else take the first; True if that changed anything."""
        return self.look_at(room, self.wall_id, self.scheme_id)

    def look_at(self, room: Room, wall_id: str, scheme_id: str | None) -> bool:
        """Show a wall in a scheme, each the first one where it is not there; True if that changed anything."""
        before = (self.wall_id, self.scheme_id)
        walls = {wall.id: wall for wall in room.walls}
        wall = walls.get(wall_id) or next(iter(walls.values()), None)
        if wall is None:
            self.wall_id, self.scheme_id = "", None
        else:
            ids = [scheme.id for scheme in wall.schemes]
            self.wall_id = wall.id
            # A scheme of another wall may have the same id; that is not the one that was shown.
            is_there = wall.id == wall_id and scheme_id in ids
            self.scheme_id = scheme_id if is_there else ids[0] if ids else None
        return (self.wall_id, self.scheme_id) != before

    def turn_to(self, room: Room, ref: Ref) -> bool:
        """Show the wall and scheme that ``ref`` lies in, so that an undo is seen; True if that changed anything."""
        wall = next((wall for wall in room.walls if ref and wall.id == ref[0]), None)
        if wall is None:
            return self.settle(room)
        is_scheme = len(ref) > 1 and any(scheme.id == ref[1] for scheme in wall.schemes)
        stays = wall.id == self.wall_id
        return self.look_at(room, wall.id, ref[1] if is_scheme else self.scheme_id if stays else None)
