/* Checking a reading at its value: what the meter shows, the conditions it hangs on, the meter.
   Nothing leaves the device; what a job in hand keeps, check-kept.js says. The tables above serve
   without it. */

(() => {
  "use strict";

  const { fettleCheck: kernel, fettleTyped: typed, fettleLines: lines, fettleReadings: shared } = window;
  const { fettleFields: fields, fettleMeter: Meter, fettleKept: Kept } = window;
  if (!kernel || !typed || !lines || !shared || !fields || !Meter || !Kept) return;

  const PAUSE_MS = 350; // typing rests this long before a verdict is given and read out
  const { say, make } = fields;

  const inUs = () => document.documentElement.classList.contains("units-us");

  /* Of a unit and its counterpart, the one the reader's system has. */
  const ours = (units, symbol) =>
    units.find((each) => shared.us.includes(symbol(each)) === inUs()) || units[0];

  const unitOf = (name) => ours(shared.conditions[name].units, (each) => each);

  const ends = (knots) => [knots[0], knots[knots.length - 1]];

  /* What was typed and cannot be read: the kind of fault, and what fills the blanks of its words. */
  class Fault extends Error {
    constructor(kind, values) {
      super(kind);
      this.kind = kind;
      this.values = values;
    }
  }

  function read(text, quantity, unit) {
    const found = typed.read(text, quantity, unit, shared);
    if (found.value === undefined) throw new Fault(found.fault || "form", { ...found, unit });
    return found.value;
  }

  /* A difference in the base unit: a unit with an offset, as °F, has none for it. */
  const width = (text, quantity, unit) =>
    Math.abs(read(text, quantity, unit) - read("0", quantity, unit));

  class Check {
    constructor(box, number) {
      this.id = `check-${number}`;
      this.data = JSON.parse(box.dataset.check);
      this.conditions = {};
      const [symbol, places] = this.data.units[0];
      const digit = width((10 ** -places).toFixed(places), this.data.quantity, symbol);
      this.meter = new Meter(this.data, this.id, digit);
      this.result = make("div", { class: "check-result", "aria-live": "polite" });
      this.kept = new Kept(box);
      box.append(
        make("h4", {}, say("check.heading")), this.reading(), ...this.asked(), this.meter.element,
        this.result, this.kept.element,
      );
      box.hidden = false;
      box.addEventListener("input", () => {
        clearTimeout(this.timer);
        this.timer = setTimeout(() => this.show(), PAUSE_MS);
      });
      document.addEventListener("fettle:units", () => this.turned());
      this.show();
    }

    units() {
      return ours(this.data.units, ([symbol]) => symbol);
    }

    changed(field, change) {
      field.value = change(field.value);
      this.show();
    }

    /* What a numeric keyboard lacks here: the sign, or the word for over-range. */
    reading() {
      const { quantity } = this.data;
      const act = (change) => () => this.changed(this.typed.input, change);
      const button = shared.quantities[quantity].least === 0
        ? fields.button("check.over", act(() => say("check.over")))
        : fields.button("check.sign", act(fields.turned));
      this.typed = fields.figure(
        `${this.id}-reading`, say("check.reading"), quantity, this.units()[0], button,
      );
      this.typed.line.classList.add("check-main");
      return this.typed.line;
    }

    /* The conditions the value follows; one that is always the same is not asked for. */
    asked() {
      const asked = this.data.axes.filter(([name, knots]) => name !== "meter" && knots.length > 1);
      return asked.map(([name, knots]) => {
        const { asks, quantity } = shared.conditions[name];
        const id = `${this.id}-${name}`;
        const spread = fields.input(`${id}-spread`, 12);
        const around = make(
          "label", { for: spread.id, class: "check-spread" }, say("check.spread"), spread,
        );
        const sign = knots[0] < 0
          ? fields.button("check.sign", () => this.changed(this.conditions[name].input, fields.turned))
          : null;
        const label = asks[0].toUpperCase() + asks.slice(1);
        const found = fields.figure(id, label, quantity, unitOf(name), sign, around);
        const hint = make("p", { class: "aside" });
        found.line.append(hint);
        this.conditions[name] = { ...found, spread, hint, usual: ends(knots) };
        return found.line;
      });
    }

    /* What is said of the conditions, as spans in base units. */
    said() {
      const spans = {};
      for (const [name, { input, list, quantity, spread }] of Object.entries(this.conditions)) {
        if (!input.value.trim()) continue;
        const value = read(input.value, quantity, list.value);
        const off = spread.value.trim() ? width(spread.value, quantity, list.value) : 0;
        spans[name] = [value - off, value + off];
      }
      return spans;
    }

    /* The reader changed the system of units: a field that holds a figure keeps its unit. */
    turned() {
      if (!this.typed.input.value) this.typed.list.value = this.units()[0];
      for (const [name, { input, list }] of Object.entries(this.conditions)) {
        if (!input.value) list.value = unitOf(name);
      }
      this.show();
    }

    /* The words around the fields: what is taken where nothing is said, and the meter. */
    hints(on) {
      for (const [name, { hint, usual }] of Object.entries(this.conditions)) {
        const range = lines.span(name, usual, unitOf(name), shared);
        hint.textContent = say("check.usual", { range });
      }
      const { quantity } = this.data;
      const unit = this.typed.list.value;
      const shown = (base) => typed.shownIn(base, quantity, unit, shared);
      this.meter.tell(on, unit, (base) => shown(base) - shown(0));
    }

    show() {
      clearTimeout(this.timer);
      const { input, list, quantity } = this.typed;
      const found = input.value.trim() ? typed.read(input.value, quantity, list.value, shared) : null;
      try {
        const meter = this.meter.used();
        const given = found && found.value !== undefined;
        const figure = given ? kernel.measured(this.data, found.value, meter) : null;
        this.hints(figure && figure.range);
        if (!found) return this.empty();
        if (found.fault && !found.impossible) throw new Fault(found.fault, { ...found, unit: list.value });
        return this.verdict(kernel.judge(this.data, found, this.said(), meter, shared), found);
      } catch (fault) {
        this.hints(null);
        if (!found) return this.empty();
        return this.refuse(fault instanceof Fault
          ? say(`check.fault.${fault.kind}`, fault.values)
          : say("check.fault.meter", { which: fault.message }));
      }
    }

    empty() {
      this.result.replaceChildren();
      this.kept.told(null);
    }

    /* The reading and its conditions in the units they were typed in, for the job in hand. */
    told(found, word) {
      const inUnit = (base, quantity, unit) =>
        Number(typed.shownIn(base, quantity, unit, shared).toPrecision(6));
      const { input, list, quantity } = this.typed;
      const value = found.over
        ? say("check.over")
        : found.impossible ? input.value.trim() : `${inUnit(found.value, quantity, list.value)} ${list.value}`;
      const conditions = Object.entries(this.said()).map(([name, [from, to]]) => {
        const condition = this.conditions[name];
        const unit = condition.list.value;
        const [low, middle] = [from, (from + to) / 2].map((base) => inUnit(base, condition.quantity, unit));
        const off = Number((middle - low).toPrecision(3));
        return `${shared.conditions[name].asks} ${middle} ${unit}${off ? ` ± ${off}` : ""}`;
      });
      return { value, word, conditions: conditions.join(", ") };
    }

    refuse(text) {
      this.kept.told(null);
      this.result.replaceChildren(make("p", { class: "check-fault" }, text));
    }

    verdict(found, read) {
      if (!found) {
        const ranges = Object.entries(this.conditions)
          .map(([name, { usual }]) => lines.span(name, usual, unitOf(name), shared));
        return this.refuse(say("check.beyond", { range: ranges.join(", ") }));
      }
      const told = lines.lines(this.data, found, shared.risk, this.units(), unitOf, shared);
      const list = make("ul", { class: "check-remarks" });
      if (found.close) list.append(make("li", {}, make("b", {}, say("check.close"))));
      for (const each of told.remarks) list.append(make("li", {}, each));
      this.result.replaceChildren(
        make("p", { class: "check-word", "data-word": found.word }, say(`verdict.${found.word}`)),
        ...told.texts.map((text) => make("p", { class: "check-text" }, text)),
        ...(list.children.length ? [list] : []), ...this.onward(found),
      );
      return this.kept.told(this.told(read, found.word));
    }

    /* Where the page goes on from here: the outcome, or the place to look again. */
    onward(found) {
      const several = this.data.several;
      let anchors = lines.next(this.data, found);
      let key = several && found.word === "in_limits" ? "check.in_several" : "check.next";
      if (found.word === "implausible") {
        anchors = [document.getElementById("hookup") ? "hookup" : "steps"];
        key = "check.again";
      } else if (this.data.standing === "plausibility_band") {
        return [];
      } else if (!anchors.length) {
        anchors = ["outcomes"];
        key = several ? "check.several" : "check.no_outcome";
      }
      const links = make("ul", { class: "links check-next" });
      for (const anchor of anchors) {
        const heading = document.getElementById(anchor).querySelector("h2, h3");
        links.append(make("li", {}, make("a", { href: `#${anchor}` }, heading.textContent)));
      }
      return [make("p", { class: "check-text" }, make("b", {}, say(key))), links];
    }
  }

  document.querySelectorAll(".check[data-check]").forEach((box, n) => new Check(box, n + 1));
})();
