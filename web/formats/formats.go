package formats

import (
	"bytes"
	"encoding/json"
	"net/http"
	"reflect"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/survey"
	"coursewright/layout/takeoff"
	"coursewright/web/page"
)

// Schema is one file's description and the address it is served at.
type Schema struct {
	Path string
	Text []byte
}

// All are the schemas there are.
func All() []Schema {
	return []Schema{
		{"/formats/job-1.schema.json", written(job())},
		{"/formats/plan-1.schema.json", written(plan())},
		{"/formats/cuts-1.schema.json", written(rows("Cut schedule", tableWords+" One row for each cut piece.", "cuts:1", cuts.Columns()))},
		{"/formats/take-off-1.schema.json", written(rows("Take-off", tableWords+" One row for each thing to buy.", "take-off:1", takeoff.Columns()))},
	}
}

const (
	jobWords = "What was measured and what was chosen for one room. Every length is a text as people write it (59 1/2, 4' 11-1/2\", 1511 mm), " +
		"in the job's units where it bears none. Heights count from the level line, x from a wall's left end as seen from inside the room. " +
		"A mark is measured (at) or free inside a range (from, to). A file may be 1 MiB long; a field may stand once."
	planWords = "What was worked out for a job: set-out, reasons, pieces, findings. Every length is a number of millimetres, exact to 0.001. " +
		"x runs from a wall's left end as seen from inside the room, y from the level line up. Further fields may come."
	tableWords = "The rows of a CSV file (RFC 4180, in UTF-8 with a byte order mark), each as an object by the names in its first row. " +
		"A cell that a spreadsheet would take for a formula has a ' before it."
)

// job describes what survey.Read takes.
func job() object {
	d := describer{closed: true}
	out := d.describe("Job file", jobWords, "job:1", reflect.TypeFor[survey.Job]())
	top := d.defs["Job"].(object)
	top["required"] = []string{"format"}
	properties := top["properties"].(object)
	properties["format"] = object{"const": survey.Format}
	return out
}

// plan describes what layout.Plan.File writes.
func plan() object {
	d := describer{lists: true}
	out := d.describe("Plan file", planWords, "plan:1", layout.FileType())
	d.defs[layout.FileType().Name()].(object)["properties"].(object)["format"] = object{"const": layout.PlanFormat}
	return out
}

// written writes a schema out; what is made here can be written.
func written(schema object) []byte {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	_ = e.Encode(schema)
	return out.Bytes()
}

// Routes are the addresses of the schemas.
func Routes(page.Site) []page.Route {
	var out []page.Route
	for _, s := range All() {
		out = append(out, page.Get(s.Path, func(w http.ResponseWriter, _ *http.Request) error {
			w.Header().Set("Content-Type", "application/schema+json")
			_, err := w.Write(s.Text)
			return err
		}))
	}
	return out
}
