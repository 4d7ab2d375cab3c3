// Before anything is painted: the theme that was chosen on this device.
const chosenTheme = localStorage.getItem("theme");
if (chosenTheme) document.documentElement.dataset.theme = chosenTheme;
