package setout

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
)

// search is the search for the best start on one wall and one course line.
type search struct {
	*field
	line    length.Length
	edges   []length.Length
	bounds  []Merit           // by edge, the most promising first
	of      func(Merit) Merit // what of a merit is compared
	weighed []*choice
	tried   *int // counts the starts weighed
	heads   func(edge length.Length) []headed
}

func (s *solver) search(w int, line length.Length, fromLine Merit, onTape bool) *search {
	f := s.fields[w]
	q := &search{field: f, line: line, edges: s.edges(w, line, onTape)}
	q.heads = func(edge length.Length) []headed {
		across, _ := f.frame(line, edge)
		return s.compiled(w, across, line)
	}
	byEdge := make(map[length.Length]Merit, len(q.edges))
	for _, e := range q.edges {
		b := f.startAxis.bound(e)
		b.Slivers = max(b.Slivers, fromLine.Slivers)
		b.CutPieces = max(b.CutPieces, fromLine.CutPieces)
		b.OffLine = fromLine.OffLine
		b.Smallest = b.Smallest.Min(fromLine.Smallest)
		byEdge[e] = b
	}
	slices.SortStableFunc(q.edges, func(a, b length.Length) int { o, _ := byEdge[a].Compare(byEdge[b]); return o })
	for _, e := range q.edges {
		q.bounds = append(q.bounds, byEdge[e])
	}
	q.weighed = make([]*choice, len(q.edges))
	return q
}

// best is the best start when a smallest cut over most counts no more.
func (q *search) best(most piece.Share) choice {
	capped := func(m Merit) Merit { m.Smallest = m.Smallest.Min(most); return q.of(m) }
	at := -1
	var best Merit
	for i, e := range q.edges {
		if at >= 0 && !capped(q.bounds[i]).Better(best) {
			continue
		}
		if q.weighed[i] == nil {
			*q.tried++
			c, ok := q.weighIf(q.line, e, q.heads(e), func(m Merit) bool {
				m.OffLine = max(m.OffLine, q.bounds[i].OffLine)
				return at < 0 || capped(m).Better(best)
			})
			if !ok {
				continue
			}

			q.weighed[i] = &c
		}
		m := capped(q.weighed[i].merit)
		if at < 0 || m.Better(best) || !best.Better(m) && e < q.edges[at] {
			best, at = m, i
		}
	}
	return *q.weighed[at]
}
