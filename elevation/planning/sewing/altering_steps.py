"""The steps with ready-made panels: measure, fold, cut, hem, or what to do with one that is too short.

Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.hang_step import HangStep
from elevation.planning.ready_words import Ready
from elevation.planning.sewing.model import Alteration
from elevation.planning.sewing.steps import HANG_FIRST, said_once
from elevation.planning.sewing.whole import SewnLayer
from elevation.planning.sewing.words import IRON, SHEARS
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, Percent, msg, term


def altering_steps(layer: SewnLayer, ready: Ready | None) -> tuple[HangStep, ...]:
    """What is done with the ready-made panels of one layer."""
    steps = [_first(layer.alterations)]
    kinds = {one.what for one in layer.alterations}
    if kinds & {"shorten", "turn-up"}:
        steps.append(
            HangStep(
                msg("Measure the hung rod to the floor at both edges of each panel once more; only then mark the fold."),
                (),
                (msg("A length on paper is not a length on the wall: what was read after hanging goes first."),),
            )
        )
    for group in _alike(layer.alterations):
        who = msg("{mark}, {name}", mark=group[0].name.mark, name=group[0].name.name)
        for other in group[1:]:
            who = msg("{first}; {mark}, {name}", first=who, mark=other.name.mark, name=other.name.name)
        steps.append(_one(group[0], who, ready, layer))
    if kinds & {"shorten", "turn-up"}:
        steps.append(
            HangStep(
                msg("Baste the hem, hang the panel for a day or two, look along the floor, then sew it."),
                (msg("Keep what you cut off: tie-backs, patches."),),
                (HANG_FIRST,),
            )
        )
    return said_once(steps)


def _alike(panels: Sequence[Alteration]) -> list[list[Alteration]]:
    """Panels that need the same; each that has still to be measured stands alone, for it has its own blanks."""
    found: dict[object, list[Alteration]] = {}
    for one in panels:
        same = (
            one.what,
            one.has_mm,
            one.width_mm,
            one.left,
            one.right,
            one.cut_mm,
            one.by_mm,
            one.gap_low_mm,
            one.gap_high_mm,
        )
        found.setdefault((one.ref,) if one.what == "measure" else same, []).append(one)
    return list(found.values())


def _first(panels: Sequence[Alteration]) -> HangStep:
    wash = max(one.wash for one in panels)
    details = (
        [msg("The first wash may take {part} of the length: wash before you measure.", part=Percent(wash))] if wash else []
    )
    return HangStep(
        msg(
            "Wash the panels as their label says, dry and press them, if they will ever be washed; then measure them flat."
        ),
        tuple(details),
        (IRON,),
    )


def _one(one: Alteration, who: Message, ready: Ready | None, layer: SewnLayer) -> HangStep:
    if one.what == "measure":
        details = [
            msg("left edge ____________   middle ____________   right edge ____________"),
            msg("Type what you read as its measured length and print this sheet again: fold and cut are marked then."),
        ]
        if one.by == "label" and one.has_mm is not None and one.gap_low_mm is not None:
            details.insert(
                1,
                msg(
                    "Its label says {label}; panels are off by up to {off}: its hem would hang from {low} to {high} over "
                    "the floor.",
                    label=Mm(one.has_mm),
                    off=Mm(one.off_mm, about=True),
                    low=Mm(one.gap_low_mm - one.off_mm),
                    high=Mm(one.gap_low_mm + one.off_mm),
                ),
            )
        return HangStep(
            msg("{panel}: measure it from the top edge to the hem before anything is marked or cut.", panel=who),
            tuple(details),
            (msg("A label's size is not a length: nothing here is marked from it."),),
        )
    if one.what in ("as-it-is", "fine"):
        return HangStep(msg("{panel}: nothing is altered, it hangs as long as it is.", panel=who), _gap(one))
    if one.what == "lift":
        return HangStep(
            msg("{panel}: it is {by} too long, too little to fold.", panel=who, by=Mm(one.by_mm)),
            (
                msg("Hang the rod higher by that, or the cloth: shorter clips, or hooks set lower on its back."),
                msg("Or unpick its hem and sew it anew that much deeper."),
            ),
        )
    if one.what == "short":
        return _short(one, who, ready, layer)
    return _shorten(one, who)


def _gap(one: Alteration) -> tuple[Message, ...]:
    if one.gap_low_mm is None or one.gap_high_mm is None:  # pragma: no cover - asked for only of a length that was measured
        return ()
    if abs(one.gap_low_mm - one.gap_high_mm) <= TOUCH_MM:
        return (msg("its hem hangs {low} over the floor", low=Mm(one.gap_low_mm)),)
    return (msg("its hem hangs {low} to {high} over the floor", low=Mm(one.gap_low_mm), high=Mm(one.gap_high_mm)),)


def _shorten(one: Alteration, who: Message) -> HangStep:
    left, right = one.left, one.right
    if left is None or right is None:  # pragma: no cover - a panel to shorten has both edges
        return HangStep(msg("{panel}: nothing is altered, it hangs as long as it is.", panel=who))
    level = abs(left.finished_mm - right.finished_mm) <= TOUCH_MM
    fold = (
        msg("Fold line {length} under the top edge", length=Mm(left.finished_mm))
        if level
        else msg(
            "Fold line {left} under the top edge at the left, {right} at the right: it follows the floor",
            left=Mm(left.finished_mm),
            right=Mm(right.finished_mm),
        )
    )
    deep = (
        msg("hem {hem} deep at both edges", hem=Mm(left.hem_mm))
        if level
        else msg("hem {left} deep at the left edge, {right} at the right", left=Mm(left.hem_mm), right=Mm(right.hem_mm))
    )
    if one.cut_mm is None:
        return HangStep(msg("{panel}: turn it up; nothing is cut off, its own hem stays sewn.", panel=who), (fold, deep))
    return HangStep(
        msg("{panel}: mark the fold, then the cut; fold, cut, turn the cut edge in by half, press.", panel=who),
        (fold, msg("Cut line {length} under the top edge, level", length=Mm(one.cut_mm)), deep),
        (SHEARS, msg("Unpick or cut off its old hem first: three layers more do not lie flat.")),
    )


def _short(one: Alteration, who: Message, ready: Ready | None, layer: SewnLayer) -> HangStep:
    details = [
        msg("Let its hem down: it gains the hem's depth, measured here ____________, less a turn; face it with a strip."),
        msg(
            "Or sew a band of other cloth to it: {long} long and {deep} deep when finished; add a seam above, a hem below.",
            long=Mm(one.width_mm),
            deep=Mm(one.by_mm),
        ),
        msg("Or let it hang lower: longer clips or rings, by {by}.", by=Mm(one.by_mm)),
        msg("Or hang the rod lower, at {height} to its centre.", height=Mm(layer.hung.layer.support.height_mm - one.by_mm)),
    ]
    if ready is not None and ready.longer is not None:
        details.append(msg("Or change it for a longer one: {name}, then shortened.", name=term(ready.longer.row.name)))
    return HangStep(
        msg("{panel}: it is {by} too short for the hem that is wished.", panel=who, by=Mm(one.by_mm)),
        tuple(details),
        (msg("Nothing is cut until one of these is chosen and typed in."),),
    )
