package withy.oracle;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.catalog.Adhesive;
import withy.catalog.Arbor;
import withy.catalog.Blank;
import withy.catalog.ButtCap;
import withy.catalog.Catalog;
import withy.catalog.Check;
import withy.catalog.Decal;
import withy.catalog.FerruleKind;
import withy.catalog.Finish;
import withy.catalog.Grip;
import withy.catalog.Guide;
import withy.catalog.Hood;
import withy.catalog.Keeper;
import withy.catalog.Material;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.ReelSeat;
import withy.catalog.RodType;
import withy.catalog.TipTop;
import withy.catalog.WrapThread;
import withy.rod.Build;
import withy.rod.Build.Choice;

/**
 * Where everything of a build lies, worked out a second time from the handbook's words: sections 5 to 7 and the trade tables. Only the records of
 * parts, brief and build are shared with the product.
 */
final class SecondRod {
    final Catalog catalog;
    final Brief brief;
    final Build build;
    final Map<String, Choice> at;
    final Blank blank;
    final int foot;
    final int count;
    final boolean split;
    final double hand;
    final List<double[]> joints = new ArrayList<>();
    final double[] guideX;
    final boolean spaced;

    final @Nullable ButtCap cap;
    final @Nullable Grip buttGrip;
    final @Nullable Grip rearGrip;
    final @Nullable Check rearCheck;
    final @Nullable ReelSeat seat;
    final @Nullable Hood hood;
    final @Nullable Arbor arbor;
    final @Nullable Check foreCheck;
    final @Nullable Grip foreGrip;
    final @Nullable Check windingCheck;
    final @Nullable Keeper keeper;
    final @Nullable Decal decal;
    final @Nullable TipTop tip;
    final WrapThread thread;
    final Finish finish;
    final Adhesive adhesive;

    double seatFrom;
    double seatTo;
    double rearGripFrom;
    double rearGripLength;
    double buttGripLength;
    double foreGripFrom;
    double foreGripLength;
    double rearCheckFrom;
    double foreCheckFrom;
    double windingCheckFrom;
    double front;

    SecondRod(Catalog catalog, Brief brief, Build build) {
        this.catalog = catalog;
        this.brief = brief;
        this.build = build;
        this.at = build.choices().entrySet().stream()
                .collect(Collectors.toMap(e -> e.getKey().key(), Map.Entry::getValue));
        Part wanted = catalog.find(build.layout().blankId());
        if (!(wanted instanceof Blank found)) {
            throw new IllegalArgumentException("no blank");
        }
        this.blank = found;
        this.foot = build.layout().reelFootMm();
        this.count = build.layout().guideCount();
        this.split = build.layout().form() == HandleForm.SPLIT;
        this.hand = brief.rodType() == RodType.CASTING ? foot - 25 : foot;
        this.cap = part("buttCap", ButtCap.class);
        this.buttGrip = part("buttGrip", Grip.class);
        this.rearGrip = part("rearGrip", Grip.class);
        this.rearCheck = part("rearCheck", Check.class);
        this.seat = part("seat", ReelSeat.class);
        this.hood = seat == null ? null : part("hood", Hood.class);
        this.arbor = seat == null ? null : part("seatArbors", Arbor.class);
        this.foreCheck = part("foreCheck", Check.class);
        this.foreGrip = part("foreGrip", Grip.class);
        this.windingCheck = part("windingCheck", Check.class);
        this.keeper = part("keeper", Keeper.class);
        this.decal = part("decal", Decal.class);
        this.tip = part("tipTop", TipTop.class);
        Comparator<WrapThread> byId = Comparator.comparing(WrapThread::id);
        WrapThread first = catalog.all(PartKind.THREAD, WrapThread.class).stream()
                .min(byId)
                .orElseThrow();
        this.thread = Objects.requireNonNullElse(part("thread", WrapThread.class), first);
        this.finish = instead("finish", Finish.class, catalog.rates().houseFinish());
        this.adhesive = instead("adhesive", Adhesive.class, catalog.rates().houseAdhesive());
        joints();
        handle();
        SecondSpacing spacing = new SecondSpacing(this, count);
        this.guideX = spacing.x;
        this.spaced = spacing.even;
    }

    <P extends Part> @Nullable P part(String station, Class<P> type) {
        Choice choice = at.get(station);
        Part part = choice == null ? null : catalog.find(choice.partId());
        return part == null ? null : type.cast(part);
    }

    /** What is measured with where the build names none. */
    private <P extends Part> P instead(String station, Class<P> type, String house) {
        P own = part(station, type);
        return own != null ? own : type.cast(Objects.requireNonNull(catalog.find(house)));
    }

    @Nullable
    Guide guide(int number) {
        return part("guide-" + number, Guide.class);
    }

    /** Parts with a place on the rod, once a station. */
    List<Part> placed() {
        List<Part> parts = all();
        parts.removeIf(part ->
                part.kind() == PartKind.THREAD || part.kind() == PartKind.FINISH || part.kind() == PartKind.ADHESIVE);
        return parts;
    }

    /** Every part of the build, once a station. */
    List<Part> all() {
        List<Part> parts = new ArrayList<>();
        parts.add(blank);
        build.choices().forEach((station, choice) -> {
            Part part = catalog.find(choice.partId());
            boolean beyond = station.number() > count;
            boolean loose = seat == null
                    && (station.key().equals("hood") || station.key().equals("seatArbors"));
            if (part != null && !beyond && !loose) {
                parts.add(part);
            }
        });
        return parts;
    }

    private void joints() {
        if (blank.ferruleKind() == FerruleKind.NONE) {
            return;
        }
        double tipward = 0;
        List<Double> lengths = blank.sectionLengthsMm();
        for (int i = 0; i < lengths.size() - 1; i++) {
            tipward = i == 0 ? lengths.get(0) : tipward + lengths.get(i) - blank.ferruleOverlapMm();
            joints.add(new double[] {tipward - blank.ferruleOverlapMm(), tipward});
        }
    }

    private void handle() {
        seatFrom = foot - (seat == null ? 0 : seat.footCentreMm());
        seatTo = seatFrom + (seat == null ? 0 : seat.lengthMm());
        rearCheckFrom = seatFrom - (rearCheck == null ? 0 : rearCheck.widthMm());
        if (rearGrip != null) {
            rearGripLength = split ? cut("rearGrip", rearGrip) : rearCheckFrom;
        }
        rearGripFrom = rearCheckFrom - rearGripLength;
        buttGripLength = buttGrip == null ? 0 : cut("buttGrip", buttGrip);
        foreCheckFrom = seatTo;
        foreGripFrom = foreCheckFrom + (foreCheck == null ? 0 : foreCheck.widthMm());
        foreGripLength = foreGrip == null ? 0 : cut("foreGrip", foreGrip);
        windingCheckFrom = foreGripFrom + foreGripLength;
        front = windingCheckFrom + (windingCheck == null ? 0 : windingCheck.widthMm());
    }

    private double cut(String station, Grip grip) {
        Choice choice = at.get(station);
        return choice == null || choice.cutMm() <= 0 ? grip.lengthMm() : choice.cutMm();
    }

    /** Outer diameter; on a step the tip's side. */
    double od(double x) {
        List<Blank.OdStation> s = blank.stations();
        if (x <= s.get(0).xMm()) {
            return s.get(0).odMm();
        }
        for (int i = s.size() - 1; i > 0; i--) {
            double x0 = s.get(i - 1).xMm();
            double x1 = s.get(i).xMm();
            if (x >= x1) {
                return s.get(i).odMm();
            }
            if (x >= x0 && x1 > x0) {
                return s.get(i - 1).odMm()
                        + (x - x0) / (x1 - x0) * (s.get(i).odMm() - s.get(i - 1).odMm());
            }
        }
        return s.get(0).odMm();
    }

    /** Largest outer diameter on a stretch: at its ends, or at a station within. */
    double thickest(double from, double to) {
        double most = Math.max(od(from), od(to));
        for (Blank.OdStation s : blank.stations()) {
            most = s.xMm() >= from && s.xMm() <= to ? Math.max(most, s.odMm()) : most;
        }
        return most;
    }

    static boolean foam(Grip grip) {
        Material m = grip.facts().material();
        return m == Material.EVA || m == Material.FOAM || m == Material.RUBBER;
    }

    /** Bores at the rear and front end of a grip as fitted. */
    double[] bores(Grip grip, double from, double length) {
        double thick = thickest(from, from + length);
        if (foam(grip)) {
            double bore = grip.boreMm() < 0.85 * thick ? 0.95 * thick : grip.boreMm();
            return new double[] {bore, bore};
        }
        return new double[] {Math.max(grip.boreMm(), od(from) + 0.2), Math.max(grip.boreMm(), od(from + length) + 0.2)};
    }

    /** Radial gap that tape has to fill under a loose grip, or 0. */
    double loose(Grip grip, double from, double length) {
        double over = grip.boreMm() - thickest(from, from + length);
        return over > (foam(grip) ? 0 : 0.3) ? over / 2 : 0;
    }

    /** Radial gap of the seat at the thick end. */
    double seatGap(ReelSeat s) {
        return (s.boreMm() - thickest(seatFrom, seatTo)) / 2;
    }

    int rings(double length) {
        return length >= 110 || brief.durabilityClass() >= 4 ? 3 : 2;
    }

    /** Composite Simpson rule; the stretch has no kink inside. */
    static double simpson(double from, double to, DoubleUnaryOperator f) {
        int n = 64;
        double h = (to - from) / n;
        double sum = f.applyAsDouble(from) + f.applyAsDouble(to);
        for (int i = 1; i < n; i++) {
            sum += (i % 2 == 0 ? 2 : 4) * f.applyAsDouble(from + i * h);
        }
        return sum * h / 3;
    }
}
