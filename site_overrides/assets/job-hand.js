/* A job handed to another phone: a link whose job lies behind the "#", which no server is sent; the
   same link as a code; or a file. What comes in is looked at as something a stranger wrote. */

"use strict";

window.fettleJobHand = (() => {
  const { HERE, ROOT, isJob, load } = window.fettleJob;
  const { LONGEST, button, line, make, say, titleOf } = window.fettleJobForm;
  const FORMAT = 1;
  const LONGEST_TEXT = 60000; // of a link or a file that is looked at
  const LONGEST_CODE = 1200; // characters a phone's camera still reads off another phone
  const ADDRESS = /^[a-z0-9-]+(\/[a-z0-9-]+)*\.html$/;
  const READING = ["page", "revision", "key", "title", "when", "value", "word", "conditions", "at"];
  const REVISION = /^[0-9a-f]{8}$/;
  const AT = /^\d{4}-\d\d-\d\d \d\d:\d\d$/;
  const VERDICT = /^(in_limits|low|high|open|implausible|cannot_tell)$/;
  const STEP = /^step-\d+(-\d+)*$/;

  /* Gives a job as short as it gets. */
  const told = (job) => JSON.stringify([
    FORMAT, job.id, job.plate, job.mileage, job.said, job.vehicle,
    Object.entries(job.pages).map(([name, { revision, done, title }]) =>
      [name, revision, title || "", done.map((step) => step.slice("step-".length)).join(" ")]),
    job.readings.map((reading) => READING.map((name) => reading[name])),
  ]);

  const short = (text, longest) => typeof text === "string" && text.length <= longest;

  /* Gives a reading of a row, or throws where it is none of ours. */
  function reading(row) {
    const found = Object.fromEntries(READING.map((name, n) => [name, row[n]]));
    const { page, revision, key, title, value, word, conditions, at } = found;
    const fits = ADDRESS.test(page.split(" ")[0]) && REVISION.test(revision) && /^[a-z0-9-]+$/.test(key) &&
      short(title, 200) && short(value, 60) && short(conditions, 400) && AT.test(at) && VERDICT.test(word);
    if (!fits) throw new TypeError("no reading");
    return found;
  }

  /* Gives the job that a text tells of, or null where it is not one of ours, whole and plain. */
  function understood(text) {
    try {
      const [format, own, plate, mileage, said, vehicle, rows, read = []] = JSON.parse(text);
      if (format !== FORMAT || !/^[0-9a-f]{16}$/.test(own)) return null;
      const fields = { plate, mileage, said };
      if (!Object.keys(fields).every((key) => short(fields[key], LONGEST[key]))) return null;
      const pages = {};
      for (const [name, revision, title, steps] of rows) {
        const [address, of = ""] = name.split(" ");
        const done = steps.split(" ").map((step) => `step-${step}`);
        const fits = ADDRESS.test(address) && short(title, 200) && REVISION.test(revision) &&
          done.every((step) => STEP.test(step));
        if (!fits) return null;
        if (!of || titleOf(of)) pages[name] = { revision, done, title };
      }
      const job = { id: own, ...fields, vehicle: titleOf(vehicle) ? vehicle : "", pages,
        readings: read.map(reading) };
      return isJob(job) ? job : null;
    } catch {
      return null;
    }
  }

  async function through(stream, bytes) {
    const passed = new Blob([bytes]).stream().pipeThrough(stream);
    return new Uint8Array(await new Response(passed).arrayBuffer());
  }

  /* Gives a text as letters that an address may hold; "z" says that it is deflated, "t" that not. */
  async function packed(text) {
    const bytes = new TextEncoder().encode(text);
    const deflates = "CompressionStream" in window;
    const body = deflates ? await through(new CompressionStream("deflate-raw"), bytes) : bytes;
    const letters = btoa(Array.from(body, (byte) => String.fromCharCode(byte)).join(""));
    return (deflates ? "z" : "t") +
      letters.replace(/\+/g, "-").replace(/\//g, "_").replace(/=+$/, "");
  }

  async function unpacked(letters) {
    try {
      if (letters.length > LONGEST_TEXT) return null;
      const body = atob(letters.slice(1).replace(/-/g, "+").replace(/_/g, "/"));
      const bytes = Uint8Array.from(body, (letter) => letter.charCodeAt(0));
      const plain = letters[0] === "z"
        ? await through(new DecompressionStream("deflate-raw"), bytes)
        : bytes;
      return understood(new TextDecoder().decode(plain));
    } catch {
      return null;
    }
  }

  /* Only an address that another phone can open is worth handing over. */
  const reachable = () => /^https?:$/.test(location.protocol);

  const linkTo = async (job) => `${new URL("index.html", ROOT).href}#job=${await packed(told(job))}`;

  async function copy(field, word) {
    try {
      await navigator.clipboard.writeText(field.value);
      word.textContent = say("copied");
    } catch {
      field.focus();
      field.select();
      word.textContent = say("copy_self");
    }
  }

  async function byLink(job) {
    if (!reachable()) return [make("p", {}, say("from_folder"))];
    const link = await linkTo(job);
    const field = make("input", { id: "job-link", readonly: "", value: link });
    field.addEventListener("focus", () => field.select());
    const word = make("p", { class: "aside", role: "status" });
    const keys = [button("copy", () => copy(field, word), { class: "job-copy" })];
    if (navigator.share) {
      keys.push(button("share", () => navigator.share({ title: job.plate, url: link }).catch(() => {})));
    }
    return [line("link", field), make("p", { class: "job-keys" }, ...keys), word, await code(link)];
  }

  async function code(link) {
    try {
      if (link.length > LONGEST_CODE) throw new RangeError("a code this dense is not read");
      await load(new URL("lean-qr.js", HERE));
      await load(new URL("code.js", HERE));
      return make("div", { class: "job-code" }, window.fettleCode.drawn(link, say("code")),
        make("p", { class: "aside" }, say("code_lead")));
    } catch {
      return make("p", {}, say("code_none"));
    }
  }

  const nameOf = (job) => job.plate.toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "") || "job";

  function asFile(job) {
    const link = make("a", { download: `job-${nameOf(job)}.json`, class: "job-file" }, say("file"));
    link.href = URL.createObjectURL(new Blob([told(job)], { type: "application/json" }));
    return link;
  }

  /* Gives the part of the panel that hands over the job that `ask` gives when it is opened. */
  function giving(ask) {
    const inside = make("div", { class: "job-ways" });
    const found = make("details", { class: "job-give" }, make("summary", {}, say("give")), inside);
    found.addEventListener("toggle", async () => {
      inside.replaceChildren();
      if (!found.open) return;
      const job = ask();
      const link = await byLink(job);
      inside.replaceChildren(
        make("p", {}, say("give_lead")), ...link, make("p", { class: "job-keys" }, asFile(job)),
      );
    });
    return found;
  }

  /* Gives the part of the panel that takes a job from a file; `arrived` gets it, or null. */
  function taking(arrived) {
    const field = make("input", { id: "job-take", type: "file", accept: ".json,application/json" });
    field.addEventListener("change", async () => {
      const [file] = field.files;
      if (file) arrived(file.size <= LONGEST_TEXT ? understood(await file.text()) : null);
    });
    return make("details", { class: "job-taking" }, make("summary", {}, say("take")),
      make("p", {}, say("take_lead")), line("take_file", field));
  }

  return { giving, taking, unpacked };
})();
