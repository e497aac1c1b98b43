// The bench without reloads. The server renders every state; these modules ask
// for it and swap in what changed. Without them every form posts and every
// link leads to a page of its own.

import "./save.js"; // an edit is posted, its answer swapped in
import "./drag.js"; // handles on the drawing
import "./slide.js"; // starts along the slide curve
import "./phase.js"; // the phase of a pattern on its map
import "./zoom.js"; // a nearer look
import "./width.js"; // the drawing as wide as its frame
import "./rove.js"; // one tab stop to a wall, arrow keys inside
import "./pieces.js"; // one piece and its card
import "./links.js"; // flags, faults and what is worked out on demand
import "./ask.js"; // one question after the other
import "./keys.js"; // a pad of figures for a phone

document.documentElement.classList.add("scripted"); // all of the above is there
