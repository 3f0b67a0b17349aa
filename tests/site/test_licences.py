"""Whose work travels is named with its terms."""

import pytest

from generator.problems import MachineError
from generator.site import licences


def test_every_travelling_package_comes_with_its_terms() -> None:
    text = licences.licences("our own terms").decode("utf-8")
    assert "our own terms" in text
    assert "SIL Open Font License" in text  # the font
    assert "Permission is hereby granted, free of charge" in text  # the page theme
    assert "lunr" in text  # the search inside the theme
    for package in licences.TRAVELLING:
        assert f"\n{package} " in text


def test_a_package_without_terms_stops_the_build(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(licences, "_licence_texts", lambda package: iter(()))
    with pytest.raises(MachineError, match="fontpkg-mukta"):
        licences.licences("own")
