package main

import (
	"fmt"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

// engine is the file.
type engine struct {
	Schema int      `json:"schema"`
	Engine string   `json:"engine"`
	Ways   []string `json:"ways"`
	Limits struct {
		Clearance  limits `json:"clearance,omitzero"`
		Rocking    limits `json:"rocking,omitzero"` // of the dial's travel itself
		Bore       limits `json:"bore,omitzero"`
		Stem       limits `json:"stem,omitzero"`
		Bell       limits `json:"bell,omitzero"`
		OutOfRound limits `json:"outOfRound,omitzero"`
		Taper      limits `json:"taper,omitzero"`
	} `json:"limits"`
	LeastMouth units.Length `json:"leastMouth,omitzero"` // the least clearance when new
	Repair     *repair      `json:"repair,omitempty"`
	Valves     []valve      `json:"valves"`
}

type limits struct {
	New  tolerance.Printed `json:"new,omitzero"`
	Wear tolerance.Printed `json:"wear,omitzero"`
}

func (l limits) spec() tolerance.Spec {
	return tolerance.Spec{New: l.New.BandOf, Wear: l.Wear.BandOf}
}

// repair is what there is to put guides right with.
type repair struct {
	Clearance tolerance.Printed `json:"clearance"` // wanted
	LeastCut  units.Length      `json:"leastCut,omitzero"`
	Outside   units.Length      `json:"outside,omitzero"` // of the guide
	LeastWall units.Length      `json:"leastWall,omitzero"`
	Stock     []struct {
		Name     string                 `json:"name"`
		Way      valvetrain.GuideRepair `json:"way"`
		Stem     tolerance.Bracket      `json:"stem,omitzero"`
		Opened   tolerance.Bracket      `json:"opened,omitzero"`
		Finished tolerance.Bracket      `json:"finished,omitzero"`
	} `json:"stock"`
}

// valve is one valve and its guide.
type valve struct {
	Where string `json:"where"`
	Guide []struct {
		Where string              `json:"where"`
		Depth units.Length        `json:"depth"`
		Bores []tolerance.Bracket `json:"bores"`
	} `json:"guide,omitempty"`
	Stem []struct {
		Where string              `json:"where"`
		Stems []tolerance.Bracket `json:"diameters"`
	} `json:"stem,omitempty"`
	Unworn tolerance.Bracket `json:"unworn,omitzero"` // the stem where it never runs in the guide
	Rocked *rocked           `json:"rocked,omitempty"`
}

type rocked struct {
	Travel  tolerance.Bracket `json:"travel"`
	Engaged tolerance.Bracket `json:"engaged"`
	Beyond  tolerance.Bracket `json:"beyond"`
	Stem    tolerance.Bracket `json:"stem"`
}

func read(name string, data []byte) (e engine, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return e, err
	}
	if err = document.DecodeNamed(name, data, &e); err != nil {
		return e, err
	}
	at := func(path, what string) error {
		where, _ := document.Locate(data, path)
		return fmt.Errorf("%s:%d: %s: %s", name, where.Line, path, what)
	}
	if len(e.Valves) == 0 {
		return e, at("valves", "there is no valve in the file")
	}
	seen := map[string]bool{}
	for i, v := range e.Valves {
		path := fmt.Sprintf("valves[%d]", i)
		switch {
		case v.Where == "" || seen[v.Where]:
			return e, at(path, fmt.Sprintf("each valve has a name of its own, which %.64q is not", v.Where))
		case (len(v.Guide) == 0) != (len(v.Stem) == 0):
			return e, at(path, "guide and stem go together")
		case len(v.Guide) == 0 && v.Rocked == nil:
			return e, at(path, "it was neither measured nor rocked")
		}
		seen[v.Where] = true
	}
	return e, nil
}

// survey is the valve's diameters; ok is false where they weren't measured.
func (e engine) survey(v valve) (s valvetrain.GuideSurvey, ok bool) {
	l := e.Limits
	s = valvetrain.GuideSurvey{Where: v.Where, Ways: e.Ways, Unworn: v.Unworn,
		ClearanceLimits: l.Clearance.spec(), BoreLimits: l.Bore.spec(), StemLimits: l.Stem.spec(),
		BellLimits: l.Bell.spec(), RoundLimits: l.OutOfRound.spec(), TaperLimits: l.Taper.spec()}
	for _, g := range v.Guide {
		s.Guide = append(s.Guide, valvetrain.GuideStation(g))
	}
	for _, x := range v.Stem {
		s.Stem = append(s.Stem, valvetrain.StemStation{Where: x.Where, Stems: x.Stems})
	}
	return s, len(v.Guide) > 0
}

func (e engine) rocking(v valve) valvetrain.Rocking {
	r := v.Rocked
	return valvetrain.Rocking{Where: v.Where, Travel: r.Travel, Engaged: r.Engaged, Beyond: r.Beyond, Stem: r.Stem,
		LeastMouth: e.LeastMouth, TravelLimits: e.Limits.Rocking.spec(), ClearanceLimits: e.Limits.Clearance.spec()}
}

// need is what the repair has to put right, by the readings of the survey.
func (r repair) need(s valvetrain.GuideSurvey) valvetrain.GuideNeed {
	n := valvetrain.GuideNeed{Where: s.Where, Clearance: r.Clearance.BandOf, LeastCut: r.LeastCut, Outside: r.Outside, LeastWall: r.LeastWall}
	for _, g := range s.Guide {
		n.Bores = append(n.Bores, g.Bores...)
	}
	var stems []tolerance.Bracket
	for _, x := range s.Stem {
		stems = append(stems, x.Stems...)
	}
	least, greatest := tolerance.Extremes(stems...)
	lo, loEnd := least.Lower()
	hi, hiEnd := greatest.Upper()
	n.Stem, _ = tolerance.NewInterval(lo, loEnd, hi, hiEnd)
	return n
}

func (r repair) options() (o []valvetrain.GuideOption) {
	for _, s := range r.Stock {
		o = append(o, valvetrain.GuideOption(s))
	}
	return o
}
