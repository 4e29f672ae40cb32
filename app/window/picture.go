package window

import (
	"bytes"
	"context"
	"fmt"
	"path/filepath"
	"strings"

	"bowline/app/picture"
	"bowline/app/scene"
	"bowline/model/carfile"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"
)

// savePicture asks for a file and writes the stage as it is seen; the ending of the name
// chooses the format.
func (w *Window) savePicture() {
	if !w.settled() {
		return
	}
	w.askFile("Picture of the stage as .png or .svg", "", w.fileName()+"-stage.png", func(path string) {
		write := picture.WritePNG
		switch strings.ToLower(filepath.Ext(path)) {
		case ".png":
		case ".svg":
			write = picture.WriteSVG
		default:
			w.fail(fmt.Errorf("pictures are written as .png or .svg; %q ends otherwise", filepath.Base(path)))
			return
		}
		var data bytes.Buffer
		err := write(&data, scene.NewRenderer(), w.view.Picture(), picture.FootOf(w.study), w.study.Units())
		if err == nil {
			err = carfile.Write(path, data.Bytes())
		}
		if err != nil {
			w.fail(err)
			return
		}
		w.say("Picture written to " + path)
	})
}

// What a movie can be.
var (
	movieSizes  = []picture.Size{picture.UsualMovie, {Width: 600, Height: 310}, picture.Usual}
	movieSpeeds = []float64{1. / 50, 1. / 20, 1. / 10, 1. / 5, 1. / 2, 1}
)

// firstMovieSpeed is which of the speeds is offered first.
const firstMovieSpeed = 3

// saveMovie asks for size, speed and file and has the launch drawn as a moving picture, in the
// view that is chosen, with the whole car in sight.
func (w *Window) saveMovie() {
	if !w.settled() {
		return
	}
	var sizes, speeds []string
	for _, s := range movieSizes {
		sizes = append(sizes, fmt.Sprintf("%d × %d", s.Width, s.Height))
	}
	for _, s := range movieSpeeds {
		speeds = append(speeds, fmt.Sprintf("1/%.0f of the car's speed", 1/s))
	}
	speeds[len(speeds)-1] = "the car's speed"
	size, speed := widget.NewSelect(sizes, nil), widget.NewSelect(speeds, nil)
	size.SetSelectedIndex(0)
	speed.SetSelectedIndex(firstMovieSpeed)
	form := widget.NewForm(widget.NewFormItem("Size", size), widget.NewFormItem("Speed", speed))
	dialog.NewCustomConfirm("Movie of the launch", "Choose a file…", "Cancel", form, func(on bool) {
		if !on {
			return
		}
		w.askFile("Movie of the launch as .gif", ".gif", w.fileName()+"-launch.gif", func(path string) {
			w.makeMovie(path, movieSizes[size.SelectedIndex()], movieSpeeds[speed.SelectedIndex()])
		})
	}, w.window).Show()
}

// makeMovie draws a movie of the car as it is now, while a box shows how far it is and stops it.
func (w *Window) makeMovie(path string, size picture.Size, speed float64) {
	ctx, stop := context.WithCancel(context.Background())
	bar := widget.NewProgressBar()
	box := dialog.NewCustom("Drawing the launch", "Stop", container.NewVBox(bar), w.window)
	box.SetOnClosed(stop)
	box.Resize(fyne.NewSize(360, 140))
	box.Show()
	file := &carfile.File{Car: w.doc.Car(), Units: w.doc.Units()}
	setup, system, view := w.doc.Setup(), w.doc.Units(), picture.Views[w.bar.View()]
	go func() {
		var data bytes.Buffer
		studio, err := picture.New(file, setup, w.study.Library(), system, view)
		if err == nil {
			err = studio.WriteMovie(ctx, &data, size, speed, func(done, all int) {
				w.post(func() { bar.SetValue(float64(done) / float64(all)) })
			})
			studio.Close()
		}
		w.post(func() {
			stopped := ctx.Err() != nil
			box.Hide() // which ends ctx
			switch {
			case stopped:
				w.say("The movie was stopped.")
				return
			case err == nil:
				err = carfile.Write(path, data.Bytes())
			}
			if err != nil {
				w.fail(err)
				return
			}
			w.say("Movie written to " + path)
		})
	}()
}
