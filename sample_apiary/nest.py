"""Where it all lies: what a colony holds today, spread over the sides of its combs in eighths.

The nest is an ellipsoid across the combs, egg-shaped, its cut through each side clipped by the frame;
pollen lies next to it, stores outside. Source: the cut is pi * a * b * (1 - z²/c²), shape after
apiarynotes 2013 and apicolturainpratica 2011; all proportions are our own.
"""

import math
import random
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from beeworkbook.comb.contents import Content, Face
from beeworkbook.comb.frames import FrameType
from beeworkbook.comb.typed import EIGHTHS, TypedSide, write_side
from sample_apiary.season import CELLS_PER_DM2, KG_PER_SIDE_DM2, Bees

Eighths = dict[Content, float]
_PITCH_MM: Final = 38.0
_BEES_PER_DM2: Final = 125.0
"""Source: Imdorf, Rickli & Fluri 1996: 1 000 bees on a Zander side of 8 dm²."""
_MOST: Final = 0.9
_STAGES: Final = (Content.EGGS, Content.OPEN, Content.SEALED)
_ORDER: Final = (
    *_STAGES,
    Content.DRONE,
    Content.POLLEN,
    Content.NECTAR,
    Content.STORES,
    Content.FOUNDATION,
    Content.EMPTY,
)


@dataclass(frozen=True)
class Place:
    """One side of one comb of the box, and how far from the heart of the nest it hangs, in combs."""

    place: int
    face: Face
    away: float


@dataclass(frozen=True)
class Nest:
    """Every side of the brood box in eighths, unrounded, and how far bees cover it."""

    sides: Mapping[tuple[int, Face], Eighths]
    covered: Mapping[tuple[int, Face], float]

    def combs_with(self, content: Content, least: float = 0.4) -> list[int]:
        """The places whose comb holds so much of a content on either side."""
        found = {place for (place, _), held in self.sides.items() if held.get(content, 0.0) >= least}
        return sorted(found)

    def brood_combs(self) -> int:
        """How many combs have brood."""
        return len({place for (place, _), held in self.sides.items() if _brood(held) >= 0.4})

    def worth(self) -> float:
        """How many full combs the brood would make."""
        return sum(_brood(held) for held in self.sides.values()) / EIGHTHS / 2


def _brood(held: Mapping[Content, float]) -> float:
    return sum(held.get(content, 0.0) for content in (*_STAGES, Content.DRONE))


def spread(bees: Bees, frame: FrameType, places: list[int], lean: float, *, nectar: float) -> Nest:
    """The sides of a box whose combs hang in these places. `lean` moves the nest off the middle, in combs."""
    heart = (places[0] + places[-1]) / 2 + lean
    sides = [
        Place(place, face, place + (-0.25 if face is Face.A else 0.25) - heart)
        for place in places
        for face in Face
    ]
    drawn = _drawn(bees, places, heart)
    shares = _brood_shares(bees, frame, sides, drawn)
    held: dict[tuple[int, Face], Eighths] = {}
    for side in sides:
        key = (side.place, side.face)
        built = drawn[side.place]
        held[key] = {Content.FOUNDATION: EIGHTHS * (1 - built), **_stages(bees, side, shares[key])}
    _put_pollen(bees, held, sides, drawn)
    _put_stores(bees, frame, held, sides, nectar)
    return Nest(held, _covered(bees, frame, sides, drawn))


def _drawn(bees: Bees, places: list[int], heart: float) -> dict[int, float]:
    ranked = sorted(places, key=lambda place: (abs(place - heart), place))
    return {place: min(1.0, max(0.0, bees.drawn - rank)) for rank, place in enumerate(ranked)}


def _cut(size_mm: float, side: Place, frame: FrameType) -> float:
    """The share of a side that a nest of this size takes."""
    c = size_mm * (1.06 if side.away > 0 else 0.94)
    z = side.away * _PITCH_MM
    if abs(z) >= c:
        return 0.0
    part = math.sqrt(1 - (z / c) ** 2)
    a = min(size_mm * 1.15 * part, frame.inside_width_mm / 2 * 1.07)
    b = min(size_mm * 0.85 * part, frame.inside_height_mm / 2 * 1.07)
    return min(_MOST, math.pi * a * b / (frame.inside_width_mm * frame.inside_height_mm))


def _brood_shares(
    bees: Bees, frame: FrameType, sides: list[Place], drawn: Mapping[int, float]
) -> dict[tuple[int, Face], float]:
    wanted = (bees.brood + bees.drones) / CELLS_PER_DM2 / frame.area_dm2

    def shares(size: float) -> dict[tuple[int, Face], float]:
        return {
            (side.place, side.face): _cut(size, side, frame) * min(1.0, drawn[side.place]) for side in sides
        }

    low, high = 0.0, 900.0
    for _ in range(40):
        middle = (low + high) / 2
        if sum(shares(middle).values()) < wanted:
            low = middle
        else:
            high = middle
    return shares(high) if wanted > 0.02 else dict.fromkeys(shares(0.0), 0.0)


def _stages(bees: Bees, side: Place, share: float) -> Eighths:
    """The ages of a side: as in the whole colony, but no two sides alike, and the rim younger as it grows."""
    if share <= 0:
        return {}
    whole = max(1.0, bees.brood)
    turn = side.place * 1.9 + (0.8 if side.face is Face.B else 0.0) + bees.sealed / 1700
    rim = (0.5 - share) * (1 if bees.trend > 0 else -1)
    ages = {
        Content.EGGS: bees.eggs / whole * (1 + 0.7 * math.sin(turn) + 0.8 * rim),
        Content.OPEN: bees.open / whole * (1 + 0.5 * math.sin(turn + 2.1) + 0.3 * rim),
        Content.SEALED: bees.sealed / whole * (1 + 0.35 * math.sin(turn + 4.2) - 0.5 * rim),
    }
    ages = {content: max(0.0, age) for content, age in ages.items()}
    total = sum(ages.values()) or 1.0
    held = {content: share * EIGHTHS * age / total for content, age in ages.items()}
    drones = bees.drones / max(1.0, bees.brood + bees.drones)
    if 1.7 < abs(side.away) < 4.0 and drones > 0.01:
        held[Content.DRONE] = min(1.1, share * EIGHTHS * drones * 1.8)
        keep = 1 - held[Content.DRONE] / (share * EIGHTHS)
        held = {key: value * (keep if key in _STAGES else 1.0) for key, value in held.items()}
    return held


def _free(held: Mapping[Content, float]) -> float:
    return max(0.0, EIGHTHS - sum(held.values()))


def _put_pollen(
    bees: Bees, held: dict[tuple[int, Face], Eighths], sides: list[Place], drawn: Mapping[int, float]
) -> None:
    """A band round the brood, most on the combs at the edge of the nest."""
    strength = min(1.0, bees.open / 5000) * 0.9 + 0.25
    for side in sides:
        mine = held[side.place, side.face]
        brood = _brood(mine)
        near = 1.6 if 0 < brood < 3 else 1.0 if brood else 0.5 * math.exp(-abs(abs(side.away) - 3.4))
        mine[Content.POLLEN] = min(_free(mine) * 0.7, near * strength) * min(1.0, drawn[side.place])


def _put_stores(
    bees: Bees,
    frame: FrameType,
    held: dict[tuple[int, Face], Eighths],
    sides: list[Place],
    nectar: float,
) -> None:
    left = bees.stores_kg / (KG_PER_SIDE_DM2 * frame.area_dm2 / EIGHTHS)
    farthest = max(abs(side.away) for side in sides)
    weights = {(side.place, side.face): 0.35 + (abs(side.away) / farthest) ** 1.5 for side in sides}
    full: dict[tuple[int, Face], float] = dict.fromkeys(weights, 0.0)
    for _ in range(12):
        room = {key: _free(held[key]) * 0.95 - full[key] for key in weights}
        open_to = {key: weight for key, weight in weights.items() if room[key] > 1e-9}
        total = sum(weight * _free(held[key]) for key, weight in open_to.items())
        if left <= 1e-6 or not total:
            break
        given = 0.0
        for key, weight in open_to.items():
            share = min(_free(held[key]) * 0.95 - full[key], left * weight * _free(held[key]) / total)
            full[key] += share
            given += share
        left -= given
    for key, amount in full.items():
        thin = nectar * (1.3 if _brood(held[key]) else 0.7)
        held[key][Content.NECTAR] = amount * min(0.8, thin)
        held[key][Content.STORES] = amount - held[key][Content.NECTAR]
        held[key][Content.EMPTY] = _free(held[key])


def _covered(
    bees: Bees, frame: FrameType, sides: list[Place], drawn: Mapping[int, float]
) -> dict[tuple[int, Face], float]:
    """Bees covering each side, in eighths: thickest at the heart."""
    wanted = bees.in_the_box / (_BEES_PER_DM2 * frame.area_dm2)
    reach = max(0.6, wanted / 2.6)
    raw = {
        (side.place, side.face): math.exp(-((side.away / reach) ** 2) * 0.7) * (0.3 + 0.7 * drawn[side.place])
        for side in sides
    }
    scale = wanted / max(1e-6, sum(raw.values()))
    return {key: min(EIGHTHS, EIGHTHS * value * scale) for key, value in raw.items()}


def rounded(held: Mapping[Content, float], step: float) -> Eighths:
    """Eighths as a keeper would say them: whole steps that fill the side, by the largest remainders."""
    units = {content: held.get(content, 0.0) / step for content in _ORDER}
    floor = {content: int(value) for content, value in units.items()}
    left = round(EIGHTHS / step) - sum(floor.values())
    by_rest = sorted(_ORDER, key=lambda content: (floor[content] - units[content], content))
    for content in by_rest[:left]:
        floor[content] += 1
    return {content: floor[content] * step for content in _ORDER if floor[content]}


def typed_side(eighths: Eighths, bees: float | None = None) -> str:
    """A side as it is typed, an empty rest as a point."""
    empty = eighths.get(Content.EMPTY, 0.0)
    rest = 0 < empty < EIGHTHS
    said = {content: value for content, value in eighths.items() if not (rest and content is Content.EMPTY)}
    return write_side(TypedSide(eighths=said, rest_empty=rest, bees=bees))


def typed_comb(nest: Nest, place: int, *, by_side: bool, chance: random.Random) -> str:
    """A comb as it is typed: both sides alike in whole eighths, or each by itself in halves with its bees."""
    a, b = nest.sides[place, Face.A], nest.sides[place, Face.B]
    if not by_side:
        both = {content: (a.get(content, 0.0) + b.get(content, 0.0)) / 2 for content in _ORDER}
        return typed_side(rounded(_wobbled(both, chance), 1.0))
    texts = [
        typed_side(
            rounded(_wobbled(nest.sides[place, face], chance), 0.5), round(nest.covered[place, face] * 2) / 2
        )
        for face in Face
    ]
    return " / ".join(texts)


def _wobbled(held: Mapping[Content, float], chance: random.Random) -> Eighths:
    """The same as an eye would take it: a little off, and still a full side."""
    off = {content: value * chance.uniform(0.88, 1.12) for content, value in held.items()}
    whole = sum(off.values()) or 1.0
    return {content: value * EIGHTHS / whole for content, value in off.items()}
