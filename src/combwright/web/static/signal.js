// A form that is no note goes out only when the other side answers: without signal the browser would
// show a page of its own, and what was typed would be gone.

import { say } from "/static/said.js";

const PATIENCE_MS = 4000;

const answers = () =>
  fetch("/places", { signal: AbortSignal.timeout(PATIENCE_MS) }).then(() => true, () => false);

for (const form of document.querySelectorAll(`main form[method=post]:not([data-outbox], [action="/login"])`))
  form.addEventListener("submit", async event => {
    if (form.dataset.answered) return void delete form.dataset.answered;
    event.preventDefault();
    const { submitter } = event; // gone once others have heard of the event
    if (!(await answers())) return say("No signal. What is typed stays here: send it again when there is some.");
    form.dataset.answered = "yes";
    form.requestSubmit(submitter);
  });
