package carfile

import (
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"bowline/model/car"
	"bowline/model/internal/cartest"
	"bowline/model/units"

	"pgregory.net/rapid"
)

// bits writes all of a car so that two cars read the same only if they have the
// same bits: Go prints a float with as many digits as identify it, and the sign
// of zero.
func bits(c *car.Car) string { return fmt.Sprintf("%+v", *c) }

func mustDecodeCar(t interface{ Fatalf(string, ...any) }, text string) *File {
	f, err := Decode("car.toml", []byte(text), Stock())
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return f
}

func fixture(t interface{ Fatal(...any) }, name string) string {
	data, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// forms are the ways to write one car that TOML allows.
func forms(t interface{ Fatal(...any) }) map[string]string {
	plain := fixture(t, "example.toml")
	return map[string]string{
		"plain":          plain,
		"odd":            fixture(t, "odd.toml"),
		"inline":         fixture(t, "inline.toml"),
		"windows":        mark + strings.ReplaceAll(plain, "\n", "\r\n"),
		"no last line":   strings.TrimRight(plain, "\n"),
		"no blank lines": strings.ReplaceAll(plain, "\n\n", "\n"),
		"runs":           plain + runLog,
		"runs, windows":  strings.ReplaceAll(plain+runLog, "\n", "\r\n"),
		"runs in braces": plain + runsInBraces,
		"runs apart":     runsApart(plain),
	}
}

func TestUneditedFileIsUnchanged(t *testing.T) {
	for name, text := range forms(t) {
		f := mustDecodeCar(t, text)
		if got, err := f.Encode(f.Car); err != nil || string(got) != text {
			t.Errorf("%s: %v\n%s", name, err, got)
		}
	}
}

// Whatever becomes of a car, the file made of it gives that car, and a file made
// anew does too.
func TestEncodedCarDecodesToItself(t *testing.T) {
	texts := forms(t)
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom([]string{"plain", "odd", "inline", "windows", "no last line", "no blank lines", "runs", "runs, windows", "runs in braces", "runs apart", "shuffled", "new us", "new si"}).Draw(t, "form")
		text, ok := texts[name]
		switch {
		case name == "shuffled":
			text = shuffled(t, texts["plain"])
		case !ok:
			f, err := New("car.toml", cartest.Random(t, Stock()), map[string]units.System{"new us": units.US, "new si": units.SI}[name], Stock())
			if err != nil {
				t.Fatal(err)
			}
			text = f.text
		}
		for range rapid.IntRange(1, 4).Draw(t, "saves") {
			f := mustDecodeCar(t, text)
			c := edited(t, f.Car)
			data, err := f.Encode(c)
			if err != nil {
				t.Fatalf("%v\n%s", err, text)
			}
			g := mustDecodeCar(t, string(data))
			if bits(g.Car) != bits(c) {
				t.Fatalf("got  %s\nwant %s\n%s", bits(g.Car), bits(c), data)
			}
			if again, err := g.Encode(g.Car); err != nil || string(again) != string(data) {
				t.Fatalf("%v\n%s\n%s", err, data, again)
			}
			text = string(data)
		}
	})
}

var remark = regexp.MustCompile("# remark [0-9]+")

// shuffled brings the tables of a file into another order and puts remarks and
// blank lines between and behind its lines.
func shuffled(t *rapid.T, text string) string {
	head, rest, _ := strings.Cut(text, "\n[")
	tables := rapid.Permutation(strings.Split(rest, "\n[")).Draw(t, "tables")
	var b strings.Builder
	for i, line := range strings.Split(head+"\n["+strings.Join(tables, "\n["), "\n") {
		b.WriteString(line)
		switch rapid.IntRange(0, 5).Draw(t, "more") {
		case 0:
			fmt.Fprintf(&b, "\n# remark %d", i)
		case 1:
			fmt.Fprintf(&b, " # remark %d", i)
		case 2:
			b.WriteString("\n\n")
		}
		b.WriteString("\n")
	}
	return b.String()
}

// New numbers, names, driveline and checks leave every remark where it is.
func TestRemarksStay(t *testing.T) {
	plain := fixture(t, "example.toml")
	rapid.Check(t, func(t *rapid.T) {
		text := shuffled(t, plain)
		f := mustDecodeCar(t, text)
		other := cartest.Random(t, Stock())
		other.Chassis.Upper, other.Chassis.Lower = f.Car.Chassis.Upper, f.Car.Chassis.Lower
		other.Housing.Upper, other.Housing.Lower = f.Car.Housing.Upper, f.Car.Housing.Lower
		other.Setups = f.Car.Setups
		for _, s := range car.Sections {
			for _, field := range s.Fields {
				other.State(field.Path, f.Car.Says(field.Path)) // what the file gives, it goes on giving
			}
		}
		if len(other.Validate(Stock(), units.US)) > 0 {
			return // The holes do not suit the other car.
		}
		data, err := f.Encode(other)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := remark.FindAllString(string(data), -1), remark.FindAllString(text, -1); !slices.Equal(got, want) {
			t.Fatalf("got  %v\nwant %v\n%s", got, want, data)
		}
	})
}

// edited returns a valid car that differs from c in a few ways.
func edited(t *rapid.T, c *car.Car) *car.Car {
	for range rapid.IntRange(1, 5).Draw(t, "edits") {
		d := c.Clone()
		edit(t, d, cartest.Random(t, Stock()))
		d.Settle()
		if len(d.Validate(Stock(), units.US)) == 0 {
			c = d
		}
	}
	return c
}

// editRuns changes the run log of a setup.
func editRuns(t *rapid.T, c, other *car.Car) {
	from := rapid.SampledFrom(c.Clone().Setups).Draw(t, "setup")
	i := rapid.IntRange(0, len(c.Setups)-1).Draw(t, "at")
	runs, more := &c.Setups[i].Runs, slices.Concat(other.Setups[0].Runs, from.Runs)
	at := rapid.IntRange(0, len(*runs)).Draw(t, "run")
	switch kind := rapid.IntRange(0, 4).Draw(t, "kind of edit of runs"); {
	case kind == 0:
		*runs = slices.Insert(*runs, at, more...)
	case kind == 1 && at < len(*runs):
		*runs = slices.Delete(*runs, at, at+1)
	case kind == 2 && len(*runs) > 0:
		*runs = rapid.Permutation(*runs).Draw(t, "order")
	case kind == 3 && at < len(*runs) && len(more) > 0:
		(*runs)[at].Rear, (*runs)[at].SixtyFoot = more[0].Rear, more[0].SixtyFoot
	case kind == 4:
		*runs = more
	}
	if len(*runs) == 0 {
		*runs = nil
	}
}

// edit takes something over from another car, or moves, adds or drops an item.
func edit(t *rapid.T, c, other *car.Car) {
	switch rapid.IntRange(0, 14).Draw(t, "kind of edit") {
	case 12, 13, 14:
		editRuns(t, c, other)
	case 0:
		s := rapid.SampledFrom(car.Sections).Draw(t, "section")
		f := rapid.SampledFrom(s.Fields).Draw(t, "field")
		*f.In(c) = *f.In(other)
	case 1:
		c.Driveline = other.Driveline
	case 2:
		c.Check = other.Check
	case 3:
		c.UpperBar, c.Body.Name = other.UpperBar, other.Body.Name
	case 4:
		row := rapid.SampledFrom(car.Rows[:]).Draw(t, "row")
		holes, more := row.In(c), *row.In(other)
		i := rapid.IntRange(0, len(*holes)).Draw(t, "at")
		*holes = slices.Insert(*holes, i, more[:rapid.IntRange(0, len(more)).Draw(t, "more")]...)
	case 5:
		row := rapid.SampledFrom(car.Rows[:]).Draw(t, "row")
		holes := row.In(c)
		i := rapid.IntRange(0, len(*holes)-1).Draw(t, "at")
		*holes = slices.Delete(*holes, i, i+1)
		for s := range c.Setups {
			*row.Of(&c.Setups[s].Holes) = 0
		}
	case 6:
		i := rapid.IntRange(0, len(c.Setups)).Draw(t, "at")
		added := car.Setup{Name: other.Setups[0].Name, Note: other.Setups[0].Note, Runs: other.Setups[0].Runs}
		c.Setups = slices.Insert(c.Setups, i, added)
	case 7:
		i := rapid.IntRange(0, len(c.Setups)-1).Draw(t, "at")
		c.Setups = slices.Delete(c.Setups, i, i+1)
	case 8:
		c.Setups = rapid.Permutation(c.Setups).Draw(t, "order")
	case 9:
		i := rapid.IntRange(0, len(c.Setups)-1).Draw(t, "at")
		c.Setups[i].Name, c.Setups[i].Note = other.Setups[0].Name, other.Setups[0].Note
	case 10:
		c.Launch = other.Launch
	case 11:
		i := rapid.IntRange(0, len(c.Setups)-1).Draw(t, "at")
		c.Setups[i].Turns, c.Launch.Locator, c.Launch.Engine.Curve = other.Setups[0].Turns, other.Launch.Locator, other.Launch.Engine.Curve
	}
}
