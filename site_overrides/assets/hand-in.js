/* Ways out of the device for what somebody wrote: an e-mail, a file. Nothing leaves by itself. */

"use strict";

window.fettleHandIn = (() => {
  /* Half a character, as a cut may leave it, is in no address and in no file. */
  const whole = (text) => text.replace(/\p{Surrogate}/gu, "\ufffd");

  /* Gives the address that opens an e-mail; without a receiver the writer names one. */
  function mail(to, subject, text) {
    const [about, body] = [subject, text.replace(/\r?\n/g, "\r\n")].map((one) => encodeURIComponent(whole(one)));
    return `mailto:${to.split("@").map(encodeURIComponent).join("@")}?subject=${about}&body=${body}`;
  }

  function download(file) {
    const address = URL.createObjectURL(file);
    window.fettleElement.make("a", { href: address, download: file.name }).click();
    setTimeout(() => URL.revokeObjectURL(address), 60_000);
  }

  return { download, mail, whole };
})();
