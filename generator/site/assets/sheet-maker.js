/* The sheet maker: a pasted class list, a module and a seed become personal sheets, keys and a record, and typed answers
   become marks. All that people paste is put into the page as text and never as markup. */
(function (T) {
  "use strict";
  var page = T.page, say = page.say, make = page.make, card = T.card;
  var LETTERS = "ABCDEFGH", AT_ONCE = 25, IN_A_PART = 25, MOST_TOLD = 50, MOST_QUESTIONS = 500;

  function today() {
    var now = new Date();
    function two(number) { return (number < 10 ? "0" : "") + number; }
    return now.getFullYear() + "-" + two(now.getMonth() + 1) + "-" + two(now.getDate());
  }

  /** Questions and scenarios stand beside the rest: the one file has them in its modules' pages. */
  function withQuestions(data, all) {
    data.questions = all.questions;
    data.scenarios = all.scenarios;
    return data;
  }

  function start(place, all) {
    var data = withQuestions(T.carried(place.querySelector("script.ts-data")).sheet_maker, all), set = T.printedSet;
    var body = place.querySelector(".ts-body"), run = 0, current = null;
    var said = make("p", {role: "status", "class": "ts-note"}), wrong = make("div"), marked = make("p", {role: "status", "class": "ts-note"}), unread = make("div"), result = make("div", {"class": "ts-set"});

    /** A word of the language of a learner's sheet. */
    function inTongue(language, key, values) {
      return data.words[language][key].replace(/\{([a-z_]+)\}/g, function (slot, name) { return values && name in values ? String(values[name]) : slot; });
    }
    function unitIn(language, unit) { return unit ? (data.words[language]["unit." + unit] || unit) : ""; }

    // ------------------------------------------------------------------------------------------- what is asked

    function field(id, label, input, note) {
      input.id = "ts-sheets-" + id;
      if (note) { input.setAttribute("aria-describedby", input.id + "-note"); }
      return make("div", {"class": "ts-field"}, [make("label", {"for": input.id}, label), input,
        note ? make("span", {"class": "ts-note", id: input.id + "-note"}, note) : null]);
    }
    function select(pairs, chosen) {
      return make("select", {}, pairs.map(function (pair) {
        var option = make("option", {value: pair[0]}, pair[1]);
        option.selected = pair[0] === chosen;
        return option;
      }));
    }
    /** A button that lets a file of text be chosen. */
    function opener(text, most, take) {
      var input = make("input", {type: "file", "class": "ts-hidden", tabindex: "-1", "aria-hidden": "true"});
      input.addEventListener("change", function () {
        var file = input.files[0], reader = new FileReader();
        input.value = "";
        if (!file) { return; }
        if (file.size > most) { tellProblems([{line: 0, column: 0, code: "file-too-large", values: {size: (file.size / 1e6).toFixed(1), most: (most / 1e6).toFixed(1)}}]); return; }
        reader.onload = function () { take(String(reader.result)); };
        reader.readAsText(file, "utf-8");
      });
      return make("span", {}, [page.button(text, function () { input.click(); }), input]);
    }

    var names = make("textarea", {rows: "7", spellcheck: "false", autocomplete: "off", placeholder: "name,language"});
    var modules = select(Object.keys(data.modules).map(function (id) { return [id, data.titles[data.language][id]]; }));
    var skills = make("fieldset", {"class": "ts-plan-site"});
    var count = make("input", {type: "text", inputmode: "numeric", value: "0"});
    var language = select(data.languages.map(function (one) { return [one, data.tongues[one]]; }), data.language);
    var seed = make("input", {type: "text", value: today(), maxlength: "200", autocomplete: "off"});
    var typed = make("textarea", {rows: "7", spellcheck: "false", autocomplete: "off", placeholder: "learner,question,answer"});
    var marks = make("div", {"class": "ts-marks"});

    function showSkills() {
      page.empty(skills);
      skills.appendChild(make("legend", {}, say("page.sheets.skills")));
      (data.shown[modules.value] || []).forEach(function (name, number) {
        var id = "ts-sheets-skill-" + number;
        skills.appendChild(make("div", {}, [make("input", {type: "checkbox", id: id, value: name}), make("label", {"for": id}, data.competencies[name])]));
      });
    }
    modules.addEventListener("change", showSkills);

    function tellProblems(problems, where) {
      where = where || wrong;
      page.empty(where);
      if (!problems.length) { return; }
      where.appendChild(make("div", {"class": "ts-caution", role: "alert"}, [make("strong", {}, say("page.sheets.nothing_made", {count: problems.length})),
        make("ul", {}, problems.slice(0, MOST_TOLD).map(function (one) {
          var text = page.say_one_of("page.sheets.problem", one.code, shortened(one.values));
          return make("li", {}, one.line ? say("page.sheets.line", {line: one.line}) + " " + text : text);
        }))]));
      if (problems.length > MOST_TOLD) { where.firstChild.appendChild(make("p", {}, say("page.sheets.more", {count: problems.length - MOST_TOLD}))); }
    }
    function shortened(values) {
      var made = {};
      Object.keys(values).forEach(function (name) {
        var text = String(values[name]);
        made[name] = text.length > 60 ? text.slice(0, 60) + "\u2026" : text;
      });
      return made;
    }

    // ---------------------------------------------------------------------------------------------- the making

    function build() {
      var list = set.readClassList(names.value, data.languages), number = T.marker.parse(count.value, ""), wish, maker, mine;
      page.empty(wrong);
      if (!names.value.replace(/\s/g, "")) { said.textContent = say("page.sheets.no_list"); names.focus(); return; }
      if (list.problems) { forget(); tellProblems(list.problems); said.textContent = say("page.sheets.see_problems"); return; }
      if (number.ask || number.blank || !(number.value >= 0 && number.value <= MOST_QUESTIONS) || Math.floor(number.value) !== number.value) {
        said.textContent = say("page.sheets.count_wrong", {most: MOST_QUESTIONS});
        count.focus();
        return;
      }
      if (!seed.value.replace(/\s/g, "")) { said.textContent = say("page.sheets.seed_wrong"); seed.focus(); return; }
      forget();
      mine = run;
      wish = {module: modules.value, competencies: Array.prototype.filter.call(skills.querySelectorAll("input"), function (one) { return one.checked; }).map(function (one) { return one.value; }),
        questions: number.value, language: language.value, seed: seed.value};
      maker = set.maker(data, list.people, wish);
      (function next() {
        var more;
        if (mine !== run) { return; }
        try { more = maker.step(AT_ONCE); } catch (error) {
          said.textContent = say("page.sheets.no_numbers");
          return;
        }
        said.textContent = say("page.sheets.drawing", {done: maker.done, count: maker.count});
        if (more) { window.setTimeout(next, 0); return; }
        finished(maker.record());
      })();
    }

    function forget() {
      run += 1;
      current = null;
      document.documentElement.classList.remove("ts-made-sheets");
      [result, marks, unread].forEach(page.empty);
      marked.textContent = "";
    }

    function finished(record) {
      var text = set.toJson(record);
      if (text.length > 25000000) { said.textContent = say("page.sheets.too_much"); return; }
      take({record: record, text: text, id: set.setId(text)});
      said.textContent = say("page.sheets.made", {count: record.learners.length, set: current.id});
    }

    function take(made) {
      var head;
      current = made;
      document.documentElement.classList.add("ts-made-sheets");
      page.empty(result);
      head = make("h2", {tabindex: "-1", "class": "ts-screen"}, say("page.sheets.ready", {set: made.id}));
      result.appendChild(head);
      result.appendChild(choices());
      head.focus();
    }

    function choices() {
      var people = current.record.learners, parts = [], first, sheets = make("div", {"class": "ts-print"});
      var what = select(["both", "sheets", "keys"].map(function (one) { return [one, page.say_one_of("page.sheets.print", one)]; })), which;
      for (first = 0; first < people.length; first += IN_A_PART) {
        parts.push([String(first), say("page.sheets.part", {first: first + 1, last: Math.min(first + IN_A_PART, people.length)})]);
      }
      which = select(parts);
      function draw() {
        var here = people.slice(Number(which.value), Number(which.value) + IN_A_PART);
        page.empty(sheets);
        if (what.value !== "keys") { here.forEach(function (learner) { sheets.appendChild(sheet(learner)); }); }
        if (what.value !== "sheets") { here.forEach(function (learner) { sheets.appendChild(key(learner)); }); }
        card.plainMath(sheets);
        page.scrollable();
      }
      what.addEventListener("change", draw);
      which.addEventListener("change", draw);
      draw();
      return make("div", {}, [make("div", {"class": "ts-screen"}, [
        make("p", {}, say("page.sheets.keep_record")),
        field("what", say("page.sheets.what"), what), parts.length > 1 ? field("which", say("page.sheets.which"), which) : null,
        make("div", {"class": "ts-buttons"}, [page.button(say("page.sheets.print_them"), function () { window.print(); }, "ts-main"),
          page.button(say("page.sheets.save_record"), save)])]), sheets]);
    }

    function save() {
      var address = URL.createObjectURL(new Blob([current.text], {type: "application/json"}));
      var name = "record-" + current.record.module + "-" + current.id + ".json", link = make("a", {href: address, download: name});
      document.body.appendChild(link);
      link.click();
      document.body.removeChild(link);
      window.setTimeout(function () { URL.revokeObjectURL(address); }, 10000);
      said.textContent = say("page.progress.file_saved", {file: name});
    }

    function open(text) {
      var read = set.readRecord(text);
      page.empty(wrong);
      if (read.problems) { tellProblems(read.problems); said.textContent = say("page.sheets.see_problems"); return; }
      forget();
      text = set.toJson(read.record);
      take({record: read.record, text: text, id: set.setId(text)});
      said.textContent = say("page.sheets.opened", {count: read.record.learners.length, set: current.id});
    }

    // ------------------------------------------------------------------------------------------------ one sheet

    function titleIn(tongue) { return (data.titles[tongue] || {})[current.record.module] || current.record.module; }
    function tongueOf(learner) { return data.words[learner.language] ? learner.language : data.language; }

    function sheet(learner) {
      var tongue = tongueOf(learner), told = null, made;
      made = make("section", {"class": "ts-worksheet", lang: tongue}, [
        make("div", {"class": "ts-worksheet-head"}, [make("div", {}, [make("h3", {}, learner.name), make("p", {}, titleIn(tongue)),
          make("p", {"class": "ts-note"}, inTongue(tongue, "sheet.number", {number: learner.number, set: current.id}))]),
        make("p", {}, [inTongue(tongue, "sheet.day") + " ", make("span", {"class": "ts-blank"})])]),
        make("p", {"class": "ts-note"}, inTongue(tongue, "sheet.how")), make("p", {"class": "ts-note"}, inTongue(tongue, "sheet.not_a_design"))]);
      set.labelled(learner).forEach(function (row) {
        if (row.scenario && row.scenario !== told) {
          told = row.scenario;
          made.appendChild(make("div", {"class": "ts-worksheet-job"}, [make("h4", {}, told.title)].concat(card.paragraphs(told.text),
            [make("p", {"class": "ts-note"}, inTongue(tongue, "sheet.scenario")), make("p", {"class": "ts-note"}, data.invented[tongue])])));
        }
        made.appendChild(make("div", {"class": "ts-q"}, [make("p", {"class": "ts-q-number"}, row.label),
          make("div", {}, card.paragraphs(row.item.text).concat(room(row.item, tongue, learner.number)))]));
      });
      return made;
    }

    function line(tongue, unit, label) {
      return make("p", {"class": "ts-q-line"}, [(label || inTongue(tongue, "sheet.answer")) + " ", make("span", {"class": "ts-blank"}), unit ? "\u00a0" + unitIn(tongue, unit) : ""]);
    }
    function note(tongue, key, values) { return make("p", {"class": "ts-note"}, inTongue(tongue, key, values)); }
    function lettered(texts, order) {
      return make("ol", {type: "A"}, order.map(function (position) { return make("li", {}, texts[position]); }));
    }
    function boxes(many) {
      var made = [], i;
      for (i = 0; i < many; i += 1) { made.push(make("span", {"class": "ts-box"})); }
      return made;
    }

    function room(item, tongue, number) {
      var drawing, aids;
      if (item.kind === "spoken") { return [note(tongue, "exercise.read_aloud")].concat(room(item.answer, tongue, number)); }
      if (item.kind === "number") {
        aids = item.aids.map(function (aid) { return inTongue(tongue, "exercise.aid." + aid); }).join(", ");
        return [make("div", {"class": "ts-room"}, [note(tongue, "sheet.work"), aids ? note(tongue, "exercise.aids", {aids: aids}) : null,
          item.units.length ? note(tongue, "exercise.write_the_unit") : null, make("div", {"class": "ts-work"})].concat(
          item.steps.map(function (step) { return line(tongue, step.unit, step.text + ":"); }), [line(tongue, item.units.length ? "" : item.unit)]))];
      }
      if (item.kind === "choice") {
        return [make("div", {"class": "ts-room"}, [note(tongue, item.several ? "sheet.choose_several" : "sheet.choose_one"), lettered(item.options, item.order), line(tongue)])];
      }
      if (item.kind === "order") {
        return [make("div", {"class": "ts-room"}, [note(tongue, "sheet.put_in_order"), lettered(item.steps, item.order),
          make("p", {"class": "ts-q-line"}, [inTongue(tongue, "sheet.first") + " "].concat(boxes(item.steps.length), [" " + inTongue(tongue, "sheet.last")]))])];
      }
      if (item.kind === "match") {
        return [make("div", {"class": "ts-room"}, [note(tongue, "sheet.match"), make("div", {"class": "ts-pairs"}, [
          make("ol", {}, item.left.map(function (text) { return make("li", {}, [text + " "].concat(boxes(1))); })), lettered(item.right, item.order)])])];
      }
      drawing = make("div", {"class": "ts-figure"});
      if (data.figures[item.id]) {
        /* our own drawing; its ids are made this sheet's own */
        drawing.innerHTML = data.figures[item.id][tongue].split(item.id).join(item.id + "-" + number);
        relettered(drawing, item);
      }
      return [drawing, make("div", {"class": "ts-room"}, [note(tongue, item.several ? "sheet.choose_several" : "sheet.choose_one")].concat(
        item.areas.map(function (area, position) { return item.labels[position] ? make("p", {}, area.letter + ": " + item.labels[position]) : null; }), [line(tongue)]))];
    }

    /* The drawing is one for all: what the record calls B has a B beside it. */
    function relettered(drawing, item) {
      var own = {};
      data.questions[item.id].areas.forEach(function (area) {
        item.areas.forEach(function (other) { if (other.name === area.name) { own[area.letter] = other.letter; } });
      });
      Array.prototype.forEach.call(drawing.querySelectorAll(".fig-disc text"), function (disc) { disc.textContent = own[disc.textContent]; });
      Array.prototype.forEach.call(drawing.querySelectorAll("[data-area]"), function (place) {
        var letter = own[place.getAttribute("data-area")];
        place.setAttribute("data-area", letter);
        place.setAttribute("aria-label", letter);
      });
    }

    // -------------------------------------------------------------------------------------------------- one key

    function key(learner) {
      var own = data.language, told = null, made;
      made = make("section", {"class": "ts-worksheet ts-key"}, [make("h3", {}, inTongue(own, "sheet.key") + " \u00b7 " + learner.name),
        make("p", {"class": "ts-note"}, titleIn(own) + " \u00b7 " + inTongue(own, "sheet.number", {number: learner.number, set: current.id})), note(own, "sheet.key_only_for_trainers")]);
      set.labelled(learner).forEach(function (row) {
        if (row.scenario && row.scenario !== told) {
          told = row.scenario;
          made.appendChild(make("div", {}, [make("h4", {}, told.title), note(own, "sheet.key_scenario")]));
        }
        made.appendChild(make("div", {"class": "ts-q", lang: tongueOf(learner)}, [make("p", {"class": "ts-q-number"}, row.label), make("div", {lang: own}, answer(row.item, row.scenario))]));
      });
      return made;
    }

    function letters(order, positions) { return positions.map(function (each) { return LETTERS.charAt(order.indexOf(each)); }); }
    function strong(text) { return make("p", {}, make("strong", {}, text)); }

    function answer(item, scenario) {
      var made, right, exact, wrongs;
      if (item.kind === "spoken") { return [note(data.language, "sheet.script")].concat(item.script.map(function (text) { return make("p", {}, text); }), answer(item.answer, scenario)); }
      if (item.kind === "number") {
        right = page.withUnit(item.shown_key, item.unit);
        made = [strong(right)];
        try { made.push(make("div", {"class": "ts-scroll"}, card.solution(item.asks, scenario ? scenario.givens : item.givens))); } catch (error) { /* a record of formulas that this course has not: the answer stands alone */ }
        exact = item.rule && item.exact !== null ? page.withUnit(T.formula.show(item.exact, item.places), item.unit) : right;
        if (exact !== right) { made.push(make("p", {}, say("exercise.rounded", {exact: exact, answer: right}))); }
        wrongs = Object.keys(item.wrong).filter(known).map(function (name) {
          return [page.withUnit(T.formula.show(item.wrong[name], item.places), item.unit), page.say_one_of("misconception", name + ".mistake"), page.say_one_of("misconception", name + ".hill")];
        }).filter(function (row) { return row[0] !== right; }); // what prints as the right answer can't be told from it on paper
        if (wrongs.length) { made.push(table([inTongue(data.language, "sheet.wrong_answer"), inTongue(data.language, "sheet.mistake"), inTongue(data.language, "sheet.hill")], wrongs)); }
        return made;
      }
      if (item.kind === "choice") {
        return [strong(letters(item.order, item.right).sort().join(", "))].concat(item.right.map(function (one) { return make("p", {}, item.options[one]); }));
      }
      if (item.kind === "order") { return [strong(letters(item.order, item.steps.map(function (step, position) { return position; })).join(" "))].concat(card.paragraphs(item.why)); }
      if (item.kind === "match") {
        return [strong(item.left.map(function (left, position) { return position + 1 + LETTERS.charAt(item.order.indexOf(position)); }).join(" "))].concat(card.paragraphs(item.why));
      }
      return [strong(item.right.map(function (position) { return item.areas[position].letter; }).join(", "))];
    }
    function known(name) { return name.indexOf("reading.") === 0 || page.wordOf("misconception." + name + ".mistake") !== undefined; }

    function table(head, rows) {
      return make("div", {"class": "ts-scroll"}, make("table", {"class": "ts-table"}, [
        make("thead", {}, make("tr", {}, head.map(function (cell) { return make("th", {scope: "col"}, cell); }))),
        make("tbody", {}, rows.map(function (row) {
          return make("tr", {}, row.map(function (cell, number) { return make(number ? "td" : "th", number ? {} : {scope: "row"}, cell); }));
        }))]));
    }

    // ------------------------------------------------------------------------------------------------- marking

    function mark() {
      var read, found;
      page.empty(marks);
      page.empty(unread);
      if (!current) { marked.textContent = say("page.sheets.no_record"); return; }
      if (!typed.value.replace(/\s/g, "")) { marked.textContent = say("page.sheets.no_answers"); typed.focus(); return; }
      read = set.readAnswers(typed.value, current.record);
      if (read.problems) { tellProblems(read.problems, unread); marked.textContent = say("page.sheets.see_problems"); return; }
      found = set.markSet(data, current.record, read.answers);
      summary(found);
      marked.textContent = say("page.sheets.marked", {count: found.learners.length});
      page.scrollable();
    }

    function summary(found) {
      var skill = {}, mistakes = {}, order = [], head = make("h2", {tabindex: "-1"}, say("page.sheets.marks"));
      found.learners.forEach(function (learner) {
        learner.marks.forEach(function (row) {
          var mark = row.mark;
          mark.misconceptions = mark.misconceptions.filter(known);
          if (!skill[mark.competency]) { skill[mark.competency] = {right: 0, count: 0}; order.push(mark.competency); }
          skill[mark.competency].count += 1;
          skill[mark.competency].right += card.isRight(mark) ? 1 : 0;
          mark.misconceptions.forEach(function (name) { mistakes[name] = (mistakes[name] || 0) + 1; });
        });
      });
      marks.appendChild(head);
      if (!found.same_formulas) { marks.appendChild(make("p", {"class": "ts-caution"}, say("page.sheets.other_formulas"))); }
      marks.appendChild(table([say("page.sheets.learner"), say("page.sheets.points"), say("page.sheets.blank")], found.learners.map(function (learner) {
        return [learner.learner.number + ". " + learner.learner.name, say("page.sheets.of", {have: learner.points, most: learner.most}),
          String(learner.marks.filter(function (row) { return row.mark.verdict === "blank"; }).length)];
      })));
      marks.appendChild(make("h3", {}, say("page.sheets.by_skill")));
      marks.appendChild(table([say("page.sheets.skill"), say("page.sheets.right")], order.map(function (name) {
        return [data.competencies[name] || name, say("page.sheets.of", {have: skill[name].right, most: skill[name].count})];
      })));
      marks.appendChild(make("h3", {}, say("page.sheets.mistakes")));
      order = Object.keys(mistakes).sort(function (a, b) { return mistakes[b] - mistakes[a] || (a < b ? -1 : 1); });
      marks.appendChild(order.length ? table([say("page.sheets.mistake"), say("page.sheets.hill"), say("page.sheets.times")], order.map(function (name) {
        return [page.say_one_of("misconception", name + ".mistake"), page.say_one_of("misconception", name + ".hill"), String(mistakes[name])];
      })) : make("p", {}, say("page.sheets.no_mistakes")));
      marks.appendChild(make("h3", {}, say("page.sheets.each")));
      found.learners.forEach(function (learner) {
        var open = learner.marks.filter(function (row) { return !card.isRight(row.mark); });
        marks.appendChild(make("details", {"class": "ts-answers"}, [make("summary", {}, learner.learner.number + ". " + learner.learner.name + ": " + say("page.sheets.of", {have: learner.points, most: learner.most})),
          open.length ? make("dl", {}, open.reduce(function (list, row) {
            return list.concat([make("dt", {}, row.label), make("dd", {}, T.marker.messages(row.mark, say).map(function (text) { return make("p", {}, text); }))]);
          }, [])) : make("p", {}, say("page.sheets.all_right"))]));
      });
      head.focus();
    }

    // ------------------------------------------------------------------------------------------------ the page

    page.empty(body);
    if (!Object.keys(data.modules).length) { body.appendChild(make("p", {}, say("page.sheets.empty"))); return; }
    showSkills();
    [make("div", {"class": "ts-screen"}, [
      field("names", say("page.sheets.names"), names, say("page.sheets.names_note")),
      make("div", {"class": "ts-buttons"}, opener(say("page.sheets.open_list"), 1000000, function (text) { names.value = text; said.textContent = say("page.sheets.list_read"); })),
      field("module", say("page.sheets.module"), modules), skills, field("count", say("page.sheets.count"), count, say("page.sheets.count_note")),
      field("language", say("page.sheets.language"), language), field("seed", say("page.sheets.seed"), seed, say("page.sheets.seed_note")),
      make("div", {"class": "ts-buttons"}, [page.button(say("page.sheets.make"), build, "ts-main"), opener(say("page.sheets.open_record"), 50000000, open)]),
      said, wrong]), result,
    make("div", {"class": "ts-screen"}, [make("h2", {}, say("page.sheets.mark_title")), make("p", {}, say("page.sheets.mark_about")),
      field("typed", say("page.sheets.typed"), typed, say("page.sheets.typed_note")),
      make("div", {"class": "ts-buttons"}, page.button(say("page.sheets.mark"), mark, "ts-main")), marked, unread, marks])
    ].forEach(function (part) { body.appendChild(part); });
  }

  T.sheetMaker = {start: start};
})(window.Tankschool);
