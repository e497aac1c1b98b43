package remedy

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/merit"
)

// A room with more cut pieces gets no near misses: who pairs with whom would take
// too long to find a dozen times.
const mostPaired = 800

// nearMisses are starts within 1/8 in (3 mm) of the chosen ones, one to a wall
// with all else as it is, that let more off-cuts pair and so need fewer tiles. A start is told only where
// it brings no bare wall, unworkable piece, sliver or poor run.
func (a *asker) nearMisses(ctx context.Context) (out []Remedy, err error) {
	if !a.now.Setout.Proven || a.now.Setout.CutTiles > mostPaired {
		return nil, nil
	}
	walls := a.free()
	if len(walls) == 0 {
		return nil, nil
	}
	now := needs(a.now)
	each := max(1, mostNear/len(walls))
	for _, i := range walls[:min(len(walls), mostNear)] {
		var best Remedy
		for _, edge := range a.near(a.now.Walls[i].Start.Edge, each) {
			if a.tired() {
				break
			}
			r, err := a.nearMiss(ctx, i, edge, now)
			if err != nil {
				return nil, err
			}
			if r.Tiles > best.Tiles {
				best = r
			}
		}
		if best.Tiles > 0 {
			out = append(out, best)
		}
	}
	slices.SortStableFunc(out, func(x, y Remedy) int { return cmp.Compare(y.Tiles, x.Tiles) })
	return out, nil
}

// free are the walls whose start nobody has fixed.
func (a *asker) free() (out []int) {
	for i, w := range a.now.Walls {
		if w.Found.Pin == nil && w.Found.Set == nil && !w.Found.Single {
			out = append(out, i)
		}
	}
	return out
}

// near are marks of the tape within 1/8 in (3 mm) of a start, the nearest first.
func (a *asker) near(edge length.Length, most int) (out []length.Length) {
	tape, reach := a.now.Room.Tape, a.either(length.Inch/8, 3*length.Millimetre)
	for at := (edge - reach).CeilTo(tape); at <= edge+reach; at += tape {
		if at != edge {
			out = append(out, at)
		}
	}
	slices.SortStableFunc(out, func(x, y length.Length) int { return cmp.Compare((x - edge).Abs(), (y - edge).Abs()) })
	return out[:min(len(out), most)]
}

// slipped pins the set-out as it is, but for the start of one wall, if there is such a wall.
func (a *asker) slipped(wall int, edge length.Length) []Use {
	use := []Use{{"pins.course.line", a.typed(a.now.Setout.Line)}}
	for _, i := range a.free() {
		w := a.now.Walls[i]
		at := w.Start.Edge
		if i == wall {
			at = edge
		}
		use = append(use, Use{under("pins.walls", w.Found.Name, "edge"), a.typed(at)})
	}
	return use
}

// nearMiss solves the job with all starts pinned. Without Tiles it is none.
func (a *asker) nearMiss(ctx context.Context, wall int, edge length.Length, now need) (Remedy, error) {
	w := a.now.Walls[wall]
	t := try{kind: NearMiss, use: a.slipped(wall, edge)}
	s, there, err := a.solve(ctx, t.use)
	if err != nil || !there {
		return Remedy{}, err
	}
	c, _ := a.now.Setout.Order.Until(&a.now.Setout.Merit, &s.Setout.Merit, merit.Exposed)
	then := needs(s)
	fewer := now.tiles - then.tiles
	if c < 0 || fewer <= 0 || then.paired <= now.paired {
		return Remedy{}, nil
	}
	r := a.remedy(t, s, merit.None)
	r.Before, r.After = counted(now.tiles, "tile"), counted(then.tiles, "tile")
	r.Tiles, r.Cost = fewer, a.cost(&s.Setout.Merit)
	r.Text = fmt.Sprintf("Start %s with a tile edge at %s instead of %s: %s fewer, because more off-cuts are used.",
		w.Found.Name, a.say(edge), w.Start.Edge.Tape(a.now.Room.Units), counted(fewer, "tile"))
	return r, nil
}

// need is how many tiles a room takes, and how many of them are cut twice.
type need struct{ tiles, paired int }

func needs(s Solved) need {
	c := cuts.Of(cuts.Input{Room: s.Room, Walls: s.Walls}, cuts.For(s.Room)).Offcuts
	n := need{c.TilesCut, c.TilesSaved}
	for _, w := range s.Walls {
		for _, p := range w.Pieces {
			if p.Whole {
				n.tiles++
			}
		}
	}
	return n
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
