// The list of notes that wait on this device, with reasons where one was not accepted.

import { flush } from "/static/app.js";
import { fates, notes } from "/static/outbox.js";
import { refusal, segment, waits } from "/static/states.js";

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
  item.append(element("h2", note.colony), element("p", `${what} of ${day(note.on)}, made ${made}`));
  if (note.refused) item.append(element("p", sentence(refusal(note)), { className: "fault" }), ...faults(note));
  else item.append(element("p", sentence(waits(note).replace(/^noted, /, ""))));
  if (note.url === "/note")
    item.append(element("a", "Mend", { className: "button", href: `/round/${note.on}/note/${segment(note.colony)}?draft=${note.id}` }));
  const drop = element("button", "Throw away", { type: "button" });
  drop.addEventListener("click", async () => {
    if (!confirm(`Throw away this ${what} of ${note.colony}? It is nowhere else.`)) return;
    await notes.drop(note.id);
    await flush();
  });
  item.append(" ", drop);
  return item;
}

const day = on => new Date(`${on}T12:00`).toLocaleDateString([], { dateStyle: "medium" });

const sentence = words => words[0].toUpperCase() + words.slice(1);

function faults(note) {
  const problems = (note.refused.problems ?? []).filter(one => one.field);
  return problems.length > 1 ? [element("p", `Fields: ${problems.map(one => one.field.replaceAll("_", " ")).join(", ")}.`)] : [];
}

// what is in the book already, newest first, with what was odd about it
function sent(fate) {
  const item = element("li", `${fate.colony}, ${day(fate.on)}: ${fate.undoes ? "taken back" : "in the book"}`);
  for (const odd of fate.odd) item.append(element("p", `Worth a second look: ${odd}`, { className: "question" }));
  if (!fate.undoes) item.append(" ", element("a", "Look", { className: "button", href: `/colony/${segment(fate.colony)}` }));
  return item;
}

addEventListener("outbox", ({ detail: waiting }) => {
  list.replaceChildren(...waiting.map(line));
  document.querySelector("#sent").replaceChildren(...fates().reverse().map(sent));
  document.querySelector("#sent-too").hidden = !fates().length;
  document.querySelector("#none").hidden = waiting.length > 0;
  document.querySelector("#keep-hint").hidden = !waiting.length;
  document.querySelector("#send").hidden = !waiting.length;
});
document.querySelector("#send").addEventListener("click", flush);
