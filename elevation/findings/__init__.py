"""SetOut to findings; one rule a file.

``findings.all_rules.find(scene) -> tuple[Finding, ...]`` is the way in, sorted by weight.
"""
