/* Answers for the site from the copy that a reader took along, and asks the network for the rest.
   Pages come from the copy first, so that a copy is one manual and never a mixture of two; what
   must be fresh is asked for with cache "no-store" and goes straight through. Without a copy it
   does nothing. The copy is made in assets/offline-pack.js. */
"use strict";

const FORMAT = 1; // of the copy; one that is packed in another way is left alone
const ROOT = self.registration.scope;
const KEPT = `${ROOT}offline/kept/`;
const NAME = `fettlebook ${new URL(ROOT).pathname}`;
const TYPES = {
  html: "text/html; charset=utf-8", css: "text/css; charset=utf-8",
  js: "text/javascript; charset=utf-8", json: "application/json", svg: "image/svg+xml",
  png: "image/png", jpg: "image/jpeg", webp: "image/webp", ico: "image/x-icon", pdf: "application/pdf",
  txt: "text/plain; charset=utf-8", csv: "text/csv; charset=utf-8",
  webmanifest: "application/manifest+json",
};

let index = null; // a promise of where each address lies, once it has been asked for
let packs = new Map(); // name to a promise of a pack

self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("message", ({ data }) => {
  if (data === "renew") {
    index = null;
    packs = new Map();
  } else if (data === "swap") {
    self.skipWaiting();
  }
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && request.cache !== "no-store" && request.url.startsWith(ROOT)) {
    event.respondWith(answer(request));
  }
});

async function answer(request) {
  const address = addressOf(request.url);
  const kept = await (index ??= read());
  const place = kept && kept.get(address);
  if (place) {
    try {
      return await unpacked(address, place, 200);
    } catch {
      // evicted or damaged: the network may have it
    }
  }
  try {
    return await fetch(request);
  } catch (fault) {
    const missing = kept && kept.get("404.html");
    if (place || !missing) {
      throw fault;
    }
    // The copy is the whole manual: what is not in it does not exist.
    return request.mode === "navigate"
      ? unpacked("404.html", missing, 404)
      : new Response("", { status: 404 });
  }
}

function addressOf(url) {
  const path = new URL(url).pathname.slice(new URL(ROOT).pathname.length);
  let address = path;
  try {
    address = decodeURIComponent(path);
  } catch {
    // no address of ours is spelled like that
  }
  return address === "" || address.endsWith("/") ? `${address}index.html` : address;
}

async function stored(name) {
  return (await caches.has(NAME)) ? (await caches.open(NAME)).match(KEPT + name) : undefined;
}

async function read() {
  try {
    const found = await stored("index");
    const kept = found && (await found.json());
    return kept && kept.format === FORMAT ? new Map(Object.entries(kept.members)) : null;
  } catch {
    return null;
  }
}

async function pack(name) {
  if (!packs.has(name)) {
    packs.set(name, stored(name).then((found) => found.blob()));
    packs.get(name).catch(() => packs.delete(name));
  }
  return packs.get(name);
}

async function unpacked(address, [name, start, length], status) {
  const member = (await pack(name)).slice(start, start + length);
  const inflated = member.stream().pipeThrough(new DecompressionStream("gzip"));
  const body = await new Response(inflated).arrayBuffer();
  const type = TYPES[address.slice(address.lastIndexOf(".") + 1)] || "application/octet-stream";
  return new Response(body, {
    status, headers: { "Content-Type": type, "X-Content-Type-Options": "nosniff" },
  });
}
