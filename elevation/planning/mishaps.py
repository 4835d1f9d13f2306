"""What goes wrong at the wall, whether to stop, and how to go on (common practice, no source)."""

from __future__ import annotations

from msgspec import Struct

from elevation.words import Message, msg


class Mishap(Struct, frozen=True):
    """What can go wrong at the wall, whether to stop, and how to go on."""

    what: Message
    verdict: Message
    then: Message


WITHOUT_HOLES = (
    Mishap(
        msg("The rod slips or sinks"),
        msg("Stop"),
        msg(
            "take the cloth down; clean and dry what the rod presses on and set it by its packet. If it slips again, it is"
            " too weak for this cloth."
        ),
    ),
    Mishap(msg("The rod is not level"), msg("Go on"), msg("hold it, loosen it, level it and set it again.")),
)
"""What goes wrong where nothing is drilled (common practice, no source)."""

MISHAPS = (
    Mishap(
        msg("A hole is off by less than the plate hides"),
        msg("Go on"),
        msg("fill it, drill the right one a screw's length away or turn the plate; the plate hides both."),
    ),
    Mishap(
        msg("A hole is off by more"),
        msg("Go on, in the program first"),
        msg("type where the bracket stands now; look what moves and what breaks, and whether the other end should follow."),
    ),
    Mishap(
        msg("An anchor spins or pulls out"),
        msg("Stop at this bracket"),
        msg("do not hang on it: a larger or another kind of anchor by its packet, or move to framing, or a board across."),
    ),
    Mishap(
        msg("The bit meets metal, or the dust is bright or dark of a sudden"),
        msg("Stop"),
        msg(
            "current off; it may be a cable, a pipe, a nail plate. Look before any other hole; if in doubt call the trade."
        ),
    ),
    Mishap(
        msg("The bit falls into a void"),
        msg("Stop at this hole"),
        msg("the wall is not what was thought: say so in the program, and choose the fixing anew."),
    ),
    Mishap(
        msg("The rod is not level"),
        msg("Go on"),
        msg("if it is less than the holes' play, loosen and set again; else move one bracket, and type its height."),
    ),
)
"""What goes wrong at walls (common practice, no source)."""
