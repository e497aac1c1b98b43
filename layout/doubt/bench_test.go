package doubt_test

import (
	"testing"

	"coursewright/layout/doubt"

	"github.com/stretchr/testify/require"
)

// An edit is asked about each time it is solved.
func BenchmarkRaise(b *testing.B) {
	job := read(b, "../../testdata/jobs/alcove.json")
	room, faults := job.Resolve()
	require.Empty(b, faults)
	for b.Loop() {
		doubt.Raise(room, job)
	}
}

func BenchmarkResolve(b *testing.B) {
	job := read(b, "../../testdata/jobs/alcove.json")
	for b.Loop() {
		job.Resolve()
	}
}
