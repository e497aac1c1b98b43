package survey

// bandHeight reads how high a band stands that is laid in a pattern. Courses say it
// of others.
func (r *resolver) bandHeight(p path, b Band, found *BandFound) {
	here := value{p.dot("height"), b.Height}
	switch {
	case found.Bond.Coursed() || found.ToHead:
		r.unused("a height belongs to a band that is laid in a pattern and ends under the head", here)
	default:
		found.Height = r.length(here, bounds{leastTile, widestWall})
	}
}

// throughPatterns refuses what cannot stand with a pattern that is cut at the edges of
// bands: openings that may move into one, and strips that part the field.
func (r *resolver) throughPatterns(p path, room *Room) {
	for i, b := range room.Bands {
		if room.Bond.Coursed() && b.Bond.Coursed() {
			continue
		}
		for _, k := range b.Walls {
			w := room.Walls[k]
			if room.Bond.Coursed() && len(w.PartedBy()) > 0 {
				r.faults.add(p.at(i).dot("bond"), "a band in a pattern, where a strip goes from base to head", "stack or running bond in level courses, or a strip between heights")
				return
			}
			if !room.Bond.Coursed() {
				r.clearOfBand(p.at(i), b, w, room)
			}
		}
	}
}

// clearOfBand refuses a band where an opening that is free may stand.
func (r *resolver) clearOfBand(p path, b BandFound, w WallFound, room *Room) {
	joint := room.Joints[len(room.Joints)-1]
	low, high := b.Bottom.From-joint, b.Top(b.Bottom.To, joint)+joint
	for _, o := range w.Openings {
		e := o.Reach()
		if o.Kind == Pipe || o.Measured() || e.Top <= low || e.Bottom >= high {
			continue
		}
		r.faults.add(p.dot("bottom"), "a band where "+clip(o.Key())+" of "+clip(w.Name)+" may stand",
			"a height clear of it, or its place measured: "+e.Bottom.Format(r.units, r.units.FineStep())+" to "+e.Top.Format(r.units, r.units.FineStep())+" is its reach")
		return
	}
}
