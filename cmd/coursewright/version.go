package main

import (
	"context"
	"fmt"
	"runtime/debug"

	"coursewright/layout/survey"
	"coursewright/migrations"
)

// version says what was built, of what, and which files it reads.
func (p *program) version(_ context.Context, args []string) int {
	if len(args) > 0 {
		return p.misuse("version takes no %q.", args[0])
	}
	steps, err := migrations.Steps()
	if err != nil {
		return p.fail(err)
	}
	return p.print(fmt.Appendf(nil, "coursewright %s\njob files: %s; data files: version 1 to %d\n", built(), survey.Format, len(steps)))
}

// built tells the version, the revision of the source and the Go that built it, as far as the build
// noted them.
func built() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "(built without a note of its version)"
	}
	noted := map[string]string{}
	for _, s := range info.Settings {
		noted[s.Key] = s.Value
	}
	out := info.Main.Version
	if revision := noted["vcs.revision"]; revision != "" {
		out += ", revision " + revision[:min(12, len(revision))] + " of " + noted["vcs.time"]
	}
	if noted["vcs.modified"] == "true" {
		out += ", with changes"
	}
	return out + ", " + info.GoVersion
}
