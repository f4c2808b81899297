package units

import (
	"bytes"
	"database/sql"
	"database/sql/driver"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

func (s suite[Q, P]) encoders(t *testing.T) {
	type sheet struct {
		Value   Q
		Pointer *Q
		Keyed   map[Q]string
		Written Written[Q]
		Unit    Unit[Q]
	}
	rnd, table := seeded(), s.table()
	for range 500 {
		v, p := Q(table.sample(rnd)), Q(table.sample(rnd))
		if v == p {
			continue
		}
		u := Unit[Q](rnd.IntN(len(table.units)))
		in := sheet{Value: v, Pointer: &p, Keyed: map[Q]string{v: "a", p: "b"}, Written: Written[Q]{Value: v}, Unit: u}
		if n, ok := v.Places(u); ok {
			in.Written = Written[Q]{Value: v, Unit: u, Places: uint8(n)}
		} else {
			in.Written = Written[Q]{}
		}
		data, err := json.Marshal(in)
		require.NoError(t, err)
		var out sheet
		require.NoError(t, json.Unmarshal(data, &out), "%s", data)
		require.Empty(t, cmp.Diff(in, out), "%s", data)
		quoted, err := json.Marshal(v.String())
		require.NoError(t, err)
		require.Contains(t, string(data), `"Value":`+string(quoted))
		require.Contains(t, string(data), string(quoted)+`:"a"`)

		var flagged Q
		set := flag.NewFlagSet("", flag.ContinueOnError)
		set.SetOutput(io.Discard)
		set.TextVar(P(&flagged), "x", p, "")
		require.Equal(t, p, flagged)
		require.NoError(t, set.Parse([]string{"-x", v.String()}))
		require.Equal(t, v, flagged)
		require.Error(t, set.Parse([]string{"-x", "1"}), "no unit")

		var buf bytes.Buffer
		slog.New(slog.NewJSONHandler(&buf, nil)).Info("", "q", v)
		require.Contains(t, buf.String(), `"q":`+string(quoted))
		buf.Reset()
		slog.New(slog.NewTextHandler(&buf, nil)).Info("", "q", v)
		require.Regexp(t, `q="?`+regexpQuote(v.String())+`"?\n$`, buf.String())
	}
	var q Q
	require.Error(t, json.Unmarshal([]byte(`5`), &q), "a bare number has no unit")
	require.ErrorIs(t, json.Unmarshal([]byte(`"5"`), &q), ErrNoUnit)
	var m map[Q]int
	require.ErrorIs(t, json.Unmarshal([]byte(`{"5":1}`), &m), ErrNoUnit)
	require.NoError(t, json.Unmarshal([]byte(`null`), &q))
	q = 7
	require.Error(t, P(&q).UnmarshalText([]byte("x")))
	require.Equal(t, Q(7), q, "kept where there is an error")
	for _, v := range table.beyond() {
		_, err := json.Marshal(Q(v))
		require.ErrorIs(t, err, ErrRange)
		_, err = json.Marshal(map[Q]int{Q(v): 1}) // which drops the chain of errors
		require.ErrorContains(t, err, ErrRange.Error())
		out, err := Q(v).AppendText([]byte("x"))
		require.ErrorIs(t, err, ErrRange)
		require.Equal(t, "x", string(out))
		_, err = AppendText(nil, Q(v))
		require.ErrorIs(t, err, ErrRange)
	}
}

func regexpQuote(s string) string {
	for _, c := range `\.+*?()|[]{}^$` {
		s = strings.ReplaceAll(s, string(c), `\`+string(c))
	}
	return s
}

func TestEncoders(t *testing.T) { each(t, tester.encoders) }

func (s suite[Q, P]) databases(t *testing.T) {
	rnd, table := seeded(), s.table()
	for range 500 {
		v := Q(table.sample(rnd))
		value, err := v.Value()
		require.NoError(t, err)
		require.Equal(t, int64(v), value)
		require.True(t, driver.IsValue(value))
		var got Q
		for _, src := range []any{value, v.String(), []byte(v.String())} {
			got = 1
			require.NoError(t, P(&got).Scan(src))
			require.Equal(t, int64(v), int64(got))
		}
		null := sql.Null[Q]{V: v, Valid: true}
		value, err = null.Value()
		require.NoError(t, err)
		if valuer, ok := value.(driver.Valuer); ok { // as database/sql does, on older releases
			value, err = valuer.Value()
			require.NoError(t, err)
		}
		require.Equal(t, int64(v), value)
		var back sql.Null[Q]
		require.NoError(t, back.Scan(value))
		require.Equal(t, null, back)
		require.NoError(t, back.Scan(nil))
		require.False(t, back.Valid)
	}
	got := Q(7)
	for src, kind := range map[any]error{
		nil: ErrSyntax, 0.5: ErrSyntax, true: ErrSyntax, "5": ErrNoUnit, "": ErrSyntax, int32(5): ErrSyntax,
		int64(outOfRange): ErrRange, int64(limit + 1): ErrRange, table.least - 1: ErrRange,
		[1]struct{ AVeryLongNameOfAFieldThatFillsTheErrorText, AnotherVeryLongNameOfAField int }{}: ErrSyntax,
	} {
		err := P(&got).Scan(src)
		require.ErrorIs(t, err, kind, "%v", src)
		require.Equal(t, Q(7), got, "kept where there is an error")
		require.Less(t, len(err.Error()), 300)
	}
	for _, v := range table.beyond() {
		_, err := Q(v).Value()
		require.ErrorIs(t, err, ErrRange)
	}
}

func TestDatabases(t *testing.T) { each(t, tester.databases) }

func TestRangeError_text(t *testing.T) {
	_, err := OutOfRange[Length]().MarshalText()
	require.EqualError(t, err, "units: encode length -9223372036854775808 quanta: out of range; within -2305843009 mm to 2305843009 mm")
	var l Length
	require.EqualError(t, l.Scan(nil), "units: scan length <nil>: not written as a quantity; a whole number of quanta or text; for NULL use sql.Null")
	_, err = Written[Length]{Value: 1}.MarshalText()
	require.EqualError(t, err, "units: encode length 0 mm: finer than the quantum; as many places as show the value exactly")
}

func (s suite[Q, P]) formats(t *testing.T) {
	rnd, table := seeded(), s.table()
	first := &table.units[0]
	for range 500 {
		v := Q(table.sample(rnd))
		text := v.String()
		require.Equal(t, text, fmt.Sprint(v))
		require.Equal(t, text, fmt.Sprintf("%s", v))
		require.Equal(t, v.Text(0, 3), fmt.Sprintf("%.3v", v))
		require.Equal(t, fmt.Sprintf("%q", text), fmt.Sprintf("%q", v))
		require.Equal(t, fmt.Sprint(int64(v)), fmt.Sprintf("%d", v))
		require.Equal(t, fmt.Sprintf("%+d", int64(v)), fmt.Sprintf("%+d", v))
		require.Equal(t, fmt.Sprintf("%s(%d)", table.goType, int64(v)), fmt.Sprintf("%#v", v))
		require.Equal(t, fmt.Sprintf("%%!x(%s=%s)", table.goType, text), fmt.Sprintf("%x", v))
		require.Equal(t, fmt.Sprintf("%40s|%-40s|", text, text), fmt.Sprintf("%40v|%-40v|", v, v))
		require.Equal(t, fmt.Sprintf("[%s]", text), fmt.Sprint([]Q{v}))
		plus := text
		if !strings.HasPrefix(text, "-") && strings.ContainsAny(text, "123456789") {
			plus = "+" + text
		}
		require.Equal(t, plus, fmt.Sprintf("%+v", v))
	}
	one := Q(first.quanta)
	require.Equal(t, "+1.00"+fmt.Sprintf("%s", one)[1:], fmt.Sprintf("%+.2v", one))
	for _, verb := range []rune{'x', 'é'} {
		require.Equal(t, "%!"+string(verb)+"("+table.goType+"="+one.String()+")", fmt.Sprintf("%"+string(verb), one))
	}
	for _, v := range table.beyond() {
		for _, verb := range []string{"%v", "%+v", "%s", "%.2v"} {
			require.Equal(t, table.quantity+" out of range", fmt.Sprintf(verb, Q(v)))
		}
		require.Equal(t, fmt.Sprint(v), fmt.Sprintf("%d", Q(v)), "%%d is the count of quanta whatever it is")
		require.Equal(t, table.quantity+" out of range", Q(v).String())
		require.Equal(t, table.quantity+" out of range", Q(v).Text(0, 3))
	}
	require.True(t, utf8.ValidString(fmt.Sprint(one)))
}

func TestFormats(t *testing.T) { each(t, tester.formats) }
