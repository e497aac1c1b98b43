package survey

import "slices"

// Sight is whether a boundary is seen by somebody who uses the room.
type Sight uint8

// What is low (the foot of a leg, the wall behind a door) counts last.
const (
	Plain Sight = iota
	Low
)

// sight reads whether a boundary is seen, and gives the default where the job
// does not say.
func (r *resolver) sight(v value, usual Sight) Sight {
	if v.text == "" {
		return usual
	}
	if r.choice(v, "plain", "low") == "low" {
		return Low
	}
	return Plain
}

// feet gives the sight of the segments of a base. A floor beside a tub, shower
// base or curb of the same wall is the foot of a leg, and out of sight.
func (r *resolver) feet(p path, typed []Segment, found []SegmentFound) {
	leg := slices.ContainsFunc(found, func(s SegmentFound) bool { return s.Meets.Rim() })
	for i, s := range typed {
		usual := Plain
		if leg && found[i].Meets == Floor {
			usual = Low
		}
		found[i].Sight = r.sight(value{p.at(i).dot("sight"), s.Sight}, usual)
	}
}
