/* A copy of the manual that this device keeps: what it says on every page. Where none is kept this
   asks for nothing and says nothing. Where one is, it compares it now and then with the shop's,
   and warns of an old copy, of withdrawn pages and of changed cautions. */
(() => {
  "use strict";

  if (!document.currentScript || !/^https?:$/.test(location.protocol) || !("caches" in window)) {
    return;
  }

  const FORMAT = 1;
  const WITHDRAWN = "withdrawn"; // in the place of a page's cautions
  const OLD_DAYS = 7; // a copy not compared for so long says so
  const DAY_MS = 24 * 60 * 60 * 1000;
  const AGAIN_MS = 10 * 60 * 1000; // compared at most so often
  const ROOT = new URL("../", document.currentScript.src);
  const KEPT = new URL("offline/kept/", ROOT).href;
  const NAME = `fettlebook ${ROOT.pathname}`;

  async function read(name) {
    if (!(await caches.has(NAME))) {
      return null;
    }
    const found = await (await caches.open(NAME)).match(KEPT + name);
    return found ? found.json() : null;
  }

  async function write(name, value) {
    await (await caches.open(NAME)).put(KEPT + name, new Response(JSON.stringify(value)));
  }

  /** Gives a file of the site as the network has it, never as a copy has it. */
  async function fresh(address) {
    const found = await fetch(new URL(address, ROOT), { cache: "no-store" });
    if (!found.ok) {
      throw new Error(`${address}: ${found.status}`);
    }
    return found;
  }

  const manifest = async () => (await fresh("offline/manifest.json")).json();

  /** Gives what a newer manual changes for somebody who reads this copy. */
  function changes(index, newer) {
    const digests = new Map();
    for (const { members } of newer.packs) {
      members.forEach(([address, digest]) => digests.set(address, digest));
    }
    const found = { version: newer.version, withdrawn: [], cautions: [], others: 0 };
    for (const [address, [title, cautions]] of Object.entries(index.pages)) {
      const now = digests.has(address) ? newer.pages[address][1] : WITHDRAWN;
      if (now === WITHDRAWN) {
        if (cautions !== WITHDRAWN) {
          found.withdrawn.push([address, title]);
        }
      } else if (now !== cautions) {
        found.cautions.push([address, title]);
      } else if (digests.get(address) !== index.members[address][3]) {
        found.others += 1;
      }
    }
    found.others += Object.keys(newer.pages).filter((address) => !index.pages[address]).length;
    return found;
  }

  /** Compares the copy with the shop's manual; gives the state of the copy, null without one. */
  async function compare(atOnce) {
    const state = await read("state");
    const age = state && Date.now() - state.compared;
    if (!state || (!atOnce && age >= 0 && age < AGAIN_MS) || !navigator.onLine) {
      return state;
    }
    try {
      const { version } = await (await fresh("offline/version.json")).json();
      if (version === state.version) {
        state.newer = null;
      } else if (!state.newer || state.newer.version !== version) {
        const newer = await manifest();
        state.newer = newer.format === FORMAT
          ? changes(await read("index"), newer)
          : { version, withdrawn: [], cautions: [], others: 0 };
      }
      state.compared = Date.now();
      await write("state", state);
      state.reached = true;
    } catch {
      state.reached = false;
    }
    return state;
  }

  const days = (state) => Math.max(0, Math.floor((Date.now() - state.compared) / DAY_MS));

  /** Gives the sentences that a copy has to say on the page at an address. */
  function sentences(state, address, say) {
    const { newer } = state;
    const found = [];
    const about = (list) => list.some(([changed]) => changed === address);
    if (newer) {
      const { withdrawn, cautions } = newer;
      found.push(about(withdrawn) ? say.thisWithdrawn : about(cautions) ? say.thisCautions : "");
      found.push(say.newer, counted(withdrawn, say.withdrawnOne, say.withdrawn));
      found.push(counted(cautions, say.cautionsOne, say.cautions));
    }
    const age = Date.now() - state.compared;
    if (age >= OLD_DAYS * DAY_MS || age < -DAY_MS) { // a clock that was set back tells nothing
      found.push(say.stale.replace("#", age < 0 ? "?" : days(state)));
    }
    return found.filter(Boolean);
  }

  function counted(list, one, more) {
    return list.length < 2 ? ["", one][list.length] : more.replace("#", list.length);
  }

  function here() {
    const path = decodeURIComponent(location.pathname.slice(ROOT.pathname.length));
    return path === "" || path.endsWith("/") ? `${path}index.html` : path;
  }

  async function tell(atOnce) {
    const bar = document.querySelector(".copy-word");
    const state = await compare(atOnce);
    const said = state ? sentences(state, here(), bar.dataset) : [];
    bar.querySelector(".copy-text").textContent = said.join(" ");
    bar.hidden = said.length === 0;
    return state;
  }

  window.fettleCopy = {
    FORMAT, ROOT, KEPT, NAME, read, write, fresh, manifest, changes, days, tell,
  };
  tell(false).catch(() => {}); // a browser that allows no storage keeps no copy
})();
