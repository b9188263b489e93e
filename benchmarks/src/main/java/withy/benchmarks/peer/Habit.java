package withy.benchmarks.peer;

import java.util.Comparator;
import java.util.function.ToDoubleFunction;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.Wish;
import withy.catalog.Blank;
import withy.rod.Layout;
import withy.rod.Rod;

/** A builder's habit: the lightest (or cheapest) blank, fewest guides, the reel in the middle of the reach, then the best part station by station. */
public final class Habit implements Peer {
    /** How far the rear of a seat lies behind the reel foot's middle of the reach at most, mm. ASSUMED. */
    private static final double CAP_MM = 7;

    private final String name;
    private final ToDoubleFunction<Rod> worst;
    private final Comparator<Blank> first;

    private Habit(String name, ToDoubleFunction<Rod> worst, Comparator<Blank> first) {
        this.name = name;
        this.worst = worst;
        this.first = first;
    }

    public static Habit lightest() {
        return new Habit(
                "habit: lightest part by part",
                rod -> rod.figures().weightG(),
                Comparator.comparingLong(Blank::massMg));
    }

    public static Habit cheapest() {
        return new Habit(
                "habit: cheapest part by part",
                rod -> rod.figures().priceMinor(),
                Comparator.comparingLong(blank -> blank.facts().priceMinor()));
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public String setUp() {
        return "ours; one pass, nothing is taken back";
    }

    @Override
    public boolean proves() {
        return false;
    }

    @Override
    public void run(Question question, Race race) {
        Brief brief = question.query().brief();
        double middle = (brief.reachMinMm() + brief.reachMaxMm()) / 2 - CAP_MM;
        Wish<HandleForm> form = brief.handle().form();
        HandleForm wanted = form == null ? HandleForm.SPLIT : form.value();
        Comparator<Layout> usual = Comparator.<Layout, Blank>comparing(layout -> blank(question, layout), first)
                .thenComparing(layout -> layout.form() == wanted ? 0 : 1)
                .thenComparing(Layout::guideCount)
                .thenComparing(layout -> Math.abs(layout.reelFootMm() - middle));
        question.layouts().stream()
                .min(usual)
                .ifPresent(layout -> race.offer(new StationByStation(question, question.menu(), worst).on(layout)));
    }

    private static Blank blank(Question question, Layout layout) {
        if (question.catalog().find(layout.blankId()) instanceof Blank blank) {
            return blank;
        }
        throw new IllegalStateException(layout.blankId() + " is no blank");
    }
}
