"""Kept fish under rules: the catch as told, the rules of a place put into words (layer 4)."""
