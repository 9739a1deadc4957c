"""Keys, quizzes, sheets and word lists for a class (layer 4)."""
