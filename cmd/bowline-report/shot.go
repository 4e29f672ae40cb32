package main

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"bowline/app/picture"
	"bowline/model/carfile"
	"bowline/model/units"
)

// shot is what the command line asks for of pictures.
type shot struct {
	picture, movie, view, size string
	at, travel, speed          float64
	timed, traveled            bool
	pixels                     picture.Size
}

// usualSpeed is that of a movie.
const usualSpeed = 0.2

// flags declares the options.
func (s *shot) flags(flags *flag.FlagSet) {
	flags.StringVar(&s.picture, "picture", "", "draw the car to `FILE` too, as PNG or SVG by its ending: in the hit case at ride height unless -at or -travel is given")
	flags.Float64Var(&s.at, "at", 0, "with -picture, the instant of the launch, `T` seconds after the brake's first give")
	flags.Float64Var(&s.travel, "travel", 0, "with -picture, the rear travel `Q` in the car file's unit, bump positive")
	flags.StringVar(&s.view, "view", picture.Views[0], "with -picture and -movie, from where: "+strings.Join(picture.Views, ", ")+"; the `VIEW`")
	flags.StringVar(&s.size, "size", "", "with -picture and -movie, the size without caption and caution, `WxH`; a PNG has twice as many pixels each way, a movie as many; 1200x620 for a picture, 820x420 for a movie if left out")
	flags.StringVar(&s.movie, "movie", "", "draw the launch as a moving GIF to `FILE` too")
	flags.Float64Var(&s.speed, "speed", usualSpeed, "with -movie, how fast, `S` times the car's speed, from 0.02 to 1")
}

// wanted reports whether there is anything to draw.
func (s *shot) wanted() bool { return s.picture != "" || s.movie != "" }

// sizes is how a size is written.
var sizes = regexp.MustCompile(`^(\d{1,5})[x×](\d{1,5})$`)

// check refuses options that do not fit each other.
func (s *shot) check(flags *flag.FlagSet) error {
	var wrong []error
	given := map[string]bool{}
	flags.Visit(func(f *flag.Flag) { given[f.Name] = true })
	s.timed, s.traveled = given["at"], given["travel"]
	for _, name := range []string{"at", "travel"} {
		if given[name] && s.picture == "" {
			wrong = append(wrong, fmt.Errorf("-%s is of a picture; give -picture FILE too", name))
		}
	}
	for _, name := range []string{"view", "size"} {
		if given[name] && !s.wanted() {
			wrong = append(wrong, fmt.Errorf("-%s is of a picture or a movie; give -picture FILE or -movie FILE too", name))
		}
	}
	if given["speed"] && s.movie == "" {
		wrong = append(wrong, errors.New("-speed is of a movie; give -movie FILE too"))
	}
	if s.timed && s.traveled {
		wrong = append(wrong, errors.New("-at and -travel exclude each other: a picture is of the launch or of a travel"))
	}
	if !slices.Contains(picture.Views, s.view) {
		wrong = append(wrong, fmt.Errorf("there is no -view %q; give one of %s", s.view, strings.Join(picture.Views, ", ")))
	}
	if !(s.speed >= picture.Slowest && s.speed <= 1) {
		wrong = append(wrong, fmt.Errorf("-speed is %v; give from %v to 1 times the car's speed", s.speed, picture.Slowest))
	}
	if end := strings.ToLower(filepath.Ext(s.picture)); s.picture != "" && end != ".png" && end != ".svg" {
		wrong = append(wrong, fmt.Errorf("-picture writes .png or .svg; %q ends otherwise", s.picture))
	}
	if end := strings.ToLower(filepath.Ext(s.movie)); s.movie != "" && end != ".gif" {
		wrong = append(wrong, fmt.Errorf("-movie writes .gif; %q ends otherwise", s.movie))
	}
	if s.size != "" {
		if m := sizes.FindStringSubmatch(s.size); m == nil {
			wrong = append(wrong, fmt.Errorf("-size is %q; give width and height in pixels, as in 1200x620", s.size))
		} else {
			s.pixels.Width, _ = strconv.Atoi(m[1])
			s.pixels.Height, _ = strconv.Atoi(m[2])
			wrong = append(wrong, s.pixels.Check())
		}
	}
	return errors.Join(wrong...)
}

// sized is the size asked for, or the usual one.
func (s *shot) sized(usual picture.Size) picture.Size {
	if s.size == "" {
		return usual
	}
	return s.pixels
}

// saveShots draws what is asked for.
func (q *request) saveShots(in *analyzed) error {
	studio, err := picture.New(in.file, in.result.Options.Setup, in.library, in.units, q.shot.view)
	if err != nil {
		return err
	}
	defer studio.Close()
	var failed []error
	if s := &q.shot; s.picture != "" {
		failed = append(failed, q.saveOver("picture", s.picture, func() error { return s.savePicture(studio, in.units) }))
	}
	if s := &q.shot; s.movie != "" {
		failed = append(failed, q.saveOver("movie", s.movie, func() error {
			return saved(s.movie, func(w io.Writer) error {
				return studio.WriteMovie(context.Background(), w, s.sized(picture.UsualMovie), s.speed, nil)
			})
		}))
	}
	return errors.Join(failed...)
}

// savePicture draws one picture.
func (s *shot) savePicture(studio *picture.Studio, u units.System) error {
	var err error
	if s.timed {
		err = studio.Launch(s.at)
	} else {
		err = studio.Stand(u.ToSI(units.Length, s.travel))
	}
	if err != nil {
		return err
	}
	write := studio.WritePNG
	if strings.EqualFold(filepath.Ext(s.picture), ".svg") {
		write = studio.WriteSVG
	}
	return saved(s.picture, func(w io.Writer) error { return write(w, s.sized(picture.Usual)) })
}

// saved writes a file as a whole or not at all.
func saved(path string, write func(io.Writer) error) error {
	var data bytes.Buffer
	if err := write(&data); err != nil {
		return err
	}
	return carfile.Write(path, data.Bytes())
}
