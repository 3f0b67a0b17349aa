/* Progress as letters to copy by hand: which questions were right once. Letters that look alike are left out, every group
   has a check letter of its own, so a slip is found with its place, and the last letters check the whole. */
(function (T) {
  "use strict";
  var LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789", GROUP = 4, HEAD = 4, TAIL = 4, LONGEST = 4000, VERSION = 0;

  /** Times two in the field of 32 elements: with it as weights, one wrong letter or two swapped ones never go unseen. */
  function doubled(value) { value *= 2; return value >= 32 ? value ^ 37 : value; }

  /** The sum of a group; with its check letter in front it is zero. */
  function checkOf(values) {
    return values.reduceRight(function (sum, value) { return doubled(sum ^ value); }, 0);
  }

  function draw(text, below) { return T.formula.stream(text).below(below); }

  function asValues(number, count) {
    var values = [], i;
    for (i = 0; i < count; i += 1) { values.unshift(number % 32); number = Math.floor(number / 32); }
    return values;
  }

  function letters(values) { return values.map(function (value) { return LETTERS.charAt(value); }).join(""); }

  function tail(values) { return asValues(draw("code|" + letters(values), 1048576), TAIL); }

  function head() { return [VERSION].concat(asValues(draw("ids|" + T.course.questions.join(" "), 32768), HEAD - 1)); }

  /** The current learner's code, as groups. */
  function make() {
    var ids = T.course.questions, values = [], groups = [], i, group;
    ids.forEach(function (id, place) {
      var at = Math.floor(place / 5);
      values[at] = (values[at] || 0) * 2 + (T.progress.get(id).right > 0 ? 1 : 0);
      if (place === ids.length - 1) { values[at] *= Math.pow(2, 4 - place % 5); }
    });
    while (values.length && values[values.length - 1] === 0) { values.pop(); }
    values = head().concat(values);
    values = values.concat(tail(values));
    for (i = 0; i < values.length; i += GROUP) {
      group = values.slice(i, i + GROUP);
      groups.push(letters(group.concat([checkOf(group)])));
    }
    return groups;
  }

  /** Take in a code. Returns {ok: how many were right} or {wrong: "size" | "letter" | "group" | "whole" | "newer" |
      "another_issue"}, with `group` where the place is known; then nothing was changed. */
  function read(text) {
    var typed, values, plain = [], i, group, bits = [], ids = T.course.questions, found;
    if (text.length > LONGEST) { return {wrong: "size"}; }
    typed = text.toUpperCase().replace(/[\s.,;:\-]+/g, "").split("");
    values = typed.map(function (letter) { return LETTERS.indexOf(letter); });
    if (values.indexOf(-1) >= 0) { return {wrong: "letter", group: Math.floor(values.indexOf(-1) / (GROUP + 1)) + 1}; }
    for (i = 0; i < values.length; i += GROUP + 1) {
      group = values.slice(i, i + GROUP + 1);
      if (group.length < 2 || checkOf(group.slice(0, -1)) !== group[group.length - 1]) { return {wrong: "group", group: i / (GROUP + 1) + 1}; }
      plain = plain.concat(group.slice(0, -1));
    }
    if (plain.length < HEAD + TAIL || letters(tail(plain.slice(0, -TAIL))) !== letters(plain.slice(-TAIL))) { return {wrong: "whole"}; }
    if (plain[0] !== VERSION) { return {wrong: "newer"}; }
    if (letters(plain.slice(0, HEAD)) !== letters(head())) { return {wrong: "another_issue"}; }
    plain.slice(HEAD, -TAIL).forEach(function (value) { for (i = 16; i >= 1; i /= 2) { bits.push((value & i) > 0); } });
    found = ids.filter(function (id, place) { return bits[place]; });
    found.forEach(T.progress.met);
    T.progress.changed();
    return {ok: found.length};
  }

  function told(result) {
    if (result.ok !== undefined) { return T.page.say("page.code.read", {count: result.ok}); }
    return T.page.say_one_of("page.code.wrong", result.wrong, {group: result.group || 0});
  }

  /** The part of the learner's panel: the code in numbered groups, and a field for one. */
  function panel(number, tell) {
    var page = T.page, say = page.say, element = page.make("div", {"class": "ts-code"}), shown = page.make("div");
    var field = page.make("textarea", {id: "ts-code-" + number, autocomplete: "off", spellcheck: "false", rows: "3", maxlength: String(LONGEST + 1)});
    element.appendChild(page.make("p", {}, say("page.code.about")));
    element.appendChild(page.make("div", {"class": "ts-buttons"}, page.button(say("page.code.show"), function () {
      page.empty(shown);
      shown.appendChild(page.make("ol", {"class": "ts-code-letters"}, make().map(function (group, place) {
        return page.make("li", {}, [page.make("span", {"class": "ts-count"}, String(place + 1) + "."), group]);
      })));
    })));
    element.appendChild(shown);
    element.appendChild(page.make("div", {"class": "ts-field"}, [page.make("label", {"for": field.id}, say("page.code.type")), field]));
    element.appendChild(page.make("div", {"class": "ts-buttons"}, page.button(say("page.code.use"), function () {
      tell(field.value.length ? told(read(field.value)) : say("page.code.type_first"));
    })));
    return element;
  }

  T.code = {make: make, read: read, panel: panel};
})(window.Tankschool);
