// The drawing as it is swapped: the server leaves out the walls that the page
// has already, and they are put into the places left for them.

import { unknown } from "./form.js";
import { whereFocus, refocus } from "./focus.js";

// put puts a new drawing in the place of an old one. One that is to be put back
// keeps its own walls, and copies go over. A drawing that counts on walls which are
// no longer here is dropped, and the whole one is asked for.
export function put(fresh, old, back) {
  const places = [...fresh.querySelectorAll("[data-held]")].map((place) => {
    const wall = old.querySelector(`#${CSS.escape(place.id)}`);
    return [place, wall?.dataset.hash === place.dataset.hash ? wall : null];
  });
  if (places.some(([, wall]) => !wall)) return whole();
  for (const [place, wall] of places) place.replaceWith(back ? wall.cloneNode(true) : wall);
  old.replaceWith(fresh);
}

// whole asks for the whole drawing as it stands on the page of the server.
async function whole() {
  unknown("paper");
  const answer = await fetch(location.href).catch(() => null);
  if (!answer?.ok) return;
  const fresh = new DOMParser().parseFromString(await answer.text(), "text/html").getElementById("paper");
  const old = document.getElementById("paper"), focus = whereFocus();
  if (!fresh || !old) return;
  old.replaceWith(fresh);
  document.dispatchEvent(new Event("redrawn"));
  refocus(focus);
}
