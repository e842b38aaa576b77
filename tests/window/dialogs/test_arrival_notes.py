"""The plan and the notes of an arrival are those of the colony's rules, in words."""

from dataclasses import replace
from datetime import date

from beeworkbook.colony.records import Arrival
from beeworkbook.colony.seasons import Hemisphere
from beeworkbook.window.dialogs.arrival_notes import arrival_notes, plan_lines
from beeworkbook.workbook.edits.arrive import ArrivalSpec

NUCLEUS = ArrivalSpec("Reed", Arrival.NUCLEUS, date(2026, 5, 16), fed="2L 1:1")


def test_a_nucleus_gets_its_feed_look_and_its_first_look() -> None:
    feed, first = plan_lines(NUCLEUS)
    assert feed.startswith("Mon 18 May to Tue 19 May: ")
    assert first.startswith("Sat 23 May: first look")
    for word in ("laying", "pollen", "drawn"):
        assert word in first


def test_the_plans_of_package_and_swarm_differ() -> None:
    plans = {plan_lines(replace(NUCLEUS, arrival=kind)) for kind in (Arrival.PACKAGE, Arrival.SWARM)}
    assert len(plans | {plan_lines(NUCLEUS)}) == 3


def test_an_arrival_with_no_plan_says_so() -> None:
    lines = plan_lines(replace(NUCLEUS, arrival=Arrival.UNKNOWN, fed=""))
    assert all(lines)


def test_notes_speak_of_parts_and_feed_and_stay_silent_otherwise() -> None:
    assert arrival_notes(NUCLEUS, Hemisphere.NORTH) == ()
    notes = arrival_notes(replace(NUCLEUS, supers=1, excluder=True), Hemisphere.NORTH)
    assert len(notes) == 2
    assert all(note.reason for note in notes)
    assert arrival_notes(replace(NUCLEUS, fed="2L 1:3"), Hemisphere.NORTH)
    assert arrival_notes(replace(NUCLEUS, fed="no idea"), Hemisphere.NORTH) == ()
    winter = arrival_notes(replace(NUCLEUS, came_on=date(2026, 12, 20)), Hemisphere.NORTH)
    assert winter
    assert arrival_notes(replace(NUCLEUS, came_on=date(2026, 12, 20)), Hemisphere.SOUTH) == ()
