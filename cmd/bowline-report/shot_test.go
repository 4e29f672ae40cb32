package main

import (
	"bytes"
	"image/gif"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Pictures and a movie are written without a display, in the sizes asked for.
func TestPictureAndMovie(t *testing.T) {
	folder := t.TempDir()
	file := func(name string) string { return filepath.Join(folder, name) }
	for _, c := range [][]string{
		{"-picture", file("side.png"), "-size", "400x240"},
		{"-picture", file("launch.PNG"), "-at", "0.1", "-view", "rear", "-size", "400x240"},
		{"-picture", file("droop.svg"), "-travel", "-2", "-view", "3d", "-size", "400x240", "-movie", file("launch.gif"), "-speed", "1"},
	} {
		if got := command(append(c, "-demo")...); got.status != 0 || got.stderr != "" || !strings.HasPrefix(got.stdout, "Saltgrass No. 7") {
			t.Fatalf("%q: %+v", c, got)
		}
	}
	data := map[string][]byte{}
	for _, name := range []string{"side.png", "launch.PNG", "droop.svg", "launch.gif"} {
		read, err := os.ReadFile(file(name))
		if err != nil {
			t.Fatal(err)
		}
		data[name] = read
	}
	for _, name := range []string{"side.png", "launch.PNG"} {
		if img, err := png.Decode(bytes.NewReader(data[name])); err != nil || img.Bounds().Dx() != 800 {
			t.Errorf("%s: %v", name, err)
		}
	}
	if !bytes.Contains(data["droop.svg"], []byte("2.00 in droop")) {
		t.Error("the drawing does not say at which travel it is")
	}
	if movie, err := gif.DecodeAll(bytes.NewReader(data["launch.gif"])); err != nil || len(movie.Image) < 30 {
		t.Errorf("the movie: %v", err)
	}
}

func TestRefusedPictures(t *testing.T) {
	folder := t.TempDir()
	png := filepath.Join(folder, "a.png")
	for _, c := range []struct {
		args   []string
		status int
		want   string
	}{
		{[]string{"-at", "0.1"}, 2, "-at is of a picture"},
		{[]string{"-view", "top"}, 2, "-view is of a picture or a movie"},
		{[]string{"-speed", "1"}, 2, "-speed is of a movie"},
		{[]string{"-picture", png, "-at", "0.1", "-travel", "0"}, 2, "exclude each other"},
		{[]string{"-picture", filepath.Join(folder, "a.jpg")}, 2, "writes .png or .svg"},
		{[]string{"-movie", png}, 2, "writes .gif"},
		{[]string{"-picture", png, "-size", "large"}, 2, "as in 1200x620"},
		{[]string{"-picture", png, "-size", "10x10"}, 2, "10 × 10"},
		{[]string{"-picture", png, "-view", "below"}, 2, "side, top, rear, 3d"},
		{[]string{"-picture", png, "-at", "99"}, 1, "no instant at 99.000 s"},
		{[]string{"-picture", png, "-travel", "99"}, 1, "does not travel that far"},
		{[]string{"-movie", filepath.Join(folder, "a.gif"), "-speed", "7"}, 2, "0.02 to 1"},
	} {
		got := command(append(c.args, "-demo")...)
		if got.status != c.status || !strings.Contains(got.stderr, c.want) {
			t.Errorf("%q: %d, %q", c.args, got.status, got.stderr)
		}
		if left, _ := os.ReadDir(folder); len(left) > 0 {
			t.Errorf("%q: a file was written", c.args)
		}
	}
}
