/* The tank planner: numbers from a tape and the shop in, counts, checks and a drawing to scale out, at every keystroke.
   What leaves a range of the calculation module shows no counts at all, but why, and who to ask. */
(function (T) {
  "use strict";
  var page = T.page, say = page.say, make = page.make, formula = T.formula;
  var SVG = "http://www.w3.org/2000/svg", LEVELS = 60, HAIR = 1e-9;

  function shown(data, name, value) { return page.withUnit(formula.show(value, data.places[name]), data.units[name]); }

  /** The smallest shape of the ladder that holds so many litres; null where none does. */
  function shapeFor(data, litres) {
    var i, step;
    for (i = 0; i < data.ladder.length; i += 1) {
      step = data.ladder[i];
      if (Math.PI / 4 * step[0] * step[0] * step[1] * 1000 >= litres - 1e-6) { return step; }
    }
    return null;
  }

  /** All quantities of a tank, or the first one outside its range. */
  function workedOut(data, givens) {
    var names = [], values, bad = null;
    Object.keys(data.outputs).forEach(function (group) { names = names.concat(data.outputs[group]); });
    names = names.concat(data.watched.filter(function (name) { return name !== "level_height"; }));
    Object.keys(givens).forEach(function (name) {
      var range = data.ranges[name];
      if (range && (!isFinite(givens[name]) || givens[name] < range[0] - HAIR || givens[name] > range[1] + HAIR)) { bad = bad || name; }
    });
    if (bad) { return {outside: bad, values: null}; }
    try { values = formula.evaluate(withLevel(givens, 0), names); } catch (error) { return {outside: "wall_height", values: null}; }
    /* what lies between is held to its range too: a wall's cover, a tank's volume */
    Object.keys(values).forEach(function (name) {
      var range = data.ranges[name];
      if (!bad && range && (values[name] < range[0] - HAIR || values[name] > range[1] + HAIR)) { bad = name; }
    });
    return {outside: bad, values: values};
  }

  function withLevel(givens, height) {
    var seeds = {}, name;
    for (name in givens) { if (Object.prototype.hasOwnProperty.call(givens, name)) { seeds[name] = givens[name]; } }
    seeds.level_height = height;
    return seeds;
  }

  /** The most that any level asks of hoops and mortar, from the tables of the shell. */
  function worst(data, givens, values) {
    var most = {hoop: 0, mortar: 0}, i, here;
    for (i = 0; i <= LEVELS; i += 1) {
      here = formula.evaluate(withLevel(givens, values.water_depth * i / LEVELS), ["hoop_stress", "mortar_tension"]);
      most.hoop = Math.max(most.hoop, here.hoop_stress);
      most.mortar = Math.max(most.mortar, here.mortar_tension);
    }
    return most;
  }

  function checks(data, givens, values) {
    var most = worst(data, givens, values), allowed = givens.steel_working_stress;
    return [
      {key: "hoops", demand: most.hoop, allowed: allowed, unit: "MPa", places: 0},
      {key: "hoops_free", demand: values.hoop_stress_free, allowed: allowed, unit: "MPa", places: 0},
      {key: "mortar", demand: most.mortar, allowed: data.mortar_allowed, unit: "MPa", places: 2},
      {key: "starters", demand: 0.10, allowed: values.starter_spacing, unit: "m", places: 2}
    ].map(function (check) {
      check.ratio = check.allowed > 0 ? check.demand / check.allowed : Infinity;
      check.good = check.ratio <= 1 + HAIR;
      return check;
    });
  }

  /** The band of the tank on its site, with the codes of its reasons: the same rule as `bands.judge`. */
  function judged(data, values, site) {
    var radius = values.inside_radius, band = 1, reasons = [];
    var sizes = {volume: values.tank_volume, depth: values.water_depth, depth_times_radius: values.water_depth * radius,
      flat_span: site.flat ? 2 * radius : 0};
    data.order.bands.forEach(function (name) {
      var limits = data.bands[name], here = 1 + (sizes[name] > limits[0] + HAIR ? 1 : 0) + (sizes[name] > limits[1] + HAIR ? 1 : 0);
      if (here > 1) { reasons.push(name + "_over_" + (here === 3 ? "engineer" : "village")); }
      band = Math.max(band, here);
    });
    site.conditions.forEach(function (name) { band += 1; reasons.push(name); });
    return {band: Math.min(3, band), reasons: reasons};
  }

  function drawing(data, givens, values) {
    var wide = values.base_diameter + 0.6, high = givens.wall_height + 0.75, unit = 340 / wide;
    var middle = wide / 2, ground = high - 0.35, wall = values.wall_thickness / 1000, half = givens.inside_diameter / 2;
    var svg = document.createElementNS(SVG, "svg");
    function add(tag, attributes, text) {
      var element = document.createElementNS(SVG, tag), name;
      for (name in attributes) { if (Object.prototype.hasOwnProperty.call(attributes, name)) { element.setAttribute(name, attributes[name]); } }
      if (text) { element.appendChild(document.createTextNode(text)); }
      svg.appendChild(element);
    }
    function box(x, y, width, height, kind) {
      add("rect", {x: (x * unit).toFixed(2), y: (y * unit).toFixed(2), width: Math.max(width * unit, 1.2).toFixed(2), height: Math.max(height * unit, 1.2).toFixed(2), "class": kind});
    }
    svg.setAttribute("viewBox", "0 0 340 " + Math.ceil(high * unit + 26));
    svg.setAttribute("role", "img");
    svg.setAttribute("aria-label", say("page.planner.drawing"));
    box(0, ground, wide, 0.30, "ts-p-ground");
    box(middle - values.base_diameter / 2, ground, values.base_diameter, givens.base_concrete_thickness / 1000, "ts-p-base");
    box(middle - half, ground - values.water_depth, 2 * half, values.water_depth, "ts-p-water");
    box(middle - half - wall, ground - givens.wall_height, wall, givens.wall_height, "ts-p-wall");
    box(middle + half, ground - givens.wall_height, wall, givens.wall_height, "ts-p-wall");
    /* a bucket of 30 cm beside the tank says how large it is */
    box(middle + values.base_diameter / 2 + 0.02, ground - 0.3, 0.26, 0.3, "ts-p-bucket");
    add("line", {x1: (middle - half) * unit, x2: (middle + half) * unit, y1: (ground - 0.12) * unit, y2: (ground - 0.12) * unit, "class": "ts-p-measure"});
    add("text", {x: middle * unit, y: (ground - 0.16) * unit, "text-anchor": "middle"}, shown(data, "inside_diameter", givens.inside_diameter));
    add("text", {x: middle * unit, y: Math.max(14, (ground - values.water_depth - 0.06) * unit), "text-anchor": "middle"}, shown(data, "water_depth", values.water_depth));
    add("text", {x: middle * unit, y: high * unit + 18, "text-anchor": "middle"}, shown(data, "tank_litres", values.tank_litres));
    return svg;
  }

  function table(head, rows) {
    return make("div", {"class": "ts-scroll"}, make("table", {"class": "ts-table"}, [
      make("thead", {}, make("tr", {}, head.map(function (cell) { return make("th", {scope: "col"}, cell); }))),
      make("tbody", {}, rows.map(function (row) {
        return make("tr", {}, row.map(function (cell, number) { return make(number ? "td" : "th", number ? {} : {scope: "row"}, cell); }));
      }))]));
  }

  function start(place) {
    var data = T.carried(place.querySelector("script.ts-data")).planner, body = place.querySelector(".ts-body");
    var fields = {}, site = {flat: false, conditions: []}, result = make("div", {"class": "ts-plan-result", "aria-live": "polite"});
    var litres = make("input", {type: "text", inputmode: "decimal", id: "ts-planner-litres", value: "6000"}), said = make("p", {role: "status"});
    var boxes = ["people_below", "strong_earthquake", "snow_or_frost", "steep_platform"];

    function field(name) {
      var id = "ts-planner-" + name, input = make("input", {type: "text", inputmode: "decimal", id: id, value: formula.showFull(Number(formula.show(data.start[name], data.places[name]))), "aria-describedby": id + "-range"});
      var range = data.ranges[name];
      fields[name] = input;
      input.addEventListener("input", tell);
      return make("div", {"class": "ts-field"}, [
        make("label", {"for": id}, data.labels[name] + (data.units[name] ? " (" + page.say_one_of("unit", data.units[name]) + ")" : "")),
        input,
        make("span", {"class": "ts-note", id: id + "-range"}, say("page.planner.range", {low: page.number(formula.showFull(range[0])), high: page.number(formula.showFull(range[1]))}))]);
    }

    function read() {
      var givens = {}, wrong = null;
      Object.keys(fields).forEach(function (name) {
        var found = T.marker.parse(fields[name].value, data.units[name]);
        if (typeof found.value !== "number") { wrong = wrong || name; } else { givens[name] = found.value; }
      });
      return {givens: givens, wrong: wrong};
    }

    function refused(name) {
      var range = data.ranges[name];
      return make("div", {"class": "ts-caution"}, [make("strong", {}, say("page.planner.no_counts")),
        make("p", {}, say("page.planner.outside", {what: data.labels[name], low: page.number(formula.showFull(range[0])), high: page.withUnit(formula.showFull(range[1]), data.units[name])}))]);
    }

    function propose() {
      var found = T.marker.parse(litres.value, "L"), step = typeof found.value === "number" ? shapeFor(data, found.value) : null, seeds, values, spacing;
      if (!step || found.value < 500) { said.textContent = say("page.planner.litres_range"); return; }
      fields.inside_diameter.value = formula.showFull(step[0]);
      fields.wall_height.value = formula.showFull(Number((step[1] + Number(fields.overflow_drop.value)).toFixed(2)));
      seeds = read();
      values = seeds.wrong ? null : workedOut(data, seeds.givens).values;
      if (values) {
        /* the widest spacing at which the foot could even slide, in steps of 5 mm */
        spacing = Math.floor(Math.PI * Math.pow(seeds.givens.hoop_diameter, 2) / 4 / Math.max(1, values.ring_tension_free * 1000 / seeds.givens.steel_working_stress) / 0.005 + HAIR) * 0.005;
        fields.hoop_spacing.value = formula.showFull(Number(Math.max(0.05, Math.min(0.2, spacing)).toFixed(3)));
      }
      said.textContent = "";
      tell();
    }

    function tell() {
      var found = read(), made, verdict, found_checks, bad;
      page.empty(result);
      if (found.wrong) { result.appendChild(refused(found.wrong)); return; }
      made = workedOut(data, found.givens);
      if (made.outside) { result.appendChild(refused(made.outside)); return; }
      verdict = judged(data, made.values, site);
      found_checks = checks(data, found.givens, made.values);
      bad = found_checks.filter(function (check) { return !check.good; });
      result.appendChild(make("h2", {}, data.band_words["band.name." + ["village", "engineer", "no_build_sheet"][verdict.band - 1]]));
      verdict.reasons.forEach(function (reason) { result.appendChild(make("p", {}, data.band_words["band.reason." + reason])); });
      result.appendChild(make("p", {"class": "ts-note"}, data.band_words["band.policy"]));
      if (bad.length) { result.appendChild(make("div", {"class": "ts-caution"}, [make("strong", {}, say("page.planner.check_failed")), make("p", {}, say("page.planner.check_failed_text"))])); }
      if (verdict.band < 3) {
        data.order.outputs.forEach(function (group) {
          result.appendChild(make("h3", {}, page.say_one_of("page.planner.group", group)));
          result.appendChild(table([say("page.planner.what"), say("page.planner.how_much")], data.outputs[group].map(function (name) {
            return [data.labels[name], shown(data, name, made.values[name])];
          })));
          if (group === "counts") {
            result.appendChild(make("p", {"class": "ts-note"}, say("page.planner.wall_only")));
            result.appendChild(make("div", {"class": "ts-figure"}, drawing(data, found.givens, made.values)));
          }
        });
      }
      result.appendChild(make("h3", {}, say("page.planner.checks")));
      result.appendChild(table([say("page.planner.what"), say("page.planner.demand"), say("page.planner.allowed"), say("page.planner.ratio")], found_checks.map(function (check) {
        return [page.say_one_of("page.planner.check", check.key), page.withUnit(formula.show(check.demand, check.places), check.unit),
          page.withUnit(formula.show(check.allowed, check.places), check.unit),
          (check.ratio === Infinity ? "\u2013" : page.number(formula.show(check.ratio, 2))) + " " + (check.good ? say("page.planner.good") : say("page.planner.bad"))];
      })));
      result.appendChild(make("p", {"class": "ts-note"}, say("page.planner.tables")));
      page.scrollable();
    }

    page.empty(body);
    body.appendChild(make("div", {"class": "ts-field"}, [make("label", {"for": "ts-planner-litres"}, say("page.planner.litres")), litres,
      page.button(say("page.planner.propose"), propose)]));
    body.appendChild(said);
    data.order.groups.forEach(function (group, number) {
      var inside = make("div", {"class": "ts-plan-fields"}, data.groups[group].map(field));
      body.appendChild(make("details", number ? {} : {open: ""}, [make("summary", {}, page.say_one_of("page.planner.group", group)), inside]));
    });
    body.appendChild(make("fieldset", {"class": "ts-plan-site"}, [make("legend", {}, say("page.planner.site"))].concat(["flat"].concat(boxes).map(function (name) {
      var id = "ts-planner-" + name, input = make("input", {type: "checkbox", id: id});
      input.addEventListener("change", function () {
        if (name === "flat") { site.flat = input.checked; }
        else { site.conditions = boxes.filter(function (one) { return document.getElementById("ts-planner-" + one).checked; }); }
        tell();
      });
      return make("div", {}, [input, make("label", {"for": id}, page.say_one_of("page.planner.condition", name))]);
    }))));
    body.appendChild(result);
    body.appendChild(make("p", {"class": "ts-buttons"}, page.button(say("page.planner.print"), function () { window.print(); })));
    tell();
  }

  T.planner = {start: start, shapeFor: shapeFor, workedOut: workedOut, judged: judged, checks: checks};
})(window.Tankschool);
