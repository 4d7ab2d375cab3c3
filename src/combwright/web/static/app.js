// What every page does: notes into the outbox and out of it, and the round onto the phone.

import { keep, kept, send, undo } from "/static/outbox.js";
import { markColonies, say, showVehicle } from "/static/round.js";

const canWait = "serviceWorker" in navigator && "randomUUID" in crypto && "locks" in navigator;
const net = document.querySelector("#net");
let state = "sent";

async function showState() {
  const waiting = await kept();
  const refused = waiting.filter(note => note.refused).length;
  const open = waiting.length - refused;
  const parts = [];
  if (open) parts.push(`${open} ${open === 1 ? "note waits" : "notes wait"}`);
  if (refused) parts.push(`${refused} not accepted`);
  if (!navigator.onLine) parts.push("no signal");
  net.replaceChildren();
  if (parts.length) {
    const link = document.createElement("a");
    link.href = "/waiting";
    link.textContent = parts.join(", ");
    net.append(link);
  }
  if (open && state === "log in") {
    const login = document.createElement("a");
    login.href = `/login?to=${encodeURIComponent(location.pathname)}`;
    login.textContent = "log in to send";
    net.append(" – ", login);
  }
  net.dataset.waiting = open;
  net.dataset.refused = refused;
  await markColonies(waiting);
  await showVehicle(waiting);
  dispatchEvent(new CustomEvent("outbox", { detail: waiting }));
}

export async function flush() {
  await showState();
  state = await send();
  await showState();
}

function recordOf(form) {
  const told = new FormData(form);
  const photo = told.get("photo");
  told.delete("photo");
  const id = crypto.randomUUID(); // not the page's: a page kept on the phone serves many times
  told.set("note", id);
  const fields = [...told.entries()].map(([name, value]) => [name, String(value)]);
  return {
    id,
    url: new URL(form.action).pathname,
    on: told.get("on"),
    colony: told.get("colony"),
    fields,
    photo: photo instanceof Blob && photo.size ? photo : null,
  };
}

export async function noteDown(form) {
  const record = recordOf(form);
  await keep(record);
  sessionStorage.setItem("noted", JSON.stringify({ id: record.id, on: record.on, colony: record.colony }));
  return record;
}

function offerUndo() {
  const noted = JSON.parse(sessionStorage.getItem("noted") ?? "null");
  if (!noted) return;
  say(`${noted.colony}: noted.`, "Undo", async () => {
    sessionStorage.removeItem("noted");
    await undo(noted.id, noted.on, noted.colony);
    document.querySelector(`li[data-colony="${CSS.escape(noted.colony)}"]`)?.classList.remove("is-noted");
    say(`${noted.colony}: taken back.`);
    await flush();
  });
}

if (canWait) {
  navigator.serviceWorker.register("/sw.js");
  for (const form of document.querySelectorAll("form[data-outbox]:not(#note)"))
    form.addEventListener("submit", async event => {
      event.preventDefault();
      await noteDown(form);
      offerUndo();
      const next = form.closest("article")?.nextElementSibling;
      if (next?.matches("article")) {
        next.scrollIntoView();
        next.focus({ preventScroll: true });
      }
      flush();
    });
  addEventListener("online", flush);
  addEventListener("offline", showState);
  document.addEventListener("visibilitychange", () => document.hidden || flush());
  if (document.querySelector("article.sheet")) {
    sessionStorage.setItem("round", location.pathname + location.search);
    offerUndo();
  }
  flush();
  takeAlong();
}

// The pages of the round are put on the phone while there is signal.
async function takeAlong() {
  const carried = document.querySelector("[data-take]");
  if (!carried || !navigator.onLine) return;
  const wanted = carried.dataset.take.trim().split(/\s+/);
  const cache = await caches.open("pages");
  const here = await fetch(location.href, { headers: { Accept: "text/html" } }).catch(() => null);
  if (here?.status === 200 && !here.redirected) await cache.put(location.href.split("#")[0], here);
  let count = 0;
  for (const url of wanted) {
    const answer = await fetch(url, { headers: { Accept: "text/html" } }).catch(() => null);
    if (answer?.status === 200 && !answer.redirected) {
      await cache.put(url, answer);
      count += 1;
    }
    carried.textContent = `On this device for work without signal: ${count} of ${wanted.length} pages.`;
  }
  carried.dataset.done = String(count === wanted.length);
}

document.querySelector("form[action='/logout']")?.addEventListener("submit", () => caches.delete("pages"));
for (const choice of document.querySelectorAll("input[name=theme]")) {
  choice.checked = (localStorage.getItem("theme") ?? "") === choice.value;
  choice.addEventListener("change", () => {
    localStorage.setItem("theme", choice.value);
    if (choice.value) document.documentElement.dataset.theme = choice.value;
    else delete document.documentElement.dataset.theme;
  });
}
for (const link of document.querySelectorAll("a[data-wait]"))
  link.addEventListener("click", () => say("Working it out: the first time takes a few seconds."));
