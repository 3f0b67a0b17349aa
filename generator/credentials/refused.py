"""Why something that should carry a signature is not accepted: a stable code, and what fills the slots of its words."""

from __future__ import annotations


class NotAcceptedError(Exception):
    """A certificate, list or badge that is not accepted.

    Args:
        code: stable name of the reason; its words are `certificate.refused.<code>`.
        values: for the slots of those words.
    """

    def __init__(self, code: str, **values: str) -> None:
        super().__init__(code)
        self.code = code
        self.values = values
