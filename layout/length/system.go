package length

// Unit gives the unit of a bare number: an inch or a millimetre.
func (s System) Unit() Length {
	if s == Metric {
		return Millimetre
	}
	return Inch
}

// Step gives what a usual tape shows: 1/16 in or 1 mm (common practice).
func (s System) Step() Length {
	if s == Metric {
		return Millimetre
	}
	return Inch / 16
}

// FineStep gives the step of the cut schedule: 1/32 in or 0.5 mm (common practice).
func (s System) FineStep() Length {
	if s == Metric {
		return Millimetre / 2
	}
	return Inch / 32
}

// Other gives the other system.
func (s System) Other() System { return 1 - s }

// String gives the unit of a bare number as it is written: "in" or "mm".
func (s System) String() string {
	if s == Metric {
		return "mm"
	}
	return "in"
}

// finest is the step of the readings that are proposed where one cannot be
// kept: 1/64 in or 0.1 mm.
func (s System) finest() Length {
	if s == Metric {
		return Millimetre / 10
	}
	return Inch / 64
}
