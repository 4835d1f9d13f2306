"""A house: the rooms of a folder looked at together, wall by wall."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path

from msgspec import Struct

from elevation.errors import BadInput, ElevationError, said
from elevation.findings.all_rules import find, find_afresh
from elevation.findings.memo import TreatmentMemo
from elevation.findings.model import Finding, Scene, Weight
from elevation.findings.unknowns import unknowns
from elevation.places import in_order
from elevation.room.file import load_room
from elevation.room.keeping.reasons import reason_of
from elevation.room.lent import trade_of
from elevation.room.model import Room
from elevation.setting_out.model import SetOut
from elevation.setting_out.whole import set_out_afresh
from elevation.trade.model import Trade
from elevation.words import Message, msg, msg_plural

ENDING = ".room.json"


class WallLooked(Struct, frozen=True):
    """One wall of a house in one scheme: how it stands, how many findings of each weight, what is not measured.

    ``error`` is why the room cannot be read; then there is no wall. ``trade`` has the rows that the room carries.
    """

    path: Path
    room: Room | None = None
    set_out: SetOut | None = None
    stops: int = 0
    broken: int = 0
    advice: int = 0
    missing: int = 0
    error: ElevationError | None = None
    trade: Trade | None = None

    @property
    def room_name(self) -> str:
        """The room's own name, else that of its file."""
        return (self.room.name if self.room is not None else "") or self.path.name.removesuffix(ENDING)


def rooms_in(folder: Path) -> tuple[Path, ...]:
    """The room files of a folder by name; folders inside it are not looked into.

    Raises
    ------
    BadInput
        It cannot be read, or holds no room.
    """
    try:
        found = sorted((path for path in folder.iterdir() if path.name.endswith(ENDING) and path.is_file()), key=in_order)
    except OSError as error:
        raise BadInput(
            str(folder),
            "",
            said("cannot be read ({reason})", reason=reason_of(error)),
            said("choose a folder that holds rooms"),
        ) from error
    if not found:
        raise BadInput(
            str(folder), "", said("holds no room (*{ending})", ending=ENDING), said("choose a folder that holds rooms")
        )
    return tuple(found)


def look(path: Path, trade: Trade, *, every_scheme: bool = False) -> Iterator[WallLooked]:
    """Every wall of a room, one after the other; a room that cannot be read is one entry that says why.

    Parameters
    ----------
    path : Path
    trade : Trade
    every_scheme : bool
        Each wall once in each of its schemes, not only in the first.
    """
    try:
        room = load_room(path)
        for wall in room.walls:
            schemes = [scheme.id for scheme in wall.schemes]
            for scheme_id in schemes if every_scheme and schemes else [None]:
                yield look_at(path, room, wall.id, trade, scheme_id)
    except ElevationError as error:
        yield WallLooked(path, error=error)


def look_at(path: Path, room: Room, wall_id: str, trade: Trade, scheme_id: str | None = None) -> WallLooked:
    """One wall of a room in a scheme, by default its first."""
    trade = trade_of(room, trade)
    wall = next(one for one in room.walls if one.id == wall_id)
    first = wall.schemes[0].id if wall.schemes else None
    out = set_out_afresh(room, wall_id, first if scheme_id is None else scheme_id, trade)
    # Nothing is kept: a house of many rooms must not push the open room's results out.
    findings = find(Scene(room, out, trade), TreatmentMemo(find_afresh))
    weights = Counter(finding.weight for finding in findings)
    return WallLooked(
        path,
        room,
        out,
        stops=weights[Weight.STOP],
        broken=weights[Weight.BROKEN],
        advice=weights[Weight.CONSIDER],
        missing=len(unknowns(out)),
        trade=trade,
    )


def counts_of(stops: int, broken: int, advice: int, missing: int) -> Message:
    """What is wrong and what is missing, gravest first, as one text."""
    parts: list[Message] = []
    if stops:
        parts.append(msg_plural("{count} stop", "{count} stops", count=stops))
    if broken:
        parts.append(msg("{count} broken", count=broken))
    if advice:
        parts.append(msg("{count} to consider", count=advice))
    if missing:
        parts.append(msg_plural("{count} not known yet", "{count} not known yet", count=missing))
    if not parts:
        return msg("nothing to say")
    said = parts[0]
    for part in parts[1:]:
        said = msg("{first}, {then}", first=said, then=part)
    return said


def counts_said(findings: Sequence[Finding], missing: int) -> Message:
    """The same of findings that are at hand."""
    weights = Counter(finding.weight for finding in findings)
    return counts_of(weights[Weight.STOP], weights[Weight.BROKEN], weights[Weight.CONSIDER], missing)
