"""Display list on a QPainter: screen, PNG, PDF."""
