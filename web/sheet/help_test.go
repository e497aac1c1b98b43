package sheet

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
)

// helped is a room that has slivers, with what would help it.
func helped(t *testing.T) (layout.Plan, []layout.Remedy) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "jobs", "hexagon.json"))
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	plan := roomOf(t, "jobs/hexagon")
	help, err := layout.WouldHelp(context.Background(), job, plan)
	require.NoError(t, err)
	require.NotEmpty(t, help.Remedies)
	return plan, help.Remedies
}

// What would help where poor cuts remain stands with the cuts, and takes no leaf more.
func TestWhatWouldHelpStandsWithTheCuts(t *testing.T) {
	plan, help := helped(t)
	for _, paper := range Papers()[:2] {
		without, with := newBook(plan, Options{Paper: paper}), newBook(plan, Options{Paper: paper, Help: help})
		assert.Len(t, with.leaves, len(without.leaves), paper.Name)
		laidOut(t, "with help on "+paper.Name, plan, Options{Paper: paper, Help: help})
		file, _ := paged(t, plan, Options{Paper: paper, Help: help})
		text := tool(t, "pdftotext", file, "-")
		says(t, text, "What would help, before anything is cut")
		for _, r := range help[:min(len(help), mostHelp)] {
			says(t, text, r.Text+" Then "+r.After+" instead of "+r.Before)
		}
		file, _ = paged(t, plan, Options{Paper: paper})
		assert.NotContains(t, tool(t, "pdftotext", file, "-"), "What would help")
	}
}

// Each choice says what would help it most.
func TestAChoiceSaysWhatWouldHelpIt(t *testing.T) {
	plan, help := helped(t)
	choices := []Choice{{Name: "as it is", Chosen: true, Plan: plan, Help: help}, {Name: "other", Plan: roomOf(t, "jobs/alcove")}}
	compared := func() (text string) {
		b := newBook(plan, Options{Kinds: []Kind{Compare}, Choices: choices})
		require.Len(t, b.leaves, 1)
		for _, x := range texts(b.leaves[0]) {
			text += x.Text + " "
		}
		return text
	}
	says(t, compared(), "what would help "+help[0].Text+" Then "+help[0].After)
	choices[0].Help = nil
	assert.NotContains(t, compared(), "what would help")
}
