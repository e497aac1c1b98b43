package main

import (
	"bytes"
	"context"
	"embed"
	"fmt"
	"io/fs"
	"path"
	"strings"
)

// noticeFiles are the notices of the parts the program is built with, as they stand in their modules: a folder for
// each, by the path of its module. Go itself is go.dev/go.
//
//go:embed notices
var noticeFiles embed.FS

// notices prints them all, as whoever hands on the program has to.
func (p *program) notices(_ context.Context, args []string) int {
	if len(args) > 0 {
		return p.misuse("notices takes no %q.", args[0])
	}
	out := bytes.NewBufferString("Coursewright is built with the parts below, none of them modified.\n")
	err := fs.WalkDir(noticeFiles, "notices", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(noticeFiles, name)
		part := strings.TrimPrefix(path.Dir(name), "notices/")
		fmt.Fprintf(out, "\n%s\n%s: %s\n%s\n\n%s", strings.Repeat("-", 80), part, path.Base(name), strings.Repeat("-", 80), text)
		return err
	})
	if err != nil {
		return p.fail(err)
	}
	return p.print(out.Bytes())
}
