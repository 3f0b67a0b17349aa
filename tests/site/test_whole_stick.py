"""The course as it travels: every page there, nothing asked for outside, the same bytes every time."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from generator.site import Products, site_files
from generator.site.fonts import missing_characters
from generator.site.mkdocs_run import search_index
from generator.site.one_file import opened
from generator.site.stick import name_faults
from tests.site.course_stick import Built, build, built_once, course

OUTSIDE = re.compile(r"""(?:\b(?:src|href|action|data)=["']?|url\(["']?|@import\s+["'])(?:https?:)?//""", re.IGNORECASE)


@pytest.fixture
def built() -> Built:
    return built_once()


def pages(built: Built) -> dict[str, str]:
    return {path: opened(data) for path, data in built.files.items() if path.endswith(".html")}


def test_no_page_or_style_names_an_address_outside(built: Built) -> None:
    texts = {path: data.decode("utf-8") for path, data in built.files.items() if path.endswith((".html", ".css"))}
    assert [path for path, text in texts.items() if OUTSIDE.search(text)] == []


def test_every_name_and_path_is_good_for_a_stick(built: Built) -> None:
    assert name_faults(built.files) == ()
    assert max(map(len, built.files)) <= 100


def test_every_link_inside_the_stick_leads_somewhere(built: Built) -> None:
    texts = pages(built)
    for path, text in texts.items():
        ids = set(re.findall(r'\bid="([^"]+)"', text))
        for address in re.findall(r'\bhref="([^"]+)"', text):
            if address.startswith(("data:", "javascript:")):
                continue
            target, _, anchor = address.partition("#")
            if not target:
                # the theme's own skip and drawer targets are ids of the same page, too
                assert not anchor or anchor in ids or path.startswith("phone/"), f"{path}: {address}"
                if path.startswith("phone/"):
                    assert anchor in ids, f"{path}: {address}"
                continue
            found = (built.folder / path).parent / target
            assert found.is_file(), f"{path}: {address}"
            if anchor and target.endswith(".html"):
                assert f'id="{anchor}"' in found.read_text(encoding="utf-8"), f"{path}: {address}"


def test_headings_have_the_same_addresses_in_all_languages(built: Built) -> None:
    ids = {
        language: [
            (path, re.findall(r'<h[1-6][^>]*\bid="([^"]+)"', data.decode("utf-8")))
            for path, data in sorted(part.site.items())
            if path.endswith(".html")
        ]
        for language, part in built.parts.items()
    }
    assert ids["en"] == ids["hi"]
    assert all(name.isascii() for _, names in ids["hi"] for name in names)
    assert all(len(names) == len(set(names)) for _, names in ids["hi"])


def test_every_page_is_in_the_search_index(built: Built) -> None:
    for part in built.parts.values():
        index = search_index(part.site)
        found = {doc["location"].partition("#")[0] for doc in index["docs"]}
        assert found == {path for path in part.site if path.endswith(".html")}


def test_no_id_stands_twice_in_a_page(built: Built) -> None:
    for path, text in pages(built).items():
        ids = re.findall(r'<[a-zA-Z][^<>]*?\sid="([^"]+)"', text)
        assert sorted(ids) == sorted(set(ids)), path


def test_the_font_has_every_sign_that_a_page_shows(built: Built) -> None:
    for language, part in built.parts.items():
        for path, data in part.site.items():
            if path.endswith(".html"):
                text = re.sub(r"<script.*?</script>|<[^>]+>", " ", data.decode("utf-8"), flags=re.DOTALL)
                assert missing_characters([text]) == "", f"{language}/{path}"


def test_a_second_build_makes_nothing_and_gives_the_same_bytes(built: Built, tmp_path: Path) -> None:
    again = Products(built.folder.parent / "cache")
    prints = {language: part.prints for language, part in built.parts.items()}
    assert site_files(course(), again, prints) == built.parts
    assert again.made == []
    fresh = build(tmp_path / "elsewhere")
    assert fresh.files == built.files


def test_an_edited_lesson_makes_only_its_languages_site_anew(built: Built) -> None:
    content = course()
    lessons = dict(content.lessons)
    first, *rest = lessons["frame", "hi"]
    lessons["frame", "hi"] = (type(first)(first.markdown + "\nएक नई पंक्ति।\n"), *rest)
    again = Products(built.folder.parent / "cache")
    prints = {language: part.prints for language, part in built.parts.items()}
    edited = site_files(type(content)(**{**vars(content), "lessons": lessons}), again, prints)
    assert sorted(again.made) == ["one-file-hi", "site-hi"]
    assert edited["en"] == built.parts["en"]
    assert "एक नई पंक्ति".encode() in edited["hi"].site["frame.html"]
    assert "एक नई पंक्ति" in opened(edited["hi"].one_file)


def test_without_a_script_every_question_and_its_answer_can_be_read(built: Built) -> None:
    for language, part in built.parts.items():
        text = part.site["frame.html"].decode("utf-8")
        questions = [one for one in built.content.questions_of("frame") if not one.retired]
        for question in questions:
            assert f'id="exercise-{question.id}"' in text
            assert text.count(f'data-question="{question.id}"') == 1
        parts = [
            part for key in built.content.modules["frame"].scenarios for part in built.content.scenarios[key].parts
        ]
        answers = text[text.index('class="ts-answers"') : text.index("</details>")]
        assert answers.count("<dt>") == len(questions) + len(parts), language
