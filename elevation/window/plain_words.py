"""The trade's words in plain ones, for who never hung a curtain: said while a field has the keyboard."""

from __future__ import annotations

from elevation.errors import NoSuch
from elevation.room.find import item_at
from elevation.room.model import Ref, Room
from elevation.words import Message, msg

_WORDS: dict[str, Message] = {
    "width": msg("Measure at the narrowest place, from one side to the other."),
    "gap": msg("Between the trim round one opening and the next thing beside it, along the wall."),
    "left": msg("From the wall's left end to where the opening itself begins, inside its trim."),
    "gap_right": msg("From the trim round the last opening to the wall's right end."),
    "casing": msg(
        "The casing is the wooden trim round a window or door: how wide one board of it is, seen from the room; 0 for none."
    ),
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
    "label_length": msg(
        "Of a ready-made panel, as printed on its packet; the panel itself may differ. Blank, and not measured either: it"
        " is sewn to length."
    ),
    "measured_length": msg("Pressed and hung, from its top to its hem."),
    "stack": msg("Push the panel together as far as it goes and measure across."),
    "drawn": msg("How far the panel is drawn from its side just now."),
    "clear_glass_to": msg("More glass than this behind the open cloth is then called broken."),
    "hem": msg("Clear: just off the floor. Kiss: touching it. Break: a little longer. Puddle: lying on it."),
    "place": msg("To the middle of the bracket."),
    "graduation": msg("The finest line of your tape: figures are given to it."),
    "floor_to_come": msg("A floor that is laid later takes this off every length to the floor."),
    "sleeping": msg("A bedroom needs one window to climb out of: what hangs there must open in one move."),
    "children": msg("A harder pull is then reckoned with, and cords, loops and long cloth are remarked on."),
    "no_holes": msg("Only what presses between jambs or hangs from fixings that are there is then proposed."),
    "one_height": msg("Handles stick to the height of the other rods, and the program says where one is off."),
    "tug_kg": msg("Brackets are reckoned with what hangs and with this pull; empty takes the usual figure."),
    "fullness_rule": msg("Workrooms multiply different widths by the fullness: choose yours."),
    "escape": msg("The window that somebody could leave by in a fire: local rules say how much must stay open."),
    "shutter_box": msg("Nothing can be fixed in a shutter's box: it is hollow, and its door must open."),
    "sash.handle_out": msg("How far the handle reaches into the room: an open sash must pass the cloth."),
    "sash.handle_stands": msg("From the sash to the outside of its handle: a rod in the reveal must clear it."),
    "columns": msg("Panes across the window, where bars part it."),
    "rows": msg("Panes up the window, where bars part it."),
    "mount": msg("What the brackets are fixed to: the wall's face, the ceiling, the reveal or the sash."),
    "continues": msg("The rod of this treatment goes on round the corner on another wall."),
    "rod.tilt": msg(
        "Level by the spirit level, or along a head or ceiling that is not: the eye sees what it hangs beside."
    ),
    "offer.price": msg("What a shop asks for the same window, made and hung: the buying list sets it against yours."),
    "rod.kind": msg("A rod carries rings, a track carries glides, a tension rod presses between two jambs."),
    "rod.section": msg("What the rod is cut from: its thickness decides how far it sags."),
    "rod.material": msg("Steel sags least, wood goes on sagging for years."),
    "rod.wall": msg("How thick the tube's own wall is: measure at a cut end."),
    "rod.ends": msg("What is on the ends; sockets and tubes bent back to the wall carry the rod themselves."),
    "rod.left_ends": msg("Only where this end is made in another way than the right one."),
    "rod.right_ends": msg("Only where this end is made in another way than the left one."),
    "rod.left_fixing": msg("What screws or anchors this end carries the rod by."),
    "rod.right_fixing": msg("What screws or anchors this end carries the rod by."),
    "rod.overlap": msg("Only a track with an overlap arm carries one leading edge past the other."),
    "rod.packet": msg("As printed on the packet in your hand: it governs."),
    "heading": msg(
        "The heading is how the top of the cloth is made: it decides fullness, stack and where the cloth begins."
    ),
    "ring": msg("Across the inside of a ring or eyelet: it must run on the rod with some play."),
    "fabric.row": msg("A cloth of the table brings its weight, width and shrinkage; each can be typed below."),
    "fabric.grams": msg("On the bolt's label, or weigh a piece of known size."),
    "fabric.lining": msg("The cloth behind the face cloth: it adds weight and takes light away."),
    "fabric.interlining": msg("A soft layer between face cloth and lining."),
    "fabric.width": msg("From edge to edge of the bolt; selvedges and seams come off it."),
    "fabric.repeat": msg("How far up the cloth until the pattern is the same again; empty where it is plain."),
    "fabric.repeat_across": msg("How far across the cloth until the pattern is the same again."),
    "fabric.pattern": msg("Drawn on the folds at its true size."),
    "fabric.half_drop": msg("The pattern meets half a repeat lower on the next width."),
    "fabric.one_way": msg("Velvet, or a print with a top and a bottom: every width hangs the same way up."),
    "fabric.railroaded": msg("The bolt runs along the rod, without seams, where it is wide enough for the length."),
    "fabric.shrinks": msg("Wash and iron a measured piece, and measure it again."),
    "fabric.body": msg("How thick the cloth is: it decides how much room it takes when it is pushed together."),
    "making.fullness": msg("Flat width over closed width: 2 is twice as much cloth as rod."),
    "making.returns": msg("The outer edge goes round the rod's end back to the wall and shuts out side light."),
    "making.heading": msg("Cloth that is folded in at the top."),
    "making.hem": msg("Cloth that is folded in at the foot, all turns together."),
    "making.washed_first": msg("Then the first wash on the rod takes nothing more."),
    "making.settles": msg("Loose weaves grow longer as they hang: let them hang before they are hemmed."),
    "kit": msg("Which bracket: its plate, its reach and whether rings pass it come from the table."),
    "fixing": msg("The screw or anchor in each hole; empty takes a wood screw where there is wood."),
    "pull_kg": msg("What the packet says one of them holds straight out of the wall."),
    "shear_kg": msg("What the packet says one of them holds along the wall."),
    "there": msg("Nothing new is drilled for it."),
    "count": msg("Ready-made panels are often narrow: several hang side by side and move as one."),
    "parks": msg("Where the cloth stands when the curtain is open."),
    "stationary": msg("A panel for looks: it is never drawn over the glass."),
    "weight_kg": msg("Weigh yourself with it and without it: a typed weight wins over the table."),
    "hung_length": msg("From its top to its hem as it hangs now; drawing and sheets then follow it."),
    "built": msg("Read with the tape once the rod hangs; drawing and sheets then say AS BUILT."),
    "board": msg("Screwed across studs or sound fixings, it carries the brackets wherever they are wanted."),
    "pelmet": msg("A board or a strip of cloth before the rod: usually a fifth to a sixth of the drop deep."),
    "blind": msg("A blind between the glass and the curtain: its box and cord must clear the cloth."),
    "blind.cord": msg("Cords and chains can strangle a child: a loop is held taut on the wall, out of reach."),
    "tie": msg("A loop or arm that holds the open cloth back, at a third or two thirds of the drop."),
    "substrate": msg("What the wall is made of decides what holds in it: test before you choose."),
    "studs": msg("From the wall's left end to the middle of a stud that you found, probed and not guessed."),
    "stud_spacing": msg("From the middle of one stud to the middle of the next."),
    "wiring": msg("Where cables likely run differs from country to country; a detector tells, never this drawing."),
    "left.kind": msg("A corner, where another wall stands; or open, where nothing is in the way."),
    "right.kind": msg("A corner, where another wall stands; or open, where nothing is in the way."),
    "left.neighbour": msg("The wall of this room that stands in the corner: what hangs there is then kept clear of."),
    "right.neighbour": msg("The wall of this room that stands in the corner: what hangs there is then kept clear of."),
    "left.angle": msg("90 where the walls meet square, more where they open out, as in a bay."),
    "right.angle": msg("90 where the walls meet square, more where they open out, as in a bay."),
    "tie.waist": msg("How wide the gathered cloth is at the loop."),
}

_OF_A: dict[str, dict[str, Message]] = {
    "Obstacle": {
        "left": msg("From the wall's left end to its left edge."),
        "bottom": msg("From the floor to its lower edge."),
        "width": msg("From its left edge to its right one."),
        "height": msg("From its lower edge to its upper one."),
    },
    "Bracket": {
        "height": msg("The rod's centre at this bracket, over the floor, once it hangs."),
        "there": msg("It is in the wall already: nothing is drilled for it."),
    },
}
"""Fields whose name means something else there than on a wall or an opening."""


def plain_words(field: str, kind: str = "") -> Message | None:
    """What a form's field means; None where its name says it.

    Parameters
    ----------
    field : str
        Dotted path, as the forms light it (``ceiling.0.height``, ``rod.height.at``).
    kind : str
        Name of the type that the field is of (``Opening``, ``Bracket``); empty: not told.
    """
    own = _OF_A.get(kind, {})
    parts = field.split(".")
    for length in range(len(parts), 0, -1):
        key = ".".join(parts[:length])
        found = own.get(key) or _WORDS.get(key)
        if found is not None:
            return found
    return None


def kind_at(room: Room, ref: Ref) -> str:
    """The name of the type of what stands at ``ref``; empty for the room itself, and for what is gone."""
    if not ref:
        return ""
    try:
        return type(item_at(room, ref)).__name__
    except NoSuch:
        return ""
