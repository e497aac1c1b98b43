package survey

import (
	"fmt"

	"coursewright/layout/length"
)

// Sample is what a person measured of real tiles, kept as typed: rows laid out
// with their joints, single tiles, or both. Real is what it says of the tile.
type Sample struct {
	Use     bool     `json:"use,omitempty"`     // the set-out takes it in place of the size typed
	Across  Run      `json:"across,omitzero"`   // tiles side by side: their width
	Up      Run      `json:"up,omitzero"`       // tiles on top of each other: their height
	Singles []Single `json:"singles,omitempty"` // one by one; either side may be left out
}

// Run is a row or a stack of tiles with joints, measured from the first edge
// to the last.
type Run struct {
	Tiles  string `json:"tiles,omitempty"`  // how many; ten where left out
	Joints string `json:"joints,omitempty"` // "between" (the default) or "each": one more, at an end
	Spacer string `json:"spacer,omitempty"` // the joint it was laid with; the job's where left out
	Length string `json:"length,omitempty"`
}

// Single is one tile.
type Single struct {
	Width  string `json:"width,omitempty"`
	Height string `json:"height,omitempty"`
}

// Real is what a sample says of the tile. A side that was not measured is zero.
// A run counts before single tiles, because its error is shared by all its tiles.
type Real struct {
	Width, Height length.Length    // the mean, to the nearest unit of 1/960 mm
	Vary          length.Length    // the largest single less the smallest, of the worse side
	Compared      bool             // at least two singles give Vary
	Singles       int              // tiles of which a side was measured
	Used          bool             // the set-out takes it, because the job says so and a side was measured
	Sold          [2]length.Length // width and height as typed
}

// UsualRun is how many tiles a run has where nothing is said.
const UsualRun = "10"

// Bounds of a sample: nobody lays out or measures more.
const (
	usualRun    = 10
	longestRun  = 100
	mostSingles = 50
)

// Real reads the sample of the job's tile, passing over what does not read:
// it answers while a person types. Without a sample it is zero.
func (j Job) Real() Real {
	if j.Tile.Sample == nil {
		return Real{}
	}
	r := &resolver{}
	if j.Units == "mm" {
		r.units = length.Metric
	}
	return r.sample("tile.sample", *j.Tile.Sample, j.Joint)
}

// mute reads a length whose faults belong to another field.
func (r *resolver) mute(text string) length.Length {
	l, err := length.Parse(text, r.units)
	if err != nil || l < 0 {
		return 0
	}
	return l
}

// sampled puts what the sample says in place of the sizes typed.
func (r *resolver) sampled(p path, s Sample, joint Measure, tile *TileSize) {
	real := r.sample(p, s, joint)
	real.Sold = [2]length.Length{tile.Width, tile.Height}
	tile.Real = real
	if !real.Used {
		return
	}
	if real.Width > 0 {
		tile.Width = real.Width
	}
	if real.Height > 0 {
		tile.Height = real.Height
	}
	if real.Compared {
		tile.Vary = real.Vary
	}
}

// sample reads the runs and the singles.
func (r *resolver) sample(p path, s Sample, joint Measure) Real {
	var real Real
	wide, high := r.run(p.dot("across"), s.Across, joint), r.run(p.dot("up"), s.Up, joint)
	real.Width, real.Height = wide, high
	if len(s.Singles) > mostSingles {
		r.faults.add(p.dot("singles"), fmt.Sprintf("%d tiles", len(s.Singles)), fmt.Sprintf("at most %d", mostSingles))
		return real
	}
	var widths, heights tally
	for i, one := range s.Singles {
		at := p.dot("singles").at(i)
		widths.add(r.chosen(value{at.dot("width"), one.Width}, bounds{leastTile, largestTile}))
		heights.add(r.chosen(value{at.dot("height"), one.Height}, bounds{leastTile, largestTile}))
		if one != (Single{}) {
			real.Singles++
		}
	}
	if wide == 0 {
		real.Width = widths.mean()
	}
	if high == 0 {
		real.Height = heights.mean()
	}
	real.Used = s.Use && (real.Width > 0 || real.Height > 0)
	real.Vary, real.Compared = max(widths.vary(), heights.vary()), max(widths.n, heights.n) > 1
	if real.Vary > mostVary {
		r.faults.add(p.dot("singles"), "tiles that differ by "+real.Vary.Format(r.units, r.units.FineStep()),
			"widths and heights of one kind of tile, each in its column")
	}
	return real
}

// run gives the size of one tile of a row or stack, or zero where none was laid.
func (r *resolver) run(p path, run Run, joint Measure) length.Length {
	before := len(r.faults)
	n := usualRun
	if tiles := r.whole(value{p.dot("tiles"), run.Tiles}, 2, longestRun, "tiles"); tiles != nil {
		n = *tiles
	}
	joints := n - 1
	if run.Joints != "" && r.choice(value{p.dot("joints"), run.Joints}, "between", "each") == "each" {
		joints = n
	}
	spacer := r.or(value{p.dot("spacer"), run.Spacer}, r.mute(joint.typed()), bounds{0, widestJoint})
	if run.Length == "" {
		return 0
	}
	if run.Spacer == "" && joint.Mark != nil && joint.Mark.At == "" {
		r.faults.add(p.dot("spacer"), "nothing, and the joint is still a range", "the spacer it was laid with")
	}
	long := r.length(value{p.dot("length"), run.Length}, bounds{1, widestWall})
	if len(r.faults) > before {
		return 0
	}
	size := nearest(long-length.Length(joints)*spacer, n)
	if size < leastTile || size > largestTile {
		r.faults.add(p.dot("length"), quote(run.Length)+", which makes a tile of "+size.Format(r.units, r.units.FineStep()),
			fmt.Sprintf("the length of %d tiles with %d joints of %s", n, joints, spacer.Format(r.units, 0)))
		return 0
	}
	return size
}

// nearest divides a length by a count, to the nearest unit.
func nearest(l length.Length, n int) length.Length {
	return length.Length(length.DivFloor(2*l+length.Length(n), 2*length.Length(n)))
}

// tally adds up single tiles.
type tally struct {
	n             int
	sum, low, top length.Length
}

func (t *tally) add(l *length.Length) {
	if l == nil || *l == 0 {
		return
	}
	if t.n == 0 {
		t.low, t.top = *l, *l
	}
	t.n, t.sum, t.low, t.top = t.n+1, t.sum+*l, min(t.low, *l), max(t.top, *l)
}

func (t tally) mean() length.Length {
	if t.n == 0 {
		return 0
	}
	return nearest(t.sum, t.n)
}

func (t tally) vary() length.Length { return t.top - t.low }
