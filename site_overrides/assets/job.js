/* The job in hand: plate or number, mileage, the complaint in the owner's words, the vehicle, and
   the ticks of every page it was worked on, and the readings. All of it lies on this device alone.
   This part keeps it and shows it in one line; the panel behind the line is fetched when it is
   asked for. */

"use strict";

(() => {
  const JOB = "fettlebook:job:"; // and the job's id
  const RUNNING = "fettlebook:job"; // the id of the one in hand
  const FREE = "fettlebook:steps:"; // ticks of no job, by the path of their page
  const AWAKE = "fettlebook:awake";
  const bar = document.querySelector(".job");
  const storage = openStorage();
  if (!bar || !storage || !document.currentScript) return;

  const HERE = new URL(".", document.currentScript.src);
  const ROOT = new URL("../", HERE);
  const PANEL = [
    new URL("job-words.js", ROOT), new URL("job-form.js", HERE), new URL("job-hand.js", HERE),
    new URL("job-panel.js", HERE),
  ];
  const opener = bar.querySelector(".job-open");
  const panel = bar.querySelector(".job-panel");
  const asked = new Map(); // address of a script to the promise of it

  /* Gives the browser's storage, or null where the reader or the browser does not allow it. */
  function openStorage() {
    try {
      const found = window.localStorage;
      found.setItem("fettlebook:probe", "1");
      found.removeItem("fettlebook:probe");
      return found;
    } catch {
      return null;
    }
  }

  /* Gives what lies under a key, or null; what is broken or of another shape counts as nothing. */
  function read(key, fits, ready = (found) => found) {
    try {
      const kept = JSON.parse(storage.getItem(key));
      const found = kept && ready(kept);
      return found && fits(found) ? found : null;
    } catch {
      return null;
    }
  }

  /* Says whether it could be kept; a device may be full. */
  function write(key, value) {
    try {
      if (value) storage.setItem(key, JSON.stringify(value));
      else storage.removeItem(key);
      return true;
    } catch {
      return false;
    }
  }

  const isText = (value) => typeof value === "string";

  const isTicks = (found) => isText(found.revision) && Array.isArray(found.done) && found.done.every(isText);

  const isReading = (found) => found && ["before", "after"].includes(found.when) &&
    ["page", "revision", "key", "title", "value", "word", "conditions", "at"].every((name) => isText(found[name]));

  const isJob = (found) =>
    ["id", "plate", "mileage", "said", "vehicle"].every((name) => isText(found[name])) &&
    found.plate !== "" && found.pages && Object.values(found.pages).every((each) => each && isTicks(each)) &&
    Array.isArray(found.readings) && found.readings.every(isReading);

  /* A job of before readings went with it has none. */
  const whole = (found) => ({ readings: [], ...found });

  const get = (id) => read(JOB + id, isJob, whole);

  const running = () => get(storage.getItem(RUNNING) || "");

  function all() {
    const keys = Object.keys(storage).filter((key) => key.startsWith(JOB));
    return keys.map((key) => read(key, isJob, whole)).filter(Boolean)
      .sort((a, b) => a.plate.localeCompare(b.plate));
  }

  const vehicle = () => (window.fettleVehicle ? window.fettleVehicle.chosen() : "");

  /* Where a page lies in the manual, the same on every device and under every path. */
  function address() {
    const path = decodeURIComponent(location.pathname.slice(ROOT.pathname.length));
    return path === "" || path.endsWith("/") ? `${path}index.html` : path;
  }

  const name = () => [address(), vehicle()].filter(Boolean).join(" ");

  const freeKey = () => [FREE + location.pathname, vehicle()].filter(Boolean).join(" ");

  /* Names what ticks belong to: one page, on one vehicle, in one job or in none. */
  const place = () => [storage.getItem(RUNNING) || "", name()].join(" ");

  /* Gives the ticks of this page, or null where there are none. */
  function recall() {
    const job = running();
    const found = job ? job.pages[name()] : read(freeKey(), isTicks);
    return found && found.done.length ? found : null;
  }

  function keep(ticks) {
    const job = running();
    if (!job) return write(freeKey(), ticks);
    if (ticks) job.pages[name()] = { ...ticks, title: document.querySelector("h1").textContent };
    else delete job.pages[name()];
    return write(JOB + job.id, job);
  }

  /* Takes a job in hand, on its vehicle; an empty id puts the one in hand aside. */
  function run(id) {
    const job = get(id);
    if (job) {
      storage.setItem(RUNNING, id);
    } else {
      storage.removeItem(RUNNING);
      storage.removeItem(AWAKE);
    }
    if (job && job.vehicle && window.fettleVehicle) window.fettleVehicle.choose(job.vehicle);
    changed();
  }

  function save(job) {
    const kept = write(JOB + job.id, job);
    if (kept) changed();
    return kept;
  }

  /* Clears a job from this device, with all that was ticked in it. */
  function drop(id) {
    storage.removeItem(JOB + id);
    if (storage.getItem(RUNNING) === id) run("");
    else changed();
  }

  function changed() {
    show();
    document.dispatchEvent(new CustomEvent("fettle:job"));
  }

  function load(url) {
    if (!asked.has(url.href)) {
      asked.set(url.href, new Promise((resolve, reject) => {
        const script = document.createElement("script");
        script.src = url.href;
        script.onload = resolve;
        script.onerror = () => {
          asked.delete(url.href); // the next try may find the network again
          script.remove();
          reject(new Error(url.href));
        };
        document.head.append(script);
      }));
    }
    return asked.get(url.href);
  }

  /* Loads scripts, each once; classic ones in their order, so that a folder on a stick works. */
  const inTurn = (urls) => urls.reduce((before, url) => before.then(() => load(url)), Promise.resolve());

  const ready = () => inTurn(PANEL);

  async function open(yes) {
    opener.setAttribute("aria-expanded", String(yes));
    panel.hidden = !yes;
    if (!yes) return;
    try {
      await ready();
      window.fettleJobPanel.open();
    } catch {
      panel.textContent = bar.dataset.missing;
    }
  }

  /* The one line: what is in hand, or the way to begin. */
  function show() {
    const job = running();
    opener.querySelector(".job-kind").textContent = job ? bar.dataset.job : "";
    opener.querySelector("b").textContent = job ? job.plate : bar.dataset.start;
    opener.querySelector(".job-said").textContent =
      job ? [job.mileage, job.said && `“${job.said}”`].filter(Boolean).join(" · ") : "";
    opener.querySelector(".reader-change").textContent = job ? bar.dataset.open : "";
    bar.classList.toggle("job-runs", Boolean(job));
    bar.hidden = !(job || all().length || "place" in bar.dataset);
    const other = bar.querySelector(".job-other");
    other.hidden = !(job && job.vehicle && vehicle() && job.vehicle !== vehicle());
    for (const blank of document.querySelectorAll("[data-of-job]")) {
      blank.textContent = job ? filled(job, blank.dataset.ofJob) : "";
    }
  }

  function filled(job, blank) {
    if (blank !== "vehicle") return job[blank];
    const found = window.fettleVehicles.vehicles.find(({ id }) => id === job.vehicle);
    return found ? found.title : "";
  }

  window.fettleJob = {
    AWAKE, HERE, ROOT, address, all, bar, drop, get, inTurn, isJob, keep, load, name, open, opener,
    panel, place, read, ready, recall, run, running, save, storage, write,
  };

  opener.addEventListener("click", () => open(panel.hidden));
  bar.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && !panel.hidden) {
      open(false);
      opener.focus();
    }
  });
  document.addEventListener("fettle:vehicle", show);
  window.addEventListener("storage", ({ key }) => key && key.startsWith(RUNNING) && changed());
  window.addEventListener("pageshow", ({ persisted }) => persisted && changed());

  /* A job that is handed over comes behind the address, where no server sees it. */
  function arrives() {
    if (location.hash.startsWith("#job=")) {
      open(true).then(() => panel.scrollIntoView({ block: "nearest" }));
    }
  }

  window.addEventListener("hashchange", arrives);
  show();
  arrives();
  if (running() && storage.getItem(AWAKE)) load(new URL("job-awake.js", HERE)).catch(() => {});
})();
