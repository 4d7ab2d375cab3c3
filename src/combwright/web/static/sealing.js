// Pages kept for work without signal are sealed (AES-GCM) under a key of this session that the browser
// gives to no script, not even ours; with the session the key goes, and what is left of them says nothing.
// A module of the pages and a script of the service worker load this, so it exports nothing.

self.sealing = (() => {
  const PAGES = "pages";
  const SEALED = "X-Sealed";
  const IV_BYTES = 12; // as NIST SP 800-38D wants for GCM

  async function within(mode, act) {
    const base = await new Promise((done, failed) => {
      const asked = indexedDB.open("combwright-key", 1);
      asked.onupgradeneeded = () => asked.result.createObjectStore("keys");
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => failed(asked.error);
    });
    try {
      return await new Promise((done, failed) => {
        const work = base.transaction("keys", mode, { durability: "strict" });
        const asked = act(work.objectStore("keys"));
        work.oncomplete = () => done(asked.result);
        work.onerror = work.onabort = () => failed(work.error);
      });
    } finally {
      base.close();
    }
  }

  const known = () => within("readonly", keys => keys.get("session"));

  async function key() {
    const found = await known();
    if (found) return found;
    const made = await crypto.subtle.generateKey({ name: "AES-GCM", length: 256 }, false, ["encrypt", "decrypt"]);
    await within("readwrite", keys => keys.add(made, "session")).catch(() => null); // another page was quicker
    return known();
  }

  async function keep(address, answer) {
    const iv = crypto.getRandomValues(new Uint8Array(IV_BYTES));
    const body = await crypto.subtle.encrypt({ name: "AES-GCM", iv }, await key(), await answer.arrayBuffer());
    const headers = new Headers(answer.headers);
    for (const name of ["Content-Encoding", "Content-Length"]) headers.delete(name);
    headers.set(SEALED, "1");
    await (await caches.open(PAGES)).put(address, new Response(new Blob([iv, body]), { headers }));
  }

  async function open(copy) {
    if (!copy?.headers.has(SEALED)) return copy; // of a time when they were not sealed
    try {
      const sealed = await copy.arrayBuffer();
      const iv = sealed.slice(0, IV_BYTES);
      const body = await crypto.subtle.decrypt({ name: "AES-GCM", iv }, await known(), sealed.slice(IV_BYTES));
      return new Response(body, { headers: copy.headers });
    } catch {
      return undefined; // its key is gone
    }
  }

  const forget = () => Promise.allSettled([within("readwrite", keys => keys.clear()), caches.delete(PAGES)]);

  return { PAGES, keep, open, forget };
})();
