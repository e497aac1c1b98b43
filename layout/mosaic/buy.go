package mosaic

import (
	"cmp"
	"slices"

	"coursewright/layout/survey"
)

// Bought is how many sheets a mosaic needs.
type Bought struct {
	Full  int // with all their tiles, some of them cut maybe
	Parts int // cut along their joints
	From  int // sheets that the parts are cut from
}

// Buy counts the sheets for some fields that are laid in one tile. A part of a sheet is
// the box round its tiles; several are cut from one sheet where they fit beside or over
// each other, each cut going from joint to joint through all of what it is made from.
func Buy(fields []Field) (b Bought) {
	var size survey.SheetSize
	var parts []part
	for _, f := range fields {
		size = f.Size
		for _, s := range f.Sheets {
			if !s.Parted(size) {
				b.Full++
			} else {
				parts = append(parts, part{s.Wide, s.High})
			}
		}
	}
	b.Parts, b.From = len(parts), len(fit(parts, size))
	return b
}

// part is so many tiles wide and high.
type part struct{ wide, high int }

// placed is a part where it lies on a sheet.
type placed struct {
	part
	at cell
}

// fit lays parts on as few sheets as it finds: the highest first, each where it leaves
// least beside it.
func fit(parts []part, size survey.SheetSize) (sheets [][]placed) {
	parts = slices.Clone(parts)
	slices.SortFunc(parts, func(a, b part) int { return cmp.Or(cmp.Compare(b.high, a.high), cmp.Compare(b.wide, a.wide)) })
	var left [][]placed // what is left of every sheet
	for _, p := range parts {
		sheet, rest := -1, -1
		for s := range left {
			for r, free := range left[s] {
				if free.wide >= p.wide && free.high >= p.high && (sheet < 0 || free.less(left[sheet][rest])) {
					sheet, rest = s, r
				}
			}
		}
		if sheet < 0 {
			sheet, rest = len(left), 0
			left, sheets = append(left, []placed{{part{size.Across, size.Up}, cell{}}}), append(sheets, nil)
		}
		free := left[sheet][rest]
		sheets[sheet] = append(sheets[sheet], placed{p, free.at})
		left[sheet] = append(slices.Delete(left[sheet], rest, rest+1), free.without(p)...)
	}
	return sheets
}

func (p placed) less(q placed) bool { return p.wide*p.high < q.wide*q.high }

// without is what is left of a stretch of sheet with a part taken from its lower left
// corner: two stretches, the larger as large as can be.
func (p placed) without(q part) (out []placed) {
	beside := placed{part{p.wide - q.wide, p.high}, cell{p.at.x + q.wide, p.at.y}}
	over := placed{part{p.wide, p.high - q.high}, cell{p.at.x, p.at.y + q.high}}
	if beside.less(over) {
		beside.high = q.high
	} else {
		over.wide = q.wide
	}
	for _, r := range []placed{beside, over} {
		if r.wide > 0 && r.high > 0 {
			out = append(out, r)
		}
	}
	return out
}

// Alike are parts of sheets that are as wide and as high, in one row of a list.
type Alike struct {
	Wide, High int
	Cut        bool // tiles of them are cut too
	Missing    int  // tiles that are taken out of them besides: round an opening or a step
	Sheets     []string
}

// Parts lists the sheets of a field that are cut along their joints, alike ones together,
// the largest first.
func (f Field) Parts() (all []Alike) {
	for _, s := range f.Sheets {
		if !s.Parted(f.Size) {
			continue
		}
		a := Alike{Wide: s.Wide, High: s.High, Cut: s.Cut > 0, Missing: s.Wide*s.High*max(1, f.Size.Each) - s.Whole - s.Cut}
		i := slices.IndexFunc(all, func(b Alike) bool {
			return a.Wide == b.Wide && a.High == b.High && a.Cut == b.Cut && a.Missing == b.Missing
		})
		if i < 0 {
			i, all = len(all), append(all, a)
		}
		all[i].Sheets = append(all[i].Sheets, s.ID)
	}
	slices.SortStableFunc(all, func(a, b Alike) int { return cmp.Compare(b.Wide*b.High, a.Wide*a.High) })
	return all
}

// OnSheets are the full sheets of which tiles are cut.
func (f Field) OnSheets() (ids []string) {
	for _, s := range f.Sheets {
		if !s.Parted(f.Size) && s.Cut > 0 {
			ids = append(ids, s.ID)
		}
	}
	return ids
}
