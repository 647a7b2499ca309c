/* Checking a reading at its value: what the meter shows, the conditions it hangs on, the meter.
   Nothing leaves the device and nothing is kept. The tables above serve without it. */
(() => {
  "use strict";
  const { fettleCheck: kernel, fettleTyped: typed, fettleLines: lines, fettleReadings: shared } = window;
  if (!kernel || !typed || !lines || !shared) return;

  const PAUSE_MS = 350; // typing rests this long before a verdict is given and read out
  const word = (key, values) => lines.say(shared.words, key, values);

  const make = (tag, attributes = {}, ...children) => {
    const element = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
    element.append(...children.filter((child) => child !== null && child !== ""));
    return element;
  };

  const inUs = () => document.documentElement.classList.contains("units-us");

  /* Of a unit and its counterpart, the one the reader's system has. */
  const ours = (units, symbol) =>
    units.find((each) => shared.us.includes(symbol(each)) === inUs()) || units[0];

  class Check {
    constructor(box, number) {
      this.box = box;
      this.id = `check-${number}`;
      this.data = JSON.parse(box.dataset.check);
      this.fields = {};
      this.result = make("div", { class: "check-result", "aria-live": "polite" });
      box.append(
        make("h4", {}, word("check.heading")), this.reading(), ...this.conditions(), this.meter(),
        this.result,
      );
      box.hidden = false;
      box.addEventListener("input", () => this.soon());
      document.addEventListener("fettle:units", () => this.turned());
      this.placeholders();
    }

    soon() {
      clearTimeout(this.timer);
      this.timer = setTimeout(() => this.show(), PAUSE_MS);
    }

    /* A line to type a figure in, with its unit. */
    line(name, label, quantity, unit, ...more) {
      const id = `${this.id}-${name}`;
      const input = make("input", {
        id, type: "text", inputmode: "decimal", autocomplete: "off", autocapitalize: "none",
        spellcheck: "false", enterkeyhint: "done", maxlength: "60",
      });
      const list = make("select", { "aria-label": `${word("check.unit")}, ${label}` });
      for (const each of shared.quantities[quantity].units) list.append(make("option", {}, each));
      list.value = unit;
      this.fields[name] = { input, list, quantity };
      const row = make("div", { class: "check-row" }, input, list, ...more);
      return make("div", { class: "check-line" }, make("label", { for: id }, label), row);
    }

    button(key, act) {
      const button = make("button", { type: "button" },
        make("span", { "aria-hidden": "true" }, word(key)),
        make("span", { class: "for-ear" }, word(`${key}_said`)));
      button.addEventListener("click", act);
      return button;
    }

    reading() {
      const [unit] = ours(this.data.units, ([symbol]) => symbol);
      const set = (change) => {
        const { input } = this.fields.reading;
        input.value = change(input.value);
        this.show();
      };
      const least = shared.quantities[this.data.quantity].least;
      const button = least === 0
        ? this.button("check.over", () => set(() => word("check.over")))
        : this.button("check.sign", () => set((text) => (/^[-−–]/.test(text) ? text.slice(1) : `-${text}`)));
      const line = this.line("reading", word("check.reading"), this.data.quantity, unit, button);
      line.classList.add("check-main");
      return line;
    }

    /* The conditions the value follows; one that is always the same is not asked for. */
    conditions() {
      const asked = this.data.axes.filter(([name, knots]) => name !== "meter" && knots.length > 1);
      return asked.map(([name]) => {
        const { asks, quantity, units } = shared.conditions[name];
        const label = asks[0].toUpperCase() + asks.slice(1);
        const id = `${this.id}-${name}-spread`;
        const spread = make("input", { id, type: "text", inputmode: "decimal", autocomplete: "off", maxlength: "12" });
        const more = make("label", { for: id, class: "check-spread" }, word("check.spread"), spread);
        const line = this.line(name, label, quantity, ours(units, (each) => each), more);
        this.fields[name].spread = spread;
        this.fields[name].hint = make("p", { class: "aside" });
        line.append(this.fields[name].hint);
        return line;
      });
    }

    meter() {
      const list = make("select", { id: `${this.id}-meter` });
      this.data.tools.forEach((tool, n) => list.append(make("option", { value: n }, tool.title)));
      list.append(
        make("option", { value: "another" }, word("check.another")),
        make("option", { value: "bare" }, word("check.bare")),
      );
      list.value = this.data.tools.length ? "0" : "bare";
      this.tool = list;
      this.summary = make("summary");
      this.own = make("div", {});
      const choose = make("div", { class: "check-line" },
        make("label", { for: list.id }, word("check.meter")), make("div", { class: "check-row" }, list));
      list.addEventListener("input", () => this.meterFields());
      const folded = make("details", { class: "check-meter" }, this.summary, choose, this.own);
      this.meterFields();
      return folded;
    }

    plain(name, key) {
      const id = `${this.id}-${name}`;
      const input = make("input", { id, type: "text", inputmode: "decimal", autocomplete: "off", maxlength: "12" });
      this.fields[name] = { input };
      return make("div", { class: "check-line check-plain" }, make("label", { for: id }, word(key)), input);
    }

    /* The fields of the chosen meter; empty ones keep what its record says. */
    meterFields() {
      for (const name of ["percent", "counts", "input", "leads", "nulled"]) delete this.fields[name];
      this.own.replaceChildren();
      const tool = this.chosen();
      if (!tool) return;
      this.own.append(this.plain("percent", "check.percent"), this.plain("counts", "check.counts"));
      const loads = this.data.source || this.data.axes.some(([name]) => name === "meter");
      if (loads) this.own.append(this.plain("input", "check.input"));
      if (this.data.quantity === "resistance") {
        const nulled = make("input", { type: "checkbox" });
        nulled.checked = tool.nulled;
        this.fields.nulled = { input: nulled };
        this.own.append(
          make("label", { class: "check-tick" }, nulled, word("check.nulled")),
          this.plain("leads", "check.leads"),
        );
      }
    }

    chosen() {
      if (this.tool.value === "bare") return null;
      if (this.tool.value !== "another") return this.data.tools[Number(this.tool.value)];
      const [unit, places] = this.data.units[0];
      const digit = this.width((10 ** -places).toFixed(places), this.data.quantity, unit);
      return { ranges: [[null, digit, null, null]], input: null, leads: shared.leads, nulled: false, share: 1 };
    }

    /* A plain number of the meter's; undefined where the field is empty or not there. */
    number(name, most) {
      const field = this.fields[name];
      const text = field ? field.input.value.trim().replace(",", ".") : "";
      if (!text) return undefined;
      const found = Number(text);
      if (!(found >= 0 && found <= most)) throw new Error(field.input.labels[0].textContent);
      return found;
    }

    /* The chosen meter with what was typed over its record. */
    used() {
      const tool = this.chosen();
      if (!tool) return null;
      const own = { percent: this.number("percent", 50), counts: this.number("counts", 1000) };
      const ranges = tool.ranges.map(([top, digit, percent, counts]) =>
        [top, digit, own.percent === undefined ? percent : own.percent, own.counts === undefined ? counts : own.counts]);
      if (ranges[0][2] === null || ranges[0][3] === null) throw new Error(word("check.percent"));
      const mohm = this.number("input", 1e6);
      if (mohm !== undefined && mohm < 1) throw new Error(word("check.input"));
      const leads = this.number("leads", 100);
      return {
        ...tool, ranges,
        input: mohm === undefined ? tool.input : [mohm * 1e6, mohm * 1e6],
        leads: leads === undefined ? tool.leads : [leads, leads],
        nulled: this.fields.nulled ? this.fields.nulled.input.checked : tool.nulled,
      };
    }

    /* What is said of the conditions, as spans in base units. */
    said() {
      const spans = {};
      for (const [name] of this.data.axes) {
        const field = this.fields[name];
        if (name === "meter" || !field || !field.input.value.trim()) continue;
        const read = (text) => this.read(text, field.quantity, field.list.value);
        const { value } = read(field.input.value);
        const around = field.spread.value.trim();
        const off = around ? this.width(around, field.quantity, field.list.value) : 0;
        spans[name] = [value - off, value + off];
      }
      return spans;
    }

    read(text, quantity, unit) {
      const found = typed.read(text, quantity, unit, shared);
      if (found.value === undefined) throw new Fault(found.fault || "form", { ...found, unit });
      return found;
    }

    /* A difference in the base unit: a unit with an offset, as °F, has none for it. */
    width(text, quantity, unit) {
      return Math.abs(this.read(text, quantity, unit).value - this.read("0", quantity, unit).value);
    }

    turned() {
      const turn = (name, unit) => {
        if (!this.fields[name].input.value) this.fields[name].list.value = unit;
      };
      turn("reading", ours(this.data.units, ([symbol]) => symbol)[0]);
      for (const [name, { hint }] of Object.entries(this.fields)) {
        if (hint) turn(name, ours(shared.conditions[name].units, (each) => each));
      }
      this.show();
    }

    unitOf(name) {
      return ours(shared.conditions[name].units, (each) => each);
    }

    placeholders(meter = this.chosen(), on = null) {
      for (const [name, knots] of this.data.axes) {
        const field = this.fields[name];
        if (!field || !field.hint) continue;
        const range = lines.span(name, [knots[0], knots[knots.length - 1]], this.unitOf(name), shared);
        field.hint.textContent = word("check.usual", { range });
      }
      const title = this.tool.options[this.tool.selectedIndex].textContent;
      const parts = [title];
      const range = on || (meter && meter.ranges[0]);
      if (range && range[2] !== null) {
        const unit = this.fields.reading.list.value;
        const { quantity } = this.data;
        const digit = typed.shownIn(range[1], quantity, unit, shared) - typed.shownIn(0, quantity, unit, shared);
        parts.push(word("check.accuracy", {
          percent: range[2], counts: range[3], digit: `${Number(digit.toPrecision(6))} ${unit}`,
        }));
      }
      if (meter && this.data.quantity === "resistance") {
        parts.push(word(meter.nulled ? "check.leads_off" : "check.leads_in"));
      }
      this.summary.textContent = word("check.meter_line", { meter: parts.join(", ") });
    }

    show() {
      clearTimeout(this.timer);
      const { input, list, quantity } = this.fields.reading;
      try {
        const meter = this.used();
        const found = input.value.trim() ? typed.read(input.value, quantity, list.value, shared) : null;
        const on = found && found.value !== undefined ? kernel.measured(this.data, found.value, meter) : null;
        this.placeholders(meter, on && on.range);
        if (!found) return this.result.replaceChildren();
        if (found.fault && !found.impossible) throw new Fault(found.fault, { ...found, unit: list.value });
        return this.verdict(kernel.judge(this.data, found, this.said(), meter, shared));
      } catch (fault) {
        const text = fault instanceof Fault
          ? word(`check.fault.${fault.kind}`, fault.values)
          : word("check.fault.meter", { which: fault.message });
        return this.result.replaceChildren(make("p", { class: "check-fault" }, text));
      }
    }

    verdict(found) {
      if (!found) return this.beyond();
      const units = ours(this.data.units, ([symbol]) => symbol);
      const told = lines.lines(this.data, found, shared.risk, units, (name) => this.unitOf(name), shared);
      const list = make("ul", { class: "check-remarks" });
      if (found.close) list.append(make("li", {}, make("b", {}, word("check.close"))));
      for (const each of told.remarks) list.append(make("li", {}, each));
      this.result.replaceChildren(
        make("p", { class: "check-word", "data-word": found.word }, word(`verdict.${found.word}`)),
        ...told.texts.map((text) => make("p", { class: "check-text" }, text)),
        ...(list.children.length ? [list] : []), ...this.onward(found),
      );
    }

    beyond() {
      const ranges = this.data.axes.filter(([name]) => this.fields[name]).map(([name, knots]) =>
        lines.span(name, [knots[0], knots[knots.length - 1]], this.unitOf(name), shared));
      this.result.replaceChildren(
        make("p", { class: "check-fault" }, word("check.beyond", { range: ranges.join(", ") })));
    }

    /* Where the page goes on from here. */
    onward(found) {
      if (this.data.standing === "plausibility_band" && found.word !== "implausible") return [];
      const anchors = lines.next(this.data, found);
      const several = this.data.several && found.word === "in_limits";
      let key = several ? "check.in_several" : "check.next";
      if (!anchors.length) {
        key = this.data.several ? "check.several" : "check.no_outcome";
        anchors.push(found.word === "implausible" && document.getElementById("hookup") ? "hookup" : "outcomes");
        if (anchors[0] === "hookup") key = "check.next";
      }
      const links = make("ul", { class: "links check-next" });
      for (const anchor of anchors) {
        const goal = document.getElementById(anchor);
        if (goal) links.append(make("li", {}, make("a", { href: `#${anchor}` }, goal.querySelector("h2, h3").textContent)));
      }
      return [make("p", { class: "check-text" }, make("b", {}, word(key))), links];
    }
  }

  /* What was typed and cannot be read. */
  class Fault extends Error {
    constructor(kind, values) {
      super(kind);
      this.kind = kind;
      this.values = values;
    }
  }

  document.querySelectorAll(".check[data-check]").forEach((box, n) => new Check(box, n + 1));
})();
