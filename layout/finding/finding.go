// Package finding judges a plan by the rules of the trade.
//
// Laws, each with a test:
//
//  1. Judge depends on the plan alone, and gives the same findings in the same
//     order: faults, warnings, advice, cautions.
//  2. One cause on one wall is one finding, however many pieces it concerns; it
//     stands at the worst of them.
//  3. Every rule says why it matters, what to do, and where it comes from: a
//     source, or "common practice, no source".
//  4. A figure that is compared with a limit never reads like the limit where
//     it is not.
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
