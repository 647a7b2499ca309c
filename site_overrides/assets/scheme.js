/* The toggle of light and dark. It runs before anything is painted, so that a reader who chose
   does not see the other scheme first. Without it, or without a choice, the device's wish counts. */
(() => {
  "use strict";

  const KEY = "fettlebook:scheme";
  const wish = matchMedia("(prefers-color-scheme: dark)");
  const root = document.documentElement;

  function stored() {
    try {
      const found = localStorage.getItem(KEY);
      return found === "dark" || found === "light" ? found : "";
    } catch {
      return ""; // the reader allows no storage
    }
  }

  function keep(choice) {
    try {
      if (choice) {
        localStorage.setItem(KEY, choice);
      } else {
        localStorage.removeItem(KEY);
      }
    } catch {
      // then it holds for this page alone
    }
  }

  function mark(choice) {
    if (choice) {
      root.dataset.scheme = choice;
    } else {
      delete root.dataset.scheme;
    }
  }

  const wished = () => (wish.matches ? "dark" : "light");
  const shown = () => root.dataset.scheme || wished();
  const other = () => (shown() === "dark" ? "light" : "dark");

  mark(stored());

  document.addEventListener("DOMContentLoaded", () => {
    const button = document.querySelector(".scheme");
    const name = () => {
      button.querySelector(".for-ear").textContent = button.dataset[other()];
      button.title = button.dataset[other()];
    };
    name();
    button.hidden = false;
    button.addEventListener("click", () => {
      // A choice that the device wishes as well is none: the page follows the device again.
      const choice = other() === wished() ? "" : other();
      mark(choice);
      keep(choice);
      name();
    });
    wish.addEventListener("change", name);
    addEventListener("storage", (event) => {
      if (event.key === KEY) {
        mark(stored());
        name();
      }
    });
  });
})();
