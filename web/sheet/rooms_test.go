package sheet

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/web/drawing"
)

// newer are rooms with what was built later: trim and fixtures, the inside of a niche
// and of a window, other tile, patterns without courses, outside corners,
// the tops of a bench and a curb.
var newer = []string{"shape/trimmed", "shape/niche", "shape/banded", "shape/two", "shape/herringbone", "insides/shower", "jobs/herringbone", "jobs/hexagon", "jobs/sheets", "jobs/boxing", "shape/half wall", "jobs/bench", "shape/corner bench", "shape/dotted", "jobs/dotted"}

// shapeOf solves a new job of a shape, every reading of it taken as measured.
func shapeOf(t *testing.T, key string) layout.Plan {
	t.Helper()
	name := "shape/" + key
	plan, known := rooms[name]
	if !known {
		var err error
		plan, err = layout.Now(jobOf(t, name))
		require.NoError(t, err)
		rooms[name] = plan
	}
	return plan
}

// everyRoom gives all rooms that sheets are looked at of.
func everyRoom(t *testing.T, do func(name string, plan layout.Plan)) {
	t.Helper()
	for _, name := range slices.Concat(five, newer) {
		if key, shaped := strings.CutPrefix(name, "shape/"); shaped {
			do(name, shapeOf(t, key))
			continue
		}
		do(name, roomOf(t, name))
	}
}

// A room with newer parts is no longer on paper than others.
func TestNewerRoomsAreAtMostTwelvePages(t *testing.T) {
	everyRoom(t, func(name string, plan layout.Plan) {
		for _, paper := range Papers()[:2] {
			b := newBook(plan, Options{Paper: paper})
			assert.LessOrEqual(t, len(b.leaves), 12, "%s on %s: %v", name, paper.Name, leavesOf(b))
			for _, k := range []Kind{SetOut, FirstCourse, StoryPole, TakeOff, Stages} {
				assert.Equal(t, 1, leavesOf(b)[k], "%s on %s: %s", name, paper.Name, k)
			}
			laidOut(t, name+" on "+paper.Name, plan, Options{Paper: paper, Kinds: Kinds()})
		}
	})
}

// Nothing that is said is cut short: only the title of a long job may be.
func TestNoTextIsCutShort(t *testing.T) {
	everyRoom(t, func(name string, plan layout.Plan) {
		plan.Room.Title = "Bath"
		for _, paper := range Papers()[:2] {
			b := newBook(plan, Options{Paper: paper})
			for n, l := range b.leaves {
				b.block(l, n+1)
				for _, x := range texts(l) {
					assert.False(t, strings.HasSuffix(x.Text, "…"), "%s on %s, %s %s: %q", name, paper.Name, l.title, l.wall, x.Text)
				}
			}
		}
	})
}

// No figure and no word is broken in its column: what a person reads is a whole size.
func TestNoSizeIsBrokenInTwo(t *testing.T) {
	amiss := regexp.MustCompile(`/\d*$|^"|^[a-z]{1,2}\)|^/\d`)
	everyRoom(t, func(name string, plan layout.Plan) {
		for _, paper := range Papers()[:2] {
			for _, l := range newBook(plan, Options{Paper: paper}).leaves {
				for _, x := range texts(&leaf{own: l.own}) {
					assert.NotRegexp(t, amiss, x.Text, "%s on %s, %s", name, paper.Name, l.title)
				}
			}
		}
	})
}

// The first course of a wall is drawn with the feet of its legs apart, no two tiles of a
// run over each other, and no figure left of the wall it belongs to.
func TestTheFeetOfLegsStandApart(t *testing.T) {
	apart := 0
	everyRoom(t, func(name string, plan layout.Plan) {
		b := newBook(plan, Options{Kinds: []Kind{FirstCourse}})
		f := b.flows[0]
		for i, w := range plan.Walls {
			s := b.footing(w)
			if s.asLaid || len(s.tiles) == 0 {
				continue
			}
			runs := s.runs()
			apart += len(runs) - 1
			n := 0
			for _, run := range runs {
				n += len(run)
				for k, tile := range run {
					assert.Equal(t, tile.leg, drawing.UnderRim(w, tile.piece), "%s, wall %d: %s", name, i, tile.piece.ID)
					assert.Equal(t, run[0].leg, tile.leg, "%s, wall %d: %s", name, i, tile.piece.ID)
					if k > 0 {
						assert.GreaterOrEqual(t, tile.box.Left, run[k-1].box.Right, "%s: %s", name, tile.piece.ID)
					}
				}
				at := drawing.Micron(0)
				for k, m := range f.marks(s, run, f.scale) {
					assert.GreaterOrEqual(t, m.at, footHeight.size, "%s: %s", name, m.height)
					assert.True(t, k == 0 || m.at-at >= footApart, "%s: %s", name, m.height)
					at = m.at
				}
				assert.LessOrEqual(t, at, f.runWide(s, run, f.scale)+footApart, name)
			}
			assert.Equal(t, len(s.tiles), n, name)
		}
	})
	assert.Greater(t, apart, 6, "legs are among the rooms")
}

// In a pattern without courses every tile over the base stands where it is laid, and is
// named with its line of the schedule.
func TestAPatternsFootIsDrawnAsItIsLaid(t *testing.T) {
	plan := roomOf(t, "jobs/herringbone")
	b := newBook(plan, Options{Kinds: []Kind{FirstCourse, CutSchedule}})
	text := printedText(t, plan, FirstCourse)
	says(t, words(text), "The tiles that are cut to the base, where they stand")
	assert.NotContains(t, text, "their tops on one line")
	line := map[string]string{}
	for _, c := range b.cuts.Cuts {
		line[c.Piece] = c.Group
	}
	upright := map[string]bool{}
	for _, x := range texts(b.leaves[0]) {
		upright[x.Text] = true
	}
	for _, w := range plan.Walls {
		s := b.footing(w)
		assert.True(t, s.asLaid, w.Found.Name)
		for _, tile := range s.tiles {
			want := tile.piece.ID
			if line[want] != "" {
				want += ", " + line[want]
			}
			assert.True(t, upright[want], "%q stands on the sheet", want)
		}
	}
}

// Every piece that is cut is found from the schedule: its place is named in its line,
// and so is what else comes out of its tile.
func TestTheScheduleSaysWhereEveryPieceGoes(t *testing.T) {
	everyRoom(t, func(name string, plan layout.Plan) {
		b := newBook(plan, Options{Kinds: []Kind{CutSchedule}, Paper: Papers()[0]})
		all := ""
		for _, l := range b.leaves {
			for _, x := range texts(l) {
				all += x.Text + " "
			}
		}
		all = words(strings.ReplaceAll(all, hold, " "))
		rows, pieces := b.rows(), 0
		partners := b.partners(rows)
		for i, s := range rows {
			_, small := b.fence(s.Group)
			for _, want := range append([]string{placesText(s.Group), partners[i], small}, s.ids...) {
				assert.Contains(t, all, words(strings.ReplaceAll(want, hold, " ")), "%s, %s", name, s.ids)
			}
			assert.Len(t, s.Pieces, s.Count)
			pieces += s.Count
		}
		assert.Len(t, b.cuts.Cuts, pieces, name)
	})
}

func TestHeldWordsArePartedAtTheirSpaces(t *testing.T) {
	assert.Equal(t, []string{held("−24 3/16\" (15 13/16\""), held("over the tub)")}, body.wrap(held(`−24 3/16" (15 13/16" over the tub)`), 44000))
}

// What stands over a column of ends is what the schedule says of it: both from the
// narrowest side of its pieces to the widest.
func TestSizesOverAColumnAreThoseOfTheSchedule(t *testing.T) {
	leaning := 0
	for _, name := range []string{"cases/g-300x600", "jobs/old-house"} {
		plan := roomOf(t, name)
		b := newBook(plan, Options{Kinds: []Kind{CutSchedule}})
		step := plan.Room.Units.Step()
		figure := func(l length.Length) string { return l.FloorTo(step).Plain(plan.Room.Units, 0) }
		for _, g := range b.cuts.Groups {
			side := g.Places[0].Side
			if g.How != cuts.InPlace || side != "left" && side != "right" {
				continue
			}
			leaning++
			columns := ""
			for i, w := range plan.Walls {
				if w.Found.Letter == g.Places[0].Wall {
					for _, e := range drawing.Elevation(plan, i, drawing.Options{Sheet: true, Scale: drawing.Scale{Paper: 1, Real: 16}}).Elements {
						if l, ok := e.(drawing.Label); ok && l.Kind == drawing.Column {
							columns += l.Text + " "
						}
					}
				}
			}
			assert.Contains(t, columns, figure(g.Size.Width)+"–"+figure(g.Size.Width+g.Spread), "%s, %s", name, g.ID)
		}
	}
	assert.Greater(t, leaning, 3)
}

// The heights written under a wall on paper are those of the first-course sheet, at the
// ends of its first and its last cut.
func TestHeightsUnderAWallAreThoseOfTheFirstCourse(t *testing.T) {
	seen := 0
	for _, name := range five {
		plan := roomOf(t, name)
		b := newBook(plan, Options{Kinds: []Kind{FirstCourse}})
		for i, w := range plan.Walls {
			runs := b.footing(w).runs()
			run := runs[0]
			for _, r := range runs {
				if !r[0].leg {
					run = r
				}
			}
			under := map[string]bool{}
			for _, e := range drawing.Elevation(plan, i, drawing.Options{Sheet: true, Scale: drawing.Scale{Paper: 1, Real: 12}}).Elements {
				if l, ok := e.(drawing.Label); ok && l.Kind == drawing.Dim && l.Colour == drawing.Blue {
					for _, half := range strings.Split(l.Text, "–") {
						under[half] = true
					}
				}
			}
			left, _ := run[0].heights()
			_, right := run[len(run)-1].heights()
			for _, high := range []length.Length{left, right} {
				if high < plan.Room.Tile.Height && len(under) > 0 {
					seen++
					assert.True(t, under[strings.ReplaceAll(b.down(high), hold, " ")], "%s, %s: %s", name, w.Found.Name, b.down(high))
				}
			}
		}
	}
	assert.Greater(t, seen, 12)
}

// Four strips of the pole stand on a page, and on the last never one alone.
func TestStripsOfThePoleFillTheirPages(t *testing.T) {
	everyRoom(t, func(name string, plan layout.Plan) {
		for _, paper := range Papers()[:2] {
			b := newBook(plan, Options{Kinds: []Kind{FullPole}, Paper: paper})
			var on []int
			for _, l := range b.leaves {
				n := 0
				for _, x := range texts(l) {
					if strings.HasPrefix(x.Text, "strip ") {
						n++
					}
				}
				on = append(on, n)
			}
			for i, n := range on {
				assert.LessOrEqual(t, n, stripsAcross, "%s on %s: %v", name, paper.Name, on)
				last := i >= len(on)-2
				assert.True(t, last || n == stripsAcross, "%s on %s: %v", name, paper.Name, on)
				assert.True(t, len(on) == 1 || n > 1, "%s on %s: %v", name, paper.Name, on)
			}
		}
	})
}
