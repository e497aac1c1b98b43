package sheet

import (
	"bytes"
	"io"
	"slices"

	"codeberg.org/go-pdf/fpdf"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/takeoff"
)

// Write prints the sheets that the options choose into one PDF. The same plan
// and options give the same bytes. A plan without walls gives one sheet that
// says so. Nothing is written when a sheet cannot be made; the error is that
// of w otherwise.
func Write(w io.Writer, plan layout.Plan, opts Options) error {
	pdf := printed(plan, opts)
	var out bytes.Buffer
	if err := pdf.Output(&out); err != nil {
		return err
	}
	_, err := out.WriteTo(w)
	return err
}

// printed makes the leaves, then prints them; only then is their number known.
func printed(plan layout.Plan, opts Options) *fpdf.Fpdf {
	b := newBook(plan, opts)
	pdf := NewPDF("A4", b.opts.Date)
	pdf.SetTitle(printable(plan.Room.Title), true)
	for i, l := range b.leaves {
		b.block(l, i+1)
		pdf.AddPageFormat("P", fpdf.SizeType{Wd: mm(l.size.X), Ht: mm(l.size.Y)})
		l.print(pdf)
	}
	return pdf
}

// book is the sheets in the making.
type book struct {
	plan   layout.Plan
	opts   Options
	cuts   cuts.Schedule
	buy    takeoff.Takeoff
	leaves []*leaf
}

func newBook(plan layout.Plan, opts Options) *book {
	b := &book{plan: plan, opts: opts.filled(plan.Room)}
	if len(plan.Walls) == 0 {
		b.flow(subject{title: "Nothing to print"}, false).words(body, "This job has no walls yet.")
		return b
	}
	b.cuts = cuts.Of(cuts.Input{Room: plan.Room, Walls: plan.Walls}, *b.opts.Saw)
	b.buy = takeoff.Of(takeoff.Input{Room: plan.Room, Walls: plan.Walls, Cuts: b.cuts.Offcuts}, *b.opts.Buy)
	if len(opts.Kinds) == 0 && len(opts.Choices) < 2 {
		b.opts.Kinds = slices.DeleteFunc(b.opts.Kinds, func(k Kind) bool { return k == Compare })
	}
	chosen := map[Kind]bool{}
	for _, k := range b.opts.Kinds {
		chosen[k] = true
	}
	for _, k := range Kinds() {
		if chosen[k] {
			b.kind(k)
		}
	}
	return b
}

// kind makes the sheets of one kind.
func (b *book) kind(k Kind) {
	switch k {
	case SetOut:
		b.setOut()
	case Elevations:
		b.elevations()
	case FirstCourse:
		b.firstCourse()
	case CutSchedule:
		b.schedule()
	case StoryPole:
		b.storyPole()
	case TakeOff:
		b.takeOff()
	case Stages:
		b.stages()
	case Compare:
		b.choices()
	}
}

// buying is what another plan of the job needs.
func (b *book) buying(plan layout.Plan) takeoff.Takeoff {
	c := cuts.Of(cuts.Input{Room: plan.Room, Walls: plan.Walls}, *b.opts.Saw)
	return takeoff.Of(takeoff.Input{Room: plan.Room, Walls: plan.Walls, Cuts: c.Offcuts}, *b.opts.Buy)
}
