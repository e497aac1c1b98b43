package web_test

import (
	"coursewright/web/trial"

	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/web/drawing"
	"coursewright/web/elevation"
)

// hostile are names that people do not give to walls.
var hostile = map[string]string{
	"script":           `<script>alert(1)</script>`,
	"breaking out":     `"><svg onload=alert(1)><img src=x onerror=alert(1)>`,
	"closing":          `</title></text></svg></script><script src=//x.example></script>`,
	"quotes":           "'\"`&quot;&#34;&amp;",
	"cdata":            `]]><!--<![CDATA[ -->`,
	"formula":          `=HYPERLINK("http://x.example","?")`,
	"plus formula":     `+1+cmd|' /C calc'!A0`,
	"at formula":       `@SUM(1)`,
	"minus":            `-2+3`,
	"right to left":    "abc\u202etxt.exe\u202c",
	"isolates":         "\u2066\u2067x\u2069",
	"newlines":         "a\r\nSet-Cookie: x=y\r\n\r\n<b>",
	"a tab":            "a\tb",
	"climbing":         `../../../../etc/passwd`,
	"drive":            `C:\..\con.txt`,
	"nul":              "a\x00b",
	"escape":           "\x1b[31mred\x07",
	"emoji":            "🛁🧱👩🏽‍🔧 tile",
	"accents":          "Bäder Ürün ⅜ ⌀ ß ﬁ z̷͍̪̀a̸l̴g̷o",
	"hebrew":           "קיר אמבטיה",
	"not UTF-8":        "a\xff\xfeb",
	"very long":        strings.Repeat("W", 5000),
	"long and many":    strings.Repeat("ab ", 26),
	"percent":          `%s%n%00%2e%2e`,
	"pdf":              `(a) Tj ET endstream endobj << /JS (x) >> \)`,
	"template":         `{{.}} ${7*7} {% x %}`,
	"line separators":  "a\u2028b\u2029c",
	"nothing to see":   "\u200b\ufeff",
	"private use":      "\ue000\U000F0000\U0010FFFF",
	"prototype":        `__proto__`,
	"path of the form": `walls[0].name`,
	"dots":             `a.b["c"]`,
}

// unprintable are those that no name may hold: the others are shown as text.
var unprintable = []string{"newlines", "a tab", "nul", "escape", "right to left", "isolates", "line separators", "very long"}

// full is the demo, which has something in most fields.
func full(t *testing.T) survey.Job {
	t.Helper()
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	return job
}

// texts visits every text of a job, of whatever use it is, so that a new one cannot escape.
func texts(v reflect.Value, path string, visit func(path string, text reflect.Value)) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			texts(v.Elem(), path, visit)
		}
	case reflect.Struct:
		if m, ok := v.Addr().Interface().(*survey.Measure); ok && m.Mark != nil {
			texts(reflect.ValueOf(m.Mark), path, visit) // a measure is a mark or a text, not both
			return
		}
		for i := range v.NumField() {
			texts(v.Field(i), path+"."+v.Type().Field(i).Name, visit)
		}
	case reflect.Slice:
		for i := range v.Len() {
			texts(v.Index(i), path, visit)
		}
	case reflect.Map:
		for _, key := range v.MapKeys() {
			one := reflect.New(v.Type().Elem()).Elem()
			one.Set(v.MapIndex(key))
			texts(one, path, visit)
			v.SetMapIndex(key, one)
		}
	case reflect.String:
		visit(path, v)
	}
}

// TestNoTextOfAJobBreaksOutOfAPage puts every hostile text into every field, one at a time, and
// imports the job. It is refused or shown as text.
func TestNoTextOfAJobBreaksOutOfAPage(t *testing.T) {
	s := trial.Empty(t, trial.Resolved)
	seen := 0
	for i := 0; ; i++ {
		job := full(t)
		at, n := "", 0
		var field reflect.Value
		texts(reflect.ValueOf(&job).Elem(), "", func(path string, text reflect.Value) {
			if n == i {
				at, field = path, text
			}
			n++
		})
		if at == "" {
			break
		}
		seen++
		for _, name := range []string{"breaking out", "newlines", "closing"} {
			field.SetString(hostile[name])
			document, err := survey.Write(job)
			require.NoError(t, err)
			answer, page := s.Upload(document)
			switch answer.StatusCode {
			case http.StatusSeeOther:
				_, page = s.Get(answer.Header.Get("Location"))
			case http.StatusUnprocessableEntity:
			default:
				t.Errorf("%s as %s: status %d", name, at, answer.StatusCode)
			}
			holdsNothingInline(t, page, name+" as "+at)
		}
	}
	assert.Greater(t, seen, 60)
}

// named gives a small job of every kind of opening, with one text wherever a name may stand.
func named(t *testing.T, text string) survey.Job {
	t.Helper()
	job, err := survey.Read([]byte(`{"format": "coursewright-job/1", "units": "in", "title": "T",
		"tile": {"name": "N", "width": "5 7/8", "height": "5 7/8"}, "joint": "1/8", "bond": {"kind": "stack"},
		"walls": [{"name": "W", "width": "48", "left": {"stops": {"at": "0"}}, "right": {"stops": {"at": "48"}},
			"base": [{"meets": "tub", "gap": "1/8", "readings": [{"at": "0", "drop": "30"}, {"at": "48", "drop": "30 1/4"}]}],
			"head": {"stops": {"at": "10"}},
			"openings": [{"kind": "niche", "name": "O", "left": {"at": "6"}, "width": {"at": "12"}, "bottom": {"at": "-12"}, "height": {"at": "12"}},
				{"kind": "window", "name": "O", "left": {"at": "30"}, "width": {"at": "9"}, "bottom": {"at": "-9"}, "height": {"at": "9"}},
				{"kind": "pipe", "name": "O", "at": "24", "height": "-20", "diameter": "1"}]}],
		"choices": [{"name": "N"}, {"name": "second", "tile": {"width": "3 7/8", "height": "3 7/8"}, "joint": "1/8", "bond": {"kind": "stack"}}],
		"chosen": "N", "work": {"niche": {"depth": "3"}}}`))
	require.NoError(t, err)
	job.Title, job.Tile.Name, job.Walls[0].Name, job.Chosen, job.Choices[0].Name = text, text, text, text, text
	for i, kind := range []string{" n", " w", " p"} {
		job.Walls[0].Openings[i].Name = text + kind
	}
	return job
}

// TestHostileNamesComeOutAsText takes each name through every way out. Where the names are refused,
// the refusal is as safe.
func TestHostileNamesComeOutAsText(t *testing.T) {
	for name, text := range hostile {
		t.Run(name, func(t *testing.T) {
			s := trial.Empty(t, trial.Once())
			job := named(t, text)
			document, err := survey.Write(job)
			require.NoError(t, err)
			answer, page := s.Upload(document)
			if slices.Contains(unprintable, name) {
				require.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
				holdsNothingInline(t, page, "refused")
				assert.NotContains(t, page, "\u202e")
				return
			}
			require.Equal(t, http.StatusSeeOther, answer.StatusCode)
			holdsEveryWayOut(t, s, string([]rune(text)))
			holdsSVGAlone(t, job)
		})
	}
}

func holdsEveryWayOut(t *testing.T, s trial.Site, text string) {
	t.Helper()
	for _, path := range []string{"/", "/jobs/1", "/jobs/1?wall=1", "/jobs/1/work", "/jobs/1/choices", "/jobs/1/bathroom", "/jobs/1/widths"} {
		answer, page := s.Get(path)
		require.Equal(t, http.StatusOK, answer.StatusCode, path)
		holdsNothingInline(t, page, path)
	}
	answer, body := s.Get("/jobs/1/job.json")
	holdsFileName(t, answer)
	again, err := survey.Read([]byte(body))
	require.NoError(t, err)
	assert.Equal(t, text, again.Title, "a job comes out as it went in")
	answer, body = s.Get("/jobs/1/plan.json")
	holdsFileName(t, answer)
	assert.True(t, json.Valid([]byte(body)))
	for _, path := range []string{"/jobs/1/cuts.csv", "/jobs/1/takeoff.csv"} {
		answer, body := s.Get(path)
		holdsFileName(t, answer)
		holdsNoFormula(t, body)
	}
	answer, body = s.Get("/jobs/1/sheets.pdf?kinds=set-out,elevations,first-course,cuts,take-off,stages,choices") // every kind that prints names
	holdsFileName(t, answer)
	holdsSoundPDF(t, body)
}

var plainFile = regexp.MustCompile(`^(attachment|inline); filename="[a-z0-9][a-z0-9-]*\.(json|csv|pdf)"$`)

func holdsFileName(t *testing.T, answer *http.Response) {
	t.Helper()
	require.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Regexp(t, plainFile, answer.Header.Get("Content-Disposition"))
	assert.Less(t, len(answer.Header.Get("Content-Disposition")), 120)
	assert.Empty(t, answer.Header.Get("Set-Cookie"))
}

// holdsNoFormula wants no cell a spreadsheet would calculate.
func holdsNoFormula(t *testing.T, body string) {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(body, "\ufeff"))).ReadAll()
	require.NoError(t, err)
	for _, row := range rows {
		for _, cell := range row {
			assert.NotRegexp(t, "^[=+@\\-\t\r\n]", cell)
		}
	}
}

// holdsSoundPDF wants a PDF that qpdf finds right, without a script, whose text can be read.
func holdsSoundPDF(t *testing.T, body string) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "sheets.pdf")
	require.NoError(t, os.WriteFile(file, []byte(body), 0o600))
	out, err := exec.Command("qpdf", "--check", file).CombinedOutput()
	require.NoError(t, err, string(out))
	text, err := exec.Command("pdftotext", file, "-").Output()
	require.NoError(t, err)
	assert.True(t, utf8.Valid(text))
	assert.Contains(t, string(text), "Set-out")
	for _, word := range []string{"/JS", "/JavaScript", "/OpenAction", "/Launch", "/URI"} {
		assert.NotContains(t, body, word+" ")
	}
}

// holdsSVGAlone wants drawings that are XML, and hold no script, event or way out.
func holdsSVGAlone(t *testing.T, job survey.Job) {
	t.Helper()
	plan, err := layout.Now(job)
	require.NoError(t, err)
	for _, scene := range []drawing.Scene{drawing.Elevation(plan, 0, drawing.Options{}), drawing.Wrap(plan, drawing.Options{})} {
		var out bytes.Buffer
		require.NoError(t, elevation.Write(&out, scene, elevation.Options{}))
		for d := xml.NewDecoder(&out); ; {
			token, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			require.NoError(t, err)
			start, ok := token.(xml.StartElement)
			if !ok {
				continue
			}
			assert.NotContains(t, []string{"script", "foreignObject", "a", "image", "use", "img"}, start.Name.Local)
			for _, a := range start.Attr {
				assert.False(t, strings.HasPrefix(a.Name.Local, "on"), a.Name.Local)
				assert.NotEqual(t, "href", a.Name.Local)
			}
		}
	}
}
