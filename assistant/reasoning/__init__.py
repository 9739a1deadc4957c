"""Layer 3: pure functions over the model: no input or output, no clock, no wording."""
