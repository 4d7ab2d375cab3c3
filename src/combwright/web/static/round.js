// The round's page while notes wait: who is noted, and what is left in the vehicle.

export async function markColonies(waiting) {
  for (const element of document.querySelectorAll("[data-colony]")) {
    const mine = waiting.filter(note => note.colony === element.dataset.colony && note.url === "/note");
    const said = element.querySelector(".state, i");
    if (!said) continue;
    said.dataset.first ??= said.textContent;
    const refused = mine.find(note => note.refused);
    said.textContent = refused ? `not accepted: ${refused.refused.what}` : mine.length ? "noted, waits" : said.dataset.first;
    element.classList.toggle("is-waiting", mine.length > 0 && !refused);
    element.classList.toggle("is-refused", Boolean(refused));
    if (mine.length) element.dataset.waited = "yes";
    else if (element.dataset.waited) said.textContent = said.dataset.first = "noted";
  }
}

export async function showVehicle(waiting) {
  const vehicle = document.querySelector("#vehicle");
  if (!vehicle) return;
  const here = new Set([...document.querySelectorAll("article[data-colony]")].map(a => a.dataset.colony));
  const on = location.pathname.split("/")[2];
  const known = JSON.parse(vehicle.dataset.sent ?? "{}");
  for (const note of waiting) if (note.on === on && note.url === "/note" && here.has(note.colony)) known[note.id] = grams(note);
  vehicle.dataset.sent = JSON.stringify(known);
  const given = Number(vehicle.dataset.given) + Object.values(known).reduce((sum, each) => sum + each, 0);
  const left = Number(vehicle.dataset.loaded) - given;
  const litres = (left / Number(vehicle.dataset.perLitre)).toFixed(1);
  vehicle.querySelector("progress").value = Math.max(0, left);
  vehicle.querySelector("output").textContent = vehicle.querySelector("output").textContent.replace(/^-?[\d.]+/, litres);
}

function grams(note) {
  const told = Object.fromEntries(note.fields);
  return told.feed === "syrup" ? Number(told.feed_g) || 0 : 0;
}

export function say(words, action, act) {
  document.querySelector("#said")?.remove();
  const bar = document.createElement("p");
  bar.id = "said";
  bar.setAttribute("role", "status");
  bar.textContent = words;
  if (action) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = action;
    button.addEventListener("click", act);
    bar.append(" ", button);
  }
  document.querySelector("main").append(bar);
}
