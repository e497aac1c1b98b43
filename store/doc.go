// Package store keeps jobs in one SQLite file, as their inputs: the bytes of the job file, one
// row per revision. Plans are computed, never stored.
//
// Laws, each with a test:
//
//  1. A revision is never changed nor removed; the schema itself refuses it.
//  2. A job shows the revision under its cursor. Undo moves the cursor to the parent, Redo to the
//     newest child, across restarts.
//  3. An edit after an undo begins a new branch; the old one stays in the table.
//  4. An edit names the revision it was made on. If the job has moved on, nothing is written and
//     the answer is a *Conflict with what the job holds now.
//  5. What was answered is on disk: one public method is one transaction, synced before it returns.
//  6. A file that is newer, damaged or not ours is refused and left as it was.
//  7. One process per file: the second is told where the first one is.
//  8. Ticks stand beside the revisions: only the person who made one takes it off.
//
// A missing or deleted job is fs.ErrNotExist; trouble with the disk is ErrFull or ErrUnavailable
// and leaves the old data intact.
//
// # Backups
//
// Backups stand in the folder FILE-backups: one a day (DailyBackup, the last seven are kept), and
// one before every migration. A backup is a whole data file and may be opened as it is. To put one
// back, end the program and call PutBack, which moves the present file aside first. By hand: move
// FILE, FILE-wal and FILE-shm away, all three (an old -wal beside a new FILE damages it), then
// copy the backup to FILE.
package store
