"""Layer 4: edits, history, sheets, lint, format, comparison (sees layers 1 to 3, not dialogue)."""
