// Package keep keeps what a set-out decided, so that a later version of the
// solver moves no marks on a wall: a plan gives what is kept of it, a job holds
// that as pins, and two plans are compared.
//
// Laws, each with a test:
//
//  1. What is kept is all that the solver decided: the course line, every start,
//     the free marks, the hand of a bond that leaves it open, the joint out of a
//     range, and where bands stand and start. What was measured, and what stands on a wall, is not kept. Of an opening that
//     is lined it is kept that tile may go on round its edges: in set-outs of earlier versions it did not.
//  2. A job that holds what is kept of its own plan has the same plan: every
//     piece, to the unit.
//  3. Read gives back what Write was given; the same plan is written with the
//     same bytes.
//  4. To hold a set-out changes no other field of the job, and to let it go gives
//     the job back as it was. What the job pins itself is not overruled.
//  5. Two set-outs are the same where every piece stands in the same place with
//     the same outline, by whatever course line and starts that is told.
package keep

import (
	"encoding/json"
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Of is what is kept of a job's plan. Engine names the rules it was made by.
func Of(engine string, job survey.Job, s plan.Setout, walls []plan.Wall) survey.Held {
	out := survey.Held{Engine: engine, Walls: map[string]survey.WallPin{}}
	stands := slices.ContainsFunc(walls, func(w plan.Wall) bool { return w.Found.Set != nil })
	if !stands {
		out.Course.Line = printed(s.Line)
	}
	if job.Bond.Kind == string(survey.Running) && job.Bond.Hand == "" {
		out.Hand = side(s.Hand)
	}
	if m := job.Joint.Mark; m != nil && m.At == "" {
		out.Joint = printed(s.Joint)
	}
	for i, w := range walls {
		pin := survey.WallPin{}
		switch {
		case w.Found.Single && job.Walls[i].Laid == "":
			pin.Single = true
		case w.Found.Single:
		case w.Found.Set == nil:
			pin.Edge = printed(w.Start.Edge)
		}
		pin.Legs, pin.Beyond = legs(w), beyond(w)
		for mark, at := range job.Walls[i].Open(w.Start.Placed) {
			if pin.Marks == nil {
				pin.Marks = map[string]string{}
			}
			pin.Marks[string(mark)] = printed(at)
		}
		out.Walls[w.Found.Name] = pin
	}
	out.Round = (job.Held == nil || job.Held.Round) && slices.ContainsFunc(walls, func(w plan.Wall) bool { return len(w.Insides) > 0 })
	for i, b := range s.Bands {
		out.Bands = append(out.Bands, band(job.Bands[i], b, walls))
	}
	return out
}

// goesRound tells whether the tile of a wall goes on round the edge of an opening as it is laid.
func goesRound(w plan.Wall) bool {
	return slices.ContainsFunc(w.Folded(), func(f *plan.Face) bool { return f.Round })
}

// beyond is where the tile to the right of strips starts, where tile is cut beside one.
func beyond(w plan.Wall) map[string]string {
	var out map[string]string
	for i, k := range w.Found.PartedBy() {
		if i < len(w.Start.Anew) && w.Start.Anew[i].Own {
			if out == nil {
				out = map[string]string{}
			}
			out[w.Found.Openings[k].Name] = printed(w.Start.Anew[i].Edge)
		}
	}
	return out
}

// legs is how the legs of a wall are laid of which the job leaves it open.
func legs(w plan.Wall) map[string]string {
	var out map[string]string
	for _, l := range w.Found.LegsBeside() {
		k, how := w.Found.LegOf(l)
		if s := w.Found.Base[k]; !s.Best || s.Why == survey.LegOnly {
			continue
		}
		if out == nil {
			out = map[string]string{}
		}
		out[l.Side()] = how.String()
	}
	return out
}

// band is what is kept of a band.
func band(typed survey.Band, b plan.Band, walls []plan.Wall) survey.HeldBand {
	out := survey.HeldBand{Name: b.Name, Walls: map[string]survey.WallPin{}}
	if typed.Bottom.At == "" && typed.Upon == "" {
		out.Bottom = printed(b.Bottom)
	}
	if typed.Bond.Kind == string(survey.Running) && typed.Bond.Hand == "" {
		out.Hand = side(b.Hand)
	}
	if kind := survey.BondKind(typed.Bond.Kind); kind != "" && !(survey.BondRule{Kind: kind}).Coursed() {
		out.Line = printed(b.Line)
	}
	for i, w := range b.Walls {
		out.Walls[walls[w].Found.Name] = survey.WallPin{Edge: printed(b.Edges[i])}
	}
	return out
}

// side is the word of a hand in the job file.
func side(h survey.Hand) string {
	if h == survey.Right {
		return "right"
	}
	return "left"
}

// printed is a length as a plan prints it, to 0.001 mm, which is read back to the
// unit (length.ParsePrinted).
func printed(l length.Length) string { return l.MillimetreText() + " mm" }

// Write gives what is kept as JSON, on one line.
func Write(h survey.Held) ([]byte, error) { return json.Marshal(h) }

// Read reads what Write gives.
func Read(kept []byte) (survey.Held, error) {
	var h survey.Held
	if err := json.Unmarshal(kept, &h); err != nil {
		return survey.Held{}, fmt.Errorf("the set-out kept does not read: %w", err)
	}
	return h, nil
}

// Equal tells whether two set-outs are written alike, whatever engine gave them.
// Two that are not may still be the same (Same).
func Equal(a, b survey.Held) (bool, error) {
	a.Engine, b.Engine = "", ""
	x, err := Write(a)
	if err != nil {
		return false, err
	}
	y, err := Write(b)
	return string(x) == string(y), err
}

// Hold gives the job with a set-out held.
func Hold(job survey.Job, h survey.Held) survey.Job {
	job.Held = &h
	return job
}

// LetGo gives the job without the set-out that it holds.
func LetGo(job survey.Job) survey.Job {
	job.Held = nil
	return job
}

// Same tells whether two plans of a job set every piece of the walls in the same place.
// What lines niches and windows follows the walls, by rules of its own, but for how it goes round their edges.
func Same(a, b []plan.Wall) bool {
	return slices.EqualFunc(a, b, func(v, w plan.Wall) bool {
		return samePieces(&v, &w) && (goesRound(v) == goesRound(w) ||
			slices.EqualFunc(v.Folded(), w.Folded(), func(f, g *plan.Face) bool { return samePieces(&f.Wall, &g.Wall) }))
	})
}

func samePieces(v, w *plan.Wall) bool {
	if len(v.Pieces) != len(w.Pieces) {
		return false
	}
	for i := range v.Pieces {
		if p, q := &v.Pieces[i], &w.Pieces[i]; p.Tile != q.Tile || !sameRegion(p.Face, q.Face) {
			return false
		}
	}
	return true
}

func sameRegion(a, b plane.Region) bool {
	return slices.EqualFunc(a, b, func(r, s plane.Ring) bool { return slices.Equal(r, s) })
}
