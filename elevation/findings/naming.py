"""How findings name the places they speak about: openings by number, obstacles by kind or by their own name."""

from __future__ import annotations

from elevation.setting_out.model import BesideOut, LayerOut, ObstacleOut, OpeningOut, TreatmentOut
from elevation.words import Message, msg


def opening_name(opening: OpeningOut) -> Message:
    """An opening as the head of a sentence: Window 2, Door 1."""
    if opening.kind == "door":
        return msg("Door {number}", number=opening.number)
    if opening.kind == "sliding-door":
        return msg("Sliding door {number}", number=opening.number)
    return msg("Window {number}", number=opening.number)


def where(treatment: TreatmentOut) -> Message:
    """The openings that a treatment covers, as the head of a sentence."""
    openings = treatment.openings
    if len(openings) == 1:
        return opening_name(openings[0])
    if not openings:  # pragma: no cover - a treatment that covers nothing is not set out
        return msg("Treatment {name}", name=treatment.name or treatment.ref[-1])
    numbers = [opening.number for opening in openings]
    if len(numbers) == 2:
        return msg("Openings {first} and {last}", first=numbers[0], last=numbers[1])
    return msg("Openings {first} to {last}", first=numbers[0], last=numbers[-1])


_NOUNS = {"track": msg("track"), "tension-rod": msg("tension rod")}
_ROD = msg("rod")


def noun_of(layer: LayerOut) -> Message:
    """What a layer hangs on, as a bare noun for the middle of a sentence."""
    return _NOUNS.get(layer.support.kind, _ROD)


def kind_name(kind: str) -> Message:
    """An obstacle's kind in words, for the middle of a sentence."""
    names = {
        "outlet": msg("the outlet"),
        "switch": msg("the switch"),
        "light": msg("the light"),
        "hot-water-radiator": msg("the hot-water radiator"),
        "electric-heater": msg("the electric heater"),
        "fan-heater": msg("the fan heater"),
        "portable-heater": msg("the portable heater"),
        "flame-heater": msg("the flame heater"),
        "floor-register": msg("the floor register"),
        "wall-register": msg("the wall register"),
        "smoke-alarm": msg("the smoke alarm"),
        "shelf": msg("the shelf"),
        "furniture": msg("the furniture"),
        "picture": msg("the picture"),
        "pipe": msg("the pipe"),
        "door-swing": msg("the door of another wall"),
    }
    return names[kind]


def obstacle_name(obstacle: ObstacleOut) -> Message:
    """An obstacle in words: its kind, and its own name where it has one."""
    if obstacle.name:
        return msg("{kind} “{name}”", kind=kind_name(obstacle.kind), name=obstacle.name)
    return kind_name(obstacle.kind)


def beside_name(thing: BesideOut) -> Message:
    """Something of the neighbour wall, with the wall that it belongs to."""
    wall = thing.wall
    if thing.kind == "rod":
        return msg("the rod on the wall “{wall}”", wall=wall)
    if thing.kind == "bracket":
        return msg("a bracket on the wall “{wall}”", wall=wall)
    if thing.kind == "panel":
        return msg("the cloth on the wall “{wall}”", wall=wall)
    if thing.kind == "stool":
        return msg("the stool of window {number} on the wall “{wall}”", number=thing.name, wall=wall)
    if thing.kind == "sash":
        return msg("window {number} on the wall “{wall}”", number=thing.name, wall=wall)
    if thing.kind == "door":
        return msg("door {number} on the wall “{wall}”", number=thing.name, wall=wall)
    if thing.kind == "door-swing":
        return msg("the door that swings against the wall “{wall}”", wall=wall)
    kind = kind_name(thing.kind)
    if thing.name:
        kind = msg("{kind} “{name}”", kind=kind, name=thing.name)
    return msg("{kind} on the wall “{wall}”", kind=kind, wall=wall)


def side_name(side: str) -> Message:
    """A side of the wall, for the middle of a sentence."""
    return msg("left") if side == "left" else msg("right")


def end_name(side: int, layer: LayerOut) -> Message:
    """An end of a layer's rod or track (0 left, 1 right), for the middle of a sentence."""
    support = noun_of(layer)
    if side:
        return msg("the right end of the {support}", support=support)
    return msg("the left end of the {support}", support=support)


def bracket_place(order: int, count: int) -> Message:
    """Which bracket of a rod, counted from the left."""
    if order == 0 and count > 1:
        return msg("the left end bracket")
    if order == count - 1 and count > 1:
        return msg("the right end bracket")
    if count == 1:
        return msg("the bracket")
    return msg("bracket {number} from the left", number=order + 1)
