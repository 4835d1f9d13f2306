"""fixing: what holds a bracket holds less than what hangs on it with a tug at a panel, or holds nothing there at all.

Broken; every mount; brackets, ends that carry the rod, and mounting boards whose wall and fixing are known. Figures of
anchors are from memory and the lowest of each: the packet in hand governs, and so does the wall. A plug under a ceiling
holds by friction alone and is never counted on.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from msgspec.structs import replace

from elevation.findings.changing import bracket_name
from elevation.findings.changing_strength import more_brackets
from elevation.findings.limits import drilling
from elevation.findings.looking import layer_at, treatment_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import end_name, noun_of, where
from elevation.findings.rules import off_framing
from elevation.findings.weights import weight
from elevation.room.edits import edit_at, replace_rod
from elevation.room.model import Layer, Ref, Room
from elevation.setting_out.carried import HoldOut
from elevation.setting_out.model import BracketOut, LayerOut, TreatmentOut
from elevation.units.tolerance import less_ratio
from elevation.words import Message, Ratio, msg

_USELESS = ("friction", "there", "short")


def holds_too_little(held: HoldOut | None) -> bool:
    """Whether a fixing holds less than what hangs, or finds nothing to hold in; not where that cannot be told."""
    if held is None:
        return False
    return held.why in _USELESS or (held.times is not None and less_ratio(held.times, 1.0))


def weakest(layer: LayerOut) -> BracketOut | None:
    """The bracket that is held worst of those that are held too little; None where all hold or nothing is known."""
    weak = [bracket for bracket in layer.brackets if holds_too_little(bracket.held)]
    return min(weak, key=lambda bracket: bracket.holds_times or 0.0, default=None)


def weak_ends(layer: LayerOut) -> tuple[int, ...]:
    """The ends (0 left, 1 right) that carry the rod and are held too little, the worst first."""
    held = (None, None) if layer.loads is None else layer.loads.held
    weak = [(one.times or 0.0, side) for side, one in enumerate(held) if one is not None and holds_too_little(one)]
    return tuple(side for _, side in sorted(weak))


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        bracket = weakest(layer)
        if bracket is not None and bracket.held is not None:
            name = bracket_name(scene, bracket.ref)
            text = _said(scene, treatment, name, bracket.held)
            at = (bracket.x_mm, bracket.height_mm)
            yield Finding("fixing", Weight.BROKEN, layer.ref, text, _authority(), at=at, caution=drilling())
        elif (weak := weak_ends(layer)) and layer.loads is not None and (end := layer.loads.held[weak[0]]) is not None:
            support = layer.support
            at = ((support.left_mm, support.right_mm)[weak[0]], support.height_mm)
            text = _said(scene, treatment, end_name(weak[0], layer), end)
            yield Finding("fixing", Weight.BROKEN, layer.ref, text, _authority(), at=at, caution=drilling())
        elif layer.board is not None and layer.board.held is not None and holds_too_little(layer.board.held):
            text = _said(scene, treatment, msg("the mounting board"), layer.board.held)
            at = (layer.board.left_mm, layer.board.top_mm)
            yield Finding("fixing", Weight.BROKEN, layer.ref, text, _authority(), at=at, caution=drilling())


def _authority() -> Message:
    return msg("published formulas for screws, handbooks for anchors: the packet in hand and the wall itself govern")


def _said(scene: Scene, treatment: TreatmentOut, name: Message, held: HoldOut) -> Message:
    fixing = Message(scene.trade.fixings[held.fixing].name)
    params = {"where": where(treatment), "bracket": name, "fixing": fixing}
    if held.why == "friction":
        return msg(
            "{where}: {bracket} hangs under the ceiling on a plug ({fixing}) that holds by friction alone; it takes a screw"
            " in a joist.",
            **params,
        )
    if held.why == "there":
        return msg("{where}: {bracket} stands where such a fixing finds nothing to hold in ({fixing}).", **params)
    if held.why == "short":
        return msg("{where}: too little thread of the screw of {bracket} is left in the wood ({fixing}).", **params)
    return msg(
        "{where}: {bracket} holds {times} times the {load} that hang on it when somebody tugs ({fixing}); it takes 1 at"
        " least.",
        times=Ratio(held.times or 0.0, 2),
        load=weight(scene, held.load_n),
        **params,
    )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    weak = {bracket.ref[-1] for bracket in layer.brackets if holds_too_little(bracket.held)}
    mount = treatment_at(scene, finding.subject).mount
    if weak and mount == "wall":
        # Onto wood, or a board across it, telling what that costs.
        yield from off_framing.RULE.changes(scene, finding)
    ends = () if weak else weak_ends(layer)
    if ends:
        name = end_name(ends[0], layer) if len(ends) == 1 else msg("both ends of the {support}", support=noun_of(layer))
        for row in scene.trade.fixings.values():
            if row.into == "wood" or row.pull_n > 0:
                label = msg("Fix {bracket} with {fixing}", bracket=name, fixing=Message(row.name))
                yield Change(label, _ends_fixed(layer.ref, ends, row.id))
    if weak:
        for row in scene.trade.fixings.values():
            # A figure that only the packet gives cannot be promised.
            if row.into == "wood" or (row.pull_n > 0 and not (mount == "ceiling" and row.friction)):
                label = msg("Fix it with {fixing}", fixing=Message(row.name))
                yield Change(label, _fixed(layer.ref, weak, row.id))
    yield from more_brackets(scene, layer.ref)


def _ends_fixed(ref: Ref, ends: tuple[int, ...], key: str) -> Callable[[Room], Room]:
    fields = {("left_fixing", "right_fixing")[side]: key for side in ends}
    return lambda room: replace_rod(room, ref, **fields)


def _fixed(ref: Ref, weak: set[str], key: str) -> Callable[[Room], Room]:
    def put(layer: Layer) -> Layer:
        brackets = tuple(
            replace(bracket, fixing=key, pull_kg=None, shear_kg=None) if bracket.id in weak else bracket
            for bracket in layer.brackets
        )
        return replace(layer, brackets=brackets)

    return lambda room: edit_at(room, ref, put)


RULE = Rule("fixing", msg("what holds the brackets"), _find, changes=_changes, mounts=EVERY_MOUNT)
