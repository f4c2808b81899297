package browser

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// inspected is the report on the invented engine and its bench sheet, written
// once by their own recipe.
var inspected = sync.OnceValues(func() (string, error) {
	folder := filepath.Join(temporary, "inspection")
	for _, args := range [][]string{{"-out", folder}, {"-blank", "-out", filepath.Join(temporary, "sheet")}} {
		run := exec.Command("go", append([]string{"run", "./examples/inspection"}, args...)...)
		run.Dir = filepath.Join("..", "..")
		if said, err := run.CombinedOutput(); err != nil {
			return "", fmt.Errorf("%w\n%s", err, said)
		}
	}
	return temporary, nil
})

// The report and the bench sheet open without an error or a barrier, on a wide
// page, a phone and in the dark, need nothing from elsewhere, and print.
func TestReport(t *testing.T) {
	folder, err := inspected()
	require.NoError(t, err)
	for _, c := range []struct {
		name, file, scheme string
		width, height      int64
	}{
		{"report-light", "inspection/report.html", "light", 1200, 900}, {"report-dark", "inspection/report.html", "dark", 1200, 900},
		{"report-phone", "inspection/report.html", "light", 360, 740}, {"sheet", "sheet/sheet.html", "light", 1000, 900}, {"sheet-phone", "sheet/sheet.html", "light", 360, 740},
	} {
		t.Run(c.name, func(t *testing.T) {
			ctx, errors := open(t, int(c.width), int(c.height))
			var wide bool
			var outside int
			require.NoError(t, chromedp.Run(ctx,
				emulation.SetEmulatedMedia().WithFeatures([]*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: c.scheme}}),
				chromedp.EmulateViewport(c.width, c.height),
				chromedp.Navigate(serve(t, folder)+"/"+c.file),
				chromedp.WaitReady("main"),
				chromedp.Evaluate(`document.documentElement.scrollWidth > document.documentElement.clientWidth`, &wide),
				chromedp.Evaluate(`performance.getEntriesByType("resource").filter((r) => !r.name.startsWith("data:")).length`, &outside),
			))
			require.False(t, wide, "nothing to scroll sideways")
			require.Zero(t, outside, "the page needs nothing else")
			require.Empty(t, barriers(t, ctx))
			require.Empty(t, errors())
			if to := os.Getenv("SCREENSHOTS"); to != "" {
				var png []byte
				require.NoError(t, chromedp.Run(ctx, chromedp.CaptureScreenshot(&png)))
				require.NoError(t, os.WriteFile(filepath.Join(to, c.name+".png"), png, 0o644))
			}
		})
	}
}

// On A4 and on Letter everything stays within the paper.
func TestReport_prints(t *testing.T) {
	folder, err := inspected()
	require.NoError(t, err)
	for name, paper := range map[string][2]float64{"a4": {8.27, 11.69}, "letter": {8.5, 11}} {
		ctx, _ := open(t, 1200, 900)
		var pdf []byte
		require.NoError(t, chromedp.Run(ctx,
			chromedp.Navigate(serve(t, folder)+"/inspection/report.html"),
			chromedp.ActionFunc(func(ctx context.Context) (err error) {
				pdf, _, err = page.PrintToPDF().WithPaperWidth(paper[0]).WithPaperHeight(paper[1]).WithPreferCSSPageSize(false).Do(ctx)
				return err
			}),
		))
		require.Greater(t, len(pdf), 20_000)
		if to := os.Getenv("SCREENSHOTS"); to != "" {
			require.NoError(t, os.WriteFile(filepath.Join(to, "report-"+name+".pdf"), pdf, 0o644))
		}
	}
}
