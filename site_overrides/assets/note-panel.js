/* A note on what was wrong: where it was, in the reader's own words, kept as they are typed, and
   the ways out: an e-mail, a file. What lies in storage is looked at as something unknown. */

"use strict";

window.fettleNote = (() => {
  const { ROOT, read, running, storage, write } = window.fettleJob;
  const { day, make, sayer } = window.fettleElement;
  const { download, mail, whole } = window.fettleHandIn;
  const { words, notes_to } = window.fettleNoteWords;
  const say = sayer(words);
  const LONGEST = 2000; // characters that a mail program still takes over from a link, more or less
  const WORDS = 12; // of a command: enough to find the step when its number has changed
  const PATH = /^[a-z0-9-]+(\/[a-z0-9-]+)*\.html(#[a-z0-9-]+)?$/;
  const FACTS = ["page", "address", "revision", "step", "vehicle", "job", "day"];

  /* Gives a text on one line, so that no fact can be taken for another. */
  const flat = (text) => text.replace(/\s+/g, " ").trim();

  const isNote = (found) =>
    [...FACTS, "path", "text"].every((name) => typeof found[name] === "string") && PATH.test(found.path);

  function stepOf(step) {
    if (!step) return "";
    const [number, command] = step.querySelector(".command").children;
    const said = flat(command.textContent).split(" ");
    return `${number.textContent}: ${said.slice(0, WORDS).join(" ")}${said.length > WORDS ? " …" : ""}`;
  }

  /* Gives a note on what stands here, empty; the facts are those of the moment it is begun. */
  function begun(path) {
    const [, anchor] = path.split("#");
    const job = running();
    const reachable = /^https?:$/.test(location.protocol);
    return {
      path,
      page: flat(document.querySelector("h1").textContent),
      address: reachable ? new URL(path, ROOT).href : path,
      revision: document.querySelector("[data-revision]").dataset.revision,
      step: stepOf(anchor ? document.getElementById(anchor) : null),
      vehicle: window.fettleVehicle ? window.fettleVehicle.titleOf(window.fettleVehicle.chosen()) : "",
      job: job ? flat(job.plate) : "",
      day: day(),
      text: "",
    };
  }

  /* The writer's own words come last: whatever they hold, nothing follows that they could pose as. */
  function letter(note) {
    const facts = FACTS.filter((name) => note[name]).map((name) => `${say(`is_${name}`)}: ${flat(note[name])}`);
    return whole(`${facts.join("\n")}\n${say("is_said")}:\n\n${note.text}\n`);
  }

  const fileOf = (note) => {
    const name = note.path.replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");
    return new File([letter(note)], `wrong-${name}.txt`, { type: "text/plain" });
  };

  const subjectOf = (note) => say("subject", { page: [note.page, note.step].filter(Boolean).join(", ") });

  const tell = () => document.dispatchEvent(new CustomEvent("fettle:note"));

  /* Gives the ways out for a note; `current` gives it as it is now, `gone` is called when deleted. */
  function ways(key, current, gone) {
    const word = make("p", { class: "note-word", role: "status" });
    const given = () => { word.textContent = say("given"); };
    const send = make("a", { class: "note-send", href: "mailto:" }, say("send"));
    send.addEventListener("click", () => {
      send.href = mail(notes_to, subjectOf(current()), letter(current()));
      given();
    });
    const save = make("button", { type: "button" }, say("save"));
    save.addEventListener("click", () => {
      download(fileOf(current()));
      given();
    });
    const remove = make("button", { type: "button", class: "note-delete" }, say("delete"));
    remove.addEventListener("click", () => {
      if (current().text && !window.confirm(say("sure"))) return;
      storage.removeItem(key);
      gone();
      tell();
    });
    return { keys: [send, save, remove], word };
  }

  function facts(note) {
    const rows = FACTS.filter((name) => note[name])
      .flatMap((name) => [make("dt", {}, say(`is_${name}`)), make("dd", {}, note[name])]);
    return make("dl", { class: "facts" }, ...rows);
  }

  /* Puts the note of one place into an element; `close` takes it away again. */
  function open(place, key, close) {
    const path = key.slice(key.indexOf(":note:") + ":note:".length);
    const note = read(key, isNote) || begun(path);
    const number = note.step.split(":")[0];
    const field = make("textarea", { id: `note-${path}`, rows: 4, maxlength: LONGEST });
    field.value = note.text;
    const { keys, word } = ways(key, () => note, close);
    field.addEventListener("input", () => {
      note.text = field.value;
      const kept = write(key, note.text.trim() ? note : null);
      word.textContent = kept ? "" : say("full");
      tell();
    });
    const shut = make("button", { type: "button" }, say("close"));
    shut.addEventListener("click", close);
    place.addEventListener("keydown", (event) => event.key === "Escape" && close());
    place.append(
      make("p", { class: "note-head" }, number ? say("head_step", { number }) : say("head")),
      make("p", {}, say("harm")),
      make("label", { for: field.id }, say("ask")), field,
      make("p", { class: "aside" }, say("kept")),
      make("p", { class: "note-keys" }, ...keys, shut), word,
      make("p", { class: "aside" }, say("carries")), facts(note),
    );
    field.focus();
  }

  /* Lists the notes under these keys, each with its way back and its ways out. */
  function list(place, keys) {
    const items = keys.map((key) => [key, read(key, isNote)]).filter(([, note]) => note).map(([key, note]) => {
      const item = make("li", { class: "note" });
      const { keys: found, word } = ways(key, () => note, () => place.focus());
      const href = new URL(note.path, ROOT).href;
      item.append(
        make("p", {}, make("b", {}, make("a", { href }, note.page)), note.step && ` ${note.step}`),
        make("p", { class: "note-said" }, note.text), make("p", { class: "note-keys" }, ...found), word,
      );
      return item;
    });
    place.replaceChildren(items.length ? make("ul", { class: "notes" }, ...items) : make("p", {}, say("list_none")));
  }

  return { list, open };
})();
