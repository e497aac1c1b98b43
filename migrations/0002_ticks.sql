-- A tick says that a piece has been set on the wall. It is no part of the job's inputs and of no revision, so undo does not
-- touch it. Its mark says what was set (wall, place and size) and is made by the page that shows it; the id and the revision
-- tell people which piece that was. Times are unix ms.

CREATE TABLE tick (
  job      INTEGER NOT NULL REFERENCES job (id),
  mark     TEXT    NOT NULL,
  piece    TEXT    NOT NULL,
  revision INTEGER NOT NULL,
  ticked   INTEGER NOT NULL,
  PRIMARY KEY (job, mark),
  FOREIGN KEY (job, revision) REFERENCES revision (job, id)
) STRICT, WITHOUT ROWID;
