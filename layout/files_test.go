package layout_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// mostMethods is how many methods a type of the solver and of what it stands on may have: one
// with more is a package that wants out.
const mostMethods = 30

// many are the types that have more than that, with how many: no more of them, and no more methods.
var many = map[string]int{}

// nothing stands for the packages that are imported: what is used of them does not matter here.
type nothing struct{}

func (nothing) Import(name string) (*types.Package, error) {
	p := types.NewPackage(name, path.Base(name))
	p.MarkComplete()
	return p, nil
}

// folder is what a package's files declare and use of one another.
type folder struct {
	methods map[string]int
	uses    map[[2]string][]string
}

func folderOf(t *testing.T, dir string) folder {
	found, err := filepath.Glob(dir + "/*.go")
	require.NoError(t, err)
	set, out := token.NewFileSet(), folder{map[string]int{}, map[[2]string][]string{}}
	var files []*ast.File
	for _, name := range found {
		if !strings.HasSuffix(name, "_test.go") {
			file, err := parser.ParseFile(set, name, nil, 0)
			require.NoError(t, err)
			files = append(files, file)
		}
	}
	info := &types.Info{Uses: map[*ast.Ident]types.Object{}}
	conf := types.Config{Importer: nothing{}, Error: func(error) {}} // what is imported is not known
	pkg, _ := conf.Check(dir, set, files, info)
	for _, file := range files {
		for _, d := range file.Decls {
			if f, is := d.(*ast.FuncDecl); is && f.Recv != nil {
				out.methods[receiver(f.Recv.List[0].Type)]++
			}
		}
	}
	file := func(p token.Pos) string { return filepath.Base(set.Position(p).Filename) }
	for id, o := range info.Uses {
		if from, to := file(id.Pos()), file(o.Pos()); o.Pkg() == pkg && from != to && acts(o, pkg) {
			out.uses[[2]string{from, to}] = append(out.uses[[2]string{from, to}], o.Name())
		}
	}
	return out
}

// acts tells whether a name is a function, a method or a variable of a package: a type alone
// does nothing, and the files of its methods must name it.
func acts(o types.Object, pkg *types.Package) bool {
	switch o := o.(type) {
	case *types.Func:
		return true
	case *types.Var:
		return !o.IsField() && o.Parent() == pkg.Scope()
	case *types.Const:
		return o.Parent() == pkg.Scope()
	}
	return false
}

func receiver(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.StarExpr:
		return receiver(e.X)
	case *ast.IndexExpr:
		return receiver(e.X)
	case *ast.Ident:
		return e.Name
	}
	return ""
}

// The solver reads from the top down: no type has more methods than one can keep in mind, and
// no file both uses and is used by its neighbour.
func TestFilesOfTheSolverUseEachOtherOneWay(t *testing.T) {
	for _, dir := range []string{"layout/setout/count", "layout/setout/search", "layout/setout/tell", "layout/setout/phase", "layout/piece", "layout/plan", "layout/bond"} {
		f := folderOf(t, "../"+dir)
		require.NotEmpty(t, f.uses, dir)
		for name, n := range f.methods {
			assert.LessOrEqual(t, n, mostMethods, "methods of %s.%s", dir, name)
		}
		for pair, names := range f.uses {
			back := f.uses[[2]string{pair[1], pair[0]}]
			if pair[0] < pair[1] && len(back) > 0 {
				slices.Sort(names)
				slices.Sort(back)
				assert.Fail(t, "files use each other", "%s uses %v of %s, which uses %v of it", pair[0], slices.Compact(names), pair[1], slices.Compact(back))
			}
		}
	}
}
