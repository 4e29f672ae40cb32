package document

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"time"

	"bowline/model/car"
	"bowline/model/carfile"
)

const (
	recoverySuffix = ".recover"
	fallbackPrefix = "unsaved-"
)

// recovery is what a document keeps on disk of a modified car.
type recovery struct {
	fallback string            // where the car is kept when it cannot be kept beside its file
	written  map[string][]byte // what this document has written, by path
	car      *car.Car          // the car written last; nil for none
	closed   bool
}

func newRecovery(folder string) recovery {
	name := fmt.Sprintf("%s%016x%s", fallbackPrefix, rand.Uint64(), recoverySuffix)
	return recovery{fallback: filepath.Join(folder, name), written: map[string][]byte{}}
}

// drop removes the recovery files that are still as this document wrote them.
func (r *recovery) drop() {
	for path, data := range r.written {
		if found, err := carfile.ReadAll(path); err == nil && bytes.Equal(found, data) {
			_ = os.Remove(path) // One that stays is older than the file saved next, or offered once more.
		}
	}
	clear(r.written)
	r.car = nil
}

// write keeps a car at path.
func (r *recovery) write(path string, c *car.Car, data []byte) error {
	if err := carfile.Write(path, data); err != nil {
		return err
	}
	r.written[path], r.car = data, c
	return nil
}

// Autosave keeps a modified car, when it has changed since the last time, in a
// recovery file beside its own: the same name with ".recover" behind it. A car
// without a path, or one whose folder takes no files, is kept in the folder for
// those. A recovery file is replaced as a whole or not at all. Save and Close
// remove it, and Autosave does when the car is no longer modified. Nothing is
// written in the middle of a drag.
func (d *Document) Autosave() error {
	switch {
	case d.drag != nil || d.recovery.closed:
		return nil
	case !d.Modified():
		d.recovery.drop()
		return nil
	case reflect.DeepEqual(d.now.car, d.recovery.car):
		return nil
	}
	data, err := d.file.Encode(d.now.car)
	if err != nil {
		return err
	}
	var beside error
	if d.path != "" {
		if beside = d.recovery.write(d.path+recoverySuffix, d.now.car, data); beside == nil {
			return nil
		}
	}
	if err := os.MkdirAll(filepath.Dir(d.recovery.fallback), 0o700); err != nil {
		return errors.Join(beside, err)
	}
	if err := d.recovery.write(d.recovery.fallback, d.now.car, data); err != nil {
		return errors.Join(beside, err)
	}
	return nil
}

// Close ends editing: it removes the recovery file, and from then on Autosave does
// nothing. Ask first when the car is Modified.
func (d *Document) Close() {
	d.recovery.drop()
	d.recovery.closed = true
}

// Recovery is a car that was modified when the program ended without closing.
type Recovery struct {
	File string    // The recovery file.
	Path string    // The car's own file; empty for none.
	Time time.Time // When it was kept.
}

// Recoverable returns what can be recovered of the car file at path: its
// recovery file is not older than it and holds something else.
func Recoverable(path string) (Recovery, bool) {
	path, err := filepath.Abs(path)
	if err != nil {
		return Recovery{}, false
	}
	r, ok := recoveryIn(path + recoverySuffix)
	if !ok {
		return Recovery{}, false
	}
	r.Path = path
	own, err := os.Stat(path)
	if err != nil {
		return r, true
	}
	return r, !r.Time.Before(own.ModTime()) && !sameContent(path, r.File)
}

// Unsaved returns the recovery files in folder of cars that had no path, or
// whose folder took no files, newest first.
func Unsaved(folder string) []Recovery {
	entries, _ := os.ReadDir(folder) // No folder, no files.
	var list []Recovery
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), fallbackPrefix) || !strings.HasSuffix(e.Name(), recoverySuffix) {
			continue
		}
		if r, ok := recoveryIn(filepath.Join(folder, e.Name())); ok {
			list = append(list, r)
		}
	}
	slices.SortFunc(list, func(a, b Recovery) int { return b.Time.Compare(a.Time) })
	return list
}

// recoveryIn describes a recovery file, if there is one.
func recoveryIn(path string) (Recovery, bool) {
	info, err := os.Stat(path)
	if err != nil || !info.Mode().IsRegular() {
		return Recovery{}, false
	}
	return Recovery{File: path, Time: info.ModTime()}, true
}

// sameContent reports whether two files can be read and hold the same.
func sameContent(a, b string) bool {
	x, errX := carfile.ReadAll(a)
	y, errY := carfile.ReadAll(b)
	return errX == nil && errY == nil && bytes.Equal(x, y)
}

// Discard removes a recovery file that is not wanted.
func (r Recovery) Discard() error { return os.Remove(r.File) }

// Recover loads a recovered car in place of the current one, as Open does: with
// its own path, and modified. From then on the recovery file is this
// document's. When it fails, nothing changes.
func (d *Document) Recover(r Recovery) error {
	file, data, err := d.read(r.File)
	if err != nil {
		return err
	}
	var disk []byte
	var saved *car.Car
	if r.Path != "" {
		if own, ownData, err := d.read(r.Path); err == nil {
			disk, saved = ownData, own.Car
		}
	}
	delete(d.recovery.written, r.File) // Loading drops what the document has written.
	d.load(file, r.Path, disk, saved)
	d.recovery.written[r.File], d.recovery.car = data, file.Car
	if r.Path == "" {
		d.recovery.fallback = r.File
	}
	return nil
}
