// The note's form: steppers for gloves, a draft that outlives the browser, reasons beside fields.

import { flush, noteDown } from "/static/app.js";
import { drafts, notes, undo } from "/static/outbox.js";
import { smaller } from "/static/photo.js";
import { offer } from "/static/spoken.js";

const form = document.querySelector("#note");
const place = location.pathname;
const mended = new URLSearchParams(location.search).get("draft");

for (const button of form.querySelectorAll("[data-step]")) {
  button.addEventListener("click", () => {
    const input = button.parentElement.querySelector("input");
    const { low, high, by, start } = input.dataset;
    const now = input.value.trim() === "" ? null : Number(input.value.replace(",", "."));
    const first = Math.round(Number(start || 0) / by) * by;
    const next = now === null || Number.isNaN(now) ? first : now + Number(button.dataset.step);
    input.value = String(Math.min(Number(high), Math.max(Number(low), Number(next.toFixed(2)))));
    input.dispatchEvent(new Event("input", { bubbles: true }));
  });
}

for (const button of form.querySelectorAll(".expected"))
  button.addEventListener("click", () => {
    const input = button.parentElement.querySelector("input");
    input.value = button.dataset.value;
    input.dispatchEvent(new Event("input", { bubbles: true }));
  });

// What was done where something else was found: the fields as that branch fills them.
const ways = [...form.querySelectorAll("[data-instead]")];
let chosen = null;

function tellDone(way) {
  chosen = String(ways.indexOf(way));
  document.querySelector("#done-as").textContent = `as said for ${way.dataset.found}, unless you change it`;
  document.querySelector("#done").replaceChildren(...way.closest("details").querySelector("ul").cloneNode(true).children);
}

function doInstead(way) {
  fill(Object.entries(JSON.parse(way.dataset.instead)));
  tellDone(way);
}

for (const way of ways)
  way.addEventListener("click", event => {
    event.preventDefault();
    history.replaceState(null, "", way.href);
    doInstead(way);
    document.querySelector("#done").parentElement.scrollIntoView();
    saveDraft();
  });

function fault(name, words) {
  const line = document.querySelector(`#fault-${CSS.escape(name)}`) ?? document.querySelector("#fault-all");
  line.textContent = words;
  line.hidden = !words;
  const input = form.elements[name];
  if (input instanceof Element) words ? input.setAttribute("aria-invalid", "true") : input.removeAttribute("aria-invalid");
  for (let fold = words && line.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
}

function check() {
  let first = null;
  for (const input of form.querySelectorAll("input[data-low]")) {
    const text = input.value.trim().replace(",", ".");
    const { low, high } = input.dataset;
    const wrong = text !== "" && !(Number(text) >= Number(low) && Number(text) <= Number(high));
    fault(input.name, wrong ? `“${input.value}” cannot be. Give ${low} to ${high}, or leave it open. Until then it stays here as a draft.` : "");
    if (wrong) first ??= input;
  }
  first?.focus();
  return !first;
}

const fieldsOf = () => [...new FormData(form).entries()].filter(([name]) => name !== "photo" && name !== "note");

// the screen stays on while a note is made: gloves do not unlock a phone
navigator.wakeLock?.request("screen").catch(() => null);

let saving = Promise.resolve();
function saveDraft() {
  saving = saving.then(() => drafts.put({ id: place, made: new Date().toISOString(), found: chosen, fields: fieldsOf() }));
  return saving;
}

function fill(fields) {
  for (const [name, value] of fields) {
    const field = form.elements[name];
    if (field instanceof RadioNodeList) field.value = value;
    else if (field && field.type !== "file" && name !== "note") field.value = value;
  }
}

// The branch that was tapped at the hive: the page may be the copy that was kept as planned. What
// was changed since in a draft of that branch stays.
function doAsked(before = null) {
  const asked = new URLSearchParams(location.search).get("found") ?? before;
  const way = ways[asked];
  if (way) asked === before ? tellDone(way) : doInstead(way);
}

async function restore() {
  const record = mended ? await notes.get(mended) : await drafts.get(place);
  if (!record) return doAsked();
  fill(record.fields);
  if (!mended) doAsked(record.found);
  for (const one of record.refused?.problems ?? []) fault(one.field || "all", `${one.what} ${one.remedy}`);
  if (record.refused) fault("all", `${record.refused.what} ${record.refused.remedy ?? ""}`);
  const line = document.querySelector("#draft");
  line.hidden = false;
  line.textContent = mended ? "This note waits on this device. " : `You began this note at ${new Date(record.made).toLocaleTimeString([], { timeStyle: "short" })}. `;
  if (mended) return;
  const afresh = document.createElement("button");
  afresh.type = "button";
  afresh.textContent = "Start afresh";
  afresh.addEventListener("click", async () => {
    await drafts.drop(place);
    location.reload();
  });
  line.append(afresh);
}

if ("randomUUID" in crypto && "locks" in navigator) {
  form.addEventListener("input", saveDraft);
  form.addEventListener("submit", async event => {
    event.preventDefault();
    await saveDraft();
    if (!check()) return;
    const record = await noteDown(form);
    if (record.photo) await notes.put({ ...(await notes.get(record.id)), photo: await smaller(record.photo) });
    await drafts.drop(place);
    const old = mended ? await notes.get(mended) : null;
    if (old) await undo(old.id, old.on, old.colony);
    sessionStorage.setItem("noted", JSON.stringify({ on: record.on, colony: record.colony }));
    flush(); // goes on, or starts again on the next page
    location.assign(form.dataset.next);
  });
  offer(form, document.querySelector("#heard"), saveDraft);
  await restore();
}
