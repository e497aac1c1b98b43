package drawing

import (
	"slices"
	"strconv"
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/mosaic"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// foldScreen is the largest scale on a screen, so that a niche is not drawn larger
// than it needs to be read.
var foldScreen = Scale{Paper: 1, Real: 4}

// largest is the largest scale of a fold on a screen; the top of a wall is larger than a
// niche, and read at a smaller one.
func (f *fold) largest() Scale {
	if f.top != nil {
		return Scale{Paper: 1, Real: 6}
	}
	return foldScreen
}

// narrowScreen is the width under which a screen counts as narrow.
const narrowScreen = 560 * px

// fold is the drawing of an inside in the making: its faces folded out round the
// back, each seen from within.
type fold struct {
	*board
	in     plan.Inside
	top    *plan.Top // where it is the top of a wall, alone in the inside
	name   string
	kind   survey.Kind
	built  bool // it stands already, so that nothing is framed for it
	frames []frame
	scale  Scale
	narrow bool   // a narrow screen: the sides are named without their sizes
	room   Micron // how wide the heading may run
	apart  Micron // between two faces
	middle plane.Rect
}

// FoldOut draws the inside of an opening, its faces folded out: the back in the
// middle, the sides beside it, the sill under it and the top over it, with the
// sizes to cut in the pieces. Wall and inside must be indexes into the plan; any
// other gives an empty scene.
func FoldOut(p layout.Plan, wall, inside int, o Options) Scene {
	if wall < 0 || wall >= len(p.Walls) || inside < 0 || inside >= len(p.Walls[wall].Insides) {
		return Scene{}
	}
	in := p.Walls[wall].Insides[inside]
	found := p.Walls[wall].Found.Openings[in.Opening]
	f := &fold{in: in, kind: found.Kind, built: found.Inside != nil && found.Inside.Tolerance > 0, name: OpeningName(string(found.Kind), found.Name)}
	faces := p
	faces.Walls = nil
	for _, face := range in.Faces {
		faces.Walls = append(faces.Walls, face.Wall)
	}
	f.board = &board{plan: faces, texts: o.texts(wallTexts), mosaic: mosaicWithin(p, in.Faces), faces: in.Faces}
	f.Title = "Inside of " + f.name + ", " + in.Letter
	return f.drawn(wall, o)
}

// drawn draws the faces of a fold.
func (f *fold) drawn(wall int, o Options) Scene {
	f.narrow = !o.Sheet && o.wide() < narrowScreen
	f.room = o.wide()
	if o.Sheet {
		f.room = 160 * Millimetre
	}
	in := f.in
	f.lay(o)
	f.heading()
	f.single = f.picks(o)
	for i := range in.Faces {
		f.face(i)
	}
	if f.single {
		f.pickFaces(wall)
	}
	for _, is := range []survey.FaceName{survey.LeftFace, survey.RightFace, survey.BackFace, survey.SillFace, survey.TopFace, survey.WallTop} {
		for i := range in.Faces {
			if in.Faces[i].Is == is {
				f.named(i)
			}
		}
	}
	for i := range in.Faces {
		f.written(i)
	}
	f.Describe = f.story()
	return f.Scene.ofWall(wall)
}

// lay finds the scale and the place of every face.
func (f *fold) lay(o Options) {
	c := f.in.Clear
	f.middle = plane.Rect{Left: c.Left, Bottom: c.Bottom, Right: c.Right, Top: c.Top}
	if f.apart = 2 * leading(f.texts.note); f.top != nil { // it stands alone
		f.apart = leading(f.texts.note) / 2
	}
	left, right := f.deep(survey.LeftFace), f.deep(survey.RightFace)
	under, over := f.deep(survey.SillFace), f.deep(survey.TopFace)
	wide, high := left+f.middle.Width()+right, under+f.middle.Height()+over
	f.scale = o.Scale
	if f.scale == (Scale{}) {
		f.scale = fit(wide, o.wide()/2)
		f.scale = fit(wide, o.wide()-f.edges()).or(fit(high, o.high(wallHigh))).or(f.largest())
	}
	f.Scale = f.scale
	f.Width = max(f.edges()+f.scale.On(wide), f.headingWidth())
	top := f.headingHeight() + leading(f.texts.note)
	f.Height = top + f.scale.On(high) + 2*f.apart + leading(f.texts.note) + edgeRoom
	x := (f.Width - f.scale.On(wide) - 2*f.apart) / 2
	back := Point{x + f.scale.On(left) + f.apart, top + f.scale.On(over) + f.apart}
	for i, face := range f.in.Faces {
		at := back
		switch face.Is {
		case survey.LeftFace:
			at.X -= f.apart
		case survey.RightFace:
			at.X += f.apart
		case survey.SillFace:
			at.Y += f.apart
		case survey.TopFace:
			at.Y -= f.apart
		}
		// 0, 0 of the face in the plane of the wall, from the upper left corner of the back.
		at.X += f.scale.On(face.Origin.X - c.Left)
		at.Y += f.scale.On(c.Top - face.Origin.Y)
		f.frames = append(f.frames, frame{wall: i, origin: at, scale: f.scale})
	}
}

// deep is how deep a return is; nothing where it is not tiled.
func (f *fold) deep(is survey.FaceName) length.Length {
	face := f.in.Find(is)
	if face == nil {
		return 0
	}
	if box := face.Outline.Bounds(); is == survey.LeftFace || is == survey.RightFace {
		return box.Width()
	} else {
		return box.Height()
	}
}

// edges is what stands beside the faces, at both sides together.
func (f *fold) edges() Micron { return 4*edgeRoom + 2*f.apart + 2*f.nameRoom() }

// nameRoom is how far the longest name of a side runs past it.
func (f *fold) nameRoom() Micron {
	room := Micron(0)
	for i, face := range f.in.Faces {
		if face.Is == survey.LeftFace || face.Is == survey.RightFace {
			room = max(room, TextWidth(f.caption(i), f.texts.note)-f.scale.On(face.Outline.Bounds().Width()))
		}
	}
	return room
}

// heading names the inside and says how it is to be read.
func (f *fold) heading() {
	at := Point{edgeRoom, edgeRoom + rise(f.texts.name)}
	f.label(Label{Tag: Tag{Kind: Name, Wall: -1}, Text: f.title(), Size: f.texts.name, Bold: true, At: at, Colour: Black})
	at.Y += fall(f.texts.name) + rise(f.texts.note) + clearance
	for _, line := range f.lines() {
		f.label(Label{Tag: Tag{Kind: Name, Wall: -1}, Text: line, Size: f.texts.note, At: at, Colour: Grey})
		at.Y += leading(f.texts.note)
	}
}

func (f *fold) title() string {
	if f.top != nil {
		return f.in.Letter + ", " + f.name
	}
	return f.in.Letter + ", inside of " + f.name
}

func (f *fold) lines() []string {
	if f.top != nil {
		return f.topLines()
	}
	c := f.in.Clear
	size := "clear " + f.plain(c.Right-c.Left) + " × " + f.plain(c.Top-c.Bottom) + ", " + f.plain(f.in.Depth) + " deep"
	out := linesOf(size, f.texts.note, f.room-2*edgeRoom)
	if f.kind == survey.Niche && !f.built {
		r := f.in.Rough
		framed := "framed " + f.plain(r.Right-r.Left) + " × " + f.plain(r.Top-r.Bottom) + ": " + f.plain(r.Left) + " to " + f.plain(r.Right) +
			" from the left end, " + f.signed(r.Bottom) + " to " + f.signed(r.Top) + " from the level line"
		out = append(out, linesOf(framed, f.texts.note, f.room-2*edgeRoom)...)
	}
	return append(out, linesOf("folded out, each face seen from within · heavy edges: the front · sizes to cut", f.texts.note, f.room-2*edgeRoom)...)
}

func (f *fold) headingWidth() Micron {
	wide := TextWidth(f.title(), f.texts.name) * 11 / 10
	for _, line := range f.lines() {
		wide = max(wide, TextWidth(line, f.texts.note))
	}
	return wide + 2*edgeRoom
}

func (f *fold) headingHeight() Micron {
	return edgeRoom + leading(f.texts.name) + clearance + Micron(len(f.lines()))*leading(f.texts.note)
}

// face draws the pieces of one face, and its front edge heavy.
func (f *fold) face(i int) {
	face, at := &f.in.Faces[i], f.frames[i]
	if face.Slab {
		f.path(Tag{Kind: Whole, Wall: i, Piece: face.Pieces[0].ID}, Ink{Fill: White, Line: Black, Width: 500}, at.rings(face.Pieces[0].Face)...)
		f.trim(at, face.Wall)
	} else {
		f.pieces(at, face.Wall)
	}
	f.outline(at, face.Wall)
	a, z, is := front(face)
	if is {
		f.chain(Tag{Kind: Outline, Wall: i}, line(Black, 1200), at.at(a.X, a.Y), at.at(z.X, z.Y))
	}
}

// front is the edge of a return that comes to the room.
func front(face *plan.Face) (a, z plane.Point, is bool) {
	for _, ring := range face.Shape.Region {
		for i, c := range ring {
			if int(c.On) < len(face.Shape.Sides) && face.Shape.Sides[c.On].Name == "front" {
				return c.Point, ring[(i+1)%len(ring)].Point, true
			}
		}
	}
	return a, z, false
}

// caption names a face with its size between the faces that meet it.
func (f *fold) caption(i int) string {
	face := &f.in.Faces[i]
	box := face.Outline.Bounds()
	if f.narrow && (face.Is == survey.LeftFace || face.Is == survey.RightFace) {
		return face.Is.String()
	}
	if f.top != nil {
		return f.topCaption()
	}
	text := face.Is.String() + " " + f.bare(box.Width()) + " × " + f.bare(box.Height())
	if face.Is == survey.SillFace && f.in.Rise > 0 {
		text += ", falls " + f.fineRise() + " to the room"
	}
	return text
}

// fineRise is the fall of the sill to the fine step, up: what is less holds water.
func (f *fold) fineRise() string {
	u := f.plan.Room.Units
	return f.in.Rise.CeilTo(u.FineStep()).Fine(u)
}

// named writes the name of a face over it, with its size where that has room: at
// the sides outwards from their inner edge.
func (f *fold) named(i int) {
	face := &f.in.Faces[i]
	lo, hi := extent(f.frames[i].rings(face.Outline))
	name := Label{Tag: Tag{Kind: Name, Wall: i}, Text: f.caption(i), Size: f.texts.note, Colour: Black, At: Point{lo.X, lo.Y - fall(f.texts.note) - clearance}}
	if face.Is == survey.LeftFace {
		name.Anchor, name.At.X = Right, hi.X
	}
	plain := name
	if plain.Text = face.Is.String(); f.top != nil {
		plain.Text = string(f.top.Found.Kind)
	}
	f.offer(name, plain)
}

// written writes what the pieces of a face are cut to, and their numbers where
// there is room beside that.
func (f *fold) written(i int) {
	face, at := &f.in.Faces[i], f.frames[i]
	if face.Slab {
		p := face.Pieces[0]
		l := Label{Tag: Tag{Kind: Size, Wall: i, Piece: p.ID}, Colour: Black}
		f.fits(l, [][]string{{"slab " + f.bare(p.Wide) + " × " + f.bare(p.High)}, {f.bare(p.Wide), "× " + f.bare(p.High)}}, at.rings(p.Face), White)
		return
	}
	f.sizes(at, face.Wall, nil)
	f.trimSizes(at, face.Wall)
	if len(face.Pieces) > MostNumbered {
		return
	}
	for k := range face.Pieces {
		p := &face.Pieces[k]
		rings := at.rings(p.Face)
		lo, hi := extent(rings)
		ground := cutInk(CutKind(*p)).Fill
		l := Label{Tag: Tag{Kind: Note.on(ground), Wall: i}, Text: number(p.ID), Size: f.texts.least, Colour: textOn(ground),
			At: Point{lo.X + clearance + 400, hi.Y - fall(f.texts.least) - clearance}}
		if p.Kind&piece.Angle != 0 || p.Outline != nil && !boxed(p.Outline) { // its lower left corner may be a point
			for step := Micron(0); step < 8 && !clear(rings, l.box().from, l.box().to); step++ {
				l.At.X += (hi.X - lo.X) / 8
			}
		}
		if room := l.box(); room.to.X <= hi.X && room.from.Y >= lo.Y {
			f.offer(l)
		}
	}
}

// MostNumbered is up to how many pieces of a face bear their numbers; those of a
// mosaic would be a pattern of their own.
const MostNumbered = 40

// number is the last part of a piece's id, by which it is found on its face.
func number(id string) string {
	n, err := strconv.Atoi(id[strings.LastIndex(id, "-")+1:])
	if err != nil {
		return id
	}
	return strconv.Itoa(n)
}

// story tells in words what the drawing shows.
func (f *fold) story() string {
	var parts []string
	for i := range f.in.Faces {
		face := &f.in.Faces[i]
		cut := 0
		for _, p := range face.Pieces {
			if !p.Whole {
				cut++
			}
		}
		parts = append(parts, f.caption(i)+": "+counted(len(face.Pieces), "piece")+", "+counted(cut, "cut piece"))
	}
	return strings.Join(parts, "; ")
}

// ofWall says of every element that it belongs to one wall.
func (s Scene) ofWall(wall int) Scene {
	for i, e := range s.Elements {
		switch e := e.(type) {
		case Path:
			e.Wall = wall
			s.Elements[i] = e
		case Disc:
			e.Wall = wall
			s.Elements[i] = e
		case Label:
			e.Wall = wall
			s.Elements[i] = e
		case Tiles:
			e.Wall = wall
			s.Elements[i] = e
		}
	}
	return s
}

// backOf is the tiled back of an opening with the frame it is drawn in where one
// looks into it from the front, or nil.
func backOf(f frame, w layout.Wall, opening int) (*plan.Face, frame) {
	for k := range w.Insides {
		in := &w.Insides[k]
		if back := in.Find(survey.BackFace); in.Opening == opening && back != nil {
			return back, frame{wall: f.wall, scale: f.scale, origin: f.at(back.Origin.X, back.Origin.Y)}
		}
	}
	return nil, f
}

// seenWithin draws the pieces of a niche's back, so that the courses are seen to
// run through; those of bands in the shade that bands have on the wall.
func (b *board) seenWithin(f frame, w layout.Wall, opening int) {
	back, at := backOf(f, w, opening)
	if back == nil || len(back.Pieces) == 0 {
		return
	}
	ink := Ink{Fill: Pale, Line: Grout, Width: 180}
	for _, part := range at.byTint(back, func(p *piece.Piece) tint { return tint{laid: p.Laid} }) {
		if ink.Fill = Pale; part.laid > 0 {
			ink.Fill = b.laidColour(part.laid, White).darker()
		}
		b.path(Tag{Kind: Niche, Wall: f.wall}, ink, part.rings...)
	}
	b.sheeted(at, func(m *mosaic.Field) bool { return m.Face == back })
}

// finishedWithin draws them in the colour of their tile, in shade.
func (b *board) finishedWithin(f frame, w layout.Wall, opening int) {
	back, at := backOf(f, w, opening)
	if back != nil && len(back.Pieces) > 0 {
		b.path(Tag{Kind: Niche, Wall: f.wall}, fill(Colour(b.plan.Room.Grout).darker()), at.rings(back.Shape.Region)...)
		for _, part := range at.byTint(back, tintOf) {
			b.path(Tag{Kind: Niche, Wall: f.wall}, fill(Colour(plan.TileOf(b.plan.Room, back, part.first).Colour).darker()), part.rings...)
		}
	}
}

// tinted are the outlines of the pieces of a face that are of one tile.
type tinted struct {
	tint
	first *piece.Piece
	rings [][]Point
}

// byTint are the outlines of the pieces of a face by the tile that they are of.
func (f frame) byTint(face *plan.Face, of func(*piece.Piece) tint) (all []tinted) {
	for i := range face.Pieces {
		p := &face.Pieces[i]
		at := slices.IndexFunc(all, func(t tinted) bool { return t.tint == of(p) })
		if at < 0 {
			at, all = len(all), append(all, tinted{tint: of(p), first: p})
		}
		all[at].rings = append(all[at].rings, f.rings(p.Visible)...)
	}
	slices.SortFunc(all, func(a, b tinted) int { return compareTints(a.tint, b.tint) })
	return all
}
