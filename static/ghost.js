// The ghost: a line through the place where a held handle would stand, across
// its wall, with the figures beside it.

const SVG = "http://www.w3.org/2000/svg";
const TEXT = 14; // height of the figures in pixels

let ghost = null;

// show draws the ghost of a handle that is held so many steps from where the
// survey had it, and lights the joint lines that it lies on. A drawing made since
// then may show it nearer already.
export function show(handle, held, lines, lit) {
  const svg = handle.ownerSVGElement;
  if (ghost?.ownerSVGElement !== svg) ghost = null;
  ghost ??= svg.appendChild(made("g", { class: "ghost", "aria-hidden": "true" }));
  const drawn = svg.dataset.paper / svg.dataset.real * 1000; // micrometres to a millimetre
  const off = (count, at) => (count * held.step - Number(at)) * drawn;
  const [x, y] = handle.dataset.at.split(" ").map(Number);
  const dx = held.axis.includes("x") ? off(held.x + held.dx, handle.dataset.x) : 0;
  const dy = held.axis.includes("y") ? -off(held.y + held.dy, handle.dataset.y) : 0;
  handle.setAttribute("transform", `translate(${dx} ${dy})`);
  handle.classList.add("moved");
  ghost.replaceChildren(...lit.map(([axis, line]) => joint(svg, held, axis, line.wide * drawn, line.middle * drawn)), ...cross(svg, held, x + dx, y + dy), ...figures(svg, x + dx, y + dy, lines));
}

// hide leaves no trace on the drawing, whichever ones were shown meanwhile.
export function hide() {
  for (const handle of document.querySelectorAll("#drawing .handle:is(.moved, [data-stood])")) {
    handle.classList.remove("moved");
    handle.removeAttribute("transform");
    still(handle);
  }
  for (const one of document.querySelectorAll("#drawing .ghost")) one.remove();
  ghost = null;
}

// tell says of a handle that is held where it stands, to who does not see it; still says again what the server
// wrote of it.
export function tell(handle, text) {
  handle.dataset.stood ??= handle.getAttribute("aria-valuetext");
  handle.setAttribute("aria-valuetext", text);
}

export function still(handle) {
  if ("stood" in handle.dataset) handle.setAttribute("aria-valuetext", handle.dataset.stood);
  delete handle.dataset.stood;
}

// cross is a line along the wall, up it, or both; the course line runs on
// round all walls.
function cross(svg, held, x, y) {
  const of = held.name === "course" ? "" : `[data-wall="${held.wall}"]`;
  const boxes = [...svg.querySelectorAll(`.outline${of}`)].map((o) => o.getBBox());
  const low = Math.min(...boxes.map((b) => b.x)), high = Math.max(...boxes.map((b) => b.x + b.width));
  const top = Math.min(...boxes.map((b) => b.y)), foot = Math.max(...boxes.map((b) => b.y + b.height));
  const out = [];
  if (held.axis.includes("y")) out.push(made("path", { d: `M${low} ${y}H${high}` }));
  if (held.axis.includes("x")) out.push(made("path", { d: `M${x} ${top}V${foot}` }));
  return out;
}

// joint is a joint line over its whole wall, as wide as the joint is drawn.
function joint(svg, held, axis, wide, at) {
  const wall = svg.querySelector(`.wall[data-wall="${held.wall}"]`), [x, y] = wall.dataset.origin.split(" ").map(Number);
  const box = wall.querySelector(".outline").getBBox();
  const d = axis === "x" ? `M${x + at} ${box.y}v${box.height}` : `M${box.x} ${y - at}h${box.width}`;
  return made("path", { class: "joint", d, "stroke-width": Math.max(wide, 900) });
}

// figures stand beside the handle, on the side where there is room.
function figures(svg, x, y, lines) {
  const size = TEXT * svg.viewBox.baseVal.width / svg.getBoundingClientRect().width;
  const left = x > svg.viewBox.baseVal.width * 0.7, up = y > size * 5;
  return lines.map((line, i) => {
    const text = made("text", {
      x: x + (left ? -size : size), y: y + size * (up ? 1.25 * (i - lines.length) + 0.5 : 1.25 * i + 1.6),
      "font-size": size, "text-anchor": left ? "end" : "start",
    });
    text.textContent = line;
    return text;
  });
}

function made(name, attributes) {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  return element;
}
