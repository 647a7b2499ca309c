/* The search's index: unpacks what the site's build wrote into lists that can be asked quickly.
   generator/pages/search.py says what is in it. */
(() => {
  "use strict";

  const { words, stem, letters } = window.fettleWords;
  const FORMAT = 1;
  const DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
  const VALUE = new Map(Array.from(DIGITS, (digit, value) => [digit, value]));

  /* How much a word counts by where it stands; a posting holds the entry and one of these places. */
  const PLACES = ["title", "name", "said", "text", "vehicle", "kind"];
  const WEIGHTS = Float32Array.of(1, 0.95, 0.8, 0.35, 0.5, 0.3);
  const STRIDE = 8; // a posting is entry * STRIDE + place

  class Index {
    constructor(packed) {
      const found = JSON.parse(packed);
      if (found.format !== FORMAT) {
        throw new Error(`the index has format ${found.format}, not ${FORMAT}`);
      }
      this.kinds = found.kinds;
      this.vehicles = found.vehicles;
      this.entries = [];
      this.terms = []; // spelling of each word
      this.stems = []; // number of each word's stem
      this.bits = []; // its letters
      this.postings = []; // where it stands
      this.byTerm = new Map(); // spelling to number
      this.byStem = new Map(); // stem to the numbers of its words
      this.stemNumber = new Map();
      this.idle = new Set(found.idle.map((word) => this.stemOf(stem(word))));
      this.steps = this.unpack(found);
    }

    /** Does a little more of the unpacking; says whether all is done. */
    advance(until) {
      while (performance.now() < until) {
        if (this.steps.next().done) {
          return true;
        }
      }
      return false;
    }

    *unpack(found) {
      for (const row of found.rows) {
        this.addEntry(row);
        if (this.entries.length % 50 === 0) {
          yield;
        }
      }
      const lists = found.lists.split(" ");
      let word = "";
      for (const [n, coded] of found.words.split(" ").entries()) {
        word = word.slice(0, VALUE.get(coded[0])) + coded.slice(1);
        this.addText(this.term(word), lists[n]);
        if (n % 200 === 0) {
          yield;
        }
      }
      yield* this.addGroups(found.same);
      this.ordered = Array.from(this.terms.keys())
        .sort((one, other) => (this.terms[one] < this.terms[other] ? -1 : 1));
      yield;
      this.numeric = this.ordered.filter((id) => /\d/.test(this.terms[id]));
    }

    addEntry([kind, id, title, vehicles = [], names = [], said = []]) {
      const number = this.entries.length;
      const [label, before, after, prior] = this.kinds[kind];
      const lines = [];
      const add = (text, place) => {
        const ids = words(text).map((word) => this.term(word));
        for (const term of ids) {
          this.post(term, number, place);
        }
        return ids;
      };
      const addLine = (text, place) => lines.push({ text, place, ids: add(text, place) });
      addLine(title, 0);
      names.forEach((name) => addLine(name, 1));
      said.forEach((sentence) => addLine(sentence, 2));
      const around = vehicles.flatMap((vehicle) => add(this.vehicles[vehicle], 4));
      around.push(...add(label, 5));
      this.entries.push({
        url: before + id + after, title, kind: label, prior, lines, around,
        on: vehicles.map((vehicle) => this.vehicles[vehicle]),
      });
    }

    addText(term, list) {
      let number = -1;
      let step = 0;
      let scale = 1;
      for (const digit of list) {
        const value = VALUE.get(digit);
        step += (value % 32) * scale;
        scale *= 32;
        if (value < 32) {
          number += step + 1;
          this.post(term, number, 3);
          step = 0;
          scale = 1;
        }
      }
    }

    /** Keeps phrases that mean the same, each found by the stem of its first word. */
    *addGroups(groups) {
      this.phrases = new Map();
      for (const group of groups) {
        const phrases = group.map((text) => words(text).map((word) => this.stems[this.term(word)]));
        for (const phrase of phrases) {
          const others = phrases.filter((other) => String(other) !== String(phrase));
          const known = this.phrases.get(phrase[0]) || [];
          known.push({ phrase, others });
          this.phrases.set(phrase[0], known);
        }
        yield;
      }
    }

    term(word) {
      let id = this.byTerm.get(word);
      if (id === undefined) {
        id = this.terms.length;
        this.byTerm.set(word, id);
        const stemmed = this.stemOf(stem(word));
        this.terms.push(word);
        this.stems.push(stemmed);
        this.bits.push(letters(word));
        this.postings.push([]);
        this.byStem.get(stemmed).push(id);
      }
      return id;
    }

    stemOf(stemmed) {
      let number = this.stemNumber.get(stemmed);
      if (number === undefined) {
        number = this.stemNumber.size;
        this.stemNumber.set(stemmed, number);
        this.byStem.set(number, []);
      }
      return number;
    }

    post(term, entry, place) {
      const list = this.postings[term];
      if (Math.floor(list[list.length - 1] / STRIDE) !== entry || place > 3) {
        list.push(entry * STRIDE + place);
      } else if (list[list.length - 1] % STRIDE > place) {
        list[list.length - 1] = entry * STRIDE + place;
      }
    }

    /** Raises an entry's figure in `scores` to what each posting of a word is worth. */
    spread(term, quality, scores) {
      for (const posting of this.postings[term]) {
        const entry = (posting / STRIDE) | 0;
        const value = quality * WEIGHTS[posting % STRIDE];
        if (value > scores[entry]) {
          scores[entry] = value;
        }
      }
    }

    /** Gives the words that begin with some letters. */
    startingWith(start) {
      let low = 0;
      let high = this.ordered.length;
      while (low < high) {
        const middle = (low + high) >> 1;
        if (this.terms[this.ordered[middle]] < start) {
          low = middle + 1;
        } else {
          high = middle;
        }
      }
      const found = [];
      while (low < this.ordered.length && this.terms[this.ordered[low]].startsWith(start)) {
        found.push(this.ordered[low]);
        low += 1;
      }
      return found;
    }
  }

  window.fettleSearch = { Index, PLACES, WEIGHTS };
})();
