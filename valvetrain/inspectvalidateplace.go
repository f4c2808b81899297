package valvetrain

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

func (p *LimitsPlace) validate(c *inspectCheck, path string) {
	if p.Guide != nil {
		p.Guide.validate(c, path+".guide", p.Valve)
	}
	if p.Valve != nil {
		p.Valve.validate(c, path+".valve")
	}
	if p.Seat != nil {
		p.Seat.validate(c, path+".seat")
	}
	c.number(path+".springs", "springs of a valve", len(p.Springs), 0, 3)
	for i := range p.Springs {
		at := path + "." + inspection.Index("springs", i)
		for j := range i {
			c.want(at+".name", p.Springs[j].Name != p.Springs[i].Name, "spring", strconv.Quote(inputText(p.Springs[i].Name)), "listed once")
		}
		p.Springs[i].validate(c, at)
	}
	for _, f := range []struct {
		field string
		fit   *LimitsFit
	}{{".follower", p.Follower}, {".rocker", p.Rocker}} {
		if f.fit != nil {
			c.bound(path+f.field+".error", f.fit.Error)
			inspectLimit(c, path+f.field+".size", f.fit.Size)
			inspectLimit(c, path+f.field+".bore", f.fit.Bore)
			inspectLimit(c, path+f.field+".clearance", f.fit.Clearance)
		}
	}
	if p.Clearance != nil {
		p.Clearance.validate(c, path+".clearance")
	}
}

func (g *LimitsGuide) validate(c *inspectCheck, path string, valve *LimitsValve) {
	c.names(path+".levels", "levels of the guide", g.Levels, inspectStations)
	for _, x := range []struct {
		field string
		limit inspection.Limit
	}{{"bore", g.Bore}, {"bell", g.Bell}, {"outOfRound", g.OutOfRound}, {"clearance", g.Clearance}, {"rocking", g.Rocking}} {
		inspectLimit(c, path+"."+x.field, x.limit)
	}
	c.bound(path+".error", g.Error)
	c.bound(path+".dialError", g.DialError)
	c.want(path+".bell", g.Bell.IsZero() || len(g.Levels) > 2, "limit of the bell-mouth", g.Bell.New.String()+g.Bell.Wear.String(), "of use with fewer than three levels")
	c.want(path+".outOfRound", g.OutOfRound.IsZero() || len(g.Levels) > 0 && !g.OneWay, "limit of out-of-round", g.OutOfRound.New.String()+g.OutOfRound.Wear.String(), "of use without levels measured two ways")
	c.want(path+".bore", g.Bore.IsZero() || len(g.Levels) > 0, "limit of the bore", g.Bore.New.String()+g.Bore.Wear.String(), "of use without levels to measure it at")
	measured := len(g.Levels) > 0 && valve != nil && len(valve.Stations) > 0
	c.want(path+".clearance", g.Clearance.IsZero() || measured || !g.Rocking.IsZero(), "limit of the clearance", g.Clearance.New.String()+g.Clearance.Wear.String(), "of use without levels of the guide and stations of the stem")
	c.number(path+".stock", "ways in stock", len(g.Stock), 0, 64)
	for i, o := range g.Stock {
		at := path + "." + inspection.Index("stock", i)
		c.want(at+".name", o.Name != "", "name of a way", `""`, "named")
		c.want(at+".way", o.Way == OversizeStem || o.Way == GuideLiner || o.Way == NewGuide, "way", strconv.Quote(o.Way.String()), "oversize stem, guide liner or new guide")
		if c.err == nil {
			c.at(at, GuideOption(o).check(i))
		}
	}
	for _, x := range []struct {
		field string
		l     units.Length
	}{{"leastCut", g.LeastCut}, {"outside", g.Outside}, {"leastWall", g.LeastWall}} {
		c.at(path+"."+x.field, inputAllowance(x.field, x.l))
	}
}

func (v *LimitsValve) validate(c *inspectCheck, path string) {
	c.names(path+".stations", "stations of the stem", v.Stations, inspectStations)
	for _, x := range []struct {
		field string
		limit inspection.Limit
	}{{"stem", v.Stem}, {"taper", v.Taper}, {"margin", v.Margin}, {"faceRun", v.FaceRun}, {"stemRun", v.StemRun}, {"tipWear", v.TipWear}, {"length", v.Length}} {
		inspectLimit(c, path+"."+x.field, x.limit)
	}
	c.bound(path+".error", v.Error)
	c.want(path+".stem", v.Stem.IsZero() || len(v.Stations) > 0 || v.NewStem.IsZero(), "limit of the stem", v.Stem.New.String()+v.Stem.Wear.String(), "of use without stations to measure it at")
	c.want(path+".taper", v.Taper.IsZero() || len(v.Stations) > 1, "limit of the taper", v.Taper.New.String()+v.Taper.Wear.String(), "of use without two stations or more")
	if v.FaceAngle != (SeatAngle{}) {
		c.at(path+".faceAngle", v.FaceAngle.checkCone("angle of the face"))
	}
	c.at(path+".tipMost", inputAllowance("most off the tip", v.TipMost))
	c.span(path+".newStem", "stem of a new valve", v.NewStem)
}

func (s *LimitsSeat) validate(c *inspectCheck, path string) {
	for _, x := range []struct {
		field string
		limit inspection.Limit
	}{{"width", s.Width}, {"runOut", s.RunOut}, {"depth", s.Depth}, {"tipHeight", s.TipHeight}} {
		inspectLimit(c, path+"."+x.field, x.limit)
	}
	c.bound(path+".error", s.Error)
	if k := s.Cut; k != nil && c.err == nil {
		seat, err := SeatOfWidth(k.Angle, tolerance.Exactly(k.Outer), tolerance.Exactly(k.Width))
		if err == nil {
			seat.Inner = seat.Inner.Scale(99, 100) // one with some seat to cut
			_, err = SeatPlan{Seat: seat, Above: k.Above, Below: k.Below, Throat: k.Throat, Outer: k.Outer, Width: k.Width, CleanUp: k.CleanUp}.Plan()
		}
		c.at(path+".cut", err)
	}
}

func (s *LimitsSpring) validate(c *inspectCheck, path string) {
	for _, x := range []struct {
		field string
		limit inspection.Limit
	}{{"free", s.Free}, {"square", s.Square}, {"installed", s.Installed}, {"bind", s.Bind}} {
		inspectLimit(c, path+"."+x.field, x.limit)
	}
	c.number(path+".loads", "loads", len(s.Loads), 0, 8)
	for i, l := range s.Loads {
		at := path + "." + inspection.Index("loads", i)
		c.at(at+".at", inputSize("height of the load", l.At))
		c.want(at+".limit", !l.Limit.IsZero(), "limit", "none", "given")
		inspectLimit(c, at+".limit", l.Limit)
	}
	c.bound(path+".error", s.Error)
	c.want(path+".loadError", s.LoadError >= 0 && s.LoadError.InRange(), "error of the spring tester", s.LoadError.String(), "0 N or more")
	if !s.Bind.IsZero() {
		c.at(path+".lift", inputSize("lift of the valve", s.Lift))
	}
	c.at(path+".lift", inputAllowance("lift of the valve", s.Lift))
	c.span(path+".solid", "solid height", s.Solid)
	c.number(path+".mostShims", "shims on one another", s.MostShims, 0, 4)
	c.number(path+".shims", "spring shims in stock", len(s.Shims), 0, 40)
	for i, shim := range s.Shims {
		c.at(path+"."+inspection.Index("shims", i)+".thickness", inputBracket("spring shim", shim.Thickness, units.Picometre))
	}
}

func (l *LimitsClearance) validate(c *inspectCheck, path string) {
	c.want(path+".limit", !l.Limit.IsZero(), "limit", "none", "given")
	inspectLimit(c, path+".limit", l.Limit)
	c.want(path+".set", int(l.Set) < len(clearanceSetNames), "what sets the clearance", l.Set.String(), "shim or screw, or left out")
	if l.Set != SetByOther {
		c.at(path+".limit", clearanceBand(l.wanted()))
	}
	c.at(path+".ratio", clearanceRatio("ratio of blade to shim or screw", ratioOrOne(l.Ratio)))
	if l.Pitch != 0 {
		c.at(path+".pitch", screwThread(l.Pitch, ratioOrOne(l.Ratio)))
	}
	c.bound(path+".error", l.Error)
}
