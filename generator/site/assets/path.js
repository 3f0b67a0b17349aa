/* The learner's path: where this learner stopped, which modules are done or wait for others, what is learned already.
   The place is a note of the learner's; where a browser keeps none, the first exercise that waits is found instead. */
(function (T) {
  "use strict";
  var page = T.page, progress = T.progress, say = page.say, make = page.make;
  var PLACE = /^([a-z0-9-]+)(?:#([a-z0-9-]+))?$/;

  function each(within, selector, action) { Array.prototype.forEach.call(within.querySelectorAll(selector), action); }

  function address(name, anchor) {
    if (document.getElementById("main")) { return "#" + name + (anchor ? "." + anchor : ""); }
    return name + ".html" + (anchor ? "#" + anchor : "");
  }

  function stop(place) { progress.note("at", place); }

  /** Remember the page that is open, where it is a part of the course to come back to. */
  function seen() {
    each(document, "[data-stop]", function (mark) {
      var article = mark.closest("article"), kept = PLACE.exec(progress.noted("at") || ""), name = mark.getAttribute("data-stop");
      if (!(article && article.hidden) && !(kept && kept[1] === name)) { stop(name); }
    });
  }

  function idsOf(element, attribute) { return (element.getAttribute(attribute) || "").split(" ").filter(Boolean); }

  function isRight(id) { return progress.get(id).right > 0; }

  function done(entry) {
    var ids = idsOf(entry, "data-asks");
    return ids.length > 0 && ids.every(isRight);
  }

  /** The first exercise that waits in a module that was begun. */
  function waiting(entries) {
    var found = null;
    entries.forEach(function (entry) {
      var ids = idsOf(entry, "data-asks"), open = ids.filter(function (id) { return !isRight(id); });
      var begun = ids.some(function (id) { return progress.get(id).tried > 0; });
      if (!found && begun && open.length) { found = {name: entry.getAttribute("data-module"), anchor: "exercise-" + open[0]}; }
    });
    return found;
  }

  function home(place) {
    var titles = JSON.parse(place.getAttribute("data-titles")), go = place.querySelector(".ts-continue");
    var entries = Array.prototype.slice.call(document.querySelectorAll("[data-module]"));

    function draw() {
      var at = PLACE.exec(progress.noted("at") || ""), to = at && titles[at[1]] ? {name: at[1], anchor: at[2]} : waiting(entries);
      var many = 0;
      page.empty(go);
      go.hidden = !to;
      if (to) { go.appendChild(make("a", {"class": "ts-go ts-quiet", href: address(to.name, to.anchor)}, say("page.path.continue", {title: titles[to.name]}))); }
      entries.forEach(function (entry) {
        var open = idsOf(entry, "data-needs").filter(function (need) {
          return !entries.some(function (other) { return other.getAttribute("data-module") === need && done(other); });
        }).map(function (need) { return titles[need]; });
        var text = done(entry) ? say("page.path.done") : (open.length ? say("page.path.first", {titles: open.join(", ")}) : "");
        entry.querySelector(".ts-module-state").textContent = text;
      });
      each(document, "[data-right]", function (item) {
        item.hidden = !idsOf(item, "data-right").every(isRight);
        many += item.hidden ? 0 : 1;
      });
      each(document, ".ts-can-none", function (none) { none.hidden = many > 0; });
    }

    draw();
    progress.listen(draw);
    window.addEventListener("hashchange", draw);
  }

  T.path = {stop: stop, start: function (part) { each(part, ".ts-path", home); }, follow: function () {
    window.addEventListener("load", seen);
    window.addEventListener("hashchange", function () { window.setTimeout(seen, 0); });
  }};
})(window.Tankschool);
