/* The instrument of a reading check: one of the test's own, as its record says, with what the reader
   types over it; another one; or none. */

"use strict";

window.fettleMeter = (() => {
  const BETWEEN = { percent: 50, counts: 1000, input: 1e6, leads: 100 }; // the most that makes sense
  const LEAST_MOHM = 1; // the limits were worked out down to this input resistance
  const OHM_IN_MOHM = 1e6;

  const { say, make, plain } = window.fettleFields;

  return class Meter {
    /* `digit` is the last digit shown, in the base unit: what another meter counts in. */
    constructor(data, id, digit) {
      this.data = data;
      this.id = id;
      this.digit = digit;
      this.fields = {};
      this.list = make("select", { id: `${id}-meter` });
      data.tools.forEach((tool, n) => this.list.append(make("option", { value: n }, tool.title)));
      this.list.append(
        make("option", { value: "another" }, say("check.another")),
        make("option", { value: "bare" }, say("check.bare")),
      );
      this.list.value = data.tools.length ? "0" : "bare";
      this.list.addEventListener("input", () => this.fill());
      this.summary = make("summary");
      this.own = make("div");
      const row = make("div", { class: "check-row" }, this.list);
      const choose = make("div", { class: "check-line" },
        make("label", { for: this.list.id }, say("check.meter")), row);
      this.element = make("details", { class: "check-meter fold" }, this.summary, choose, this.own);
      this.fill();
    }

    /* The fields of the chosen meter; empty ones keep what its record says. */
    fill() {
      this.fields = {};
      this.own.replaceChildren();
      const tool = this.chosen();
      if (!tool) return;
      const [from, to] = tool.leads;
      this.add("percent", "");
      this.add("counts", "");
      if (this.data.source || this.data.axes.some(([name]) => name === "meter")) {
        this.add("input", tool.input ? tool.input[0] / OHM_IN_MOHM : "");
      }
      if (this.data.quantity !== "resistance") return;
      this.nulled = make("input", { type: "checkbox" });
      this.nulled.checked = tool.nulled;
      this.own.append(make("label", { class: "check-tick" }, this.nulled, say("check.nulled")));
      this.add("leads", from === to ? from : say("check.span", { low: from, high: to }));
    }

    add(name, hint) {
      const { line, input } = plain(`${this.id}-${name}`, say(`check.${name}`));
      input.placeholder = hint;
      this.fields[name] = input;
      this.own.append(line);
    }

    chosen() {
      if (this.list.value === "bare") return null;
      if (this.list.value !== "another") return this.data.tools[Number(this.list.value)];
      const { leads } = window.fettleReadings;
      return { ranges: [[null, this.digit, null, null]], input: null, leads, nulled: false, share: 1 };
    }

    /* A plain number; undefined where its field is empty or not there. */
    number(name) {
      const field = this.fields[name];
      const text = field ? field.value.trim().replace(",", ".") : "";
      if (!text) return undefined;
      const found = Number(text);
      if (!(found >= (name === "input" ? LEAST_MOHM : 0) && found <= BETWEEN[name])) {
        throw new Error(say(`check.${name}`));
      }
      return found;
    }

    /* The chosen meter with what was typed over its record; throws the name of a field not right. */
    used() {
      const tool = this.chosen();
      if (!tool) return null;
      const or = (own, recorded) => (own === undefined ? recorded : own);
      const [percent, counts, mohm, ohm] =
        ["percent", "counts", "input", "leads"].map((name) => this.number(name));
      const ranges = tool.ranges.map(([top, digit, ...known]) =>
        [top, digit, or(percent, known[0]), or(counts, known[1])]);
      if (ranges[0][2] === null) throw new Error(say("check.percent"));
      if (ranges[0][3] === null) throw new Error(say("check.counts"));
      return {
        ...tool, ranges,
        input: mohm === undefined ? tool.input : [mohm * OHM_IN_MOHM, mohm * OHM_IN_MOHM],
        leads: ohm === undefined ? tool.leads : [ohm, ohm],
        nulled: this.data.quantity === "resistance" ? this.nulled.checked : tool.nulled,
      };
    }

    /* Says in one line which meter is taken, on the range `on` or its smallest. `width` gives a
       difference in the unit shown. */
    tell(on, unit, width) {
      const tool = this.chosen();
      const parts = [this.list.options[this.list.selectedIndex].textContent];
      const range = on || (tool && tool.ranges[0]);
      if (range && range[2] !== null) {
        const digit = `${Number(width(range[1]).toPrecision(6))} ${unit}`;
        parts.push(say("check.accuracy", { percent: range[2], counts: range[3], digit }));
        const recorded = tool && tool.ranges.find(([top]) => top === range[0]);
        if (this.fields.percent && recorded) {
          this.fields.percent.placeholder = recorded[2] === null ? "" : recorded[2];
          this.fields.counts.placeholder = recorded[3] === null ? "" : recorded[3];
        }
      }
      if (tool && this.data.quantity === "resistance") {
        parts.push(say(this.nulled.checked ? "check.leads_off" : "check.leads_in"));
      }
      this.summary.textContent = say("check.meter_line", { meter: parts.join(", ") });
    }
  };
})();
