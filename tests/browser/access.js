/* Runs axe on the page as it stands; gives the violations, and what axe could not decide and nobody
   has looked at yet. */
async ([rules, lookedAt]) => {
  const seen = new Set();
  const listed = (id, node) => lookedAt.some(({ rule, element: wanted }, number) => {
    const element = document.querySelector(node.target[node.target.length - 1]);
    const known = rule === id && Boolean(element && element.matches(wanted));
    if (known) seen.add(number);
    return known;
  });
  const why = ({ any, all, none }) => [...any, ...all, ...none].map((check) => check.message);
  const told = (word, { id, nodes }) => nodes.map((node) =>
    `${word} ${id}: ${node.target.join(" ")}: ${why(node).join("; ")}`);
  const { violations, incomplete, passes } = await window.axe.run(document, rules);
  // Where axe cannot see the ground it doubts both contrasts; one doubt is enough.
  const plain = incomplete.filter(({ id }) => id !== "color-contrast-enhanced");
  const doubts = plain.map((rule) => (
    { ...rule, nodes: rule.nodes.filter((node) => !listed(rule.id, node)) }
  ));
  return {
    checked: passes.length,
    faults: [
      ...violations.flatMap((rule) => told("violates", rule)),
      ...doubts.flatMap((rule) => told("undecided", rule)),
    ],
    seen: [...seen],
  };
}
