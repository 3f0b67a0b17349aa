/* Brings a page to life: its cards, the learner's panel, and what scrolls sideways can be reached by keyboard. */
(function (T) {
  "use strict";
  var data = T.page.data();

  function each(selector, action) { Array.prototype.forEach.call(document.querySelectorAll(selector), action); }

  /** One exercise that fails stays as it is printed; the others come to life all the same, and the fault is told. */
  function safely(action) {
    try { action(); } catch (error) { window.setTimeout(function () { throw error; }, 0); }
  }

  if (T.looks) { T.looks.start(); }
  T.learner.start();
  each("[data-question]", function (place) {
    safely(function () { T.card.start(place, data.questions[place.getAttribute("data-question")]); });
  });
  each("[data-scenario]", function (place) {
    safely(function () { T.scenario.start(place, data.scenarios[place.getAttribute("data-scenario")]); });
  });
  each(".ts-mock", function (place) { safely(function () { T.mock.start(place, data); }); });
  each(".ts-sheets", function (place) { safely(function () { T.sheetMaker.start(place, data); }); });
  each(".ts-practice", function (place) { safely(function () { T.practicePage.start(place, data); }); });
  each(".ts-readings", function (place) { safely(function () { T.readingsPage.start(place); }); });
  each(".ts-planner", function (place) { safely(function () { T.planner.start(place); }); });
  if (T.check) { each(".ts-check", function (place) { safely(function () { T.check.start(place); }); }); }
  T.path.start();
  each(".ts-pics", function (place) { safely(function () { T.pictures.start(place); }); });
  T.card.plainMath(document);
  T.page.scrollable();
  window.addEventListener("resize", T.page.scrollable);
  window.addEventListener("hashchange", function () { window.setTimeout(T.page.scrollable, 0); });
})(window.Tankschool);
