"""How a pelmet or valance goes up, in words: where its angle irons are screwed, and what to beware of."""

from __future__ import annotations

from elevation.setting_out.model import PelmetOut, SetOut
from elevation.setting_out.profile import height_at
from elevation.words import Message, Mm, msg


def pelmet_lines(wall: SetOut, pelmet: PelmetOut) -> tuple[Message, tuple[Message, ...], tuple[Message, ...]]:
    """What to do, the figures under it, and the cautions.

    Parameters
    ----------
    wall : SetOut
    pelmet : PelmetOut
        On that wall.
    """
    text = (
        msg("Screw on the angle irons of the pelmet, then its shelf on top; hang the face last.")
        if pelmet.kind == "board"
        else msg("Screw on the angle irons of the valance, then its shelf on top; hang the cloth last.")
    )
    details = tuple(
        msg(
            "{along} from the wall's left end, its upper edge {height} over the floor there",
            along=Mm(x),
            height=Mm(pelmet.top_mm + pelmet.up_at(x) - height_at(wall.floor, x)),
        )
        for x in pelmet.irons_mm
    )
    more = msg("Where an iron does not meet framing, or the wall is not known, put a batten across sound fixings first.")
    cautions = (msg("Detect cables and pipes and switch the current off before each hole; two people hold the shelf."),)
    return text, (*details, more), cautions
