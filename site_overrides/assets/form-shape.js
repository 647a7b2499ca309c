/* What a record is made of: the schemas behind the form, read one field at a time, and what a draft
   says once everything that was left blank is gone. A draft holds what was typed: texts, lists,
   groups by name, and tables as lists of pairs. */

"use strict";

(() => {
  const data = window.fettleForms;
  if (!data) return;

  const REFERENCE = "#/$defs/";

  /* A field with its reference followed; `takes` is what a written value may look like. */
  function followed(node) {
    if (!node.$ref) return node;
    const found = data.defs[node.$ref.slice(REFERENCE.length)];
    const takes = found.type === "string" ? found.description : "";
    return { ...found, takes, description: node.description || found.description };
  }

  /* The sort of a field, which says how it is asked for, checked and written. */
  function sort(node) {
    if (node.anyOf) return "either";
    if (node.enum || node.const !== undefined) return "words";
    if (node.type === "boolean") return "truth";
    if (node.type === "integer" || node.type === "number") return "number";
    if (node.type === "array") return "list";
    if (node.propertyNames) return "table";
    if (node.properties) return "group";
    if (node.oneOf) return "choice";
    return node.format === "date" ? "date" : "text";
  }

  /* One text or a list of them is asked for as a list; one item is written without its list. */
  const listOf = (node) => followed(node.anyOf.map(followed).find((form) => form.type === "array"));

  const words = (node) => (node.enum || [node.const]).map(String);

  const isId = (node) => Boolean(node["x-records"]);

  /* The groups of which one is chosen, by the word that says which. */
  function groups(node) {
    const found = node.oneOf.map(followed);
    return new Map(found.map((group) => [String(followed(group.properties.name).const), group]));
  }

  const fields = (group) =>
    Object.entries(group.properties).map(([name, node]) => [name, followed(node)]);

  const required = (group, name) => (group.required || []).includes(name);

  /* The fields of which a group has exactly one. */
  const ways = (group) => (group.properties && group.oneOf ? group.oneOf : []).map((way) => way.required[0]);

  function isBlank(value) {
    if (value === undefined || value === null) return true;
    if (typeof value === "string") return value.trim() === "";
    return Object.values(value).every(isBlank);
  }

  function ofGroup(group, value) {
    const found = [];
    for (const [name, node] of fields(group)) {
      const inner = said(node, (value || {})[name]);
      if (inner) found.push([name, inner]);
      else if (required(group, name) && ["group", "table"].includes(sort(node))) {
        found.push([name, { map: [] }]);
      }
    }
    return { map: found };
  }

  /* What a draft says of a field, for the writer; undefined where it says nothing. */
  function said(node, value) {
    if (isBlank(value)) return undefined;
    const text = typeof value === "string" ? value.trim() : "";
    switch (sort(node)) {
      case "group":
        return ofGroup(node, value);
      case "choice":
        return groups(node).has(value.name) ? ofGroup(groups(node).get(value.name), value) : undefined;
      case "list": {
        const list = value.map((item) => said(followed(node.items), item)).filter(Boolean);
        return { list };
      }
      case "either": {
        const { list } = said(listOf(node), value);
        return list.length === 1 ? list[0] : { list };
      }
      case "table": {
        const rows = value.filter((row) => !isBlank(row[0]));
        return { map: rows.map(([key, one]) => [key.trim(), said(followed(node.additionalProperties), one)]) };
      }
      case "words":
        return typeof (node.const ?? node.enum[0]) === "number" ? { plain: text } : { text };
      case "text":
        return { text: text.replace(/\r\n?/g, "\n") };
      default:
        return { plain: text };
    }
  }

  /* The choices of a field that names records: those of the manual, and those made on this device. */
  function choices(node, made = []) {
    const kinds = node["x-records"].map((kind) => (kind === data.own_kind ? window.fettleForm.current : kind));
    const own = made.filter(({ kind }) => kinds.includes(kind)).map(({ id, title }) => [id, title]);
    const known = kinds.flatMap((kind) => data.records[kind] || []);
    return [...known, ...own.filter(([id]) => !known.some(([other]) => other === id))];
  }

  /* Fields that may stay out and seldom do, as the command new has it. */
  const OPEN = ["value", "spec"];

  window.fettleForm = {
    OPEN,
    current: "", // the kind that is being made
    data, followed, sort, listOf, words, isId, groups, fields, required, ways, isBlank, ofGroup, choices,
    kind: (name) => data.kinds[name],
  };
})();
