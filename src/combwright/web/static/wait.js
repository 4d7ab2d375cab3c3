// While a round is worked out: say how far it is, without loading the page anew, until it is ready.
// Only what is being done is read aloud, since it changes seldom; the count beside it is not.

import { segment } from "/static/states.js";

const EVERY_MS = 500;
const PATIENCE_MS = 5000;
const wait = document.querySelector("#wait");
const [doing, bar, counted] = ["[role=status]", "progress", ".counted"].map(part => wait.querySelector(part));

function say(words) {
  if (doing.textContent !== words) doing.textContent = words;
}

function show(step) {
  say(step.doing);
  counted.textContent = step.counted;
  if (step.total) {
    bar.max = step.total;
    bar.value = step.done;
  } else bar.removeAttribute("value");
}

// Each hive that is planned can be read at once.
function offer(planned) {
  const section = wait.querySelector(".ready"), list = section.querySelector("ol");
  section.hidden = planned.length === 0;
  for (const [colony, line] of planned.slice(list.children.length)) {
    const link = document.createElement("a"), name = document.createElement("b");
    link.href = wait.dataset.hives + segment(colony) + wait.dataset.days;
    name.textContent = colony;
    link.append(name, ` ${line}`);
    list.appendChild(document.createElement("li")).append(link);
  }
}

async function look() {
  const ask = { signal: AbortSignal.timeout(PATIENCE_MS) };
  const answer = await fetch(wait.dataset.progress, ask).catch(() => null);
  const step = answer?.ok ? await answer.json().catch(() => null) : null;
  if (step?.ready || answer?.ok === false) return location.reload();
  if (step) {
    show(step);
    offer(step.planned ?? []);
  }
  else say("No signal. The work goes on, and so does this page when signal is back.");
  setTimeout(look, EVERY_MS);
}

look();
