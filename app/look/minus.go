package look

import (
	"encoding/binary"
	"slices"
	"sync"

	"bowline/model/units"

	"fyne.io/fyne/v2"
	"golang.org/x/image/font/sfnt"
)

// figureDash is as wide as a figure and in Fyne's fonts lies where the bar of a
// plus lies: it is drawn as their minus, which they lack.
const figureDash = '‒'

// Font implements fyne.Theme. Its fonts have a minus.
func (t *Theme) Font(style fyne.TextStyle) fyne.Resource { return withMinus(t.Theme.Font(style)) }

// fonts are the fonts with a minus that have been made, by those without.
var fonts sync.Map

// withMinus returns a font with a glyph for units.Minus: f itself when it has one
// or no figure dash to draw for it.
func withMinus(f fyne.Resource) fyne.Resource {
	if made, ok := fonts.Load(f); ok {
		return made.(fyne.Resource)
	}
	made := f
	if content, ok := drawMinus(f.Content()); ok {
		made = fyne.NewStaticResource("minus-"+f.Name(), content)
	}
	first, _ := fonts.LoadOrStore(f, made) // of those that other goroutines have made
	return first.(fyne.Resource)
}

// drawMinus returns a TrueType font with its map of letters to glyphs (cmap, in
// the segmented coverage of format 12: OpenType specification, "cmap") replaced
// by one that has the minus as well.
func drawMinus(content []byte) (with []byte, ok bool) {
	font, err := sfnt.Parse(content)
	if err != nil {
		return nil, false
	}
	var buffer sfnt.Buffer
	glyph := func(r rune) uint32 {
		g, err := font.GlyphIndex(&buffer, r)
		if err != nil {
			return 0
		}
		return uint32(g)
	}
	minus, dash := []rune(units.Minus)[0], glyph(figureDash)
	if glyph(minus) != 0 || dash == 0 {
		return nil, false
	}
	var groups [][3]uint32 // first and last letter, glyph of the first
	for r := range rune(0x10000) {
		g := glyph(r)
		if r == minus {
			g = dash
		}
		last := len(groups) - 1
		switch {
		case g == 0:
		case last >= 0 && groups[last][1]+1 == uint32(r) && groups[last][2]+uint32(r)-groups[last][0] == g:
			groups[last][1]++
		default:
			groups = append(groups, [3]uint32{uint32(r), uint32(r), g})
		}
	}
	table := binary.BigEndian.AppendUint64(nil, 0x0000_0001_0003_000A) // version 0, one map: Windows, all of Unicode
	table = binary.BigEndian.AppendUint64(table, 12<<32|12<<16)        // at byte 12, in format 12
	for _, x := range []uint32{uint32(16 + 12*len(groups)), 0, uint32(len(groups))} {
		table = binary.BigEndian.AppendUint32(table, x)
	}
	for _, g := range groups {
		for _, x := range g {
			table = binary.BigEndian.AppendUint32(table, x)
		}
	}
	with = slices.Clone(content)
	for len(with)%4 != 0 {
		with = append(with, 0)
	}
	for entry := 12; entry < 12+16*int(binary.BigEndian.Uint16(content[4:])); entry += 16 {
		if string(with[entry:entry+4]) == "cmap" {
			binary.BigEndian.PutUint32(with[entry+4:], sum(table))
			binary.BigEndian.PutUint32(with[entry+8:], uint32(len(with)))
			binary.BigEndian.PutUint32(with[entry+12:], uint32(len(table)))
		}
	}
	return append(with, table...), true
}

// sum returns a table's checksum.
func sum(table []byte) uint32 {
	var total uint32
	for i := 0; i < len(table); i += 4 {
		total += binary.BigEndian.Uint32(table[i:])
	}
	return total
}
