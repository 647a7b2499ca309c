/* The reader's vehicle, kept on this device. Every page shows what is for it; what is for other
   vehicles alone lies one tap away, and is never lost: a link into it opens it. A page for other
   vehicles says so, and then shows all it has. */

"use strict";

(() => {
  const KEY = "fettlebook:vehicle";
  const bar = document.querySelector(".reader");
  const data = window.fettleVehicles;
  if (!bar || !data) return;

  const opener = bar.querySelector(".reader-vehicle");
  const panel = bar.querySelector(".reader-choose");
  const foot = document.querySelector("[data-revision]");
  const page = foot && foot.dataset.vehicles ? foot.dataset.vehicles.split(" ") : [];
  const parts = [...document.querySelectorAll("[data-for]")];
  const made = []; // what this script has put on the page, and takes off again
  let fallback = ""; // the choice, where the browser keeps nothing

  const make = (tag, text, attributes = {}) => {
    const element = document.createElement(tag);
    element.textContent = text;
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
    return element;
  };

  const say = window.fettleElement.sayer(data.words);

  const titles = (ids) =>
    data.vehicles.filter(({ id }) => ids.includes(id)).map(({ title }) => title).join(", ");

  /* The vehicle that was chosen; one this manual does not know counts as none. */
  function chosen() {
    let id = fallback;
    try {
      id = window.localStorage.getItem(KEY) || "";
    } catch {
      // What was chosen on this page holds on it.
    }
    return data.vehicles.find((each) => each.id === id);
  }

  function set(id) {
    fallback = id;
    try {
      if (id) window.localStorage.setItem(KEY, id);
      else window.localStorage.removeItem(KEY);
    } catch {
      // It lasts as long as the page is open.
    }
    show();
  }

  function choose(id) {
    set(id);
    open(false);
    opener.focus();
  }

  function open(yes) {
    panel.hidden = !yes;
    opener.setAttribute("aria-expanded", String(yes));
  }

  function fill() {
    panel.append(make("p", say("lead"), { class: "lead" }));
    const list = make("ul", "", { class: "reader-list" });
    const all = { id: "", title: say("none"), tell: say("none_lead") };
    for (const each of [...data.vehicles, all]) {
      const button = make("button", "", { type: "button", "data-vehicle": each.id });
      button.append(make("b", each.title));
      if (each.engine) button.append(" ", make("span", `${each.engine}, ${each.years}`));
      button.append(" ", make("span", each.tell, { class: "tell" }));
      button.addEventListener("click", () => choose(each.id));
      const item = make("li", "");
      item.append(button);
      list.append(item);
    }
    panel.append(list);
  }

  const isFor = (part, vehicle) => part.dataset.for.split(" ").includes(vehicle.id);

  function within(part, vehicle) {
    const around = part.parentElement.closest("[data-for]");
    return around !== null && (!isFor(around, vehicle) || within(around, vehicle));
  }

  function show() {
    const vehicle = chosen();
    document.dispatchEvent(new CustomEvent("fettle:vehicle"));
    opener.querySelector("b").textContent = vehicle ? vehicle.title : say("all");
    for (const button of panel.querySelectorAll("button")) {
      const on = button.dataset.vehicle === (vehicle ? vehicle.id : "");
      button.setAttribute("aria-pressed", String(on));
    }
    made.splice(0).forEach((element) => element.remove());
    for (const part of parts) part.hidden = false;
    if (!vehicle) return;
    if (page.length && !page.includes(vehicle.id)) {
      const text = say("only", { vehicle: vehicle.title, others: titles(page) });
      put(make("p", text, { class: "reader-only", role: "status" }), (note) => bar.after(note));
      return;
    }
    // What lies in a part that is folded away comes back with it.
    const others = parts.filter((part) => !isFor(part, vehicle) && !within(part, vehicle));
    for (const owner of new Set(others.map((part) => part.parentElement))) {
      fold(others.filter((part) => part.parentElement === owner));
    }
    reveal();
  }

  function put(element, place) {
    place(element);
    made.push(element);
  }

  /* Puts parts of one list or section away, behind a button in their place. */
  function fold(hidden) {
    const last = hidden[hidden.length - 1];
    const ids = hidden.flatMap((part) => part.dataset.for.split(" "));
    const button = make("button", "", { type: "button", class: "others" });
    const turn = (shown) => {
      for (const part of hidden) part.hidden = !shown;
      button.setAttribute("aria-expanded", String(shown));
      button.textContent = shown ? say("fewer") : say("others", { vehicles: titles(ids) });
    };
    button.addEventListener("click", () => turn(button.getAttribute("aria-expanded") !== "true"));
    for (const part of hidden) part.reveal = () => turn(true);
    turn(false);
    if (last.tagName === "LI") {
      const item = make("li", "", { class: "others-item" });
      item.append(button);
      put(item, (each) => last.after(each));
    } else {
      put(button, (each) => last.after(each));
    }
  }

  /* Opens what a link leads into. */
  function reveal() {
    const goal = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (!goal) return;
    let found = false;
    for (let part = goal.closest("[data-for]"); part; part = part.parentElement.closest("[data-for]")) {
      if (part.hidden) {
        part.reveal();
        found = true;
      }
    }
    if (found) goal.scrollIntoView();
  }

  window.fettleVehicle = {
    chosen: () => (chosen() || { id: "" }).id,
    choose: set,
    titleOf: (id) => titles([id]), // "" for one that this manual does not know
  };
  if (data.vehicles.length < 2) {
    opener.hidden = true;
    return;
  }
  fill();
  opener.addEventListener("click", () => open(panel.hidden));
  bar.addEventListener("keydown", ({ key }) => {
    if (key === "Escape" && !panel.hidden) {
      open(false);
      opener.focus();
    }
  });
  window.addEventListener("hashchange", reveal);
  window.addEventListener("storage", ({ key }) => key === KEY && show());
  window.addEventListener("pageshow", ({ persisted }) => persisted && show());
  show();
})();
