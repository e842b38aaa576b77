"""Every command there is, in the order of the help. A command is documented in resources/help/commands.md."""

from beeworkbook.cli import (
    bring_in,
    chart,
    check,
    create,
    frames,
    hand_out,
    season,
    sheets,
    totals,
    typed_comb,
)
from beeworkbook.cli.command import Command

COMMANDS: dict[str, Command] = {
    module.COMMAND.name: module.COMMAND
    for module in (
        create,
        bring_in,
        hand_out,
        sheets,
        chart,
        season,
        totals,
        typed_comb,
        frames,
        check,
    )
}
