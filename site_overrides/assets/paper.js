/* What paper needs of a page: where it came from, and the job sheet with a code that leads back. Who
   comes back by that code is told whether the paper still is of this revision. */

"use strict";

(() => {
  const foot = document.querySelector("[data-revision]");
  const from = document.querySelector(".printed-from");
  const key = document.querySelector(".job-sheet-open");
  const place = document.querySelector(".sheet-code");
  const HERE = new URL(".", document.currentScript.src);
  const PARTS = ["lean-qr.js", "code.js"];
  const address = location.origin + location.pathname;
  const reachable = /^https?:$/.test(location.protocol);
  if (from && reachable) from.textContent = address;
  if (!foot || !key || !place || !window.fettleJob) return;

  /* Draws the code, once; from a folder there is no address that a phone could open. */
  async function code() {
    if (!reachable || place.firstChild) return;
    for (const part of PARTS) await window.fettleJob.load(new URL(part, HERE));
    place.append(window.fettleCode.drawn(`${address}#revision=${foot.dataset.revision}`, key.dataset.code));
  }

  async function print() {
    // Without the code the sheet still names its address and its revision.
    await code().catch(() => {});
    document.documentElement.classList.add("job-sheet");
    window.print();
  }

  function compare() {
    const [, revision] = /^#revision=([0-9a-f]{8})$/.exec(location.hash) || [];
    if (!revision) return;
    const word = document.querySelector(".job-paper");
    const same = revision === foot.dataset.revision;
    word.textContent = (same ? key.dataset.current : key.dataset.older).replace("#", revision);
    word.hidden = false;
  }

  key.hidden = false;
  key.addEventListener("click", print);
  window.addEventListener("afterprint", () => document.documentElement.classList.remove("job-sheet"));
  window.addEventListener("hashchange", compare);
  compare();
})();
