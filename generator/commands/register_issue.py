"""`register issue`, `reprint`, `status`, `certificates`, `list`: certificates, and the list of what counts no more."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path

import click

from generator import sheets as printed
from generator.commands.issuer_files import LIST_FILE
from generator.commands.register_common import (
    CERTIFICATE,
    DAY,
    DECISION,
    FILE_OUT,
    TEXT,
    Desk,
    Function,
    data_folder,
    job,
)
from generator.commands.register_keys import keys_option, public_keys, public_option, ring_of
from generator.credentials import (
    Certificate,
    KeyRing,
    PublicKey,
    Role,
    Roof,
    Scope,
    Status,
    StolenKey,
    WithdrawnList,
    certificate_text,
    in_digits,
    in_words,
    list_text,
    qr_of,
    save,
    sign_certificate,
    sign_list,
    stolen_entry,
)
from generator.credentials.cose import kid_of, unpack
from generator.curriculum.models import Scheme
from generator.problems import RefusedError
from generator.registry import (
    Registry,
    ToSign,
    change_status,
    expire_all,
    issue,
    read_certificate,
    withdrawn_numbers,
)
from generator.registry.certificates import EXPIRED, ISSUED, RENEWED
from generator.registry.listing import (
    Decided,
    certificate_list,
    decision_record,
    people_list,
    read_decision,
    signed_certificates,
)
from generator.sheets.certificate import PanelCut, Signed


def folder_option(function: Function) -> Function:
    """`--folder`: where the PDF goes."""
    return click.option(
        "--folder", type=click.Path(file_okay=False, path_type=Path),
        help="Folder for the PDF; else 'certificates' in the data folder.",
    )(function)  # fmt: skip


@click.command("issue")
@click.argument("decision", type=DECISION)
@click.option("--valid-from", type=DAY, help="First day; else today.")
@click.option("--renews", type=CERTIFICATE, help="Number of the certificate whose place it takes.")
@click.option("--print-language", metavar="CODE", help="Language of the paper; else the person's.")
@click.option("--exception", type=TEXT, help="Why someone issues it who trained the person; stays in the register.")
@folder_option
@keys_option
@job
def issue_jobs(
    desk: Desk,
    decision: int,
    valid_from: date | None,
    renews: str | None,
    print_language: str | None,
    exception: str | None,
    folder: Path | None,
    keys: Path | None,
) -> int:
    """Issue the certificate of a passed DECISION: number, signature and row together, and the PDF with its card.

    Example: python3 tankschool.py register issue 3 --folder certificates
    """
    return issued(desk, decision, valid_from, renews, print_language, exception, folder, keys)


def issued(
    desk: Desk,
    decision: int,
    valid_from: date | None,
    renews: str | None,
    print_language: str | None,
    exception: str | None,
    folder: Path | None,
    keys: Path | None,
) -> int:
    """Issue a certificate; the PDF is whole on the disk before the row is kept."""
    with desk.registry() as registry:
        by = desk.by(registry)
        about = _about(desk, registry, decision, print_language)
        scope = signed_scope(about.scheme)
        ring = ring_of(desk, keys)
        first = valid_from or desk.now.date()
        waiting: list[Path] = []
        target = folder if folder is not None else data_folder() / "certificates"

        def sign(text: ToSign) -> bytes:
            made = Certificate(text.number, text.name, text.scheme, text.version, scope, text.valid_from, text.valid_to)
            signed = sign_certificate(made, ring.current)
            pdf = _pdf(desk, about, made, signed, ring.issuer, ring.current.public)
            part = target / f".{text.number}.part"
            save(part, pdf, replace_old=True)
            waiting.append(part)
            return signed

        try:
            certificate = issue(
                registry, about.found.person, decision, scope_data(about.scheme, scope), sign=sign, valid_from=first,
                valid_to=last_day(first, about.scheme.validity_years), by=by, now=desk.now, exception=exception,
                renews=renews,
            )  # fmt: skip
            path = target / f"{certificate.number}.pdf"
            waiting[0].replace(path)
        finally:
            for part in waiting:
                part.unlink(missing_ok=True)
    text = desk.words.say("register.done.issued", number=certificate.number, name=certificate.name, file=path)
    return desk.done(
        text, number=certificate.number, file=str(path), signed=certificate_text(certificate.signed or b""),
        valid_from=certificate.valid_from.isoformat(), valid_to=certificate.valid_to.isoformat(),
    )  # fmt: skip


@dataclass(frozen=True, slots=True)
class _About:
    """What a certificate says beside its number and days: the decision, its scheme and cut, the paper's language."""

    found: Decided
    scheme: Scheme
    cut: PanelCut | None
    language: str


def _about(desk: Desk, registry: Registry, decision: int, print_language: str | None) -> _About:
    found = read_decision(registry, decision)
    language = _print_language(desk, print_language, found.person, people_list(registry).rows)
    return _About(found, _scheme(desk, found), _cut_of(registry, decision), language)


def _scheme(desk: Desk, found: Decided) -> Scheme:
    scheme = desk.course.schemes.get(found.decision.scheme)
    if scheme is None or scheme.version != found.decision.version:
        raise RefusedError(
            f"decision {found.id} is by version {found.decision.version} of '{found.decision.scheme}', which this "
            "course does not hold: decide again by the present one, or use the course that it was made with"
        )
    return scheme


def _cut_of(registry: Registry, decision: int) -> PanelCut | None:
    """The panel's cut that was in force when it was decided."""
    cut = decision_record(registry, decision).cut
    if cut is None:
        return None
    return PanelCut(cut["written"], cut["practical"], cut["judges"], cut["recorded_at"][:10])


def signed_scope(scheme: Scheme) -> Scope:
    """The scope as a signature covers it.

    Raises:
        RefusedError: the scheme does not say by code what the holder may do.
    """
    scope = scheme.scope
    if scope.role_code is None or scope.roof_code is None:
        raise RefusedError(
            f"the scheme '{scheme.id}' has no role_code or roof_code in its scope: what is signed has to say what the "
            "holder may do"
        )
    litres, wall = int(scope.largest_volume * 1000 + 1e-6), int(scope.largest_wall_height * 100 + 1e-6)
    return Scope(Role(scope.role_code), litres, wall, Roof(scope.roof_code))


def scope_data(scheme: Scheme, scope: Scope) -> dict[str, object]:
    """The scope as the register keeps it; tanks are held against its sizes."""
    return {
        "role": str(scope.role), "roof": str(scope.roof), "largest_volume": scheme.scope.largest_volume,
        "largest_wall_height": scheme.scope.largest_wall_height,
    }  # fmt: skip


def last_day(first: date, years: int) -> date:
    """The day before the same day some years later.

    Example:
        >>> last_day(date(2031, 5, 4), 3).isoformat(), last_day(date(2032, 2, 29), 1).isoformat()
        ('2034-05-03', '2033-02-28')
    """
    try:
        return first.replace(year=first.year + years) - timedelta(days=1)
    except ValueError:  # the 29th of February
        return date(first.year + years, 2, 28)


def _print_language(desk: Desk, wanted: str | None, person: int, rows: tuple[tuple[object, ...], ...]) -> str:
    known = desk.course.words
    if wanted is not None:
        if wanted not in known:
            raise click.UsageError(f"There is no language '{wanted}'. There are: {', '.join(known)}.")
        return wanted
    own = next((row[2] for row in rows if row[0] == person), None)
    return str(own) if own in known else desk.language


def _pdf(desk: Desk, about: _About, made: Certificate, signed: bytes, issuer: str, public: bytes) -> bytes:
    paper = Signed(
        made.number, made.valid_from, made.valid_to, issuer, in_words(public, about.language), in_digits(public),
        qr_of(certificate_text(signed)).matrix, about.cut,
    )  # fmt: skip
    return printed.certificate_pdf(about.found.decision, made.name, about.language, desk.course, paper)


@click.command("reprint")
@click.argument("number", type=CERTIFICATE)
@click.option("--print-language", metavar="CODE", help="Language of the paper; else the person's.")
@folder_option
@public_option
@job
def reprint_jobs(desk: Desk, number: str, print_language: str | None, folder: Path | None, public: Path | None) -> int:
    """Print a certificate once more, with the signature that it has.

    Example: python3 tankschool.py register reprint WKLP-C000012-PM
    """
    keys = public_keys(public)
    with desk.registry() as registry:
        held, _ = read_certificate(registry, number)
        if held.signed is None or held.name is None:
            raise RefusedError(f"the certificate {number} is of someone who was erased: it can't be printed")
        if held.status != "active":
            raise RefusedError(f"the certificate {number} is {held.status}: only one in force is printed")
        about = _about(desk, registry, held.decision, print_language)
    key: PublicKey | None = keys.by_kid.get(kid_of(unpack(held.signed)))
    if key is None:
        raise RefusedError(f"the key that signed {number} is not among these public keys: look at --public")
    made = Certificate(
        number, held.name, held.scheme, held.version, signed_scope(about.scheme), held.valid_from, held.valid_to
    )
    pdf = _pdf(desk, about, made, held.signed, keys.issuer, key.public)
    path = (folder if folder is not None else data_folder() / "certificates") / f"{number}.pdf"
    save(path, pdf, replace_old=True)
    return desk.done(desk.words.say("register.done.wrote", file=path), file=str(path))


@click.group("status")
def status_jobs() -> None:
    """Suspend, reinstate, withdraw, renew or expire certificates."""


def _moves(move: str, text: str) -> None:
    @status_jobs.command(move, help=f"{text}\n\nExample: python3 tankschool.py register status {move} "
                         'WKLP-C000012-PM --reason "two tanks leaked at the foot"')  # fmt: skip
    @click.argument("number", type=CERTIFICATE)
    @click.option("--reason", type=TEXT, required=True, help="Why; it stays in the register, so it names nobody.")
    @job
    def moved(desk: Desk, number: str, reason: str) -> int:
        with desk.registry() as registry:
            change_status(registry, number, move, reason=reason, by=desk.by(registry), now=desk.now)
        said = desk.words.say_one_of("register.choice", STATUS_AFTER[move])
        return desk.done(
            desk.words.say("register.done.status", number=number, status=said), number=number,
            status=STATUS_AFTER[move],
        )  # fmt: skip


STATUS_AFTER = {"suspend": "suspended", "reinstate": "active", "withdraw": "withdrawn"}
_moves("suspend", "Suspend a certificate: the holder may not do this work now.")
_moves("reinstate", "Let a suspended certificate count again.")
_moves("withdraw", "Withdraw a certificate, for good.")


@status_jobs.command("expire")
@job
def expired(desk: Desk) -> int:
    """Let every certificate expire whose last day is over.

    Example: python3 tankschool.py register status expire
    """
    with desk.registry() as registry:
        numbers = expire_all(registry, by=desk.by(registry), now=desk.now)
    words, shown = desk.words, " ".join(numbers)
    said = words.say("register.done.expired", count=len(numbers), numbers=shown)
    return desk.done(said if numbers else words.say("register.done.none_expired"), expired=list(numbers))


@status_jobs.command("renew")
@click.argument("number", type=CERTIFICATE)
@click.argument("decision", type=DECISION)
@click.option("--print-language", metavar="CODE", help="Language of the paper; else the person's.")
@click.option("--exception", type=TEXT, help="Why someone issues it who trained the person.")
@folder_option
@keys_option
@job
def renewed(
    desk: Desk,
    number: str,
    decision: int,
    print_language: str | None,
    exception: str | None,
    folder: Path | None,
    keys: Path | None,
) -> int:
    """Issue a new certificate in the place of an old one, from a new passed DECISION.

    Example: python3 tankschool.py register status renew WKLP-C000012-PM 9
    """
    return issued(desk, decision, None, number, print_language, exception, folder, keys)


@click.group("certificates")
def certificates_jobs() -> None:
    """See the register."""


@certificates_jobs.command("list")
@job
def listed(desk: Desk) -> int:
    """Show every certificate: number, holder, scheme, status, days.

    Example: python3 tankschool.py register certificates list
    """
    with desk.registry() as registry:
        return desk.table(certificate_list(registry))


@certificates_jobs.command("show")
@click.argument("number", type=CERTIFICATE)
@job
def shown(desk: Desk, number: str) -> int:
    """Show a certificate and each change of it, with its reason.

    Example: python3 tankschool.py register certificates show WKLP-C000012-PM
    """
    with desk.registry() as registry:
        held, history = read_certificate(registry, number)
    said = desk.words.say_one_of("register.choice", held.status)
    lines = [f"{number}  {held.name or '–'}  {held.scheme}  {held.valid_from} – {held.valid_to}  {said}"]
    for change in history:
        becomes = desk.words.say_one_of("register.choice", change.becomes)
        lines.append(f"  {change.at[:10]}  {becomes}: {_reason_said(desk, change.reason)}")
    return desk.done(
        "\n".join(lines), number=number, name=held.name, scheme=held.scheme, version=held.version, status=held.status,
        scope=dict(held.scope), valid_from=held.valid_from.isoformat(), valid_to=held.valid_to.isoformat(),
        sha256=None if held.signed is None else hashlib.sha256(held.signed).hexdigest(),
        changes=[
            {"at": each.at, "was": each.was, "becomes": each.becomes, "reason": each.reason, "by": each.by}
            for each in history
        ],
    )  # fmt: skip


def _reason_said(desk: Desk, reason: str) -> str:
    """A reason as it was typed; the register's own in the reader's language."""
    words = desk.words
    own = {
        ISSUED: words.say("register.reason.issued"), EXPIRED: words.say("register.reason.expired"),
        RENEWED: words.say("register.reason.renewed"),
    }  # fmt: skip
    return own.get(reason, reason)


@click.command("list")
@click.option("--output", type=FILE_OUT, help=f"The list's file; else {LIST_FILE} in the data folder.")
@keys_option
@job
def list_jobs(desk: Desk, output: Path | None, keys: Path | None) -> int:
    """Sign and write the dated list of withdrawn numbers; put it on every stick, and give it to whoever checks.

    Example: python3 tankschool.py register list --output withdrawn.txt
    """
    ring = ring_of(desk, keys)
    with desk.registry() as registry:
        numbers = {number: Status(status) for number, status in withdrawn_numbers(registry)}
        signed = signed_certificates(registry)
    made = WithdrawnList(desk.now.replace(microsecond=0), numbers, _stolen(ring, signed))
    path = output if output is not None else data_folder() / LIST_FILE
    save(path, list_text(sign_list(made, ring.current, ring.public())).encode(), replace_old=True)
    return desk.done(
        desk.words.say("register.done.list", file=path, count=len(numbers)), file=str(path), numbers=len(numbers)
    )


def _stolen(ring: KeyRing, signed: tuple[bytes, ...]) -> dict[bytes, StolenKey]:
    """The stolen keys, each with the certificates that the register knows to be good."""
    by_key: dict[bytes, list[bytes]] = {}
    for each in signed:
        by_key.setdefault(kid_of(unpack(each)), []).append(each)
    return {key.kid: stolen_entry(key.kid, key.stolen, by_key.get(key.kid, [])) for key in ring.keys if key.stolen}
