package layout_test

import (
	"encoding/json"
	"fmt"
	"math/big"
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// rooms draws small rooms of every kind as job files: one to four walls with
// corners that lean, free and fixed ends and heads, tubs with legs, rakes,
// niches, windows and pipes, measured or free; small and large tile in every bond,
// by courses and by columns, in inches and millimetres.
var rooms = rapid.Custom(func(t *rapid.T) []byte {
	return jobFile(anyRoom(byRapid{t}))
}).Filter(accepted)

// anyRoom draws one of the rooms, which may be one that is refused.
func anyRoom(by chooser) object {
	return roomDraw{by: by, metric: by.yes("metric")}.job()
}

func jobFile(job object) []byte {
	data, err := json.MarshalIndent(job, "", " ")
	if err != nil {
		panic(err)
	}
	return data
}

// chooser decides what a room is like: rapid does, or the bytes of a fuzzer.
type chooser interface {
	number(what string, low, high int) int
	which(what string, n int) int // of n things, from 0
	yes(what string) bool
}

// byRapid lets rapid choose.
type byRapid struct{ t *rapid.T }

func (r byRapid) number(what string, low, high int) int {
	return rapid.IntRange(low, high).Draw(r.t, what)
}

func (r byRapid) which(what string, n int) int {
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	return rapid.SampledFrom(all).Draw(r.t, what)
}

func (r byRapid) yes(what string) bool { return rapid.Bool().Draw(r.t, what) }

// oneOf chooses one of a few things.
func oneOf[T any](by chooser, what string, all ...T) T { return all[by.which(what, len(all))] }

// accepted tells whether a job is one that can be worked with.
func accepted(data []byte) bool {
	job, err := survey.Read(data)
	if err != nil {
		return false
	}
	_, faults := job.Resolve()
	return len(faults) == 0
}

// object is a JSON object.
type object = map[string]any

type roomDraw struct {
	by     chooser
	metric bool
	small  bool // of few tiles, and of few marks that are free
}

// step is the tape's: a sixteenth of an inch or a millimetre.
func (r roomDraw) step() float64 {
	if r.metric {
		return 1
	}
	return 25.4 / 16
}

// of writes so many steps of the tape as people do.
func (r roomDraw) of(n int) string {
	if r.metric {
		return fmt.Sprint(n)
	}
	return mixedNumber(big.NewRat(int64(n), 16))
}

// mixedNumber writes 19/8 as 2 3/8.
func mixedNumber(v *big.Rat) string {
	if v.Sign() < 0 {
		return "-" + mixedNumber(new(big.Rat).Neg(v))
	}
	whole := new(big.Int).Quo(v.Num(), v.Denom())
	rest := new(big.Rat).Sub(v, new(big.Rat).SetInt(whole))
	switch {
	case rest.Sign() == 0:
		return whole.String()
	case whole.Sign() == 0:
		return rest.String()
	}
	return whole.String() + " " + rest.String()
}

// draw is a number of steps that make about low to high millimetres.
func (r roomDraw) draw(what string, low, high int) int {
	return r.by.number(what, int(float64(low)/r.step()), int(float64(high)/r.step()))
}

// smaller is the first, or in a small room the second.
func (r roomDraw) smaller(n, small int) int {
	if r.small {
		return small
	}
	return n
}

// one in n.
func (r roomDraw) one(n int, what string) bool { return r.by.number(what, 1, n) == n }

func (r roomDraw) word(what string, words ...string) string {
	return oneOf(r.by, what, words...)
}

// size is a kind of room that stays small: its tile and how far its walls go.
type roomSize struct{ tileLow, tileHigh, wallLow, wallHigh, walls int }

func (r roomDraw) job() object {
	return r.jobOf(oneOf(r.by, "size",
		roomSize{40, 110, 250, 500, 2}, roomSize{100, 200, 350, 800, 3}, roomSize{100, 200, 350, 800, 4}, roomSize{200, 450, 600, 1100, 3}, roomSize{300, 620, 500, 1500, 3}))
}

// jobOf draws a room of a size.
func (r roomDraw) jobOf(size roomSize) object {
	tile := object{"width": r.of(r.draw("tile width", size.tileLow, size.tileHigh)), "height": r.of(r.draw("tile height", size.tileLow, size.tileHigh))}
	job := object{"format": survey.Format, "title": "any", "units": r.word("units", "in"), "tile": tile,
		"joint": r.of(r.draw("joint", 2, 6)), "bond": r.bond()}
	if r.metric {
		job["units"] = "mm"
	}
	if r.one(4, "thickness") {
		tile["thickness"] = r.of(r.draw("thick", 4, 13))
	}
	if r.one(5, "own sliver limit") {
		job["limits"] = object{"sliver": r.of(r.draw("sliver", 10, 60))}
	}
	if r.one(6, "coarse tape") {
		job["measured"] = object{"tape": r.of(oneOf(r.by, "tape", 2, 4))}
	}
	if r.one(5, "prefers") {
		job["prefer"] = []string{r.word("prefer", survey.Preferences()...)}
	}
	n := r.by.number("walls", 1, size.walls)
	var walls []any
	var names []string
	for i := range n {
		name := fmt.Sprintf("%c", 'a'+i)
		walls, names = append(walls, r.wall(name, size, i > 0 || n == 4, i < n-1 || n == 4)), append([]string{name}, names...)
	}
	for i := range walls {
		if (i+1 < n || n == 4) && r.one(4, "turns outward") {
			r.turn(walls[i].(object), walls[(i+1)%n].(object))
		}
	}
	job["walls"] = walls
	if r.one(3, "set from the right") {
		job["setOrder"] = names
	}
	return job
}

// turn makes the corner between two walls an outside one.
func (r roomDraw) turn(before, after object) {
	end := object{"meets": "outside corner", "corner": r.word("corner", "lap", "mitre", "bullnose")}
	if end["corner"] != "mitre" {
		if laps := r.word("laps", "", "left", "right"); laps != "" {
			end["laps"] = laps
		}
	}
	if r.one(3, "its gap") {
		end["gap"] = r.of(r.draw("gap", 0, 5))
	}
	before["right"], after["left"] = end, object{"meets": "outside corner"}
}

func (r roomDraw) bond() object {
	bond := object{"kind": "stack"}
	if offset := r.word("offset", "", "1/2", "1/2", "1/3", "1/4", "2/5"); offset != "" {
		bond = object{"kind": "running", "offset": offset}
		if hand := r.word("hand", "", "left", "right"); hand != "" {
			bond["hand"] = hand
		}
	}
	if r.one(3, "columns") {
		bond["along"] = "plumb"
	}
	return bond
}

func (r roomDraw) wall(name string, size roomSize, corner, nextCorner bool) object {
	width := r.draw("wall", size.wallLow, size.wallHigh)
	w := object{"name": name, "width": r.of(width),
		"left": r.end("left", corner, 0, false), "right": r.end("right", nextCorner, width, true), "base": r.base(width)}
	w["head"] = r.head(width, size)
	if openings := r.openings(width, size); openings != nil {
		w["openings"] = openings
	}
	return w
}

// mark is measured, or free from there on.
func (r roomDraw) mark(what string, from, spread int) object {
	if spread > 0 && r.one(r.smaller(2, 6), what+" free") {
		return object{"from": r.of(from), "to": r.of(from + spread)}
	}
	return object{"at": r.of(from)}
}

// end meets a corner, maybe leaning, or stops.
func (r roomDraw) end(what string, corner bool, at int, right bool) object {
	if !corner && !r.one(3, what+" is a corner") {
		spread := r.draw("spread", 0, 90)
		if right {
			at -= spread
		}
		return object{"stops": r.mark(what, at, spread)}
	}
	e := object{"meets": "corner"}
	if r.one(4, what+" leans") {
		e["lean"] = []any{object{"height": r.of(r.draw("low", -400, -300)), "off": r.of(r.draw("off", -9, 9))},
			object{"height": r.of(r.draw("middle", -50, 100)), "off": r.of(r.draw("off", -9, 9))},
			object{"height": r.of(r.draw("top", 350, 400)), "off": r.of(r.draw("off", -9, 9))}}
	}
	if r.one(8, what+" unseen") {
		e["sight"] = "low"
	}
	return e
}

// base is a tub, with a leg beside it at times, or a floor; level or raked.
func (r roomDraw) base(width int) []any {
	drop, raked := r.draw("drop", r.smaller(150, 40), r.smaller(400, 160)), r.one(2, "raked")
	reading := func(at, drop int) object {
		if raked {
			drop += r.draw("rake", -6, 6)
		}
		return object{"at": r.of(at), "drop": r.of(drop)}
	}
	segment := func(meets string, from, to, drop int) object {
		return object{"meets": meets, "readings": []any{reading(from, drop), reading(to, drop)}}
	}
	leg, floor := r.draw("leg", 50, 160), drop+r.draw("tub", 60, 250)
	switch r.word("base", "tub", "tub", "leg left", "leg right", "floor") {
	case "leg left":
		return []any{segment("floor", 0, leg, floor), segment("tub", leg, width, drop)}
	case "leg right":
		return []any{segment("tub", 0, width-leg, drop), segment("floor", width-leg, width, floor)}
	case "floor":
		return []any{segment("floor", 0, width, drop)}
	}
	return []any{segment("tub", 0, width, drop)}
}

func (r roomDraw) head(width int, size roomSize) object {
	high := r.draw("high", size.wallLow/2+r.smaller(100, 0), size.wallHigh/2+r.smaller(250, 20))
	h := object{}
	if r.one(2, "ceiling") {
		rise := high
		if r.one(2, "ceiling raked") {
			rise += r.draw("rake", -8, 8)
		}
		readings := []any{object{"at": "0", "rise": r.of(high)}, object{"at": r.of(width), "rise": r.of(rise)}}
		if r.one(3, "roof") {
			readings = r.roof(width, high)
		}
		h = object{"meets": "ceiling", "readings": readings}
	} else {
		h["stops"] = r.mark("head", high, r.draw("spread", 0, 120))
	}
	if r.one(8, "head unseen") {
		h["sight"] = "low"
	}
	return h
}

// roof is a ceiling that falls to one side under a roof, at times from a level part.
func (r roomDraw) roof(width, high int) []any {
	ridge := r.by.number("ridge", 0, 2) * width / 4
	eaves := max(r.draw("eaves", 20, 60), high-r.by.number("falls", 0, width-ridge))
	at, rise := []int{0, ridge, width}, []int{high, high, eaves}
	if ridge == 0 {
		at, rise = at[1:], rise[1:]
	}
	left := r.by.yes("falls to the left")
	var out []any
	for i := range at {
		if left {
			out = append([]any{object{"at": r.of(width - at[i]), "rise": r.of(rise[i])}}, out...)
		} else {
			out = append(out, object{"at": r.of(at[i]), "rise": r.of(rise[i])})
		}
	}
	return out
}

// openings are up to two niches or windows apart from each other, and a pipe.
func (r roomDraw) openings(width int, size roomSize) (out []any) {
	third := width / 3
	for k, kind := range []string{r.word("opening", "", "niche", "window"), r.word("second opening", "", "", "", "niche")} {
		if kind == "" {
			continue
		}
		at := third/3 + k*(width/2)
		o := object{"kind": kind, "name": fmt.Sprint("o", k),
			"left":   r.mark("opening left", at+r.by.number("opening at", 0, third/4), r.by.number("spread", 0, third/3)),
			"width":  r.mark("opening width", third/2+r.by.number("opening wide", 0, third/4), r.by.number("spread", 0, third/4)),
			"bottom": r.mark("opening bottom", r.draw("opening bottom", -60, 60), r.draw("spread", 0, 60)),
			"height": r.mark("opening height", r.draw("opening high", 70, 150), r.draw("spread", 0, 50))}
		if r.one(4, "wished") {
			o["near"] = object{"x": r.of(width / 2)}
		}
		out = append(out, o)
	}
	if r.one(3, "pipe") {
		wide := r.draw("diameter", 20, 90)
		out = append(out, object{"kind": "pipe", "name": "valve", "diameter": r.of(wide), "height": r.of(r.draw("pipe height", -150, -70)),
			"at": r.of(r.by.number("pipe at", wide/2+1, width-wide/2-1))})
	}
	return out
}

// What the rooms promise: each kind comes, in a hundred or so.
func TestRoomsAreOfEveryKind(t *testing.T) {
	seen := map[string]bool{}
	count := func(kind string, is bool) {
		if is {
			seen[kind] = true
		}
	}
	for seed := range 200 {
		var job jobDoc
		require.NoError(t, json.Unmarshal(rooms.Example(seed), &job))
		count("inches", job.Units == "in")
		count("millimetres", job.Units == "mm")
		count("columns", job.Bond.Along == "plumb")
		count("a hand left free", job.Bond.Offset == "1/3" && job.Bond.Hand == "")
		count("four walls", len(job.Walls) == 4)
		count("one wall", len(job.Walls) == 1)
		for _, w := range job.Walls {
			count("an outside corner", w.Right.Meets == "outside corner")
		}
		for _, w := range job.Walls {
			free := func(m *markDoc) bool { return m != nil && m.From != "" }
			count("a free end", free(w.Left.Stops) || free(w.Right.Stops))
			count("a free head", free(w.Head.Stops))
			count("a leaning corner", len(w.Left.Lean) > 0)
			count("a leg", len(w.Base) == 2)
			count("several openings", len(w.Openings) > 2)
			count("a boundary out of sight", w.Head.Sight == "low")
			for _, o := range w.Openings {
				count("a free niche", o.Kind == "niche" && free(o.Left))
				count("a window", o.Kind == "window")
				count("a pipe", o.Kind == "pipe")
			}
		}
	}
	for _, kind := range []string{"inches", "millimetres", "columns", "a hand left free", "four walls", "one wall", "an outside corner", "a free end", "a free head",
		"a leaning corner", "a leg", "several openings", "a boundary out of sight", "a free niche", "a window", "a pipe"} {
		require.True(t, seen[kind], "%s", kind)
	}
}
