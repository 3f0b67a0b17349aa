"""Credentials: certificates that can't be forged, the list of withdrawn numbers, badges, and the keys that sign them.

No clock and no network; the time is handed in. What is signed here proves who issued it and that nothing was changed.
It never proves that the person who shows it is the one named.
"""

from generator.credentials.badge import badge_text, make_badge, verify_badge
from generator.credentials.certificate import (
    Certificate,
    Role,
    Roof,
    Scope,
    as_data,
    certificate_text,
    scope_of,
    sign_certificate,
)
from generator.credentials.fingerprint import in_digits, in_words
from generator.credentials.keyring import (
    KeyRing,
    SigningKey,
    copy_checked,
    lock,
    mark_stolen,
    new_ring,
    public_file,
    rotate,
    save,
    unlock,
)
from generator.credentials.keys import PublicKey, PublicKeys, read_public_keys
from generator.credentials.page import CheckPage, check_page
from generator.credentials.qr import LEAST_MODULE, QrCode, least_width, module_size, qr_of
from generator.credentials.refused import NotAcceptedError
from generator.credentials.scan import UnreadableImageError, codes_in
from generator.credentials.seen import newest_seen, remembered
from generator.credentials.told import facts, told, verdict_data
from generator.credentials.verify import (
    MAX_AGE,
    ListInUse,
    Note,
    Outcome,
    Verdict,
    effective_day,
    use_list,
    verify_certificate,
    verify_number,
)
from generator.credentials.withdrawn import (
    Status,
    StolenKey,
    WithdrawnList,
    list_text,
    sign_list,
    stolen_entry,
)

__all__ = [
    "LEAST_MODULE",
    "MAX_AGE",
    "Certificate",
    "CheckPage",
    "KeyRing",
    "ListInUse",
    "NotAcceptedError",
    "Note",
    "Outcome",
    "PublicKey",
    "PublicKeys",
    "QrCode",
    "Role",
    "Roof",
    "Scope",
    "SigningKey",
    "Status",
    "StolenKey",
    "UnreadableImageError",
    "Verdict",
    "WithdrawnList",
    "as_data",
    "badge_text",
    "certificate_text",
    "check_page",
    "codes_in",
    "copy_checked",
    "effective_day",
    "facts",
    "in_digits",
    "in_words",
    "least_width",
    "list_text",
    "lock",
    "make_badge",
    "mark_stolen",
    "module_size",
    "new_ring",
    "newest_seen",
    "public_file",
    "qr_of",
    "read_public_keys",
    "remembered",
    "rotate",
    "save",
    "scope_of",
    "sign_certificate",
    "sign_list",
    "stolen_entry",
    "told",
    "unlock",
    "use_list",
    "verdict_data",
    "verify_badge",
    "verify_certificate",
    "verify_number",
]
