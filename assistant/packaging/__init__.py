"""What is done when the package is built (outside the layers; not used when it runs)."""
