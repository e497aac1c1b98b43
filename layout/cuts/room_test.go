package cuts

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// set is a job cut from where its lines happen to fall: free marks in the
// middle of their range, the course line and the starts at zero.
func set(t *testing.T, file string) Input {
	t.Helper()
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	room, faults := job.Resolve()
	require.Empty(t, faults)
	in := Input{Room: room}
	var pieces [][]piece.Piece
	var letters []string
	for _, w := range room.Walls {
		p := placed(w)
		shape := w.Shape(room.Units, p)
		bounds := shape.Region.Bounds()
		low, high := bounds.Bottom, bounds.Top
		if room.Bond.Plumb {
			low, high = bounds.Left, bounds.Right
		}
		cut, _ := piece.Cut(shape, bond.Of(room, survey.Left).Rows(0, 0, low, high), piece.RuleFor(room, survey.WallFound{}, shape.Sides))
		pieces, letters = append(pieces, cut), append(letters, w.Letter)
		in.Walls = append(in.Walls, plan.Wall{Found: w, Shape: shape, Start: plan.Start{Placed: p}})
	}
	piece.Number(pieces, letters, room.Bond.Plumb)
	for i := range in.Walls {
		in.Walls[i].Pieces = pieces[i]
	}
	return in
}

func placed(w survey.WallFound) survey.Placed {
	mid := func(s survey.Span) length.Length { return s.From + (s.To - s.From).Half() }
	p := survey.Placed{Left: mid(w.Left.Stops), Right: mid(w.Right.Stops), Head: mid(w.Head.Stops)}
	for _, o := range w.Openings {
		l, b := mid(o.Left), mid(o.Bottom)
		p.Openings = append(p.Openings, survey.Edges{Left: l, Bottom: b, Right: l + mid(o.Width), Top: b + mid(o.Height)})
	}
	return p
}

// The laws of Of and of pair on rooms as people survey them.
func TestRoomsKeepTheLaws(t *testing.T) {
	files, err := filepath.Glob("../../testdata/jobs/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			in := set(t, file)
			faces := map[string]piece.Piece{}
			for _, w := range in.Walls {
				for _, p := range w.Pieces {
					if !p.Whole {
						faces[p.ID] = p
					}
				}
			}
			cut := len(faces)
			s := Of(in, Usual(in.Room.Units))
			step := in.Room.Units.FineStep()
			require.Len(t, s.Cuts, cut)
			for _, c := range s.Cuts {
				b := faces[c.Piece].Face.Bounds()
				assert.True(t, c.Size.Width <= b.Width() && b.Width()-c.Size.Width < step, c.Piece)
				assert.True(t, c.Size.Height <= b.Height() && b.Height()-c.Size.Height < step, c.Piece)
				for _, side := range []length.Length{c.Size.Left, c.Size.Right} {
					assert.True(t, 0 <= side && side <= c.Size.Height, "%s: side %d", c.Piece, side)
				}
				for _, end := range []length.Length{c.Size.Bottom, c.Size.Top} {
					assert.True(t, 0 <= end && end <= c.Size.Width, "%s: end %d", c.Piece, end)
				}
			}
			for _, g := range s.Groups {
				assert.Len(t, g.Pieces, g.Count)
				for _, id := range g.Pieces {
					require.Contains(t, faces, id, "twice, or not a cut piece")
					b := faces[id].Face.Bounds()
					delete(faces, id)
					if g.How == Uncut {
						assert.True(t, g.Size.Width-b.Width() < step && g.Size.Height-b.Height() < step, id)
						continue
					}
					assert.LessOrEqual(t, g.Size.Width, b.Width(), "%s in %s", id, g.ID)
					assert.LessOrEqual(t, g.Size.Height, b.Height(), "%s in %s", id, g.ID)
					if g.How == Unworkable || g.How == InPlace && g.Spread == 0 {
						continue // each by itself
					}
					fence, name := g.Fence()
					place := b.Width()
					if name == "high" {
						place = b.Height()
					}
					assert.Less(t, place-fence, step+max(g.Spread, step), "%s in %s", id, g.ID)
				}
			}
			assert.LessOrEqual(t, len(s.Groups), 40, "lines")
			assert.Empty(t, faces, "pieces that stand in no group")
			assert.Equal(t, cut, s.Offcuts.TilesCut+s.Offcuts.TilesSaved)
			assert.GreaterOrEqual(t, s.Offcuts.TilesCut, s.Offcuts.LowerBound)
			assert.Equal(t, s, Of(in, Usual(in.Room.Units)), "the same plan gives the same schedule")
		})
	}
}
