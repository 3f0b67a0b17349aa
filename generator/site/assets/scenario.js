/* A job in parts on one place: all parts are marked together, and a slip in one is not counted again in the next. */
(function (T) {
  "use strict";
  var page = T.page, say = page.say, make = page.make, card = T.card;

  function start(place, scenario) {
    var body = place.querySelector(".ts-body"), parts, saved = make("p", {"class": "ts-saved"});

    function check() {
      var answers = {}, marks;
      parts.forEach(function (part) { answers[part.item.id] = part.field.input.value; });
      marks = T.marker.markScenario(scenario, answers);
      marks.forEach(function (mark, number) {
        var part = parts[number];
        if (mark.verdict === "blank") { card.clearFeedback(part.said); return; }
        card.showMark(part.said, mark);
        if (!card.counts(mark)) { return; }
        part.worked.button.hidden = false;
        if (part.counted !== answers[part.item.id]) {
          part.counted = answers[part.item.id];
          T.progress.marked(scenario.id + "." + part.item.id, card.isRight(mark), part.again ? "" : part.item.competency);
          part.again = true;
        }
      });
      if (marks.every(function (mark) { return mark.verdict === "blank"; })) {
        parts[0].said.appendChild(make("p", {}, say("page.card.answer_first")));
      }
    }

    parts = scenario.parts.map(function (item, number) {
      var field = card.numberField(item, "ts-part-" + scenario.id + "-" + item.id), said = card.feedback();
      var worked = card.reveal(say("page.card.worked"), function () {
        return [make("p", {"class": "ts-verdict"}, say("page.card.the_answer", {answer: page.withUnit(item.shown_key, item.unit)})),
          card.solution(item.asks, scenario.givens)];
      });
      worked.button.hidden = true;
      return {item: item, field: field, said: said, worked: worked, element: make("div", {"class": "ts-part"},
        [make("h3", {}, say("page.part_number", {number: number + 1}))].concat(card.paragraphs(item.text),
          [field.element, said, make("div", {"class": "ts-buttons"}, worked.button), worked.piece]))};
    });

    function tellSaved() { saved.textContent = T.learner.stateText(); }

    page.empty(body);
    parts.forEach(function (part) { body.appendChild(part.element); });
    body.appendChild(make("div", {"class": "ts-buttons"}, page.button(say("page.card.check_all"), check, "ts-main")));
    body.appendChild(saved);
    tellSaved();
    T.progress.listen(tellSaved);
  }

  T.scenario = {start: start};
})(window.Tankschool);
