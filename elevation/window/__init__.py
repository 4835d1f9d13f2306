"""The desktop: main window, canvas, forms, findings, curves."""
