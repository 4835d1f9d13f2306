"""What the wall is made of: the choice, the short test where it is not known, and what holds there."""

from __future__ import annotations

from functools import partial

from elevation.room.edits import replace_at
from elevation.room.find import wall_of
from elevation.room.model import Ref, Room, Wall
from elevation.room.validate import check_room
from elevation.trade.model import SubstrateRow, Trade
from elevation.units import Length
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
    studs = _studs(ref, wall) if row is not None and (row.build == "studs" or wall.studs) else ()
    return (Fact(ref, "substrate", msg("made of"), "choice", options), *notes, *studs)


def wiring_facts() -> tuple[Fact, ...]:
    """Where cables are usually laid in this country, and what that does not promise."""
    options = tuple((key, tr(text)) for key, text in WIRING.items())
    return (
        Fact((), "wiring", msg("cables are laid as in"), "choice", options),
        Fact((), "", msg("No place is ever free of cables for sure: detect first, everywhere."), "note"),
    )


WIRING = {"not-known": msg("not known"), "uk": msg("Britain"), "de": msg("Germany")}


def _studs(ref: Ref, wall: Wall) -> tuple[Fact, ...]:
    """One row for each stud that was found, one more for the next, and their spacing."""
    rows = [
        Fact(ref, f"studs.{index}", msg("stud {number}: wall's left end to its middle", number=index + 1),
             edit=partial(put_stud, ref, index))
        for index in range(len(wall.studs))
    ]  # fmt: skip
    index = len(wall.studs)
    next_one = msg("a stud found: wall's left end to its middle")
    rows.append(Fact(ref, f"studs.{index}", next_one, edit=partial(put_stud, ref, index)))
    return (*rows, Fact(ref, "stud_spacing", msg("stud to stud, if not the usual")))


def put_stud(ref: Ref, index: int, room: Room, at: Length | None) -> Room:
    """A room in which that stud of the wall at ``ref`` was found at ``at``; None: it was none after all.

    Raises
    ------
    BadInput
        Two studs in one place, or one past the wall's end.
    """
    studs = list(wall_of(room, ref[0]).studs)
    studs[index : index + 1] = [] if at is None else [at]
    made = replace_at(room, ref[:1], studs=tuple(sorted(studs, key=lambda stud: stud.mm)))
    check_room(made, "")
    return made


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
