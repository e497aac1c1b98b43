package sheet

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"strings"
	"time"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/layout/takeoff"
)

// Kind is one of the kinds of sheet.
type Kind string

// The kinds, in the order in which they are printed.
const (
	SetOut      Kind = "set-out"
	Elevations  Kind = "elevations"
	FirstCourse Kind = "first-course"
	CutSchedule Kind = "cuts"
	StoryPole   Kind = "story-pole"
	FullPole    Kind = "full-size-pole"
	TakeOff     Kind = "take-off"
	Stages      Kind = "stages"
	Compare     Kind = "choices"
	Measuring   Kind = "measuring"
)

// Kinds lists all kinds in the order in which they are printed.
func Kinds() []Kind {
	return []Kind{SetOut, Elevations, FirstCourse, CutSchedule, StoryPole, FullPole, TakeOff, Stages, Compare, Measuring}
}

// usualKinds are printed where none is asked for: all but the pole at full size and the
// measuring sheet, which is for a room before it is measured, and the comparison only where there are choices.
func usualKinds(choices int) []Kind {
	return slices.DeleteFunc(Kinds(), func(k Kind) bool { return k == FullPole || k == Measuring || k == Compare && choices < 2 })
}

// ParseKinds reads kinds with commas between them; nothing stands for the usual
// ones. The
// error names the kind that is unknown and those there are.
func ParseKinds(list string) ([]Kind, error) {
	var out []Kind
	for name := range strings.SplitSeq(list, ",") {
		k := Kind(strings.ToLower(strings.TrimSpace(name)))
		switch {
		case k == "" || slices.Contains(out, k):
		case !slices.Contains(Kinds(), k):
			return nil, fmt.Errorf("there is no kind of sheet %q; the kinds are %s", name, kindList())
		default:
			out = append(out, k)
		}
	}
	return out, nil
}

func kindList() string {
	var names []string
	for _, k := range Kinds() {
		names = append(names, string(k))
	}
	return strings.Join(names, ", ")
}

// Options choose what is printed. The zero value of each field but Date stands
// for what is usual.
type Options struct {
	Paper  Paper             // zero: Letter for inches, A4 for millimetres
	Kinds  []Kind            // none: all but the pole at full size and the measuring sheet
	Date   time.Time         // printed on every sheet, and the date of the document
	Hash   string            // of the job, as Hash gives it
	Saw    *cuts.Settings    // nil: the job's
	Buy    *takeoff.Settings // nil: the job's
	Stages *stages.Settings  // nil: the job's

	Measured string // "4 of 22 measured", as the page says it; printed on guesses

	Choices []Choice        // of the job, to compare; printed where there are several
	Help    []layout.Remedy // what would help where poor cuts remain; the best of it stands with the cuts
}

// Hash is short enough to compare by eye and tells two job documents apart.
func Hash(document []byte) string {
	sum := sha256.Sum256(document)
	return hex.EncodeToString(sum[:4])
}

// filled puts what the job says, or what is usual, where nothing was chosen.
func (o Options) filled(room survey.Room) Options {
	if o.Paper == (Paper{}) {
		o.Paper = usualPaper(room.Units)
	}
	if len(o.Kinds) == 0 {
		o.Kinds = usualKinds(len(o.Choices))
	}
	saw, buy, days := cuts.For(room), takeoff.For(room), stages.For(room)
	o.Saw, o.Buy, o.Stages = cmp.Or(o.Saw, &saw), cmp.Or(o.Buy, &buy), cmp.Or(o.Stages, &days)
	return o
}
