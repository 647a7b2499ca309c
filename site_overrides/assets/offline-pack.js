/* Takes the manual along: fetches packs, makes sure of them, and puts the new copy in the place of
   the old one with a single write. Until then the old copy stands, whatever happens. */
(() => {
  "use strict";

  const copy = window.fettleCopy;
  if (!copy) {
    return;
  }

  const { FORMAT, ROOT, KEPT, NAME } = copy;
  const AT_ONCE = 6; // single files fetched side by side

  async function digestOf(bytes) {
    const found = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
    return Array.from(found, (byte) => byte.toString(16).padStart(2, "0")).join("");
  }

  const packed = (bytes) => new Response(
    new Blob([bytes]).stream().pipeThrough(new CompressionStream("gzip")),
  ).blob();

  /** Gives the names of all that is kept; to ask makes no empty store. */
  async function names() {
    const keys = (await caches.has(NAME)) ? await (await caches.open(NAME)).keys() : [];
    return new Set(keys.map(({ url }) => url));
  }

  /** Gives what has to be fetched for a manual, and where everything will lie then.
      A file is known by its digest: what the old copy has, under whatever address, is not fetched.
      `whole` are packs, `single` files that changed, `carried` what an earlier update fetched
      singly; the last two go into one pack of their own, so that there is never more than one. */
  async function plan(manifest, index) {
    const stored = await names();
    const have = new Map(
      Object.values(index ? index.members : {}).map(([pack, start, length, digest]) =>
        [digest, [pack, start, length]]),
    );
    const loose = (digest) => !have.has(digest) || have.get(digest)[0].startsWith("loose-");
    const found = { whole: [], single: [], carried: [], members: {}, bytes: 0, manifest };
    for (const pack of manifest.packs) {
      const name = pack.file.slice(pack.file.lastIndexOf("/") + 1);
      const size = pack.members.reduce((sum, member) => sum + member[2], 0);
      const there = stored.has(KEPT + name); // maybe from an update cut short
      const apart = pack.members.filter(([, digest]) => loose(digest));
      if (apart.length && (there || apart.length * 2 > pack.members.length)) {
        placeAll(found, name, pack);
        if (!there) {
          found.whole.push({ ...pack, name, size });
          found.bytes += size;
        }
        continue;
      }
      for (const [address, digest, length] of pack.members) {
        if (!have.has(digest)) {
          found.single.push({ address, digest, length, name, pack, size });
          found.bytes += length;
        } else if (loose(digest)) {
          found.carried.push({ address, digest, from: have.get(digest) });
        } else {
          found.members[address] = [...have.get(digest), digest];
        }
      }
    }
    return found;
  }

  function placeAll(found, name, { members }) {
    let start = 0;
    for (const [address, digest, length] of members) {
      found.members[address] = [name, start, length, digest];
      start += length;
    }
  }

  async function fetchPack(pack, cache, progress) {
    const answer = await copy.fresh(pack.file);
    const parts = [];
    const reader = answer.body.getReader();
    for (let next = await reader.read(); !next.done; next = await reader.read()) {
      parts.push(next.value);
      progress(next.value.length);
    }
    const blob = new Blob(parts);
    if ((await digestOf(await blob.arrayBuffer())) !== pack.digest) {
      throw new Error(`${pack.file} is not what the manifest says`);
    }
    await cache.put(KEPT + pack.name, new Response(blob));
  }

  /** Fetches a changed file by itself; null where a server gives other bytes than were packed. */
  async function fetchSingle(file, progress) {
    const bytes = await (await copy.fresh(encodeURI(file.address))).arrayBuffer();
    if ((await digestOf(bytes)).slice(0, file.digest.length) !== file.digest) {
      return null;
    }
    progress(file.length);
    return { ...file, blob: await packed(bytes) };
  }

  async function fetchLoose(wanted, cache, progress) {
    const loose = [];
    for (const { from: [pack, start, length], ...file } of wanted.carried) {
      const blob = await (await cache.match(KEPT + pack)).blob();
      loose.push({ ...file, blob: blob.slice(start, start + length) });
    }
    for (let next = 0; next < wanted.single.length; next += AT_ONCE) {
      const files = wanted.single.slice(next, next + AT_ONCE);
      const found = await Promise.all(files.map((file) => fetchSingle(file, progress)));
      for (const [number, file] of files.entries()) {
        if (found[number]) {
          loose.push(found[number]);
        } else if (!(await cache.match(KEPT + file.name))) {
          await fetchPack({ ...file.pack, name: file.name, size: file.size }, cache, progress);
        }
        if (!found[number]) {
          placeAll(wanted, file.name, file.pack);
        }
      }
    }
    if (!loose.length) {
      return;
    }
    const name = `loose-${wanted.manifest.version}`;
    let start = 0;
    for (const { address, digest, blob } of loose) {
      wanted.members[address] = [name, start, blob.size, digest];
      start += blob.size;
    }
    await cache.put(KEPT + name, new Response(new Blob(loose.map(({ blob }) => blob))));
  }

  /** Makes the copy; gives its state. Throws, with the old copy whole, if anything is amiss. */
  async function take(wanted, progress) {
    const { manifest } = wanted;
    const cache = await caches.open(NAME);
    const worker = await navigator.serviceWorker.register(new URL("worker.js", ROOT), {
      scope: ROOT.pathname, updateViaCache: "none",
    });
    for (const pack of wanted.whole) {
      await fetchPack(pack, cache, progress);
    }
    await fetchLoose(wanted, cache, progress);
    const { version, pages } = manifest;
    await copy.write("index", { format: FORMAT, version, members: wanted.members, pages });
    const state = { version, compared: Date.now(), newer: null };
    await copy.write("state", state);
    await sweep(cache, wanted.members);
    await renew(worker);
    return state;
  }

  /** Takes away the packs that nothing lies in any more. */
  async function sweep(cache, members) {
    const used = new Set(Object.values(members).map(([pack]) => KEPT + pack));
    for (const { url } of await cache.keys()) {
      if (/\.pack$|\/loose-[0-9a-f]+$/.test(url) && !used.has(url)) {
        await cache.delete(url);
      }
    }
  }

  async function renew(registration) {
    await registration.update().catch(() => {}); // the old worker will do
    for (const worker of [registration.active, registration.waiting]) {
      if (worker) {
        worker.postMessage("renew");
        worker.postMessage("swap");
      }
    }
    await navigator.serviceWorker.ready;
  }

  async function forget() {
    await caches.delete(NAME);
    const registration = await navigator.serviceWorker.getRegistration(ROOT.href);
    if (registration) {
      if (registration.active) {
        registration.active.postMessage("renew"); // it answers for open pages until they close
      }
      await registration.unregister();
    }
  }

  Object.assign(copy, { plan, take, forget });
})();
