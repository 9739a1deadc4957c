"""Layer 7: commands and exit codes; nothing imports it."""
