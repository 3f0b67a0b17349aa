/* Makes, saves, reads and marks printed sets in the page: the twin of class_list.py, answers.py, printed_set.py and
 * record.py, and of the reading of tables that people paste. Whatever is pasted is text and stays text.
 * It needs formula.js and marker.js; rules and the record's shape are loaded behind it. */
(function (root) {
  "use strict";
  var Tankschool = root.Tankschool = root.Tankschool || {};
  var rules = null, REPLACED = "~";
  var SPACE = /[\u0009-\u000d\u001c-\u001f \u0085\u00a0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000]/;
  var SPACES = /[\u0009-\u000d\u001c-\u001f \u0085\u00a0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000]+/;
  var UNWANTED = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff\ufffd-\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(^|[^\ud800-\udbff])[\udc00-\udfff]/g;
  var PAIR = /[\ud800-\udbff][\udc00-\udfff]/g;
  var SEPARATORS = [",", ";", "\t"];

  function has(object, name) { return Object.prototype.hasOwnProperty.call(object, name); }
  function formula() { return Tankschool.formula; }

  /* --------------------------------------------------------------------------------- texts as people paste them */
  function stripped(text) {
    var start = 0, end = text.length;
    while (start < end && SPACE.test(text.charAt(start))) { start += 1; }
    while (end > start && SPACE.test(text.charAt(end - 1))) { end -= 1; }
    return text.slice(start, end);
  }
  function unquoted(text) {
    var start = 0, end = text.length;
    while (start < end && text.charAt(start) === '"') { start += 1; }
    while (end > start && text.charAt(end - 1) === '"') { end -= 1; }
    return text.slice(start, end);
  }
  function tidied(text) { return stripped(text).split(SPACES).join(" "); }
  function letterCount(text) { return text.length - (text.match(PAIR) || []).length; }
  function byteCount(text) {
    var bytes = 0, i, code;
    for (i = 0; i < text.length; i += 1) {
      code = text.charCodeAt(i);
      bytes += code < 0x80 ? 1 : code < 0x800 ? 2 : code >= 0xd800 && code < 0xe000 ? 2 : 3;
    }
    return bytes;
  }
  function folded(text) {
    var made = "", letters = text.match(/[\ud800-\udbff][\udc00-\udfff]|[\s\S]/g) || [];
    letters.forEach(function (letter) { made += has(rules.folds, letter) ? rules.folds[letter] : letter.toLowerCase(); });
    return made;
  }
  function composed(text) { return text.normalize ? text.normalize("NFC") : text; }
  function sameName(name) { return folded(composed(tidied(name))); }
  function isDigits(text) {
    var letters = text.match(/[\ud800-\udbff][\udc00-\udfff]|[\s\S]/g) || [];
    return letters.length > 0 && letters.every(function (letter) {
      var code = letter.length === 2 ? (letter.charCodeAt(0) - 0xd800) * 0x400 + letter.charCodeAt(1) - 0xdc00 + 0x10000 : letter.charCodeAt(0);
      return rules.digits.some(function (run) { return run[0] <= code && code <= run[1]; });
    });
  }

  function problem(line, column, code, values) { return {line: line, column: column, code: code, values: values || {}}; }
  /* In the order of their places, each once. */
  function sorted(problems) {
    var seen = {};
    return problems.map(function (one, place) { return [one, place]; }).sort(function (a, b) {
      return a[0].line - b[0].line || a[0].column - b[0].column || (a[0].code < b[0].code ? -1 : a[0].code > b[0].code ? 1 : a[1] - b[1]);
    }).map(function (row) { return row[0]; }).filter(function (one) {
      var key = JSON.stringify(one);
      if (has(seen, key)) { return false; }
      seen[key] = true;
      return true;
    });
  }
  function few(problems) {
    var found = problems.slice(0, rules.most_reported + 1);
    if (found.length > rules.most_reported) { found[rules.most_reported] = problem(0, 0, "too-many-problems", {most: rules.most_reported}); }
    return found;
  }

  /* A pasted text as `decode` leaves it: {text} or {problems}. */
  function decoded(text, limit) {
    var problems = [], found, before, line, code;
    text = String(text === null || text === undefined ? "" : text);
    if (text.length > limit || byteCount(text) > limit) {
      return {problems: [problem(0, 0, "file-too-large", {size: (byteCount(text) / 1e6).toFixed(1), most: (limit / 1e6).toFixed(1)})]};
    }
    if (text.indexOf("PK\u0003\u0004") === 0 || text.indexOf("%PDF") === 0) { return {problems: [problem(0, 0, "not-a-text")]}; }
    if (text.charAt(0) === "\ufeff") { text = text.slice(1); }
    text = text.replace(/\r\n?/g, "\n");
    UNWANTED.lastIndex = 0;
    while (problems.length < 20 && (found = UNWANTED.exec(text))) {
      if (found[1]) { found.index += found[1].length; }
      before = text.slice(0, found.index);
      line = before.split("\n").length;
      code = "000" + text.charCodeAt(found.index).toString(16).toUpperCase();
      problems.push(problem(line, letterCount(before.slice(before.lastIndexOf("\n") + 1)) + 1,
        text.charAt(found.index) === "\ufffd" ? "lost-letter" : "unseen-character", {code: "U+" + code.slice(-4)}));
    }
    return problems.length ? {problems: problems} : {text: text};
  }

  function separatorOf(text, columns) {
    var first = "", best = null, i, lines = text.split("\n");
    for (i = 0; i < lines.length && !first; i += 1) { if (stripped(lines[i])) { first = lines[i]; } }
    SEPARATORS.forEach(function (sign) {
      var parts = first.split(sign), names = parts.map(function (part) { return folded(stripped(unquoted(stripped(part)))); }), hits = 0;
      columns.forEach(function (column) {
        if (names.indexOf(column.name) >= 0) { hits += 1; }
      });
      if (!best || hits > best.hits || (hits === best.hits && parts.length > best.parts)) { best = {sign: sign, hits: hits, parts: parts.length}; }
    });
    return best.sign;
  }
  /* A line's columns are counted in letters; most lines have none outside the first 65,536. */
  function counter(line) {
    var pairs = /[\ud800-\udbff][\udc00-\udfff]/.test(line), places = null, i, count = 0;
    if (!pairs) { return function (index) { return index; }; }
    places = new Int32Array(line.length + 1);
    for (i = 0; i < line.length; i += 1) {
      places[i] = count;
      if (!(/[\ud800-\udbff]/.test(line.charAt(i)) && /[\udc00-\udfff]/.test(line.charAt(i + 1)))) { count += 1; }
    }
    places[line.length] = count;
    return function (index) { return places[index]; };
  }
  /* Text of a quoted cell, and the line and column behind it; or the problem. */
  function quoted(lines, at, column, separator) {
    var parts = [], line = at, cursor = column + 1, end, rest, gap;
    for (;;) {
      end = lines[line].indexOf('"', cursor);
      if (end < 0) {
        parts.push(lines[line].slice(cursor) + "\n");
        line += 1;
        cursor = 0;
        if (line === lines.length) { return {wrong: problem(at + 1, counter(lines[at])(column) + 1, "open-quote")}; }
        continue;
      }
      parts.push(lines[line].slice(cursor, end));
      if (lines[line].charAt(end + 1) === '"') {
        parts.push('"');
        cursor = end + 2;
        continue;
      }
      rest = lines[line].slice(end + 1);
      gap = 0;
      while (rest.charAt(gap) === " ") { gap += 1; }
      if (gap < rest.length && rest.charAt(gap) !== separator) {
        return {wrong: problem(line + 1, counter(lines[line])(end) + 2, "text-behind-quote")};
      }
      return {text: parts.join(""), line: line, column: end + 1 + gap};
    }
  }
  function cellsOf(text, separator) {
    var lines = text.split("\n"), table = [], at = 0, line, column, row, start, lead, found, end, place;
    while (at < lines.length) {
      line = lines[at];
      place = counter(line);
      column = 0;
      row = [];
      start = at;
      for (;;) {
        lead = column;
        while (line.charAt(lead) === " ") { lead += 1; }
        if (line.charAt(lead) === '"') {
          found = quoted(lines, at, lead, separator);
          if (found.wrong) { return {problems: [found.wrong]}; }
          row.push({text: stripped(found.text), line: at + 1, column: place(lead) + 1});
          column = found.column;
          if (found.line !== at) {
            at = found.line;
            line = lines[at];
            place = counter(line);
          }
        } else {
          end = line.indexOf(separator, column);
          end = end < 0 ? line.length : end;
          row.push({text: stripped(line.slice(column, end)), line: at + 1, column: place(Math.min(lead, end)) + 1});
          column = end;
        }
        if (column >= line.length) { break; }
        column += 1;
      }
      if (row.some(function (cell) { return cell.text !== ""; })) {
        row[0].line = start + 1;
        table.push(row);
      }
      at += 1;
    }
    return {table: table};
  }
  /* A table with a first line of column names: {rows} or {problems}; the same as `read_csv`. */
  function readTable(text, columns, limit) {
    var read = decoded(text, limit || rules.limit), cells, head, order = [], problems = [], rows = [], i, made;
    if (read.problems) { return read; }
    cells = cellsOf(read.text, separatorOf(read.text, columns));
    if (cells.problems) { return cells; }
    if (!cells.table.length) {
      return {problems: [problem(0, 0, "empty-file", {names: columns.filter(function (one) { return one.required; }).map(function (one) { return one.name; }).join(",")})]};
    }
    head = cells.table[0];
    for (i = 0; i < head.length && problems.length <= rules.most_reported; i += 1) {
      made = folded(head[i].text);
      if (!made) { order.push(null); }
      else if (!columns.some(function (one) { return one.name === made; })) {
        problems.push(problem(head[i].line, head[i].column, "unknown-column", {text: head[i].text, names: columns.map(function (one) { return one.name; }).join(", ")}));
        order.push(null);
      } else if (order.indexOf(made) >= 0) {
        problems.push(problem(head[i].line, head[i].column, "duplicate-column", {text: made}));
        order.push(null);
      } else { order.push(made); }
    }
    made = false;
    columns.forEach(function (column) {
      if (column.required && order.indexOf(column.name) < 0) {
        made = true;
        problems.push(problem(head[0].line, 1, "missing-column", {text: column.name}));
      }
    });
    if (made) { return {problems: sorted(few(problems))}; }
    for (i = 1; i < cells.table.length && problems.length <= rules.most_reported; i += 1) {
      rows.push(rowOf(cells.table[i], order, columns, problems));
    }
    if (cells.table.length === 1) { problems.push(problem(1, 1, "no-rows")); }
    return problems.length ? {problems: sorted(few(problems))} : {rows: rows};
  }
  function rowOf(row, order, columns, problems) {
    var made = {line: row[0].line, cells: {}, places: {}}, i;
    columns.forEach(function (column) { made.cells[column.name] = ""; });
    for (i = 0; i < Math.min(row.length, order.length); i += 1) {
      if (order[i] !== null) { made.cells[order[i]] = row[i].text; made.places[order[i]] = row[i].column; }
    }
    for (i = order.length; i < row.length; i += 1) {
      if (row[i].text) {
        problems.push(problem(row[i].line, row[i].column, "too-many-cells", {have: row.length, most: order.length}));
        break;
      }
    }
    columns.forEach(function (column) {
      if (column.filled && order.indexOf(column.name) >= 0 && !made.cells[column.name]) {
        problems.push(problem(row[0].line, made.places[column.name] || 0, "empty-cell", {text: column.name}));
      }
    });
    return made;
  }

  /* The class list: {people: [{name, language}]} or {problems}. */
  function readClassList(text, languages) {
    var read = readTable(text, [{name: "name", required: true, filled: false}, {name: "language", required: false, filled: false}]);
    var problems = [], seen = {}, people;
    if (read.problems) { return read; }
    people = read.rows.map(function (row) {
      var name = tidied(row.cells.name), language = folded(row.cells.language), key = "$" + sameName(name), at = row.places.name || 0;
      if (!name) {
        problems.push(problem(row.line, at, "empty-cell", {text: "name"}));
        return null;
      }
      if (!has(seen, key)) { seen[key] = row.line; }
      if (seen[key] !== row.line) { problems.push(problem(row.line, at, "duplicate-name", {text: name, first: seen[key]})); }
      if (isDigits(name)) { problems.push(problem(row.line, at, "name-is-number", {text: name})); }
      if (byteCount(name) > rules.longest_name) { problems.push(problem(row.line, at, "name-too-long", {most: rules.longest_name, letters: letterCount(name)})); }
      if (language && languages.indexOf(language) < 0) {
        problems.push(problem(row.line, row.places.language || 0, "unknown-language", {text: language, names: languages.join(", ")}));
      }
      return {name: name, language: language || null};
    });
    return problems.length ? {problems: sorted(problems)} : {people: people};
  }

  /* ------------------------------------------------------------------------------------------ making a set */
  /* A value with what a patch puts in the place of its parts. */
  function patched(value, patch) {
    var made, key;
    if (patch === undefined) { return value; }
    if (has(patch, REPLACED)) { return patch[REPLACED]; }
    made = Array.isArray(value) ? value.slice() : {};
    for (key in value) { if (has(value, key)) { made[key] = has(patch, key) ? patched(value[key], patch[key]) : value[key]; } }
    return made;
  }
  /* A question or scenario in a language of the course. */
  function localized(data, kind, id, language) {
    var patches = data.patches[language];
    return patches ? patched(data[kind][id], patches[kind][id]) : data[kind][id];
  }
  function chosen(bank, count, seed) {
    var drawn;
    if (!(count > 0 && count < bank.length)) { return bank; }
    drawn = formula().stream(seed + "|questions").shuffle(bank.map(function (id, place) { return place; })).slice(0, count);
    return drawn.sort(function (a, b) { return a - b; }).map(function (place) { return bank[place]; });
  }
  /* A question whose drawing letters its own places, with the letters of one learner; any other as it is. */
  function dealt(data, question, seed) {
    var found = data.dealt[question.id], places = {}, made = {}, order, deal, key;
    if (!found) { return question; }
    deal = 1 + formula().stream(seed + "|" + question.id + "|areas").below(rules.deals);
    question.areas.forEach(function (area, place) { places["$" + area.name] = place; });
    order = formula().stream("areas|" + found.figure + "|" + deal).shuffle(found.names).map(function (name) { return places["$" + name]; });
    function mixed(values) { return order.map(function (place) { return values[place]; }); }
    for (key in question) { if (has(question, key)) { made[key] = question[key]; } }
    made.areas = order.map(function (place, at) { return {letter: rules.letters.charAt(at), name: question.areas[place].name}; });
    made.labels = mixed(question.labels);
    made.why = mixed(question.why);
    made.right = order.map(function (place, at) { return question.right.indexOf(place) >= 0 ? at : -1; }).filter(function (at) { return at >= 0; });
    return made;
  }
  /* What is asked: the bank and the scenarios of a module, of these competencies where some are named. */
  function asked(data, module, competencies) {
    var found = data.modules[module];
    function wanted(competency) { return !competencies.length || competencies.indexOf(competency) >= 0; }
    return {
      bank: found.questions.filter(function (id) { return wanted(data.questions[id].competency); }),
      scenarios: found.scenarios.filter(function (id) {
        return data.scenarios[id].parts.every(function (part) { return wanted(part.competency); });
      })
    };
  }
  /* Makes a set piece by piece, so that a large class does not stop the page: {done, count, step(n), record()}. */
  function maker(data, people, wish) {
    var found = asked(data, wish.module, wish.competencies), scenarios = wish.questions ? [] : found.scenarios;
    var learners = [], languages = {}, self = {done: 0, count: people.length};
    function inLanguage(language) {
      var made;
      if (!has(languages, language)) {
        made = {questions: {}, scenarios: scenarios.map(function (id) { return localized(data, "scenarios", id, language); })};
        found.bank.forEach(function (id) { made.questions[id] = localized(data, "questions", id, language); });
        languages[language] = made;
      }
      return languages[language];
    }
    function learner(person, number) {
      var seed = wish.seed + "|" + person.name, spoken = person.language || wish.language, texts = inLanguage(spoken);
      return {number: number, name: person.name, language: spoken, items: chosen(found.bank, wish.questions, seed).map(function (id) {
        return plain(Tankschool.marker.item(dealt(data, texts.questions[id], seed), seed), rules.schema.$defs.Learner.properties.items.items);
      }).concat(texts.scenarios)};
    }
    self.step = function (most) {
      var end = Math.min(self.count, self.done + most);
      for (; self.done < end; self.done += 1) { learners.push(learner(people[self.done], self.done + 1)); }
      return self.done < self.count;
    };
    self.record = function () {
      var texts = {};
      found.bank.concat(scenarios).forEach(function (id) { texts[id] = data.texts[id]; });
      return {
        format: rules.format, tool: data.tool, course: data.course, course_version: data.course_version, module: wish.module, seed: wish.seed,
        questions: wish.questions, language: wish.language, texts: texts, formulas: formulasHash(data, learners), learners: learners,
        competencies: wish.competencies.slice().sort()
      };
    };
    return self;
  }
  /* Every question with its printed number; a scenario's parts are numbered on, and come with their scenario. */
  function labelled(learner) {
    var rows = [];
    learner.items.forEach(function (item) {
      (item.kind === "scenario" ? item.parts : [item]).forEach(function (part) {
        rows.push({label: String(rows.length + 1), item: part, scenario: item.kind === "scenario" ? item : null});
      });
    });
    return rows;
  }
  function formulasHash(data, learners) {
    var asks = {}, names = {}, lines = [], formulas = data.formulas;
    learners.forEach(function (learner) {
      labelled(learner).forEach(function (row) {
        var item = row.item.kind === "spoken" ? row.item.answer : row.item;
        if (item.kind === "number") { asks[item.asks] = true; }
      });
    });
    Object.keys(asks).sort().forEach(function (name) {
      if (!has(formulas.needs, name)) { lines.push("missing " + name); return; }
      formulas.needs[name].forEach(function (need) { names[need] = true; });
    });
    Object.keys(names).sort().forEach(function (name) { if (has(formulas.lines, name)) { lines.push(formulas.lines[name]); } });
    formulas.mistakes.forEach(function (row) { if (has(names, row[0])) { lines.push(row[1]); } });
    return formula().hash(lines.join("\n"));
  }

  /* ------------------------------------------------------------ the record as a file, by the shape of record.py */
  function shapeOf(shape, value) {
    var name;
    while (shape.$ref) { shape = rules.schema.$defs[shape.$ref.split("/").pop()]; }
    if (shape.discriminator && value && typeof value === "object") {
      name = value.kind;
      return typeof name === "string" && has(shape.discriminator.mapping, name) ? shapeOf({$ref: shape.discriminator.mapping[name]}, value) : null;
    }
    if (shape.anyOf) {
      return shape.anyOf.filter(function (one) { return (one.type === "null") === (value === null); }).map(function (one) { return shapeOf(one, value); })[0] || null;
    }
    return shape;
  }
  /* A value with the fields of its shape and no others. */
  function plain(value, shape) {
    var found = shapeOf(shape, value), made = {};
    if (found.type === "array") { return value.map(function (one) { return plain(one, found.items); }); }
    if (found.type !== "object" || !found.properties) { return value; }
    Object.keys(found.properties).forEach(function (name) {
      made[name] = has(value, name) ? plain(value[name], found.properties[name]) : found.properties[name]["default"];
    });
    return made;
  }
  /* A number as Python writes it, so that the file and its hash are the same there. */
  function decimal(value) {
    var parts, power;
    if (value === 0) { return 1 / value < 0 ? "-0.0" : "0.0"; }
    parts = value.toExponential().split("e");
    power = Number(parts[1]);
    if (power >= -4 && power < 16) { return String(value) + (Math.floor(value) === value ? ".0" : ""); }
    return parts[0] + "e" + (power < 0 ? "-" : "+") + (Math.abs(power) < 10 ? "0" : "") + Math.abs(power);
  }
  function written(value, shape, space) {
    var found = shapeOf(shape, value), inner = space + " ", parts;
    if (value === null) { return "null"; }
    if (Array.isArray(value)) {
      if (!value.length) { return "[]"; }
      return "[\n" + inner + value.map(function (one) { return written(one, found.items, inner); }).join(",\n" + inner) + "\n" + space + "]";
    }
    if (typeof value === "object") {
      parts = found.properties ? Object.keys(found.properties).filter(function (name) { return has(value, name); }) : Object.keys(value);
      if (!parts.length) { return "{}"; }
      return "{\n" + inner + parts.map(function (name) {
        return JSON.stringify(name) + ": " + written(value[name], found.properties ? found.properties[name] : found.additionalProperties, inner);
      }).join(",\n" + inner) + "\n" + space + "}";
    }
    return typeof value === "number" && found.type === "number" ? decimal(value) : JSON.stringify(value);
  }
  function toJson(record) {
    var kept = {}, name;
    for (name in record) { if (has(record, name) && !(name === "competencies" && !record[name].length)) { kept[name] = record[name]; } }
    return written(kept, rules.schema, "") + "\n";
  }
  function setId(text) { return formula().hash(text).slice(0, 8); }

  /* Whether a value has a shape; the place of the first fault, or null. */
  function faultIn(value, shape, place) {
    var found = shapeOf(shape, value), names, i, fault, name;
    if (!found) { return place; }
    if (has(found, "const")) { return value === found["const"] ? null : place; }
    if (found["enum"]) { return found["enum"].indexOf(value) >= 0 ? null : place; }
    if (found.type === "null") { return value === null ? null : place; }
    if (found.type === "string") { return typeof value === "string" ? null : place; }
    if (found.type === "boolean") { return typeof value === "boolean" ? null : place; }
    if (found.type === "number" || found.type === "integer") {
      if (typeof value !== "number" || !isFinite(value) || (found.type === "integer" && Math.floor(value) !== value)) { return place; }
      return has(found, "minimum") && value < found.minimum ? place : null;
    }
    if (found.type === "array") {
      if (!Array.isArray(value)) { return place; }
      for (i = 0; i < value.length; i += 1) {
        fault = faultIn(value[i], found.items, place + "." + i);
        if (fault) { return fault; }
      }
      return null;
    }
    if (!value || typeof value !== "object" || Array.isArray(value)) { return place; }
    names = Object.keys(value);
    for (i = 0; i < (found.required || []).length; i += 1) { if (!has(value, found.required[i])) { return place + "." + found.required[i]; } }
    for (i = 0; i < names.length; i += 1) {
      name = names[i];
      if (found.properties && !has(found.properties, name)) { return place + "." + name; }
      fault = faultIn(value[name], found.properties ? found.properties[name] : found.additionalProperties, place + "." + name);
      if (fault) { return fault; }
    }
    return found.properties && has(value, "kind") && !isWhole(value) ? place : null;
  }
  function isOrder(order, count) {
    return order.length === count && order.slice().sort(function (a, b) { return a - b; }).every(function (each, place) { return each === place; });
  }
  /* Lists that belong together must fit: a damaged record would else stop the marking. */
  function isWhole(item) {
    function within(places, count) { return places.every(function (place) { return place >= 0 && place < count; }); }
    if (item.kind === "number") { return !item.rule || (item.grain >= 1e-9 && item.grain <= 1e9); }
    if (item.kind === "choice") {
      return isOrder(item.order, item.options.length) && item.why.length === item.options.length && within(item.right, item.options.length) &&
        (!item.mistakes || !item.mistakes.length || item.mistakes.length === item.options.length);
    }
    if (item.kind === "order") { return isOrder(item.order, item.steps.length); }
    if (item.kind === "match") { return item.left.length === item.right.length && isOrder(item.order, item.left.length); }
    if (item.kind === "spot") {
      return item.labels.length === item.areas.length && item.why.length === item.areas.length && within(item.right, item.areas.length);
    }
    return true;
  }
  /* A saved record: {record} or {problems}; nothing of a damaged one is taken. */
  function readRecord(text) {
    var data, fault;
    text = String(text);
    if (text.length > rules.largest_record) {
      return {problems: [problem(0, 0, "file-too-large", {size: (text.length / 1e6).toFixed(1), most: (rules.largest_record / 1e6).toFixed(1)})]};
    }
    try { data = JSON.parse(text.replace(/^\ufeff/, "")); } catch (error) { return {problems: [problem(0, 0, "not-json")]}; }
    if (!data || typeof data !== "object" || Array.isArray(data)) { return {problems: [problem(1, 1, "not-a-record", {text: "-"})]}; }
    if (typeof data.format === "number" && data.format > rules.format) { return {problems: [problem(1, 1, "newer-format", {format: data.format})]}; }
    try { fault = faultIn(data, rules.schema, ""); } catch (error) { fault = ".-"; }
    if (fault !== null) { return {problems: [problem(0, 0, "not-a-record", {text: fault.slice(1, 80) || "-"})]}; }
    return {record: plain(data, rules.schema)};
  }

  /* --------------------------------------------------------------------------------------------- marking a set */
  /* Typed answers: {answers: {"number|label": text}} or {problems}. */
  function readAnswers(text, record) {
    var columns = [{name: "learner", required: true, filled: true}, {name: "question", required: true, filled: true}, {name: "answer", required: true, filled: false}];
    var read = readTable(text, columns, rules.largest_answers), learners = {}, labels = {}, found = {}, lines = {}, problems = [];
    if (read.problems) { return read; }
    record.learners.forEach(function (learner) { learners["$" + learner.number] = learner; });
    record.learners.forEach(function (learner) { learners["$" + sameName(learner.name)] = learner; });
    function labelsOf(learner) {
      if (!has(labels, learner.number)) {
        labels[learner.number] = {count: 0, of: {}};
        labelled(learner).forEach(function (row) {
          labels[learner.number].count += 1;
          labels[learner.number].of["$" + row.label] = row.label;
          labels[learner.number].of["$" + (row.scenario ? row.scenario.id + "/" + row.item.id : row.item.id)] = row.label;
        });
      }
      return labels[learner.number];
    }
    read.rows.forEach(function (row) {
      var named = "$" + sameName(row.cells.learner), numbered = "$" + Tankschool.marker.cleaned(row.cells.learner), learner, own, label, place;
      learner = has(learners, named) ? learners[named] : has(learners, numbered) ? learners[numbered] : null;
      if (!learner) {
        problems.push(problem(row.line, row.places.learner || 0, "unknown-learner", {text: row.cells.learner, count: record.learners.length}));
        return;
      }
      own = labelsOf(learner);
      label = "$" + Tankschool.marker.cleaned(row.cells.question);
      if (!has(own.of, label)) {
        problems.push(problem(row.line, row.places.question || 0, "unknown-question", {text: row.cells.question, name: learner.name, count: own.count}));
        return;
      }
      label = own.of[label];
      place = learner.number + "|" + label;
      if (has(found, place) && found[place] !== row.cells.answer) {
        problems.push(problem(row.line, row.places.answer || 0, "two-answers", {name: learner.name, label: label, text: found[place], first: lines[place]}));
        return;
      }
      found[place] = row.cells.answer;
      if (!has(lines, place)) { lines[place] = row.line; }
    });
    return problems.length ? {problems: sorted(problems)} : {answers: found};
  }
  /* Where the formulas are others than those of the print, nothing is carried forward. */
  function markAlone(item, text) {
    var pieces;
    if (item.kind === "spoken") { return markAlone(item.answer, text); }
    if (item.kind !== "number") { return Tankschool.marker.markTyped(item, text); }
    pieces = item.steps.length ? text.split(";") : [text];
    return Tankschool.marker.markNumber(item, pieces[pieces.length - 1]);
  }
  function markLearner(learner, answers, same) {
    var linked = {}, rows = labelled(learner);
    function typed(label) { return has(answers, learner.number + "|" + label) ? answers[learner.number + "|" + label] : ""; }
    if (same) {
      learner.items.forEach(function (item) {
        var texts = {}, made = {};
        if (item.kind !== "scenario") { return; }
        rows.forEach(function (row) { if (row.scenario === item) { texts[row.item.id] = typed(row.label); } });
        Tankschool.marker.markScenario(item, texts).forEach(function (mark) { made[mark.item] = mark; });
        linked[item.id] = made;
      });
    }
    rows = rows.map(function (row) {
      var mark = row.scenario && same ? linked[row.scenario.id][row.item.id]
        : same ? Tankschool.marker.markTyped(row.item, typed(row.label)) : markAlone(row.item, typed(row.label));
      return {label: row.label, item: row.item, mark: mark};
    });
    return {learner: learner, marks: rows,
      points: rows.reduce(function (total, row) { return total + row.mark.points; }, 0),
      most: rows.reduce(function (total, row) { return total + row.mark.most; }, 0)};
  }
  function markSet(data, record, answers) {
    var same = formulasHash(data, record.learners) === record.formulas;
    return {same_formulas: same, learners: record.learners.map(function (learner) { return markLearner(learner, answers, same); })};
  }

  Tankschool.printedSet = {
    load: function (data) { rules = data; }, readTable: readTable, readClassList: readClassList, readAnswers: readAnswers,
    readRecord: readRecord, asked: asked, maker: maker, toJson: toJson, setId: setId, labelled: labelled, markSet: markSet, sameName: sameName
  };
}(this));
