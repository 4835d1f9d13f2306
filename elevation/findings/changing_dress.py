"""Candidate changes to pelmets and blinds."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from elevation.findings.changing import length, mark_down, mark_up
from elevation.findings.model import Change, Scene
from elevation.room.edits import replace_at
from elevation.room.find import treatment_of
from elevation.room.model import Blind, Pelmet, Ref
from elevation.words import Message, Mm, msg


def _pelmet(label: Message, ref: Ref, pelmet: Pelmet | None) -> Change:
    return Change(label, lambda room: replace_at(room, ref[:3], pelmet=pelmet))


def _blind(label: Message, ref: Ref, blind: Blind | None) -> Change:
    return Change(label, lambda room: replace_at(room, ref[:3], blind=blind))


def no_pelmet(scene: Scene, ref: Ref) -> Iterator[Change]:
    """Take the pelmet away."""
    pelmet = treatment_of(scene.room, ref[:3]).pelmet
    if pelmet is not None:  # pragma: no branch - asked for only where there is one
        yield _pelmet(msg("Take the pelmet away") if pelmet.kind == "board" else msg("Take the valance away"), ref, None)


def pelmet_depth(scene: Scene, ref: Ref, wanted_mm: float, *, is_deeper: bool) -> Iterator[Change]:
    """Make the pelmet ``wanted_mm`` deep, or a mark beyond."""
    pelmet = treatment_of(scene.room, ref[:3]).pelmet
    grad = scene.room.graduation_mm
    at = length(scene, mark_up(wanted_mm, grad) if is_deeper else mark_down(wanted_mm, grad))
    if pelmet is not None and at.mm > 0:
        yield _pelmet(msg("Make the pelmet {depth} deep", depth=Mm(at.mm)), ref, replace(pelmet, depth=at))


def pelmet_top(scene: Scene, ref: Ref, wanted_mm: float, *, is_higher: bool) -> Iterator[Change]:
    """Set the pelmet's top ``wanted_mm`` over the rod's centre line, or a mark beyond."""
    pelmet = treatment_of(scene.room, ref[:3]).pelmet
    grad = scene.room.graduation_mm
    at = length(scene, mark_up(wanted_mm, grad) if is_higher else mark_down(wanted_mm, grad))
    if pelmet is not None and at.mm >= 0:
        yield _pelmet(msg("Set the pelmet's top {above} over the rod", above=Mm(at.mm)), ref, replace(pelmet, above=at))


def pelmet_out(scene: Scene, ref: Ref, least_mm: float) -> Iterator[Change]:
    """Stand the pelmet ``least_mm`` out from the wall, or a mark farther."""
    pelmet = treatment_of(scene.room, ref[:3]).pelmet
    if pelmet is not None:  # pragma: no branch - asked for only where there is one
        at = length(scene, mark_up(least_mm, scene.room.graduation_mm))
        yield _pelmet(msg("Stand the pelmet {out} out from the wall", out=Mm(at.mm)), ref, replace(pelmet, projection=at))


def pelmet_ends(scene: Scene, ref: Ref, out_mm: float, *, side: str | None = None) -> Iterator[Change]:
    """Move both ends of the pelmet outward by ``out_mm`` each (inward where negative), or that of one ``side``."""
    pelmet = treatment_of(scene.room, ref[:3]).pelmet
    if pelmet is None:  # pragma: no cover - asked for only where there is one
        return
    grad = scene.room.graduation_mm

    def moved(now_mm: float) -> float:
        return mark_up(now_mm + out_mm, grad) if out_mm > 0 else mark_down(now_mm + out_mm, grad)

    left, right = length(scene, moved(pelmet.left.mm)), length(scene, moved(pelmet.right.mm))
    if side == "left":
        label = msg("End the pelmet {at} beyond the rod on the left", at=Mm(left.mm))
        yield _pelmet(label, ref, replace(pelmet, left=left))
    elif side == "right":
        label = msg("End the pelmet {at} beyond the rod on the right", at=Mm(right.mm))
        yield _pelmet(label, ref, replace(pelmet, right=right))
    else:
        label = msg("End the pelmet {at} beyond the rod on both sides", at=Mm(max(left.mm, right.mm)))
        yield _pelmet(label, ref, replace(pelmet, left=left, right=right))


def no_blind(scene: Scene, ref: Ref) -> Iterator[Change]:
    """Take the blind away."""
    if treatment_of(scene.room, ref[:3]).blind is not None:  # pragma: no branch - asked for only where there is one
        yield _blind(msg("Take the blind away"), ref, None)


def cordless(scene: Scene, ref: Ref) -> Iterator[Change]:
    """Choose a blind without cords; or hold its loop taut."""
    blind = treatment_of(scene.room, ref[:3]).blind
    if blind is None:  # pragma: no cover - asked for only where there is one
        return
    yield _blind(msg("Choose a blind without cord or chain"), ref, replace(blind, cord="none"))
    if blind.cord == "loop":
        label = msg("Hold the loop taut by a holder that is screwed to the wall")
        yield _blind(label, ref, replace(blind, cord="held-loop"))


def blind_elsewhere(scene: Scene, ref: Ref) -> Iterator[Change]:
    """Hang the blind in the reveal instead of on the wall, or the other way round; then a shallower box there."""
    blind = treatment_of(scene.room, ref[:3]).blind
    if blind is None:  # pragma: no cover - asked for only where there is one
        return
    if blind.place == "wall":
        yield _blind(msg("Hang the blind in the reveal"), ref, replace(blind, place="reveal"))
    else:
        yield _blind(msg("Hang the blind on the wall above"), ref, replace(blind, place="wall"))
