/* Looks at the caution panels of a page as a reader would, and names every fault.
   Called with the steps that must carry one: [{anchor, word, hazards}]. */
(expected) => {
  const faults = [];

  function parts(colour) {
    const found = colour.match(/[\d.]+/g).map(Number);
    return { rgb: found.slice(0, 3), alpha: found.length > 3 ? found[3] : 1 };
  }

  // Relative luminance and contrast ratio: WCAG 2.2, its glossary.
  function luminance(rgb) {
    const [red, green, blue] = rgb
      .map((value) => value / 255)
      .map((value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4));
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  }

  function contrast(one, other) {
    const [high, low] = [luminance(one), luminance(other)].sort((a, b) => b - a);
    return (high + 0.05) / (low + 0.05);
  }

  /** Gives the colour that lies behind an element: its own, or that of what it stands on. */
  function ground(element) {
    for (let at = element; at; at = at.parentElement) {
      const { rgb, alpha } = parts(getComputedStyle(at).backgroundColor);
      if (alpha === 1) {
        return rgb;
      }
    }
    return [255, 255, 255];
  }

  function seen(element) {
    const box = element.getBoundingClientRect();
    return (
      element.checkVisibility({
        opacityProperty: true, visibilityProperty: true, contentVisibilityAuto: true,
      }) &&
      box.width > 20 && box.height > 8 && box.left >= -1 && box.right <= innerWidth + 1 &&
      !element.closest("details, [aria-hidden='true'], [role='tabpanel'], [hidden]")
    );
  }

  function look({ anchor, word, hazards }) {
    const step = document.getElementById(anchor);
    const panel = step && step.firstElementChild;
    const label = panel && panel.querySelector(".signal-word");
    const command = step && step.querySelector(".command");
    if (!label || !panel.classList.contains("signal") || !command) {
      return "the box is not the first thing in its step";
    }
    if (label.textContent.trim() !== word) {
      return `it says ${label.textContent.trim()} for ${word}`;
    }
    const lines = Array.from(panel.querySelectorAll(".signal-body"));
    const texts = [label, ...lines.flatMap((line) => [...line.querySelectorAll("p, li")])];
    if (lines.length !== hazards || !texts.every((text) => text.textContent.trim())) {
      return `it has ${lines.length} of ${hazards} hazards`;
    }
    if (![panel, ...texts].every(seen)) {
      return "it, or a line of it, cannot be seen";
    }
    if (panel.getBoundingClientRect().bottom > command.getBoundingClientRect().top + 1) {
      return "the command is not below it";
    }
    const weak = texts.find((text) => contrast(parts(getComputedStyle(text).color).rgb, ground(text)) < 4.5);
    if (weak) {
      return `too little contrast: ${weak.textContent.trim().slice(0, 40)}`;
    }
    const edge = getComputedStyle(panel);
    const page = ground(panel.parentElement);
    if (parseFloat(edge.borderTopWidth) < 2 || contrast(parts(edge.borderTopColor).rgb, page) < 3) {
      return "its edge is lost against the page";
    }
    return null;
  }

  /** Goes to the step as a deep link does, and looks whether the box is what one lands on. */
  function land({ anchor }) {
    location.hash = anchor;
    const label = document.getElementById(anchor).querySelector(".signal-word");
    const box = label.getBoundingClientRect();
    const hit = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
    return hit && label.contains(hit) ? null : "a deep link does not land on it";
  }

  for (const one of expected) {
    const fault = look(one) || (matchMedia("print").matches ? null : land(one));
    if (fault) {
      faults.push(`${one.anchor}: ${fault}`);
    }
  }
  return faults;
}
