package layout_test

import (
	"bytes"
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"coursewright/layout"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The rest of the oracle for tile in patterns: small pieces, work and bare wall, read back from outlines and faces. What it takes
// as read are the shape of a wall and what its edges meet.

// termsPlan is what it reads.
type termsPlan struct {
	Merit struct {
		Bare                      float64
		Unworkable, Slivers, Work int
		OutOfSight                struct {
			Bare                float64
			Unworkable, Slivers int
		}
	}
	Walls []termsWall
}

type termsWall struct {
	Name   string
	Pieces []termsPiece
	Runs   []patternRun
}

type termsPiece struct {
	patternPiece
	Tile       [4]float64
	Kind       string
	High       float64
	Sliver     bool
	Unworkable bool
	Of         int
}

// smallUnder are the least widths under which a piece of a tile is a sliver, and unworkable, in millimetres: merit.md.
func smallUnder(units string, tile survey.TileSize, sliver, full float64) (slivers, hopeless float64) {
	cap, least := 50.0, 13.0
	if units != "mm" {
		cap, least = 50.8, 12.7
	}
	slivers = min(full/4, cap)
	if sliver > 0 {
		slivers = min(sliver, full/2)
	}
	return slivers, min(max(least, 1.5*tile.Thickness.Millimetres()), full/2)
}

// gradesOfPatterns wants the words for small pieces to be those of their least widths, and counts them by what is said:
// slivers, and what is unworkable.
func gradesOfPatterns(t require.TestingT, p layout.Plan, units string, w *termsWall, data string) (slivers, hopeless int) {
	for i := range w.Pieces {
		x := &w.Pieces[i]
		if x.Whole {
			continue
		}
		if x.Sliver {
			slivers++
		}
		if x.Unworkable {
			hopeless++
		}
		if len(x.Outline) == 0 || len(x.Cuts) == 0 {
			continue
		}
		tile := p.Room.Laid(bandOf(p, x.Band)).Tile
		under, never := smallUnder(units, tile, p.Room.Sliver.Millimetres(), leastWidth(x.Outline))
		for _, c := range []struct {
			limit  float64
			really bool
			what   string
		}{{never, x.Unworkable, "unworkable"}, {max(under, never), x.Unworkable || x.Sliver, "small"}} {
			if math.Abs(x.Least-c.limit) > 0.002 {
				require.Equal(t, x.Least < c.limit && !onlyPipes(x), c.really, "%s of %s, %.3f wide, is %s under %.3f\n%s", x.ID, w.Name, x.Least, c.what, c.limit, data)
			}
		}
	}
	return slivers, hopeless
}

func bandOf(p layout.Plan, name string) int {
	for i, b := range p.Room.Bands {
		if name != "" && b.Name == name {
			return i + 1
		}
	}
	return 0
}

// onlyPipes tells whether nothing but a pipe cuts a piece: that takes no width from it.
func onlyPipes(x *termsPiece) bool { return x.Kind == "hole" }

// kindByShape is how a piece of a pattern is cut, by its face and its tile: "" where it is too near to call.
func (x *termsPiece) kindByShape() string {
	kinds := map[string]bool{}
	for _, ring := range x.Face {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if x.onTile(a, b) {
				continue
			}
			kind := x.cutKind(a, b)
			if kind == "" {
				return ""
			}
			kinds[kind] = true
		}
	}
	var out []string
	for _, k := range []string{"rip", "cross cut", "taper", "angle cut"} {
		if kinds[k] {
			out = append(out, k)
		}
	}
	return strings.Join(out, ", ")
}

// onTile tells whether an edge of a face lies along a side of its tile.
func (x *termsPiece) onTile(a, b [2]float64) bool {
	for i, c := range x.Outline {
		d := x.Outline[(i+1)%len(x.Outline)]
		long := math.Hypot(d[0]-c[0], d[1]-c[1])
		off := func(p [2]float64) float64 { return math.Abs((p[0]-c[0])*(d[1]-c[1])-(p[1]-c[1])*(d[0]-c[0])) / long }
		if off(a) < 0.006 && off(b) < 0.006 {
			return true
		}
	}
	return false
}

// cutKind is that of one cut: by its slant to the side of the tile that it runs along most nearly.
func (x *termsPiece) cutKind(a, b [2]float64) string {
	least, long, side := math.Inf(1), 0.0, 0.0
	cut := math.Hypot(b[0]-a[0], b[1]-a[1])
	if cut < 1 {
		return ""
	}
	for i, c := range x.Outline {
		d := x.Outline[(i+1)%len(x.Outline)]
		l := math.Hypot(d[0]-c[0], d[1]-c[1])
		long = max(long, l)
		along := math.Abs((d[0]-c[0])*(b[0]-a[0])+(d[1]-c[1])*(b[1]-a[1])) / l
		off := math.Abs((d[0]-c[0])*(b[1]-a[1])-(d[1]-c[1])*(b[0]-a[0])) / l
		if slant := off / along; slant < least {
			least, side = slant, l
		}
	}
	switch by := least * cut; { // how far it leaves that side over its length
	case math.Abs(least-0.125) < 0.001, by > 0.0005 && by < 0.008:
		return ""
	case least > 0.125:
		return "angle cut"
	case by >= 0.008:
		return "taper"
	case len(x.Outline) == 4 && side > long-0.01 && x.square():
		return "rip"
	}
	return "cross cut"
}

// square tells whether a tile has square corners.
func (x *termsPiece) square() bool {
	a, b, c := x.Outline[0], x.Outline[1], x.Outline[2]
	return math.Abs((b[0]-a[0])*(c[0]-b[0])+(b[1]-a[1])*(c[1]-b[1])) < 0.01*math.Hypot(b[0]-a[0], b[1]-a[1])
}

// effortOf is the work that a piece takes, by its kind: 1 for a cut across, 2 for a rip, a taper or an angle cut, 4 for a
// hole, 5 for a notch; near an edge a hole takes 6 more, which its kind does not say.
func effortOf(kind string) (sum, more int) {
	for _, k := range strings.Split(kind, ", ") {
		sum += map[string]int{"cross cut": 1, "rip": 2, "taper": 2, "angle cut": 2, "hole": 4, "notch": 5}[k]
		if k == "hole" {
			more = 6
		}
	}
	return sum, more
}

// bareBySight walks along what the edges of a wall meet, and adds up where no piece is within the reach of sealant in a straight
// line, nor a joint further along. It gives by how much that may differ for its steps.
func bareBySight(p layout.Plan, w *layout.Wall, pieces []termsPiece) (bare, doubt float64) {
	const step = 0.2
	joint := int(math.Round(p.Room.Joint.Millimetres() / step))
	for _, ring := range w.Shape.Solid {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if a.On == 0 || a.Point == b.Point || !w.Shape.Sides[a.On].Meets {
				continue
			}
			l := along(a.Point, b.Point)
			gap := w.Shape.Sides[a.On].Gap.Millimetres()
			reach := p.Room.Sealant.Millimetres() * l.slope
			var near []bool
			for at := step / 2; at < l.long; at += step {
				near = append(near, inHole(w, l.place(at)) || reach >= gap && slices.ContainsFunc(pieces, func(x termsPiece) bool { return x.reaches(l, at, gap, reach) }))
			}
			was := true
			for k := range near {
				is := slices.Contains(near[max(0, k-joint):min(len(near), k+joint+1)], true)
				if !is {
					bare += step
				}
				if is != was {
					doubt += 2 * step
				}
				was = is
			}
			doubt += step
		}
	}
	return bare, doubt
}

// walk is an edge of a wall, from an end on, along the axis that it follows most; inside is to its left.
type walk struct {
	from        [2]float64
	way, into   [2]float64 // along the axis, and away from it
	long, slope float64    // along the axis; its true length over that
	rise        float64    // how far it leaves the axis inwards, per step along
}

func along(a, b plane.Point) walk {
	x, y := (b.X - a.X).Millimetres(), (b.Y - a.Y).Millimetres()
	l := walk{from: [2]float64{a.X.Millimetres(), a.Y.Millimetres()}}
	if math.Abs(y) >= math.Abs(x) {
		l.way, l.long = [2]float64{0, math.Copysign(1, y)}, math.Abs(y)
	} else {
		l.way, l.long = [2]float64{math.Copysign(1, x), 0}, math.Abs(x)
	}
	l.into = [2]float64{-l.way[1], l.way[0]}
	l.slope = math.Hypot(x, y) / l.long
	l.rise = (x*l.into[0] + y*l.into[1]) / l.long
	return l
}

// place is a place on the edge.
func (l walk) place(at float64) [2]float64 {
	return [2]float64{l.from[0] + at*(l.way[0]+l.rise*l.into[0]), l.from[1] + at*(l.way[1]+l.rise*l.into[1])}
}

// inHole tells whether a place on a wall is in the hole of a pipe, which no tile covers.
func inHole(w *layout.Wall, at [2]float64) bool {
	return slices.ContainsFunc(w.Found.Openings, func(o survey.OpeningFound) bool {
		return o.Kind == survey.Pipe && math.Hypot(at[0]-o.At.Millimetres(), at[1]-o.Up.Millimetres()) < o.Diameter.Millimetres()/2+3.2
	})
}

// reaches tells whether a piece is as near to a place on what an edge meets, a gap behind it.
func (x *termsPiece) reaches(l walk, at, gap, reach float64) bool {
	const slight = 0.005
	for _, ring := range x.Face {
		seen := func(c [2]float64) (u, v float64) {
			dx, dy := c[0]-l.from[0], c[1]-l.from[1]
			u = dx*l.way[0] + dy*l.way[1]
			return u - at, dx*l.into[0] + dy*l.into[1] - min(max(u, 0), l.long)*l.rise + gap
		}
		for i := range ring {
			u, v := seen(ring[i])
			p, q := seen(ring[(i+1)%len(ring)])
			p, q = p-u, q-v
			s := 0.0
			if long := p*p + q*q; long > 0 {
				s = min(1, max(0, -(u*p+v*q)/long))
			}
			if math.Hypot(u+s*p, v+s*q) <= reach+slight {
				return true
			}
		}
	}
	return false
}

// readTerms holds a plan to the terms that are read from it.
func readTerms(t require.TestingT, job survey.Job, data string) (bareFound bool) {
	p, err := layout.Now(job)
	require.NoError(t, err)
	file, err := p.File()
	require.NoError(t, err)
	var f termsPlan
	require.NoError(t, json.Unmarshal(file, &f))
	var slivers, hopeless, work, most int
	low, bare, doubt := false, 0.0, 0.0
	for i := range f.Walls {
		w := &f.Walls[i]
		s, h := gradesOfPatterns(t, p, job.Units, w, data)
		slivers, hopeless = slivers+s, hopeless+h
		for _, r := range w.Runs {
			low = low || r.Sight != "plain"
		}
		for k := range w.Pieces {
			x := &w.Pieces[k]
			if !x.Whole && len(x.Outline) > 0 && !strings.Contains(x.Kind, "notch") && !strings.Contains(x.Kind, "hole") {
				if is := x.kindByShape(); is != "" {
					require.Equal(t, is, x.Kind, "%s of %s\n%s", x.ID, w.Name, data)
				}
			}
			sum, more := effortOf(x.Kind)
			work, most = work+sum, most+sum+more
		}
		b, d := bareBySight(p, &p.Walls[i], w.Pieces)
		bare, doubt = bare+b, doubt+d
	}
	m := &f.Merit
	if !low {
		require.Equal(t, [2]int{slivers, hopeless}, [2]int{m.Slivers, m.Unworkable}, "slivers and unworkable pieces\n%s", data)
		require.Zero(t, m.OutOfSight.Slivers+m.OutOfSight.Unworkable)
	} else {
		require.GreaterOrEqual(t, m.Slivers+m.OutOfSight.Slivers, slivers, data)
		require.LessOrEqual(t, max(m.Slivers, m.OutOfSight.Slivers), slivers+hopeless, data)
	}
	require.True(t, work <= m.Work && m.Work <= most, "work is %d, said are %d to %d\n%s", m.Work, work, most, data)
	require.InDelta(t, bare, m.Bare+m.OutOfSight.Bare, doubt+0.5, "bare wall\n%s", data)
	return bare > 5
}

// The plans of jobs that ship with tile in patterns, of showers in patterns and of random rooms with bands in
// patterns of any kind state the slivers, the work and the bare wall of their pieces.
func TestPatternPlansStateTheirOtherTerms(t *testing.T) {
	bare, read := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		if !rare(t, 12) {
			return
		}
		data := patternsAnyWay.Draw(t, "room")
		if rapid.Bool().Draw(t, "a shower") {
			data = showerInPattern(t, rapid.IntRange(0, 199).Draw(t, "shower"))
		}
		job, err := survey.Read(data)
		require.NoError(t, err)
		if read++; readTerms(t, job, compacted(data)) {
			bare++
		}
	})
	t.Logf("%d rooms read, %d of them with bare wall", read, bare)
}

// compacted is a job file in one line.
func compacted(data []byte) string {
	var out bytes.Buffer
	if json.Compact(&out, data) != nil {
		return string(data)
	}
	return out.String()
}
