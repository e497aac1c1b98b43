package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAnOpeningIsNotCalledByItsKindTwice(t *testing.T) {
	for _, c := range []struct{ kind, name, want string }{
		{"niche", "shelf", "niche shelf"}, {"niche", "niche", "niche"}, {"pipe", "pipe 2", "pipe 2"}, {"pipe", "pipeline", "pipe pipeline"},
	} {
		assert.Equal(t, c.want, OpeningName(c.kind, c.name))
	}
}
