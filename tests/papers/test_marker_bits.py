import cv2
import numpy as np

from beeworkbook.papers.marker_bits import MARKER_BITS


def test_the_bits_are_those_of_the_published_family() -> None:
    family = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_APRILTAG_36h11)
    for number, bits in enumerate(MARKER_BITS):
        drawn = cv2.aruco.generateImageMarker(family, number, 8, borderBits=1)[1:7, 1:7] > 127
        ours = np.array([bits >> (35 - index) & 1 for index in range(36)], bool).reshape(6, 6)
        assert (drawn == ours).all()


def test_any_two_differ_in_at_least_eleven_bits() -> None:
    # The 11 of 36h11; Olson 2011.
    bits = np.array([[code >> index & 1 for index in range(36)] for code in MARKER_BITS])
    apart = (bits[:, None] != bits[None]).sum(axis=2) + 36 * np.eye(len(bits), dtype=int)
    assert apart.min() >= 11
