"""Layer 1: triples to plain values and back; the only place that imports rdflib, pyoxigraph or pyshacl."""
