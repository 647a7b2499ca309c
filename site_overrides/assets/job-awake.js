/* The screen is kept awake while a job is in hand and the reader wants it. A browser lets go of it
   whenever the page is out of sight, and may refuse: both are said, never hidden. */

"use strict";

(() => {
  const { AWAKE, storage } = window.fettleJob;
  let lock = null; // what the browser gave us
  let state = "off"; // what there is to say

  function told(word) {
    state = word;
    document.dispatchEvent(new CustomEvent("fettle:awake"));
  }

  async function hold() {
    if (!("wakeLock" in navigator)) return told("none");
    try {
      const given = await navigator.wakeLock.request("screen");
      if (!wanted()) {
        given.release();
        return told("off");
      }
      lock = given;
      lock.addEventListener("release", () => {
        if (lock === given) {
          lock = null;
          told("off");
        }
      });
      return told("on");
    } catch {
      return told("refused");
    }
  }

  const wanted = () => storage.getItem(AWAKE) !== null;

  function want(yes) {
    if (yes) storage.setItem(AWAKE, "1");
    else storage.removeItem(AWAKE);
    follow();
  }

  function follow() {
    if (wanted() && document.visibilityState === "visible") {
      if (!lock) hold();
    } else if (lock) {
      lock.release();
    } else {
      told("off");
    }
  }

  window.fettleAwake = { state: () => state, want, wanted };
  document.addEventListener("visibilitychange", follow);
  document.addEventListener("fettle:job", follow);
  follow();
})();
