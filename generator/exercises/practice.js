/* Practice that adapts: what was shown so far, what to ask next and why, readiness. The twin of practice.py, which also
 * explains the rules; they are loaded behind it. It needs formula.js. */
(function (root) {
  "use strict";
  var Tankschool = root.Tankschool = root.Tankschool || {};
  var rules = null;

  function has(object, name) { return Object.prototype.hasOwnProperty.call(object, name); }
  function sureAbove(right, count, cut) {
    var throws = count + 1, term, total, heads;
    cut = cut === undefined ? rules.cut : cut;
    term = Math.pow(1 - cut, throws);
    total = term;
    for (heads = 1; heads <= right; heads += 1) {
      term = term * (throws - heads + 1) / heads * cut / (1 - cut);
      total += term;
    }
    return total;
  }
  function stateOf(right, count, chance) {
    if (count === 0) { return "not_started"; }
    if (count < rules.fewest) { return "few"; }
    if (chance >= rules.sure) { return "ready"; }
    return right / count >= rules.cut ? "nearly" : "not_yet";
  }
  function mastery(competency, answers) {
    var found = answers.filter(function (one) { return one.competency === competency; }).slice(-rules.window);
    var right = found.filter(function (one) { return one.right; }).length, chance = sureAbove(right, found.length);
    return { competency: competency, right: right, count: found.length, chance: chance, state: stateOf(right, found.length, chance) };
  }
  /* The box of every card that was answered: a right answer moves it on where it was due, a wrong one sends it back. */
  function boxes(answers) {
    var found = {};
    answers.forEach(function (one) {
      var old = has(found, one.question) ? found[one.question] : null;
      if (!one.right || old === null) { found[one.question] = { box: 0, day: one.day }; }
      else if (one.day - old.day >= rules.days[old.box]) {
        found[one.question] = { box: Math.min(old.box + 1, rules.days.length - 1), day: one.day };
      }
    });
    return found;
  }
  function competencies(pool) {
    var seen = {}, names = [];
    pool.cards.forEach(function (card) {
      if (!has(seen, card.competency)) { seen[card.competency] = true; names.push(card.competency); }
    });
    return names;
  }
  function withinReach(pool, answers) {
    var names = competencies(pool), shown = {};
    names.forEach(function (name) {
      var state = mastery(name, answers).state;
      if (state === "nearly" || state === "ready") { shown[name] = true; }
    });
    return names.filter(function (name) {
      return (has(pool.needs, name) ? pool.needs[name] : []).every(function (need) { return has(shown, need) || names.indexOf(need) < 0; });
    });
  }
  function wantedDifficulty(level) {
    if (level.count < rules.fewest || level.right / level.count < 0.5) { return 1; }
    return level.right / level.count < rules.cut ? 2 : 3;
  }
  /* The first of a list by several measures, one after the other. */
  function least(list, measures) {
    return list.reduce(function (best, one) {
      var i, a, b;
      for (i = 0; i < measures.length; i += 1) {
        a = measures[i](one);
        b = measures[i](best);
        if (a !== b) { return a < b ? one : best; }
      }
      return best;
    });
  }
  function nextCard(pool, answers, day, seed) {
    var reach, level = {}, held, cards, order = {}, last, stream, found, open, weakest, here, fresh, wanted;
    if (!pool.cards.length) { return null; }
    reach = withinReach(pool, answers);
    if (!reach.length) { reach = competencies(pool); }
    reach.forEach(function (name) { level[name] = mastery(name, answers); });
    held = boxes(answers);
    cards = pool.cards.filter(function (card) { return has(level, card.competency); });
    stream = Tankschool.formula.stream(seed + "|practice|" + answers.length + "|" + day);
    stream.shuffle(cards.map(function (card, place) { return place; })).forEach(function (place, rank) { order[cards[place].question] = rank; });
    last = answers.length ? answers[answers.length - 1].question : "";
    function rank(card) { return order[card.question]; }
    function weakness(card) { return level[card.competency].chance; }
    function hardness(card) { return Math.abs(card.difficulty - wanted); }
    function lastDay(card) { return has(held, card.question) ? held[card.question].day : -1; }
    function notLast(list) {
      var others = list.filter(function (card) { return card.question !== last; });
      return others.length ? others : list;
    }
    function chosen(card, reason) {
      var at = level[card.competency];
      return {
        question: card.question, competency: card.competency, reason: reason, right: at.right, count: at.count,
        days: has(held, card.question) ? day - held[card.question].day : 0
      };
    }
    found = cards.filter(function (card) {
      return has(held, card.question) && day - held[card.question].day >= rules.days[held[card.question].box];
    });
    if (found.length) { return chosen(least(found, [weakness, rank]), "due"); }
    open = reach.filter(function (name) { return level[name].state !== "ready"; });
    if (open.length) {
      weakest = least(open, [function (name) { return level[name].chance; }, function (name) { return reach.indexOf(name); }]);
      here = cards.filter(function (card) { return card.competency === weakest; });
      wanted = wantedDifficulty(level[weakest]);
      fresh = here.filter(function (card) { return !has(held, card.question); });
      if (fresh.length) { return chosen(least(fresh, [hardness, rank]), "new"); }
      return chosen(least(notLast(here), [lastDay, hardness, rank]), "weakest");
    }
    return chosen(least(notLast(cards), [lastDay, rank]), "keep");
  }

  function pointsSpread(points, right, count) {
    var a = right + 1, b = count - right + 1, chance = 1, spread, i;
    for (i = 0; i < points; i += 1) { chance = chance * (b + i) / (a + b + i); }
    spread = [chance];
    for (i = 0; i < points; i += 1) {
      chance = chance * (points - i) / (i + 1) * (a + i) / (b + points - i - 1);
      spread.push(chance);
    }
    return spread;
  }
  function joined(one, other) {
    var made = [], i, j;
    for (i = 0; i < one.length + other.length - 1; i += 1) { made.push(0); }
    for (i = 0; i < one.length; i += 1) { for (j = 0; j < other.length; j += 1) { made[i + j] += one[i] * other[j]; } }
    return made;
  }
  /* blueprint.points is a list of [competency, points], so that its order is sure. */
  function readiness(blueprint, answers) {
    var total = 0, expected = 0, spread = [1], levels = {}, names = [], needed, chance = 0, missing, weak, state, started = false;
    blueprint.points.forEach(function (pair) {
      var level = mastery(pair[0], answers);
      names.push(pair[0]);
      levels[pair[0]] = level;
      total += pair[1];
      started = started || level.count > 0;
      expected += pair[1] * (level.right + 1) / (level.count + 2);
      spread = joined(spread, pointsSpread(pair[1], level.right, level.count));
    });
    if (!(total > 0 && total <= rules.most_points)) { throw new Error("a paper has 1 to " + rules.most_points + " points"); }
    needed = blueprint.cut * total - 1e-9;
    spread.forEach(function (share, points) { if (points >= needed) { chance += share; } });
    missing = blueprint.critical.filter(function (name) { return mastery(name, answers).state !== "ready"; });
    weak = names.filter(function (name) { return levels[name].state !== "ready"; });
    weak = weak.map(function (name, place) { return [levels[name].chance, place, name]; })
      .sort(function (one, other) { return one[0] - other[0] || one[1] - other[1]; }).slice(0, 3).map(function (row) { return row[2]; });
    state = chance >= 0.5 ? "nearly" : "not_yet";
    if (!started) { state = "not_started"; } else if (chance >= rules.sure && !missing.length) { state = "ready"; }
    return { state: state, chance: chance, expected: expected / total, first: weak, critical: missing };
  }

  function why(choice, name, say) {
    function say_one_of(family, member, values) { return say.call(null, family + "." + member, values); }
    return say_one_of("practice.why", choice.reason, { name: name, right: choice.right, count: choice.count, days: choice.days });
  }
  function told(level, name, say) {
    function say_one_of(family, member, values) { return say.call(null, family + "." + member, values); }
    return say_one_of("practice.state", level.state, { name: name, right: level.right, count: level.count });
  }
  /* Answers as a progress file holds them: {good, left}; what is damaged is left out. Never throws. */
  function readAnswers(data) {
    var good;
    if (!Array.isArray(data)) { return { good: [], left: data === null || data === undefined ? 0 : 1 }; }
    good = data.slice(-rules.most_answers).filter(function (one) {
      return one && typeof one === "object" && !Array.isArray(one) && typeof one.question === "string" && typeof one.competency === "string" &&
        typeof one.right === "boolean" && typeof one.day === "number" && one.day >= 0 && one.day <= rules.latest_day && one.day === Math.floor(one.day);
    }).map(function (one) { return { question: one.question, competency: one.competency, day: one.day, right: one.right }; });
    return { good: good, left: data.length - good.length };
  }

  Tankschool.practice = {
    load: function (data) { rules = data; }, sureAbove: sureAbove, mastery: mastery, boxes: boxes, withinReach: withinReach,
    next: nextCard, readiness: readiness, pointsSpread: pointsSpread, why: why, told: told, readAnswers: readAnswers
  };
}(this));
