/* Which reviews are overdue, by the reader's own clock: the pages carry the days and no today.
   A review that is due today is in time. */
(() => {
  "use strict";

  const today = window.fettleElement.day();
  let count = 0;

  for (const part of document.querySelectorAll("[data-due]")) {
    const late = part.dataset.due < today;
    part.classList.toggle("is-overdue", late);
    part.querySelector(".overdue").hidden = !late;
    count += late ? Number(part.dataset.count ?? 0) : 0;
  }
  const said = document.querySelector(".overdue-said");
  if (said) {
    said.textContent = count ? said.dataset.some.replace("#", count) : said.dataset.none;
    said.classList.toggle("is-overdue", count > 0);
    said.hidden = false;
  }
})();
