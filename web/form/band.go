package form

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// The bands that a button adds.
const (
	Liner  = "liner"  // a narrow strip, 1/2 by 8 in (15 by 200 mm)
	Mosaic = "mosaic" // two courses of 2 in (50 mm) tile
	Above  = "above"  // other tile from a line up to the head
)

// bandHeight is where a band is wished: its bottom 60 in (1500 mm) over the floor.
// No standard sets a height; 56 to 64 in is usual (how-to pages).
func bandHeight(job *survey.Job) string { return pick(job, "60", "1500") }

// addBand adds a band round all walls that are high enough, free within a course or so of where it is
// wished.
func addBand(job *survey.Job, what string) error {
	b := survey.Band{Name: freeName(what, bandNames(*job))}
	switch what {
	case Liner:
		b.Tile = survey.Tile{Width: pick(job, "8", "200"), Height: pick(job, "1/2", "15")}
	case Mosaic:
		b.Tile, b.Courses = survey.Tile{Width: pick(job, "1 7/8", "48"), Height: pick(job, "1 7/8", "48")}, 2
	case Above:
		b.Name, b.ToHead = freeName("tile above", bandNames(*job)), true
		b.Tile = survey.Tile{Width: pick(job, "7 7/8", "198"), Height: pick(job, "7 7/8", "198")}
	default:
		return fmt.Errorf("a band is a liner, a mosaic, or other tile above a line, not %q", what)
	}
	b.Bottom, b.Near, b.Walls = bandPlace(*job)
	clearOfBands(job, &b)
	clearOfReach(job, &b)
	job.Bands = append(job.Bands, b)
	return nil
}

// keepBands keeps bands that go round all walls to those that the job has: a low wall that is added has
// no room for them.
func keepBands(job *survey.Job) {
	for i := range job.Bands {
		if b := &job.Bands[i]; len(b.Walls) == 0 {
			b.Walls = wallNames(*job)
		}
	}
}

// clearOfBands moves a new band over those that the job has where it would run into one,
// or under them where over them is no room.
func clearOfBands(job *survey.Job, b *survey.Band) {
	system, _ := System(job.Units)
	alone := *job
	alone.Bands = []survey.Band{*b}
	own, faults := alone.Resolve()
	room, others := job.Resolve()
	if len(faults) > 0 || len(others) > 0 || len(room.Bands) == 0 {
		return
	}
	joint := room.Joints[len(room.Joints)-1]
	it := own.Bands[0]
	low, top := it.Bottom.From, it.Bottom.To
	if !it.ToHead {
		top += it.High(joint)
	}
	clash, under, over := false, top, low // how far down, and how far up, there is room
	for _, o := range room.Bands {
		from, to := o.Bottom.From-joint, o.Bottom.To+o.High(joint)+joint
		clash = clash || (it.ToHead || from < top) && (o.ToHead || low < to)
		under, over = min(under, from), max(over, to)
	}
	if !clash {
		return
	}
	move := func(by length.Length) {
		say := func(l length.Length) string { return (l + by).Plain(system, system.Step()) }
		b.Bottom, b.Near = survey.Mark{From: say(it.Bottom.From), To: say(it.Bottom.To)}, say((it.Bottom.From + it.Bottom.To).Half())
	}
	move((over - low).CeilTo(system.Step()))
	with := *job
	with.Bands = append(slices.Clone(job.Bands), *b)
	if _, faults := with.Resolve(); len(faults) == 0 {
		return
	}
	if it.ToHead { // it begins upon the highest of the others, wherever that stands
		upon := slices.MaxFunc(room.Bands, func(a, b survey.BandFound) int { return cmp.Compare(a.Bottom.To, b.Bottom.To) })
		b.Upon, b.Bottom, b.Near, b.Walls = upon.Name, survey.Mark{}, "", nil
		return
	}
	move((under - top).FloorTo(system.Step())) // under the head, or another tile that goes up to it, is no room
}

// bandPlace is a range round the usual height that holds a joint line whatever the
// course line, as far as base and head leave room, and the walls that reach there:
// none for all, because a bench, a curb and a half wall end under a band.
func bandPlace(job survey.Job) (bottom survey.Mark, near string, on []string) {
	job.Bands = nil
	system, _ := System(job.Units)
	room, faults := job.Resolve()
	if len(faults) > 0 {
		return survey.Mark{At: "0"}, "", nil
	}
	up, _ := length.Parse(bandHeight(&job), system)
	up += room.Foot()
	pitch := (room.Tile.Height + room.Joints[len(room.Joints)-1]).CeilTo(system.Step())
	all := len(room.Walls)
	if high := slices.DeleteFunc(slices.Clone(room.Walls), func(w survey.WallFound) bool {
		_, head := survey.Room{Walls: []survey.WallFound{w}}.Between()
		return head < up
	}); len(high) > 0 {
		room.Walls = high
	}
	if len(room.Walls) < all {
		for _, w := range room.Walls {
			on = append(on, w.Name)
		}
	}
	low, high := room.Between()
	at := min(max(up, low+2*pitch), high-3*pitch).FloorTo(system.Step())
	say := func(l length.Length) string { return l.Plain(system, system.Step()) }
	return survey.Mark{From: say(at - pitch), To: say(at + pitch)}, say(at), on
}

func bandNames(job survey.Job) []string {
	names := make([]string, len(job.Bands))
	for i, b := range job.Bands {
		names[i] = b.Name
	}
	return names
}

// round lets a band run round a wall, or leaves the wall out where it does: "PATH WALL".
func round(job *survey.Job, rest string) error {
	path, wall, _ := strings.Cut(rest, " ")
	way, err := steps(path)
	if err != nil || len(way) != 2 || way[0].name != "bands" || way[1].index < 0 || way[1].index >= len(job.Bands) {
		return fmt.Errorf("there is no band at %q", path)
	}
	names, b := wallNames(*job), &job.Bands[way[1].index]
	if !slices.Contains(names, wall) {
		return fmt.Errorf("there is no wall %q", wall)
	}
	if !Round(*b, wall) {
		fitBand(job, way[1].index, wall)
	}
	var on []string
	for _, name := range names {
		if runs := Round(*b, name); runs != (name == wall) {
			on = append(on, name)
		}
	}
	switch len(on) {
	case 0:
		return fmt.Errorf("a band runs on at least one wall")
	case len(names):
		on = nil
	}
	b.Walls = on
	roundUpon(job, way[1].index, wall)
	return nil
}

// roundUpon lets bands go with the one that they stand upon, or that stands upon them: off a wall with what
// is under them, onto one with what is over it.
func roundUpon(job *survey.Job, of int, wall string) {
	b := job.Bands[of]
	runs := Round(b, wall)
	for i, o := range job.Bands {
		if with := runs && o.Name == b.Upon || !runs && o.Upon == b.Name; with && Round(o, wall) != runs {
			_ = round(job, At("bands", i)+" "+wall) // which a band on this wall alone refuses, and stays
		}
	}
}

// Round tells whether a band runs round a wall.
func Round(b survey.Band, wall string) bool {
	return len(b.Walls) == 0 || slices.Contains(b.Walls, wall)
}

// renameBands lets bands follow the walls they name when these are called otherwise.
func renameBands(job *survey.Job, now map[string]string) {
	for i := range job.Bands {
		for k, name := range job.Bands[i].Walls {
			if now[name] != "" {
				job.Bands[i].Walls[k] = now[name]
			}
		}
	}
}

// followBands lets bands that stand upon another follow its name, and gives one that no longer
// does a height.
func followBands(job *survey.Job, before []survey.Band) {
	for i := range min(len(before), len(job.Bands)) {
		was, b := before[i], &job.Bands[i]
		if was.Upon != "" && b.Upon == "" && b.Bottom == (survey.Mark{}) {
			b.Bottom, b.Near, _ = bandPlace(*job)
		}
		for k := range job.Bands {
			if o := &job.Bands[k]; b.Name != "" && o.Upon == was.Name && o.Upon != "" {
				o.Upon = b.Name
			}
		}
	}
}

// tidyBands lets go of walls that are gone, of bands that run round none, and of
// what means nothing in a band that goes up to the head.
func tidyBands(job *survey.Job) {
	names := wallNames(*job)
	job.Bands = slices.DeleteFunc(job.Bands, func(b survey.Band) bool {
		return len(b.Walls) > 0 && !slices.ContainsFunc(b.Walls, func(w string) bool { return slices.Contains(names, w) })
	})
	for i := range job.Bands {
		b := &job.Bands[i]
		b.Walls = slices.DeleteFunc(b.Walls, func(w string) bool { return !slices.Contains(names, w) })
		tidyBandPattern(b, *job)
		if b.Bottom.At != "" {
			b.Near = ""
		}
		if b.Upon != "" {
			b.Bottom, b.Near = survey.Mark{}, ""
			if k := slices.IndexFunc(job.Bands, func(o survey.Band) bool { return o.Name == b.Upon }); k >= 0 && len(b.Walls) == 0 {
				b.Walls = slices.Clone(job.Bands[k].Walls)
			}
		}
		if b.Bond.Kind == "stack" {
			b.Bond.Offset, b.Bond.Hand = "", ""
		}
		if box := b.Tile.Box; box != nil && *box == (survey.Box{}) {
			b.Tile.Box = nil
		}
	}
	if len(job.Bands) == 0 {
		job.Bands = nil
	}
}
