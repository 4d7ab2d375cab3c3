// What every page does: notes into the outbox and out of it, and the round onto the phone.

import { keep, kept, send, undo } from "/static/outbox.js";
import { dayShown, forget, markColonies, showVehicle } from "/static/round.js";
import { say } from "/static/said.js";
import "/static/sealing.js";
import "/static/signal.js";
import { standing } from "/static/states.js";

const canWait = "serviceWorker" in navigator && "randomUUID" in crypto && "locks" in navigator;
const net = document.querySelector("#net");
let went = { state: "sent" };
let again = 0;

async function showState() {
  const waiting = await kept();
  const refused = waiting.filter(note => note.refused).length;
  const open = waiting.length - refused;
  const parts = [];
  if (open) parts.push(`${open} ${open === 1 ? "note waits" : "notes wait"}`);
  if (refused) parts.push(`${refused} not accepted`);
  if (!navigator.onLine || went.state === "no signal") parts.push("no signal");
  net.replaceChildren();
  if (parts.length) {
    const link = document.createElement("a");
    link.href = "/waiting";
    link.textContent = parts.join(", ");
    net.append(link);
  }
  if (open && went.state === "log in") {
    const login = document.createElement("a");
    login.href = `/login?to=${encodeURIComponent(location.pathname)}`;
    login.textContent = "log in to send";
    net.append(" – ", login);
  }
  net.dataset.waiting = open;
  net.dataset.refused = refused;
  markColonies(waiting, takeBack);
  showVehicle(waiting);
  dispatchEvent(new CustomEvent("outbox", { detail: waiting }));
}

export async function flush() {
  clearTimeout(again);
  await showState();
  went = await send();
  if (went.state === "log in") await sealing.forget();
  await showState();
  if (went.after) again = setTimeout(flush, went.after * 1000);
}

async function takeBack(id, on, colony) {
  await undo(id, on, colony);
  sessionStorage.removeItem("noted");
  forget(id);
  say(`${colony}: taken back.`);
  await flush();
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
  return record;
}

// What a note has come to stands at its colony for good, and here for as long as a bar is shown.
async function tell(colony, on) {
  const now = standing(colony, on, await kept());
  const isTappedAway = document.querySelector("#said") === null;
  if (!now?.id || (now.kind === "kept" && isTappedAway)) return;
  const words = `${colony}: ${now.words}`;
  say(/[.!?]$/.test(words) ? words : `${words}.`, ["Undo", () => takeBack(now.id, on, colony)]);
}

async function tellOnce() {
  const { colony, on } = JSON.parse(sessionStorage.getItem("noted") ?? "{}");
  // a page that waits for the round gives way to it by itself, which then says it once more
  if (!document.querySelector("#wait")) sessionStorage.removeItem("noted");
  if (on !== dayShown()) return;
  say(`${colony}: noted.`);
  await tell(colony, on);
}

if (canWait) {
  navigator.serviceWorker.register("/sw.js").catch(() => null); // without it the page needs signal
  for (const form of document.querySelectorAll("form[data-outbox]:not(#note)"))
    form.addEventListener("submit", async event => {
      event.preventDefault();
      const { colony, on } = await noteDown(form);
      sessionStorage.setItem("noted", JSON.stringify({ colony, on }));
      flush(); // goes on, or starts again on the next page
      location.assign(form.dataset.next);
    });
  addEventListener("online", flush);
  addEventListener("offline", showState);
  document.addEventListener("visibilitychange", () => document.hidden || flush());
  flush().then(tellOnce);
  takeAlong();
}

// The pages of the round are put on the phone while there is signal.
async function takeAlong() {
  const carried = document.querySelector("[data-take]");
  if (!carried || !navigator.onLine) return;
  const wanted = carried.dataset.take.trim().split(/\s+/);
  const here = await fetch(location.href, { headers: { Accept: "text/html" } }).catch(() => null);
  if (here?.status === 200 && !here.redirected) await sealing.keep(location.href.split("#")[0], here);
  let count = 0;
  for (const url of wanted) {
    const answer = await fetch(url, { headers: { Accept: "text/html" } }).catch(() => null);
    if (answer?.status === 200 && !answer.redirected) {
      await sealing.keep(url, answer);
      count += 1;
    }
    carried.textContent = `On this device for work without signal: ${count} of ${wanted.length} pages.`;
  }
  carried.dataset.done = String(count === wanted.length);
}

for (const form of document.querySelectorAll("form[action='/logout']"))
  form.addEventListener("submit", event => {
    if (navigator.onLine) return void sealing.forget();
    event.preventDefault(); // nobody would be logged out, and the round would be gone
    say("No signal: log out when there is some.");
  });
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
