package static_test

import (
	"io/fs"
	"regexp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/static"
)

// Scripts that import each other both ways cannot be understood one by one.
func TestScriptsImportInOneDirection(t *testing.T) {
	imports := map[string][]string{}
	names, err := fs.Glob(static.Files, "*.js")
	require.NoError(t, err)
	from := regexp.MustCompile(`(?m)^import (?:.* from )?"\./([^"]+)";`)
	for _, name := range names {
		source, err := fs.ReadFile(static.Files, name)
		require.NoError(t, err)
		for _, found := range from.FindAllStringSubmatch(string(source), -1) {
			imports[name] = append(imports[name], found[1])
		}
	}
	require.Contains(t, imports["bench.js"], "save.js", "imports are no longer found")
	var follow func(path []string)
	follow = func(path []string) {
		for _, next := range imports[path[len(path)-1]] {
			assert.Contains(t, names, next)
			if slices.Contains(path, next) {
				assert.Fail(t, "a circle", "%v leads back to %s", path, next)
				return
			}
			follow(append(slices.Clone(path), next))
		}
	}
	for _, name := range names {
		follow([]string{name})
	}
}
