/* What all scripts of a page share: the words of its language, numbers as people read them, and ways to make elements.
   Words come from course.js; only plain text is ever put into the page, never markup that someone typed. */
window.Tankschool = window.Tankschool || {};
(function (T) {
  "use strict";
  var course = T.course;

  function pluralForm(count) {
    if (course.language === "hi") { return count >= 0 && count <= 1 ? "one" : "other"; }
    return count === 1 ? "one" : "other";
  }

  /** A part of the course that is seldom asked for and travels packed; opened when it is first asked for. */
  function opened(name) {
    if (typeof course[name] === "string") { course[name] = JSON.parse(T.unpack(course[name])); }
    return course[name];
  }

  function wordOf(key) { return key in course.words ? course.words[key] : opened("seldomWords")[key]; }

  /** The text of a key with its slots filled; `count` also chooses the plural form. */
  function worded(key, values) {
    var text = wordOf(key);
    if (text === undefined) { throw new Error("no word '" + key + "'"); }
    if (typeof text !== "string") { text = text[pluralForm(values.count)]; }
    return text.replace(/\{([a-z_]+)\}/g, function (slot, name) {
      if (!values || !(name in values)) { throw new Error("'" + key + "' needs a value for " + name); }
      return String(values[name]);
    });
  }

  /** The text of `family.member`, where the member is only known at run time. */
  function wordedOneOf(family, member, values) { return worded(family + "." + member, values); }

  /** A rounded number with the language's thousands commas and a true minus sign. */
  function number(shown) {
    var sign = shown.charAt(0) === "-" ? "\u2212" : "";
    var digits = (sign ? shown.slice(1) : shown).split(".");
    var whole = digits[0], tail = whole.slice(-3), head = whole.slice(0, -3);
    var step = course.language === "hi" ? 2 : 3, groups = [];
    while (head) { groups.unshift(head.slice(-step)); head = head.slice(0, -step); }
    groups.push(tail);
    return sign + groups.join(",") + (digits.length > 1 ? "." + digits[1] : "");
  }

  /** The word of a unit after a rounded number; some have another one after 1. */
  function unitAfter(shown, unit) {
    var one = pluralForm(Number(shown)) === "one" && (course.language === "hi" || shown.indexOf(".") < 0);
    return wordedOneOf(one && ("unit_for_one." + unit) in course.words ? "unit_for_one" : "unit", unit);
  }

  /** A rounded number and its unit; a fraction of zeros is left out: 12 m and not 12.0 m. */
  function withUnit(shown, unit) {
    var said = shown.replace(/\.0+$/, "");
    return number(said) + (unit ? "\u00a0" + unitAfter(said, unit) : "");
  }

  /** An element with attributes and children; texts become text, a function becomes what a click does. */
  function make(tag, attributes, children) {
    var element = document.createElement(tag), name;
    for (name in attributes || {}) {
      if (name === "click") { element.addEventListener("click", attributes[name]); }
      else if (attributes[name] !== null) { element.setAttribute(name, attributes[name]); }
    }
    [].concat(children === undefined ? [] : children).forEach(function (child) {
      if (child === null) { return; }
      element.appendChild(typeof child === "string" ? document.createTextNode(child) : child);
    });
    return element;
  }

  function button(text, click, kind) {
    return make("button", {type: "button", "class": "ts-button" + (kind ? " " + kind : ""), click: click}, text);
  }

  function empty(element) { while (element.firstChild) { element.removeChild(element.firstChild); } }

  /** All that the page's JSON blocks and the bank carry, joined: questions, scenarios and drawings by id. */
  function pageData(part) {
    var all = {questions: {}, scenarios: {}, mock: {}, drawings: {}, drawing_of: {}};
    var found = Array.prototype.map.call((part || document).querySelectorAll("script.ts-data"), T.carried);
    if (T.bank) {
      T.bank = typeof T.bank === "string" ? JSON.parse(T.unpack(T.bank)) : T.bank;
      found.unshift(T.bank);
    }
    found.forEach(function (data) {
      Object.keys(all).forEach(function (kind) {
        Object.keys(data[kind] || {}).forEach(function (id) { all[kind][id] = data[kind][id]; });
      });
    });
    return all;
  }

  /** A question's drawing, a copy with ids of its own and all its lines: from this page's data, or from its card. */
  function figureOf(id, prefix) {
    var data = pageData(), own = data.drawings[data.drawing_of[id]], figure, copy;
    var found;
    if (own) {
      found = make("div");
      found.innerHTML = own;  /* our own drawing, told once for all its questions */
    } else {
      if (T.openPartOf) { T.openPartOf(id); }
      found = document.querySelector('[data-question="' + id + '"]');
    }
    figure = found && found.querySelector(".ts-figure");
    function named(text) { return text.split(" ").map(function (one) { return prefix + one; }).join(" "); }
    if (!figure) { return null; }
    copy = figure.cloneNode(true);
    Array.prototype.forEach.call(copy.querySelectorAll("use"), function (use) {
      var lines = document.getElementById(use.getAttribute("href").slice(1));
      if (lines) { use.parentNode.replaceChild(lines.cloneNode(true), use); }
    });
    Array.prototype.forEach.call(copy.querySelectorAll("*"), function (element) {
      ["aria-labelledby", "aria-describedby", "id"].forEach(function (name) {
        var value = element.getAttribute(name);
        if (value) { element.setAttribute(name, named(value)); }
      });
    });
    return copy;
  }

  /** A piece that is wider than the page can be scrolled with the arrow keys once it takes focus; each with its own name. */
  function scrollable() {
    var pieces = document.querySelectorAll(".md-typeset__scrollwrap, .ts-figure, .ts-worked, .ts-formula, .ts-more, .ts-scroll");
    Array.prototype.forEach.call(pieces, function (piece, number) {
      if (piece.scrollWidth > piece.clientWidth) {
        piece.setAttribute("tabindex", "0");
        piece.setAttribute("role", "region");
        piece.setAttribute("aria-label", T.page.say("page.scrolls", {number: number + 1}));
      } else if (piece.getAttribute("role") === "region") {
        piece.removeAttribute("tabindex");
        piece.removeAttribute("role");
        piece.removeAttribute("aria-label");
      }
    });
  }

  T.page = {say: worded, say_one_of: wordedOneOf, number: number, withUnit: withUnit, make: make, button: button, empty: empty,
    wordOf: wordOf, opened: opened, data: pageData, scrollable: scrollable, figureOf: figureOf};
})(window.Tankschool);
