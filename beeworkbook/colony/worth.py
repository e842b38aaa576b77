"""What brood is worth in full combs, in words. Apart from the other phrases, since a start needs no more."""

from typing import Final

from beeworkbook.words import say, two_figures

LEAST_WORTH: Final = 0.1
"""Full combs; below it a number would claim more than a dab of a brush says. Common practice, no source."""


def worth_words(worth: float) -> str:
    """What brood is worth in full combs, in words: "4.2", "less than 0.1"."""
    if 0 < worth < LEAST_WORTH:
        return say("less than {least}", least=two_figures(LEAST_WORTH))
    return two_figures(worth)
