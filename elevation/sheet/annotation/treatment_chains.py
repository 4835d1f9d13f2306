"""A treatment's dimensions: heights, reach and rod over the wall, stack and clear opening under it, finished lengths."""

from __future__ import annotations

from itertools import pairwise

from elevation.room.model import Held, Ref, Rod, Treatment
from elevation.setting_out.model import LayerOut, SetOut, TreatmentOut
from elevation.setting_out.tilt import axis_at, is_as_held
from elevation.sheet.annotation.figures import figure, figures
from elevation.sheet.annotation.model import Chain, Segment
from elevation.sheet.annotation.wall_chains import LEAST_MM, Level, edge_mm, foot_mm, heights_chain, opening_levels
from elevation.sheet.paths import height_at
from elevation.words import Message, Style, msg, say


def floor_to_rod(set_out: SetOut, laid: TreatmentOut, treatment: Treatment | None, style: Style) -> tuple[Chain, ...]:
    """Rods that are held above the floor: the whole height in one dimension, since that is what is held."""
    chains = []
    for index, layer in enumerate(laid.layers):
        rod = _rod(treatment, index)
        height = layer.support.height_mm
        is_held = rod is not None and _is(rod.height, "above-floor") and not layer.support.tilt
        if is_held and height > LEAST_MM:
            foot, top = edge_mm(set_out, 0.0, "left"), edge_mm(set_out, height, "left")
            segment = Segment(layer.ref, "rod.height", 0.0, height, foot, top, (figure(height, style),), held=True)
            chains.append(Chain(laid.ref, (segment,)))
    return tuple(chains)


def _rod(treatment: Treatment | None, index: int) -> Rod | None:
    if treatment is None or index >= len(treatment.layers):
        return None
    return treatment.layers[index].rod


def _is(held: Held | None, *holds: str) -> bool:
    return held is not None and held.hold in holds


def heights(set_out: SetOut, laid: TreatmentOut, treatment: Treatment | None, style: Style) -> Chain | None:
    """Floor, sill, head, rods, ceiling: the left-hand chain."""
    levels: list[Level] = []
    below_ceiling = False
    if laid.openings:  # pragma: no branch - a treatment that covers nothing is not set out
        opening = max(laid.openings, key=lambda opening: opening.top_mm)
        levels.extend(opening_levels(opening))
        rod = _rod(treatment, 0)
        if _is(rod.height if rod else None, "above-casing") and opening.casing_top_mm > opening.top_mm + LEAST_MM:
            levels.append((opening.casing_top_mm, opening.ref, "casing", False))
    for index, layer in enumerate(laid.layers):
        rod = _rod(treatment, index)
        # Where a rod was read to hang is not what is held, nor is the left end of one out of level.
        held = rod.height if rod and is_as_held(layer.support) else None
        height = axis_at(layer.support, layer.support.left_mm)
        levels.append((height, layer.ref, "rod.height", _is(held, *_FROM_OPENING)))
        if _is(held, "below-head"):
            levels = [_held_below(level, laid, layer) for level in levels]
        below_ceiling = below_ceiling or _is(held, "below-ceiling", "bracket-drop")
    if not levels:  # pragma: no cover - a treatment that covers nothing is not set out
        return None
    chain = heights_chain(set_out, laid.ref, levels, style)
    if chain is None or not below_ceiling or chain.segments[-1].field != "ceiling.0.height":
        return chain
    last = chain.segments[-1]
    top = Segment(
        laid.layers[0].ref, "rod.height", last.low, last.high, last.low_from, last.high_from, last.texts, held=True
    )
    return Chain(chain.owner, (*chain.segments[:-1], top))


def _held_below(level: Level, laid: TreatmentOut, layer: LayerOut) -> Level:
    """What is held is the segment from the rod up to the head."""
    head = max(opening.top_mm for opening in laid.openings)
    return (head, layer.ref, "rod.height", True) if level[0] == head and level[0] > layer.support.height_mm else level


def reach(set_out: SetOut, laid: TreatmentOut, treatment: Treatment | None, style: Style) -> Chain | None:
    """Reach, openings, reach along the front rod."""
    if not laid.layers or not laid.openings:  # pragma: no cover - a treatment that covers nothing is not set out
        return None
    layer = laid.layers[0]
    rod = _rod(treatment, 0)
    first, last = laid.openings[0], laid.openings[-1]
    left = first.left_mm - (first.casing_mm if _is(rod.left if rod else None, "beyond-casing") else 0.0)
    right = last.right_mm + (last.casing_mm if _is(rod.right if rod else None, "beyond-casing") else 0.0)
    support = layer.support
    ends = [(support.left_mm, "rod.left"), (left, _OPENING), (right, _OPENING), (support.right_mm, "rod.right")]
    if rod is not None and _is(rod.left, "from-corner", "around-corner"):
        ends.append((0.0, _CORNER))
    if rod is not None and _is(rod.right, "from-corner", "around-corner"):
        ends.append((set_out.width_mm, _CORNER))
    ends.sort()
    pieces = [(a, b) for a, b in pairwise(ends) if b[0] - a[0] > LEAST_MM]
    if not pieces:
        return None
    texts = figures([b[0] - a[0] for a, b in pieces], style)
    segments = []
    for (a, b), text in zip(pieces, texts, strict=True):
        field = a[1] if a[1] not in (_OPENING, _CORNER) else b[1]
        if field in ("rod.left", "rod.right"):
            held = rod is not None and _is_held_here(rod.left if field == "rod.left" else rod.right, a[1], b[1])
            segments.append(_top(set_out, layer.ref, field, a[0], b[0], (text,), held))
        else:
            ref: Ref = first.ref if len(laid.openings) == 1 else laid.ref
            segments.append(_top(set_out, ref, "width", a[0], b[0], (text,), False, 1))
    return Chain(laid.ref, tuple(segments))


_FROM_OPENING = ("above-head", "above-casing", "above-sill", "share-of-opening")
_OPENING = "opening"
_CORNER = "corner"


def _is_held_here(held: Held, *ends: str) -> bool:
    if _CORNER in ends:
        return _is(held, "from-corner")
    return _OPENING in ends and _is(held, "beyond-opening", "beyond-casing", "inside-opening")


def _top(
    set_out: SetOut, ref: Ref, field: str, low: float, high: float, texts: tuple[str, ...], held: bool, priority: int = 0
) -> Segment:
    ceiling = set_out.ceiling
    return Segment(
        ref, field, low, high, height_at(ceiling, low), height_at(ceiling, high), texts, held=held, priority=priority
    )


def _long(kind: str, length: str) -> Message:
    """How long a rod, a track or a tension rod is."""
    if kind == "track":
        return msg("track {length}", length=length)
    if kind == "tension-rod":
        return msg("tension rod {length}", length=length)
    return msg("rod {length}", length=length)


def rod_length(set_out: SetOut, layer: LayerOut, treatment: Treatment | None, index: int, style: Style) -> Chain:
    """The rod from end to end, with the length to cut where that is another."""
    support = layer.support
    bare = figure(support.length_mm, style)
    full = _long(support.kind, bare)
    # What is bent round a corner is one piece with the next leg: none of them is cut by itself.
    if support.bend_mm is None and abs(support.cut_length_mm - support.length_mm) > LEAST_MM:
        cut = figure(support.cut_length_mm, style)
        if support.kind == "track":
            full = msg("track {length}, cut {cut}", length=bare, cut=cut)
        else:
            full = msg("rod {length}, cut {cut}", length=bare, cut=cut)
    rod = _rod(treatment, index)
    held = rod is not None and (_is(rod.left, "rod-length") or _is(rod.right, "rod-length"))
    segment = _top(set_out, layer.ref, "rod.length", support.left_mm, support.right_mm, (say(full, style), bare), held)
    return Chain(layer.ref[:3], (segment,))


def stacks(set_out: SetOut, laid: TreatmentOut, style: Style) -> Chain | None:
    """Open panels and what they leave free, under the wall."""
    layer = next((layer for layer in laid.layers if layer.panels), None)
    if layer is None:
        return None
    foot = foot_mm(set_out)
    spans = sorted((panel.open[0], panel.open[1], panel.ref) for panel in layer.panels)
    segments: list[Segment] = []
    edge: float | None = None
    for left, right, ref in spans:
        if edge is not None and left > edge + LEAST_MM:
            bare = figure(left - edge, style)
            texts = (say(msg("clear {length}", length=bare), style), bare)
            segments.append(Segment(laid.ref, "clear", edge, left, foot, foot, texts))
        start = left if edge is None else max(left, edge)
        if right - start > LEAST_MM:
            bare = figure(right - left, style)
            # Where panels overlap the line cannot show this one's own width: it is left to the margin.
            if start <= left + LEAST_MM:
                texts = (say(msg("stack {length}", length=bare), style), bare)
                segments.append(Segment(ref, "stack", left, right, foot, foot, texts, priority=1))
            edge = max(right, edge) if edge is not None else right
    return Chain(laid.ref, tuple(segments)) if segments else None


def finished(set_out: SetOut, laid: TreatmentOut, style: Style) -> tuple[Chain, ...]:
    """Finished lengths of the panels, each length once, at the right."""
    chains: list[Chain] = []
    seen: set[tuple[int, int]] = set()
    for layer in laid.layers:
        for panel in layer.panels:
            if panel.finished_length_mm is None:
                continue
            low = panel.top_mm - panel.finished_length_mm
            place = (round(panel.top_mm), round(low))
            if place in seen:
                continue
            seen.add(place)
            bare = figure(panel.finished_length_mm, style)
            texts = (say(msg("finished length {length}", length=bare), style), bare)
            foot, top = edge_mm(set_out, low, "right"), edge_mm(set_out, panel.top_mm, "right")
            chains.append(Chain(laid.ref, (Segment(panel.ref, "length", low, panel.top_mm, foot, top, texts),)))
    return tuple(chains)
