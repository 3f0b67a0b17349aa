"""An exam on a screen: one file with the questions, no answer, and a script of ours that keeps what is given.

What goes into the file is made here field by field from what the candidate may see. Nothing else of an item gets in: no
id, key, tolerance, name of a quantity or of a place in a drawing, no formula and no seed.
"""

from __future__ import annotations

import base64
import json
from collections.abc import Mapping
from dataclasses import dataclass
from html import escape
from importlib.resources import files

from generator.exercises import (
    LETTERS,
    ChoiceItem,
    Learner,
    MatchItem,
    NumberItem,
    OrderItem,
    QuestionItem,
    SpokenItem,
    SpotItem,
    aids_said,
)
from generator.figures import Scene, svg
from generator.words import Words

_STYLE = """
:root{color-scheme:light}
body{font:1.05rem/1.6 Mukta,sans-serif;color:#141414;background:#fff}
body{margin:0 auto;max-width:46rem;padding:.6rem 1rem 4rem}
h1{font-size:1.5rem;line-height:1.3;margin:.3rem 0}
h2{font-size:1.3rem;line-height:1.35}
.bar{position:sticky;top:0;z-index:1;display:flex;flex-wrap:wrap;gap:.4rem 1rem;align-items:center}
.bar{background:#fff;border-bottom:2px solid #0d4f5a;padding:.3rem 0}
#time{font-weight:700}
.question{border:1px solid #777;border-radius:.4rem;margin:1.1rem 0}
.question{padding:.4rem .9rem .9rem;min-width:0}
legend{float:left;width:100%;padding:.2rem 0 .4rem;line-height:1.5}
legend+*{clear:both}
.option,.lettered li{display:flex;gap:.7rem;align-items:center;min-height:44px}
.option input{width:1.5rem;height:1.5rem;flex:none}
.lettered{list-style:none;padding:0;margin:.3rem 0}
.option b,.lettered b{min-width:1.2rem}
.number label,.pickers label,.box label{display:block;margin-top:.5rem}
.line{display:flex;gap:.6rem;align-items:center}
input[type=text],input[type=number],select{font:inherit;min-height:44px;padding:.2rem .5rem;color:#141414}
input[type=text],input[type=number],select{border:2px solid #555;border-radius:.3rem;background:#fff}
input[type=text],input[type=number],select{max-width:100%;box-sizing:border-box}
.line input{width:10rem}
button{font:inherit;min-height:44px;padding:.3rem 1rem;border:2px solid #0d4f5a;border-radius:.3rem}
button{background:#fff;color:#0d4f5a;margin:.3rem .6rem .3rem 0}
button.main{background:#0d4f5a;color:#fff;font-weight:700}
.note{color:#444;font-size:.95rem;margin:.3rem 0}
.warning{border-left:.4rem solid #8c1a1a;padding:.2rem .7rem;font-weight:700}
.warning:empty{display:none}
.box{border:2px solid #0d4f5a;border-radius:.4rem;padding:.5rem .9rem;margin:.8rem 0}
.figure svg{width:100%;max-width:30rem;height:auto;display:block}
.fig-area.picked{fill:#0d4f5a;fill-opacity:.3}
.wide{overflow-x:auto}
table{border-collapse:collapse;min-width:100%}
th,td{border:1px solid #777;padding:.25rem .6rem;text-align:left}
.check{font-weight:700;letter-spacing:.15em}
:focus-visible{outline:3px solid #c05a00;outline-offset:2px}
@media print{.bar button,button{display:none}.bar{position:static}}
""".strip()
_WEIGHTS = {"mukta-regular.woff2": 400, "mukta-bold.woff2": 700}
_POLICY = "default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; font-src data:; img-src data:"


@dataclass(frozen=True, slots=True)
class ScreenPaper:
    """One candidate's paper for a screen.

    Args:
        learner: with the items.
        figures: drawings by the question's label.
        set_id: of the exam's papers.
        exam: its name.
        title: of the scheme.
        aids: what may be used, in words.
        minutes: that the candidate has, an accommodation's more time included; 0 for no limit.
        rehearsal: whether it counts for nothing.
    """

    learner: Learner
    figures: Mapping[str, Scene]
    set_id: str
    exam: str
    title: str
    aids: str
    minutes: int
    rehearsal: bool = False


def screen_page(paper: ScreenPaper, words: Words, fonts: Mapping[str, bytes]) -> str:
    """The whole exam as one page that needs nothing else.

    Args:
        paper: of the candidate.
        words: of the candidate's language.
        fonts: WOFF2 files by name; they travel inside, so that Hindi shows on any machine.
    """
    learner = paper.learner
    data = {
        "exam": paper.exam,
        "set": paper.set_id,
        "number": learner.number,
        "name": learner.name,
        "language": words.language,
        "minutes": paper.minutes,
        "questions": [shown(label, item, words, paper.figures.get(label)) for label, item, _ in learner.labelled()],
        "words": _words(words),
    }
    title = f"{words.say('paper.title')} · {paper.title}"
    number = words.say("paper.number", number=f"{paper.set_id}-{learner.number}")
    rehearsal = f'<p class="warning">{escape(words.say("paper.rehearsal"))}</p>\n' if paper.rehearsal else ""
    embedded = json.dumps(data, ensure_ascii=False).replace("<", "\\u003c")
    script = files("generator.assessment").joinpath("screen_exam.js").read_text(encoding="utf-8")
    return (
        f'<!DOCTYPE html>\n<html lang="{words.language}">\n<head>\n<meta charset="utf-8">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{_POLICY}">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(title)}</title>\n<style>\n{_faces(fonts)}{_STYLE}\n</style>\n</head>\n<body>\n<main>\n"
        f"<h1>{escape(title)}</h1>\n<p><b>{escape(learner.name)}</b><br>{escape(number)}<br>"
        f"{escape(words.say('paper.exam', exam=paper.exam))}</p>\n{rehearsal}"
        f"<p>{escape(words.say('paper.screen.how'))}<br>{escape(paper.aids)}</p>\n"
        f'<div id="exam"><p class="warning">{escape(words.say("paper.screen.script_off"))}</p></div>\n</main>'
        f'\n<script type="application/json" id="exam-data">{embedded}</script>\n'
        f"<script>\n{_bare(script)}</script>\n</body>\n</html>\n"
    )


def _bare(script: str) -> str:
    """A script that can't end its own element."""
    return script.replace("</", "<\\/")


def _faces(fonts: Mapping[str, bytes]) -> str:
    return "".join(
        f"@font-face{{font-family:Mukta;font-weight:{weight};"
        f"src:url(data:font/woff2;base64,{base64.b64encode(fonts[name]).decode('ascii')}) format('woff2')}}"
        for name, weight in _WEIGHTS.items()
        if name in fonts
    )


def _words(words: Words) -> dict[str, str]:
    """The words that the script says, unfilled."""
    found = {"sheet.answer": words.say("sheet.answer"), "paper.no_limit": words.say("paper.no_limit")}
    return found | {key: str(text) for key, text in words.family("paper.screen")}


def shown(label: str, item: QuestionItem, words: Words, scene: Scene | None) -> dict[str, object]:
    """What a candidate sees of a question, and nothing else of it.

    Args:
        label: the number on the paper.
        item: the question.
        words: of the candidate's language.
        scene: its drawing.
    """
    asked = item.answer if isinstance(item, SpokenItem) else item
    found: dict[str, object] = {
        "label": label,
        "kind": "choice" if isinstance(asked, SpotItem) else asked.kind,
        "lines": [line for line in asked.text.split("\n") if line.strip()],
        "figure": svg(scene, f"drawing-{label}", live=isinstance(asked, SpotItem)) if scene else "",
        "note": "",
    }
    match asked:
        case NumberItem():
            units = [words.say_one_of("unit", unit) if f"unit.{unit}" in words else unit for unit in asked.units]
            found |= {
                "unit": "" if units or not asked.unit else words.say_one_of("unit", asked.unit),
                "units": units,
                "steps": [
                    {"text": part.text, "unit": words.say_one_of("unit", part.unit) if part.unit else ""}
                    for part in asked.steps
                ],
                "note": aids_said(asked, words) if asked.aids else "",
            }
        case ChoiceItem():
            found |= {"several": asked.several, "options": _lettered(asked.options, asked.order)}
            found["note"] = (
                words.say("paper.screen.choose_several") if asked.several else words.say("paper.screen.choose_one")
            )
        case OrderItem():
            found |= {"options": _lettered(asked.steps, asked.order), "note": words.say("sheet.put_in_order")}
        case MatchItem():
            found |= {"left": list(asked.left), "options": _lettered(asked.right, asked.order)}
            found["note"] = words.say("sheet.match")
        case SpotItem():
            areas = [
                {"letter": area.letter, "text": text} for area, text in zip(asked.areas, asked.labels, strict=True)
            ]
            found |= {"several": asked.several, "options": areas}
            found["note"] = (
                words.say("paper.screen.choose_several") if asked.several else words.say("paper.screen.choose_one")
            )
    return found


def _lettered(texts: tuple[str, ...], order: tuple[int, ...]) -> list[dict[str, str]]:
    return [{"letter": LETTERS[place], "text": texts[i]} for place, i in enumerate(order)]
