"""The cautions at the foot of every paper: the usual ones, in the fewest words that still help.

They defer to the label, the law and the bee inspector; nothing here advises a treatment or names a
disease. Source: trade advice of beekeepers' associations on stings, lifting and smokers, common practice.
"""

from beeworkbook.words import say


def cautions() -> tuple[str, ...]:
    """A sentence or two a subject, the one that may be urgent first."""
    return (
        say("Stings: if faint, swollen in the face or short of breath, ring for help at once."),
        say("Lift in two, or comb by comb."),
        say("Put the smoker out fully and keep it off dry grass."),
        say("Medicines and acids: follow the product label and local law."),
        say(
            "Suspicious brood: close the hive, move nothing, wash gloves and tool, ring your bee"
            " inspector; it may be notifiable."
        ),
    )
