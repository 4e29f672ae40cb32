package chart

import "strings"

// Reading is one value of a readout in words.
type Reading struct {
	Name  string // of what: "lower hit"; empty where the value says it
	Value string // "4,310 lb push — 71 %"
	After string // behind the value: "above the ground"
	Lack  string // why there is no value; the others are empty then but the name
	Event bool   // something that happens there, which of several setups only some may have
}

// Plain is a reading that is a sentence of its own.
func Plain(text string) Reading { return Reading{Value: text} }

// String writes the reading alone.
func (r Reading) String() string {
	if r.Lack != "" {
		return r.Name + " has no value: " + r.Lack
	}
	return joined(r.Name, r.Value, r.After)
}

// versusReadings writes the readings of several setups as one: "lower hit 4,310
// lb push — 71 % vs 4,120 lb push — 68 %". It returns false for readings of
// different things.
func versusReadings(list []Reading) (string, bool) {
	first := list[0]
	same, after := true, true
	for _, r := range list[1:] {
		if r.Name != first.Name {
			return "", false
		}
		same, after = same && r == first, after && r.After == first.After
	}
	if same {
		return first.String(), true
	}
	var parts []string
	for _, r := range list {
		if text := r.short(); after {
			parts = append(parts, text)
		} else {
			parts = append(parts, joined(text, r.After))
		}
	}
	text := joined(first.Name, strings.Join(parts, " vs "))
	if after {
		text = joined(text, first.After)
	}
	return text, true
}

func (r Reading) short() string {
	if r.Lack != "" {
		return "no value"
	}
	return r.Value
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
func written(list []Reading) []string {
	lines := make([]string, len(list))
	for i := range list {
		lines[i] = list[i].String()
	}
	return lines
}
