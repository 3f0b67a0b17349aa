"""The frozen models of everything an author writes in `course/`, `quizzes/` and `handouts/`.

The models are plain data. How files become models, and what is checked across files, lives in this room's other files.
Every text that people read is a mapping from language code to text, so that a missing translation is a problem with a
line number and never an empty page.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any, Literal, TypeAlias

from pydantic import AfterValidator, BaseModel, ConfigDict, Discriminator, Field, Tag, ValidationInfo
from pydantic_core import PydanticCustomError

Key = Annotated[str, Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=40)]
"""Name of a thing in the content: lower case, digits and hyphens, at most 40 characters; never reused."""

Language = Annotated[str, Field(pattern=r"^[a-z]{2,3}$")]
"""Code of a language, as in `en`; it stands in file names: `lesson.en.md`."""


def _in_every_language(text: Mapping[str, str], info: ValidationInfo) -> Mapping[str, str]:
    """Hold a text against the course's languages, where the reader of the file knows them."""
    languages: tuple[str, ...] = (info.context or {}).get("languages", ())
    if languages:
        unknown = [language for language in text if language not in languages]
        missing = [language for language in languages if not text.get(language, "").strip()]
        if unknown:
            raise PydanticCustomError(
                "unknown_language", "unknown language", {"languages": languages, "key": unknown[0]}
            )
        if missing:
            raise PydanticCustomError("missing_translation", "missing translation", {"key": missing[0]})
    return text


LocalText = Annotated[Mapping[str, str], AfterValidator(_in_every_language)]
"""One text in every language of the course: ``{en: ..., hi: ...}``.

A text may hold ``{{ value("hoop_count") }}`` for a number of its module's place, and ``{{ plain("5 m") }}`` for a
number that is no trade number.
"""


Aid: TypeAlias = Literal["tape", "stick", "reckoner", "calculator", "formulas"]
"""What may be used beside pen and paper; `formulas` is the course's formula sheet, where a question sends there."""


class Content(BaseModel):
    """Base of all models: frozen, strict, and an unknown key is a problem."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)


# ---------------------------------------------------------------------------------------------- course/


class Competency(Content):
    """Something that a person can do; `critical` ones can't be made up for by others."""

    id: Key
    critical: bool = False
    text: LocalText


class Competencies(Content):
    """`course/competencies.yaml`."""

    format: Literal[1]
    competencies: Annotated[tuple[Competency, ...], Field(strict=False, min_length=1)]


class Course(Content):
    """`course/course.yaml`: the course's name, languages and the order of its modules."""

    format: Literal[1]
    id: Key
    version: str
    title: LocalText
    about: LocalText
    invented: LocalText
    """Says in words that the place and its people are invented."""
    languages: Annotated[tuple[Language, ...], Field(strict=False, min_length=1)]
    modules: Annotated[tuple[Key, ...], Field(strict=False, min_length=1)]
    """Folder names below `course/modules/`, in teaching order."""


class Outcome(Content):
    """What a learner can do after the module, tied to the competency that it builds."""

    competency: Key
    text: LocalText


class Minutes(Content):
    """Time of a module in minutes: talking, showing, doing."""

    talk: Annotated[int, Field(ge=0, le=600)]
    show: Annotated[int, Field(ge=0, le=600)]
    do: Annotated[int, Field(ge=0, le=1200)]


class Caution(Content):
    """A danger and the usual care, shown where the work can hurt someone."""

    id: Key
    text: LocalText


class Card(Content):
    """One card of a module's picture view: one drawing, one short sentence, and a danger where the work has one.

    A trainer's own recording of it lies in the module's folder: ``audio/<id>.<language>.mp3`` (or m4a, ogg, wav).
    """

    id: Annotated[Key, Field(max_length=36)]
    """Short enough to be the name of a file with an ending."""
    figure: Key
    """Drawn with the numbers of the module's place."""
    text: LocalText
    caution: LocalText | None = None


class Module(Content):
    """`course/modules/NN-name/module.yaml`."""

    format: Literal[1]
    id: Key
    title: LocalText
    summary: LocalText
    """One or two sentences for the path page and the module's head."""
    place: Key
    """The place whose numbers the lesson uses."""
    needs: Annotated[tuple[Key, ...], Field(strict=False)] = ()
    """Modules to finish first."""
    minutes: Minutes
    outcomes: Annotated[tuple[Outcome, ...], Field(strict=False, min_length=1)]
    tools: Annotated[tuple[LocalText, ...], Field(strict=False)] = ()
    cautions: Annotated[tuple[Caution, ...], Field(strict=False)] = ()
    figures: Annotated[tuple[Key, ...], Field(strict=False)] = ()
    cards: Annotated[tuple[Card, ...], Field(strict=False, max_length=30)] = ()
    """The module in pictures, in order."""
    practicals: Annotated[tuple[Key, ...], Field(strict=False)] = ()
    scenarios: Annotated[tuple[Key, ...], Field(strict=False)] = ()
    ask_a_trainer: Annotated[tuple[LocalText, ...], Field(strict=False)] = ()
    trainer_notes: Annotated[tuple[LocalText, ...], Field(strict=False)] = ()
    """For whoever teaches it: how to begin, what people get wrong and how it shows, what to do with the hands."""
    summary_card: Annotated[tuple[LocalText, ...], Field(strict=False)] = ()
    retired: bool = False


class Place(Content):
    """`course/places/*.yaml`: one tank on one site; `given` holds the numbers a tape or the shop gives."""

    format: Literal[1]
    id: Key
    name: LocalText
    about: LocalText
    invented: Literal[True]
    """Only invented places travel with the course."""
    given: Mapping[str, float]


# --------------------------------------------------------------------------------------------- quizzes/


class Steps(Content):
    """Numbers from a tape: from, to, in steps."""

    start: Annotated[float, Field(alias="from")]
    stop: Annotated[float, Field(alias="to")]
    step: Annotated[float, Field(gt=0)]


class OneOf(Content):
    """A few numbers, each as likely as the others."""

    one_of: Annotated[tuple[float, ...], Field(strict=False, min_length=1)]


def _form_of_range(given: Any) -> str:
    """Which form of a range was meant, so that a slip in one form is not reported for all three."""
    if isinstance(given, dict):
        return "one_of" if "one_of" in given else "steps"
    if isinstance(given, Steps):
        return "steps"
    return "one_of" if isinstance(given, OneOf) else "number"


GivenRange = Annotated[
    Annotated[Steps, Tag("steps")] | Annotated[OneOf, Tag("one_of")] | Annotated[float, Tag("number")],
    Discriminator(_form_of_range),
]
"""How a question draws a given: a range in steps, one of a few numbers, or one fixed number."""


class QuestionBase(Content):
    """What all kinds of question share."""

    id: Key
    competency: Key
    difficulty: Annotated[int, Field(ge=1, le=3)] = 1
    figure: Key | None = None
    text: LocalText
    retired: bool = False


Answer = Annotated[str, Field(pattern=r"^(exact|within [0-9]+(\.[0-9]+)? ?[a-zA-Z%][a-zA-Z0-9*/]*)$")]
"""How near an answer has to be: `exact`, `within 2 %`, `within 5 mm`."""


class WorkedQuestion(QuestionBase):
    """A question that the calculation module answers. The key is never typed."""

    asks: str
    """Name of a quantity."""
    given: Mapping[str, GivenRange]
    """Givens or earlier quantities by name; each appears as `{name}` in every language's text."""
    misconceptions: Annotated[tuple[str, ...], Field(strict=False)] = ()
    hint: LocalText | None = None


class Rounding(Content):
    """The form that the answer has to have: rounded `up`, `down` or to the `nearest` whole multiple of `to`."""

    rule: Literal["nearest", "up", "down"]
    to: Annotated[float, Field(gt=0)]
    """In the unit of the quantity."""


class NumberQuestion(WorkedQuestion):
    """A number to work out."""

    kind: Literal["number"]
    answer: Answer = "exact"
    """`exact`, or `within 2 %`, or `within 5 mm` (a unit of the same kind as the quantity's)."""
    aids: Annotated[tuple[Aid, ...], Field(strict=False)] = ()
    """What the learner may use; where nothing stands, the card says nothing about it."""
    units: Annotated[tuple[str, ...], Field(strict=False, max_length=4)] = ()
    """Units to choose from; a number without one is then asked for again."""
    rounding: Rounding | None = None
    credit: Annotated[tuple[str, ...], Field(strict=False, max_length=5)] = ()
    """Quantities on the way that earn a point each, in the order of working."""


class Option(Content):
    """One option of a choice question; `why` says what would happen on the hill."""

    right: bool = False
    text: LocalText
    why: LocalText | None = None


class ChoiceQuestion(QuestionBase):
    """One right option, or several where `several` is true."""

    kind: Literal["choice"]
    several: bool = False
    options: Annotated[tuple[Option, ...], Field(strict=False, min_length=2, max_length=6)]


class NumberChoiceQuestion(WorkedQuestion):
    """One right number among wrong ones; every wrong one is what a misconception gives, and none is typed."""

    kind: Literal["choice"]
    misconceptions: Annotated[tuple[str, ...], Field(strict=False, min_length=1, max_length=5)]


class OrderQuestion(QuestionBase):
    """Steps to put in order; the file holds them in the right order."""

    kind: Literal["order"]
    steps: Annotated[tuple[LocalText, ...], Field(strict=False, min_length=3, max_length=8)]
    why: LocalText


class Pair(Content):
    """Two things that belong together."""

    left: LocalText
    right: LocalText


class MatchQuestion(QuestionBase):
    """Pairs to find."""

    kind: Literal["match"]
    pairs: Annotated[tuple[Pair, ...], Field(strict=False, min_length=3, max_length=6)]
    why: LocalText


class SpotArea(Content):
    """One place of a drawing that can be pointed at; `name` is the figure's name for it."""

    name: Key
    text: LocalText | None = None
    """What is there, where that does not give the fault away; else the letter alone stands in the list."""
    right: bool = False
    """Whether the fault is here."""
    why: LocalText | None = None


class SpotQuestion(QuestionBase):
    """The fault in a drawing: the answer is the letter of an area, by key, by click or on paper."""

    kind: Literal["spot"]
    figure: Key
    several: bool = False
    areas: Annotated[tuple[SpotArea, ...], Field(strict=False, min_length=1, max_length=8)]
    """The figure letters its areas; those not named here are sound, with nothing to say. Where a figure letters
    none, these are A, B, C ... in this order."""


class SpokenChoiceQuestion(QuestionBase):
    """A helper reads the text aloud, one line a breath, and the learner picks a letter.

    In the text ` / ` is a short pause, ` // ` a long one, ` # ` means pointing at the picture, ` [2x] ` reading twice.
    """

    kind: Literal["spoken"]
    several: Literal[False] = False
    options: Annotated[tuple[Option, ...], Field(strict=False, min_length=2, max_length=4)]


class SpokenNumberQuestion(WorkedQuestion):
    """A helper reads the text aloud, as in `SpokenChoiceQuestion`, and the learner says a number."""

    kind: Literal["spoken"]
    answer: Answer = "exact"


def _form_of_question(given: Any) -> str | None:
    """Which model a question follows: its kind, and for two kinds whether it has options or asks for a quantity."""
    if not isinstance(given, dict):
        return next((tag for tag, model in _FORMS.items() if type(given) is model), None)
    kind, worked = given.get("kind"), "asks" in given and "options" not in given
    if not isinstance(kind, str):
        return None
    return {"choice": "choice of numbers", "spoken": "spoken number"}.get(kind, kind) if worked else kind


_FORMS: Mapping[str, type[QuestionBase]] = {
    "number": NumberQuestion,
    "choice": ChoiceQuestion,
    "choice of numbers": NumberChoiceQuestion,
    "order": OrderQuestion,
    "match": MatchQuestion,
    "spot": SpotQuestion,
    "spoken": SpokenChoiceQuestion,
    "spoken number": SpokenNumberQuestion,
}

Question = Annotated[
    Annotated[NumberQuestion, Tag("number")]
    | Annotated[ChoiceQuestion, Tag("choice")]
    | Annotated[NumberChoiceQuestion, Tag("choice of numbers")]
    | Annotated[OrderQuestion, Tag("order")]
    | Annotated[MatchQuestion, Tag("match")]
    | Annotated[SpotQuestion, Tag("spot")]
    | Annotated[SpokenChoiceQuestion, Tag("spoken")]
    | Annotated[SpokenNumberQuestion, Tag("spoken number")],
    Discriminator(_form_of_question),
]


class Bank(Content):
    """`quizzes/banks/*.yaml`: the questions of one module."""

    format: Literal[1]
    id: Key
    module: Key
    questions: Annotated[tuple[Question, ...], Field(strict=False, min_length=1)]


class ScenarioPart(Content):
    """One linked part: its answer feeds the later parts by the quantity's name."""

    id: Key
    competency: Key
    asks: str
    answer: Answer = "exact"
    aids: Annotated[tuple[Aid, ...], Field(strict=False)] = ()
    """As of a number question."""
    misconceptions: Annotated[tuple[str, ...], Field(strict=False)] = ()
    text: LocalText
    """May name the scenario's givens as `{name}`."""


class Scenario(Content):
    """`quizzes/scenarios/*.yaml`: linked parts on one place."""

    format: Literal[1]
    id: Key
    module: Key
    place: Key
    title: LocalText
    text: LocalText
    """The situation; names the givens that the learner needs as `{name}`."""
    given: Annotated[tuple[str, ...], Field(strict=False, min_length=1)]
    """Givens (or quantities) taken from the place's numbers."""
    figure: Key | None = None
    parts: Annotated[tuple[ScenarioPart, ...], Field(strict=False, min_length=3, max_length=8)]
    decisions: Annotated[tuple[Key, ...], Field(strict=False, max_length=6)] = ()
    """Questions of the module's bank, without numbers to work out, that ask what to do that day; after the parts."""
    retired: bool = False


class PracticalStep(Content):
    """One watched step; a critical one that is not shown means not yet, whatever the score."""

    id: Key
    critical: bool = False
    competency: Key | None = None
    """What the step shows, where that is not the checklist's own; the page of what is covered reads it."""
    text: LocalText
    tolerance: LocalText | None = None
    """How far off is still good, and with which tool it is measured; values by `{{ value(...) }}`."""


class Practical(Content):
    """`quizzes/practicals/*.yaml`: a watched checklist."""

    format: Literal[1]
    id: Key
    module: Key
    competency: Key
    title: LocalText
    task: LocalText
    tools: Annotated[tuple[LocalText, ...], Field(strict=False)] = ()
    cautions: Annotated[tuple[LocalText, ...], Field(strict=False)] = ()
    steps: Annotated[tuple[PracticalStep, ...], Field(strict=False, min_length=1)]
    retired: bool = False


class Scope(Content):
    """What a certificate covers: role, largest volume and wall height, roof type."""

    role: LocalText
    largest_volume: Annotated[float, Field(gt=0)]
    """Cubic metres."""
    largest_wall_height: Annotated[float, Field(gt=0)]
    """Metres."""
    roof: LocalText
    role_code: Literal["helper", "mason", "lead", "trainer", "observer"] | None = None
    """The role as a signed certificate says it; without it none can be issued."""
    roof_code: Literal["none", "flat", "column", "ribs", "dome", "cone", "any"] | None = None


class PassRule(Content):
    """Written AND practical AND every critical step AND every critical competency."""

    written: Annotated[float, Field(gt=0, le=1)]
    """Least share of the written points."""
    practical: Annotated[float, Field(gt=0, le=1)]
    """Least share of the practical's steps."""
    observers: Annotated[int, Field(ge=1, le=2)] = 1
    """How many people watch; a critical step counts only if all of them saw it done."""
    again: Annotated[int, Field(ge=1, le=3)] = 1
    """How many times running a critical step that was not done is shown at its one recheck."""
    cut_from: LocalText
    """How the cut was set, and by whom."""


class BlueprintCell(Content):
    """So many questions of one kind about one thing; every paper of the scheme has them, and so papers are parallel."""

    competency: Key
    kind: Literal["number", "choice", "order", "match", "spot", "spoken"] | None = None
    """None takes any kind."""
    difficulty: Annotated[int, Field(ge=1, le=3)] | None = None
    """None takes any."""
    count: Annotated[int, Field(ge=1, le=20)]


class TalkRule(Content):
    """Questions asked aloud one after another until it is clear, and never without an end."""

    master: Annotated[float, Field(gt=0, lt=1)]
    """Share right of someone who can."""
    novice: Annotated[float, Field(gt=0, lt=1)]
    """Share right of someone who can't; below `master`."""
    wrong_pass: Annotated[float, Field(gt=0, lt=0.5)]
    wrong_fail: Annotated[float, Field(gt=0, lt=0.5)]
    most: Annotated[int, Field(ge=1, le=40)]


class OralRule(TalkRule):
    """The oral recheck near the cut."""

    near: Annotated[int, Field(ge=1, le=10)]
    """Points below the cut, and from it on, within which the recheck decides on the written part."""


class PanelRule(Content):
    """Readings of a sample panel that the candidate built, as a critical item: one bad reading is not made up for."""

    kind: Literal["cover", "spacing"]
    steel: Literal["bar", "mesh"] = "bar"
    planned: Annotated[float, Field(ge=0, le=1000)] = 0.0
    """Gap of the plan in millimetres; for spacing."""
    readings: Annotated[int, Field(ge=3, le=60)] = 10
    """Least number of readings; the places are drawn, and not chosen by the mason."""
    guard: Annotated[float, Field(ge=0, le=10)] = 1.0
    """Millimetres that a reading has to stay inside the limit, because no tape reads truer than that."""


class Retest(Content):
    """When, and how often, someone may try again."""

    wait_days: Annotated[int, Field(ge=0, le=365)]
    most: Annotated[int, Field(ge=1, le=10)]
    """Tries in all, the first one counted."""


class Experience(Content):
    """What the experience route asks for at least: this course's own policy, unless the scheme says otherwise."""

    tanks: Annotated[int, Field(ge=1, le=20)] = 2
    """Tanks on which this work was done elsewhere."""
    witnesses: Annotated[int, Field(ge=1, le=10)] = 2
    """People who saw the work and say so in writing."""


class Scheme(Content):
    """`quizzes/schemes/*.yaml`: what a certificate requires."""

    format: Literal[1]
    id: Key
    version: Annotated[int, Field(ge=1)]
    status: Literal["draft", "provisional", "in-force"]
    """A draft decides nothing; a provisional one decides and issues only after a local panel's cut is recorded."""
    title: LocalText
    job: LocalText | None = None
    """The work in one sentence."""
    tasks: Annotated[tuple[LocalText, ...], Field(strict=False, max_length=20)] = ()
    prerequisites: Annotated[tuple[LocalText, ...], Field(strict=False, max_length=20)] = ()
    experience_route: LocalText | None = None
    """How someone gets to the exam who learnt elsewhere: the own course is never the only way in."""
    experience: Experience = Experience()
    """What an application by that route has to show; counts only where there is such a route."""
    blueprint: Annotated[tuple[BlueprintCell, ...], Field(strict=False, max_length=60)] = ()
    minutes: Annotated[int, Field(ge=0, le=480)] = 0
    """Time for the written part; 0 for no limit."""
    aids: Annotated[tuple[Aid, ...], Field(strict=False)] = ()
    """What everyone may use throughout the written part; a question may allow more."""
    critical_steps: Annotated[tuple[str, ...], Field(strict=False, max_length=40)] = ()
    """Steps as `practical/step` that the scheme counts on; all critical ones of its practicals are critical anyway."""
    oral: OralRule | None = None
    talk: TalkRule | None = None
    """A short talk on every critical competency that the paper asks, without options to choose from. It stands in the
    place of the competency's own questions on paper, which can be guessed; None leaves it to those."""
    panel: PanelRule | None = None
    validity_years: Annotated[int, Field(ge=1, le=10)] = 3
    retest: Retest | None = None
    recertification: LocalText | None = None
    scope: Scope
    modules: Annotated[tuple[Key, ...], Field(strict=False, min_length=1)]
    practicals: Annotated[tuple[Key, ...], Field(strict=False, min_length=1)]
    critical_competencies: Annotated[tuple[Key, ...], Field(strict=False)] = ()
    rule: PassRule


# -------------------------------------------------------------------------------------------- handouts/


class LogColumn(Content):
    """One column of a ruled table to write in."""

    title: LocalText
    width: Annotated[float, Field(gt=0, le=20)] = 1.0
    """Share of the page, beside those of the other columns."""
    counts: bool = False
    """Whether its rows are numbered from 1."""


class Handout(Content):
    """`handouts/*.yaml`: one printed sheet made from a template beside it."""

    format: Literal[1]
    id: Key
    module: Key | None = None
    """Whose lesson says the same; a sheet that belongs to no single lesson names none."""
    place: Key
    title: LocalText
    template: Key
    """File name of the Markdown template beside it, one per language: `{template}.{language}.md`."""
    numbers: Literal["place", "plan"] = "place"
    """Whose numbers it shows: the place's own, as in lessons, or those of the whole plan of the place's tank."""
    logs: Mapping[Key, Annotated[tuple[LogColumn, ...], Field(strict=False, min_length=1, max_length=12)]] = Field(
        default_factory=dict
    )
    """Columns of the tables that the template asks for by ``{{ log("...", rows=20) }}``."""
