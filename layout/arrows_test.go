package layout_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const module = "coursewright/"

// order lists the packages from the bottom up: a package imports only what
// stands before it.
var order = []string{
	"layout/length", "layout/plane", "layout/survey", "layout/doubt", "layout/bond", "layout/piece", "layout/merit", "layout/trim", "layout/fixture", "layout/plan", "layout/mosaic", "layout/setout/chance", "layout/setout/count", "layout/setout/effort", "layout/setout/phase", "layout/setout/search", "layout/setout/parted", "layout/setout/tell", "layout/setout", "layout/niche", "layout/strip",
	"layout/steady", "layout/finding", "layout/table", "layout/cuts", "layout/takeoff", "layout/stages", "layout/keep", "layout/remedy", "layout",
	"migrations", "store", "static",
	"web/drawing", "web/drawing/sample", "web/elevation", "web/sheet", "web/shapes", "web/form", "web/ask", "web/page",
	"web/history", "web/jobs", "web/bench", "web/work", "web/choices", "web/sheets", "web/bathroom", "web/door", "web/turns", "web/formats", "web", "web/trial",
	"cmd/coursewright",
}

// arrow says that a package may import another. A name that ends in /... is
// the package and all below it.
type arrow struct{ from, to, why string }

var arrows = []arrow{
	{"layout/plane", "layout/length", "coordinates are lengths"},
	{"layout/survey", "layout/length", "readings are typed as text and kept as lengths"},
	{"layout/survey", "layout/plane", "a wall leaves a region for tile"},
	{"layout/bond", "layout/length", "rows stand at lengths"},
	{"layout/bond", "layout/plane", "tiles of a pattern have outlines"},
	{"layout/bond", "layout/survey", "the room says which tile, joint and bond"},
	{"layout/piece", "layout/length", "pieces are measured"},
	{"layout/piece", "layout/plane", "a piece is tile ∩ region"},
	{"layout/piece", "layout/survey", "sides of a shape are boundaries that meet or stop"},
	{"layout/piece", "layout/bond", "rows are what is cut"},
	{"layout/plan", "layout/length", "what is decided is places"},
	{"layout/plan", "layout/plane", "bare wall has a place"},
	{"layout/plan", "layout/survey", "a wall as found, and its shape"},
	{"layout/plan", "layout/piece", "a wall as it will stand is its pieces"},
	{"layout/trim", "layout/length", "trim comes in lengths"},
	{"layout/trim", "layout/plane", "a piece of trim is a part of a strip of wall"},
	{"layout/trim", "layout/survey", "ends and heads say what finishes them"},
	{"layout/plan", "layout/trim", "a wall as it will stand has its trim"},
	{"layout/fixture", "layout/length", "fixtures have heights"},
	{"layout/fixture", "layout/plane", "holes have places"},
	{"layout/fixture", "layout/survey", "the job says what is fixed to a wall"},
	{"layout/fixture", "layout/piece", "a hole is in a piece"},
	{"layout/plan", "layout/fixture", "and what is fixed to it"},
	{"layout/setout", "layout/fixture", "fixtures stand on the joint lines found"},
	{"layout/finding", "layout/fixture", "rules judge holes and heights"},
	{"layout", "layout/fixture", "the plan file lists the fixtures"},
	{"layout/setout", "layout/trim", "trim is laid when the tile is set out"},
	{"layout/merit", "layout/length", "bare wall and distances are lengths"},
	{"layout/merit", "layout/piece", "runs are judged by their share of the tile"},
	{"layout/merit", "layout/survey", "the job says what it prefers"},
	{"layout/plan", "layout/merit", "a set-out has a merit"},
	{"layout/mosaic", "layout/length", "lines between sheets have places"},
	{"layout/mosaic", "layout/plane", "they run inside the wall's region"},
	{"layout/mosaic", "layout/survey", "the job says what is on a sheet"},
	{"layout/mosaic", "layout/bond", "sheets are laid on the lattice of the tiles"},
	{"layout/mosaic", "layout/piece", "a sheet is pieces"},
	{"layout/mosaic", "layout/plan", "they are those of walls and faces"},
	{"layout/cuts", "layout/mosaic", "sheets are cut along their joints first"},
	{"layout/takeoff", "layout/mosaic", "mosaic is bought by the sheet"},
	{"layout", "layout/mosaic", "the plan file lists the sheets"},
	{"layout/finding", "layout/mosaic", "rules look at the parts of sheets"},
	{"layout/setout/chance", "layout/length", "a drawn room has lengths"},
	{"layout/setout/chance", "layout/survey", "what is drawn is a room"},
	{"layout/setout/count", "layout/length", "what is counted stands at places"},
	{"layout/setout/count", "layout/plane", "edges of regions decide what is cut"},
	{"layout/setout/count", "layout/survey", "the room as found is what is counted"},
	{"layout/setout/count", "layout/bond", "a phase moves the rows of a bond"},
	{"layout/setout/count", "layout/piece", "counts are read off the pieces that the cutter makes"},
	{"layout/setout/count", "layout/merit", "what a wall gives is its merit"},
	{"layout/setout/search", "layout/length", "lines and starts are lengths"},
	{"layout/setout/search", "layout/survey", "a room is searched"},
	{"layout/setout/search", "layout/bond", "a mark may lie under any column of the bond"},
	{"layout/setout/search", "layout/merit", "the best is found by the order of merit"},
	{"layout/setout/search", "layout/setout/count", "the search asks what a set-out gives"},
	{"layout/setout/search", "layout/setout/effort", "what is counted is added up for whoever asks"},
	{"layout/setout/tell", "layout/length", "figures are told in lengths"},
	{"layout/setout/tell", "layout/piece", "shares are told"},
	{"layout/setout/tell", "layout/plan", "what is told stands in the plan"},
	{"layout/setout/tell", "layout/plane", "a measurement holds along a side"},
	{"layout/setout/tell", "layout/survey", "the room as found is told about"},
	{"layout/setout/tell", "layout/merit", "the term that decided is told"},
	{"layout/setout/tell", "layout/setout/count", "starts are known by name there"},
	{"layout/setout/tell", "layout/setout/search", "what was found is told"},
	{"layout/keep", "layout/length", "what is kept is places"},
	{"layout/keep", "layout/plane", "pieces of two plans are compared by their outlines"},
	{"layout/keep", "layout/survey", "a job holds what is kept as pins"},
	{"layout/keep", "layout/plan", "a plan gives what is kept of it"},
	{"layout/keep", "layout/merit", "two set-outs differ in a term"},
	{"layout/keep", "layout/stages", "what would move is what is struck on the wall"},
	{"layout/keep", "layout/setout/tell", "figures are told in the unit of their term"},
	{"layout/setout/phase", "layout/length", "a phase is two lengths"},
	{"layout/setout/phase", "layout/plane", "edges of regions decide what is cut"},
	{"layout/setout/phase", "layout/survey", "the room as found is set out"},
	{"layout/setout/phase", "layout/bond", "a phase moves the lattice of a pattern"},
	{"layout/setout/phase", "layout/piece", "counts are read off the pieces that the cutter makes"},
	{"layout/setout/phase", "layout/merit", "the best is found by the order of merit"},
	{"layout/setout/phase", "layout/plan", "a map of the phases stands in the plan"},
	{"layout/setout/phase", "layout/setout/count", "what is pinned is fixed there"},
	{"layout/setout/phase", "layout/setout/effort", "what is counted is added up for whoever asks"},
	{"layout/setout", "layout/setout/phase", "finds the set-out of a pattern"},
	{"layout/setout", "layout/merit", "the term that decided is told"},
	{"layout/setout/parted", "layout/length", "bands stand at heights"},
	{"layout/setout/parted", "layout/survey", "the room with its bands taken out is a room"},
	{"layout/setout/parted", "layout/merit", "field and bands are judged together"},
	{"layout/setout/parted", "layout/bond", "courses stand under and over a band"},
	{"layout/setout/parted", "layout/piece", "what is laid is cut by its own rule"},
	{"layout/setout/parted", "layout/setout/search", "each tile is searched by itself"},
	{"layout/setout/parted", "layout/setout/count", "ways that cannot be better are passed over"},
	{"layout/setout/parted", "layout/setout/phase", "a band may be laid in a pattern"},
	{"layout/setout", "layout/setout/parted", "finds the set-out of a room with bands"},
	{"layout/setout", "layout/plan", "what it works out is a plan"},
	{"layout/setout", "layout/length", "a joint is chosen from several"},
	{"layout/setout", "layout/plane", "bare wall has a place"},
	{"layout/setout", "layout/survey", "the room as found is what is solved"},
	{"layout/setout", "layout/piece", "pieces are numbered room by room"},
	{"layout/setout", "layout/setout/search", "finds the set-out"},
	{"layout/setout", "layout/setout/count", "what no place of a strip can beat"},
	{"layout/setout", "layout/setout/tell", "says why"},
	{"layout/niche", "layout/length", "faces have sizes"},
	{"layout/niche", "layout/plane", "a face is a region"},
	{"layout/niche", "layout/survey", "the inside as found"},
	{"layout/niche", "layout/bond", "the bond of the wall goes on"},
	{"layout/niche", "layout/piece", "faces are cut as walls are"},
	{"layout/niche", "layout/plan", "what it lays is part of a wall"},
	{"layout/niche", "layout/setout/count", "the course a top begins with is judged as a wall is"},
	{"layout/niche", "layout/setout", "a back with a tile of its own is set out"},
	{"layout/niche", "layout/trim", "a top has trim along its open edges"},
	{"layout/strip", "layout/length", "a strip stands between places"},
	{"layout/strip", "layout/survey", "the strip as found"},
	{"layout/strip", "layout/plane", "some of its sides meet something"},
	{"layout/strip", "layout/plan", "what it lays is part of a wall"},
	{"layout/strip", "layout/setout", "a strip is set out as a wall by itself"},
	{"layout", "layout/strip", "step three: lay the strips beside the field"},
	{"layout", "layout/niche", "step three: lay what is inside the openings"},
	{"layout", "layout/merit", "the plan file writes the merit"},
	{"layout/finding", "layout/length", "rules have limits in lengths"},
	{"layout/finding", "layout/plane", "a finding has a place"},
	{"layout/finding", "layout/survey", "rules ask for tile, joint, openings"},
	{"layout/finding", "layout/plan", "rules judge the walls as set out"},
	{"layout/finding", "layout/trim", "rules judge trim in pieces"},
	{"layout/finding", "layout/piece", "rules judge pieces"},
	{"layout/doubt", "layout/length", "readings are lengths"},
	{"layout/doubt", "layout/plane", "the front of a bench in a square corner is a root"},
	{"layout/doubt", "layout/survey", "the room as found is what is asked about"},
	{"layout", "layout/length", "the plan file writes lengths"},
	{"layout", "layout/doubt", "readings that can hardly be true are asked about"},
	{"layout", "layout/plane", "the plan file writes regions"},
	{"layout", "layout/survey", "step one: read the room"},
	{"layout", "layout/trim", "the plan file lists the trim"},
	{"layout", "layout/plan", "what it gives"},
	{"layout", "layout/setout", "step two: find the set-out"},
	{"layout", "layout/piece", "step three: cut and number the pieces"},
	{"layout", "layout/finding", "step four: say what should be known"},
	{"layout", "layout/cuts", "the plan file lists the cuts"},
	{"layout", "layout/takeoff", "the plan file lists what to buy"},
	{"layout/cuts", "layout/length", "cuts have sizes"},
	{"layout/cuts", "layout/plane", "sizes are read off faces"},
	{"layout/cuts", "layout/survey", "kerf and rounding follow units and tile"},
	{"layout/cuts", "layout/plan", "walls as they will stand"},
	{"layout/cuts", "layout/trim", "trim is cut too"},
	{"layout/cuts", "layout/piece", "alike pieces are grouped"},
	{"layout/cuts", "layout/table", "the schedule is a table too"},
	{"layout/takeoff", "layout/length", "trim is bought by length"},
	{"layout/takeoff", "layout/plane", "grout is bought by joint area"},
	{"layout/takeoff", "layout/survey", "tile, boxes, prices and finishes"},
	{"layout/takeoff", "layout/plan", "walls as they will stand"},
	{"layout/takeoff", "layout/piece", "which pieces are of a band's tile"},
	{"layout/takeoff", "layout/trim", "trim in pieces is bought by the piece and the bar"},
	{"layout/takeoff", "layout/bond", "a pattern's cell says how many tiles an area takes"},
	{"layout/takeoff", "layout/cuts", "tiles cut into are those of the cut schedule"},
	{"layout/takeoff", "layout/table", "what to buy is a table too"},
	{"layout/stages", "layout/length", "courses have heights"},
	{"layout/stages", "layout/plane", "where outlines touch the line that is struck"},
	{"layout/stages", "layout/survey", "setting order, and what the base is"},
	{"layout/stages", "layout/plan", "walls as they will stand"},
	{"layout/stages", "layout/trim", "and so is trim"},
	{"layout/stages", "layout/piece", "pieces are set in stages"},
	{"layout/stages", "layout/cuts", "each stage needs its cuts ready"},
	{"layout/stages", "layout/mosaic", "mosaic is set sheet by sheet"},
	{"layout/remedy", "layout/length", "joints, gaps and stops are lengths"},
	{"layout/remedy", "layout/survey", "a job is changed"},
	{"layout/remedy", "layout/setout", "and really solved"},
	{"layout/remedy", "layout/setout/effort", "as long as what is counted for all of them is little"},
	{"layout/remedy", "layout/piece", "what would be a sliver is no remedy"},
	{"layout/remedy", "layout/plan", "what to change is read off the plan"},
	{"layout/remedy", "layout/merit", "the order of merit says what helps"},
	{"layout/remedy", "layout/setout/tell", "figures are told in the unit of their term"},
	{"layout/remedy", "layout/cuts", "a near miss saves tiles"},
	{"layout", "layout/remedy", "what would help, for those who ask"},

	{"store", "migrations", "a file is brought to the newest schema"},

	{"web/drawing", "layout/...", "a scene is made of a plan"},
	{"web/drawing/sample", "layout/...", "a plan for tests of drawings"},
	{"web/elevation", "web/drawing", "SVG is one pen for a scene"},
	{"web/sheet", "web/drawing", "PDF is the other pen for a scene"},
	{"web/sheet", "layout/...", "sheets list what a plan holds"},
	{"web/shapes", "layout/...", "a plain room is a job"},
	{"web/form", "layout/...", "a form fills a job"},
	{"web/ask", "layout/...", "a room is asked for, figure by figure"},
	{"web/ask", "web/form", "an answer fills fields of a form"},
	{"web/page", "layout/...", "pages show a job and its plan"},
	{"web/page", "store", "a page is given the jobs kept, and says what went wrong with them"},
	{"web/page", "web/form", "fields bear the form's names"},
	{"web/page", "web/ask", "and are called as the boxes they are asked in"},
	{"web/page", "web/drawing", "a scene is put on a page"},
	{"web/page", "web/elevation", "as SVG"},
	{"web/history", "layout", "an edit is kept with its plan"},
	{"web/history", "layout/survey", "what is kept is a job"},
	{"web/history", "store", "as one revision"},
	{"web/history", "web/form", "two edits are laid together field by field"},
	{"web/history", "web/page", "where two edits meet the page asks"},
	{"web/door", "store", "passes are kept"},
	{"web/formats", "layout", "the plan file is described by its type"},
	{"web/formats", "layout/survey", "and so is the job file"},
	{"web/formats", "layout/cuts", "the cut schedule by its columns"},
	{"web/formats", "layout/takeoff", "and the take-off"},
	{"web/formats", "web/page", "a schema has an address"},
	{"web/turns", "layout", "plans are worked out, and shared"},
	{"web/turns", "layout/survey", "a job is known by its file, a room is large or not"},
	{"web/turns", "web/page", "pages are given their plans by it, and say when it takes too long"},
	{"web/jobs", "layout/survey", "a job file is read in"},
	{"web/jobs", "store", "the list of jobs"},
	{"web/jobs", "web/shapes", "a new job is picked by its shape"},
	{"web/jobs", "static", "the example is known by what it holds"},
	{"web/jobs", "web/drawing", "each job has a small picture"},
	{"web/jobs", "web/ask", "a new job is all guesses"},
	{"web/jobs", "web/page", "is a page"},
	{"web/bench", "layout/...", "an edit is solved"},
	{"web/bench", "store", "undo moves along the revisions"},
	{"web/bench", "web/form", "a posted form is a job"},
	{"web/bench", "web/ask", "the survey is asked step by step"},
	{"web/bench", "web/drawing", "the drawing, the sketch of a piece, the slide curves"},
	{"web/bench", "web/sheet", "the cut list of a wall, as it stands on its sheet"},
	{"web/bench", "web/history", "an edit is kept"},
	{"web/bench", "web/page", "is a page"},
	{"web/work", "layout/...", "cuts, take-off and stages are shown"},
	{"web/work", "web/form", "its settings are fields of the job"},
	{"web/work", "web/drawing", "the pieces of a cut are marked"},
	{"web/work", "web/history", "settings are kept"},
	{"web/work", "web/page", "is a page"},
	{"web/choices", "layout/...", "choices are solved and compared"},
	{"web/choices", "store", "of a stored job"},
	{"web/choices", "web/drawing", "and drawn"},
	{"web/choices", "web/history", "the one chosen is kept"},
	{"web/choices", "web/page", "is a page"},
	{"web/sheets", "layout/...", "tables of a plan"},
	{"web/sheets", "web/sheet", "sheets of a plan"},
	{"web/sheets", "web/ask", "how much is measured, as the bench counts it"},
	{"web/sheets", "web/page", "is a page"},
	{"web/sheets", "store", "of a stored job"},
	{"web/bathroom", "layout/...", "pieces are set in order"},
	{"web/bathroom", "store", "ticks are kept"},
	{"web/bathroom", "web/drawing", "a step is drawn"},
	{"web/bathroom", "web/page", "is a page"},
	{"web/door", "web/page", "is a page"},
	{"web", "store", "and who keeps"},
	{"web", "web/...", "the table of routes"},
	{"web/trial", "layout/...", "a server for tests solves"},
	{"web/trial", "store", "and keeps"},
	{"web/trial", "static", "with the demo"},
	{"web/trial", "web", "is the server"},
	{"web/trial", "web/turns", "in which each job has a solver of its own"},
	{"web/trial", "web/page", "whose pages it gives plans"},
	{"cmd/coursewright", "layout/...", "solve and cuts"},
	{"cmd/coursewright", "store", "serve opens the data file"},
	{"cmd/coursewright", "migrations", "version says which data files it reads"},
	{"cmd/coursewright", "static", "serve sends the files, and begins with the demo"},
	{"cmd/coursewright", "web/...", "serve, draw and sheets"},
}

// impure are what layout may not know, and why.
var impure = []arrow{
	{to: "os", why: "no files: a job is given and a plan is given back"},
	{to: "time", why: "no clock: the same job gives the same plan on any day"},
	{to: "net/...", why: "no network"},
	{to: "database/...", why: "plans are computed, never stored"},
	{to: "math/rand/...", why: "no chance: the same job gives the same bytes"},
	{to: "crypto/rand", why: "no chance"},
	{to: "log/...", why: "what went wrong is an error"},
	{to: "sync/...", why: "no state that two callers share"},
	{to: "runtime/...", why: "the same on any host"},
	{to: "syscall", why: "the same on any host"},
	{to: "unsafe", why: "the same on any host"},
}

// covers tells whether an arrow's target is, or is above, a package.
func (a arrow) covers(name string) bool {
	above, all := strings.CutSuffix(a.to, "/...")
	return name == above || all && strings.HasPrefix(name, above+"/")
}

// imports lists what every package of the module imports outside its tests.
func imports(t *testing.T) map[string][]string {
	t.Helper()
	out := map[string][]string{}
	root := os.DirFS("..")
	require.NoError(t, fs.WalkDir(root, ".", func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && passedOver(name):
			return fs.SkipDir
		case d.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go"):
			return nil
		}
		found, err := importsOf(root, name)
		from := path.Dir(name)
		out[from] = append(out[from], found...)
		return err
	}))
	return out
}

// passedOver tells whether a folder holds no packages of ours.
func passedOver(name string) bool {
	base := path.Base(name)
	return name != "." && strings.HasPrefix(base, ".") || base == "testdata" || base == "node_modules"
}

func importsOf(root fs.FS, name string) ([]string, error) {
	source, err := fs.ReadFile(root, name)
	if err != nil {
		return nil, err
	}
	file, err := parser.ParseFile(token.NewFileSet(), name, source, parser.ImportsOnly)
	if err != nil {
		return nil, err
	}
	var out []string
	for _, i := range file.Imports {
		what, err := strconv.Unquote(i.Path.Value)
		if err != nil {
			return nil, err
		}
		out = append(out, what)
	}
	return out, nil
}

func TestEveryPackageHasItsPlace(t *testing.T) {
	found := slices.Sorted(maps.Keys(imports(t)))
	assert.ElementsMatch(t, order, found, "a new package stands in order, with an arrow and a reason for what it imports")
}

func TestPackagesImportOnlyWhatHasAReason(t *testing.T) {
	used := make([]bool, len(arrows))
	for from, all := range imports(t) {
		for _, what := range all {
			to, ours := strings.CutPrefix(what, module)
			if !ours {
				continue
			}
			allowed := false
			for i, a := range arrows {
				if a.from == from && a.covers(to) {
					allowed, used[i] = true, true
				}
			}
			assert.True(t, allowed, "%s imports %s: no arrow gives a reason", from, to)
			assert.Less(t, slices.Index(order, to), slices.Index(order, from), "%s imports %s, which stands above it", from, to)
		}
	}
	for i, a := range arrows {
		assert.NotEmpty(t, a.why)
		assert.True(t, used[i], "%s no longer imports %s: take the arrow out", a.from, a.to)
	}
}

func TestTheLayoutIsPure(t *testing.T) {
	seen := 0
	for from, all := range imports(t) {
		if from != "layout" && !strings.HasPrefix(from, "layout/") {
			continue
		}
		seen++
		for _, what := range all {
			for _, a := range impure {
				assert.False(t, a.covers(what), "%s imports %s: %s", from, what, a.why)
			}
			if from == "layout/setout/chance" && what == "pgregory.net/rapid" {
				continue // it is for tests alone
			}
			host, _, _ := strings.Cut(what, "/")
			assert.NotContains(t, host, ".", "%s imports %s: the layout needs no library but Go's own", from, what)
			if to, ours := strings.CutPrefix(what, module); ours {
				assert.True(t, to == "layout" || strings.HasPrefix(to, "layout/"), "%s imports %s: the layout knows nothing of what stands on it", from, to)
			}
		}
	}
	assert.Greater(t, seen, 10)
}
