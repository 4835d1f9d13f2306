"""``elevation check``: every finding of the rooms named, as text or JSON."""

from __future__ import annotations

import msgspec

from elevation.commands import choosing
from elevation.commands.arguments import Check
from elevation.commands.main import EXIT_BAD, EXIT_FINE, EXIT_FOUND, complain
from elevation.commands.speaking import encodable, shown, shown_json
from elevation.errors import ElevationError
from elevation.findings.all_rules import find
from elevation.findings.model import Scene, Weight
from elevation.output.report import Plain, cloth_report, ready_report, valance_report, wall_report, wall_text
from elevation.planning.ready_words import ready_for
from elevation.planning.remedies import remedies
from elevation.room.find import layer_of
from elevation.room.model import Room
from elevation.room.style import style_for
from elevation.setting_out.cloth import cloth_of_layer
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.setting_out.valance import valance_cloth
from elevation.setting_out.whole import set_out
from elevation.trade.model import Trade
from elevation.trade.own import load_with_own
from elevation.trade.tables import load_trade
from elevation.words import Style


def run_check(given: Check) -> int:
    """Report on the rooms; good rooms are reported even where others cannot be read. Returns the exit code."""
    trade = load_with_own(load_trade)
    errors: list[str] = []
    rooms: list[Plain] = []
    found_any = False
    for path in choosing.rooms_of(given.rooms):
        try:
            room, known = choosing.load(path, trade)
            walls: list[Plain] = []
            texts: list[str] = []
            for wall in choosing.walls(room, given.wall, path.name):
                for scheme in choosing.schemes(wall, given.scheme, given.all_schemes, path.name):
                    style = msgspec.structs.replace(style_for(room), language="en", decimal_mark=".", plain=True)
                    scheme_id = None if scheme is None else scheme.id
                    report, text, grave = _wall(room, wall.id, scheme_id, known, style)
                    walls.append(report)
                    texts.append(text)
                    found_any = found_any or grave
        except ElevationError as error:
            errors.append(encodable(str(error)))
            complain(error)
            continue
        name = room.name or encodable(path.name)
        rooms.append({"room": name, "file": encodable(str(path)), "walls": walls})
        if not given.json:
            print(shown(f"{name} ({path.name})"))
            print(shown("\n".join(texts)), end="")
    if given.json:
        whole = {"format": "elevation-check", "version": 1, "errors": errors, "rooms": rooms}
        print(shown_json(msgspec.json.format(msgspec.json.encode(whole), indent=2).decode()))
    if errors:
        return EXIT_BAD
    return EXIT_FOUND if found_any else EXIT_FINE


def _wall(room: Room, wall_id: str, scheme_id: str | None, trade: Trade, style: Style) -> tuple[Plain, str, bool]:
    laid = set_out(room, wall_id, scheme_id, trade)
    findings = find(Scene(room, laid, trade))
    found = [(finding, remedies(room, wall_id, scheme_id, finding, trade)) for finding in findings]
    grave = any(finding.weight is not Weight.CONSIDER for finding in findings)
    more = {layer.ref: _cloth(room, one, layer, trade) for one in laid.treatments for layer in one.layers}
    return wall_report(laid, found, style, more), wall_text(laid, found, style), grave


def _cloth(room: Room, laid: TreatmentOut, layer: LayerOut, trade: Trade) -> Plain:
    """What a layer takes in cloth, with a valance of it, and what ready-made panels would do there."""
    mine = layer_of(room, layer.ref)
    cloth = cloth_of_layer(room, mine, layer, trade)
    valance = None
    if laid.pelmet is not None and layer is laid.layers[0]:
        valance = valance_cloth(room, mine, laid.pelmet, trade)
    ready = ready_for(room, layer, trade)
    return {
        "cloth": None if cloth is None else cloth_report(cloth),
        "valance": None if valance is None else valance_report(valance),
        "ready_made": None if ready is None else ready_report(ready),
    }
