from __future__ import annotations

import json
import os
import shutil
import threading
import zipfile
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest

from generator.problems import MachineError, RefusedError
from generator.registry import NewPerson, add_person, audit, audit_backup, backup, chain_head, read_backup, restore
from tests.registry.server import new_database
from tests.registry.small import START, Office, open_at, rewrite


def signing(words: bytes) -> bytes:
    return b"signed:" + words


def verifying(words: bytes, signature: bytes) -> bool:
    return signature == b"signed:" + words


@pytest.fixture
def kept(full_office: Office, tmp_path: Path) -> Path:
    target = tmp_path / "stick" / "kept.zip"
    backup(full_office.registry, target, now=full_office.tick(), sign=signing)
    return target


def remade(source: Path, target: Path, **changed: Any) -> Path:
    """A backup whose note or data was changed by someone."""
    with zipfile.ZipFile(source) as old, zipfile.ZipFile(target, "w") as new:
        for name in old.namelist():
            data = old.read(name)
            if name == "head.json":
                data = json.dumps({**json.loads(data), **changed.get("note", {})}).encode()
            elif "data" in changed:
                data = changed["data"](data)
            if name not in changed.get("without", ()):
                new.writestr(name, data)
    return target


def test_a_backup_says_what_is_in_it(full_office: Office, kept: Path) -> None:
    found = read_backup(kept, verifying)
    assert found.head == chain_head(full_office.registry)
    assert found.made_at == full_office.now.strftime("%Y-%m-%dT%H:%M:%S.%fZ")
    assert audit_backup(kept, verifying) == ()
    assert not list(kept.parent.glob(".backup-*"))


def test_a_backup_without_a_key_has_an_empty_signature(office: Office, tmp_path: Path) -> None:
    assert backup(office.registry, tmp_path / "k.zip", now=office.tick()).signature == b""
    with pytest.raises(RefusedError, match="is not the registry's own"):
        read_backup(tmp_path / "k.zip", verifying)


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        ({"note": {"seq": 3}}, "signature"),
        ({"note": {"signature": "00"}}, "signature"),
        ({"note": {"signature": "goat"}}, "note is damaged"),
        ({"note": {"seq": None}}, "note is damaged"),
        ({"note": {"format": 2}}, "has format 2, and this edition reads format 1"),
        ({"note": {"data": "00"}}, "its data is not what was backed up"),
        ({"data": lambda data: data[:-1] + b"x"}, "its data is not what was backed up"),
        ({"without": ["head.json"]}, "no whole backup"),
        ({"without": ["registry.sqlite"]}, "no whole backup"),
    ],
)
def test_a_backup_that_someone_changed_is_refused(
    kept: Path, tmp_path: Path, changed: dict[str, Any], words: str
) -> None:
    bad = remade(kept, tmp_path / "bad.zip", **changed)
    with pytest.raises(RefusedError, match=words):
        restore(bad, tmp_path / "back.sqlite", now=START + timedelta(days=400), verify=verifying)
    assert not (tmp_path / "back.sqlite").exists()


@pytest.mark.parametrize("size", [0, 10, 700, -300])
def test_half_a_backup_is_refused(kept: Path, tmp_path: Path, size: int) -> None:
    half = tmp_path / "half.zip"
    half.write_bytes(kept.read_bytes()[:size])
    with pytest.raises(RefusedError, match="no whole backup"):
        read_backup(half)


def test_any_single_changed_byte_of_a_backup_is_noticed(kept: Path, tmp_path: Path) -> None:
    """Some bytes of a zip file mean nothing, such as times: then what is read is still the same."""
    whole = kept.read_bytes()
    good = read_backup(kept, verifying)
    noticed = 0
    for place in range(0, len(whole), len(whole) // 60):
        bad = tmp_path / "bad.zip"
        bad.write_bytes(whole[:place] + bytes([whole[place] ^ 0x55]) + whole[place + 1 :])
        try:
            assert read_backup(bad, verifying) == good
        except RefusedError:
            noticed += 1
    assert noticed > 50


def test_a_file_that_is_not_there_is_said_so(tmp_path: Path) -> None:
    with pytest.raises(MachineError, match="No such file"):
        read_backup(tmp_path / "nothing.zip")


def test_nothing_is_written_over(full_office: Office, kept: Path, tmp_path: Path, servers: str) -> None:
    place = tmp_path / "there.sqlite"
    place.write_text("mine")
    with pytest.raises(RefusedError, match="is there already"):
        restore(kept, place, now=full_office.tick())
    assert place.read_text() == "mine"
    taken = new_database(servers, "taken")
    open_at(taken).close()
    with pytest.raises(RefusedError, match="holds a registry: restore to an empty one"):
        restore(kept, taken, now=full_office.tick())


def test_a_backup_of_a_damaged_registry_is_not_restored(full_office: Office, tmp_path: Path) -> None:
    rewrite(full_office.registry, "update tanks set place = 'elsewhere'")
    backup(full_office.registry, tmp_path / "k.zip", now=full_office.tick())
    assert [finding.code for finding in audit_backup(tmp_path / "k.zip")] == ["row-changed"]
    with pytest.raises(RefusedError, match="is damaged: tanks:"):
        restore(tmp_path / "k.zip", tmp_path / "back.sqlite", now=full_office.tick())
    assert not (tmp_path / "back.sqlite").exists()


def test_a_restore_with_an_early_clock_leaves_nothing(full_office: Office, kept: Path, tmp_path: Path) -> None:
    with pytest.raises(RefusedError, match="set the clock right"):
        restore(kept, tmp_path / "back.sqlite", now=full_office.now - timedelta(days=900))
    assert [path.name for path in tmp_path.iterdir() if path.name.startswith("back")] == []


def test_numbers_given_after_the_backup_are_never_given_again(full_office: Office, kept: Path, tmp_path: Path) -> None:
    given = {full_office.tank() for _ in range(3)}
    restore(kept, tmp_path / "back.sqlite", now=full_office.tick())
    with open_at(tmp_path / "back.sqlite") as registry:
        again = Office(registry, full_office.now, full_office.ids, full_office.cohort)
        fresh = {again.tank() for _ in range(3)}
        assert not fresh & given
        assert "-T001001-" in min(fresh)
        assert "-C001001-" in again.certify("Cheptoo").number
        assert audit(registry) == ()


def test_a_backup_is_of_one_moment_though_others_write(any_office: Office, tmp_path: Path) -> None:
    office = any_office
    stop = threading.Event()
    failed: list[BaseException] = []

    def write() -> None:
        try:
            with open_at(office.registry.place) as own:
                other = Office(own, office.now + timedelta(days=1), office.ids, office.cohort)
                while not stop.is_set():
                    other.tank()
        except BaseException as error:
            failed.append(error)

    writer = threading.Thread(target=write)
    writer.start()
    try:
        heads = [
            backup(office.registry, tmp_path / f"{n}.zip", now=office.now + timedelta(days=2)).head for n in range(4)
        ]
        assert [audit_backup(tmp_path / f"{n}.zip") for n in range(4)] == [()] * 4
    finally:
        stop.set()
        writer.join(60)
    assert not failed
    assert heads[0].seq < heads[-1].seq
    assert audit(office.registry, heads=heads) == ()


def test_a_newer_backup_replaces_the_older_only_when_whole(office: Office, tmp_path: Path) -> None:
    target = tmp_path / "kept.zip"
    backup(office.registry, target, now=office.tick())
    before = target.read_bytes()

    def fail(words: bytes) -> bytes:
        raise MachineError("no key")

    with pytest.raises(MachineError, match="no key"):
        backup(office.registry, target, now=office.tick(), sign=fail)
    assert target.read_bytes() == before
    office.tank()
    backup(office.registry, target, now=office.tick())
    assert read_backup(target).head == chain_head(office.registry)
    assert [path.name for path in tmp_path.iterdir() if path.name.startswith(".")] == []
    shutil.copyfile(target, tmp_path / "copy.zip")
    assert read_backup(tmp_path / "copy.zip") == read_backup(target)


@pytest.mark.skipif(os.name == "nt", reason="Windows keeps rights otherwise")
def test_only_the_user_may_read_what_is_kept_of_people(full_office: Office, tmp_path: Path) -> None:
    folder = tmp_path / "own"
    with open_at(folder / "new.sqlite") as registry:
        add_person(registry, NewPerson("Meera"), by=None, now=START)
        assert len(list(folder.iterdir())) == 3
        backup(full_office.registry, folder / "kept.zip", now=full_office.tick())
        restore(folder / "kept.zip", folder / "back.sqlite", now=full_office.tick())
        assert {path.name: path.stat().st_mode & 0o077 for path in folder.iterdir()} == dict.fromkeys(
            ["new.sqlite", "new.sqlite-wal", "new.sqlite-shm", "kept.zip", "back.sqlite"], 0
        )


def test_a_backup_is_never_written_over_what_is_none(office: Office, tmp_path: Path) -> None:
    """A slip that names the registry itself would end it."""
    for name in ("registry.sqlite", "keys.json", "photos.zip"):
        target = tmp_path / name
        if name.endswith(".zip"):
            with zipfile.ZipFile(target, "w") as file:
                file.writestr("cage.jpg", b"a photo")
        else:
            target.write_bytes(b"what took years to enter")
        before = target.read_bytes()
        with pytest.raises(RefusedError, match="is no backup: choose another name"):
            backup(office.registry, target, now=office.tick())
        assert target.read_bytes() == before
