/* The one-file edition: shows the part that the address after "#" names, and finds words in all of them. A part travels
   packed and is opened when it is first shown. */
(function (T) {
  "use strict";
  var page = T.page, say = page.say, make = page.make;
  var main = document.getElementById("main"), articles = Array.prototype.slice.call(document.querySelectorAll("main > article"));
  var field = document.getElementById("find"), found = document.getElementById("found"), index = null, live = [];
  var BETWEEN = /[\s\-\u0964]+/, MOST_SHOWN = 30;

  function packOf(article) { return article.querySelector("script.ts-packed"); }

  /** Unpack a part's own markup, once. */
  function open(article) {
    var pack = packOf(article);
    if (pack) { pack.outerHTML = T.unpack(pack.textContent); }
  }

  /** Unpack the part that has a question, so that its drawing can be taken from there. */
  function openPartOf(id) {
    articles.forEach(function (article) {
      var mine = packOf(article) && Array.prototype.some.call(article.querySelectorAll("script.ts-data"), function (block) {
        return id in (T.carried(block).questions || {});
      });
      if (mine) { open(article); }
    });
  }

  function show(article) {
    open(article);
    if (live.indexOf(article) < 0) {
      live.push(article);
      T.bringToLife(article);
    }
    articles.forEach(function (one) { one.hidden = one !== article; });
    Array.prototype.forEach.call(document.querySelectorAll(".contents a"), function (link) {
      if (link.getAttribute("href") === "#" + article.id) { link.setAttribute("aria-current", "page"); }
      else { link.removeAttribute("aria-current"); }
    });
    page.scrollable();
    document.title = article.querySelector("h1").textContent + " \u00b7 " + T.course.title;
  }

  /** Go to what the address names. A name that is nowhere in the course leaves the page as it is. */
  function go(first) {
    var name, target, article;
    try { name = decodeURIComponent(location.hash.slice(1)); } catch (error) { name = ""; }
    article = name ? articles.filter(function (one) { return one.id === name.split(".")[0]; })[0] : articles[0];
    if (article) { open(article); }
    target = article && name ? document.getElementById(name) : article;
    if (!target && !first) { return; }
    if (!target) { target = article = articles[0]; }
    show(article);
    if (target === article) { window.scrollTo(0, 0); } else { target.scrollIntoView(); }
    if (!first) {
      target.setAttribute("tabindex", "-1");
      target.focus({preventScroll: true});
    }
  }

  function words(text) { return text.toLowerCase().split(BETWEEN).filter(Boolean); }

  function isNoStopWord(word) { return T.course.stopWords.indexOf(word) < 0; }

  /** A part to be read: as it is shown, or apart from the page where it was not shown yet. */
  function unopened(article) {
    var pack = packOf(article), apart = document.createElement("template");
    if (!pack) { return article; }
    apart.innerHTML = "<div>" + T.unpack(pack.textContent) + "</div>";
    return apart.content.firstChild;
  }

  /** All headings with the text that follows them, as the site's own search has them. */
  function makeIndex() {
    var sections = [];
    articles.forEach(function (article) {
      var part = unopened(article), title = part.querySelector("h1").textContent;
      var walker = document.createTreeWalker(part, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT, null), node, here = null, heading = null;
      while ((node = walker.nextNode())) {
        if (node.nodeType === 1) {
          if (/^H[1-3]$/.test(node.tagName) && node.id && !node.closest("[data-search-exclude]")) {
            heading = node;
            here = {id: node.tagName === "H1" ? article.id : node.id, page: title, title: node.textContent, text: []};
            sections.push(here);
          }
        } else if (here && !heading.contains(node) && !/^(script|style)$/i.test(node.parentNode.nodeName) && !node.parentNode.closest("[data-search-exclude]")) { here.text.push(node.nodeValue); }
      }
    });
    sections.forEach(function (one) { one.words = words(one.text.join(" ")).filter(isNoStopWord); one.titleWords = words(one.title).filter(isNoStopWord); });
    return sections;
  }

  /** Whether two words are the same but for one slip: a letter too many, too few, another one, or two in turn. */
  function oneSlip(a, b) {
    var i = 0, rest;
    if (Math.abs(a.length - b.length) > 1) { return false; }
    while (i < a.length && i < b.length && a.charAt(i) === b.charAt(i)) { i += 1; }
    rest = [a.slice(i), b.slice(i)];
    return rest[0].slice(1) === rest[1].slice(1) || rest[0] === rest[1].slice(1) || rest[0].slice(1) === rest[1] ||
      (rest[0].charAt(0) === rest[1].charAt(1) && rest[0].charAt(1) === rest[1].charAt(0) && rest[0].slice(2) === rest[1].slice(2));
  }

  function hits(terms, fits) {
    var list = [];
    index.forEach(function (section, place) {
      var many = 0, score = 0;
      terms.forEach(function (term) {
        var inTitle = section.titleWords.filter(function (word) { return fits(word, term); }).length;
        var inText = section.words.filter(function (word) { return fits(word, term); }).length;
        if (inTitle || inText) { many += 1; score += inTitle * 20 + Math.min(inText, 10); }
      });
      if (many) { list.push({section: section, many: many, score: score, place: place}); }
    });
    list.sort(function (a, b) { return b.many - a.many || b.score - a.score || a.place - b.place; });
    return list.map(function (hit) { return hit.section; });
  }

  /** Sections that hold a word starting like one asked for; only where there is none, words with one slip. */
  function search(text) {
    var terms = words(text), list;
    index = index || makeIndex();
    list = hits(terms, function (word, term) { return word.indexOf(term) === 0; });
    if (!list.length) {
      list = hits(terms.filter(function (term) { return term.length >= 4; }), oneSlip);
    }
    return list;
  }

  function showHits() {
    var text = field.value, list;
    page.empty(found);
    if (!text.replace(/\s/g, "")) { return; }
    list = search(text);
    found.appendChild(make("p", {role: "status"}, list.length ? say("page.found", {count: list.length}) : say("page.found_none")));
    found.appendChild(make("ol", {}, list.slice(0, MOST_SHOWN).map(function (section) {
      return make("li", {}, make("a", {href: "#" + section.id, click: function () { field.value = ""; page.empty(found); }},
        section.title === section.page ? section.title : section.title + " \u00b7 " + section.page));
    })));
  }

  document.documentElement.className += " with-script";
  field.parentNode.hidden = false;
  field.addEventListener("input", showHits);
  field.form.addEventListener("submit", function (event) { event.preventDefault(); showHits(); });
  window.addEventListener("hashchange", function () { go(false); });
  document.querySelector(".skip").addEventListener("click", function (event) { event.preventDefault(); main.focus(); });
  T.openPartOf = openPartOf;
  go(true);
  T.search = search;
})(window.Tankschool);
