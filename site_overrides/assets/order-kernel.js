/* The odds after what was found, and the order of the tests that are left.

   Everything that needs a model was worked out by the build. What is here multiplies and ranks: it
   is Bayes' rule, and doubt settled a minute. A test holds it to the generator's own answers. */

"use strict";

window.fettleOrder = (() => {
  const NOTHING = 1e-12; // the generator's own: below it a share is rounding

  const sum = (values) => values.reduce((total, each) => total + each, 0);

  /* Shares after what is known and found; a piece that cannot be is named and left out. */
  function weigh(tables, known, path) {
    let shares = tables.causes.map((cause) => cause.share);
    const contradictions = [];
    const pieces = [
      ...known.map((name) => [name, tables.known[name]]),
      ...path.map(([id, n]) => [id, tables.tests[id].outcomes[n].likelihoods]),
    ];
    for (const [name, likelihoods] of pieces) {
      const joint = shares.map((share, i) => share * likelihoods[i]);
      const expected = sum(joint);
      if (expected <= NOTHING) contradictions.push(name);
      else shares = joint.map((each) => each / expected);
    }
    return { shares, contradictions };
  }

  const shows = (test, i) => i in test.proves || i in test.points;

  /* The share of each cause that is left when a test showed nothing. */
  function clear(test, mass) {
    const pointsOnly = Object.keys(test.points).length && !Object.keys(test.proves).length;
    return mass.map((each, i) => {
      if (i in test.points) return each * (1 - test.points[i]);
      if (i in test.proves) return each * (1 - test.proves[i]);
      return pointsOnly ? each * (1 - test.falsely) : each;
    });
  }

  /* Minutes of a test to expect, false alarms included. */
  function minutes(test, mass) {
    if (!Object.keys(test.proves).length) return test.minutes;
    const others = sum(mass.filter((_, i) => !shows(test, i)));
    return test.minutes + (others * test.falsely * test.wrong) / sum(mass);
  }

  /* The tests left, each behind all it waits for. */
  function topological(tests, left) {
    const order = [];
    let waiting = [...left];
    while (waiting.length) {
      const free = waiting.filter((id) =>
        [...tests[id].after, ...tests[id].first].every(
          (each) => !left.includes(each) || order.includes(each),
        ),
      );
      if (!free.length) return [...order, ...waiting];
      order.push(...free);
      waiting = waiting.filter((id) => !free.includes(id));
    }
    return order;
  }

  /* What can still show something, and what that waits for. */
  function useful(tests, mass, left, behind) {
    const wanted = new Set(
      left.filter((id) => mass.some((each, i) => each > NOTHING && shows(tests[id], i))),
    );
    for (const id of [...behind].reverse()) {
      if (wanted.has(id)) {
        for (const each of tests[id].after) if (left.includes(each)) wanted.add(each);
      }
    }
    return wanted;
  }

  /* The test to make next: most doubt settled a minute, with all that has to come before it. */
  function next(tests, mass, behind) {
    const left = [...behind].sort();
    const wanted = useful(tests, mass, left, behind);
    let best = null;
    for (const id of left) {
      if (!wanted.has(id)) continue;
      if (!mass.some((each, i) => each > NOTHING && shows(tests[id], i))) continue;
      const block = new Set([id]);
      for (const each of [...behind].reverse()) {
        if (!block.has(each)) continue;
        for (const earlier of tests[each].after) if (left.includes(earlier)) block.add(earlier);
        for (const earlier of tests[each].first) if (wanted.has(earlier)) block.add(earlier);
      }
      let here = mass;
      let cost = 0;
      let settled = 0;
      const chain = behind.filter((each) => block.has(each));
      for (const each of chain) {
        if (sum(here) > NOTHING) cost += minutes(tests[each], here);
        const after = clear(tests[each], here);
        settled += sum(here) - sum(after);
        here = after;
      }
      const ratio = settled / cost;
      if (!best || ratio > best.ratio || (ratio === best.ratio && cost < best.cost)) {
        best = { ratio, cost, id: chain[0] };
      }
    }
    return best ? best.id : null;
  }

  function ranked(tables, shares, made) {
    const left = Object.keys(tables.tests).filter((id) => !made.includes(id)).sort();
    let behind = topological(tables.tests, left);
    let mass = shares;
    const order = [];
    while (sum(mass) > NOTHING) {
      const id = next(tables.tests, mass, behind);
      if (id === null) break;
      order.push(id);
      mass = clear(tables.tests[id], mass);
      behind = behind.filter((each) => each !== id);
    }
    return order;
  }

  const begins = (whole, part) => part.every((each, n) => whole[n] === each);

  /* The build's own order, as long as the path keeps to it. */
  function printed(tables, known, path) {
    if (known.length) return null;
    const made = path.map(([id]) => id);
    const said = path.map(([id, n]) => tables.tests[id].outcomes[n].says);
    const pointed = said.indexOf("points");
    if (said.some((each, n) => each !== "clear" && n !== pointed)) return null;
    const upTo = pointed < 0 ? made.length : pointed + 1;
    if (!begins(tables.order, made.slice(0, upTo))) return null;
    if (pointed < 0) return tables.order.slice(made.length);
    const following = tables.after_pointing[made[pointed]];
    const since = made.slice(upTo);
    return following && begins(following, since) ? following.slice(since.length) : null;
  }

  /* What must be put back before a test, as words of the state and the values asked for. */
  function restore(tables, path, id) {
    const carried = { ...tables.state };
    for (const [made] of path) {
      Object.assign(carried, tables.tests[made].entry, tables.tests[made].leaves);
    }
    return Object.entries(tables.tests[id].entry).filter(
      ([word, value]) => word in carried && carried[word] !== value,
    );
  }

  /* Everything that follows from what is known and found. */
  function follow(tables, known, path) {
    const { shares, contradictions } = weigh(tables, known, path);
    const made = path.map(([id]) => id);
    const ended = path.map(([id, n]) => tables.tests[id].outcomes[n].ends).filter(Boolean).pop();
    const order = ended ? [] : printed(tables, known, path) || ranked(tables, shares, made);
    const ends = ended || (order.length ? null : { how: "none_left", causes: [] });
    return { shares, contradictions, order, ends };
  }

  return { follow, ranked, restore, weigh };
})();
