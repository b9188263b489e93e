package withy.catalog;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.UnaryOperator;

/** Faults of one file, up to a bound; past it one line says how many more there are. */
final class FaultList {
    private final String file;
    private final List<Fault> faults = new ArrayList<>();
    private int more;
    private UnaryOperator<String> written = UnaryOperator.identity();

    FaultList(String file) {
        this.file = file;
    }

    /** From now on columns are told by the names the file has for them. */
    void columnsAs(UnaryOperator<String> names) {
        written = names;
    }

    void add(int line, String column, String value, String problem, String allowed, String maybe) {
        if (faults.size() < Limits.FAULTS) {
            faults.add(new Fault(file, line, written.apply(column), value, problem, allowed, maybe));
        } else {
            more++;
        }
    }

    void add(Fault fault) {
        add(fault.line(), fault.column(), fault.value(), fault.problem(), fault.allowed(), fault.maybe());
    }

    int size() {
        return faults.size() + more;
    }

    List<Fault> list() {
        List<Fault> all = new ArrayList<>(faults);
        all.sort(Comparator.comparingInt(Fault::line));
        if (more == 0) {
            return List.copyOf(all);
        }
        all.add(new Fault(file, 0, "", "", "has " + more + " more faults", "", "mend the first ones and look again"));
        return all;
    }
}
