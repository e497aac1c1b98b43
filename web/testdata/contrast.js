// What a page shows too faintly, each with its contrast with what lies behind it (WCAG 2.2): texts by SC 1.4.3, edges of
// boxes, focus rings and the lines of drawings by SC 1.4.11. The window is so high that nothing has to be scrolled to.
(() => {
  const faint = [], BESIDE = 4; // a line no wider than this, in px, is no ground for another
  const reach = new CSSStyleSheet(); // what lets the hand through is found too, and no colour is on its way to another
  reach.replaceSync("*, ::before, ::after { pointer-events: visiblePainted !important; transition: none !important }");
  document.adoptedStyleSheets = [reach];

  const read = (colour) => {
    const n = (colour.match(/[\d.]+/g) ?? []).map(Number), of = colour.startsWith("color(") ? 255 : 1;
    return n.length < 3 ? [0, 0, 0, 0] : [n[0] * of, n[1] * of, n[2] * of, n[3] ?? 1];
  };
  const over = (a, b) => { // a laid on b
    const alpha = a[3] + b[3] * (1 - a[3]);
    return [0, 1, 2].map((i) => (alpha ? (a[i] * a[3] + b[i] * b[3] * (1 - a[3])) / alpha : 0)).concat(alpha);
  };
  const luminance = (c) => {
    const [r, g, b] = c.map((v) => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const ratio = (a, b) => {
    const [low, high] = [luminance(over(a, b)), luminance(b)].sort((x, y) => x - y);
    return (high + 0.05) / (low + 0.05);
  };
  const opacity = (e) => { let all = 1; for (; e; e = e.parentElement) all *= Number(getComputedStyle(e).opacity); return all; };
  const faded = (colour, by) => [...colour.slice(0, 3), colour[3] * by];
  const scale = (e) => { const m = e.getScreenCTM(); return Math.hypot(m.a, m.b); };
  const wide = (e, style) => parseFloat(style.strokeWidth) * (style.vectorEffect === "non-scaling-stroke" ? 1 : scale(e));
  const filled = (fill) => { // of a hatch its ground
    const hatch = fill.match(/#([^")]+)/), ground = hatch && document.getElementById(hatch[1])?.firstElementChild;
    return read(ground ? getComputedStyle(ground).fill : fill);
  };

  // layers are what an element paints at a point, the uppermost first.
  const layers = (e, x, y) => {
    const style = getComputedStyle(e), out = [];
    if (!(e instanceof SVGElement)) return [faded(read(style.backgroundColor), opacity(e))];
    if (!(e instanceof SVGGeometryElement)) return out;
    const at = new DOMPoint(x, y).matrixTransform(e.getScreenCTM().inverse());
    if (style.stroke !== "none" && wide(e, style) > BESIDE && e.isPointInStroke(at)) out.push(faded(read(style.stroke), opacity(e) * style.strokeOpacity));
    if (style.fill !== "none" && e.isPointInFill(at)) out.push(faded(filled(style.fill), opacity(e) * style.fillOpacity));
    return out;
  };
  const page = over(read(getComputedStyle(document.body).backgroundColor), [255, 255, 255, 1]);
  // under is the colour at a point, from an element down; null over a picture, which has its own colours.
  const under = (e, x, y, itself) => {
    let stack = document.elementsFromPoint(x, y);
    if (e && !stack.includes(e)) { stack = []; for (let up = e; up; up = up.parentElement) stack.push(up); } // scrolled out of its frame
    stack = stack.slice(e ? stack.indexOf(e) + (itself ? 0 : 1) : 0);
    if (stack.some((s) => s instanceof HTMLImageElement)) return null;
    return over(stack.flatMap((s) => layers(s, x, y)).reduce(over, [0, 0, 0, 0]), page);
  };

  const name = (e) => e.tagName.toLowerCase() + (e.getAttribute("class") ?? "").trim().replace(/^(?=.)|\s+/g, ".");
  const hold = (what, colour, back, least) => {
    if (!back || ratio(colour, back) >= least) return;
    const line = `${what}: ${ratio(colour, back).toFixed(2)} of ${least}, ${colour.map((n) => Math.round(n * 100) / 100)} on ${back.slice(0, 3).map(Math.round)}`;
    if (!faint.includes(line)) faint.push(line);
  };
  const shown = (e) => e.getClientRects().length && e.checkVisibility({ visibilityProperty: true, opacityProperty: true }) && !e.closest(".hidden, .skip, .default, :disabled, defs, symbol, pattern");
  const middle = (box) => [box.left + box.width / 2, box.top + box.height / 2];
  const least = (style, size) => (size >= 24 || (size >= 56 / 3 && style.fontWeight >= 700) ? 3 : 4.5); // 18 pt, or 14 pt bold
  const seen = new Map(); // of what is alike three are looked at
  const enough = (kind) => { seen.set(kind, (seen.get(kind) ?? 0) + 1); return seen.get(kind) > 3; };

  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT), range = document.createRange();
  for (let text = texts.nextNode(); text; text = texts.nextNode()) {
    const e = text.parentElement, drawn = e instanceof SVGElement;
    if (!text.data.trim() || !shown(e) || e.closest("option, title") || (!drawn && enough(`text ${name(e.parentElement)} ${name(e)}`))) continue;
    range.selectNodeContents(text);
    const style = getComputedStyle(e), size = parseFloat(style.fontSize) * (drawn ? scale(e) : 1), box = range.getClientRects()[0];
    if (box?.width) hold(`"${text.data.trim().slice(0, 30)}" in ${name(e)}`, faded(read(drawn ? style.fill : style.color), opacity(e)), under(e, ...middle(box), !drawn), least(style, size));
  }
  for (const e of document.body.querySelectorAll("*")) for (const which of ["::before", "::after"]) {
    const style = getComputedStyle(e, which);
    if (/^"\s*[^\s"]/.test(style.content) && shown(e) && !enough(which + name(e))) hold(`${which} of ${name(e)}`, read(style.color), under(e, ...middle(e.getBoundingClientRect()), true), least(style, parseFloat(style.fontSize)));
  }

  for (const e of document.querySelectorAll("input:not([type=hidden], [type=radio], [type=checkbox], [type=color]), select")) {
    if (!shown(e) || enough("box " + name(e))) continue;
    const style = getComputedStyle(e), at = middle(e.getBoundingClientRect()), own = under(e, ...at, true), round = under(e, ...at, false);
    hold(`what is typed in ${name(e)}`, read(style.color), own, 4.5);
    if (e.placeholder) hold(`what an empty ${name(e)} says`, read(getComputedStyle(e, "::placeholder").color), own, 4.5);
    if (ratio(own, round) < 3) hold(`edge of ${name(e)}`, read(style.borderBottomColor), round, 3);
  }
  for (const e of document.querySelectorAll("a[href], button, input, select, summary, [tabindex]:not(.piece, [tabindex=\"-1\"])")) { // a piece has a ring drawn
    if (!shown(e) || enough("focus " + name(e))) continue;
    e.focus({ preventScroll: true });
    const style = getComputedStyle(e), inwards = parseFloat(style.outlineOffset) < 0;
    if (document.activeElement !== e || style.outlineStyle === "auto") continue;
    if (style.outlineStyle === "none") faint.push(`${name(e)} has no focus ring`);
    else hold(`focus ring of ${name(e)}`, read(style.outlineColor), under(inwards ? e : e.parentElement, ...middle(e.getBoundingClientRect()), true), 3);
  }
  document.activeElement?.blur();

  // Lines that say something, where they are seen best: against what is beside them.
  for (const e of document.querySelectorAll(".drawing path:is(.level-line, .course-line, .sheet-line, .outline, .niche, .window, .dim), .drawing :is(path, circle):is(.finding, .doubt), .drawing circle.hole, .strip-line, .strip-face")) {
    const style = getComputedStyle(e), length = e.getTotalLength(), m = e.getScreenCTM();
    if (style.stroke === "none" || !shown(e) || !length || !m) continue;
    const own = [style.stroke, style.fill].filter((c) => c !== "none").map((c) => faded(filled(c), opacity(e)));
    const beside = [0.01, 0.12, 0.37, 0.5, 0.83, 0.99].flatMap((part) => {
      const p = e.getPointAtLength(length * part).matrixTransform(m), q = e.getPointAtLength(length * part + length / 999).matrixTransform(m);
      const off = (wide(e, style) / 2 + 2) / (Math.hypot(q.x - p.x, q.y - p.y) || 1);
      return [off, -off].map((o) => under(null, p.x - o * (q.y - p.y), p.y + o * (q.x - p.x), true));
    }).filter(Boolean);
    const [colour, back] = own.flatMap((c) => beside.map((b) => [c, b])).sort((a, b) => ratio(...b) - ratio(...a))[0] ?? [];
    hold(`line of ${name(e)} in ${name(e.ownerSVGElement)}`, colour, back, 3);
  }
  // Lines that run over cut pieces of every colour are seen on their halo.
  for (const e of document.querySelectorAll(".drawing path:is(.start, .lap, .corner)")) {
    const style = getComputedStyle(e), halo = e.parentElement.previousElementSibling?.lastElementChild;
    if (style.stroke === "none" || !shown(e) || e.getAttribute("d").endsWith("z")) continue;
    if (!halo?.matches(".halo") || halo.getAttribute("d") !== e.getAttribute("d")) faint.push(`${name(e)} has no halo`);
    else hold(`${name(e)} on its halo`, faded(read(style.stroke), opacity(e)), read(getComputedStyle(halo).stroke), 3);
  }
  document.adoptedStyleSheets = [];
  return faint;
})()
