"""Write texts.json anew from statements.py and the schema: python -m beeworkbook.store.write_texts.

Run it after changing either; a test says when it was forgotten.
"""

import json

from beeworkbook.store.texts import TEXTS_FILE


def written() -> str:
    """What texts.json ought to hold."""
    from beeworkbook.store.statements import all_texts, all_ties

    return json.dumps({"texts": all_texts(), "ties": all_ties()}, indent=1, sort_keys=True) + "\n"


def main() -> None:
    """Write the file."""
    TEXTS_FILE.write_text(written(), encoding="utf-8")


if __name__ == "__main__":
    main()
