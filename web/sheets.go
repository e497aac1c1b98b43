package web

import (
	"bytes"
	"io"
	"net/http"
	"slices"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/survey"
	"coursewright/layout/takeoff"
	"coursewright/store"
	"coursewright/web/sheet"
)

// printSheets sends the sheets of a job as one PDF: ?paper=a4&kinds=set-out,cuts.
// They bear the date of the day they are printed.
func (s *Server) printSheets(w http.ResponseWriter, r *http.Request) error {
	paper, err := sheet.PaperNamed(r.URL.Query().Get("paper"))
	if err != nil {
		return badRequest(err)
	}
	kinds, err := sheet.ParseKinds(r.URL.Query().Get("kinds"))
	if err != nil {
		return badRequest(err)
	}
	stored, plan, err := s.solved(r)
	if err != nil {
		return err
	}
	job, err := survey.Read(stored.Document)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	opts := sheet.Options{Choices: s.toCompare(job, kinds), Paper: paper, Kinds: kinds, Date: s.Store.Now(), Hash: sheet.Hash(stored.Document)}
	if err := sheet.Write(&out, plan, opts); err != nil {
		return err
	}
	return sendAs(w, "application/pdf", `inline; filename="`+fileName(stored.Title)+`.pdf"`, out.Bytes())
}

// toCompare solves the choices of a job where their sheet is asked for.
func (s *Server) toCompare(job survey.Job, kinds []sheet.Kind) []sheet.Choice {
	if len(kinds) > 0 && !slices.Contains(kinds, sheet.Compare) {
		return nil
	}
	return sheet.ChoicesOf(job, s.Solve)
}

// sendCuts sends the cut schedule as CSV.
func (s *Server) sendCuts(w http.ResponseWriter, r *http.Request) error {
	return s.sendTable(w, r, "cuts", func(plan layout.Plan, out io.Writer) error {
		return schedule(plan).CSV(out, plan.Room.Units)
	})
}

// sendTakeoff sends what to buy as CSV.
func (s *Server) sendTakeoff(w http.ResponseWriter, r *http.Request) error {
	return s.sendTable(w, r, "take-off", func(plan layout.Plan, out io.Writer) error {
		return toBuy(plan, schedule(plan)).CSV(out)
	})
}

func schedule(plan layout.Plan) cuts.Schedule {
	return cuts.Of(cuts.Input{Room: plan.Room, Walls: plan.Walls}, cuts.For(plan.Room))
}

func toBuy(plan layout.Plan, c cuts.Schedule) takeoff.Takeoff {
	in := takeoff.Input{Room: plan.Room, Walls: plan.Walls, TilesCut: c.Offcuts.TilesCut}
	return takeoff.Of(in, takeoff.For(plan.Room))
}

func (s *Server) sendTable(w http.ResponseWriter, r *http.Request, name string, write func(layout.Plan, io.Writer) error) error {
	stored, plan, err := s.solved(r)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if err := write(plan, &out); err != nil {
		return err
	}
	return sendAs(w, "text/csv; charset=utf-8", `attachment; filename="`+fileName(stored.Title)+"-"+name+`.csv"`, out.Bytes())
}

// solved loads the job of a request and solves it.
func (s *Server) solved(r *http.Request) (store.Job, layout.Plan, error) {
	stored, err := s.load(r)
	if err != nil {
		return stored, layout.Plan{}, err
	}
	job, err := survey.Read(stored.Document)
	if err != nil {
		return stored, layout.Plan{}, err
	}
	plan, err := s.Solve(job)
	if err != nil {
		return stored, plan, badRequest(err)
	}
	return stored, plan, nil
}

func sendAs(w http.ResponseWriter, kind, disposition string, data []byte) error {
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Content-Disposition", disposition)
	_, _ = w.Write(data)
	return nil
}
