/* The practice page: the next question and why it comes, then how far each skill was shown. */
(function (T) {
  "use strict";
  var page = T.page, say = page.say, make = page.make, progress = T.progress;

  function start(place, all) {
    var data = T.carried(place.querySelector("script.ts-data")).practice, body = place.querySelector(".ts-body");
    var shown = make("div"), state = make("div"), said = make("p", {role: "status", "class": "ts-note"});
    var chooser = make("select", {id: "ts-practice-module"}), asked = null, count = 0, learner = "";

    function answers() { return T.practice.readAnswers(progress.answers()).good; }

    function pool() {
      var module = data.modules[Number(chooser.value)];
      if (!module) { return data.pool; }
      return {needs: data.pool.needs, cards: data.pool.cards.filter(function (card) { return module.questions.indexOf(card.question) >= 0; })};
    }

    function next(focus) {
      var done = answers(), choice = T.practice.next(pool(), done, progress.today(), progress.current().id), id, figure, frame, why, head;
      count = done.length;
      learner = progress.current().id;
      asked = choice;
      page.empty(shown);
      if (!choice) { shown.appendChild(make("p", {}, say("page.practice.empty"))); return; }
      id = choice.question;
      if (progress.get(id).tried) { progress.drawn(id); }
      why = make("p", {"class": "ts-why", tabindex: "-1"}, T.practice.why(choice, data.names[choice.competency] || choice.competency, say));
      head = make("h3", {id: "ts-practice-head"}, data.names[choice.competency] || choice.competency);
      figure = page.figureOf(id, "practice.");
      frame = make("div", {"class": "ts-card", role: "group", "aria-labelledby": "ts-practice-head", "data-prefix": "ts-practice-"}, head);
      if (figure) { frame.appendChild(figure); }
      frame.appendChild(make("div", {"class": "ts-body"}));
      shown.appendChild(why);
      shown.appendChild(frame);
      T.card.start(frame, all.questions[id]);
      said.textContent = "";
      page.scrollable();
      if (focus) { why.focus(); }
    }

    function goOn() {
      if (asked && answers().length === count) { said.textContent = say("page.practice.answer_first"); return; }
      next(true);
    }

    function tell() {
      var done = answers(), names = [], levels;
      data.pool.cards.forEach(function (card) { if (names.indexOf(card.competency) < 0) { names.push(card.competency); } });
      page.empty(state);
      state.appendChild(make("h2", {}, say("page.practice.ready")));
      state.appendChild(make("p", {}, say("page.practice.decides_nothing")));
      data.schemes.forEach(function (scheme) {
        var found;
        if (!scheme.points.length) { return; }
        found = T.practice.readiness(scheme, done);
        state.appendChild(make("h3", {}, scheme.title));
        state.appendChild(make("p", {}, make("strong", {}, page.say_one_of("practice.ready", found.state))));
        if (found.first.length) { state.appendChild(make("p", {}, say("practice.first", {names: found.first.map(nameOf).join("; ")}))); }
        if (found.critical.length) { state.appendChild(make("p", {}, say("practice.critical", {names: found.critical.map(nameOf).join("; ")}))); }
      });
      state.appendChild(make("h3", {}, say("page.practice.skills")));
      levels = names.map(function (name) { return T.practice.told(T.practice.mastery(name, done), nameOf(name), say); });
      state.appendChild(levels.length ? make("ul", {}, levels.map(function (text) { return make("li", {}, text); })) : make("p", {}, say("page.practice.empty")));
    }
    function nameOf(name) { return data.names[name] || name; }

    chooser.appendChild(make("option", {value: "-1"}, say("page.practice.whole")));
    data.modules.forEach(function (module, number) { chooser.appendChild(make("option", {value: String(number)}, module.title)); });
    chooser.addEventListener("change", function () { next(false); });
    page.empty(body);
    body.appendChild(make("div", {"class": "ts-field ts-screen"}, [make("label", {"for": chooser.id}, say("page.practice.which")), chooser]));
    [make("h2", {}, say("page.practice.now")), shown, make("div", {"class": "ts-buttons"}, page.button(say("page.practice.next"), goOn, "ts-main")), said, state]
      .forEach(function (part) { body.appendChild(part); });
    next(false);
    tell();
    progress.listen(function () {
      if (progress.current().id !== learner) { next(false); }
      tell();
    });
  }

  T.practicePage = {start: start};
})(window.Tankschool);
