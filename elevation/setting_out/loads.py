"""What hangs on a rod, what each bracket carries of it, and how far the rod sags.

Cloth hangs evenly where it is: over the stack where a panel is open, over all that it covers where it is drawn. A beam's
loads add up, so each panel is put where it is worst for each bracket and for each span by itself: that holds all panels
drawn, all open, one of each, and as they are drawn just now.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import pairwise
from math import atan, degrees

from msgspec import Struct
from msgspec.structs import replace

from elevation.room.model import Layer
from elevation.setting_out.carried import LoadsOut, SpanOut
from elevation.setting_out.facts import Defaults
from elevation.setting_out.hanging import Hanging, Place, RodUnit, under_one_newton
from elevation.setting_out.model import BracketOut, LayerOut, PanelOut, Span, SupportOut
from elevation.trade.beam import Beam, Bent
from elevation.trade.model import BracketRow, MaterialRow, Trade
from elevation.trade.section import GRAVITY, Section, section_of, weight_n_per_mm
from elevation.trade.tables import row_of
from elevation.units.tolerance import TOUCH_MM

Under = Callable[[Beam, Span, tuple[tuple[Place, ...], ...]], RodUnit | None]

_ANY_STIFFNESS = 1e9
"""What each bracket carries does not depend on how stiff the rod is."""


class Stuff(Struct, frozen=True, gc=False):
    """The rod's cross-section and material; ``bends``: it bends as that section does (a track is a channel)."""

    section: Section
    material: MaterialRow
    bends: bool

    @property
    def stiffness(self) -> float:
        """Modulus of elasticity times second moment of area, in N mm2; of a track any, as what is carried does not tell."""
        return self.material.elastic * self.section.inertia_mm4 if self.bends else _ANY_STIFFNESS


def stuff_of(layer: Layer, trade: Trade) -> Stuff | None:
    """What a layer's rod is made of and how; None for a rod without size."""
    rod = layer.rod
    row = row_of(trade.sections, rod.section, "section")
    material = row_of(trade.materials, rod.material or row.material, "material")
    outer = row.outer_mm if rod.diameter is None else rod.diameter.mm
    wall = row.wall_mm if rod.wall is None else rod.wall.mm
    section = section_of(outer, wall)
    return None if section is None else Stuff(section, material, rod.kind != "track")


def with_loads(made: LayerOut, layer: Layer, defaults: Defaults, trade: Trade, under: Under = under_one_newton) -> LayerOut:
    """A layer with what its rod and brackets carry.

    Parameters
    ----------
    made : LayerOut
        Rod, brackets and panels where they land.
    layer : Layer
        The same as it is in the room.
    defaults, trade
        What holds for the trade.
    under : callable
        ``under_one_newton``, or what remembers it.

    Returns
    -------
    LayerOut
        The very same where nothing can be told: a panel whose weight is not known, fewer than two supports, or a tension
        rod, whose packet says what it holds.
    """
    panels = (*made.panels, *made.guests)
    if made.support.kind == "tension-rod" or any(panel.mass_kg is None for panel in panels):
        return made
    stuff = stuff_of(layer, trade)
    if stuff is None:
        return made
    support = made.support
    left, right = support.cut_left_mm, support.cut_right_mm
    beam = Beam(left, right, tuple(_supports(made)), stuff.stiffness, support.splices_mm)
    rod_n = weight_n_per_mm(stuff.section, stuff.material) * (right - left)
    each_kg = _ring_kg(layer, defaults, trade)
    weights = tuple([((panel.mass_kg or 0.0) + each_kg * panel.rings) * GRAVITY for panel in panels])
    unit = under(beam, (left, right), tuple([_places(panel) for panel in panels]))
    if unit is None:
        return made
    most_n = sum([force * max(panel.shares) for panel, force in zip(panels, weights, strict=True)])
    return _told(made, Hanging(unit, rod_n, weights), stuff, LoadsOut(most_n, rod_n), defaults, trade)


def _supports(made: LayerOut) -> list[float]:
    """Where the rod is carried: brackets on it, and ends that carry it; brackets at one place count once."""
    support = made.support
    found = [x for x, carries in zip((support.left_mm, support.right_mm), support.carried, strict=True) if carries]
    found += [bracket.x_mm for bracket in made.brackets if _is_on(support, bracket)]
    found.sort()
    return found[:1] + [b for a, b in pairwise(found) if b - a > TOUCH_MM]


def _is_on(support: SupportOut, bracket: BracketOut) -> bool:
    return support.left_mm - TOUCH_MM <= bracket.x_mm <= support.right_mm + TOUCH_MM


def _places(panel: PanelOut) -> tuple[Place, ...]:
    """Where a panel may hang: as drawn just now first, then open and closed where those are other places.

    Of one that passes a corner only the part before this wall hangs here; on the other wall's brackets hangs the rest.
    """
    opened, closed, drawn = panel.shares
    return tuple(dict.fromkeys(((panel.drawn, drawn), (panel.open, opened), (panel.closed, closed))))


def _ring_kg(layer: Layer, defaults: Defaults, trade: Trade) -> float:
    """What each ring or glide weighs; eyelets, tabs and pockets are weighed with their cloth."""
    if layer.rod.kind == "track":
        return defaults.glide_kg
    return defaults.ring_kg if trade.headings[layer.heading].carries == "rings" else 0.0


def _told(made: LayerOut, hanging: Hanging, stuff: Stuff, loads: LoadsOut, defaults: Defaults, trade: Trade) -> LayerOut:
    xs = hanging.beam.supports_mm
    drawn = hanging.drawn()
    brackets = tuple(_loaded(bracket, made, xs, hanging, drawn, trade) for bracket in made.brackets)
    ends = tuple(
        hanging.most(index) if carries else None for carries, index in zip(made.support.carried, (0, -1), strict=True)
    )
    loads = replace(loads, ends_n=ends)
    if not stuff.bends:
        return replace(made, brackets=brackets, loads=loads)
    creep = stuff.material.creep
    spans, lines = _spans(hanging, drawn, creep, defaults)
    told = max(spans, key=lambda span: span.sag_mm / span.neat_mm)
    worst = lines.get((told.left_mm, told.right_mm))
    if worst is None:
        breaks = hanging.breaks_mm
        worst, _ = hanging.worst(breaks.index(told.left_mm), breaks.index(told.right_mm), drawn)
    moment = max(worst.greatest_moment(), *(-hanging.hogging(index) for index in range(len(xs))))
    loads = replace(
        loads,
        spans=spans,
        line=drawn.line(creep),
        stress=moment / stuff.section.modulus_mm3,
        stress_limit=stuff.material.bends_to,
        slopes=(degrees(atan(drawn.slope_at(xs[0]) * creep)), degrees(atan(-drawn.slope_at(xs[-1]) * creep))),
    )
    support = replace(made.support, sag_mm=told.sag_mm, sag_limit_mm=told.neat_mm)
    return replace(made, support=support, brackets=brackets, loads=loads)


def _loaded(
    bracket: BracketOut, made: LayerOut, xs: Sequence[float], hanging: Hanging, drawn: Bent, trade: Trade
) -> BracketOut:
    if not _is_on(made.support, bracket):
        return replace(bracket, load_n=0.0, uplift_n=0.0)
    index = min(range(len(xs)), key=lambda i: abs(xs[i] - bracket.x_mm))
    # Brackets at one place share what is there.
    share = 1 / sum(abs(other.x_mm - xs[index]) <= TOUCH_MM for other in made.brackets)
    return replace(
        bracket,
        load_n=max(hanging.most(index), 0.0) * share,
        uplift_n=max(-hanging.least(index), 0.0) * share,
        droop_mm=max(drawn.reactions_n[index], 0.0) * share * give_of(trade.brackets[bracket.kit], made.support, trade),
    )


def give_of(kit: BracketRow, support: SupportOut, trade: Trade) -> float:
    """How far the arm of a bracket gives under 1 N, in mm: a bar held in the wall, ``p3 / (3 E I)``; 0 where not known."""
    if kit.mount != "wall" or kit.arm_wide_mm <= 0 or kit.arm_deep_mm <= 0:
        return 0.0
    inertia = kit.arm_wide_mm * kit.arm_deep_mm**3 / 12
    return max(support.projection_mm, 0.0) ** 3 / (3 * trade.materials["steel"].elastic * inertia)


def _spans(hanging: Hanging, drawn: Bent, creep: float, defaults: Defaults) -> tuple[tuple[SpanOut, ...], dict[Span, Bent]]:
    """Every span with its worst sag, and the lines that those between two supports sag to."""
    beam, breaks = hanging.beam, hanging.breaks_mm
    xs = beam.supports_mm
    spans: list[SpanOut] = []
    lines: dict[Span, Bent] = {}
    if xs[0] - beam.left_mm > TOUCH_MM:
        spans.append(_end(beam.left_mm, xs[0], beam.left_mm, hanging.tip(0), creep, defaults))
    for left, right in pairwise(xs):
        low, high = breaks.index(left), breaks.index(right)
        lines[left, right], place = hanging.worst(low, high, drawn)
        at, sag = lines[left, right].deepest_by(low, high, place)
        long = right - left
        if sag <= TOUCH_MM:
            # A span that only lifts, or does not bend, is nowhere deepest.
            at, sag = (left + right) / 2, 0.0
        spans.append(SpanOut(left, right, at, sag * creep, long / defaults.sag_neat, long / defaults.sag_fair))
    if beam.right_mm - xs[-1] > TOUCH_MM:
        spans.append(_end(xs[-1], beam.right_mm, beam.right_mm, hanging.tip(-1), creep, defaults))
    return tuple(spans), lines


def _end(left_mm: float, right_mm: float, at_mm: float, sag: float, creep: float, defaults: Defaults) -> SpanOut:
    """A free end counts twice its length, as the building codes have it for cantilevers (IRC table R301.7, note b)."""
    long = 2 * (right_mm - left_mm)
    return SpanOut(
        left_mm, right_mm, at_mm, max(sag, 0.0) * creep, long / defaults.sag_neat, long / defaults.sag_fair, is_end=True
    )


def drop_at(layer: LayerOut, x_mm: float) -> float:
    """How far the rod hangs below its planned line at a place, panels as drawn: its sag and its brackets' droop."""
    if layer.loads is None or layer.loads.line is None:
        return 0.0
    return layer.loads.line.at(x_mm) + _droop_at(layer, x_mm)


def _droop_at(layer: LayerOut, x_mm: float) -> float:
    """Droop of the brackets, straight between two of them and on beyond the outer ones."""
    points = [(bracket.x_mm, bracket.droop_mm) for bracket in layer.brackets if _is_on(layer.support, bracket)]
    support = layer.support
    points += [(x, 0.0) for x, on in zip((support.left_mm, support.right_mm), support.carried, strict=True) if on]
    points.sort()
    if len(points) < 2:
        return 0.0
    (x0, d0), (x1, d1) = next((pair for pair in pairwise(points) if x_mm <= pair[1][0]), (points[-2], points[-1]))
    return d0 if x1 - x0 <= TOUCH_MM else d0 + (d1 - d0) * (x_mm - x0) / (x1 - x0)
