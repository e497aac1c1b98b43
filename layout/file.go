package layout

import (
	"bytes"
	"encoding/json"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// PlanFormat and Engine name the plan file's format and the rules it was made by.
const (
	PlanFormat = "coursewright-plan/1"
	Engine     = "2"
)

// File is the plan file of formats.md: lengths in millimetres to 0.001.
func (p Plan) File() ([]byte, error) {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(p.document()); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

type mm = float64

type planFile struct {
	Format   string        `json:"format"`
	Engine   string        `json:"engine"`
	Tile     *tileFile     `json:"tile,omitempty"` // where it was measured, not taken as typed
	Course   courseFile    `json:"course"`
	Merit    meritFile     `json:"merit"`
	Proven   bool          `json:"proven"`
	Bound    string        `json:"bound,omitempty"`
	Smallest *leastFile    `json:"smallest,omitempty"`
	Lines    []lineFile    `json:"lines"`
	Joints   []jointFile   `json:"joints,omitempty"`
	Reasons  []string      `json:"reasons"`
	Holds    []holdsFile   `json:"holds"`
	Bands    []bandFile    `json:"bands,omitempty"`
	Walls    []wallFile    `json:"walls"`
	Outside  []cornerFile  `json:"outside,omitempty"` // outside corners, from left to right
	Findings []findingFile `json:"findings"`
	Doubts   []doubtFile   `json:"doubts"`
	Guess    []string      `json:"guess,omitempty"` // paths of the job's fields that nobody has measured
	Cuts     []cutFile     `json:"cuts"`
	Mitres   []mitreFile   `json:"mitres,omitempty"`
	Offcuts  offcutFile    `json:"offcuts"`
	Mosaic   []mosaicFile  `json:"mosaic,omitempty"` // what is laid by the sheet
	Takeoff  []buyFile     `json:"takeoff"`
	Help     []helpFile    `json:"help,omitzero"`     // left out where nobody asked for it
	Untried  []string      `json:"untried,omitempty"` // changes that may help as well, not tried because that takes too long
}

type tileFile struct {
	Width  mm `json:"width"`
	Height mm `json:"height"`
	Vary   mm `json:"vary"`
}

type courseFile struct {
	Line   mm     `json:"line"`
	Pitch  mm     `json:"pitch"`
	Hand   string `json:"hand,omitempty"`
	Pinned bool   `json:"pinned,omitempty"`
}

// meritFile holds the terms of the order of merit.
type meritFile struct {
	sightFile
	Exposed    int       `json:"exposed"`
	Openings   int       `json:"openings"`
	Mirror     mm        `json:"mirror"`
	Rim        []float64 `json:"rim"`
	Head       []float64 `json:"head"`
	OutOfSight sightFile `json:"outOfSight"`
	Built      int       `json:"built"`
	Work       int       `json:"work"`
	Corners    int       `json:"corners"` // with a run under a third on both walls
	Alike      int       `json:"alike"`   // courses whose two widths at a corner are both under or both over half a pitch
	Facing     mm        `json:"facing"`
	Near       mm        `json:"near"`
	Find       int       `json:"find"`
}

type sightFile struct {
	Bare       mm        `json:"bare"`
	Unworkable int       `json:"unworkable"`
	Slivers    int       `json:"slivers"`
	Fifths     int       `json:"fifths"`
	Thirds     int       `json:"thirds"`
	Runs       []float64 `json:"runs"`
}

type runFile struct {
	Edges []string `json:"edges"`
	Way   string   `json:"way"`
	Class int      `json:"class"`
	Share float64  `json:"share"`
	Least mm       `json:"least"`
	Piece string   `json:"piece"`
	Sight string   `json:"sight"`
	Band  string   `json:"band,omitempty"` // whose tile it is, where it is not the room's
}

// figuresFile is what a set-out that was not chosen would give.
type figuresFile struct {
	Least      mm      `json:"least"`
	Smallest   mm      `json:"smallest"`
	Share      float64 `json:"share"`
	Slivers    int     `json:"slivers"`
	Unworkable int     `json:"unworkable"`
	Bare       mm      `json:"bare"`
	Term       string  `json:"term,omitempty"`
	Its        string  `json:"its,omitempty"`
	Chosen     string  `json:"chosen,omitempty"`
}

type leastFile struct {
	Wall  string  `json:"wall"`
	Piece string  `json:"piece"`
	Least mm      `json:"least"`
	Share float64 `json:"share"`
}

type lineFile struct {
	Is   string `json:"is"`
	Line mm     `json:"line"`
	figuresFile
}

// jointFile is one joint of a range with the best that it allows.
type jointFile struct {
	Joint mm `json:"joint"`
	Line  mm `json:"line"`
	figuresFile
}

type holdsFile struct {
	What string `json:"what"`
	Is   mm     `json:"is"`
	From mm     `json:"from"`
	To   mm     `json:"to"`
}

type wallFile struct {
	Name     string         `json:"name"`
	Letter   string         `json:"letter"`
	Start    startFile      `json:"start"`
	Region   [][][2]mm      `json:"region"`
	Marks    map[string]any `json:"marks"`
	Pieces   []pieceFile    `json:"pieces"`
	Fixtures []fixtureFile  `json:"fixtures,omitempty"`
	Trim     []trimFile     `json:"trim,omitempty"`
	Runs     []runFile      `json:"runs"`
	Starts   []classicFile  `json:"starts"`
	Slide    [][2]float64   `json:"slide"`
	Map      *mapFile       `json:"map,omitempty"` // of a pattern, in place of the slide
	Set      *setFile       `json:"set,omitempty"`

	Insides []insideFile `json:"insides,omitempty"` // what is in the niches and windows
	Anew    []anewFile   `json:"anew,omitempty"`    // where the bond begins afresh beyond strips
	Strips  []stripFile  `json:"strips,omitempty"`
	Top     *topFile     `json:"top,omitempty"` // the horizontal face on it

	Laid string `json:"laid,omitempty"` // "single" tiles of its own width: there is no start to pin

	Legs map[string]string `json:"legs,omitempty"` // how its "left" and "right" leg is laid, where the job says best
}

// setFile is the highest course that stands, with its top edge at both ends.
type setFile struct {
	Course int `json:"course"`
	Left   mm  `json:"left"`
	Right  mm  `json:"right"`
}

type startFile struct {
	X      mm     `json:"x"`
	Is     string `json:"is"`
	Pinned bool   `json:"pinned,omitempty"`
}

type pieceFile struct {
	ID         string    `json:"id"`
	Course     int       `json:"course"`
	Whole      bool      `json:"whole"`
	Tile       [4]mm     `json:"tile"`
	Face       [][][2]mm `json:"face"`
	Wide       mm        `json:"wide"`
	High       mm        `json:"high"`
	Least      mm        `json:"least"`
	Share      float64   `json:"share"`
	Cuts       []string  `json:"cuts"`
	Kind       string    `json:"kind"`
	Sliver     bool      `json:"sliver"`
	Unworkable bool      `json:"unworkable,omitempty"`
	Set        bool      `json:"set,omitempty"`     // stands already
	Band       string    `json:"band,omitempty"`    // whose tile it is, where it is not the room's
	Outline    [][2]mm   `json:"outline,omitempty"` // of a pattern: the uncut tile, whose box tile is
	Of         int       `json:"of,omitempty"`      // which of the bond's further tiles it is, from 1
}

type classicFile struct {
	Is    string `json:"is"`
	X     mm     `json:"x"`
	Joint bool   `json:"joint"`
	Edge  mm     `json:"edge"`
	figuresFile
}

type findingFile struct {
	Rule   string `json:"rule"`
	Grade  string `json:"grade"`
	Wall   string `json:"wall,omitempty"`
	At     *[2]mm `json:"at,omitempty"`
	Piece  string `json:"piece,omitempty"`
	Text   string `json:"text"`
	Why    string `json:"why,omitempty"`
	Do     string `json:"do,omitempty"`
	Source string `json:"source,omitempty"`
}

// doubtFile is a reading in doubt. Fits is what would fit, in words, and use the
// same as it would be typed, by the paths of the job's fields.
type doubtFile struct {
	Rule string            `json:"rule"`
	Path string            `json:"path"`
	Wall string            `json:"wall,omitempty"`
	Read string            `json:"read,omitempty"`
	Fits string            `json:"fits,omitempty"`
	Use  map[string]string `json:"use,omitempty"`
	Text string            `json:"text"`
}

// doubts lists what is in doubt, in the order in which it is asked.
func (p Plan) doubts() []doubtFile {
	out := []doubtFile{}
	for _, d := range p.Doubts {
		f := doubtFile{Rule: string(d.Rule), Path: d.Path, Read: d.Read, Fits: d.Fits, Text: d.Text}
		if d.Wall >= 0 {
			f.Wall = p.Walls[d.Wall].Found.Name
		}
		for _, u := range d.Use {
			if f.Use == nil {
				f.Use = map[string]string{}
			}
			f.Use[u.Path] = u.Text
		}
		out = append(out, f)
	}
	return out
}

func (p Plan) document() planFile {
	s := p.Setout
	d := planFile{Format: PlanFormat, Engine: Engine, Reasons: s.Reasons, Proven: s.Proven, Bound: s.Bound,
		Course: courseFile{s.Line.Millimetres(), p.pitch().Millimetres(), p.handName(), s.Pinned},
		Merit:  meritOf(&s.Merit),
		Lines:  []lineFile{}, Holds: []holdsFile{}, Walls: []wallFile{}, Findings: []findingFile{}, Doubts: p.doubts(), Guess: p.Room.Guesses, Help: p.help(), Untried: p.untried()}
	if t := p.Room.Tile; t.Real.Used {
		d.Tile = &tileFile{t.Width.Millimetres(), t.Height.Millimetres(), t.Vary.Millimetres()}
	}
	if l := s.Least; l.Piece != "" {
		d.Smallest = &leastFile{p.Walls[l.Wall].Found.Name, l.Piece, l.Size.Millimetres(), round(l.Share)}
	}
	for _, l := range s.Lines {
		d.Lines = append(d.Lines, lineFile{l.Name, l.Line.Millimetres(), figuresOf(l.Figures)})
	}
	for _, j := range s.Joints {
		d.Joints = append(d.Joints, jointFile{j.Size.Millimetres(), j.Line.Millimetres(), figuresOf(j.Figures)})
	}
	for _, h := range s.Holds {
		d.Holds = append(d.Holds, holdsFile{h.What, h.Measured.Millimetres(), h.From.Millimetres(), h.To.Millimetres()})
	}
	for _, w := range p.Walls {
		d.Walls = append(d.Walls, wallOf(w))
	}
	p.addBands(&d)
	d.Outside = p.corners()
	p.addWork(&d)
	for _, f := range p.Findings {
		out := findingFile{Rule: string(f.Rule), Grade: string(f.Grade), Piece: f.Piece, Text: f.Text, Why: f.Why, Do: f.Do, Source: f.Source}
		if f.Wall >= 0 {
			out.Wall = p.Walls[f.Wall].Found.Name
		}
		if f.At != nil {
			out.At = &[2]mm{f.At.X.Millimetres(), f.At.Y.Millimetres()}
		}
		d.Findings = append(d.Findings, out)
	}
	return d
}

// pitch is from one course to the next; of a pattern from one row of its lattice.
func (p Plan) pitch() length.Length {
	if p.Setout.Rise > 0 {
		return p.Setout.Rise
	}
	return p.Room.Tile.Height + p.Room.Joint
}

// handName is the side the courses step to, where the bond has one.
func (p Plan) handName() string {
	switch {
	case p.Room.Bond.Num == 0 || !p.Room.Bond.Coursed():
		return ""
	case p.Setout.Hand > 0:
		return "right"
	}
	return "left"
}

func meritOf(m *merit.Merit) meritFile {
	return meritFile{sightFile: sightOf(&m.Sight), Exposed: m.Exposed, Openings: m.Openings, Mirror: m.Mirror.Millimetres(),
		Rim: shares(m.Rim), Head: shares(m.Head), OutOfSight: sightOf(&m.OutOfSight), Built: m.Built, Work: m.Work,
		Corners: m.Corners, Alike: m.Alike, Facing: m.Facing.Millimetres(), Near: m.Near.Millimetres(), Find: m.Find}
}

func sightOf(s *merit.Sight) sightFile {
	return sightFile{Bare: s.Bare.Millimetres(), Unworkable: s.Unworkable, Slivers: s.Slivers, Fifths: s.Fifths, Thirds: s.Thirds, Runs: shares(s.Runs)}
}

func shares(list []piece.Share) []float64 {
	out := make([]float64, len(list))
	for i, s := range list {
		out[i] = round(s)
	}
	return out
}

func figuresOf(f plan.Figures) figuresFile {
	out := figuresFile{Least: f.Least.Millimetres(), Smallest: f.Least.Millimetres(), Share: round(f.Share), Slivers: f.Slivers,
		Unworkable: f.Unworkable, Bare: f.Bare.Millimetres()}
	if f.Term != merit.None {
		out.Term, out.Its, out.Chosen = f.Term.String(), f.Its, f.Chosen
	}
	return out
}

func runsOf(runs []plan.Run) []runFile {
	out := make([]runFile, len(runs))
	for i, r := range runs {
		out[i] = runFile{Edges: r.Edges, Way: "up", Class: r.Class, Share: round(r.Share), Least: r.Least.Millimetres(), Piece: r.Piece, Sight: "plain"}
		if r.Across {
			out[i].Way = "across"
		}
		if r.Low {
			out[i].Sight = "low"
		}
	}
	return out
}

// round is a share to six decimals.
func round(s piece.Share) float64 {
	const million = 1_000_000
	return float64((2*s.Num*million+s.Den)/(2*s.Den)) / million
}

func wallOf(w Wall) wallFile {
	out := wallFile{Name: w.Found.Name, Letter: w.Found.Letter, Region: ringsOf(w.Shape.Region), Marks: marksOf(w),
		Start: startFile{w.Start.Edge.Millimetres(), survey.OnEdge.String(), w.Start.Pinned}, Runs: runsOf(w.Runs), Trim: trimOf(w.Trim), Fixtures: fixturesOf(w.Fixtures),
		Pieces: make([]pieceFile, len(w.Pieces)), Starts: []classicFile{}, Slide: [][2]float64{}}
	for i, p := range w.Pieces {
		out.Pieces[i] = pieceOf(w, p)
	}
	if w.Found.Single {
		out.Laid = "single"
	}
	for _, l := range w.Found.LegsBeside() {
		if k, how := w.Found.LegOf(l); w.Found.Base[k].Best {
			if out.Legs == nil {
				out.Legs = map[string]string{}
			}
			out.Legs[l.Side()] = how.String()
		}
	}
	if s := w.Found.Set; s != nil {
		out.Set = &setFile{s.Course, s.Left.Millimetres(), s.Right.Millimetres()}
	}
	out.Insides, out.Strips, out.Anew, out.Top = insidesOf(w), stripsOf(w), anewOf(w), topOf(w)
	for _, c := range w.Start.Classic {
		out.Starts = append(out.Starts, classicFile{c.Name, c.X.Millimetres(), !c.OnTile, c.Edge.Millimetres(), figuresOf(c.Figures)})
	}
	out.Map = mapOf(w.Start.Map)
	for _, s := range w.Start.Slide {
		out.Slide = append(out.Slide, [2]float64{s.Edge.Millimetres(), round(s.Share)})
	}
	return out
}

func pieceOf(w Wall, p piece.Piece) pieceFile {
	cuts := []string{}
	for _, s := range p.Cuts {
		if name := w.Shape.Sides[s].Name; len(cuts) == 0 || cuts[len(cuts)-1] != name {
			cuts = append(cuts, name)
		}
	}
	t := p.Tile
	return pieceFile{p.ID, p.Course, p.Whole, [4]mm{t.Left.Millimetres(), t.Bottom.Millimetres(), t.Right.Millimetres(), t.Top.Millimetres()},
		ringsOf(p.Face), p.Wide.Millimetres(), p.High.Millimetres(), p.Least.Millimetres(), round(p.Share), cuts, p.Kind.String(), p.Sliver, p.Unworkable, w.Found.Stands(p.Row), "", outlineOf(p.Outline), p.Of}
}

func ringsOf(r plane.Region) [][][2]mm {
	out := make([][][2]mm, len(r))
	for i, ring := range r {
		out[i] = make([][2]mm, len(ring))
		for k, c := range ring {
			out[i][k] = [2]mm{c.X.Millimetres(), c.Y.Millimetres()}
		}
	}
	return out
}

// marksOf lists what was placed, the measured openings included.
func marksOf(w Wall) map[string]any {
	out := map[string]any{}
	p, f := w.Start.Placed, w.Found
	put := func(name string, stops bool, x length.Length) {
		if stops {
			out[name] = x.Millimetres()
		}
	}
	put("end left", !f.Left.Meets, p.Left)
	put("end right", !f.Right.Meets, p.Right)
	put("head", !f.Head.Meets, p.Head)
	for i, o := range f.Openings {
		if o.Kind == survey.Pipe {
			continue
		}
		e := p.Openings[i]
		out[o.Key()] = map[string]mm{"left": e.Left.Millimetres(), "right": e.Right.Millimetres(),
			"bottom": e.Bottom.Millimetres(), "top": e.Top.Millimetres()}
	}
	return out
}
