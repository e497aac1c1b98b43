// Package migrations holds the steps that build the schema of a data file.
//
// The steps are append-only: a step that has been released is never edited, a change is a new
// file with the next number. A step runs inside the transaction that also raises user_version,
// so it holds no BEGIN, no COMMIT, and nothing that SQLite refuses in a transaction.
package migrations

import (
	"embed"
	"fmt"
	"io/fs"
)

//go:embed *.sql
var files embed.FS

// Step takes a data file from version Version-1 to version Version.
type Step struct {
	Version int
	Name    string // file name, 0001_jobs.sql
	SQL     string
}

// Steps lists all steps in order; step i has Version i+1. It fails if a number is missing or
// used twice.
func Steps() ([]Step, error) {
	names, err := fs.Glob(files, "*.sql")
	if err != nil {
		return nil, err
	}
	steps := make([]Step, 0, len(names))
	for i, name := range names {
		body, err := files.ReadFile(name)
		if err != nil {
			return nil, err
		}
		if want := fmt.Sprintf("%04d_", i+1); len(name) < len(want) || name[:len(want)] != want {
			return nil, fmt.Errorf("migrations: %s stands where %s… is due", name, want)
		}
		steps = append(steps, Step{Version: i + 1, Name: name, SQL: string(body)})
	}
	return steps, nil
}
