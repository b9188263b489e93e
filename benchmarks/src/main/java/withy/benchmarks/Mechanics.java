package withy.benchmarks;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToIntFunction;
import withy.app.MachineSheet;
import withy.app.Machines;
import withy.app.TrainSheet;
import withy.app.Trains;
import withy.objectives.Solver.Solution;
import withy.rod.Build;
import withy.rod.Rod;
import withy.search.Search;

/** How long one mechanical report and one design of guide trains take, warm, on the best rods of a few scenarios. Told, never judged. */
final class Mechanics {
    /** Aims of the project, ms. */
    private static final int REPORT_AIM_MS = 50;

    private static final int DESIGN_AIM_MS = 200;

    /** Runs thrown away before, and counted after. */
    private static final int COLD = 40;

    private static final int COUNTED = 25;
    private static final int SECONDS = 20;
    private static final List<String> SCENARIOS =
            List.of("brook-trout-cork", "kayak-estuary", "harbour-jigging", "beach-surf");

    private Mechanics() {}

    static void tell(Path home, PrintStream out) throws IOException {
        Shop shop = Shop.bench();
        out.printf(Locale.ROOT, "%-20s %-28s %10s %10s %10s%n", "rod", "what", "median ms", "least ms", "most ms");
        for (Scenario scenario : Scenario.all(home, shop.catalog())) {
            if (SCENARIOS.contains(scenario.name())) {
                Solution best = new Search(shop.catalog()).solve(scenario.query(), new Cap(SECONDS).watch());
                Build build = best.build();
                if (build == null) {
                    out.println(scenario.name() + ": no build found in " + SECONDS + " s");
                    continue;
                }
                Rod rod = Rod.measure(shop.catalog(), scenario.query().brief(), build);
                tell(out, scenario, "report, aim " + REPORT_AIM_MS + " ms", rod, r -> trusted(Machines.of(r)));
                tell(out, scenario, "guide trains, aim " + DESIGN_AIM_MS + " ms", rod, r -> trusted(Trains.of(r)));
            }
        }
    }

    private static void tell(PrintStream out, Scenario scenario, String what, Rod rod, ToIntFunction<Rod> job) {
        List<Double> ms = new ArrayList<>();
        int trusted = 0;
        for (int run = 0; run < COLD + COUNTED; run++) {
            long start = System.nanoTime();
            trusted = job.applyAsInt(rod);
            if (run >= COLD) {
                ms.add(Job.millisSince(start));
            }
        }
        Spread spread = Spread.of(ms);
        out.printf(
                Locale.ROOT,
                "%-20s %-28s %10.1f %10.1f %10.1f   %d shapes%n",
                scenario.name(),
                what,
                spread.medianMs(),
                spread.leastMs(),
                spread.mostMs(),
                trusted);
    }

    private static int trusted(MachineSheet sheet) {
        MachineSheet.Line test = sheet.staticTest();
        return (sheet.working().doubt() == null ? 1 : 0) + (test != null && test.doubt() == null ? 1 : 0);
    }

    private static int trusted(TrainSheet sheet) {
        return (int) sheet.trains().stream().filter(t -> t.doubt() == null).count();
    }
}
