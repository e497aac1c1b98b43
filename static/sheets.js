// The page of sheets follows its boxes: what is ticked is shown, counted, and is what the button prints. The
// boxes themselves stay as they are, with the focus; without this, "Show these" does it.

const form = document.querySelector("form.kinds");
const print = document.getElementById("print");
let asked = 0;
form.querySelector("button:not(#print)").hidden = true; // which asks for what follows by itself

form.addEventListener("change", async () => {
  const mine = ++asked, picked = new FormData(form);
  print.disabled = !picked.has("kind");
  if (print.disabled) return;
  const query = "?" + new URLSearchParams(picked);
  let text = "";
  try {
    const answer = await fetch(location.pathname + query);
    if (!answer.ok) return;
    text = await answer.text();
  } catch {
    return; // the button prints what is ticked all the same
  }
  if (mine !== asked) return;
  const page = new DOMParser().parseFromString(text, "text/html");
  for (const part of ["print", "presets", "previews", "acts"]) swap(part, page);
  for (const count of form.querySelectorAll("i[id]")) swap(count.id, page);
  history.replaceState(null, "", query);
});

// A sheet that could not be drawn here says so.
document.addEventListener("error", (e) => {
  if (e.target.matches?.(".leaf img")) e.target.previousElementSibling.textContent = "open it to see it";
}, true);

function swap(id, page) {
  const old = document.getElementById(id), fresh = page.getElementById(id);
  if (!old || !fresh) return;
  if (id === "print") old.textContent = fresh.textContent;
  else old.replaceWith(fresh);
}
