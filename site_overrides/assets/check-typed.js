/* A reading as it is typed off a meter, by the rule of generator/quantities/typed.py to the letter;
   one table of cases holds the two together. And figures as the generator shows them. Pure. */

"use strict";

window.fettleTyped = (() => {
  const LONGEST = 60; // characters of a reading, as in the generator's grammar
  const MARKED = /^([-+−–]?)\s*([0-9]*)(?:([.,])([0-9]*))?\s*([^0-9\s.,].*)?$/;
  const THOUSANDS = /^[1-9][0-9]{0,2},[0-9]{3}$/;
  const SPREAD = /±|\+\/?-|[0-9]\s*(?:to|[-–—…])\s*[0-9]|^[<>≤≥~≈]/;

  const bare = (text) => text.replace(/\s+/g, "");

  /* The line of a spelling, as factor and offset to the base unit; undefined where there is none. */
  function find(written, known) {
    const word = bare(written);
    const own = known.suffixes[word.slice(0, 1) + word.slice(1).toLowerCase()];
    if (own) return own;
    const small = word.toLowerCase();
    return small[0] === "m" && known.told_apart.includes(small) ? undefined : known.suffixes[small];
  }

  function overRange(tidy, known, shared) {
    const small = bare(tidy).toLowerCase().replace(/^[-−–+]+/, "");
    const ends = Object.keys(known.suffixes).map((key) => key.toLowerCase());
    return shared.over_range.some(
      (word) => small === word || (small.startsWith(word) && ends.includes(small.slice(word.length))),
    );
  }

  function unitFault(written, quantity, shown, shared) {
    const word = bare(written);
    const known = shared.quantities[quantity];
    if (known.told_apart.includes(word.toLowerCase()) || (word === "m" && shown !== "m")) {
      return { fault: "milli", kind: "unit", word };
    }
    const other = Object.values(shared.quantities).some((each) => find(word, each));
    const kind = other && !shared.short.includes(word) ? "quantity" : "unit";
    return { fault: kind, kind, word };
  }

  /* Gives {value} in the base unit, {over: true}, {impossible: true}, or {fault}. `fault` names the
     words to say; `kind` is the generator's own name for it. */
  function read(text, quantity, shown, shared) {
    const known = shared.quantities[quantity];
    const tidy = text.trim();
    if (tidy.length > LONGEST) return { fault: "form", kind: "form" };
    if (overRange(tidy, known, shared)) return { over: true };
    const [, sign, whole, mark, part = "", unit] = MARKED.exec(tidy) || [];
    if ((!whole && !part) || SPREAD.test(tidy) || Math.max(whole.length, part.length) > 12) {
      return { fault: "form", kind: "form" };
    }
    if (mark === "," && THOUSANDS.test(`${whole},${part}`)) {
      return { fault: "comma", kind: "comma", one: whole + part, other: `${whole}.${part}` };
    }
    const line = find(unit || shown, known);
    if (!line) return unitFault(unit, quantity, shown, shared);
    const number = Number(`${whole || "0"}.${part || "0"}`);
    const value = ("-−–".includes(sign) && sign ? -number : number) * line[0] + line[1];
    if (known.least !== null && value < known.least) {
      return { impossible: true, fault: "impossible", kind: "impossible" };
    }
    return { value };
  }

  /* A base figure in a unit of its quantity. */
  function shownIn(value, quantity, unit, shared) {
    const [factor, offset] = find(unit, shared.quantities[quantity]);
    return (value - offset) / factor;
  }

  /* A float as digits·10^exponent: its shortest decimal, to twelve digits, half to even. */
  function kept(value) {
    const [mantissa, power = "0"] = Math.abs(value).toString().split("e");
    const [whole, part = ""] = mantissa.split(".");
    const digits = BigInt(whole + part);
    const exponent = Number(power) - part.length;
    const excess = digits.toString().length - 12;
    if (excess <= 0) return { digits, exponent };
    return { digits: divided(digits, excess, "even", false), exponent: exponent + excess };
  }

  function divided(digits, places, mode, negative) {
    const by = 10n ** BigInt(places);
    const quotient = digits / by;
    const rest = digits % by;
    if (rest === 0n) return quotient;
    if (mode === "up") return negative ? quotient : quotient + 1n;
    if (mode === "down") return negative ? quotient + 1n : quotient;
    const twice = 2n * rest;
    const away = twice > by || (twice === by && quotient % 2n === 1n);
    return away ? quotient + 1n : quotient;
  }

  /* A number with a fixed count of decimals: "even", "up" to the next or "down" to the last one. */
  function figure(value, places, mode = "even") {
    const { digits, exponent } = kept(value);
    const shift = exponent + places;
    const whole = shift >= 0 ? digits * 10n ** BigInt(shift) : divided(digits, -shift, mode, value < 0);
    const text = whole.toString().padStart(places + 1, "0");
    const cut = text.length - places;
    const shown = places ? `${text.slice(0, cut)}.${text.slice(cut)}` : text;
    return (value < 0 && whole !== 0n ? "−" : "") + shown;
  }

  /* Decimals that show so many digits of a value. */
  function placesFor(value, significant) {
    if (value === 0) return 0;
    const { digits, exponent } = kept(value);
    return Math.max(0, significant - digits.toString().length - exponent);
  }

  const number = (text) => Number(text.replace("−", "-"));

  /* The two limits of a band rounded inwards; more digits where they would fall together. */
  function showRange(low, high, places) {
    if (!Number.isFinite(low) || !Number.isFinite(high)) {
      return [
        Number.isFinite(low) ? figure(low, places, "up") : "",
        Number.isFinite(high) ? figure(high, places, "down") : "",
      ];
    }
    if (low.toPrecision(12) === high.toPrecision(12)) {
      return [figure(low, places), figure(low, places)];
    }
    for (let more = places; more < 20; more += 1) {
      const texts = [figure(low, more, "up"), figure(high, more, "down")];
      if (number(texts[0]) < number(texts[1])) return texts;
    }
    return [String(low), String(high)];
  }

  return { read, shownIn, figure, placesFor, showRange };
})();
