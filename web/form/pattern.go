package form

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// laidIn is the tile that a bond is laid of, and its joint, as typed.
type laidIn struct {
	units string
	tile  survey.Tile
	joint string
}

// tidyPattern drops the fields of a pattern that another bond has no use for, and
// gives a pattern of several tiles those that it needs, of sizes that close with the
// first tile and its joint where these can be read.
func tidyPattern(b *survey.Bond, in laidIn) {
	kind := survey.BondKind(b.Kind)
	if !slices.Contains(survey.Bonds, kind) {
		return
	}
	if !kind.Shifts() {
		b.Offset, b.Hand = "", ""
	}
	if b.Offset == "" {
		b.Hand = ""
	}
	if !kind.Turns() {
		b.Turn = ""
	}
	if kind != survey.Chevron {
		b.Angle = ""
	}
	least, most := kind.Tiles()
	b.Tiles = slices.Clone(b.Tiles[:min(len(b.Tiles), most)])
	for len(b.Tiles) < least {
		b.Tiles = append(b.Tiles, besides(*b, len(b.Tiles), in))
	}
	b.Tiles = b.Tiles[:max(least, len(said(b.Tiles)))]
	for i := range b.Tiles {
		if box := b.Tiles[i].Box; box != nil && *box == (survey.Box{}) {
			b.Tiles[i].Box = nil
		}
	}
	if len(b.Tiles) == 0 {
		b.Tiles = nil
	}
}

// bondAt is a bond with the tile it is laid of.
type bondAt struct {
	survey.Bond
	in laidIn
}

// bondsOf are the bonds of a job by where they are typed.
func bondsOf(job survey.Job) map[string]bondAt {
	out := map[string]bondAt{}
	eachBond(&job, func(path string, b *survey.Bond, in laidIn) { out[path] = bondAt{*b, in} })
	return out
}

// ofJob is the job's own tile and joint.
func ofJob(job *survey.Job) laidIn { return laidIn{job.Units, job.Tile, job.Joint.Plain} }

// ofBand is the tile and joint of a band.
func ofBand(job *survey.Job, b *survey.Band) laidIn {
	return laidIn{job.Units, b.Tile, cmp.Or(b.Joint, job.Joint.Plain)}
}

// ofFace is the tile and joint of a face of an inside, or of a top.
func ofFace(job *survey.Job, f *survey.InsideFace) laidIn {
	if f.Tile == nil {
		return ofJob(job)
	}
	return laidIn{job.Units, *f.Tile, cmp.Or(f.Joint, job.Joint.Plain)}
}

// eachBond gives the bonds of a job by their paths: its own, those of its bands, of the insides of openings and of tops.
func eachBond(job *survey.Job, each func(path string, b *survey.Bond, in laidIn)) {
	each("bond", &job.Bond, ofJob(job))
	for i := range job.Bands {
		each(At("bands", i)+".bond", &job.Bands[i].Bond, ofBand(job, &job.Bands[i]))
	}
	face := func(path string, f *survey.InsideFace) {
		if f.Bond != nil {
			each(path, f.Bond, ofFace(job, f))
		}
	}
	for i := range job.Walls {
		for k := range job.Walls[i].Openings {
			if in := job.Walls[i].Openings[k].Inside; in != nil {
				for n, f := range faces(in) {
					face(At(At("walls", i)+".openings", k)+".inside."+survey.FaceName(n).String()+".bond", f)
				}
			}
		}
		if t := job.Walls[i].Top; t != nil {
			face(At("walls", i)+".top.face.bond", &t.Face)
		}
	}
}

// pickedAnew drops from bonds that have just been picked what belonged to the bond before: the
// shift of a running bond from a diagonal, which is laid straight unless it is said otherwise, the tiles of
// another pattern, and rows that stood plumb where only a pattern is asked which way they go. Courses
// of several heights that become columns take their heights along as widths, and tiles of the sizes that a button
// gave follow the first tile.
func pickedAnew(job *survey.Job, were map[string]bondAt) {
	eachBond(job, func(path string, b *survey.Bond, in laidIn) {
		was, there := were[path]
		kind := survey.BondKind(b.Kind)
		switch {
		case !there:
		case b.Kind != was.Kind:
			if kind == survey.Diagonal && b.Offset == was.Offset {
				b.Offset, b.Hand = "", ""
			}
			if slices.EqualFunc(said(b.Tiles), said(was.Tiles), sameSize) {
				b.Tiles = nil
			}
			if path != "bond" && b.Along == was.Along {
				b.Along = ""
			}
		case kind == survey.MixedHeights && (b.Along == "plumb") != (was.Along == "plumb"):
			b.Tiles = slices.Clone(b.Tiles)
			for i := range b.Tiles {
				if t := &b.Tiles[i]; t.Width == "" || t.Height == "" {
					t.Width, t.Height = t.Height, t.Width
				}
			}
		case !sameSize(in.tile, was.in.tile):
			b.Tiles = followed(*b, was, in)
		}
	})
}

// followed are the further tiles of a pattern whose first tile has changed: those that nobody has typed
// close with it again.
func followed(b survey.Bond, was bondAt, in laidIn) []survey.Tile {
	out := slices.Clone(b.Tiles)
	for i := range min(len(out), len(was.Tiles)) {
		given, now := besides(was.Bond, i, was.in), besides(b, i, in)
		if sameSize(out[i], was.Tiles[i]) && sameSize(out[i], given) && !unsaid(now) {
			out[i].Width, out[i].Height = now.Width, now.Height
		}
	}
	return out
}

func sameSize(a, b survey.Tile) bool { return a.Width == b.Width && a.Height == b.Height }

// said are further tiles without those at the end that a form asks for and nobody typed.
func said(tiles []survey.Tile) []survey.Tile {
	for len(tiles) > 0 && unsaid(tiles[len(tiles)-1]) {
		tiles = tiles[:len(tiles)-1]
	}
	return tiles
}

// unsaid tells whether nothing was typed of a tile's size.
func unsaid(t survey.Tile) bool { return t.Width == "" && t.Height == "" }

// besides is the nth further tile of a pattern, such as closes with its first tile.
func besides(b survey.Bond, n int, in laidIn) survey.Tile {
	system, _ := System(in.units)
	read := func(text string) length.Length {
		l, err := length.Parse(text, system)
		if err != nil {
			return 0
		}
		return l
	}
	wide, high, joint := read(in.tile.Width), read(in.tile.Height), read(in.joint)
	say := func(l length.Length) string {
		if l <= 0 {
			return ""
		}
		return l.Plain(system, 0)
	}
	other := func(l length.Length) string { // half as large, or twice where that would be no tile
		if half := ((l - joint) / 2).FloorTo(system.Step()); half >= leastOther {
			return say(half)
		}
		return say(2*l + joint)
	}
	switch survey.BondKind(b.Kind) {
	case survey.MixedHeights:
		if b.Along == "plumb" {
			return survey.Tile{Width: other(wide)}
		}
		return survey.Tile{Height: other(high)}
	case survey.Pinwheel:
		return survey.Tile{Width: other(wide)}
	case survey.Modular:
		m := [...][2]length.Length{{2, 1}, {2, 2}, {3, 2}}[n]
		return survey.Tile{Width: say(m[0]*(wide+joint) - joint), Height: say(m[1]*(wide+joint) - joint)}
	}
	return survey.Tile{}
}

// leastOther is the smallest further tile that is offered: a practical bound.
const leastOther = 8 * length.Millimetre
