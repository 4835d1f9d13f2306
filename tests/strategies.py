"""Random rooms that can say everything the room file can say.

One maker fills a wall from a source of choices. ``random_room(seed)`` takes them from ``random.Random``: the same seed
makes the same room for ever, for tests over a fixed number of walls. ``rooms()`` and ``walls()`` let hypothesis take
them, so that a failing room shrinks.

Every room is physically possible: it passes ``check_room`` and the row check. Whether it is wise is another matter.
"""

from __future__ import annotations

import random
from collections.abc import Callable
from typing import Any, TypeVar, get_args, get_type_hints

from hypothesis import strategies as st
from msgspec.structs import replace

from elevation.room.check_wall import head_height
from elevation.room.model import (
    Board,
    Bracket,
    Built,
    Fabric,
    Head,
    Held,
    Hem,
    Layer,
    Obstacle,
    ObstacleKind,
    Opening,
    Packet,
    Panel,
    Readings,
    Rod,
    Room,
    Sash,
    Scheme,
    Station,
    Stool,
    Treatment,
    Wall,
    WallEnd,
)
from elevation.room.stand import height_at, stands
from elevation.units import Length, length_of

T = TypeVar("T")

OPENING_KINDS = ("window", "door", "sliding-door")
HEAD_KINDS = ("flat", "segmental", "half-round", "raked")
SASH_KINDS: tuple[str, ...] = get_args(get_type_hints(Sash)["kind"])
OBSTACLE_KINDS: tuple[str, ...] = get_args(ObstacleKind)
SUBSTRATES: tuple[str, ...] = get_args(get_type_hints(Wall)["substrate"])
BODIES: tuple[str, ...] = get_args(get_type_hints(Fabric)["body"])
HEM_TARGETS: tuple[str, ...] = get_args(get_type_hints(Hem)["target"])
HEADINGS = ("clip-rings", "rings", "eyelets", "tab", "rod-pocket", "pencil-pleat", "pinch-pleat")
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
KITS = ("shop-strap", "shop-cradle", "open-arm", "cup")
ROD_ENDS = ("bare", "cap", "ball-finial", "spear-finial", "socket", "return", "elbow")
CEILING_KITS = ("ceiling-cup", "ceiling-hook")
KINDS = ("rod", "track", "tension-rod")
MOUNTS = ("wall", "wall", "wall", "ceiling", "reveal", "sash")
CEILINGS = ("level", "sloping", "gable", "unmeasured")
FLOORS = ("level", "out of level", "wavy")
MOST_OPENINGS = 12

# How big an obstacle is, mm: width, height, projection, and where its bottom is (None: anywhere).
_SIZES: dict[str, tuple[float, float, float, float | None]] = {
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

    def some(self, items: tuple[T, ...], low: int, high: int) -> tuple[T, ...]:
        """From ``low`` to ``high`` different ones of ``items``, in their order."""
        count = min(self.whole(low, high), len(items))
        left = list(items)
        while len(left) > count:
            left.pop(self.whole(0, len(left) - 1))
        return tuple(left)


class Maker:
    """Makes one room's parts in its unit.

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

    def opening(self, key: str, top_mm: int) -> Opening:
        """An opening that is nowhere higher than ``top_mm``, placed by its gap."""
        pick = self.pick
        kind = pick.one_of(OPENING_KINDS)
        width = self.between(300, 2400 if kind == "sliding-door" else 1500)
        sill = self.between(0, 1000) if kind == "window" else self.length(0)
        least = int(width.mm / 2) + 120
        height = self.between(least, max(least, int(top_mm - sill.mm - 4)))
        head = self.head(pick.one_of(HEAD_KINDS), width, height)
        slides = ("fixed", "double-hung", "sliding", "casement-in", "casement-out", "tilt-in")
        swings = ("fixed", "swing-in", "swing-out")
        sashes = {"window": slides, "door": swings, "sliding-door": ("fixed", "sliding")}[kind]
        least_frame = min(width.mm, height.mm, head.right_height.mm if head.right_height else height.mm)
        return Opening(
            id=key,
            width=width,
            height=height,
            kind=kind,
            gap=self.gap(),
            sill=sill,
            head=head,
            casing=self.maybe(20, 140),
            stool=Stool(self.between(15, 40), self.between(0, 60), self.between(10, 80)) if pick.chance(3) else None,
            apron=self.between(40, 120) if pick.chance(3) else None,
            reveal=self.maybe(40, 300),
            frame=self.between(5, max(6, min(90, int(least_frame / 2) - 30))) if pick.chance(2) else None,
            columns=pick.whole(1, 4),
            rows=pick.whole(1, 5),
            sash=Sash(pick.one_of(sashes), pick.one_of(("left", "right", "both")), self.maybe(10, 70), self.maybe(5, 60)),
            escape=pick.chance(4),
            taken=self.taken(width, height) if pick.chance(4) else Readings(),
        )

    def taken(self, width: Length, height: Length) -> Readings:
        """Readings about those of the opening, some of them blank."""
        pick = self.pick

        def about(mm: float) -> Length | None:
            return None if pick.chance(5) else self.length(mm + pick.whole(-8, 8))

        across = (width.mm**2 + height.mm**2) ** 0.5
        return Readings(*(about(mm) for mm in (*[width.mm] * 3, *[height.mm] * 3, across, across)))

    def head(self, kind: str, width: Length, height: Length) -> Head:
        """A head of that kind over an opening of that size."""
        if kind == "segmental":
            return Head("segmental", rise=self.between(20, int(width.mm / 2) - 2))
        if kind == "raked":
            return Head("raked", right_height=self.between(150, int(height.mm)))
        return Head(kind)

    def gap(self) -> Length:
        """Between casings: often tight, down to 1/2 in."""
        if self.pick.chance(3):
            return self.up(12.7)
        return self.up(self.pick.whole(13, 900))

    def ceiling(self, kind: str, width: Length, least_mm: float) -> tuple[Station, ...]:
        """A ceiling line that is everywhere at least ``least_mm`` high, apart from a gable's eaves."""
        pick = self.pick
        low = self.up(least_mm + pick.whole(0, 900))
        if kind == "unmeasured":
            return ()
        if kind == "level":
            return (Station(self.length(0), low),)
        high = self.up(low.mm + pick.whole(50, 1500))
        if kind == "sloping":
            ends = (low, high) if pick.chance(2) else (high, low)
            return (Station(self.length(0), ends[0]), Station(self.down(width.mm), ends[1]))
        middle = self.length(width.mm * pick.whole(20, 80) / 100)
        return (Station(self.length(0), low), Station(middle, high), Station(self.down(width.mm), low))

    def floor(self, kind: str, width: Length) -> tuple[Station, ...]:
        """A floor profile of that kind."""
        if kind == "level":
            return ()
        count = 2 if kind == "out of level" else self.pick.whole(3, 6)
        places = [self.down(width.mm * number / (count - 1)) for number in range(count)]
        heights = [self.length(0), *(self.between(-25, 25) for _ in places[1:])]
        return tuple(Station(place, height) for place, height in zip(places, heights, strict=True))

    def wall(self, key: str, others: tuple[str, ...] = ()) -> Wall:
        """A wall with everything that can be on it."""
        pick = self.pick
        count = pick.whole(1, 4) if not pick.chance(5) else pick.whole(5, MOST_OPENINGS)
        openings = tuple(self.opening(f"o{number}", pick.whole(1900, 2300)) for number in range(1, count + 1))
        after = self.gap()
        bare = Wall(id=key, openings=openings)
        lefts = [left for left in stands(bare) if left is not None]
        last = openings[-1]
        casing = last.casing.mm if last.casing else 0.0
        width = self.up(lefts[-1] + last.width.mm + casing + after.mm)
        top = max(head_height(o, share * o.width.mm) for o in openings for share in (0.0, 0.5, 1.0))
        placed = tuple(self.placed(o, left) for o, left in zip(openings, lefts, strict=True))
        ceiling = self.ceiling(pick.one_of(CEILINGS), width, top + 30)
        schemes = tuple(self.scheme(f"s{number}", placed) for number in range(1, pick.whole(1, 2) + 1))
        return Wall(
            id=key,
            name=pick.one_of(("", "North wall", "Fensterwand", "<&> wall")),
            width=width if not pick.chance(8) else None,
            ceiling=ceiling if ceiling and ceiling[-1].x.mm <= width.mm else (),
            floor=self.floor(pick.one_of(FLOORS), width),
            crown=self.maybe(20, 120),
            baseboard=self.maybe(40, 200),
            left=self.end(others),
            right=self.end(others),
            substrate=pick.one_of(SUBSTRATES),
            studs=self.studs(width),
            stud_spacing=self.between(300, 700) if pick.chance(8) else None,
            gap_right=after if pick.chance(2) else None,
            openings=placed,
            obstacles=self.obstacles(width, height_at(ceiling, 0.0) or 2400.0),
            schemes=schemes,
        )

    def studs(self, width: Length) -> tuple[Length, ...]:
        """None found, as a rule; else up to three, rising."""
        if not self.pick.chance(4):
            return ()
        step = width.mm / 4
        return tuple(self.down(step * (place + self.pick.whole(0, 80) / 100)) for place in range(self.pick.whole(1, 3)))

    def placed(self, opening: Opening, left_mm: float) -> Opening:
        """The opening placed by its gap or, as often, by its distance from the wall's left end."""
        if self.pick.chance(2):
            return opening
        left = self.length(left_mm)
        # Only where the tape reads just that: a rounded place could make two openings touch.
        return _with(opening, left=left, gap=None) if abs(left.mm - left_mm) < 1e-6 else opening

    def end(self, others: tuple[str, ...]) -> WallEnd:
        """A corner, perhaps out of square and with a known neighbour, or an open end."""
        pick = self.pick
        if pick.chance(3):
            return WallEnd("open")
        neighbour = pick.one_of(others) if others and pick.chance(2) else None
        return WallEnd("corner", neighbour, 90.0 if pick.chance(2) else float(pick.whole(45, 270)))

    def obstacles(self, width: Length, high_mm: float) -> tuple[Obstacle, ...]:
        """Obstacles of many kinds, anywhere on the wall."""
        made = []
        for number, kind in enumerate(self.pick.some(OBSTACLE_KINDS, 0, 7), 1):
            wide, high, out, bottom = _SIZES[kind]
            size = self.down(min(float(wide), width.mm * 0.8))
            left = self.down((width.mm - size.mm) * self.pick.whole(0, 100) / 100)
            at = self.pick.whole(1200, max(1201, int(high_mm) - int(high))) if bottom is None else bottom
            heater = kind.endswith("heater") and self.pick.chance(3)
            made.append(
                Obstacle(
                    f"x{number}",
                    kind,
                    left,
                    self.length(at),
                    size,
                    self.up(high),
                    self.length(out),
                    name="" if self.pick.chance(2) else f"thing {number}",
                    clearance=self.between(100, 900) if heater else None,
                )
            )
        return tuple(made)

    def scheme(self, key: str, openings: tuple[Opening, ...]) -> Scheme:
        """A scheme whose treatments cover openings beside each other, each opening at most once."""
        pick = self.pick
        treatments: list[Treatment] = []
        first = 0
        while first < len(openings):
            count = pick.whole(1, 3)
            group = openings[first : first + count]
            if not pick.chance(5) or not treatments:
                treatments.append(self.treatment(f"t{len(treatments) + 1}", group))
            first += count
        goal = self.between(0, 60) if pick.chance(4) else None
        return Scheme(key, pick.one_of(("", "Plain", "Evening")), tuple(treatments), goal)

    def treatment(self, key: str, group: tuple[Opening, ...]) -> Treatment:
        """A treatment with one layer, or two where it is lucky."""
        layers = tuple(self.layer(f"l{number}") for number in range(1, 3 if self.pick.chance(8) else 2))
        if len(layers) > 1 and self.pick.chance(2):
            layers = self.doubled(layers)
        made = Treatment(key, tuple(opening.id for opening in group), layers, self.pick.one_of(("", "Left", "Garden")))
        mount = self.pick.one_of(MOUNTS)
        if mount == "wall" or (mount != "ceiling" and len(group) > 1):
            return made
        return _with(made, mount=mount, layers=tuple(self.mounted(layer, mount) for layer in layers))

    def doubled(self, layers: tuple[Layer, ...]) -> tuple[Layer, ...]:
        """Front brackets that carry the back rod too; one of them may be some other bracket."""
        front, *others = layers
        kits = tuple(
            _with(bracket, kit="double-front" if number or self.pick.chance(2) else bracket.kit)
            for number, bracket in enumerate(front.brackets)
        )
        backs = [
            _with(layer, brackets=tuple(_with(bracket, kit="double-back") for bracket in layer.brackets))
            for layer in others
        ]
        return (_with(front, brackets=kits), *backs)

    def mounted(self, layer: Layer, mount: str) -> Layer:
        """The layer on the ceiling or inside an opening: other holds, other brackets."""
        pick = self.pick
        if mount == "ceiling":
            height = Held("bracket-drop", self.between(0, 40)) if pick.chance(2) else layer.rod.height
            kits = tuple(_with(bracket, kit=pick.one_of(CEILING_KITS)) for bracket in layer.brackets)
            return _with(layer, rod=_with(layer.rod, height=height), brackets=kits)
        share = pick.one_of((0.25, 0.5, 2 / 3, 1.0))
        height = pick.one_of(
            (
                Held("below-head", self.between(10, 120)),
                Held("above-sill", self.between(200, 900)),
                Held("share-of-opening", self.between(-60, 60), share),
            )
        )
        left, right = (Held("inside-opening", self.between(0, 60)) for _ in range(2))
        rod = _with(layer.rod, height=height, left=left, right=right, projection=self.between(10, 120))
        if mount == "reveal":
            panels = tuple(_with(panel, parks=panel.parks.split("-")[0]) for panel in layer.panels)
            return _with(layer, rod=rod, brackets=(), panels=panels)
        kits = tuple(_with(bracket, kit="sash-hook") for bracket in layer.brackets)
        return _with(layer, rod=rod, brackets=kits)

    def layer(self, key: str) -> Layer:
        """A layer on its own rod."""
        pick = self.pick
        brackets = self.brackets()
        target = pick.one_of(HEM_TARGETS)
        at = {"length": self.between(400, 2400), "panel": None}.get(target, self.maybe(1, 60))
        return Layer(
            id=key,
            rod=self.rod(),
            brackets=brackets,
            heading=pick.one_of(HEADINGS),
            fabric=Fabric(pick.one_of(("", "linen", "Leinen")), f"#{pick.whole(0, 0xFFFFFF):06x}", pick.one_of(BODIES)),
            hem=Hem(target, at),
            panels=self.panels(brackets, target == "panel"),
            drop=self.between(10, 110) if pick.chance(4) else None,
            built=self.built() if pick.chance(8) else Built(),
            board=self.board() if pick.chance(6) else None,
        )

    def board(self) -> Board:
        """A mounting board, of the usual size or another."""
        size = (
            (self.between(60, 240), self.between(12, 40))
            if self.pick.chance(2)
            else (Length(139.7, "5 1/2 in"), Length(19.05, "3/4 in"))
        )
        return Board(self.between(0, 300), self.between(0, 300), *size)

    def built(self) -> Built:
        """What was read after hanging, perhaps not all of it."""
        pick = self.pick

        def read(low_mm: int, high_mm: int) -> Length | None:
            return None if pick.chance(4) else self.between(low_mm, high_mm)

        return Built(read(1900, 2400), read(1900, 2400), read(1900, 2400), read(400, 4000))

    def rod(self) -> Rod:
        """A rod held in any way that the file knows."""
        pick = self.pick
        height = {
            "above-head": self.between(-20, 350),
            "above-casing": self.between(0, 300),
            "below-ceiling": self.between(40, 400),
            "above-floor": self.between(1700, 2500),
        }
        hold = pick.one_of(tuple(height))
        ends = [self.rod_end(), self.rod_end()]
        which = pick.whole(0, 5)
        if which < 2:
            ends[which] = Held("rod-length", self.between(500, 5000))
        return Rod(
            Held(hold, height[hold]),
            ends[0],
            ends[1],
            section=pick.one_of(SECTIONS),
            diameter=self.between(12, 40) if pick.chance(5) else None,
            projection=self.between(50, 150),
            ends=pick.one_of(ROD_ENDS),
            left_ends=pick.one_of(ROD_ENDS) if pick.chance(6) else None,
            right_ends=pick.one_of(ROD_ENDS) if pick.chance(6) else None,
            stock=self.between(1500, 4000) if pick.chance(5) else None,
            kind=pick.one_of(KINDS),
            packet=self.packet() if pick.chance(3) else Packet(),
            overlap=self.between(0, 150) if pick.chance(5) else None,
        )

    def packet(self) -> Packet:
        """What a packet says: any of it, or all."""
        pick = self.pick
        return Packet(
            self.between(300, 900) if pick.chance(2) else None,
            self.between(1000, 2500) if pick.chance(2) else None,
            pick.whole(5, 300) / 10 if pick.chance(2) else None,
            self.between(200, 900) if pick.chance(2) else None,
        )

    def rod_end(self) -> Held:
        """An end held by opening, casing or corner."""
        hold = self.pick.one_of(("beyond-opening", "beyond-casing", "from-corner"))
        return Held(hold, self.between(20, 400))

    def brackets(self) -> tuple[Bracket, ...]:
        """End brackets and up to three more."""
        pick = self.pick
        places = [Held("from-left-end", self.between(20, 120)), Held("from-right-end", self.between(20, 120))]
        for _ in range(pick.whole(0, 3)):
            hold = pick.one_of(("from-centre", "from-wall-left"))
            places.append(Held(hold, self.between(-400, 400) if hold == "from-centre" else self.between(100, 3000)))
        return tuple(
            Bracket(
                f"b{number}",
                place,
                pick.one_of(KITS),
                rings_pass=pick.one_of((None, None, True, False)),
                height=self.between(2000, 2400) if pick.chance(10) else None,
            )
            for number, place in enumerate(places, 1)
        )

    def panels(self, brackets: tuple[Bracket, ...], in_hand: bool) -> tuple[Panel, ...]:
        """None, one way, a pair, side panels that never draw, or several that park at brackets."""
        pick = self.pick
        which = pick.whole(0, 9)
        if which == 0:
            return ()
        if which <= 2:
            return (self.panel("p1", pick.one_of(("left", "right")), in_hand),)
        if which <= 7:
            panel = self.panel("p1", "left", in_hand, stationary=which == 7)
            return (panel, _with(panel, id="p2", parks="right"))
        middle = pick.one_of(brackets).id
        sides = ("left", f"left-of:{middle}", f"right-of:{middle}", "right")
        return tuple(self.panel(f"p{number}", side, in_hand) for number, side in enumerate(sides, 1))

    def panel(self, key: str, parks: str, in_hand: bool, stationary: bool = False) -> Panel:
        """A panel; one in hand has a length."""
        pick = self.pick
        return Panel(
            key,
            self.between(600, 2000),
            pick.whole(1, 3),
            parks,
            stationary,
            label_length=self.between(900, 2600) if in_hand or pick.chance(5) else None,
            measured_length=self.between(900, 2600) if pick.chance(6) else None,
            drawn=self.between(0, 900) if pick.chance(3) else None,
            stack=self.between(60, 400) if pick.chance(6) else None,
            hung_length=self.between(900, 2600) if pick.chance(8) else None,
        )

    def room(self) -> Room:
        """A room with one wall, or with four."""
        pick = self.pick
        ids = ("w1", "w2", "w3", "w4") if pick.chance(8) else ("w1",)
        walls = tuple(self.wall(key, tuple(other for other in ids if other != key)) for key in ids)
        coarse = {"in": (25.4 / 8, 25.4 / 16, 25.4 / 32), "mm": (1.0, 5.0)}[self.unit]
        graduation = pick.one_of(coarse)
        text = length_of(graduation, self.unit, 25.4 / 32 if self.unit == "in" else 1.0)
        return Room(
            name=pick.one_of(("", "Room", "Wohnküche", 'A "room" & more')),
            unit=self.unit,
            graduation=text if pick.chance(2) else None,
            language=pick.one_of(("en", "de")),
            sleeping=pick.chance(2),
            no_holes=pick.chance(8),
            children=pick.chance(4),
            wiring=pick.one_of(("not-known", "uk", "de")),
            floor_to_come=self.between(5, 40) if pick.chance(8) else None,
            one_height=pick.chance(4),
            limits={"rod-low": self.between(25, 150)} if pick.chance(6) else {},
            walls=walls,
        )


def _with(item: T, **fields: Any) -> T:
    return replace(item, **fields)


def random_room(seed: int) -> Room:
    """The room of that seed: the same one on every machine."""
    source = random.Random(seed)
    choices = Choices(source.randint)
    return Maker(choices, choices.one_of(("in", "mm"))).room()


def random_walls(count: int, first_seed: int = 0) -> list[tuple[Room, Wall]]:
    """``count`` fixed walls with their rooms."""
    made: list[tuple[Room, Wall]] = []
    seed = first_seed
    while len(made) < count:
        room = random_room(seed)
        made.extend((room, wall) for wall in room.walls)
        seed += 1
    return made[:count]


@st.composite
def rooms(draw: st.DrawFn) -> Room:
    """Any room; fails shrink towards few and plain things."""
    choices = Choices(lambda low, high: draw(st.integers(low, high)))
    return Maker(choices, choices.one_of(("in", "mm"))).room()


@st.composite
def walls(draw: st.DrawFn) -> Wall:
    """Any wall, in a room that is not told."""
    choices = Choices(lambda low, high: draw(st.integers(low, high)))
    return Maker(choices, choices.one_of(("in", "mm"))).wall("w1")
