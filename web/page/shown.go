package page

import (
	"bytes"
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/form"
)

// Shown is a stored job as every page shows it. What undo would take back is
// worked out from the revision before; where that cannot be read, undo is
// offered without a name.
func (s Site) Shown(ctx context.Context, stored store.Job, job survey.Job, plan layout.Plan) Job {
	return Job{
		ID: stored.ID, Revision: stored.Revision, CanUndo: stored.CanUndo, CanRedo: stored.CanRedo, Undoes: s.undoes(ctx, stored, job),
		Typed: job, Stands: job, Filled: string(stored.Document), Plan: plan,
	}
}

func (s Site) undoes(ctx context.Context, stored store.Job, now survey.Job) string {
	if stored.Parent == 0 {
		return ""
	}
	was, err := s.Store.At(ctx, stored.ID, stored.Parent)
	if err != nil {
		return ""
	}
	before, err := survey.Read(was.Document)
	if err != nil {
		return ""
	}
	edit, err := form.Merge(before, before, now, nil)
	if err != nil {
		return ""
	}
	if len(edit.Changes) == 0 && !bytes.Equal(was.Setout, stored.Setout) {
		return "taking the new set-out"
	}
	return cmp.Or(ChoicesEdit(before, now), PartsEdit(before, now), EditName(now, edit.Changes))
}

// ChoicesEdit says in a few words what was done with the choices of a job, or nothing where
// they are the same and the same one is chosen.
func ChoicesEdit(before, now survey.Job) string {
	was, is := choiceNames(before), choiceNames(now)
	for _, name := range is {
		if len(is) > len(was) && !slices.Contains(was, name) && name != now.Chosen { // of a first pair the chosen one is the job as it was
			return "adding choice " + name
		}
	}
	for _, name := range was {
		if !slices.Contains(is, name) {
			if len(was) == len(is) {
				return "name of choice " + name
			}
			return "deleting " + name
		}
	}
	if before.Chosen != now.Chosen && len(was) == len(is) {
		return "choosing " + now.Chosen
	}
	return ""
}

func choiceNames(job survey.Job) (out []string) {
	for _, c := range job.Choices {
		out = append(out, c.Name)
	}
	return out
}

// EditName says in a few words what an edit changed: "width of back", or of
// several the first and how many more. A figure that several fields have is one, and what a
// person picked is said without what came along with it.
// That a set-out is held, or that a figure is measured by now, is not said along
// with something else.
func EditName(job survey.Job, changes []form.Change) string {
	var names []string
	var told []form.Change
	for _, c := range changes {
		alike := slices.ContainsFunc(told, func(d form.Change) bool { return d.Was == c.Was && d.Is == c.Is && c.Was != "" && c.Is != "" })
		if ofHeld(c) || c.Path == "guess" || alike || cameAlong(c, changes) {
			continue
		}
		told = append(told, c)
		if name := cmp.Or(pickName(job, c, changes), changeName(job, c.Path)); len(names) == 0 || names[len(names)-1] != name {
			names = append(names, name)
		}
	}
	switch len(names) {
	case 0:
		return heldName(job, changes)
	case 1:
		return names[0]
	}
	return fmt.Sprintf("%s and %d more", names[0], len(names)-1)
}

// ofHeld tells whether a change is one of the set-out that is held.
func ofHeld(c form.Change) bool { return form.Parts(c.Path)[0].Name == "held" }

// heldName names an edit of nothing but the set-out that is held, or of what is measured: the figure, where it is one.
func heldName(job survey.Job, changes []form.Change) string {
	switch {
	case len(changes) == 0:
		return ""
	case changes[0].Path == "guess":
		if one := onlyIn(changes[0].Was, changes[0].Is); len(one) == 1 {
			return changeName(job, one[0])
		}
		return "what is measured"
	case changes[0].Path == "held" && changes[0].Is == "":
		return "letting go of the set-out"
	}
	return "hold the set-out"
}

// onlyIn lists the fields that one of two lists has alone.
func onlyIn(was, is string) (out []string) {
	a, b := strings.Split(was, ", "), strings.Split(is, ", ")
	for _, path := range append(a, b...) {
		if path != "" && slices.Contains(a, path) != slices.Contains(b, path) {
			out = append(out, path)
		}
	}
	return out
}

// endNames are the ends of a wall, as its fields name them.
var endNames = map[string]string{"left": "left end", "right": "right end"}

// changeName names one field: "width of back" where a wall has it, else its place.
func changeName(job survey.Job, path string) string {
	parts := form.Parts(path)
	if len(parts) == 3 && parts[0].Name == "walls" && parts[1].Index >= 0 && parts[1].Index < len(job.Walls) {
		return cmp.Or(endNames[parts[2].Name], parts[2].Name) + " of " + job.Walls[parts[1].Index].Name
	}
	return lower(PlaceIn(job, path))
}
