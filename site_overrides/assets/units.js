/* The reader's system of units, kept on this device: a class on the page, which style sheets and the
   reading check follow. With none chosen both systems are shown, as without this script. */

"use strict";

(() => {
  const KEY = "fettlebook:units";
  const SYSTEMS = ["si", "us"];
  const buttons = document.querySelectorAll("[data-units]");
  const root = document.documentElement;

  /* What was kept; a browser may refuse to say. */
  function kept() {
    try {
      return window.localStorage.getItem(KEY);
    } catch {
      return null;
    }
  }

  function keep(system) {
    try {
      window.localStorage.setItem(KEY, system);
    } catch {
      // The choice lasts as long as the page is open.
    }
  }

  function show(system) {
    for (const each of SYSTEMS) root.classList.toggle(`units-${each}`, each === system);
    for (const button of buttons) {
      const on = button.dataset.units === (SYSTEMS.includes(system) ? system : "both");
      button.setAttribute("aria-pressed", String(on));
    }
    document.dispatchEvent(new CustomEvent("fettle:units"));
  }

  for (const button of buttons) {
    button.addEventListener("click", () => {
      keep(button.dataset.units);
      show(button.dataset.units);
    });
  }
  // Another page of the manual may have changed it, while this one lay behind it or beside it.
  window.addEventListener("storage", ({ key }) => key === KEY && show(kept()));
  window.addEventListener("pageshow", ({ persisted }) => persisted && show(kept()));
  show(kept());
})();
