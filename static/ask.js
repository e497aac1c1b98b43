// The survey in steps: the question of the box that is typed in stands over its
// step, Enter leads to the next, and on a narrow page the survey docks under
// the drawing while somebody types, so that both are seen.

const narrow = matchMedia("(max-width: 1180px)");

// ask shows the question of a box over its step. The help is moved by copying,
// so that the box itself stays where it is.
function ask(field) {
  const place = field.closest(".inside")?.querySelector(":scope > .asking");
  const help = field.querySelector(".help");
  if (!place || !help || place.dataset.of === field.dataset.field) return;
  const open = place.querySelector(".pic")?.open;
  place.dataset.of = field.dataset.field;
  place.removeAttribute("aria-hidden");
  place.replaceChildren(...help.cloneNode(true).childNodes);
  if (open) place.querySelector(".pic")?.setAttribute("open", "");
}

// first shows the question of the first box that is not measured in each step.
function first() {
  for (const step of document.querySelectorAll(".step > .inside")) {
    const fields = [...step.querySelectorAll(":scope > .asked:has(.help)")];
    const now = fields.find((f) => f.contains(document.activeElement)) ?? fields.find((f) => f.querySelector(".none")) ?? fields[0];
    if (now) ask(now);
  }
}

// point shows on the small map of the walls where a figure is measured, and tells whether it has a place there.
function point(map, of) {
  let found = false;
  for (const place of map.querySelectorAll("[data-place]")) {
    const is = place.dataset.place === of;
    place.classList.toggle("here", is);
    found ||= is;
  }
  return found;
}

// alone shows on a phone one question at a time, as one measures: while a pad is there for the box of a
// question, nothing of the survey but it. Other boxes, as those of a range, stay in their step.
function alone(field) {
  for (const old of document.querySelectorAll("#survey .now")) old.classList.remove("now");
  const one = Boolean(field?.querySelector(".help")) && field.parentElement?.matches(".step > .inside");
  document.body.classList.toggle("one", one);
  const map = document.querySelector("#survey .places");
  map?.toggleAttribute("hidden", !one || !point(map, field.dataset.field));
  if (!one) return;
  field.classList.add("now");
  field.closest(".step").classList.add("now");
}

export function leave() {
  document.activeElement?.blur();
  document.body.classList.remove("typing", "padded", "one");
  document.getElementById("keys").hidden = true;
  document.getElementById("stage")?.scrollIntoView({ block: "start" });
}

const boxes = () => [...document.querySelectorAll("#survey .asked input[id]")];

const after = (box) => { const all = boxes(); return all[all.indexOf(box) + 1]; };

// last tells whether no question comes after that of a box.
export const last = (box) => !after(box);

// next gives the box after one, and opens its step.
export function next(box) {
  const to = after(box);
  if (!to) return null;
  to.closest("details.step").open = true;
  if (document.body.classList.contains("one")) alone(to.closest(".asked")); // what is hidden takes no focus
  to.focus();
  to.select();
  return to;
}

document.addEventListener("focusin", (e) => {
  const field = e.target.closest?.("#survey .asked");
  if (field) ask(field);
  if (!e.target.closest?.("#keys")) alone(field);
  const typing = narrow.matches && e.target.matches?.("#survey input:not([type=checkbox]), #survey .doubtbox button");
  if (typing && !document.body.classList.contains("typing")) {
    document.body.classList.add("typing");
    document.getElementById("stage")?.scrollIntoView({ block: "start" });
    e.target.scrollIntoView({ block: "nearest" });
  }
  if (!e.target.closest?.("#survey, #keys")) document.body.classList.remove("typing");
});

document.addEventListener("click", (e) => {
  if (e.target.closest?.("[data-leave]")) leave();
});

document.addEventListener("pointerdown", (e) => {
  if (!e.target.closest?.("#survey, #keys")) document.body.classList.remove("typing");
});

document.addEventListener("keydown", (e) => {
  if (e.key !== "Enter" || !e.target.matches?.("#survey .asked input")) return;
  e.preventDefault();
  e.target.dispatchEvent(new Event("change", { bubbles: true }));
  next(e.target);
});

// unfold brings a step into view that somebody opens at the foot of the survey, under its head.
function unfold(step) {
  const panel = step.closest(".survey"), top = step.getBoundingClientRect().top, frame = panel.getBoundingClientRect();
  const { overflowY, scrollPaddingTop } = getComputedStyle(panel);
  const scrolls = /auto|scroll/.test(overflowY) && panel.scrollHeight > panel.clientHeight;
  const from = scrolls ? frame.top + (parseFloat(scrollPaddingTop) || 0) : 0;
  if (Math.min(scrolls ? frame.bottom : innerHeight, innerHeight) - top > 280) return;
  if (scrolls) panel.scrollTop += top - from;
  else step.scrollIntoView({ block: "start" });
}

document.addEventListener("toggle", (e) => {
  const step = e.target;
  if (step.matches?.("#survey details.part") && step.open && step.querySelector("summary") === document.activeElement) unfold(step);
}, true);

// What a question says has changed; "told" comes while more is typed than has been answered.
for (const changed of ["redrawn", "told"]) document.addEventListener(changed, () => {
  first();
  const field = document.activeElement?.closest?.("#survey .asked");
  if (document.body.classList.contains("one")) alone(field);
});
first();
