"""Colour as the eye has it: how far two colours are apart, also in colour-blind eyes, and contrast.

Plain arithmetic on sRGB; which colour stands for what is in legend.py.
"""

from enum import StrEnum
from typing import Final

import numpy as np
from numpy.typing import ArrayLike, NDArray

Colours = NDArray[np.float64]
"""Shape (..., 3)."""


class Sight(StrEnum):
    """How an eye sees colour: all three cones, or one kind missing."""

    NORMAL = "normal"
    PROTAN = "protan"
    DEUTAN = "deutan"
    TRITAN = "tritan"


_MISSING: Final[dict[Sight, list[list[float]]]] = {
    Sight.PROTAN: [
        [0.152286, 1.052583, -0.204868],
        [0.114503, 0.786281, 0.099216],
        [-0.003882, -0.048116, 1.051998],
    ],
    Sight.DEUTAN: [
        [0.367322, 0.860646, -0.227968],
        [0.280085, 0.672501, 0.047413],
        [-0.011820, 0.042940, 0.968881],
    ],
    Sight.TRITAN: [
        [1.255528, -0.076749, -0.178779],
        [-0.078411, 0.930809, 0.147602],
        [0.004733, 0.691367, 0.303900],
    ],
}
"""Severity 1, on linear RGB. Source: Machado, Oliveira & Fernandes 2009, IEEE TVCG 15(6):1291-1298."""

_TO_XYZ: Final = (
    (0.4124564, 0.3575761, 0.1804375),
    (0.2126729, 0.7151522, 0.0721750),
    (0.0193339, 0.1191920, 0.9503041),
)
"""Linear sRGB to CIE XYZ under D65. Source: IEC 61966-2-1, at seven places (from memory)."""
_WHITE: Final = (0.9504700, 1.0, 1.0888300)
"""D65, 2 degree observer: what the matrix above makes of white."""
_LUMINANCE: Final = (0.2126, 0.7152, 0.0722)
"""Relative luminance. Source: WCAG 2.2."""


def rgb_of(hexes: str) -> Colours:
    """The red, green and blue of "#RRGGBB", from 0 to 1."""
    return np.array([int(hexes[at : at + 2], 16) / 255 for at in (1, 3, 5)])


def hex_of(rgb: ArrayLike) -> str:
    """The "#RRGGBB" of red, green and blue from 0 to 1."""
    whole = np.clip(np.rint(np.asarray(rgb, dtype=float) * 255), 0, 255).astype(int)
    return "#" + "".join(f"{part:02X}" for part in whole)


def to_linear(rgb: ArrayLike) -> Colours:
    """Light instead of code values. Shapes: (..., 3), 0 to 1. Source: IEC 61966-2-1, as WCAG 2.2 gives it."""
    coded = np.asarray(rgb, dtype=float)
    light: Colours = np.where(coded <= 0.04045, coded / 12.92, ((coded + 0.055) / 1.055) ** 2.4)
    return light


def from_linear(linear: ArrayLike) -> Colours:
    """Code values of light, clipped to what a screen can show. Shapes: (..., 3), 0 to 1."""
    light = np.clip(np.asarray(linear, dtype=float), 0, 1)
    coded: Colours = np.where(light <= 0.0031308, light * 12.92, 1.055 * light ** (1 / 2.4) - 0.055)
    return coded


def mix_light(rgb: ArrayLike, ink: ArrayLike, share: float) -> Colours:
    """What the eye makes of a fill with a share of its area inked, seen from afar."""
    return from_linear((1 - share) * to_linear(rgb) + share * to_linear(ink))


def simulate(rgb: ArrayLike, sight: Sight) -> Colours:
    """The colour as an eye of this kind sees it. Shapes: (..., 3), 0 to 1.

    Source: Machado, Oliveira & Fernandes 2009, severity 1.
    """
    if sight is Sight.NORMAL:
        return np.asarray(rgb, dtype=float)
    cones: Colours = np.array(_MISSING[sight])
    return from_linear(np.matmul(to_linear(rgb), cones.T))


def to_lab(rgb: ArrayLike) -> Colours:
    """CIE L*a*b* of sRGB under D65. Shapes: (..., 3). Source: CIE 15:2004."""
    relative = to_linear(rgb) @ np.array(_TO_XYZ).T / np.array(_WHITE)
    root = np.where(relative > (6 / 29) ** 3, np.cbrt(relative), relative * (29 / 6) ** 2 / 3 + 4 / 29)
    x, y, z = np.moveaxis(root, -1, 0)
    return np.stack([116 * y - 16, 500 * (x - y), 200 * (y - z)], axis=-1)


def chroma(rgb: ArrayLike) -> NDArray[np.float64]:
    """How strong a colour is, C*ab. Shapes: (..., 3) to (...)."""
    lab = to_lab(rgb)
    return np.hypot(lab[..., 1], lab[..., 2])


def delta_e_2000(lab: ArrayLike, other: ArrayLike) -> NDArray[np.float64]:
    """How far two colours are apart. Shapes: (..., 3) L*a*b*, broadcast; result (...).

    Source: CIEDE2000 as written out by Sharma, Wu & Dalal 2005, Color Res. Appl. 30:21-30.
    """
    l1, a1, b1 = np.moveaxis(np.asarray(lab, dtype=float), -1, 0)
    l2, a2, b2 = np.moveaxis(np.asarray(other, dtype=float), -1, 0)
    mean7 = ((np.hypot(a1, b1) + np.hypot(a2, b2)) / 2) ** 7
    stretch = 1 + 0.5 * (1 - np.sqrt(mean7 / (mean7 + 25.0**7)))
    c1, h1 = _polar(a1 * stretch, b1)
    c2, h2 = _polar(a2 * stretch, b2)
    grey = c1 * c2 == 0
    turn = np.where(grey, 0.0, (h2 - h1 + 180) % 360 - 180)
    # Sharma's branch: exactly half a turn keeps the sign of the difference.
    turn = np.where((np.abs(h2 - h1) == 180) & ~grey, h2 - h1, turn)
    hue = np.where(grey, h1 + h2, _mean_hue(h1, h2))
    d_light, d_chroma = l2 - l1, c2 - c1
    d_hue = 2 * np.sqrt(c1 * c2) * np.sin(np.radians(turn) / 2)
    light, strength = (l1 + l2) / 2, (c1 + c2) / 2
    s_light = 1 + 0.015 * (light - 50) ** 2 / np.sqrt(20 + (light - 50) ** 2)
    s_chroma = 1 + 0.045 * strength
    s_hue = 1 + 0.015 * strength * _hue_weight(hue)
    root = 2 * np.sqrt(strength**7 / (strength**7 + 25.0**7))
    rotation = -root * np.sin(np.radians(60 * np.exp(-(((hue - 275) / 25) ** 2))))
    parts = (d_light / s_light) ** 2 + (d_chroma / s_chroma) ** 2 + (d_hue / s_hue) ** 2
    cross = rotation * (d_chroma / s_chroma) * (d_hue / s_hue)
    found: NDArray[np.float64] = np.sqrt(np.maximum(parts + cross, 0))
    return found


def _polar(a: Colours, b: Colours) -> tuple[Colours, Colours]:
    return np.hypot(a, b), np.degrees(np.arctan2(b, a)) % 360


def _mean_hue(h1: Colours, h2: Colours) -> Colours:
    mean = (h1 + h2) / 2
    far = np.abs(h1 - h2) > 180
    return np.where(far, np.where(h1 + h2 < 360, mean + 180, mean - 180), mean)


def _hue_weight(hue: Colours) -> Colours:
    angle = np.radians(hue)
    weight: Colours = (
        1
        - 0.17 * np.cos(angle - np.radians(30))
        + 0.24 * np.cos(2 * angle)
        + 0.32 * np.cos(3 * angle + np.radians(6))
        - 0.20 * np.cos(4 * angle - np.radians(63))
    )
    return weight


def luminance(rgb: ArrayLike) -> NDArray[np.float64]:
    """Relative luminance, 0 black to 1 white. Shapes: (..., 3) to (...). Source: WCAG 2.2."""
    light: NDArray[np.float64] = to_linear(rgb) @ np.array(_LUMINANCE)
    return light


def contrast_ratio(rgb: ArrayLike, other: ArrayLike) -> float:
    """The contrast of two colours, 1 to 21. Shapes: (3,) each. Source: WCAG 2.2."""
    dark, bright = sorted((float(luminance(rgb)), float(luminance(other))))
    return (bright + 0.05) / (dark + 0.05)
