// Package finding judges a plan by the rules of the trade.
package finding

import "coursewright/layout/plane"

// Grade is how serious a finding is.
type Grade string

// Grades, from worst to mildest.
const (
	Fault   Grade = "fault"   // the plan does not work as it stands
	Warning Grade = "warning" // it works, but the trade would object
	Advice  Grade = "advice"  // worth knowing before starting
	Caution Grade = "caution" // someone or something could be hurt
)

// Finding is something the person should know.
type Finding struct {
	Rule   Name
	Grade  Grade
	Wall   int // index, or -1 for the whole room
	At     *plane.Point
	Piece  string // the piece's id, or empty
	Text   string // what and where
	Why    string
	Do     string
	Source string
}
