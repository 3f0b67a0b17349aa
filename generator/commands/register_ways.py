"""How each candidate came to the exam: taught in a cohort, or by an accepted application by experience."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace

from generator.assessment import Decision, Reason, Requirement
from generator.curriculum.models import Scheme
from generator.problems import RefusedError
from generator.registry import Application, Registry, applications_for, taught


@dataclass(frozen=True, slots=True)
class Ways:
    """What the registry knows of everyone's way to the exam.

    Args:
        scheme: for which.
        applied: the newest application of each.
        taught: who was a candidate of a cohort with a trainer.
    """

    scheme: Scheme
    applied: Mapping[int, Application]
    taught: Collection[int]

    @staticmethod
    def of(registry: Registry, scheme: Scheme) -> Ways:
        """The ways to a scheme's exam."""
        return Ways(scheme, applications_for(registry, scheme.id), taught(registry))

    def accepted(self, person: int) -> Application | None:
        """The accepted application by which someone came; None for whoever came by the course."""
        found = self.applied.get(person)
        return found if found is not None and found.outcome == "accepted" else None

    def known(self, person: int) -> bool:
        """Whether the registry holds by which way someone came."""
        return self.accepted(person) is not None or person in self.taught

    def let_in(self, chosen: Collection[int], named: Collection[int], left: dict[int, str]) -> list[int]:
        """Who of those chosen may be decided on; the others go to those left out, with the reason.

        Raises:
            RefusedError: somebody was named whose application is not accepted, and who was not taught.
        """
        good = []
        for person in chosen:
            found = self.applied.get(person)
            if found is None or self.known(person):
                good.append(person)
                continue
            why = found.outcome or "open"
            if person in named:
                raise RefusedError(
                    f"application {found.id} of person {person} is {why}, and no trainer is recorded for them: "
                    "there is no way to this exam yet"
                )
            left[person] = f"application_{why}"
        return good

    def added(self, decision: Decision, person: int) -> Decision:
        """The decision with the application that let the person in, first of its reasons."""
        found = self.accepted(person)
        if found is None:
            return decision
        least = self.scheme.experience.tanks
        subject = f"{found.id}/{found.decided_by}"
        way = Reason(Requirement.ROUTE, found.tanks >= least, subject, found.tanks, least, found.tanks)
        return replace(decision, reasons=(way, *decision.reasons))

    def data(self, person: int) -> dict[str, object]:
        """The same for the decision's record."""
        found = self.accepted(person)
        if found is not None:
            return {"by": "experience", "application": found.id, "accepted_by": found.decided_by, "tanks": found.tanks}
        return {"by": "course" if person in self.taught else "not recorded"}
