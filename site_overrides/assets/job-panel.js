/* The panel of jobs: begin one, see the one in hand, put it aside, take another, clear it. */

"use strict";

window.fettleJobPanel = (() => {
  const { bar, drop, get, all, load, panel, run, running, save, HERE } = window.fettleJob;
  const { blank, button, facts, fault, form, id, make, say } = window.fettleJobForm;
  const hand = window.fettleJobHand;

  /* Puts parts into the panel, and the reader at its head. */
  function put(heading, ...parts) {
    const head = make("p", { class: "job-head", tabindex: "-1" }, heading);
    panel.replaceChildren(head, ...parts.filter(Boolean));
    head.focus({ preventScroll: true });
  }

  function begin() {
    const done = (job) => {
      const made = { ...job, id: id() };
      if (save(made)) {
        run(made.id);
        show();
      } else {
        fault(panel, "full");
      }
    };
    put(
      say("begin_head"), make("p", { class: "lead" }, say("begin_lead")),
      form(blank(), done, all().length ? show : null), others(), hand.taking(arrived),
    );
    panel.querySelector("input").focus();
  }

  function change(job) {
    const done = (changed) => {
      // The form knows the job as it was opened; ticks and readings may have come since.
      const { pages: ticks, readings: read } = get(job.id);
      if (save({ ...changed, pages: ticks, readings: read })) {
        run(job.id);
        show();
      } else {
        fault(panel, "full");
      }
    };
    put(say("change_head"), form(job, done, show));
  }

  /* Where the job was worked on: one link a page, with how many of its steps are ticked. */
  function pages(job) {
    const list = make("ul", { class: "links job-pages" });
    for (const [name, { done, title }] of Object.entries(job.pages)) {
      const href = new URL(name.split(" ")[0], window.fettleJob.ROOT).href;
      const count = say(done.length === 1 ? "ticked_one" : "ticked", { count: done.length });
      list.append(make("li", {}, make("a", { href }, title || name), " ", make("span", { class: "aside" }, count)));
    }
    return list.children.length ? list : null;
  }

  /* What was read for the job, each beside the place where it is judged. */
  function readings(job) {
    const list = make("ul", { class: "links job-readings" });
    for (const each of job.readings) {
      const href = `${new URL(each.page.split(" ")[0], window.fettleJob.ROOT).href}#${each.key}`;
      const read = `${each.value}: ${say(each.word)}`;
      list.append(make(
        "li", {}, make("a", { href }, each.title), " ", make("b", {}, read), " ",
        make("span", { class: "aside" }, [each.conditions, say(`read_${each.when}`, each)].filter(Boolean).join(". ")),
      ));
    }
    if (!list.children.length) return null;
    return make("div", {}, make("p", {}, make("b", {}, say("readings"))), list);
  }

  function others() {
    const here = running();
    const list = make("ul", { class: "job-others" });
    for (const job of all().filter((each) => !here || each.id !== here.id)) {
      const take = make("button", { type: "button" }, make("b", {}, job.plate), " ", job.said);
      take.addEventListener("click", () => {
        run(job.id);
        show();
      });
      list.append(make("li", {}, take));
    }
    return list.children.length ? make("div", {}, make("p", {}, make("b", {}, say("others"))), list) : null;
  }

  function awake() {
    const key = button("awake", () => window.fettleAwake.want(!window.fettleAwake.wanted()), {
      class: "job-awake", "aria-pressed": "false",
    });
    const word = make("p", { class: "aside", role: "status" });
    const tell = () => {
      if (!window.fettleAwake) return;
      const state = window.fettleAwake.state();
      key.setAttribute("aria-pressed", String(window.fettleAwake.wanted()));
      key.hidden = !("wakeLock" in navigator);
      word.textContent = key.hidden ? say("awake_none") : say(`awake_${state}`);
    };
    load(new URL("job-awake.js", HERE)).then(tell, () => {});
    bar.awakened = tell;
    return make("div", { class: "job-screen" }, key, word);
  }

  function clear(job) {
    const yes = button("clear_yes", () => {
      drop(job.id);
      window.fettleJob.open(false);
      window.fettleJob.opener.focus();
    }, { class: "job-go" });
    put(
      say("clear_head", { plate: job.plate }), make("p", {}, say("clear_lead")), facts(job),
      make("p", { class: "job-keys" }, button("clear_no", show), yes),
    );
  }

  function show() {
    const job = running();
    if (!job) return begin();
    const keys = make(
      "p", { class: "job-keys" },
      button("change", () => change(job)), button("aside", () => {
        run("");
        begin();
      }),
      button("clear", () => clear(running()), { class: "job-clear" }),
    );
    return put(
      say("head", { plate: job.plate }), facts(job), pages(job), readings(job), awake(), keys,
      hand.giving(() => running()), others(), begins(), hand.taking(arrived),
    );
  }

  const begins = () => make("p", { class: "job-keys" }, button("another", () => begin()));

  /* A job that came by a link or a file waits for a word before anything here changes. */
  function arrived(found) {
    if (!found) {
      put(say("arrived_head"), make("p", { class: "job-fault", role: "alert" }, say("arrived_bad")),
        make("p", { class: "job-keys" }, button("back", show)));
      return;
    }
    const count = Object.values(found.pages).reduce((sum, { done }) => sum + done.length, 0);
    const here = get(found.id);
    const yes = button("arrived_yes", () => {
      if (save(found)) {
        run(found.id);
        show();
      } else {
        fault(panel, "full");
      }
    }, { class: "job-go" });
    put(
      say("arrived_head"), facts(found),
      make("p", {}, say(count === 1 ? "ticked_one" : "ticked", { count })), readings(found),
      make("p", {}, make("b", {}, say(here ? "arrived_again" : "arrived_lead"))),
      make("p", { class: "job-keys" }, yes, button("arrived_no", () => {
        window.fettleJob.open(false);
        window.fettleJob.opener.focus();
      })),
      make("p", { class: "job-fault", role: "alert" }),
    );
  }

  async function open() {
    if (location.hash.startsWith("#job=")) {
      const text = location.hash.slice("#job=".length);
      // Gone from the address at once: a bookmark or a reload must not hand it over again.
      history.replaceState(null, "", location.pathname + location.search);
      arrived(await hand.unpacked(text));
    } else {
      show();
    }
  }

  document.addEventListener("fettle:awake", () => bar.awakened && bar.awakened());
  return { open };
})();
