"""Tellfin: tell one freshwater fish from another, from one checked and sourced body of statements."""

from __future__ import annotations

__all__ = ["__version__"]
__version__ = "0.1.0"
