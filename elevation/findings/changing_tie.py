"""Candidate changes to tie-backs: their height, their hooks, another kind, none."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from elevation.findings.changing import length, mark_down, mark_up
from elevation.findings.looking import panel_at
from elevation.findings.model import Change, Scene
from elevation.room.edits import edit_at
from elevation.room.find import layer_of
from elevation.room.model import Layer, Ref, Room, TieBack
from elevation.words import Message, Mm, msg


def _changed(label: Message, ref: Ref, tie: TieBack | None) -> Change:
    def put(layer: Layer) -> Layer:
        return replace(layer, tie=tie)

    def edit(room: Room) -> Room:
        return edit_at(room, ref[:4], put)

    return Change(label, edit)


def untied(ref: Ref) -> Iterator[Change]:
    """Take the tie-backs of a layer away."""
    yield _changed(msg("Take the tie-backs away"), ref, None)


def fixed_arm(scene: Scene, ref: Ref) -> Iterator[Change]:
    """Hold the cloth back by fixed arms instead of loops."""
    tie = layer_of(scene.room, ref).tie
    if tie is not None and tie.kind == "loop":  # pragma: no branch - asked for only where loops are
        yield _changed(msg("Hold the panels back by fixed arms instead of loops"), ref, replace(tie, kind="arm"))


def tie_height(scene: Scene, ref: Ref, wanted_mm: float, *, is_up: bool) -> Iterator[Change]:
    """Tie the panels at ``wanted_mm`` over the datum, or a mark beyond; not above the heading nor below the hem."""
    tie, panel = layer_of(scene.room, ref).tie, panel_at(scene, ref)
    if tie is None or panel.tie is None or not panel.tie.hem_mm < wanted_mm < panel.top_mm:
        return
    floor = panel.tie.floor_mm
    grad = scene.room.graduation_mm
    at = length(scene, mark_up(wanted_mm - floor, grad) if is_up else mark_down(wanted_mm - floor, grad))
    if at.mm > 0:
        label = msg("Tie the panels back {at} above the floor", at=Mm(at.mm))
        yield _changed(label, ref, replace(tie, hold="above-floor", at=at))


def tie_out(scene: Scene, ref: Ref, wanted_mm: float, *, is_farther: bool) -> Iterator[Change]:
    """Set every hook ``wanted_mm`` beyond its panel's edge, or a mark beyond."""
    tie = layer_of(scene.room, ref).tie
    if tie is None or wanted_mm < 0:
        return
    grad = scene.room.graduation_mm
    at = length(scene, mark_up(wanted_mm, grad) if is_farther else mark_down(wanted_mm, grad))
    yield _changed(msg("Set the hooks {at} beyond the edges of the panels", at=Mm(at.mm)), ref, replace(tie, out=at))
