// Package view renders pages. It holds no state and decides nothing: what it
// shows is worked out by web and layout.
package view

import (
	"github.com/a-h/templ"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/form"
)

// Bench is one job's page.
type Bench struct {
	ID       int64
	Revision int64
	CanUndo  bool
	CanRedo  bool
	Typed    survey.Job        // what the form shows: the job as typed last
	Raw      map[string]string // by path, text typed where the job holds no text
	Filled   string            // the job file the form is filled from
	Faults   []Fault           // what keeps the typed job from being solved
	Plan     layout.Plan       // the last good plan
	Wall     int               // the wall brought to the front, or -1 for the wrap
	Drawing  templ.Component
	Slides   []templ.Component // by wall
	Card     *Card             // the piece looked at, or nil
	Schedule cuts.Schedule
	Status   string // "Saved" and the like
	Phone    Phone
}

// Fault is one field that keeps a job from being solved.
type Fault = survey.Fault

// System gives the units the job is typed in.
func (b Bench) System() length.System {
	s, _ := form.System(b.Typed.Units)
	return s
}

// Value gives what was typed in a field.
func (b Bench) Value(path string) string {
	if raw, odd := b.Raw[path]; odd {
		return raw
	}
	return form.Get(b.Typed, path)
}

// Echo says how a length was understood, in both systems, or nothing.
func (b Bench) Echo(path string) string {
	l, err := length.Parse(b.Value(path), b.System())
	if err != nil {
		return ""
	}
	return l.Both(b.System())
}

// Fault gives the message for a field, or nothing.
func (b Bench) Fault(path string) string {
	for _, f := range b.Faults {
		if f.Path == path {
			return sentence(f)
		}
	}
	return ""
}

// Walls gives the walls to show below the drawing, by index: all, or the one
// in front.
func (b Bench) Walls() []int {
	if b.Wall >= 0 {
		return []int{b.Wall}
	}
	all := make([]int, len(b.Plan.Walls))
	for i := range all {
		all[i] = i
	}
	return all
}

func sentence(f Fault) string {
	return "found " + f.Found + "; write " + f.Want
}
