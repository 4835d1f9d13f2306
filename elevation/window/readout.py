"""What the pointer says: figure, why it sticks, which rule is broken, what was typed."""

from __future__ import annotations

from elevation.findings.model import Weight
from elevation.handles.model import Handle
from elevation.handles.saying import figure_said
from elevation.room.model import Ref
from elevation.room.style import style_for
from elevation.session.session import Session
from elevation.window.hand import Hand
from elevation.window.measurements import sentence
from elevation.window.overlay import Said
from elevation.window.texts import tr
from elevation.words import msg


def tag_of(session: Session, handle: Handle) -> tuple[Said, ...]:
    """Name and figure of a handle that is only looked at."""
    style = style_for(session.room)
    figure = figure_said(handle, handle.shown_mm(handle.value_mm))
    return Said(sentence(tr(handle.name, style)), "figure"), Said(tr(figure, style)), *_strength(session, handle.ref)


def _strength(session: Session, ref: Ref) -> tuple[Said, ...]:
    """What the bracket at ``ref`` carries and what holds it; nothing for any other handle."""
    from elevation.window.holds_facts import strength_of  # With a form's fields: loaded when a handle is first named.

    return tuple(Said(sentence(text)) for text in strength_of(session, ref))


def guide_lines(session: Session, ref: Ref) -> tuple[str, ...]:
    """How the rod of the treatment at ``ref`` stands, a line a thought; nothing for what does not hang."""
    # Loaded when the lines of proportion are first shown.
    from elevation.planning.guide_words import guide_words

    set_out = session.set_out()
    treatment = next((one for one in set_out.treatments if one.ref == ref[:3]), None)
    if treatment is None:
        return ()
    style = style_for(session.room)
    return tuple(sentence(tr(word, style)) for word in guide_words(set_out, treatment, style.graduation_mm / 2))


def light_lines(session: Session, ref: Ref) -> tuple[str, ...]:
    """What the treatment at ``ref`` keeps of the daylight, and where light comes round it."""
    # Loaded when light is first shown.
    from elevation.planning.daylight import daylight_of
    from elevation.planning.daylight_words import daylight_words

    treatment = next((one for one in session.set_out().treatments if one.ref == ref[:3]), None)
    if treatment is None:
        return ()
    style = style_for(session.room)
    light = daylight_of(session.room, treatment, session.trade)
    return tuple(sentence(tr(word, style)) for word in daylight_words(light))


def light_assumed() -> str:
    """What figures of daylight rest on."""
    from elevation.planning.daylight_words import ASSUMED

    return tr(ASSUMED)


def _is_of(subject: Ref, ref: Ref) -> bool:
    """Whether a finding's subject and a handle's belong to one treatment, or one is part of the other."""
    least = min(len(subject), len(ref), 3)
    return subject[:least] == ref[:least]


def readout_of(session: Session, hand: Hand) -> tuple[Said, ...]:
    """The lines of the readout while a handle is held.

    Parameters
    ----------
    session : Session
    hand : Hand
        Holding a handle.

    Returns
    -------
    tuple of Said
        Figure; what was typed; why it sticks; the worst thing that is broken there.
    """
    gesture = hand.gesture
    if gesture is None:
        return ()
    style = style_for(session.room)
    handle = gesture.handle
    stuck = gesture.stuck
    figure = figure_said(handle, gesture.shown_mm)
    lines = [Said(tr(figure, style), "figure"), Said(sentence(tr(handle.name, style)))]
    if hand.typed:
        lines.append(Said(tr(msg("typed: {text}", text=hand.typed))))
    if hand.wrong:
        lines.append(Said(hand.wrong, "broken"))
    elif stuck.reason is not None and not gesture.is_typed:
        lines.append(Said(sentence(tr(stuck.reason, style))))
    lines += _strength(session, handle.ref)
    if session.is_guided:
        lines += [Said(text) for text in guide_lines(session, handle.ref)]
    if stuck.breaks is not None:
        broken = [finding for finding in session.findings() if finding.rule == stuck.breaks]
        # The same rule may be broken elsewhere on the wall: what is held comes first.
        broken.sort(key=lambda finding: not _is_of(finding.subject, handle.ref))
        lines += [Said(tr(finding.text, style), "broken") for finding in broken[:1] if finding.weight != Weight.CONSIDER]
    return tuple(lines)
