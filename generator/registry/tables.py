"""The tables of a registry, and which of their columns are sealed in the event log.

Times are texts in UTC (`2031-05-04T09:00:00.000000Z`) and days texts (`2031-05-04`): the same in SQLite and PostgreSQL,
and in the order of time when sorted.
"""

from __future__ import annotations

from collections.abc import Mapping

from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    Double,
    ForeignKey,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    Table,
    Text,
    UniqueConstraint,
    text,
)

METADATA = MetaData(
    naming_convention={
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "ck": "ck_%(table_name)s_%(constraint_name)s",
        "fk": "fk_%(table_name)s_%(column_0_N_name)s",
        "pk": "pk_%(table_name)s",
    }
)

ROLES = ("candidate", "trainer", "observer", "coordinator")
MEMBERS = ("candidate", "trainer", "observer")
STATUSES = ("active", "suspended", "withdrawn", "expired", "renewed")
SCHEME_STATUSES = ("draft", "provisional", "in-force")
PARTS = ("built", "checked")
HOLD_POINTS = (
    "ground",
    "base_steel_and_starters",
    "cage_before_mortar",
    "first_batch",
    "before_roof_pour",
    "curing_day_7",
    "leak_test",
)
"""In the order of the build."""
VERDICTS = ("good", "not_good", "does_not_apply")


def one_of(column: str, words: tuple[str, ...]) -> CheckConstraint:
    """A column that holds one of some words."""
    return CheckConstraint(f"{column} in ({', '.join(repr(word) for word in words)})", name=column)


def whole(name: str, *other: ForeignKey, null: bool = False) -> Column[int]:
    """A column of whole numbers."""
    return Column(name, Integer, *other, nullable=null)


def word(name: str, *other: ForeignKey, null: bool = False) -> Column[str]:
    """A column of texts."""
    return Column(name, Text, *other, nullable=null)


def person(name: str = "person", *, null: bool = False) -> Column[int]:
    """A column that names a person by id."""
    return whole(name, ForeignKey("people.id"), null=null)


def own_id() -> Column[int]:
    """The key that the database gives."""
    return Column("id", Integer, primary_key=True, autoincrement=True)


info = Table("info", METADATA, Column("name", Text, primary_key=True), word("value"))
counters = Table("counters", METADATA, Column("name", Text, primary_key=True), whole("next"))

events = Table(
    "events",
    METADATA,
    Column("seq", Integer, primary_key=True, autoincrement=False),
    word("at"),
    word("kind"),
    word("subject"),
    person("actor", null=True),
    word("body"),
    word("personal", null=True),
    word("previous"),
    Column("hash", Text, nullable=False, unique=True),
    Index(None, "subject"),
)
payloads = Table(
    "payloads",
    METADATA,
    Column("event", Integer, ForeignKey("events.seq"), primary_key=True, autoincrement=False),
    person(null=True),
    word("payload"),
    word("salt"),
    Index(None, "person"),
)

people = Table(
    "people",
    METADATA,
    own_id(),
    word("name", null=True),
    word("name_key", null=True),
    word("language", null=True),
    word("consent_on", null=True),
    word("public_name", null=True),
    word("accommodations", null=True),
    word("erased_at", null=True),
    Index(None, "name_key"),
)
roles = Table("roles", METADATA, own_id(), person(), word("role"), word("since"), word("until", null=True),
              one_of("role", ROLES), Index(None, "person"))  # fmt: skip
cohorts = Table("cohorts", METADATA, own_id(), Column("name", Text, nullable=False, unique=True), word("starts_on"))
memberships = Table(
    "memberships",
    METADATA,
    own_id(),
    whole("cohort", ForeignKey("cohorts.id")),
    person(),
    word("role"),
    one_of("role", MEMBERS),
    UniqueConstraint("cohort", "person", "role"),
    Index(None, "person"),
)

sittings = Table(
    "sittings",
    METADATA,
    own_id(),
    whole("cohort", ForeignKey("cohorts.id")),
    word("set_id"),
    word("scheme", null=True),
    whole("version", null=True),
    word("about"),
    word("held_on"),
    UniqueConstraint("cohort", "set_id"),
)
contents = Table(
    "contents", METADATA, Column("hash", Text, primary_key=True), Column("data", LargeBinary, nullable=False)
)
marking_keys = Table(
    "marking_keys",
    METADATA,
    Column("content", Text, ForeignKey("contents.hash"), primary_key=True),
    Column("data", LargeBinary, nullable=False),
)
"""What marking needs of a content, worked out of it: see `marking_key`."""
papers = Table(
    "papers",
    METADATA,
    own_id(),
    whole("sitting", ForeignKey("sittings.id")),
    person(),
    whole("number"),
    whole("attempt"),
    word("language"),
    word("content", ForeignKey("contents.hash")),
    UniqueConstraint("sitting", "number"),
    UniqueConstraint("sitting", "person"),
    Index(None, "person"),
)
paper_files = Table(
    "paper_files",
    METADATA,
    Column("paper", Integer, ForeignKey("papers.id"), primary_key=True, autoincrement=False),
    word("pdf_hash"),
    Column("pdf", LargeBinary, nullable=True),
)
batches = Table(
    "batches",
    METADATA,
    Column("paper", Integer, ForeignKey("papers.id"), primary_key=True, autoincrement=False),
    Column("event", Integer, ForeignKey("events.seq"), primary_key=True, autoincrement=False),
    whole("answers"),
    word("salt", null=True),
    word("digest"),
    Index(None, "event"),
)
answers = Table(
    "answers",
    METADATA,
    Column("paper", Integer, ForeignKey("papers.id"), primary_key=True, autoincrement=False),
    Column("label", Integer, primary_key=True, autoincrement=False),
    whole("event"),
    word("item"),
    word("competency"),
    word("answer", null=True),
    word("verdict"),
    whole("points"),
    whole("most"),
    word("misconceptions"),
    sqlite_with_rowid=False,
)
observations = Table(
    "observations",
    METADATA,
    own_id(),
    whole("event", ForeignKey("events.seq")),
    whole("cohort", ForeignKey("cohorts.id")),
    person(),
    word("practical"),
    word("step"),
    word("seen"),
    person("observer"),
    whole("attempt"),
    word("observed_on"),
    UniqueConstraint("person", "practical", "step", "observer", "attempt"),
    Index(None, "event"),
)

cuts = Table(
    "cuts",
    METADATA,
    own_id(),
    word("scheme"),
    whole("version"),
    word("method"),
    Column("written", Double, nullable=False),
    Column("practical", Double, nullable=False),
    whole("judges"),
    word("recorded_at"),
    person("recorded_by"),
    CheckConstraint("judges >= 1", name="judges"),
)
decisions = Table(
    "decisions",
    METADATA,
    own_id(),
    person(),
    whole("cohort", ForeignKey("cohorts.id")),
    word("scheme"),
    whole("version"),
    word("scheme_status"),
    whole("cut", ForeignKey("cuts.id"), null=True),
    Column("passed", Boolean(create_constraint=False), nullable=False),
    word("reasons"),
    word("papers"),
    whole("attempt"),
    word("decided_at"),
    person("decided_by"),
    word("exception", null=True),
    one_of("scheme_status", SCHEME_STATUSES),
    Index(None, "person"),
)
decision_inputs = Table(
    "decision_inputs",
    METADATA,
    Column("decision", Integer, ForeignKey("decisions.id"), primary_key=True, autoincrement=False),
    word("inputs"),
)
"""Apart from the decision, because the seals of older decisions don't cover it."""
applications = Table(
    "applications",
    METADATA,
    own_id(),
    person(),
    whole("cohort", ForeignKey("cohorts.id")),
    word("scheme"),
    whole("version"),
    whole("tanks"),
    whole("witnesses"),
    word("evidence", null=True),
    word("filed_at"),
    person("filed_by"),
    word("outcome", null=True),
    word("reasons", null=True),
    word("decided_at", null=True),
    person("decided_by", null=True),
    word("exception", null=True),
    CheckConstraint("outcome in ('accepted', 'refused')", name="outcome"),
    Index(
        "uq_applications_open",
        "person",
        "scheme",
        unique=True,
        sqlite_where=text("outcome is null"),
        postgresql_where=text("outcome is null"),
    ),
)
retest_exceptions = Table(
    "retest_exceptions",
    METADATA,
    Column("paper", Integer, ForeignKey("papers.id"), primary_key=True, autoincrement=False),
    word("reason", null=True),
    word("noted_at"),
    person("noted_by"),
)
rechecks = Table(
    "rechecks",
    METADATA,
    own_id(),
    whole("cohort", ForeignKey("cohorts.id")),
    person(),
    word("practical"),
    word("step"),
    word("seen"),
    person("observer"),
    whole("attempt"),
    word("observed_on"),
    UniqueConstraint("person", "practical", "step", "attempt"),
)
"""The one immediate recheck of a critical step, as whoever entered it first saw it."""
recheck_seconds = Table(
    "recheck_seconds",
    METADATA,
    Column("recheck", Integer, ForeignKey("rechecks.id"), primary_key=True, autoincrement=False),
    word("seen"),
    person("observer"),
)
"""The same recheck as a second observer saw it; apart, because the seals of older rechecks don't cover it."""
certificates = Table(
    "certificates",
    METADATA,
    Column("number", Text, primary_key=True),
    Column("serial", Integer, nullable=False, unique=True),
    person(),
    Column("decision", Integer, ForeignKey("decisions.id"), nullable=False, unique=True),
    word("scheme"),
    whole("version"),
    word("scope"),
    word("printed_name", null=True),
    word("valid_from"),
    word("valid_to"),
    word("status"),
    Column("signed", LargeBinary, nullable=True),
    word("signed_hash"),
    word("issued_at"),
    person("issued_by"),
    Column("renews", Text, ForeignKey("certificates.number"), nullable=True, unique=True),
    one_of("status", STATUSES),
    Index(
        "uq_certificates_in_force",
        "person",
        "scheme",
        unique=True,
        sqlite_where=text("status in ('active', 'suspended')"),
        postgresql_where=text("status in ('active', 'suspended')"),
    ),
)
certificate_changes = Table(
    "certificate_changes",
    METADATA,
    own_id(),
    word("certificate", ForeignKey("certificates.number")),
    word("was", null=True),
    word("becomes"),
    word("reason"),
    word("at"),
    person("by"),
    one_of("becomes", STATUSES),
    Index(None, "certificate"),
)
appeals = Table(
    "appeals",
    METADATA,
    own_id(),
    whole("decision", ForeignKey("decisions.id")),
    word("filed_at"),
    word("grounds", null=True),
    word("outcome", null=True),
    word("reasons", null=True),
    word("decided_at", null=True),
    person("decided_by", null=True),
    CheckConstraint("outcome in ('stands', 'set_aside')", name="outcome"),
    Index(
        "uq_appeals_open",
        "decision",
        unique=True,
        sqlite_where=text("outcome is null"),
        postgresql_where=text("outcome is null"),
    ),
)

tanks = Table(
    "tanks",
    METADATA,
    Column("number", Text, primary_key=True),
    Column("serial", Integer, nullable=False, unique=True),
    word("place"),
    word("plan_version"),
    word("plan"),
    word("plan_hash"),
    Column("volume", Double, nullable=False),
    Column("wall_height", Double, nullable=False),
    word("started_on"),
    word("entered_at"),
    person("entered_by"),
)
tank_people = Table(
    "tank_people",
    METADATA,
    own_id(),
    word("tank", ForeignKey("tanks.number")),
    person(),
    word("certificate", ForeignKey("certificates.number")),
    word("part"),
    one_of("part", PARTS),
    UniqueConstraint("tank", "person"),
)
hold_points = Table(
    "hold_points",
    METADATA,
    own_id(),
    word("tank", ForeignKey("tanks.number")),
    word("point"),
    word("verdict"),
    word("note"),
    word("signed_at"),
    person("signed_by"),
    one_of("point", HOLD_POINTS),
    one_of("verdict", VERDICTS),
    Index(None, "tank"),
)
leak_tests = Table(
    "leak_tests",
    METADATA,
    own_id(),
    word("tank", ForeignKey("tanks.number")),
    Column("hours", Double, nullable=False),
    Column("drop_mm", Double, nullable=False),
    Column("tight", Boolean(create_constraint=False), nullable=False),
    word("note"),
    word("tested_at"),
    person("tested_by"),
    Index(None, "tank"),
)
photos = Table(
    "photos",
    METADATA,
    own_id(),
    word("tank", ForeignKey("tanks.number")),
    word("point", null=True),
    word("sha256"),
    word("caption"),
    UniqueConstraint("tank", "sha256"),
)
complaints = Table(
    "complaints",
    METADATA,
    own_id(),
    word("tank", ForeignKey("tanks.number"), null=True),
    word("certificate", ForeignKey("certificates.number"), null=True),
    word("filed_at"),
    word("about", null=True),
    word("finding", null=True),
    word("closed_at", null=True),
    person("closed_by", null=True),
    CheckConstraint("tank is not null or certificate is not null", name="subject"),
)

FORMER_WORDS: Mapping[str, tuple[str, Mapping[str, str]]] = {"decisions": ("scheme_status", {"in-force": "approved"})}
"""What older rows were sealed with: for a table the column, and for its present words those of before."""
SEALED: Mapping[str, tuple[str, ...]] = {
    "roles": ("person", "role", "since"),
    "cohorts": ("name", "starts_on"),
    "memberships": ("cohort", "person", "role"),
    "sittings": ("cohort", "set_id", "scheme", "version", "about", "held_on"),
    "papers": ("sitting", "person", "number", "attempt", "language", "content"),
    "cuts": ("scheme", "version", "method", "written", "practical", "judges", "recorded_at", "recorded_by"),
    "decisions": (
        "person", "cohort", "scheme", "version", "scheme_status", "cut", "passed", "reasons", "papers", "attempt",
        "decided_at", "decided_by", "exception",
    ),
    "certificates": (
        "serial", "person", "decision", "scheme", "version", "scope", "valid_from", "valid_to", "signed_hash",
        "issued_at", "issued_by", "renews",
    ),
    "certificate_changes": ("certificate", "was", "becomes", "reason", "at", "by"),
    "decision_inputs": ("inputs",),
    "applications": ("person", "cohort", "scheme", "version", "tanks", "witnesses", "filed_at", "filed_by"),
    "retest_exceptions": ("noted_at", "noted_by"),
    "rechecks": ("cohort", "person", "practical", "step", "seen", "observer", "attempt", "observed_on"),
    "recheck_seconds": ("seen", "observer"),
    "appeals": ("decision", "filed_at"),
    "tanks": (
        "serial", "place", "plan_version", "plan", "plan_hash", "volume", "wall_height", "started_on", "entered_at",
        "entered_by",
    ),
    "tank_people": ("tank", "person", "certificate", "part"),
    "hold_points": ("tank", "point", "verdict", "note", "signed_at", "signed_by"),
    "leak_tests": ("tank", "hours", "drop_mm", "tight", "note", "tested_at", "tested_by"),
    "photos": ("tank", "point", "sha256", "caption"),
    "complaints": ("tank", "certificate", "filed_at"),
}  # fmt: skip
"""Columns that never change: the event that made the row holds their hash."""

STATES: Mapping[str, tuple[str, ...]] = {
    "roles": ("until",),
    "certificates": ("status",),
    "appeals": ("outcome", "decided_at", "decided_by"),
    "applications": ("outcome", "decided_at", "decided_by", "exception"),
    "complaints": ("closed_at", "closed_by"),
}
"""Columns that change: the newest event about the row holds their hash."""

PERSONAL: Mapping[str, tuple[str, ...]] = {
    "people": ("name", "language", "consent_on", "public_name", "accommodations"),
    "paper_files": ("pdf_hash",),
    "certificates": ("printed_name",),
    "appeals": ("grounds", "reasons"),
    "applications": ("evidence", "reasons"),
    "retest_exceptions": ("reason",),
    "complaints": ("about", "finding"),
}
"""Columns that can be erased: the newest payload about the row holds them."""

NEVER_CHANGED = ("events", "certificate_changes", "hold_points")
"""Tables with triggers against UPDATE and DELETE."""

NEVER_DELETED = ("certificates", "tanks", "decisions", "counters")
"""Tables with a trigger against DELETE, so that no number is ever used again."""
