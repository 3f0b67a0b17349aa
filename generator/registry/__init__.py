"""The registry: people, papers, marks, decisions, certificates, tanks; nothing is lost, doubled or changed unseen.

Open one with `open_registry` (a SQLite file, or PostgreSQL by URL), and hand it to the functions below. Each of them is
one transaction: all of it is kept, or nothing. None reads a clock: `now` is handed in, with its zone.

| job | functions |
|---|---|
| people | `add_person`, `change_person`, `give_role`, `end_role`, `all_of`, `erase_person` |
| cohorts | `add_cohort`, `join_cohort`, `import_class_list` |
| papers | `archive_set`, `archive_papers`, `read_papers`, `find_paper`, `kept_record` |
| by name | `coordinator_called`, `cohort_called`, `cohort_names`, `sets_in`, `candidates_called`, `sat_elsewhere` |
| marks | `import_answers`, `import_observations`, `import_rechecks`, `compare_observers`, `seen_by_name` |
| ways in | `file_application`, `close_application`, `applications_for`, `taught`, `excepted` |
| decisions | `record_cut`, `record_decision`, `file_appeal`, `decide_appeal` |
| certificates | `issue`, `change_status`, `expire_all`, `read_certificate`, `withdrawn_numbers` |
| tanks | `add_tank`, `add_holder`, `sign_hold_point`, `record_leak_test`, `add_photo` |
| complaints | `file_complaint`, `close_complaint`, `holders`, `erase_complaint_text` |
| reports | `cohort_report`, `competency_report`, `pass_rates`, `expiring_soon`, `tank_report` |
| keeping | `audit`, `chain_head`, `backup`, `read_backup`, `audit_backup`, `restore`, `note_clock` |

What a person wrote wrongly comes as `ProblemsError`, what a rule refuses as `RefusedError`, and what disk or database
did as `MachineError`.
"""

from generator.registry.accommodations import Accommodation, Needs, needs_of, read_accommodation
from generator.registry.answers import import_answers
from generator.registry.appeals import APPEAL_DAYS, decide_appeal, file_appeal
from generator.registry.applications import (
    OUTCOMES,
    Application,
    applications_for,
    close_application,
    file_application,
    taught,
)
from generator.registry.audit import Finding, audit
from generator.registry.backup import Backup, audit_backup, backup, chain_head, read_backup, restore
from generator.registry.certificates import (
    MOVES,
    Certificate,
    Change,
    ToSign,
    change_status,
    expire_all,
    initials,
    issue,
    read_certificate,
    withdrawn_numbers,
)
from generator.registry.chain import Head
from generator.registry.clock import note_clock
from generator.registry.cohorts import Imported, add_cohort, import_class_list, join_cohort
from generator.registry.complaints import Holder, close_complaint, file_complaint, holders
from generator.registry.csv_text import guarded, to_csv, unguarded
from generator.registry.decisions import record_cut, record_decision
from generator.registry.find import (
    candidates_called,
    cohort_called,
    cohort_names,
    coordinator_called,
    find_paper,
    is_empty,
    sat_elsewhere,
    sets_in,
)
from generator.registry.hold_points import add_photo, record_leak_test, sign_hold_point
from generator.registry.kept_record import kept_record
from generator.registry.numbers import is_number
from generator.registry.observations import (
    Compared,
    compare_observers,
    import_observations,
    import_rechecks,
    seen_by_name,
)
from generator.registry.papers import (
    NewPaper,
    NewSitting,
    Paper,
    about_set,
    archive_papers,
    archive_set,
    papers_of,
    read_papers,
)
from generator.registry.people import (
    NewPerson,
    add_person,
    all_of,
    change_person,
    end_role,
    erase_complaint_text,
    erase_person,
    give_role,
)
from generator.registry.place import default_place
from generator.registry.reports import Report, cohort_report, competency_report, expiring_soon, pass_rates, tank_report
from generator.registry.store import Registry, open_registry
from generator.registry.tables import HOLD_POINTS, ROLES, STATUSES, VERDICTS
from generator.registry.tanks import NewTank, add_holder, add_tank
from generator.registry.tries import excepted

__all__ = [
    "APPEAL_DAYS",
    "HOLD_POINTS",
    "MOVES",
    "OUTCOMES",
    "ROLES",
    "STATUSES",
    "VERDICTS",
    "Accommodation",
    "Application",
    "Backup",
    "Certificate",
    "Change",
    "Compared",
    "Finding",
    "Head",
    "Holder",
    "Imported",
    "Needs",
    "NewPaper",
    "NewPerson",
    "NewSitting",
    "NewTank",
    "Paper",
    "Registry",
    "Report",
    "ToSign",
    "about_set",
    "add_cohort",
    "add_holder",
    "add_person",
    "add_photo",
    "add_tank",
    "all_of",
    "applications_for",
    "archive_papers",
    "archive_set",
    "audit",
    "audit_backup",
    "backup",
    "candidates_called",
    "chain_head",
    "change_person",
    "change_status",
    "close_application",
    "close_complaint",
    "cohort_called",
    "cohort_names",
    "cohort_report",
    "compare_observers",
    "competency_report",
    "coordinator_called",
    "decide_appeal",
    "default_place",
    "end_role",
    "erase_complaint_text",
    "erase_person",
    "excepted",
    "expire_all",
    "expiring_soon",
    "file_appeal",
    "file_application",
    "file_complaint",
    "find_paper",
    "give_role",
    "guarded",
    "holders",
    "import_answers",
    "import_class_list",
    "import_observations",
    "import_rechecks",
    "initials",
    "is_empty",
    "is_number",
    "issue",
    "join_cohort",
    "kept_record",
    "needs_of",
    "note_clock",
    "open_registry",
    "papers_of",
    "pass_rates",
    "read_accommodation",
    "read_backup",
    "read_certificate",
    "read_papers",
    "record_cut",
    "record_decision",
    "record_leak_test",
    "restore",
    "sat_elsewhere",
    "seen_by_name",
    "sets_in",
    "sign_hold_point",
    "tank_report",
    "taught",
    "to_csv",
    "unguarded",
    "withdrawn_numbers",
]
