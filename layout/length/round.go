package length

// RoundTo gives the multiple of step nearest to l; a tie goes away from zero,
// so that -l rounds to the opposite of l. It is the only place where a length
// is rounded to the nearest. A step of zero or less leaves l as it is.
func (l Length) RoundTo(step Length) Length {
	if step <= 0 {
		return l
	}
	if l < 0 {
		return -(-l).RoundTo(step)
	}
	return (l + step/2).FloorTo(step)
}

// FloorTo gives the greatest multiple of step that is not above l. A step of
// zero or less leaves l as it is.
func (l Length) FloorTo(step Length) Length {
	if step <= 0 {
		return l
	}
	return l - Mod(l, step)
}

// CeilTo gives the least multiple of step that is not under l. A step of zero
// or less leaves l as it is.
func (l Length) CeilTo(step Length) Length { return -(-l).FloorTo(step) }

// Abs gives the distance without its sign.
func (l Length) Abs() Length { return max(l, -l) }

// Half gives half of l, rounded down to the unit: Half of -1 is -1.
func (l Length) Half() Length { return l >> 1 }

// DivFloor tells how many times m goes into a, rounded down, so that
// a == DivFloor(a, m)*m + Mod(a, m). It wants m above zero.
func DivFloor(a, m Length) int64 { return int64((a - Mod(a, m)) / m) }

// Mod gives what is left of a after whole multiples of m, in [0, m), for a
// negative a too. It wants m above zero.
func Mod(a, m Length) Length {
	r := a % m
	if r < 0 {
		r += m
	}
	return r
}
