// Package stages divides the work into its days: what is set when, with which
// cuts ready, and what must harden in between.
package stages

import (
	"coursewright/layout/cuts"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// Input is a plan with its cut schedule.
type Input struct {
	Room  survey.Room
	Walls []plan.Wall   // in the job's order
	Cuts  cuts.Schedule // of the same plan
}

// Settings are what hangs on the mortar, the grout and the sealant.
type Settings struct {
	Holds   bool // the mortar holds the tile by itself, so nothing waits for the first course
	First   int  // hours the first course hardens before others stand on it
	Grout   int  // hours from the last tile to the grout
	Sealant int  // hours from the grout to the soft joints
	Water   int  // hours from the sealant to the first shower
}

// Usual gives the settings people start from: a day between the steps and a
// mortar that does not hold by itself. Common practice, no source; the makers'
// data sheets come first.
func Usual() Settings { return Settings{First: 24, Grout: 24, Sealant: 24, Water: 24} }

// Stage is one part of the work.
type Stage struct {
	Name   string
	Do     string // what to do, in whole sentences
	Pieces int    // tiles set in it
	Whole  int    // those of them that are not cut
	Cuts   []Cut  // to have ready before it begins, in the order of the schedule
	Wait   int    // hours to wait after it, 0 for none
	Why    string // what the wait is for
}

// Cut is how many pieces of one group of the cut schedule a stage needs.
type Cut struct {
	Group string
	Count int
}

// Of divides the work. Laws:
//
//  1. Every piece of the plan that is not set already is set in exactly one stage.
//  2. The cuts of all stages together are the groups of the schedule, each
//     with its whole count.
//  3. The order is dry lay, first course, field, niche, ends, holes, grout,
//     soft joints; a stage without work is left out.
func Of(in Input, set Settings) []Stage {
	all := days(set)
	group := map[string]int{}
	for i, g := range in.Cuts.Groups {
		for _, id := range g.Pieces {
			group[id] = i
		}
	}
	counts := make([][]int, len(all))
	for i := range counts {
		counts[i] = make([]int, len(in.Cuts.Groups))
	}
	for _, w := range in.Walls {
		for i := range w.Pieces {
			p := &w.Pieces[i]
			if w.Found.Stands(p.Row) {
				continue
			}
			s := in.turn(w, p)
			all[s].Pieces++
			if p.Whole {
				all[s].Whole++
			} else if g, known := group[p.ID]; known {
				counts[s][g]++
			}
		}
	}
	return in.worked(all, counts, set)
}

// worked fills in the cuts and drops the stages in which nothing is set.
func (in Input) worked(all []Stage, counts [][]int, set Settings) []Stage {
	var out []Stage
	for s, stage := range all {
		if stage.Pieces == 0 && first <= s && s <= holes {
			continue
		}
		if s == grout && len(out) > 0 {
			last := &out[len(out)-1]
			last.Wait, last.Why = max(last.Wait, set.Grout), "the mortar hardens before the grout"
		}
		for g, n := range counts[s] {
			if n > 0 {
				stage.Cuts = append(stage.Cuts, Cut{in.Cuts.Groups[g].ID, n})
			}
		}
		out = append(out, stage)
	}
	return out
}
