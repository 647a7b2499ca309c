/* The controls of a form: one for each field of a record, with its sentence beside it. What may stay
   out lies folded, and is made when it is opened. */

"use strict";

(() => {
  const form = window.fettleForm;
  if (!form) return;

  const { say } = form;
  const { make } = window.fettleElement;
  const LONG = 400; // characters; a longer text gets more lines
  const SHORT = 8; // choices
  let count = 0;

  function button(text, act, attributes = {}) {
    const element = make("button", { type: "button", ...attributes }, text);
    element.addEventListener("click", act);
    return element;
  }

  const option = (value, text) => make("option", { value }, text);

  const pathOf = (path) => path.join("/");

  /* The sentence of a field, and what a written value of it may look like. */
  const told = (node) => [node.description, node.takes].filter(Boolean).join(" ");

  /* A drop-down of words or of records; nothing is chosen in it at first. A long one gets its
     choices when somebody turns to it: many hundreds in every step would slow a phone down. */
  function select(pairs, value, hint) {
    const element = make("select", {}, option("", hint));
    const chosen = pairs.find(([id]) => id === value) || [value, value];
    if (value) element.append(option(...chosen));
    element.value = value || "";
    const fill = () => {
      if (element.dataset.filled) return;
      element.dataset.filled = "yes";
      for (const [id, title] of pairs) if (id !== value) element.append(option(id, title));
    };
    if (pairs.length <= SHORT) fill();
    for (const turned of ["pointerdown", "focus"]) element.addEventListener(turned, fill);
    return element;
  }

  const named = (node, made) =>
    form.choices(node, made).map(([id, title]) => [id, title && title !== id ? `${title} (${id})` : id]);

  /* The closed choices of a field; none where anything may be typed. */
  function pairs(node, made) {
    if (form.isId(node)) return named(node, made);
    if (form.sort(node) === "words") return form.words(node).map((word) => [word, word.replaceAll("_", " ")]);
    if (form.sort(node) === "truth") return ["true", "false"].map((word) => [word, say(word)]);
    return null;
  }

  class Fields {
    /* `store` reads and writes the draft: get(path), set(path, value); `made` gives records made here. */
    constructor(store, made) {
      this.store = store;
      this.made = made;
    }

    /* The controls of a group's fields, those that may stay out folded away. */
    group(group, path) {
      const ways = form.ways(group);
      const open = [];
      const folded = [];
      for (const [name, node] of form.fields(group)) {
        const needed = form.required(group, name);
        if (form.sort(node) === "words" && form.words(node).length === 1 && needed) continue; // says which group
        (needed || ways.includes(name) || form.OPEN.includes(name) ? open : folded).push([name, node, needed]);
      }
      const field = ([name, node, needed]) => this.field(form.label(name), node, [...path, name], needed);
      const parts = [];
      if (ways.length) parts.push(make("p", { class: "form-ways" }, say("one_way", { names: ways.map(form.label).join(", ") })));
      parts.push(...open.map(field));
      if (folded.length) parts.push(this.more(folded.map((each) => [each, field]), path, folded));
      return parts;
    }

    more(entries, path, folded) {
      const text = say("more", { names: folded.map(([name]) => form.label(name)).join(", ") });
      const details = make("details", { class: "form-more fold", "data-more": pathOf(path) }, make("summary", {}, text));
      const fill = () => {
        if (details.children.length === 1) details.append(...entries.map(([each, field]) => field(each)));
      };
      details.addEventListener("toggle", fill);
      if (folded.some(([name]) => !form.isBlank(this.store.get([...path, name])))) {
        fill();
        details.open = true;
      }
      return details;
    }

    field(label, node, path, needed) {
      switch (form.sort(node)) {
        case "group": return this.frame(label, node, path, needed, this.group(node, path));
        case "choice": return this.choice(label, node, path, needed);
        case "either": return this.list(label, { ...form.listOf(node), description: node.description }, path, needed);
        case "list": return this.list(label, node, path, needed);
        case "table": return this.table(label, node, path, needed);
        default: return this.line(label, node, path, needed);
      }
    }

    frame(label, node, path, needed, children) {
      const legend = make("legend", {}, label, needed ? null : make("span", { class: "form-free" }, ` ${say("free")}`));
      const fault = make("p", { class: "form-fault", "data-fault": pathOf(path), hidden: true });
      const said = node.description ? make("p", { class: "aside" }, node.description) : null;
      return make("fieldset", { "data-group": pathOf(path), tabindex: "-1" }, legend, said, fault, ...children);
    }

    /* One control with its label, its sentence and a place for what is wrong with it. */
    line(label, node, path, needed) {
      const id = `form-${++count}`;
      const about = make("p", { class: "aside", id: `${id}-about` }, told(node));
      const fault = make("p", { class: "form-fault", id: `${id}-fault`, "data-fault": pathOf(path), hidden: true });
      const control = this.control(node, path);
      for (const [name, value] of Object.entries({
        id, "data-path": pathOf(path), "aria-describedby": `${id}-about ${id}-fault`, "aria-required": String(needed),
      })) control.setAttribute(name, value);
      const mark = needed ? null : make("span", { class: "form-free" }, ` ${say("free")}`);
      return make("div", { class: "form-line" }, make("label", { for: id }, label, mark), about, control, fault);
    }

    control(node, path) {
      const value = this.store.get(path) || "";
      const closed = pairs(node, this.made());
      const control = closed
        ? select(closed, value, say("choose"))
        : make(node.maxLength > LONG ? "textarea" : "input", {
          autocomplete: "off", spellcheck: form.sort(node) === "text" && !node.takes ? "true" : "false",
          ...(node.maxLength > LONG ? { rows: 4 } : { type: "text" }),
          inputmode: form.sort(node) === "number" ? "decimal" : undefined,
          placeholder: form.sort(node) === "date" ? say("day") : undefined,
        });
      control.value = value;
      control.addEventListener("input", () => {
        this.store.set(path, control.value);
        // A word that goes only when the field is left would move the key that is being pressed.
        if (control.hasAttribute("aria-invalid")) this.tell(control, node, control.value);
      });
      control.addEventListener("change", () => this.tell(control, node, control.value));
      return control;
    }

    /* Says at a control what is wrong with what was typed; a blank one is told of at the end. */
    tell(control, node, value) {
      this.show(control, form.isBlank(value) ? "" : form.faultOf(node, value, this.made()));
    }

    show(control, text) {
      const fault = document.getElementById(`${control.id}-fault`);
      fault.textContent = text;
      fault.hidden = !text;
      if (text) control.setAttribute("aria-invalid", "true");
      else control.removeAttribute("aria-invalid");
    }

    /* A group whose fields follow from a word. */
    choice(label, node, path, needed) {
      const inside = make("div", {});
      const found = form.groups(node);
      const fill = () => {
        const group = found.get(this.store.get([...path, "name"]));
        inside.replaceChildren(...(group ? [make("p", { class: "aside" }, group.description), ...this.group(group, path)] : []));
      };
      const words = { enum: [...found.keys()], description: say("which") };
      const line = this.line(form.label("name"), words, [...path, "name"], needed);
      line.querySelector("select").addEventListener("change", ({ target }) => {
        this.store.set(path, target.value ? { name: target.value } : undefined);
        fill();
      });
      fill();
      return this.frame(label, node, path, needed, [line, inside]);
    }

    list(label, node, path, needed) {
      const item = form.followed(node.items);
      const closed = pairs(item, this.made());
      const box = make("div", {});
      const frame = this.frame(label, node, path, needed, [box]);
      if (closed) this.picked(label, closed, path, box);
      else this.items(label, item, path, box, Math.max(needed ? 1 : 0, node.minItems || 0));
      return frame;
    }

    /* A list of words or records: those picked, each with a way to take it off, and what can be added. */
    picked(label, closed, path, box, focus = false) {
      const list = this.store.get(path) || [];
      const change = (next) => {
        this.store.set(path, next.length ? next : undefined);
        this.picked(label, closed, path, box, true);
      };
      const titles = new Map(closed);
      const shown = make("ul", { class: "form-picked" });
      list.forEach((id, index) => {
        const text = titles.get(id) || id;
        const off = button(say("remove"), () => change(list.filter((_, n) => n !== index)), {
          "aria-label": say("remove_one", { name: text }),
        });
        shown.append(make("li", {}, make("span", {}, text), off));
      });
      const adding = select(closed.filter(([id]) => !list.includes(id)), "", say("add_to", { name: label }));
      adding.setAttribute("aria-label", say("add_to", { name: label }));
      adding.setAttribute("data-pick", pathOf(path));
      adding.addEventListener("change", () => adding.value && change([...list, adding.value]));
      box.replaceChildren(...(list.length ? [shown] : []), adding);
      if (focus) adding.focus();
    }

    items(label, item, path, box, least, focus) {
      const now = () => {
        const list = [...(this.store.get(path) || [])];
        while (list.length < least) list.push(undefined);
        return list;
      };
      const change = (next, at) => {
        const list = next(now());
        this.store.set(path, list.length ? list : undefined);
        this.items(label, item, path, box, least, at);
      };
      const row = (n) => this.item(label, item, [...path, n], change);
      const rows = make("ol", { class: "form-items" }, ...now().map((_, n) => row(n)));
      const add = button(say("add_one", { name: label }), () => {
        this.store.set(path, [...now(), undefined]);
        rows.append(row(rows.children.length)); // the other items stay as they are, unfolded or not
        goTo(rows.lastChild);
      }, { "data-add": pathOf(path) });
      const goTo = (place) => (place.querySelector("input, select, textarea") || place).focus();
      box.replaceChildren(rows, add);
      if (focus !== undefined) goTo(rows.children[focus] || add);
    }

    item(label, item, path, change) {
      const n = path[path.length - 1];
      const name = say("item", { name: label, number: n + 1 });
      const swap = (other) => change((list) => {
        [list[n], list[other]] = [list[other], list[n]];
        return list;
      }, other);
      const tools = make("p", { class: "form-tools" },
        button(say("up"), () => swap(n - 1), { class: "form-up", "aria-label": say("up_one", { name }) }),
        button(say("down"), () => swap(n + 1), { class: "form-down", "aria-label": say("down_one", { name }) }),
        button(say("remove"), () => change((list) => list.filter((_, other) => other !== n), Math.max(0, n - 1)), {
          "aria-label": say("remove_one", { name }),
        }));
      return make("li", {}, this.field(name, { ...item, description: item.properties ? "" : item.description }, path, true), tools);
    }

    /* A table: each row a name and a value. */
    table(label, node, path, needed) {
      const [key, value] = [node.propertyNames, node.additionalProperties].map(form.followed);
      const box = make("div", {});
      const show = (focus) => {
        const now = () => this.store.get(path) || [];
        const change = (next) => {
          this.store.set(path, next.length ? next : undefined);
          show(true);
        };
        const made = now().map((_, n) => make("li", { class: "form-row" },
          this.field(say("key"), key, [...path, n, 0], true), this.field(say("value"), value, [...path, n, 1], true),
          button(say("remove"), () => change(now().filter((_row, other) => other !== n)))));
        const add = button(say("add_one", { name: label }), () => change([...now(), ["", ""]]), { "data-add": pathOf(path) });
        box.replaceChildren(make("ul", { class: "form-items" }, ...made), add);
        const last = box.querySelector("li:last-child :is(input, select)");
        if (focus) (last || add).focus();
      };
      show(false);
      return this.frame(label, node, path, needed, [box]);
    }
  }

  Object.assign(form, { Fields, make, button, option, pathOf });
})();
