package main

import (
	"context"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/internal/recipe/recipetest"
)

func TestGolden(t *testing.T) {
	recipetest.Golden(t, run, nil, "", recipe.Answered, "testdata/default.golden")
	recipetest.Golden(t, run, []string{"-listen", "nowhere at all"}, "", recipe.Refused, "testdata/address.golden")
	recipetest.Usage(t, run, 0)
}

func TestHandler(t *testing.T) {
	good := questions[0]
	for _, c := range []struct {
		name, method, path, body string
		status                   int
		say                      string
	}{
		{"good", "POST", "/judge", good, 200, `"as new"`},
		{"nothing", "POST", "/judge", "", 422, "empty"},
		{"cut short", "POST", "/judge", good[:40], 422, "cut short"},
		{"number for a reading", "POST", "/judge", strings.Replace(good, `"[0.0508 mm, 0.0635 mm)"`, "0.05", 1), 422, "readings[0]"},
		{"no readings", "POST", "/judge", strings.Replace(good, `"[0.0508 mm, 0.0635 mm)"`, "", 1), 422, "no reading given"},
		{"limits contradict", "POST", "/judge", strings.Replace(good, "max 0.15 mm", "max 0.05 mm", 1), 422, "wear"},
		{"twice", "POST", "/judge", strings.Replace(good, `{"measure"`, `{"where": "x", "measure"`, 1), 422, "twice"},
		{"deep", "POST", "/judge", strings.Repeat("[", 10_000), 422, "wrong type"},
		{"long", "POST", "/judge", `{"measure": "` + strings.Repeat("x", mostBytes) + `"}`, 413, "65536 bytes"},
		{"read", "GET", "/judge", "", 405, ""},
		{"elsewhere", "POST", "/", good, 404, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := httptest.NewRecorder()
			handler().ServeHTTP(w, httptest.NewRequest(c.method, c.path, strings.NewReader(c.body)))
			require.Equal(t, c.status, w.Code, w.Body)
			require.Contains(t, w.Body.String(), c.say)
			require.Less(t, w.Body.Len(), 2000)
		})
	}
	w := httptest.NewRecorder()
	handler().ServeHTTP(w, httptest.NewRequest("POST", "/judge", io.MultiReader(strings.NewReader(good[:9]), broken{})))
	require.Equal(t, 400, w.Code)
}

type broken struct{}

func (broken) Read([]byte) (int, error) { return 0, io.ErrUnexpectedEOF }

// An interrupt lets a request under way finish, and takes no new one.
func TestShutdown(t *testing.T) {
	stop, cancel := context.WithCancel(t.Context())
	defer cancel()
	listener, err := new(net.ListenConfig).Listen(stop, "tcp", "127.0.0.1:0")
	require.NoError(t, err)
	done := make(chan error, 1)
	go func() { done <- serve(stop, listener) }()

	body, write := io.Pipe()
	answered := make(chan int, 1)
	go func() {
		r, err := http.Post("http://"+listener.Addr().String()+"/judge", "application/json", body)
		if err != nil {
			answered <- 0
			return
		}
		r.Body.Close()
		answered <- r.StatusCode
	}()
	_, err = io.WriteString(write, questions[0][:20]) // the request is under way
	require.NoError(t, err)
	time.Sleep(50 * time.Millisecond)
	cancel()
	time.Sleep(50 * time.Millisecond)
	_, err = io.WriteString(write, questions[0][20:])
	require.NoError(t, err)
	require.NoError(t, write.Close())
	require.Equal(t, 200, <-answered)
	require.NoError(t, <-done)
	_, err = net.Dial("tcp", listener.Addr().String())
	require.Error(t, err)

	closed, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	require.NoError(t, closed.Close())
	require.Error(t, serve(t.Context(), closed))
}
