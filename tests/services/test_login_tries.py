from datetime import UTC, datetime, timedelta

from combwright.services.login_tries import LONGEST_S, QUICK, TRIES, LoginTries

NOW = datetime(2027, 4, 24, 9, tzinfo=UTC)


def test_an_address_that_tried_too_often_waits_and_no_other_does() -> None:
    tries = LoginTries()
    assert all(tries.begin("203.0.113.9", NOW) for _ in range(TRIES))
    assert not tries.begin("203.0.113.9", NOW)
    assert tries.begin("203.0.113.10", NOW)
    assert tries.begin("203.0.113.9", NOW + timedelta(minutes=11))


def test_the_right_passphrase_forgets_the_tries_before_it() -> None:
    tries = LoginTries()
    for _ in range(3 * TRIES):
        assert tries.begin("203.0.113.9", NOW)
        tries.succeed("203.0.113.9")


def test_addresses_of_one_connection_count_as_one() -> None:
    tries = LoginTries()
    assert sum(tries.begin(f"2001:db8:1:2::{number:x}", NOW) for number in range(80)) == TRIES


def test_many_addresses_slow_all_down_and_shut_nobody_out() -> None:
    tries = LoginTries()
    for number in range(QUICK):
        tries.begin(f"203.0.113.{number}", NOW)
    assert tries.pause_s == 0
    for number in range(10 * QUICK):
        tries.begin(f"198.51.{number % 5}.{number}", NOW)
    assert 1 < tries.pause_s <= LONGEST_S
    assert tries.begin("192.0.2.1", NOW)
