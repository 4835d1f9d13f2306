"""The steps at the cutting table and at the sewing machine, each with its cautions.

Common practice, no source, unless a figure's own row of the tables names one.
"""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.hang_step import HangStep
from elevation.planning.sewing.model import BoltPlan, SewnPanel
from elevation.planning.sewing.whole import SewnLayer
from elevation.planning.sewing.words import IRON, PINS, SHEARS
from elevation.trade.model import HeadingRow, Trade
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, Percent, msg, term

HANG_FIRST = msg("A hem is sewn last: after the rod hangs, was measured, and the cloth has hung on it for a day or two.")


def cutting_steps(bolts: Sequence[BoltPlan]) -> tuple[HangStep, ...]:
    """What is done at the table before and while the cloth is cut."""
    steps = [
        HangStep(
            msg("Unroll all of it before the first cut: measure its length and its width, look for flaws, mark them."),
            (msg("If it is narrower or shorter than this sheet says, type what you measured and print the sheet again."),),
        ),
        _wash(bolts),
        HangStep(
            msg("Press it, then square one end: pull a thread, or a right angle from the edge; cut along it."),
            (msg("All running marks count from this end. The tape stays hooked there."),),
            (IRON, SHEARS),
        ),
    ]
    if any(bolt.repeat_mm > 0 for bolt in bolts):
        steps.append(
            HangStep(
                msg(
                    "Find the first whole motif and cut across where the pattern is to begin at the top of every panel: "
                    "that line, not the tape, is where the first piece starts."
                ),
                (
                    msg(
                        "Every piece starts at the same place of the pattern: it meets at each seam and across the panels."
                    ),
                    *(_half_drop(bolt) for bolt in bolts if bolt.half_drop),
                    msg("Where tape and pattern differ, the pattern governs."),
                ),
            )
        )
    steps.append(
        HangStep(
            msg("Mark every cut with chalk, read all of them once more against this sheet, then cut."),
            (
                msg("Pin its label to each piece at once, at its top: the small arrows show which way is up."),
                msg("All tops lie towards the squared end: nap and print run the same way on every panel."),
            ),
            (SHEARS,),
        )
    )
    return said_once(steps)


def said_once(steps: Sequence[HangStep]) -> tuple[HangStep, ...]:
    """Steps whose cautions are each said where they are first met."""
    met: list[Message] = []
    found = []
    for step in steps:
        fresh = tuple(caution for caution in step.cautions if caution not in met)
        met.extend(fresh)
        found.append(HangStep(step.text, step.details, fresh, step.places))
    return tuple(found)


def _half_drop(bolt: BoltPlan) -> Message:
    return msg(
        "{cloth}: a half drop. Neighbours start half a repeat, {half}, apart; the sheet has it in its marks.",
        cloth=bolt.name,
        half=Mm(bolt.repeat_mm / 2, about=True),
    )


def _wash(bolts: Sequence[BoltPlan]) -> HangStep:
    washed = [bolt for bolt in bolts if bolt.washed]
    details = [
        msg(
            "{cloth}: {bought} as bought; after the wash about {left} are left. The marks are for the washed cloth.",
            cloth=bolt.name,
            bought=Mm(bolt.bought_mm, about=True),
            left=Mm(bolt.length_mm, about=True),
        )
        for bolt in washed
    ]
    details += [
        msg("{cloth} may lose {part} of its length in the first wash.", cloth=bolt.name, part=Percent(bolt.shrinks))
        for bolt in bolts
        if bolt.shrinks > 0
    ]
    return HangStep(
        msg("Cloth that will ever be washed is washed, dried and pressed now, before it is cut: it shrinks once."),
        tuple(details),
        (msg("By its care label; what must not be washed is steamed lightly or left as it is."),),
    )


def making_steps(layer: SewnLayer, heading: HeadingRow, trade: Trade) -> tuple[HangStep, ...]:
    """What is done to the panels of one layer, from joining to hanging."""
    panels = layer.panels
    first = panels[0]
    side, seam = first.side_hem_mm, trade.allowances["seam"].length_mm
    steps = []
    if any(len(panel.pieces) > 1 for panel in panels):
        details = [
            msg(
                "Seam allowance {seam} on each piece; pin, so that any pattern meets; press the seams open.",
                seam=Mm(seam, about=True),
            )
        ]
        if any(piece.share == 0.5 for panel in panels for piece in panel.pieces):
            details.append(msg("The half width goes to the fixed edge, where it is seen least."))
        steps.append(
            HangStep(
                msg("Join the widths in the order of their numbers, 1 at the leading edge."),
                tuple(details),
                (PINS,),
            )
        )
    steps.append(
        HangStep(
            msg("Turn the side edges over twice, {half} each time, press and sew.", half=Mm(side / 2, about=True)),
            (),
            (IRON,),
        )
    )
    if first.lining or first.interlining:
        steps.append(_lining(first, trade))
    steps.append(_hem(panels))
    steps.extend(_heading(layer, heading, first, trade))
    steps.append(
        HangStep(
            msg("Hang the panels, let them hang, then look at the hem along the real floor and sew it."),
            (msg("Small weights in the hem's corners and at its seams let the cloth fall straight."),),
            (HANG_FIRST,),
        )
    )
    return said_once(steps)


def _lining(first: SewnPanel, trade: Trade) -> HangStep:
    more = trade.allowances
    details = []
    if first.lining:
        details.append(
            msg(
                "Lining: hem it {hem} deep, turned twice; it ends {up} above the face's hem and {side} in from each side.",
                hem=Mm(more["lining-hem"].length_mm / 2, about=True),
                up=Mm(more["lining-up"].length_mm, about=True),
                side=Mm(more["lining-narrower"].length_mm / 2, about=True),
            )
        )
    if first.interlining:
        details.append(msg("Interlining lies between, edge to edge inside the side hems, caught by hand in long stitches."))
    if not first.interlining:
        text = msg("Join the lining likewise and lay it on the face, wrong sides together.")
    elif not first.lining:
        text = msg("Join the interlining likewise and lay it on the wrong side of the face.")
    else:
        text = msg("Join lining and interlining likewise, lay them on the face, wrong sides together.")
    return HangStep(text, tuple(details))


def _hem(panels: Sequence[SewnPanel]) -> HangStep:
    details = []
    for panel in panels:
        left, right = panel.left, panel.right
        if abs(left.finished_mm - right.finished_mm) <= TOUCH_MM:
            details.append(
                msg(
                    "{panel}: fold at {finished} under its finished top; hem {hem}, its cut edge turned in by half",
                    panel=panel.name.name,
                    finished=Mm(left.finished_mm),
                    hem=Mm(left.hem_mm),
                )
            )
        else:
            details.append(
                msg(
                    "{panel}: fold at {left} at its left edge and {right} at its right, for the floor falls; hem {first} "
                    "and {second} deep",
                    panel=panel.name.name,
                    left=Mm(left.finished_mm),
                    right=Mm(right.finished_mm),
                    first=Mm(left.hem_mm),
                    second=Mm(right.hem_mm),
                )
            )
    shallow = [panel for panel in panels if min(panel.left.hem_mm, panel.right.hem_mm) < _SHALLOW_MM]
    cautions = [IRON]
    if shallow:
        cautions.insert(0, msg("The hem is shallow at one edge: type a deeper hem, and the cut becomes longer."))
    return HangStep(msg("Press the hem's folds and baste them; they are not sewn yet."), tuple(details), tuple(cautions))


_SHALLOW_MM = 25.4
"""A hem of less than an inch is hardly one (common practice, no source)."""


def _heading(layer: SewnLayer, heading: HeadingRow, first: SewnPanel, trade: Trade) -> list[HangStep]:
    turn = Mm(first.heading_mm)
    kind = first.marks.kind
    if kind == "pocket":
        wide = layer.hung.layer.support.diameter_mm + trade.allowances["pocket-ease"].length_mm
        return [
            HangStep(
                msg(
                    "Turn the top over, its edge in, on the line {turn} under the cut edge; sew along its lower edge, and "
                    "again {pocket} above that: the rod goes between the two seams.",
                    turn=turn,
                    pocket=Mm(wide, about=True),
                ),
                (
                    msg(
                        "The pocket is {pocket} deep for a rod of {rod}: try a piece of it before the second seam.",
                        pocket=Mm(wide, about=True),
                        rod=Mm(layer.hung.layer.support.diameter_mm, about=True),
                    ),
                ),
            )
        ]
    texts = {
        "pleats": msg("Turn the top {turn} down over its stiffener, press, and sew the ends shut.", turn=turn),
        "hooks": msg("Turn the top {turn} down and sew the tape over its cut edge.", turn=turn),
    }
    usual = msg("Turn the top {turn} down, its edge in, press and sew.", turn=turn)
    steps = [HangStep(texts.get(kind, usual), (), (IRON,))]
    marks = {
        "pleats": msg(
            "Mark the pleats from the leading edge by the table, fold each mark on its partner, sew it, hook it."
        ),
        "rings": msg("Mark the rings from the leading edge by the table: the first and the last sit at the edges."),
        "eyelets": msg(
            "Mark the eyelets' middles from the leading edge by the table; cut and press in one on a scrap first."
        ),
        "tabs": msg("Sew the tabs on with their middles on the marks of the table."),
        "back-tabs": msg("Sew the tabs on the back with their middles on the marks of the table."),
        "hooks": msg("Put the hooks in the tape at the marks of the table, then gather it to the finished width."),
    }
    steps.append(
        HangStep(
            marks[kind],
            (
                msg(
                    "{heading}: read every mark from the leading edge, never from the last mark.",
                    heading=term(heading.name),
                ),
            ),
        )
    )
    return steps
