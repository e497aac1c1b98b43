package store

import (
	"hash/maphash"
	"io"
	"os"
	"time"
)

// A program that copies another file over the data file, or cuts it or its log short, leaves both where
// they are, with their numbers. SQLite notices nothing of it and mixes what it finds with what it has
// in its log. So how the two were left is noted whenever something was written, and compared before
// anything is written again.

// left is how file and log were left when something was written last; nothing is known of an empty one.
type left struct {
	file content
	log  start
}

// content tells what is in a file, whenever it was changed.
type content struct {
	size    int64
	changed time.Time
	sum     uint64
	fresh   bool // read so soon after it was changed that it may have been changed again in the same tick
}

// tick is how far apart two changes may be that a disk notes as one: two seconds on FAT, a few
// thousandths on others (from memory).
const tick = 2 * time.Second

// start tells which log a log is: SQLite puts salt into its first bytes whenever it begins the log anew, and makes
// it no shorter without that. "WAL Header Format", section 4.1, sqlite.org/fileformat2.html.
type start struct {
	size int64
	head [32]byte
}

var seed = maphash.MakeSeed()

// contentOf reads a file through only where it was changed since it was read last, or may have been.
func contentOf(f *os.File, last content) (content, error) {
	info, err := f.Stat()
	if err != nil || info.Size() == last.size && info.ModTime().Equal(last.changed) && !last.fresh {
		return last, err
	}
	fresh := time.Since(info.ModTime()) < tick
	var sum maphash.Hash
	sum.SetSeed(seed)
	_, err = io.Copy(&sum, io.NewSectionReader(f, 0, info.Size()))
	return content{info.Size(), info.ModTime(), sum.Sum64(), fresh}, err
}

// startOf is noLog where none stands.
func startOf(path string) (s start) {
	f, err := os.Open(path)
	if err != nil {
		return noLog
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil {
		s.size = info.Size()
	}
	_, _ = f.ReadAt(s.head[:], 0) // what is missing stays empty
	return s
}

var noLog = start{size: -1}

// wrote notes how file and log were left. Its caller has the connection, so that nothing else of this
// program writes meanwhile.
func (h *held) wrote() {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.over {
		return
	}
	if now, err := contentOf(h.file, h.left.file); err == nil {
		h.left.file = now
	}
	h.left.log = startOf(h.path + "-wal")
}

// writtenOver tells whether another program has written over the file, or cut it or its log short. From
// then on the one in question counts as gone for good, and for the next process as another's.
// Its caller has the connection.
func (h *held) writtenOver() bool {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.over || h.left == (left{}) {
		return h.over
	}
	now, err := contentOf(h.file, h.left.file)
	log := startOf(h.path + "-wal")
	switch {
	case err == nil && (now.size != h.left.file.size || now.sum != h.left.file.sum):
		h.names.file = overwritten
	case log != noLog && (log.size < h.left.log.size || h.left.log.size > 0 && log.head != h.left.log.head):
		h.names.log = overwritten
	default:
		if err == nil {
			h.left.file = now
		}
		return false
	}
	h.over = true
	_ = h.sign(h.names) // it only serves to refuse the log at the next start
	return true
}

// overwritten stands in a note for the number of a file that is not any more what it was.
const overwritten = "written over"
