/* Draws questions and marks answers in the page: the twin of the Python files beside it (draw, demand, numbers, marking,
 * letters, scenario, help).
 * A classic script in old, conservative JavaScript, so that it also runs in the browsers of old phones and from a file.
 * It needs formula.js, and page_data.py writes the tables of signs and units behind it. */
(function (root) {
  "use strict";
  var Tankschool = root.Tankschool = root.Tankschool || {};
  var HAIR = 1e-9;
  var MOST_TRIES = 200;
  var CROSSING = 64;
  var tables = null;

  function formula() { return Tankschool.formula; }
  function has(object, name) { return Object.prototype.hasOwnProperty.call(object, name); }
  function copy(object) {
    var made = {}, name;
    for (name in object) { if (has(object, name)) { made[name] = object[name]; } }
    return made;
  }

  /* What follows from these numbers, without a look at ranges; null where nothing does. */
  function workedFrom(asks, seeds, wrong) {
    var value;
    try { value = formula().evaluate(seeds, [asks], wrong || [])[asks]; } catch (error) { return null; }
    return typeof value === "number" && isFinite(value) ? value : null;
  }

  /* ------------------------------------------------------------------ how far off is still right */
  function fits(item, answer, value) {
    var size = Math.abs(value);
    return Math.abs(answer - value) <= Math.max(item.absolute, item.relative * size) * (1 + HAIR) + HAIR * size;
  }
  function tellsApart(item, one, other) {
    var size = Math.max(Math.abs(one), Math.abs(other));
    var room = 2 * Math.max(item.absolute, item.relative * size) * (1 + HAIR) + 2 * HAIR * size;
    return Math.abs(one - other) > room;
  }
  function isRight(item, value) { return fits(item, value, item.key) || fits(item, value, item.rounded); }
  function inside(value, low, high) {
    var slack = HAIR * Math.max(Math.abs(low), Math.abs(high));
    return value >= low - slack && value <= high + slack;
  }

  /* ----------------------------------------------------------------------------- numbers as typed */
  var SPACES = /[ \t\n\r\f\v\u00a0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000]+/g;
  var UNSEEN = /[\u200b-\u200d\u2060\ufeff\u093c]/g;
  var BEYOND = /[\ud800-\udfff]/;
  var TRAILING = /[ .,;\u0964]+$/;
  var FEET_WORDS = "ft|foot|feet|\u092b\u0941\u091f|\u092b\u0940\u091f|\u092b\u093f\u091f";
  var INCH_WORDS = "in|inch|inches|\u0907\u0902\u091a|\u0907\u0928\u094d\u091a";
  var FEET_INCHES = new RegExp(
    "^([0-9]{1,6}) ?(?:'|(?:" + FEET_WORDS + ")\\.?) ?[-,]? ?" +
    "([0-9]{1,2}(?:[.,][0-9]{1,6})?|[0-9]{1,2} [0-9]{1,3} ?/ ?[0-9]{1,3}|[0-9]{1,3} ?/ ?[0-9]{1,3}) ?" +
    "(?:\"|''|(?:" + INCH_WORDS + ")\\.?)?$");
  var TWO_NUMBERS = /^([0-9]{1,6}) ?- ?([0-9]{1,2})$/;
  var HYPHEN_FRACTION = /^([0-9]+)-([0-9]+ ?\/ ?[0-9]+)/;
  var PARTS = /^([+-]?) ?([0-9.,](?:[0-9., \/]*[0-9.,])?) ?(.*)$/;
  var FRACTION = /^(?:([0-9]+) )?([0-9]+) ?\/ ?([0-9]+)$/;
  var PLAIN = /^(?:[0-9]+\.?[0-9]*|\.[0-9]+)$/;
  var GROUPED = new RegExp(
    "^(?:[1-9][0-9]{0,2}(?:,[0-9]{3})+|[1-9][0-9]?(?:,[0-9]{2})+,[0-9]{3}" +
    "|[1-9][0-9]{0,2}(?: [0-9]{3})+|[1-9][0-9]?(?: [0-9]{2})+ [0-9]{3})(?:\\.[0-9]+)?$");
  var ONE_GROUP = /^[0-9]+,[0-9]{3}$/;
  var DECIMAL_COMMA = /^[0-9]*,[0-9]+$/;
  var INCHES_AFTER_POINT = /^([0-9]+)[.,]([0-9]{1,2})$/;
  var LETTER = /^[a-z\u0900-\u097f%]/;

  function trimmed(text) { return text.replace(/^ +| +$/g, ""); }
  function cleaned(text) {
    var made = "", i, letter;
    for (i = 0; i < text.length; i += 1) {
      letter = text.charAt(i);
      made += has(tables.signs, letter) ? tables.signs[letter] : letter;
    }
    made = trimmed(made.replace(UNSEEN, "").replace(SPACES, " "));
    if (made.charAt(0) === "=") { made = trimmed(made.slice(1)); }
    return made.replace(TRAILING, "");
  }
  function isBlank(text) { return text.replace(UNSEEN, "").replace(SPACES, "") === ""; }
  function ask(reason, first, second) { return { ask: { reason: reason, first: first || "", second: second || "" } }; }

  function digits(body) { return (body.match(/[0-9]/g) || []).length; }
  function magnitude(body) {
    var found, whole, over, under, grouped;
    if (digits(body) > tables.mostDigits || digits(body) === 0) { return null; }
    found = FRACTION.exec(body);
    if (found) {
      whole = found[1] ? parseInt(found[1], 10) : 0;
      over = parseInt(found[2], 10);
      under = parseInt(found[3], 10);
      return under === 0 || (found[1] && over >= under) ? null : [whole + over / under];
    }
    if (PLAIN.test(body)) { return [parseFloat(body)]; }
    if (GROUPED.test(body)) {
      grouped = parseFloat(body.replace(/[, ]/g, ""));
      return ONE_GROUP.test(body) ? [grouped, parseFloat(body.replace(",", "."))] : [grouped];
    }
    if (DECIMAL_COMMA.test(body)) { return [parseFloat(body.replace(",", "."))]; }
    return null;
  }
  function inUnit(value, typed, asked) {
    var source, goal;
    if (typed === asked) { return value; }
    source = has(tables.units, typed) ? tables.units[typed] : null;
    goal = has(tables.units, asked) ? tables.units[asked] : null;
    if (!source || !goal || source[0] !== goal[0]) { return null; }
    return value * source[1] / goal[1];
  }
  function feetAndInches(feet, text, unit) {
    var readings = magnitude(text), value;
    if (readings === null || readings[0] >= 12) { return ask("not_a_number"); }
    value = inUnit(feet + readings[0] / 12, "foot", unit);
    return value === null ? ask("other_kind", "ft") : { value: value, unit: "foot", other: null };
  }

  /* One number as a learner types it: {value, unit, other}, or {ask}, or {blank: true}. Never throws. */
  function parse(text, unit) {
    var line, feet, parts, sign, readings, word, spelled, typed, name, inFeet, value;
    text = String(text === null || text === undefined ? "" : text);
    unit = unit || "";
    if (isBlank(text)) { return { blank: true }; }
    if (BEYOND.test(text) || text.length > tables.longest) { return ask("not_a_number"); }
    line = cleaned(text);
    feet = FEET_INCHES.exec(line) || (unit === "foot" ? TWO_NUMBERS.exec(line) : null);
    if (feet) { return feetAndInches(parseInt(feet[1], 10), feet[2], unit); }
    parts = PARTS.exec(line.replace(HYPHEN_FRACTION, "$1 $2"));
    if (!parts) { return ask("not_a_number"); }
    sign = parts[1] === "-" ? -1 : 1;
    word = parts[3];
    readings = magnitude(parts[2]);
    if (readings === null) { return ask("not_a_number"); }
    typed = null;
    if (word) {
      spelled = word.replace(/[ .\u0970\^*]/g, "");
      if (!has(tables.spellings, spelled)) {
        return LETTER.test(word) && digits(word) === 0 ? ask("unknown_unit", word) : ask("not_a_number");
      }
      typed = tables.spellings[spelled];
    }
    name = typed === null ? unit : typed;
    inFeet = name === "foot" ? INCHES_AFTER_POINT.exec(parts[2]) : null;
    if (inFeet && parseInt(inFeet[2], 10) >= 1 && parseInt(inFeet[2], 10) <= 11) {
      return ask("feet", inFeet[1], String(parseInt(inFeet[2], 10)));
    }
    value = inUnit(sign * readings[0], name, unit);
    if (value === null) { return ask("other_kind", word); }
    return { value: value, unit: typed, other: readings.length > 1 ? inUnit(sign * readings[1], name, unit) : null };
  }

  /* -------------------------------------------------------------------------------------- drawing */
  function grouped(number, language) {
    var step = language === "hi" ? 2 : 3;
    var sign = number.charAt(0) === "-" ? "\u2212" : "";
    var plain = sign ? number.slice(1) : number;
    var point = plain.indexOf(".") < 0 ? plain.length : plain.indexOf(".");
    var head = plain.slice(0, point), tail = head.slice(-3), parts = [];
    head = head.slice(0, -3);
    while (head) { parts.unshift(head.slice(-step)); head = head.slice(0, -step); }
    return sign + parts.concat([tail]).join(",") + plain.slice(point);
  }
  /* A number and its unit's word, which may be another one after 1; in Hindi after less than 1 too. */
  function withWord(about, plain, language) {
    var size = Number(plain), word = about.unit_word;
    if (has(about, "unit_for_one") && (plain === "1" || (language === "hi" && size >= 0 && size <= 1))) {
      word = about.unit_for_one;
    }
    return word ? grouped(plain, language) + "\u00a0" + word : grouped(plain, language);
  }
  function fill(question, givens) {
    var entries = {}, i;
    for (i = 0; i < question.parameters.length; i += 1) {
      entries[question.parameters[i].name] = question.parameters[i];
    }
    return question.text.replace(/\{([a-z][a-z0-9_]*)\}/g, function (slot, name) {
      if (!has(givens, name)) { return slot; }
      var plain = formula().showFull(givens[name]);
      return has(entries, name) ? withWord(entries[name], plain, question.language) : grouped(plain, question.language);
    });
  }

  /* An answer in the form that a rule asks for: rounding.py. */
  function ruled(value, rule, grain) {
    var parts, whole;
    if (!rule || value === null) { return value; }
    parts = value / grain;
    if (rule === "up") { whole = Math.ceil(parts - HAIR); }
    else if (rule === "down") { whole = Math.floor(parts + HAIR); }
    else { whole = (parts < 0 ? -1 : 1) * Math.floor(Math.abs(parts) + 0.5 + HAIR); }
    return whole * grain + 0;
  }
  /* Answers of someone who rounds every step as printed, by step; null where a step leaves its range. */
  function roundedAnswers(question, givens, right) {
    var values = copy(givens), made = {}, i, step, value;
    for (i = 0; i < question.steps.length; i += 1) {
      step = question.steps[i];
      if (!inside(right[step.name], step.low, step.high)) { return null; }
      value = workedFrom(step.name, values);
      if (value === null) { return null; }
      made[step.name] = value;
      values[step.name] = parseFloat(formula().show(value, step.places));
    }
    return made;
  }
  /* What a count had to round to a whole number: the formula is worked out once more, and its rounding watched. */
  function crossings(name, right) {
    var F = formula(), up = F.wholeUp, down = F.wholeDown, seeds = copy(right), found = 0;
    function watching(rounding) {
      return function (x) {
        if (Math.abs(x - Math.round(x)) > HAIR) { found += 1; }
        return rounding(x);
      };
    }
    delete seeds[name];
    F.wholeUp = watching(up);
    F.wholeDown = watching(down);
    try { workedFrom(name, seeds); } finally { F.wholeUp = up; F.wholeDown = down; }
    return found;
  }
  /* The code of how much rounding these numbers demand: demand.py. */
  function demandOf(question, right) {
    var code = 0, i, step, value, shown;
    for (i = 0; i < question.steps.length; i += 1) {
      step = question.steps[i];
      value = right[step.name];
      if (step.counted) { code += CROSSING * crossings(step.name, right); }
      shown = parseFloat(formula().show(value, step.places));
      if (Math.abs(shown - value) > HAIR * Math.max(1, Math.abs(value)) && !(step.counted && step.places === 0)) {
        code += 1;
      }
    }
    return code;
  }
  /* What misconceptions give here, without those that give nothing. */
  function mistaken(names, asks, givens, rule, grain) {
    var found = {}, i, value;
    for (i = 0; i < names.length; i += 1) {
      value = ruled(workedFrom(asks, givens, [names[i]]), rule, grain);
      if (value !== null) { found[names[i]] = value; }
    }
    return found;
  }
  function numberItem(about, text, givens, exact, rounded) {
    var rule = about.rule || "", grain = about.grain || 0, key = ruled(exact, rule, grain);
    return {
      kind: "number", id: about.id, competency: about.competency, text: text, asks: about.asks, unit: about.unit,
      places: about.places, low: about.low, high: about.high, givens: givens, key: key,
      shown_key: formula().show(key, about.places), rounded: ruled(rounded, rule, grain),
      absolute: about.absolute, relative: about.relative, wrong: {}, also: {}, aids: about.aids || [],
      units: about.units || [], rule: rule, grain: grain, exact: exact, steps: []
    };
  }
  function creditSteps(question, givens, right, rounded) {
    return question.credit.map(function (part) {
      var about = copy(part), made;
      about.competency = question.competency;
      made = numberItem(about, part.text, {}, right[part.asks], rounded[part.asks]);
      made.wrong = mistaken(part.misconceptions, part.asks, givens);
      made.also = mistaken(part.also, part.asks, givens);
      return made;
    });
  }
  function candidate(question, givens) {
    var right, rounded, made, names = question.misconceptions, i, j, value;
    for (i = 0; i < question.parameters.length; i += 1) {
      if (!inside(givens[question.parameters[i].name], question.parameters[i].low, question.parameters[i].high)) {
        return null;
      }
    }
    try { right = formula().evaluate(givens, [question.asks], []); } catch (error) { return null; }
    rounded = roundedAnswers(question, givens, right);
    if (rounded === null) { return null; }
    made = numberItem(question, fill(question, givens), givens, right[question.asks], rounded[question.asks]);
    if ((made.rule || question.count) && Math.abs(made.rounded - made.key) >= 0.5 * (made.rule ? made.grain : 1)) {
      return null;
    }
    for (i = 0; i < names.length; i += 1) {
      value = ruled(workedFrom(question.asks, givens, [names[i]]), made.rule, made.grain);
      if (value === null || !tellsApart(question, value, made.key) || !tellsApart(question, value, made.rounded)) {
        return null;
      }
      for (j = 0; j < i; j += 1) { if (!tellsApart(question, value, made.wrong[names[j]])) { return null; } }
      made.wrong[names[i]] = value;
    }
    if (demandOf(question, right) !== question.demand) { return null; }
    made.also = mistaken(question.also, question.asks, givens, made.rule, made.grain);
    made.steps = creditSteps(question, givens, right, rounded);
    return made;
  }
  function variant(question, seed) {
    var stream = formula().stream(seed + "|" + question.id), tries, i, givens, choices, made;
    for (tries = 0; tries < MOST_TRIES; tries += 1) {
      givens = {};
      for (i = 0; i < question.parameters.length; i += 1) {
        choices = question.parameters[i].choices;
        givens[question.parameters[i].name] = choices[stream.below(choices.length)];
      }
      made = candidate(question, givens);
      if (made !== null) { return made; }
    }
    throw new Error(question.id + ": no fair numbers among " + MOST_TRIES + " candidates");
  }
  function upTo(count) {
    var made = [], i;
    for (i = 0; i < count; i += 1) { made.push(i); }
    return made;
  }
  function mixed(stream, count) {
    var made;
    do { made = stream.shuffle(upTo(count)); } while (made.join() === upTo(count).join());
    return made;
  }
  /* A worked-out option as print shows it: what would be a count but came out broken keeps two decimals. */
  function option(value, places) {
    return formula().show(value, places === 0 && Math.abs(value - Math.round(value)) > HAIR ? 2 : places);
  }
  /* Options that were worked out: the right number first, then what each misconception gives. */
  function numbersToChoose(question, seed) {
    var drawn = variant(question, seed), answers = [drawn.key], mistakes = [""], name;
    for (name in drawn.wrong) {
      if (has(drawn.wrong, name)) { answers.push(drawn.wrong[name]); mistakes.push(name); }
    }
    return {
      kind: "choice", id: question.id, competency: question.competency, text: drawn.text, several: false,
      options: answers.map(function (value) {
        return withWord(question, option(value, question.places), question.language);
      }),
      right: [0], why: answers.map(function () { return ""; }),
      order: formula().stream(seed + "|" + question.id + "|options").shuffle(upTo(answers.length)),
      mistakes: mistakes, asks: question.asks, givens: drawn.givens
    };
  }
  /* Lines that a helper reads aloud; and the same without the marks for pauses, pointing and reading twice. */
  function scriptLines(text) {
    return text.split("\n").map(trimmed).filter(function (line) { return line !== ""; });
  }
  function spoken(question, seed) {
    var answer = copy(question.answer), drawn, script = question.script;
    if (answer.kind === "number") {
      drawn = variant(answer, seed);
      answer.text = script;
      script = fill(answer, drawn.givens);
      answer = drawn;
    } else { answer = item(answer, seed); }
    return {
      kind: "spoken", id: question.id, competency: question.competency, text: answer.text,
      script: scriptLines(script), answer: answer
    };
  }
  /* A question of any kind as one learner gets it: the same shapes as items.py. */
  function item(question, seed) {
    var stream, made;
    if (question.kind === "number") { return variant(question, seed); }
    if (question.kind === "choice" && question.parameters) { return numbersToChoose(question, seed); }
    if (question.kind === "spoken") { return spoken(question, seed); }
    if (question.kind === "scenario" || question.kind === "spot") { return question; }
    stream = formula().stream(seed + "|" + question.id);
    made = copy(question);
    made.order = question.kind === "choice" ? stream.shuffle(upTo(question.options.length))
      : mixed(stream, (question.steps || question.left).length);
    return made;
  }

  /* -------------------------------------------------------------------------------------- marking */
  function mark(made, verdict, more) {
    var found = {
      item: made.id, competency: made.competency, verdict: verdict, value: null, misconceptions: [], why: [], ask: null,
      slip: "", step_points: 0, step_most: 0
    };
    var name;
    for (name in more || {}) { if (has(more, name)) { found[name] = more[name]; } }
    return withPoints(found);
  }
  /* A right answer earns all points; another one what its steps earn. */
  function withPoints(found) {
    found.most = 1 + found.step_most;
    found.points = found.verdict === "right" ? found.most
      : (found.verdict === "right_from_earlier" ? 1 : 0) + found.step_points;
    return found;
  }
  function isGood(found) { return found.verdict === "right" || found.verdict === "right_from_earlier"; }
  function counted(made, found) {
    found.step_most = (made.steps || []).length;
    return withPoints(found);
  }
  function askBack(made, reason) { return mark(made, "ask_back", ask(reason)); }
  function unread(made, read) {
    return counted(made, read.blank ? mark(made, "blank") : mark(made, "ask_back", { ask: read.ask }));
  }
  function twoReadings(made, read) {
    var absurd;
    if (read.other === null) { return null; }
    absurd = !(made.low <= read.value && read.value <= made.high) && made.low <= read.other && read.other <= made.high;
    if (!absurd && !isRight(made, read.other)) { return null; }
    return ask("two_readings", formula().showFull(read.value), formula().showFull(read.other));
  }
  /* Every misconception whose answer this is. */
  function diagnose(made, value, answers) {
    var found = [], name, wrong = answers || made.wrong;
    for (name in wrong) {
      if (has(wrong, name) && wrong[name] !== null && fits(made, value, wrong[name])) { found.push(name); }
    }
    return found;
  }
  /* A typed number, with its unit where the unit is part of the answer. */
  function readAnswer(made, text) {
    var read = parse(text, made.unit);
    return made.units && made.units.length && !read.blank && !read.ask && read.unit === null ? ask("unit_missing") : read;
  }
  /* Whether a wrong number is the right one, left unrounded or rounded to something else. */
  function slipOf(made, value) {
    var parts;
    if (!made.rule || made.exact === null || made.exact === undefined) { return ""; }
    if (Math.abs(value - made.exact) >= made.grain * (1 + HAIR)) { return ""; }
    parts = value / made.grain;
    return Math.abs(parts - Math.round(parts)) < 1e-6 ? "other_rounding" : "not_rounded";
  }
  function markNumber(made, text) {
    var read = readAnswer(made, text), twice;
    if (read.blank || read.ask) { return unread(made, read); }
    if (isRight(made, read.value)) { return counted(made, mark(made, "right", { value: read.value })); }
    twice = twoReadings(made, read);
    if (twice) { return unread(made, twice); }
    return counted(made, mark(made, "not_yet", {
      value: read.value, slip: slipOf(made, read.value),
      misconceptions: diagnose(made, read.value).concat(diagnose(made, read.value, made.also || {}))
    }));
  }
  function sortedNumbers(list) { return list.slice().sort(function (a, b) { return a - b; }); }
  function inOrder(chosen) {
    var picked = [], sorted = sortedNumbers(chosen), i;
    for (i = 0; i < sorted.length; i += 1) { if (i === 0 || sorted[i] !== sorted[i - 1]) { picked.push(sorted[i]); } }
    return picked;
  }
  /* Positions that were chosen among options, or among the areas of a drawing. */
  function markPicked(made, chosen, count) {
    var picked = inOrder(chosen), why = [], named = [], mistakes = made.mistakes || [], i;
    if (!picked.length) { return mark(made, "blank"); }
    if (picked[0] < 0 || picked[picked.length - 1] >= count) { return askBack(made, "unknown_letter"); }
    if (picked.length > 1 && !made.several) { return askBack(made, "one_only"); }
    if (picked.join() === sortedNumbers(made.right).join()) { return mark(made, "right"); }
    for (i = 0; i < picked.length; i += 1) {
      if (made.right.indexOf(picked[i]) < 0) {
        if (mistakes[picked[i]]) { named.push(mistakes[picked[i]]); }
        if (made.why[picked[i]]) { why.push(made.why[picked[i]]); }
      }
    }
    return mark(made, "not_yet", { misconceptions: named, why: why });
  }
  function markChoice(made, chosen) { return markPicked(made, chosen, made.options.length); }
  function markSpot(made, chosen) { return markPicked(made, chosen, made.areas.length); }
  function markPlaces(made, places, texts) {
    var i;
    if (sortedNumbers(places).join() !== upTo(texts.length).join()) { return askBack(made, "not_all"); }
    for (i = 0; i < places.length; i += 1) {
      if (texts[places[i]] !== texts[i]) { return mark(made, "not_yet", { why: [made.why] }); }
    }
    return mark(made, "right");
  }
  function markOrder(made, sequence) {
    return sequence.length ? markPlaces(made, sequence, made.steps) : mark(made, "blank");
  }
  function markMatch(made, partners) {
    var i, chosen = 0;
    for (i = 0; i < partners.length; i += 1) { if (partners[i] !== -1) { chosen += 1; } }
    return chosen ? markPlaces(made, partners, made.right) : mark(made, "blank");
  }

  function markPart(givens, part, read, own) {
    var seeds = copy(givens), here = {}, all = {}, name, carried, twice, found;
    if (read.blank || read.ask) { return unread(part, read); }
    if (isRight(part, read.value)) { return mark(part, "right", { value: read.value }); }
    for (name in own) { if (has(own, name) && name !== part.asks) { seeds[name] = own[name]; } }
    carried = ruled(workedFrom(part.asks, seeds), part.rule, part.grain);
    if (carried !== null && fits(part, read.value, carried)) {
      return mark(part, "right_from_earlier", { value: read.value });
    }
    twice = twoReadings(part, read);
    if (twice) { return unread(part, twice); }
    for (name in part.wrong) { if (has(part.wrong, name)) { all[name] = part.wrong[name]; } }
    for (name in part.also || {}) { if (has(part.also, name)) { all[name] = part.also[name]; } }
    for (name in all) {
      if (has(all, name)) { here[name] = ruled(workedFrom(part.asks, seeds, [name]), part.rule, part.grain); }
    }
    found = diagnose(part, read.value, here);
    return mark(part, "not_yet", {
      value: read.value, misconceptions: found.length ? found : diagnose(part, read.value, all),
      slip: slipOf(part, read.value)
    });
  }
  function markLinked(parts, givens, answers) {
    var reads = [], own = {}, i, part;
    for (i = 0; i < parts.length; i += 1) {
      part = parts[i];
      reads.push(readAnswer(part, has(answers, part.id) ? answers[part.id] : ""));
      if (!reads[i].blank && !reads[i].ask) { own[part.asks] = reads[i].value; }
    }
    return parts.map(function (one, place) { return markPart(givens, one, reads[place], own); });
  }
  /* All parts of a scenario, with errors carried forward; answers are typed texts by part id. */
  function markScenario(scenario, answers) { return markLinked(scenario.parts, scenario.givens, answers); }
  /* A question with credit for its steps; answers are typed texts by the ids of the steps and of the question. */
  function markSteps(made, answers) {
    var marks = markLinked(made.steps.concat([made]), made.givens, answers), last = marks.pop();
    last.step_points = marks.filter(isGood).length;
    return counted(made, last);
  }

  /* ------------------------------------------------------------ answers as they are typed: letters.py */
  var BETWEEN = /[ ,;.\/()&+>:=|\-]+|and|\u0914\u0930/g;
  var PAIR_SIGNS = "a-h\u0915\u0916\u0917\u0918\u0919\u091a\u091b\u091c";
  var PAIR = new RegExp("([1-8]) ?[-=:>.)]{0,2} ?([" + PAIR_SIGNS + "])", "g");
  var ROWS = ["abcdefgh", "\u0915\u0916\u0917\u0918\u0919\u091a\u091b\u091c", "12345678"];

  function placeOf(sign) {
    var i;
    for (i = 0; i < ROWS.length; i += 1) { if (sign.length === 1 && ROWS[i].indexOf(sign) >= 0) { return ROWS[i].indexOf(sign); } }
    return -1;
  }
  /* Shown positions, in the order written; null where something else stands there. */
  function placesIn(line) {
    var signs = line.replace(BETWEEN, ""), made = [], i;
    for (i = 0; i < signs.length; i += 1) {
      made.push(placeOf(signs.charAt(i)));
      if (made[i] < 0) { return null; }
    }
    return made.length ? made : null;
  }
  function partnersIn(made, line) {
    var count = made.left.length, pairs = line.match(PAIR), chosen = [], shown, i, left, places;
    for (i = 0; i < count; i += 1) { chosen.push(-1); }
    if (pairs && line.replace(PAIR, "").replace(BETWEEN, "") === "") {
      for (i = 0; i < pairs.length; i += 1) {
        left = parseInt(pairs[i].charAt(0), 10) - 1;
        if (left >= count || chosen[left] !== -1) { return null; }
        chosen[left] = placeOf(pairs[i].charAt(pairs[i].length - 1));
      }
      shown = chosen;
    } else {
      places = placesIn(line);
      if (places === null || places.length > count) { return null; }
      shown = places.concat(chosen.slice(places.length));
    }
    for (i = 0; i < count; i += 1) { if (shown[i] >= count) { return null; } }
    return shown.map(function (place) { return place === -1 ? -1 : made.order[place]; });
  }
  function letterCount(text) { return text.length - (text.match(/[\ud800-\udbff][\udc00-\udfff]/g) || []).length; }
  function markLetters(made, text) {
    var line, places, partners, i, shown = [], letters = {};
    if (isBlank(text)) { return mark(made, "blank"); }
    line = letterCount(text) <= 4 * tables.longest ? cleaned(text) : "";
    if (made.kind === "match") {
      partners = partnersIn(made, line);
      return partners === null ? askBack(made, "unknown_letter") : markMatch(made, partners);
    }
    places = placesIn(line);
    if (places === null) { return askBack(made, "unknown_letter"); }
    if (made.kind === "spot") { made.areas.forEach(function (area, place) { letters[placeOf(cleaned(area.letter))] = place; }); }
    for (i = 0; i < places.length; i += 1) {
      if (made.kind === "spot" ? !has(letters, places[i]) : places[i] >= made.order.length) {
        return askBack(made, "unknown_letter");
      }
      shown.push(made.kind === "spot" ? letters[places[i]] : made.order[places[i]]);
    }
    if (made.kind === "spot") { return markSpot(made, shown); }
    return made.kind === "choice" ? markChoice(made, shown) : markOrder(made, shown);
  }
  /* An answer of any kind as it is typed; steps that earn points stand before it, a semicolon behind each. */
  function markTyped(made, text) {
    var pieces, answers = {}, found;
    text = String(text === null || text === undefined ? "" : text);
    if (made.kind === "spoken") { return markTyped(made.answer, text); }
    if (made.kind !== "number") { return markLetters(made, text); }
    pieces = made.steps && made.steps.length ? text.split(";") : [text];
    if (pieces.length === 1) { return markNumber(made, pieces[0]); }
    if (pieces.length !== made.steps.length + 1) {
      found = askBack(made, "not_all");
      return counted(made, found);
    }
    made.steps.concat([made]).forEach(function (part, place) { answers[part.id] = pieces[place]; });
    return markSteps(made, answers);
  }

  /* What help is open, from little to much, after so many wrong answers: help.py. */
  function helps(question, tried) {
    var worked = !!question.asks || (question.answer && !!question.answer.asks), made = [];
    if (question.hint) { made.push("hint"); }
    if (worked) { made.push("formula"); }
    if (worked && tried >= 1) { made.push("first_line"); }
    if (worked && tried >= 1) { made.push("solution"); }
    made.push("again");
    return made;
  }

  /* The mark in words; say takes a key and values, and gives a word of the page's language. */
  function messages(made, say) {
    var texts = [], i;
    function say_one_of(family, member, values) { return say.call(null, family + "." + member, values || {}); }
    texts.push(say_one_of("exercise.verdict", made.verdict));
    if (made.ask) {
      texts.push(say_one_of("exercise.ask", made.ask.reason, { first: made.ask.first, second: made.ask.second }));
    }
    if (made.slip) { texts.push(say_one_of("exercise.slip", made.slip)); }
    for (i = 0; i < made.misconceptions.length; i += 1) {
      if (made.misconceptions[i].indexOf("reading.") === 0) {
        texts.push(say_one_of("exercise.reading", made.misconceptions[i].slice(8) + ".mistake"));
        texts.push(say_one_of("exercise.reading", made.misconceptions[i].slice(8) + ".hill"));
      } else {
        texts.push(say_one_of("misconception", made.misconceptions[i] + ".mistake"));
        texts.push(say_one_of("misconception", made.misconceptions[i] + ".hill"));
      }
    }
    texts = texts.concat(made.why);
    if (made.verdict === "not_yet" && texts.length === 1) { texts.push(made.value === null ? say("exercise.look_again", {}) : say("exercise.no_known_mistake", {})); }
    if (made.step_most && made.verdict !== "right") {
      texts.push(say("exercise.step_credit", { have: made.step_points, most: made.step_most }));
    }
    return texts;
  }

  Tankschool.marker = {
    load: function (data) { tables = data; },
    cleaned: cleaned, parse: parse, fill: fill, variant: variant, item: item, diagnose: diagnose, markNumber: markNumber,
    markChoice: markChoice, markSpot: markSpot, markOrder: markOrder, markMatch: markMatch, markScenario: markScenario,
    markSteps: markSteps, markTyped: markTyped, helps: helps, messages: messages
  };
}(this));
