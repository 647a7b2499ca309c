/* The first layer of checks: what one record shows by itself. `fettlebook check` has the last word,
   on everything that follows from other records. */

"use strict";

(() => {
  const form = window.fettleForm;
  if (!form) return;

  const NUMBER = /^-?(?:0|[1-9]\d*)(?:\.\d+)?$/;
  const DAY = /^\d{4}-\d\d-\d\d$/;
  const ID = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;
  const MOST_DIGITS = 15;
  // As the strict reader sees it: controls, line breaks that look like none, reversing marks.
  const UNWANTED = /[\0-\x08\x0b-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\u200b\ufeff\ufffd\ufffe\uffff]|\t/;
  const say = window.fettleElement.sayer(form.data.words);

  function ofNumber(node, text) {
    const whole = node.type === "integer";
    if (!NUMBER.test(text) || Number(text) === 0 && text.startsWith("-")) return say("bad_number");
    if (whole && text.includes(".")) return say("bad_whole");
    if (text.replace(/\D/g, "").length > MOST_DIGITS) return say("bad_number");
    const value = Number(text);
    const { minimum, maximum, exclusiveMinimum: over, exclusiveMaximum: under } = node;
    if (value < minimum || value <= over || value > maximum || value >= under) {
      const low = minimum ?? over;
      const high = maximum ?? under;
      return low === undefined || high === undefined
        ? say(high === undefined ? "bad_least" : "bad_most", { limit: low ?? high })
        : say("bad_range", { low, high });
    }
    return "";
  }

  function ofDay(text) {
    const day = new Date(`${text}T00:00:00Z`);
    const real = DAY.test(text) && !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
    return real ? "" : say("bad_day");
  }

  function ofText(node, text, made) {
    if (UNWANTED.test(text)) return say("bad_character");
    if (form.isId(node)) {
      return form.choices(node, made).some(([id]) => id === text) ? "" : say("unknown_id", { id: text });
    }
    if (node.maxLength && [...text].length > node.maxLength) {
      return say("too_long", { most: node.maxLength });
    }
    if (node.pattern && !new RegExp(node.pattern, "u").test(text)) {
      return node.takes ? say("bad_value") : say("bad_pattern");
    }
    return !node.takes && node.maxLength <= 400 && text.includes("\n") ? say("one_line") : "";
  }

  /* Gives what is wrong with one typed text, "" where nothing is. */
  function leaf(node, value, made) {
    const text = value.trim();
    switch (form.sort(node)) {
      case "number": return ofNumber(node, text);
      case "date": return ofDay(text);
      case "words": return form.words(node).includes(text) ? "" : say("bad_word");
      case "truth": return ["true", "false"].includes(text) ? "" : say("bad_word");
      default: return ofText(node, text, made);
    }
  }

  function* ofGroup(group, value, path, made) {
    const given = value || {};
    const ways = form.ways(group);
    const gone = ways.filter((name) => !form.isBlank(given[name]));
    if (ways.length && gone.length !== 1) {
      yield { path: [...path, ways[0]], text: say("one_way", { names: ways.map(form.label).join(", ") }) };
    }
    for (const [name, node] of form.fields(group)) {
      yield* field(node, given[name], [...path, name], form.required(group, name), made);
    }
  }

  function* ofList(node, value, path, made) {
    const items = value || [];
    const filled = items.filter((item) => !form.isBlank(item)).length;
    if (filled < (node.minItems || 0)) {
      yield { path, text: say(node.minItems > 1 ? "too_few" : "missing", { least: node.minItems }) };
    }
    if (node.maxItems && filled > node.maxItems) {
      yield { path, text: say("too_many", { most: node.maxItems }) };
    }
    for (const [index, item] of items.entries()) {
      // A blank group in a list is dropped; one that has begun must be whole.
      if (!form.isBlank(item)) yield* field(form.followed(node.items), item, [...path, index], true, made);
    }
  }

  function* ofTable(node, rows, path, made) {
    for (const [index, [key, one]] of (rows || []).entries()) {
      if (form.isBlank(key) && form.isBlank(one)) continue;
      yield* field(form.followed(node.propertyNames), key, [...path, index, 0], true, made);
      yield* field(form.followed(node.additionalProperties), one, [...path, index, 1], true, made);
      if (rows.findIndex(([other]) => other === key) < index) {
        yield { path: [...path, index, 0], text: say("twice") };
      }
    }
  }

  /* Gives every fault of a field and of what is in it, in the order of the form. */
  function* field(node, value, path, required, made) {
    if (form.isBlank(value) && !required) return;
    switch (form.sort(node)) {
      case "group":
        yield* ofGroup(node, value, path, made);
        break;
      case "list":
        yield* ofList({ ...node, minItems: node.minItems || (required ? 1 : 0) }, value, path, made);
        break;
      case "either":
        yield* ofList({ ...form.listOf(node), minItems: required ? 1 : 0 }, value, path, made);
        break;
      case "table":
        yield* ofTable(node, value, path, made);
        break;
      case "choice": {
        const group = form.groups(node).get((value || {}).name);
        if (group) yield* ofGroup(group, value, path, made);
        else yield { path: [...path, "name"], text: say("missing") };
        break;
      }
      default: {
        const text = form.isBlank(value) ? say("missing") : leaf(node, value, made);
        if (text) yield { path, text };
      }
    }
  }

  /* Gives what is wrong with the name of a new record's file. */
  function ofId(kind, id, made) {
    if (!id) return say("missing");
    if (!ID.test(id) || id.length > 60) return say("bad_id");
    if (form.data.reserved.includes(id)) return say("reserved_id", { id });
    const known = [...(form.data.records[kind] || []), ...made.filter((one) => one.kind === kind).map((one) => [one.id])];
    return known.some(([other]) => other === id) ? say("taken_id", { id }) : "";
  }

  Object.assign(form, {
    say,
    label: (name) => (name.charAt(0).toUpperCase() + name.slice(1)).replaceAll("_", " "),
    faultOfId: ofId,
    faultOf: leaf,
    faults: (kind, draft, made) => [...ofGroup(form.kind(kind), draft, [], made)],
  });
})();
