"""Candidate changes of what a layer hangs on."""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import length
from elevation.findings.looking import layer_at
from elevation.findings.model import Change, Scene
from elevation.room.edits import replace_rod
from elevation.room.find import layer_of
from elevation.room.model import Held, Ref
from elevation.room.supports import Support, hung_on, spread_fixings
from elevation.words import Message, msg


def _label(kind: Support) -> Message:
    if kind == "track":
        return msg("Hang it on a track")
    if kind == "tension-rod":
        return msg("Hang it on a tension rod")
    return msg("Hang it on a rod")


def hang_on(scene: Scene, ref: Ref, kind: Support) -> Iterator[Change]:
    """The layer at ``ref`` hung on something else."""
    if layer_of(scene.room, ref).rod.kind != kind:
        long_mm = layer_at(scene, ref).support.length_mm
        yield Change(_label(kind), lambda room: hung_on(room, ref, kind, long_mm, scene.trade))


def fixings_spread(scene: Scene, ref: Ref) -> Iterator[Change]:
    """The fixings of a track spread evenly, as close as they have to stand."""
    long_mm = layer_at(scene, ref).support.length_mm
    label = msg("Spread the fixings of the track evenly")
    yield Change(label, lambda room: spread_fixings(room, ref, long_mm, scene.trade))


def press_between(scene: Scene, ref: Ref) -> Iterator[Change]:
    """A tension rod out to both jambs."""
    jamb = Held("inside-opening", length(scene, 0.0))
    label = msg("Let the tension rod reach from jamb to jamb")
    yield Change(label, lambda room: replace_rod(room, ref[:4], left=jamb, right=jamb))
