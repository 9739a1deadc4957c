"""Layer 6: the chat terminal."""
