package layout_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// byBytes lets a fuzzer's bytes choose, one for each choice, or two where there are more than 256
// ways; where they have run out the first way is chosen. So any bytes at all, and few of them, make
// a room, and a byte changed changes one thing about it.
type byBytes struct{ rest []byte }

func (b *byBytes) next() (n int) {
	if len(b.rest) > 0 {
		n, b.rest = int(b.rest[0]), b.rest[1:]
	}
	return n
}

func (b *byBytes) number(_ string, low, high int) int {
	n, ways := b.next(), high-low+1
	if ways > 256 {
		n += 256 * b.next()
	}
	return low + n%ways
}

func (b *byBytes) which(what string, n int) int { return b.number(what, 0, n-1) }

func (b *byBytes) yes(what string) bool { return b.number(what, 0, 1) == 1 }

// fuzzedRoom is a room of any bytes, in courses or, one of four, in a pattern. What is
// refused is taken off: openings first, then what makes its corners outside ones.
func fuzzedRoom(by chooser) (survey.Job, bool) {
	room := anyRoom(by)
	if by.number("pattern", 1, 4) == 4 {
		layPattern(by, room)
	}
	for _, simpler := range []func(wall object){
		func(object) {},
		func(wall object) { delete(wall, "openings") },
		func(wall object) {
			for _, end := range []string{"left", "right"} {
				if wall[end].(object)["meets"] == "outside corner" {
					wall[end] = object{"meets": "corner"}
				}
			}
		},
	} {
		for _, wall := range room["walls"].([]any) {
			simpler(wall.(object))
		}
		if data := jobFile(room); accepted(data) {
			job, err := survey.Read(data)
			return job, err == nil
		}
	}
	return survey.Job{}, false
}

// layPattern gives a room a pattern, of tiles in millimetres that close with a joint of 3 mm.
func layPattern(by chooser, room object) {
	type tiles struct {
		kind   string
		w, h   int
		others [][2]int
	}
	p := oneOf(by, "kind",
		tiles{"herringbone", 190, 60, nil}, tiles{"hexagon", 110, 110, nil}, tiles{"picket", 75, 190, nil}, tiles{"chevron", 190, 60, nil},
		tiles{"diagonal", 150, 150, nil}, tiles{"double herringbone", 190, 60, nil}, tiles{"basket weave", 153, 75, nil},
		tiles{"pinwheel", 130, 130, [][2]int{{60, 60}}}, tiles{"modular", 97, 97, [][2]int{{197, 97}, {197, 197}, {297, 197}}}, tiles{"mixed heights", 180, 75, [][2]int{{180, 40}}})
	times := 1 + by.number("larger", 0, 1)*2 // 3 mm of joint and tile together grow threefold
	size := func(n int) string { return fmt.Sprintf("%d mm", n*times) }
	bond := object{"kind": p.kind}
	for _, o := range p.others {
		tiles, _ := bond["tiles"].([]any)
		bond["tiles"] = append(tiles, object{"width": size(o[0]), "height": size(o[1])})
	}
	if survey.BondKind(p.kind).Turns() && by.yes("turned") {
		bond["turn"] = "45"
	}
	if p.kind == "chevron" {
		bond["angle"] = oneOf(by, "angle", "45", "30", "60")
	}
	if p.kind == "diagonal" || p.kind == "mixed heights" {
		bond["offset"] = oneOf(by, "offset", "1/2", "1/3")
	}
	tile := object{"width": size(p.w), "height": size(p.h)}
	if thick := room["tile"].(object)["thickness"]; thick != nil {
		tile["thickness"] = thick
	}
	room["tile"], room["joint"], room["bond"] = tile, size(3), bond
}

// Any bytes make a room that can be searched, and all kinds come.
func TestAnyBytesMakeARoom(t *testing.T) {
	source := rand.New(rand.NewPCG(1, 2))
	const tries = 400
	made, seen := 0, map[string]int{}
	for n := range tries {
		bytes := make([]byte, n)
		for i := range bytes {
			bytes[i] = byte(source.Uint32())
		}
		job, ok := fuzzedRoom(&byBytes{bytes})
		if !ok {
			continue
		}
		made++
		for kind, is := range kindsOf(job) {
			if is {
				seen[kind]++
			}
		}
	}
	require.Greater(t, made, tries*9/10)
	t.Log(made, seen)
	for kind := range kindsOf(survey.Job{}) {
		require.NotZero(t, seen[kind], kind)
	}
}

// Of any bytes a room is made for FuzzSolve too, and a good part of them is solved.
func TestAnyBytesMakeADamagedRoom(t *testing.T) {
	source := rand.New(rand.NewPCG(3, 4))
	const tries = 400
	made, solvable := 0, 0
	for n := range tries {
		bytes := make([]byte, n)
		for i := range bytes {
			bytes[i] = byte(source.Uint32())
		}
		job, ok := damagedRoom(&byBytes{bytes})
		if !ok {
			continue
		}
		made++
		if _, faults := job.Resolve(); len(faults) == 0 {
			solvable++
		}
	}
	t.Log(made, solvable)
	require.Greater(t, made, tries*9/10)
	require.Greater(t, solvable, tries/5)
}

func kindsOf(job survey.Job) map[string]bool {
	text := string(mustWrite(job))
	has := func(s string) bool { return strings.Contains(text, s) }
	kinds := map[string]bool{"columns": has(`"plumb"`), "inches": job.Units == "in", "millimetres": job.Units == "mm", "a hand left free": has(`"1/3"`) && !has(`"hand"`),
		"one wall": len(job.Walls) == 1, "four walls": len(job.Walls) == 4, "a lean": has(`"lean"`), "a leg": has(`"floor"`) && has(`"tub"`),
		"an outside corner": has("outside"), "a pipe": has(`"pipe"`), "a window": has(`"window"`)}
	for _, k := range survey.Bonds {
		kinds[string(k)] = has(fmt.Sprintf(`"kind": %q`, k))
	}
	for _, name := range []string{"a free end", "a free head", "a free niche", "several openings"} {
		kinds[name] = false
	}
	for _, w := range job.Walls {
		for _, end := range []survey.End{w.Left, w.Right} {
			kinds["a free end"] = kinds["a free end"] || end.Stops != nil && end.Stops.From != ""
		}
		kinds["a free head"] = kinds["a free head"] || w.Head.Stops != nil && w.Head.Stops.From != ""
		kinds["several openings"] = kinds["several openings"] || len(w.Openings) > 1
		for _, o := range w.Openings {
			kinds["a free niche"] = kinds["a free niche"] || o.Left != nil && o.Left.From != ""
		}
	}
	return kinds
}

func mustWrite(job survey.Job) []byte {
	data, err := survey.Write(job)
	if err != nil {
		return nil
	}
	return data
}
