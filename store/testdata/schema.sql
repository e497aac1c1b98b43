CREATE TABLE job (
  id      INTEGER PRIMARY KEY AUTOINCREMENT,
  cursor  INTEGER NOT NULL,
  created INTEGER NOT NULL,
  saved   INTEGER NOT NULL, -- when the cursor last moved
  deleted INTEGER,          -- null: not deleted
  FOREIGN KEY (id, cursor) REFERENCES revision (job, id) DEFERRABLE INITIALLY DEFERRED
) STRICT;

CREATE TRIGGER job_is_never_removed BEFORE DELETE ON job
WHEN OLD.deleted IS NULL
BEGIN SELECT RAISE (ABORT, 'a job is never removed before it is marked as deleted'); END;

CREATE TABLE name (
  revision INTEGER PRIMARY KEY,
  job      INTEGER NOT NULL,
  name     TEXT    NOT NULL,
  FOREIGN KEY (job, revision) REFERENCES revision (job, id)
) STRICT;

CREATE INDEX name_of_job ON name (job, revision);

CREATE TABLE pass (
  id   INTEGER PRIMARY KEY AUTOINCREMENT,
  hash BLOB    NOT NULL UNIQUE,
  name TEXT    NOT NULL,
  made INTEGER NOT NULL,
  seen INTEGER NOT NULL -- the last day on which it came
) STRICT;

CREATE TABLE returned (
  id       INTEGER PRIMARY KEY AUTOINCREMENT,
  job      INTEGER NOT NULL REFERENCES job (id),
  revision INTEGER NOT NULL,
  deleted  INTEGER NOT NULL,
  back     INTEGER NOT NULL
) STRICT;

CREATE INDEX returned_job ON returned (job, revision);

CREATE TABLE revision (
  id       INTEGER PRIMARY KEY AUTOINCREMENT,
  job      INTEGER NOT NULL REFERENCES job (id),
  parent   INTEGER, -- null: the revision the job began with
  title    TEXT    NOT NULL,
  document BLOB    NOT NULL,
  saved    INTEGER NOT NULL, setout BLOB,
  UNIQUE (job, id),
  FOREIGN KEY (job, parent) REFERENCES revision (job, id)
) STRICT;

CREATE INDEX revision_children ON revision (parent, id);

CREATE TRIGGER revision_goes_to_its_grandparent BEFORE UPDATE OF parent ON revision
WHEN NEW.parent IS NOT (SELECT parent FROM revision WHERE id = OLD.parent)
BEGIN SELECT RAISE (ABORT, 'a revision goes to the parent of its parent alone'); END;

CREATE TRIGGER revision_is_never_changed BEFORE UPDATE OF id, job, title, document, saved ON revision
BEGIN SELECT RAISE (ABORT, 'a revision is never changed'); END;

CREATE TRIGGER revision_keeps_its_setout BEFORE UPDATE OF setout ON revision
WHEN OLD.setout IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'the set-out of a revision is never changed'); END;

CREATE TRIGGER revision_that_counts_is_never_removed BEFORE DELETE ON revision
WHEN EXISTS (SELECT 1 FROM job WHERE id = OLD.job AND deleted IS NULL
             AND (OLD.parent IS NULL OR cursor = OLD.id OR OLD.id IN (SELECT revision FROM name)))
BEGIN SELECT RAISE (ABORT, 'the first, the shown and a named revision are never removed'); END;

CREATE TABLE tick (
  job      INTEGER NOT NULL REFERENCES job (id),
  mark     TEXT    NOT NULL,
  piece    TEXT    NOT NULL,
  revision INTEGER NOT NULL,
  ticked   INTEGER NOT NULL,
  PRIMARY KEY (job, mark),
  FOREIGN KEY (job, revision) REFERENCES revision (job, id)
) STRICT, WITHOUT ROWID;

CREATE INDEX tick_revision ON tick (job, revision);
