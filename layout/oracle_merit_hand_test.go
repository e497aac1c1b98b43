package layout_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// sketch is one wall of 6 × 3 in tile with 1/8 in joints, pinned, as few words:
// what is not said is a wall 62 in wide between two corners, with half bond, nine full courses
// from a level floor to a stop line.
type sketch struct {
	width, bond, left, right, base, head, openings, line, start, marks string
	more                                                               string // further fields of the job
}

func (s sketch) job() []byte {
	or := func(text, usual string) string {
		if text == "" {
			return usual
		}
		return text
	}
	const corner = `{"meets": "corner", "gap": "1/8"}`
	width := or(s.width, "62")
	start := strings.TrimSuffix(or(s.start, `{"edge": "1/8"}`), "}") + `, "marks": ` + or(s.marks, "{}") + "}"
	return []byte(fmt.Sprintf(`{"format": "coursewright-job/1", "title": "by hand", "units": "in", "tile": {"width": "6", "height": "3"}, "joint": "1/8",
 "bond": %s, %s "pins": {"course": {"line": "%s"}, "walls": {"w": %s}}, "walls": [{"name": "w", "width": "%s", "left": %s, "right": %s,
 "base": %s, "head": %s, "openings": [%s]}]}`,
		or(s.bond, `{"kind": "running", "offset": "1/2"}`), s.more, or(s.line, "-29 7/8"), start, width, or(s.left, corner), or(s.right, corner),
		or(s.base, `[{"meets": "floor", "gap": "1/8", "readings": [{"at": "0", "drop": "30"}]}]`), or(s.head, `{"stops": {"at": "-1 7/8"}}`), s.openings))
}

// by hand: the runs of the wall as "edges class: inches", with "low" where out of sight.
func (w judgedWall) runsInWords() string {
	var out []string
	for _, r := range w.runs {
		text := fmt.Sprintf("%s %d: %s", strings.Join(r.edges, "+"), r.class, inchesOf(r.least))
		if r.low {
			text += " low"
		}
		out = append(out, text)
	}
	return strings.Join(out, ", ")
}

func inchesOf(v float64) string {
	const inch = 24384
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.5f", v/inch), "0"), ".")
}

// The oracle's own figures, worked out by hand from merit.md.
func TestTheOracleByHand(t *testing.T) {
	const (
		stack = `{"kind": "stack"}`
		stop0 = `{"stops": {"at": "0"}}`
		leg   = `[{"meets": "floor", "gap": "1/8", "readings": [{"at": "0", "drop": "42"}, {"at": "4", "drop": "42"}]}, {"meets": "tub", "gap": "1/8", "readings": [{"at": "4", "drop": "30"}, {"at": "62", "drop": "30"}]}]`
	)
	for _, c := range []struct {
		name string
		sketch
		runs  string
		terms func(m terms) any
		want  any
	}{
		// Pitch 6 1/8, field 1/8 to 61 7/8. Joint at 31 − 6 1/8 / 4.
		{"quarter centring", sketch{start: `{"joint": "29 15/32"}`}, "left 0: 4.78125, right 0: 1.71875, left 1: 1.71875, right 1: 4.78125",
			func(m terms) any { return [...]any{m.sight.thirds, m.sight.runs.numbers(), m.mirror, m.find} }, [...]any{2, []float64{1.6875 / 6, 1.6875 / 6}, 0.0, 2}},
		// Full tile at the left: 61 3/4 = 10 × 6 1/8 + 1/2; one class on begins with 2 15/16.
		{"full tile at one end", sketch{}, "right 0: 0.5, left 1: 2.9375, right 1: 3.5625",
			func(m terms) any {
				return [...]any{m.sight.unworkable, m.sight.slivers, m.sight.fifths, m.sight.thirds, inchesOf(m.mirror), m.find}
			}, [...]any{0, 5, 1, 1, "4.875", 1}},
		// Tile on the centre: 3 1/4 at both ends. A tenth course of 1/4 in, eleven pieces of it.
		{"unworkable at the head", sketch{bond: stack, head: `{"stops": {"at": "-1 1/2"}}`, start: `{"tile": "31"}`}, "left 0: 3.25, right 0: 3.25, head 0: 0.25",
			func(m terms) any {
				return [...]any{m.sight.unworkable, m.sight.slivers, m.head.numbers(), m.mirror, m.find}
			}, [...]any{11, 0, []float64{0.25 / 3}, 0.0, 0}},
		// The foot: 42 − 1/8 under the line, four courses under the rim.
		{"a leg", sketch{base: leg, left: stop0, bond: stack, start: `{"edge": "-1"}`}, "left+step 0 0: 3.875, base 0 0: 2.5 low, left 0: 5, right 0: 1.625",
			func(m terms) any { return [...]any{m.exposed, m.sight.thirds, m.low.thirds, m.low.runs.numbers()} }, [...]any{1, 1, 0, []float64{}}},
		{"a leg from its full tile", sketch{base: leg, left: stop0, bond: stack, start: `{"edge": "0"}`}, "step 0 0: 3.875, base 0 0: 2.5 low, right 0: 0.625",
			func(m terms) any { return [...]any{m.exposed, m.sight.fifths, m.sight.slivers} }, [...]any{0, 1, 9}},
		// A strip of 1/8 belongs to the sealant, and the joint over it is 1/4 from the edge of the tile. At both corners
		// 1/8 of the ends is as bare.
		{"a strip for the sealant", sketch{bond: stack, line: "-29 5/8", start: `{"tile": "31"}`, head: `{"stops": {"at": "-1 5/8"}}`}, "left 0: 3.25, right 0: 3.25",
			func(m terms) any { return [...]any{inchesOf(m.sight.bare), m.rim.numbers()} }, [...]any{"62", []float64{}}},
		// Tiles end at 7 + 3 pitches and begin at 1 + 5 pitches, end at -26 7/8 + 2 pitches; the niche ends 1/4 under the
		// top of a tile.
		{"a built niche", sketch{bond: stack, start: `{"edge": "1"}`, openings: `{"kind": "niche", "name": "n", "left": {"at": "25 3/8"}, "width": {"at": "6 1/4"}, "bottom": {"at": "-20 5/8"}, "height": {"at": "6"}}`},
			"left 0: 0.75, right 0: 5.75, niche n top 0: 0.25",
			func(m terms) any { return [...]any{m.built, m.openings, m.sight.unworkable} }, [...]any{1, 0, 1}},
		// The same 1/16 to the right, and free to rise: both plumb edges off the lines, and of the level ones the sill alone on one.
		{"a niche free to rise", sketch{bond: stack, start: `{"edge": "1"}`, openings: `{"kind": "niche", "name": "n", "left": {"at": "25 7/16"}, "width": {"at": "6 1/4"}, "bottom": {"from": "-20 5/8", "to": "-20"}, "height": {"at": "6"}}`,
			marks: `{"niche n bottom": "-20 5/8"}`}, "",
			func(m terms) any { return [...]any{m.built, m.openings, m.near} }, [...]any{2, 1, 0.0}},
	} {
		t.Run(c.name, func(t *testing.T) {
			job := c.job()
			j := judged(t, job, planned(t, job))
			t.Log(j.walls[0].runsInWords())
			if c.runs != "" {
				require.Equal(t, c.runs, j.walls[0].runsInWords())
			}
			require.Equal(t, c.want, c.terms(j.terms()))
		})
	}
}
