/* Writing a record as the manual's own files are written: canonical order comes in with the fields,
   plain words stay plain, long texts are folded, and whatever could be misread goes into quotes. */

"use strict";

(() => {
  const WIDTH = 100;
  const MISREAD = /^(?:~|null|true|false|yes|no|on|off|y|n)$/i;
  // A word that some reader could take for a number, a date or a time stands in quotes.
  const NUMBER_LIKE = /^[-+.]?[\d.][\w.:+-]*$|^[-+]?\.?(?:nan|inf|infinity)$/i;
  const PLAIN = /^[\p{L}\p{N}][^\p{C}]*$/u;
  const SAFE_IN_LIST = /^[\w.-]+$/;

  function isPlain(text) {
    return PLAIN.test(text) && !MISREAD.test(text) && !NUMBER_LIKE.test(text)
      && !/: |:$| #|\s$| {2}/.test(text);
  }

  /* JSON's escapes are YAML's too. Characters that nobody sees were refused before. */
  const quoted = (text) => JSON.stringify(text);

  function wrapped(words, width) {
    const lines = [];
    for (const word of words) {
      const last = lines.length - 1;
      if (last >= 0 && lines[last].length + 1 + word.length <= width) lines[last] += ` ${word}`;
      else lines.push(word);
    }
    return lines;
  }

  /* What follows a key or a dash: a text on its line, or lines below it. */
  function text(value, column, margin) {
    if (value.includes("\n")) {
      const lines = value.split("\n").map((line) => line.trimEnd());
      if (lines[0] && !lines[0].startsWith(" ")) {
        return ` |-\n${lines.map((line) => (line ? margin + line : "")).join("\n")}`;
      }
      return ` ${quoted(value)}`;
    }
    const short = isPlain(value) ? value : quoted(value);
    if (column + 1 + short.length <= WIDTH) return ` ${short}`;
    const words = value.split(" ");
    if (words.length < 2 || words.includes("")) return ` ${quoted(value)}`;
    const folded = wrapped(words, WIDTH - margin.length).map((line) => margin + line);
    return ` >-\n${folded.join("\n")}`;
  }

  const isShort = ({ text: word, plain }) => SAFE_IN_LIST.test(word ?? plain ?? " ");

  const inLine = ({ text: word, plain }) => plain ?? (isPlain(word) ? word : quoted(word));

  /* What stands behind a key that ends at a column, the lines below it included. */
  function behindKey(value, column, margin) {
    if (value.plain !== undefined) return ` ${value.plain}`;
    if (value.text !== undefined) return text(value.text, column, `${margin}  `);
    if (value.map) {
      return value.map.length ? `\n${group(value.map, `${margin}  `)}` : " {}";
    }
    const flow = value.list.every(isShort) ? ` [${value.list.map(inLine).join(", ")}]` : "";
    if (flow && column + flow.length <= WIDTH) return flow;
    return `\n${value.list.map((item) => listed(item, `${margin}  `)).join("\n")}`;
  }

  function listed(item, margin) {
    if (item.map && item.map.length) {
      return `${margin}- ${group(item.map, `${margin}  `).slice(margin.length + 2)}`;
    }
    if (item.list) return `${margin}- [${item.list.map(inLine).join(", ")}]`;
    return `${margin}-${behindKey(item, margin.length + 1, margin)}`;
  }

  function group(fields, margin) {
    return fields
      .map(([name, value]) => {
        const key = isPlain(name) ? name : quoted(name);
        return `${margin}${key}:${behindKey(value, margin.length + key.length + 1, margin)}`;
      })
      .join("\n");
  }

  window.fettleYaml = { record: ({ map }) => `${group(map, "")}\n` };
})();
