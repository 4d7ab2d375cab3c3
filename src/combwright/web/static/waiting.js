// The list of notes that wait on this device, with reasons where one was not accepted.

import { flush } from "/static/app.js";
import { notes } from "/static/outbox.js";

const list = document.querySelector("#waiting");

function element(name, words, set = {}) {
  const made = document.createElement(name);
  made.textContent = words;
  return Object.assign(made, set);
}

function line(note) {
  const item = element("li", "");
  item.dataset.note = note.id;
  const made = new Date(note.made).toLocaleString([], { dateStyle: "medium", timeStyle: "short" });
  const what = note.url === "/note" ? "note" : "taking back";
  item.append(element("h2", note.colony), element("p", `${what} of ${note.on}, made ${made}`));
  if (note.refused) {
    item.append(element("p", `Not accepted: ${note.refused.what} ${note.refused.remedy ?? ""}`, { className: "fault" }));
  } else item.append(element("p", "waits for signal"));
  if (note.url === "/note")
    item.append(element("a", "Mend", { className: "button", href: `/round/${note.on}/note/${encodeURIComponent(note.colony)}?draft=${note.id}` }));
  const drop = element("button", "Throw away", { type: "button" });
  drop.addEventListener("click", async () => {
    if (!confirm(`Throw away this ${what} of ${note.colony}? It is nowhere else.`)) return;
    await notes.drop(note.id);
    await flush();
  });
  item.append(" ", drop);
  return item;
}

addEventListener("outbox", ({ detail: waiting }) => {
  list.replaceChildren(...waiting.map(line));
  document.querySelector("#none").hidden = waiting.length > 0;
  document.querySelector("#keep-hint").hidden = !waiting.length;
  document.querySelector("#send").hidden = !waiting.length;
});
document.querySelector("#send").addEventListener("click", flush);
