"""What the trade knows: tables and formulas, plain numbers in, plain numbers out."""

from elevation.trade.tables import load_trade

__all__ = ["load_trade"]
