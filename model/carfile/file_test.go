package carfile

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

func TestReadGivesWhatWasWritten(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.toml")
	f := mustDecodeCar(t, fixture(t, "example.toml"))
	c := f.Car.Clone()
	c.Drive.Gear = 1.9
	data, err := f.Encode(c)
	if err != nil {
		t.Fatal(err)
	}
	if err := Write(path, data); err != nil {
		t.Fatal(err)
	}
	g, err := Read(path, Stock())
	if err != nil || bits(g.Car) != bits(c) {
		t.Errorf("%v: %+v", err, g)
	}
}

func TestReadNamesThePath(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.toml")
	if _, err := Read(path, Stock()); !errors.Is(err, fs.ErrNotExist) || !strings.Contains(err.Error(), path) {
		t.Errorf("%v", err)
	}
	write(t, path, "schema = 2")
	if _, err := Read(path, Stock()); err == nil || !strings.HasPrefix(err.Error(), path+":1: schema: is 2,") {
		t.Errorf("%v", err)
	}
	write(t, path, strings.Repeat("#", MaxSize+7))
	if _, err := Read(path, Stock()); err == nil || !strings.HasPrefix(err.Error(), path+": has ") {
		t.Errorf("%v", err)
	}
	if _, err := Read(filepath.Dir(path), Stock()); err == nil {
		t.Error("a folder was read")
	}
}

func write(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// holds checks the content of a file and that nothing else was left beside it.
func holds(t *testing.T, path, want string, others ...string) {
	t.Helper()
	got, err := os.ReadFile(path)
	if err != nil || string(got) != want {
		t.Errorf("%s: %v, %q, want %q", path, err, got, want)
	}
	list, err := os.ReadDir(filepath.Dir(path))
	if err != nil || len(list) != 1+len(others) {
		t.Errorf("%v, %v", list, err)
	}
}

func TestWriteKeepsPermissions(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.toml")
	write(t, path, "old")
	if err := os.Chmod(path, 0o640); err != nil {
		t.Fatal(err)
	}
	if err := Write(path, []byte("new")); err != nil {
		t.Fatal(err)
	}
	holds(t, path, "new")
	if info, err := os.Stat(path); err != nil || runtime.GOOS != "windows" && info.Mode() != 0o640 {
		t.Errorf("%v, %v", info.Mode(), err)
	}
}

func TestWriteFollowsLinks(t *testing.T) {
	there, here := t.TempDir(), t.TempDir()
	path, link := filepath.Join(there, "a.toml"), filepath.Join(here, "link.toml")
	if err := os.Symlink(path, link); err != nil {
		t.Logf("no symbolic links here: %v", err)
		return
	}
	for _, text := range []string{"made", "replaced"} {
		if err := Write(link, []byte(text)); err != nil {
			t.Fatal(err)
		}
		holds(t, path, text)
	}
	if to, err := os.Readlink(link); err != nil || to != path {
		t.Errorf("the link goes to %q, %v", to, err)
	}
	near := filepath.Join(there, "near.toml")
	if err := os.Symlink("a.toml", near); err != nil {
		t.Fatal(err)
	}
	if err := Write(near, []byte("near")); err != nil {
		t.Fatal(err)
	}
	holds(t, path, "near", near)
}

func TestWriteRefusesWhatIsNoFile(t *testing.T) {
	folder := t.TempDir()
	if err := Write(folder, nil); err == nil || err.Error() != "write "+folder+": is no plain file" {
		t.Errorf("%v", err)
	}
	loop := filepath.Join(folder, "loop")
	if err := os.Symlink(loop, loop); err != nil {
		t.Logf("no symbolic links here: %v", err)
		return
	}
	if err := Write(loop, nil); err == nil || !strings.HasPrefix(err.Error(), "write "+loop+": ") {
		t.Errorf("a link to itself: %v", err)
	}
}

// What fails names the file asked for: neither the file that is written beside
// it nor the one that a link leads to.
func TestWriteNamesThePath(t *testing.T) {
	folder := t.TempDir()
	gone := filepath.Join(folder, "none", "a.toml")
	named := func(path string) {
		t.Helper()
		err := Write(path, nil)
		var at *fs.PathError
		if !errors.Is(err, fs.ErrNotExist) || !errors.As(err, &at) || at.Path != path || !strings.HasPrefix(err.Error(), "write "+path+": ") || strings.Contains(err.Error(), ".new") {
			t.Errorf("%v", err)
		}
	}
	named(gone)
	link := filepath.Join(folder, "link.toml")
	if err := os.Symlink(gone, link); err != nil {
		t.Logf("no symbolic links here: %v", err)
		return
	}
	named(link)
}

// A reader that opens the file at any time sees one content or the other.
func TestWriteIsSeenWholeOrNotAtAll(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.toml")
	texts := [][]byte{bytes.Repeat([]byte("a"), 1<<16), bytes.Repeat([]byte("b"), 1<<17)}
	if err := Write(path, texts[0]); err != nil {
		t.Fatal(err)
	}
	done := make(chan error)
	go func() {
		var err error
		for i := 0; i < 50 && err == nil; i++ {
			err = Write(path, texts[i%2])
		}
		done <- err
	}()
	for {
		select {
		case err := <-done:
			if err != nil {
				t.Error(err)
			}
			return
		default:
			got, err := os.ReadFile(path)
			if err != nil || !bytes.Equal(got, texts[0]) && !bytes.Equal(got, texts[1]) {
				t.Fatalf("%v: %d bytes", err, len(got))
			}
		}
	}
}
