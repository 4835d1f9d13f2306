"""Candidate changes that make a rod sag less: more brackets, where they do the most, or a stiffer rod."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import pairwise

from msgspec.structs import replace

from elevation.findings.changing import bracket_added, bracket_to, length
from elevation.findings.looking import layer_at
from elevation.findings.model import Change, Scene
from elevation.room.edits import edit_at, put_bracket, replace_rod
from elevation.room.find import layer_of
from elevation.room.model import Bracket, Held, Layer, Ref, Room
from elevation.setting_out.model import LayerOut
from elevation.trade.section import section_of
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, msg, msg_plural

MOST_BETWEEN = 6
"""More brackets than this between the end ones are not proposed: another rod is better (common practice, no source)."""


def meeting_places(layer: LayerOut) -> tuple[float, ...]:
    """Where panels meet or park between the ends of a rod: a bracket there is in no ring's way."""
    found = {panel.parks_at_mm for panel in layer.panels}
    for one, other in pairwise(sorted(layer.panels, key=lambda panel: panel.closed)):
        found.add((one.closed[1] + other.closed[0]) / 2)
    return tuple(sorted(found))


def must_pass(layer: LayerOut, x_mm: float) -> bool:
    """Whether rings have to slide past a bracket there: it stands between where a panel parks and where it closes to."""
    for panel in layer.panels:
        left, right = min(panel.open[0], panel.closed[0]), max(panel.open[1], panel.closed[1])
        if not panel.stationary and left + TOUCH_MM < x_mm < right - TOUCH_MM:
            return True
    return False


def _kit(scene: Scene, layer: LayerOut, x_mm: float) -> str:
    """The kit that the rod has already; where rings have to pass, one of the same mount that lets them."""
    own = layer.brackets[0].kit
    mount = scene.trade.brackets[own].mount
    if must_pass(layer, x_mm) and not scene.trade.brackets[own].rings_pass:
        return next((row.id for row in scene.trade.brackets.values() if row.mount == mount and row.rings_pass), own)
    return own


def more_brackets(scene: Scene, ref: Ref) -> Iterator[Change]:
    """The fewest brackets first: those between the end ones taken away and spread anew, near where panels meet or park.

    End brackets and those as built stay where they are.
    """
    layer = layer_at(scene, ref)
    if len(layer.brackets) < 2 or any(bracket.built for bracket in layer.brackets):
        return
    left, right = layer.brackets[0].x_mm, layer.brackets[-1].x_mm
    places = meeting_places(layer)
    for count in range(len(layer.brackets) - 1, MOST_BETWEEN + 1):
        bay = (right - left) / (count + 1)
        xs = []
        for number in range(1, count + 1):
            even = left + bay * number
            near = min(places, key=lambda place, even=even: abs(place - even), default=even)  # type: ignore[misc]
            # A place that panels leave free is worth a bay a tenth longer.
            xs.append(near if abs(near - even) <= bay / 10 and left < near < right else even)
        # Even places and those near them lie apart, or nothing spans the rod.
        if len({round(x, 3) for x in xs}) == count:  # pragma: no branch
            yield _spread(scene, layer, xs)


def _spread(scene: Scene, layer: LayerOut, xs: list[float]) -> Change:
    centre = (layer.support.left_mm + layer.support.right_mm) / 2
    fresh = [Bracket(id="", place=Held("from-centre", length(scene, x - centre)), kit=_kit(scene, layer, x)) for x in xs]
    ends = {layer.brackets[0].ref[-1], layer.brackets[-1].ref[-1]}
    label = msg_plural(
        "Hang it on {count} bracket between those at the ends",
        "Hang it on {count} brackets between those at the ends",
        count=len(xs),
    )

    def edit(room: Room) -> Room:
        def keep(own: Layer) -> Layer:
            return replace(own, brackets=tuple(bracket for bracket in own.brackets if bracket.id in ends))

        room = edit_at(room, layer.ref, keep)
        for bracket in fresh:
            room, _ = put_bracket(room, layer.ref, bracket)
        return room

    parked = {panel.parks for panel in layer_of(scene.room, layer.ref).panels}
    kept = all(side in ("left", "right") or side.split(":")[1] in ends for side in parked)
    # Panels that park at a bracket in the middle would lose their place.
    return Change(label, edit, is_possible=kept)


def bracket_between(scene: Scene, ref: Ref, left_mm: float, right_mm: float) -> Iterator[Change]:
    """One more bracket in a span: where panels meet or park there, else in its middle."""
    layer = layer_at(scene, ref)
    middle, bay = (left_mm + right_mm) / 2, right_mm - left_mm
    near = [place for place in meeting_places(layer) if abs(place - middle) <= bay / 6]
    for x in (*sorted(near, key=lambda place: abs(place - middle)), middle):
        for change in bracket_added(scene, ref, x):
            yield replace(change, edit=_passing(change, scene, layer, x)) if layer.brackets else change


def _passing(change: Change, scene: Scene, layer: LayerOut, x_mm: float) -> Callable[[Room], Room]:
    kit = _kit(scene, layer, x_mm)

    def edit(room: Room) -> Room:
        made = change.edit(room)
        known = {bracket.id for bracket in layer_of(room, layer.ref).brackets}

        def put(own: Layer) -> Layer:
            return replace(own, brackets=tuple(b if b.id in known else replace(b, kit=kit) for b in own.brackets))

        return edit_at(made, layer.ref, put)

    return edit


def bracket_evened(scene: Scene, ref: Ref, left_mm: float, right_mm: float) -> Iterator[Change]:
    """A bracket at one side of a span moved so that the spans on both its sides are alike."""
    xs = [bracket.x_mm for bracket in layer_at(scene, ref).brackets]
    for index, bracket in enumerate(layer_at(scene, ref).brackets):
        if 0 < index < len(xs) - 1 and min(abs(bracket.x_mm - left_mm), abs(bracket.x_mm - right_mm)) <= TOUCH_MM:
            yield from bracket_to(scene, bracket.ref, (xs[index - 1] + xs[index + 1]) / 2)


def stiffer_rod(scene: Scene, ref: Ref) -> Iterator[Change]:
    """The next stiffer rods that look the same, thinnest first."""
    rod = layer_of(scene.room, ref).rod
    own = scene.trade.sections[rod.section]
    material = scene.trade.materials[rod.material or own.material]
    now = section_of(
        own.outer_mm if rod.diameter is None else rod.diameter.mm, own.wall_mm if rod.wall is None else rod.wall.mm
    )
    if now is None or rod.kind != "rod":
        return
    better = []
    for row in scene.trade.sections.values():
        other = section_of(row.outer_mm, row.wall_mm)
        stuff = scene.trade.materials[row.material]
        is_rod = not row.id.startswith(("track-", "tension-"))
        if other is None or not is_rod or stuff.looks != material.looks:
            continue
        if stuff.elastic * other.inertia_mm4 > material.elastic * now.inertia_mm4:
            better.append((row.outer_mm, row.id, row.name))
    for _, key, name in sorted(better):
        label = msg("Take a stiffer rod: {section}", section=Message(name))
        yield Change(label, _section(ref, key))


def _section(ref: Ref, key: str) -> Callable[[Room], Room]:
    return lambda room: replace_rod(room, ref[:4], section=key, diameter=None, wall=None, material=None)
