package sheets

import (
	"bytes"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"github.com/a-h/templ"

	"coursewright/layout/length"
	"coursewright/web/drawing"
	"coursewright/web/page"
	"coursewright/web/sheet"
)

// Choose is the page on which sheets are picked.
type Choose struct {
	page.Job
	Kinds []Kind
	Paper string
	Pages int
	Query string // what the button prints
}

// Kind is one kind of sheet to pick.
type Kind struct {
	Key, Name, About string
	Picked           bool
	Pages            int
	First            int // the first page of it among those picked, from 1; 0 where it is not
}

// kindWords say what each kind is, by its key.
var kindWords = map[sheet.Kind][2]string{
	sheet.SetOut:      {"Set-out", "where the lines go"},
	sheet.Elevations:  {"Walls", "one page each, with its cut list"},
	sheet.FirstCourse: {"First course", "both heights of every tile"},
	sheet.CutSchedule: {"Cut schedule", "one line for each fence setting"},
	sheet.StoryPole:   {"Story pole", "every joint on one stick"},
	sheet.TakeOff:     {"Take-off", "what to buy"},
	sheet.Stages:      {"Stages", "the order of work"},
	sheet.Compare:     {"Choices", "for a client, side by side"},
}

// presets are what is picked at once, for whom.
var presets = []struct {
	Key, Name string
	Kinds     []sheet.Kind
}{
	{"job", "The job", []sheet.Kind{sheet.SetOut, sheet.Elevations, sheet.FirstCourse, sheet.CutSchedule, sheet.TakeOff, sheet.Stages}},
	{"saw", "The saw", []sheet.Kind{sheet.CutSchedule}},
	{"client", "A client", []sheet.Kind{sheet.Elevations, sheet.Compare}},
}

// showSheets is the page of kinds, paper and previews: ?for=saw, or ?kind=cuts&kind=stages, and ?paper=a4.
func (s pages) showSheets(w http.ResponseWriter, r *http.Request) error {
	stored, plan, err := s.Solved(r)
	if err != nil {
		return err
	}
	_, job, err := s.Typed(r)
	if err != nil {
		return err
	}
	q := r.URL.Query()
	picked, err := kindsOf(q)
	if err != nil {
		return page.BadRequest(err)
	}
	paper, err := sheet.PaperNamed(q.Get("paper"))
	if err != nil {
		return page.BadRequest(err)
	}
	c := Choose{Job: s.Shown(r.Context(), stored, job, plan), Paper: q.Get("paper")}
	for _, k := range sheet.Kinds() {
		one := Kind{Key: string(k), Name: kindWords[k][0], About: kindWords[k][1], Picked: slices.Contains(picked, k)}
		var out bytes.Buffer
		opts := sheet.Options{Choices: s.toCompare(r.Context(), job, []sheet.Kind{k}), Paper: paper, Kinds: []sheet.Kind{k}, Date: s.Store.Now(), Hash: sheet.Hash(stored.Document)}
		if err := sheet.Write(&out, plan, opts); err != nil {
			return fmt.Errorf("sheet %s: %w", k, err)
		}
		one.Pages = pagesOf(out.Bytes())
		if one.Picked {
			one.First = c.Pages + 1
			c.Pages += one.Pages
		}
		c.Kinds = append(c.Kinds, one)
	}
	c.Query = printQuery(picked, q.Get("paper"))
	return page.Render(w, r, http.StatusOK, ChoosePage(c))
}

// kindsOf reads which kinds are picked; nothing picked is the job's preset.
func kindsOf(q url.Values) ([]sheet.Kind, error) {
	if kinds := q["kind"]; len(kinds) > 0 {
		return sheet.ParseKinds(strings.Join(kinds, ","))
	}
	for _, p := range presets {
		if p.Key == q.Get("for") {
			return p.Kinds, nil
		}
	}
	return presets[0].Kinds, nil
}

func printQuery(kinds []sheet.Kind, paper string) string {
	var names []string
	for _, k := range kinds {
		names = append(names, string(k))
	}
	q := url.Values{"kinds": {strings.Join(names, ",")}}
	if paper != "" {
		q.Set("paper", paper)
	}
	return "?" + q.Encode()
}

// pagesOf counts the pages of a PDF of ours by its page objects.
func pagesOf(pdf []byte) int {
	return bytes.Count(pdf, []byte("/Type /Page\n")) + bytes.Count(pdf, []byte("/Type /Page "))
}

// is tells whether what is picked is one of the presets.
func (c Choose) is(kinds []sheet.Kind) bool {
	for _, k := range c.Kinds {
		if k.Picked != slices.Contains(kinds, sheet.Kind(k.Key)) {
			return false
		}
	}
	return true
}

// button says how many pages the button prints.
func (c Choose) button() string { return "Print " + page.Count(c.Pages, "page") }

// wallOn is the wall on a page of elevations, drawn small.
func (c Choose) wallOn(k Kind, n int) templ.Component {
	if k.Key != string(sheet.Elevations) || n >= len(c.Plan.Walls) {
		return nil
	}
	return page.Picture(drawing.Elevation(c.Plan, n, drawing.Options{}), fmt.Sprintf("preview-%d", n))
}

// leafName names one page of a kind.
func (c Choose) leafName(k Kind, n int) string {
	switch {
	case k.Key == string(sheet.Elevations) && n < len(c.Plan.Walls):
		return "Wall " + c.Plan.Walls[n].Found.Letter
	case k.Pages > 1:
		return fmt.Sprintf("%s, %d of %d", k.Name, n+1, k.Pages)
	}
	return k.Name
}

func paperKey(p sheet.Paper) string { return strings.ToLower(p.Name) }

func paperQuery(paper string) string {
	if paper == "" {
		return ""
	}
	return "&paper=" + url.QueryEscape(paper)
}

func usualPaper(c Choose) string {
	if c.System() == length.Metric {
		return "millimetres: A4"
	}
	return "inches: Letter"
}
