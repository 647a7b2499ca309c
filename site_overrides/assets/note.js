/* "This was wrong": a quiet key at the end of each step and at the foot of each page. What it opens
   is fetched when it is first asked for; notes lie on this device alone. */

"use strict";

(() => {
  const NOTE = "fettlebook:note:"; // and the address of what was wrong, with the step's anchor
  const line = document.querySelector(".wrong");
  const keeper = window.fettleJob; // there where the browser keeps anything
  if (!line || !keeper) return;

  const { HERE, ROOT, address, inTurn, storage } = keeper;
  const { make } = window.fettleElement;
  const PARTS = [
    new URL("note-words.js", ROOT), new URL("hand-in.js", HERE), new URL("note-panel.js", HERE),
  ];
  const list = document.querySelector(".note-list");
  const waiting = make("a", { href: new URL("add/index.html#kept-notes", ROOT).href, class: "note-waiting" });

  const keys = () => Object.keys(storage).filter((key) => key.startsWith(NOTE)).sort();

  const ready = () => inTurn(window.fettleHandIn ? PARTS.filter((_, n) => n !== 1) : PARTS);

  /* Opens the note of a step, or of the page, behind the key that asked for it. */
  async function turn(key, step) {
    const shut = key.getAttribute("aria-expanded") === "true";
    key.setAttribute("aria-expanded", String(!shut));
    if (shut) {
      key.nextElementSibling.remove();
      return;
    }
    const place = make("div", { class: "note" });
    key.after(place);
    try {
      await ready();
      const close = () => {
        key.setAttribute("aria-expanded", "false");
        place.remove();
        key.focus();
      };
      if (place.isConnected) window.fettleNote.open(place, NOTE + address() + (step ? `#${step.id}` : ""), close);
    } catch {
      place.textContent = line.dataset.missing;
    }
  }

  function opener(step, ...words) {
    const key = make("button", { type: "button", class: "note-open", "aria-expanded": "false" }, ...words);
    key.addEventListener("click", () => turn(key, step));
    return key;
  }

  /* Says at the foot that something waits, and lists it where notes are listed. */
  function changed() {
    const found = keys();
    waiting.textContent = line.dataset.waiting.replace("#", found.length);
    waiting.hidden = found.length === 0;
    if (list && (found.length || window.fettleNote)) {
      ready().then(() => window.fettleNote.list(list, keys()), () => { list.textContent = line.dataset.missing; });
    }
  }

  for (const step of document.querySelectorAll("li.step[id]")) {
    const number = step.querySelector(".number").textContent;
    const ear = make("span", { class: "for-ear" }, ` ${line.dataset.ofStep.replace("#", number)}`);
    step.append(opener(step, line.dataset.step, ear));
  }
  line.replaceChildren(opener(null, line.dataset.page));
  line.after(waiting);

  window.addEventListener("storage", ({ key }) => key && key.startsWith(NOTE) && changed());
  window.addEventListener("pageshow", ({ persisted }) => persisted && changed());
  document.addEventListener("fettle:note", changed);
  changed();
})();
