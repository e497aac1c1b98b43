CREATE TABLE job (
  id      INTEGER PRIMARY KEY AUTOINCREMENT,
  cursor  INTEGER NOT NULL,
  created INTEGER NOT NULL,
  saved   INTEGER NOT NULL, -- when the cursor last moved
  deleted INTEGER,          -- null: not deleted
  FOREIGN KEY (id, cursor) REFERENCES revision (job, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;

CREATE TRIGGER job_is_never_removed BEFORE DELETE ON job
BEGIN SELECT RAISE (ABORT, 'a job is never removed, only marked as deleted'); END;

CREATE TABLE revision (
  id       INTEGER PRIMARY KEY AUTOINCREMENT,
  job      INTEGER NOT NULL REFERENCES job (id),
  parent   INTEGER, -- null: the revision the job began with
  title    TEXT    NOT NULL,
  document BLOB    NOT NULL,
  saved    INTEGER NOT NULL,
  UNIQUE (job, id),
  FOREIGN KEY (job, parent) REFERENCES revision (job, id)
) STRICT;

CREATE INDEX revision_children ON revision (parent, id);

CREATE TRIGGER revision_is_never_changed BEFORE UPDATE ON revision
BEGIN SELECT RAISE (ABORT, 'a revision is never changed'); END;

CREATE TRIGGER revision_is_never_removed BEFORE DELETE ON revision
BEGIN SELECT RAISE (ABORT, 'a revision is never removed'); END;

CREATE TABLE tick (
  job      INTEGER NOT NULL REFERENCES job (id),
  mark     TEXT    NOT NULL,
  piece    TEXT    NOT NULL,
  revision INTEGER NOT NULL,
  ticked   INTEGER NOT NULL,
  PRIMARY KEY (job, mark),
  FOREIGN KEY (job, revision) REFERENCES revision (job, id)
) STRICT, WITHOUT ROWID;
