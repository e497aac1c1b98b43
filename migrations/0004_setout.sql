-- A revision keeps the set-out it gave, so that a later version of the solver moves no marks on a wall: the JSON of layout/keep,
-- written once, when the revision is saved or first judged. Null: not judged yet, as are those of the versions before.

ALTER TABLE revision ADD COLUMN setout BLOB;

CREATE TRIGGER revision_keeps_its_setout BEFORE UPDATE OF setout ON revision
WHEN OLD.setout IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'the set-out of a revision is never changed'); END;
