package sheets

import (
	"io/fs"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/page"
	"coursewright/web/sheet"
)

// Choose is the page on which sheets are picked.
type Choose struct {
	page.Job
	Kinds []Kind
	Paper string
	Pages int
	Query string // of the PDF that has the pages that are shown

	picked []sheet.Kind
}

// Kind is one kind of sheet to pick.
type Kind struct {
	Key, Name, About string
	Picked           bool
	Leaves           []sheet.Page
	First            int // the first page of it among those picked, from 1; 0 where it is not
}

// count says how many pages a kind has, or on which it stands under another.
func (k Kind) count() string {
	if k.Picked && len(k.Leaves) == 0 && k.First > 0 {
		return "on " + strconv.Itoa(k.First)
	}
	return strconv.Itoa(len(k.Leaves))
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
	sheet.FullPole:    {"Story pole at full size", "strips to stand in the room"},
	sheet.Measuring:   {"Measuring sheet", "empty, to take into the room"},
}

// presets are what is picked at once, for whom.
var presets = []struct {
	Key, Name string
	Kinds     []sheet.Kind
}{
	{"job", "The job", []sheet.Kind{sheet.SetOut, sheet.Elevations, sheet.FirstCourse, sheet.CutSchedule, sheet.StoryPole, sheet.TakeOff, sheet.Stages}},
	{"saw", "The saw", []sheet.Kind{sheet.CutSchedule}},
	{"client", "A client", []sheet.Kind{sheet.Elevations, sheet.Compare}},
	{"measure", "Measuring", []sheet.Kind{sheet.Measuring}},
}

// showSheets is the page of kinds, paper and previews: ?for=saw, or ?kind=cuts&kind=stages, and ?paper=a4.
func (s pages) showSheets(w http.ResponseWriter, r *http.Request) error {
	stored, plan, err := s.Solved(r)
	if err != nil {
		return err
	}
	job, err := survey.Read(stored.Document)
	if err != nil {
		return err
	}
	q := r.URL.Query()
	picked, err := kindsOf(q)
	if err != nil {
		return page.BadRequest(err)
	}
	paper, err := sheet.PaperNamed(paperOf(r))
	if err != nil {
		return page.BadRequest(err)
	}
	keepPaper(w, r)
	c := Choose{Job: s.Shown(r.Context(), stored, job, plan), Paper: paperOf(r), picked: picked}
	c.Here = "?" + url.Values{"kind": names(picked), "paper": {c.Paper}}.Encode()
	together := sheet.Pages(plan, s.counted(r.Context(), picks{stored, job, plan, picked, paper}))
	c.Pages = len(together)
	for _, k := range sheet.Kinds() {
		one := Kind{Key: string(k), Name: kindWords[k][0], About: kindWords[k][1], Picked: slices.Contains(picked, k)}
		if one.Picked {
			one.First = 1 + slices.IndexFunc(together, func(l sheet.Page) bool { return l.Shows(k) })
			one.Leaves = slices.DeleteFunc(slices.Clone(together), func(l sheet.Page) bool { return l.Kind != k })
		} else {
			one.Leaves = sheet.Pages(plan, s.counted(r.Context(), picks{stored, job, plan, []sheet.Kind{k}, paper}))
		}
		c.Kinds = append(c.Kinds, one)
	}
	c.Query = printQuery(picked, c.Paper)
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
	return "?" + url.Values{"kinds": {kindNames(kinds)}, "paper": {paper}}.Encode()
}

func kindNames(kinds []sheet.Kind) string { return strings.Join(names(kinds), ",") }

func names(kinds []sheet.Kind) []string {
	var out []string
	for _, k := range kinds {
		out = append(out, string(k))
	}
	return out
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

// previewPath is the picture of one page of those that are picked.
func (c Choose) previewPath(n int) string {
	q := url.Values{"kinds": {kindNames(c.picked)}, "page": {strconv.Itoa(n)}, "r": {strconv.FormatInt(c.Revision, 10)}, "paper": {c.Paper}}
	return string(page.JobPath(c.ID, "/sheet.svg?"+q.Encode()))
}

// showPreview draws one page as a picture: ?kinds=cuts&page=2.
func (s pages) showPreview(w http.ResponseWriter, r *http.Request) error {
	q := r.URL.Query()
	kinds, err := sheet.ParseKinds(q.Get("kinds"))
	if err != nil {
		return page.BadRequest(err)
	}
	paper, err := sheet.PaperNamed(paperOf(r))
	if err != nil {
		return page.BadRequest(err)
	}
	stored, plan, err := s.Solved(r)
	if err != nil {
		return err
	}
	job, err := survey.Read(stored.Document)
	if err != nil {
		return err
	}
	leaves := s.pictures(r.Context(), picks{stored, job, plan, kinds, paper})
	n, err := strconv.Atoi(q.Get("page"))
	if err != nil || n < 1 || n > len(leaves) {
		return fs.ErrNotExist
	}
	return page.SendPaper(w, leaves[n-1].Scene)
}

func usualPaper(c Choose) string {
	if c.System() == length.Metric {
		return "millimetres: A4"
	}
	return "inches: Letter"
}
