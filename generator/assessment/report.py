"""The report on papers and practicals in words: what to change first, then every number behind it.

The same data is told as text, as a page and as a sheet. Each change is a plain sentence with its reason beside it.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import islice

from generator.assessment import agreement as ag
from generator.assessment import report_charts as charts
from generator.assessment.analysis import Analysis, Decisions, Question
from generator.assessment.angoff import Round
from generator.assessment.borderline import Group, Regression
from generator.assessment.consistency import WANTED_SAME, Accuracy, Consistency
from generator.assessment.contrasting import FALSE_PASS_WEIGHT, Contrast
from generator.assessment.distractors import OptionCount
from generator.assessment.fairness import UNUSUAL, Comparison
from generator.assessment.notes import NoAnswerError, Note, joined
from generator.assessment.reliability import WANTED, Reliability, times_longer
from generator.assessment.simulate import Gates, Share
from generator.exercises.mark import READING
from generator.figures import Scene
from generator.formula import show, whole_up
from generator.plans import Section
from generator.words import Words

MOST_CHANGES = 8
"""Changes on the first page; the tables hold the rest."""
MOST_OF_A_KIND = 3
MOST_BANDS = 12
"""Rows of the table of small and large numbers, the least even ones first; the data has them all."""
_OFTEN_OPEN = 0.25
_DASH = "–"


@dataclass(frozen=True, slots=True)
class Change:
    """One thing to change, and why."""

    name: str
    sentence: str
    why: str


@dataclass(frozen=True, slots=True)
class Chapter:
    """A section with its charts."""

    section: Section
    charts: tuple[Scene, ...] = ()


@dataclass(frozen=True, slots=True)
class Report:
    """The whole report.

    Args:
        title: its name.
        cautions: to be read before anything else.
        changes: what to change, most urgent first.
        more: whether there is more than stands there.
        chapters: the numbers behind it.
    """

    title: str
    cautions: tuple[str, ...]
    changes: tuple[Change, ...]
    more: bool
    chapters: tuple[Chapter, ...]

    def sections(self, words: Words) -> tuple[Section, ...]:
        """The report as plain sections: for text."""
        lines = list(self.cautions)
        for number, change in enumerate(self.changes, start=1):
            lines += [f"{number}. {change.sentence}", f"   {words.say('analyse.because', why=change.why)}"]
        if not self.changes:
            lines.append(words.say("analyse.nothing_to_change"))
        if self.more:
            lines.append(words.say("analyse.more"))
        first = Section("first", words.say("analyse.heading.first"), tuple(lines))
        return (first, *(chapter.section for chapter in self.chapters))


@dataclass(frozen=True)
class Masons:
    """A scheme's gates as its rule is built up, the whole rule last, and two curves."""

    rows: tuple[tuple[str, Gates], ...]
    plain: tuple[Share, ...]
    helped: tuple[Share, ...]


@dataclass(frozen=True)
class Names:
    """What questions, competencies and steps are called, by id; an id stands for itself where nothing is known."""

    steps: Mapping[str, str] = field(default_factory=dict)
    given: Mapping[str, str] = field(default_factory=dict)


def report(analysis: Analysis, words: Words, names: Names | None = None, masons: Masons | None = None) -> Report:
    """Put an analysis into words.

    Args:
        analysis: the numbers.
        words: of the reader's language.
        names: what things are called in that language.
        masons: a scheme's simulation, if one was asked for.
    """
    teller = _Teller(analysis, words, names or Names(), masons)
    found = list(teller.changes())
    cautions = tuple(teller.note(each) for each in _first_notes(analysis))
    return Report(
        words.say("analyse.title"),
        cautions,
        tuple(found[:MOST_CHANGES]),
        len(found) > MOST_CHANGES,
        tuple(teller.chapters()),
    )


def _first_notes(analysis: Analysis) -> tuple[Note, ...]:
    return joined(part.notes for part in (analysis.items,) if part is not None)


def _unbroken(text: str) -> str:
    """No line ends between a number and its percent sign."""
    return text.replace(" %", "\u00a0%")


def _of(part: int, whole: int) -> str:
    return f"{part}\u00a0/\u00a0{whole}"


class _Teller:
    """Says one analysis in one language."""

    def __init__(self, analysis: Analysis, words: Words, names: Names, masons: Masons | None) -> None:
        self.analysis, self.words, self.names, self.masons = analysis, words, names, masons

    # ------------------------------------------------------------------------------------------- numbers

    def number(self, value: float, places: int = 0) -> str:
        return self.words.number(show(value, places)) if math.isfinite(value) else _DASH

    def percent(self, share: float, places: int = 0) -> str:
        return self.number(100 * share, places)

    def note(self, found: Note) -> str:
        return self.words.say_one_of("statistics.note", found.name, **dict(found.values))

    def no_answer(self, found: Note) -> str:
        return self.words.say_one_of("statistics.no_answer", found.name, **dict(found.values))

    def head(self, *names: str) -> tuple[str, ...]:
        return tuple(self.words.say_one_of("analyse.head", name) for name in names)

    def line(self, line: str, **values: object) -> str:
        return _unbroken(self.words.say_one_of("analyse.line", line, **values))

    def step(self, practical: str, step: str) -> str:
        return self.names.steps.get(f"{practical}/{step}", step)

    def mistake(self, name: str, part: str) -> str:
        """The mistake or what it does on the hill; the bare name where the course has given it up."""
        if name.startswith(READING) and f"exercise.{name}.{part}" in self.words:
            return self.words.say_one_of("exercise.reading", f"{name.removeprefix(READING)}.{part}")
        if f"misconception.{name}.{part}" in self.words:
            return self.words.say_one_of("misconception", f"{name}.{part}")
        return name if part == "mistake" else ""

    # ------------------------------------------------------------------------------------------- changes

    def change(self, name: str, values: Mapping[str, object], why: Mapping[str, object]) -> Change:
        sentence = self.words.say_one_of("analyse.change", name, **values)
        return Change(name, _unbroken(sentence), _unbroken(self.words.say_one_of("analyse.why", name, **why)))

    def changes(self) -> Iterator[Change]:
        """Most urgent first: what may be wrong about the exam, then who to ask again, then what to teach."""
        analysis = self.analysis
        if self.masons is not None and not self.masons.rows[-1][1].met:
            yield self.change("scheme", {}, {})
        yield from self._apart()
        yield from islice(self._suspects(), MOST_OF_A_KIND)
        yield from islice(self._unfair(), MOST_OF_A_KIND)
        yield from self._cuts()
        yield from self._paper()
        never = [question for question in analysis.questions if question.asked and not question.right]
        if never:
            names = ", ".join(question.name for question in never)
            yield self.change("nobody_right", {"questions": names}, {"count": max(each.asked for each in never)})
        yield from self._to_teach()
        often_open = (q for q in analysis.questions if q.asked and q.blank >= max(2, _OFTEN_OPEN * q.asked))
        for question in islice(often_open, MOST_OF_A_KIND):
            why = {"count": question.blank, "asked": question.asked}
            yield self.change("left_open", {"question": question.name}, why)
        easy = [q.name for q in analysis.questions if q.asked > 1 and q.right == q.asked]
        if easy:
            yield self.change("too_easy", {"questions": ", ".join(easy)}, {})

    def _suspects(self) -> Iterator[Change]:
        tables = self.analysis.tables or {}
        for question in self.analysis.questions:
            table = tables.get(question.name)
            backward = question.rest is not None and question.rest < 0 and question.upper < question.lower
            group, upper, lower = question.group, question.upper, question.lower
            if table is not None and table.suspect_key and not backward:
                key = next(option for option in table.options if option.is_key)
                group = max(1, sum(option.upper for option in table.options))
                upper, lower = key.upper / group, key.lower / group
            elif not backward:
                continue
            why: dict[str, object] = {"group": group, "upper": self.percent(upper), "lower": self.percent(lower)}
            yield self.change("key_or_question", {"question": question.name}, why)

    def _unfair(self) -> Iterator[Change]:
        for form in self.analysis.forms:
            if form.p < UNUSUAL:
                yield self.change("form_apart", {"question": form.question}, self._pair(form.comparison, form.p))
        for band in self.analysis.bands:
            if band.p < UNUSUAL:
                given = self.names.given.get(band.given, band.given)
                values = {"question": band.question, "given": given}
                yield self.change("numbers_apart", values, self._pair(band.comparison, band.p))

    def _pair(self, comparison: Comparison, chance: float) -> dict[str, object]:
        right, asked = comparison.right, comparison.asked
        return {
            "first": self.percent(right[0] / asked[0]),
            "second": self.percent(right[1] / asked[1]),
            "chance": self.percent(chance, 1),
        }

    def _apart(self) -> Iterator[Change]:
        observers = self.analysis.observers
        if observers is None:
            return
        whole = observers.whole
        if isinstance(whole, ag.Agreement) and whole.ac1 < ag.GO_ON:
            yield self.change("observers_apart", {}, self._beyond(whole))
        critical = [(step, step.agreement) for step in observers.steps if step.critical]
        apart = [(step, found) for step, found in critical if isinstance(found, ag.Agreement)]
        apart = [(step, found) for step, found in apart if found.percent < ag.GO_ON_CRITICAL]
        for step, found in sorted(apart, key=lambda pair: pair[1].percent)[:2]:
            values = {"have": self.percent(found.percent), "need": self.percent(ag.GO_ON_CRITICAL)}
            yield self.change("step_apart", {"step": self.step(step.practical, step.step)}, values)

    def _beyond(self, whole: ag.Agreement) -> dict[str, object]:
        return {"value": self.number(whole.ac1, 2), "need": self.number(ag.GO_ON, 2)}

    def _cuts(self) -> Iterator[Change]:
        analysis = self.analysis
        if analysis.rounds:
            last = analysis.rounds[-1]
            for judge in last.far_off:
                own = last.cuts[last.judges.index(judge)]
                apart = {"own": self.number(own, 1), "mean": self.number(last.mean, 1)}
                yield self.change("judge_far_off", {"judge": judge}, apart)
        for name, found in (("no_line", analysis.regression), ("no_groups", analysis.contrast)):
            if isinstance(found, Note):
                sentence = self.words.say_one_of("analyse.change", name)
                yield Change(name, sentence, _unbroken(self.no_answer(found)))
        decisions = analysis.decisions
        if decisions is not None and decisions.same is not None and decisions.same < WANTED_SAME:
            values = {"low": decisions.low, "high": decisions.high}
            why: dict[str, object] = {
                "count": self.percent(1 - decisions.same),
                "cut": decisions.cut,
                "near": decisions.near,
                "people": analysis.people,
            }
            yield self.change("near_cut", values, why)
        elif decisions is None and analysis.items is not None and analysis.same_paper:
            yield self.change("set_cut", {}, {})

    def _paper(self) -> Iterator[Change]:
        found = self.analysis.reliability
        if not isinstance(found, Reliability) or found.alpha >= WANTED or not self.analysis.same_paper:
            return
        why = {"value": self.number(found.alpha, 2), "wanted": self.number(WANTED, 2)}
        try:
            count = int(whole_up(found.questions * times_longer(found.alpha, WANTED)))
        except NoAnswerError:
            yield self.change("other_questions", {}, why)
        else:
            if count > 200:
                yield self.change("other_questions", {}, why)
            else:
                yield self.change("longer", {"count": count}, why)

    def _to_teach(self) -> Iterator[Change]:
        """The three most frequent wrong ideas, each once."""
        told: set[str] = set()
        for row in self.analysis.mistakes:
            if row.count < 2 or row.mistake in told or len(told) == 3:
                continue
            told.add(row.mistake)
            why = {
                "count": row.count,
                "wrong": row.wrong,
                "question": row.question,
                "hill": self.mistake(row.mistake, "hill"),
            }
            yield self.change("teach", {"mistake": self.mistake(row.mistake, "mistake")}, why)

    # ------------------------------------------------------------------------------------------ chapters

    def chapters(self) -> Iterator[Chapter]:
        analysis = self.analysis
        if analysis.questions:
            yield self._questions()
        if analysis.reliability is not None:
            yield self._whole_paper()
        if analysis.decisions is not None:
            yield self._decisions(analysis.decisions)
        if analysis.tables:
            yield self._options()
        if analysis.mistakes:
            yield self._mistakes()
        if analysis.forms:
            yield self._forms()
        if analysis.bands:
            yield self._bands()
        if analysis.rounds:
            yield self._judges(analysis.rounds)
        if analysis.group is not None or analysis.regression is not None:
            yield self._borderline()
        if analysis.contrast is not None:
            yield self._contrast(analysis.contrast)
        if analysis.observers is not None:
            yield self._observers()
        if self.masons is not None:
            yield self._masons(self.masons)

    def chapter(
        self,
        key: str,
        lines: Sequence[str],
        head: Sequence[str] = (),
        rows: Sequence[Sequence[str]] = (),
        drawn: Sequence[Scene] = (),
    ) -> Chapter:
        heading = self.words.say_one_of("analyse.heading", key)
        return Chapter(
            Section(key, heading, tuple(lines), tuple(head) if rows else (), tuple(map(tuple, rows))), tuple(drawn)
        )

    def _questions(self) -> Chapter:
        analysis = self.analysis
        lines = [self.words.say("analyse.of_people", count=analysis.people, questions=len(analysis.questions))]
        if not analysis.same_paper:
            lines.append(self.line("papers_differ", count=analysis.most, all=len(analysis.questions)))
        if analysis.items is not None:
            lines.append(self.line("questions", group=analysis.items.group))
        rows = [
            (
                question.name,
                _of(question.right, question.asked),
                self._between(question),
                _DASH if question.rest is None else self.number(question.rest, 2),
                self.percent(question.upper - question.lower) if question.group else _DASH,
                str(question.blank),
            )
            for question in analysis.questions
        ]
        head = self.head("question", "right", "range", "rest", "groups", "open")
        return self.chapter("questions", lines, head, rows, charts.question_charts(analysis, self.words))

    def _between(self, question: Question) -> str:
        low, high = self.percent(question.low), self.percent(question.high)
        return f"{self.percent(question.difficulty)}\u00a0({low}{_DASH}{high})"

    def _options(self) -> Chapter:
        rows = [
            (
                name,
                self._option(name, option),
                str(option.upper),
                str(option.middle),
                str(option.lower),
            )
            for name, table in (self.analysis.tables or {}).items()
            for option in table.options
        ]
        head = self.head("question", "option", "best", "middle", "weakest")
        return self.chapter("options", [self.line("options")], head, rows)

    def _option(self, question: str, option: OptionCount) -> str:
        if not option.option:
            return self.words.say("analyse.no_option")
        said = self.analysis.option_texts.get(question, {}).get(option.option, "")
        mark = "\u00a0*" if option.is_key else "" if option.works else "\u00a0?"
        return f"{option.option}{mark} {said}".rstrip()

    def _mistakes(self) -> Chapter:
        rows = [
            (row.question, self.mistake(row.mistake, "mistake"), _of(row.count, row.wrong))
            for row in self.analysis.mistakes
        ]
        return self.chapter("mistakes", [], self.head("question", "mistake", "times"), rows)

    def _whole_paper(self) -> Chapter:
        found = self.analysis.reliability
        if isinstance(found, Note):
            return self.chapter("paper", [self.no_answer(found)])
        assert isinstance(found, Reliability)  # noqa: S101 (one of the two)
        sd = math.sqrt(found.variance)
        lines = [
            self.line("mean", mean=self.number(found.mean, 1), most=found.questions, sd=self.number(sd, 1)),
            self.line(
                "alpha",
                value=self.number(found.alpha, 2),
                low=self.number(found.low, 2),
                high=self.number(found.high, 2),
            ),
        ]
        if found.kr21 is not None:
            lines.append(self.line("kr21", value=self.number(found.kr21, 2)))
        lines.append(self.line("sem", sem=self.number(found.sem, 1)))
        if not self.analysis.same_paper:
            lines.append(self.line("no_common_cut", count=self.analysis.most))
        lines += [self.note(each) for each in found.notes if each not in _first_notes(self.analysis)]
        return self.chapter("paper", lines, drawn=[charts.score_chart(self.analysis, self.words)])

    def _decisions(self, found: Decisions) -> Chapter:
        lines = [
            self.line("cut", cut=found.cut, most=found.most, count=found.passed, people=self.analysis.people),
            self.line("near", error=self.number(found.error, 1), low=found.low, high=found.high, count=found.near),
            self.line("consistency"),
        ]
        rows = []
        for name, model in found.models.items():
            called = self.words.say_one_of("analyse.model", name)
            if isinstance(model, Consistency):
                rows.append((called, self.percent(model.same), self.number(model.kappa, 2)))
            else:
                lines.append(self.line("no_model", model=called, why=self.no_answer(model)))
        if isinstance(found.accuracy, Accuracy):
            called = self.words.say("analyse.model.accuracy")
            twice = found.accuracy.consistency
            rows.append((called, self.percent(twice.same), self.number(twice.kappa, 2)))
            lines.append(
                self.line(
                    "accuracy",
                    through=self.percent(found.accuracy.false_pass),
                    back=self.percent(found.accuracy.false_fail),
                    right=self.percent(found.accuracy.right),
                )
            )
        return self.chapter("decisions", lines, self.head("model", "same", "kappa"), rows)

    def _forms(self) -> Chapter:
        rows = [
            (form.question, *self._compared(form.comparison), self.percent(form.p, 1)) for form in self.analysis.forms
        ]
        return self.chapter("forms", [self.line("forms")], self.head("question", "written", "spoken", "luck"), rows)

    def _bands(self) -> Chapter:
        rows = [
            (
                band.question,
                self.names.given.get(band.given, band.given),
                *self._compared(band.comparison),
                self.percent(band.p, 1),
            )
            for band in sorted(self.analysis.bands, key=lambda band: band.comparison.p)[:MOST_BANDS]
        ]
        lines = [self.line("numbers"), self.line("forms")]
        if len(rows) < len(self.analysis.bands):
            lines.append(self.line("numbers_shown", count=len(rows), all=len(self.analysis.bands)))
        head = self.head("question", "given", "small", "large", "luck")
        return self.chapter("numbers", lines, head, rows)

    def _compared(self, comparison: Comparison) -> tuple[str, str]:
        right, asked = comparison.right, comparison.asked
        first, second = (f"{self.percent(x / n)}\u00a0({_of(x, n)})" for x, n in zip(right, asked, strict=True))
        return first, second

    def _judges(self, rounds: Sequence[Round]) -> Chapter:
        lines = [
            self.line(
                "judges",
                round=number,
                mean=self.number(found.mean, 2),
                most=found.questions,
                error=self.number(found.error, 2),
                low=self.number(found.low, 2),
                high=self.number(found.high, 2),
                cut=found.cut,
            )
            for number, found in enumerate(rounds, start=1)
        ]
        lines.append(self.line("judges_policy"))
        lines += [self.note(each) for each in rounds[-1].notes]
        judges = list(dict.fromkeys(name for found in rounds for name in found.judges))
        rows = [
            (
                judge,
                *(
                    self.number(found.cuts[found.judges.index(judge)], 2) if judge in found.judges else _DASH
                    for found in rounds
                ),
            )
            for judge in judges
        ]
        head = self.head("judge", *("round_1", "round_2")[: len(rounds)])
        return self.chapter("judges", lines, head, rows, [charts.judge_chart(self.analysis, self.words)])

    def _borderline(self) -> Chapter:
        lines: list[str] = []
        drawn = []
        line, group = self.analysis.regression, self.analysis.group
        if isinstance(line, Regression):
            lines.append(
                self.line(
                    "regression",
                    slope=self.number(line.slope, 2),
                    value=self.number(line.value, 2),
                    error=self.number(line.error, 2),
                    cut=line.cut,
                    explained=self.percent(line.r2),
                )
            )
            lines += [self.note(each) for each in line.notes]
            drawn.append(charts.borderline_chart(self.analysis, line, self.words))
        elif isinstance(line, Note):
            lines.append(self.no_answer(line))
        if isinstance(group, Group):
            mean, median = self.number(group.mean, 2), self.number(group.median, 2)
            lines.append(self.line("group", count=group.count, mean=mean, median=median))
            lines += [self.note(each) for each in group.notes]
        elif isinstance(group, Note):
            lines.append(self.no_answer(group))
        return self.chapter("borderline", lines, drawn=drawn)

    def _contrast(self, found: Contrast | Note) -> Chapter:
        if isinstance(found, Note):
            return self.chapter("groups", [self.no_answer(found)])
        weight = self.number(FALSE_PASS_WEIGHT)
        lines = [self.line("contrast", cut=self.number(found.cut, 0), weight=weight)]
        if found.crossing is not None:
            lines.append(self.line("crossing", value=self.number(found.crossing, 1)))
        if found.logistic is not None:
            lines.append(self.line("logistic", value=self.number(found.logistic, 1)))
        lines += [self.note(each) for each in found.notes]
        rows = [(self.number(row.cut, 0), str(row.false_pass), str(row.false_fail)) for row in found.table]
        return self.chapter("groups", lines, self.head("cut", "false_pass", "false_fail"), rows)

    def _observers(self) -> Chapter:
        found = self.analysis.observers
        assert found is not None  # noqa: S101 (asked before)
        whole = found.whole
        if isinstance(whole, Note):
            return self.chapter("observers", [self.no_answer(whole)])
        have = self.percent(whole.percent)
        lines = [self.line("observers", names=", ".join(found.names), pairs=whole.pairs, have=have)]
        lines.append(self.line("ac1", **self._beyond(whole), error=self.number(whole.error, 2)))
        if found.kappa is not None:
            lines.append(self.line("kappa", value=self.number(found.kappa, 2)))
        lines += [self.note(each) for each in whole.notes]
        rows = []
        for step in found.steps:
            called = self.step(step.practical, step.step) + (" *" if step.critical else "")
            own = step.agreement
            if isinstance(own, ag.Agreement):
                rows.append((called, str(own.pairs), self.percent(own.percent), self.number(own.ac1, 2)))
            else:
                rows.append((called, "0", _DASH, _DASH))
        return self.chapter("observers", lines, self.head("step", "seen", "agree", "ac1"), rows)

    def _masons(self, masons: Masons) -> Chapter:
        rows = [
            (
                self.words.say_one_of("analyse.help", name),
                self.percent(found.weak.wrong, 1),
                self.percent(found.lacking.wrong, 1),
                self.percent(found.strong.wrong, 1),
                self.percent(found.middle.share, 1),
            )
            for name, found in masons.rows
        ]
        head = self.head("added", "weak", "lacking", "strong", "middling")
        drawn = [charts.mason_chart(masons.plain, masons.helped, self.words)]
        return self.chapter("masons", [self.line("masons"), self.line("masons_assumed")], head, rows, drawn)
