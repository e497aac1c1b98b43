package page

import "context"

// Foot is what stands at the foot of every page of a request.
type Foot struct {
	Data   string                                                  // where the data file is; empty for those whom it does not concern
	Filled func(context.Context) (size string, networkIsFull bool) // how much the jobs fill
}

type footKey struct{}

// WithFoot gives the pages of a request their foot.
func WithFoot(ctx context.Context, f Foot) context.Context {
	return context.WithValue(ctx, footKey{}, f)
}

func footOf(ctx context.Context) Foot {
	f, _ := ctx.Value(footKey{}).(Foot)
	return f
}
