/* The exercise card: draws numbers, takes an answer, says what it is worth and why, shows hint, formula and solution. */
(function (T) {
  "use strict";
  var page = T.page, say = page.say, make = page.make, marker = T.marker, progress = T.progress;
  var KINDS = {right: " ts-right", right_from_earlier: " ts-right", not_yet: " ts-not-yet"};

  /** The seed of the numbers shown: the page's own first, then one for each time that new ones were drawn. */
  function seedOf(drawn) { return drawn ? "page-" + drawn : "page"; }

  function counts(mark) { return mark.verdict !== "blank" && mark.verdict !== "ask_back"; }

  function isRight(mark) { return mark.verdict === "right" || mark.verdict === "right_from_earlier"; }

  function feedback() { return make("div", {"class": "ts-feedback", role: "status"}); }

  function clearFeedback(place) {
    page.empty(place);
    place.className = "ts-feedback";
  }

  /** Put a mark into words: the verdict first, then what happened and what it would do on the hill. */
  function showMark(place, mark) {
    page.empty(place);
    place.className = "ts-feedback" + (KINDS[mark.verdict] || "");
    marker.messages(mark, say).forEach(function (text, first) {
      place.appendChild(make("p", first === 0 ? {"class": "ts-verdict"} : {}, text));
    });
  }

  function paragraphs(text) {
    return text.split("\n").filter(function (line) { return line.trim(); }).map(function (line) { return make("p", {}, line); });
  }

  /** One line of a solution: our own markup, or plain text where the browser draws no formulas. */
  function markedLine(markup) {
    var line = make("span", {"class": "ts-line"});
    line.innerHTML = markup;
    return line;
  }

  /** The worked solution with the numbers in place. */
  function solution(asks, givens) {
    return lines(T.formula.steps(asks, givens));
  }

  function lines(steps) {
    return make("ol", {"class": "ts-steps"}, steps.map(function (step) {
      var named = ("quantity." + step.name) in T.course.words;
      return make("li", {}, [
        make("span", {"class": "ts-what"}, named ? page.say_one_of("quantity", step.name) : step.symbol),
        markedLine(step.formulaMarkup),
        markedLine(step.substitutedMarkup),
        make("span", {"class": "ts-line"}, "= " + page.withUnit(step.shown, step.unit))
      ]);
    }));
  }

  function formulaOf(asks) {
    var place = make("div");
    place.innerHTML = page.opened("formulas")[asks] || "";
    plainMath(place);
    return place;
  }

  /** Where the browser draws no formulas, its line of text stands in the place of each. */
  function plainMath(place) {
    if (window.MathMLElement) { return; }
    Array.prototype.forEach.call(place.querySelectorAll("math[alttext]"), function (math) {
      math.parentNode.replaceChild(make("span", {}, math.getAttribute("alttext")), math);
    });
  }

  /** A button that shows and hides a piece below it. */
  function reveal(text, content, onOpen) {
    var piece = make("div", {"class": "ts-more"}), open = false;
    var toggle = page.button(text, function () {
      open = !open;
      page.empty(piece);
      if (open) { [].concat(content()).forEach(function (part) { piece.appendChild(part); }); }
      piece.hidden = !open;
      toggle.setAttribute("aria-expanded", String(open));
      if (open && onOpen) { onOpen(); }
    });
    piece.hidden = true;
    toggle.setAttribute("aria-expanded", "false");
    return {button: toggle, piece: piece};
  }

  function recordText(id) {
    var record = progress.get(id);
    if (record.right) { return say("page.card.right_times", {count: record.right}); }
    return record.tried ? say("page.card.tried_times", {count: record.tried}) : say("page.card.not_tried");
  }

  // ------------------------------------------------------------------------------------- ways to answer

  /* Each way gives {element, answer() -> mark, lock()}; `id` makes the ids of its fields. */

  function textInput(id) {
    return make("input", {type: "text", id: id, autocomplete: "off", inputmode: "text", maxlength: "80"});
  }

  function labelled(field, label) { return make("div", {"class": "ts-field"}, [make("label", {"for": field.id}, label), field]); }

  function answerLabel(unit) {
    return unit ? say("page.card.your_answer_in", {unit: page.say_one_of("unit", unit)}) : say("page.card.your_answer");
  }

  /* A unit that no formula of the course has keeps the name that stands on a tape: cm. */
  function unitWord(unit) { return ("unit." + unit) in T.course.words ? page.say_one_of("unit", unit) : unit; }

  function aidsNote(item) {
    return make("p", {"class": "ts-note"}, say("exercise.aids", {aids: item.aids.map(function (aid) { return page.say_one_of("exercise.aid", aid); }).join(", ")}));
  }

  /* A number; with units to choose from where the unit is part of the answer, and lines for steps that earn points. */
  function numberField(item, id) {
    var chooses = item.units && item.units.length > 0, steps = item.steps || [], unit = null, element = make("div");
    var input = textInput(id), fields = steps.map(function (step, place) { return textInput(id + "-" + place); });
    if (item.aids && item.aids.length) { element.appendChild(aidsNote(item)); }
    steps.forEach(function (step, place) {
      element.appendChild(labelled(fields[place], step.unit ? step.text + " (" + page.say_one_of("unit", step.unit) + ")" : step.text));
    });
    element.appendChild(labelled(input, answerLabel(chooses ? "" : item.unit)));
    if (chooses) {
      unit = make("select", {id: id + "-unit"}, [make("option", {value: ""}, say("page.card.choose_unit"))].concat(item.units.map(function (one) {
        return make("option", {value: one}, unitWord(one));
      })));
      element.appendChild(labelled(unit, say("page.card.unit")));
    }
    return {element: element, input: input,
      answer: function () {
        var answers = {}, typed = unit && unit.value && input.value.trim() ? input.value + " " + unit.value : input.value;
        if (!steps.length) { return marker.markNumber(item, typed); }
        steps.forEach(function (step, place) { answers[step.id] = fields[place].value; });
        answers[item.id] = typed;
        return marker.markSteps(item, answers);
      },
      lock: function () {
        [input].concat(fields).forEach(function (one) { one.readOnly = true; });
        if (unit) { unit.disabled = true; }
      }};
  }

  function choiceField(item, id) {
    var inputs = [], kind = item.several ? "checkbox" : "radio";
    var set = make("fieldset", {"class": "ts-options"}, make("legend", {}, item.several ? say("page.card.choose_several") : say("page.card.choose_one")));
    item.order.forEach(function (place) {
      var input = make("input", {type: kind, name: id, value: String(place)});
      inputs.push(input);
      set.appendChild(make("label", {}, [input, make("span", {}, item.options[place])]));
    });
    return {element: set,
      answer: function () {
        return marker.markChoice(item, inputs.filter(function (one) { return one.checked; }).map(function (one) { return Number(one.value); }));
      },
      lock: function () { inputs.forEach(function (one) { one.disabled = true; }); }};
  }

  function orderField(item) {
    var sequence = item.order.slice(), list = make("ol", {"class": "ts-sort"}), said = make("p", {"class": "ts-hidden", role: "status"}), locked = false;
    function move(from, to, way) {
      var step = sequence.splice(from, 1)[0], after;
      sequence.splice(to, 0, step);
      draw();
      said.textContent = say("page.card.moved", {step: item.steps[step], place: to + 1});
      after = list.children[to].querySelectorAll("button");
      (after[way].disabled ? after[1 - way] : after[way]).focus();
    }
    function draw() {
      page.empty(list);
      sequence.forEach(function (step, place) {
        var up = page.button(say("page.card.up"), function () { move(place, place - 1, 0); });
        var down = page.button(say("page.card.down"), function () { move(place, place + 1, 1); });
        up.setAttribute("aria-label", say("page.card.move_up", {step: item.steps[step]}));
        down.setAttribute("aria-label", say("page.card.move_down", {step: item.steps[step]}));
        up.disabled = locked || place === 0;
        down.disabled = locked || place === sequence.length - 1;
        list.appendChild(make("li", {}, [make("span", {"class": "ts-place"}, String(place + 1)),
          make("span", {"class": "ts-step"}, item.steps[step]), up, down]));
      });
    }
    draw();
    return {element: make("div", {}, [make("p", {}, make("strong", {}, say("page.card.put_in_order"))), list, said]),
      answer: function () { return marker.markOrder(item, sequence); },
      sequence: function () { return sequence.slice(); },
      restore: function (kept) {
        if (kept.slice().sort().join() === sequence.slice().sort().join()) { sequence = kept.slice(); draw(); }
      },
      lock: function () { locked = true; draw(); }};
  }

  function matchField(item, id) {
    var selects = [], element = make("div");
    item.left.forEach(function (left, place) {
      var select = make("select", {id: id + "-" + place}, make("option", {value: "-1"}, say("page.card.choose_partner")));
      item.order.forEach(function (right) { select.appendChild(make("option", {value: String(right)}, item.right[right])); });
      selects.push(select);
      element.appendChild(make("div", {"class": "ts-field"}, [make("label", {"for": select.id}, left), select]));
    });
    return {element: element,
      answer: function () { return marker.markMatch(item, selects.map(function (one) { return Number(one.value); })); },
      lock: function () { selects.forEach(function (one) { one.disabled = true; }); }};
  }

  /* An area of the card's drawing: by its letter in the list, or on the place that the drawing marks with it (data-area). */
  function spotField(item, id, place) {
    var inputs = [], kind = item.several ? "checkbox" : "radio", locked = false;
    var set = make("fieldset", {"class": "ts-options"}, make("legend", {}, say("page.card.choose_area")));
    item.areas.forEach(function (area, number) {
      var input = make("input", {type: kind, name: id, value: String(number)});
      inputs.push(input);
      set.appendChild(make("label", {}, [input, make("span", {}, item.labels[number] ? area.letter + ": " + item.labels[number] : area.letter)]));
      Array.prototype.forEach.call(place.querySelectorAll("[data-area]"), function (hot) {
        function choose() { if (!locked) { input.checked = kind === "radio" || !input.checked; } }
        if (hot.getAttribute("data-area") !== area.letter) { return; }
        hot.onclick = choose;
        hot.onkeydown = function (event) {
          if (event.key === "Enter" || event.key === " ") { event.preventDefault(); choose(); }
        };
      });
    });
    return {element: set,
      answer: function () {
        return marker.markSpot(item, inputs.filter(function (one) { return one.checked; }).map(function (one) { return Number(one.value); }));
      },
      lock: function () { locked = true; inputs.forEach(function (one) { one.disabled = true; }); }};
  }

  /* What a helper reads aloud stands behind a button, so that the one who listens need not look at it. */
  function spokenField(item, id) {
    var inner = item.answer.kind === "number" ? numberField(item.answer, id) : choiceField(item.answer, id);
    var script = reveal(say("page.card.script"), function () {
      return [make("p", {"class": "ts-note"}, say("page.card.script_marks"))].concat(item.script.map(function (line) { return make("p", {}, line); }));
    });
    return {element: make("div", {}, [make("p", {"class": "ts-note"}, say("exercise.read_aloud")), script.button, script.piece, inner.element]),
      input: inner.input, answer: inner.answer, lock: inner.lock};
  }

  var FIELDS = {number: numberField, choice: choiceField, order: orderField, match: matchField, spot: spotField, spoken: spokenField};

  // ------------------------------------------------------------------------------------------- the card

  function start(place, question) {
    var body = place.querySelector(".ts-body"), id = question.id;
    var saved = make("p", {"class": "ts-saved"});

    function tellSaved() { saved.textContent = recordText(id) + " " + T.learner.stateText(); }

    function draw(drawn, focus) {
      var item = marker.item(question, seedOf(drawn));
      var field = FIELDS[question.kind](item, (place.getAttribute("data-prefix") || "ts-answer-") + id, place), said = feedback();
      var asked = item.answer || item, tried = 0, later = [];
      var check = page.button(say("page.card.check"), answer, "ts-main");
      var again = page.button(asked.asks ? say("page.card.new_numbers") : say("page.card.try_again"), function () {
        draw(progress.drawn(id), true);
      });
      var buttons = make("div", {"class": "ts-buttons"}), pieces = [], text = make("div", {tabindex: "-1"}, paragraphs(item.text));

      function done() {
        field.lock();
        check.hidden = true;
      }

      function answer() {
        var mark = field.answer();
        if (mark.verdict === "blank") {
          clearFeedback(said);
          said.appendChild(make("p", {}, say("page.card.answer_first")));
          return;
        }
        showMark(said, mark);
        if (!counts(mark)) { return; }
        progress.marked(id, isRight(mark), tried ? "" : question.competency);
        tried += 1;
        openHelp();
        if (isRight(mark)) { done(); again.focus(); }
      }

      /* From little to much: hint, formula, first line, whole solution; what opens only after a try waits here. */
      function openHelp() {
        var open = marker.helps(question, tried);
        later.forEach(function (one) { one.help.button.hidden = open.indexOf(one.step) < 0; });
      }

      function theAnswer() {
        var shown = asked.kind === "number" ? page.withUnit(asked.shown_key, asked.unit) : asked.options[asked.right[0]];
        return make("p", {"class": "ts-verdict"}, say("page.card.the_answer", {answer: shown}));
      }

      function theRounding() {
        var exact, answer;
        if (!asked.rule) { return []; }
        exact = page.withUnit(T.formula.show(asked.exact, asked.places), asked.unit);
        answer = page.withUnit(asked.shown_key, asked.unit);
        return exact === answer ? [] : [make("p", {}, say("exercise.rounded", {exact: exact, answer: answer}))];
      }

      function help(step, text, content, onOpen) {
        var made = reveal(text, content, onOpen);
        later.push({step: step, help: made});
        pieces.push(made);
      }

      page.empty(body);
      if (question.hint) { help("hint", say("page.card.hint"), function () { return paragraphs(question.hint); }); }
      if (asked.asks) {
        help("formula", say("page.card.formula"), function () { return formulaOf(asked.asks); });
        if (T.formula.steps(asked.asks, asked.givens).length > 1) {
          help("first_line", say("page.card.first_line"), function () { return lines(T.formula.steps(asked.asks, asked.givens).slice(0, 1)); });
        }
        help("solution", say("page.card.worked"), function () { return [theAnswer(), solution(asked.asks, asked.givens)].concat(theRounding()); }, done);
      }
      openHelp();
      if (field.input) {
        field.input.addEventListener("keydown", function (event) { if (event.key === "Enter" && !field.input.readOnly) { event.preventDefault(); answer(); } });
      }
      buttons.appendChild(check);
      pieces.forEach(function (one) { buttons.appendChild(one.button); });
      buttons.appendChild(again);
      [text, field.element, said, buttons].concat(pieces.map(function (one) { return one.piece; }), [saved])
        .forEach(function (part) { body.appendChild(part); });
      tellSaved();
      if (focus) { text.focus(); }
    }

    progress.listen(tellSaved);
    draw(progress.get(id).drawn, false);
  }

  T.card = {start: start, fields: FIELDS, feedback: feedback, clearFeedback: clearFeedback, showMark: showMark, counts: counts, isRight: isRight,
    reveal: reveal, solution: solution, numberField: numberField, paragraphs: paragraphs, plainMath: plainMath};
})(window.Tankschool);
