/* Following the order of tests by tapping what each one finds. Nothing leaves the device. */

"use strict";

(() => {
  const make = (tag, text, attributes = {}, ...children) => {
    const element = document.createElement(tag);
    if (text) element.textContent = text;
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
    element.append(...children.filter(Boolean));
    return element;
  };

  const button = (text, act, attributes = {}) => {
    const element = make("button", text, { type: "button", ...attributes });
    element.addEventListener("click", act);
    return element;
  };

  const percent = (share) => (share > 0 && share < 0.01 ? "< 1 %" : `${Math.round(share * 100)} %`);

  /* A page that was left for a test is found again as it was; a browser may refuse to remember. */
  const memory = (key) => ({
    read: () => {
      try {
        return JSON.parse(sessionStorage.getItem(key)) || {};
      } catch {
        return {};
      }
    },
    write: (value) => {
      try {
        sessionStorage.setItem(key, JSON.stringify(value));
      } catch {
        /* nothing to be done, and nothing lost but the way back */
      }
    },
  });

  class Follower {
    constructor(section) {
      this.tables = JSON.parse(section.dataset.tables);
      this.words = this.tables.words;
      this.here = section.querySelector(".tapping-here");
      this.memory = memory(`order ${location.pathname} ${this.tables.vehicle}`);
      const kept = this.memory.read();
      this.known = (kept.known || []).filter((name) => name in this.tables.known);
      this.path = this.whole(kept.path) ? kept.path : [];
      section.hidden = false;
      this.show();
    }

    /* What was remembered may be from an older edition of the manual. */
    whole(path) {
      const { tests } = this.tables;
      return Array.isArray(path) && path.every(([id, n]) => tests[id] && tests[id].outcomes[n]);
    }

    change(known, path) {
      this.known = known;
      this.path = path;
      this.memory.write({ known, path });
      this.show();
      const goal = this.here.querySelector("[data-focus]");
      if (goal) goal.focus();
    }

    show() {
      const state = window.fettleOrder.follow(this.tables, this.known, this.path);
      this.here.replaceChildren(
        ...[
          this.knownNow(),
          this.pathSoFar(),
          this.contradictions(state),
          state.ends ? this.ending(state) : this.nextTest(state),
          this.odds(state),
          state.ends ? null : this.following(state),
          this.path.length || this.known.length ? this.tools(state) : null,
        ].filter(Boolean),
      );
    }

    knownNow() {
      const names = Object.keys(this.tables.known);
      if (!names.length) return null;
      const row = make("div", "", { class: "tap-row", role: "group", "aria-label": this.words.known });
      for (const name of names) {
        const on = this.known.includes(name);
        const other = on ? this.known.filter((each) => each !== name) : [...this.known, name];
        row.append(
          button(this.tables.known_words[name], () => this.change(other, this.path), {
            class: "tap-known", "aria-pressed": String(on), "data-known": name,
          }),
        );
      }
      return make("div", "", {}, make("p", this.words.known, { class: "tap-head" }), row);
    }

    label([id, n]) {
      return `${this.tables.tests[id].title}: ${this.tables.tests[id].outcomes[n].label}`;
    }

    pathSoFar() {
      if (!this.path.length) return null;
      const list = make("ol", "", { class: "tap-path" });
      for (const each of this.path) list.append(make("li", this.label(each)));
      return make("div", "", {}, make("p", this.words.path, { class: "tap-head" }), list);
    }

    contradictions(state) {
      if (!state.contradictions.length) return null;
      const names = state.contradictions.map(
        (name) => this.tables.known_words[name] || this.tables.tests[name].title,
      );
      return make("p", `${this.words.contradiction}: ${names.join(", ")}.`, { class: "tap-alert" });
    }

    nextTest(state) {
      const id = state.order[0];
      const card = make("div", "", { class: "tap-next", "data-test": id });
      card.append(make("p", this.words.next, { class: "tap-head" }), this.link(id));
      const must = window.fettleOrder.restore(this.tables, this.path, id);
      if (must.length) {
        const words = must.map(([word]) => this.tables.tests[id].restore[word]).join(", ");
        card.append(make("p", `${this.words.restore}: ${words}.`, { class: "tap-alert" }));
      }
      card.append(make("p", this.words.found), this.outcomes(id));
      return card;
    }

    link(id) {
      const test = this.tables.tests[id];
      const anchor = make("a", test.title, { href: test.href, "data-focus": "" });
      return make("p", "", {}, anchor, ` ${test.minutes} ${this.words.minutes}`);
    }

    outcomes(id) {
      const list = make("div", "", { class: "tap-outcomes" });
      this.tables.tests[id].outcomes.forEach((outcome, n) => {
        list.append(
          button(outcome.label, () => this.change(this.known, [...this.path, [id, n]]), {
            "data-says": outcome.says, "data-outcome": `${id} ${n}`,
          }),
        );
      });
      return list;
    }

    odds(state) {
      const rows = this.tables.causes
        .map((cause, i) => [cause.name, state.shares[i]])
        .sort((a, b) => b[1] - a[1])
        .slice(0, 5);
      const list = make("dl", "", { class: "facts tap-odds" });
      for (const [name, share] of rows) list.append(make("dt", name), make("dd", percent(share)));
      return make("div", "", {}, make("p", this.words.odds, { class: "tap-head" }), list);
    }

    following(state) {
      const list = make("ol", "", { class: "tap-left" });
      for (const id of state.order.slice(1)) {
        const title = make("summary", `${this.tables.tests[id].title}, `);
        title.append(`${this.tables.tests[id].minutes} ${this.words.minutes}`);
        const inside = [make("p", this.words.other), this.link(id), this.outcomes(id)];
        inside[1].firstChild.removeAttribute("data-focus");
        list.append(make("li", "", {}, make("details", "", {}, title, ...inside)));
      }
      if (!list.children.length) return null;
      return make("div", "", {}, make("p", this.words.left, { class: "tap-head" }), list);
    }

    endWords(state) {
      const { how, causes } = state.ends;
      const names = causes.length ? `: ${causes.join(", ")}` : "";
      return `${this.words[how]}${how === "proved" ? names : ""}.`;
    }

    ending(state) {
      const card = make("div", "", { class: "tap-next tap-end", "data-how": state.ends.how });
      card.append(make("p", this.endWords(state), { class: "tap-verdict", tabindex: "-1", "data-focus": "" }));
      const last = this.path[this.path.length - 1];
      const ways = last && state.ends.how !== "none_left" ? this.tables.tests[last[0]].outcomes[last[1]].ways : [];
      for (const way of ways) {
        card.append(make("p", "", {}, way.href ? make("a", way.title, { href: way.href }) : way.title));
      }
      if (state.ends.how !== "proved") {
        for (const line of this.lookedFor()) card.append(make("p", line));
      }
      if (state.ends.how === "none_left") {
        const elsewhere = new Set(this.tables.causes.map((cause) => cause.refer).filter(Boolean));
        for (const words of elsewhere) card.append(make("p", `${this.words.look_there}: ${words}`));
      }
      return card;
    }

    /* What was excluded, and what is not settled. */
    lookedFor() {
      const titles = (kinds) =>
        this.path
          .filter(([id, n]) => kinds.includes(this.tables.tests[id].outcomes[n].says))
          .map(([id]) => this.tables.tests[id].title)
          .join("; ");
      const good = titles(["clear"]);
      const open = titles(["asleep", "nothing"]);
      return [
        good && `${this.words.excluded}: ${good}.`,
        open && `${this.words.unsettled}: ${open}.`,
      ].filter(Boolean);
    }

    tools(state) {
      const row = make("div", "", { class: "tap-row tap-tools" });
      if (this.path.length) {
        row.append(button(this.words.undo, () => this.change(this.known, this.path.slice(0, -1))));
      }
      row.append(button(this.words.again, () => this.change([], [])));
      const copy = button(this.words.copy, () => this.copy(state, copy));
      row.append(copy, button(this.words.print, () => window.print()));
      return row;
    }

    card(state) {
      const known = this.known.map((name) => this.tables.known_words[name]);
      return [
        `${this.tables.complaint}: ${this.tables.vehicle}`,
        ...known,
        ...this.path.map((each, n) => `${n + 1}. ${this.label(each)}`),
        state.ends ? this.endWords(state) : "",
        ...(state.ends && state.ends.how !== "proved" ? this.lookedFor() : []),
      ].filter(Boolean).join("\n");
    }

    async copy(state, from) {
      const text = this.card(state);
      try {
        await navigator.clipboard.writeText(text);
        from.textContent = this.words.copied;
      } catch {
        // A page from a stick has no clipboard: give the text to be marked by hand.
        const box = make("textarea", text, { class: "tap-card", rows: "8", readonly: "" });
        from.parentElement.after(box);
        box.select();
      }
    }
  }

  for (const section of document.querySelectorAll(".tapping")) new Follower(section);
})();
