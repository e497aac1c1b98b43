-- A revision can bear a name, old ones are thinned out, and a deleted job can be erased. What a revision holds is still never
-- changed. Of a job that is not deleted the first revision, the one shown and the named ones are never removed. Of one that is
-- removed between others the children go to its parent, and nowhere else.

CREATE TABLE name (
  revision INTEGER PRIMARY KEY,
  job      INTEGER NOT NULL,
  name     TEXT    NOT NULL,
  FOREIGN KEY (job, revision) REFERENCES revision (job, id)
) STRICT;

CREATE INDEX name_of_job ON name (job, revision);
CREATE INDEX tick_revision ON tick (job, revision);

DROP TRIGGER revision_is_never_changed;
DROP TRIGGER revision_is_never_removed;
DROP TRIGGER job_is_never_removed;

CREATE TRIGGER revision_is_never_changed BEFORE UPDATE OF id, job, title, document, saved ON revision
BEGIN SELECT RAISE (ABORT, 'a revision is never changed'); END;

CREATE TRIGGER revision_goes_to_its_grandparent BEFORE UPDATE OF parent ON revision
WHEN NEW.parent IS NOT (SELECT parent FROM revision WHERE id = OLD.parent)
BEGIN SELECT RAISE (ABORT, 'a revision goes to the parent of its parent alone'); END;

CREATE TRIGGER revision_that_counts_is_never_removed BEFORE DELETE ON revision
WHEN EXISTS (SELECT 1 FROM job WHERE id = OLD.job AND deleted IS NULL
             AND (OLD.parent IS NULL OR cursor = OLD.id OR OLD.id IN (SELECT revision FROM name)))
BEGIN SELECT RAISE (ABORT, 'the first, the shown and a named revision are never removed'); END;

CREATE TRIGGER job_is_never_removed BEFORE DELETE ON job
WHEN OLD.deleted IS NULL
BEGIN SELECT RAISE (ABORT, 'a job is never removed before it is marked as deleted'); END;

-- A pass lets one device of the network in. The device keeps a secret of 256 bits, the file its SHA-256 alone. Times are unix ms.

CREATE TABLE pass (
  id   INTEGER PRIMARY KEY AUTOINCREMENT,
  hash BLOB    NOT NULL UNIQUE,
  name TEXT    NOT NULL,
  made INTEGER NOT NULL,
  seen INTEGER NOT NULL -- the last day on which it came
) STRICT;
