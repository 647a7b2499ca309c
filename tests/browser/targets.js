/* Gives what a thumb goes for in a part of the page as it stands and may miss: a target less than 48 px high
   that another one crowds. The spacing is that of WCAG 2.2, 2.5.8, with 48 px for its 24. */
(part) => {
  const SIZE = 48;
  const SLACK = 0.5; // of a pixel, for a line's height that is no whole number
  const KINDS = "a[href], button, summary, input, select, textarea, [role=button], [tabindex='0']";

  const seen = (element) => {
    const { width, height } = element.getBoundingClientRect();
    const clipped = getComputedStyle(element).clipPath !== "none"; // the link past the bar, until it has the focus
    return width > 1 && height > 1 && !clipped && element.checkVisibility({ visibilityProperty: true });
  };

  /** Gives what takes the tap: a box to tick is tapped on its label as well. */
  const tapped = (element) => (element.matches("[type=checkbox], [type=radio]") && element.closest("label")) || element;

  /** Says whether a link stands in a line of running text, whose height it cannot change. */
  function inText(element) {
    if (element.tagName !== "A" || getComputedStyle(element).display !== "inline") return false;
    let around = element.parentElement;
    while (getComputedStyle(around).display === "inline") around = around.parentElement;
    const words = (node) => node.textContent.replace(/[\s·,;:.]+/g, "");
    const links = [...around.querySelectorAll("a")].map(words).join("");
    return words(around).length > links.length;
  }

  const targets = [...document.querySelector(part).querySelectorAll(KINDS)].filter(seen)
    .filter((element) => element.matches(KINDS) && !element.matches("div, figure, svg, p, section"))
    .map((element) => ({ element, free: !inText(element), box: tapped(element).getBoundingClientRect() }));
  const middle = ({ left, right, top, bottom }) => [(left + right) / 2, (top + bottom) / 2];
  const small = ({ box }) => box.height < SIZE - SLACK;

  function crowds(one, other) {
    const [x, y] = middle(one.box);
    if (small(other) && other.free) {
      const [p, q] = middle(other.box);
      return Math.hypot(p - x, q - y) < SIZE - SLACK;
    }
    const { left, right, top, bottom } = other.box;
    const aside = Math.max(left - x, 0, x - right);
    const above = Math.max(top - y, 0, y - bottom);
    return Math.hypot(aside, above) < SIZE / 2 - SLACK;
  }

  const told = ({ element, box }) => {
    const [first] = element.outerHTML.match(/<[^>]*>/);
    return `${first.slice(0, 100)} ${element.textContent.trim().slice(0, 30)}: ${Math.round(box.height)} px`;
  };
  const apart = (one, other) => !one.element.contains(other.element) && !other.element.contains(one.element);
  const faults = targets.filter((one) => one.free && small(one)).flatMap((one) => {
    const other = targets.find((each) => each !== one && apart(one, each) && crowds(one, each));
    return other ? [`${told(one)}, beside ${told(other)}`] : [];
  });
  return { count: targets.length, faults };
}
