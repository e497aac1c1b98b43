package layout

import "coursewright/layout/merit"

// helpFile is a change of the job and what it would give: use is what to type, by
// the paths of the job's fields; before and after are the figures of the term that
// decides, of a near miss how many tiles are needed.
type helpFile struct {
	Kind     string            `json:"kind"`
	Text     string            `json:"text"`
	Use      map[string]string `json:"use"`
	Term     string            `json:"term,omitempty"`
	Before   string            `json:"before"`
	After    string            `json:"after"`
	Cost     string            `json:"cost,omitempty"`  // what would be worse
	Tiles    int               `json:"tiles,omitempty"` // how many fewer are needed
	Smallest *leastFile        `json:"smallest,omitempty"`
}

// help lists what would help; nil where nobody asked.
func (p Plan) help() []helpFile {
	if p.Help == nil {
		return nil
	}
	out := []helpFile{}
	for _, r := range p.Help.Remedies {
		f := helpFile{Kind: string(r.Kind), Text: r.Text, Use: map[string]string{}, Before: r.Before, After: r.After, Cost: r.Cost, Tiles: r.Tiles}
		for _, u := range r.Use {
			f.Use[u.Path] = u.Text
		}
		if r.Term != merit.None {
			f.Term = r.Term.String()
		}
		if l := r.Least; l.Piece != "" {
			f.Smallest = &leastFile{r.Wall, l.Piece, l.Size.Millimetres(), round(l.Share)}
		}
		out = append(out, f)
	}
	return out
}

// untried lists what may help as well, where it was asked for.
func (p Plan) untried() []string {
	if p.Help == nil {
		return nil
	}
	return p.Help.Untried
}
