// A remark that was spoken into the phone's own keyboard: what it says of bees, brood, stores, eggs
// and the queen is offered as fields, each to be taken with a tap.

const NUMBERS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
const COUNT = `(\\d+(?:[.,]\\d+)?|${NUMBERS.slice(1).join("|")})( and a half|½)?`;
const AMOUNTS = [["frames_of_bees", "bees"], ["frames_of_brood", "brood"], ["frames_of_stores", "(?:stores|food)"]];
const CHOICES = [
  ["eggs", "no", /\bno eggs\b/], ["eggs", "yes", /\beggs\b/],
  ["queen_seen", "yes", /\b(?:saw the|seen the) queen\b|\bqueen (?:was )?seen\b/],
  ["queen_cells", "sealed", /\bsealed (?:queen )?cells?\b/], ["queen_cells", "charged", /\bcharged (?:queen )?cells?\b/],
  ["queen_cells", "none", /\bno (?:queen )?cells\b/],
  ["entrance_trouble", "wasps", /\bwasps?\b/], ["entrance_trouble", "robbing", /\brobb(?:ing|ers|ed)\b/],
  ["flow", "none", /\bno flow\b|\bdearth\b/], ["flow", "strong", /\b(?:strong|heavy|good) flow\b/],
  ["granulated", "yes", /\bgranulated\b|\bset hard\b/], ["pollen", "yes", /\b(?:bringing|carrying|plenty of) pollen\b|\bpollen coming in\b/],
  ["larvae", "no", /\bno larvae\b/], ["larvae", "yes", /\blarvae\b/], ["brood_pattern", "patchy", /\b(?:patchy|spotty|pepper-?pot)\b/],
];
const DENIED = /\b(?:no|not|without|hardly)(?: any| sign of| signs of)? $/;

export function heard(words) {
  const said = words.toLowerCase();
  const found = new Map();
  for (const [name, what] of AMOUNTS) {
    const match = said.match(new RegExp(`\\b${COUNT}(?: frames?)?(?: of)? ${what}\\b`));
    if (match) found.set(name, String(number(match[1]) + (match[2] ? 0.5 : 0)));
  }
  for (const [name, value, pattern] of CHOICES) {
    const match = pattern.exec(said);
    if (match && !found.has(name) && !DENIED.test(said.slice(0, match.index))) found.set(name, value);
  }
  return found;
}

function number(word) {
  const at = NUMBERS.indexOf(word);
  return at > 0 ? at : Number(word.replace(",", "."));
}

// Offers what was heard as buttons that fill the fields.
export function offer(form, line, taken) {
  form.elements.remark?.addEventListener("input", () => {
    const buttons = [...heard(form.elements.remark.value)].filter(([name]) => form.elements[name]).map(([name, value]) => {
      const button = document.createElement("button");
      button.type = "button";
      button.textContent = `${name.replaceAll("_", " ")}: ${value}`;
      button.addEventListener("click", () => {
        form.elements[name].value = value;
        button.remove();
        taken();
      });
      return button;
    });
    line.replaceChildren(...(buttons.length ? ["Heard: ", ...buttons] : []));
    line.hidden = !buttons.length;
  });
}
