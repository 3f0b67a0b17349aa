/* Works quantities out in the page: the twin of numbers.py, seed.py and book.py beside it.
 * A classic script in old, conservative JavaScript, so that it also runs in the browsers of old phones and from a file.
 * The formulas themselves come from `Book.javascript`, which calls `load`; ranges are looked at by the caller. */
(function (root) {
  "use strict";
  var Tankschool = root.Tankschool = root.Tankschool || {};
  var EDGE = 1e-9;
  var GUARD_DIGITS = 2;
  var RANGE = 4294967296;
  var SYMBOL = /^[A-Za-z]{1,3}[0-9]?(_[A-Za-z0-9]{1,3})?$/;

  function has(object, name) { return Object.prototype.hasOwnProperty.call(object, name); }
  function escaped(text) { return text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;"); }

  /* ----------------------------------------------------------- numbers that a person sees: numbers.py */
  function repeated(text, count) {
    var made = "";
    while (count > 0) { made += text; count -= 1; }
    return made;
  }
  /* 12 significant digits, halves up: {minus, digits, point}; the point stands behind the first `point` digits. */
  function read(value) {
    var parts;
    if (typeof value !== "number" || !isFinite(value)) { throw new Error(value + " cannot be shown"); }
    parts = Math.abs(value).toExponential(11).split("e");
    return { minus: value < 0, digits: parts[0].replace(".", ""), point: parseInt(parts[1], 10) + 1 };
  }
  /* One more in the last place: "199" becomes "200", "99" becomes "100". */
  function oneMore(digits) {
    var i = digits.length - 1;
    while (i >= 0 && digits.charAt(i) === "9") { i -= 1; }
    return (i < 0 ? "1" : digits.slice(0, i) + String(Number(digits.charAt(i)) + 1)) + repeated("0", digits.length - 1 - i);
  }
  /* The digits of a whole number of units in the last place, with the point put before the last `places`. */
  function pointed(digits, places, minus) {
    var whole = repeated("0", places + 1 - digits.length) + digits, text;
    whole = whole.replace(/^0+/, "");
    whole = repeated("0", places + 1 - whole.length) + whole;
    text = places ? whole.slice(0, -places) + "." + whole.slice(-places) : whole;
    return minus && /[1-9]/.test(text) ? "-" + text : text;
  }
  /* A number as it is printed: rounded half up on its decimal text, no grouping, no minus zero. */
  function show(value, places) {
    var found = read(value), kept = found.point + places, digits;
    if (kept >= found.digits.length) { digits = found.digits + repeated("0", kept - found.digits.length); }
    else if (kept < 0) { digits = "0"; }
    else {
      digits = found.digits.slice(0, kept) || "0";
      if (found.digits.charAt(kept) >= "5") { digits = oneMore(digits); }
    }
    return pointed(digits, places, found.minus);
  }
  /* The shortest plain decimal text of a number as it was given. */
  function showFull(value) {
    var places = Math.max(0, read(value).digits.length - read(value).point), text = show(value, places);
    return places ? text.replace(/0+$/, "").replace(/\.$/, "") : text;
  }

  /* ------------------------------------------------------------------- what a formula may call: numbers.py */
  function sound(value, why) {
    if (!isFinite(value)) { throw new Error(why); }
    return value;
  }
  function wholeUp(x) { return Math.ceil(sound(x, "no whole number above it") - EDGE) + 0; }
  function wholeDown(x) { return Math.floor(sound(x, "no whole number below it") + EDGE) + 0; }
  function interpolate(x, xs, ys) {
    var i;
    if (x <= xs[0]) { return ys[0]; }
    for (i = 1; i < xs.length; i += 1) {
      if (x <= xs[i]) { return ys[i - 1] + (ys[i] - ys[i - 1]) * ((x - xs[i - 1]) / (xs[i] - xs[i - 1])); }
    }
    return ys[ys.length - 1];
  }
  function pick(index, table) { return table[Math.min(Math.max(wholeDown(index), 0), table.length - 1)]; }
  /* Python refuses these where JavaScript goes on with Infinity or NaN, which a later min or max could hide. */
  function over(a, b) {
    if (b === 0) { throw new Error("division by zero"); }
    return a / b;
  }
  function power(a, b) { return sound(Math.pow(a, b), "a power without a value"); }
  function sqrt(x) { return sound(Math.sqrt(x), "a root of a negative number"); }
  function log(x) { return sound(Math.log(x), "a logarithm of a number that is not above zero"); }
  function exp(x) { return sound(Math.exp(x), "a number too large"); }

  /* -------------------------------------------------------------------------- drawn numbers: seed.py */
  /* The first bits of the fractional parts of the roots of the first primes, as SHA-256 has them. */
  function rootBits(count, exponent) {
    var made = [], candidate, i, prime, root;
    for (candidate = 2; made.length < count; candidate += 1) {
      prime = true;
      for (i = 2; i * i <= candidate; i += 1) { if (candidate % i === 0) { prime = false; } }
      if (prime) {
        root = Math.pow(candidate, exponent);
        made.push(((root - Math.floor(root)) * RANGE) >>> 0);
      }
    }
    return made;
  }
  var START = rootBits(8, 1 / 2), ROUNDS = rootBits(64, 1 / 3);

  function utf8(text) {
    var bytes = [], i, code, low;
    for (i = 0; i < text.length; i += 1) {
      code = text.charCodeAt(i);
      if (code >= 0xd800 && code < 0xe000) {
        low = text.charCodeAt(i + 1);
        if (code >= 0xdc00 || !(low >= 0xdc00 && low < 0xe000)) { throw new Error("a seed holds half a letter"); }
        code = 0x10000 + (code - 0xd800) * 0x400 + (low - 0xdc00);
        i += 1;
      }
      if (code < 0x80) { bytes.push(code); }
      else if (code < 0x800) { bytes.push(0xc0 | code >> 6, 0x80 | code & 63); }
      else if (code < 0x10000) { bytes.push(0xe0 | code >> 12, 0x80 | code >> 6 & 63, 0x80 | code & 63); }
      else { bytes.push(0xf0 | code >> 18, 0x80 | code >> 12 & 63, 0x80 | code >> 6 & 63, 0x80 | code & 63); }
    }
    return bytes;
  }
  function turned(x, by) { return x >>> by | x << 32 - by; }
  /* SHA-256 of bytes, as eight unsigned 32-bit words. */
  function sha256(bytes) {
    var words, state = START.slice(), w = [], length = bytes.length, total, block, i, s, t1, t2;
    total = (length + 9 + 63 >> 6) << 4;
    words = new Int32Array(total);
    for (i = 0; i < length; i += 1) { words[i >> 2] |= bytes[i] << 24 - (i & 3) * 8; }
    words[length >> 2] |= 0x80 << 24 - (length & 3) * 8;
    words[total - 2] = Math.floor(length / 0x20000000);
    words[total - 1] = length << 3;
    for (block = 0; block < total; block += 16) {
      s = state.slice();
      for (i = 0; i < 64; i += 1) {
        if (i < 16) { w[i] = words[block + i]; }
        else {
          t1 = turned(w[i - 15], 7) ^ turned(w[i - 15], 18) ^ w[i - 15] >>> 3;
          t2 = turned(w[i - 2], 17) ^ turned(w[i - 2], 19) ^ w[i - 2] >>> 10;
          w[i] = w[i - 16] + t1 + w[i - 7] + t2 | 0;
        }
        t1 = s[7] + (turned(s[4], 6) ^ turned(s[4], 11) ^ turned(s[4], 25)) + (s[4] & s[5] ^ ~s[4] & s[6]) + ROUNDS[i] + w[i] | 0;
        t2 = (turned(s[0], 2) ^ turned(s[0], 13) ^ turned(s[0], 22)) + (s[0] & s[1] ^ s[0] & s[2] ^ s[1] & s[2]) | 0;
        s = [t1 + t2 | 0, s[0], s[1], s[2], s[3] + t1 | 0, s[4], s[5], s[6]];
      }
      for (i = 0; i < 8; i += 1) { state[i] = state[i] + s[i] | 0; }
    }
    return state.map(function (word) { return word >>> 0; });
  }
  /* SHA-256 of a text's UTF-8, in hexadecimal; for texts too long for a list the browser's own encoder. */
  function hash(text) {
    var bytes = text.length > 100000 && root.TextEncoder ? new root.TextEncoder().encode(text) : utf8(text);
    return sha256(bytes).map(function (word) { return ("0000000" + word.toString(16)).slice(-8); }).join("");
  }
  /* Uniform numbers from SHA-256(seed || counter), the counter from 0, both read as big-endian 32-bit words. */
  function stream(seed) {
    var start = utf8(String(seed)), counter = 0, block = [], next = 0;
    function uint32() {
      if (next === block.length) {
        block = sha256(start.concat([counter >>> 24, counter >>> 16 & 255, counter >>> 8 & 255, counter & 255]));
        counter += 1;
        next = 0;
      }
      next += 1;
      return block[next - 1];
    }
    function below(count) {
      var limit, word;
      if (!(count >= 1 && count <= RANGE) || Math.floor(count) !== count) {
        throw new Error("below(" + count + "): the count runs from 1 to 2^32");
      }
      limit = RANGE - RANGE % count;
      do { word = uint32(); } while (word >= limit);
      return word % count;
    }
    function shuffle(items) {
      var mixed = items.slice(), last, other, item;
      for (last = mixed.length - 1; last > 0; last -= 1) {
        other = below(last + 1);
        item = mixed[last];
        mixed[last] = mixed[other];
        mixed[other] = item;
      }
      return mixed;
    }
    return { uint32: uint32, below: below, shuffle: shuffle };
  }

  /* ------------------------------------------------------------------------------- the graph: book.py */
  var givens = {}, quantities = {}, misconceptions = {}, plans = {};

  function load(data) {
    var name;
    for (name in data.givens) { if (has(data.givens, name)) { givens[name] = data.givens[name]; } }
    for (name in data.quantities) { if (has(data.quantities, name)) { quantities[name] = data.quantities[name]; } }
    for (name in data.misconceptions) {
      if (has(data.misconceptions, name)) { misconceptions[name] = data.misconceptions[name]; }
    }
    plans = {};
  }
  function entry(name) {
    if (has(givens, name)) { return givens[name]; }
    if (has(quantities, name)) { return quantities[name]; }
    throw new Error("'" + name + "' is neither a given nor a quantity");
  }
  function swapped(wrong) {
    var swap = {}, i, found;
    for (i = 0; i < wrong.length; i += 1) {
      if (!has(misconceptions, wrong[i])) { throw new Error("no misconception '" + wrong[i] + "'"); }
      found = misconceptions[wrong[i]];
      if (has(swap, found.of)) { throw new Error("'" + wrong[i] + "' and another misconception both distort '" + found.of + "'"); }
      swap[found.of] = found;
    }
    return swap;
  }
  /* What a name is worked out from: its own quantity, what a misconception puts in its place, or both in turn. */
  function movesOf(name, swap, fixed) {
    var quantity = has(quantities, name) ? quantities[name] : null;
    var mistake = has(swap, name) ? swap[name] : null, made = [];
    entry(name);
    if (quantity && has(fixed, name)) { return made; }
    if (quantity && (!mistake || mistake.needs.indexOf(name) >= 0)) { made.push(quantity); }
    if (mistake) { made.push(mistake); }
    return made;
  }
  /* All that the asked names need, themselves included: level by level, in the order that Python's graphlib gives. */
  function ancestors(asked, swap, fixed) {
    var needs = {}, todo = asked.slice(), nodes = [], waits = {}, followers = {}, ready, made = [], group;
    function touch(name) {
      if (!has(waits, name)) { waits[name] = 0; followers[name] = []; nodes.push(name); }
    }
    while (todo.length) {
      (function (name) {
        if (has(needs, name)) { return; }
        needs[name] = [];
        movesOf(name, swap, fixed).forEach(function (move) {
          move.needs.forEach(function (need) { if (need !== name) { needs[name].push(need); } });
        });
        todo = todo.concat(needs[name]);
      }(todo.pop()));
    }
    Object.keys(needs).sort().forEach(function (name) {
      touch(name);
      waits[name] += needs[name].length;
      needs[name].forEach(function (need) { touch(need); followers[need].push(name); });
    });
    ready = nodes.filter(function (name) { return waits[name] === 0; });
    while (ready.length) {
      group = ready;
      ready = [];
      group.forEach(function (name) {
        made.push(name);
        followers[name].forEach(function (follower) {
          waits[follower] -= 1;
          if (waits[follower] === 0) { ready.push(follower); }
        });
      });
    }
    if (made.length < nodes.length) { throw new Error("the quantities need each other in a circle"); }
    return made;
  }
  function makePlan(seeds, want, wrong) {
    var swap = swapped(wrong), fixed = {}, known = {}, moves = [];
    seeds.forEach(function (name) { fixed[name] = true; known[name] = true; });
    ancestors(want || Object.keys(quantities), swap, fixed).forEach(function (name) {
      var here;
      if (has(givens, name) && !has(known, name)) {
        if (want) { throw new Error(want.join(", ") + " needs '" + name + "', which is not among the givens"); }
        return;
      }
      here = movesOf(name, swap, fixed);
      if (here.every(function (move) {
        return move.needs.every(function (need) { return need === name || has(known, need); });
      })) {
        here.forEach(function (move) { moves.push({ name: name, move: move }); });
        known[name] = true;
      }
    });
    return moves;
  }
  function plan(seeds, want, wrong) {
    var key = seeds.join() + "|" + (want ? want.join() : "*") + "|" + wrong.join();
    if (!has(plans, key)) { plans[key] = makePlan(seeds, want, wrong); }
    return plans[key];
  }
  function named(needs, values) {
    return needs.map(function (need) { return need + "=" + values[need]; }).join(", ");
  }
  /* The value of one move; `inner` is filled with the local names' values where it is given. */
  function worked(name, move, values, inner) {
    var arguments_ = [], i, result;
    for (i = 0; i < move.needs.length; i += 1) { arguments_.push(values[move.needs[i]]); }
    try {
      for (i = 0; i < move.locals.length; i += 1) {
        arguments_.push(move.locals[i].f.apply(null, arguments_));
        if (inner) { inner.push(arguments_[arguments_.length - 1]); }
      }
      result = move.f.apply(null, arguments_);
    } catch (error) {
      throw new Error(name + ": " + error.message + " with " + named(move.needs, values));
    }
    if (typeof result !== "number" || !isFinite(result)) {
      throw new Error(name + ": no finite number with " + named(move.needs, values));
    }
    return result;
  }
  function seedNames(seeds) {
    var names = Object.keys(seeds), i;
    for (i = 0; i < names.length; i += 1) {
      if (typeof seeds[names[i]] !== "number" || !isFinite(seeds[names[i]])) {
        throw new Error(names[i] + " = " + seeds[names[i]] + " is not a number that can be worked with");
      }
    }
    return names;
  }
  /* Seeds and values by name. `want`: quantities, or null for all that the seeds reach; `wrong`: misconceptions in the
   * place of what they distort. Throws where a value is missing or not finite; ranges are not looked at. */
  function evaluate(seeds, want, wrong) {
    var names = seedNames(seeds), moves = plan(names, want || null, wrong || []), values = {}, i;
    for (i = 0; i < names.length; i += 1) { values[names[i]] = seeds[names[i]]; }
    for (i = 0; i < moves.length; i += 1) { values[moves[i].name] = worked(moves[i].name, moves[i].move, values, null); }
    return values;
  }

  /* --------------------------------------------------------------------------------- worked solution */
  /* Each slot of a template, <<name>> in small angle quotes, by what `leaf` gives for it; <<(name)>> wants brackets round a negative number. */
  function filled(template, leaf) {
    return template.replace(/\u00ab(\(?)([A-Za-z_][A-Za-z0-9_]*)\)?\u00bb/g, function (slot, bracket, name) {
      return leaf(name, bracket !== "");
    });
  }
  function symbolMarkup(symbol) {
    var parts = symbol.split("_");
    if (!SYMBOL.test(symbol)) { return "<mtext>" + escaped(symbol) + "</mtext>"; }
    if (parts.length < 2) { return "<mi>" + symbol + "</mi>"; }
    return "<msub><mi>" + parts[0] + "</mi>" + (/^[0-9]+$/.test(parts[1]) ? "<mn>" + parts[1] + "</mn>" : "<mi>" + parts[1] + "</mi>") + "</msub>";
  }
  function numberMarkup(text, bracket) {
    var number = text.charAt(0) === "-" ? '<mrow><mo form="prefix">\u2212</mo><mn>' + text.slice(1) + "</mn></mrow>" : "<mn>" + text + "</mn>";
    return bracket && text.charAt(0) === "-" ? "<mrow><mo>(</mo>" + number + "<mo>)</mo></mrow>" : number;
  }
  /* One line as markup; a browser that can't set formulas gets plain text, and so does whoever reads aloud. */
  function lineMarkup(symbol, plain, inside) {
    var text = escaped(symbol + " = " + plain);
    if (!root.MathMLElement) { return text; }
    return '<math displaystyle="true" alttext="' + text + '"><mrow>' + symbolMarkup(symbol) + "<mo>=</mo>" + inside + "</mrow></math>";
  }
  function shownInLine(name, value, given) {
    var places;
    if (given) { return showFull(value); }
    places = quantities[name].places;
    return places ? guarded(value, places) : show(value, 0);
  }
  /* A value on its way: with guard digits, but no zeros at the end that say nothing. */
  function guarded(value, places) { return showFull(parseFloat(show(value, places + GUARD_DIGITS))); }
  function line(name, symbol, piece, leaves, value, shown, unit) {
    var formula = filled(piece.text, leaves.symbol), substituted = filled(piece.text, leaves.number);
    return {
      name: name, symbol: symbol, formula: formula, substituted: substituted, value: value, shown: shown, unit: unit,
      formulaMarkup: lineMarkup(symbol, formula, filled(piece.mathml, leaves.symbolMarkup)),
      substitutedMarkup: lineMarkup(symbol, substituted, filled(piece.mathml, leaves.numberMarkup))
    };
  }
  function linesOf(name, values, seeds, last) {
    var quantity = quantities[name], own = {}, called = {}, inner = [], made = [], value, leaves;
    function shown(need) {
      return has(own, need) ? guarded(own[need], quantity.places) : shownInLine(need, values[need], has(seeds, need));
    }
    function symbol(need) { return has(own, need) ? called[need] : entry(need).symbol; }
    leaves = {
      symbol: symbol,
      symbolMarkup: function (need) { return symbolMarkup(symbol(need)); },
      number: function (need, bracket) {
        var text = shown(need);
        return bracket && text.charAt(0) === "-" ? "(" + text + ")" : text;
      },
      numberMarkup: function (need, bracket) { return numberMarkup(shown(need), bracket); }
    };
    value = worked(name, quantity, values, inner);
    quantity.locals.forEach(function (piece, i) {
      made.push(line(piece.name, piece.symbol, piece, leaves, inner[i], guarded(inner[i], quantity.places), ""));
      own[piece.name] = inner[i];
      called[piece.name] = piece.symbol;
    });
    made.push(line(name, quantity.symbol, quantity, leaves, value,
      last ? show(value, quantity.places) : shownInLine(name, value, false), quantity.unit));
    return made;
  }
  /* The worked solution: a line for each quantity and local name between the seeds and what is asked, which is last. */
  function steps(asked, seeds) {
    var values = evaluate(seeds, [asked]), made = [];
    plan(seedNames(seeds), [asked], []).forEach(function (one) {
      made = made.concat(linesOf(one.name, values, seeds, one.name === asked));
    });
    return made;
  }

  Tankschool.formula = {
    show: show, showFull: showFull, wholeUp: wholeUp, wholeDown: wholeDown, interpolate: interpolate, pick: pick,
    over: over, power: power, sqrt: sqrt, log: log, exp: exp,
    stream: stream, hash: hash, load: load, evaluate: evaluate, steps: steps,
    givens: givens, quantities: quantities, misconceptions: misconceptions
  };
}(this));
