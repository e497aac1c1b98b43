// Places on a wall, in millimetres, and on its drawing, in micrometres. The
// handle of a wall's start stands at a place known in both.

export function wallAt(svg, wall) {
  const known = svg.querySelector(`.handle[data-handle="start"][data-wall="${wall}"]`);
  if (!known) return null;
  const [x, y] = known.dataset.at.split(" ").map(Number), drawn = svg.dataset.paper / svg.dataset.real * 1000;
  return {
    paper: (mx, my) => [x + (mx - known.dataset.x) * drawn, y - (my - known.dataset.y) * drawn],
    wall: (px, py) => [(px - x) / drawn + Number(known.dataset.x), (y - py) / drawn + Number(known.dataset.y)],
  };
}

// pointed gives the place on its wall that the window's x, y points at.
export function pointed(part, clientX, clientY) {
  const svg = part.ownerSVGElement, { x, y } = new DOMPoint(clientX, clientY).matrixTransform(svg.getScreenCTM().inverse());
  return wallAt(svg, part.dataset.wall)?.wall(x, y);
}

// outline is the outline of a box on a wall, as path data.
export function outline(svg, wall, [left, bottom, right, top]) {
  const on = wallAt(svg, wall);
  if (!on) return null;
  const [x, y] = on.paper(left, top), [u, v] = on.paper(right, bottom);
  return `M${x} ${y}H${u}V${v}H${x}z`;
}
