package sheet

import (
	"bytes"
	"io"
	"slices"

	"codeberg.org/go-pdf/fpdf"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/stages"
	"coursewright/layout/takeoff"
	"coursewright/web/drawing"
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
	days   []stages.Stage
	leaves []*leaf
	now    Kind    // whose sheets are being made
	later  []later // findings without room

	warnLater bool    // the cautions found no room on the set-out sheet
	flows     []*flow // of the lists
	walls     []*flow // of the walls whose sheet is theirs alone

	trying bool           // nothing of it is printed: it tells how high a list is
	size   drawing.Micron // of the text of its lists, where only one is tried
	single bool           // every list begins a leaf of its own
	joined bool           // one does not
	order  []Kind         // of the lists, where they follow each other
	singly map[Kind]int   // how many leaves each takes else
}

// newBook makes the sheets: with lists on one leaf where that takes fewer.
func newBook(plan layout.Plan, opts Options) *book {
	b := &book{plan: plan, opts: opts.filled(plan.Room), single: true}
	if len(plan.Walls) == 0 {
		b.flow(subject{title: "Nothing to print"}, false).words(body, "This job has no walls yet.")
		return b
	}
	b.cuts = cuts.Of(cuts.Input{Room: plan.Room, Walls: plan.Walls}, *b.opts.Saw)
	b.buy = takeoff.Of(takeoff.Input{Room: plan.Room, Walls: plan.Walls, Cuts: b.cuts.Offcuts, Others: b.cuts.Others}, *b.opts.Buy)
	if slices.Contains(b.opts.Kinds, Stages) {
		b.days = stages.Of(stages.Input{Room: plan.Room, Walls: plan.Walls, Cuts: b.cuts}, *b.opts.Stages)
	}
	m := b.measured()
	order, fewer := m.arranged(b.listsAsked())
	if b.fill(); !fewer {
		return b
	}
	joined := &book{plan: plan, opts: b.opts, cuts: b.cuts, buy: b.buy, days: b.days, order: order, singly: map[Kind]int{}}
	for k, l := range m.lists {
		joined.singly[k] = l.leaves
	}
	if joined.fill(); joined.joined && len(joined.leaves) < len(b.leaves) {
		return joined
	}
	return b
}

// fill makes all leaves.
func (b *book) fill() {
	for _, k := range b.inPrint() {
		b.kind(k)
	}
	b.cautionsLeft()
	b.findingsLeft()
	b.help() // last, so that it changes no leaf
}

// kind makes the sheets of one kind.
func (b *book) kind(k Kind) {
	b.now = k
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
	case FullPole:
		b.fullPole()
	case TakeOff:
		b.takeOff()
	case Stages:
		b.stages()
	case Compare:
		b.choices()
	case Measuring:
		b.measuring()
	}
}

// buying is what another plan of the job needs.
func (b *book) buying(plan layout.Plan) takeoff.Takeoff {
	c := cuts.Of(cuts.Input{Room: plan.Room, Walls: plan.Walls}, *b.opts.Saw)
	return takeoff.Of(takeoff.Input{Room: plan.Room, Walls: plan.Walls, Cuts: c.Offcuts, Others: c.Others}, *b.opts.Buy)
}

// Page is one sheet as it is printed, for whoever shows it elsewhere.
type Page struct {
	Kind  Kind
	Also  []Kind // of the lists that follow on the same sheet
	Title string // "Wall: B, back"
	Scale string // "1:10", or "no scale"
	Scene drawing.Scene
}

// Shows tells whether something of a kind stands on the sheet.
func (p Page) Shows(k Kind) bool { return p.Kind == k || slices.Contains(p.Also, k) }

// Pages gives the sheets that the options choose, each as one scene.
func Pages(plan layout.Plan, opts Options) []Page {
	b := newBook(plan, opts)
	var out []Page
	for i, l := range b.leaves {
		b.block(l, i+1)
		title := l.title
		if l.wall != "" {
			title += ": " + l.wall
		}
		out = append(out, Page{Kind: l.kind, Also: l.also, Title: title, Scale: scaleText(l.scale, plan.Room.Units), Scene: l.scene(title)})
	}
	return out
}

// scene is the leaf with all that is laid on it.
func (l *leaf) scene(title string) drawing.Scene {
	s := drawing.Scene{Width: l.size.X, Height: l.size.Y, Title: title, Scale: l.scale}
	for _, p := range l.parts {
		s.Elements = append(s.Elements, p.scene.Moved(p.at).Elements...)
	}
	s.Elements = append(s.Elements, l.own.Elements...)
	return s
}
