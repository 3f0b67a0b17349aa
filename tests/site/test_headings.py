"""Addresses inside a lesson hold in every language."""

from generator.site.headings import heading_ids, with_ids

ENGLISH = ["Start.\n\n## Set the ring\n\n### How\n", "## Set the ring\n\n```\n## no heading\n```\n"]
HINDI = ["शुरू।\n\n## घेरा बनाएँ\n\n### कैसे\n", "## घेरा फिर से\n"]


def test_a_translation_gets_the_ids_of_the_first_language_by_order() -> None:
    ids = heading_ids(ENGLISH, "lesson")
    assert ids == ("lesson-set-the-ring", "lesson-how", "lesson-3")
    handed = iter(ids)
    assert [with_ids(part, handed) for part in HINDI] == [
        "शुरू।\n\n## घेरा बनाएँ {#lesson-set-the-ring}\n\n### कैसे {#lesson-how}\n",
        "## घेरा फिर से {#lesson-3}\n",
    ]


def test_an_authors_own_id_stays() -> None:
    assert with_ids("## Ring {#ring}", iter(heading_ids(["## Ring {#ring}"], "lesson"))) == "## Ring {#ring}"


def test_text_in_a_fence_is_no_heading() -> None:
    assert with_ids(ENGLISH[1], iter(["one", "two"])) == "## Set the ring {#one}\n\n```\n## no heading\n```\n"
