package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"

	"coursewright/store"
)

// backup copies the data file into a new one.
func (p *program) backup(ctx context.Context, args []string) int {
	flags := newFlags("backup")
	data := flags.String("data", "", "data file")
	files, err := filesOf(flags, args)
	if err != nil {
		return p.misuse("%v.", err)
	}
	if len(files) != 1 {
		return p.misuse("backup takes the name of one new file.")
	}
	path, err := orUsual(*data)
	if err != nil {
		return p.fail(err)
	}
	err = store.BackupOf(ctx, path, files[0])
	if errors.Is(err, fs.ErrExist) {
		err = fmt.Errorf("%s is there already: name a new file", files[0])
	}
	if err != nil {
		return p.fail(err)
	}
	fmt.Fprintf(p.Out, "%s is now a copy of %s.\n", files[0], path)
	return 0
}
