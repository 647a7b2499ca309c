/* Keeps a reader's place in a job: ticks on its steps, for one page in one revision, one vehicle
   and the job in hand, on this device alone (job.js keeps them). Who comes back first confirms the state that the next step counts on. Without
   this script the page is whole; with it nothing on the page is ever hidden. */
(function () {
  "use strict";

  const AWAY_MS = 30 * 60 * 1000; // out of sight this long counts as coming back
  const foot = document.querySelector("[data-revision]");
  const section = document.getElementById("steps");
  const extras = section && section.querySelector(":scope > template.keep");
  const keeper = window.fettleJob; // there where the browser keeps anything
  if (!foot || !extras || !keeper) {
    return;
  }

  const REVISION = foot.dataset.revision;
  const steps = Array.from(section.querySelectorAll("li.step"))
    .filter((step) => step.querySelector(":scope > template.keep"))
    .map((step) => ({ step, ...made(step, ".tick", ".ask") }));
  const { kept, changed } = made(section, ".kept", ".changed");
  const done = new Set();
  let ask = null; // the question that is open: the state before the next step
  let left = null; // when the page went out of sight
  let place = ""; // what the ticks belong to

  /** Copies parts out of the inert template of a step or of the section, by class name. */
  function made(owner, ...selectors) {
    const content = owner.querySelector(":scope > template.keep").content.cloneNode(true);
    return Object.fromEntries(
      selectors.map((name) => [name.slice(1), content.querySelector(name)]),
    );
  }

  function keep() {
    keeper.keep(done.size ? { revision: REVISION, done: Array.from(done) } : null);
  }

  /** Gives the first step that is not ticked, undefined where all are. */
  function next() {
    return steps.find(({ step }) => !done.has(step.id));
  }

  function draw() {
    const current = done.size && !ask ? next() : undefined;
    for (const item of steps) {
      const ticked = done.has(item.step.id);
      item.step.classList.toggle("done", ticked);
      item.tick.setAttribute("aria-pressed", String(ticked));
      if (item === current) {
        item.step.setAttribute("aria-current", "step");
      } else {
        item.step.removeAttribute("aria-current");
      }
    }
    kept.hidden = !done.size;
  }

  /** Puts the question at the head of the page; no step is current until it is answered. */
  function askAgain() {
    const item = done.size ? next() : undefined;
    closeQuestion();
    if (item) {
      ask = item.ask;
      show(ask);
    }
    draw();
  }

  /** Shows a word at the head of the page, and brings a reader there who was further down. */
  function show(element) {
    document.querySelector("header.head").after(element);
    history.scrollRestoration = "manual";
    if (!followsDeepLink()) {
      element.scrollIntoView({ block: "nearest" });
    }
  }

  /** Says whether the page has just been opened by a link to one of its parts. */
  function followsDeepLink() {
    const [entry] = performance.getEntriesByType("navigation");
    return Boolean(location.hash && left === null && entry && entry.type === "navigate");
  }

  function closeQuestion() {
    if (ask) {
      ask.remove();
    }
    ask = null;
  }

  function confirmed(item) {
    closeQuestion();
    draw();
    item.step.scrollIntoView();
    item.tick.focus({ preventScroll: true });
  }

  function ticked(item) {
    if (ask) {
      ask.scrollIntoView();
      ask.querySelector(".confirm").focus({ preventScroll: true });
      return;
    }
    if (!done.delete(item.step.id)) {
      done.add(item.step.id);
    }
    changed.remove();
    keep();
    draw();
  }

  for (const item of steps) {
    item.step.append(item.tick);
    item.tick.addEventListener("click", () => ticked(item));
    item.ask.querySelector(".confirm").addEventListener("click", () => confirmed(item));
  }
  section.append(kept);
  kept.querySelector(".clear").addEventListener("click", () => {
    done.clear();
    closeQuestion();
    keep();
    draw();
    steps[0].tick.focus();
  });

  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") {
      left = Date.now();
    } else if (left !== null && Date.now() - left >= AWAY_MS) {
      askAgain();
    }
  });

  /** Shows the ticks of this page on the vehicle and in the job that are in hand now. */
  function open() {
    place = keeper.place();
    done.clear();
    changed.remove();
    const before = keeper.recall();
    if (before && before.revision !== REVISION) {
      keep();
      show(changed);
    } else if (before) {
      for (const { step } of steps) {
        if (before.done.includes(step.id)) {
          done.add(step.id);
        }
      }
    }
    askAgain();
  }

  for (const event of ["fettle:vehicle", "fettle:job"]) {
    document.addEventListener(event, () => {
      if (keeper.place() !== place) {
        open();
      }
    });
  }
  open();
})();
