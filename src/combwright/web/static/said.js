// The bar that says what was just done. It goes by itself, and at a tap anywhere else, so that it
// never lies over the next hive's feed; what it said stands at the colony as well.

const GOES_AFTER_MS = 8000;
let going = 0;

export function say(words, ...acts) {
  hush();
  const bar = document.createElement("p");
  bar.id = "said";
  bar.setAttribute("role", "status");
  bar.append(words);
  for (const [name, act] of acts) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = name;
    button.addEventListener("click", act);
    bar.append(" ", button);
  }
  document.body.append(bar);
  going = setTimeout(leave, GOES_AFTER_MS);
}

export function hush() {
  clearTimeout(going);
  document.querySelector("#said")?.remove();
}

function leave() {
  const bar = document.querySelector("#said");
  if (bar?.matches(":hover, :focus-within")) going = setTimeout(leave, GOES_AFTER_MS);
  else hush();
}

addEventListener("pointerdown", event => event.target.closest("#said") || hush());
