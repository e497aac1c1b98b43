package merit

import (
	"slices"

	"coursewright/layout/piece"
)

// Third is the share under which a run is poor; from half a tile on none is judged.
var (
	fifth = piece.Share{Num: 1, Den: 5}
	Third = piece.Share{Num: 1, Den: 3}
)

// AddRun adds what a run of some share is judged by in terms 4 and 7. The list of runs is put in
// order by whoever has added the last one.
func (s *Sight) AddRun(share piece.Share) {
	s.poor(share, 1)
	if share.Less(piece.Half) {
		s.Runs = append(s.Runs, share)
	}
}

// DropRun takes a run out again.
func (s *Sight) DropRun(share piece.Share) {
	if i := slices.Index(s.Runs, share); i >= 0 {
		s.Runs = slices.Delete(s.Runs, i, i+1)
		s.poor(share, -1)
	}
}

func (s *Sight) poor(share piece.Share, n int) {
	if share.Less(fifth) {
		s.Fifths += n
	}
	if share.Less(Third) {
		s.Thirds += n
	}
}
