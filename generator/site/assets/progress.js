/* What a learner has done, kept in this browser under keys that start with "tankschool.v1.". Any page opened from a
   file may share the browser's room, so nothing secret goes in. Where the browser refuses to keep anything, the numbers
   live in the page until it is closed, and the page says so. */
(function (T) {
  "use strict";
  var PREFIX = "tankschool.v1.", LONGEST_FILE = 2000000, LONGEST_NAME = 40, MOST_COUNTED = 1000000, MOST_ANSWERS = 5000;
  var ID = /^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)?$/;
  var memory = {}, listeners = [], refused = false, full = false;

  function store() {
    try { return window.localStorage || null; } catch (error) { return null; }
  }

  function read(key) {
    var kept = null, place = store();
    if (Object.prototype.hasOwnProperty.call(memory, key)) { return memory[key]; }
    if (place) { try { kept = place.getItem(PREFIX + key); } catch (error) { refused = true; } }
    return kept;
  }

  function write(key, text) {
    var place = store();
    if (!place) { refused = true; memory[key] = text; return; }
    try {
      place.setItem(PREFIX + key, text);
      refused = full = false;
      delete memory[key];
    } catch (error) {
      if (error && /quota/i.test(error.name)) { full = true; } else { refused = true; }
      memory[key] = text;
    }
  }

  function remove(key) {
    var place = store();
    delete memory[key];
    if (place) { try { place.removeItem(PREFIX + key); } catch (error) { refused = true; } }
  }

  function keys() {
    var found = Object.keys(memory), place = store(), i, key;
    try {
      for (i = 0; place && i < place.length; i += 1) {
        key = place.key(i);
        if (key.indexOf(PREFIX) === 0 && found.indexOf(key.slice(PREFIX.length)) < 0) { found.push(key.slice(PREFIX.length)); }
      }
    } catch (error) { refused = true; }
    return found.sort();
  }

  function parsed(text, otherwise) {
    var value;
    try { value = JSON.parse(text); } catch (error) { return otherwise; }
    return value === null || value === undefined ? otherwise : value;
  }

  function tidyName(name) { return String(name).replace(/[\u0000-\u001f\u007f]+/g, " ").replace(/^\s+|\s+$/g, "").slice(0, LONGEST_NAME); }

  /** Named learners on this computer; the first one, without a name, is always there. */
  function learners() {
    var list = parsed(read("learners"), []);
    if (!Array.isArray(list)) { list = []; }
    list = list.filter(function (one) { return one && /^p[0-9]+$/.test(one.id) && typeof one.name === "string"; });
    return [{id: "p0", name: ""}].concat(list.filter(function (one) { return one.id !== "p0"; }));
  }

  function current() {
    var id = read("current"), found = learners().filter(function (one) { return one.id === id; });
    return found[0] || learners()[0];
  }

  function changed() { listeners.forEach(function (listener) { listener(); }); }

  function choose(id) { write("current", id); changed(); }

  function add(name) {
    var list = learners(), clean = tidyName(name), numbers, id, same;
    if (!clean) { return null; }
    same = list.filter(function (one) { return one.name === clean; })[0];
    if (!same) {
      numbers = list.map(function (one) { return Number(one.id.slice(1)); });
      id = "p" + (Math.max.apply(null, numbers) + 1);
      same = {id: id, name: clean};
      write("learners", JSON.stringify(list.slice(1).concat([same])));
    }
    choose(same.id);
    return same;
  }

  function count(value) { return typeof value === "number" && value >= 0 && value <= MOST_COUNTED ? Math.floor(value) : 0; }

  function clean(record) {
    record = record && typeof record === "object" ? record : {};
    return {tried: count(record.tried), right: count(record.right), drawn: count(record.drawn)};
  }

  function keyOf(id, learner) { return (learner || current().id) + ".q." + id; }

  /** How often a question was tried and was right, and how many sets of numbers were drawn for it. */
  function get(id) { return clean(parsed(read(keyOf(id)), {})); }

  function set(id, record) { write(keyOf(id), JSON.stringify(clean(record))); changed(); }

  /** Dated answers of a learner, oldest first: {question, competency, day, right}; what is damaged is left out. */
  function answers(learner) { return cleanAnswers(parsed(read((learner || current().id) + ".answers"), [])); }

  function cleanAnswers(list) {
    if (!Array.isArray(list)) { return []; }
    return list.slice(-MOST_ANSWERS).filter(function (one) {
      return one && typeof one === "object" && ID.test(one.question) && ID.test(one.competency) && typeof one.right === "boolean" &&
        typeof one.day === "number" && one.day >= 0 && one.day <= MOST_COUNTED && one.day === Math.floor(one.day);
    }).map(function (one) { return {question: one.question, competency: one.competency, day: one.day, right: one.right}; });
  }

  function keepAnswers(list) { write(current().id + ".answers", JSON.stringify(list.slice(-MOST_ANSWERS))); }

  /** Two lists of answers as one, by day; an answer that stands in both is kept once. */
  function mergedAnswers(own, other) {
    var counts = {}, all;
    own.forEach(function (one) { var key = JSON.stringify(one); counts[key] = (counts[key] || 0) + 1; });
    all = own.concat(other.filter(function (one) {
      var key = JSON.stringify(one);
      counts[key] = (counts[key] || 0) - 1;
      return counts[key] < 0;
    }));
    return all.map(function (one, place) { return [one, place]; })
      .sort(function (a, b) { return a[0].day - b[0].day || a[1] - b[1]; }).map(function (row) { return row[0]; });
  }

  /** Whole days, as the learner's own calendar counts them. */
  function today() {
    var now = new Date();
    return Math.floor((now.getTime() - now.getTimezoneOffset() * 60000) / 86400000);
  }

  /** An answer that counts; with a competency it is a first try, and practice remembers its day. */
  function marked(id, right, competency) {
    var record = get(id);
    record.tried += 1;
    record.right += right ? 1 : 0;
    if (competency) { keepAnswers(answers().concat([{question: id, competency: competency, day: today(), right: right}])); }
    set(id, record);
  }

  function drawn(id) {
    var record = get(id);
    record.drawn += 1;
    set(id, record);
    return record.drawn;
  }

  /** Take over that a question was right once, as a code says; what is known already stays. */
  function met(id) {
    var record = get(id);
    if (record.right) { return; }
    record.right = 1;
    record.tried += 1;
    write(keyOf(id), JSON.stringify(record));
  }

  function idsOf(learner) {
    var start = learner + ".q.";
    return keys().filter(function (key) { return key.indexOf(start) === 0; })
      .map(function (key) { return key.slice(start.length); }).filter(function (id) { return ID.test(id); });
  }

  function clear() {
    var learner = current();
    keys().filter(function (key) { return key.indexOf(learner.id + ".") === 0; }).forEach(remove);
    if (learner.id !== "p0") {
      write("learners", JSON.stringify(learners().slice(1).filter(function (one) { return one.id !== learner.id; })));
      write("current", "p0");
    }
    changed();
  }

  /** The learner's progress file. */
  function exported() {
    var learner = current(), questions = {};
    idsOf(learner.id).forEach(function (id) { questions[id] = get(id); });
    return JSON.stringify({format: 1, kind: "tankschool-progress", learner: learner.name, questions: questions, answers: answers(learner.id)}, null, 1) + "\n";
  }

  /** Take in a progress file: it is checked whole before anything is changed; of two records the fuller one stays.
      Returns {ok: number of questions} or {wrong: "size" | "foreign" | "newer" | "damaged"}. */
  function imported(text) {
    var data, ids, before;
    if (text.length > LONGEST_FILE) { return {wrong: "size"}; }
    try { data = JSON.parse(text.replace(/^\ufeff/, "")); } catch (error) { return {wrong: "foreign"}; }
    if (!data || typeof data !== "object" || data.kind !== "tankschool-progress") { return {wrong: "foreign"}; }
    if (typeof data.format !== "number" || data.format > 1) { return {wrong: "newer"}; }
    if (data.format !== 1 || typeof data.learner !== "string" || !data.questions || typeof data.questions !== "object") { return {wrong: "damaged"}; }
    ids = Object.keys(data.questions);
    if (!ids.every(function (id) { return ID.test(id) && id.length <= 81; })) { return {wrong: "damaged"}; }
    if (tidyName(data.learner)) { add(data.learner); } else { choose("p0"); }
    ids.forEach(function (id) {
      before = get(id);
      if (clean(data.questions[id]).tried >= before.tried) { write(keyOf(id), JSON.stringify(clean(data.questions[id]))); }
    });
    /* files that were saved before answers were dated have none */
    keepAnswers(mergedAnswers(answers(), cleanAnswers(data.answers)));
    changed();
    return {ok: ids.length};
  }

  /** A learner's own note, such as a test that was begun; it goes when the learner is cleared. */
  function note(name, text) {
    if (text === null) { remove(current().id + "." + name); } else { write(current().id + "." + name, text); }
  }

  function noted(name) { return read(current().id + "." + name); }

  /* Some browsers give every file a store of its own: then a page sees a cookie of another page (they share those until
     the browser closes) with the name of another store. Where there are no cookies for files, there is one store. */
  function storeIsApart() {
    var own = read("store"), seen, apart = read("apart") === "1";
    if (location.protocol !== "file:" || refused || full) { return false; }
    if (!/^[0-9a-z]+$/.test(own || "")) {
      own = Math.floor(Math.random() * 1e9).toString(36) + Date.now().toString(36);
      write("store", own);
    }
    try {
      seen = /(?:^|; )tankschool_store=([0-9a-z]+)/.exec(document.cookie);
      if (!seen) { document.cookie = "tankschool_store=" + own; }
      else if (seen[1] !== own && !apart) { apart = true; write("apart", "1"); }
    } catch (error) { return apart; }
    return apart;
  }

  /** "kept", "refused" or "full": what became of the last thing to keep. */
  function state() {
    if (full) { return "full"; }
    return refused || !store() ? "refused" : "kept";
  }

  // One harmless key tells at once whether this browser keeps anything.
  write("probe", "1");
  var apart = storeIsApart();

  T.progress = {learners: learners, current: current, choose: choose, add: add, get: get, marked: marked, drawn: drawn, answers: answers, today: today,
    clear: clear, exported: exported, imported: imported, state: state,
    note: note, noted: noted, apart: function () { return apart; }, met: met,
    changed: changed, listen: function (listener) { listeners.push(listener); }};
})(window.Tankschool);
