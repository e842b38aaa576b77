"""A typed comb read back in words, live beside the field it is typed in."""

from beeworkbook.comb.contents import CellKind, Face
from beeworkbook.comb.names import cell_kind_name, content_short
from beeworkbook.comb.typed import EIGHTHS, SideKind, TypedComb, TypedSide
from beeworkbook.words import number, say


def describe(comb: TypedComb) -> str:
    """What was typed: "eggs 1, sealed 3, the rest empty: 8 of 8 eighths of side A".

    Sides typed alike are read once, as "each side". An empty text if nothing was typed.
    """
    if comb.alike:
        said = [_describe_side(comb.sides[Face.A], say("each side"))]
    else:
        said = [_describe_side(side, say("side {face}", face=face)) for face, side in comb.sides.items()]
    marks = _marks(comb.cells, say("this comb"), queen=comb.queen)
    return "; ".join([*said, *([", ".join(marks)] if marks else [])])


def _describe_side(side: TypedSide, where: str) -> str:
    said = [_contents(side, where)]
    if side.bees is not None:
        said.append(say("bees on {eighths} eighths of {side}", eighths=number(side.bees), side=where))
    said += _marks(side.cells, where, queen=side.queen)
    return ", ".join(filter(None, said))


def _contents(side: TypedSide, where: str) -> str:
    if side.kind is SideKind.UNCHANGED:
        return say("{side} looked at and unchanged", side=where)
    if side.kind is SideKind.ASSUMED:
        return say("{side} not looked at, assumed as last time", side=where)
    if side.kind is SideKind.NOT_LOOKED:
        return say("{side} not looked at", side=where)
    names = [f"{content_short(content)} {number(amount)}" for content, amount in side.eighths.items()]
    if side.rest_empty:
        names.append(say("the rest empty") if side.eighths else say("all of it empty"))
    if not names:
        return ""
    filled = EIGHTHS if side.rest_empty else side.filled
    return say(
        "{contents}: {filled} of 8 eighths of {side}",
        contents=", ".join(names),
        filled=number(filled),
        side=where,
    )


def _marks(cells: tuple[CellKind, ...], where: str, *, queen: bool) -> list[str]:
    said = [say("queen on {place}", place=where)] if queen else []
    for kind in dict.fromkeys(cells):
        count = cells.count(kind)
        name = cell_kind_name(kind)
        said.append(
            say("{cell} on {place}", cell=name, place=where)
            if count == 1
            else say("{count} × {cell} on {place}", count=count, cell=name, place=where)
        )
    return said
