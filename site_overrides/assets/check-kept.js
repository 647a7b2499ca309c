/* A reading goes with the job in hand: what was read, the verdict, the conditions, when by this
   device's clock, on which revision of the page. The first visit's reading is the one before the
   work and a later one the one after it; the reader can say otherwise, or keep none. Without a job
   nothing is kept. */

"use strict";

window.fettleKept = (() => {
  const { fettleFields: fields, fettleJob: keeper } = window;
  const foot = document.querySelector("[data-revision]");

  return class Kept {
    /* `box` holds one check, beside its value and the value's blanks for paper. */
    constructor(box) {
      const { say, make } = fields;
      const value = box.parentElement.querySelector(".value");
      this.key = value.id;
      this.title = value.querySelector(".value-name").firstChild.textContent.trim();
      this.blanks = box.parentElement.querySelectorAll("[data-of-reading]");
      this.word = make("p", { role: "status" });
      this.keys = make("p", { class: "check-keys" });
      this.element = make("div", { class: "check-kept", hidden: true }, this.word, this.keys);
      this.reading = null; // what stands in the fields now
      this.full = false;
      if (!keeper || !foot) return;
      this.say = say;
      this.enter();
      for (const event of ["fettle:job", "fettle:vehicle"]) {
        document.addEventListener(event, () => {
          if (keeper.place() !== this.place) this.enter();
          this.draw();
        });
      }
      this.draw();
    }

    /* Begins with what the job in hand has of this value from earlier visits. */
    enter() {
      this.place = keeper.place();
      this.earlier = this.own();
      this.slot = this.earlier.some(({ when }) => when === "before") ? "after" : "before";
      this.wanted = true;
      this.made = null; // what this visit has kept
    }

    mine({ page, key }) {
      return page === keeper.name() && key === this.key;
    }

    own() {
      const job = keeper.running();
      return job ? job.readings.filter((each) => this.mine(each)) : [];
    }

    /* What this visit has kept, if it still is. */
    kept() {
      return this.made && this.own().find((each) => same(each, this.made));
    }

    /* Takes up the reading that has got its verdict; null where there is none. */
    told(reading) {
      this.reading = reading;
      if (!keeper || !foot) return;
      if (reading && this.wanted && keeper.running()) this.keep();
      this.draw();
    }

    keep() {
      const made = {
        page: keeper.name(), key: this.key, title: this.title, when: this.slot,
        revision: foot.dataset.revision, at: window.fettleElement.minute(), ...this.reading,
      };
      const before = this.kept();
      if (before && same({ ...made, at: before.at }, before)) return;
      this.made = made;
      this.put(...this.earlier.filter(({ when }) => when !== this.slot), made);
    }

    /* Puts these in the place of what the job has of this value. */
    put(...entries) {
      const job = keeper.running();
      const rest = job.readings.filter((each) => !this.mine(each));
      this.full = !keeper.save({ ...job, readings: [...rest, ...entries] });
    }

    act(key, change) {
      const button = fields.make("button", { type: "button" }, this.say(key));
      button.addEventListener("click", () => {
        change();
        this.draw();
        this.keys.querySelector("button").focus();
      });
      return button;
    }

    draw() {
      const job = keeper.running();
      for (const blank of this.blanks) {
        blank.textContent = this.onPaper(this.own().find(({ when }) => when === blank.dataset.ofReading));
      }
      this.element.hidden = !(job && this.reading);
      if (this.element.hidden) return;
      const kept = this.kept();
      const first = this.slot === "before";
      const slot = first ? "check.kept_before" : "check.kept_after";
      const key = this.full ? "check.kept_full" : kept ? slot : "check.kept_not";
      const words = this.say(key, { plate: job.plate });
      if (this.word.textContent !== words) this.word.textContent = words;
      this.keys.replaceChildren(...(kept
        ? [this.act(first ? "check.was_after" : "check.was_before", () => {
            this.slot = first ? "after" : "before";
            this.keep();
          }),
          this.act("check.keep_not", () => {
            this.wanted = false;
            this.made = null;
            this.put(...this.earlier);
          })]
        : [this.act("check.keep", () => {
            this.wanted = true;
            this.keep();
          })]));
    }

    onPaper(entry) {
      if (!entry) return "";
      const { revision } = foot.dataset;
      const of = entry.revision === revision ? "" : this.say("check.of_revision", entry);
      const { words } = window.fettleReadings;
      return [entry.value, words[`verdict.${entry.word}`], entry.conditions, entry.at, of]
        .filter(Boolean).join(" · ");
    }
  };

  function same(one, other) {
    return JSON.stringify(Object.entries(one).sort()) === JSON.stringify(Object.entries(other).sort());
  }
})();
