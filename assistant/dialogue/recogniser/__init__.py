"""What is wanted of a line: its cues and facts, the table of rows, the leanings (layer 4)."""
