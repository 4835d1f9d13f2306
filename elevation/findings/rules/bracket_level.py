"""bracket-level: the brackets of one rod, as hung, are not level.

Broken; wall mounts; every arrangement. The bracket that is furthest from the height of the rod's other brackets is named;
more than one graduation is out of level. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_name, built_height
from elevation.findings.limits import authority_of, is_own, said_limit
from elevation.findings.looking import layer_at
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import where
from elevation.findings.rules.uneven_rods import most_mm
from elevation.setting_out.model import BracketOut, LayerOut, TreatmentOut
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg


def odd_one(layer: LayerOut) -> tuple[BracketOut, float, float] | None:
    """The bracket furthest from the others, the height it should have, and how far apart all are; in mm.

    What has been hung is a fact; a bracket still to be hung gives the plan's height. The height to meet is the one that
    most brackets have, the higher where as many have another.
    """
    if len(layer.brackets) < 2:
        return None
    heights = [bracket.height_mm for bracket in layer.brackets]
    apart = max(heights) - min(heights)
    votes: dict[float, int] = {}
    for height in heights:
        key = round(height, 3)
        votes[key] = votes.get(key, 0) + 1
    wanted = max(votes, key=lambda key: (votes[key], key))
    odd = max(layer.brackets, key=lambda bracket: (abs(bracket.height_mm - wanted), bracket.built))
    return odd, wanted, apart


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        found = odd_one(layer)
        if found is None or not exceeds(found[2], most_mm(scene, "bracket-level"), scene.half_mm):
            continue
        odd, wanted, apart = found
        params = {
            "where": where(treatment),
            "bracket": bracket_name(scene, odd.ref),
            "off": Mm(abs(odd.height_mm - wanted)),
        }
        if odd.height_mm > wanted:
            text = msg("{where}: {bracket} hangs {off} higher than the rod's other brackets.", **params)
        else:
            text = msg("{where}: {bracket} hangs {off} lower than the rod's other brackets.", **params)
        if is_own(scene, "bracket-level"):
            text = msg("{text} Limit: {limit}.", text=text, limit=said_limit(scene, "bracket-level"))
        yield Finding(
            "bracket-level",
            Weight.BROKEN,
            layer.ref,
            text,
            authority_of(scene, "bracket-level"),
            measured_mm=apart,
            limit_mm=most_mm(scene, "bracket-level"),
            at=(odd.x_mm, odd.height_mm),
            caution=msg("Hang it again from a ladder that stands firm, with someone to hold the rod."),
        )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    found = odd_one(layer_at(scene, finding.subject))
    if found is not None:
        yield from built_height(scene, found[0].ref, found[1])


RULE = Rule("bracket-level", msg("brackets of one rod level"), _find, changes=_changes)
