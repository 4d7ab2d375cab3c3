// A sheet handed on from the phone: as a file where the browser can, else as its address.
// A browser lets a page share only soon after a tap; a sheet that took longer is shared at the next.

const MADE = new Map();

async function sheet(link) {
  if (!MADE.has(link.href)) {
    const answer = await fetch(link.href);
    if (!answer.ok || answer.status !== 200) throw new Error("not made yet");
    MADE.set(link.href, new File([await answer.blob()], link.dataset.name, { type: "application/pdf" }));
  }
  return MADE.get(link.href);
}

export async function share(link, said) {
  said.textContent = "Making the sheet …";
  try {
    const file = await sheet(link);
    const files = { files: [file], title: link.dataset.name };
    await navigator.share(navigator.canShare?.(files) ? files : { url: link.href, title: link.dataset.name });
    said.textContent = "";
  } catch (error) {
    said.textContent = error.name === "AbortError" ? "" : error.name === "NotAllowedError" ? "It is ready: tap Share again." : "It cannot be shared now: open the sheet, and share it from there.";
  }
}

const button = document.querySelector("#share");
if (button && navigator.share) {
  button.hidden = false;
  button.addEventListener("click", () => share(document.querySelector("#sheet"), document.querySelector("#shared")));
}
