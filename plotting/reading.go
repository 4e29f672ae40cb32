package plotting

import "strings"

// reading is one value of a readout in words.
type reading struct {
	name  string // of what: "lower hit"; empty where the value says it
	value string // "4,310 lb push — 71 %"
	after string // behind the value: "above the ground"
	lack  string // why there is no value; the others are empty then but the name
}

// plainly is a reading that is a sentence of its own.
func plainly(text string) reading { return reading{value: text} }

// String writes the reading alone.
func (r reading) String() string {
	if r.lack != "" {
		return r.name + " has no value: " + r.lack
	}
	return joined(r.name, r.value, r.after)
}

// versus writes a reading and that of another setup: "lower hit 4,310 lb push —
// 71 % vs 4,120 lb push — 68 %". It returns false for readings of two kinds.
func (r reading) versus(other reading) (string, bool) {
	switch {
	case r.name != other.name:
		return "", false
	case r == other:
		return r.String(), true
	case r.after == other.after:
		return joined(r.name, r.short(), "vs", other.short(), r.after), true
	}
	return joined(r.name, r.short(), r.after, "vs", other.short(), other.after), true
}

func (r reading) short() string {
	if r.lack != "" {
		return "no value"
	}
	return r.value
}

// joined puts words together, leaving out empty ones.
func joined(parts ...string) string {
	var given []string
	for _, p := range parts {
		if p != "" {
			given = append(given, p)
		}
	}
	return strings.Join(given, " ")
}

// written writes each reading alone.
func written(list []reading) []string {
	lines := make([]string, len(list))
	for i := range list {
		lines[i] = list[i].String()
	}
	return lines
}
