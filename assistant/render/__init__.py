"""Layer 5: answer blocks to terminal, plain text, Markdown, HTML, JSON, and the drawn fish."""
