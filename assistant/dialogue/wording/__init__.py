"""What answers say: the wording of every kind of answer, once (layer 4)."""
