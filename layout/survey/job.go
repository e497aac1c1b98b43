package survey

// Job is the job file: what a person typed, kept as typed. Every length is a
// string as people write it; Resolve reads them.
type Job struct {
	Format   string   `json:"format"`
	Title    string   `json:"title"`
	Units    string   `json:"units"` // "in" or "mm": the unit of a bare number
	Measured Measured `json:"measured,omitzero"`
	Tile     Tile     `json:"tile"`
	Joint    Measure  `json:"joint"` // one length, or the range of spacers of which the best is taken
	Bed      string   `json:"bed,omitempty"`
	Bond     Bond     `json:"bond"`
	Limits   Limits   `json:"limits,omitzero"`
	SetOrder []string `json:"setOrder,omitempty"`
	Prefer   []string `json:"prefer,omitempty"` // words of Preferences

	// Paths of fields: those that are true although they look odd, so that
	// nobody is asked about them again, and those that hold a guess until
	// somebody measures. A path that names no field, as after a wall was taken
	// away, means nothing.
	Confirmed []string `json:"confirmed,omitempty"`
	Guess     []string `json:"guess,omitempty"`

	Trims   []TrimTile `json:"trims,omitempty"` // trim set in pieces; ends and heads name it
	Walls   []Wall     `json:"walls,omitempty"`
	Bands   []Band     `json:"bands,omitempty"`
	Pins    Pins       `json:"pins,omitzero"`
	Held    *Held      `json:"held,omitempty"` // the set-out that stays as it is
	Work    Work       `json:"work,omitzero"`
	Grout   string     `json:"grout,omitempty"` // its colour, "#rrggbb"
	Choices []Choice   `json:"choices,omitempty"`
	Chosen  string     `json:"chosen,omitempty"` // the choice whose tile, joint, bond and pins stand above
}

// Format is the only job file format this program reads and writes.
const Format = "coursewright-job/1"

// Measured says how far the readings can be trusted.
type Measured struct {
	Tape  string `json:"tape,omitempty"`
	Doubt string `json:"doubt,omitempty"`
}

// Tile is one tile as it stands on the wall, true size. A sample of real tiles
// may take the place of the sizes typed.
type Tile struct {
	Name      string `json:"name,omitempty"`
	Width     string `json:"width"`
	Height    string `json:"height"`
	Thickness string `json:"thickness,omitempty"`
	Vary      string `json:"vary,omitempty"`
	Grain     bool   `json:"grain,omitempty"`
	Colour    string `json:"colour,omitempty"` // "#rrggbb"
	Box       *Box   `json:"box,omitempty"`

	Sheet  *Sheet  `json:"sheet,omitempty"`  // mosaic: bought and set by the sheet; a box then holds sheets
	Sample *Sample `json:"sample,omitempty"` // real tiles, measured
}

// Box is how the tile is sold.
type Box struct {
	Count int    `json:"count"`
	Area  string `json:"area,omitempty"` // what it covers, as it stands on the box
	Price string `json:"price,omitempty"`
}

// Bond is how courses shift against each other, or which pattern is laid.
type Bond struct {
	Kind   string `json:"kind"` // a word of Bonds
	Offset string `json:"offset,omitempty"`
	Hand   string `json:"hand,omitempty"`  // "left", "right"; empty: the solver chooses
	Along  string `json:"along,omitempty"` // "level" (default), "plumb"
	Turn   string `json:"turn,omitempty"`  // "45": a pattern of rectangles stands at 45°
	Angle  string `json:"angle,omitempty"` // of a chevron: how steep its long edges are, "30", "45" (default), "60"
	Tiles  []Tile `json:"tiles,omitempty"` // the tiles of a pattern beside the job's: dot, other heights, small square, modular sizes
}

// Limits are the person's own limits for slivers and sealant.
type Limits struct {
	Sliver  string `json:"sliver,omitempty"`
	Sealant string `json:"sealant,omitempty"`
}

// Wall is one flat wall seen from inside the room.
type Wall struct {
	Name     string    `json:"name"`
	Width    string    `json:"width"`
	Left     End       `json:"left"`
	Right    End       `json:"right"`
	Base     []Segment `json:"base,omitempty"`
	Head     Head      `json:"head"`
	Top      *Top      `json:"top,omitempty"` // the horizontal face on a wall that stops at a height
	Openings []Opening `json:"openings,omitempty"`
	Strips   []Strip   `json:"strips,omitempty"`
	Fixtures []Fixture `json:"fixtures,omitempty"`
	Set      *AsSet    `json:"set,omitempty"` // where the courses that stand really are

	Laid string `json:"laid,omitempty"` // of a wall no wider than a tile: "bond", or "single" tiles of its own width; default by merit
}

// End is one end of a wall: it meets a corner, inside or outside, or stops at a mark.
type End struct {
	Meets  string `json:"meets,omitempty"` // "corner", "outside corner", or "wall": the run of a wall, as a bench does between two
	Gap    string `json:"gap,omitempty"`
	Lean   []Lean `json:"lean,omitempty"`
	Stops  *Mark  `json:"stops,omitempty"`
	Finish string `json:"finish,omitempty"` // "trim", "bullnose", "casing"
	Trim   string `json:"trim,omitempty"`   // the name of one of Job.Trims
	Sight  string `json:"sight,omitempty"`  // "plain" (default), "low"

	// Of an outside corner, at the right end of the wall before it.
	Corner string `json:"corner,omitempty"` // "lap" (default), "mitre", "profile", "bullnose"
	Laps   string `json:"laps,omitempty"`   // of a lap or bullnose: the wall "left" or "right" of the corner; default the wider
	Angle  string `json:"angle,omitempty"`  // of a mitre: degrees between the walls, through what stands behind the tile; 90
}

// Lean is a reading of a corner: how far it stands to the right at a height.
type Lean struct {
	Height string `json:"height"`
	Off    string `json:"off"`
}

// Segment is a stretch of base of one kind, read from left to right.
type Segment struct {
	Meets    string `json:"meets"` // "tub", "shower base", "curb", "seat", "floor"
	Gap      string `json:"gap,omitempty"`
	Readings []Drop `json:"readings,omitempty"`
	Sight    string `json:"sight,omitempty"` // "plain", "low"; the default is in SegmentFound
	Trim     string `json:"trim,omitempty"`  // the name of one of Job.Trims, a cove
	Leg      string `json:"leg,omitempty"`   // of a floor beside a rim: "bond" (default), "single", "none", "best" of these by merit
}

// Drop is a reading down from the level line to the base.
type Drop struct {
	At   string `json:"at"`
	Drop string `json:"drop"`
}

// Head is where the tile ends at the top: it meets a ceiling or stops at a mark.
type Head struct {
	Meets    string `json:"meets,omitempty"` // "ceiling"
	Gap      string `json:"gap,omitempty"`
	Readings []Rise `json:"readings,omitempty"`
	Stops    *Mark  `json:"stops,omitempty"`
	Finish   string `json:"finish,omitempty"`
	Trim     string `json:"trim,omitempty"`  // the name of one of Job.Trims
	Sight    string `json:"sight,omitempty"` // "plain" (default), "low"
}

// Rise is a reading up from the level line to the ceiling.
type Rise struct {
	At   string `json:"at"`
	Rise string `json:"rise"`
}

// Opening is a niche, a window, a doorway or a pipe.
type Opening struct {
	Kind  string `json:"kind"` // "niche", "window", "doorway", "pipe"
	Name  string `json:"name"`
	Sight string `json:"sight,omitempty"` // "plain" (default), "low"

	// Niche and window; of a doorway left and width, both measured.
	Left   *Mark    `json:"left,omitempty"`
	Width  *Mark    `json:"width,omitempty"`
	Bottom *Mark    `json:"bottom,omitempty"`
	Height *Measure `json:"height,omitempty"` // a plain length of a pipe, its middle, and of a doorway, its top: over the level line
	Near   *Place   `json:"near,omitempty"`   // where the middle is wished
	Inside *Inside  `json:"inside,omitempty"` // what frames and lines it; left out: the hole in the wall alone

	// Pipe.
	At       string `json:"at,omitempty"`
	Diameter string `json:"diameter,omitempty"`
}

// Mark is a position or a size: measured (At) or free inside a range.
type Mark struct {
	At   string `json:"at,omitempty"`
	From string `json:"from,omitempty"`
	To   string `json:"to,omitempty"`
}

// Place is a point of a wall, {"x": L, "y": L}: x from the wall's left end, y
// over the level line. Either may be left out, where only the other is wished.
type Place struct {
	X string `json:"x,omitempty"`
	Y string `json:"y,omitempty"`
}

// Measure is a field that is a plain length or a mark: the height of a pipe or a doorway is
// plain and that of a niche or window a mark; a joint is plain or a range of
// spacers, {"from": L, "to": L}. Exactly one of the two is set.
type Measure struct {
	Mark  *Mark
	Plain string
}

// Pins are the unknowns a person has fixed.
type Pins struct {
	Course CoursePin          `json:"course,omitzero"`
	Walls  map[string]WallPin `json:"walls,omitempty"`
}

// CoursePin fixes the bottom edge of some course.
type CoursePin struct {
	Line string `json:"line,omitempty"`
}

// WallPin fixes a wall's start, or where one of its free marks goes. In the
// course whose bottom edge is the course line there stands at the place: the
// left edge of a tile (Edge), the middle of a joint or the middle of a tile.
// A mark is keyed as it is named in the plan: "end left", "end right", "head",
// or "niche NAME left", "window NAME top" and so on.
type WallPin struct {
	Edge  string            `json:"edge,omitempty"`
	Joint string            `json:"joint,omitempty"`
	Tile  string            `json:"tile,omitempty"`
	Marks map[string]string `json:"marks,omitempty"`

	Single bool `json:"single,omitempty"` // of a set-out that is held: laid in single tiles, where the job does not say

	// Of a set-out that is held, by the name of a strip from base to head: the left edge of a tile to the right of it, where
	// that does not go by the start of the wall.
	Beyond map[string]string `json:"beyond,omitempty"`

	Legs map[string]string `json:"legs,omitempty"` // of a set-out that is held: how its "left" and "right" leg is laid, where the job says best
}
