/* Elements and words, as every script of ours that draws something needs them. */

"use strict";

window.fettleElement = (() => {
  /* Gives an element; an attribute that is false or not there stays out, as a child without words. */
  function make(tag, attributes = {}, ...children) {
    const element = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes)) {
      if (value !== undefined && value !== false) element.setAttribute(name, value === true ? "" : value);
    }
    element.append(...children.filter((child) => child !== null && child !== undefined && child !== ""));
    return element;
  }

  /* Gives the way to say one of these words, with what stands in braces filled in. */
  const sayer = (words) => (key, values = {}) =>
    words[key].replace(/\{(\w+)\}/g, (_, name) => values[name]);

  return { make, sayer };
})();
