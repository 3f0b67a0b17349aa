/* Checks a certificate in the page with the browser's own Ed25519: the twin of verify.py. Nothing leaves the machine.
 * The keys and the list stand in the page: it proves only that a certificate was signed by the key of this stick, whose
 * words and digits have to be compared with paper. */
(function (root) {
  "use strict";
  var Tankschool = root.Tankschool = root.Tankschool || {};
  var ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
  var ID_SIGNS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-";
  var LONGEST = { TSC1: 700, TSL1: 8000000 };
  var PURPOSE = { TSC1: "tankschool certificate 1", TSL1: "tankschool withdrawn numbers 1" };
  var OUTCOMES = ["suspended", "withdrawn", "renewed"];
  var DAY = 86400000, LAST_DAY = 84006;

  function Refused(reason, values) { this.reason = reason; this.values = values || {}; }
  function refuse(reason, values) { throw new Refused(reason, values); }

  function fromText(text, kind) {
    var head, body, found, bytes, bits = 0, held = 0, i, at, value;
    if (text.length > 2 * LONGEST[kind]) { refuse("too_long"); }
    text = text.replace(/[ \t\r\n\f\v\u00a0\u200b\ufeff]+/g, "");
    found = /[^\u0000-\u007f]/.exec(text);
    if (found) { refuse("sign", { sign: String.fromCodePoint(text.codePointAt(found.index)) }); }
    text = text.toUpperCase();
    i = text.indexOf(":");
    head = text.slice(0, Math.max(i, 0));
    body = text.slice(i + 1);
    found = /^(TS[CL])([0-9]+)$/.exec(head);
    if (i < 0 || !found) { refuse("not_ours"); }
    if (head !== kind) { refuse(found[1] === kind.slice(0, 3) ? "newer" : "other_kind"); }
    if (body.length > LONGEST[kind]) { refuse("too_long"); }
    found = /[^A-Z2-7]/.exec(body);
    if (found) { refuse("sign", { sign: found[0] }); }
    if (!body || body.length * 5 % 8 >= 5) { refuse("cut_off"); }
    bytes = new Uint8Array(Math.floor(body.length * 5 / 8));
    for (i = 0, at = 0; i < body.length; i += 1) {
      value = ALPHABET.indexOf(body.charAt(i));
      held = (held << 5) | value;
      bits += 5;
      if (bits >= 8) {
        bits -= 8;
        bytes[at] = held >> bits;
        at += 1;
        held &= (1 << bits) - 1;
      }
    }
    if (held) { refuse("cut_off"); }
    return bytes;
  }

  /* Deterministic CBOR of whole numbers, bytes, texts, lists and maps; all else, and every other way to write it, is refused. */
  function decode(bytes) {
    var at = 0, found;
    function number(short) {
      var size, value = 0, i;
      if (short < 24) { return short; }
      if (short > 27) { refuse("not_cbor"); }
      size = 1 << (short - 24);
      if (at + size > bytes.length) { refuse("not_cbor"); }
      for (i = 0; i < size; i += 1) { value = value * 256 + bytes[at + i]; }
      at += size;
      if (value > 9007199254740991 || value < (size === 1 ? 24 : Math.pow(256, size / 2))) { refuse("not_cbor"); }
      return value;
    }
    function part(size) {
      if (at + size > bytes.length) { refuse("not_cbor"); }
      at += size;
      return bytes.slice(at - size, at);
    }
    function before(one, other) {
      var i;
      if (one.length !== other.length) { return one.length < other.length; }
      for (i = 0; i < one.length; i += 1) {
        if (one[i] !== other[i]) { return one[i] < other[i]; }
      }
      return false;
    }
    function map(size, depth) {
      var pairs = [], last = null, i, start, key, raw;
      for (i = 0; i < size; i += 1) {
        start = at;
        key = item(depth);
        raw = bytes.slice(start, at);
        if (last && !before(last, raw)) { refuse("not_cbor"); }
        last = raw;
        pairs.push([key, item(depth)]);
      }
      return { map: pairs };
    }
    function item(depth) {
      var first, major, size, list, i;
      if (depth > 8 || at >= bytes.length) { refuse("not_cbor"); }
      first = bytes[at];
      at += 1;
      major = first >> 5;
      if (major > 5) { refuse("not_cbor"); }
      size = number(first & 31);
      if (major === 0) { return size; }
      if (major === 1) { return -1 - size; }
      if (major === 2) { return part(size); }
      if (major === 3) {
        try {
          return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(part(size));
        } catch (error) { refuse("not_cbor"); }
      }
      if (size > bytes.length) { refuse("not_cbor"); }
      if (major === 5) { return map(size, depth + 1); }
      for (list = [], i = 0; i < size; i += 1) { list.push(item(depth + 1)); }
      return list;
    }
    found = item(0);
    if (at !== bytes.length) { refuse("not_cbor"); }
    return found;
  }

  function isBytes(value) { return value instanceof Uint8Array; }
  function isWhole(value) { return typeof value === "number"; }
  function isMap(value) { return Boolean(value) && Array.isArray(value.map); }
  function hex(bytes) {
    return Array.prototype.map.call(bytes, function (each) { return (each < 16 ? "0" : "") + each.toString(16); }).join("");
  }
  function fromHex(text) {
    return new Uint8Array(text.match(/../g).map(function (each) { return parseInt(each, 16); }));
  }
  function utf8(text) { return new TextEncoder().encode(text); }
  function joined(parts) {
    var all = [];
    parts.forEach(function (part) { Array.prototype.push.apply(all, part); });
    return new Uint8Array(all);
  }

  function unpacked(data) {
    var left = Array.prototype.slice.call(data), text = "", rest, i;
    if (!left.length || left.length > 40 || !left[0]) { refuse("fields"); }
    while (left.length) {
      for (rest = 0, i = 0; i < left.length; i += 1) {
        rest = rest * 256 + left[i];
        left[i] = Math.floor(rest / 38);
        rest %= 38;
      }
      if (!rest) { refuse("fields"); }
      text = ID_SIGNS.charAt(rest - 1) + text;
      while (left.length && !left[0]) { left.shift(); }
    }
    if (text.length > 40) { refuse("fields"); }
    return text;
  }

  function unpack(bytes) {
    var parts, headers;
    if (bytes[0] !== 0xd2) { refuse("not_cose"); }
    parts = decode(bytes.slice(1));
    if (!Array.isArray(parts) || parts.length !== 4 || !isBytes(parts[0]) || !isMap(parts[1]) || !isBytes(parts[2]) ||
        !isBytes(parts[3])) { refuse("not_cose"); }
    headers = decode(parts[0]);
    if (!isMap(headers) || parts[1].map.length) { refuse("not_cose"); }
    headers = headers.map;
    if (!headers.length || headers[0][0] !== 1 || headers[0][1] !== -8) { refuse("algorithm"); }
    if (headers.length !== 2 || headers[1][0] !== 4 || !isBytes(headers[1][1]) || headers[1][1].length !== 4 ||
        parts[3].length !== 64) { refuse("not_cose"); }
    return { whole: bytes, protected: parts[0], kid: hex(headers[1][1]), payload: parts[2], signature: parts[3] };
  }

  function head(major, size) {
    if (size < 24) { return [major << 5 | size]; }
    if (size < 256) { return [major << 5 | 24, size]; }
    if (size < 65536) { return [major << 5 | 25, size >> 8, size & 255]; }
    return [major << 5 | 26, size >>> 24, size >> 16 & 255, size >> 8 & 255, size & 255];
  }
  function toBeSigned(message, kind) {
    var context = utf8("Signature1"), purpose = utf8(PURPOSE[kind]), front = [0x84];
    front = front.concat(head(3, context.length), Array.from(context), head(2, message.protected.length),
      Array.from(message.protected), head(2, purpose.length), Array.from(purpose), head(2, message.payload.length));
    front = new Uint8Array(front);
    var all = new Uint8Array(front.length + message.payload.length);
    all.set(front);
    all.set(message.payload, front.length);
    return all;
  }

  function NoCrypto() { this.none = true; }
  function subtle() { return root.crypto && root.crypto.subtle || null; }
  function isSigned(message, kind, key) {
    var own = subtle();
    if (!own) { return Promise.reject(new NoCrypto()); }
    return own.importKey("raw", fromHex(key.public), { name: "Ed25519" }, false, ["verify"]).then(function (made) {
      return own.verify({ name: "Ed25519" }, made, message.signature, toBeSigned(message, kind));
    }).then(null, function () { throw new NoCrypto(); });
  }

  function keyOf(message, data) {
    var found = data.keys.filter(function (key) { return key.kid === message.kid; });
    if (found.length !== 1) { refuse("unknown_key"); }
    return found[0];
  }

  function isoDay(day) { return new Date(day * DAY).toISOString().slice(0, 10); }

  function isClean(name) {
    var bad = new RegExp("[\\p{C}\\p{Z}]", "u");
    return Boolean(name) && name === name.trim() && name.indexOf("  ") < 0 && name.normalize("NFC") === name &&
      !bad.test(name.replace(/[ \u200c\u200d]/g, ""));
  }
  function looksLikeAnother(name, ranges) {
    var letter = new RegExp("\\p{L}", "u"), found = {};
    Array.from(name).forEach(function (sign) {
      var code = sign.codePointAt(0), script = "other", each;
      if (!letter.test(sign)) { return; }
      for (each in ranges) {
        if (ranges[each].some(function (range) { return range[0] <= code && code <= range[1]; })) { script = each; }
      }
      found[script] = true;
    });
    return Boolean(found.other) || Object.keys(found).length > 1;
  }

  function readCertificate(payload, data) {
    var fields = decode(payload), value;
    if (!isMap(fields) || fields.map.length !== 10) { refuse("fields"); }
    value = fields.map.map(function (pair, place) { return pair[0] === place + 1 ? pair[1] : refuse("fields"); });
    if (!isBytes(value[0]) || typeof value[1] !== "string" || !isBytes(value[2]) || !value.slice(3).every(isWhole)) {
      refuse("fields");
    }
    if (!(value[3] >= 1 && value[4] >= 1 && value[4] <= data.roles.length && value[5] > 0 && value[5] <= 1000000 &&
        value[6] > 0 && value[6] <= 1000 && value[7] >= 1 && value[7] <= data.roofs.length && value[8] >= 0 &&
        value[8] <= value[9] && value[9] <= LAST_DAY && utf8(value[1]).length <= 90 && isClean(value[1]))) {
      refuse("fields");
    }
    return {
      number: unpacked(value[0]), name: value[1], scheme: unpacked(value[2]).toLowerCase(), version: value[3],
      scope: { role: data.roles[value[4] - 1], litres: value[5], wall_cm: value[6], roof: data.roofs[value[7] - 1] },
      valid_from: isoDay(value[8]), valid_to: isoDay(value[9])
    };
  }

  function readListPayload(payload) {
    var fields = decode(payload), found = { numbers: Object.create(null), stolen: Object.create(null) };
    if (!isMap(fields) || fields.map.length !== 3) { refuse("fields"); }
    fields = fields.map.map(function (pair, place) { return pair[0] === place + 1 ? pair[1] : refuse("fields"); });
    if (!isWhole(fields[0]) || fields[0] < 0 || !Array.isArray(fields[1]) || !Array.isArray(fields[2])) { refuse("fields"); }
    found.dated = fields[0] * 1000;
    fields[1].forEach(function (row) {
      if (!Array.isArray(row) || row.length !== 2 || !isBytes(row[0]) || !OUTCOMES[row[1] - 1]) { refuse("fields"); }
      found.numbers[unpacked(row[0])] = OUTCOMES[row[1] - 1];
    });
    fields[2].forEach(function (row) {
      if (!Array.isArray(row) || row.length !== 3 || !isBytes(row[0]) || !isWhole(row[1]) || !Array.isArray(row[2])) {
        refuse("fields");
      }
      found.stolen[hex(row[0])] = row[2].map(hex);
    });
    return found;
  }
  function readList(data) {
    var message, key;
    if (!data.list) { return Promise.resolve(null); }
    return Promise.resolve().then(function () {
      message = unpack(fromText(data.list, "TSL1"));
      key = keyOf(message, data);
      return isSigned(message, "TSL1", key);
    }).then(function (good) {
      var found, order = data.keys.map(function (each) { return each.kid; }), kid;
      if (!good) { refuse("signature"); }
      found = readListPayload(message.payload);
      if (key.stolen || found.stolen[key.kid]) { refuse("stolen_key"); }
      if (key.retired && new Date(found.dated).toISOString().slice(0, 10) > key.retired) { refuse("retired_key"); }
      for (kid in found.stolen) { if (order.indexOf(kid) > order.indexOf(key.kid)) { refuse("fields"); } }
      return found;
    });
  }

  function isKnown(message, known) {
    if (!known) { return Promise.resolve(false); }
    return subtle().digest("SHA-256", message.whole).then(function (digest) {
      return known.indexOf(hex(new Uint8Array(digest).slice(0, 16))) >= 0;
    });
  }

  /* The verdict on a text, at a time in milliseconds: {outcome, reason, values, certificate, warnings, checked, unchecked, day, list_dated}.
   * The promise is always kept. Without the browser's crypto the outcome is "no_crypto", and nothing of the text is shown. */
  function verify(text, data, now) {
    var verdict = { outcome: "refused", reason: "", values: {}, certificate: null, warnings: [], checked: [],
      unchecked: ["content"], list_dated: null };
    var today = new Date(now).toISOString().slice(0, 10), message, key, list = null, status, known;
    verdict.day = today;
    return readList(data).then(function (found) {
      list = found;
    }, function (error) {
      if (error instanceof NoCrypto) { return; }
      refuse("bad_list");
    }).then(function () {
      var dated;
      if (list) {
        dated = new Date(list.dated).toISOString().slice(0, 10);
        verdict.list_dated = dated;
        if (now - list.dated > data.max_age * DAY) {
          verdict.warnings.push({ code: "list_old", days: String(Math.floor((now - list.dated) / DAY)), dated: dated });
        }
        if (list.dated - now > DAY) { verdict.warnings.push({ code: "clock", day: today, dated: dated }); }
        if (dated > today) { verdict.day = dated; }
      }
      message = unpack(fromText(String(text), "TSC1"));
      key = keyOf(message, data);
      return isSigned(message, "TSC1", key);
    }).then(function (good) {
      if (good !== true) { refuse("signature"); }
      verdict.certificate = readCertificate(message.payload, data);
      known = list && list.stolen[message.kid];
      return key.stolen || known ? isKnown(message, known) : true;
    }).then(function (trusted) {
      var found = verdict.certificate;
      status = list && list.numbers[found.number];
      if (!trusted) {
        verdict.reason = "stolen_key";
      } else if (status) {
        verdict.outcome = status;
      } else if (verdict.day > found.valid_to) {
        verdict.outcome = "expired";
      } else if (verdict.day < found.valid_from) {
        verdict.outcome = "not_yet";
      } else {
        verdict.outcome = "genuine";
      }
      if (looksLikeAnother(found.name, data.ranges)) { verdict.warnings.push({ code: "mixed_scripts" }); }
      if (key.retired && found.valid_from > key.retired) {
        verdict.warnings.push({ code: "retired_key", day: key.retired });
      }
      verdict.checked = list ? ["signature", "days", "list"] : ["signature", "days"];
      verdict.unchecked = ["holder", "paper", list ? "since_list" : "no_list"];
      return verdict;
    }).then(null, function (error) {
      verdict.certificate = null;
      verdict.outcome = "refused";
      verdict.reason = error instanceof Refused ? error.reason : "not_cbor";
      verdict.values = error instanceof Refused ? error.values : {};
      if (error instanceof NoCrypto) {
        verdict.outcome = "no_crypto";
        verdict.reason = "";
      }
      return verdict;
    });
  }

  /* Whether the keys in the data are those whose digits stand on the page; true where the browser can't tell. */
  function keysFit(data) {
    var own = subtle();
    if (!own) { return Promise.resolve(true); }
    return Promise.all(data.keys.map(function (key) {
      return own.digest("SHA-256", fromHex(key.public)).then(function (digest) {
        return hex(new Uint8Array(digest)) === key.digest && key.digest.slice(0, 8) === key.kid;
      });
    })).then(function (all) { return all.every(Boolean); });
  }

  function start(box) {
    var data = JSON.parse(box.querySelector("script[type='application/json']").textContent);
    var field = box.querySelector("textarea"), button = box.querySelector("button"), out = box.querySelector("[role=status]");
    var run = 0;
    function say(key, values) {
      return data.words[key].replace(/\{([a-z_]+)\}/g, function (slot, name) { return values && name in values ? values[name] : slot; });
    }
    function line(tag, text, name) {
      var made = document.createElement(tag);
      made.textContent = text;
      if (name) { made.className = name; }
      out.appendChild(made);
      return made;
    }
    function list(title, texts) {
      var made;
      if (!texts.length) { return; }
      line("p", title);
      made = line("ul", "");
      texts.forEach(function (text) {
        var each = document.createElement("li");
        each.textContent = text;
        made.appendChild(each);
      });
    }
    function clear(outcome) {
      out.textContent = "";
      out.setAttribute("data-outcome", outcome);
    }
    function facts(found) {
      var scope = found.scope, table = line("dl", "");
      [
        [say("certificate.label.name"), found.name],
        [say("certificate.label.number"), found.number],
        [say("certificate.label.scheme"), found.scheme + " " + found.version],
        [say("certificate.label.role"), say("certificate.role." + scope.role)],
        [say("certificate.label.volume"), scope.litres / 1000 + "\u00a0" + data.cubic_metre],
        [say("certificate.label.wall"), scope.wall_cm / 100 + "\u00a0" + data.metre],
        [say("certificate.label.roof"), say("certificate.roof." + scope.roof)],
        [say("certificate.label.valid"), say("certificate.days", { first: found.valid_from, last: found.valid_to })],
        [say("certificate.label.issuer"), data.issuer]
      ].forEach(function (row) {
        ["dt", "dd"].forEach(function (tag, place) {
          var cell = document.createElement(tag);
          cell.textContent = row[place];
          table.appendChild(cell);
        });
      });
    }
    function show(verdict) {
      clear(verdict.outcome);
      if (verdict.outcome === "no_crypto") { line("p", say("certificate.page.no_crypto"), "ts-check-verdict"); return; }
      line("p", say("certificate.outcome." + verdict.outcome), "ts-check-verdict");
      if (verdict.reason) { line("p", say("certificate.refused." + verdict.reason, verdict.values)); }
      verdict.warnings.forEach(function (note) { line("p", say("certificate.warning." + note.code, note)); });
      if (verdict.certificate && !verdict.reason) { facts(verdict.certificate); }
      line("p", say("certificate.label.day") + " " + verdict.day);
      line("p", verdict.list_dated ? say("certificate.label.list") + " " + verdict.list_dated : say("certificate.page.no_list"));
      list(say("certificate.was_checked"), verdict.checked.map(function (code) { return say("certificate.check." + code); }));
      list(say("certificate.not_checked"), verdict.unchecked.map(function (code) { return say("certificate.open." + code); }));
    }
    button.addEventListener("click", function () {
      var mine = run += 1;
      if (!field.value.trim()) { clear(""); line("p", say("certificate.page.nothing")); return; }
      clear("working");
      line("p", say("certificate.page.working"));
      keysFit(data).then(function (fit) {
        if (fit) { return verify(field.value, data, Date.now()); }
        if (mine === run) { clear("wrong_key"); line("p", say("certificate.page.wrong_key"), "ts-check-verdict"); }
        return null;
      }).then(function (verdict) { if (verdict && mine === run) { show(verdict); } });
    });
    button.disabled = false;
  }

  Tankschool.check = { verify: verify, start: start };
}(this));
