/* The page on which a record is made: its kind and name, the form, the draft that survives, and the
   ways to hand it in. Nothing leaves the device unless the writer sends it. */

"use strict";

(() => {
  const form = window.fettleForm;
  const handIn = window.fettleHandIn;
  const box = document.getElementById("record-form");
  if (!form || !box) return;

  const { data, say, make, option } = form;
  const DRAFT = "fettlebook:draft";
  const MADE = "fettlebook:made";
  const MOST_MADE = 50;
  const part = (name) => box.querySelector(`.form-${name}`);
  const [kinds, id, title] = ["kind", "id", "body"].map(part);
  const outcome = part("outcome");
  let draft = { kind: "", id: "", own: false, value: {} };
  let idTyped = false;
  let waiting = 0;

  /* A browser may refuse to keep anything; then a draft lasts as long as the page is open. */
  function kept(key, fallback) {
    try {
      return JSON.parse(localStorage.getItem(key)) || fallback;
    } catch {
      return fallback;
    }
  }

  function keep(key, value) {
    try {
      localStorage.setItem(key, JSON.stringify(value));
    } catch {
      /* nothing to be done */
    }
  }

  let others = kept(MADE, []).filter((one) => one && one.kind && one.id);
  const made = () => others;

  const store = {
    get: (path) => path.reduce((value, name) => (value === undefined || value === null ? undefined : value[name]), draft.value),
    set(path, value) {
      let at = draft.value;
      path.slice(0, -1).forEach((name, n) => {
        if (at[name] === undefined || at[name] === null) at[name] = typeof path[n + 1] === "number" ? [] : {};
        at = at[name];
      });
      if (value === undefined) delete at[path[path.length - 1]];
      else at[path[path.length - 1]] = value;
      if (path.length === 1 && path[0] === "title" && !draft.own) nameAfter(value);
      changed();
    },
  };

  const fields = new form.Fields(store, made);

  function save() {
    clearTimeout(waiting);
    waiting = 0;
    keep(DRAFT, draft);
  }

  /* The draft is kept when the writer pauses, and when the page is left. */
  function changed() {
    outcome.hidden = true;
    waiting = waiting || setTimeout(save, 300);
  }

  /* An id from a title: small letters, digits and single hyphens. */
  function nameAfter(text) {
    const plain = text.normalize("NFKD").replace(/[\u0300-\u036f]/g, "").toLowerCase();
    draft.id = plain.replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "").slice(0, 60).replace(/-+$/, "");
    id.value = draft.id;
  }

  function tellId() {
    const text = draft.id && idTyped ? form.faultOfId(draft.kind, draft.id, made()) : "";
    fields.show(id, text);
  }

  function showForm() {
    const kind = form.kind(draft.kind);
    form.current = draft.kind;
    part("rest").hidden = !kind;
    outcome.hidden = true;
    kinds.value = kind ? draft.kind : "";
    if (!kind) return;
    id.value = draft.id;
    part("about").textContent = kind.description;
    title.replaceChildren(...fields.group(kind, []));
  }

  function begin(kind) {
    draft = { kind, id: "", own: false, value: { status: "draft" } };
    idTyped = false;
    fields.show(id, "");
    changed();
    showForm();
  }

  function clearFaults() {
    for (const fault of box.querySelectorAll("[data-fault]")) fault.hidden = true;
    for (const control of box.querySelectorAll("[aria-invalid]")) control.removeAttribute("aria-invalid");
  }

  /* Opens what is folded on the way to a field, and gives the field or the nearest group around it. */
  function found(path) {
    for (let length = 0; length <= path.length; length += 1) {
      const more = box.querySelector(`[data-more="${form.pathOf(path.slice(0, length))}"]`);
      const next = path[length];
      if (more && !more.open && next !== undefined && !box.querySelector(`[data-path="${form.pathOf(path)}"]`)) {
        more.open = true;
        more.dispatchEvent(new Event("toggle"));
      }
    }
    for (let length = path.length; length > 0; length -= 1) {
      const at = form.pathOf(path.slice(0, length));
      const place = box.querySelector(`[data-path="${at}"]`) || box.querySelector(`[data-group="${at}"]`);
      if (place) return place;
    }
    return title;
  }

  function nameOf(path) {
    return path.map((name) => (typeof name === "number" ? name + 1 : form.label(name))).join(" ");
  }

  function showFaults(faults) {
    const list = part("faults");
    list.replaceChildren(...faults.map(({ place, path, text }) => {
      if (place.id) fields.show(place, text);
      else {
        const own = place.querySelector(`:scope > [data-fault]`);
        if (own) own.textContent = text;
        if (own) own.hidden = false;
      }
      const link = make("a", { href: "#record-form" }, `${nameOf(path)}: ${text}`);
      link.addEventListener("click", (event) => {
        event.preventDefault();
        place.focus();
        place.scrollIntoView({ block: "center" });
      });
      return make("li", {}, link);
    }));
    part("wrong").hidden = faults.length === 0;
    part("wrong-count").textContent = faults.length === 1 ? say("faults_one") : say("faults_more", { count: faults.length });
    if (faults.length) part("wrong").focus();
  }

  function finish() {
    clearFaults();
    const faults = form.faults(draft.kind, draft.value, made()).map((fault) => ({ ...fault, place: found(fault.path) }));
    const wrongId = form.faultOfId(draft.kind, draft.id, made().filter((one) => one.kind !== draft.kind || one.id !== draft.id));
    if (wrongId) faults.unshift({ path: ["id"], text: wrongId, place: id });
    showFaults(faults);
    outcome.hidden = faults.length > 0;
    if (faults.length) return;
    const text = window.fettleYaml.record(form.ofGroup(form.kind(draft.kind), draft.value));
    part("text").value = text;
    part("where").textContent = say("where", { path: `kb_source/${draft.kind}/${draft.id}.yml` });
    const subject = say("mail_subject", { path: `${draft.kind}/${draft.id}.yml` });
    part("mail").href = handIn.mail(data.notes_to, subject, text);
    const { kind, id: name, value } = draft;
    others = [{ kind, id: name, title: value.title }, ...others.filter((one) => one.kind !== kind || one.id !== name)];
    others = others.slice(0, MOST_MADE);
    keep(MADE, others);
    part("done").focus();
  }

  const file = () => new File([part("text").value], `${draft.id}.yml`, { type: "text/plain" });

  async function copy() {
    part("text").select();
    try {
      await navigator.clipboard.writeText(part("text").value);
    } catch {
      document.execCommand("copy"); // from a folder or over plain http there is no other way
    }
    part("told").textContent = say("copied");
  }

  function share() {
    const files = [file()];
    const what = navigator.canShare && navigator.canShare({ files }) ? { files } : { text: part("text").value };
    navigator.share({ title: `${draft.id}.yml`, ...what }).catch(() => {}); // the writer changed their mind
  }

  kinds.append(...Object.keys(data.kinds).map((kind) => option(kind, data.names[kind])));
  kinds.addEventListener("change", () => {
    const started = Object.keys(draft.value).some((name) => name !== "status");
    if (started && !window.confirm(say("start_over"))) kinds.value = draft.kind;
    else begin(kinds.value);
  });
  id.addEventListener("input", () => {
    draft.id = id.value.trim();
    draft.own = draft.id !== "";
    changed();
    if (id.hasAttribute("aria-invalid")) tellId();
  });
  id.addEventListener("change", () => {
    idTyped = true;
    tellId();
  });
  part("finish").addEventListener("click", finish);
  part("clear").addEventListener("click", () => window.confirm(say("start_over")) && begin(draft.kind));
  part("download").addEventListener("click", () => handIn.download(file()));
  part("copy").addEventListener("click", copy);
  part("share").addEventListener("click", share);
  part("share").hidden = !navigator.share;

  window.addEventListener("pagehide", () => waiting && save());
  document.addEventListener("visibilitychange", () => waiting && save());

  const before = kept(DRAFT, draft);
  if (before.kind in data.kinds && before.value) draft = before;
  box.hidden = false;
  showForm();
})();
