// Package browser opens the pages that this project makes in headless Chromium
// and looks for what a person would run into: errors, fields that do nothing,
// and barriers that axe-core finds.
//
// It needs Chromium (Debian's package) and axe-core (npm), both of which .ci/run
// installs. Where one is absent its tests say which and skip.
package browser

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	cdplog "github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// open starts a browser for a test. errors gathers what the page's console and
// scripts complain of.
func open(t *testing.T, width, height int) (ctx context.Context, errors func() []string) {
	t.Helper()
	path := ""
	for _, name := range []string{"chromium", "chromium-browser"} {
		if found, err := exec.LookPath(name); err == nil {
			path = found
			break
		}
	}
	if path == "" {
		t.Skip("Chromium is not on this machine (Debian's package chromium): the page was not opened")
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.WindowSize(width, height))
	ctx, stop := chromedp.NewExecAllocator(t.Context(), options...)
	t.Cleanup(stop)
	ctx, stop = context.WithTimeout(ctx, 90*time.Second)
	t.Cleanup(stop)
	ctx, stop = chromedp.NewContext(ctx)
	t.Cleanup(stop)
	said := make(chan string, 100)
	note := func(s string) {
		select {
		case said <- s:
		default:
		}
	}
	chromedp.ListenTarget(ctx, func(event any) {
		switch e := event.(type) {
		case *runtime.EventExceptionThrown:
			note(e.ExceptionDetails.Error())
		case *runtime.EventConsoleAPICalled:
			if e.Type == runtime.APITypeError || e.Type == runtime.APITypeWarning {
				note(fmt.Sprintf("console %s: %s", e.Type, e.Args[0].Value))
			}
		case *cdplog.EventEntryAdded:
			if e.Entry.Level == cdplog.LevelError {
				note(e.Entry.Text + " " + e.Entry.URL)
			}
		}
	})
	return ctx, func() (all []string) {
		for {
			select {
			case s := <-said:
				all = append(all, s)
			default:
				return all
			}
		}
	}
}

// serve serves a folder as a plain file server does.
func serve(t *testing.T, folder string) string {
	t.Helper()
	s := httptest.NewServer(http.FileServer(http.Dir(folder)))
	t.Cleanup(s.Close)
	return s.URL
}

// barriers is what axe-core finds on the page that is open.
func barriers(t *testing.T, ctx context.Context) []string {
	t.Helper()
	path := os.Getenv("AXE")
	if path == "" {
		path = filepath.Join("..", "bin", "axe", "node_modules", "axe-core", "axe.min.js")
	}
	script, err := os.ReadFile(path)
	if err != nil {
		t.Skipf("axe-core is not on this machine (npm's package axe-core, looked for at %s): barriers were not looked for", path)
	}
	var found string
	if err := chromedp.Run(ctx,
		chromedp.Evaluate(string(script)+"; true", nil),
		chromedp.Evaluate(`axe.run(document, {resultTypes: ["violations"]}).then((r) => JSON.stringify(r.violations.map((v) => v.id + ": " + v.help + " " + v.nodes.map((n) => n.target.join(" ")).join(", "))))`,
			&found, func(p *runtime.EvaluateParams) *runtime.EvaluateParams { return p.WithAwaitPromise(true) }),
	); err != nil {
		t.Fatal(err)
	}
	var list []string
	if err := json.Unmarshal([]byte(found), &list); err != nil {
		t.Fatal(err)
	}
	return list
}
