"""Fishes set beside each other: compared, the same, crossed (layer 4)."""
