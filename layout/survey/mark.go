package survey

// MarkName is what a mark of a wall is called in a job's pins and in a plan.
type MarkName string

// The marks at which tile stops. Those of an opening are OpeningFound.Mark.
const (
	EndLeft  MarkName = "end left"
	EndRight MarkName = "end right"
	HeadMark MarkName = "head"
)

// EdgeName is one of the four edges of a niche or window.
type EdgeName string

// The edges of an opening.
const (
	LeftEdge   EdgeName = "left"
	RightEdge  EdgeName = "right"
	BottomEdge EdgeName = "bottom"
	TopEdge    EdgeName = "top"
)

// Mark is what an edge of the opening is called: “niche NAME left”.
func (o OpeningFound) Mark(e EdgeName) MarkName { return MarkName(o.Key() + " " + string(e)) }
