"""What a layer takes in cloth, in words: a few lines for a form, a sheet or a list."""

from __future__ import annotations

from elevation.findings.changing import mark_up
from elevation.planning.sewing.positions import inset_of, spread
from elevation.setting_out.cloth import Bolt, LayerCloth
from elevation.setting_out.model import LayerOut
from elevation.setting_out.valance import ValanceCloth
from elevation.trade.model import Trade
from elevation.trade.tables import row_of
from elevation.words import Message, Mm, Percent, Ratio, msg, msg_plural

YARD_MM = 914.4
METRE_MM = 1000.0

_WHY = {
    "one-way": msg("pile or print runs one way"),
    "too-narrow": msg("it is not wide enough for the drop"),
}


def amount(mm: float, unit: str) -> Message:
    """A length of cloth as it is asked for at the counter: yards in a room of inches, else metres."""
    if unit == "in":
        return msg("{amount} yd", amount=Ratio(mm / YARD_MM, 2))
    return msg("{amount} m", amount=Ratio(mm / METRE_MM, 2))


def cloth_lines(cloth: LayerCloth, unit: str, graduation_mm: float) -> tuple[Message, ...]:
    """What a layer takes, line by line.

    Parameters
    ----------
    cloth : LayerCloth
    unit : str
        The room's.
    graduation_mm : float
        The tape's smallest mark: cuts are said up to the next one.
    """
    lines = [
        msg(
            "Finished {finished} wide in all, {flat} of flat cloth at a fullness of {fullness}.",
            finished=_up(cloth.finished_mm, graduation_mm),
            flat=_up(cloth.flat_mm, graduation_mm),
            fullness=Ratio(cloth.fullness, 2),
        )
    ]
    if cloth.face is None:
        lines.append(msg("How much to buy is known once the panels' length is."))
    else:
        lines += _face(cloth, cloth.face, unit, graduation_mm)
        lines += [
            msg(
                "{what}: {cuts}, {bought}.",
                what=name,
                cuts=_cuts(bolt, graduation_mm),
                bought=amount(bolt.sold_mm, unit),
            )
            for name, bolt in ((msg("Lining"), cloth.lining), (msg("Interlining"), cloth.interlining))
            if bolt is not None
        ]
    lines += _pleats(cloth)
    return tuple(lines)


def _up(mm: float, graduation_mm: float) -> Mm:
    """A length to cut, up to the next mark: a hair too long is right, a hair too short is not."""
    return Mm(mark_up(mm, graduation_mm))


def _cuts(bolt: Bolt, graduation_mm: float) -> Message:
    count = int(-(-bolt.widths // 1))
    return msg_plural(
        "{count} width of {wide}, cut {cut} long",
        "{count} widths of {wide}, each cut {cut} long",
        count=count,
        wide=Mm(bolt.usable_mm, about=True),
        cut=_up(bolt.cut_mm, graduation_mm),
    )


def _face(cloth: LayerCloth, face: Bolt, unit: str, graduation_mm: float) -> list[Message]:
    bought = msg("{total}, sold as {sold}", total=amount(face.total_mm, unit), sold=amount(face.sold_mm, unit))
    if cloth.railroaded:
        return [
            msg(
                "Cloth of {wide} turned on its side, {cut} of it for the drop: {bought}.",
                wide=Mm(face.usable_mm, about=True),
                cut=_up(face.cut_mm, graduation_mm),
                bought=bought,
            )
        ]
    lines = [msg("{cuts}: {bought}.", cuts=_cuts(face, graduation_mm), bought=bought)]
    if cloth.cannot_railroad:
        lines.append(msg("It cannot be turned on its side: {why}.", why=_WHY[cloth.cannot_railroad]))
    if cloth.parted is not None and cloth.parted.half:
        if cloth.parted.whole:
            lines.append(
                msg_plural(
                    "Each panel gets {count} width and a half; the half goes to the return side.",
                    "Each panel gets {count} widths and a half; the half goes to the return side.",
                    count=cloth.parted.whole,
                )
            )
        else:
            lines.append(msg("Each panel gets half a width."))
    if face.extra_mm > 0:
        lines.append(msg("One repeat of it is for the half drop of the pattern."))
    if cloth.shrinks > 0 and cloth.washed_first:
        lines.append(msg("{part} of each cut is for the wash before cutting.", part=Percent(cloth.shrinks)))
    elif cloth.shrinks > 0:
        lines.append(
            msg("The first wash may take {part} of its length: wash it before it is cut.", part=Percent(cloth.shrinks))
        )
    return lines


def valance_line(cloth: ValanceCloth, unit: str, graduation_mm: float) -> Message:
    """What a valance takes besides the panels of its front layer."""
    total = amount(cloth.face.total_mm, unit)
    if not cloth.widths:
        return msg("The valance takes {total} of the same cloth more, on its side.", total=total)
    return msg(
        "The valance takes {widths} widths, each cut {cut}: {total} of the same cloth more.",
        widths=int(cloth.widths),
        cut=_up(cloth.face.cut_mm, graduation_mm),
        total=total,
    )


def ring_lines(layer: LayerOut, trade: Trade) -> tuple[Message, ...]:
    """How far apart rings, eyelets or tabs are set on each panel as it is, told once for panels alike."""
    told: list[Message] = []
    inset = inset_of(row_of(trade.headings, layer.heading, "heading"), trade)
    for panel in layer.panels:
        each = panel.rings // panel.count
        if each < 2:
            continue
        places = spread(panel.flat_width_mm / panel.count, each, inset)
        line = msg(
            "{count} rings, eyelets, tabs or hooks on a piece {wide} wide: {apart} apart on the cloth.",
            count=each,
            wide=Mm(panel.flat_width_mm / panel.count),
            apart=Mm(places[1] - places[0]),
        )
        if line not in told:
            told.append(line)
    return tuple(told)


def _pleats(cloth: LayerCloth) -> list[Message]:
    """Pleats of panels alike are told once."""
    told: list[Message] = []
    for panel in cloth.panels:
        pleats = panel.pleats
        if pleats is None:
            continue
        line = msg(
            "{count} pleats a panel, each takes up {pleat}, {space} apart; the first is {first} from the leading edge.",
            count=pleats.count,
            pleat=Mm(pleats.take_up_mm),
            space=Mm(pleats.space_mm),
            first=Mm(pleats.at_mm[0], about=True),
        )
        if line not in told:
            told.append(line)
    return told
