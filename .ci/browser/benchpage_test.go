package browser

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"
)

// made is the bench page, written once by its own recipe; a test that changes
// it works on a copy.
func made(t *testing.T) string {
	t.Helper()
	folder, err := benchPage()
	require.NoError(t, err)
	return folder
}

var benchPage = sync.OnceValues(func() (string, error) {
	folder := filepath.Join(temporary, "benchpage")
	build := exec.Command("go", "run", "./examples/benchpage", "-out", folder)
	build.Dir = filepath.Join("..", "..")
	said, err := build.CombinedOutput()
	if err != nil {
		return "", fmt.Errorf("%w\n%s", err, said)
	}
	return folder, nil
})

// temporary holds what the tests of this package make.
var temporary string

func TestMain(m *testing.M) {
	var err error
	if temporary, err = os.MkdirTemp("", "tenthou-browser-"); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	code := m.Run()
	if err := os.RemoveAll(temporary); err != nil {
		fmt.Fprintln(os.Stderr, err)
		code = 1
	}
	os.Exit(code)
}

// The page loads, answers when a field changes, names what is wrong, and can be
// worked by the keyboard alone.
func TestBenchPage(t *testing.T) {
	ctx, errors := open(t, 1100, 900)
	address := serve(t, made(t))
	var says, after, wrong, invalid, focused string
	var drawn, wide bool
	require.NoError(t, chromedp.Run(ctx,
		chromedp.Navigate(address),
		chromedp.WaitReady(`html[data-ready="yes"]`),
		chromedp.Text("#blades-answer .says", &says),
		chromedp.Evaluate(`document.querySelector("#blades-picture svg title").textContent.length > 0`, &drawn),
		chromedp.SetValue("#blades-tried", ".0015 in free, .002 in drag, .0025 in refused"),
		chromedp.Evaluate(`document.querySelector("#blades-tried").dispatchEvent(new Event("input", {bubbles: true}))`, nil),
		chromedp.WaitReady(`//strong[contains(., "within the band")]`),
		chromedp.Text("#blades-answer .says", &after),
		chromedp.SetValue("#blades-new", "0.03–0.07"),
		chromedp.Evaluate(`document.querySelector("#blades-new").dispatchEvent(new Event("input", {bubbles: true}))`, nil),
		chromedp.WaitReady(`#blades-new[aria-invalid="true"]`),
		chromedp.Text("#blades-new-error", &wrong),
		chromedp.AttributeValue("#blades-new", "aria-invalid", &invalid, nil),
		chromedp.Focus("#blades-set"),
		chromedp.KeyEvent(kb.Tab),
		chromedp.Evaluate(`document.activeElement.id`, &focused),
		chromedp.Evaluate(`document.documentElement.scrollWidth > document.documentElement.clientWidth`, &wide),
	))
	require.Equal(t, "can't tell, which is not a pass", says)
	require.True(t, drawn, "the picture has a title")
	require.Equal(t, "within the band for new parts", after)
	require.Contains(t, wrong, "no unit")
	require.Equal(t, "true", invalid)
	require.Equal(t, "blades-tried", focused)
	require.False(t, wide, "nothing to scroll sideways")
	require.Empty(t, errors())
}

// Without the library the examples are still answered, and the page says so.
func TestBenchPage_withoutLibrary(t *testing.T) {
	ctx, _ := open(t, 1100, 900)
	folder := filepath.Join(t.TempDir(), "page")
	require.NoError(t, os.CopyFS(folder, os.DirFS(made(t))))
	require.NoError(t, os.Remove(filepath.Join(folder, "tenthou.wasm")))
	var says, state string
	require.NoError(t, chromedp.Run(ctx,
		chromedp.Navigate(serve(t, folder)),
		chromedp.WaitReady(`//p[@id="state" and contains(., "did not load")]`),
		chromedp.Text("#blades-answer .says", &says),
		chromedp.Text("#state", &state),
	))
	require.Equal(t, "can't tell, which is not a pass", says)
	require.Contains(t, state, "404")
}

// Neither in the light nor in the dark, wide or narrow, does axe-core find a
// barrier, and nothing has to be scrolled sideways on a phone.
func TestBenchPage_barriers(t *testing.T) {
	folder := made(t)
	for _, c := range []struct {
		name, scheme  string
		width, height int64
	}{{"light", "light", 1100, 900}, {"dark", "dark", 1100, 900}, {"phone", "light", 360, 740}} {
		t.Run(c.name, func(t *testing.T) {
			ctx, errors := open(t, int(c.width), int(c.height))
			var wide bool
			require.NoError(t, chromedp.Run(ctx,
				emulation.SetEmulatedMedia().WithFeatures([]*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: c.scheme}}),
				chromedp.EmulateViewport(c.width, c.height),
				chromedp.Navigate(serve(t, folder)),
				chromedp.WaitReady(`html[data-ready="yes"]`),
				chromedp.Evaluate(`document.documentElement.scrollWidth > document.documentElement.clientWidth`, &wide),
			))
			require.False(t, wide)
			if to := os.Getenv("SCREENSHOTS"); to != "" {
				var png []byte
				require.NoError(t, chromedp.Run(ctx, chromedp.FullScreenshot(&png, 100)))
				require.NoError(t, os.WriteFile(filepath.Join(to, "benchpage-"+c.name+".png"), png, 0o644))
			}
			require.Empty(t, barriers(t, ctx))
			require.Empty(t, errors())
		})
	}
}
