// Package store keeps jobs in one SQLite file, as their inputs: the bytes of the job file, one
// row per revision. Plans are computed, never stored; of a plan the set-out is kept, beside the
// revision that gave it, so that a later version moves no marks on a wall.
//
// Laws, each with a test:
//
//  1. What a revision holds is never changed. It is removed by two things alone: by Thin, whose rule
//     keeps the first, the shown, the named and the ticked ones and the last of every day, and by
//     Erase, with the whole of a deleted job. The schema itself refuses the rest.
//  2. A job shows the revision under its cursor. Undo moves the cursor to the parent, Redo to the
//     newest child, across restarts; the two pass over what was thinned out.
//  3. An edit after an undo begins a new branch; the old one stays in the table.
//  4. An edit names the revision it was made on. If the job has moved on, nothing is written and
//     the answer is a *Conflict with what the job holds now.
//  5. What was answered is on disk: one public method is one transaction, synced before it returns.
//     It is in the file that stands at the path: if that or its log was deleted, moved away,
//     replaced or written over, the answer is an *Astray that names a rescue copy of what is open.
//  6. A file that is newer, damaged, not ours, or has the log of another beside it, is refused and
//     left as it was.
//  7. One process per file, by whatever name: the second is told where the first one is.
//  8. Ticks stand beside the revisions: only the person who made one takes it off.
//  9. No byte of an erased job is left in file and log; the backups that hold it are listed.
//
// 10. Of a pass the file holds a hash, from which the pass cannot be worked out.
//  11. The set-out of a revision is written once and never changed. To write it is no edit: the
//     job stays where it is.
//
// A missing or deleted job is fs.ErrNotExist; trouble with the disk is ErrFull or ErrUnavailable
// and leaves the old data intact.
//
// # Backups
//
// Backups stand in the folder FILE-backups: one a day (DailyBackup, the last seven are kept), and
// one before every migration. A backup is a whole data file and may be opened as it is. To put one
// back, end the program and call PutBack, which keeps the present file aside. By hand: move
// FILE, FILE-wal and FILE-shm away, all three (an old -wal beside a new FILE damages it), then
// copy the backup to FILE.
package store
