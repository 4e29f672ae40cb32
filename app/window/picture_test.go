package window

import (
	"bytes"
	"image/gif"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"bowline/app/picture"
)

// The launch is drawn as a movie beside the window, which says where it is.
func TestAMovieOfTheLaunch(t *testing.T) {
	d := newDesk(t)
	path := filepath.Join(t.TempDir(), "launch.gif")
	d.makeMovie(path, picture.Size{Width: 240, Height: 200}, 1)
	for !strings.HasPrefix(d.status.Text, "Movie written") {
		d.queue.Wait()
		d.settle()
	}
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if movie, err := gif.DecodeAll(bytes.NewReader(data)); err != nil || movie.Image[0].Bounds().Dx() != 240 {
		t.Errorf("the movie: %v", err)
	}
	d.wantNoQuestion()
}
