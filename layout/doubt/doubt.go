// Package doubt asks about readings that can hardly be true before they are
// computed with: two heights of one corner, a reading far from the line of its
// neighbours, an opening that sticks out of the tile. It refuses nothing.
//
// Laws:
//
//  1. Raise depends on the room and its job alone, and gives the same doubts in
//     the same order.
//  2. There is at most one doubt to a path, and one doubt to a cause. A path names
//     a field in which something was typed.
//  3. A doubt is gone once a path it looks at is confirmed, and while it is a
//     guess that nobody has measured.
//  4. What a doubt says would fit raises no doubt at that path any more.
//  5. A free range is never doubted while some place in it fits.
package doubt

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// Rule says what speaks against a reading.
type Rule string

// The rules, in the order in which a job is asked about.
const (
	Thickness Rule = "thickness of the tile"
	Shape     Rule = "tile out of proportion"
	Box       Rule = "box and tile disagree"
	Narrow    Rule = "too narrow for a wall"
	Copied    Rule = "two tiles, one box"
	Sign      Rule = "other side of the level line"
	Off       Rule = "off the line of its neighbours"
	Level     Rule = "rim out of level"
	Corner    Rule = "one corner, two heights"
	Tall      Rule = "higher than a room"
	Through   Rule = "stops over the ceiling"
	Short     Rule = "readings stop short"
	Lean      Rule = "lean out of proportion"
	Tub       Rule = "size of the tub"
	Square    Rule = "bench in no square corner"
	Seat      Rule = "seat and bench disagree"
	Facing    Rule = "facing walls differ"
	Outside   Rule = "sticks out of the tile"
	Into      Rule = "two openings in one place"
	Moved     Rule = "far from where it is held"
)

// Doubt is one question.
type Doubt struct {
	Rule Rule
	Path string // the field it stands at, as in the job file
	Wall int    // index, or -1 for the whole room
	Read string // what was read there
	Fits string // what would fit, or empty where nobody can tell
	Use  []Use  // the fields that have to change for that, none where Fits is empty
	Text string // why it cannot well be, in one or two sentences
}

// Use is a field with what to write there.
type Use struct{ Path, Text string }

// Raise asks about the readings of a room that was resolved from the job.
func Raise(room survey.Room, job survey.Job) []Doubt {
	a := &asker{room: room, job: job, texts: job.Texts(), asked: map[string]bool{}, rough: map[int]bool{}, out: map[string]bool{}}
	a.tile()
	a.narrow()
	a.copied()
	a.heights()
	a.corners()
	a.tall()
	a.through()
	a.ends()
	a.leans()
	a.tubs()
	a.benches()
	a.seats()
	a.facing()
	a.fronts()
	a.openings()
	a.moved()
	return a.found
}

// asker gathers the doubts of one job.
type asker struct {
	room  survey.Room
	job   survey.Job
	texts map[string]string // what was typed, by path
	asked map[string]bool   // paths that are in doubt already
	rough map[int]bool      // walls of which a height is in doubt
	out   map[string]bool   // openings that stick out of the tile
	found []Doubt
}

// ask adds a doubt, unless it looks at a path that is confirmed, a guess, or in
// doubt already. With names further paths it looks at.
func (a *asker) ask(d Doubt, with ...string) {
	for _, p := range append(with, d.Path) {
		if a.asked[p] || slices.Contains(a.job.Confirmed, p) || slices.Contains(a.room.Guesses, p) {
			return
		}
	}
	if d.Read == "" {
		d.Read = a.texts[d.Path]
	}
	if d.Fits != "" && d.Use == nil {
		d.Use = []Use{{d.Path, d.Fits}}
	}
	if d.Rule == Off || d.Rule == Sign || d.Rule == Corner {
		a.rough[d.Wall] = true
	}
	a.asked[d.Path] = true
	a.found = append(a.found, d)
}

// say writes a length to the finest step that anybody reads, 1/64 in or 0.1 mm.
func (a *asker) say(l length.Length) string {
	return l.Format(a.room.Units, a.either(length.Inch/64, length.Millimetre/10))
}

// fine writes a difference, to the step of the cut schedule.
func (a *asker) fine(l length.Length) string { return l.Fine(a.room.Units) }

// typed is a length as a person of this room would type it, at a mark of the tape.
func (a *asker) typed(l length.Length) string { return l.RoundTo(a.room.Tape).Plain(a.room.Units, 0) }

// either picks a measure for the room's units.
func (a *asker) either(imperial, metric length.Length) length.Length {
	if a.room.Units == length.Metric {
		return metric
	}
	return imperial
}
