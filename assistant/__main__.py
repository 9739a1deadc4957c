"""``python -m assistant``: the same as the ``tellfin`` command."""

from assistant.cli.main import run

if __name__ == "__main__":
    run()
