// Notes wait here until the server has them. The id of a note is made on this device, so that a
// note sent twice is kept once; a note leaves only when the server says that it has it.

const VERSION = 1;
const FATES = 80; // of notes that left, the newest
const TRY_AGAIN_S = 20;

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
  await notes.put({ refused: null, trouble: "", tried: false, photo: null, made: new Date().toISOString(), ...record });
  navigator.storage?.persist?.().catch(() => {});
}

// Undoing is a note of its own, unless the note never left this device.
export async function undo(id, on, colony) {
  await navigator.locks.request("outbox", async () => {
    const record = await notes.get(id);
    if (record) await notes.drop(id);
    if (record && (!record.tried || record.refused)) return;
    const fields = [["undoes", id], ["on", on]];
    await keep({ id: crypto.randomUUID(), url: "/note/undo", undoes: id, on, colony, fields });
  });
}

// Sends what waits, oldest first. Answers how it went ("sent", "no signal", "log in" or "later") and,
// for trouble that passes by itself, the seconds after which to try again.
export function send() {
  return navigator.locks.request("outbox", async () => {
    let went = { state: "sent" };
    for (const record of await kept()) {
      if (record.refused) continue;
      await notes.put({ ...record, tried: true });
      const answer = await post(record);
      if (answer === null) return { state: "no signal", after: TRY_AGAIN_S };
      if (answer.type === "opaqueredirect" || answer.status === 401) return { state: "log in" };
      if (answer.ok) await leave(record, await answer.json().catch(() => ({})));
      else {
        const said = await answer.json().catch(() => ({}));
        if (!passes(answer.status)) {
          await notes.put({ ...record, tried: true, refused: { what: `Refused (${answer.status}).`, ...said } });
          continue;
        }
        const trouble = said.what ?? `The other side has trouble (${answer.status}).`;
        await notes.put({ ...record, tried: true, trouble });
        went = { state: "later", after: Number(answer.headers.get("Retry-After")) || TRY_AGAIN_S };
        if (answer.status === 503 || answer.status === 429) return went;
      }
    }
    return went;
  });
}

// a full disk, a busy book, a server that is starting: nothing about the note is wrong
const passes = status => status >= 500 || [403, 408, 429].includes(status);

async function post(record) {
  const body = new FormData();
  for (const [name, value] of record.fields) body.append(name, value);
  if (record.photo) body.append("photo", record.photo, "photo.jpg");
  // without "manual", a redirect to the login page would look like success
  const asked = { method: "POST", body, redirect: "manual", headers: { Accept: "application/json" } };
  return fetch(record.url, asked).catch(() => null);
}

// What became of the notes that left this device, oldest first.
export function fates() {
  return JSON.parse(localStorage.getItem("fates") ?? "[]");
}

async function leave(record, { odd = [], at = "" }) {
  const { id, on, colony, undoes = null } = record;
  const fate = { id, on, colony, undoes, odd, at };
  localStorage.setItem("fates", JSON.stringify([...fates().filter(one => one.id !== id), fate].slice(-FATES)));
  await notes.drop(id);
}
