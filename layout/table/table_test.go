package table

import (
	"encoding/csv"
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWriteDisarmsFormulas(t *testing.T) {
	var b strings.Builder
	require.NoError(t, Write(&b, [][]string{
		{"=1+1", "+1", "-1", "@A1", "\tx", "7 1/2\"", "a,b", "a=b", ""},
	}))
	text, marked := strings.CutPrefix(b.String(), "\ufeff")
	assert.True(t, marked, "no byte order mark")
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, "'\r=1", Safe("\r=1"))
	assert.Equal(t, [][]string{{"'=1+1", "'+1", "'-1", "'@A1", "'\tx", "7 1/2\"", "a,b", "a=b", ""}}, rows)
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestWriteTellsAboutAFullDisk(t *testing.T) {
	assert.EqualError(t, Write(full{}, nil), "disk full")
}
