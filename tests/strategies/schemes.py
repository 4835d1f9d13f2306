"""Random schemes: what hangs, on what, from where, all of it possible."""

from __future__ import annotations

from typing import Any

from msgspec.structs import replace

from elevation.room.edits import edit_at
from elevation.room.model import (
    Blind,
    Board,
    Bracket,
    Built,
    Fabric,
    Held,
    Hem,
    Layer,
    Making,
    Offer,
    Opening,
    Packet,
    Panel,
    Pelmet,
    Rod,
    Room,
    Scheme,
    TieBack,
    Treatment,
)
from elevation.units import Length
from tests.strategies.choices import (
    BODIES,
    CEILING_KITS,
    FACES,
    FELT,
    FIXINGS,
    HEADINGS,
    HEM_TARGETS,
    KINDS,
    KITS,
    LININGS,
    MATERIALS,
    MOUNTS,
    PATTERNS,
    ROD_ENDS,
    SECTIONS,
    TILTS,
    Lengths,
    T,
)

OFFERS = {"Left": Offer(249.5, "USD", "the shop, Main St", "2026-03-31"), "Garden": Offer(180.0)}
"""What a shop asks, by the treatment's name: no chance of its own, so that other things stay where they are."""


class Schemes(Lengths):
    """Makes schemes."""

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
        made = _with(
            made,
            pelmet=self.pelmet() if self.pick.chance(4) else None,
            blind=self.blind() if self.pick.chance(4) else None,
            offer=OFFERS.get(made.name),
        )
        mount = self.pick.one_of(MOUNTS)
        if mount == "wall" or (mount != "ceiling" and len(group) > 1):
            return made
        hung = tuple(self.mounted(layer, mount) for layer in layers)
        if mount == "ceiling" and len(hung) > 1:
            kits = ("double-front-ceiling", "double-back-ceiling")
            hung = tuple(
                _with(layer, brackets=tuple(_with(bracket, kit=kit) for bracket in layer.brackets))
                for layer, kit in zip(hung, kits, strict=True)
            )
        return _with(made, mount=mount, layers=hung)

    def pelmet(self) -> Pelmet:
        """A pelmet or a valance, in proportion or not."""
        return Pelmet(
            depth=self.between(120, 500),
            above=self.between(0, 150),
            left=self.between(0, 150),
            right=self.between(0, 150),
            projection=self.between(90, 250),
            kind=self.pick.one_of(("board", "valance")),
        )

    def blind(self) -> Blind:
        """A blind behind, with any cord."""
        pick = self.pick
        return Blind(
            height=self.between(40, 120),
            projection=self.between(40, 120),
            place=pick.one_of(("reveal", "wall")),
            width=self.between(500, 1500) if pick.chance(3) else None,
            above=self.between(0, 60),
            drop=self.between(0, 900) if pick.chance(2) else None,
            cord=pick.one_of(("none", "loop", "held-loop", "cords")),
            cord_side=pick.one_of(("left", "right")),
        )

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
            fabric=self.fabric(),
            hem=Hem(target, at),
            panels=self.panels(brackets, target == "panel"),
            drop=self.between(10, 110) if pick.chance(4) else None,
            built=self.built() if pick.chance(8) else Built(),
            board=self.board() if pick.chance(6) else None,
            ring=self.between(12, 60) if pick.chance(4) else None,
            making=self.making() if pick.chance(3) else Making(),
            tie=self.tie() if pick.chance(5) else None,
        )

    def tie(self) -> TieBack:
        """A tie-back at a third, at two thirds, elsewhere, or at a height."""
        pick = self.pick
        hold = pick.one_of(("share-of-drop", "above-floor"))
        return TieBack(
            hold=hold,
            share=pick.one_of((1 / 3, 2 / 3, 0.45)),
            at=self.between(500, 1700) if hold == "above-floor" else None,
            out=self.between(0, 200),
            waist=self.between(60, 400) if pick.chance(2) else None,
            kind=pick.one_of(("loop", "arm")),
            there=pick.chance(4),
        )

    def fabric(self) -> Fabric:
        """A cloth of which little is known, or row, weight, lining and interlining."""
        pick = self.pick
        plain = Fabric(pick.one_of(("", "linen", "Leinen")), f"#{pick.whole(0, 0xFFFFFF):06x}", pick.one_of(BODIES))
        if pick.chance(2):
            return plain
        return _with(
            plain,
            row=pick.one_of((None, *FACES)),
            grams=pick.whole(40, 600) / 1 if pick.chance(3) else None,
            lining=pick.one_of((None, *LININGS)),
            interlining=pick.one_of((None, "domette", "bump")),
            width=self.between(900, 3000) if pick.chance(3) else None,
            repeat=self.between(50, 700) if pick.chance(3) else None,
            half_drop=pick.chance(3),
            one_way=pick.chance(4),
            railroaded=pick.chance(3),
            shrinks=pick.whole(0, 8) / 100 if pick.chance(3) else None,
        )

    def making(self) -> Making:
        """Made up otherwise than usual, in some way or other."""
        pick = self.pick
        return Making(
            fullness=pick.whole(4, 14) / 4 if pick.chance(2) else None,
            returns=pick.chance(2),
            heading=self.between(0, 250) if pick.chance(3) else None,
            hem=self.between(0, 300) if pick.chance(3) else None,
            washed_first=pick.chance(3),
            settles=self.between(0, 40) if pick.chance(3) else None,
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
            wall=self.between(0, 3) if pick.chance(4) else None,
            material=pick.one_of(MATERIALS) if pick.chance(2) else None,
            tilt=pick.one_of(TILTS),
            bend=self.between(60, 400) if pick.seldom(3) else None,
        )

    def with_later_kinds(self, room: Room) -> Room:
        """Fixings of rod ends, patterns of cloth: picked after everything else, so that older seeds keep what they made."""

        def fixed(layer: Layer) -> Layer:
            pick = self.pick
            left = pick.one_of(FIXINGS) if pick.chance(4) else None
            right = pick.one_of(FIXINGS) if pick.chance(4) else None
            ink = f"#{pick.whole(0, 0xFFFFFF):06x}"
            across = self.between(20, 700) if pick.chance(2) else None
            pattern = pick.one_of(PATTERNS)
            fabric = _with(layer.fabric, pattern=pattern, ink=ink, repeat_across=across) if pick.chance(2) else layer.fabric
            return _with(layer, rod=_with(layer.rod, left_fixing=left, right_fixing=right), fabric=fabric)

        for wall in room.walls:
            for scheme in wall.schemes:
                for treatment in scheme.treatments:
                    for layer in treatment.layers:
                        room = edit_at(room, (wall.id, scheme.id, treatment.id, layer.id), fixed)
        # A row of somebody's own that nothing names: every reader finds it harmless.
        return _with(room, rows={"bodies": {"my-felt": dict(FELT)}}) if self.pick.chance(4) else room

    def packet(self) -> Packet:
        """What a packet says: any of it, or all."""
        pick = self.pick
        return Packet(
            self.between(300, 900) if pick.chance(2) else None,
            self.between(1000, 2500) if pick.chance(2) else None,
            pick.whole(5, 300) / 10 if pick.chance(2) else None,
            self.between(200, 900) if pick.chance(2) else None,
            self.between(60, 500) if pick.seldom(2) else None,
            self.between(0, 150) if pick.seldom(2) else None,
            self.between(50, 400) if pick.seldom(2) else None,
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
                there=pick.chance(8),
                height=self.between(2000, 2400) if pick.chance(10) else None,
                fixing=pick.one_of((None, *FIXINGS)),
                pull_kg=pick.whole(1, 90) / 1 if pick.chance(5) else None,
                shear_kg=pick.whole(1, 90) / 1 if pick.chance(5) else None,
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
            weight_kg=pick.whole(3, 90) / 10 if pick.chance(6) else None,
        )


def _with(item: T, **fields: Any) -> T:
    return replace(item, **fields)
