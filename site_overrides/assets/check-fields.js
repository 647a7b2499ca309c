/* Fields of a reading check: large, with a numeric keyboard, each with its label. */

"use strict";

window.fettleFields = (() => {
  const { fettleLines: lines, fettleReadings: shared } = window;
  const { make } = window.fettleElement;

  const say = (key, values) => lines.say(shared.words, key, values);

  function input(id, most) {
    const field = make("input", {
      id, type: "text", inputmode: "decimal", autocomplete: "off", autocapitalize: "none",
      spellcheck: "false", enterkeyhint: "done", maxlength: most,
    });
    field.addEventListener("keydown", ({ key }) => key === "Enter" && field.blur());
    return field;
  }

  /* A plain number under its label. */
  function plain(id, label) {
    const field = input(id, 12);
    const line = make("div", { class: "check-line check-plain" }, make("label", { for: id }, label), field);
    return { line, input: field };
  }

  /* A figure with its unit beside it, and what else belongs in the row. */
  function figure(id, label, quantity, unit, ...more) {
    const field = input(id, 60);
    const list = make("select", { "aria-label": `${say("check.unit")}, ${label}` });
    for (const each of shared.quantities[quantity].units) list.append(make("option", {}, each));
    list.value = unit;
    const row = make("div", { class: "check-row" }, field, list, ...more);
    const line = make("div", { class: "check-line" }, make("label", { for: id }, label), row);
    return { line, input: field, list, quantity };
  }

  /* A button for what a numeric keyboard lacks: its sign to see, its words to hear. */
  function button(key, act) {
    const element = make("button", { type: "button" },
      make("span", { "aria-hidden": "true" }, say(key)),
      make("span", { class: "for-ear" }, say(`${key}_said`)));
    element.addEventListener("click", act);
    return element;
  }

  const turned = (text) => (/^[-−–]/.test(text) ? text.slice(1) : `-${text}`);

  return { say, make, input, plain, figure, button, turned };
})();
