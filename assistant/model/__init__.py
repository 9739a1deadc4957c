"""Layer 2: frozen records of the base and the compiled tables; only build.py sees the graph layer."""
