from __future__ import annotations

from pathlib import Path

import pytest

from generator.problems import RefusedError
from generator.registry import (
    NewPerson,
    add_cohort,
    add_person,
    all_of,
    audit,
    chain_head,
    change_person,
    change_status,
    end_role,
    erase_complaint_text,
    erase_person,
    file_appeal,
    file_complaint,
    give_role,
    import_class_list,
    join_cohort,
)
from generator.registry.listing import coordinators
from tests.registry.small import DAY, Office, failing, scalar


@pytest.mark.parametrize(
    ("person", "words"),
    [
        (NewPerson("  "), "needs a name"),
        (NewPerson("अ" * 31), "more than 90 bytes"),
        (NewPerson("Gita", public_name="photo"), "name or initials"),
    ],
)
def test_a_person_without_a_fit_name_is_refused(office: Office, person: NewPerson, words: str) -> None:
    head = chain_head(office.registry)
    with pytest.raises(RefusedError, match=words):
        add_person(office.registry, person, by=office.boss, now=office.tick())
    assert chain_head(office.registry) == head


def test_a_correction_is_kept_and_logged(any_office: Office) -> None:
    office = any_office
    key = office.ids["Asha"]
    new = NewPerson(" Asha   Devi ", "en", DAY, "initials", "reads with glasses")
    change_person(office.registry, key, new, by=office.boss, now=office.tick())
    (row,) = all_of(office.registry, key)["people"]
    assert (row["name"], row["name_key"], row["accommodations"]) == ("Asha Devi", "asha devi", "reads with glasses")
    assert audit(office.registry) == ()
    with pytest.raises(RefusedError, match="no person 917"):
        change_person(office.registry, 917, new, by=office.boss, now=office.tick())


def test_a_correction_makes_no_twin_in_a_cohort(office: Office) -> None:
    with pytest.raises(RefusedError, match="of the same cohort has this name"):
        change_person(
            office.registry, office.ids["Asha"], NewPerson("BIR", "hi", DAY), by=office.boss, now=office.tick()
        )
    change_person(office.registry, office.ids["Asha"], NewPerson("Meera"), by=office.boss, now=office.tick())


def test_roles_are_given_once_and_end(office: Office) -> None:
    registry, bir = office.registry, office.ids["Bir"]
    for _ in range(2):
        give_role(registry, bir, "observer", by=office.boss, now=office.tick())
    assert scalar(registry, "select count(*) from roles where person = :key", key=bir) == 1
    end_role(registry, bir, "observer", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="is no observer"):
        end_role(registry, bir, "observer", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="there is no role 'king'"):
        give_role(registry, bir, "king", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="no person 917"):
        give_role(registry, 917, "observer", by=office.boss, now=office.tick())
    end_role(registry, office.ids["Joseph"], "coordinator", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="last coordinator"):
        end_role(registry, office.boss, "coordinator", by=office.boss, now=office.tick())
    assert audit(registry) == ()


def test_whoever_lost_the_role_can_do_nothing_more(office: Office) -> None:
    end_role(office.registry, office.boss, "coordinator", by=office.ids["Joseph"], now=office.tick())
    with pytest.raises(RefusedError, match="only a coordinator"):
        add_cohort(office.registry, "Lower Terrace", starts_on=DAY, by=office.boss, now=office.tick())


def test_all_that_is_kept_of_a_person_can_be_handed_out(office: Office) -> None:
    office.certify("Asha")
    found = all_of(office.registry, office.ids["Asha"])
    assert found["people"][0]["name"] == "Asha"
    assert found["certificates"][0]["printed_name"] == "Asha"
    assert len(found["decisions"]) == len(found["memberships"]) == 1
    with pytest.raises(RefusedError, match="no person 917"):
        all_of(office.registry, 917)


def test_whoever_holds_a_certificate_is_not_erased(office: Office) -> None:
    registry, asha = office.registry, office.ids["Asha"]
    number = office.certify("Asha").number
    for move in (None, "suspend"):
        if move:
            change_status(registry, number, move, reason="r", by=office.boss, now=office.tick())
        with pytest.raises(RefusedError, match=f"the certificate {number} of person {asha} is in force"):
            erase_person(registry, asha, by=office.boss, reason="own wish", now=office.tick())
    change_status(registry, number, "withdraw", reason="r", by=office.boss, now=office.tick())
    erase_person(registry, asha, by=office.boss, reason="own wish", now=office.tick())
    assert all_of(registry, asha)["people"][0]["name"] is None


def test_an_open_appeal_and_the_last_coordinator_stay(office: Office) -> None:
    registry = office.registry
    file_appeal(registry, office.decide("Bir", failing()), "No.", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="appeal 1 of person"):
        erase_person(registry, office.ids["Bir"], by=office.boss, reason="own wish", now=office.tick())
    end_role(registry, office.ids["Joseph"], "coordinator", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="last coordinator"):
        erase_person(registry, office.boss, by=office.boss, reason="own wish", now=office.tick())


def test_nothing_is_entered_about_an_erased_person(office: Office) -> None:
    registry, bir = office.registry, office.ids["Bir"]
    erase_person(registry, bir, by=office.boss, reason="own wish", now=office.tick())
    deeds = [
        lambda: erase_person(registry, bir, by=office.boss, reason="again", now=office.tick()),
        lambda: give_role(registry, bir, "observer", by=office.boss, now=office.tick()),
        lambda: join_cohort(registry, office.cohort, bir, "observer", by=office.boss, now=office.tick()),
        lambda: office.decide("Bir"),
        lambda: change_person(registry, bir, NewPerson("Bir"), by=office.boss, now=office.tick()),
    ]
    for deed in deeds:
        with pytest.raises(RefusedError, match="was erased on 2031-05-04"):
            deed()
    again = import_class_list(
        registry, office.cohort, "class.csv", b"name\nBir\n", languages=["hi"], by=office.boss, now=office.tick()
    )
    assert again.new == 1  # the name is somebody new
    assert audit(registry) == ()


def test_erased_words_are_in_no_file_any_more(office: Office) -> None:
    registry = office.registry
    name = "Zebediah of the far side"
    key = add_person(registry, NewPerson(name, accommodations="hears little"), by=office.boss, now=office.tick())
    folder = Path(registry.place).parent
    assert any(name.encode() in file.read_bytes() for file in folder.iterdir())
    erase_person(registry, key, by=office.boss, reason="own wish", now=office.tick())
    for file in folder.iterdir():
        for word in (name, name.casefold(), "hears little"):
            assert word.encode() not in file.read_bytes(), file


def test_a_complaints_words_can_be_erased_once_it_is_closed(office: Office) -> None:
    number = office.certify("Asha").number
    key = file_complaint(office.registry, "X is rude", certificate=number, by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="is not closed"):
        erase_complaint_text(office.registry, key, by=office.boss, reason="names people", now=office.tick())


def test_whoever_was_erased_coordinates_no_more(office: Office) -> None:
    registry, joseph = office.registry, office.ids["Joseph"]
    erase_person(registry, joseph, by=joseph, reason="own wish", now=office.tick())
    assert coordinators(registry) == (office.boss,)
    with pytest.raises(RefusedError, match="only a coordinator"):
        add_cohort(registry, "Lower Terrace", starts_on=DAY, by=joseph, now=office.tick())
    for leave in (end_role, erase_person):
        more = {"role": "coordinator"} if leave is end_role else {"reason": "own wish"}
        with pytest.raises(RefusedError, match="last coordinator"):
            leave(registry, office.boss, by=office.boss, now=office.tick(), **more)
    assert audit(registry) == ()
