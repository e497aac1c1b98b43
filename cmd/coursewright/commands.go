package main

import (
	"context"
	"fmt"
	"slices"
	"strings"
)

// verb is one of the things the program can be told to do.
type verb struct {
	name string
	line string // how it is called, after its name
	does string // in one line
	more string // what there is to know beside
	run  func(*program, context.Context, []string) int
}

// commands are all there are; serve is what the program does when none is named.
func commands() []verb {
	return []verb{
		{"serve", "[--listen 127.0.0.1:7310] [--data FILE] [--host NAME] [--lan] [--ask-everyone]",
			"serve the bench to a browser", serveHelp, (*program).serve},
		{"backup", "FILE [--data FILE]",
			"copy the data file, also while the program serves it", backupHelp, (*program).backup},
		{"restore", "BACKUP [--data FILE]",
			"put a backup in the place of the data file, which is kept aside", restoreHelp, (*program).restore},
		{"solve", "JOB.json",
			"print the plan file of a job", jobHelp, (*program).solve},
		{"draw", "JOB.json --wall NAME",
			"print the drawing of one wall as SVG", drawHelp, (*program).draw},
		{"sheets", "JOB.json -o FILE.pdf [--paper a4] [--kinds set-out,elevations,…] [--date 2026-03-01]",
			"print sheets to work by as one PDF", sheetsHelp, (*program).sheets},
		{"cuts", "JOB.json",
			"print the cut schedule as CSV", jobHelp, (*program).cuts},
		{"notices", "",
			"print the notices of all parts the program is built with", "", (*program).notices},
		{"version", "",
			"say which version this is", "", (*program).version},
		{"help", "[COMMAND]",
			"explain a command, as --help behind it does", "", (*program).help},
	}
}

const (
	serveHelp = `  --listen ADDRESS  where it listens, 127.0.0.1:7310 unless said otherwise; with port 0 the system picks a free one
  --data FILE       the data file, one SQLite file with all jobs
  --host NAME       a further name that browsers call this machine by, as behind a proxy; several with commas between
  --lan             let devices of the network in too: each shows a code once and keeps a pass, which is taken back on
                    the page Devices
  --ask-everyone    ask this machine for the code too, as where a proxy on it passes on what comes from elsewhere
`
	backupHelp = `  --data FILE       the data file to copy

FILE must not be there yet. A copy on another disk is what helps when this disk is lost.
`
	restoreHelp = `  --data FILE       the data file to replace

The program must not be serving it. What stood there is kept in a folder beside it, and named.
Passes of phones and tablets are not put back: one taken back since the backup was made stays so.
`
	jobHelp = `JOB.json may be - for standard input. A job that cannot be worked with is answered with one line for each fault,
which names the field and what would be right.
`
	drawHelp = `  --wall NAME       the wall to draw, by its name in the job

` + jobHelp
	sheetsHelp = `  -o FILE.pdf       the PDF to write; - for standard output
  --paper PAPER     a4, letter, a3 or tabloid; letter for a job in inches and a4 for one in mm unless said otherwise
  --kinds KINDS     which sheets, with commas between; all but full-size-pole and measuring unless said otherwise
  --date DATE       the date printed on the sheets, today unless said otherwise

` + jobHelp
	codes = `Exit codes: 0 done; 1 the job was refused or something went wrong; 2 the command line cannot be read.
`
)

// usage is what --help prints: every command in two lines.
func usage() string {
	var out strings.Builder
	out.WriteString("Coursewright works out where every tile of a tub or shower lands.\n\n")
	for _, v := range commands() {
		fmt.Fprintf(&out, "  %s\n      %s\n", v.call(), v.does)
	}
	fmt.Fprintf(&out, "\nJOB.json may be - for standard input. coursewright COMMAND --help says more of one command.\n%s%s", place(), codes)
	return out.String()
}

// call is how a command is typed.
func (v verb) call() string {
	name := v.name
	if name == "serve" {
		name = "[serve]"
	}
	return strings.TrimRight("coursewright "+name+" "+v.line, " ")
}

// explain is all there is to know of a command.
func (v verb) explain() []byte {
	out := fmt.Appendf(nil, "%s\n    %s\n\n%s", v.call(), v.does, v.more)
	if strings.Contains(v.line, "--data") {
		out = append(out, place()...)
	}
	return append(out, codes...)
}

// place says where the jobs are kept when nobody says otherwise.
func place() string {
	path, err := dataFile()
	if err != nil {
		return "The jobs are kept where --data says.\n"
	}
	return fmt.Sprintf("Unless --data says otherwise the jobs are kept in %s\n", path)
}

func named(name string) (verb, bool) {
	all := commands()
	i := slices.IndexFunc(all, func(v verb) bool { return v.name == name })
	if i < 0 {
		return verb{}, false
	}
	return all[i], true
}

// help explains the program or one command.
func (p *program) help(_ context.Context, args []string) int {
	if len(args) == 0 {
		return p.print([]byte(usage()))
	}
	v, found := named(args[0])
	if !found {
		return p.misuse("There is no command %q.", args[0])
	}
	return p.print(v.explain())
}
