package uncertainty

import "strconv"

// Text sets the analysis out as a table in plain text: for each cause its
// degrees of freedom, mean square, test, standard deviation, and its part in
// the variance and of the total.
func (v Variance) Text() string { return v.table().text() }

// Markdown sets the analysis out as a Markdown table.
func (v Variance) Markdown() string { return v.table().markdown() }

// String is the same as [Variance.Text].
func (v Variance) String() string { return v.Text() }

func (v Variance) table() table {
	t := table{left: 1, rows: [][]string{{"cause", "degrees of freedom", "mean square", "F", "by chance", "standard deviation", "of variance", "of total"}}}
	add := func(cause string, e Effect, component float64) {
		r := []string{cause, strconv.Itoa(e.Freedom), three(e.Mean) + " " + v.Unit + "²", "", ""}
		if e.F > 0 {
			r[3], r[4] = three(e.F), probability(e.Chance)
		}
		t.rows = append(t.rows, append(r, v.columns(component)...))
	}
	add("parts", v.PartEffect, v.Parts)
	add("operators", v.OperatorEffect, v.Operators)
	if v.Pooled {
		add("repeatability, with operators × parts", v.Error, v.Repeatability)
	} else {
		add("operators × parts", v.InterEffect, v.Interaction)
		add("repeatability", v.Error, v.Repeatability)
	}
	t.rows = append(t.rows,
		append([]string{"measuring", "", "", "", ""}, v.columns(v.Measuring())...),
		append([]string{"all", strconv.Itoa(v.Whole.Freedom), "", "", ""}, v.columns(v.Total())...))
	return t
}

// columns are a component, its part in the variance and of the total.
func (c Components) columns(component float64) []string {
	return []string{join(three(component), c.Unit), percent(c.ShareOfVariance(component)), percent(c.OfTotal(component))}
}

// Text sets the components out as a table in plain text.
func (c Components) Text() string { return c.table().text() }

// Markdown sets the components out as a Markdown table.
func (c Components) Markdown() string { return c.table().markdown() }

// String is the same as [Components.Text].
func (c Components) String() string { return c.Text() }

func (c Components) table() table {
	t := table{left: 1, rows: [][]string{{"cause", "standard deviation", "of variance", "of total"}}}
	for _, r := range []struct {
		cause string
		value float64
	}{{"parts", c.Parts}, {"operators", c.Operators}, {"operators × parts", c.Interaction}, {"repeatability", c.Repeatability}, {"measuring", c.Measuring()}, {"all", c.Total()}} {
		if r.value != 0 || r.cause != "operators × parts" {
			t.rows = append(t.rows, append([]string{r.cause}, c.columns(r.value)...))
		}
	}
	return t
}
