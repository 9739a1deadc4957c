"""One file an intent; each takes a reading of the text and returns answer blocks."""
