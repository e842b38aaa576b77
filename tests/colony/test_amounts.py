import pytest

from beeworkbook.colony.amounts import Amount, AmountError, Measure, parse_amount, write_amount


@pytest.mark.parametrize(
    ("typed", "value", "measure"),
    [
        ("2L", 2, Measure.LITRES),
        ("500 ml", 0.5, Measure.LITRES),
        ("2,5 kg", 2.5, Measure.KG),
        ("250 g", 0.25, Measure.KG),
        ("1 lb", 0.45359237, Measure.KG),
        (".5 litres", 0.5, Measure.LITRES),
        ("8", 8, None),
    ],
)
def test_amounts_are_read_in_one_unit_of_each(typed: str, value: float, measure: Measure | None) -> None:
    amount = parse_amount(typed)
    assert (amount.value, amount.measure) == (value, measure)


@pytest.mark.parametrize("typed", ["", "kg", "-2 kg", "2 pints", "2 stone", "1.2.3 kg", "9" * 50])
def test_what_is_no_amount_is_refused(typed: str) -> None:
    with pytest.raises(AmountError):
        parse_amount(typed)


def test_an_amount_written_is_the_amount_read() -> None:
    assert parse_amount(write_amount(2.5, Measure.KG)) == Amount(2.5, Measure.KG, "kg")
