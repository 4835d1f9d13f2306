"""Lengths as a person reads them: set fractions of an inch, or millimetres.

Set fractions are Unicode superscript digits, U+2044 and subscript digits ("50³⁄₈"); ``plain`` gives "50 3/8" for files
that need ASCII. When something was rounded away, a sign follows the figure, as makers write a strong or a weak fraction:
"50³⁄₈+" is a little more than 50 3/8, "50³⁄₈−" a little less. (Raised signs would be nicer; few text fonts have them.)
"""

from __future__ import annotations

from functools import lru_cache
from math import gcd

from elevation.units.graduation import ratio_of
from elevation.units.rounding import mark_of
from elevation.units.tolerance import TOUCH_MM

RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹"
LOWERED = "₀₁₂₃₄₅₆₇₈₉"
FRACTION_SLASH = "\u2044"
MINUS = "\u2212"
MORE = "+"
"""After a figure: the true length is a little more."""
LESS = MINUS
"""After a figure: the true length is a little less."""

_TO_RAISED = str.maketrans("0123456789", RAISED)
_TO_LOWERED = str.maketrans("0123456789", LOWERED)

# Beyond this an inch graduation is no tape's fraction (1 mm is 5/127 in): decimals say it better.
_FINEST_DENOMINATOR = 64


def set_fraction(numerator: int, denominator: int) -> str:
    """A fraction in raised and lowered digits: ``set_fraction(3, 8)`` is "³⁄₈"."""
    return str(numerator).translate(_TO_RAISED) + FRACTION_SLASH + str(denominator).translate(_TO_LOWERED)


def format_mark(mark: int, style_unit: str, graduation_mm: float, *, decimal_mark: str = ".", plain: bool = False) -> str:
    """A whole number of graduations as a bare figure, without unit or sign of remainder.

    Parameters
    ----------
    mark : int
        Number of graduations; may be negative.
    style_unit : str
        ``"in"`` (reduced fractions) or ``"mm"``.
    graduation_mm : float
        The tape's smallest mark in mm.
    decimal_mark : str
        ``"."`` or ``","``.
    plain : bool
        ASCII: "50 3/8" and "-" in place of set fractions and the minus sign.
    """
    return _figure(mark, style_unit, graduation_mm, decimal_mark, plain)


def format_length(
    mm: float,
    style_unit: str,
    graduation_mm: float,
    *,
    decimal_mark: str = ".",
    with_unit: bool = False,
    plain: bool = False,
    sign: bool = True,
) -> str:
    """A length to the nearest graduation (a tie to the even mark), reduced.

    Parameters
    ----------
    mm : float
        A length in mm; may be negative.
    style_unit : str
        ``"in"`` or ``"mm"``.
    graduation_mm : float
        The tape's smallest mark in mm, of either system.
    decimal_mark : str
        ``"."`` or ``","``.
    with_unit : bool
        Append " in" or " mm".
    plain : bool
        ASCII: "50 3/8" for files that cannot hold set fractions.
    sign : bool
        Append a plus or minus when more than 1e-6 mm was rounded away: the true length is a little
        more, or less, than the figure.

    Returns
    -------
    str
        For example "50³⁄₈", "50³⁄₈+ in", "1280 mm", "-50 3/8 in" (plain).
    """
    return format_at_mark(
        mm,
        mark_of(mm, graduation_mm),
        style_unit,
        graduation_mm,
        decimal_mark=decimal_mark,
        with_unit=with_unit,
        plain=plain,
        sign=sign,
    )


def format_at_mark(
    mm: float,
    mark: int,
    style_unit: str,
    graduation_mm: float,
    *,
    decimal_mark: str = ".",
    with_unit: bool = False,
    plain: bool = False,
    sign: bool = True,
) -> str:
    """A length of ``mm`` shown as ``mark`` graduations: for segments that a chain moved (``reconcile_chain``).

    The sign says, as in ``format_length``, on which side of the figure the true length lies.
    """
    text = _figure(mark, style_unit, graduation_mm, decimal_mark, plain)
    if sign:
        numerator, denominator = ratio_of(graduation_mm)
        rest_mm = mm - mark * numerator / denominator
        if rest_mm > TOUCH_MM:
            text += MORE
        elif rest_mm < -TOUCH_MM:
            text += "-" if plain else LESS
    return f"{text} {style_unit}" if with_unit else text


@lru_cache(maxsize=4096)
def _figure(mark: int, unit: str, graduation_mm: float, decimal_mark: str, plain: bool) -> str:
    numerator, denominator = ratio_of(graduation_mm)
    if unit == "in":
        # 1 in = 254/10 mm, exactly.
        numerator, denominator = numerator * 10, denominator * 254
        common = gcd(numerator, denominator)
        numerator, denominator = numerator // common, denominator // common
        body = (
            _fraction(abs(mark) * numerator, denominator, plain)
            if denominator <= _FINEST_DENOMINATOR
            else _decimal(abs(mark) * numerator, denominator, decimal_mark)
        )
    elif unit == "mm":
        body = _decimal(abs(mark) * numerator, denominator, decimal_mark)
    else:
        raise ValueError(f"lengths are shown in 'in' or 'mm', not {unit!r}")
    if mark >= 0:
        return body
    return ("-" if plain else MINUS) + body


def _fraction(numerator: int, denominator: int, plain: bool) -> str:
    whole, rest = divmod(numerator, denominator)
    if rest == 0:
        return str(whole)
    common = gcd(rest, denominator)
    top, bottom = rest // common, denominator // common
    if not plain:
        return (str(whole) if whole else "") + set_fraction(top, bottom)
    return f"{whole} {top}/{bottom}" if whole else f"{top}/{bottom}"


def _decimal(numerator: int, denominator: int, decimal_mark: str) -> str:
    # Whole numbers throughout: as many decimals as the value has, at most four.
    ten_thousandths = round_half_even(numerator * 10_000, denominator)
    whole, rest = divmod(ten_thousandths, 10_000)
    return f"{whole}{decimal_mark}{rest:04d}".rstrip("0") if rest else str(whole)


def round_half_even(numerator: int, denominator: int) -> int:
    """The whole number nearest to ``numerator / denominator``; a tie goes to the even one."""
    whole, rest = divmod(numerator, denominator)
    twice = 2 * rest
    if twice > denominator or (twice == denominator and whole & 1):
        whole += 1
    return whole
