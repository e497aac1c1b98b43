// Package stages divides the work into its days: what is set when, with which
// cuts ready, and what must harden in between. The sheets and the bathroom view
// follow one order, that of Order.
package stages

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/cuts"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// Input is a plan with its cut schedule.
type Input struct {
	Room  survey.Room
	Walls []plan.Wall   // in the job's order
	Cuts  cuts.Schedule // of the same plan
}

// Settings are what hangs on the mortar, the grout and the sealant.
type Settings struct {
	Holds   bool // the mortar holds the tile by itself, so nothing waits for the first course
	First   int  // hours the first course hardens before others stand on it
	Grout   int  // hours from the last tile to the grout
	Sealant int  // hours from the grout to the soft joints
	Water   int  // hours from the sealant to the first shower
}

// Usual gives the settings people start from: a day between the steps and a
// mortar that does not hold by itself. Common practice, no source; the makers'
// data sheets come first.
func Usual() Settings { return Settings{First: 24, Grout: 24, Sealant: 24, Water: 24} }

// Stage is one part of the work.
type Stage struct {
	Name   string
	Do     string // what to do, in whole sentences
	Pieces int    // tiles set in it
	Whole  int    // those of them that are not cut
	Cuts   []Cut  // to have ready before it begins, in the order of the schedule
	Wait   int    // hours to wait after it, 0 for none
	Why    string // what the wait is for
}

// Cut is how many pieces of one line of the cut schedule a stage needs.
type Cut struct {
	Group string
	Count int
}

// Of divides the work. Laws:
//
//  1. Every piece of the plan that is not set already is set in exactly one stage.
//  2. The cuts of all stages together are the lines of the schedule, each with
//     its whole count.
//  3. The order is dry lay and marks, first full course, each wall upwards,
//     under the batten, grout, soft joints, as in Order; a stage in which
//     nothing is set is left out.
func Of(in Input, set Settings) []Stage {
	out := append([]Stage{in.marking()}, in.bars()...)
	group, counts := map[string]int{}, make([]map[int]int, len(out)) // of what comes before the first tile none
	for i, g := range in.Cuts.Groups {
		for _, id := range g.Pieces {
			group[id] = i
		}
	}
	var last Step
	for _, s := range Order(in) {
		if s.Trim != nil {
			continue // told by itself
		}
		if s.begins(last) {
			next := in.setting(s, set)
			if s.Part == Upwards && last.Part == Upwards {
				next.Do = "As on wall " + in.Walls[last.Wall].Found.Letter + "."
			}
			out, counts = append(out, next), append(counts, map[int]int{})
		}
		last = s
		stage, need := &out[len(out)-1], counts[len(counts)-1]
		for _, p := range s.Pieces {
			stage.Pieces++
			if g, known := group[p.ID]; p.Whole {
				stage.Whole++
			} else if known {
				need[g]++
			}
		}
	}
	for i, need := range counts {
		for g, n := range need {
			out[i].Cuts = append(out[i].Cuts, Cut{in.Cuts.Groups[g].ID, n})
		}
		slices.SortFunc(out[i].Cuts, func(a, b Cut) int {
			return cmp.Or(cmp.Compare(len(a.Group), len(b.Group)), cmp.Compare(a.Group, b.Group))
		})
	}
	out = append(out, in.trim()...)
	if end := &out[len(out)-1]; set.Grout > end.Wait {
		end.Wait, end.Why = set.Grout, "the mortar hardens before the grout"
	}
	return append(out, in.finishing(set)...)
}

// begins tells whether a step begins a stage after the one before it.
func (s Step) begins(last Step) bool {
	switch {
	case s.Part != last.Part || last.Pieces == nil:
		return true
	case s.Part == Upwards:
		return s.Wall != last.Wall
	case s.On != nil:
		return s.Wall != last.Wall || s.Opening != last.Opening
	}
	return false
}

func (in Input) marking() Stage {
	measure, lay := "Measure a stack of ten tiles. ", "Lay the first full course dry on the floor and hold it against the marks."
	if !in.Room.Bond.Coursed() {
		measure, lay = "Measure ten tiles laid together with their joints. ", "Lay the pattern dry on the floor, from the first tile outwards, and hold it against the marks."
	}
	return Stage{Name: "Dry lay and marks", Do: measure + "Strike the lines of the set-out sheet. " + lay}
}

// setting is the stage that begins with a step.
func (in Input) setting(s Step, set Settings) Stage {
	switch s.Part {
	case OnBatten:
		return in.onBatten(set)
	case Under:
		return Stage{Name: "Under the batten", Do: "Take the batten off. Set the course under it, cut to the base and held by wedges or tape, then any course below."}
	}
	w := in.Walls[s.Wall].Found
	switch s.Part {
	case InStrip:
		return Stage{Name: "Strip " + w.Openings[s.Opening].Name + " on " + w.Letter, Do: "Between the tiles of the field, a joint from them on both sides, row by row from its foot up. " +
			"Bed thinner tile out to the face of the field, and hold a straightedge across both."}
	case Within:
		return within(w.Openings[s.Opening])
	case OnTop:
		return Stage{Name: capital(s.On.Name()), Do: "From the front edge back, with its fall to the room: hold a level to every row. Where it meets walls it stays open for sealant."}
	}
	return Stage{Name: "Wall " + w.Letter + ", " + w.Name, Do: "Course by course from the batten up: the whole tiles from the start outwards, " +
		"then the pieces at openings, then the cuts at the ends. Hold every fifth course to the story pole."}
}

// capital begins a name with a capital letter.
func capital(name string) string { return strings.ToUpper(name[:1]) + name[1:] }

// within is the stage in which the inside of an opening is set.
func within(o survey.OpeningFound) Stage {
	s := Stage{Name: "Inside of " + o.Called(), Do: "The back first, then the sill with its fall to the room, the top, held up until it has hardened, and the sides on the sill. " +
		"Every corner stays open for sealant."}
	if o.Kind == survey.Window {
		s.Do = "The sill first, with its fall to the room, then the top, held up until it has hardened, and the sides on the sill. Every corner stays open for sealant."
	}
	return s
}

func (in Input) onBatten(set Settings) Stage {
	s := Stage{Name: "First full course", Wait: set.First, Why: "the first course carries the others"}
	where := "to its line"
	if full, found := FirstFull(in.Room, in.courseLine(), in.Walls); found {
		switch u := in.Room.Units; {
		case full.Bottom < 0:
			where = fmt.Sprintf("with its top edge %s under the level line", (-full.Bottom).Tape(u))
		case full.Bottom > 0:
			where = fmt.Sprintf("with its top edge %s over the level line", full.Bottom.Tape(u))
		default:
			where = "with its top edge on the level line"
		}
		where += in.ownBattens(full)
	}
	s.Do = "Fix a level batten on every wall " + where + ". Set the course on it from the start outwards, and its cuts at the ends when the whole tiles stand. " +
		"Take the batten off only when the course has hardened."
	if set.Holds {
		s.Do = "Fix a level batten on every wall " + where + ". Set the course on it from the start outwards, and its cuts at the ends when the whole tiles stand. " +
			"The mortar holds the tile, so go on."
		s.Wait, s.Why = 0, ""
	}
	return s
}

// ownBattens says where the batten is fixed on walls that end under that of the room.
func (in Input) ownBattens(full FullCourse) (text string) {
	for _, l := range Lows(full, in.Walls) {
		text += fmt.Sprintf(", on %s %s lower", Letters(l.Walls, in.Walls), (full.Bottom - l.Bottom).Tape(in.Room.Units))
	}
	return text
}

// Letters names walls: "D and E".
func Letters(some []int, walls []plan.Wall) string {
	var all []string
	for _, i := range some {
		all = append(all, walls[i].Found.Letter)
	}
	if n := len(all); n > 1 {
		return strings.Join(all[:n-1], ", ") + " and " + all[n-1]
	}
	return strings.Join(all, "")
}

// finishing is what follows when all tile stands.
func (in Input) finishing(set Settings) []Stage {
	return []Stage{
		{Name: "Grout", Do: "Clean the joints, then grout them all but the inside corners and where tile meets other things.",
			Wait: set.Sealant, Why: "the grout dries before the sealant"},
		{Name: "Soft joints", Do: in.softly(),
			Wait: set.Water, Why: "the sealant sets before it gets wet"},
	}
}

// softly says where sealant goes in this room: where tile meets something, never where it stops.
func (in Input) softly() string {
	text, where := "", []string{}
	add := func(is bool, place string) {
		if is && !slices.Contains(where, place) {
			where = append(where, place)
		}
	}
	for _, w := range in.Walls {
		add(w.Found.Left.Meets || w.Found.Right.Meets, "the inside corners")
	}
	for _, w := range in.Walls {
		for _, s := range w.Found.Base {
			add(true, "along the "+string(s.Meets))
			if s.Meets == survey.Tub {
				text = "Fill the tub and keep it full. "
			}
		}
	}
	for _, w := range in.Walls {
		add(w.Found.Head.Meets, "along the ceiling")
	}
	for _, w := range in.Walls {
		for _, o := range w.Found.Openings {
			add(o.Kind == survey.Pipe, "round the pipes")
		}
	}
	switch n := len(where); n {
	case 0:
		return "Nothing here meets anything: no joint takes sealant."
	case 1:
		return text + "Seal " + where[0] + "."
	default:
		return text + "Seal " + strings.Join(where[:n-1], ", ") + " and " + where[n-1] + "."
	}
}
