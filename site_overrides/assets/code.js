/* A text as a QR code, drawn inline: black on white in either scheme, since cameras want it so. */

"use strict";

window.fettleCode = (() => {
  const QUIET = 4; // modules left white around it: ISO/IEC 18004
  const SPACE = "http://www.w3.org/2000/svg";

  const make = (tag, attributes) => {
    const element = document.createElementNS(SPACE, tag);
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
    return element;
  };

  function drawn(text, label) {
    const code = window.leanQr.generate(text);
    const wide = code.size + 2 * QUIET;
    let path = "";
    for (let y = 0; y < code.size; y += 1) {
      for (let x = 0; x < code.size; x += 1) {
        let run = 0;
        while (code.get(x + run, y)) run += 1;
        if (run) path += `M${x} ${y}h${run}v1h-${run}z`;
        x += run;
      }
    }
    const found = make("svg", {
      class: "code", viewBox: `${-QUIET} ${-QUIET} ${wide} ${wide}`, role: "img", "aria-label": label,
      "shape-rendering": "crispEdges",
    });
    found.append(
      make("rect", { x: -QUIET, y: -QUIET, width: wide, height: wide, fill: "#fff" }),
      make("path", { d: path, fill: "#000" }),
    );
    return found;
  }

  return { drawn };
})();
