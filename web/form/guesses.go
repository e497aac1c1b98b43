package form

import (
	"slices"
	"strings"
)

// threeGuesses are the fields that are only guessed in a job and in two edits of it, and those
// that are guesses in what is made of the three.
type threeGuesses struct{ base, saved, later, kept []string }

// under gives the guesses of a field and of all below it, sorted.
func (g threeGuesses) under(path string) threeGuesses {
	return threeGuesses{base: guessesUnder(g.base, path), saved: guessesUnder(g.saved, path), later: guessesUnder(g.later, path)}
}

func guessesUnder(guesses []string, path string) []string {
	var out []string
	for _, one := range guesses {
		below, found := strings.CutPrefix(one, path)
		if found && (path == "" || below == "" || below[0] == '.' || below[0] == '[') {
			out = append(out, one)
		}
	}
	slices.Sort(out)
	return out
}

// measuredOnlyIn tells whether a figure that was guessed is measured by one of two edits, and a guess still by the other.
func (g threeGuesses) measuredOnlyIn(one, other []string, path string) bool {
	return slices.Contains(g.base, path) && !slices.Contains(one, path) && slices.Contains(other, path)
}

// outcome lists what was kept, in the order of the two edits.
func (g threeGuesses) outcome() []string {
	var out []string
	for _, path := range slices.Concat(g.saved, g.later) {
		if slices.Contains(g.kept, path) && !slices.Contains(out, path) {
			out = append(out, path)
		}
	}
	return out
}

// changes notes who has measured something, or made a guess of it again.
func (g threeGuesses) changes() []Change {
	var out []Change
	base := guessesUnder(g.base, "")
	if slices.Equal(guessesUnder(g.saved, ""), guessesUnder(g.later, "")) {
		return nil
	}
	for _, edit := range []struct {
		guesses []string
		yours   bool
	}{{g.saved, false}, {g.later, true}} {
		is := guessesUnder(edit.guesses, "")
		if !slices.Equal(base, is) {
			out = append(out, Change{Path: "guess", Was: strings.Join(base, ", "), Is: strings.Join(is, ", "), Yours: edit.yours})
		}
	}
	return out
}
