// Sliders say where they stand; the button says that it is being worked out.

const form = document.querySelector("#idea");
for (const slider of form.querySelectorAll("input[type=range]"))
  slider.addEventListener("input", () => {
    form.querySelector(`output[for="${slider.id}"]`).textContent = slider.value;
  });
form.addEventListener("submit", () => {
  form.querySelector("#trying").textContent = "Trying it on two hundred simulated colonies: one to three seconds.";
  form.querySelector("button").disabled = true;
});
