"""Glass of the covered openings: how much of it the cloth covers, open, closed and as drawn."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.room.model import Layer
from elevation.setting_out.covers import Cover, clear_beside, column, tied_covers
from elevation.setting_out.heads import area_between
from elevation.setting_out.model import GlassOut, LayerOut, PanelOut, Span
from elevation.setting_out.opening import Placed
from elevation.setting_out.spans import common, union


def glass_of(
    openings: Sequence[Placed],
    layers: Sequence[LayerOut],
    asked: Sequence[Layer],
    boxes: Sequence[Cover] = (),
    dropped: Sequence[Cover] = (),
) -> GlassOut:
    """Sums over all covered openings and all layers; areas are exact integrals of the heads.

    Parameters
    ----------
    openings : sequence of Placed
    layers : sequence of LayerOut
    asked : sequence of Layer
        The room's own layers, in the same order: they say which panels park at the rod's ends.
    boxes, dropped : sequence of Cover
        What always covers glass (a pelmet, a blind's box), and what does so just now (a blind let down).
    """
    panels = [panel for layer in layers for panel in layer.panels]
    area = sum(opening.out.glass_area_mm2 for opening in openings)
    guests = [panel for layer in layers for panel in layer.guests]
    closed = union(panel.closed for panel in (*panels, *guests))
    # A panel that never draws hangs tied for good; one that draws is tied as it is drawn just now.
    tied = [panel for panel in panels if panel.tie is not None]
    for_good = [panel for panel in tied if panel.stationary]
    return GlassOut(
        area_mm2=area,
        clear_open=_clear(openings, [(panel, panel.open) for panel in (*panels, *guests)], for_good, boxes, area),
        clear_closed=_clear(openings, [(panel, panel.closed) for panel in (*panels, *guests)], for_good, boxes, area),
        clear_drawn=_clear(
            openings, [(panel, panel.drawn) for panel in (*panels, *guests)], tied, (*boxes, *dropped), area
        ),
        stack_over_left_mm=_over_glass(openings, (*panels, *guests), "left"),
        stack_over_right_mm=_over_glass(openings, (*panels, *guests), "right"),
        support_to_clear_mm=max(_to_clear(openings, *both) for both in zip(layers, asked, strict=True)),
        light_blocking_mm=sum(right - left for left, right in closed),
    )


def clear_share(openings: Sequence[Placed], covered: Sequence[Span], area_mm2: float) -> float:
    """The share of the glass that stretches of cloth leave clear; 1 where there is no glass.

    Parameters
    ----------
    openings : sequence of Placed
    covered : sequence of Span
        Standing apart, as ``union`` gives them.
    area_mm2 : float
        All the glass.
    """
    if area_mm2 <= 0:
        return 1.0
    hidden = 0.0
    for opening in openings:
        for left, right in covered:
            hidden += area_between(opening.glass, left, right)
    return min(max(1.0 - hidden / area_mm2, 0.0), 1.0)


def _clear(
    openings: Sequence[Placed],
    hanging: Sequence[tuple[PanelOut, Span]],
    tied: Sequence[PanelOut],
    more: Sequence[Cover],
    area_mm2: float,
) -> float:
    """The share of the glass left clear by ``more`` and panels: those ``tied`` by their outline, others by their width."""
    loose = union(span for panel, span in hanging if not any(panel is one for one in tied))
    if not tied and not more:
        return clear_share(openings, loose, area_mm2)
    covers = [*map(column, loose), *more]
    for panel in tied:
        if panel.tie is not None:  # pragma: no branch - only tied panels come in
            covers.extend(tied_covers(panel, panel.tie))
    return clear_beside([opening.glass for opening in openings], covers, area_mm2)


def _over_glass(openings: Sequence[Placed], panels: Sequence[PanelOut], side: str) -> float:
    spans = union(panel.open for panel in panels if panel.side == side)
    return sum(common(spans, o.glass.left_mm, o.glass.right_mm) for o in openings)


def _to_clear(openings: Sequence[Placed], layer: LayerOut, asked: Layer) -> float:
    """Length of a rod whose end stacks stand beside all the glass, parked as they are now.

    Only panels that park at the rod's ends move with it; those in the middle stand where they stand.
    """
    support = layer.support
    near = min(opening.glass.left_mm for opening in openings)
    far = max(opening.glass.right_mm for opening in openings)
    both = [(panel, own.parks) for panel, own in zip(layer.panels, asked.panels, strict=True)]
    at_left = [panel for panel, parks in both if parks == "left"]
    at_right = [panel for panel, parks in both if parks == "right"]
    if at_left:
        near -= sum(_wide(panel) for panel in at_left) + min(p.parks_at_mm for p in at_left) - support.left_mm
    if at_right:
        far += sum(_wide(panel) for panel in at_right) + support.right_mm - max(p.parks_at_mm for p in at_right)
    return far - near


def _wide(panel: PanelOut) -> float:
    # A panel that never draws keeps the width it is spread to.
    return panel.open[1] - panel.open[0] if panel.stationary else panel.stack_mm
