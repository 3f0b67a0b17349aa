/* Brings a page to life: its cards, the learner's panel, and what scrolls sideways can be reached by keyboard. */
(function (T) {
  "use strict";
  var data = T.page.data();

  function each(selector, action) { Array.prototype.forEach.call(document.querySelectorAll(selector), action); }

  /** A piece that is wider than the page can be scrolled with the arrow keys once it takes focus; each with its own name. */
  function scrollable() {
    each(".md-typeset__scrollwrap, .ts-figure, .ts-worked, .ts-formula, .ts-more, .ts-scroll", function (piece, number) {
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

  /** One exercise that fails stays as it is printed; the others come to life all the same, and the fault is told. */
  function safely(action) {
    try { action(); } catch (error) { window.setTimeout(function () { throw error; }, 0); }
  }

  T.learner.start();
  each("[data-question]", function (place) {
    safely(function () { T.card.start(place, data.questions[place.getAttribute("data-question")]); });
  });
  each("[data-scenario]", function (place) {
    safely(function () { T.scenario.start(place, data.scenarios[place.getAttribute("data-scenario")]); });
  });
  T.card.plainMath(document);
  scrollable();
  window.addEventListener("resize", scrollable);
  window.addEventListener("hashchange", function () { window.setTimeout(scrollable, 0); });
})(window.Tankschool);
