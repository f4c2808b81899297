package batch

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

var errOdd = errors.New("odd")

// shout is a job whose records take different times.
func shout(notes *[]string) Job {
	return Job{
		Work: func(dst, record []byte) ([]byte, error) {
			if bytes.Contains(record, []byte("bad")) {
				return dst, errOdd
			}
			if len(record)%3 == 0 {
				time.Sleep(time.Millisecond)
			}
			return append(dst, bytes.ToUpper(record)...), nil
		},
		Note: func(line int, err error) {
			if err != nil {
				*notes = append(*notes, fmt.Sprintf("%d: %v", line, err))
			}
		},
		Workers: 4,
	}
}

func TestRun(t *testing.T) {
	var in, want strings.Builder
	for i := range 500 {
		fmt.Fprintf(&in, "record %d%s\n", i, strings.Repeat("x", i%7))
		want.WriteString(strings.ToUpper(fmt.Sprintf("record %d%s\n", i, strings.Repeat("x", i%7))))
		if i == 250 {
			in.WriteString("\n  \nbad one\n") // lines 252 to 254
		}
	}
	in.WriteString("no end of line")
	want.WriteString("NO END OF LINE\n")
	var out bytes.Buffer
	var notes []string
	require.NoError(t, shout(&notes).Run(t.Context(), strings.NewReader(in.String()), &out))
	require.Equal(t, want.String(), out.String())
	require.Equal(t, []string{"254: odd"}, notes)
	out.Reset()
	require.NoError(t, shout(&notes).Run(t.Context(), strings.NewReader(""), &out))
	require.Empty(t, out.String())
	require.NoError(t, Job{Work: shout(&notes).Work}.Run(t.Context(), strings.NewReader("a\nbad\nb\n"), &out))
	require.Equal(t, "A\nB\n", out.String())
}

// A line of 100 MB is refused by its number, in no more memory than a record
// may have, and what follows is worked.
func TestTooLong(t *testing.T) {
	long := io.MultiReader(strings.NewReader("a\n"), io.LimitReader(endless{}, 100<<20), strings.NewReader("\nb\n"))
	var out bytes.Buffer
	var notes []string
	began := time.Now()
	require.NoError(t, shout(&notes).Run(t.Context(), long, &out))
	require.Less(t, time.Since(began), 5*time.Second)
	require.Equal(t, "A\nB\n", out.String())
	require.Equal(t, []string{"2: " + ErrTooLong.Error()}, notes)
}

type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = 'x'
	}
	return len(p), nil
}

// What was written when it is interrupted are whole lines.
func TestInterrupt(t *testing.T) {
	ctx, stop := context.WithCancelCause(t.Context())
	why := errors.New("interrupted")
	var out bytes.Buffer
	job := shout(new([]string))
	n := 0
	job.Note = func(int, error) {
		if n++; n == 100 {
			stop(why)
		}
	}
	waiting, end := io.Pipe() // no more comes, and no end
	defer end.Close()
	err := job.Run(ctx, io.MultiReader(strings.NewReader(strings.Repeat("a record\n", 5000)), waiting), &out)
	require.ErrorIs(t, err, why)
	require.True(t, strings.HasSuffix(out.String(), "A RECORD\n"))
	require.Equal(t, 100, strings.Count(out.String(), "A RECORD\n"))
	require.Len(t, out.String(), 100*len("A RECORD\n"))
}

func TestFailures(t *testing.T) {
	var out bytes.Buffer
	job := shout(new([]string))
	err := job.Run(t.Context(), io.MultiReader(strings.NewReader("a\nb\n"), broken{}), &out)
	require.ErrorIs(t, err, io.ErrUnexpectedEOF)
	require.ErrorContains(t, err, "line 3")
	require.Equal(t, "A\nB\n", out.String(), "what was read before is answered")
	require.ErrorIs(t, job.Run(t.Context(), strings.NewReader(strings.Repeat("a\n", 1000)), broken{}), io.ErrClosedPipe)
}

type broken struct{}

func (broken) Read([]byte) (int, error)  { return 0, io.ErrUnexpectedEOF }
func (broken) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

// Memory is the same for a thousand records and for a hundred thousand.
func TestMemory(t *testing.T) {
	record := strings.Repeat("r", 2000) + "\n"
	peak := func(records int) uint64 {
		var most uint64
		n := 0
		job := Job{Work: func(dst, record []byte) ([]byte, error) { return append(dst, record...), nil }, Note: func(int, error) {
			if n++; n%500 == 0 {
				var m runtime.MemStats
				runtime.GC()
				runtime.ReadMemStats(&m)
				most = max(most, m.HeapAlloc)
			}
		}}
		require.NoError(t, job.Run(t.Context(), &repeated{record, records}, io.Discard))
		return most
	}
	few, many := peak(1000), peak(20_000)
	require.Less(t, many, few+4<<20)
}

type repeated struct {
	record string
	left   int
}

func (r *repeated) Read(p []byte) (int, error) {
	if r.left == 0 {
		return 0, io.EOF
	}
	r.left--
	return copy(p, r.record), nil
}

func BenchmarkRun(b *testing.B) {
	record := strings.Repeat("r", 2000) + "\n"
	job := Job{Work: func(dst, record []byte) ([]byte, error) { return append(dst, record...), nil }}
	b.Run("lib=tenthou/op=record", func(b *testing.B) {
		b.ReportAllocs()
		if err := job.Run(b.Context(), &repeated{record, b.N}, io.Discard); err != nil {
			b.Fatal(err)
		}
	})
}
