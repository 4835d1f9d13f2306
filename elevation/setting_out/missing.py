"""Facts not measured yet, and what cannot be known without them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from elevation.room.model import Ref, Wall
from elevation.setting_out.model import ChainOut, MissingFact, OpeningOut, PanelOut, TreatmentOut
from elevation.setting_out.mounting import INSIDE
from elevation.words import Message, Mm, msg


def missing_of(wall: Wall, openings: Sequence[OpeningOut], treatments: Sequence[TreatmentOut]) -> tuple[MissingFact, ...]:
    """What the wall, its openings and its panels still want, in tape order."""
    found: list[MissingFact] = []
    ref: Ref = (wall.id,)
    if wall.width is None:
        found.append(MissingFact(ref, "width", msg("The wall's width is not measured: its right end is drawn dashed.")))
    if not wall.ceiling:
        found.append(
            MissingFact(ref, "ceiling", msg("The ceiling is not measured: whether the rod clears it cannot be told."))
        )
    elif wall.crown is None:
        found.append(MissingFact(ref, "crown", msg("The crown is not measured: it is taken as none.")))
    is_drilled = any(layer.brackets for treatment in treatments for layer in treatment.layers)
    if wall.substrate == "not-known" and is_drilled:
        text = msg("What the wall is made of is not known: what its brackets can carry cannot be told.")
        found.append(MissingFact(ref, "substrate", text))
    for opening in openings:
        if not opening.placed:
            text = msg(
                "Where opening {number} stands is not measured: it is drawn in the middle of what is free.",
                number=opening.number,
            )
            found.append(MissingFact(opening.ref, "left", text))
        if not opening.known_casing:
            text = msg("The casing of opening {number} is not measured: it is taken as none.", number=opening.number)
            found.append(MissingFact(opening.ref, "casing", text))
    for treatment in treatments:
        found.extend(_inside(treatment))
        found.extend(_packets(treatment))
        found.extend(_fixings(treatment))
        for layer in treatment.layers:
            found.extend(
                MissingFact(panel.ref, "measured_length", _unmeasured(panel))
                for panel in layer.panels
                if panel.finished_length_mm is None
            )
            text = msg("The panel in hand is known by its label only: measure it before you mark its rod's place.")
            found.extend(
                MissingFact(panel.ref, "measured_length", text) for panel in layer.panels if panel.length_by == "label"
            )
    return tuple(found)


def unclosed(wall: Wall, chain: ChainOut) -> Iterator[MissingFact]:
    """The closing error of the chain along the wall, where links are to be measured again: no place on it is sure then."""
    error_mm = chain.closing_error_mm
    if error_mm is None or not chain.again:
        return
    longer = msg(
        "The parts along the wall are {error} longer than the wall: measure again before anything is marked.",
        error=Mm(error_mm),
    )
    shorter = msg(
        "The parts along the wall are {error} shorter than the wall: measure again before anything is marked.",
        error=Mm(-error_mm),
    )
    yield MissingFact((wall.id,), "width", longer if error_mm > 0 else shorter)


def _unmeasured(panel: PanelOut) -> Message:
    if panel.mass_kg is None:
        return msg(
            "The panel in hand is not measured: it is drawn clear of the floor; what it weighs and how far its rod sags"
            " cannot be told."
        )
    return msg("The panel in hand is not measured: it is drawn clear of the floor.")


def _inside(treatment: TreatmentOut) -> Iterator[MissingFact]:
    """What a rod inside an opening has to know of it."""
    if treatment.mount not in INSIDE:
        return
    for opening in treatment.openings:
        if opening.reveal_mm is None:
            text = msg(
                "The depth of the reveal of opening {number} is not measured: it is taken as none.", number=opening.number
            )
            yield MissingFact(opening.ref, "reveal", text)
        if opening.sash != "fixed" and opening.handle_stands_mm is None and opening.handle_out_mm <= 0:
            text = msg(
                "How far the handle of opening {number} stands out from the sash is not measured: "
                "whether the rod clears it cannot be told.",
                number=opening.number,
            )
            yield MissingFact(opening.ref, "sash.handle_stands", text)


def _fixings(treatment: TreatmentOut) -> Iterator[MissingFact]:
    """What holds the first such bracket of each layer, where nobody has chosen it or typed its packet's figures."""
    for layer in treatment.layers:
        why = {bracket.held.why: bracket.ref for bracket in reversed(layer.brackets) if bracket.held is not None}
        if "chosen" in why:
            text = msg("What the brackets are fixed with is not chosen: how much they hold cannot be told.")
            yield MissingFact(why["chosen"], "fixing", text)
        elif "packet" in why:
            text = msg("What the fixings hold is not typed from their packet: how much the brackets hold cannot be told.")
            yield MissingFact(why["packet"], "pull_kg", text)
        ends = (None, None) if layer.loads is None else layer.loads.held
        if ends[0] is not None and ends[0].why == "chosen":
            text = msg("What the left end of the rod is fixed with is not chosen: how much it holds cannot be told.")
            yield MissingFact(layer.ref, "rod.left_fixing", text)
        if ends[1] is not None and ends[1].why == "chosen":
            text = msg("What the right end of the rod is fixed with is not chosen: how much it holds cannot be told.")
            yield MissingFact(layer.ref, "rod.right_fixing", text)


def _packets(treatment: TreatmentOut) -> Iterator[MissingFact]:
    """What a tension rod's packet says, or a track's, and nobody has typed."""
    for layer in treatment.layers:
        support = layer.support
        if support.kind == "track" and support.overlap_mm > 0 and support.arm_mm is None:
            text = msg(
                "What the track's overlap arm gives is not typed from its packet: whether the leading edges can overlap"
                " cannot be told."
            )
            yield MissingFact(layer.ref, "rod.packet.arm", text)
        if support.kind != "tension-rod":
            continue
        if support.least_mm is None or support.most_mm is None:
            field = "rod.packet.least" if support.least_mm is None else "rod.packet.most"
            text = msg(
                "The openings that the tension rod fits are not typed from its packet: whether it fits cannot be told."
            )
            yield MissingFact(layer.ref, field, text)
        if support.holds_kg is None:
            text = msg(
                "What the tension rod holds is not typed from its packet: whether it holds the cloth cannot be told."
            )
            yield MissingFact(layer.ref, "rod.packet.holds_kg", text)
