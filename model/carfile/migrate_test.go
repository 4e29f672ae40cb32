package carfile

import (
	"strings"
	"testing"
)

// Two made-up older forms: the first called the car's name title, the second
// had the whole drive ratio in one number and the bump travel doubled.
var madeUp = map[int]migration{
	-1: func(root map[string]any) {
		if c, ok := root["car"].(map[string]any); ok {
			if title, ok := c["title"]; ok {
				c["name"] = title
				delete(c, "title")
			}
		}
	},
	0: func(root map[string]any) {
		if d, ok := root["drive"].(map[string]any); ok {
			d["gear"], d["axle"] = 1.8, 4.1
			delete(d, "ratio")
		}
		if s, ok := root["springs"].(map[string]any); ok {
			if x, ok := s["rear_bump"].(float64); ok {
				s["rear_bump"] = x / 2
			}
		}
		delete(root, "obsolete")
	},
}

func older(t *testing.T) string {
	return strings.NewReplacer(
		"schema = 1\n", "schema = -1   # as it was\n",
		"name = \"Saltgrass No. 7\"\n", "title = \"Saltgrass No. 7\"\n",
		"gear = 1.8\naxle = 4.10\n", "# both gears together\nratio = 7.38\n",
		"rear_bump = 3.0\n", "rear_bump = 6.000000000000000000   # doubled\n",
		"[check]\n", "# of no use any more\n[obsolete]\nx = 1\n\n[check]\n",
	).Replace(fixture(t, "example.toml"))
}

func TestOlderFileIsMigratedStepByStep(t *testing.T) {
	text := older(t)
	f, err := decode("old.toml", []byte(text), Stock(), madeUp)
	if err != nil {
		t.Fatal(err)
	}
	if want := mustDecodeCar(t, fixture(t, "example.toml")); bits(f.Car) != bits(want.Car) || f.Schema != -1 || want.Schema != Schema {
		t.Errorf("%v of schema %d, want %v", bits(f.Car), f.Schema, bits(want.Car))
	}
	if f.text != text {
		t.Error("the text has changed before it was saved")
	}
}

// What is saved is a file of today's form with the old one's comments.
func TestMigratedFileIsSavedInTodaysForm(t *testing.T) {
	f, err := decode("old.toml", []byte(older(t)), Stock(), madeUp)
	if err != nil {
		t.Fatal(err)
	}
	got, err := f.Encode(f.Car)
	want := strings.NewReplacer(
		"schema = 1\n", "schema = 1    # as it was\n",
		"gear = 1.8\naxle = 4.10\n", "gear = 1.8\naxle = 4.1\n# both gears together\n",
		"rear_bump = 3.0\n", "rear_bump = 3.0                    # doubled\n",
	).Replace(fixture(t, "example.toml"))
	if err != nil || string(got) != want {
		t.Errorf("%v\ngot  %s\nwant %s", err, got, want)
	}
}

// What a migration does not find is told as with any file, in its old place.
func TestProblemsOfOlderFile(t *testing.T) {
	text := strings.Replace(older(t), "title = ", "titel = ", 1)
	text = strings.Replace(text, "rear_bump = 6.000000000000000000", "rear_bump = 200.0", 1)
	_, err := decode("old.toml", []byte(text), Stock(), madeUp)
	const want = `old.toml:4: car.name: is missing; give a text in quotes
old.toml:5: car.titel: is unknown here; known are name, wheelbase, weight, rear_weight, corner_weights, cg_height, unsprung_rear, unsprung_front, track_rear, track_front, pitch_inertia, yaw_inertia, roll_inertia, axle_roll_inertia, housing_pitch_inertia
old.toml:54: springs.rear_bump: 100 in is out of range; give 0 in to 40 in`
	if err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
}

// A form between two known ones is not guessed at.
func TestGapInTheChainIsRefused(t *testing.T) {
	_, err := decode("old.toml", []byte(older(t)), Stock(), map[int]migration{-1: madeUp[-1]})
	const want = "old.toml:1: schema: is -1, which never was a form of the car file; give schema = 1"
	if err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
}
