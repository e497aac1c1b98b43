package work

import "strings"

// hint is the short help of a field of the settings, which stands behind its "?".
type hint struct{ path, title, says string }

var hints = []hint{
	{"work.kerf", "Kerf", "How much of the tile a cut takes away: the width of the blade. A tile that is scored and snapped loses nothing."},
	{"work.least", "Least piece from an off-cut", "Smaller pieces are cut from a whole tile. A small off-cut is hard to hold at the saw."},
	{"work.turn", "Tiles may be turned", "Whether an off-cut may be turned round to give a second piece. Not with veins, a print or an edge that shows which way is up."},
	{"work.breakage", "Breakage", "Bought beside the tiles that are counted, for those that break, come chipped or are cut wrong."},
	{"work.allowance", "Spare on grout and the like", "For what stays in the pail or is spilt: on grout, sealant, sheets and spacers."},
	{"work.notch", "Notch of the trowel", "How wide and deep the teeth are. They say how much mortar a tile takes; the maker of the mortar says which for which tile."},
	{"work.niche.depth", "Depth of the returns", "From the front edge of the niche to its back. Left empty, nothing is bought for its inside."},
	{"work.niche.back", "Tile on the back", "Whether tile is bought for the back of the niche as well."},
	{"work.niche.trim", "Trim round the opening", "Whether trim is bought for the four edges of the opening."},
	{"work.niche.tile.width", "Width of its own tile", "Where the inside of the niche has another tile than the wall: the true size of that."},
	{"work.niche.tile.height", "Height of its own tile", "Where the inside of the niche has another tile than the wall: the true size of that."},
	{"work.holds", "Mortar holds the tile by itself", "A mortar made against slip, by its data sheet, with the weight of this tile. Nothing waits then for the first course to harden."},
	{"work.hours.first", "First course, to harden", "Hours until other courses may stand on it. What the maker of the mortar says comes first; in the cold it takes longer."},
	{"work.hours.grout", "Last tile to grout", "Hours until one may grout. What the maker of the mortar says comes first; in the cold it takes longer."},
	{"work.hours.sealant", "Grout to soft joints", "Hours until sealant may be put into the corners and over the rim. What the maker of the grout says comes first."},
	{"work.hours.water", "Sealant to first shower", "Hours until water may come to it. What the makers of sealant and grout say comes first."},
}

func (h hint) id() string { return "hint-" + strings.ReplaceAll(h.path, ".", "-") }

// hintAt names the hint of a field; empty where it has none.
func hintAt(path string) string {
	for _, h := range hints {
		if h.path == path {
			return h.id()
		}
	}
	return ""
}
