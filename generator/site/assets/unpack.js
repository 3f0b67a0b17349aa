/* Data that a page's scripts read travels packed: DEFLATE (RFC 1951) written as base64. This opens it, at once and in any
   browser: the browsers' own way is not in all of them, and answers only later. `packing.py` packs. */
window.Tankschool = window.Tankschool || {};
(function (T) {
  "use strict";
  var LENGTHS = [], DISTANCES = [], ORDER = [16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15], fixed = null;

  /** For each code the least value and how many bits are added to it. */
  function ranges(list, start, count, codesABit, firstBits) {
    var value = start, code, bits;
    for (code = 0; code < count; code += 1) {
      bits = Math.max(0, Math.floor((code - firstBits) / codesABit));
      list.push([value, bits]);
      value += 1 << bits;
    }
  }
  ranges(LENGTHS, 3, 28, 4, 4);
  LENGTHS.push([258, 0]);
  ranges(DISTANCES, 1, 30, 2, 2);

  /** A table of codes: how many there are of each length, and their symbols in order. */
  function table(lengths) {
    var counts = [], places = [0, 0], symbols = [], size, at;
    for (size = 0; size < 16; size += 1) { counts.push(0); }
    lengths.forEach(function (one) { counts[one] += 1; });
    counts[0] = 0;
    for (size = 1; size < 15; size += 1) { places.push(places[size] + counts[size]); }
    for (at = 0; at < lengths.length; at += 1) {
      if (lengths[at]) { symbols[places[lengths[at]]] = at; places[lengths[at]] += 1; }
    }
    return {counts: counts, symbols: symbols};
  }

  function fixedTables() {
    var lengths = [], distances = [], at;
    for (at = 0; at < 288; at += 1) { lengths.push(at < 144 ? 8 : at < 256 ? 9 : at < 280 ? 7 : 8); }
    for (at = 0; at < 30; at += 1) { distances.push(5); }
    return {lengths: table(lengths), distances: table(distances)};
  }

  function inflate(bytes) {
    var out = new Uint8Array(bytes.length * 8 + 1024), size = 0, place = 0, held = 0, many = 0, last, kind;

    function need(count) {
      var value;
      while (many < count) {
        if (place >= bytes.length) { throw new Error("packed data ends too early"); }
        held |= bytes[place] << many;
        place += 1;
        many += 8;
      }
      value = held & ((1 << count) - 1);
      held >>>= count;
      many -= count;
      return value;
    }

    function symbol(codes) {
      var code = 0, first = 0, index = 0, length, count;
      for (length = 1; length < 16; length += 1) {
        code |= need(1);
        count = codes.counts[length];
        if (code - count < first) { return codes.symbols[index + code - first]; }
        index += count;
        first = (first + count) << 1;
        code <<= 1;
      }
      throw new Error("packed data is damaged");
    }

    function room(more) {
      var wider;
      if (size + more <= out.length) { return; }
      wider = new Uint8Array((size + more) * 2);
      wider.set(out.subarray(0, size));
      out = wider;
    }

    function stored() {
      var length;
      held = many = 0;
      length = bytes[place] | bytes[place + 1] << 8;
      place += 4;
      if (place + length > bytes.length) { throw new Error("packed data ends too early"); }
      room(length);
      out.set(bytes.subarray(place, place + length), size);
      size += length;
      place += length;
    }

    function ownTables() {
      var lengths = need(5) + 257, distances = need(5) + 1, count = need(4) + 4, found = [], at, codes, one, before, repeat;
      for (at = 0; at < 19; at += 1) { found.push(0); }
      for (at = 0; at < count; at += 1) { found[ORDER[at]] = need(3); }
      codes = table(found);
      found = [];
      while (found.length < lengths + distances) {
        one = symbol(codes);
        if (one < 16) { found.push(one); continue; }
        before = one === 16 ? found[found.length - 1] : 0;
        repeat = one === 16 ? 3 + need(2) : one === 17 ? 3 + need(3) : 11 + need(7);
        while (repeat) { found.push(before); repeat -= 1; }
      }
      return {lengths: table(found.slice(0, lengths)), distances: table(found.slice(lengths))};
    }

    function coded(tables) {
      var one = symbol(tables.lengths), length, from;
      while (one !== 256) {
        if (one < 256) {
          room(1);
          out[size] = one;
          size += 1;
        } else {
          length = LENGTHS[one - 257][0] + need(LENGTHS[one - 257][1]);
          one = symbol(tables.distances);
          from = size - DISTANCES[one][0] - need(DISTANCES[one][1]);
          if (from < 0) { throw new Error("packed data is damaged"); }
          room(length);
          while (length) { out[size] = out[from]; size += 1; from += 1; length -= 1; }
        }
        one = symbol(tables.lengths);
      }
    }

    do {
      last = need(1);
      kind = need(2);
      if (kind === 0) { stored(); } else if (kind === 1) { coded(fixed = fixed || fixedTables()); } else if (kind === 2) { coded(ownTables()); } else { throw new Error("packed data is damaged"); }
    } while (!last);
    return out.subarray(0, size);
  }

  /** The text that was packed. */
  T.unpack = function (text) {
    var letters = window.atob(text), bytes = new Uint8Array(letters.length), at;
    for (at = 0; at < letters.length; at += 1) { bytes[at] = letters.charCodeAt(at); }
    return new TextDecoder("utf-8").decode(inflate(bytes));
  };

  /** Run a script of ours that was packed. */
  T.run = function (text) { new Function(T.unpack(text))(); };

  /** What a JSON block of the page carries; read once. */
  T.carried = function (script) {
    if (script.carried === undefined) {
      script.carried = JSON.parse(script.hasAttribute("data-packed") ? T.unpack(script.textContent) : script.textContent);
    }
    return script.carried;
  };
})(window.Tankschool);
