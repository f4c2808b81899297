// Package scaled uses no package units: nothing is refused.
package scaled

import "time"

const ratio = 25 / 64

func wait(d time.Duration, n int) time.Duration {
	d++
	_ = 1 / 2 * d
	return d*d + 5 + time.Duration(n)*time.Second + ratio
}
