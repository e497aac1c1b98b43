package layout

import "reflect"

// FileType is the type whose JSON is the plan file, for those that describe it to other programs.
func FileType() reflect.Type { return reflect.TypeFor[planFile]() }
