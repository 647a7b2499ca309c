/* A verdict in words, line by line as the command `judge` prints it, and where it leads on the
   page. Pure: data in, texts and anchors out. */

"use strict";

window.fettleLines = (() => {
  const { figure, placesFor, shownIn, showRange } = window.fettleTyped;
  const CERTAIN = 0.999; // above it a probability is not told from one

  /* Which findings of a test a verdict leads to, the first that the test has. */
  const FINDINGS = {
    in_limits: ["in_limits", "as_expected"],
    low: ["low", "shorted", "flat_low"],
    high: ["high", "open", "flat_high"],
    open: ["open", "high"],
    cannot_tell: ["cannot_tell"],
    implausible: [],
  };
  const SOUND = ["in_limits", "as_expected", "is_a", "complaint_absent", "cannot_tell"];

  function say(words, key, values = {}) {
    return words[key].replace(/\{(\w+)\}/g, (_, name) => values[name]);
  }

  function sides(words, [low, high]) {
    if (!low) return `${words["value.at_most"]} ${high}`;
    if (!high) return `${words["value.at_least"]} ${low}`;
    return say(words, "check.span", { low, high });
  }

  function percent(words, probability) {
    return probability > CERTAIN
      ? say(words, "verdict.more_than", { percent: figure(100 * CERTAIN, 1) })
      : figure(100 * probability, 1);
  }

  /* One end of a condition, with the digits a reader would say it with. */
  function end(value, name, unit, shared) {
    const shown = shownIn(value, shared.conditions[name].quantity, unit, shared);
    const near = Math.round(shown);
    return Math.abs(shown - near) < 1e-9 ? figure(near, 0) : figure(shown, placesFor(shown, 3));
  }

  function span(name, [from, to], unit, shared) {
    return say(shared.words, "check.range", {
      low: end(from, name, unit, shared), high: end(to, name, unit, shared), unit,
    });
  }

  function remark([code, name], data, verdict, unitOf, shared) {
    const values = { method: data.method, band: data.band && data.band[2] };
    if (name) {
      const n = data.axes.findIndex(([each]) => each === name);
      values.condition = shared.conditions[name].asks;
      values.range = span(name, verdict.spans[n], unitOf(name), shared);
    }
    return say(shared.words, `verdict.remark.${code}`, values);
  }

  /* The lines under the verdict. `unit` and `places` are those to show; unitOf(condition) its unit. */
  function lines(data, verdict, risk, [unit, places], unitOf, shared) {
    const { words } = shared;
    const shown = (value) =>
      Number.isFinite(value) ? shownIn(value, data.quantity, unit, shared) : value;
    const texts = [];
    const rim = showRange(shown(verdict.low), shown(verdict.high), places);
    texts.push(say(words, "verdict.limits", { limits: sides(words, rim), unit }));
    const core = verdict.sureLow <= verdict.sureHigh;
    if (verdict.sureLow !== verdict.low || verdict.sureHigh !== verdict.high) {
      const texts_ = core && showRange(shown(verdict.sureLow), shown(verdict.sureHigh), places);
      texts.push(core
        ? say(words, "verdict.sure", { limits: sides(words, texts_), unit })
        : words["verdict.no_core"]);
    }
    if (verdict.measured && verdict.measured.u > 0) {
      const value = shown(verdict.measured.value);
      const width = shown(verdict.measured.value + verdict.measured.u) - value;
      const digits = placesFor(width, 2);
      texts.push(say(words, "verdict.measured", {
        value: figure(value, digits), u: figure(width, digits), unit,
      }));
    }
    if (verdict.measured && (verdict.word !== "cannot_tell" || core)) {
      const key = verdict.word === "cannot_tell" ? "verdict.chance" : "verdict.probability";
      texts.push(say(words, key, {
        percent: percent(words, verdict.probability), risk: figure(100 * risk, 1),
      }));
    }
    return {
      texts,
      remarks: verdict.remarks.map((each) => remark(each, data, verdict, unitOf, shared)),
    };
  }

  /* The anchors of the outcomes that a verdict leads to; none where several values say it. */
  function next(data, verdict) {
    const off = ["low", "high", "open"].includes(verdict.word);
    if (data.standing === "plausibility_band" || (off && data.several)) return [];
    const value = verdict.measured ? verdict.measured.value : Infinity;
    const written = data.outcomes.filter(([, finding, low, high]) =>
      off && !SOUND.includes(finding) && (low !== null || high !== null) &&
      (low === null || value >= low) && (high === null || value <= high));
    if (written.length) return [written[0][0]];
    const plain = data.outcomes.filter(([, , low, high]) => low === null && high === null || !off);
    const of = (finding) => plain.filter((each) => each[1] === finding).map(([anchor]) => anchor);
    const found = FINDINGS[verdict.word].map(of).find((each) => each.length) || [];
    return verdict.word === "in_limits" ? [...found, ...of("complaint_absent")] : found;
  }

  return { lines, next, say, span };
})();
