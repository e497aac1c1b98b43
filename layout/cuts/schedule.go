// Package cuts turns the cut pieces of a plan into work for the saw: one line
// for every setting of the fence, how many pieces it gives, and which two come
// out of one tile.
//
// Laws, each with a test:
//
//  1. Every piece that is cut and not yet set stands in exactly one line.
//  2. No size of a line exceeds that of any of its pieces. The largest of them
//     is larger by less than the fine step (1/32 in, 0.5 mm) and the spread
//     that the line states. Only a line that says Uncut leaves a piece larger,
//     by less than the fine step, which the joints take up.
//  3. Lines of one sort of cut stand together, larger counts first.
//  4. The same plan gives the same schedule.
package cuts

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/mosaic"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Input is the plan whose pieces are cut.
type Input struct {
	Room  survey.Room
	Walls []plan.Wall // in the job's order
}

// Settings are what a person may choose about cutting.
type Settings struct {
	Kerf  length.Length // what one cut costs: the width of the blade, 0 for a snapped cut
	Turn  bool          // tiles may be turned round; a tile with grain never is
	Least length.Length // an off-cut gives no piece that is smaller than this either way
}

// Usual gives the settings for a wet saw: a kerf of 1/8 in (3 mm), no piece
// under 1 in (25 mm) from an off-cut. Common practice, no source.
func Usual(s length.System) Settings {
	if s == length.Metric {
		return Settings{Kerf: 3 * length.Millimetre, Turn: true, Least: 25 * length.Millimetre}
	}
	return Settings{Kerf: length.Inch / 8, Turn: true, Least: length.Inch}
}

// Schedule is the list of cuts of a room.
type Schedule struct {
	Groups  []Group // the lines
	Cuts    []Cut   // every piece by itself, in setting order
	Offcuts Offcuts
	Trim    []TrimCut      // in the order of its numbers
	Mitres  []Mitre        // at outside corners, from left to right
	Others  []Offcuts      // of each tile that only faces of niches and windows have (plan.Others)
	Mosaic  []mosaic.Field // what is laid by the sheet: cut along the joints of the sheets before tiles are cut
}

// Cut is one piece that is cut, as its place wants it.
type Cut struct {
	Piece   string // its id
	Group   string // the line it stands in
	Kind    string // "cross cut", "rip", "taper", "notch", "hole", or several
	Size    Size
	Factory []string     // the edges that stay as made: "left", "right", "bottom", "top"
	Cut     []string     // the edges that are cut; one that is cut in part stands in both
	Saws    []Saw        // of a piece of a pattern, or that a rake takes a corner off: its straight cuts
	Outline plane.Ring   // of such a piece: its tile as the sketch lies
	Sketch  plane.Region // its face, the lower left corner at 0, 0; of a pattern as its tile lies, long edge down
}

// Group is one line of the schedule: the pieces that one setting of the fence
// gives, or that are made in the same way.
type Group struct {
	ID      string // "C1", "C2", … in the order of the schedule
	Tile    string // the name of the tile that is cut, where it is not the room's first
	Of      int    // which of the tiles of its pattern it is, the first 0
	Count   int
	How     How
	Kind    string        // as of a Cut
	Size    Size          // to cut to: nowhere larger than any of the pieces
	Spread  length.Length // how much larger the place of a piece may be; under the fine step it is 0
	Hides   bool          // the spread is covered by a lap or filled by sealant
	Factory []string      // of the first piece, as of a Cut
	Cut     []string
	Pieces  []string // their ids in setting order
	Places  []Place
	Saws    []Saw        // as of a Cut
	Outline plane.Ring   // of such a piece: its tile as the sketch lies; nil where the tile stands upright
	Sketch  plane.Region // the face of the first of them
}

// How says how the pieces of a line come by their size.
type How uint8

// The ways.
const (
	Fence       How = iota // all at one setting
	InPlace                // each is held to its place and marked
	FirstCourse            // each by the heights of the first-course sheet
	Uncut                  // under the fine step to take off: set whole
	Unworkable             // not to be cut: the set-out must change first
)

// Place is where pieces of a line go: a wall and what they are cut to there.
type Place struct {
	Wall   string // its letter
	Side   string // "left", "right", "head", "base", of a wall on several "the tub", "seat's front", "niche NAME", "window NAME", "pipe NAME"
	Pieces []string
}

// of makes the schedule of what is laid in one tile.
func of(in Input, set Settings) Schedule {
	set.Turn = set.Turn && !in.Room.Tile.Grain
	cut, stood := inSettingOrder(in, set.Turn)
	near := Near(in.Room.Units)
	s := Schedule{Offcuts: pair(cut, set, near)}
	switch {
	case in.Room.Tile.Sheet.Any(): // each tile is cut on its sheet
		n := len(cut) + len(stood)
		s.Offcuts = Offcuts{TilesCut: n, LowerBound: n}
	case len(stood) > 0:
		s.Offcuts.count(pair(append(stood, cut...), set, near))
	}
	b := batcher{room: in.Room, turn: set.Turn, step: in.Room.Units.FineStep(), near: near}
	s.Groups = b.groups(cut)
	line := s.Lines()
	for _, w := range cut {
		s.Cuts = append(s.Cuts, w.cut(b.step, line[w.piece.ID]))
	}
	return s
}

// Lines gives by the id of a piece the line that it stands in.
func (s Schedule) Lines() map[string]string {
	line := map[string]string{}
	for _, g := range s.Groups {
		for _, id := range g.Pieces {
			line[id] = g.ID
		}
	}
	return line
}

// Near is within which cuts into a corner count as alike: 1/16 in or 1.5 mm,
// what sealant takes up without being seen. Common practice, no source.
func Near(s length.System) length.Length {
	if s == length.Metric {
		return 3 * length.Millimetre / 2
	}
	return length.Inch / 16
}

// cut is the piece by itself.
func (w work) cut(step length.Length, line string) Cut {
	factory, sawn := w.edges()
	return Cut{Piece: w.piece.ID, Group: line, Kind: w.kind(step), Size: w.size(step), Factory: factory, Cut: sawn, Saws: w.saws(step), Outline: w.around(), Sketch: w.face}
}

// numbered sorts lines and gives them their ids.
func numbered(all []Group) []Group {
	for i := range all {
		all[i].Count = len(all[i].Pieces)
	}
	slices.SortStableFunc(all, func(a, b Group) int {
		return cmp.Or(cmp.Compare(a.sort(), b.sort()), cmp.Compare(b.Count, a.Count))
	})
	for i := range all {
		all[i].ID = fmt.Sprintf("C%d", i+1)
	}
	return all
}

// sort is the place of a line among the others: what must not be cut stands
// first, then the cuts from the plainest to the most work.
func (g Group) sort() int {
	switch {
	case g.How == Unworkable:
		return 0
	case g.How == Uncut:
		return 7
	case g.Kind == "cross cut":
		return 1
	case g.Kind == "rip":
		return 2
	case strings.Contains(g.Kind, "notch"):
		return 5
	case strings.Contains(g.Kind, "hole"):
		return 6
	case strings.Contains(g.Kind, "taper"):
		return 4
	}
	return 3
}
