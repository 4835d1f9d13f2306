"""The rows of forms about strength: what a rod is made of, what holds each bracket, how hard somebody tugs."""

from __future__ import annotations

from functools import partial
from typing import Any

from msgspec.structs import replace

from elevation.findings.carrying_words import carries, end_carries, holds
from elevation.room.edits import edit_at, replace_at, replace_rod
from elevation.room.find import bracket_of, layer_of
from elevation.room.model import Bracket, Ref, Rod, Room
from elevation.room.validate import check_room
from elevation.session.session import Session
from elevation.trade.model import Trade
from elevation.units.mass import read_kg, say_kg
from elevation.window.fact_form import Fact
from elevation.window.measurements import sentence
from elevation.window.texts import tr
from elevation.words import msg, term


def made_facts(ref: Ref, trade: Trade) -> tuple[Fact, ...]:
    """The rows of a rod's material and wall, where they are not its section's."""
    rows = tuple((row.id, tr(term(row.name))) for row in trade.materials.values())
    return (
        Fact(
            ref,
            "rod.material",
            msg("material, if different"),
            "choice",
            (("", tr(msg("the section's"))), *rows),
            edit=partial(_made_of, ref),
            read=lambda room: layer_of(room, ref).rod.material or "",
        ),
        Fact(ref, "rod.wall", msg("wall of the tube, if different (0: solid)")),
    )


def _made_of(ref: Ref, room: Room, value: Any) -> Room:
    return replace_rod(room, ref, material=value or None)


def fixing_facts(ref: Ref, trade: Trade) -> tuple[Fact, ...]:
    """The rows of what one bracket is fixed by, and its packet's figures."""
    rows = tuple((row.id, tr(term(row.name))) for row in trade.fixings.values())
    return (
        Fact(
            ref,
            "fixing",
            msg("fixed by"),
            "choice",
            (("", tr(msg("the usual screw where there is wood"))), *rows),
            edit=partial(_fixed_by, ref),
            read=lambda room: bracket_of(room, ref).fixing or "",
        ),
        _packet(ref, "pull_kg"),
        _packet(ref, "shear_kg"),
    )


def _packet(ref: Ref, key: str) -> Fact:
    name = msg("packet: pull of one (kg or lb)") if key == "pull_kg" else msg("packet: shear of one (kg or lb)")
    return Fact(ref, key, name, "text", edit=partial(_set_kg, ref, key), read=partial(_kg, ref, key))


def _fixed_by(ref: Ref, room: Room, value: Any) -> Room:
    # Another fixing has another packet.
    return replace_at(room, ref, fixing=value or None, pull_kg=None, shear_kg=None)


def _set_kg(ref: Ref, key: str, room: Room, value: Any) -> Room:
    kg = read_kg(str(value), room.unit) if str(value).strip() else None

    def put(bracket: Bracket) -> Bracket:
        return replace(bracket, **{key: kg})

    made = edit_at(room, ref, put)
    check_room(made, "")
    return made


def _kg(ref: Ref, key: str, room: Room) -> str:
    kg = getattr(bracket_of(room, ref), key)
    return "" if kg is None else say_kg(kg, room.unit)


def strength_of(session: Session, ref: Ref) -> tuple[str, ...]:
    """What the bracket at ``ref`` carries as it stands now, and what holds it; empty for what is no bracket."""
    bracket = next(
        (
            bracket
            for treatment in session.set_out().treatments
            if treatment.ref == ref[:3]
            for layer in treatment.layers
            for bracket in layer.brackets
            if bracket.ref == ref
        ),
        None,
    )
    if bracket is None:
        return ()
    told = holds(bracket.held, session.trade)
    lines = (carries(bracket, session.room.unit), *(() if told is None else (told,)))
    return tuple(tr(line) for line in lines)


def strength_fact(session: Session, ref: Ref) -> Fact:
    """The row that tells what a bracket carries and what holds it."""
    return Fact(
        ref,
        "strength",
        msg("strength"),
        "told",
        read=lambda _room: ". ".join(sentence(line) for line in strength_of(session, ref)),
    )


def end_facts(session: Session, ref: Ref, rod: Rod, trade: Trade) -> tuple[Fact, ...]:
    """The rows of what holds the ends that carry a rod: sockets, and tubes bent back to the wall."""
    rows = (
        ("", tr(msg("the usual screw where there is wood"))),
        *((row.id, tr(term(row.name))) for row in trade.fixings.values()),
    )
    names = (
        ("left_fixing", rod.left_ends, msg("left end fixed by"), msg("strength, left end")),
        ("right_fixing", rod.right_ends, msg("right end fixed by"), msg("strength, right end")),
    )
    facts: list[Fact] = []
    for side, (field, own, fixed, strength) in enumerate(names):
        if not trade.ends[own or rod.ends].carries:
            continue
        facts += [
            Fact(
                ref,
                f"rod.{field}",
                fixed,
                "choice",
                rows,
                edit=partial(_end_fixed, ref, field),
                read=partial(_end_fixing, ref, field),
            ),
            Fact(ref, f"strength.{field}", strength, "told", read=partial(_end_strength, session, ref, side)),
        ]
    return tuple(facts)


def _end_fixed(ref: Ref, field: str, room: Room, value: Any) -> Room:
    return replace_rod(room, ref, **{field: value or None})


def _end_fixing(ref: Ref, field: str, room: Room) -> str:
    return getattr(layer_of(room, ref).rod, field) or ""


def _end_strength(session: Session, ref: Ref, side: int, _room: Room) -> str:
    layer = next(
        (layer for treatment in session.set_out().treatments for layer in treatment.layers if layer.ref == ref), None
    )
    if layer is None or layer.loads is None:
        return ""
    lines = end_carries(layer.loads, side, session.room.unit, session.trade)
    return ". ".join(sentence(tr(line)) for line in lines)


def tug_fact() -> Fact:
    """The row of how hard somebody tugs, for all of a room."""
    return Fact((), "tug_kg", msg("a tug at a panel adds (kg or lb)"), "text", edit=_set_tug, read=_tug)


def _set_tug(room: Room, value: Any) -> Room:
    made = replace(room, tug_kg=read_kg(str(value), room.unit) if str(value).strip() else None)
    check_room(made, "")
    return made


def _tug(room: Room) -> str:
    return "" if room.tug_kg is None else say_kg(room.tug_kg, room.unit)
