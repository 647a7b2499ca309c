/* The search's answers: what each typed word may mean, and which entries fit the words best. */
(() => {
  "use strict";

  const { words, stem, letters, bitsIn, slips, distance } = window.fettleWords;
  const { WEIGHTS } = window.fettleSearch;

  /* Judgement, settled by trying: how surely one word stands for another, from 1 (the same). */
  const FORM = 0.92; // another form of the word
  const MEANING = 0.8; // another word of its group
  const JOINED = 0.92; // glow plug and glowplug
  const SLIP = [1, 0.75, 0.55]; // misspelled, by the number of slips
  const HOLDS = 0.5; // the word stands inside or at the end of another
  const AROUND = 0.9; // the word names the entry's vehicle or kind
  const IDLE = 0.12; // weight of a word that says next to nothing
  const APART = 0.8; // words that are met anywhere in an entry count so much
  const TOGETHER = 1.4; // and so much if one line, such as its title, meets them
  const CANDIDATES = 50; // entries that are looked at closely
  const LEAST = 0.12; // share of the best figure below which an entry is no answer
  const MEANINGS = 12; // best readings of one word that are looked up for other words
  const CODE = /^[pcbu][0-9o][0-9a-fo]{0,3}$/;

  /** Gives what a typed word may be: the known words and how surely each is meant. */
  function readings(index, typed, open, joined) {
    const found = new Map();
    const add = (id, quality) => found.set(id, Math.max(quality, found.get(id) || 0));
    const same = index.byStem.get(index.stemNumber.get(stem(typed))) || [];
    same.forEach((id) => add(id, FORM));
    if (index.byTerm.has(typed)) {
      add(index.byTerm.get(typed), 1);
    }
    if (/\d/.test(typed)) {
      addNumbers(index, typed, open, add);
      return found;
    }
    const stands = posted(index, typed);
    if (open || (!stands && typed.length > 3)) {
      for (const id of index.startingWith(typed)) {
        add(id, (stands ? 0.45 : 0.6) + 0.35 * (typed.length / index.terms[id].length));
      }
    }
    if (!same.length && !joined && typed.length > 3) {
      addSlips(index, typed, add);
    }
    return found;
  }

  /** A part of a number or code finds the whole: 335 and 0335 find P0335, P03 all that begin so. */
  function addNumbers(index, typed, open, add) {
    const repaired = CODE.test(typed) ? typed[0] + typed.slice(1).replace(/o/g, "0") : typed;
    for (const id of index.numeric) {
      const known = index.terms[id];
      if (known === repaired) {
        add(id, 1);
      } else if (typed.length > 2 && known.endsWith(repaired)) {
        add(id, 0.9);
      } else if ((open || typed.length > 2) && startsAt(known, repaired)) {
        add(id, 0.8);
      } else if (typed.length > 2 && known.includes(repaired)) {
        add(id, HOLDS);
      }
    }
  }

  /** Says whether a number begins with some figures; a code may do so after its letter. */
  function startsAt(known, figures) {
    return known.startsWith(figures) || (/^[pcbu]\d/.test(known) && known.startsWith(figures, 1));
  }

  function addSlips(index, typed, add) {
    const most = slips(typed);
    const bits = letters(typed);
    for (let id = 0; id < index.terms.length; id += 1) {
      const known = index.terms[id];
      if (known.length + most < typed.length || known.length < 3 || index.idle.has(index.stems[id])) {
        continue;
      }
      if (typed.length > 4 && known.includes(typed)) {
        add(id, HOLDS);
      } else if (typed.length < 6 && known[0] !== typed[0]) {
        continue; // a short word with another first letter is another word
      } else if (bitsIn(bits & ~index.bits[id]) <= most) {
        const { whole, start } = distance(typed, known, most);
        if (whole <= most) {
          index.byStem.get(index.stems[id]).forEach((form) => add(form, SLIP[whole] * FORM));
          add(id, SLIP[whole]);
        } else if (start <= most && typed.length > 4) {
          add(id, SLIP[start] * (0.6 + 0.3 * (typed.length / known.length)));
        }
      }
    }
  }

  /** Says whether a word, in any form, stands in an entry and not only among the synonyms. */
  function posted(index, word) {
    const forms = index.byStem.get(index.stemNumber.get(stem(word))) || [];
    return forms.some((id) => index.postings[id].length);
  }

  /** Gives the words typed, each with its readings; the last is open until a space follows it. */
  function slotsOf(index, text) {
    const typed = words(text).slice(0, 12);
    const open = !/\s$/.test(text);
    return typed.map((word, n) => {
      const joined = [typed[n - 1] + word, word + typed[n + 1]].some((both) => posted(index, both));
      const found = readings(index, word, open && n === typed.length - 1, joined);
      const means = new Map(); // stem to how surely it is meant
      const best = [...found].sort((one, other) => other[1] - one[1]).slice(0, MEANINGS);
      for (const [id, quality] of best) {
        const stemmed = index.stems[id];
        means.set(stemmed, Math.max(quality, means.get(stemmed) || 0));
      }
      return { word, found, means, idle: index.idle.has(index.stemNumber.get(stem(word))) };
    });
  }

  /** Gives what stretches of the typed words may mean together: other phrases, joined, split. */
  function meaningsOf(index, slots) {
    const found = new Map();
    const add = (from, to, parts, quality) => {
      const key = `${from} ${to} ${parts}`;
      if (!found.has(key) || found.get(key).quality < quality) {
        found.set(key, { from, to, parts, quality });
      }
    };
    const known = (word) => index.stemNumber.get(stem(word));
    slots.forEach(({ word, means }, n) => {
      for (const start of means.keys()) {
        for (const { phrase, others } of index.phrases.get(start) || []) {
          const quality = fit(slots, n, phrase);
          if (quality > 0.5) {
            others.forEach((other) => add(n, n + phrase.length - 1, other, quality * MEANING));
          }
        }
      }
      const after = slots[n + 1];
      if (after && posted(index, word + after.word)) {
        add(n, n + 1, [known(word + after.word)], JOINED);
      }
      for (let cut = 3; cut <= word.length - 3 && !posted(index, word); cut += 1) {
        const [head, tail] = [word.slice(0, cut), word.slice(cut)];
        if (posted(index, head) && posted(index, tail)) {
          add(n, n, [known(head), known(tail)], JOINED);
        }
      }
    });
    return [...found.values()];
  }

  /** Gives how surely a phrase stands at a place of the typed words, 0 if it does not. */
  function fit(slots, from, phrase) {
    let quality = 1;
    for (const [n, stemmed] of phrase.entries()) {
      const slot = slots[from + n];
      quality = Math.min(quality, (slot && slot.means.get(stemmed)) || 0);
    }
    return quality;
  }

  /** Gives how well each entry answers each typed word, by the word or by what it may mean. */
  function scoresOf(index, slots, meanings) {
    const size = index.entries.length;
    const scores = slots.map(({ found }) => {
      const made = new Float32Array(size);
      found.forEach((quality, id) => index.spread(id, quality, made));
      return made;
    });
    const ofStem = new Map();
    const scoreOf = (stemmed) => {
      if (!ofStem.has(stemmed)) {
        const made = new Float32Array(size);
        index.byStem.get(stemmed).forEach((id) => index.spread(id, 1, made));
        ofStem.set(stemmed, made);
      }
      return ofStem.get(stemmed);
    };
    for (const { from, to, parts, quality } of meanings) {
      const each = parts.map(scoreOf);
      for (let entry = 0; entry < size; entry += 1) {
        let least = each[0][entry];
        for (let n = 1; least && n < each.length; n += 1) {
          least = Math.min(least, each[n][entry]);
        }
        for (let n = from; least && n <= to; n += 1) {
          scores[n][entry] = Math.max(scores[n][entry], least * quality);
        }
      }
    }
    return scores;
  }

  /** Gives each typed word's weight: a rare word says more than one that stands everywhere. */
  function weightsOf(index, slots, scores) {
    return slots.map(({ idle }, n) => {
      const hits = scores[n].reduce((count, value) => count + (value > 0), 0);
      return Math.log(1 + index.entries.length / (1 + hits)) * (idle ? IDLE : 1);
    });
  }

  /** Gives how well one line (a title, a name, a sentence) and the typed words cover each other. */
  function lineScore(index, line, slots, meanings, weights, whole, around) {
    const cover = Float32Array.from(around);
    const met = new Set();
    slots.forEach(({ found }, n) => {
      for (const id of line.ids) {
        const quality = found.get(id) || 0;
        cover[n] = Math.max(cover[n], quality);
        if (quality >= HOLDS) {
          met.add(id);
        }
      }
    });
    for (const { from, to, parts, quality } of meanings) {
      const ids = parts.map((part) => line.ids.find((id) => index.stems[id] === part));
      if (ids.includes(undefined)) {
        continue;
      }
      ids.forEach((id) => met.add(id));
      for (let n = from; n <= to; n += 1) {
        cover[n] = Math.max(cover[n], quality);
      }
    }
    const asked = cover.reduce((sum, value, n) => sum + value * weights[n], 0) / whole;
    const telling = line.ids.filter((id) => !index.idle.has(index.stems[id]));
    const told = telling.filter((id) => met.has(id)).length / (telling.length || 1);
    return WEIGHTS[line.place] * asked * (0.5 + 0.5 * told);
  }

  /**
   * Gives the entries that answer a text, best first.
   *
   * Each has the entry, its figure, and the line that fits best where the title does not say it.
   */
  function find(index, text) {
    const slots = slotsOf(index, text);
    if (!slots.length) {
      return [];
    }
    const meanings = meaningsOf(index, slots);
    const scores = scoresOf(index, slots, meanings);
    const weights = weightsOf(index, slots, scores);
    const whole = weights.reduce((sum, weight) => sum + weight, 0);
    const rough = [];
    for (let entry = 0; entry < index.entries.length; entry += 1) {
      let sum = 0;
      let met = 0;
      for (let n = 0; n < slots.length; n += 1) {
        sum += weights[n] * scores[n][entry];
        met += scores[n][entry] ? weights[n] : 0;
      }
      if (sum) {
        rough.push({ entry, base: sum / whole, share: met / whole });
      }
    }
    rough.sort((one, other) => other.base * other.share - one.base * one.share);
    const found = rough.slice(0, CANDIDATES).map(({ entry: number, base, share }) => {
      const entry = index.entries[number];
      const active = meanings.filter(({ from }) => scores[from][number]);
      const around = slots.map(({ found: by }) =>
        entry.around.reduce((most, id) => Math.max(most, AROUND * (by.get(id) || 0)), 0));
      let best = { line: null, score: 0 };
      for (const line of entry.lines) {
        const score = lineScore(index, line, slots, active, weights, whole, around);
        if (score > best.score) {
          best = { line, score };
        }
      }
      const other = best.line && best.line.place > 0 && !entry.title.includes(best.line.text);
      const by = other ? { text: best.line.text, said: best.line.place === 2 } : null;
      return { entry, score: entry.prior * share * (APART * base + TOGETHER * best.score), by };
    });
    found.sort((one, other) => other.score - one.score);
    return found.filter(({ score }) => score >= LEAST * found[0].score);
  }

  window.fettleSearch.find = find;
})();
