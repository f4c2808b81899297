// Package batch works through a stream of JSON lines on all cores with constant
// memory: answers come out in the order of the records, a record that can't be
// used is reported with its line and passed over, and an interrupt leaves whole
// lines only.
package batch

import (
	"bufio"
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"runtime"
	"sync"
)

// MostBytes is the longest record.
const MostBytes = 8 << 20

// ErrTooLong is of a record longer than that.
var ErrTooLong = fmt.Errorf("a record is %d bytes at most", MostBytes)

// A Job is what is done with each record.
type Job struct {
	// Work turns a record into a line without its end, appended to dst. It is
	// called from several goroutines at once, and must not keep the record.
	Work func(dst, record []byte) ([]byte, error)
	// Note is called in order, for each record, with its line from 1 and what
	// went wrong, or nil.
	Note    func(line int, err error)
	Workers int // 0 for one a core
}

// task is a record on its way; done is closed when it is worked.
type task struct {
	line   int
	record []byte
	answer []byte
	err    error
	done   chan struct{}
}

// Run reads records to the end, or to an interrupt, whose error it gives; every
// line that was written is whole. An empty line is no record.
func (j Job) Run(ctx context.Context, in io.Reader, out io.Writer) error {
	workers := j.Workers
	if workers < 1 {
		workers = runtime.GOMAXPROCS(0)
	}
	halt := make(chan struct{})            // closed when no more is to be read
	queue := make(chan *task, 4*workers)   // in order, for writing
	pending := make(chan *task, 4*workers) // in any order, for working
	var free sync.Pool
	var group sync.WaitGroup
	for range workers {
		group.Go(func() {
			for t := range pending {
				if t.err == nil {
					t.answer, t.err = j.Work(t.answer[:0], t.record)
				}
				close(t.done)
			}
		})
	}
	var unread error
	group.Go(func() {
		defer close(queue)
		defer close(pending)
		unread = read(in, func(line int, record []byte, err error) bool {
			t, ok := free.Get().(*task)
			if !ok {
				t = new(task)
			}
			t.line, t.record, t.err, t.done = line, append(t.record[:0], record...), err, make(chan struct{})
			select {
			case queue <- t:
				pending <- t
				return true
			case <-halt:
				return false
			}
		})
	})
	err := j.write(ctx, queue, out, &free)
	close(halt)
	if ctx.Err() != nil {
		return err // the reader may wait for input for ever: it ends with it
	}
	for t := range queue { // what was taken is worked, and let go
		<-t.done
	}
	group.Wait()
	return cmp.Or(err, unread)
}

// write writes the answers in order, several whole lines at a time.
func (j Job) write(ctx context.Context, queue <-chan *task, out io.Writer, free *sync.Pool) error {
	const batch = 64 << 10
	var lines []byte
	flush := func() error {
		if len(lines) == 0 {
			return nil
		}
		_, err := out.Write(lines)
		lines = lines[:0]
		return err
	}
	for {
		if ctx.Err() != nil { // before one more that is ready
			return errors.Join(context.Cause(ctx), flush())
		}
		select {
		case <-ctx.Done():
			return errors.Join(context.Cause(ctx), flush())
		case t, ok := <-queue:
			if !ok {
				return flush()
			}
			<-t.done
			if t.err == nil {
				lines = append(append(lines, t.answer...), '\n')
			}
			if j.Note != nil {
				j.Note(t.line, t.err)
			}
			free.Put(t)
			if len(lines) >= batch || len(queue) == 0 {
				if err := flush(); err != nil {
					return err
				}
			}
		}
	}
}

// read gives each line to take, until that is done. A line that is too long is
// passed over without being held.
func read(in io.Reader, take func(line int, record []byte, err error) bool) error {
	r := bufio.NewReaderSize(in, 256<<10)
	var record []byte
	for line := 1; ; line++ {
		record = record[:0]
		long := false
		for {
			piece, err := r.ReadSlice('\n')
			if len(record)+len(piece) > MostBytes {
				long = true
			} else {
				record = append(record, piece...)
			}
			if errors.Is(err, bufio.ErrBufferFull) {
				continue
			}
			if err != nil && !errors.Is(err, io.EOF) {
				return fmt.Errorf("line %d: %w", line, err)
			}
			record = bytes.TrimSpace(record)
			switch {
			case long:
				if !take(line, nil, ErrTooLong) {
					return nil
				}
			case len(record) > 0:
				if !take(line, record, nil) {
					return nil
				}
			}
			if err != nil {
				return nil
			}
			break
		}
	}
}
