"""Layer 4: typed text to intent to answer blocks."""
