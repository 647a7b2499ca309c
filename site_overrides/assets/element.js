/* Elements, words and days, as every script of ours that shows something needs them. */

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

  const two = (number) => String(number).padStart(2, "0");

  /* Gives a day as the reader's own calendar has it, in the form that sorts as text. */
  const day = (at = new Date()) => `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;

  const minute = (at = new Date()) => `${day(at)} ${two(at.getHours())}:${two(at.getMinutes())}`;

  return { day, make, minute, sayer };
})();
