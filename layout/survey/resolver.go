package survey

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"coursewright/layout/length"
)

// Bounds of a job, formats.md.
const (
	widestWall   = 40 * length.Metre
	leastTile    = 5 * length.Millimetre
	largestTile  = 3 * length.Metre
	widestJoint  = length.Inch
	thickest     = 2 * length.Inch
	mostPieces   = 200_000
	mostWalls    = 64
	mostOpenings = 200
	mostReadings = 500
	longestName  = 80
	longestTitle = 200
)

// resolver reads the fields of one job and gathers its faults.
type resolver struct {
	units    length.System
	faults   Faults
	readings int
	openings int
	fitted   int    // fixtures
	sound    []bool // by wall: each of its fields could be read
	around   *Room  // the room as far as it is read: what is laid on its walls
}

// value is a typed field with its place.
type value struct {
	path path
	text string
}

// bounds are the least and the greatest length a field may have.
type bounds struct{ low, high length.Length }

// text says the bounds as marks of a tape inside them: from 7/32" where the
// least is 5 mm. Where there is no such mark it says them exactly.
func (b bounds) text(s length.System) string {
	step := s.FineStep()
	low := -length.Length(length.DivFloor(-b.low, step)) * step
	high := length.Length(length.DivFloor(b.high, step)) * step
	if low > high {
		low, high = b.low, b.high
	}
	if low == high {
		return "a length of " + low.Format(s, 0)
	}
	return "a length from " + low.Format(s, 0) + " to " + high.Format(s, 0)
}

// want says what bounds ask for where nothing too long was found: of a length that
// only the widest wall bounds, the least alone, because no room comes near that.
func (b bounds) want(s length.System) string {
	switch {
	case b == upright():
		return "a length, with a minus where it is under 0"
	case b.high != widestWall || b.low < 0:
		return b.text(s)
	case b.low == 0:
		return "a length of 0 or more"
	case b.low == 1:
		return "a length over 0"
	}
	return "a length of at least " + b.low.Format(s, 0)
}

// usual picks the default of formats.md for the job's system.
func (r *resolver) usual(imperial, metric length.Length) length.Length {
	if r.units == length.Metric {
		return metric
	}
	return imperial
}

// length reads a length within bounds; a fault gives zero.
func (r *resolver) length(v value, b bounds) length.Length { return r.read(v, b, length.Parse) }

// printed reads a length that may be one a plan has printed, to 0.001 mm.
func (r *resolver) printed(v value, b bounds) length.Length { return r.read(v, b, length.ParsePrinted) }

// read reads a length by one of the parsers.
func (r *resolver) read(v value, b bounds, parse func(string, length.System) (length.Length, error)) length.Length {
	l, err := parse(v.text, r.units)
	var refused *length.ParseError
	before := len(r.faults)
	switch {
	case v.text == "":
		r.faults.add(v.path, "nothing", b.want(r.units))
	case errors.As(err, &refused):
		r.faults.add(v.path, quote(v.text)+", which "+refused.Problem, refused.Want)
	case l > b.high:
		r.faults.add(v.path, quote(v.text), b.text(r.units))
	case l < b.low:
		r.faults.add(v.path, quote(v.text), b.want(r.units))
	default:
		return l
	}
	if len(r.faults) > before {
		r.faults[before].Meant = r.meant(v.text, b)
	}
	return 0
}

// or reads a length that has a default.
func (r *resolver) or(v value, usual length.Length, b bounds) length.Length {
	if v.text == "" {
		return usual
	}
	return r.length(v, b)
}

// span reads a mark: measured, or free inside a range.
func (r *resolver) span(p path, m *Mark, b bounds) Span {
	const want = `{"at": …} for a measured place or {"from": …, "to": …} for a free one`
	switch {
	case m == nil:
		r.faults.add(p, "nothing", want)
	case m.At != "" && (m.From != "" || m.To != ""):
		r.faults.add(p, "a place and a range", want)
	case m.At != "":
		at := r.length(value{p.dot("at"), m.At}, b)
		return Span{at, at}
	case m.From == "" && m.To == "":
		return Span{r.length(value{p.dot("at"), ""}, b), 0}
	default:
		return r.free(p, m, b)
	}
	return Span{}
}

// free reads the range of a free mark.
func (r *resolver) free(p path, m *Mark, b bounds) Span {
	before := len(r.faults)
	s := Span{r.length(value{p.dot("from"), m.From}, b), r.length(value{p.dot("to"), m.To}, b)}
	if len(r.faults) == before && s.From > s.To {
		r.faults.add(p.dot("to"), quote(m.To), "a length of at least "+m.From)
	}
	return s
}

// choice reads a word out of a list.
func (r *resolver) choice(v value, words ...string) string {
	for _, w := range words {
		if v.text == w {
			return w
		}
	}
	r.faults.add(v.path, quote(v.text), "one of "+strings.Join(words, ", "))
	return ""
}

// name reads the name of a wall or an opening, which none of taken may have.
func (r *resolver) name(v value, taken map[string]bool) string {
	switch {
	case strings.TrimSpace(v.text) == "":
		r.faults.add(v.path, quote(v.text), "a name")
	case !r.label(v, longestName):
	case taken[v.text]:
		r.faults.add(v.path, quote(v.text)+" a second time", "a name of its own")
	}
	taken[v.text] = true
	return v.text
}

// label checks that a text can be printed on one line.
func (r *resolver) label(v value, longest int) bool {
	switch {
	case utf8.RuneCountInString(v.text) > longest:
		r.faults.add(v.path, quote(v.text), fmt.Sprintf("at most %d letters", longest))
	case strings.ContainsFunc(v.text, unseen):
		r.faults.add(v.path, quote(v.text)+" with control characters", "letters on one line")
	default:
		return true
	}
	return false
}

// unused refuses fields that mean nothing where they stand.
func (r *resolver) unused(why string, fields ...value) {
	for _, v := range fields {
		if v.text != "" {
			r.faults.add(v.path, quote(v.text), "nothing here: "+why)
		}
	}
}

// count adds n to a tally and refuses the item that goes past its bound.
func (r *resolver) count(p path, tally *int, n, most int, what string) {
	before := *tally
	*tally += n
	if before <= most && *tally > most {
		r.faults.add(p, fmt.Sprintf("more than %d %s in the job", most, what), fmt.Sprintf("at most %d", most))
	}
}
