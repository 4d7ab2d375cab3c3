// The round's page: who is noted, as far as this device knows, and what is left in the van.

import { segment, standing } from "/static/states.js";

export function markColonies(waiting, takeBack) {
  const on = dayShown();
  for (const element of document.querySelectorAll("[data-colony]")) {
    const said = element.querySelector(".state, i");
    if (!said) continue;
    said.dataset.first ??= said.textContent;
    const now = standing(element.dataset.colony, on, waiting);
    const isLine = said.matches(".state");
    const words = now === null ? said.dataset.first : isLine ? now.words : now.short;
    if (said.dataset.words === words) continue;
    said.dataset.words = words;
    said.textContent = words;
    const kind = now?.kind ?? (words ? "kept" : "");
    element.classList.toggle("is-noted", kind === "kept");
    element.classList.toggle("is-waiting", kind === "waiting");
    element.classList.toggle("is-refused", kind === "refused");
    if (isLine && now?.id) said.append(...ways(now, element.dataset.colony, on, takeBack));
  }
}

function ways(now, colony, on, takeBack) {
  const found = [];
  if (now.mend) {
    const mend = document.createElement("a");
    mend.className = "button";
    mend.href = `/round/${on}/note/${segment(colony)}${now.mend}`;
    mend.textContent = "Mend it";
    found.push(" ", mend);
  }
  const back = document.createElement("button");
  back.type = "button";
  back.textContent = "Take it back";
  back.addEventListener("click", () => takeBack(now.id, on, colony));
  return [...found, " ", back];
}

export const dayShown = () => location.pathname.split("/")[2] ?? "";

const vehicles = () => document.querySelectorAll(".vehicle");

// What this device sent, or still keeps, of each feed, in grams by note.
const sentOf = vehicle => JSON.parse(vehicle.dataset.sent ?? "{}");

export function showVehicle(waiting) {
  const here = new Set([...document.querySelectorAll("[data-colony]")].map(one => one.dataset.colony));
  const on = dayShown();
  const mine = waiting.filter(note => note.on === on && note.url === "/note" && here.has(note.colony));
  for (const vehicle of vehicles()) {
    const { feed, loaded, given, gramsAUnit } = vehicle.dataset;
    const known = sentOf(vehicle);
    for (const note of mine) known[note.id] = grams(note, feed);
    vehicle.dataset.sent = JSON.stringify(known);
    const left = Number(loaded) - Number(given) - Object.values(known).reduce((sum, each) => sum + each, 0);
    vehicle.querySelector("progress").value = Math.max(0, left);
    const told = vehicle.querySelector("output");
    told.textContent = told.textContent.replace(/^-?[\d.]+/, (left / Number(gramsAUnit)).toFixed(1));
  }
}

export function forget(id) {
  for (const vehicle of vehicles()) {
    const { [id]: gone, ...known } = sentOf(vehicle);
    vehicle.dataset.sent = JSON.stringify(known);
  }
}

function grams(note, feed) {
  const told = Object.fromEntries(note.fields);
  return told.feed === feed ? Number(told.feed_g) || 0 : 0;
}
