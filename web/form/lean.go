package form

import (
	"strings"

	"coursewright/layout/survey"
)

// OneGap tells whether a lean is one gap at the end of a level that stands on the level line. It says no more than
// how steep the corner is, so that the corner leans on as far below the line; older files have nothing there.
func OneGap(lean []survey.Lean) bool {
	return len(lean) == 2 && (lean[0] == survey.Lean{Height: "0", Off: "0"} || lean[0] == Below(lean[1]))
}

// Below is the reading of a straight corner as far below the level line as one is over it.
func Below(l survey.Lean) survey.Lean {
	return survey.Lean{Height: negative(l.Height), Off: negative(l.Off)}
}

func negative(length string) string {
	if figure, minus := strings.CutPrefix(length, "-"); minus || figure == "0" {
		return figure
	}
	return "-" + length
}

// leanPhrase says how far an end leans at the end of a level, as "1/4 to the left in 48".
func leanPhrase(l survey.Lean) string {
	said := LeanWords(l.Off)
	if said == "plumb" {
		return said
	}
	return said + " in " + l.Height
}

// LeanWords say to which side an end leans, and how far, of what the job file has as a signed length.
func LeanWords(off string) string {
	gap, minus := strings.CutPrefix(off, "-")
	switch {
	case gap == "0":
		return "plumb"
	case minus:
		return gap + " to the left"
	}
	return gap + " to the right"
}
