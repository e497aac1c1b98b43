package drawing

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout"
	"coursewright/layout/finding"
	"coursewright/layout/fixture"
	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
	"coursewright/layout/trim"
	"coursewright/web/drawing/sample"
)

// randomRoom is a room that may be measured: one to four walls with corners
// that lean, ceilings that rake, tub fronts, niches, windows above where the tile
// stops, pipes with long names, and a set-out chosen by chance.
type randomRoom struct{ *rand.Rand }

func (r randomRoom) pick(low, high int) string { return fmt.Sprintf("%d", low+r.IntN(high-low+1)) }

func (r randomRoom) one(of ...string) string { return of[r.IntN(len(of))] }

func (r randomRoom) job() survey.Job {
	sizes := [][2]string{{"150", "75"}, {"300", "600"}, {"100", "100"}, {"25", "25"}, {"600", "300"}, {"400", "100"}}
	size := sizes[r.IntN(len(sizes))]
	j := survey.Job{Format: survey.Format, Units: r.one("in", "mm"), Tile: survey.Tile{Width: size[0] + " mm", Height: size[1] + " mm"},
		Bond: survey.Bond{Kind: "running", Offset: r.one("1/2", "1/3", "1/4", "2/5"), Along: r.one("level", "level", "plumb")}}
	j.Joint.Plain = r.one("2 mm", "3 mm", "1/8 in")
	j.Trims = []survey.TrimTile{{Name: "edge", Kind: r.one("bullnose", "profile"), Width: r.one("50 mm", "3 mm"), Length: "150 mm"}}
	for i := range 1 + r.IntN(4) {
		j.Walls = append(j.Walls, r.wall(i))
	}
	for i := range j.Walls { // walls meet where both say so
		if i == 0 || j.Walls[i-1].Right.Meets == "" {
			j.Walls[i].Left = r.stop("0")
		} else {
			j.Walls[i].Left.Meets = "corner"
		}
		if i == len(j.Walls)-1 && j.Walls[i].Right.Meets != "" {
			j.Walls[i].Right = r.stop(j.Walls[i].Width)
		}
	}
	for i := 1; i < len(j.Walls); i++ {
		if j.Walls[i].Left.Meets != "" && r.IntN(3) == 0 {
			turn := survey.End{Meets: "outside corner", Corner: r.one("lap", "mitre", "bullnose", "profile")}
			if turn.Corner == j.Trims[0].Kind {
				turn.Trim = "edge"
			} else if turn.Corner == "profile" {
				turn.Corner = ""
			}
			j.Walls[i-1].Right, j.Walls[i].Left = turn, survey.End{Meets: turn.Meets}
		}
	}
	return j
}

func (r randomRoom) stop(at string) survey.End {
	return survey.End{Stops: &survey.Mark{At: at}, Finish: r.one("", "trim", "bullnose"), Trim: r.one("", "edge")}
}

func (r randomRoom) wall(i int) survey.Wall {
	wide := 300 + r.IntN(2700)
	end := fmt.Sprintf("%d mm", wide)
	w := survey.Wall{Name: r.one("left", "back", "right", "the wall with the window over the bath") + fmt.Sprint(" ", i), Width: end}
	drop := func(at, low, high int) survey.Drop {
		return survey.Drop{At: fmt.Sprintf("%d mm", at), Drop: r.pick(low, high) + " mm"}
	}
	if front := wide / 5; r.IntN(2) == 0 && front > 40 {
		w.Base = []survey.Segment{{Meets: "floor", Readings: []survey.Drop{drop(0, 1500, 1520), drop(front, 1500, 1520)}},
			{Meets: "tub", Readings: []survey.Drop{drop(front, 900, 920), drop(wide, 900, 920)}}}
	} else {
		w.Base = []survey.Segment{{Meets: r.one("tub", "shower base", "floor"), Readings: []survey.Drop{drop(0, 900, 1100), drop(wide/2, 900, 1100), drop(wide, 900, 1100)}}}
	}
	w.Right = survey.End{Meets: "corner", Gap: "3 mm"}
	if r.IntN(2) == 0 {
		w.Right.Lean = []survey.Lean{{Height: "-900 mm", Off: r.pick(-12, 12) + " mm"}, {Height: "900 mm", Off: r.pick(-12, 12) + " mm"}}
	}
	if r.IntN(4) == 0 {
		w.Right = r.stop(end)
	}
	if r.IntN(2) == 0 {
		w.Head = survey.Head{Stops: &survey.Mark{At: r.pick(300, 1300) + " mm"}}
	} else {
		w.Head = survey.Head{Meets: "ceiling", Readings: []survey.Rise{{At: "0", Rise: r.pick(1250, 1300) + " mm"}, {At: end, Rise: r.pick(1250, 1300) + " mm"}}}
	}
	r.openings(&w, wide)
	r.fixtures(&w, wide)
	return w
}

func (r randomRoom) openings(w *survey.Wall, wide int) {
	at := func(mm int) *survey.Mark { return &survey.Mark{At: fmt.Sprintf("%d mm", mm)} }
	x := 20
	for n := range r.IntN(5) {
		w.Openings = append(w.Openings, survey.Opening{Kind: "pipe", Name: r.one("valve", "spout", "a very long name for a pipe", "arm") + fmt.Sprint(" ", n),
			At: fmt.Sprintf("%d mm", 20+r.IntN(wide-40)), Height: &survey.Measure{Plain: r.pick(-800, 200) + " mm"}, Diameter: r.pick(20, 120) + " mm"})
	}
	for n := range r.IntN(4) {
		x += 20 + r.IntN(200)
		broad := 80 + r.IntN(500)
		if x+broad > wide-20 {
			return
		}
		w.Openings = append(w.Openings, survey.Opening{Kind: r.one("niche", "window"), Name: fmt.Sprint("opening ", n), Left: at(x), Width: at(broad),
			Bottom: at(-200 + r.IntN(1200)), Height: &survey.Measure{Mark: at(60 + r.IntN(900))}})
		x += broad
	}
}

func (r randomRoom) fixtures(w *survey.Wall, wide int) {
	at := func() string { return fmt.Sprintf("%d mm", r.IntN(wide)) }
	high := func() survey.Measure { return survey.Measure{Plain: r.pick(-850, 1100) + " mm"} }
	for n := range r.IntN(4) {
		f := survey.Fixture{Kind: r.one("corner shelf", "soap dish", "grab bar", "glass line"), Name: r.one("shelf", "a bar with a very long name") + fmt.Sprint(" ", n)}
		switch f.Kind {
		case "corner shelf":
			f.Corner, f.Width, f.Height = "right", "200 mm", high()
			if w.Right.Meets == "" {
				continue
			}
		case "soap dish":
			f.At, f.Width, f.High, f.Height = at(), "150 mm", "100 mm", high()
		case "grab bar":
			f.At, f.Width, f.Height = at(), "250 mm", high()
		case "glass line":
			f.At, f.Holes = at(), []survey.Drilled{{Height: "100 mm"}}
		}
		w.Fixtures = append(w.Fixtures, f)
	}
}

// set lays out a room by chance. ok is false where the room cannot be built.
func (r randomRoom) set(j survey.Job) (p layout.Plan, ok bool) {
	room, faults := j.Resolve()
	if len(faults) > 0 {
		return p, false
	}
	p = layout.Plan{Room: room, Setout: plan.Setout{Line: -length.Length(880+r.IntN(60)) * length.Millimetre, Hand: survey.Left}}
	for _, w := range room.Walls {
		s := plan.Start{Edge: length.Length(r.Int64N(int64(w.Width)))}
		s.X = s.Edge - room.Joint/2
		s.Placed = survey.Placed{Left: w.Left.Stops.From, Right: w.Right.Stops.From, Head: w.Head.Stops.From, Openings: make([]survey.Edges, len(w.Openings))}
		for i, o := range w.Openings {
			s.Placed.Openings[i] = survey.Edges{Left: o.Left.From, Bottom: o.Bottom.From, Right: o.Left.From + o.Width.From, Top: o.Bottom.From + o.Height.From}
		}
		p.Walls = append(p.Walls, sample.Cut(room, w, s, p.Setout.Line))
	}
	sample.Number(&p)
	for i := range p.Walls {
		w := &p.Walls[i]
		w.Trim = trim.Of(w.Found, w.Start.Placed, trim.Tile{Units: room.Units, Width: room.Tile.Width, Height: room.Tile.Height, Joint: room.Joint, Line: p.Setout.Line, Level: true})
		w.Fixtures = fixture.Of(fixture.Wall{Found: w.Found, Units: room.Units, Pieces: w.Pieces, Level: true})
	}
	for n := range r.IntN(8) {
		w := r.IntN(len(p.Walls))
		box := p.Walls[w].Shape.Region.Bounds()
		at := plane.Point{X: box.Left + length.Length(r.Int64N(int64(box.Width())+1)), Y: box.Bottom + length.Length(r.Int64N(int64(box.Height())+1))}
		p.Findings = append(p.Findings, finding.Finding{Rule: finding.Name(fmt.Sprint("rule ", n)), Grade: finding.Warning, Wall: w, At: &at})
	}
	return p, true
}

// Laws of every drawing, whatever the room:
//
//  1. No two texts overlap, and nothing lies off the paper.
//  2. No flag covers a text, and the level line strikes none.
//  3. No text is smaller than the drawing's least.
//  4. Every tile edge to strike is said.
func TestNoTwoTextsOverlap(t *testing.T) {
	const rooms = 40
	drawnRooms := 0
	for seed := range uint64(rooms * 3) {
		if drawnRooms == rooms {
			break
		}
		r := randomRoom{rand.New(rand.NewPCG(seed, 7))}
		p, ok := r.set(r.job())
		if !ok {
			continue
		}
		drawnRooms++
		for _, wide := range []Micron{0, 736 * px, 366 * px, 296 * px} {
			wrap := Wrap(p, Options{Wide: wide, Handles: wide == 0})
			keepApart(t, fmt.Sprintf("seed %d, wrap %d", seed, wide), wrap, wrapTexts.least)
			startsSaid(t, fmt.Sprintf("seed %d, wrap %d", seed, wide), p, wrap)
			for i := range p.Walls {
				keepApart(t, fmt.Sprintf("seed %d, wall %d, %d", seed, i, wide), Elevation(p, i, Options{Wide: wide}), Options{Wide: wide}.alone().least)
			}
		}
		for i := range p.Walls {
			keepApart(t, fmt.Sprintf("seed %d, wall %d on paper", seed, i), Elevation(p, i, Options{Sheet: true, Scale: Scale{1, 15}}), sheetTexts.least)
		}
		wrap := Wrap(p, Options{Sheet: true, Scale: Scale{1, 20}})
		keepApart(t, fmt.Sprintf("seed %d, wrap on paper", seed), wrap, sheetTexts.least)
		startsSaid(t, fmt.Sprintf("seed %d, wrap on paper", seed), p, wrap)
		if t.Failed() {
			return
		}
	}
	assert.Greater(t, drawnRooms, rooms/2)
}

// No names of starts overlap in a slide curve, however they crowd.
func TestNamesOfStartsKeepApart(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 3))
		p := sample.Plan()
		s := &p.Walls[1].Start
		period := p.Room.Tile.Width + p.Room.Joint
		for i := range s.Classic {
			s.Classic[i].Edge = length.Length(r.Int64N(int64(period)))
		}
		s.Classic = append(s.Classic, plan.Classic{Name: "quarter on centre", Edge: length.Length(r.Int64N(int64(period)))})
		s.Edge = length.Length(r.Int64N(int64(p.Room.Walls[1].Width)))
		for _, wide := range []Micron{0, 250 * px, 320 * px, 440 * px} {
			keepApart(t, fmt.Sprintf("seed %d, %d wide", seed, wide/px), Slide(p, 1, wide), wrapTexts.least)
		}
	}
}

// startsSaid holds a wrap to its fourth law: every tile edge to strike is said
// under its wall.
func startsSaid(t *testing.T, name string, p layout.Plan, s Scene) {
	t.Helper()
	b := newBoard(p, wrapTexts)
	for i, w := range p.Walls {
		if edge, ok := b.struckEdge(w); ok {
			said := slices.ContainsFunc(labels(s, Start), func(l Label) bool { return l.Wall == i && strings.HasSuffix(l.Text, b.figure(b.startFigure(w, edge))) })
			assert.True(t, said, "%s: no start on wall %d", name, i)
		}
	}
}

// keepApart holds a scene to the laws.
func keepApart(t *testing.T, name string, s Scene, least Micron) {
	t.Helper()
	var texts []Label
	for _, e := range s.Elements {
		l, ok := e.(Label)
		if !ok {
			continue
		}
		b := l.box()
		assert.True(t, b.from.X >= 0 && b.from.Y >= 0 && b.to.X <= s.Width && b.to.Y <= s.Height, "%s: %q lies off the paper: %v of %v %v", name, l.Text, b, s.Width, s.Height)
		if l.Kind != KeyWall && l.Kind != Finding {
			assert.GreaterOrEqual(t, l.Size, least, "%s: %q", name, l.Text)
		}
		for _, o := range texts {
			assert.False(t, b.meets(o.box()), "%s: %q lies on %q", name, l.Text, o.Text)
		}
		texts = append(texts, l)
	}
	for _, e := range s.Elements {
		if p, ok := e.(Path); ok && p.Kind == Pointer {
			lo, hi := extent(p.Rings)
			for _, l := range texts {
				assert.False(t, l.box().meets(box{lo, hi}), "%s: the sign of the start covers %q", name, l.Text)
			}
		}
		for _, q := range places(e) {
			assert.True(t, q.X >= 0 && q.Y >= 0 && q.X <= s.Width && q.Y <= s.Height, "%s: %v of %T lies off the paper", name, q, e)
		}
		switch x := e.(type) {
		case Disc:
			if x.Kind == Finding && x.Radius == flagRadius {
				for _, l := range texts {
					assert.False(t, l.Kind != Finding && l.box().meets(flagBox(x.Centre)), "%s: flag %d covers %q", name, x.Finding, l.Text)
				}
			}
		case Path:
			if x.Kind == LevelLine {
				for _, l := range texts {
					b := l.box()
					assert.False(t, crosses(x.Rings[0][0], x.Rings[0][1], b.from, b.to), "%s: the level line strikes %q", name, l.Text)
				}
			}
		}
	}
}
