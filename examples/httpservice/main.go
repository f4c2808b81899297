// Httpservice answers: how does shop software offer these checks over HTTP?
//
// Method: one handler reads a small JSON document strictly, judges it with
// package tolerance and answers with the finding as JSON. A request has a
// largest size and a largest time, a wrong one is answered with the line and
// the field, and an interrupt lets the requests under way finish.
//
// Source: RFC 8259 (JSON), RFC 9110 (HTTP status codes); the finding's arithmetic
// is that of package tolerance.
//
// For: shop software.
//
// Caution: an answer over a wire is no more than the reading that went in.
// Undecided is not a pass, and the engine maker's manual governs. The service
// has no log-in and no encryption: keep it behind something that has.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/signal"
	"strings"
	"time"

	"github.com/tenthou/tenthou/internal/recipe"
)

// finish is how long requests under way may take after an interrupt.
const finish = 5 * time.Second

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, _ io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("httpservice", "How does shop software offer these checks over HTTP?\n\n"+
		"Without flags it starts, asks itself four questions, prints what was answered and stops.\n"+
		"With -listen it serves POST /judge until it is interrupted.", errs)
	address := flags.String("listen", "", "serve on this `ADDRESS`, such as 127.0.0.1:8080")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	if *address == "" {
		if err := demonstrate(out); err != nil {
			return flags.Fail(err)
		}
		return recipe.Answered
	}
	stop, cancel := signal.NotifyContext(context.Background(), os.Interrupt)
	defer cancel()
	listener, err := new(net.ListenConfig).Listen(stop, "tcp", *address)
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprintf(errs, "httpservice: POST http://%s/judge; interrupt to stop\n", listener.Addr())
	if err := serve(stop, listener); err != nil {
		return flags.Fail(err)
	}
	return recipe.Answered
}

// serve answers requests until the context ends, and then lets those under way
// finish.
func serve(stop context.Context, listener net.Listener) error {
	server := &http.Server{
		Handler:           handler(),
		ReadHeaderTimeout: 2 * time.Second,
		ReadTimeout:       5 * time.Second,
		WriteTimeout:      5 * time.Second,
		IdleTimeout:       30 * time.Second,
		MaxHeaderBytes:    8 << 10,
	}
	failed := make(chan error, 1)
	go func() { failed <- server.Serve(listener) }()
	select {
	case err := <-failed:
		return err
	case <-stop.Done():
	}
	last, cancel := context.WithTimeout(context.Background(), finish)
	defer cancel()
	if err := server.Shutdown(last); err != nil {
		return err
	}
	if err := <-failed; !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

// questions are what the demonstration asks: a good groove, one that can't be
// told, a reading without its unit, and a misspelt field.
var questions = []string{
	`{"measure": "ring side clearance", "where": "piston 1, top groove", "new": "0.03–0.07 mm", "wear": "max 0.15 mm", "readings": ["[0.0508 mm, 0.0635 mm)"]}`,
	`{"measure": "ring side clearance", "where": "piston 2, top groove", "new": "0.03–0.07 mm", "readings": ["[0.0635 mm, 0.0762 mm)"]}`,
	`{"measure": "end float", "where": "crankshaft", "new": ".003–.009 in", "readings": [".006"]}`,
	`{"measure": "end float", "where": "crankshaft", "nwe": ".003–.009 in", "readings": [".006 in"]}`,
}

// demonstrate serves on a free port of this machine, asks and prints.
func demonstrate(out io.Writer) error {
	stop, cancel := context.WithCancel(context.Background())
	defer cancel()
	listener, err := new(net.ListenConfig).Listen(stop, "tcp", "127.0.0.1:0")
	if err != nil {
		return err
	}
	failed := make(chan error, 1)
	go func() { failed <- serve(stop, listener) }()
	client := &http.Client{Timeout: 10 * time.Second}
	for _, q := range questions {
		request, err := http.NewRequestWithContext(stop, http.MethodPost, "http://"+listener.Addr().String()+"/judge", strings.NewReader(q))
		if err != nil {
			return err
		}
		request.Header.Set("Content-Type", "application/json")
		answer, err := client.Do(request)
		if err != nil {
			return err
		}
		body, err := io.ReadAll(answer.Body)
		if err = errors.Join(err, answer.Body.Close()); err != nil {
			return err
		}
		fmt.Fprintf(out, "POST /judge\n%s\n\n%s\n%s\n", q, answer.Status, body)
	}
	client.CloseIdleConnections()
	cancel()
	return <-failed
}
