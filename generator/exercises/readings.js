/* Readings of a panel as exercises, drawn by a seed or typed from the learner's own: the twin of readings.py.
 * It needs formula.js and marker.js; the limits are loaded behind it. */
(function (root) {
  "use strict";
  var Tankschool = root.Tankschool = root.Tankschool || {};
  var HAIR = 1e-9;
  var BETWEEN = /[ \t]*(?:[\n\r;]|,[ \t]|[ \t])[ \t\n\r\f\v;]*/;
  var limits = null;

  function sorted(list) { return list.slice().sort(function (a, b) { return a - b; }); }
  function sum(list) { return list.reduce(function (total, each) { return total + each; }, 0); }
  function median(list) {
    var found = sorted(list), half = Math.floor(found.length / 2);
    return found.length % 2 ? found[half] : (found[half - 1] + found[half]) / 2;
  }
  function bounds(panel) {
    if (panel.kind === "spacing") { return [panel.planned - limits.tolerance, panel.planned + limits.tolerance]; }
    return [limits[panel.steel], Infinity];
  }
  function failing(panel, atLimit) {
    var found = bounds(panel), slack = atLimit ? HAIR : -HAIR;
    return panel.readings.filter(function (each) { return each < found[0] + slack || each > found[1] - slack; }).length;
  }
  function verdict(panel) {
    var found = bounds(panel), least = Math.min.apply(null, panel.readings), most = Math.max.apply(null, panel.readings);
    if (panel.kind === "spacing") {
      if (most > found[1] + HAIR) { return "too_wide"; }
      return least < found[0] - HAIR ? "too_narrow" : "as_planned";
    }
    if (least < found[0] - HAIR) { return "too_thin"; }
    if (panel.steel === "bar") { return least < limits.aim - HAIR ? "below_aim" : "no_thin_reading"; }
    return most > limits.most_mesh + HAIR ? "thick_over_mesh" : "no_thin_reading";
  }
  function isBad(found) { return limits.bad.indexOf(found) >= 0; }

  function onePanel(stream, kind, steel) {
    var planned = 0, middle, spread, readings = [], i, off;
    if (kind === "spacing") {
      planned = limits.planned[stream.below(limits.planned.length)];
      middle = planned - 3 + stream.below(7);
      spread = 2 + stream.below(9);
    } else if (steel === "bar") {
      middle = 7 + stream.below(8);
      spread = 2 + stream.below(6);
    } else {
      middle = 2 + stream.below(4);
      spread = 2;
    }
    for (i = 0; i < limits.drawn; i += 1) {
      off = stream.below(spread + 1);
      off += stream.below(spread + 1) - spread;
      readings.push(Math.max(middle + off, 0));
    }
    return { kind: kind, steel: steel, planned: planned, readings: readings };
  }
  function clear(panel) {
    var found = sorted(panel.readings), mean = sum(found) / found.length;
    return [median(found), (found[0] + found[found.length - 1]) / 2].every(function (other) { return Math.abs(other - mean) > 0.2; }) &&
      (panel.kind === "spacing" || failing(panel, false) !== failing(panel, true));
  }
  function draw(kind, seed, steel) {
    var stream, passing, panel, i;
    steel = steel || "bar";
    stream = Tankschool.formula.stream(seed + "|readings|" + kind + "|" + steel);
    passing = stream.below(2) === 1;
    panel = onePanel(stream, kind, steel);
    for (i = 0; i < limits.tries; i += 1) {
      if (clear(panel) && !isBad(verdict(panel)) === passing) { break; }
      panel = onePanel(stream, kind, steel);
    }
    return panel;
  }

  function letterCount(text) { return text.length - (text.match(/[\ud800-\udbff][\udc00-\udfff]/g) || []).length; }
  function fault(reason, place, text) { return { reason: reason, place: place || 0, text: text || "" }; }
  function stripped(text) { return text.replace(/^,+|,+$/g, ""); }
  /* The learner's own readings: a panel, or {reason, place, text}. Never throws. */
  function typed(kind, text, steel, planned) {
    var pieces, readings = [], i, read, long;
    text = String(text === null || text === undefined ? "" : text);
    long = letterCount(text) > 40 * limits.most;
    if (long) { return fault("too_many"); }
    pieces = text.split(BETWEEN).filter(function (piece) { return piece.replace(/^[ \t,;]+|[ \t,;]+$/g, "") !== ""; });
    if (pieces.length > limits.most) { return fault("too_many"); }
    if (pieces.length < limits.fewest) { return fault("too_few"); }
    for (i = 0; i < pieces.length; i += 1) {
      read = stripped(pieces[i]).indexOf(",") >= 0 ? { ask: true } : Tankschool.marker.parse(pieces[i], "mm");
      if (read.ask || read.blank || !(read.value >= 0 && read.value <= limits.largest[kind])) {
        return fault("not_a_reading", i + 1, pieces[i]);
      }
      readings.push(read.value);
    }
    return { kind: kind, steel: steel || "bar", planned: planned || 0, readings: readings };
  }

  function number(panel, about, name, text, key, tolerance, wrong, unit) {
    var places = unit === "" ? 0 : 1, apart = {}, mistake;
    for (mistake in wrong) {
      if (Object.prototype.hasOwnProperty.call(wrong, mistake) && Math.abs(wrong[mistake] - key) > 2 * tolerance + HAIR) {
        apart[mistake] = wrong[mistake];
      }
    }
    return {
      kind: "number", id: about.id + "." + name, competency: about.competency, text: text, asks: name, unit: unit,
      places: places, low: 0, high: limits.largest[panel.kind], givens: {}, key: key,
      shown_key: Tankschool.formula.show(key, places), rounded: key, absolute: tolerance, relative: 0, wrong: apart,
      also: {}, aids: [], units: [], rule: "", grain: 0, exact: null, steps: []
    };
  }
  function verdictItem(panel, about, say) {
    var options = limits.verdicts[panel.kind === "spacing" ? "spacing" : panel.steel], right = verdict(panel);
    return {
      kind: "choice", id: about.id + ".verdict", competency: about.competency, text: say("exercise.reading.verdict_asked", {}),
      several: false,
      options: options.map(function (option) { return say("exercise.reading.verdict." + option, {}); }),
      right: [options.indexOf(right)], why: options.map(function () { return ""; }),
      order: options.map(function (option, place) { return place; }),
      mistakes: options.map(function (option) {
        if (option === right) { return ""; }
        if (isBad(right)) { return isBad(option) ? "reading.wrong_side_seen" : "reading.mean_decides"; }
        return isBad(option) ? "reading.good_wall_refused" : "reading.limit_and_aim_mixed";
      }),
      asks: "", givens: {}
    };
  }
  /* The four questions about a panel; about holds id and competency, say gives a word of the page's language. */
  function items(panel, about, say) {
    var found = sorted(panel.readings), mean = sum(found) / found.length, least = found[0], most = found[found.length - 1];
    var spacing = panel.kind === "spacing", bad = failing(panel, false), counted = {}, F = Tankschool.formula, edges = bounds(panel);
    counted["reading.limit_counted_as_failing"] = failing(panel, true);
    if (spacing) {
      counted["reading.only_wide_ones_counted"] = found.filter(function (each) { return each > edges[1] + HAIR; }).length;
    } else {
      counted["reading.aim_taken_for_limit"] = found.filter(function (each) { return each < limits.aim - HAIR; }).length;
    }
    counted["reading.good_ones_counted"] = found.length - bad;
    return [
      number(panel, about, "edge", spacing ? say("exercise.reading.widest", {}) : say("exercise.reading.least", {}),
        spacing ? most : least, 0.05,
        { "reading.other_end_taken": spacing ? least : most, "reading.mean_for_edge": mean }, "mm"),
      number(panel, about, "mean", say("exercise.reading.mean", {}), mean, 0.05,
        { "reading.middle_taken_for_mean": median(found), "reading.ends_halved": (least + most) / 2 }, "mm"),
      number(panel, about, "failing", spacing
        ? say("exercise.reading.off_plan", { planned: F.showFull(panel.planned), tolerance: F.showFull(limits.tolerance) })
        : say("exercise.reading.too_thin", { limit: F.showFull(edges[0]) }), bad, 0, counted, ""),
      verdictItem(panel, about, say)
    ];
  }

  Tankschool.readings = { load: function (data) { limits = data; }, draw: draw, typed: typed, items: items };
}(this));
