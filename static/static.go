// Package static holds what the program serves and begins with: style sheet,
// script, icon, and the demo job.
package static

import "embed"

// Files are the files served under /static/.
//
//go:embed *.css *.js *.svg
var Files embed.FS

// Demo is the job file an empty store begins with: a bath of nobody's, made up
// for this program.
//
//go:embed demo.json
var Demo []byte
