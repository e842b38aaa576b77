"""Signs worth showing to someone who may judge them. A list of what is seen, never of what it is.

No sign leads to a diagnosis here: each leads to the bee inspector.
"""

from dataclasses import dataclass
from typing import Final

from beeworkbook.words import say


@dataclass(frozen=True)
class Sign:
    """A sign: the short word kept in the field, and what is seen. Both in English, for say()."""

    word: str
    seen: str


SIGNS: Final = (
    Sign("sunken caps", "sealed cells with sunken, greasy or holed caps"),
    Sign("ropy", "a matchstick draws a thread out of a cell"),
    Sign("scale", "a dark scale lying low on the cell wall"),
    Sign("twisted", "open larvae twisted, stretched, yellow or brown, or melted down"),
    Sign("mummies", "chalky mummies, white or mottled"),
    Sign("sacs", "larvae like a fluid sac, the dark head curled up"),
    Sign("wings", "wrinkled wings or short abdomens"),
    Sign("mites", "mites seen on bees"),
    Sign("small mites", "small, fast mites unlike varroa"),
    Sign("crawlers", "bees crawling at the entrance that cannot fly"),
    Sign("streaks", "yellow streaks on the hive or the combs"),
    Sign("black bees", "hairless, black, shiny or trembling bees"),
    Sign("drone caps", "drone brood in worker cells, in an even patch, one egg a cell"),
    Sign("many eggs", "drone brood in worker cells, scattered, or several eggs a cell"),
    Sign("bare line", "a line of uncapped cells with a wax rim and live pupae"),
    Sign("chilled", "dead brood after cold"),
    Sign("silk", "silk tunnels and black droppings in the comb"),
    Sign("slime", "slimy, fermenting comb, or beetle larvae in the corners"),
    Sign("dead-out", "the colony is dead"),
)
"""Source: M. Sanford (caps, thread, scale), BEEBOOK II on foulbrood §1.2, National Bee Unit "Other brood
disorders", University of Arkansas beehealth, Peeblesshire BKA notes 3.10, a Swiss magazine's quiz page;
chilled brood, small mites and dead-outs are common practice, no source."""


def sign_advice() -> str:
    """What to do after any sign.

    Source: common practice, no source; which diseases are notifiable is for the law of the place.
    """
    return say(
        "Ask your bee inspector: it may be notifiable. Until then close the hive, move nothing between "
        "hives or apiaries, and wash gloves and tool."
    )


def read_sign(words: str) -> Sign | None:
    """The sign these words name, whole or begun, or None if they are the keeper's own."""
    start = " ".join(words.split()).casefold()
    if not start:
        return None
    for sign in SIGNS:
        if start in {sign.word, say(sign.word).casefold()}:
            return sign
    return next((sign for sign in SIGNS if len(start) > 2 and sign.word.startswith(start)), None)
