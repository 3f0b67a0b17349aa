/* Text size and contrast as the reader wants them, kept for all pages of this computer. It runs in the head of a page, so
   that nothing is drawn twice; the panel to choose comes when the page's words are there. */
window.Tankschool = window.Tankschool || {};
(function (T) {
  "use strict";
  var KEY = "tankschool.v1.look", SIZES = ["ordinary", "large", "largest"], CONTRASTS = ["device", "strong", "ordinary"];
  var root = document.documentElement, look = {size: "ordinary", contrast: "device"};

  function load() {
    var kept = null;
    try { kept = JSON.parse(window.localStorage.getItem(KEY)); } catch (error) { kept = null; }
    if (kept && SIZES.indexOf(kept.size) >= 0) { look.size = kept.size; }
    if (kept && CONTRASTS.indexOf(kept.contrast) >= 0) { look.contrast = kept.contrast; }
  }

  function keep() {
    try { window.localStorage.setItem(KEY, JSON.stringify(look)); } catch (error) { return; }
  }

  function apply() {
    SIZES.forEach(function (size) { root.classList.toggle("ts-size-" + size, look.size === size); });
    CONTRASTS.forEach(function (contrast) { root.classList.toggle("ts-contrast-" + contrast, look.contrast === contrast); });
  }

  function choices(name, legend, options, text) {
    var page = T.page;
    return page.make("fieldset", {"class": "ts-looks-set"}, [page.make("legend", {}, legend)].concat(options.map(function (option) {
      var input = page.make("input", {type: "radio", name: "ts-looks-" + name, value: option});
      input.checked = look[name] === option;
      input.addEventListener("change", function () {
        look[name] = option;
        apply();
        keep();
        page.scrollable();
      });
      return page.make("label", {}, [input, page.make("span", {}, text(option))]);
    })));
  }

  function start() {
    var page = T.page, main = document.getElementById("main"), article = document.querySelector("article"), open = false;
    var piece = page.make("div", {"class": "ts-looks-choices"}, [
      choices("size", page.say("page.looks.size"), SIZES, function (one) { return page.say_one_of("page.looks.sizes", one); }),
      choices("contrast", page.say("page.looks.contrast"), CONTRASTS, function (one) { return page.say_one_of("page.looks.contrasts", one); })]);
    var toggle = page.button(page.say("page.looks.title"), function () {
      open = !open;
      piece.hidden = !open;
      toggle.setAttribute("aria-expanded", String(open));
    });
    var place = page.make("div", {"class": "ts-looks", "data-search-exclude": ""}, [toggle, piece]);
    piece.hidden = true;
    toggle.setAttribute("aria-expanded", "false");
    if (main) { main.insertBefore(place, main.firstChild); } else if (article) { article.insertBefore(place, article.firstChild); }
  }

  load();
  apply();
  T.looks = {start: start};
})(window.Tankschool);
