"""The one reader of lengths that people type.

Grammar, spaces free unless said::

    length  = [sign] term { ("+" | "-") term }
    term    = measure { "*" measure }                   at most one measure of a term has a unit
    measure = number [ unit { number unit } ]           4 ft 2.5 in, 1 m 28 cm: falling units of one system;
                                                        after feet a bare number is inches
    number  = whole | decimal | fraction | whole fraction
    unit    = in " ″ inch | ft ' ′ foot | yd | mm | cm | dm | m, and their long names

A hyphen written tight between a whole number and a fraction means *and*, as the trade writes it (50-3/8 is 50 3/8,
4'-2" is 4 ft 2 in); with a space beside it, it takes away. Comma and dot are both decimal marks; where both occur the
last one is, and the other one groups by three. One mark before just three digits (1,234 mm) could be either: where
both readings are lengths that a house has, the number is refused with both. In inches and feet a dot never groups, so
that 12.375 in is the eighth it looks like. A bare number takes the room's unit. What could be read in two ways is refused,
never guessed. A plus or minus written tight after a fraction or before a unit ("50 3/8+", "1280- mm") is the sign
of a rounded figure and adds nothing.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache

from elevation.units.figures import check_digits, decimal, refuse_doubtful
from elevation.units.length import Length
from elevation.units.scan import MM_OF, Token, scan
from elevation.units.wrong import BadLength, Marked, Wrong, marked, printable

LONGEST_TEXT = 100
LARGEST_MM = 10_000_000
"""Ten kilometres: more than any wall, small enough that a float holds it to a millionth of a mm."""

_METRIC = ("m", "dm", "cm", "mm")
_CUSTOMARY = ("yd", "ft", "in")
_EXAMPLE = {"in": marked("write for example 50 3/8 in"), "mm": marked("write for example 1280 mm")}

_A_NUMBER = marked("a number")
_UNIT_SIGN_OR_END = marked("a unit, +, - or the end")
_SIGN_OR_END = marked("+, - or the end")
_LOWER_NUMBER = marked("the lower number of a fraction")
_ZERO_BELOW = marked("the lower number of a fraction cannot be 0")


def parse_length(text: str, unit: str = "in", *, what: str = "", where: str = "") -> Length:
    """Read a length that a person typed.

    Parameters
    ----------
    text : str
        For example ``50 3/8``, ``4' 2 3/8"``, ``½``, ``1,28 m``, ``36 + 2*3 1/2``.
    unit : str
        ``"in"`` or ``"mm"``: the unit of bare numbers.
    what, where : str
        File or field, and the place in it, for the error's sentence.

    Returns
    -------
    Length
        Its ``mm`` from the exact rational; its ``text`` as typed, trimmed, with the unit after each bare number,
        so that it reads the same in any room.

    Raises
    ------
    BadLength
        A BadInput with the place in the text and what was expected there.
    """
    try:
        return _read(text, unit)
    except Wrong as wrong:
        raise BadLength(what, where, text, wrong, _EXAMPLE.get(unit, _EXAMPLE["mm"])) from None


@lru_cache(maxsize=2048)
def _read(text: str, unit: str) -> Length:
    if unit not in MM_OF:
        raise ValueError(f"no such unit: {unit!r}")
    if len(text) > LONGEST_TEXT:
        raise Wrong(
            None,
            marked("is {length} characters long"),
            marked("write at most {most}"),
            length=str(len(text)),
            most=str(LONGEST_TEXT),
        )
    line = "".join(" " if char.isspace() else char for char in text).strip()
    reader = _Reader(line, unit)
    size_mm = reader.length()
    if abs(size_mm) > LARGEST_MM:
        raise Wrong(None, marked("is more than 10 km"))
    return Length(size_mm.numerator / size_mm.denominator, reader.text())


class _Reader:
    """Reads one text from left to right; positions are those of the trimmed text."""

    def __init__(self, line: str, unit: str) -> None:
        self._line = line
        self._unit = unit
        self._tokens = scan(line)
        self._next = 0
        self._bare: list[Token] = []  # last token of each term that has no unit of its own
        self._units: set[str] = set()
        self._remainders: list[Token] = []
        self._decimals: list[Token] = []  # decimal numbers of this term whose unit is not known yet

    def length(self) -> Fraction:
        sign = self._sign()
        total = sign * self._term()
        while self._peek().kind != "end":
            joint = self._peek()
            if joint.kind not in ("plus", "minus"):
                raise self._unexpected(_SIGN_OR_END if self._after_unit() else _UNIT_SIGN_OR_END)
            self._next += 1
            term = self._term()
            total = total + term if joint.kind == "plus" else total - term
        self._refuse_mixed_bare()
        return total

    def text(self) -> str:
        """The text as typed, with the unit after each bare term and without signs of remainder."""
        changes = [(token.end, token.end, f" {self._unit}") for token in self._bare]
        changes += [(token.start, token.end, "") for token in self._remainders]
        line = self._line
        for start, end, new in sorted(changes, reverse=True):
            line = line[:start] + new + line[end:]
        return line

    def _peek(self, ahead: int = 0) -> Token:
        return self._tokens[min(self._next + ahead, len(self._tokens) - 1)]

    def _previous(self) -> Token:
        return self._tokens[self._next - 1]

    def _after_unit(self) -> bool:
        return self._next > 0 and self._previous().kind == "unit"

    def _unexpected(self, expected: Marked) -> Wrong:
        token = self._peek()
        if token.kind == "end":
            return Wrong(token.start, marked("the text ends where {expected} was expected"), expected=expected)
        found = printable(token.text if token.kind == "unknown" else self._line[token.start : token.end])
        if token.kind == "unknown" and token.text.isalpha():
            fault = marked("{found} is not a unit of length; expected {expected}")
        else:
            fault = marked("found {found} where {expected} was expected")
        return Wrong(token.start, fault, found=found, expected=expected)

    def _sign(self) -> int:
        if self._peek().kind == "minus":
            self._next += 1
            return -1
        if self._peek().kind == "plus":
            self._next += 1
        return 1

    def _term(self) -> Fraction:
        self._decimals = []
        amount, unit = self._measure()
        while self._peek().kind == "times":
            self._next += 1
            at = self._peek().start
            factor, factor_unit = self._measure()
            if unit is not None and factor_unit is not None:
                raise Wrong(
                    at,
                    marked("a length times a length is an area"),
                    marked("give the unit once, for example 2 * 3 1/2 in"),
                )
            amount *= factor
            unit = unit or factor_unit
        if unit is None:
            self._bare.append(self._previous())
            amount *= MM_OF[self._unit]
        self._refuse_doubtful(unit or self._unit)
        return amount

    def _refuse_doubtful(self, unit: str) -> None:
        for token in self._decimals:
            refuse_doubtful(token, unit)
        self._decimals = []

    def _measure(self) -> tuple[Fraction, str | None]:
        """One measure and its first unit: in mm if it has one, else the bare amount."""
        amount = self._number()
        first = unit = self._unit_here()
        if unit is None:
            return amount, None
        self._refuse_doubtful(unit)
        size_mm = amount * MM_OF[unit]
        while True:
            part = self._smaller_part(unit)
            if part is None:
                return size_mm, first
            amount, unit = part
            self._refuse_doubtful(unit)
            size_mm += amount * MM_OF[unit]

    def _smaller_part(self, unit: str) -> tuple[Fraction, str] | None:
        """The next part of a compound measure (the inches after the feet), or None if the measure ends here."""
        start = self._next
        tight = self._is_tight_hyphen() and unit == "ft"
        if tight:
            self._next += 1
        at = self._peek()
        if at.kind not in ("number", "fraction"):
            return None
        amount = self._number()
        smaller = self._unit_here()
        if smaller is None and unit == "ft":
            smaller = "in"
            self._units.add("in")
        if tight and smaller != "in":
            # 10'-2' takes feet from feet: not a compound measure after all.
            self._next = start
            return None
        if tight and amount >= 12:
            raise Wrong(
                at.start,
                marked("12 in or more after a hyphen may mean and or minus"),
                marked("put spaces around a minus"),
            )
        if smaller is None:
            raise Wrong(
                at.end,
                marked("expected the unit of this number"),
                marked("give each number its unit, for example 1 m 28 cm"),
            )
        if not _falls(unit, smaller):
            raise Wrong(
                at.start,
                marked("{smaller} cannot follow {unit} in one measure"),
                marked("put + between them"),
                smaller=smaller,
                unit=unit,
            )
        return amount, smaller

    def _is_tight_hyphen(self) -> bool:
        token = self._peek()
        return token.kind == "minus" and self._previous().end == token.start and token.end == self._peek(1).start

    def _unit_here(self) -> str | None:
        self._skip_sign_of_remainder()
        token = self._peek()
        if token.kind != "unit":
            return None
        self._next += 1
        self._units.add(token.text)
        return token.text

    def _skip_sign_of_remainder(self) -> None:
        """Pass over the sign that our own figures carry where something was rounded away: 50 3/8+ in."""
        token, after = self._peek(), self._peek(1)
        if token.kind not in ("plus", "minus") or token.start != self._previous().end:
            return
        is_fraction = self._previous().kind == "fraction" or self._tokens[self._next - 2].kind == "slash"
        if after.kind == "unit" or (after.kind == "end" and is_fraction):
            self._remainders.append(token)
            # Taken out of the row, so that "the token before" stays the number.
            del self._tokens[self._next]

    def _number(self) -> Fraction:
        token = self._peek()
        if token.kind == "fraction":
            return self._ready_fraction()
        if token.kind != "number":
            raise self._unexpected(_A_NUMBER)
        if self._peek(1).kind == "slash":
            return self._fraction()
        self._next += 1
        amount, is_whole = decimal(token)
        if not is_whole:
            self._decimals.append(token)
        joined = self._is_tight_hyphen()
        follows = self._peek(1 if joined else 0)
        after = self._peek(2 if joined else 1)
        if not (follows.kind == "fraction" or (follows.kind == "number" and after.kind == "slash")):
            return amount
        if not is_whole:
            if joined:
                return amount
            raise Wrong(follows.start, marked("a fraction cannot follow a decimal number"))
        self._next += joined
        part = self._ready_fraction() if follows.kind == "fraction" else self._fraction()
        if part >= 1:
            raise Wrong(
                follows.start,
                marked("a fraction after a whole number must be less than 1"),
                marked("put spaces around a minus, or write the whole number and the rest"),
            )
        return amount + part

    def _ready_fraction(self) -> Fraction:
        token = self._peek()
        self._next += 1
        if token.value is None:
            raise Wrong(token.start, _ZERO_BELOW)
        check_digits(token)
        return token.value

    def _fraction(self) -> Fraction:
        top = self._peek()
        self._next += 2
        bottom = self._peek()
        if bottom.kind != "number":
            raise self._unexpected(_LOWER_NUMBER)
        self._next += 1
        for token in (top, bottom):
            if not token.text.isdigit():
                raise Wrong(token.start, marked("both numbers of a fraction must be whole"))
            check_digits(token)
        if int(bottom.text) == 0:
            raise Wrong(bottom.start, _ZERO_BELOW)
        return Fraction(int(top.text), int(bottom.text))

    def _refuse_mixed_bare(self) -> None:
        """Refuse bare numbers beside another unit than the room's: 120 cm + 5 could mean cm, mm or in."""
        usual = {"in", "ft"} if self._unit == "in" else {self._unit}
        if self._bare and not self._units <= usual:
            raise Wrong(
                self._bare[0].start,
                marked("expected the unit of this number too"),
                marked("give each number its unit"),
            )


def _falls(unit: str, smaller: str) -> bool:
    return any(
        unit in system and smaller in system and system.index(smaller) > system.index(unit)
        for system in (_METRIC, _CUSTOMARY)
    )
