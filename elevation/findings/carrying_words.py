"""What a bracket carries and what holds it, in words: for the readout beside its handle, and for forms."""

from __future__ import annotations

from elevation.findings.weights import weight_in
from elevation.setting_out.carried import HoldOut, LoadsOut
from elevation.setting_out.model import BracketOut
from elevation.trade.model import Trade
from elevation.words import Message, Ratio, msg


def carries(bracket: BracketOut, unit: str) -> Message:
    """The worst that hangs on a bracket, and what a tug makes of it."""
    if bracket.load_n is None:
        return msg("what it carries cannot be told: the weight of the cloth is not known")
    load = weight_in(unit, bracket.load_n)
    if bracket.held is None:
        return msg("carries {load} at most", load=load)
    return msg("carries {load} at most, {whole} when somebody tugs", load=load, whole=weight_in(unit, bracket.held.load_n))


def end_carries(loads: LoadsOut, side: int, unit: str, trade: Trade) -> tuple[Message, ...]:
    """What an end (0 left, 1 right) that carries the rod carries, and what holds it; empty where that is nothing."""
    load, held = loads.ends_n[side], loads.held[side]
    if load is None or held is None:
        return ()
    told = holds(held, trade, beside=True)
    carried = msg(
        "carries {load} at most, {whole} when somebody tugs",
        load=weight_in(unit, max(load, 0.0)),
        whole=weight_in(unit, held.load_n),
    )
    return (carried,) if told is None else (carried, told)


def holds(held: HoldOut | None, trade: Trade, *, beside: bool = False) -> Message | None:
    """How many times that its fixing holds, or why it cannot be told; None where nothing is to be said.

    ``beside``: it may be fixed to a wall beside this one.
    """
    if held is None:
        return None
    if held.times is not None:
        row = trade.fixings[held.fixing]
        return msg(
            "holds {times} times that, with a safety factor of {factor} ({fixing})",
            times=Ratio(held.times, 2 if held.times < 2 else 1),
            factor=f"{row.factor:g}",
            fixing=Message(row.name),
        )
    return {
        "wall": msg("what the wall it is fixed to is made of is not known, so no figure for what it holds")
        if beside
        else msg("what the wall is made of is not known, so no figure for what it holds"),
        "chosen": msg("what it is fixed with is not chosen, so no figure for what it holds"),
        "packet": msg("its packet's figures are not typed, so no figure for what it holds"),
        "short": msg("too little thread is left in the wood"),
        "there": msg("such a fixing finds nothing to hold in there"),
        "friction": msg("a plug under a ceiling holds by friction alone"),
    }[held.why]
