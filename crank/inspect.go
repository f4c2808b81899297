package crank

import (
	"slices"

	"github.com/tenthou/tenthou/tolerance/inspection"
)

// Inspect holds what was measured to what is allowed, and decides: bolts, rods,
// crankshaft, shells, thrust washers, balance and oil pump, in the order of the
// bench. A document that is half filled in is the normal case: there are findings
// for what is there, a line for each reading that is missing, and no decision on
// what nobody has looked at. Undecided is not a pass. [Limits.Prepare] is quicker
// for many engines.
//
// It fails, with an error that has its path ([inspection.PathError]), where the
// limits or the readings can't be: a size below zero, two parts with one number, a
// cap on another's housing. Readings that contradict each other are no error but a
// slip ([inspection.Slip]), and what rests on them is measured again.
func Inspect(l *Limits, r *Readings) (inspection.Report, error) {
	return l.Prepare().Inspect(r)
}

// Inspect is the function of that name, by limits that were made ready.
func (in *Inspector) Inspect(r *Readings) (inspection.Report, error) {
	if in.err != nil {
		return inspection.Report{}, in.err
	}
	if err := in.l.check(r); err != nil {
		return inspection.Report{}, err
	}
	x := &shaftRun{in: in, l: &in.l, d: r, begun: r.begun()}
	x.r.Slips = slices.Clone(in.slips)
	x.r.Findings = make([]inspection.Finding, 0, in.room)
	x.r.Decisions = make([]inspection.Decision, 0, 3*in.mains.n+2*in.pins.n+3*in.rods.n+8)
	x.allBolts()
	x.rods()
	x.crankshaft()
	x.predictJournals(&x.mains)
	x.predictJournals(&x.pins)
	x.orderShaft()
	x.shells(&in.shells, r.MainBearings, &x.mains)
	x.shells(&in.ends, r.BigEnds, &x.pins)
	x.thrust()
	x.balance()
	x.pump()
	x.predictOil(&in.shells, &x.mains)
	x.predictOil(&in.ends, &x.pins)
	if x.err != nil {
		return inspection.Report{}, x.err
	}
	x.r.Cautions = x.cautions()
	return x.r, nil
}

// orderShaft orders another crankshaft, where that is decided.
func (x *shaftRun) orderShaft() {
	for i := range x.r.Decisions {
		if d := &x.r.Decisions[i]; d.Step == inspection.StepCrank && d.Part == "crankshaft" && d.Action >= inspection.Replace {
			x.r.Orders = append(x.r.Orders, inspection.Order{Step: inspection.StepCrank, What: "crankshaft", Count: 1, Sure: true})
		}
	}
}

// cautions are those that apply to what is to be done.
func (x *shaftRun) cautions() []string {
	if !x.begun {
		return nil
	}
	list := []string{"Lift a crankshaft with a hoist and slings, stand it on end or lay it in blocks, and keep hands from between its webs."}
	for i := range x.r.Decisions {
		d := &x.r.Decisions[i]
		text := ""
		switch {
		case d.Step == inspection.StepCrank && d.Action == inspection.ReconditionTo:
			text = "Test a crankshaft for cracks before and after grinding, and restore the fillets: it breaks there. A nitrided or built-up journal is not ground without the maker's own process."
		case d.Step == inspection.StepRods && d.Action > inspection.CleanAndReUse:
			text = "A rod with a cracked cap is not straightened, nor its joint touched. Never file a cap or a rod to close a bore up."
		case d.Step == inspection.StepBolts && (x.l.MainBolts.Yield || x.l.RodBolts.Yield):
			text = "Bolts that were tightened to yield are used once."
		case d.Step == inspection.StepShells && d.Action == inspection.Replace:
			text = "Backs of shells and housings go together clean and dry; prove the oil clearance at assembly, and turn the shaft by hand."
		case d.Step == inspection.StepBalance && d.Action == inspection.ReconditionSame:
			text = "Wear eye protection and stand clear of a spinning shaft, with its guards on. Plugs go in parallel to the shaft, so that they can't fly out."
		case d.Step == inspection.StepOilPump && d.Part != pumpWhere:
			text = "A relief valve's spring is under load: wear eye protection, and take its plug out slowly."
		}
		if text != "" && !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	return list
}
