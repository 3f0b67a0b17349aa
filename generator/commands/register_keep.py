"""`register audit`, `backup`, `restore`, `clock`: keeping what was entered, and showing that nothing was changed."""

from __future__ import annotations

from dataclasses import asdict
from pathlib import Path

import click

from generator.commands.register_common import FILE_IN, FILE_OUT, TEXT, Desk, job
from generator.commands.register_keys import keys_option, public_keys, public_option, ring_of
from generator.credentials.head import head_checker, head_signer
from generator.problems import ExitCode, RefusedError
from generator.registry import audit, audit_backup, backup, note_clock, read_backup, restore


@click.command("audit")
@click.option("--against", "backups", type=FILE_IN, multiple=True,
              help="A backup whose signed head has to lie on the log; may be given again.")  # fmt: skip
@public_option
@job
def audit_jobs(desk: Desk, backups: tuple[Path, ...], public: Path | None) -> int:
    """Read the whole registry and tell every sign that something was changed, lost or put in by hand.

    Exit code 0: nothing found; 1: something was. Only an older backup can show that the newest entries were cut off.

    Example: python3 tankschool.py register audit --against /media/stick/registry-backup.zip
    """
    heads = []
    if backups:
        ours = head_checker(public_keys(public))
        heads = [read_backup(path, ours).head for path in backups]
    with desk.registry() as registry:
        found = audit(registry, heads=heads)
    if desk.as_json:
        desk.done("", findings=[asdict(finding) for finding in found], heads=len(heads))
    else:
        for finding in found:
            click.echo(str(finding), err=True)
        click.echo(desk.words.say("register.done.audit", count=len(found)))
        if not heads:
            click.echo(desk.words.say("register.audit_without_heads"))
    return ExitCode.PROBLEMS if found else ExitCode.GOOD


@click.command("backup")
@click.argument("target", type=FILE_OUT)
@click.option("--unsigned", is_flag=True, help="Without a signature: it can't show later that nothing was changed.")
@keys_option
@job
def backup_jobs(desk: Desk, target: Path, unsigned: bool, keys: Path | None) -> int:
    """Write a backup to TARGET, best on another drive, with the signed head of the log. It holds people's data.

    Example: python3 tankschool.py register backup /media/stick/registry-backup.zip
    """
    sign = None if unsigned else head_signer(ring_of(desk, keys).current)
    with desk.registry() as registry:
        made = backup(registry, target, now=desk.now, sign=sign)
    found = audit_backup(target)
    if found:
        raise RefusedError(
            f"the backup was written, and the registry in it shows damage: {found[0]}. Run 'register audit'"
        )
    return desk.done(
        desk.words.say("register.done.backup", file=target, events=made.head.seq), file=str(target),
        seq=made.head.seq, hash=made.head.hash, signed=bool(made.signature),
    )  # fmt: skip


@click.command("restore")
@click.argument("source", type=FILE_IN)
@click.option("--unchecked", is_flag=True, help="Without checking its signature; only where you know who made it.")
@public_option
@job
def restore_jobs(desk: Desk, source: Path, unchecked: bool, public: Path | None) -> int:
    """Bring a registry back from a backup SOURCE to the place of --registry, where there must be none.

    Example: python3 tankschool.py register restore /media/stick/registry-backup.zip --registry new.sqlite
    """
    verify = None if unchecked else head_checker(public_keys(public))
    made = restore(source, desk.place, now=desk.now, verify=verify)
    return desk.done(
        desk.words.say("register.done.restored", place=desk.place, events=made.head.seq, day=made.made_at[:10]),
        place=str(desk.place), seq=made.head.seq,
    )  # fmt: skip


@click.command("clock")
@click.option("--reason", type=TEXT, required=True, help="What was wrong with the clock.")
@job
def clock_jobs(desk: Desk, reason: str) -> int:
    """Note that earlier entries were made with a wrong clock, so that entries can go on from the right time.

    Example: python3 tankschool.py register clock --reason "the laptop's battery was empty, it said 2033"
    """
    with desk.registry() as registry:
        note_clock(registry, reason, by=desk.by(registry), now=desk.now)
    return desk.done(desk.words.say("register.done.clock"))
