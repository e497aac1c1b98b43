package bench

import (
	"regexp"
	"slices"
	"strings"
)

// hint is the short help of fields that mean the same: what is meant, and a picture of it. It stands behind the "?" of each.
type hint struct {
	ends    string // how the paths of its fields end, without the numbers of lists; several stand one after the other
	title   string
	says    string
	picture string
}

// hints are in order: of a field the first whose end its path has.
var hints = []hint{
	{"title", "Name of the job", "In the list of jobs, and in the title block of every sheet.", "name:block"},
	{"units", "Measured in", "What figures are shown in. A box reads the other as well: 60 in or 1524 mm.", "units"},
	{"walls.name", "Name of a wall", "Walls stand from left to right as one sees them from inside the room. The name stands beside the letter on every sheet.", "sides"},
	{"tile.name tiles.name", "Name of a tile", "As it stands on the box, so that no two tiles are mixed up.", "name:tag"},
	{"name", "Name", "What it is called on the drawing, in lists and on sheets.", "name:tag"},

	{"walls.width", "Width of a wall", "Along the boards from corner to corner, on the level line: a corner that leans is elsewhere over and under it.", "width"},
	{"base.readings.at head.readings.at", "At", "Where the reading was taken: from the left end of the wall, held level.", "reading"},
	{"base.readings.drop", "Down", "From the level line down to what the tile stands on, at that place.", "tape"},
	{"head.readings.rise", "Up", "From the level line up to the ceiling, at that place.", "top"},
	{"base.meets", "Down to", "What the lowest course stands over.", "base"},
	{"base.leg", "Leg", "How the narrow strip of tile beside the tub is laid.", "leg"},
	{"base.sight", "Its cuts are", "Cuts along the base are seen less than cuts at an eye’s height; say so where it is otherwise.", "sight"},
	{"head.meets", "At the top", "The tile goes up to the ceiling, also where that slopes, or stops at a line.", "top"},
	{"head.stops.at", "Where tile stops", "From the level line up to the upper edge of the tile.", "top"},
	{"head.stops.from head.stops.to", "Where tile may stop", "A range, from the level line up: the set-out takes the height in it at which a full course ends.", "top"},
	{"stops.at", "Where tile stops", "From the left end of the wall to the end of the tile.", "stops"},
	{"stops.from stops.to", "Where tile may stop", "A range, from the left end of the wall: the set-out takes the place in it that suits the tile best.", "stops"},
	{"left.meets", "Left end", "What the wall does at its left end.", "ends"},
	{"right.meets", "Right end", "What the wall does at its right end.", "ends"},
	{"finish", "Edge of the tile", "What covers the edge where tile stops. Trim and bullnose are bought by their length; to a casing, measure to the casing.", "finish"},
	{"lean.height", "Height", "From the level line, up or with a minus down, to where the lean was read.", "lean"},
	{"lean.off", "To the right", "How far the corner stands to the right there of where it stands at the level line; with a minus, to the left.", "lean"},
	{"right.corner", "Outside corner", "How the two edges are joined.", "outside"},
	{"right.laps top.laps", "Which laps", "Whose tile runs past the other’s edge. The lapped edge is hidden.", "outside"},
	{"right.angle", "Degrees between the walls", "Through what stands behind the tile: 90 at a square corner.", "angle"},
	{"laid", "A narrow wall", "In the bond of the wall before it, or in single tiles cut to its width.", "narrow"},
	{"trims.name", "Name of a trim", "What it is called in lists and on sheets.", "trim"},

	{"inside.depth", "Depth", "From the front to the back of the niche, as is said beside it.", "deep"},
	{"inside.depthIs", "What the depth is", "To the stud, to the board or to the tile.", "deep"},
	{"studs.left", "Left stud", "From the left end of the wall to the inner face of the left stud.", "studs"},
	{"studs.right", "Right stud", "From the left end of the wall to the inner face of the right stud.", "studs"},
	{"inside.sizes", "What place and size are", "Stud to stud, board to board, or tile to tile.", "inside"},
	{"inside.lining", "Board on each face", "How thick the board is that lines the niche.", "inside"},
	{"inside.front", "At the front", "Which tile covers the edge of which at the front.", "frontof"},
	{"inside.gap", "Soft joint", "In the corners of the niche: filled with sealant, not with grout.", "gap"},
	{"inside.fall", "Fall of the sill", "So that water runs out to the room.", "deep"},
	{"inside.tolerance", "An edge may move by", "How far an edge that was measured may still be shifted to meet a joint line.", "move"},
	{"inside.behind", "Behind the wall", "A niche in an outside wall takes the place of insulation: cold behind it, damp in it.", "behind"},
	{"slab", "Slab", "One piece instead of tile, and how thick it is.", "slab"},
	{"begin", "Courses of a side", "Where the courses of the side begin.", "begin"},
	{"back.depth inside.left.depth inside.right.depth sill.depth inside.top.depth face.depth", "Depth of a face", "Where this face is not as deep as the others.", "deep"},
	{"openings.at", "Middle of a pipe", "From the left end of the wall to the middle of the pipe.", "below"},
	{"openings.height", "Height of a pipe or doorway", "From the level line to the middle of the pipe, or to the top of the doorway; under the line with a minus.", "below"},
	{"openings.diameter", "Diameter", "Of the pipe as the tile must go round it.", "pipe"},
	{"openings.left", "Left edge", "From the left end of the wall. A range lets the set-out put it on a joint line.", "opening:left"},
	{"openings.width", "Width", "From edge to edge. A range lets the set-out put both on joint lines.", "opening:width"},
	{"openings.bottom", "Bottom edge", "From the level line; under it with a minus. A range lets the set-out put it on a joint line.", "opening:bottom"},
	{"openings.height.at openings.height.from openings.height.to", "Height", "From edge to edge. A range lets the set-out put both on joint lines.", "opening:height"},
	{"openings.sight", "Its edges", "Whether cuts round the opening are seen.", "sight"},
	{"sight", "Is it seen?", "A cut that nobody looks at is weighed last.", "sight"},

	{"top.kind", "What the top is", "A seat or ledge meets a wall behind it; a curb and a cap have two edges.", "walltop"},
	{"top.behind", "Behind it", "One wall, or the corner of two.", "cornertop"},
	{"top.depth", "Depth", "Held level from the front.", "walltop"},
	{"top.right", "At the right end", "Where the depth is another there than at the left.", "walltop"},
	{"top.sizes", "What height and depth are", "To the board, or to the tile.", "walltop"},
	{"top.fall", "Fall of a top", "So that water runs off to the room.", "walltop"},
	{"top.corner", "Edge of a top", "How the tile of the top and of the front are joined.", "outside"},

	{"box.count", "In a box", "For the take-off: whole boxes are bought.", "box:count"},
	{"box.price", "Price of a box", "For the take-off; leave it empty where nobody has asked yet.", "box:price"},
	{"colour", "Colour of the tile", "For the finish, the look that a client is shown.", "colour:tile"},
	{"grout", "Colour of the grout", "For the finish, the look that a client is shown.", "colour:grout"},
	{"sheet.across sheet.up", "Tiles of a sheet", "Counted along a row, and from row to row, of one sheet of mosaic. Left empty, tiles are set one by one.", "sheet"},
	{"tile.vary", "Single tiles differ by", "The largest of several boxes less the smallest.", "vary"},
	{"grain", "A face with a direction", "Tiles with veins or a print are not turned about, so fewer off-cuts serve twice.", "grain"},
	{"sample.across.tiles sample.up.tiles", "Tiles measured together", "Ten share what the reading is off.", "ten"},
	{"joints", "Joints among them", "Whether the length takes in a joint more than stand between the tiles.", "joints"},
	{"spacer", "Spacer", "How wide the joints in this row are, where they are not the job’s.", "joint"},
	{"sample.across.length sample.up.length", "First edge to last", "Over the whole row or stack, with its joints.", "ten"},
	{"joint", "Joint", "Between two tiles, from edge to edge.", "joint"},
	{"joint.from joint.to", "Joint", "The narrowest and the widest that will do: the set-out takes the spacer between them that suits best.", "joint"},
	{"bed", "Bed of mortar", "How thick the mortar is behind the tile: at a corner the tile of one wall stands so far before its board.", "bed"},
	{"bond.kind", "Bond", "How tiles stand to each other.", "bond"},
	{"bond.offset", "Shift", "By how much each course begins beside the one under it: 1/2, 1/3, or a length.", "shift"},
	{"bond.hand", "To which side", "Where it is not by a half, courses step to one side.", "hand"},
	{"bond.turn", "How it stands", "Upright, or turned by half a right angle.", "turn"},
	{"bond.along", "Rows or columns", "Tile in level rows, or set on end in plumb columns.", "along"},
	{"bond.angle", "How steep", "How the long edges rise from the level.", "chevron"},

	{"limits.sliver", "A sliver", "A piece as narrow as this breaks easily and is told of.", "sliver"},
	{"limits.sealant", "Widest soft joint", "What can be filled where tile meets a tub, a corner or a ceiling.", "gap"},
	{"measured.tape", "Smallest step", "The finest marks on the tape.", "step"},
	{"measured.doubt", "A reading may be off by", "What is judged with a reading allows for it.", "doubt"},
	{"setOrder", "Order of setting", "The wall that is set first has its tile behind that of the next.", "order"},
	{"pins.course.line", "Course line", "Held so far from the level line; under it with a minus.", "pin:course"},

	{"trims.kind", "Kind of trim", "Pieces and bars are laid out, numbered and cut.", "trim"},
	{"trims.width", "Width of trim", "Across the edge: the tile ends a joint before it.", "trim"},
	{"trims.length", "Length of trim", "Of one piece, or one bar.", "trim"},
	{"trims.place", "Where it stands", "Inside the line where tile stops, or beyond it.", "trim"},
	{"trims.corners", "At outer corners", "A corner piece of its own, or two pieces mitred.", "trim"},
	{"trims.thickness", "Thickness", "From its back to its face.", "tile:thickness"},
	{"trim", "Trim of an edge", "Which trim runs along it.", "trim"},

	{"bands.upon", "Stands upon", "A band over another, a joint between them.", "band"},
	{"bands.bottom", "Bottom edge", "From the level line; under it with a minus. A range lets the set-out put it where the field stays whole.", "band"},
	{"bands.near", "Best near", "The place in the range that you would like best.", "band"},
	{"bands.courses", "Courses of a band", "How many rows of its tile stand one over the other.", "band"},
	{"bands.height", "Height of a band", "A pattern is cut at the edges of the band.", "band"},
	{"bands.toHead", "Up to the head", "No field over it: this tile goes on to where tile stops.", "band"},

	{"strips.middle", "Middle of a strip", "From the left end of the wall. A range lets the set-out put it where the field stays whole.", "strip"},
	{"strips.near", "Best near", "The place in the range that you would like best.", "strip"},
	{"strips.bottom", "Lower edge", "From the level line; under it with a minus.", "strip"},
	{"strips.top", "Upper edge", "From the level line.", "strip"},
	{"strips.columns", "Columns", "How many of its tile stand side by side.", "strip"},
	{"strips.mostColumns", "Or up to so many", "As many as leave the best cuts in the field.", "strip"},
	{"strips.beside", "Tile next to it", "Whole on both sides of the strip, unless that leaves slivers elsewhere.", "strip"},

	{"fixtures.corner", "Which corner", "At the left end of the wall, or at the right.", "fixtures"},
	{"fixtures.width", "Size along the wall", "As the maker gives it.", "fixtures"},
	{"fixtures.high", "Height of a dish", "As the maker gives it.", "fixtures"},
	{"fixtures.at", "Place", "From the left end of the wall to its middle.", "fixtures"},
	{"fixtures.flush", "In the place of tile", "A dish set into the wall, with a joint round it.", "fixtures"},
	{"fixtures.along", "Its middle", "From the left end of the wall. A range lets the set-out put it between joints.", "fixtures"},
	{"holes.height", "Height of a hole", "From the level line; under it with a minus. Keep it clear of the joints.", "fixtures"},
	{"fixtures.height", "Height", "From the level line; under it with a minus. A range lets a shelf find a joint line, and holes keep clear of joints.", "fixtures"},
	{"fixtures.near", "Best near", "The height in the range that you would like best.", "fixtures"},

	{"set.course", "Highest course that stands", "Counted from the lowest, as on the drawing.", "stand"},
	{"set.left", "Its top edge, left", "From the level line at the left end of the wall; under it with a minus.", "stand"},
	{"set.right", "Its top edge, right", "From the level line at the right end of the wall; under it with a minus.", "stand"},
	{"start.is", "What is measured to", "An edge or the middle of a tile, or the middle of a joint, of the highest course.", "stand"},
	{"start.at", "Where it stands", "From the left end of the wall.", "stand"},

	{"gap", "Soft joint", "Where tile meets something that moves: filled with sealant, not with grout.", "gap"},
	{"lean", "Does the corner lean?", "The gap at one end of a plumb level, and over which height: at its upper end the corner leans away, at its foot into the room.", "lean"},
	{"width", "Width", "The true size as it stands on the wall, not that of the box.", "tile:width"},
	{"height", "Height", "The true size as it stands on the wall, not that of the box.", "tile:height"},
	{"thickness", "Thickness", "From the back to the face. It counts where one wall meets another.", "tile:thickness"},
	{"pins.walls.start", "Start", "Held so far from the left end of the wall.", "pin:start"},
	{"pins.walls.marks", "Held", "What you have placed yourself. Release it, and the plan places it again.", "pin:edge"},
}

// id is the name of a hint on the page.
func (h hint) id() string {
	first, _, _ := strings.Cut(h.ends, " ")
	return "hint-" + strings.ReplaceAll(first, ".", "-")
}

var (
	numbers = regexp.MustCompile(`\[[^\]]*\]`)
	ofMark  = regexp.MustCompile(`\.(at|from|to)$`) // a mark is one value or a range
)

// hintOf finds the hint of a field by its path; false where it has none.
func hintOf(path string) (hint, bool) {
	switch {
	case strings.HasPrefix(path, "pins.walls") && strings.Contains(path, ".marks"):
		path = "pins.walls.marks" // the names of walls and edges follow
	case strings.HasPrefix(path, "pins.walls"):
		path = "pins.walls.start"
	}
	shape := "." + numbers.ReplaceAllString(path, "")
	for _, as := range []string{shape, ofMark.ReplaceAllString(shape, "")} {
		if i := slices.IndexFunc(hints, func(h hint) bool { return h.suits(as) }); i >= 0 {
			return hints[i], true
		}
	}
	return hint{}, false
}

// suits tells whether a path without its numbers has one of the ends of a hint.
func (h hint) suits(shape string) bool {
	return slices.ContainsFunc(strings.Fields(h.ends), func(end string) bool { return strings.HasSuffix(shape, "."+end) })
}

// hintAt names the hint of a field of this job.
func (b Bench) hintAt(path string) string {
	if end, is := strings.CutSuffix(path, ".right.gap"); is && b.Value(end+".right.meets") == outside {
		path = end + ".right.corner"
	}
	h, found := hintOf(path)
	if !found {
		return ""
	}
	return h.id()
}
