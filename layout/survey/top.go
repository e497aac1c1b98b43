package survey

import (
	"fmt"

	"coursewright/layout/length"
)

// Top is the horizontal face on a wall that stops at a height: the seat of a bench,
// a ledge, the top of a curb, the cap of a half wall. It falls to the side from which
// the wall is seen.
type Top struct {
	Kind   string     `json:"kind"`             // a word of TopKinds
	Behind string     `json:"behind,omitempty"` // what stands behind a seat or a ledge: a word of TopBacks, left out a wall
	Sizes  string     `json:"sizes,omitempty"`  // what the depth and the stop of the head say: a word of TopSizes
	Depth  string     `json:"depth"`            // level, from the front to the back; where Right is given, at the left end; before a corner along the left wall, on the boards
	Right  string     `json:"right,omitempty"`  // the depth at the right end, where it is another; before a corner along the right wall
	Fall   string     `json:"fall,omitempty"`   // so much to the foot, or to the metre
	Gap    string     `json:"gap,omitempty"`    // of the soft joints where it meets walls; left out: the joint
	Corner string     `json:"corner,omitempty"` // how its edge is made, as an outside corner: "lap" (default), "mitre", "profile", "bullnose"
	Laps   string     `json:"laps,omitempty"`   // of a lap or bullnose: the "top" (default) or the "front"
	Trim   string     `json:"trim,omitempty"`   // of a profile or bullnose: the name of one of Job.Trims
	Face   InsideFace `json:"face,omitzero"`    // what is laid on it; left out: the wall's tile, going on
}

// Tops of a wall. A seat and a ledge meet a wall behind; a curb and the cap of a half
// wall have a far edge, which is made as the front one.
const (
	SeatTop  Kind = "seat"
	LedgeTop Kind = "ledge"
	CurbTop  Kind = "curb"
	CapTop   Kind = "cap"
)

// TopKinds lists the tops in the words of the job file.
func TopKinds() []string {
	return []string{string(SeatTop), string(LedgeTop), string(CurbTop), string(CapTop)}
}

// TopSizes says what the sizes of a top are measured between: tile, or boards.
func TopSizes() []string { return []string{string(Finished), string(Lined)} }

// TopFound is a top read and checked. Depths are finished ones: from the face of the
// wall's tile to the face of the tile behind, or to the far edge.
type TopFound struct {
	Kind        Kind
	Left, Right length.Length  // how deep it is at its ends
	Corner      *CornerTop     // of the two walls that it lies between, or nil; then Left and Right run along them, on the boards
	Fall        length.Length  // to one FallRun
	Gap         *length.Length // of the soft joints where it meets walls; nil: the joint
	How         Kind           // Lap, Mitre, Profile or Bullnose
	Laps        bool           // its tile laps over the edge of the wall's
	Strip       *TrimFound     // the trim along its edges, or nil
	Face        FaceFound
	Lined       length.Length // how far its finished edge stands over the stop that was typed
}

// Open tells whether the top has a far edge; else it meets a wall behind.
func (t *TopFound) Open() bool { return t.Kind == CurbTop || t.Kind == CapTop }

// Thick is the thickness of what is laid on it: tile, or a slab.
func (t *TopFound) Thick(r Room) length.Length { return t.Face.Cover - r.Bed }

// Behind is how far behind the finished edge its tile ends, at the front and at every
// open edge: at a lap of its own flush with the wall's face, under the wall's lap a
// joint behind the wall's tile, beside trim a joint before that.
func (t *TopFound) Behind(r Room) length.Length {
	switch {
	case t.How == Mitre:
		return 0
	case t.How == Profile || t.Laps:
		return t.Strip.Inset(r.Joint)
	}
	return r.Tile.Thickness + r.Joint
}

// HidesCuts tells whether a cut edge of its tile does not show along the front: it is mitred, under a profile, or in the
// joint behind bullnose or the wall's own tile.
func (t *TopFound) HidesCuts() bool { return t.How != Lap || !t.Laps }

// under is how far under the finished edge the wall's tile ends, but for trim that
// stands on the wall. Under a lap of the top it ends a joint under the back of its tile:
// with 5/16 in tile and joints of 1/8 in 7/16 in under the finished height.
func (t *TopFound) under(thick, joint length.Length) length.Length {
	if t.How == Mitre || t.How == Profile || !t.Laps {
		return 0
	}
	return thick + joint
}

// Rise is how much higher the top lies at its back than at its front, to the nearest
// unit, where it is so deep. A fall of 1/4 in to the foot is 0.104 in on 5 in.
func (t *TopFound) Rise(deep length.Length, s length.System) length.Length {
	run := int64(FallRun(s))
	return length.Length((2*int64(t.Fall)*int64(deep) + run) / (2 * run))
}

// Deepest is the greater depth of the two ends, in a corner that from the front to the corner.
func (t *TopFound) Deepest() length.Length {
	if t.Corner != nil {
		return t.Corner.Peak.Y
	}
	return max(t.Left, t.Right)
}

// Shallowest is the smaller depth of the two ends, in a corner that from the front to the corner.
func (t *TopFound) Shallowest() length.Length {
	if t.Corner != nil {
		return t.Corner.Peak.Y
	}
	return min(t.Left, t.Right)
}

// Inset is how far the wall's tile ends under the stop that was typed: the trim's width
// and a joint, or what the top takes.
func (h HeadFound) Inset(r Room) length.Length {
	in := h.Trim.Inset(r.Joint)
	if t := h.under(); t != nil {
		in += t.under(t.Thick(r), r.Joint) - t.Lined
	}
	return in
}

// under is the top over the head: its own, or that of the wall round the corner.
func (h HeadFound) under() *TopFound {
	if h.Top == nil {
		return h.Beneath
	}
	return h.Top
}

// Mitred tells whether the edge of tile at the head is mitred.
func (h HeadFound) Mitred() bool { t := h.under(); return t != nil && t.How == Mitre }

// deepestTop bounds the depth of a top: deeper is a platform.
const deepestTop = 4 * length.Foot

// top reads the top of a wall, whose head has been read; what it says of the head
// moves the head's stop and may put trim there.
func (r *resolver) top(p path, t *Top, head *HeadFound) {
	if t == nil {
		return
	}
	if head.Meets {
		r.faults.add(p, "a top", "nothing here: a top lies on a wall whose head stops at a height")
		return
	}
	found := &TopFound{Kind: r.kind(value{p.dot("kind"), t.Kind}, SeatTop, LedgeTop, CurbTop, CapTop), How: Lap}
	sizes := Size(r.word(value{p.dot("sizes"), t.Sizes}, TopSizes()))
	deep := bounds{1, deepestTop}
	found.Left = r.length(value{p.dot("depth"), t.Depth}, deep)
	found.Right = r.or(value{p.dot("right"), t.Right}, found.Left, deep)
	r.topBehind(p, t, found)
	found.Fall = r.or(value{p.dot("fall"), t.Fall}, UsualFall(r.units), bounds{0, FallRun(r.units) / 4})
	found.Gap = r.chosen(value{p.dot("gap"), t.Gap}, bounds{0, r.around.Sealant})
	r.topFace(p.dot("face"), t.Face, found)
	r.topEdge(p, t, found)
	if sizes == Lined {
		found.lined(r.around)
	}
	r.deepEnough(p, t, found)
	head.Top = found
	head.edgedBy(found)
}

// topFace reads what is laid on a top.
func (r *resolver) topFace(p path, f InsideFace, found *TopFound) {
	if f.Cased {
		r.faults.add(p.dot("cased"), "true", "nothing here: leave the top out where it gets no tile")
	}
	r.unused("the depth of a top stands beside its kind", value{p.dot("depth"), f.Depth})
	r.unused("sizes of a top are those of tile or of boards", value{p.dot("lining"), f.Lining})
	f.Cased, f.Depth, f.Lining = false, "", ""
	found.Face = r.face(p, f, WallTop, Niche, 0)
}

// topEdge reads how the edge of a top is made. A profile, or a bullnose on the wall,
// stands along the wall's head.
func (r *resolver) topEdge(p path, t *Top, found *TopFound) {
	if t.Corner != "" {
		found.How = r.kind(value{p.dot("corner"), t.Corner}, Lap, Mitre, Profile, Bullnose)
	}
	if found.Face.Slab > 0 && (found.How == Profile || found.How == Bullnose) {
		r.faults.add(p.dot("corner"), quote(t.Corner)+" round a slab", "a lap or a mitre: a slab has an edge of its own")
		return
	}
	found.Strip = r.strip(p, End{Corner: t.Corner, Trim: t.Trim}, found.How)
	switch v := (value{p.dot("laps"), t.Laps}); {
	case found.How == Mitre || found.How == Profile:
		r.unused("at a "+string(found.How)+" neither laps", v)
	case t.Laps == "":
		found.Laps = true
	default:
		found.Laps = r.choice(v, "top", "front") == "top"
	}
}

// lined turns sizes from board to board into finished ones. Behind an open edge there
// stands tile as on the front, before a wall the tile of that wall.
func (t *TopFound) lined(r *Room) {
	front := r.Bed + r.Tile.Thickness
	more := 2 * front
	if !t.Open() { // in a corner both are said on the boards
		more = 0
	}
	t.Left, t.Right, t.Lined = t.Left+more, t.Right+more, t.Face.Cover
}

// deepEnough refuses a top of which its edges and soft joints leave nothing.
func (r *resolver) deepEnough(p path, t *Top, found *TopFound) {
	if found.Corner != nil {
		return // topInCorner does
	}
	gap := r.around.Joint
	if found.Gap != nil {
		gap = *found.Gap
	}
	least := found.Behind(*r.around) + gap
	if found.Open() {
		least = 2 * found.Behind(*r.around)
	}
	say := func(p path, text string, deep length.Length) {
		if text != "" && deep > 0 && deep <= least {
			r.faults.add(p, quote(text), "more than "+least.Plain(r.units, r.units.FineStep())+", which its edges take")
		}
	}
	say(p.dot("depth"), t.Depth, found.Left)
	say(p.dot("right"), t.Right, found.Right)
}

// topFits refuses a top on a wall so narrow that its ends leave nothing.
func (r *resolver) topFits(p path, w WallFound) {
	t := w.Head.Top
	if t == nil || w.Width == 0 {
		return
	}
	left, right := w.Field()
	least := 2 * (t.Behind(*r.around) + r.around.Joint + r.around.Bed + r.around.Tile.Thickness)
	if wide := right - left; wide <= least && wide > 0 {
		r.faults.add(p, "a top on a wall with "+wide.Plain(r.units, r.units.FineStep())+" of tile",
			"a wall with more than "+least.Plain(r.units, r.units.FineStep())+", or no top on it")
	}
}

// edgedBy lets the head end as the top that lies on it needs it.
func (h *HeadFound) edgedBy(t *TopFound) {
	if t.How == Profile || t.How == Bullnose && !t.Laps {
		h.Trim = t.Strip
	}
	switch {
	case t.How == Bullnose && !t.Laps:
		h.Finish = Bullnose
	case h.Trim == nil:
		h.Finish = OutsideCorner
	}
}

// crownless refuses what says how a head ends where its top does.
func (r *resolver) crownless(p path, h Head, top *Top) {
	if top == nil || h.Meets != "" {
		return
	}
	r.unused("the edge under a top is made as the top says", value{p.dot("finish"), h.Finish}, value{p.dot("trim"), h.Trim})
}

// Of names a top with its wall: "seat of bench", and "curb" of one that is called so.
func (t *TopFound) Of(wall string) string {
	if wall == string(t.Kind) {
		return wall
	}
	return fmt.Sprintf("%s of %s", t.Kind, wall)
}
