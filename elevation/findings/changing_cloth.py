"""Candidate changes to cloth: hems, flat widths, counts, lengths."""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import length, mark_down
from elevation.findings.looking import layer_at, panel_at
from elevation.findings.model import Change, Scene
from elevation.room.edits import replace_at
from elevation.room.find import layer_of, panel_of
from elevation.room.model import Hem, Ref, Room
from elevation.setting_out.ready_width import ready_width
from elevation.words import Message, Mm, msg, msg_plural, term


def panel_changed(label: Message, ref: Ref, **fields: object) -> Change:
    """One panel with ``fields`` set."""
    return Change(label, lambda room: replace_at(room, ref, **fields))


def layer_changed(label: Message, ref: Ref, **fields: object) -> Change:
    """One layer with ``fields`` set."""
    return Change(label, lambda room: replace_at(room, ref[:4], **fields))


def panels_changed(label: Message, ref: Ref, **fields: object) -> Change:
    """Every panel of a layer with ``fields`` set: the mirrored pair of a pair of panels."""

    def edit(room: Room) -> Room:
        for panel in layer_of(room, ref).panels:
            room = replace_at(room, (*ref[:4], panel.id), **fields)
        return room

    return Change(label, edit)


def narrower(scene: Scene, ref: Ref, less_mm: float) -> Iterator[Change]:
    """Less cloth, so that the open stack takes ``less_mm`` less: every stack figure but a measured one is in proportion."""
    panel, there = panel_at(scene, ref), panel_of(scene.room, ref)
    wide = panel.open[1] - panel.open[0]
    if there.stack is not None or wide <= less_mm:
        return
    flat = mark_down(there.flat_width.mm * (wide - less_mm) / max(wide, panel.stack_mm), scene.room.graduation_mm)
    yield from flat_width(scene, ref, flat)


def flat_width(scene: Scene, ref: Ref, flat_mm: float) -> Iterator[Change]:
    """Another flat width: of every panel of the layer alike, then of that panel alone."""
    if flat_mm <= 0:
        return
    at = length(scene, flat_mm)
    if len(layer_of(scene.room, ref).panels) > 1:
        yield panels_changed(msg("Make every panel {flat} wide laid flat", flat=Mm(at.mm)), ref, flat_width=at)
    if len(ref) > 4:
        yield panel_changed(msg("Make the panel {flat} wide laid flat", flat=Mm(at.mm)), ref, flat_width=at)
    elif len(layer_of(scene.room, ref).panels) == 1:
        yield panels_changed(msg("Make the panel {flat} wide laid flat", flat=Mm(at.mm)), ref, flat_width=at)


def counts(scene: Scene, ref: Ref, by: int) -> Iterator[Change]:
    """One piece more or less in every panel of a layer (they are a pair), from its first panel's count."""
    panels = layer_of(scene.room, ref).panels
    if not panels or any(panel.count + by < 1 or panel.count != panels[0].count for panel in panels):
        return
    count = panels[0].count + by
    label = msg_plural("Hang {count} piece in every panel", "Hang {count} pieces side by side in every panel", count=count)
    yield panels_changed(label, ref, count=count)


def ready_pieces(scene: Scene, ref: Ref) -> Iterator[Change]:
    """Ready-made pieces of the width that comes nearest to the fullness wished, in every panel of the layer."""
    fit, _ = ready_width(scene.room, layer_at(scene, ref), scene.trade)
    if fit is None:
        return
    label = msg_plural(
        "Hang {count} ready-made piece {wide} wide in every panel",
        "Hang {count} ready-made pieces {wide} wide in every panel",
        count=fit.count,
        wide=term(fit.row.name),
    )
    yield panels_changed(label, ref, count=fit.count, flat_width=length(scene, fit.row.width_mm))


def hem_above(scene: Scene, ref: Ref, y_mm: float) -> Iterator[Change]:
    """A finished length that ends the layer's cloth at or above ``y_mm``."""
    panel = panel_at(scene, ref)
    long = mark_down(panel.top_mm - y_mm, scene.room.graduation_mm)
    if long > 0:
        yield from finished_length(scene, ref, long)


def finished_length(scene: Scene, ref: Ref, long_mm: float) -> Iterator[Change]:
    """The layer's cloth made ``long_mm`` long: by its hem, or by taking up panels that were measured."""
    at = length(scene, long_mm)
    layer = layer_of(scene.room, ref)
    if any(panel.measured_length is not None for panel in layer.panels):
        if all(panel.measured_length is None or panel.measured_length.mm > at.mm for panel in layer.panels):
            yield panels_changed(msg("Take the panels up to {at} long", at=Mm(at.mm)), ref, measured_length=at)
    elif layer.hem.target == "panel" or any(panel.label_length is not None for panel in layer.panels):
        yield panels_changed(msg("Choose panels {at} long", at=Mm(at.mm)), ref, label_length=at)
    else:
        yield layer_changed(msg("Make the cloth {at} long", at=Mm(at.mm)), ref, hem=Hem("length", at))


def hem_to(scene: Scene, ref: Ref, target: str, at_mm: float) -> Iterator[Change]:
    """Another wish for the layer's hem at the floor: clear of it, breaking on it or lying on it, by ``at_mm``."""
    at = length(scene, at_mm)
    if target == "puddle":
        yield layer_changed(msg("Let the cloth puddle on the floor with {at}", at=Mm(at.mm)), ref, hem=Hem("puddle", at))
    elif target == "clear":
        yield layer_changed(msg("Let the hem hang {at} clear of the floor", at=Mm(at.mm)), ref, hem=Hem("clear", at))
    else:
        yield layer_changed(msg("Let the cloth break on the floor with {at}", at=Mm(at.mm)), ref, hem=Hem("break", at))
