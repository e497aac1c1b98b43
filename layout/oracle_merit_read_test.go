package layout_test

// The oracle of the order of merit. It reads a job and its plan file as
// documents and works out runs and all terms of merit from the pieces, by
// merit.md and formats.md alone. It shares nothing with the solver, nor with
// what cuts and measures pieces; lengths are float64 counts of 1/960 mm, in
// which whole numbers are exact.
//
// Where the two pages leave a choice, the oracle reads them so:
//
//  1. A piece is cut by a boundary edge where its outline lies on that edge
//     strictly inside its tile; holes of pipes and the lap cover are left out.
//  2. A run's key is the set of all edges of one way that cut its pieces.
//     Ends, steps and the sides of openings cut across, whatever they lean;
//     base, head, sill and top of openings cut up, whatever their rake.
//  3. The class of a run across is its course modulo the courses after which
//     the bond repeats, counted from the course line; of a run up it is 0.
//     With columns it is the other way round.
//  4. A step has no sight of its own, it is in plain sight.
//  5. Runs in a wall's list are exact; in merit, sizes are rounded down to
//     marks of the tape before they are set against the tile.
//  6. For either sight, a piece is looked at in those directions only in which
//     its run has that sight: once unworkable, else once a sliver.
//  7. Bare wall is looked for square to the wall's frame, and a piece answers
//     for the joint on either side of it. The end of an edge beside one out of sight is
//     out of sight as far as a sealed strip and a joint go.
//  8. Which direction of an opening is free is looked at by direction: it is
//     free where one of its two marks is a range.
//  9. A wall's mirror sets the run cut by the left end alone against that cut
//     by the right end alone, class by class; a class without such a run counts the
//     full tile. Sums are rounded down to marks wall by wall.
//  10. Rim and head are the runs cut by base segments alone, by the head alone;
//     lists of unequal length are filled up with 1.
//  11. The start is looked at in every class of the bond, because the course
//     line may be any course's.
//  12. A wish counts in the directions in which its opening is free, and is rounded down to
//     marks opening by opening. Only the middle of the field, which nobody typed, is moved to
//     where the range allows.
//  13. Kinds of cut are the plan's own words; whether a hole is near an edge is worked out here.

import (
	"encoding/json"
	"math"
	"math/big"
	"slices"

	"coursewright/layout"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// jobDoc is a job file as formats.md has it.
type jobDoc struct {
	Units string `json:"units"`
	Tile  struct {
		Width, Height, Thickness string
	} `json:"tile"`
	Bed  string `json:"bed"`
	Bond struct {
		Kind, Offset, Hand, Along string
	} `json:"bond"`
	Measured struct {
		Tape string
	} `json:"measured"`
	Limits struct {
		Sliver, Sealant string
	} `json:"limits"`
	SetOrder []string  `json:"setOrder"`
	Walls    []wallDoc `json:"walls"`
	Prefer   []string  `json:"prefer"`
}

type wallDoc struct {
	Name  string `json:"name"`
	Width string `json:"width"`
	Left  endDoc `json:"left"`
	Right endDoc `json:"right"`
	Base  []struct {
		Meets    string `json:"meets"`
		Gap      string `json:"gap"`
		Sight    string `json:"sight"`
		Readings []struct {
			At   string `json:"at"`
			Drop string `json:"drop"`
		} `json:"readings"`
	} `json:"base"`
	Head struct {
		Meets    string   `json:"meets"`
		Gap      string   `json:"gap"`
		Sight    string   `json:"sight"`
		Stops    *markDoc `json:"stops"`
		Readings []struct {
			At   string `json:"at"`
			Rise string `json:"rise"`
		} `json:"readings"`
	} `json:"head"`
	Openings []openingDoc `json:"openings"`
	Top      *topDoc      `json:"top"`
}

type endDoc struct {
	Meets string   `json:"meets"`
	Gap   string   `json:"gap"`
	Sight string   `json:"sight"`
	Stops *markDoc `json:"stops"`
	Lean  []struct {
		Height string `json:"height"`
		Off    string `json:"off"`
	} `json:"lean"`
}

type openingDoc struct {
	Kind  string `json:"kind"`
	Name  string `json:"name"`
	Sight string `json:"sight"`
	Near  *struct {
		X string `json:"x"`
		Y string `json:"y"`
	} `json:"near"`
	At       string          `json:"at"`
	Diameter string          `json:"diameter"`
	Left     *markDoc        `json:"left"`
	Width    *markDoc        `json:"width"`
	Bottom   *markDoc        `json:"bottom"`
	Height   json.RawMessage `json:"height"`
}

// up is a pipe's height, a text.
func (o openingDoc) up() (text string) {
	if json.Unmarshal(o.Height, &text) != nil {
		return ""
	}
	return text
}

// tall is the height of a niche or window, a mark.
func (o openingDoc) tall() *markDoc {
	m := new(markDoc)
	if json.Unmarshal(o.Height, m) != nil {
		return nil
	}
	return m
}

// markDoc is a place or size, measured or free.
type markDoc struct {
	At   string `json:"at"`
	From string `json:"from"`
	To   string `json:"to"`
}

// planDoc is what the oracle takes from a plan file, and what it holds against it.
type planDoc struct {
	Tile *struct {
		Width, Height float64
	} `json:"tile"`
	Course struct {
		Line, Pitch float64
		Hand        string
	} `json:"course"`
	Merit  json.RawMessage `json:"merit"`
	Walls  []planWallDoc   `json:"walls"`
	Proven bool            `json:"proven"`
}

type planWallDoc struct {
	Name  string `json:"name"`
	Start struct {
		X  float64
		Is string
	} `json:"start"`
	Laid   string       `json:"laid"`
	Marks  marks        `json:"marks"`
	Pieces []pieceDoc   `json:"pieces"`
	Runs   []planRunDoc `json:"runs"`
	Top    *planTopDoc  `json:"top"`
}

type pieceDoc struct {
	ID    string         `json:"id"`
	Whole bool           `json:"whole"`
	Tile  [4]float64     `json:"tile"`
	Face  [][][2]float64 `json:"face"`
	Wide  float64        `json:"wide"`
	High  float64        `json:"high"`
	Kind  string         `json:"kind"`
}

type planRunDoc struct {
	Edges []string `json:"edges"`
	Way   string   `json:"way"`
	Class int      `json:"class"`
	Share float64  `json:"share"`
	Least float64  `json:"least"`
	Piece string   `json:"piece"`
	Sight string   `json:"sight"`
}

// planned solves a job file and gives its plan as a document.
func planned(t require.TestingT, job []byte) planDoc {
	read, err := survey.Read(job)
	require.NoError(t, err, "%s", job)
	solved, err := layout.Now(read)
	require.NoError(t, err, "%s", job)
	return planDocOf(t, solved)
}

// planDocOf is a plan as a document.
func planDocOf(t require.TestingT, solved layout.Plan) planDoc {
	file, err := solved.File()
	require.NoError(t, err)
	var p planDoc
	require.NoError(t, json.Unmarshal(file, &p))
	return p
}

// judge is one job with its lengths read and one plan of it.
type judge struct {
	job                        jobDoc
	plan                       planDoc
	width, height, joint       float64
	deep, sealant, tape, clear float64
	limit, sliver              [2]float64 // unworkable and sliver, across and up
	num, den                   int
	plumb                      bool
	metric                     bool
	walls                      []judgedWall
	tops                       []*judge // each as a room of one wall
}

// The two directions in which a piece is measured.
const (
	wayAcross = 0
	wayUp     = 1
)

var wayNames = [...]string{"across", "up"}

// full is the tile's size in a direction.
func (j *judge) full(way int) float64 {
	if way == wayAcross {
		return j.width
	}
	return j.height
}

func (j *judge) said(text string) float64 { return said(text, j.job.Units) }

// or is a length, or its default in inches or millimetres.
func (j *judge) or(text, inches, mm string) float64 {
	switch {
	case text != "":
		return j.said(text)
	case j.metric:
		return said(mm, "mm")
	}
	return said(inches, "in")
}

// judged reads a job and its plan and works everything out.
func judged(t require.TestingT, job []byte, plan planDoc) *judge {
	j := &judge{plan: plan}
	require.NoError(t, json.Unmarshal(job, &j.job))
	for i := range j.job.Walls {
		w := &j.job.Walls[i]
		w.Left.Meets, w.Right.Meets = notTurned(w.Left.Meets), notTurned(w.Right.Meets)
	}
	j.metric = j.job.Units == "mm"
	j.sizes()
	j.bond(t)
	for i := range j.job.Walls {
		j.walls = append(j.walls, j.wall(i))
	}
	for i := range j.walls {
		j.pieces(t, i)
		j.runs(i)
		if top := j.top(t, i); top != nil {
			j.tops = append(j.tops, top)
		}
	}
	return j
}

func (j *judge) sizes() {
	job := j.job
	j.width, j.height = j.said(job.Tile.Width), j.said(job.Tile.Height)
	if tile := j.plan.Tile; tile != nil {
		j.width, j.height = units(tile.Width), units(tile.Height)
	}
	j.joint = units(j.plan.Course.Pitch) - j.height
	thick := j.or(job.Tile.Thickness, "5/16", "8")
	j.deep = j.or(job.Bed, "3/16", "5") + thick
	j.sealant = j.or(job.Limits.Sealant, "1/4", "6")
	j.tape = j.or(job.Measured.Tape, "1/16", "1")
	j.clear = j.or("", "1/8", "3")
	for way := range j.limit {
		full := j.full(way)
		j.limit[way] = min(max(j.or("", "1/2", "13"), 1.5*thick), full/2)
		j.sliver[way] = min(full/4, j.or("", "2", "50"))
		if job.Limits.Sliver != "" {
			j.sliver[way] = min(j.said(job.Limits.Sliver), full/2)
		}
	}
}

func (j *judge) bond(t require.TestingT) {
	j.num, j.den, j.plumb = 0, 1, j.job.Bond.Along == "plumb"
	if j.job.Bond.Kind != "running" {
		return
	}
	text := j.job.Bond.Offset
	if text == "" {
		text = "1/2"
	}
	offset, ok := new(big.Rat).SetString(text)
	require.True(t, ok, "the offset %q", text)
	j.num, j.den = int(offset.Num().Int64()), int(offset.Denom().Int64())
}

// repeat is the pitch along the courses (or columns), step that from one to the next.
func (j *judge) repeat() float64 {
	if j.plumb {
		return j.height + j.joint
	}
	return j.width + j.joint
}

func (j *judge) step() float64 {
	if j.plumb {
		return j.width + j.joint
	}
	return j.height + j.joint
}

// shift of course k: k · offset · pitch to the side of the hand, to the nearest
// unit, in [0, pitch). Single tiles are not shifted.
func (j *judge) shift(w *judgedWall, k int) float64 {
	if w.single {
		return 0
	}
	n := k * j.num % j.den
	if j.plan.Course.Hand != "right" {
		n = -n
	}
	n = (n%j.den + j.den) % j.den
	return math.Floor(float64(2*n)*j.repeat()/float64(2*j.den) + 0.5)
}

// classes are how many classes of courses or columns a wall has.
func (j *judge) classes(w *judgedWall) int {
	if w.single {
		return 1
	}
	return j.den
}

// class of a course or column.
func (j *judge) class(w *judgedWall, k int) int {
	n := j.classes(w)
	return (k%n + n) % n
}

// modulo gives what is left of a after whole multiples of m, in [0, m).
func modulo(a, m float64) float64 { return a - math.Floor(a/m)*m }

// down rounds down to a mark of the tape. A size that a leaning edge puts
// within a thousandth of a unit under a mark is on it.
func (j *judge) down(size float64) float64 { return math.Floor((size+0.001)/j.tape) * j.tape }

// rank is the place of a wall in the order of setting: as listed, then the
// widest first.
func (j *judge) rank(i int) (place int) {
	listed := func(k int) int {
		if at := slices.Index(j.job.SetOrder, j.job.Walls[k].Name); at >= 0 {
			return at
		}
		return len(j.job.SetOrder)
	}
	for k := range j.job.Walls {
		a, b := listed(k), listed(i)
		wide, own := j.said(j.job.Walls[k].Width), j.said(j.job.Walls[i].Width)
		if a < b || a == b && (wide > own || wide == own && k < i) {
			place++
		}
	}
	return place
}

// beyond is the wall round the corner at an end, or -1.
func (j *judge) beyond(i int, right bool) int {
	n, walls := i-1, j.job.Walls
	if right {
		n = i + 1
	}
	if len(walls) >= 4 {
		n = (n + len(walls)) % len(walls)
	}
	if n < 0 || n >= len(walls) {
		return -1
	}
	other, own := walls[n].Right, walls[i].Left
	if right {
		other, own = walls[n].Left, walls[i].Right
	}
	if other.Meets == "" || own.Meets == "" || other.Meets == "wall" || own.Meets == "wall" {
		return -1
	}
	return n
}
