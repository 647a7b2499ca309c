/* Words for the search: how text falls into words, which of them are forms of one another, and
   how far two spellings lie apart. Knows neither index nor page. */
(() => {
  "use strict";

  const MARKS = /[\u0300-\u036f'\u2019]/g;
  const INITIALS = /\b([a-z])[./](?=[a-z]\b)/g; // a/c, e.g.r.
  const WORD = /[a-z0-9]+(?:\.[0-9]+)*/g;

  /** Gives the words of a text; generator/pages/search_pack.py splits by the same rule. */
  function words(text) {
    const plain = text.normalize("NFKD").replace(MARKS, "").toLowerCase();
    return plain.replace(INITIALS, "$1").match(WORD) || [];
  }

  /** Gives what the forms of an English word share, in either spelling; never shown to anyone. */
  function stem(word) {
    if (word.length < 4 || /\d/.test(word)) {
      return word;
    }
    let s = word
      .replace(/([iy])z(?=e|ing$|ation|er)/, "$1s") // immobilize, analyze
      .replace(/^(.{2,})ies$/, "$1y")
      .replace(/(x|ch|sh|ss|zz)es$/, "$1")
      .replace(/([^su])s$/, "$1");
    s = s
      .replace(/^(.{3,})ness$/, "$1")
      .replace(/^(.{3,}[^pbl])ly$/, "$1");
    const bare = s.replace(/ing$|([^e])ed$/, "$1");
    if (bare !== s && bare.length > 2 && /[aeiouy]/.test(bare)) {
      s = bare;
    }
    s = s
      .replace(/^(..+)our$/, "$1or") // colour; never hour or four
      .replace(/(t|b)re$/, "$1er") // litre, fibre
      .replace(/([^aeiou])\1$/, "$1"); // fitted, signalling, stall
    if (s.length > 3) {
      s = s.replace(/e$/, "");
    }
    return s.replace(/([^aeiou])y$/, "$1i");
  }

  /** Gives the letters of a word as bits, to rule out most words without comparing them. */
  function letters(word) {
    let bits = 0;
    for (let n = 0; n < word.length; n += 1) {
      bits |= 1 << (word.charCodeAt(n) % 31);
    }
    return bits;
  }

  function bitsIn(bits) {
    let count = 0;
    for (let rest = bits; rest; rest &= rest - 1) {
      count += 1;
    }
    return count;
  }

  /** Gives how many slips of the finger a word of this length may hold. */
  function slips(word) {
    return word.length < 4 ? 0 : word.length < 8 ? 1 : 2;
  }

  /**
   * Gives how far a typed word lies from a known one: letters left out, added, wrong or swapped
   * (optimal string alignment). `whole` is the distance to the word, `start` to its beginning.
   * Beyond `most` the figures only say so.
   */
  function distance(typed, known, most) {
    const width = Math.min(known.length, typed.length + most);
    let before = null;
    let above = Array.from({ length: width + 1 }, (_, n) => n);
    for (let y = 1; y <= typed.length; y += 1) {
      const row = [y];
      let least = y;
      for (let x = 1; x <= width; x += 1) {
        const same = typed[y - 1] === known[x - 1];
        let cost = Math.min(above[x] + 1, row[x - 1] + 1, above[x - 1] + (same ? 0 : 1));
        if (before && x > 1 && typed[y - 1] === known[x - 2] && typed[y - 2] === known[x - 1]) {
          cost = Math.min(cost, before[x - 2] + 1);
        }
        row.push(cost);
        least = Math.min(least, cost);
      }
      if (least > most) {
        return { whole: least, start: least };
      }
      before = above;
      above = row;
    }
    const whole = width === known.length ? above[width] : most + 1;
    return { whole, start: Math.min(...above) };
  }

  window.fettleWords = { words, stem, letters, bitsIn, slips, distance };
})();
