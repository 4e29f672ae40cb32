// Package plotting makes the charts of a result.
package plotting

import (
	"image/color"

	"bowline/model/analysis"
	"bowline/plotting/chart"
	"bowline/plotting/palette"
)

// Charts returns all charts of a result, in the order they are shown. With
// another result, that of a second setup, each shows both; nil is none.
func Charts(r, other *analysis.Result) []*chart.Chart {
	if other == nil {
		return []*chart.Chart{Forces(r), AntiSquat(r), CenterPath(r), Bow(r)}
	}
	return []*chart.Chart{
		chart.Compare(forcesBeside(r, other), forcesBeside(other, r)),
		chart.Compare(AntiSquat(r), AntiSquat(other)),
		chart.Compare(CenterPath(r), CenterPath(other)),
		chart.Compare(Bow(r), Bow(other)),
	}
}

// newChart starts a chart of a result.
func newChart(r *analysis.Result, key chart.Key, title string, about chart.Subject) *chart.Chart {
	setup := r.Car.Setups[r.Options.Setup].Name
	return &chart.Chart{
		Key: key, Title: title, Heading: title, Subject: about,
		Subtitle: r.Car.Body.Name + " — " + setup, Setups: []string{setup},
	}
}

func upperInk(p *palette.Palette) color.RGBA  { return p.Upper }
func lowerInk(p *palette.Palette) color.RGBA  { return p.Lower }
func centerInk(p *palette.Palette) color.RGBA { return p.Center }
func pushInk(p *palette.Palette) color.RGBA   { return p.Push }
func pullInk(p *palette.Palette) color.RGBA   { return p.Pull }
func rearInk(p *palette.Palette) color.RGBA   { return p.Center }
func frontInk(p *palette.Palette) color.RGBA  { return p.Whole }
func wholeInk(p *palette.Palette) color.RGBA  { return p.Whole }

// sentence puts a sentence together unless its middle is empty.
func sentence(before, middle, after string) string {
	if middle == "" {
		return ""
	}
	return before + middle + after
}
