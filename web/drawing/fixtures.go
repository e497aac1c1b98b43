package drawing

import (
	"coursewright/layout"
	"coursewright/layout/fixture"
	"coursewright/layout/survey"
)

// Fixture is what is fixed to the finished wall: drawn dashed, for it cuts no tile.
const Fixture Kind = "fixture"

// fixtures draws shelves, dishes, bars and glass lines, with the middles of their holes.
func (b *board) fixtures(f frame, w layout.Wall) {
	for _, p := range w.Fixtures {
		tag, ink := Tag{Kind: Fixture, Wall: f.wall}, broken(Black, 350, Hidden)
		a, z := f.at(p.Box.Left, p.Box.Top), f.at(p.Box.Right, p.Box.Bottom)
		switch p.Found.Kind {
		case survey.GlassLine:
			ink.Dash = DashDot
			b.chain(tag, ink, a, z)
		case survey.GrabBar:
			r := max((z.Y-a.Y)/2, leastHole)
			left, right := Point{a.X, (a.Y + z.Y) / 2}, Point{z.X, (a.Y + z.Y) / 2}
			b.chain(tag, broken(Black, 700, Hidden), left, right)
			b.disc(tag, ink, left, r)
			b.disc(tag, ink, right, r)
		default:
			b.path(tag, ink, corners(a, z))
		}
		for _, h := range p.Holes {
			b.disc(tag, fill(Black), f.at(h.At.X, h.At.Y), leastHole)
		}
	}
}

// fixtureNames writes what each fixture is, over it or under it, where that stands on
// its own wall.
func (b *board) fixtureNames(f frame, w layout.Wall) {
	r := extents(w)
	lo, hi := f.at(r.Left, r.Top), f.at(r.Right, r.Bottom)
	for _, p := range w.Fixtures {
		l := Label{Tag: Tag{Kind: Fixture, Wall: f.wall}, Text: short(p.Found.Name, b.texts.note, mostName), Size: b.texts.note, Colour: Black}
		for _, at := range b.namePlaces(f, p, l) {
			room := plateRoom(l, at)
			if room.from.X >= lo.X && room.to.X <= hi.X && room.from.Y >= lo.Y && room.to.Y <= hi.Y && b.vacant(room) {
				b.plate(l, at, White)
				break
			}
		}
	}
}

// namePlaces are the places for a fixture's name, the best first.
func (b *board) namePlaces(f frame, p fixture.Placed, l Label) []Point {
	a, z := f.at(p.Box.Left, p.Box.Top), f.at(p.Box.Right, p.Box.Bottom)
	high, half := leading(l.Size)*3/4, l.width()/2+l.Size/2
	x, y := (a.X+z.X)/2, (a.Y+z.Y)/2
	if p.Found.Kind == survey.GlassLine {
		var all []Point
		for _, eighth := range []Micron{4, 3, 5, 2, 6, 1, 7} {
			at := a.Y + (z.Y-a.Y)*eighth/8
			all = append(all, Point{x + half, at}, Point{x - half, at})
		}
		return all
	}
	if p.Found.Kind == survey.SoapDish && 2*half < z.X-a.X && 2*high < z.Y-a.Y {
		return []Point{{x, y}, {x, a.Y - high}, {x, z.Y + high}}
	}
	return []Point{{x, a.Y - high}, {x, z.Y + high}, {a.X + half, a.Y - high}, {z.X - half, a.Y - high}, {z.X + half, y}, {a.X - half, y}}
}

// fixtureHeights are the heights of the fixtures of one wall.
func (b *board) fixtureHeights(w layout.Wall) []station {
	var s []station
	for _, p := range w.Fixtures {
		if p.Found.Kind != survey.GlassLine {
			s = append(s, station{l: p.At.Y, name: p.Found.Name, colour: decided(p.Found.Height.Free()), rank: rankPipe})
			continue
		}
		for _, h := range p.Holes {
			s = append(s, station{l: h.At.Y, name: p.Found.Name, rank: rankPipe})
		}
	}
	return s
}

// fixturePlaces are the places along one wall of what stands in no corner.
func (b *board) fixturePlaces(w layout.Wall) []station {
	var s []station
	for _, p := range w.Fixtures {
		if !p.Found.InCorner() {
			s = append(s, station{l: p.At.X, name: p.Found.Name, rank: rankPipe})
		}
	}
	return s
}
