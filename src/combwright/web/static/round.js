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

export async function showVehicle(waiting) {
  const vehicle = document.querySelector("#vehicle");
  if (!vehicle) return;
  const here = new Set([...document.querySelectorAll("[data-colony]")].map(one => one.dataset.colony));
  const on = dayShown();
  const known = JSON.parse(vehicle.dataset.sent ?? "{}");
  for (const note of waiting) if (note.on === on && note.url === "/note" && here.has(note.colony)) known[note.id] = grams(note);
  vehicle.dataset.sent = JSON.stringify(known);
  const given = Number(vehicle.dataset.given) + Object.values(known).reduce((sum, each) => sum + each, 0);
  const left = Number(vehicle.dataset.loaded) - given;
  const litres = (left / Number(vehicle.dataset.perLitre)).toFixed(1);
  vehicle.querySelector("progress").value = Math.max(0, left);
  vehicle.querySelector("output").textContent = vehicle.querySelector("output").textContent.replace(/^-?[\d.]+/, litres);
}

export function forget(id) {
  const vehicle = document.querySelector("#vehicle");
  if (!vehicle) return;
  const known = JSON.parse(vehicle.dataset.sent ?? "{}");
  delete known[id];
  vehicle.dataset.sent = JSON.stringify(known);
}

function grams(note) {
  const told = Object.fromEntries(note.fields);
  return told.feed === "syrup" ? Number(told.feed_g) || 0 : 0;
}
