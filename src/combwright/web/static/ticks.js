// What is ticked off stays ticked on this device.

const key = `ticks ${location.pathname}${location.search}`;
const ticked = new Set(JSON.parse(localStorage.getItem(key) ?? "[]"));
for (const box of document.querySelectorAll("input[data-tick]")) {
  box.checked = ticked.has(box.dataset.tick);
  box.addEventListener("change", () => {
    if (box.checked) ticked.add(box.dataset.tick);
    else ticked.delete(box.dataset.tick);
    localStorage.setItem(key, JSON.stringify([...ticked]));
  });
}
