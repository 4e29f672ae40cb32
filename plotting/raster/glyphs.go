package raster

import (
	"maps"
	"sync/atomic"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// typefaces holds what is known of every font used so far. The map is replaced
// as a whole when a font joins, so that reading it takes no lock.
var typefaces atomic.Pointer[map[*sfnt.Font]*typeface]

func init() { typefaces.Store(&map[*sfnt.Font]*typeface{}) }

// typeface caches what drawing needs of a font, in font units. It is safe for
// concurrent use: an entry found missing is worked out and stored by whoever
// comes first, and later comers store the same.
type typeface struct {
	font   *sfnt.Font
	em     fixed.Int26_6 // Units per em, also the size all values are read at.
	glyphs []atomic.Pointer[glyph]
	runes  slots // Rune to glyph index.
	kerns  slots // Pair of glyph indices to kerning.
}

// glyph is an outline in font units, y up, with its advance width.
type glyph struct {
	advance int
	box     box
	curves  []curve
}

// curve is a piece of an outline: a move (0 control points and start set), a
// line (0), a quadratic (1) or a cubic (2) Bézier curve, ending at pts[controls].
type curve struct {
	start    bool
	controls int
	pts      [3]point
}

// typefaceOf returns the cache of the font.
func typefaceOf(f *sfnt.Font) *typeface {
	for {
		known := typefaces.Load()
		if t := (*known)[f]; t != nil {
			return t
		}
		more := maps.Clone(*known)
		more[f] = &typeface{
			font:   f,
			em:     fixed.Int26_6(f.UnitsPerEm()),
			glyphs: make([]atomic.Pointer[glyph], f.NumGlyphs()),
		}
		typefaces.CompareAndSwap(known, &more)
	}
}

// index returns the glyph of a rune, 0 when the font has none.
func (t *typeface) index(buf *sfnt.Buffer, r rune) sfnt.GlyphIndex {
	if v, ok := t.runes.get(uint32(r)); ok {
		return sfnt.GlyphIndex(v)
	}
	x, err := t.font.GlyphIndex(buf, r)
	if err != nil {
		x = 0
	}
	t.runes.put(uint32(r), uint16(x))
	return x
}

// kern returns what is added to the advance between two glyphs. Like
// font.Face.Width it reads the kerning at font size, which makes it exact.
func (t *typeface) kern(buf *sfnt.Buffer, a, b sfnt.GlyphIndex) int {
	pair := uint32(a)<<16 | uint32(b)
	if v, ok := t.kerns.get(pair); ok {
		return int(int16(v))
	}
	k, err := t.font.Kern(buf, a, b, t.em, font.HintingNone)
	if err != nil {
		k = 0
	}
	t.kerns.put(pair, uint16(int16(k)))
	return int(k)
}

// glyph returns the outline of a glyph. One that cannot be loaded is blank.
func (t *typeface) glyph(buf *sfnt.Buffer, x sfnt.GlyphIndex) *glyph {
	if int(x) >= len(t.glyphs) {
		return &glyph{}
	}
	if g := t.glyphs[x].Load(); g != nil {
		return g
	}
	g := t.load(buf, x)
	t.glyphs[x].Store(g)
	return g
}

// load reads a glyph from the font.
func (t *typeface) load(buf *sfnt.Buffer, x sfnt.GlyphIndex) *glyph {
	g := &glyph{box: emptyBox()}
	if advance, err := t.font.GlyphAdvance(buf, x, t.em, font.HintingNone); err == nil {
		g.advance = int(advance)
	}
	segments, err := t.font.LoadGlyph(buf, x, t.em, nil)
	if err != nil {
		return g
	}
	for _, s := range segments {
		c := curve{start: s.Op == sfnt.SegmentOpMoveTo}
		switch s.Op {
		case sfnt.SegmentOpQuadTo:
			c.controls = 1
		case sfnt.SegmentOpCubeTo:
			c.controls = 2
		}
		for i, a := range s.Args[:c.controls+1] {
			c.pts[i] = point{float64(a.X), -float64(a.Y)}
			g.box.include(c.pts[i])
		}
		g.curves = append(g.curves, c)
	}
	return g
}

// slots is a small cache from 32-bit keys to 16-bit values. Keys that share a
// slot displace one another, which costs time but never the right answer.
type slots [1 << 12]atomic.Uint64

// taken marks a slot in use, between its value and its key.
const taken = 1 << 16

// slot returns the place of a key.
func (s *slots) slot(key uint32) *atomic.Uint64 {
	// The top 12 bits of a product with 2^32 over the golden ratio.
	return &s[key*2654435769>>20]
}

// get returns the value of a key, if it is there.
func (s *slots) get(key uint32) (uint16, bool) {
	v := s.slot(key).Load()
	return uint16(v), v>>16 == uint64(key)<<16|1
}

// put stores the value of a key.
func (s *slots) put(key uint32, value uint16) {
	s.slot(key).Store(uint64(key)<<32 | taken | uint64(value))
}
