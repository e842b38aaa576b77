"""What a visit says, for whoever shows it: the Page's rows and the round's read-back.

The rows are in page_rows.py, the read-back in read_back.py, what both are made of in story.py and
phrases.py; this is the one door to them.
"""

from beeworkbook.colony.page_rows import PageRow, page_rows, row_text
from beeworkbook.colony.phrases import eggs_state, level_words, next_words, round_words, titled
from beeworkbook.colony.read_back import Phrase, read_back, read_back_text
from beeworkbook.colony.story import Field, Target, VisitStory

__all__ = [
    "Field",
    "PageRow",
    "Phrase",
    "Target",
    "VisitStory",
    "eggs_state",
    "level_words",
    "next_words",
    "page_rows",
    "read_back",
    "read_back_text",
    "round_words",
    "row_text",
    "titled",
]
