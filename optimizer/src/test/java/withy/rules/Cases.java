package withy.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import withy.fixture.Fixtures;

/** Collects the cases of the rules' checks: what is changed on the legal rod, and what the check must then say. */
final class Cases {
    enum Kind {
        KEPT,
        LIMIT,
        BROKEN,
        UNKNOWN,
        WARNED,
        NOT_APPLICABLE
    }

    record Case(String rule, String check, Kind kind, Consumer<Fixtures> change) {
        String id() {
            return rule + "." + check;
        }
    }

    private final List<Case> cases = new ArrayList<>();
    private final Set<String> always = new TreeSet<>();
    private String rule = "";

    List<Case> all() {
        return cases;
    }

    /** Checks that concern every brief and rod, so that "not applicable" cannot be said. */
    Set<String> always() {
        return always;
    }

    Cases rule(String code) {
        rule = code;
        return this;
    }

    Cases number(String check, BiConsumer<Fixtures, Double> set, double kept, double limit, double broken) {
        return three(check, set, kept, limit, broken, Kind.BROKEN);
    }

    Cases soft(String check, BiConsumer<Fixtures, Double> set, double kept, double limit, double warned) {
        return three(check, set, kept, limit, warned, Kind.WARNED);
    }

    Cases flag(String check, Consumer<Fixtures> kept, Consumer<Fixtures> broken) {
        return add(check, Kind.KEPT, kept).add(check, Kind.BROKEN, broken);
    }

    Cases not(String check, Consumer<Fixtures> change) {
        return add(check, Kind.NOT_APPLICABLE, change);
    }

    Cases always(String... checks) {
        for (String check : checks) {
            always.add(rule + "." + check);
        }
        return this;
    }

    Cases add(String check, Kind kind, Consumer<Fixtures> change) {
        cases.add(new Case(rule, check, kind, change));
        return this;
    }

    static BiConsumer<Fixtures, Double> part(String id, String path) {
        return (f, value) -> f.part(id, path, value);
    }

    static BiConsumer<Fixtures, Double> brief(String path) {
        return (f, value) -> f.brief(path, value);
    }

    /** A change made before the value is set. */
    static BiConsumer<Fixtures, Double> after(Consumer<Fixtures> base, BiConsumer<Fixtures, Double> set) {
        return (f, value) -> {
            base.accept(f);
            set.accept(f, value);
        };
    }

    static void legal(Fixtures rod) {
        // nothing is changed
    }

    private Cases three(
            String check, BiConsumer<Fixtures, Double> set, double kept, double limit, double beyond, Kind kind) {
        add(check, Kind.KEPT, f -> set.accept(f, kept));
        add(check, Kind.LIMIT, f -> set.accept(f, limit));
        return add(check, kind, f -> set.accept(f, beyond));
    }
}
