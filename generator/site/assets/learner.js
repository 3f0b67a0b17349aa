/* The learner's panel: who learns, what is done, and where it is kept; on the home page with everything, elsewhere short. */
(function (T) {
  "use strict";
  var page = T.page, progress = T.progress, say = page.say, make = page.make, panels = 0;

  /** The state of keeping, in words. */
  function stateText() {
    var state = progress.state();
    if (state === "kept") { return say("page.progress.kept"); }
    return state === "full" ? say("page.progress.full") : say("page.progress.refused");
  }

  function nameOf(learner) { return learner.name || say("page.progress.no_name"); }

  /** Told plainly where a browser keeps each page by itself; the one-file edition is one page and has no such trouble. */
  function apartNotice() {
    var file = "tankschool-" + T.course.language + ".html";
    return make("div", {"class": "ts-apart", role: "note"}, [make("p", {}, say("page.progress.apart")),
      make("p", {}, make("a", {href: "../../phone/" + file}, say("page.progress.apart_open", {file: file})))]);
  }

  function fileName(learner) {
    var plain = learner.name.toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");
    return "tankschool-progress" + (plain ? "-" + plain : "") + ".json";
  }

  function saveFile() {
    var address = URL.createObjectURL(new Blob([progress.exported()], {type: "application/json"}));
    var link = make("a", {href: address, download: fileName(progress.current())});
    document.body.appendChild(link);
    link.click();
    document.body.removeChild(link);
    window.setTimeout(function () { URL.revokeObjectURL(address); }, 10000);
    return say("page.progress.file_saved", {file: fileName(progress.current())});
  }

  function importText(result) {
    if (result.ok !== undefined) { return say("page.progress.file_read", {count: result.ok}); }
    return page.say_one_of("page.progress.wrong", result.wrong);
  }

  function panel(place, number) {
    var note = make("p", {role: "status", "class": "ts-note"});
    var body = make("div");
    var sure = false;

    function tell(text) { note.textContent = text; }

    function chooser() {
      var select = make("select", {id: "ts-learner-" + number});
      progress.learners().forEach(function (one) {
        var option = make("option", {value: one.id}, nameOf(one));
        option.selected = one.id === progress.current().id;
        select.appendChild(option);
      });
      select.addEventListener("change", function () { progress.choose(select.value); tell(stateText()); });
      return make("div", {"class": "ts-field"}, [make("label", {"for": "ts-learner-" + number}, say("page.progress.who")), select]);
    }

    function newcomer() {
      var input = make("input", {type: "text", id: "ts-new-" + number, maxlength: "40", autocomplete: "off"});
      function join() {
        if (progress.add(input.value)) { tell(stateText()); } else { tell(say("page.progress.name_first")); }
      }
      input.addEventListener("keydown", function (event) { if (event.key === "Enter") { event.preventDefault(); join(); } });
      return make("div", {"class": "ts-field"}, [make("label", {"for": "ts-new-" + number}, say("page.progress.new_name")),
        make("div", {"class": "ts-answer"}, [input, page.button(say("page.progress.add"), join)])]);
    }

    function files() {
      var input = make("input", {type: "file", accept: ".json,application/json", id: "ts-file-" + number, "class": "ts-hidden", tabindex: "-1", "aria-hidden": "true"});
      input.addEventListener("change", function () {
        var file = input.files[0], reader = new FileReader();
        if (!file) { return; }
        if (file.size > 8000000) { tell(page.say_one_of("page.progress.wrong", "size")); input.value = ""; return; }
        reader.onload = function () { tell(importText(progress.imported(String(reader.result)))); };
        reader.onerror = function () { tell(page.say_one_of("page.progress.wrong", "foreign")); };
        reader.readAsText(file, "utf-8");
        input.value = "";
      });
      return make("div", {"class": "ts-buttons"}, [
        page.button(say("page.progress.save_file"), function () { tell(saveFile()); }),
        page.button(say("page.progress.read_file"), function () { input.click(); }),
        page.button(sure ? say("page.progress.clear_sure") : say("page.progress.clear"), function () {
          if (sure) { sure = false; progress.clear(); tell(say("page.progress.cleared")); }
          else { sure = true; draw(); tell(say("page.progress.clear_warning", {name: nameOf(progress.current())})); }
        }), input]);
    }

    function draw() {
      var within = body.contains(document.activeElement) ? document.activeElement.id || document.activeElement.textContent : null;
      page.empty(body);
      if (place.hasAttribute("data-full")) {
        [chooser(), newcomer(), files(), T.code.panel(number, tell)].forEach(function (part) { body.appendChild(part); });
      } else {
        body.appendChild(make("div", {"class": "ts-short"}, [
          make("p", {}, say("page.progress.learner_is", {name: nameOf(progress.current())})),
          make("p", {}, make("a", {href: place.getAttribute("data-home")}, say("page.progress.change")))]));
      }
      body.appendChild(make("p", {"class": "ts-saved"}, stateText()));
      if (progress.apart() && !document.getElementById("main")) { body.appendChild(apartNotice()); }
      if (within) {
        Array.prototype.some.call(body.querySelectorAll("[id],button"), function (element) {
          if (element.id !== within && element.textContent !== within) { return false; }
          element.focus();
          return true;
        });
      }
    }

    place.appendChild(body);
    place.appendChild(note);
    draw();
    progress.listen(function () { sure = false; draw(); });
  }

  function overview(place) {
    function draw() {
      var ids = place.getAttribute("data-questions").split(" ");
      var right = ids.filter(function (id) { return progress.get(id).right > 0; }).length;
      place.textContent = say("page.progress.of_module", {right: right, count: ids.length});
    }
    draw();
    progress.listen(draw);
  }

  T.learner = {stateText: stateText, start: function (part) {
    Array.prototype.forEach.call(part.querySelectorAll(".ts-learner"), function (place) {
      panel(place, panels);
      panels += 1;
    });
    Array.prototype.forEach.call(part.querySelectorAll(".ts-module-progress"), overview);
  }};
})(window.Tankschool);
