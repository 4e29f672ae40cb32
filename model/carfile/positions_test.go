package carfile

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
)

const positionsSample = `# A car.
schema = 1
units  = "us"   # inches

[car]
name = "Saltgrass [No. 7] # one"
weight = 2_650.0

[chassis_bracket]             # hole centers
upper = [[22.5, 18.5], [22.5, 17.75]]
lower = [
  # lowest first
  [25.5, 12.25],  # a ] in a comment
  [ 25.5 , -11.5e0 ],
]

[check]
target_ic = { x = [40.0, 60.0], z.low = 6 }
"odd key".inner = 'x'

[[ setup ]]
name = "baseline"
[setup.extra]
n = 1

[[setup]]
name = "second"
[[setup.step]]
n = 2
[[setup.step]]
n = 3
[[setup]]
[[setup.step]]
 [[ setup . step.run ]]
 day = 2026-03-14 # a Saturday
[[setup.step]]
run = [{ day = 2026-03-15, n = 4 }, { day = "x" }]
`

func TestKeyLinesOfEveryKind(t *testing.T) {
	found, err := keyLines([]byte(positionsSample))
	if err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]struct {
		line  int
		value string
	}{
		"schema":                    {2, `1`},
		"units":                     {3, `"us"`},
		"car":                       {5, "\nname = \"Saltgrass [No. 7] # one\"\nweight = 2_650.0"},
		"car.name":                  {6, `"Saltgrass [No. 7] # one"`},
		"car.weight":                {7, `2_650.0`},
		"chassis_bracket.upper":     {10, `[[22.5, 18.5], [22.5, 17.75]]`},
		"chassis_bracket.upper.0":   {10, `[22.5, 18.5]`},
		"chassis_bracket.upper.0.1": {10, `18.5`},
		"chassis_bracket.upper.1.1": {10, `17.75`},
		"chassis_bracket.lower.0.0": {13, `25.5`},
		"chassis_bracket.lower.1":   {14, `[ 25.5 , -11.5e0 ]`},
		"chassis_bracket.lower.1.1": {14, `-11.5e0`},
		"check.target_ic":           {18, `{ x = [40.0, 60.0], z.low = 6 }`},
		"check.target_ic.x.1":       {18, `60.0`},
		"check.target_ic.z.low":     {18, `6`},
		`check."odd key".inner`:     {19, `'x'`},
		"setup.0":                   {21, "\nname = \"baseline\""},
		"setup.0.name":              {22, `"baseline"`},
		"setup.0.extra.n":           {24, `1`},
		"setup.1.name":              {27, `"second"`},
		"setup.1.step.0.n":          {29, `2`},
		"setup.1.step.1.n":          {31, `3`},
		"setup.2.step.0.run.0":      {34, "\n day = 2026-03-14"},
		"setup.2.step.0.run.0.day":  {35, `2026-03-14`},
		"setup.2.step.1.run.0.day":  {37, `2026-03-15`},
		"setup.2.step.1.run.1":      {37, `{ day = "x" }`},
	} {
		at, ok := found[path]
		if !ok {
			t.Errorf("%s: not found", path)
			continue
		}
		if got := positionsSample[at.Value.Start:at.Value.End]; got != want.value || at.Line != want.line {
			t.Errorf("%s: line %d, value %q; want line %d, %q", path, at.Line, got, want.line, want.value)
		}
	}
	if got := len(found); got != 48 {
		t.Errorf("%d entries, want 48: %v", got, found.sorted())
	}
	for path, want := range map[string]string{"setup.0": "[[ setup ]]", "setup.1.step.1": "[[setup.step]]",
		"car.weight": "weight", `check."odd key".inner`: `"odd key".inner`} {
		if key := found[path].Key; positionsSample[key.Start:key.End] != want {
			t.Errorf("%s: key %q, want %q", path, positionsSample[key.Start:key.End], want)
		}
	}
}

func TestLineOfMissingKeyIsItsTables(t *testing.T) {
	found, err := keyLines([]byte(positionsSample))
	if err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]int{
		"car.wheelbase": 5, "setup.1.step.1.note": 30, "tires.grip": 0, `check."a.b"`: 17, "": 0,
	} {
		if got := found.line(path); got != want {
			t.Errorf("%q: line %d, want %d", path, got, want)
		}
	}
}

func TestSortedFollowsTheFile(t *testing.T) {
	found, err := keyLines([]byte("b = [1, [2]]\na = 1\n[[c]]\nd = 1\n"))
	if err != nil {
		t.Fatal(err)
	}
	if got, want := strings.Join(found.sorted(), " "), "b b.0 b.1 b.1.0 a c.0 c.0.d"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestSyntaxErrorNamesTheLine(t *testing.T) {
	for text, want := range map[string]string{
		"a = 1\nb = ?\n":       "line 2",
		"a = 1\n\n[car\n":      "line 3",
		"a = [1, 2\n":          "line 1",
		"a = 1\r\nb = \"x\r\n": "line 2",
	} {
		_, err := keyLines([]byte(text))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %s", text, err, want)
		}
	}
}

func TestDeepNestingIsRefused(t *testing.T) {
	for _, open := range []string{"a = [", "[[a.a", "a.a", "a = {a=", "a = [{a=[["} {
		deep := "\n" + deepen(open, 60)
		if _, err := keyLines([]byte(deep)); err == nil || err.Error() != "line 2: keys, tables and lists are nested more than 50 deep" {
			t.Errorf("%.20q: %v", deep, err)
		}
		if _, err := keyLines([]byte(deepen(open, 10))); err != nil {
			t.Error(err)
		}
	}
}

func TestLongKeysOverManyEntriesAreRefused(t *testing.T) {
	key := strings.Repeat("k", 500_000)
	for _, list := range []string{strings.Repeat("1,", 200_000), strings.Repeat("{a=1},", 50_000)} {
		_, err := keyLines([]byte("a = 1\n" + key + " = [" + list + "]"))
		if err == nil || err.Error() != "line 2: too many entries under long keys" {
			t.Error(err)
		}
	}
	var text strings.Builder
	for i := range 60_000 {
		fmt.Fprintf(&text, "a%d=1,", i)
	}
	if _, err := keyLines([]byte(key + " = {" + text.String() + "}")); err == nil {
		t.Error("an inline table is not refused")
	}
	if found, err := keyLines([]byte("a = [" + strings.Repeat("1,", 400_000) + "]")); err != nil || len(found) != 400_001 {
		t.Errorf("%d entries, %v", len(found), err)
	}
}

// deepen repeats the last part of an opening so many times, and closes it.
func deepen(open string, times int) string {
	switch open {
	case "a = [":
		return "a = " + strings.Repeat("[", times) + strings.Repeat("]", times)
	case "[[a.a":
		return "[[a" + strings.Repeat(".a", times) + "]]"
	case "a.a":
		return "a" + strings.Repeat(".a", times) + " = 1"
	case "a = {a=":
		return "a = " + strings.Repeat("{a=", times) + "1" + strings.Repeat("}", times)
	}
	return "a = " + strings.Repeat("[{a=[[", times/4) + strings.Repeat("]]}]", times/4)
}

// Whatever the decoder accepts is found, and each leaf's bytes, decoded alone,
// give the leaf's value.
func FuzzKeyLinesAgreesWithDecoder(f *testing.F) {
	f.Add(positionsSample)
	f.Add("a.b = 1\n'c.d' = [ {x = 1}, {} ]\r\ne = 1979-05-27T07:32:00Z\n")
	f.Add("a = \"\"\"\nx # ]\n\"\"\"\nb = '''\n]'''\nc = [ '''\n''', 1 ]\n")
	f.Add("\"\" = 1\n[\"\\\"\".x]\ny = {}\n[[z.\"q.r\"]]\nw = [[],[[]]]\n")
	f.Add("a = nan\nb = -inf\nc = 0x1F\nd = true\n")
	f.Add("[ a . b ]#c\n[[a.c]]\n[[a.c]]#]]\nd=1")
	f.Fuzz(func(t *testing.T, text string) {
		var tree map[string]any
		if _, err := toml.Decode(text, &tree); err != nil {
			return
		}
		found, err := keyLines([]byte(text))
		if err != nil {
			return // Both must accept a file; the stricter one decides.
		}
		checkLeaves(t, text, found, "", tree)
	})
}

func checkLeaves(t *testing.T, text string, found positions, path string, value any) {
	switch v := value.(type) {
	case map[string]any:
		for key, inner := range v {
			checkLeaves(t, text, found, joinPath(path, key), inner)
		}
	case []map[string]any:
		for i, inner := range v {
			checkLeaves(t, text, found, indexPath(path, i), inner)
		}
	case []any:
		for i, inner := range v {
			checkLeaves(t, text, found, indexPath(path, i), inner)
		}
	default:
		checkLeaf(t, text, found, path, value)
	}
}

func checkLeaf(t *testing.T, text string, found positions, path string, want any) {
	at, ok := found[path]
	if !ok {
		t.Fatalf("%s: not found in %q", path, text)
	}
	var alone map[string]any
	token := text[at.Value.Start:at.Value.End]
	if _, err := toml.Decode("v = "+token, &alone); err != nil {
		t.Fatalf("%s: %q: %v", path, token, err)
	}
	if !sameLeaf(alone["v"], want) {
		t.Fatalf("%s: %q is %v, want %v", path, token, alone["v"], want)
	}
	if line := 1 + strings.Count(text[:at.start()], "\n"); line != at.Line {
		t.Fatalf("%s: line %d, want %d", path, at.Line, line)
	}
}

func sameLeaf(a, b any) bool {
	if x, ok := a.(float64); ok {
		y, ok := b.(float64)
		return ok && (x == y || math.IsNaN(x) && math.IsNaN(y))
	}
	if x, ok := a.(time.Time); ok {
		y, ok := b.(time.Time)
		return ok && x.Equal(y)
	}
	return a == b
}
