// Package bathroom is the page for somebody with wet thumbs: one wall, one step of the work on it.
package bathroom

import (
	"context"
	"errors"
	"net/http"
	"slices"
	"strconv"

	"coursewright/layout/cuts"
	"coursewright/layout/finding"
	"coursewright/layout/keep"
	"coursewright/layout/piece"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/drawing"
	"coursewright/web/page"
)

// pages are the pages of the bathroom.
type pages struct{ page.Site }

// Routes are the addresses of the bathroom.
func Routes(site page.Site) []page.Route {
	s := pages{site}
	return []page.Route{
		page.Get("/jobs/{id}/bathroom", s.showBathroom),
		page.Post("/jobs/{id}/bathroom", s.tickPieces),
	}
}

// bathroom is a job in setting order with the ticks that were made on it.
type bathroom struct {
	order
	stored store.Job
	job    survey.Job
	cuts   cuts.Schedule
	ticks  []store.Tick
	set    map[string]bool // by mark
}

// inBathroom loads all that the page needs.
func (s pages) inBathroom(r *http.Request) (b bathroom, err error) {
	stored, plan, err := s.Solved(r)
	if err != nil {
		return b, err
	}
	b.stored, b.cuts, b.set = stored, page.Schedule(plan), map[string]bool{}
	b.order = orderOf(plan, b.cuts)
	if b.job, err = survey.Read(stored.Document); err != nil {
		return b, err
	}
	if b.ticks, err = s.Store.Ticks(r.Context(), stored.ID); err != nil {
		return b, err
	}
	for _, t := range b.ticks {
		b.set[t.Mark] = true
	}
	return b, nil
}

// showBathroom shows one step: that of ?piece=…, else the first on ?wall=…
// where something is not set, else the first of the job.
func (s pages) showBathroom(w http.ResponseWriter, r *http.Request) error {
	b, err := s.inBathroom(r)
	if err != nil {
		return err
	}
	q := r.URL.Query()
	if q.Has("set-out") {
		return page.Render(w, r, http.StatusOK, SetOutPage(b.setOut()))
	}
	return page.Render(w, r, http.StatusOK, BathroomPage(b.page(s, q.Get("wall"), q.Get("piece"), "")))
}

// tickPieces sets or takes off ticks. A tick holds the set-out, because its marks are on the wall then.
func (s pages) tickPieces(w http.ResponseWriter, r *http.Request) error {
	b, err := s.inBathroom(r)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return page.BadRequest(err)
	}
	wall, piece, marks := r.PostForm.Get("wall"), r.PostForm.Get("piece"), r.PostForm["mark"]
	if r.PostForm.Get("do") == "unset" {
		err = s.Store.Untick(r.Context(), b.stored.ID, marks...)
	} else {
		const changed = "The plan has changed since this page was shown, so nothing was ticked. Look at the piece again."
		ticks, fit := b.ticksOf(marks)
		if !fit {
			return page.Render(w, r, http.StatusConflict, BathroomPage(b.page(s, wall, piece, changed)))
		}
		err = s.tick(r.Context(), b, ticks)
		if conflict := (*store.Conflict)(nil); errors.As(err, &conflict) {
			return page.Render(w, r, http.StatusConflict, BathroomPage(b.page(s, wall, piece, changed)))
		}
	}
	if err != nil {
		return err
	}
	http.Redirect(w, r, string(page.JobPath(b.stored.ID, ""))+"/bathroom?wall="+strconv.Itoa(number(wall))+"&piece="+cleanID(piece), http.StatusSeeOther)
	return nil
}

// tick sets ticks on the job with its set-out held, in one write. Whether the set-out is held because
// another engine gave it stays as it is: that question is asked on the bench.
func (s pages) tick(ctx context.Context, b bathroom, ticks []store.Tick) error {
	engine := ""
	if b.job.Held != nil {
		engine = b.job.Held.Engine
	}
	held := keep.Hold(b.job, keep.Of(engine, b.job, b.plan.Setout, b.plan.Walls))
	state, err := page.StateOf(held, b.plan)
	if err != nil {
		return err
	}
	_, err = s.Store.TickOn(ctx, b.stored.ID, b.stored.Revision, state, ticks...)
	return err
}

// ticksOf makes ticks of marks, if all of them are those of pieces of the plan.
func (b bathroom) ticksOf(marks []string) (ticks []store.Tick, fit bool) {
	id := make(map[string]string, len(b.marks))
	for piece, mark := range b.marks {
		id[mark] = piece
	}
	for _, mark := range marks {
		if id[mark] == "" {
			return nil, false
		}
		ticks = append(ticks, store.Tick{Mark: mark, Piece: id[mark], Revision: b.stored.Revision})
	}
	return ticks, true
}

// page gathers what is shown of the step that wall and piece ask for.
func (b bathroom) page(s pages, wall, piece, notice string) Bathroom {
	out := Bathroom{Notice: notice, Job: page.Job{ID: b.stored.ID, Revision: b.stored.Revision, Typed: b.job, Plan: b.plan}}
	at, known := b.at[piece]
	if !known {
		switch {
		case notice != "" || piece == "":
		case b.stands[piece]:
			out.Notice = cleanID(piece) + " stands already, as the survey of the job says."
		default:
			out.Notice = "There is no piece " + cleanID(piece) + " in the plan as it is now."
		}
		at, known = b.begin(number(wall) - 1)
	}
	out.All, out.Astray = b.total(), b.astray()
	if out.Wall = number(wall) - 1; known {
		out.Wall = b.steps[at].Wall
	}
	out.Wall = min(max(0, out.Wall), max(0, len(b.plan.Walls)-1))
	b.parts(&out, at)
	if known {
		b.step(&out, at)
	}
	return out
}

// begin is the first step with something to set, on one wall or on all; where
// all is set, the first step.
func (b bathroom) begin(wall int) (at int, found bool) {
	of := func(s step) bool { return wall < 0 || s.Wall == wall }
	open := func(s step) bool { return of(s) && b.count(s) < len(s.Pieces) }
	if at = slices.IndexFunc(b.steps, open); at < 0 {
		at = slices.IndexFunc(b.steps, of)
	}
	return at, at >= 0
}

// step puts one step on the page.
func (b bathroom) step(out *Bathroom, at int) {
	s := b.steps[at]
	shown := b.shown(s)
	var here []string
	for _, p := range s.Pieces {
		here = append(here, p.ID)
	}
	if len(s.Pieces) == 1 {
		shown.Offcut = b.offcut(b.cuts.Offcuts.Pairs, s.Pieces[0].ID)
	}
	if s.Sheet != nil {
		shown.OnSheet = b.cutsOn(s)
	}
	out.Step, out.Back, out.Next, out.Cautions = &shown, b.turn(at, -1), b.turn(at, 1), b.cautions(at)
	out.Row, out.Steps = b.wholeRow(at), b.table(at)
	set := map[string]bool{}
	for id, mark := range b.marks {
		set[id] = b.set[mark]
	}
	for id := range b.stands {
		set[id] = true
	}
	if b.firstCourse(s) {
		out.Strip = page.Picture(drawing.Footing(b.plan, s.Wall, here), "strip")
	}
	if s.Part == stages.Within || s.On != nil && s.On.Is == survey.WallTop {
		out.Drawing = page.Picture(drawing.SettingFace(b.plan, s.Wall, s.On, here, set), "wall")
	} else {
		out.Drawing = page.Picture(drawing.Setting(b.plan, s.Wall, here, set), "wall")
	}
	if s.cut != nil {
		out.Sketch = page.Picture(drawing.CutSketch(s.cut.Sketch, s.cut.Outline, 80*drawing.Millimetre, 36*drawing.Millimetre, "Sketch of the cut"), "sketch")
	}
}

// shown is a step with its ticks.
func (b bathroom) shown(s step) Step {
	shown := Step{Batch: s.batch, Cut: s.cut, Course: s.Pieces[0].Course, Of: s.of, On: s.On, Trim: s.Trim, Sheet: s.Sheet, Field: s.Field}
	for _, p := range s.Pieces {
		shown.Pieces = append(shown.Pieces, Placed{Piece: p, Mark: b.marks[p.ID], Set: b.set[b.marks[p.ID]]})
	}
	return shown
}

// table lists the steps of the wall of a step, in their order.
func (b bathroom) table(at int) []Line {
	var out []Line
	for i, s := range b.steps {
		if s.Wall == b.steps[at].Wall {
			shown := b.shown(s)
			out = append(out, Line{shown.ids(), s.Pieces[0].ID, Bathroom{Job: page.Job{Plan: b.plan}, Step: &shown}.what(), shown.done(), i == at})
		}
	}
	return out
}

// wholeRow is the course of the wall that a step is a part of, where more of it is left than the step.
func (b bathroom) wholeRow(at int) *Row {
	s := b.steps[at]
	if s.On != nil || s.Trim != nil || s.Sheet != nil {
		return nil
	}
	row, others := Row{}, false
	for i, other := range b.steps {
		if other.Wall != s.Wall || other.Part != s.Part || other.On != nil || other.Trim != nil || other.Sheet != nil || other.row() != s.row() {
			continue
		}
		row.Last = other.Pieces[0].ID
		for _, p := range other.Pieces {
			if mark := b.marks[p.ID]; !b.set[mark] {
				row.Marks = append(row.Marks, mark)
				others = others || i != at
			}
		}
	}
	if !others {
		return nil
	}
	return &row
}

// turn is the step before or after one.
func (b bathroom) turn(at, way int) *Turn {
	next := at + way
	if next < 0 || next >= len(b.steps) {
		return nil
	}
	t := &Turn{Piece: b.steps[next].Pieces[0].ID, Wall: b.steps[next].Wall}
	if t.Wall != b.steps[at].Wall {
		t.Name = b.plan.Walls[t.Wall].Found.Name
	}
	return t
}

// cautions are those of the plan that belong to the work of a step: the saw to
// cuts, the tub and the hardening to the first course, and what must be right
// behind the tile to the first step of all.
func (b bathroom) cautions(at int) []finding.Finding {
	s := b.steps[at]
	var out []finding.Finding
	for _, f := range b.plan.Findings {
		if f.Grade != finding.Caution {
			continue
		}
		belongs := at == 0
		switch f.Rule {
		case finding.CuttingDust, finding.WetSawAndPower:
			belongs = s.batch != nil || s.Sheet != nil && s.Sheet.Cut > 0 || s.Trim != nil && s.Trim.Cut()
		case finding.TubDeflects, finding.FirstCourseMustHarden:
			belongs = b.firstCourse(s)
		}
		if belongs {
			out = append(out, f)
		}
	}
	return out
}

// firstCourse tells whether a step is of the first full course of the field.
func (b bathroom) firstCourse(s step) bool {
	in := stages.Input{Room: b.plan.Room, Walls: b.plan.Walls, Cuts: b.cuts}
	return s.On == nil && s.Trim == nil && slices.ContainsFunc(s.Pieces, func(p piece.Piece) bool { return in.FirstCourse(b.plan.Walls[s.Wall], p) })
}
