/* The page on which a reader takes the manual along: what it costs, how far it is, what is new. */
(() => {
  "use strict";

  const box = document.getElementById("device");
  if (!box) {
    return;
  }

  const copy = window.fettleCopy;
  const SAY = box.dataset;
  const part = (name) => box.querySelector(`.${name}`);
  const [go, update, remove] = ["take-go", "take-update", "take-forget"].map(part);
  const bar = part("take-bar");
  let wanted = null; // what a tap on one of the keys will fetch

  const inMB = (bytes) => (bytes / 1e6).toFixed(bytes < 1e6 ? 2 : 1);

  function say(words) {
    part("take-say").textContent = words || "";
  }

  function size(words) {
    part("take-size").textContent = words || "";
    part("take-size").hidden = !words;
  }

  function show(key) {
    [go, update].forEach((button) => {
      button.hidden = button !== key;
    });
  }

  /** Gives why this browser keeps no copy here, "" where it does. */
  function refusal() {
    if (location.protocol === "file:") {
      document.getElementById("folder").hidden = true;
      return SAY.fromFolder;
    }
    if (!window.isSecureContext) {
      return SAY.insecure;
    }
    const able = copy && "serviceWorker" in navigator && "CompressionStream" in window
      && "locks" in navigator;
    return able ? "" : SAY.oldBrowser;
  }

  function list(name, entries) {
    part(name).hidden = entries.length === 0;
    part(name).querySelector("ul").replaceChildren(...entries.map(([address, title]) => {
      const item = document.createElement("li");
      const link = document.createElement("a");
      link.href = new URL(address, copy.ROOT).href;
      link.textContent = title || address;
      item.append(link);
      return item;
    }));
  }

  function showChanges({ withdrawn, cautions, others }) {
    list("withdrawn", withdrawn);
    list("cautioned", cautions);
    part("other-pages").textContent = SAY.others.replace("#", others);
    part("changes").hidden = false;
  }

  async function look() {
    const state = await copy.tell(true);
    const index = state && (await copy.read("index"));
    remove.hidden = !state;
    show(null);
    size("");
    if (state) {
      const days = copy.days(state);
      say((days ? SAY.keptDays.replace("#", days) : SAY.kept)
        + (state.reached ? "" : ` ${SAY.unseen}`));
    }
    if (state && (!state.reached || !state.newer)) {
      return;
    }
    size(part("take-size").dataset.looking);
    const manifest = await copy.manifest().catch(() => null);
    if (!manifest || manifest.format !== copy.FORMAT) {
      say(manifest ? SAY.format : SAY.noneHere);
      size("");
      return;
    }
    wanted = await copy.plan(manifest, index);
    if (state) {
      showChanges(copy.changes(index, manifest));
    }
    size((index ? SAY.sizeUpdate : SAY.size).replace("#", inMB(wanted.bytes)));
    show(state ? update : go);
  }

  function progress() {
    let done = 0;
    const meter = bar.querySelector("progress");
    return (bytes) => {
      done += bytes;
      meter.value = wanted.bytes ? Math.min(1, done / wanted.bytes) : 1;
      part("take-done").textContent = SAY.packing.replace("@", inMB(done))
        .replace("#", inMB(wanted.bytes));
    };
  }

  async function take() {
    show(null);
    say("");
    remove.hidden = true;
    bar.hidden = false;
    const told = progress();
    told(0);
    let fault = "";
    try {
      await navigator.locks.request(copy.NAME, { ifAvailable: true }, async (lock) => {
        if (!lock) {
          fault = SAY.busy;
          return;
        }
        await copy.take(wanted, told);
      });
      if (!fault && navigator.storage && navigator.storage.persist) {
        navigator.storage.persist(); // asked for, not counted on
      }
    } catch (found) {
      fault = found.name === "QuotaExceededError" ? SAY.full : SAY.lost;
    }
    bar.hidden = true;
    await look();
    if (fault) {
      say(fault);
    }
  }

  async function forget() {
    await copy.forget();
    part("changes").hidden = true;
    say("");
    await look();
  }

  const refused = refusal();
  if (refused) {
    say(refused);
    return;
  }
  go.addEventListener("click", take);
  update.addEventListener("click", take);
  remove.addEventListener("click", forget);
  look().catch(() => say(SAY.oldBrowser)); // a browser that allows no storage keeps no copy
})();
