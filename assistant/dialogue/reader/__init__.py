"""A line of typed English read: names, measures, days, places, what was seen (layer 4)."""
