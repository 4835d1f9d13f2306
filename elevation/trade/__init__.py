"""What the trade knows: tables from the resources folder, and formulas. Plain numbers in and out.

``trade.tables.load_trade() -> Trade`` is the way in.
"""
