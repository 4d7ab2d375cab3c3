// What became of the note of a colony, in words: it waits, is in the book, was not accepted, was
// taken back. Where this device knows of none, what the page came with holds.

import { fates } from "/static/outbox.js";

// A name as one part of an address, as the server writes it.
export function segment(name) {
  const plain = name.replace(/[/\\%=]|^\.{1,2}$/g, found => [...found].map(sign => `=${sign.charCodeAt().toString(16).toUpperCase()}`).join(""));
  return encodeURIComponent(plain).replaceAll("%3D", "=");
}

// Gives the newest note of a colony on a day, as it stands, or null.
export function standing(colony, on, waiting) {
  const mine = waiting.filter(note => note.colony === colony && note.on === on);
  const undoing = mine.find(note => note.url === "/note/undo");
  if (undoing) return { kind: "struck", short: "", words: undoing.refused ? refusal(undoing) : "taken back, waits" };
  const refused = mine.find(note => note.refused);
  if (refused) return { kind: "refused", id: refused.id, short: "not accepted", words: refusal(refused), mend: `?draft=${refused.id}` };
  const open = mine.at(-1);
  if (open) return { kind: "waiting", id: open.id, short: "noted, waits", words: waits(open), mend: `?draft=${open.id}` };
  const gone = fates().filter(one => one.colony === colony && one.on === on && one.at >= document.body.dataset.made);
  const newest = gone.at(-1);
  if (!newest) return null;
  if (newest.undoes) return { kind: "struck", short: "", words: "taken back" };
  return { kind: "kept", id: newest.id, short: "noted", words: look(newest.odd) };
}

export function waits(note) {
  if (note.trouble) return `noted, waits: ${note.trouble}`;
  return navigator.onLine ? "noted, waits" : "noted, waits for signal";
}

export function refusal(note) {
  return `not accepted: ${note.refused.what} ${note.refused.remedy ?? ""}`.trim();
}

function look(odd) {
  return odd.length ? `noted. Worth a second look: ${odd.join(" ")}` : "noted";
}
