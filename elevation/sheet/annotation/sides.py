"""A side that was laid, as records of those whose dimensions they are."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from elevation.room.model import Ref
from elevation.sheet.annotation import marks
from elevation.sheet.annotation.bands import Frame, Laid, SideOut, dimension
from elevation.sheet.annotation.model import Box
from elevation.sheet.records import Record


class SideRecords(Struct, frozen=True, gc=False):
    """What a side adds to the annotation.

    Attributes
    ----------
    owners, held : dict
        Dimensions and held marks by the ref that owns them, in the order in which they were laid.
    labels : tuple of (Box, str, str)
        Box in paper mm, text and rung of each label.
    rungs : dict
        What each label did, by its place.
    ends : tuple of float
        The ends of all segments along the side, paper mm.
    """

    owners: dict[Ref, tuple[Record, ...]]
    held: dict[Ref, tuple[Record, ...]]
    labels: tuple[tuple[Box, str, str], ...]
    rungs: dict[str, str]
    ends: tuple[float, ...]


def records_of(side: SideOut, keys: Mapping[str, str] | None = None) -> SideRecords:
    """The records of a side.

    Parameters
    ----------
    side : SideOut
    keys : mapping or None
        The letter of each figure that stands in the key table; None where no label of the side is a letter.
    """
    owners: dict[Ref, list[Record]] = {}
    held: dict[Ref, list[Record]] = {}
    labels: list[tuple[Box, str, str]] = []
    rungs: dict[str, str] = {}
    ends: list[float] = []
    for item in side.laid:
        text = keys[item.label.figure] if keys and item.label.rung == "key" else item.label.text
        owners.setdefault(item.owner, []).append(dimension(item, side.frame, text))
        labels.append((item.box, text, item.label.rung))
        rungs[item.place] = item.label.step
        ends.extend((item.segment.low / side.frame.scale, item.segment.high / side.frame.scale))
        if item.segment.held:
            held.setdefault(item.owner, []).extend(_held(item, side.frame))
    return SideRecords(
        {owner: tuple(records) for owner, records in owners.items()},
        {owner: tuple(records) for owner, records in held.items()},
        tuple(labels),
        rungs,
        tuple(ends),
    )


def _held(item: Laid, frame: Frame) -> tuple[Record, ...]:
    middle = (item.segment.low + item.segment.high) / 2 / frame.scale
    # On the side of the line where the figure is not, and clear of a leader.
    outward = -1.4 if item.side in ("top", "left") else 1.4
    aside = 0.0 if item.label.leader is None else 1.8
    return marks.held_mark(frame.wall(middle + aside, item.line + outward), frame.scale)
