package piece

import (
	"cmp"

	"coursewright/layout/length"
)

// Share is a size as a part of the full tile, an exact fraction. The zero
// value means nothing; Half is the most that the order of merit counts.
type Share struct{ Num, Den int64 }

// Half is half a tile: nothing under it if it can be helped.
var Half = Share{1, 2}

// Part is size as a share of full.
func Part(size, full length.Length) Share { return Share{int64(size), int64(full)} }

// Less compares two shares exactly.
func (s Share) Less(t Share) bool { return s.Num*t.Den < t.Num*s.Den }

// Compare orders shares, the smaller first.
func (s Share) Compare(t Share) int { return cmp.Compare(s.Num*t.Den, t.Num*s.Den) }

// Min is the smaller of two shares.
func (s Share) Min(t Share) Share {
	if t.Less(s) {
		return t
	}
	return s
}

// Max is the greater of the two.
func (s Share) Max(t Share) Share {
	if s.Less(t) {
		return t
	}
	return s
}

// Float is the share as a number, for showing.
func (s Share) Float() float64 {
	if s.Den == 0 {
		return 0
	}
	return float64(s.Num) / float64(s.Den)
}
