/* Readings of a panel: a drawn one or the learner's own, four questions about it, and a verdict that knows its limits. */
(function (T) {
  "use strict";
  var page = T.page, say = page.say, make = page.make, card = T.card, progress = T.progress;
  var KINDS = {bar: ["cover", "bar"], mesh: ["cover", "mesh"], spacing: ["spacing", "bar"]};
  var BAD = ["too_thin", "too_wide", "too_narrow"], IN_A_ROW = 5;

  function start(place) {
    var body = place.querySelector(".ts-body"), what = make("select", {id: "ts-readings-what"}), shown = make("div", {"class": "ts-panel"});
    var seed = make("input", {type: "text", id: "ts-readings-seed", maxlength: "60", autocomplete: "off", "aria-describedby": "ts-readings-seed-note"});
    var own = make("textarea", {id: "ts-readings-own", rows: "4", spellcheck: "false", "aria-describedby": "ts-readings-own-note"});
    var planned = make("input", {type: "text", id: "ts-readings-planned", inputmode: "decimal"}), plan, said = make("p", {role: "status", "class": "ts-note"});

    function field(input, label, note) {
      return make("div", {"class": "ts-field"}, [make("label", {"for": input.id}, label), input, note ? make("span", {"class": "ts-note", id: input.id + "-note"}, note) : null]);
    }
    function kind() { return KINDS[what.value]; }

    function drawOne(focus) {
      said.textContent = "";
      try { ask(T.readings.draw(kind()[0], seed.value, kind()[1]), false, focus); } catch (error) { said.textContent = say("page.readings.seed_wrong"); }
    }

    function takeOwn() {
      var gap = 0, read, panel;
      page.empty(shown);
      if (kind()[0] === "spacing") {
        read = T.marker.parse(planned.value, "mm");
        if (typeof read.value !== "number" || read.value < 20 || read.value > 1000) { said.textContent = say("page.readings.planned_wrong"); planned.focus(); return; }
        gap = read.value;
      }
      panel = T.readings.typed(kind()[0], own.value, kind()[1], gap);
      if (panel.reason) {
        said.textContent = page.say_one_of("exercise.reading.fault", panel.reason, {place: panel.place, text: panel.text.slice(0, 40)});
        own.focus();
        return;
      }
      said.textContent = "";
      ask(panel, true, true);
    }

    function ask(panel, isOwn, focus) {
      var id = "panel-" + what.value, items = T.readings.items(panel, {id: id, competency: ""}, say), rows = [], i, head;
      var judged = make("div", {role: "status"}), left = items.length;
      page.empty(shown);
      head = make("h2", {tabindex: "-1"}, isOwn ? say("page.readings.own_panel") : say("page.readings.drawn_panel"));
      shown.appendChild(head);
      if (!isOwn) { shown.appendChild(make("p", {"class": "ts-note"}, say("page.readings.invented"))); }
      if (panel.kind === "spacing") { shown.appendChild(make("p", {}, say("page.readings.plan_says", {gap: T.formula.showFull(panel.planned)}))); }
      for (i = 0; i < panel.readings.length; i += IN_A_ROW) {
        rows.push(make("tr", {}, panel.readings.slice(i, i + IN_A_ROW).map(function (each) { return make("td", {}, T.formula.showFull(each)); })));
      }
      shown.appendChild(make("div", {"class": "ts-scroll"}, make("table", {"class": "ts-table ts-readings-table"}, [
        make("caption", {}, say("page.readings.readings", {count: panel.readings.length})), make("tbody", {}, rows)])));
      items.forEach(function (item, number) { shown.appendChild(question(item, number + 1)); });
      shown.appendChild(judged);
      page.scrollable();
      if (focus) { head.focus(); }

      function question(item, number) {
        var input = card.fields[item.kind](item, "ts-reading-" + number), told = card.feedback(), tried = 0, open = true, check;
        check = page.button(say("page.card.check"), function () {
          var mark = input.answer();
          if (mark.verdict === "blank") { card.clearFeedback(told); told.appendChild(make("p", {}, say("page.card.answer_first"))); return; }
          card.showMark(told, mark);
          if (!card.counts(mark)) { return; }
          tried += 1;
          if (!isOwn) { progress.marked(item.id, card.isRight(mark)); }
          if (open && (card.isRight(mark) || tried === 2)) {
            open = false;
            left -= 1;
            if (!card.isRight(mark)) {
              told.appendChild(make("p", {}, say("page.card.the_answer", {answer: item.kind === "number" ? page.withUnit(item.shown_key, item.unit) : item.options[item.right[0]]})));
            }
            input.lock();
            check.hidden = true;
            if (!left) { judge(); }
          }
        }, "ts-main");
        if (input.input) { input.input.addEventListener("keydown", function (event) { if (event.key === "Enter" && !check.hidden) { event.preventDefault(); check.click(); } }); }
        return make("div", {"class": "ts-card", role: "group", "aria-labelledby": "ts-reading-head-" + number}, [
          make("h3", {id: "ts-reading-head-" + number}, say("page.exercise_number", {number: number})), make("p", {}, item.text), input.element, told,
          make("div", {"class": "ts-buttons"}, check)]);
      }

      function judge() {
        var verdict = items[3].options[items[3].right[0]], bad = BAD.some(function (name) { return page.say_one_of("exercise.reading.verdict", name) === verdict; });
        page.empty(judged);
        judged.appendChild(make("div", {"class": bad ? "ts-caution" : "ts-feedback ts-right"}, [make("strong", {}, verdict),
          make("p", {}, say("page.readings.only_here", {count: panel.readings.length})), make("p", {}, isOwn ? say("page.readings.trainer_looks") : say("page.readings.invented"))]));
      }
    }

    function another() { seed.value = String(progress.drawn("panel-" + what.value)); drawOne(true); }

    Object.keys(KINDS).forEach(function (name) { what.appendChild(make("option", {value: name}, page.say_one_of("page.readings.kind", name))); });
    plan = field(planned, say("page.readings.planned"));
    what.addEventListener("change", function () {
      plan.hidden = kind()[0] !== "spacing";
      drawOne(false);
    });
    seed.value = "1";
    seed.addEventListener("change", function () { drawOne(false); });
    plan.hidden = true;
    page.empty(body);
    [field(what, say("page.readings.what")), field(seed, say("page.readings.seed"), say("page.readings.seed_note")),
      make("div", {"class": "ts-buttons"}, page.button(say("page.readings.another"), another)),
      make("details", {"class": "ts-answers"}, [make("summary", {}, say("page.readings.own")), plan, field(own, say("page.readings.own_list"), say("page.readings.own_note")),
        make("div", {"class": "ts-buttons"}, page.button(say("page.readings.use"), takeOwn))]),
      said, shown].forEach(function (part) { body.appendChild(part); });
    drawOne(false);
  }

  T.readingsPage = {start: start};
})(window.Tankschool);
