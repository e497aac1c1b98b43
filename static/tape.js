// Steps of the tape, and how they read.

// scale gives the unit, how many steps make it, the step in millimetres, and
// how many steps a big step is.
export function scale() {
  const { unit, per } = document.getElementById("state").dataset;
  return { unit, per: Number(per), step: (unit === "in" ? 25.4 : 1) / per, big: unit === "in" ? 8 : 10 };
}

const FINE = 64; // parts of an inch, the finest that a length is written in

// tape writes a count of steps as a tape reads: 519 at 16 an inch is 32 7/16.
// What lies between two steps is written to 1/64 in or 0.1 mm.
export function tape(count, per) {
  let n = Number(count), of = Number(per);
  if (!Number.isInteger(n) && of === 1) return String(Number(n.toFixed(1)));
  if (!Number.isInteger(n)) [n, of] = [Math.round(n / of * FINE), FINE];
  const whole = Math.trunc(Math.abs(n) / of);
  let part = Math.abs(n) % of, den = of;
  while (part && part % 2 === 0 && den % 2 === 0) { part /= 2; den /= 2; }
  const text = [whole || !part ? whole : "", part ? `${part}/${den}` : ""].filter((t) => t !== "").join(" ");
  return n < 0 ? `-${text}` : text;
}

// exact writes a count of steps without rounding: as a tape reads, or else in
// millimetres to a thousandth.
export function exact(count, per) {
  const { unit, step } = scale(), mm = count * step, text = tape(count, per);
  if (Number.isInteger(count)) return text;
  const shown = Math.round(count / per * FINE) / FINE * 25.4;
  return unit === "in" && Math.abs(shown - mm) < 0.0006 ? text : `${Number(mm.toFixed(3))} mm`;
}

// figure is the same with its unit and a minus as it is printed, for people.
export function figure(count) {
  const { unit, per } = scale();
  return tape(count, per).replace("-", "−") + (unit === "in" ? "″" : " mm");
}

// moved is how far something went: +1/16″.
export function moved(count) { return (count > 0 ? "+" : "") + figure(count); }
