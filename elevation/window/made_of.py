"""What the wall is made of: the choice, the short test where it is not known, and what holds there."""

from __future__ import annotations

from elevation.room.model import Ref, Wall
from elevation.trade.model import SubstrateRow, Trade
from elevation.window.fact_form import Fact
from elevation.window.texts import tr
from elevation.words import Message, msg, term


def drilling_caution() -> Message:
    """What to mind before any hole."""
    return msg(
        "Before you drill: switch the current off and find cables, pipes and metal with a detector. Textured coatings may"
        " hold asbestos, paint from before 1978 may hold lead: have them tested first. Stop if metal shows or the dust"
        " changes colour."
    )


def substrate_facts(ref: Ref, wall: Wall, trade: Trade) -> tuple[Fact, ...]:
    """The rows of the wall's kind.

    Parameters
    ----------
    ref : Ref
        The wall's.
    wall : Wall
    trade : Trade
    """
    options = tuple((row.id, tr(term(row.name))) for row in trade.substrates.values())
    row = trade.substrates.get(wall.substrate)
    notes = () if row is None else tuple(Fact(ref, "", note, "note") for note in _notes(row))
    return (Fact(ref, "substrate", msg("made of"), "choice", options), *notes)


def _notes(row: SubstrateRow) -> tuple[Message, ...]:
    if row.id == "not-known":
        return (
            msg("Not known: what brackets can carry is not said until it is. A short test, then choose above."),
            msg("1. {test}", test=term(row.sounds)),
            msg("2. {test}", test=term(row.shows)),
            msg("3. {test}", test=term(row.pin)),
        )
    return (
        msg("By a knock: {sounds}. Behind an outlet's cover, current off: {shows}. A pin: {pin}.",
            sounds=term(row.sounds), shows=term(row.shows), pin=term(row.pin)),
        msg("What usually holds: {fix}.", fix=term(row.fix)),
    )  # fmt: skip
