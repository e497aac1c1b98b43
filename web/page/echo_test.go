package page

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout/survey"
)

// An answer is echoed exactly in the system of the job, and in the other one says where it is rounded.
func TestAnEchoSaysWhereItIsRounded(t *testing.T) {
	for _, c := range []struct{ units, typed, want string }{
		{"in", "59 1/2", `4'-11 1/2" = 1511.3 mm`},
		{"in", "1/8", `1/8" ≈ 3.2 mm`},
		{"mm", "883", `883 mm ≈ 34 3/4"`},
		{"mm", "127", `127 mm = 5"`},
		{"mm", "no length", ""},
	} {
		job := Job{}
		job.Typed = survey.Job{Units: c.units}
		assert.Equal(t, c.want, job.EchoOf(c.typed), c)
	}
}
