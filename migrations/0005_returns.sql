-- A deleted job that was brought back says so in its history, at the revision it showed. Of a revision that is thinned out
-- the line goes to the newest before it. Times are unix ms.

CREATE TABLE returned (
  id       INTEGER PRIMARY KEY AUTOINCREMENT,
  job      INTEGER NOT NULL REFERENCES job (id),
  revision INTEGER NOT NULL,
  deleted  INTEGER NOT NULL,
  back     INTEGER NOT NULL
) STRICT;

CREATE INDEX returned_job ON returned (job, revision);
