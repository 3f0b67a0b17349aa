/* Brings a page to life: its cards, the learner's panel, and what scrolls sideways can be reached by keyboard. The one file
   brings each of its parts to life when it is first shown. */
(function (T) {
  "use strict";

  /** One exercise that fails stays as it is printed; the others come to life all the same, and the fault is told. */
  function safely(action) {
    try { action(); } catch (error) { window.setTimeout(function () { throw error; }, 0); }
  }

  /** A page of the site, or one part of the one file. Pages that ask of all modules read what all of them carry. */
  T.bringToLife = function (part) {
    var data = T.page.data(part);
    T.learner.start(part);
    T.path.start(part);
    function each(selector, action) {
      Array.prototype.forEach.call(part.querySelectorAll(selector), function (place) { safely(function () { action(place); }); });
    }
    each("[data-question]", function (place) { T.card.start(place, data.questions[place.getAttribute("data-question")]); });
    each("[data-scenario]", function (place) { T.scenario.start(place, data.scenarios[place.getAttribute("data-scenario")]); });
    each(".ts-mock", function (place) { T.mock.start(place, T.page.data()); });
    each(".ts-sheets", function (place) { T.sheetMaker.start(place, T.page.data()); });
    each(".ts-practice", function (place) { T.practicePage.start(place, T.page.data()); });
    each(".ts-readings", function (place) { T.readingsPage.start(place); });
    each(".ts-planner", function (place) { T.planner.start(place); });
    if (T.check) { each(".ts-check", function (place) { T.check.start(place); }); }
    each(".ts-pics", function (place) { T.pictures.start(place); });
    T.card.plainMath(part);
  };

  if (T.looks) { T.looks.start(); }
  T.path.follow();
  if (!document.getElementById("main")) { T.bringToLife(document); }
  T.page.scrollable();
  window.addEventListener("resize", T.page.scrollable);
  window.addEventListener("hashchange", function () { window.setTimeout(T.page.scrollable, 0); });
})(window.Tankschool);
