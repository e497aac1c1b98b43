package main

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"time"

	"coursewright/store"
)

// restore puts a backup in the place of the data file, which is moved aside.
func (p *program) restore(_ context.Context, args []string) int {
	flags := newFlags("restore")
	data := flags.String("data", "", "data file")
	files, err := filesOf(flags, args)
	if err != nil {
		return p.misuse("%v.", err)
	}
	if len(files) != 1 {
		return p.misuse("restore takes one backup file.")
	}
	path, err := orUsual(*data)
	if err != nil {
		return p.fail(err)
	}
	aside, err := store.PutBack(files[0], path, time.Now())
	if err != nil {
		return p.fail(err)
	}
	fmt.Fprintf(p.Out, "%s is now a copy of %s.\n", path, files[0])
	if aside != "" {
		fmt.Fprintf(p.Out, "What stood there is kept in %s.\n", aside)
	}
	fmt.Fprintln(p.Out, "Passes of phones and tablets are not put back: with --lan they ask for the code once more.")
	return 0
}

// wayBack says how a refused data file is replaced by its newest backup, if it has one.
func wayBack(err error) string {
	var refused *store.Refused
	if !errors.As(err, &refused) || refused.Backup == "" {
		return ""
	}
	return fmt.Sprintf("To go on from the newest backup, and keep this file beside it:\n  coursewright restore %s --data %s\n",
		quoted(refused.Backup), quoted(refused.Path))
}

// quoted writes a path so that a shell takes it as one word.
func quoted(path string) string {
	return "'" + strings.ReplaceAll(path, "'", `'\''`) + "'"
}
