"""What handles of a support are called: a rod, a track and a tension rod each by its own name."""

from __future__ import annotations

from elevation.words import Message, msg


def height_name(kind: str, where: Message) -> Message:
    """Its height."""
    if kind == "track":
        return msg("track height, {where}", where=where)
    if kind == "tension-rod":
        return msg("tension rod height, {where}", where=where)
    return msg("rod height, {where}", where=where)


def end_name(kind: str, side: str, where: Message) -> Message:
    """Its left or right end."""
    if side == "left":
        if kind == "track":
            return msg("left end of the track, {where}", where=where)
        if kind == "tension-rod":
            return msg("left end of the tension rod, {where}", where=where)
        return msg("left end of the rod, {where}", where=where)
    if kind == "track":
        return msg("right end of the track, {where}", where=where)
    if kind == "tension-rod":
        return msg("right end of the tension rod, {where}", where=where)
    return msg("right end of the rod, {where}", where=where)
