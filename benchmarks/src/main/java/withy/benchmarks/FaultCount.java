package withy.benchmarks;

import withy.rod.Rod;
import withy.rules.Bench;
import withy.rules.Judge;
import withy.rules.Rulebook;
import withy.rules.Unit;

/** Counts what a rod breaks. */
final class FaultCount implements Bench {
    private int faults;

    static int of(Rod rod, Rulebook rules) {
        FaultCount count = new FaultCount();
        Judge.ask(rod, rules, count);
        return count.faults;
    }

    @Override
    public void atMost(String check, double measured, double limit, Unit unit, String partId, String otherId) {
        faults += unit.quantise(measured) <= unit.quantise(limit) ? 0 : 1;
    }

    @Override
    public void atLeast(String check, double measured, double limit, Unit unit, String partId, String otherId) {
        faults += unit.quantise(measured) >= unit.quantise(limit) ? 0 : 1;
    }

    @Override
    public void holds(String check, boolean kept, String partId, String otherId) {
        faults += kept ? 0 : 1;
    }

    @Override
    public void unknown(String check, double limit, Unit unit, String partId) {
        faults++;
    }

    @Override
    public void notApplicable(String check) {
        // breaks nothing
    }

    @Override
    public void warnBelow(String check, double measured, double limit, Unit unit, String partId) {
        // breaks nothing
    }

    @Override
    public void warnAbove(String check, double measured, double limit, Unit unit, String partId) {
        // breaks nothing
    }
}
