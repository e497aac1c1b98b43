// A pad of figures for a phone: digits, feet and inches, all the sixteenths, and the minus of a height under the
// level line: what it lacks nobody can type.
// It is the last row of the page and the survey stands on it, so that it never
// covers the box that is typed in. While it is there the phone's own keyboard stays away.

import { next, last, leave } from "./ask.js";

const DIGITS = ["1", "2", "3", "4", "5", "−", "6", "7", "8", "9", "0", ".", "⌫", "′", "″"];
const NAMES = { "⌫": "Delete", "′": "feet", "″": "inches", "/": "over", "−": "minus", ".": "point" };
const coarse = matchMedia("(pointer: coarse)");
let byFinger = false; // what was pressed last was pressed with a finger
let typing = null;

addEventListener("pointerdown", (e) => { byFinger = e.pointerType === "touch"; }, true);

const fractions = () => [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15].map((n) => {
  let over = 16;
  while (n % 2 === 0) { n /= 2; over /= 2; }
  return `${n}/${over}`;
});

document.addEventListener("focusin", (e) => {
  const pad = document.getElementById("keys");
  if (!pad) return;
  if (e.target.closest("#keys")) return;
  const box = (coarse.matches || byFinger) && e.target.matches("input.length") ? e.target : null;
  typing?.removeAttribute("inputmode");
  typing = box;
  pad.hidden = !box;
  document.body.classList.toggle("padded", Boolean(box));
  if (!box) return;
  box.setAttribute("inputmode", "none");
  if (!pad.childElementCount) fill(pad);
  pad.querySelector(".go").textContent = last(box) ? "Done" : "Next";
  document.body.style.setProperty("--pad", `${pad.offsetHeight}px`);
  if (document.body.classList.contains("one")) box.closest(".survey").scrollTop = 0; // it stands at the top
  box.scrollIntoView({ block: document.body.classList.contains("one") ? "nearest" : "center" });
});

function fill(pad) {
  const inches = document.getElementById("state").dataset.unit === "in";
  pad.append(row("digits", [...DIGITS, "Next"]));
  pad.append(row("fractions", inches ? [...fractions(), "/"] : ["/", "mm", "cm"]));
}

function row(name, keys) {
  const out = document.createElement("div");
  out.className = name;
  out.append(...keys.map(key));
  return out;
}

function key(text) {
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = text;
  button.tabIndex = -1;
  if (NAMES[text]) button.setAttribute("aria-label", NAMES[text]);
  if (text === "Next") button.className = "go";
  button.addEventListener("pointerdown", (e) => { // the box keeps the focus
    e.preventDefault();
    press(text);
  });
  return button;
}

function press(text) {
  if (!typing?.isConnected) typing = document.activeElement;
  const { selectionStart: from, selectionEnd: to, value } = typing;
  if (text === "Next") {
    typing.dispatchEvent(new Event("change", { bubbles: true }));
    return next(typing) ?? leave(); // after the last question the drawing is looked at
  }
  if (text === "⌫") typing.setRangeText("", from === to ? Math.max(0, from - 1) : from, to, "end");
  else if (/^\d+\/\d+$/.test(text) && /\d$/.test(value.slice(0, from))) typing.setRangeText(` ${text}`, from, to, "end");
  else typing.setRangeText(text, from, to, "end");
  typing.dispatchEvent(new Event("input", { bubbles: true }));
}
