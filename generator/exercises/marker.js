/* Draws questions and marks answers in the page: the twin of the Python files beside it (draw, numbers, marking, scenario).
 * A classic script in old, conservative JavaScript, so that it also runs in the browsers of old phones and from a file.
 * It needs formula.js, and page_data.py writes the tables of signs and units behind it. */
(function (root) {
  "use strict";
  var Tankschool = root.Tankschool = root.Tankschool || {};
  var HAIR = 1e-9;
  var MOST_TRIES = 200;
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
  function fill(question, givens) {
    var words = {}, i;
    for (i = 0; i < question.parameters.length; i += 1) {
      words[question.parameters[i].name] = question.parameters[i].unit_word;
    }
    return question.text.replace(/\{([a-z][a-z0-9_]*)\}/g, function (slot, name) {
      if (!has(givens, name)) { return slot; }
      var number = grouped(formula().showFull(givens[name]), question.language);
      return words[name] ? number + "\u00a0" + words[name] : number;
    });
  }

  /* The answer of someone who rounds every step as printed; null where a step leaves its range. */
  function roundedAnswer(question, givens) {
    var values = copy(givens), i, step, value, right;
    try { right = formula().evaluate(givens, [question.asks], []); } catch (error) { return null; }
    for (i = 0; i < question.steps.length; i += 1) {
      step = question.steps[i];
      if (!inside(right[step.name], step.low, step.high)) { return null; }
      value = workedFrom(step.name, values);
      if (value === null) { return null; }
      values[step.name] = step.name === question.asks ? value : parseFloat(formula().show(value, step.places));
    }
    return values[question.asks];
  }
  function candidate(question, givens) {
    var rounded = roundedAnswer(question, givens), key, wrong = {}, names = question.misconceptions, i, j, value;
    if (rounded === null) { return null; }
    for (i = 0; i < question.parameters.length; i += 1) {
      if (!inside(givens[question.parameters[i].name], question.parameters[i].low, question.parameters[i].high)) {
        return null;
      }
    }
    key = workedFrom(question.asks, givens);
    if (question.count && Math.abs(rounded - key) >= 0.5) { return null; }
    for (i = 0; i < names.length; i += 1) {
      value = workedFrom(question.asks, givens, [names[i]]);
      if (value === null || !tellsApart(question, value, key) || !tellsApart(question, value, rounded)) { return null; }
      for (j = 0; j < i; j += 1) { if (!tellsApart(question, value, wrong[names[j]])) { return null; } }
      wrong[names[i]] = value;
    }
    return {
      kind: "number", id: question.id, competency: question.competency, text: fill(question, givens),
      asks: question.asks, unit: question.unit, places: question.places, low: question.low, high: question.high,
      givens: givens, key: key, shown_key: formula().show(key, question.places), rounded: rounded,
      absolute: question.absolute, relative: question.relative, wrong: wrong
    };
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
  /* A question of any kind as one learner gets it: the same shapes as items.py. */
  function item(question, seed) {
    var stream, made;
    if (question.kind === "number") { return variant(question, seed); }
    if (question.kind === "scenario") { return question; }
    stream = formula().stream(seed + "|" + question.id);
    made = copy(question);
    made.order = question.kind === "choice" ? stream.shuffle(upTo(question.options.length))
      : mixed(stream, (question.steps || question.left).length);
    return made;
  }

  /* -------------------------------------------------------------------------------------- marking */
  function mark(made, verdict, more) {
    var found = {
      item: made.id, competency: made.competency, verdict: verdict, value: null, misconceptions: [], why: [], ask: null
    };
    var name;
    for (name in more || {}) { if (has(more, name)) { found[name] = more[name]; } }
    found.points = verdict === "right" || verdict === "right_from_earlier" ? 1 : 0;
    found.most = 1;
    return found;
  }
  function askBack(made, reason) { return mark(made, "ask_back", ask(reason)); }
  function unread(made, read) {
    return read.blank ? mark(made, "blank") : mark(made, "ask_back", { ask: read.ask });
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
  function markNumber(made, text) {
    var read = parse(text, made.unit), twice;
    if (read.blank || read.ask) { return unread(made, read); }
    if (isRight(made, read.value)) { return mark(made, "right", { value: read.value }); }
    twice = twoReadings(made, read);
    if (twice) { return unread(made, twice); }
    return mark(made, "not_yet", { value: read.value, misconceptions: diagnose(made, read.value) });
  }
  function sortedNumbers(list) { return list.slice().sort(function (a, b) { return a - b; }); }
  function markChoice(made, chosen) {
    var picked = [], why = [], i, sorted = sortedNumbers(chosen);
    for (i = 0; i < sorted.length; i += 1) { if (i === 0 || sorted[i] !== sorted[i - 1]) { picked.push(sorted[i]); } }
    if (!picked.length) { return mark(made, "blank"); }
    if (picked[0] < 0 || picked[picked.length - 1] >= made.options.length) { return askBack(made, "unknown_letter"); }
    if (picked.length > 1 && !made.several) { return askBack(made, "one_only"); }
    if (picked.join() === sortedNumbers(made.right).join()) { return mark(made, "right"); }
    for (i = 0; i < picked.length; i += 1) {
      if (made.right.indexOf(picked[i]) < 0 && made.why[picked[i]]) { why.push(made.why[picked[i]]); }
    }
    return mark(made, "not_yet", { why: why });
  }
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

  function markPart(scenario, part, read, own) {
    var seeds = copy(scenario.givens), here = {}, name, carried, twice, found;
    if (read.blank || read.ask) { return unread(part, read); }
    if (isRight(part, read.value)) { return mark(part, "right", { value: read.value }); }
    for (name in own) { if (has(own, name) && name !== part.asks) { seeds[name] = own[name]; } }
    carried = workedFrom(part.asks, seeds);
    if (carried !== null && fits(part, read.value, carried)) {
      return mark(part, "right_from_earlier", { value: read.value });
    }
    twice = twoReadings(part, read);
    if (twice) { return unread(part, twice); }
    for (name in part.wrong) { if (has(part.wrong, name)) { here[name] = workedFrom(part.asks, seeds, [name]); } }
    found = diagnose(part, read.value, here);
    return mark(part, "not_yet", {
      value: read.value, misconceptions: found.length ? found : diagnose(part, read.value)
    });
  }
  /* All parts of a scenario, with errors carried forward; answers are typed texts by part id. */
  function markScenario(scenario, answers) {
    var reads = [], own = {}, i, part;
    for (i = 0; i < scenario.parts.length; i += 1) {
      part = scenario.parts[i];
      reads.push(parse(has(answers, part.id) ? answers[part.id] : "", part.unit));
      if (!reads[i].blank && !reads[i].ask) { own[part.asks] = reads[i].value; }
    }
    return scenario.parts.map(function (one, place) { return markPart(scenario, one, reads[place], own); });
  }

  /* The mark in words; say takes a key and values, and gives a word of the page's language. */
  function messages(made, say) {
    var texts = [], i;
    function say_one_of(family, member, values) { return say.call(null, family + "." + member, values || {}); }
    texts.push(say_one_of("exercise.verdict", made.verdict));
    if (made.ask) {
      texts.push(say_one_of("exercise.ask", made.ask.reason, { first: made.ask.first, second: made.ask.second }));
    }
    for (i = 0; i < made.misconceptions.length; i += 1) {
      texts.push(say_one_of("misconception", made.misconceptions[i] + ".mistake"));
      texts.push(say_one_of("misconception", made.misconceptions[i] + ".hill"));
    }
    texts = texts.concat(made.why);
    if (made.verdict === "not_yet" && texts.length === 1) { texts.push(say("exercise.no_known_mistake", {})); }
    return texts;
  }

  Tankschool.marker = {
    load: function (data) { tables = data; },
    parse: parse, fill: fill, variant: variant, item: item, diagnose: diagnose, markNumber: markNumber,
    markChoice: markChoice, markOrder: markOrder, markMatch: markMatch, markScenario: markScenario, messages: messages
  };
}(this));
