"""Random walls: openings, ceilings, floors, ends and obstacles, all of them possible."""

from __future__ import annotations

from typing import Any

from msgspec.structs import replace

from elevation.room.check_wall import head_height
from elevation.room.model import (
    Head,
    Obstacle,
    Opening,
    Readings,
    Sash,
    Station,
    Stool,
    Wall,
    WallEnd,
)
from elevation.room.stand import height_at, stands
from elevation.units import Length
from tests.strategies.choices import (
    CEILINGS,
    FLOORS,
    HEAD_KINDS,
    MOST_OPENINGS,
    OBSTACLE_KINDS,
    OPENING_KINDS,
    SIZES,
    SUBSTRATES,
    Lengths,
    T,
)


class Walls(Lengths):
    """Makes walls."""

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
            shutter_box=self.between(120, 300) if pick.chance(8) else None,
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
            wide, high, out, bottom = SIZES[kind]
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


def _with(item: T, **fields: Any) -> T:
    return replace(item, **fields)
