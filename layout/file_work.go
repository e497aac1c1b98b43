package layout

import (
	"coursewright/layout/cuts"
	"coursewright/layout/takeoff"
)

type cutFile struct {
	ID     string   `json:"id"`
	Count  int      `json:"count"`
	Kind   string   `json:"kind"`
	Width  mm       `json:"width"`
	Height mm       `json:"height"`
	Pieces []string `json:"pieces"`

	Saws []sawFile `json:"saws,omitempty"` // of a pattern
}

type offcutFile struct {
	TilesCut   int         `json:"tilesCut"`
	TilesSaved int         `json:"tilesSaved"`
	LowerBound int         `json:"lowerBound"`
	Pairs      [][2]string `json:"pairs"`
}

type buyFile struct {
	Item    string  `json:"item"`
	Count   int     `json:"count"`
	Least   int     `json:"least,omitempty"`
	Unit    string  `json:"unit"`
	Net     int     `json:"net"`
	Spare   int     `json:"spare"`
	Boxes   int     `json:"boxes,omitempty"`
	Price   float64 `json:"price,omitempty"`
	Because string  `json:"because"`
}

// addWork adds the cut schedule, the off-cuts used twice and what to buy.
func (p Plan) addWork(d *planFile) {
	s := cuts.Of(cuts.Input{Room: p.Room, Walls: p.Walls}, cuts.For(p.Room))
	d.Cuts = []cutFile{}
	for _, g := range s.Groups {
		d.Cuts = append(d.Cuts, cutFile{g.ID, g.Count, g.Kind, g.Size.Width.Millimetres(), g.Size.Height.Millimetres(), g.Pieces, sawsOf(g)})
	}
	d.Mitres = mitresOf(s, p.Walls)
	d.Offcuts = offcutFile{s.Offcuts.TilesCut, s.Offcuts.TilesSaved, s.Offcuts.LowerBound, s.Offcuts.Pairs}
	if d.Offcuts.Pairs == nil {
		d.Offcuts.Pairs = [][2]string{}
	}
	d.Mosaic = p.mosaicOf(s.Mosaic)
	d.Takeoff = []buyFile{}
	t := takeoff.Of(takeoff.Input{Room: p.Room, Walls: p.Walls, Cuts: s.Offcuts, Others: s.Others}, takeoff.For(p.Room))
	for _, l := range t.Lines {
		d.Takeoff = append(d.Takeoff, buyFile{l.Item, l.Count, l.Least, l.Unit, l.Net, l.Spare, l.Boxes, float64(l.Cents) / 100, l.Because})
	}
}
