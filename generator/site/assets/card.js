/* The exercise card: draws numbers, takes an answer, says what it is worth and why, shows hint, formula and solution. */
(function (T) {
  "use strict";
  var page = T.page, say = page.say, make = page.make, marker = T.marker, progress = T.progress;
  var KINDS = {right: " ts-right", right_from_earlier: " ts-right", not_yet: " ts-not-yet"};

  /** The seed of the numbers shown: the page's own first, then one for each time that new ones were drawn. */
  function seedOf(drawn) { return drawn ? "page-" + drawn : "page"; }

  function counts(mark) { return mark.verdict !== "blank" && mark.verdict !== "ask_back"; }

  function isRight(mark) { return mark.points > 0; }

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
    return make("ol", {"class": "ts-steps"}, T.formula.steps(asks, givens).map(function (step) {
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
    place.innerHTML = T.course.formulas[asks] || "";
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

  function numberField(item, id) {
    var label = item.unit ? say("page.card.your_answer_in", {unit: page.say_one_of("unit", item.unit)}) : say("page.card.your_answer");
    var input = make("input", {type: "text", id: id, autocomplete: "off", inputmode: "text", maxlength: "80"});
    return {element: make("div", {"class": "ts-field"}, [make("label", {"for": id}, label), input]), input: input,
      answer: function () { return marker.markNumber(item, input.value); },
      lock: function () { input.readOnly = true; }};
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

  var FIELDS = {number: numberField, choice: choiceField, order: orderField, match: matchField};

  // ------------------------------------------------------------------------------------------- the card

  function start(place, question) {
    var body = place.querySelector(".ts-body"), id = question.id;
    var saved = make("p", {"class": "ts-saved"});

    function tellSaved() { saved.textContent = recordText(id) + " " + T.learner.stateText(); }

    function draw(drawn, focus) {
      var item = marker.item(question, seedOf(drawn));
      var field = FIELDS[question.kind](item, "ts-answer-" + id), said = feedback();
      var check = page.button(say("page.card.check"), answer, "ts-main");
      var again = page.button(question.kind === "number" ? say("page.card.new_numbers") : say("page.card.try_again"), function () {
        draw(progress.drawn(id), true);
      });
      var buttons = make("div", {"class": "ts-buttons"}), pieces = [], worked = null, text = make("div", {tabindex: "-1"}, paragraphs(item.text));

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
        progress.marked(id, isRight(mark));
        if (worked) { worked.button.hidden = false; }
        if (isRight(mark)) { done(); again.focus(); }
      }

      page.empty(body);
      if (question.hint) { pieces.push(reveal(say("page.card.hint"), function () { return paragraphs(question.hint); })); }
      if (question.kind === "number") {
        pieces.push(reveal(say("page.card.formula"), function () { return formulaOf(item.asks); }));
        worked = reveal(say("page.card.worked"), function () {
          return [make("p", {"class": "ts-verdict"}, say("page.card.the_answer", {answer: page.withUnit(item.shown_key, item.unit)})), solution(item.asks, item.givens)];
        }, done);
        worked.button.hidden = true;
        pieces.push(worked);
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

  T.card = {start: start, feedback: feedback, clearFeedback: clearFeedback, showMark: showMark, counts: counts, isRight: isRight,
    reveal: reveal, solution: solution, numberField: numberField, paragraphs: paragraphs, plainMath: plainMath};
})(window.Tankschool);
