package survey

// Prefer is what a person would rather have where opinion in the trade is
// split. Each moves one term of the order of merit.
type Prefer struct {
	LargeCuts bool // large cuts before full tiles at an open end
	Openings  bool // a built niche or window is the setting-out point (BS 5385-1:2018 7.1.5)
	Shared    bool // the cut at the rim and that at the head as much alike as can be
	FullHead  bool // full tiles at the head and the cut at the rim (ANSI A108-1999 ); with Shared it changes nothing
}

// Preferences are the words of the job file for the fields of Prefer.
func Preferences() []string { return []string{"large cuts", "openings", "shared", "full head"} }

// prefer reads the list of preferences; a word twice counts once.
func (r *resolver) prefer(p path, words []string) Prefer {
	var found Prefer
	for i, word := range words {
		switch r.choice(value{p.at(i), word}, Preferences()...) {
		case "large cuts":
			found.LargeCuts = true
		case "openings":
			found.Openings = true
		case "shared":
			found.Shared = true
		case "full head":
			found.FullHead = true
		}
	}
	return found
}
