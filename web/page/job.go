// Package page is what all pages share: the frame, errors, fields, words, and
// what a page is given. It decides nothing: what it shows is worked out by the
// pages and by layout.
package page

import (
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/form"
)

// Job is a job as a page shows it.
type Job struct {
	ID       int64
	Revision int64
	CanUndo  bool
	CanRedo  bool
	Undoes   string            // what undo takes back: "width of back"
	Here     string            // the query of the address, as "?wall=2"
	Typed    survey.Job        // what the form shows: the job as typed last
	Stands   survey.Job        // the job of the plan: as typed, but for what is refused
	Raw      map[string]string // by path, text typed where the job holds no text
	Filled   string            // the job file the form is filled from
	Faults   []Fault           // what keeps the typed job from being solved
	Plan     layout.Plan       // the last good plan
	Status   string            // "Saved" and the like

	HintAt func(path string) string // the id of the help of a field that stands on the page; nil where there is none
}

// Fault is one field that keeps a job from being solved.
type Fault = survey.Fault

// System gives the units the job is typed in.
func (j Job) System() length.System {
	s, _ := form.System(j.Typed.Units)
	return s
}

// Value gives what was typed in a field.
func (j Job) Value(path string) string {
	if raw, odd := j.Raw[path]; odd {
		return raw
	}
	return form.Get(j.Typed, path)
}

// Shown is what the box of a field shows: nothing where it is only guessed.
func (j Job) Shown(path string) string {
	if j.Guessed(path) {
		return ""
	}
	return j.Value(path)
}

// Guessed tells whether nobody has measured a field yet.
func (j Job) Guessed(path string) bool { return slices.Contains(j.Typed.Guess, path) }

// Echo says how a length was understood, in both systems, or nothing; and of
// a guess that it is one.
func (j Job) Echo(path string) string {
	if j.Guessed(path) {
		return "not measured · guess " + j.Value(path)
	}
	return j.EchoOf(j.Value(path))
}

// EchoOf says how a text was understood as a length, exactly, and what that is in the other system, rounded where it must be.
func (j Job) EchoOf(typed string) string {
	l, err := length.Parse(typed, j.System())
	if err != nil {
		return ""
	}
	one, _, _ := strings.Cut(l.Both(j.System()), " · ")
	other, exact := l.Other(j.System())
	if !exact {
		return Minus(one) + " ≈ " + Minus(other)
	}
	return Minus(one) + " = " + Minus(other)
}

// Meant is what was probably meant in a field that does not read, or nothing.
func (j Job) Meant(path string) string {
	for _, f := range j.Faults {
		if f.Path == path {
			return f.Meant
		}
	}
	return ""
}

// Fault gives the message for a field, or nothing.
func (j Job) Fault(path string) string {
	for _, f := range j.Faults {
		if f.Path == path {
			return Sentence(f)
		}
	}
	return ""
}

// Sentence says what was found and what to write instead; of a mark of the set-out that the job holds, where it stands.
func Sentence(f Fault) string {
	if OfHeld(f) && strings.Contains(f.Path, ".marks.") {
		return "stands at " + f.Found
	}
	return "found " + f.Found + "; write " + f.Want
}

// OfHeld tells whether a fault is of the set-out that the job holds.
func OfHeld(f Fault) bool { return strings.HasPrefix(f.Path, "held.") }

// HeldWay says what to do where the set-out that is held no longer fits, by the name of the button.
const HeldWay = "Type what stood in its box before, or press “Let it go”: then the room is set out anew round what is measured."
