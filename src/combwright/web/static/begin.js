// Beginning: places are offered while their name is typed, and the table grows by a row.

const place = document.querySelector("#f-place");
const offered = document.querySelector("#places");
place?.addEventListener("input", async () => {
  const words = place.value.trim();
  if (words.length < 2) return;
  const answer = await fetch(`/places?words=${encodeURIComponent(words)}`).catch(() => null);
  if (!answer?.ok || place.value.trim() !== words) return;
  const labels = await answer.json();
  offered.replaceChildren(...labels.map(label => Object.assign(document.createElement("option"), { value: label })));
});

const rows = document.querySelector("#rows");
document.querySelector("#more-rows")?.addEventListener("click", event => {
  event.preventDefault();
  const last = rows.lastElementChild;
  const number = rows.children.length + 1;
  const made = last.cloneNode(true);
  for (const part of made.querySelectorAll("[id], [name], [for], [aria-describedby]"))
    for (const name of ["id", "name", "for", "aria-describedby"])
      if (part.hasAttribute(name)) part.setAttribute(name, part.getAttribute(name).replace(/-\d+$/, `-${number}`));
  made.querySelector("th").firstChild.textContent = number;
  for (const field of made.querySelectorAll("input")) {
    field.value = "";
    field.removeAttribute("aria-invalid");
  }
  for (const field of made.querySelectorAll("select")) field.value = last.querySelector(`[name="${field.name.replace(/\d+$/, number - 1)}"]`).value;
  for (const fault of made.querySelectorAll(".fault")) fault.hidden = true;
  rows.append(made);
  made.querySelector("input").focus();
});

for (const form of document.querySelectorAll("form[data-busy]"))
  form.addEventListener("submit", () => {
    form.querySelector("[role=status]").textContent = form.dataset.busy;
  });
