/* The mock test: questions as a scheme asks for them, a clock that can be given more time, no help and no verdict until the
   end, then marks with reasons and plain words on how ready the learner is. What is written stays when the page is closed;
   the clock stands still meanwhile. Practice material only. */
(function (T) {
  "use strict";
  var page = T.page, say = page.say, make = page.make, marker = T.marker;
  var MORE = 600, SAVE_EVERY = 5, LONGEST_TICK = 60, LONGEST_TEXT = 80;

  function parsed(text) { try { return JSON.parse(text); } catch (error) { return null; } }

  function start(place, data) {
    var plans = data.mock.schemes, body = place.querySelector(".ts-body"), state = null, asked = [], timer = null, last = 0, unsaved = 0;

    // ---------------------------------------------------------------------------------------- what is kept

    function keep() { unsaved = 0; T.progress.note("mock", JSON.stringify(state)); }

    /** The kept test, if it is whole and still fits the course. */
    function kept() {
      var found = parsed(T.progress.noted("mock"));
      var good = found && found.format === 1 && typeof found.seed === "string" && planOf(found.scheme) && typeof found.left === "number" &&
        typeof found.more === "number" && found.answers && typeof found.answers === "object" && Array.isArray(found.questions) &&
        found.questions.length && found.questions.every(function (id) { return Object.prototype.hasOwnProperty.call(data.questions, id); });
      return good ? found : null;
    }

    function planOf(id) { return plans.filter(function (plan) { return plan.id === id; })[0]; }

    /** The questions of a test: so many of each competency as its plan says, drawn by the seed. */
    function drawn(plan, seed) {
      var ids = [];
      plan.parts.forEach(function (part) {
        part.draws.forEach(function (draw, number) {
          var open = draw.questions.filter(function (id) { return ids.indexOf(id) < 0; });
          ids = ids.concat(T.formula.stream(seed + "|mock|" + part.competency + "|" + number).shuffle(open).slice(0, draw.count));
        });
      });
      return ids;
    }

    // ------------------------------------------------------------------------------------------- the start

    function heading(text) { return make("h2", {tabindex: "-1"}, text); }

    function begin(plan) {
      var seed = "mock-" + Date.now() + "-" + Math.floor(Math.random() * 1e9), ids = drawn(plan, seed);
      state = {format: 1, scheme: plan.id, seed: seed, questions: ids, left: plan.minutes * 60, more: 0, at: 0, answers: {}, done: false};
      keep();
      run(true);
    }

    function welcome(focus) {
      var title = heading(say("page.mock.start_title"));
      stop();
      state = null;
      place.classList.remove("ts-mock-done");
      page.empty(body);
      body.appendChild(title);
      plans.forEach(function (plan) {
        var count = plan.parts.reduce(function (sum, part) { return sum + part.count; }, 0);
        body.appendChild(make("p", {}, say("page.mock.plan", {title: plan.title, count: count, minutes: plan.minutes})));
        body.appendChild(make("div", {"class": "ts-buttons"}, page.button(say("page.mock.begin", {title: plan.title}), function () { begin(plan); }, "ts-main")));
      });
      if (focus) { title.focus(); }
    }

    // ---------------------------------------------------------------------------------------- the questions

    function controls(element) { return Array.prototype.slice.call(element.querySelectorAll("input,select")); }

    function valuesOf(one) {
      return {fields: controls(one.element).map(function (field) { return /radio|checkbox/.test(field.type) ? field.checked : field.value; }),
        sequence: one.field.sequence ? one.field.sequence() : null, touched: one.touched};
    }

    function restore(one, saved) {
      var fields = controls(one.element);
      if (!saved || !Array.isArray(saved.fields) || saved.fields.length !== fields.length) { return; }
      fields.forEach(function (field, number) {
        var value = saved.fields[number];
        if (typeof value === "boolean" && /radio|checkbox/.test(field.type)) { field.checked = value; }
        else if (typeof value === "string") { field.value = value.slice(0, LONGEST_TEXT); }
      });
      if (one.field.restore && Array.isArray(saved.sequence)) { one.field.restore(saved.sequence); }
      one.touched = saved.touched === true;
    }

    function question(id, number) {
      var item = marker.item(data.questions[id], state.seed), anchor = "ts-mock-" + number, figure = page.figureOf(id, "mock."), one;
      var holder = make("div", {"class": "ts-card ts-mock-question", role: "group", "aria-labelledby": anchor});
      holder.appendChild(make("h3", {id: anchor, tabindex: "-1"}, say("page.mock.question", {number: number + 1, count: state.questions.length})));
      if (figure) { holder.appendChild(figure); }
      T.card.paragraphs(item.text).forEach(function (line) { holder.appendChild(line); });
      one = {id: id, item: item, element: holder, touched: false, warned: false, said: make("div", {"class": "ts-mock-warn", role: "status"})};
      one.field = T.card.fields[item.kind](item, "ts-mock-answer-" + number, holder);
      holder.appendChild(one.field.element);
      holder.appendChild(one.said);
      restore(one, state.answers[id]);
      ["input", "change", "click"].forEach(function (kind) {
        one.field.element.addEventListener(kind, function (event) {
          if (state.done || (kind === "click" && event.target.nodeName !== "BUTTON")) { return; }
          one.touched = true;
          one.warned = false;
          state.answers[id] = valuesOf(one);
          keep();
          tellNumbers();
        });
      });
      return one;
    }

    /** A step order is an answer as soon as it was touched; everything else is blank by its own mark. */
    function isAnswered(one) { return one.field.sequence ? one.touched : one.field.answer().verdict !== "blank"; }

    function markOf(one) { return isAnswered(one) ? one.field.answer() : {verdict: "blank", misconceptions: [], why: [], value: null}; }

    var numbers, clock, warning, area, finish, following, sure = false;

    function tellNumbers() {
      Array.prototype.forEach.call(numbers.children, function (entry, number) {
        var button = entry.firstChild, answered = isAnswered(asked[number]);
        button.classList.toggle("ts-answered", answered);
        button.setAttribute("aria-label", answered ? say("page.mock.to_answered", {number: number + 1}) : say("page.mock.to_open", {number: number + 1}));
        if (number === state.at) { button.setAttribute("aria-current", "step"); } else { button.removeAttribute("aria-current"); }
      });
    }

    /** What the fields can't read is asked back once, before the next question: that is no verdict on the answer. */
    function mayLeave() {
      var one = asked[state.at], mark = markOf(one);
      page.empty(one.said);
      if (mark.verdict !== "ask_back" || one.warned) { return true; }
      one.warned = true;
      marker.messages(mark, say).forEach(function (text) { one.said.appendChild(make("p", {}, text)); });
      return false;
    }

    function show(at, focus) {
      state.at = Math.max(0, Math.min(asked.length - 1, at));
      asked.forEach(function (one, number) { one.element.hidden = number !== state.at; });
      sure = false;
      following.hidden = state.at === asked.length - 1;
      finish.textContent = say("page.mock.finish");
      page.empty(warning);
      tellNumbers();
      keep();
      page.scrollable();
      if (focus) { asked[state.at].element.querySelector("h3").focus(); }
    }

    function go(at) { if (mayLeave()) { show(at, true); } }

    function tellClock() {
      var minutes = Math.ceil(state.left / 60);
      clock.textContent = state.left > 0 ? say("page.mock.left", {count: minutes}) : say("page.mock.time_up");
      area.disabled = state.left <= 0;
    }

    function tick() {
      var now = Date.now(), before = Math.ceil(state.left / 60);
      state.left = Math.max(0, state.left - Math.min(LONGEST_TICK, Math.max(0, (now - last) / 1000)));
      last = now;
      unsaved += 1;
      if (Math.ceil(state.left / 60) !== before || state.left === 0) {
        tellClock();
        if (state.left === 0) { stop(); warn(say("page.mock.time_up_text")); }
        if (before === 6 && state.left > 0) { warn(say("page.mock.five_left")); }
      }
      if (unsaved >= SAVE_EVERY) { keep(); }
    }

    function warn(text) {
      page.empty(warning);
      warning.appendChild(make("p", {}, text));
    }

    function stop() {
      if (timer !== null) { window.clearInterval(timer); }
      timer = null;
    }

    function go_on() {
      stop();
      last = Date.now();
      if (state.left > 0) { timer = window.setInterval(tick, 1000); }
      tellClock();
    }

    function more() {
      state.left += MORE;
      state.more += MORE;
      keep();
      go_on();
      warn(say("page.mock.more_given", {count: MORE / 60}));
    }

    function end() {
      var open = asked.filter(function (one) { return !isAnswered(one); }).length;
      if (!sure && !mayLeave()) { return; }
      if (!sure) {
        sure = true;
        finish.textContent = say("page.mock.finish_sure");
        warn(open ? say("page.mock.open", {count: open}) : say("page.mock.none_open"));
        return;
      }
      state.done = true;
      keep();
      result(true);
    }

    function prepare() {
      page.empty(body);
      asked = state.questions.map(question);
    }

    function run(focus) {
      stop();
      place.classList.remove("ts-mock-done");
      clock = make("p", {"class": "ts-mock-clock"});
      warning = make("div", {"class": "ts-mock-warn", role: "status"});
      area = make("fieldset", {"class": "ts-mock-area"}, make("legend", {"class": "ts-hidden"}, say("page.mock.questions")));
      finish = page.button(say("page.mock.finish"), end);
      following = page.button(say("page.mock.next"), function () { go(state.at + 1); }, "ts-main");
      numbers = make("ol", {"class": "ts-mock-numbers"}, state.questions.map(function (id, number) {
        return make("li", {}, page.button(String(number + 1), function () { go(number); }));
      }));
      prepare();
      asked.forEach(function (one) { area.appendChild(one.element); });
      [make("h2", {}, planOf(state.scheme).title), make("div", {"class": "ts-mock-bar"}, [clock, page.button(say("page.mock.more", {count: MORE / 60}), more)]),
        make("nav", {"aria-label": say("page.mock.questions")}, numbers), area,
        make("div", {"class": "ts-buttons"}, [page.button(say("page.mock.back"), function () { go(state.at - 1); }),
          following, finish,
          page.button(say("page.mock.print"), function () { window.print(); })]), warning,
        make("p", {"class": "ts-saved"}, T.learner.stateText())].forEach(function (part) { body.appendChild(part); });
      show(state.at, focus);
      go_on();
    }

    // ------------------------------------------------------------------------------------------- the result

    /** The right answer in words, for every kind of question. */
    function rightAnswer(item) {
      var asks = item.answer || item;
      function letters(places) { return places.map(function (number) { return asks.areas[number].letter; }).join(", "); }
      if (asks.kind === "number") { return page.withUnit(asks.shown_key, asks.unit); }
      if (asks.kind === "choice") { return asks.right.map(function (number) { return asks.options[number]; }).join("; "); }
      if (asks.kind === "order") { return asks.steps.join(" \u00b7 "); }
      if (asks.kind === "match") { return asks.left.map(function (left, number) { return left + ": " + asks.right[number]; }).join(" \u00b7 "); }
      return letters(asks.right);
    }

    /** Points and readiness: the share that the scheme asks for, and no slip where a slip can't be made up for. */
    function judged(plan, marks) {
      var right = 0, missed = {}, total = marks.length, state_;
      marks.forEach(function (mark, number) {
        var competency = data.questions[asked[number].id].competency;
        if (T.card.isRight(mark)) { right += 1; } else { missed[competency] = true; }
      });
      var parts = plan.parts.filter(function (part) { return missed[part.competency]; });
      var critical = parts.filter(function (part) { return part.critical; });
      if (right / total < plan.cut - 1e-9) { state_ = "not_yet"; } else { state_ = critical.length ? "critical" : "ready"; }
      return {right: right, total: total, state: state_, practise: critical.concat(parts.filter(function (part) { return !part.critical; }))};
    }

    function result(focus) {
      var plan = planOf(state.scheme), marks, found, title = heading(say("page.mock.result_title")), used;
      stop();
      place.classList.add("ts-mock-done");
      prepare();
      marks = asked.map(markOf);
      found = judged(plan, marks);
      used = Math.round((plan.minutes * 60 + state.more - state.left) / 60);
      body.appendChild(title);
      body.appendChild(make("p", {"class": "ts-verdict ts-mock-points"}, say("page.mock.points", {right: found.right, count: found.total})));
      body.appendChild(make("p", {"class": "ts-mock-ready"}, page.say_one_of("page.mock.ready", found.state)));
      body.appendChild(make("p", {}, say("page.mock.only_practice")));
      body.appendChild(make("p", {}, say("page.mock.time_used", {used: used, more: state.more / 60})));
      if (found.practise.length) {
        body.appendChild(make("p", {}, say("page.mock.practise")));
        body.appendChild(make("ul", {}, found.practise.map(function (part) {
          return make("li", {}, [make("a", {href: linkTo(part.module)}, part.name), part.critical ? " (" + say("page.mock.critical") + ")" : ""]);
        })));
      }
      asked.forEach(function (one, number) {
        var said = T.card.feedback(), asks = one.item.answer || one.item;
        one.field.lock();
        one.element.removeChild(one.said);
        if (marks[number].verdict === "blank") {
          said.appendChild(make("p", {"class": "ts-verdict"}, say("page.mock.blank")));
        } else { T.card.showMark(said, marks[number]); }
        said.removeAttribute("role");
        said.appendChild(make("p", {}, say("page.card.the_answer", {answer: rightAnswer(one.item)})));
        one.element.appendChild(said);
        if (asks.asks) {
          one.worked = T.card.reveal(say("page.card.worked"), function () { return T.card.solution(asks.asks, asks.givens); });
          one.element.appendChild(make("div", {"class": "ts-buttons"}, one.worked.button));
          one.element.appendChild(one.worked.piece);
        }
        body.appendChild(one.element);
      });
      body.appendChild(make("div", {"class": "ts-buttons"}, [page.button(say("page.mock.print"), function () { window.print(); }),
        page.button(say("page.mock.again"), function () {
          T.progress.note("mock", null);
          welcome(true);
        }, "ts-main")]));
      page.scrollable();
      if (focus) { title.focus(); }
    }

    /** A module's page: a file of its own on the site, a part in the one-file edition. */
    function linkTo(module) { return document.getElementById("main") ? "#" + module : module + ".html"; }

    function open() {
      state = kept();
      if (!state) { welcome(false); } else if (state.done) { result(false); } else { run(false); }
    }

    var who = T.progress.current().id;
    T.progress.listen(function () {
      if (T.progress.current().id !== who || (state && T.progress.noted("mock") === null)) { who = T.progress.current().id; open(); }
    });
    window.addEventListener("pagehide", function () { if (state && !state.done) { keep(); } });
    open();
  }

  T.mock = {start: start};
})(window.Tankschool);
