/* Pieces of the panel of jobs: its words, its elements, and the form that says what a job is. */

"use strict";

window.fettleJobForm = (() => {
  const { make, sayer } = window.fettleElement;
  const say = sayer(window.fettleJobWords);
  const LONGEST = { plate: 40, mileage: 40, said: 400 };

  const button = (key, act, attributes = {}) => {
    const element = make("button", { type: "button", ...attributes }, say(key));
    element.addEventListener("click", act);
    return element;
  };

  const { titleOf } = window.fettleVehicle;

  const line = (key, field) =>
    make("p", { class: "job-line" }, make("label", { for: field.id }, say(key)), field);

  function field(tag, name, value, attributes = {}) {
    const found = make(tag, {
      id: `job-${name}`, autocomplete: "off", maxlength: LONGEST[name], ...attributes,
    });
    found.value = value;
    return found;
  }

  function choice(chosen) {
    const list = make("select", { id: "job-vehicle" }, make("option", { value: "" }, say("any")));
    for (const { id, title } of window.fettleVehicles.vehicles) {
      list.append(make("option", { value: id }, title));
    }
    list.value = titleOf(chosen) ? chosen : "";
    return list;
  }

  /* Gives the form of a new job, or of one that is to be changed; `done` gets what was written. */
  function form(job, done, back) {
    const plate = field("input", "plate", job.plate, { required: "", autocapitalize: "characters" });
    const mileage = field("input", "mileage", job.mileage);
    const said = field("textarea", "said", job.said, { rows: 2 });
    const vehicle = choice(job.vehicle);
    const go = make("button", { type: "submit", class: "job-go" }, say(job.id ? "save" : "begin"));
    const found = make(
      "form", { class: "job-form", novalidate: "" },
      line("plate", plate), line("mileage", mileage), line("said", said), line("vehicle", vehicle),
      make("p", { class: "job-keys" }, go, back ? button("back", back) : null),
      make("p", { class: "job-fault", role: "alert" }),
    );
    found.addEventListener("submit", (event) => {
      event.preventDefault();
      const named = plate.value.trim();
      if (named) {
        done({
          ...job, plate: named, mileage: mileage.value.trim(), said: said.value.trim(),
          vehicle: vehicle.value,
        });
      } else {
        fault(found, "no_plate");
        plate.focus();
      }
    });
    return found;
  }

  function fault(owner, key) {
    owner.querySelector(".job-fault").textContent = say(key);
  }

  /* Gives what a job is, as a reader tells one from another. */
  function facts(job) {
    const list = make("dl", { class: "facts" });
    const rows = { plate: job.plate, mileage: job.mileage, said: job.said, vehicle: titleOf(job.vehicle) };
    for (const [key, text] of Object.entries(rows)) {
      if (text) list.append(make("dt", {}, say(key)), make("dd", {}, text));
    }
    return list;
  }

  const id = () =>
    Array.from(window.crypto.getRandomValues(new Uint8Array(8)), (byte) => byte.toString(16).padStart(2, "0"))
      .join("");

  const blank = () => ({
    id: "", plate: "", mileage: "", said: "", vehicle: window.fettleVehicle.chosen(), pages: {},
    readings: [],
  });

  return { LONGEST, blank, button, facts, fault, form, id, line, make, say, titleOf };
})();
