"""The form's rows of a mounting board behind the brackets."""

from __future__ import annotations

from functools import partial
from typing import Any

from elevation.findings.rules.off_framing import PAST_MM
from elevation.room.boards import usual_board, with_board
from elevation.room.model import Layer, Ref, Room
from elevation.session.session import Session
from elevation.window.fact_form import Fact
from elevation.words import msg


def board_facts(session: Session, ref: Ref, layer: Layer) -> tuple[Fact, ...]:
    """Whether there is a board, and its measures where there is one.

    Parameters
    ----------
    session : Session
        Says how high the brackets' plates are.
    ref : Ref
        The layer's.
    layer : Layer
    """
    there = Fact(ref, "board", msg("a board behind the brackets"), "flag", edit=partial(_put, session, ref))
    title = Fact(ref, "", msg("Mounting board"), "title")
    if layer.board is None:
        return (title, there)
    return (
        title,
        there,
        Fact(ref, "board.left", msg("beyond the left end bracket"), needed=True),
        Fact(ref, "board.right", msg("beyond the right end bracket"), needed=True),
        Fact(ref, "board.height", msg("height of its face"), needed=True),
        Fact(ref, "board.thickness", msg("thickness, which the rod stands farther out by"), needed=True),
    )


def _put(session: Session, ref: Ref, room: Room, wanted: Any) -> Room:
    if not wanted:
        return with_board(room, ref, None)
    treatment = next(one for one in session.set_out().treatments if one.ref == ref[:3])
    plates = [bracket.plate for layer in treatment.layers if layer.ref == ref for bracket in layer.brackets]
    high = max(plate[3] for plate in plates) - min(plate[1] for plate in plates)
    return with_board(room, ref, usual_board(room, high, PAST_MM, PAST_MM))
