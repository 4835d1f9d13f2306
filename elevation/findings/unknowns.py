"""What is not known of a wall, said once each: of what it cannot be told, it must not look as if all were well."""

from __future__ import annotations

from msgspec import Struct

from elevation.findings.naming import where
from elevation.room.model import Ref
from elevation.setting_out.model import MissingFact, SetOut
from elevation.words import Message, msg

_LAYER = 4
"""Length of the Ref of a layer; that of its treatment is one less."""


class Unknown(Struct, frozen=True):
    """Something not known, and the first field that would tell it."""

    ref: Ref
    field: str
    text: Message


def unknowns(set_out: SetOut) -> tuple[Unknown, ...]:
    """What the wall misses, in tape order.

    What is said of several parts of a treatment stands once; what is said of all that hangs stands once for the wall, and
    of some of it once for each, with the openings that it hangs before.
    """
    hanging = {treatment.ref: treatment for treatment in set_out.treatments}
    told: list[tuple[Message, list[MissingFact]]] = []
    for fact in set_out.missing:
        alike = next((facts for text, facts in told if text == fact.text), None)
        if alike is None:
            told.append((fact.text, [fact]))
        else:
            alike.append(fact)
    found: list[Unknown] = []
    for text, facts in told:
        owners = {fact.ref[: _LAYER - 1]: fact for fact in reversed(facts) if len(fact.ref) >= _LAYER}
        if not owners or len(owners) == len(hanging):
            found.append(Unknown(facts[0].ref, facts[0].field, text))
            continue
        found += [
            Unknown(fact.ref, fact.field, msg("{where}: {text}", where=where(hanging[ref]), text=text))
            for ref, fact in reversed(owners.items())
        ]
    return tuple(found)
