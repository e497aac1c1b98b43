package form

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// Size is a tile's, as it would be typed.
type Size struct{ Width, Height string }

// String is how a size is said: "3 15/16 × 3 15/16".
func (s Size) String() string { return s.Width + " × " + s.Height }

// closing gives sizes with which a bond closes, nearest to those of its tile; of two the second keeps the longer side.
// There are none where any sizes do, and where a size or the joint does not read.
func closing(b survey.Bond, in laidIn) []Size {
	system, _ := System(in.units)
	wide, noWidth := length.Parse(in.tile.Width, system)
	high, noHeight := length.Parse(in.tile.Height, system)
	j, noJoint := length.Parse(in.joint, system)
	if noWidth != nil || noHeight != nil || noJoint != nil || min(wide, high) <= 0 {
		return nil
	}
	long, short := max(wide, high), min(wide, high)
	say := func(l length.Length) string { return l.Plain(system, 0) }
	as := func(long, short length.Length, upright bool) Size {
		if upright {
			return Size{say(short), say(long)}
		}
		return Size{say(long), say(short)}
	}
	half := ((long - j) / 2).FloorTo(system.Step())
	switch kind := survey.BondKind(b.Kind); {
	case kind == survey.Hexagon, kind == survey.Pinwheel, kind == survey.Modular:
		return []Size{{say(short), say(short)}, {say(long), say(long)}}
	case kind == survey.Herringbone && long == short, kind == survey.DoubleHerringbone && long+j < 2*(short+j):
		return []Size{as(long, half, high > wide), as(2*short+j, short, high > wide)}
	case kind == survey.BasketWeave && long != short && len(said(b.Tiles)) == 0:
		n := max(2, survey.Weave(long, short, j))
		return []Size{as(n*short+(n-1)*j, short, high > wide)}
	case kind == survey.Picket && long == short:
		return []Size{as(2*short, short, b.Along != "plumb")}
	case kind == survey.Picket:
		return []Size{as(long, short, b.Along != "plumb")}
	}
	return nil
}

// followPick gives the job's tile sizes with which a pattern closes that has just been picked, in the place of guesses:
// what was measured stays.
func followPick(job *survey.Job, was bondAt) {
	tidySample(&job.Tile) // of which a form posts empty boxes
	if job.Bond.Kind == was.Kind || !sameSize(job.Tile, was.in.tile) || job.Tile.Sample != nil {
		return
	}
	for _, s := range closing(job.Bond, ofJob(job)) {
		if (guessed(job, "tile.width") || s.Width == job.Tile.Width) && (guessed(job, "tile.height") || s.Height == job.Tile.Height) {
			job.Tile.Width, job.Tile.Height = s.Width, s.Height
			return
		}
	}
}

func guessed(job *survey.Job, path string) bool { return slices.Contains(job.Guess, path) }

// Fits are sizes of the tile of the bond at a path with which it closes, to be offered where it does not.
func Fits(job survey.Job, path string) []Size {
	bond, in := laidOf(&job, path)
	if bond == nil || in.tile.Sample != nil {
		return nil
	}
	return slices.DeleteFunc(closing(*bond, in), func(s Size) bool { return s == Size{in.tile.Width, in.tile.Height} })
}

// laidOf is the bond at a path with the tile beside it, and how that is typed; nil of a face that has the wall's tile.
func laidOf(job *survey.Job, path string) (bond *survey.Bond, in laidIn) {
	eachBond(job, func(at string, b *survey.Bond, of laidIn) {
		if at == path && Get(*job, besideBond(path)+".width") != "" {
			bond, in = b, of
		}
	})
	return bond, in
}

// besideBond is the path of the tile that a bond is laid of.
func besideBond(path string) string { return strings.TrimSuffix(path, "bond") + "tile" }

// fit lays the bond at a path in a tile with which it closes, the first of Fits or the second. Nobody has measured that.
func fit(job *survey.Job, rest string) error {
	path, which, _ := strings.Cut(rest, " ")
	all, n := Fits(*job, path), 0
	if which == "second" {
		n = 1
	}
	if n >= len(all) {
		return fmt.Errorf("no sizes are known with which the bond at %q closes", path)
	}
	bond, was := laidOf(job, path)
	is := was
	is.tile.Width, is.tile.Height = all[n].Width, all[n].Height
	bond.Tiles = followed(*bond, bondAt{*bond, was}, is)
	tile := besideBond(path)
	if err := errors.Join(Set(job, tile+".width", all[n].Width), Set(job, tile+".height", all[n].Height)); err != nil {
		return err
	}
	if path != "bond" {
		return nil // of the tile of a band and of a face nobody is asked
	}
	for _, f := range []struct{ path, was, is string }{{"tile.width", was.tile.Width, is.tile.Width}, {"tile.height", was.tile.Height, is.tile.Height}} {
		if f.was != f.is && !guessed(job, f.path) {
			job.Guess = append(job.Guess, f.path)
		}
	}
	return nil
}
