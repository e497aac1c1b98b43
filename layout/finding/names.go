package finding

// Name is the short name of a rule, by which findings are told apart.
type Name string

// The rules by theme; what each means stands with it.
const (
	CuttingDust           Name = "cutting dust"
	WetSawAndPower        Name = "wet saw and power"
	OldWalls              Name = "old walls"
	BackingAndMembrane    Name = "backing and membrane"
	TubDeflects           Name = "tub deflects"
	FirstCourseMustHarden Name = "first course must harden"
	GrabBars              Name = "grab bars"

	BareWall                    Name = "bare wall"
	UnworkablePiece             Name = "unworkable piece"
	Sliver                      Name = "sliver"
	EdgeOffTheJointLines        Name = "edge off the joint lines"
	HoleNearAnEdge              Name = "hole near an edge"
	SmallEndInEverySecondCourse Name = "small end in every second course"
	NotProvenBest               Name = "not proven best"

	DriftOfTheCourses Name = "drift of the courses"

	SealantGap              Name = "sealant gap"
	RimOutOfLevel           Name = "rim out of level"
	HeightOfTheWetWall      Name = "height of the wet wall"
	TilePastTheTub          Name = "tile past the tub"
	SoftJoints              Name = "soft joints"
	RimNearlyLevel          Name = "rim nearly level"
	RakeAtTheBase           Name = "rake at the base"
	MovementJointInTheField Name = "movement joint in the field"
	StepOfTheHead           Name = "step of the head"
	HeadOverTheCeiling      Name = "head over the ceiling"

	OpeningsRunIntoEachOther Name = "openings run into each other"
	NicheAtTheTilesEdge      Name = "niche at the edge of the tile"
	OpeningAtTheTilesEdge    Name = "opening at the edge of the tile"
	LargeHoleInOneTile       Name = "large hole in one tile"
	NicheWiderThanAStudBay   Name = "niche wider than a stud bay"
	WindowGlass              Name = "window glass"
	NicheSill                Name = "niche sill"
	GapRoundAPipe            Name = "gap round a pipe"
	CutStuds                 Name = "cut studs"

	SmallPieceInAnOpening    Name = "small piece in an opening"
	FallOfASill              Name = "fall of a sill"
	SoftJointsInANiche       Name = "soft joints in a niche"
	NicheInAnOutsideWall     Name = "niche in an outside wall"
	WallBehindANiche         Name = "wall behind a niche"
	LinedOverTheTile         Name = "lined over the tile"
	WaterproofingInAnOpening Name = "waterproofing in an opening"

	LegLeftOut Name = "leg left out"

	MitredEdges       Name = "mitred edges"
	EdgeInPlainSight  Name = "edge in plain sight"
	ProfileAtACorner  Name = "profile at an outside corner"
	BondRoundACorner  Name = "bond round an outside corner"
	WaterRoundACorner Name = "water round an outside corner"
	FallOfATop        Name = "fall of a top"

	LevelTop            Name = "level top"
	SmallPieceOnATop    Name = "small piece on a top"
	StripBetweenTrim    Name = "strip between trim"
	SoftJointsOfATop    Name = "soft joints of a top"
	SizeOfASeat         Name = "size of a seat"
	WaterproofingOfATop Name = "waterproofing of a top"

	CoveFoot Name = "foot of a cove"

	StripStandsProud   Name = "strip stands proud"
	PipeAtStripEdge    Name = "pipe at the edge of a strip"
	StripBesideAValve  Name = "strip beside a valve"
	SmallPieceInAStrip Name = "small piece in a strip"
	CutBesideAStrip    Name = "tile cut beside a strip"

	BarNearAPipe            Name = "grab bar near a pipe"
	HoleNearAJoint          Name = "hole of a fixture near a joint"
	FixtureOffTheTile       Name = "fixture off the tile"
	FixtureOffTheJointLines Name = "fixture off the joint lines"
	HeightOfAGrabBar        Name = "height of a grab bar"
	SoapDishInTheTile       Name = "soap dish in the tile"
	FixtureBlocking         Name = "blocking for a fixture"

	SmallPieceOfTrim Name = "small piece of trim"
	ShallowProfile   Name = "shallow profile"
	ProudTrim        Name = "trim and tile of different thickness"
	MitredTrim       Name = "mitred trim"

	SheetLines          Name = "lines between sheets"
	NarrowStripOfASheet Name = "narrow strip of a sheet"

	BandHalvesTheWall   Name = "band at half the wall"
	BandStandsProud     Name = "band stands proud"
	BandEndsInAnOpening Name = "band ends in an opening"

	SetCoursesThatTheJointsCannotTakeUp Name = "set courses that the joints cannot take up"
	SetCourseOutOfLevel                 Name = "set course out of level"
	SetCoursesOfTwoWallsApart           Name = "set courses of two walls apart"
	NumberOfASetCourse                  Name = "number of a set course"
	FreeMarkWhereTileStands             Name = "free mark where tile stands"
	PinGivenUpToSetTile                 Name = "pin given up to set tile"

	OffsetOfLongTile              Name = "offset of long tile"
	JointAgainstVariation         Name = "joint against variation"
	JointMinimum                  Name = "joint minimum"
	JointOfLongTileInAnOffsetBond Name = "joint of long tile in an offset bond"
	JointMinimumNewHomesUK        Name = "joint minimum, new homes (UK)"
	JointMinimumSmallTileUK       Name = "joint minimum, small tile (UK)"
	JointMinimumLargeTileUK       Name = "joint minimum, large tile (UK)"
	JointMinimumSingapore         Name = "joint minimum (Singapore)"
	TileMeasuredFarFromItsSize    Name = "tile measured far from its size"
	FlatWall                      Name = "flat wall"
	Lippage                       Name = "lippage"
	MortarContact                 Name = "mortar contact"
)
