from __future__ import annotations

import json
from typing import Any

import pytest

from generator.problems import RefusedError
from generator.registry import (
    NewPaper,
    NewSitting,
    about_set,
    archive_papers,
    archive_set,
    audit,
    chain_head,
    erase_person,
    papers_of,
    read_papers,
)
from tests.registry.small import DAY, Office, printed_set, scalar

CONTENT = {"format": 1, "items": []}


def papers(office: Office, *made: NewPaper, set_id: str = "s1") -> int:
    about = NewSitting(office.cohort, set_id, DAY, "fence-hand", 2, {"seed": "spring"})
    return archive_papers(office.registry, about, made, by=office.boss, now=office.tick())


def test_a_printed_set_comes_back_as_it_was(any_office: Office) -> None:
    office = any_office
    record = office.record()
    sitting = office.sit(pdfs={1: b"%PDF one", 3: b"%PDF three"})
    found = read_papers(office.registry, sitting)
    assert [(p.number, p.name, p.attempt, p.pdf) for p in found] == [
        (1, "Asha", 1, b"%PDF one"), (2, "Bir", 1, None), (3, "Cheptoo", 1, b"%PDF three"),
    ]  # fmt: skip
    for paper, learner in zip(found, record.learners, strict=True):
        assert json.loads(paper.content)["items"] == [item.model_dump(mode="json") for item in learner.items]
    assert audit(office.registry) == ()


def test_no_name_is_in_what_a_paper_asks_nor_in_what_it_was_made_from(office: Office) -> None:
    record = office.record()
    kept = json.dumps(about_set(record)) + json.dumps([p.content for p in papers_of(record, office.ids)])
    assert not any(name in kept for name in office.ids)
    assert about_set(record)["seed"] == "spring"


def test_the_same_set_again_changes_nothing_and_another_is_refused(any_office: Office) -> None:
    office = any_office
    sitting = office.sit()
    head = chain_head(office.registry)
    assert office.sit() == sitting
    assert chain_head(office.registry) == head
    papers(office, NewPaper(office.ids["Asha"], 1, "en", CONTENT))
    with pytest.raises(RefusedError, match="archived already, with other papers"):
        papers(office, NewPaper(office.ids["Bir"], 1, "en", CONTENT))


def test_equal_papers_are_kept_once(office: Office) -> None:
    papers(office, *(NewPaper(office.ids[name], n, "en", CONTENT) for n, name in ((1, "Asha"), (2, "Bir"))))
    assert scalar(office.registry, "select count(*) from contents") == 1
    assert audit(office.registry) == ()


def test_attempts_are_counted_by_scheme(office: Office) -> None:
    papers(office, NewPaper(office.ids["Asha"], 1, "en", CONTENT))
    second = papers(office, NewPaper(office.ids["Asha"], 1, "en", CONTENT), set_id="s2")
    assert [paper.attempt for paper in read_papers(office.registry, second)] == [2]
    other = archive_papers(
        office.registry, NewSitting(office.cohort, "s3", DAY), [NewPaper(office.ids["Asha"], 1, "en", CONTENT)],
        by=office.boss, now=office.tick(),
    )  # fmt: skip
    assert [paper.attempt for paper in read_papers(office.registry, other)] == [1]


@pytest.mark.parametrize(
    ("made", "words"),
    [
        ([], "without papers"),
        ([("Asha", 1), ("Bir", 1)], "two papers have the number 1"),
        ([("Asha", 1), ("Asha", 2)], "two papers have the person"),
        ([("Asha", 1), ("Joseph", 2)], "is no candidate"),
    ],
)
def test_papers_that_do_not_fit_are_refused_whole(office: Office, made: list[Any], words: str) -> None:
    head = chain_head(office.registry)
    with pytest.raises(RefusedError, match=words):
        papers(office, *(NewPaper(office.ids[name], number, "en", CONTENT) for name, number in made))
    assert chain_head(office.registry) == head
    assert scalar(office.registry, "select count(*) from sittings") == 0


def test_a_set_for_strangers_is_refused(office: Office) -> None:
    with pytest.raises(RefusedError, match="papers for Zed, who are no candidates here"):
        archive_set(
            office.registry, office.cohort, printed_set(("Asha", "Zed")), held_on=DAY, by=office.boss, now=office.tick()
        )
    with pytest.raises(RefusedError, match="no sitting 917"):
        read_papers(office.registry, 917)


def test_an_erasure_takes_the_printed_paper_and_leaves_what_was_asked(office: Office) -> None:
    sitting = office.sit(pdfs={1: b"%PDF Asha"})
    erase_person(office.registry, office.ids["Asha"], by=office.boss, reason="own wish", now=office.tick())
    first = read_papers(office.registry, sitting)[0]
    assert (first.name, first.pdf) == (None, None)
    assert json.loads(first.content)["items"]
    assert audit(office.registry) == ()
