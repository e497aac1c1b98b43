package survey

import (
	"slices"

	"coursewright/layout/length"
)

// Band is tile of another kind in courses round the walls, between two level
// joints of the room's own tile: an accent course, a liner, or with ToHead all
// that stands over a line.
type Band struct {
	Name    string   `json:"name"`
	Walls   []string `json:"walls,omitempty"` // the names of its walls; all where left out
	Tile    Tile     `json:"tile"`
	Joint   string   `json:"joint,omitempty"`   // between its own tiles; the room's where left out
	Bond    Bond     `json:"bond,omitzero"`     // stack bond where left out
	Courses int      `json:"courses,omitempty"` // one where left out
	Height  string   `json:"height,omitempty"`  // of one laid in a pattern: from its lower edge to its upper, where its tile is cut
	ToHead  bool     `json:"toHead,omitempty"`  // it goes up to the head, and has no number of courses and no height
	Bottom  Mark     `json:"bottom,omitzero"`   // its bottom edge over the level line
	Upon    string   `json:"upon,omitempty"`    // the band before it that it stands upon, a joint over it, instead of a bottom edge
	Near    string   `json:"near,omitempty"`    // where a free bottom edge is wished
}

// BandFound is a band read and checked.
//
// Its bottom edge stands on the top of a joint of the room's tile, and the tile
// above it begins anew over a joint on its top edge: so the courses next to it
// are whole. A measured one therefore fixes the course line.
//
// A pattern has no such joints. One that a band is laid in is cut at the band's edges; one
// that the room is laid in goes on behind the band, and is cut a joint from it (common
// practice, no source: lines struck for the pattern run through from base to head).
type BandFound struct {
	Name    string
	Walls   []int // indices, ascending
	Tile    TileSize
	Joint   length.Length // between its own tiles; 0 is the room's
	Bond    BondRule
	Courses int
	Height  length.Length // of one laid in a pattern
	ToHead  bool
	Bottom  Span
	Upon    string                // the band it stands upon; its bottom moves with that
	Near    length.Length         // where a free bottom edge is wished; within Bottom
	Line    *length.Length        // of one laid in a pattern: its line, where that is held
	Starts  map[int]length.Length // by wall: the left edge of a tile of its lowest course, where that is held
}

// On tells whether the band runs on a wall.
func (b BandFound) On(wall int) bool { return slices.Contains(b.Walls, wall) }

// stack puts bands that stand upon others a joint over these.
func (r *Room) stack() {
	if !slices.ContainsFunc(r.Bands, func(b BandFound) bool { return b.Upon != "" }) {
		return
	}
	r.Bands = slices.Clone(r.Bands)
	for i := range r.Bands {
		b := &r.Bands[i]
		if k := slices.IndexFunc(r.Bands, func(o BandFound) bool { return o.Name == b.Upon }); b.Upon != "" && k >= 0 && k < i {
			by := r.Bands[k].High(r.Joint) + r.Joint
			b.Bottom, b.Near = r.Bands[k].Bottom.Moved(by), r.Bands[k].Near+by
		}
	}
}

// Inner is the joint between the band's own tiles, in a room with that joint.
func (b BandFound) Inner(joint length.Length) length.Length {
	if b.Joint > 0 {
		return b.Joint
	}
	return joint
}

// High is the band's height, without the joints under and over it.
func (b BandFound) High(joint length.Length) length.Length {
	if !b.Bond.Coursed() {
		return b.Height
	}
	n := length.Length(b.Courses)
	return n*b.Tile.Height + (n-1)*b.Inner(joint)
}

// Laid is the room as its tile number n has it: with that tile and its joint and
// bond. 0 is the room's own tile and n is that of band n-1.
func (r Room) Laid(n int) Room {
	if n == 0 || n > len(r.Bands) {
		return r
	}
	b := r.Bands[n-1]
	r.Tile, r.Joint, r.Bond = b.Tile, b.Inner(r.Joint), b.Bond
	return r
}

// BandsOn lists the bands of a wall from the bottom up, as indices of r.Bands.
func (r Room) BandsOn(wall int) []int {
	var out []int
	for i, b := range r.Bands {
		if b.On(wall) {
			out = append(out, i)
		}
	}
	slices.SortStableFunc(out, func(a, b int) int {
		return int(max(-1, min(1, r.Bands[a].Bottom.From-r.Bands[b].Bottom.From)))
	})
	return out
}

// Congruent tells whether a line stands in the span, whole pitches aside.
func (s Span) Congruent(line, pitch length.Length) bool {
	return length.Mod(line-s.From, pitch) <= s.To-s.From
}

// level tells whether a bond is laid in level courses of one height.
func (b BondRule) level() bool {
	return !b.Plumb && (b.Kind == Stack || b.Kind == Running || b.Kind == "")
}

// Alone is the room with one wall only, and what of the bands is on it.
func (r Room) Alone(wall int) Room {
	w := r.Walls[wall]
	w.Left.Beyond, w.Right.Beyond = -1, -1
	on := r.BandsOn(wall)
	bands := r.Bands
	r.Walls, r.Bands = []WallFound{w}, nil
	for _, i := range on {
		b := bands[i]
		b.Walls = []int{0}
		b.Starts = nil
		if x, held := bands[i].Starts[wall]; held {
			b.Starts = map[int]length.Length{0: x}
		}
		r.Bands = append(r.Bands, b)
	}
	return r
}
