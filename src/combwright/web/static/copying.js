// The calendar's address onto the clipboard, and the hint that the page can be put on the home screen.

const button = document.querySelector("#copy-feed");
button.hidden = !navigator.clipboard;
button.addEventListener("click", async () => {
  await navigator.clipboard.writeText(document.querySelector("#feed").textContent);
  document.querySelector("#copied").textContent = "Copied: paste it where your calendar asks for an address.";
});

addEventListener("beforeinstallprompt", event => {
  const install = document.querySelector("#install");
  event.preventDefault();
  install.hidden = false;
  install.querySelector("button").addEventListener("click", () => event.prompt());
});
