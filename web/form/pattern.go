package form

import (
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// tidyPattern drops the fields of a pattern that another bond has no use for, and
// gives a pattern of several tiles those that it needs, of sizes that close with the
// job's tile and joint where these can be read.
func tidyPattern(b *survey.Bond, job survey.Job) {
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
		b.Tiles = append(b.Tiles, besides(kind, len(b.Tiles), job))
	}
	for len(b.Tiles) > least && unsaid(b.Tiles[len(b.Tiles)-1]) {
		b.Tiles = b.Tiles[:len(b.Tiles)-1]
	}
	for i := range b.Tiles {
		if box := b.Tiles[i].Box; box != nil && *box == (survey.Box{}) {
			b.Tiles[i].Box = nil
		}
	}
	if len(b.Tiles) == 0 {
		b.Tiles = nil
	}
}

// bondsOf are the bonds of a job by where they are typed.
func bondsOf(job survey.Job) map[string]survey.Bond {
	out := map[string]survey.Bond{}
	eachBond(&job, func(path string, b *survey.Bond) { out[path] = *b })
	return out
}

// eachBond gives the bonds of a job: its own, those of its bands, and of the insides of openings.
func eachBond(job *survey.Job, each func(path string, b *survey.Bond)) {
	each("", &job.Bond)
	for i := range job.Bands {
		each(fmt.Sprint("bands ", i), &job.Bands[i].Bond)
	}
	for i := range job.Walls {
		for k := range job.Walls[i].Openings {
			in := job.Walls[i].Openings[k].Inside
			if in == nil {
				continue
			}
			for n, f := range faces(in) {
				if f.Bond != nil {
					each(fmt.Sprint("inside ", i, k, n), f.Bond)
				}
			}
		}
	}
}

// straighten drops the shift of a running bond from one that has just become a diagonal, which
// is laid straight unless it is said otherwise.
func straighten(job *survey.Job, were map[string]survey.Bond) {
	const diagonal = string(survey.Diagonal)
	eachBond(job, func(path string, b *survey.Bond) {
		if was, there := were[path]; there && b.Kind == diagonal && was.Kind != diagonal && b.Offset == was.Offset {
			b.Offset, b.Hand = "", ""
		}
	})
}

// unsaid tells whether nothing was typed of a tile's size.
func unsaid(t survey.Tile) bool { return t.Width == "" && t.Height == "" }

// besides is the nth further tile of a pattern, such as closes with the job's tile.
func besides(kind survey.BondKind, n int, job survey.Job) survey.Tile {
	system, _ := System(job.Units)
	read := func(text string) length.Length {
		l, err := length.Parse(text, system)
		if err != nil {
			return 0
		}
		return l
	}
	wide, high, joint := read(job.Tile.Width), read(job.Tile.Height), read(job.Joint.Plain)
	say := func(l length.Length) string {
		if l <= 0 {
			return ""
		}
		return l.Plain(system, 0)
	}
	half := func(l length.Length) string { return say(((l - joint) / 2).FloorTo(system.Step())) }
	switch kind {
	case survey.MixedHeights:
		return survey.Tile{Height: half(high)}
	case survey.Pinwheel:
		return survey.Tile{Width: half(wide)}
	case survey.Modular:
		m := [...][2]length.Length{{2, 1}, {2, 2}, {3, 2}}[n]
		return survey.Tile{Width: say(m[0]*(wide+joint) - joint), Height: say(m[1]*(wide+joint) - joint)}
	}
	return survey.Tile{}
}
