package survey

import (
	"fmt"
	"slices"

	"coursewright/layout/length"
)

// base reads the segments from left to right; each begins where the one before
// it ends. A segment with one reading is level: it reaches from the segment
// before to the one after it.
func (r *resolver) base(p path, segments []Segment, across bounds, sealant length.Length) []SegmentFound {
	if len(segments) == 0 {
		r.faults.add(p, "no segment", "at least one segment")
	}
	var found []SegmentFound
	before := len(r.faults)
	for i, s := range segments {
		found = append(found, r.segment(p.at(i), s, across, sealant))
	}
	if len(r.faults) == before {
		r.join(p, found, across)
	}
	r.feet(p, segments, found)
	r.legs(p, segments, found)
	r.coves(p, segments, found)
	return found
}

func (r *resolver) segment(p path, s Segment, across bounds, sealant length.Length) SegmentFound {
	found := SegmentFound{
		Meets: r.kind(value{p.dot("meets"), s.Meets}, Tub, ShowerBase, Curb, Seat, Floor),
		Gap:   r.gap(value{p.dot("gap"), s.Gap}, sealant),
	}
	p = p.dot("readings")
	before := len(r.faults)
	r.some(p, len(s.Readings))
	for i, d := range s.Readings {
		found.Readings = append(found.Readings, Reading{
			At:    r.reading(value{p.at(i).dot("at"), d.At}, across, amidst(i, len(s.Readings))),
			Value: -r.reading(value{p.at(i).dot("drop"), d.Drop}, upright(), amidst(i, len(s.Readings))),
		})
	}
	r.ascending(p, "at", found.Readings, before)
	return found
}

// some refuses a boundary without readings.
func (r *resolver) some(p path, n int) {
	if n == 0 {
		r.faults.add(p, "no reading", "at least one reading")
	}
	r.count(p, &r.readings, n, mostReadings, "readings")
}

// join stretches the segments of one reading and checks that every segment
// begins where the one before it ends and has room for the gaps at its steps.
func (r *resolver) join(p path, segments []SegmentFound, across bounds) {
	end, gaps := across.low, length.Length(0)
	for i := range segments {
		s := &segments[i]
		next := across.high
		if i+1 < len(segments) {
			next = segments[i+1].Readings[0].At
			gaps += segments[i+1].Gap
		}
		if len(s.Readings) == 1 && len(segments) > 1 {
			s.Readings = stretch(s.Readings[0], end, next, i == 0, i == len(segments)-1)
		}
		from, to := s.Readings[0].At, s.Readings[len(s.Readings)-1].At
		if i > 0 && from != end {
			r.faults.add(p.at(i).dot("readings[0].at"), from.Plain(r.units, 0),
				end.Plain(r.units, 0)+", where the segment before it ends")
			return
		}
		if outer := i == 0 || i == len(segments)-1; len(segments) > 1 && r.narrow(from, to, next, gaps, i, outer) {
			r.faults.add(p.at(i).dot("readings"), "a segment with no width left between its steps", "readings further apart")
			return
		}
		end, gaps = to, s.Gap
	}
}

// narrow tells whether a segment has no room: an outer one reaches the wall's
// end, an inner one keeps the gaps of its neighbours.
func (r *resolver) narrow(from, to, next, gaps length.Length, i int, outer bool) bool {
	switch {
	case outer && i == 0:
		return to <= gaps
	case outer:
		return next-from <= gaps
	}
	return to-from <= gaps
}

// stretch makes a level segment of one reading, from where the one before it
// ends to where the next begins.
func stretch(one Reading, end, next length.Length, first, last bool) []Reading {
	from, to := end, next
	if first {
		from = min(one.At, next)
	}
	if last {
		to = max(one.At, end)
	}
	if one.At < from || one.At > to || from == to {
		return []Reading{one}
	}
	return []Reading{{from, one.Value}, {to, one.Value}}
}

// head reads where tile ends at the top.
func (r *resolver) head(p path, h Head, across bounds, sealant length.Length) HeadFound {
	found := HeadFound{Finish: Kind(h.Finish), Sight: r.sight(value{p.dot("sight"), h.Sight}, Plain)}
	if r.either(p, h.Meets, h.Stops, "ceiling") {
		found.Meets = true
		found.Gap = r.gap(value{p.dot("gap"), h.Gap}, sealant)
		found.Readings = r.rises(p.dot("readings"), h.Readings, across)
		r.unused("a finish belongs to a head that stops", value{p.dot("finish"), h.Finish}, value{p.dot("trim"), h.Trim})
		return found
	}
	r.unused("a gap belongs to a head that meets a ceiling", value{p.dot("gap"), h.Gap})
	if len(h.Readings) > 0 {
		r.faults.add(p.dot("readings"), "readings", "nothing here: readings belong to a head that meets a ceiling")
	}
	if h.Stops != nil {
		found.Stops = r.span(p.dot("stops"), h.Stops, upright())
	}
	found.Finish = r.finish(value{p.dot("finish"), h.Finish})
	found.Trim = r.edged(p.dot("trim"), h.Trim, found.Finish)
	return found
}

func (r *resolver) rises(p path, rises []Rise, across bounds) []Reading {
	var found []Reading
	before := len(r.faults)
	r.some(p, len(rises))
	for i, h := range rises {
		found = append(found, Reading{
			At:    r.reading(value{p.at(i).dot("at"), h.At}, across, amidst(i, len(rises))),
			Value: r.reading(value{p.at(i).dot("rise"), h.Rise}, upright(), amidst(i, len(rises))),
		})
	}
	r.ascending(p, "at", found, before)
	return found
}

// headOverBase checks at every reading of either that the head, less its gap,
// stands over the base with its gap; both are straight in between.
func (r *resolver) headOverBase(p path, w WallFound) {
	for i, s := range w.Base {
		for _, x := range w.places(i) {
			base, head := At(s.Readings, x)+s.Gap, w.Head.least(x)
			if head > base {
				continue
			}
			if r.turned(p.dot("base").at(i).dot("readings"), s, head) {
				return
			}
			r.low(p.dot("head"), w.Head, s, x)
			return
		}
	}
}

// low refuses a head that at x is no higher than the base there, at the box it was typed in: at a reading of the
// ceiling, or at the height at which tile stops. A reading with a minus would fit without it.
func (r *resolver) low(p path, h HeadFound, s SegmentFound, x length.Length) {
	what := Kind("base")
	if s.Meets == Seat {
		what = Seat // of a bench that meets the ceiling, say
	}
	base := At(s.Readings, x) + s.Gap
	stands := fmt.Sprintf(", where the %s with its gap stands at %s", what, base.Plain(r.units, 0))
	k := slices.IndexFunc(h.Readings, func(read Reading) bool { return read.At == x })
	switch {
	case k >= 0:
		read := h.Readings[k].Value
		found := Fault{Path: string(p.dot("readings").at(k).dot("rise")), Found: quote(read.Plain(r.units, 0)) + stands,
			Want: fmt.Sprintf("how far the ceiling is above the line, so that it is above the %s", what)}
		if read < 0 && -read-h.Gap > base {
			found.Meant = (-read).Plain(r.units, 0)
		}
		r.faults = append(r.faults, found)
	case !h.Meets && !h.Stops.Free():
		r.faults.add(p.dot("stops.at"), quote(h.Stops.From.Plain(r.units, 0))+stands, fmt.Sprintf("a height above the %s everywhere", what))
	default:
		r.faults.add(p, fmt.Sprintf("the head %s at %s%s", h.least(x).Plain(r.units, 0), x.Plain(r.units, 0), stands),
			fmt.Sprintf("a head above the %s everywhere", what))
	}
}

// turned refuses a drop that was typed with a minus and so stands over the head, at the drop: nobody
// looks for that at the head.
func (r *resolver) turned(p path, s SegmentFound, head length.Length) bool {
	for i, d := range s.Readings {
		if d.Value > 0 && s.Gap+d.Value >= head && s.Gap-d.Value < head {
			typed := d.Value.Plain(r.units, 0)
			r.faults = append(r.faults, Fault{Path: string(p.at(i).dot("drop")), Found: quote("-"+typed) + ", which stands over the head",
				Want: "how far it is below the line, without a minus", Meant: typed})
			return true
		}
	}
	return false
}

// places gives the x over segment i where it or the head may bend.
func (w WallFound) places(i int) []length.Length {
	readings := w.Base[i].Readings
	from, to := readings[0].At, readings[len(readings)-1].At
	if i == 0 {
		from = 0
	}
	if i == len(w.Base)-1 {
		to = w.Width
	}
	xs := []length.Length{from, to}
	for _, r := range slices.Concat(readings, w.Head.Readings) {
		if from < r.At && r.At < to {
			xs = append(xs, r.At)
		}
	}
	return xs
}

// least is the lowest the head may be at x, with its gap.
func (h HeadFound) least(x length.Length) length.Length {
	if h.Meets {
		return At(h.Readings, x) - h.Gap
	}
	return h.Stops.From
}

// reach gives the lowest height of the base and the greatest of the head.
func (w WallFound) reach() (low, high length.Length) {
	low, high = w.Base[0].Readings[0].Value, w.Head.Stops.To
	for _, s := range w.Base {
		for _, r := range s.Readings {
			low = min(low, r.Value)
		}
	}
	if !w.Head.Meets {
		return low, high
	}
	high = w.Head.Readings[0].Value
	for _, r := range w.Head.Readings {
		high = max(high, r.Value)
	}
	return low, high
}

// amidst tells whether a reading stands between two others, so that it may be left out.
func amidst(i, n int) bool { return 0 < i && i < n-1 }

// reading reads a figure of a reading, and says of one that is missing when the whole reading may be.
func (r *resolver) reading(v value, b bounds, spare bool) length.Length {
	before := len(r.faults)
	l := r.length(v, b)
	if spare && v.text == "" && len(r.faults) > before {
		r.faults[before].Want += ", or empty both of its figures to leave the reading out"
	}
	return l
}
