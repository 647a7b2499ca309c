/* Fills in the record form by its own controls: opens what is folded, presses the keys that add an
   item, types, and chooses. It knows a record's data and the page's controls, and no schema. */

async ([kind, data]) => {
  const find = (name, path) => document.querySelector(`[data-${name}="${path}"]`);

  function type(control, text) {
    control.focus(); // a long list gets its choices now
    const known = control.tagName !== "SELECT" || [...control.options].some((one) => one.value === text);
    if (!known) throw new Error(`${control.dataset.path || control.dataset.pick} does not offer ${text}`);
    control.value = text;
    control.dispatchEvent(new Event("input", { bubbles: true }));
    control.dispatchEvent(new Event("change", { bubbles: true }));
  }

  const isThere = (path) => ["path", "group"].some((name) => find(name, path));

  async function open(path) {
    if (isThere(path)) return;
    const more = find("more", path.split("/").slice(0, -1).join("/"));
    if (!more) throw new Error(`the form does not ask for ${path}`);
    const opened = new Promise((done) => more.addEventListener("toggle", done, { once: true }));
    more.querySelector("summary").click();
    await opened;
    if (!isThere(path)) throw new Error(`the form does not ask for ${path}`);
  }

  async function fields(value, path) {
    for (const [name, inner] of Object.entries(value)) await field(inner, path ? `${path}/${name}` : name);
  }

  async function list(values, path) {
    if (find("pick", path)) {
      for (const value of values) type(find("pick", path), value);
      return;
    }
    for (const [n, value] of values.entries()) {
      if (!isThere(`${path}/${n}`)) find("add", path).click();
      await field(value, `${path}/${n}`);
    }
  }

  async function field(value, path) {
    await open(path);
    const control = find("path", path);
    if (control) type(control, String(value).trimEnd());
    else if (Array.isArray(value)) await list(value, path);
    else if (typeof value !== "object") await list([value], path); // one where there may be several
    else if (find("add", path)) {
      for (const [row, [key, one]] of Object.entries(value).entries()) {
        find("add", path).click();
        await field(key, `${path}/${row}/0`);
        await field(one, `${path}/${row}/1`);
      }
    } else {
      if (find("path", `${path}/name`)) await field(value.name, `${path}/name`); // its fields follow
      await fields(value, path);
    }
  }

  type(document.getElementById("form-kind"), kind);
  await fields(data, "");
}
