"""Display list to SVG, JSON and text; painters with Qt."""
