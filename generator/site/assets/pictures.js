/* A module in pictures: one card at a time, with big targets, by tap and by the arrow keys. A trainer's recording is
   played where there is one; else the browser speaks, if it has a voice for the language on this computer. */
(function (T) {
  "use strict";
  var page = T.page, say = page.say, make = page.make, language = T.course.language;

  /** A voice of this language that needs no internet; null where the browser has none. */
  function voice() {
    var voices = window.speechSynthesis ? window.speechSynthesis.getVoices() : [];
    return Array.prototype.filter.call(voices, function (one) {
      return one.localService && one.lang.toLowerCase().replace("_", "-").split("-")[0] === language;
    })[0] || null;
  }

  function textOf(card) {
    return Array.prototype.map.call(card.querySelectorAll(".ts-pic-text,.ts-pic-care"), function (part) { return part.textContent; }).join(" ");
  }

  function quiet(list) {
    Array.prototype.forEach.call(list.querySelectorAll("audio"), function (sound) { sound.pause(); });
    if (window.speechSynthesis) { window.speechSynthesis.cancel(); }
  }

  function speak(text) {
    var said = new window.SpeechSynthesisUtterance(text);
    said.voice = voice();
    said.lang = said.voice.lang;
    said.rate = 0.85;
    window.speechSynthesis.speak(said);
  }

  function start(list) {
    var cards = Array.prototype.slice.call(list.children), here = 0, all = false;
    var place = make("p", {"class": "ts-pic-place", role: "status"});
    var back = page.button(say("page.pictures.back"), function () { go(here - 1); }, "ts-pic-go");
    var next = page.button(say("page.pictures.next"), function () { go(here + 1); }, "ts-pic-go ts-main");
    var listen = page.button(say("page.pictures.listen"), hear);
    var every = page.button("", function () { all = !all; show(); });

    function hear() {
      var sound = cards[here].querySelector("audio");
      quiet(list);
      if (sound) { sound.currentTime = 0; sound.play(); } else if (voice()) { speak(textOf(cards[here])); }
    }

    function show() {
      cards.forEach(function (card, number) { card.hidden = !all && number !== here; });
      place.textContent = say("page.pictures.place", {number: here + 1, all: cards.length});
      place.appendChild(make("span", {"class": "ts-hidden"}, ". " + textOf(cards[here])));
      back.setAttribute("aria-disabled", String(here === 0));
      next.setAttribute("aria-disabled", String(here === cards.length - 1));
      [back, next, place].forEach(function (part) { part.hidden = all; });
      listen.hidden = all || !(cards[here].querySelector("audio") || voice());
      every.textContent = all ? say("page.pictures.single") : say("page.pictures.every");
    }

    function go(number) {
      if (number < 0 || number >= cards.length) { return; }
      here = number;
      quiet(list);
      show();
      list.scrollIntoView();
      T.path.stop(list.getAttribute("data-stop") + "#" + cards[here].id.split(".").pop());
    }

    /** The card that the address names. */
    function named() {
      return cards.map(function (card) { return card.id; }).indexOf(location.hash.slice(1));
    }

    function key(event) {
      var step = {ArrowRight: 1, ArrowLeft: -1}[event.key];
      if (!step || all || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey || list.offsetParent === null) { return; }
      if (/^(INPUT|SELECT|TEXTAREA|AUDIO)$/.test(event.target.tagName)) { return; }
      event.preventDefault();
      go(here + step);
    }

    Array.prototype.forEach.call(list.querySelectorAll("audio"), function (sound) { sound.controls = false; });
    list.parentNode.insertBefore(make("div", {"class": "ts-pic-bar"}, [back, place, next]), list.nextSibling);
    list.parentNode.insertBefore(make("div", {"class": "ts-buttons"}, [listen, every]), list.nextSibling.nextSibling);
    document.addEventListener("keydown", key);
    window.addEventListener("hashchange", function () { if (named() >= 0) { go(named()); } });
    if (window.speechSynthesis && window.speechSynthesis.addEventListener) { window.speechSynthesis.addEventListener("voiceschanged", show); }
    here = Math.max(0, named());
    list.className += " ts-live";
    show();
  }

  T.pictures = {start: start};
})(window.Tankschool);
