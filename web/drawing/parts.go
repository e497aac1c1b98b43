package drawing

// parts draws the walls one by one, each as a part of its own, after what is
// drawn already. What takes any room that is left, handles and flags, comes when
// the texts of all walls stand.
func (b *board) parts(frames []frame, draw func(i int), full bool, o Options) {
	scene := b.Elements
	each := make([][]Element, len(frames))
	for i := range frames {
		b.Elements = nil
		draw(i)
		each[i] = b.Elements
	}
	if o.Handles && !o.Finish {
		for _, f := range frames {
			b.handles(f, b.plan.Walls[f.wall], full)
		}
	}
	for i, f := range frames {
		b.Elements = each[i]
		if !o.Finish && !b.paper {
			b.doubts(f, b.plan.Walls[f.wall])
		}
		if !o.Finish && !o.NoFlags {
			b.flags(f, full)
		}
		from := len(scene)
		scene = append(scene, b.Elements...)
		part := Part{Wall: f.wall, From: from, To: len(scene), Origin: f.origin, Name: b.plan.Walls[f.wall].Found.Name}
		if o.Handles && !o.Finish {
			joints := jointsOf(b.plan, b.plan.Walls[f.wall])
			part.Joints = &joints
		}
		b.Parts = append(b.Parts, part)
	}
	b.Elements = scene
}
