"""Valances that are sewn: which window's they are, their cloth, and what is done to them."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from elevation.planning.dressed import Dressed
from elevation.planning.hang_step import HangStep
from elevation.planning.piece_names import PanelName
from elevation.planning.sewing.words import IRON, PINS
from elevation.room.find import layer_of
from elevation.room.model import Layer
from elevation.setting_out.model import PelmetOut, SetOut, TreatmentOut
from elevation.setting_out.valance import ValanceCloth, valance_cloth
from elevation.trade.model import Trade
from elevation.words import Mm, Ratio, msg


class HungValance(Struct, frozen=True):
    """A valance where it hangs: its wall and treatment, the front layer whose cloth it is of, its name and its cloth."""

    wall: SetOut
    laid: TreatmentOut
    pelmet: PelmetOut
    mine: Layer
    name: PanelName
    cloth: ValanceCloth


def valances_of(dressed: Dressed, trade: Trade) -> Iterator[HungValance]:
    """Every valance of a room, window by window."""
    numbered = enumerate(((wall, laid) for wall in dressed.walls for laid in wall.treatments), start=1)
    for window, (wall, laid) in numbered:
        if laid.pelmet is None or not laid.layers:
            continue
        mine = layer_of(dressed.room, laid.layers[0].ref)
        cloth = valance_cloth(dressed.room, mine, laid.pelmet, trade)
        if cloth is not None:
            name = PanelName(laid.ref, window, msg("{window}V", window=window), msg("valance"))
            yield HungValance(wall, laid, laid.pelmet, mine, name, cloth)


def valance_steps(one: HungValance, trade: Trade) -> tuple[HangStep, ...]:
    """What is done to a valance, from joining to hanging (common practice, no source)."""
    cloth = one.cloth
    steps = []
    if cloth.widths > 1:
        steps.append(
            HangStep(
                msg("Join the widths in the order of their numbers, 1 at the left end."),
                (
                    msg(
                        "Seam allowance {seam} on each piece; pin, so that any pattern meets; press the seams open.",
                        seam=Mm(trade.allowances["seam"].length_mm, about=True),
                    ),
                ),
                (PINS,),
            )
        )
    return (
        *steps,
        HangStep(
            msg("Turn both ends over twice, {half} each time, press and sew.", half=Mm(cloth.side_hem_mm / 2, about=True)),
            (),
            (IRON,),
        ),
        HangStep(
            msg(
                "Turn its lower edge up twice, {half} each time, and sew: a valance does not wait for the floor.",
                half=Mm(cloth.hem_mm / 2, about=True),
            )
        ),
        HangStep(
            msg("Turn its top {turn} down and sew the gathering tape over its cut edge.", turn=Mm(cloth.turned_mm)),
            (msg("It is now {depth} deep; measure it in three places.", depth=Mm(cloth.depth_mm)),),
        ),
        HangStep(
            msg(
                "Gather it to {finished} by the cords of the tape, {fullness} times the width, and knot them.",
                finished=Mm(cloth.finished_mm),
                fullness=Ratio(cloth.hemmed_mm / cloth.finished_mm, 2),
            ),
            (msg("{out} at each end goes round the corner to the wall.", out=Mm(one.pelmet.out_mm)),),
        ),
        HangStep(
            msg("Sew the soft side of the touch tape over the gathering tape; its hooked side goes on the shelf's edge."),
        ),
    )
