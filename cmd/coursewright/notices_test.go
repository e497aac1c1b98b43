package main

import (
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// parts lists the modules the program is built with, and the folder each stands in.
func parts(t *testing.T) map[string]string {
	t.Helper()
	out, err := exec.Command("go", "list", "-deps", "-f", `{{with .Module}}{{if not .Main}}{{.Path}}|{{.Dir}}{{end}}{{end}}`, ".").Output()
	require.NoError(t, err)
	root, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(t, err)
	found := map[string]string{"go.dev/go": strings.TrimSpace(string(root))}
	for line := range strings.Lines(string(out)) {
		name, folder, _ := strings.Cut(strings.TrimSpace(line), "|")
		if name != "" {
			found[name] = folder
		}
	}
	require.Greater(t, len(found), 10)
	return found
}

// isNotice tells which files of a module speak of rights in its code.
func isNotice(name string) bool {
	for _, begins := range []string{"LICENSE", "LICENCE", "COPYING", "NOTICE", "PATENTS"} {
		if strings.HasPrefix(name, begins) {
			return !strings.HasSuffix(name, "LOGO") // a picture that is not built in
		}
	}
	return false
}

func TestEveryPartHasItsNoticesAsTheyStandInItsModule(t *testing.T) {
	found := parts(t)
	held := map[string]string{}
	require.NoError(t, fs.WalkDir(noticeFiles, "notices", func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			var text []byte
			text, err = fs.ReadFile(noticeFiles, name)
			held[strings.TrimPrefix(name, "notices/")] = string(text)
		}
		return err
	}))
	wanted := map[string]string{}
	for part, folder := range found {
		entries, err := os.ReadDir(folder)
		require.NoError(t, err)
		for _, e := range entries {
			if !isNotice(e.Name()) {
				continue
			}
			text, err := os.ReadFile(filepath.Join(folder, e.Name()))
			require.NoError(t, err)
			wanted[path.Join(part, e.Name())] = string(text)
		}
	}
	assert.Equal(t, slices.Sorted(maps.Keys(wanted)), slices.Sorted(maps.Keys(held)), "copy the notices of a new part into the folder notices, and take out those of one that is gone")
	for name, text := range wanted {
		assert.Equal(t, text, held[name], name)
	}
	code, out, _ := command(t, "", "notices")
	assert.Zero(t, code)
	for name, text := range wanted {
		assert.True(t, strings.Contains(out, path.Dir(name)+": "+path.Base(name)) && strings.Contains(out, text), name)
	}
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	for part := range found {
		assert.True(t, strings.Contains(string(readme), part), "the README names %s", part)
	}
}
