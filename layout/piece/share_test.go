package piece

import (
	"math/big"
	"testing"

	"coursewright/layout/length"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Shares are compared exactly, as the standard library's fractions are.
func TestSharesCompareAsFractions(t *testing.T) {
	share := rapid.Custom(func(t *rapid.T) Share {
		return Part(length.Length(rapid.IntRange(0, 600_000).Draw(t, "size")), length.Length(rapid.IntRange(1, 600_000).Draw(t, "full")))
	})
	rapid.Check(t, func(t *rapid.T) {
		a, b := share.Draw(t, "a"), share.Draw(t, "b")
		p, q := big.NewRat(a.Num, a.Den), big.NewRat(b.Num, b.Den)
		require.Equal(t, p.Cmp(q) < 0, a.Less(b))
		require.Equal(t, p.Cmp(q) > 0, b.Less(a))
		require.Equal(t, p.Cmp(q), a.Compare(b))
		least, most := a.Min(b), a.Max(b)
		require.False(t, most.Less(least))
		require.Zero(t, new(big.Rat).Sub(new(big.Rat).Add(p, q), new(big.Rat).Add(big.NewRat(least.Num, least.Den), big.NewRat(most.Num, most.Den))).Sign())
		float, _ := p.Float64()
		require.InDelta(t, float, a.Float(), 1e-12)
	})
}

// By hand: 49 of 100 is under a half, 50 is not; the zero share is a share of nothing.
func TestSharesByHand(t *testing.T) {
	require.True(t, Part(49, 100).Less(Half))
	require.False(t, Part(50, 100).Less(Half))
	require.False(t, Half.Less(Part(1, 2)))
	require.Equal(t, 0.5, Half.Float())
	require.Zero(t, Share{}.Float())
}
