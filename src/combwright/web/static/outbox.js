// Notes wait here until the server has them. The id of a note is made on this device, so that a
// note sent twice is kept once; a note leaves only when the server says that it has it.

const VERSION = 1;

function opened() {
  return new Promise((done, failed) => {
    const asked = indexedDB.open("combwright", VERSION);
    asked.onupgradeneeded = () => {
      for (const name of ["notes", "drafts"])
        if (!asked.result.objectStoreNames.contains(name))
          asked.result.createObjectStore(name, { keyPath: "id" });
    };
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => failed(asked.error);
  });
}

async function within(name, mode, act) {
  const base = await opened();
  try {
    return await new Promise((done, failed) => {
      const work = base.transaction(name, mode, { durability: "strict" });
      const asked = act(work.objectStore(name));
      work.oncomplete = () => done(asked.result);
      work.onerror = work.onabort = () => failed(work.error);
    });
  } finally {
    base.close();
  }
}

const store = name => ({
  put: record => within(name, "readwrite", s => s.put(record)),
  get: id => within(name, "readonly", s => s.get(id)),
  drop: id => within(name, "readwrite", s => s.delete(id)),
  all: () => within(name, "readonly", s => s.getAll()),
});

export const notes = store("notes");
export const drafts = store("drafts");

export async function kept() {
  return (await notes.all()).sort((a, b) => a.made.localeCompare(b.made));
}

export async function keep(record) {
  await notes.put({ refused: null, tried: false, photo: null, made: new Date().toISOString(), ...record });
  navigator.storage?.persist?.().catch(() => {});
}

// Undoing is a note of its own, unless the note never left this device.
export async function undo(id, on, colony) {
  await navigator.locks.request("outbox", async () => {
    const record = await notes.get(id);
    if (record) await notes.drop(id);
    if (record && (!record.tried || record.refused)) return;
    const fields = [["undoes", id], ["on", on]];
    await keep({ id: crypto.randomUUID(), url: "/note/undo", on, colony, fields });
  });
}

// Sends what waits, oldest first. Answers "sent", "no signal" or "log in".
export function send() {
  return navigator.locks.request("outbox", async () => {
    for (const record of await kept()) {
      if (record.refused) continue;
      await notes.put({ ...record, tried: true });
      const answer = await post(record);
      if (answer === null) return "no signal";
      if (answer.type === "opaqueredirect" || answer.status === 401) return "log in";
      if (answer.ok) {
        const { odd = [] } = await answer.json().catch(() => ({}));
        if (odd.length) told(record, odd);
        await notes.drop(record.id);
      } else if (answer.status < 500 && answer.status !== 429 && answer.status !== 403) {
        const reasons = await answer.json().catch(() => ({ what: `Refused (${answer.status}).` }));
        await notes.put({ ...record, tried: true, refused: reasons });
      } else {
        return "no signal";
      }
    }
    return "sent";
  });
}

async function post(record) {
  const body = new FormData();
  for (const [name, value] of record.fields) body.append(name, value);
  if (record.photo) body.append("photo", record.photo, "photo.jpg");
  // without "manual", a redirect to the login page would look like success
  const asked = { method: "POST", body, redirect: "manual", headers: { Accept: "application/json" } };
  return fetch(record.url, asked).catch(() => null);
}

function told(record, odd) {
  const known = JSON.parse(localStorage.getItem("odd") ?? "[]");
  localStorage.setItem("odd", JSON.stringify([...known, { colony: record.colony, id: record.id, on: record.on, odd }].slice(-20)));
}
