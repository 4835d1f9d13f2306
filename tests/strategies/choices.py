"""Choices made from whole numbers, and what there is to choose from."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar, get_args, get_type_hints

from elevation.room.model import (
    Fabric,
    Hem,
    ObstacleKind,
    Sash,
    Wall,
)
from elevation.units import Length, length_of

T = TypeVar("T")

OPENING_KINDS = ("window", "door", "sliding-door")
HEAD_KINDS = ("flat", "segmental", "half-round", "raked")
SASH_KINDS: tuple[str, ...] = get_args(get_type_hints(Sash)["kind"])
OBSTACLE_KINDS: tuple[str, ...] = get_args(ObstacleKind)
SUBSTRATES: tuple[str, ...] = get_args(get_type_hints(Wall)["substrate"])
BODIES: tuple[str, ...] = get_args(get_type_hints(Fabric)["body"])
HEM_TARGETS: tuple[str, ...] = get_args(get_type_hints(Hem)["target"])
HEADINGS = (
    "clip-rings", "rings", "eyelets", "tab", "rod-pocket", "pencil-pleat", "pinch-pleat", "double-pinch", "goblet",
    "cartridge", "inverted", "box-pleat", "wave", "back-tab",
)  # fmt: skip
FACES = ("voile", "linen-light", "cotton", "blackout", "velvet")
LININGS = ("lining-light", "lining-sateen", "lining-blackout")
SECTIONS = (
    "track-slim",
    "tension-16",
    "conduit-1/2",
    "conduit-3/4",
    "conduit-1",
    "dowel-1",
    "dowel-1-3/8",
    "tube-20",
    "tube-28",
)
MATERIALS = ("steel", "copper", "oak")
FELT = (
    ("name", "felt"), ("stack factor", "1.6"), ("pleated factor", "1.3"), ("grams", "420"), ("source", "weighed by me"),
    ("sure", "one source"),
)  # fmt: skip
PATTERNS = ("stripes", "bands", "check", "grid", "dots")
FIXINGS = ("screw-8", "screw-10", "toggle-3/16", "plug", "brick-plug")
KITS = ("shop-strap", "shop-cradle", "open-arm", "cup")
ROD_ENDS = ("bare", "cap", "ball-finial", "spear-finial", "socket", "return", "elbow")
CEILING_KITS = ("ceiling-cup", "ceiling-hook")
TILTS = ("level", "level", "level", "head", "ceiling", "split")
KINDS = ("rod", "track", "tension-rod")
MOUNTS = ("wall", "wall", "wall", "ceiling", "reveal", "sash")
CEILINGS = ("level", "sloping", "gable", "unmeasured")
FLOORS = ("level", "out of level", "wavy")
MOST_OPENINGS = 12

# How big an obstacle is, mm: width, height, projection, and where its bottom is (None: anywhere).
SIZES: dict[str, tuple[float, float, float, float | None]] = {
    "outlet": (70, 115, 8, 350),
    "switch": (70, 115, 8, 1100),
    "light": (120, 250, 120, None),
    "hot-water-radiator": (800, 600, 110, 120),
    "electric-heater": (900, 200, 80, 60),
    "fan-heater": (350, 100, 20, 30),
    "portable-heater": (350, 600, 250, 0),
    "flame-heater": (700, 900, 350, 0),
    "floor-register": (300, 8, 110, 0),
    "wall-register": (350, 200, 12, 200),
    "smoke-alarm": (120, 120, 40, None),
    "shelf": (600, 30, 250, None),
    "furniture": (900, 800, 450, 0),
    "picture": (500, 600, 25, None),
    "pipe": (22, 2000, 60, 0),
    "door-swing": (800, 2030, 800, 0),
}


class Choices:
    """Choices of all sorts made from whole numbers.

    Parameters
    ----------
    whole : callable
        ``(low, high) -> int``, ends included.
    """

    def __init__(self, whole: Callable[[int, int], int]) -> None:
        self.whole = whole

    def one_of(self, items: tuple[T, ...]) -> T:
        """One of ``items``."""
        return items[self.whole(0, len(items) - 1)]

    def chance(self, one_in: int) -> bool:
        """True once in ``one_in``."""
        return self.whole(1, one_in) == 1

    def seldom(self, one_in: int) -> bool:
        """True once in so many, but not in the plainest of all rooms."""
        return self.whole(1, one_in) == one_in

    def some(self, items: tuple[T, ...], low: int, high: int) -> tuple[T, ...]:
        """From ``low`` to ``high`` different ones of ``items``, in their order."""
        count = min(self.whole(low, high), len(items))
        left = list(items)
        while len(left) > count:
            left.pop(self.whole(0, len(left) - 1))
        return tuple(left)


class Lengths:
    """Makes lengths in the room's unit.

    Parameters
    ----------
    choices : Choices
    unit : str
        ``in`` or ``mm``.
    """

    def __init__(self, choices: Choices, unit: str) -> None:
        self.pick = choices
        self.unit = unit

    def length(self, mm: float) -> Length:
        """About ``mm`` on the tape's graduation."""
        return length_of(mm, self.unit, 25.4 / 16 if self.unit == "in" else 1.0)

    def up(self, mm: float) -> Length:
        """Not less than ``mm``, on the graduation."""
        length = self.length(mm)
        step = 25.4 / 16 if self.unit == "in" else 1.0
        return length if length.mm >= mm else self.length(mm + step)

    def down(self, mm: float) -> Length:
        """Not more than ``mm``, on the graduation."""
        length = self.length(mm)
        step = 25.4 / 16 if self.unit == "in" else 1.0
        return length if length.mm <= mm else self.length(mm - step)

    def between(self, low_mm: int, high_mm: int) -> Length:
        """A length from about ``low_mm`` to ``high_mm``."""
        return self.length(self.pick.whole(low_mm, high_mm))

    def maybe(self, low_mm: int, high_mm: int) -> Length | None:
        """Not measured, none, or a length."""
        which = self.pick.whole(0, 3)
        if which == 0:
            return None
        return self.length(0) if which == 1 else self.between(low_mm, high_mm)
