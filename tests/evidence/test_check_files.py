from typing import Any

import pytest

from combwright.evidence.check_files import CheckError, parse_checks, read_checks, refuse_twins
from combwright.terms.errors import CombwrightError, NotFoundError

GOOD: dict[str, Any] = {
    "id": '"syrup-one"',
    "says": '"One is one"',
    "function": '"science.syrup.one"',
    "expected": "1.0",
    "tolerance": "0.1",
    "unit": '"kg"',
    "source": '"Nobody"',
    "verified": '"judgement"',
    "stands": '"independent"',
}


def written(**changes: str | None) -> str:
    fields = {name: value for name, value in {**GOOD, **changes}.items() if value is not None}
    return "[[check]]\n" + "\n".join(f"{name} = {value}" for name, value in fields.items())


def test_a_good_check_is_read() -> None:
    (check,) = parse_checks(written(), "syrup", "syrup.toml")
    assert (check.topic, check.expected, check.arguments) == ("syrup", 1.0, {})


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"source": None}, "source: Field required"),
        ({"stands": '"aside"'}, "stands: Input should be 'independent'"),
        ({"stands": None}, "stands: Field required"),
        ({"year": '"later"'}, "A check on simulated colonies, and no other, says its year"),
        ({"function": '"evidence.simulated_lives.seen"'}, "and no other, says its year"),
        ({"tolerance": "0.2"}, "A tolerance above a tenth, and no other, says where it comes from"),
        ({"spread": '"source"'}, "A tolerance above a tenth, and no other"),
        ({"verified": '"hearsay"'}, "verified: Input should be 'read'"),
        ({"tolerance": "-1.0"}, "tolerance: Input should be greater than or equal to 0"),
        ({"tolerance": "nan"}, "tolerance: Input should be a finite number"),
        ({"id": '"honey-one"'}, "The id must start with the topic. Write syrup-"),
        ({"id": '"syrup One"'}, "id: String should match"),
        ({"function": '"density"'}, "function: String should match"),
        ({"colour": '"red"'}, "colour: Extra inputs are not permitted"),
        ({"expected": '"yes"'}, "Only a number can have a tolerance"),
    ],
)
def test_a_malformed_check_is_explained_with_its_place(
    changes: dict[str, str | None], said: str
) -> None:
    with pytest.raises(CheckError) as error:
        parse_checks(written(**changes), "syrup", "syrup.toml")
    assert said in str(error.value)
    assert error.value.where.startswith("syrup.toml, check 1")


def test_a_file_that_is_not_toml_is_explained() -> None:
    with pytest.raises(CombwrightError, match=r"syrup\.toml: This is not TOML.*line 2"):
        parse_checks("[[check]]\nid =\n", "syrup", "syrup.toml")


def test_stray_tables_are_refused() -> None:
    with pytest.raises(CheckError, match="may hold"):
        parse_checks("[cheque]\na = 1", "syrup", "syrup.toml")


def test_two_checks_of_one_name_are_refused() -> None:
    check = parse_checks(written(), "syrup", "syrup.toml")[0]
    with pytest.raises(CheckError, match="Two checks are called syrup-one"):
        refuse_twins([check, check])


def test_an_unknown_topic_names_the_known_ones() -> None:
    with pytest.raises(NotFoundError, match=r"no evidence on “wasps”.*syrup, honey"):
        read_checks("wasps")
