// A row of keys for what a phone's keyboard hides.

const KEYS = ["½", "¼", "⅛", "/", "′", "″", "-", "␣"];
const touch = matchMedia("(pointer: coarse)");
let typing = null;

document.addEventListener("focusin", (e) => {
  const keys = document.getElementById("keys");
  if (!keys) return;
  typing = e.target.matches("input.length") ? e.target : typing;
  keys.hidden = !touch.matches || !e.target.matches("input.length");
  if (!keys.childElementCount) keys.append(...KEYS.map(key));
});

function key(text) {
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = text;
  button.setAttribute("aria-label", text === "␣" ? "space" : text);
  button.addEventListener("pointerdown", (e) => { // the box keeps the focus
    e.preventDefault();
    typing.setRangeText(text === "␣" ? " " : text, typing.selectionStart, typing.selectionEnd, "end");
    typing.dispatchEvent(new Event("input", { bubbles: true }));
  });
  return button;
}
