/* A reading held against limits that the build worked out: read as it was typed, the meter's error
   taken in, judged with a guard band. Pure, and held by a test to the generator's own verdicts. No
   model is here: lines between given points, what a meter does to a reading, and a probability. */

"use strict";

window.fettleCheck = (() => {
  const LEADS_SHARE = 0.1; // of the variance: above it the leads decide, as the generator says
  const DUST = 1e-12; // what the arithmetic of a probability loses

  /* The probability that a standard normal variable lies below z; full accuracy in the low tail. */
  function below(z) {
    return 0.5 * erfc(-z / Math.SQRT2);
  }

  /* Series near nought, continued fraction beyond (DLMF 7.6.1 and 7.9.1, from memory). */
  function erfc(x) {
    if (x < 0) return 2 - erfc(-x);
    if (x < 2) {
      let term = x;
      let total = x;
      for (let n = 1; Math.abs(term) > 1e-17 * Math.abs(total); n += 1) {
        term *= (-x * x) / n;
        total += term / (2 * n + 1);
      }
      return 1 - (2 / Math.sqrt(Math.PI)) * total;
    }
    if (x > 27) return 0;
    let tail = x;
    for (let n = 80; n >= 1; n -= 1) tail = x + n / 2 / tail;
    return Math.exp(-x * x) / Math.sqrt(Math.PI) / tail;
  }

  function shares(value, u, low, high) {
    if (u === 0) {
      const under = value < low ? 1 : 0;
      const over = value > high ? 1 : 0;
      return { low: under, in: 1 - under - over, high: over };
    }
    const toLow = (low - value) / u;
    const toHigh = (high - value) / u;
    const under = below(toLow);
    const over = below(-toHigh);
    const inside = toLow > 0 ? below(-toLow) - over : below(toHigh) - under;
    return { low: under, in: Math.max(inside, 0), high: over };
  }

  /* After JCGM 106:2012, 8: a verdict is given where its probability is at least 1 − risk. */
  function judged(found, low, high, risk) {
    if (low > high) return null;
    const all = shares(found.value, found.u, low, high);
    const word = ["in", "low", "high"].find((each) => all[each] >= 1 - risk - DUST);
    return { word: word || "cannot_tell", inside: all.in, probability: all[word || "in"] };
  }

  function weights(knots, x) {
    if (knots.length === 1) return [[0, 1]];
    let after = knots.findIndex((knot, n) => n > 0 && x <= knot);
    if (after < 0) after = knots.length - 1;
    const share = (x - knots[after - 1]) / (knots[after] - knots[after - 1]);
    return [[after - 1, 1 - share], [after, share]];
  }

  const product = (lists) =>
    lists.reduce((all, list) => all.flatMap((head) => list.map((each) => [...head, each])), [[]]);

  function at(data, figures, point) {
    let total = 0;
    for (const corner of product(data.axes.map(([, knots], n) => weights(knots, point[n])))) {
      let place = 0;
      let weight = 1;
      corner.forEach(([index, share], n) => {
        place = place * data.axes[n][1].length + index;
        weight *= share;
      });
      if (weight) total += weight * (data.bent ? Math.log(figures[place]) : figures[place]);
    }
    return data.bent ? Math.exp(total) : total;
  }

  /* Outer limits: no sound reading lies beyond. Sure limits: one within is in, whatever the
     conditions are within their spans. The meter's own spread is none of the conditions. */
  function limits(data, spans) {
    const places = data.axes.map(([, knots], n) => {
      const [from, to] = spans[n];
      return [...new Set([from, to, ...knots.filter((knot) => from < knot && knot < to)])];
    });
    const last = data.axes.length && data.axes[data.axes.length - 1][0] === "meter" ? places.pop() : null;
    const found = { low: -Infinity, high: Infinity, sureLow: -Infinity, sureHigh: Infinity };
    for (const [side, outer, inner] of [["low", Math.min, Math.max], ["high", Math.max, Math.min]]) {
      const figures = data[side];
      if (!figures) continue;
      const ends = product(places).map((point) => {
        const all = (last || [null]).map((g) => at(data, figures, last ? [...point, g] : point));
        return outer(...all);
      });
      found[side] = outer(...ends);
      found[side === "low" ? "sureLow" : "sureHigh"] = inner(...ends);
    }
    return found;
  }

  /* The spans to look at: what was said, else all that is usual; null where one lies beyond. */
  function spansOf(data, said, meter) {
    const spans = [];
    for (const [name, knots] of data.axes) {
      const usual = [knots[0], knots[knots.length - 1]];
      let span = said[name] || usual;
      if (name === "meter") {
        const input = meter && meter.input;
        span = input ? [1 / input[1], 1 / input[0]] : data.meter;
        span = span.map((g) => Math.max(g, usual[0])); // past the best meter nothing changes
      }
      if (span[0] < usual[0] || span[1] > usual[1]) return null;
      spans.push(span);
    }
    return spans;
  }

  /* The limits, scaled to what this meter shows of a wave, and moved by the error of the lines. */
  function moved(found, share, error, bent, sign) {
    const by = (limit, way) =>
      Number.isFinite(limit) ? limit + way * sign * error * (bent ? Math.abs(limit) : share) : limit;
    return {
      low: by(found.low * share, 1), high: by(found.high * share, -1),
      sureLow: by(found.sureLow * share, 1), sureHigh: by(found.sureHigh * share, -1),
    };
  }

  /* The figure with the meter's error; null where it is beyond every range. */
  function measured(data, value, meter) {
    if (!meter) return { value, u: 0, leads: 0, range: null };
    const on = meter.ranges.find(([top]) => top === null || Math.abs(value) <= top);
    if (!on) return null;
    const [, digit, percent, counts] = on;
    const root = Math.sqrt(3);
    const fixed = (counts * digit) / root;
    const u = (Math.abs(value) * percent) / 100 / root + fixed;
    if (data.quantity === "resistance") {
      if (meter.nulled) {
        const share = (value * percent) / 100 / root;
        return { value, u: Math.hypot(share, fixed, fixed), leads: 0, range: on };
      }
      const [from, to] = meter.leads;
      const spread = (to - from) / 2 / root;
      const all = Math.hypot(u, spread);
      return { value: value - (from + to) / 2, u: all, leads: all ? (spread / all) ** 2 : 0, range: on };
    }
    if (data.ac && data.source && meter.input) {
      const ends = data.source.map((ohm) => value * (1 + ohm / meter.input[0]));
      const from = Math.min(...ends);
      const to = Math.max(...ends);
      return { value: (from + to) / 2, u: Math.hypot(u, (to - from) / 2 / root), leads: 0, range: on };
    }
    return { value, u, leads: 0, range: on };
  }

  function overRange(data, found, meter, remarks) {
    const none = { word: "cannot_tell", probability: 0 };
    const high = Number.isFinite(found.high);
    const top = meter && meter.ranges.length ? meter.ranges[meter.ranges.length - 1][0] : undefined;
    const reach = top === null ? Infinity : top;
    const say = (code) => remarks.push([code]);
    if (data.quantity !== "resistance") return say("higher_range"), none;
    if (data.standing === "plausibility_band") {
      if (high && (reach === undefined || reach > found.high)) {
        return say("check_hookup"), { word: "implausible", probability: 1 };
      }
      return say("higher_range"), none;
    }
    if (high) {
      if (reach !== undefined && reach <= found.high) return say("higher_range"), none;
      say("open_or_leads");
      if (reach === undefined) say("open_if_range_reaches");
      return { word: "open", probability: 1 };
    }
    if (reach === undefined) return say("name_meter"), none;
    if (reach < found.low) return say("higher_range"), none;
    return { word: "in_limits", probability: 1 };
  }

  function decided(data, found, reading, risk, shared, open, whole) {
    const inside = judged(reading, whole.sureLow, whole.sureHigh, risk);
    const outside = judged(reading, whole.low, whole.high, risk);
    const far = outside && (outside.word === "low" || outside.word === "high");
    if (data.standing === "plausibility_band") {
      return far
        ? { word: "implausible", probability: outside.probability, remarks: [["check_hookup"]] }
        : { word: "cannot_tell", probability: outside ? outside.inside : 0,
            remarks: [["band_proves_nothing"]] };
    }
    if (inside && inside.word === "in") {
      return { word: "in_limits", probability: inside.probability, remarks: [] };
    }
    if (far) {
      const slip = [1000, 0.001].some((f) => whole.low <= found * f && found * f <= whole.high);
      return { word: outside.word, probability: outside.probability,
               remarks: slip ? [["unit_slip"]] : [] };
    }
    const chance = inside ? inside.inside : outside ? outside.inside : 0;
    return { word: "cannot_tell", probability: chance,
             remarks: doubts(data, reading, risk, shared, open, whole) };
  }

  /* What would decide. With the meter's error left out, would the reading have decided? */
  function doubts(data, reading, risk, shared, open, whole) {
    const certain = { ...reading, u: 0 };
    const core = judged(certain, whole.sureLow, whole.sureHigh, risk);
    const rim = judged(certain, whole.low, whole.high, risk);
    const byCondition = !(core && core.word === "in") && Boolean(rim && rim.word === "in");
    const remarks = byCondition ? open.map((name) => ["state_condition", name]) : [];
    if (reading.u > 0 && !byCondition) {
      if (reading.leads > LEADS_SHARE) remarks.push(["null_leads"]);
      if (data.quantity === "resistance" && reading.value < shared.low_ohm) {
        remarks.push(["drop_under_load"]);
      }
      remarks.push(["better_meter"]);
    }
    return remarks.length ? remarks : [["other_method"]];
  }

  /* What "in limits" leaves open. */
  function proof(data, spans, shared) {
    const found = [["asleep"]];
    const n = data.axes.findIndex(([name]) => name === "temperature");
    if (n >= 0 && spans[n][1] < shared.hot_c) found.push(["fails_hot"]);
    if (!data.low || !data.high) found.push(["one_sided"]);
    if (data.practice) found.push(["practice"]);
    return found;
  }

  function outsideBand(data, value) {
    if (!data.band) return [];
    const [low, high] = data.band;
    const out = (low !== null && value < low) || (high !== null && value > high);
    return out ? [["outside_band"]] : [];
  }

  /* What the lines' own error may turn: the verdict, or the first thing that would decide. */
  const answer = ({ word, remarks }) => `${word} ${remarks.length ? remarks[0][0] : ""}`;

  /* The verdict on a reading {value} or {over} or {impossible}, all in base units.
     said: condition name to [from, to]; meter: one of data.tools, changed or not, or null.
     `close` is true where the lines' own error could turn the verdict. Null: beyond the lines. */
  function judge(data, reading, said, meter, shared, risk = shared.risk) {
    const spans = spansOf(data, said, meter);
    if (!spans) return null;
    const share = meter && meter.share !== undefined ? meter.share : 1;
    const found = limits(data, spans);
    const whole = moved(found, share || 1, 0, data.bent, 0);
    const open = data.axes.filter(([name], n) => name !== "meter" && spans[n][0] < spans[n][1])
      .map(([name]) => name);
    const blank = { word: "cannot_tell", probability: 0, ...whole, measured: null, spans, close: false };
    if (reading.impossible) {
      return { ...blank, word: "implausible", probability: 1, remarks: [["impossible"]] };
    }
    if (share === null) return { ...blank, remarks: [["true_rms"]] };
    const shifted = [-1, 1].map((sign) => moved(found, share, data.error, data.bent, sign));
    if (reading.over) {
      const remarks = [];
      const over = overRange(data, whole, meter, remarks);
      if (over.word === "in_limits") remarks.push(...proof(data, spans, shared));
      const close = shifted.some((each) => overRange(data, each, meter, []).word !== over.word);
      return { ...blank, ...over, remarks, close };
    }
    const figure = measured(data, reading.value, meter);
    if (!figure) return { ...blank, remarks: [["beyond_meter"]] };
    const [here, ...others] = [whole, ...shifted].map((each) =>
      decided(data, reading.value, figure, risk, shared, open, each));
    const more = [];
    if (here.word === "in_limits") more.push(...proof(data, spans, shared));
    if (["in_limits", "low", "high"].includes(here.word)) more.push(...outsideBand(data, figure.value));
    if (!meter) more.push(["bare_figure"]);
    return {
      ...blank, ...here, measured: figure, remarks: [...here.remarks, ...more],
      close: others.some((each) => answer(each) !== answer(here)),
    };
  }

  return { judge, limits, spansOf, measured, below };
})();
