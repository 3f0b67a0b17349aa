/* An exam on a screen, in one file: each answer is kept in the browser as it is given and is there again after closing or a
   power cut; a clock that can be given more time; at the end a result file, and a list to copy by hand if the file is lost.
   Nothing here knows a right answer. The letters that check an answer and the sum that checks a file find slips and damage,
   and no cheating: who watches the room does that. */
(function () {
  "use strict";
  var data = JSON.parse(document.getElementById("exam-data").textContent);
  var root = document.getElementById("exam");
  var KEY = "tankschool-exam-" + data.set + "-" + data.number;
  var LETTERS = "ABCDEFGHJKMNPRSTUVWXYZ", LONGEST = 200, TICK = 1000, LONGEST_TICK = 90, MOST_MORE = 240;
  var state = fresh(), stored = true, shownWarning = 0, last = Date.now();

  function fresh() { return {format: 1, answers: {}, used: 0, more: [], opened: 0, done: false, by_time: false}; }

  // ------------------------------------------------------------------------------------------------ small things

  function say(key, values) {
    var text = data.words[key];
    return String(text).replace(/\{([a-z]+)\}/g, function (whole, name) { return values && name in values ? values[name] : whole; });
  }

  function make(tag, attributes, content) {
    var element = document.createElement(tag);
    Object.keys(attributes || {}).forEach(function (name) { element.setAttribute(name, attributes[name]); });
    [].concat(content === undefined ? [] : content).forEach(function (part) {
      element.appendChild(typeof part === "string" ? document.createTextNode(part) : part);
    });
    return element;
  }

  function button(text, act, look) {
    var element = make("button", {type: "button", "class": look || ""}, text);
    element.addEventListener("click", act);
    return element;
  }

  var TABLE = (function () {
    var table = [];
    for (var n = 0; n < 256; n += 1) {
      var c = n;
      for (var k = 0; k < 8; k += 1) { c = c & 1 ? 0xEDB88320 ^ (c >>> 1) : c >>> 1; }
      table.push(c >>> 0);
    }
    return table;
  }());

  function bytes(text) { return unescape(encodeURIComponent(text)); }

  function crc(text) {
    var raw = bytes(text), sum = 0xFFFFFFFF;
    for (var i = 0; i < raw.length; i += 1) { sum = TABLE[(sum ^ raw.charCodeAt(i)) & 255] ^ (sum >>> 8); }
    return (sum ^ 0xFFFFFFFF) >>> 0;
  }

  /** Without half characters, which no file can hold, and not longer than anybody writes. */
  function whole(text) {
    return String(text).slice(0, LONGEST).replace(/[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(^|[^\uD800-\uDBFF])[\uDC00-\uDFFF]/g, "$1")
      .replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]/g, " ");
  }

  function plain(text) { return text.normalize("NFC").toLowerCase().replace(/[ \u00a0]+/g, " ").replace(/^ | $/g, ""); }

  function check(label, text) {
    var sum = crc(data.set + "|" + data.number + "|" + label + "|" + plain(text)) % (LETTERS.length * LETTERS.length);
    return LETTERS[Math.floor(sum / LETTERS.length)] + LETTERS[sum % LETTERS.length];
  }

  // ------------------------------------------------------------------------------------------------ what is kept

  function keep() {
    var text = JSON.stringify(state);
    try {
      window.localStorage.setItem(KEY, text);
      stored = window.localStorage.getItem(KEY) === text;
    } catch (error) { stored = false; }
    tellStored();
  }

  function kept() {
    try {
      var found = JSON.parse(window.localStorage.getItem(KEY));
      var good = found && found.format === 1 && found.answers && typeof found.answers === "object" && !Array.isArray(found.answers) &&
        typeof found.used === "number" && isFinite(found.used) && found.used >= 0 && Array.isArray(found.more) && typeof found.opened === "number" &&
        Object.keys(found.answers).every(function (label) { return typeof found.answers[label] === "string"; }) &&
        found.more.every(function (one) { return one && typeof one.minutes === "number" && typeof one.who === "string"; });
      return good ? found : null;
    } catch (error) { return null; }
  }

  function tellStored() {
    var place = document.getElementById("stored");
    var text = stored ? say("paper.screen.kept") : say("paper.screen.not_kept");
    if (place && place.textContent !== text) {
      place.textContent = text;
      place.className = stored ? "note" : "warning";
    }
  }

  function answered(label, text) {
    text = whole(text);
    if (text.trim()) { state.answers[label] = text; } else { delete state.answers[label]; }
    keep();
    tellCount();
  }

  function tellCount() {
    var place = document.getElementById("count");
    if (place) { place.textContent = say("paper.screen.answered", {have: Object.keys(state.answers).length, most: data.questions.length}); }
  }

  // ---------------------------------------------------------------------------------------------------- the clock

  function allowed() { return data.minutes * 60 + state.more.reduce(function (sum, one) { return sum + one.minutes * 60; }, 0); }

  function left() { return data.minutes ? Math.max(0, allowed() - state.used) : Infinity; }

  function tick() {
    var now = Date.now(), gone = Math.min(Math.max(0, (now - last) / 1000), LONGEST_TICK);
    last = now;
    if (state.done) { return; }
    state.used += gone;
    if (Math.floor(state.used) % 5 === 0) { keep(); }
    tellTime();
    if (data.minutes && left() <= 0) { state.by_time = true; finish(); }
  }

  function tellTime() {
    var place = document.getElementById("time");
    if (!place) { return; }
    if (!data.minutes) { place.textContent = say("paper.no_limit"); return; }
    var minutes = Math.ceil(left() / 60);
    place.textContent = say("paper.screen.time_left", {minutes: minutes});
    [10, 1].forEach(function (mark) {
      if (minutes <= mark && (shownWarning === 0 || shownWarning > mark) && minutes > 0) {
        shownWarning = mark;
        document.getElementById("warned").textContent = say("paper.screen.soon", {minutes: minutes});
      }
    });
  }

  function moreTime() {
    var minutes = make("input", {id: "more-minutes", type: "number", min: "1", max: String(MOST_MORE), inputmode: "numeric"});
    var who = make("input", {id: "more-who", type: "text", maxlength: "90"});
    var wrong = make("p", {"class": "warning", role: "alert"});
    var box = make("div", {"class": "box", id: "more"}, [
      make("p", {}, say("paper.screen.more_about")),
      make("label", {"for": "more-minutes"}, say("paper.screen.more_minutes")), minutes,
      make("label", {"for": "more-who"}, say("paper.screen.more_who")), who, wrong,
      button(say("paper.screen.more_give"), function () {
        var count = Number(minutes.value), name = whole(who.value).trim();
        if (!(count >= 1 && count <= MOST_MORE && count === Math.floor(count)) || !name) { wrong.textContent = say("paper.screen.more_wrong", {most: MOST_MORE}); return; }
        state.more.push({minutes: count, who: name});
        shownWarning = 0;
        if (state.done) { state.done = false; state.by_time = false; }
        keep();
        show();
      })
    ]);
    var old = document.getElementById("more");
    if (old) { old.parentNode.replaceChild(box, old); } else { root.insertBefore(box, root.children[1]); }
    minutes.focus();
  }

  // ------------------------------------------------------------------------------------------------ the questions

  function letters(text) { return (text || "").match(/[A-H]/g) || []; }

  function options(question, several) {
    var chosen = letters(state.answers[question.label]), name = "q" + question.label, inputs = [];
    var set = make("div", {"class": "options"});
    question.options.forEach(function (option) {
      var input = make("input", {type: several ? "checkbox" : "radio", name: name, id: name + option.letter, value: option.letter});
      input.checked = chosen.indexOf(option.letter) >= 0;
      input.addEventListener("change", given);
      inputs.push(input);
      set.appendChild(make("label", {"for": name + option.letter, "class": "option"}, [input, make("b", {}, option.letter), make("span", {}, option.text)]));
    });
    function given() {
      answered(question.label, inputs.filter(function (input) { return input.checked; }).map(function (input) { return input.value; }).join(" "));
      mark();
    }
    function mark() {
      var areas = set.parentNode ? set.parentNode.querySelectorAll("[data-area]") : [];
      Array.prototype.forEach.call(areas, function (area) {
        var on = inputs.some(function (input) { return input.checked && input.value === area.getAttribute("data-area"); });
        area.setAttribute("aria-pressed", on ? "true" : "false");
        area.classList.toggle("picked", on);
      });
    }
    set.pick = function (letter) {
      inputs.forEach(function (input) { if (input.value === letter) { input.checked = several ? !input.checked : true; } });
      given();
    };
    set.mark = mark;
    return set;
  }

  function number(question) {
    var box = make("div", {"class": "number"}), pieces = (state.answers[question.label] || "").split(";"), inputs = [], unit = null;
    var fields = question.steps.concat([{text: say("sheet.answer"), unit: question.unit}]);
    fields.forEach(function (field, place) {
      var id = "q" + question.label + "-" + place, value = (pieces[place] || "").trim(), last_one = place === fields.length - 1;
      if (last_one && question.units.length) {
        question.units.forEach(function (one) {
          if (value.length > one.length && value.slice(-one.length - 1) === " " + one) { unit = one; }
        });
        if (unit) { value = value.slice(0, -unit.length - 1); }
      }
      var input = make("input", {type: "text", inputmode: "decimal", autocomplete: "off", id: id, maxlength: "60"});
      input.value = value;
      input.addEventListener("input", given);
      inputs.push(input);
      box.appendChild(make("label", {"for": id}, field.text));
      var line = make("span", {"class": "line"}, [input]);
      if (last_one && question.units.length) {
        var select = make("select", {"aria-label": say("paper.screen.unit"), id: id + "-unit"}, [make("option", {value: ""}, say("paper.screen.unit"))].concat(
          question.units.map(function (one) { return make("option", {value: one}, one); })));
        select.value = unit || "";
        select.addEventListener("change", function () { unit = select.value; given(); });
        line.appendChild(select);
      } else if (field.unit) { line.appendChild(make("span", {}, field.unit)); }
      box.appendChild(line);
    });
    function given() {
      var texts = inputs.map(function (input) { return input.value.replace(/;/g, ",").trim(); });
      var some = texts.some(function (text) { return text; });
      if (some && unit) { texts[texts.length - 1] += " " + unit; }
      answered(question.label, some ? texts.join("; ") : "");
    }
    return box;
  }

  function pickers(question, names, join) {
    var box = make("div", {"class": "pickers"}), selects = [], given = state.answers[question.label] || "";
    names.forEach(function (name, place) {
      var id = "q" + question.label + "-" + place;
      var select = make("select", {id: id}, [make("option", {value: ""}, say("paper.screen.letter"))].concat(
        question.options.map(function (option) { return make("option", {value: option.letter}, option.letter); })));
      var found = join ? new RegExp("\\b" + (place + 1) + "([A-H])").exec(given) : null;
      select.value = join ? (found ? found[1] : "") : (given.split(" ")[place] || "").replace("-", "");
      select.addEventListener("change", function () {
        var texts = selects.map(function (one, at) { return join ? (one.value ? (at + 1) + one.value : "") : one.value || "-"; });
        var some = selects.some(function (one) { return one.value; });
        answered(question.label, some ? (join ? texts.filter(Boolean).join(" ") : texts.join(" ")) : "");
      });
      selects.push(select);
      box.appendChild(make("label", {"for": id}, name));
      box.appendChild(select);
    });
    return box;
  }

  function lettered(question) {
    return make("ul", {"class": "lettered"}, question.options.map(function (option) {
      return make("li", {}, [make("b", {}, option.letter), make("span", {}, option.text)]);
    }));
  }

  function card(question) {
    var set = make("fieldset", {"class": "question", id: "question-" + question.label}, make("legend", {}, [make("b", {}, question.label + ". "), question.lines[0] || ""]));
    question.lines.slice(1).forEach(function (line) { set.appendChild(make("p", {}, line)); });
    if (question.figure) {
      var figure = make("div", {"class": "figure"});
      figure.innerHTML = question.figure;
      set.appendChild(figure);
    }
    if (question.note) { set.appendChild(make("p", {"class": "note"}, question.note)); }
    if (question.kind === "number") { set.appendChild(number(question)); }
    if (question.kind === "choice") {
      var choice = options(question, question.several);
      set.appendChild(choice);
      choice.mark();
      Array.prototype.forEach.call(set.querySelectorAll("[data-area]"), function (area) {
        area.addEventListener("click", function () { choice.pick(area.getAttribute("data-area")); });
        area.addEventListener("keydown", function (event) {
          if (event.key === "Enter" || event.key === " ") { event.preventDefault(); choice.pick(area.getAttribute("data-area")); }
        });
      });
    }
    if (question.kind === "order") {
      set.appendChild(lettered(question));
      set.appendChild(pickers(question, question.options.map(function (option, place) { return (place + 1) + "."; }), false));
    }
    if (question.kind === "match") {
      set.appendChild(lettered(question));
      set.appendChild(pickers(question, question.left.map(function (text, place) { return (place + 1) + ". " + text; }), true));
    }
    return set;
  }

  // -------------------------------------------------------------------------------------------------- the result

  function result() {
    var answers = {};
    data.questions.forEach(function (question) { answers[question.label] = state.answers[question.label] || ""; });
    var body = {
      exam: data.exam, set: data.set, number: data.number, name: data.name, language: data.language, form: "screen", answers: answers,
      minutes_allowed: Math.round(allowed() / 60), seconds_used: Math.round(state.used), more_time: state.more, opened: state.opened,
      ended_by_time: state.by_time, kept: stored
    };
    var text = JSON.stringify(body);
    return '{"format":1,"kind":"exam-result","body":' + text + ',"checksum":"' + ("0000000" + crc(text).toString(16)).slice(-8) + '"}\n';
  }

  function save() {
    var link = make("a", {href: window.URL.createObjectURL(new Blob([result()], {type: "application/json"})), download: "result-" + data.set + "-" + data.number + ".json"});
    document.body.appendChild(link);
    link.click();
    document.body.removeChild(link);
    document.getElementById("saved").textContent = say("paper.screen.file_saved");
  }

  function finish() { state.done = true; keep(); show(); }

  function ended() {
    var rows = data.questions.map(function (question) {
      var text = state.answers[question.label] || "";
      return make("tr", {}, [make("td", {}, question.label), make("td", {}, text || say("paper.screen.nothing")), make("td", {"class": "check"}, check(question.label, text))]);
    });
    var head = [say("paper.screen.question"), say("paper.screen.answer"), say("paper.screen.check")];
    return [
      make("h2", {tabindex: "-1", id: "ended"}, state.by_time ? say("paper.screen.time_over") : say("paper.screen.finished")),
      make("p", {}, say("paper.screen.file_about")),
      button(say("paper.screen.save_file"), save, "main"),
      make("p", {id: "saved", role: "status"}),
      make("h3", {}, say("paper.screen.list_title")),
      make("p", {}, say("paper.screen.list_about")),
      make("div", {"class": "wide", tabindex: "0", role: "region", "aria-label": say("paper.screen.list_title")}, make("table", {}, [
        make("thead", {}, make("tr", {}, head.map(function (text) { return make("th", {scope: "col"}, text); }))),
        make("tbody", {}, rows)
      ])),
      make("p", {"class": "note"}, say("paper.screen.not_against_cheating")),
      state.by_time ? make("p", {}, say("paper.screen.time_over_about")) : button(say("paper.screen.back"), function () { state.done = false; keep(); show(); })
    ];
  }

  function show() {
    while (root.firstChild) { root.removeChild(root.firstChild); }
    var bar = make("div", {"class": "bar"}, [
      make("span", {id: "time"}), make("span", {id: "count"}), button(say("paper.screen.more"), moreTime, "small")
    ]);
    root.appendChild(bar);
    root.appendChild(make("p", {id: "stored", "class": "note"}));
    root.appendChild(make("p", {id: "warned", "class": "warning", role: "status"}));
    if (state.done) {
      ended().forEach(function (part) { root.appendChild(part); });
      document.getElementById("ended").focus();
    } else {
      data.questions.forEach(function (question) { root.appendChild(card(question)); });
      root.appendChild(button(say("paper.screen.finish"), ask, "main"));
    }
    tellTime();
    tellCount();
    tellStored();
  }

  function ask() {
    var missing = data.questions.filter(function (question) { return !state.answers[question.label]; }).map(function (question) { return question.label; });
    var old = document.getElementById("sure"), box = make("div", {"class": "box", id: "sure"}, [
      make("p", {}, missing.length ? say("paper.screen.missing", {labels: missing.join(", ")}) : say("paper.screen.all_answered")),
      button(say("paper.screen.finish_now"), finish, "main"),
      button(say("paper.screen.go_on"), function () { box.parentNode.removeChild(box); })
    ]);
    if (old) { old.parentNode.removeChild(old); }
    root.appendChild(box);
    box.querySelector("button").focus();
  }

  state = kept() || fresh();
  state.opened += 1;
  keep();
  show();
  window.setInterval(tick, TICK);
  window.addEventListener("pagehide", function () { tick(); keep(); });
}());
