package survey

import "coursewright/layout/length"

// deepest bounds the depth of a niche or window: over any wall of a house.
const deepest = 24 * length.Inch

// inside reads the inside of a niche or window. The tile, the bed and the joint
// of the room have been read before.
func (r *resolver) inside(p path, o Opening, kind Kind, across bounds) *InsideFound {
	in := o.Inside
	found := &InsideFound{Flush: in.Front == "flush", Behind: in.Behind}
	if in.Studs != nil {
		found.Bay = r.bay(p.dot("studs"), *in.Studs, across)
	}
	sizes := r.word(value{p.dot("sizes"), in.Sizes}, Sizes())
	is := r.word(value{p.dot("depthIs"), in.DepthIs}, Sizes())
	if is == "" {
		is = sizes
	}
	depth := r.length(value{p.dot("depth"), in.Depth}, bounds{1, deepest})
	lining := r.or(value{p.dot("lining"), in.Lining}, r.usual(length.Inch/2, 13*length.Millimetre), bounds{0, thickest})
	r.word(value{p.dot("front"), in.Front}, Fronts())
	found.Gap = r.chosen(value{p.dot("gap"), in.Gap}, bounds{0, r.around.Sealant})
	found.Fall = r.or(value{p.dot("fall"), in.Fall}, UsualFall(r.units), bounds{0, FallRun(r.units) / 4})
	found.Tolerance = r.or(value{p.dot("tolerance"), in.Tolerance}, 0, bounds{0, thickest})
	r.word(value{p.dot("behind"), in.Behind}, Behinds())
	for i, f := range []InsideFace{in.Back, in.Left, in.Right, in.Sill, in.Top} {
		found.Faces[i] = r.face(p.dot(FaceName(i).String()), f, FaceName(i), kind, lining)
	}
	found.deepen(depth, Size(is), lining, r.around.Bed+r.around.Tile.Thickness)
	for i, f := range []InsideFace{in.Back, in.Left, in.Right, in.Sill, in.Top} {
		if d := r.chosen(value{p.dot(FaceName(i).String() + ".depth"), f.Depth}, bounds{1, deepest}); d != nil && found.Faces[i].Tiled {
			found.Faces[i].Depth += *d - depth
		}
	}
	return found
}

// word reads a word of a list that may be left out.
func (r *resolver) word(v value, words []string) string {
	if v.text == "" {
		return ""
	}
	return r.choice(v, words...)
}

// bay reads the faces of two studs.
func (r *resolver) bay(p path, s Studs, across bounds) *Span {
	before := len(r.faults)
	bay := Span{r.length(value{p.dot("left"), s.Left}, across), r.length(value{p.dot("right"), s.Right}, across)}
	switch {
	case len(r.faults) > before:
		return nil
	case bay.From >= bay.To:
		r.faults.add(p.dot("right"), quote(s.Right), "more than the "+s.Left+" of the left stud: the faces that look at each other")
		return nil
	}
	return &bay
}

// face reads one face of the inside.
func (r *resolver) face(p path, f InsideFace, name FaceName, kind Kind, lining length.Length) FaceFound {
	found := FaceFound{Tiled: !f.Cased, Lining: r.or(value{p.dot("lining"), f.Lining}, lining, bounds{0, thickest})}
	if kind == Window && name == BackFace {
		if f != (InsideFace{}) {
			r.faults.add(p, "a back", "nothing here: a window has none")
		}
		return FaceFound{}
	}
	if name == BackFace {
		r.unused("the back is as deep as the inside", value{p.dot("depth"), f.Depth})
	} else if kind == Niche {
		r.unused("in a niche every side is as deep as the inside", value{p.dot("depth"), f.Depth})
	}
	if f.Slab != "" {
		found.Slab = r.length(value{p.dot("slab"), f.Slab}, bounds{1, thickest})
	}
	thick := r.around.Tile.Thickness
	if f.Tile != nil {
		t := r.tile(p.dot("tile"), *f.Tile, Measure{Plain: f.Joint})
		found.Tile, thick = &t, t.Thickness
		if f.Bond == nil {
			r.sheeted(p.dot("tile.sheet"), r.around.Bond, t, r.around.Joint)
		}
	}
	found.Joint = r.or(value{p.dot("joint"), f.Joint}, r.around.Joint, bounds{0, widestJoint})
	if f.Bond != nil {
		tile := r.around.Tile
		if found.Tile != nil {
			tile = *found.Tile
		}
		b := r.bond(p.dot("bond"), *f.Bond, tile, []length.Length{found.Joint})
		found.Bond = &b
	} else if found.Tile != nil && name == BackFace {
		r.goesOn(p.dot("bond").dot("kind"), *found.Tile, found.Joint)
	}
	r.clashes(p, f)
	found.AtSill = r.begin(p.dot("begin"), f, name)
	switch {
	case !found.Tiled:
		return FaceFound{Lining: found.Lining}
	case found.Slab > 0:
		thick = found.Slab
	}
	found.Cover = r.around.Bed + thick
	return found
}

// begin tells whether the courses of a side begin anew on the sill.
func (r *resolver) begin(p path, f InsideFace, name FaceName) bool {
	switch {
	case f.Begin == "":
		return false
	case name != LeftFace && name != RightFace:
		r.faults.add(p, quote(f.Begin), "nothing here: only the left and the right side stand on the sill")
	case f.Cased || f.Slab != "":
		r.faults.add(p, quote(f.Begin), "nothing here: a side without tile has no courses")
	default:
		return r.word(value{p, f.Begin}, Beginnings()) != ""
	}
	return false
}

// goesOn refuses a tile of its own on the back of a niche that does not close in the wall's
// pattern, which goes on there where no other bond is picked.
func (r *resolver) goesOn(p path, t TileSize, joint length.Length) {
	b := r.around.Bond
	if b.Coursed() || t.Width == 0 || t.Height == 0 {
		return
	}
	if found, want := b.closes(r.units, t, joint); want != "" {
		r.faults.add(p, found, "a bond of its own, such as stack; as on the wall only "+want)
	}
}

// clashes refuses what cannot be on one face together.
func (r *resolver) clashes(p path, f InsideFace) {
	switch {
	case f.Cased && (f.Slab != "" || f.Tile != nil || f.Bond != nil):
		r.faults.add(p.dot("cased"), "true beside a tile, a bond or a slab", "one of them: a cased face has no tile")
	case f.Slab != "" && (f.Tile != nil || f.Bond != nil):
		r.faults.add(p.dot("slab"), quote(f.Slab)+" beside a tile or a bond", "one of them: a slab takes the place of tile")
	case f.Joint != "" && f.Tile == nil:
		r.faults.add(p.dot("joint"), quote(f.Joint), `nothing here: the joint is that of the room unless the face has a "tile" of its own`)
	}
}

// deepen works out the finished depth from a depth of another size: the tile of
// the wall, and before it its board, deepen a niche; its back takes from it what
// stands there.
func (in *InsideFound) deepen(depth length.Length, is Size, board, wall length.Length) {
	back := in.Faces[BackFace]
	switch is {
	case Rough:
		depth += board + wall - back.Lining - back.Cover
	case Lined:
		depth += wall - back.Cover
	}
	in.Depth = depth
	for i := range in.Faces {
		in.Faces[i].Depth = depth
	}
}

// place turns what was typed of an opening into what the tile of the wall
// leaves: where it is measured between board or studs, what stands on them is
// taken off. What is free between two studs is kept there, and what is measured
// may move by its tolerance.
func (o *OpeningFound) place(typed Opening, room *Room) {
	in := o.Inside
	side := func(f FaceName) length.Length {
		switch Size(typed.Inside.Sizes) {
		case Rough:
			return in.beside(f)
		case Lined:
			return in.lapped(f)
		}
		return in.lapped(f) - in.Faces[f].Cover
	}
	in.AsTyped = typed.Left != nil && side(LeftFace) == 0 && side(RightFace) == 0 && side(SillFace) == 0 && side(TopFace) == 0
	if typed.Left == nil && typed.Width == nil && in.Bay != nil {
		o.Left, o.Width = in.between(room)
	} else {
		o.Left, o.Width = moved(o.Left, o.Width, side(LeftFace), side(RightFace))
		o.Left, o.Width, o.Right = tolerant(o.Left, o.Width, in.Tolerance)
		in.Wide = o.Right != (Span{})
		if in.Bay != nil && o.Left.Free() && in.Tolerance == 0 {
			o.Left, o.Width = fitted(o.Left, o.Width, in.Bay.From+in.beside(LeftFace), in.Bay.To-in.beside(RightFace))
		}
	}
	if in.Bay != nil && o.Right == (Span{}) && (o.Left.Free() || o.Width.Free()) {
		o.Right = Span{in.Bay.From, in.Bay.To - in.beside(RightFace)}
	}
	o.Bottom, o.Height = moved(o.Bottom, o.Height, side(SillFace), side(TopFace))
	o.Bottom, o.Height, o.Top = tolerant(o.Bottom, o.Height, in.Tolerance)
	in.High = o.Top != (Span{})
}

// between is where an opening may begin in the bay and how wide it may be: no
// narrower than the widest that goes from joint to joint there, or two thirds of
// what the bay allows. Common practice, no source.
func (in *InsideFound) between(room *Room) (left, width Span) {
	from, to := in.Bay.From+in.beside(LeftFace), in.Bay.To-in.beside(RightFace)
	step := room.Tile.Width + room.Joint
	if !room.Bond.Plumb && room.Bond.Den > 1 {
		step /= length.Length(room.Bond.Den)
	}
	step = max(step, 1) // of a tile that was refused nothing is known
	most := to - from
	least := min(most, max((most-room.Joint)/step*step+room.Joint, (2*most+2)/3))
	most = max(most, least+1) // free, so that it counts as chosen; Right keeps it in the bay
	return Span{from, max(from, to-least)}, Span{least, most}
}

// moved takes what stands on both sides off a place and a size.
func moved(begin, size Span, before, after length.Length) (Span, Span) {
	return Span{begin.From + before, begin.To + before}, Span{size.From - before - after, size.To - before - after}
}

// tolerant lets a measured place and size move so far that neither edge leaves
// its own by more than the tolerance; end is where the far edge may lie.
func tolerant(begin, size Span, by length.Length) (_, _, end Span) {
	if by == 0 || begin.Free() || size.Free() {
		return begin, size, Span{}
	}
	far := begin.From + size.From
	return Span{begin.From - by, begin.To + by}, Span{max(1, size.From-2*by), size.To + 2*by}, Span{far - by, far + by}
}

// leavesRoom checks that an inside leaves something between its linings.
func (r *resolver) leavesRoom(p path, o *OpeningFound) {
	in := o.Inside
	say := func(l length.Length) string { return l.Plain(r.units, r.units.FineStep()) }
	if in.Bay != nil && in.Bay.To-in.Bay.From <= in.Needs(0) {
		r.faults.add(p.dot("inside.studs.right"), "a bay of "+say(in.Bay.To-in.Bay.From),
			"studs more than "+say(in.Needs(0))+" apart, which is what lining and tile take of it")
		return
	}
	if o.Width.From < 1 {
		r.faults.add(p.dot("width"), "nothing left between lining and tile", "more than "+say(in.Needs(0)))
	}
	if o.Height.From < 1 {
		r.faults.add(p.dot("height"), "nothing left between lining and tile", "more than "+say(in.beside(SillFace)+in.beside(TopFace)))
	}
	least := r.front(in) + r.around.Joint
	if in.Gap != nil {
		least = r.front(in) + *in.Gap
	}
	for i, f := range in.Faces {
		if FaceName(i) != BackFace && f.Tiled && f.Depth <= least {
			found := "a depth of " + say(f.Depth) + " between the tiles"
			if f.Depth <= 0 {
				found = "a depth that leaves nothing between the tiles"
			}
			r.faults.add(p.dot("inside.depth"), found,
				"at least "+say(least-f.Depth+r.units.FineStep())+" more: more than "+say(least)+" has to be left between them")
			return
		}
	}
}

// front is how far behind the face of the wall's tile the tile of an inside
// begins: nothing, or a joint behind the tile that laps over it.
func (r *resolver) front(in *InsideFound) length.Length {
	if in.Flush {
		return 0
	}
	return r.around.Tile.Thickness + r.around.Joint
}
