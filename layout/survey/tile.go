package survey

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"coursewright/layout/length"
)

// mostVary is how far the tiles of one box may differ. A practical bound, far
// over any real tile.
const mostVary = length.Inch

// tile reads the tile, laid with a joint as typed. Its faces are true sizes.
func (r *resolver) tile(p path, t Tile, joint Measure) TileSize {
	size := bounds{leastTile, largestTile}
	r.label(value{p.dot("name"), t.Name}, longestName)
	found := TileSize{
		Name:      t.Name,
		Width:     r.length(value{p.dot("width"), t.Width}, size),
		Height:    r.length(value{p.dot("height"), t.Height}, size),
		Thickness: r.or(value{p.dot("thickness"), t.Thickness}, r.usual(5*length.Inch/16, 8*length.Millimetre), bounds{0, thickest}),
		Vary:      r.or(value{p.dot("vary"), t.Vary}, 0, bounds{0, mostVary}),
		Grain:     t.Grain,
		Colour:    r.colour(value{p.dot("colour"), t.Colour}, UsualTile),
		Sheet:     r.sheet(p.dot("sheet"), t.Sheet),
	}
	if t.Box != nil {
		r.box(p.dot("box"), *t.Box, &found)
	}
	if t.Sample != nil {
		r.sampled(p.dot("sample"), *t.Sample, joint, &found)
	}
	return found
}

// box reads how many tiles are in a box, what they cover, and what it costs.
func (r *resolver) box(p path, b Box, found *TileSize) {
	const most = 100_000
	found.BoxCount = b.Count
	if b.Count < 1 || b.Count > most {
		r.faults.add(p.dot("count"), strconv.Itoa(b.Count), fmt.Sprintf("a whole number from 1 to %d", most))
	}
	if b.Area != "" {
		found.BoxArea = r.area(value{p.dot("area"), b.Area})
	}
	if b.Price == "" {
		return
	}
	var ok bool
	if found.BoxCents, found.Money, ok = price(b.Price); !ok {
		r.faults.add(p.dot("price"), quote(b.Price), "a price such as 74.50")
	}
}

// area reads an area over zero.
func (r *resolver) area(v value) length.Area {
	a, err := length.ParseArea(v.text, r.units)
	var refused *length.ParseError
	switch {
	case errors.As(err, &refused):
		r.faults.add(v.path, quote(v.text)+", which "+refused.Problem, refused.Want)
	case a == 0:
		r.faults.add(v.path, quote(v.text), "what a box covers, such as 11.63 sq ft or 1.08 m²")
	}
	return a
}

// bond reads how courses shift against each other, or which pattern is laid.
func (r *resolver) bond(p path, b Bond, tile TileSize, joints []length.Length) BondRule {
	before := len(r.faults)
	words := make([]string, len(Bonds))
	for i, k := range Bonds {
		words[i] = string(k)
	}
	rule := BondRule{Kind: BondKind(r.choice(value{p.dot("kind"), b.Kind}, words...)), Den: 1}
	if b.Along != "" {
		rule.Plumb = r.choice(value{p.dot("along"), b.Along}, "level", "plumb") == "plumb"
	}
	switch rule.Kind {
	case Stack:
		r.unused("courses of a stack bond do not shift", value{p.dot("offset"), b.Offset}, value{p.dot("hand"), b.Hand})
	case Running:
		rule.Num, rule.Den = r.offset(value{p.dot("offset"), b.Offset})
		rule.Hand = r.hand(value{p.dot("hand"), b.Hand}, rule)
	}
	if rule.Kind != "" {
		r.pattern(p, b, &rule, tile, joints)
	}
	if len(r.faults) == before {
		r.sheeted(path(strings.TrimSuffix(string(p), "bond"))+"tile.sheet", rule, tile, joints...)
	}
	return rule
}

// offset reads the part of the pitch by which courses shift. Without one the
// bond is a half bond.
func (r *resolver) offset(v value) (num, den int64) {
	const finest = 100
	if v.text == "" {
		return 1, 2
	}
	num, den, err := length.ParseFraction(v.text)
	var refused *length.ParseError
	switch {
	case errors.As(err, &refused):
		r.faults.add(v.path, quote(v.text)+", which "+refused.Problem, refused.Want)
	case num == 0 || num == den || den > finest:
		r.faults.add(v.path, quote(v.text), "a part of the pitch between 0 and 1, no finer than 1/100, such as 1/3")
	default:
		return num, den
	}
	return 1, 2
}

// hand reads the side to which courses step. In a half bond both sides are
// the same, so none is left to choose.
func (r *resolver) hand(v value, rule BondRule) Hand {
	if v.text == "" {
		if rule.Num*2 == rule.Den {
			return Left
		}
		return Free
	}
	if r.choice(v, "left", "right") == "right" {
		return Right
	}
	return Left
}
