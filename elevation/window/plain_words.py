"""The trade's words in plain ones, for who never hung a curtain: said while a field has the keyboard."""

from __future__ import annotations

from elevation.words import Message, msg

_WORDS: dict[str, Message] = {
    "width": msg("Measure at the narrowest place, from one side to the other."),
    "gap": msg("Between the trim round one opening and the next thing beside it, along the wall."),
    "left": msg("From the wall's left end to where the opening itself begins, inside its trim."),
    "gap_right": msg("From the trim round the last opening to the wall's right end."),
    "casing": msg("The casing is the wooden trim round a window or door, as seen from the room; 0 where there is none."),
    "ceiling": msg("Measure beside the window, from the floor as it will be walked on."),
    "floor": msg("A floor is seldom level: a straight line drawn with a level shows how far it is off there."),
    "crown": msg("The crown is the moulding between wall and ceiling; 0 where there is none."),
    "baseboard": msg("The baseboard is the board along the foot of the wall; it keeps long cloth off the wall."),
    "sill": msg("The sill is the lower edge of the opening, where a hand would rest."),
    "height": msg("The head is the upper edge of the opening, inside its trim."),
    "head": msg("The rise of an arch is from where its curve begins to its highest point."),
    "reveal": msg("The reveal is the depth of the opening's side, from the wall's face back to the frame."),
    "frame": msg("From the opening's edge to the glass: the part of the frame that hides no view."),
    "stool": msg("The stool is the shelf at the foot of a window; its horns are what reaches past the casing."),
    "apron": msg("The apron is the flat trim under the stool."),
    "clearance": msg("What must stay free round it, where its own sheet gives a figure."),
    "projection": msg("How far it stands out from the wall."),
    "rod.height": msg("The height of a rod is that of its centre line."),
    "rod.left": msg("How far the rod goes to the left, without its end piece."),
    "rod.right": msg("How far the rod goes to the right, without its end piece."),
    "rod.projection": msg("From the wall to the middle of the rod: it must clear trim, radiator and handles."),
    "rod.diameter": msg("Across the rod, where it is not the one chosen above."),
    "rod.stock": msg("A longer rod is joined, and wants a bracket under the joint."),
    "drop": msg("Hang one ring with its clip on the rod and measure down from the rod's middle."),
    "flat_width": msg("The cloth laid flat, before it is gathered."),
    "label_length": msg("As printed on the packet; the panel itself may differ."),
    "measured_length": msg("Pressed and hung, from its top to its hem."),
    "stack": msg("Push the panel together as far as it goes and measure across."),
    "drawn": msg("How far the panel is drawn from its side just now."),
    "clear_glass_to": msg("More glass than this behind the open cloth is then called broken."),
    "hem": msg("Clear: just off the floor. Kiss: touching it. Break: a little longer. Puddle: lying on it."),
    "place": msg("To the middle of the bracket."),
    "graduation": msg("The finest line of your tape: figures are given to it."),
    "floor_to_come": msg("A floor that is laid later takes this off every length to the floor."),
}


def plain_words(field: str) -> Message | None:
    """What a form's field means; None where its name says it.

    Parameters
    ----------
    field : str
        Dotted path, as the forms light it (``ceiling.0.height``, ``rod.height.at``).
    """
    parts = field.split(".")
    for length in range(len(parts), 0, -1):
        found = _WORDS.get(".".join(parts[:length]))
        if found is not None:
            return found
    return None
