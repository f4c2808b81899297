package document_test

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
)

func BenchmarkDecode(b *testing.B) {
	engineText := written(invented())
	small := []byte(`{"blade": "0.070 mm", "enters": true, "pull_n": 2.5}`)

	b.Run("lib=document/op=engine", func(b *testing.B) {
		b.SetBytes(int64(len(engineText)))
		b.ReportAllocs()
		for b.Loop() {
			var e engine
			require.NoError(b, document.Decode(engineText, &e))
		}
	})
	b.Run("lib=encoding-json/op=engine", func(b *testing.B) {
		b.SetBytes(int64(len(engineText)))
		b.ReportAllocs()
		for b.Loop() {
			var e engine
			require.NoError(b, strictly(engineText, &e))
		}
	})
	b.Run("lib=document/op=trial", func(b *testing.B) {
		b.SetBytes(int64(len(small)))
		b.ReportAllocs()
		for b.Loop() {
			var t trial
			require.NoError(b, document.Decode(small, &t))
		}
	})
	b.Run("lib=encoding-json/op=trial", func(b *testing.B) {
		b.SetBytes(int64(len(small)))
		b.ReportAllocs()
		for b.Loop() {
			var t trial
			require.NoError(b, strictly(small, &t))
		}
	})
}

// strictly is the nearest that encoding/json has.
func strictly(data []byte, into any) error {
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	return d.Decode(into)
}
