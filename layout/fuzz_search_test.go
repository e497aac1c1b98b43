package layout_test

import (
	"errors"
	"testing"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// FuzzSearch searches through rooms of few tiles and few marks of the tape, some hundreds a second, and
// holds what is found to brute force.
func FuzzSearch(f *testing.F) {
	f.Add([]byte{})
	// A free end that may leave what the other leaves.
	f.Add([]byte("00\xd1070207000000%0\x7f\x000\x1d00000\xffC00072"))
	// One that may leave as much in whole marks.
	f.Add([]byte("000\x11a1\xff0\xff\xff00\x89d0\xff+\x7f\x80\x8002A\x87K000\x8900200\x89d0010"))
	// One that may leave half a tile.
	f.Add([]byte("7\x0000\xc4070207\xbaGo\xa5\xffh\xd1H\xfa\x18\xc6\x00\xff0\x00\x00\xfe\x00(\x10x\xa8\ue444\xb6%F\xf00\x1d0000D\xffC0\x107\x00\x00"))
	// One that may leave it beside a step.
	f.Add([]byte("!!\xff\x00\x00\x00\xbf\x00\x00\x10\x00\x00\x00\x00:0010\x18\xa1\xa1\xa1\xa1?qgn\xa1\xa1ա0kp"))
	// The bound of the hand that is worse.
	f.Add([]byte("2\x03\x00\x10a\xb5.ۄ\x95\x95\x95\x95\x95\x97\x95\x95\x95\x95\x9500\x95\x8c\x95\x95\x80\x80\x80\x80\x95\x958\x95\x8690\xac\x95\x950"))
	// A tile round the corner of a niche that the head cuts.
	f.Add([]byte("h䭪\x00\x1a\xf8\xbc:\x00\x01寪w\xfawww\x8aww\xed\xed\xad\a\x8e\x80\x00\xdb\xcd\x00\xed\xed\xed\xaf\a\x8e\x80\x00\x9b\xcd\v\x01\x00\x8a\xed\x02\xed\xaf\xe9\xed\xfawww\x8awwwwwwZ"))
	// A free niche of which one place is left.
	f.Add([]byte("000000001100T0J\x02=0\x02\x02\x02\x02\x01\xe1l\x02\xe3\xe3\xe3\xe3\xe3\x02\x02\x02\x02\x02\n\x02\x02\x00\x02\x02\x02\x02\x7fA\xba\xad\xad\xad\x02lll`\xb0\xff\xff\xff\xff00"))
	// A free head that a window stands across.
	f.Add([]byte("\x00\xdcA!\tUW\a0\x00420\x80NG0U\xe0'\xc240B0700\xf20e555\x00\xb8\x021u27\x00\xfc\xff\xff\x1d7\x7f\x00\xff07420\x83N\xde"))
	// Columns beside a corner out of sight.
	f.Add([]byte("\xa6)\xfe\xe6J\xfe\x05\xe6\xbcz=\x16K\xa8_\xc7\xe1O\xc6\xe9\x97\x00\x8du\xde@\xe1\xfeOƄ\xdd]$\xe0\xeeY@\xa07*\xe6\xbcz"))
	f.Fuzz(func(t *testing.T, data []byte) { searchedSmall(t, &byBytes{data}) })
}

// FuzzSearchAny searches through any small room, a few a second, with whatever is free left free: what is
// found holds together, is found again where it is pinned as printed, and, if it is proven, none of the
// classic starts and lines and none of the marks of the tape that can be pinned instead is better.
func FuzzSearchAny(f *testing.F) {
	f.Add([]byte{})
	f.Fuzz(func(t *testing.T, data []byte) {
		by := &byBytes{data}
		job, ok := fuzzedRoom(by)
		if !ok {
			t.Skip("no room")
		}
		searched(t, by, job)
	})
}

func TestAnySearchHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		if !rare(t, 10) {
			return
		}
		if job, ok := fuzzedRoom(byRapid{t}); ok {
			searched(t, byRapid{t}, job)
		}
	})
}

func searched(t require.TestingT, by chooser, job survey.Job) {
	plan, p := printOf(t, job)
	ids := map[string]bool{}
	for _, w := range plan.Walls {
		holdsTogether(t, w, ids)
	}
	job.Pins = p.pins(t)
	again, _ := printOf(t, job)
	order, term := plan.Setout.Order.Compare(&again.Setout.Merit, &plan.Setout.Merit)
	require.LessOrEqual(t, order, 0, "pinned as printed it is worse in %s\n%s", term, mustWrite(job))
	require.True(t, order == 0 || !plan.Setout.Proven, "pinned as printed it is better in %s\n%s", term, mustWrite(job))
	if !plan.Setout.Proven {
		return // nothing is said of what is not proven but its bound: see law 2 of package search
	}
	for _, pins := range []survey.Pins{classicPins(by, plan), tapePins(by, plan)} {
		for _, pins := range parts(plan, pins) {
			job.Pins = pins
			pinned, err := layout.Now(job)
			if faults := (survey.Faults)(nil); errors.As(err, &faults) {
				continue // pins that clash
			}
			require.NoError(t, err)
			order, term := plan.Setout.Order.Until(&pinned.Setout.Merit, &plan.Setout.Merit, merit.Slack)
			require.GreaterOrEqual(t, order, 0, "pinned it is better in %s\n%s", term, mustWrite(job))
		}
	}
}

// classicPins pins a classic line and a classic start of a wall.
func classicPins(by chooser, plan layout.Plan) (p survey.Pins) {
	if lines := plan.Setout.Lines; len(lines) > 0 {
		p.Course.Line = lengthText(oneOf(by, "line", lines...).Line)
	}
	w := oneOf(by, "wall", plan.Walls...)
	p.Walls = edgePin(w, oneOf(by, "start", w.Start.Classic...).Edge)
	return p
}

// tapePins pins the line and the start of a wall at marks of the tape. Where the pitch is no multiple
// of the tape the marks of one pitch are searched, and here, where nobody knows which, none are pinned.
func tapePins(by chooser, plan layout.Plan) (p survey.Pins) {
	tape := plan.Room.Tape
	mark := func(what string, low, reach length.Length) length.Length {
		return low - low%tape + tape*length.Length(by.number(what, 0, int(reach/tape)))
	}
	if pitch := plan.Room.Tile.Height + plan.Room.Joint; pitch%tape == 0 {
		p.Course.Line = lengthText(mark("mark of the line", plan.Setout.Line, pitch))
	}
	w := oneOf(by, "wall", plan.Walls...)
	if pitch := plan.Room.Tile.Width + plan.Room.Joint; pitch%tape == 0 {
		p.Walls = edgePin(w, mark("mark of the start", w.Start.Edge, pitch))
	}
	return p
}

func edgePin(w layout.Wall, at length.Length) map[string]survey.WallPin {
	return map[string]survey.WallPin{w.Found.Name: {Edge: lengthText(at)}}
}

func lengthText(l length.Length) string { return exactly(float64(l)) }

// parts are pins, and the pins of the line and of the walls alone. A start that is pinned in a running
// bond ties its course to the line, which then is looked for in every pitch of the bond: that is no
// wider than without the pin where the pitch is a multiple of the tape.
func parts(plan layout.Plan, p survey.Pins) []survey.Pins {
	room := plan.Room
	tied := !room.Bond.Plumb && room.Bond.Num > 0 && (room.Tile.Height+room.Joint)%room.Tape != 0
	var out []survey.Pins
	if p.Course.Line != "" {
		out = append(out, survey.Pins{Course: p.Course})
	}
	if p.Walls != nil && !tied {
		out = append(out, survey.Pins{Walls: p.Walls})
	}
	if p.Course.Line != "" && p.Walls != nil {
		out = append(out, p)
	}
	return out
}

// Columns under a corner that leans, which its edge crosses: the fuzzer found that the search
// looked for the end's class in a list that has one of columns.
func TestALeanAcrossColumnsIsSearched(t *testing.T) {
	job, ok := fuzzedRoom(&byBytes{[]byte("\x00p\x00c.6\xd7N\xb6L\x89\x00\x87\xf7\xf9\x00/\x1cM\x004\x80\x00\x00\rA\xe4LL~\f\x00\x00f\x8f")})
	require.True(t, ok)
	_, err := layout.Now(job)
	require.NoError(t, err)
}
