package scene

import (
	"image"

	"bowline/plotting/raster"

	xfont "golang.org/x/image/font"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/font/liberation"
	"gonum.org/v1/plot/vg"
)

// Sizes of letters [px].
const (
	Letter = 12.0 // in labels and tags
	small  = 11.0
)

// letters are the faces that pictures are written in. Their digits are all of one
// width.
type letters struct {
	plain, bold, small font.Face
	canvas             *raster.Canvas // that words are measured with
}

func newLetters() *letters {
	fonts := font.NewCache(liberation.Collection())
	face := func(size float64, weight xfont.Weight) font.Face {
		return fonts.Lookup(font.Font{Typeface: "Liberation", Variant: "Sans", Weight: weight}, vg.Length(size))
	}
	return &letters{
		plain: face(Letter, xfont.WeightNormal), bold: face(Letter, xfont.WeightBold), small: face(small, xfont.WeightNormal),
		canvas: raster.New(image.NewRGBA(image.Rect(0, 0, 1, 1)), pointsPerInch),
	}
}

// width returns how wide words are in a face [px].
func (l *letters) width(f font.Face, text string) float64 {
	return float64(l.canvas.TextWidth(f, text))
}
