package carfile

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"

	"bowline/model/stock"
)

// Read decodes the car file at a path. Besides what Decode refuses it fails as
// os.Open does.
func Read(path string, library stock.Library) (*File, error) {
	data, err := ReadAll(path)
	if err != nil {
		return nil, err
	}
	return Decode(path, data, library)
}

// ReadAll returns what a file holds, but little more than MaxSize: enough for
// Decode to refuse it for its size.
func ReadAll(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, MaxSize+1))
}

// Write replaces the file at a path, or makes it. A reader sees either the old
// content or the new one, also when the machine stops halfway: the new one goes
// to a file beside it, which then takes its name. An existing file keeps its
// permissions; of a symbolic link it is the target that is written.
//
// It refuses a file that may not be written and what is no plain file. Its
// errors are of type *fs.PathError and name the path given.
func Write(path string, data []byte) error {
	if err := replace(path, data); err != nil {
		return &fs.PathError{Op: "write", Path: path, Err: cause(err)}
	}
	return nil
}

// cause is an error without the names of the files it came from, which are links'
// targets and files that are gone again.
func cause(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}

// replace does the work of Write.
func replace(path string, data []byte) error {
	target, err := target(path)
	if err != nil {
		return err
	}
	old, err := replaceable(target)
	if err != nil {
		return err
	}
	beside, err := writeBeside(target, data, old)
	if err != nil {
		return err
	}
	if err := os.Rename(beside, target); err != nil {
		os.Remove(beside)
		return err
	}
	// The new name is safe once the folder is; some systems cannot tell.
	if folder, err := os.Open(filepath.Dir(target)); err == nil {
		folder.Sync()
		folder.Close()
	}
	return nil
}

// target follows symbolic links, also to a file that is not there yet.
func target(path string) (string, error) {
	real, err := filepath.EvalSymlinks(path)
	if !errors.Is(err, fs.ErrNotExist) {
		return real, err
	}
	to, err := os.Readlink(path)
	if err != nil {
		return path, nil
	}
	if !filepath.IsAbs(to) {
		to = filepath.Join(filepath.Dir(path), to)
	}
	return target(to)
}

// replaceable describes the file that is to be replaced; nil if there is none.
func replaceable(path string) (fs.FileInfo, error) {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, errors.New("is no plain file")
	}
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return nil, err
	}
	return info, f.Close()
}

// writeBeside writes to a new file in the same folder, with the permissions of
// the old one if there is any, and returns its name.
func writeBeside(path string, data []byte, old fs.FileInfo) (string, error) {
	name := filepath.Join(filepath.Dir(path), fmt.Sprintf(".%08x.new", rand.Uint32()))
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return "", err
	}
	_, err = f.Write(data)
	if old != nil {
		err = errors.Join(err, f.Chmod(old.Mode().Perm()))
	}
	if err = errors.Join(err, f.Sync(), f.Close()); err != nil {
		os.Remove(name)
		return "", err
	}
	return name, nil
}
