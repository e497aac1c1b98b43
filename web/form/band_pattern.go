package form

import "coursewright/layout/survey"

// Patterned tells whether a band is laid in a pattern, which is cut at the band's edges.
func Patterned(b survey.Band) bool {
	return !(survey.BondRule{Kind: survey.BondKind(b.Bond.Kind)}).Coursed()
}

// tidyBandPattern drops what the bond of a band has no use for, and gives a band that is
// laid in a pattern a height to begin with.
func tidyBandPattern(b *survey.Band, job survey.Job) {
	if b.ToHead || Patterned(*b) {
		b.Courses = 0
	}
	if b.ToHead || !Patterned(*b) {
		b.Height = ""
	} else if b.Height == "" {
		b.Height = pick(&job, "6", "150")
	}
	if b.Bond.Kind != "" {
		tidyPattern(&b.Bond, ofBand(&job, b))
	}
}
