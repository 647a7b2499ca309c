/* The search as a reader meets it: a box, and below it links that follow every key. The index is
   fetched when a box is first used. The hits are plain links in a list, which every screen reader
   knows, with a count that is read out when typing pauses. Classic scripts alone, so that a folder
   on a stick searches as a server does. */
(() => {
  "use strict";

  const panel = document.getElementById("finder");
  const opener = document.querySelector(".finder-open");
  if (!panel || !opener || !document.currentScript) {
    return;
  }

  const MOST = 20; // hits shown; whoever wants more types another word
  const PAUSE_MS = 700; // typing rests this long before the count is read out
  const SLICE_MS = 24; // unpacking gives way to the reader's typing this often
  const HERE = new URL(".", document.currentScript.src);
  const ROOT = new URL("../", HERE);
  const PARTS = [
    new URL("search-words.js", HERE), new URL("search-unpack.js", HERE),
    new URL("search-rank.js", HERE), new URL("search-index.js", ROOT),
  ];
  const SAY = panel.dataset;
  let index = null; // a promise of the index, once it has been asked for

  /** Loads the index, once. */
  function ready() {
    if (!index) {
      index = PARTS.reduce((before, url) => before.then(() => loaded(url)), Promise.resolve())
        .then(unpacked);
      index.catch(() => {
        index = null; // the next try may find the network again
      });
    }
    return index;
  }

  function loaded(url) {
    return new Promise((resolve, reject) => {
      const script = document.createElement("script");
      script.src = url.href;
      script.onload = resolve;
      script.onerror = () => reject(new Error(url.href));
      document.head.append(script);
    });
  }

  function unpacked() {
    const made = new window.fettleSearch.Index(window.fettleIndex);
    window.fettleIndex = null;
    return new Promise((resolve, reject) => {
      const more = () => {
        try {
          if (made.advance(performance.now() + SLICE_MS)) {
            window.fettleSearch.find(made, "warm up"); // so that the first key finds it compiled
            resolve(made);
          } else {
            setTimeout(more);
          }
        } catch (fault) {
          reject(fault);
        }
      };
      more();
    });
  }

  function make(tag, name, text = "") {
    const element = document.createElement(tag);
    element.className = name;
    element.textContent = text;
    return element;
  }

  class Finder {
    constructor(box) {
      this.input = box.querySelector("input");
      this.count = make("p", "finder-count");
      this.spoken = make("p", "for-ear");
      this.spoken.setAttribute("role", "status");
      this.list = make("ul", "hits");
      this.list.setAttribute("role", "list"); // some readers forget lists without bullets
      box.append(this.count, this.spoken, this.list);
      this.count.hidden = true;
      this.known = null;
      this.entered = false; // Enter was pressed, maybe before the index was there
      this.pause = 0;
      this.input.addEventListener("focus", () => {
        this.wake();
        if (box !== panel && matchMedia("(max-width: 60em)").matches) {
          box.scrollIntoView({ block: "start" }); // the keyboard leaves little room below
        }
      });
      this.input.addEventListener("input", () => this.answer());
      box.addEventListener("keydown", (event) => this.key(event));
    }

    async wake() {
      try {
        this.known = await ready();
        this.answer();
      } catch {
        this.tell(SAY.missing);
      }
    }

    answer() {
      const text = this.input.value;
      if (!text.trim()) {
        this.list.replaceChildren();
        this.tell("");
      } else if (this.known) {
        const hits = window.fettleSearch.find(this.known, text);
        const shown = hits.slice(0, MOST);
        this.list.replaceChildren(...shown.map((hit) => this.row(hit)));
        const words = hits.length > MOST ? SAY.most : [SAY.none, SAY.one][hits.length] || SAY.more;
        this.tell(words.replace("#", shown.length), shown[0]);
        this.go();
      } else {
        this.tell(SAY.loading);
        this.wake();
      }
    }

    /** Opens the best hit if Enter asked for it. */
    go() {
      const best = this.list.querySelector("a");
      if (this.entered && this.known) {
        this.entered = false;
        if (best) {
          best.click();
        }
      }
    }

    row({ entry, by }) {
      const item = document.createElement("li");
      const link = document.createElement("a");
      link.href = new URL(entry.url, ROOT).href;
      link.append(make("span", "hit-title", entry.title), " ", make("span", "hit-kind", entry.kind));
      if (by) {
        link.append(" ", make(by.said ? "q" : "span", "hit-by", by.text));
      }
      if (entry.on.length) {
        link.append(" ", make("span", "hit-on", entry.on.join(", ")));
      }
      item.append(link);
      return item;
    }

    /** Shows a word at once, and has it read out, with the best hit, when typing rests. */
    tell(words, first) {
      this.count.textContent = words;
      this.count.hidden = !words;
      clearTimeout(this.pause);
      this.pause = setTimeout(() => {
        const best = first ? `: ${first.entry.title}, ${first.entry.kind}` : "";
        this.spoken.textContent = words + best;
      }, PAUSE_MS);
    }

    key(event) {
      if (event.isComposing || event.altKey || event.ctrlKey || event.metaKey) {
        return;
      }
      const links = [...this.list.querySelectorAll("a")];
      const place = links.indexOf(document.activeElement); // -1 in the box itself
      if (event.key === "ArrowDown" && links[place + 1]) {
        links[place + 1].focus();
      } else if (event.key === "ArrowUp" && place >= 0) {
        (links[place - 1] || this.input).focus();
      } else if (event.key === "Enter" && event.target === this.input) {
        this.entered = true;
        this.go();
      } else if (event.key === "Escape" && place >= 0) {
        this.input.focus();
      } else if (event.key === "Escape" && event.target === this.input && this.input.value) {
        this.input.value = "";
        this.answer();
      } else {
        return;
      }
      event.preventDefault();
    }
  }

  function home() {
    const box = document.querySelector(".home-finder");
    if (box) {
      box.hidden = false;
    }
    return box;
  }

  const box = home();
  const own = box ? new Finder(box) : null;
  const inPanel = new Finder(panel);

  function open(wanted) {
    opener.setAttribute("aria-expanded", String(wanted));
    panel.hidden = !wanted;
    if (wanted) {
      inPanel.input.focus();
    }
  }

  opener.hidden = false;
  opener.addEventListener("click", () => {
    if (own) {
      own.input.focus(); // the page has the same box in plain sight
      box.scrollIntoView({ block: "nearest" });
    } else {
      open(panel.hidden);
    }
  });
  panel.querySelector(".finder-close").addEventListener("click", () => {
    open(false);
    opener.focus();
  });
  panel.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && !event.defaultPrevented) {
      open(false);
      opener.focus();
    }
  });
  panel.addEventListener("focusout", ({ relatedTarget: to }) => {
    if (to && to !== opener && !panel.contains(to)) {
      open(false);
    }
  });
})();
