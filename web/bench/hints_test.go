package bench_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/web/form"
	"coursewright/web/trial"
)

// furnished is a job with what no example has: fixtures, strips, courses that stand, pins.
func furnished(t *testing.T) []byte {
	t.Helper()
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	for _, do := range []string{
		"add walls[0].fixtures corner shelf", "add walls[1].fixtures soap dish", "add walls[1].fixtures grab bar", "add walls[2].fixtures glass line", "add walls[0].strips",
		"add bands liner", "add bands above", "add trims bullnose", "set setOrder[0]=back", "spacers", "pin back joint=30", "set pins.course.line=-37", "set pins.walls.back.marks.head=80",
		"set walls[0].set.course=2", "set walls[0].set.left=-30", "set walls[0].set.right=-30",
	} {
		require.NoError(t, form.Apply(&job, do), do)
	}
	job.Walls[1].Fixtures[0].Flush = true
	file, err := survey.Write(job)
	require.NoError(t, err)
	return file
}

// hintOn finds the "?" of a field: beside its name, over its column, or in the help of its question.
func hintOn(field *html.Node) *html.Node {
	column, cell := 0, (*html.Node)(nil)
	for up := field.Parent; up != nil; up = up.Parent {
		switch class := " " + trial.Attr(up, "class") + " "; {
		case up.Data == "td":
			cell = up
			for at := up.PrevSibling; at != nil; at = at.PrevSibling {
				if at.Type == html.ElementNode {
					column++
				}
			}
		case up.Data == "table" && cell != nil:
			if heads := all(up, func(n *html.Node) bool { return n.Data == "th" && n.Parent.Parent.Data == "thead" }); column < len(heads) {
				return first(heads[column], opensHelp)
			}
			return nil
		case strings.Contains(class, " asked "):
			if use := first(up, func(n *html.Node) bool { return n.Data == "use" }); use != nil {
				return use
			}
			return first(up, opensHelp)
		case strings.Contains(class, " field ") || strings.Contains(class, " ticked "):
			return first(up, opensHelp)
		}
	}
	return nil
}

func opensHelp(n *html.Node) bool { return n.Data == "button" && trial.Attr(n, "popovertarget") != "" }

func all(n *html.Node, is func(*html.Node) bool) (found []*html.Node) {
	for d := range n.Descendants() {
		if d.Type == html.ElementNode && is(d) {
			found = append(found, d)
		}
	}
	return found
}

func first(n *html.Node, is func(*html.Node) bool) *html.Node {
	if found := all(n, is); len(found) > 0 {
		return found[0]
	}
	return nil
}

// Every field of the survey, in steps and by itself, of every example and of a room with all there is, has a help with a
// picture that is drawn on the page.
func TestEveryFieldHasAHelpWithAPicture(t *testing.T) {
	files := map[string][]byte{"furnished": furnished(t), "demo": static.Demo}
	names, err := filepath.Glob("../../testdata/jobs/*.json")
	require.NoError(t, err)
	for _, name := range names {
		files[filepath.Base(name)], err = os.ReadFile(name)
		require.NoError(t, err)
	}
	for name, file := range files {
		s := trial.Solving(t, file, trial.Resolved)
		for _, query := range []string{"", "?all=1"} {
			_, page := s.Get("/jobs/1" + query)
			root, err := html.Parse(strings.NewReader(page))
			require.NoError(t, err)
			byID := map[string]*html.Node{}
			for n := range root.Descendants() {
				if id := trial.Attr(n, "id"); id != "" {
					assert.NotContains(t, byID, id, "%s%s: an id stands twice", name, query)
					byID[id] = n
				}
			}
			seen := 0
			for _, field := range all(root, func(n *html.Node) bool {
				return (n.Data == "input" || n.Data == "select") && trial.Attr(n, "type") != "hidden"
			}) {
				seen++
				path := trial.Attr(field, "name")
				hint := hintOn(field)
				if !assert.NotNil(t, hint, "%s%s: %s has no help", name, query, path) {
					continue
				}
				if hint.Data == "button" {
					box := byID[trial.Attr(hint, "popovertarget")]
					if !assert.NotNil(t, box, "%s: the help of %s is not on the page", name, path) {
						continue
					}
					assert.NotNil(t, first(box, func(n *html.Node) bool { return n.Data == "p" && len(trial.Text(n)) > 5 }), path)
					hint = first(box, func(n *html.Node) bool { return n.Data == "use" })
				}
				if assert.NotNil(t, hint, path) {
					assert.NotEmpty(t, trial.Attr(hint.Parent, "aria-label"), "%s: the picture is said in words", path)
					drawn := byID[strings.TrimPrefix(trial.Attr(hint, "href"), "#")]
					if assert.NotNil(t, drawn, "%s: %s", path, trial.Attr(hint, "href")) {
						assert.NotNil(t, first(drawn, func(n *html.Node) bool { return n.Data == "path" }), "%s: nothing is drawn", path)
					}
				}
			}
			assert.Greater(t, seen, 25, "%s%s", name, query)
		}
	}
}

// No two pictures are the same: one that is not drawn would show another.
func TestEachPictureIsDrawn(t *testing.T) {
	_, page := trial.Swift(t).Get("/jobs/1")
	root, err := html.Parse(strings.NewReader(page))
	require.NoError(t, err)
	drawn := map[string]string{}
	for _, symbol := range all(root, func(n *html.Node) bool { return n.Data == "symbol" }) {
		var inside strings.Builder
		require.NoError(t, html.Render(&inside, symbol.FirstChild))
		id := trial.Attr(symbol, "id")
		assert.Empty(t, drawn[inside.String()], "%s shows the same", id)
		drawn[inside.String()] = id
	}
	assert.Greater(t, len(drawn), 50)
}
