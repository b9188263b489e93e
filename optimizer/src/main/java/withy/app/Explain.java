package withy.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import withy.app.BuildSheet.TradeOffLine;
import withy.app.BuildSheet.VerdictLine;
import withy.app.DrawerAnswer.DrawerLine;
import withy.app.Reasons.BuildLine;
import withy.app.Reasons.ImpossibleLines;
import withy.app.WhyAnswer.BindingLine;
import withy.app.WhyAnswer.ShareLine;
import withy.app.WhyAnswer.SwapLine;
import withy.brief.Brief;
import withy.brief.BriefWriter;
import withy.catalog.Catalog;
import withy.explain.Breach;
import withy.explain.Drawer;
import withy.explain.Finding;
import withy.explain.Found;
import withy.explain.Impossible;
import withy.explain.Inquiry;
import withy.explain.Lighter;
import withy.explain.Missed;
import withy.explain.Phrases;
import withy.explain.Sensitivity;
import withy.explain.TradeOffs.Side;
import withy.explain.WhyNot;
import withy.objectives.Scoring;
import withy.objectives.Solver;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Station;
import withy.search.Proposal;
import withy.units.QuantityText;

/** Answers the questions a customer asks of an offer. */
public final class Explain {
    private Explain() {}

    /**
     * Everything a question is asked with. Its builds are told to nobody: most are looked for with a wish left out or a part put in, and would
     * pass for builds of the brief.
     */
    public static Inquiry inquiry(
            Catalog catalog,
            Brief brief,
            Function<Catalog, ? extends Solver> shops,
            QuantityText units,
            Progress progress) {
        return new Inquiry(
                catalog, brief, shops, new Watch(progress::stopped, (build, objectives, score) -> {}), units);
    }

    /** Why parts are not in the best build. */
    public static WhyNotAnswer whyNot(Inquiry inquiry, Set<String> parts) {
        return whyNot(inquiry, parts, soFar -> {});
    }

    /**
     * The same, told on the way as far as it is known.
     *
     * @param soFar the best build where the parts are not in it; that and the one with the parts, where there is one; then with the reason; then what would have to change
     */
    public static WhyNotAnswer whyNot(Inquiry inquiry, Set<String> parts, Consumer<WhyNotAnswer> soFar) {
        beside(inquiry, parts, soFar);
        return answer(
                inquiry, parts, WhyNot.of(inquiry, parts, reason -> soFar.accept(answer(inquiry, parts, reason))));
    }

    private static void beside(Inquiry inquiry, Set<String> parts, Consumer<WhyNotAnswer> soFar) {
        Found first = inquiry.first();
        if (first == null || first.build().holds(parts)) {
            return;
        }
        soFar.accept(beside(inquiry, parts, first, null, List.of()));
        List<TradeOffLine> tradeOffs =
                WhyNot.beside(inquiry, parts).stream().map(Reasons::tradeOff).toList();
        if (!tradeOffs.isEmpty()) {
            Found opponent = inquiry.best(inquiry.query().forcing(parts));
            soFar.accept(beside(inquiry, parts, first, opponent, tradeOffs));
        }
    }

    private static WhyNotAnswer beside(
            Inquiry inquiry, Set<String> parts, Found first, @Nullable Found opponent, List<TradeOffLine> tradeOffs) {
        return new WhyNotAnswer(
                Answer.SCHEMA,
                inquiry.catalog().hash(),
                BriefWriter.write(inquiry.brief()),
                List.copyOf(new TreeSet<>(parts)),
                "",
                "",
                Reasons.build(first),
                Reasons.build(opponent),
                null,
                List.of(),
                List.of(),
                tradeOffs,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                null,
                false);
    }

    private static WhyNotAnswer answer(Inquiry inquiry, Set<String> parts, Finding finding) {
        List<VerdictLine> breaks = new ArrayList<>();
        for (Breach breach : breaches(finding)) {
            VerdictLine line = Reasons.breach(breach);
            if (line != null) {
                breaks.add(line);
            }
        }
        return new WhyNotAnswer(
                Answer.SCHEMA,
                inquiry.catalog().hash(),
                BriefWriter.write(inquiry.brief()),
                List.copyOf(new TreeSet<>(parts)),
                finding.outcome().key(),
                finding.sentence(),
                Reasons.build(finding.first()),
                Reasons.build(finding.opponent()),
                Reasons.build(finding.better()),
                breaks,
                finding.forcedBy().stream().map(Reasons::asked).toList(),
                finding.tradeOffs().stream().map(Reasons::tradeOff).toList(),
                wishes(finding.missed()),
                wishes(finding.met()),
                finding.flips().stream().map(Reasons::flip).toList(),
                finding.grounds().stream().map(Reasons::ground).toList(),
                finding.first() == null ? impossible(inquiry) : null,
                inquiry.stopped());
    }

    private static List<Reasons.AskedLine> wishes(List<Missed> wishes) {
        return wishes.stream()
                .map(wish -> new Reasons.AskedLine(wish.field(), "", wish.words()))
                .toList();
    }

    /** Whether the best build could be lighter. */
    public static LighterAnswer lighter(Inquiry inquiry, Progress progress) {
        return lighter(inquiry, progress, soFar -> {});
    }

    /** The same, told on the way as far as it is known: the lightest, then the curve, then lighter parts. */
    public static LighterAnswer lighter(Inquiry inquiry, Progress progress, Consumer<LighterAnswer> soFar) {
        Lighter lighter = Lighter.of(
                inquiry,
                point -> progress.better(
                        point.found().rod().figures().weightG(),
                        point.found().rod().figures().priceMinor()),
                known -> soFar.accept(LighterLines.of(inquiry, known)));
        if (lighter == null) {
            return LighterLines.none(inquiry);
        }
        return LighterLines.of(inquiry, lighter);
    }

    /** How firm the offer is. */
    public static WhyAnswer why(Inquiry inquiry, Chooser chooser, Progress progress) {
        List<Proposal> offer =
                chooser.offer(inquiry.query(), Propose.watch(inquiry.catalog(), inquiry.brief(), progress));
        List<Found> builds =
                offer.stream().map(p -> inquiry.measured(p.build())).toList();
        Sensitivity firm = builds.isEmpty() ? null : Sensitivity.of(inquiry, builds);
        List<String> names = BuildNames.of(IntStream.range(0, builds.size())
                .mapToObj(i -> side(builds.get(i), i + 1))
                .toList());
        List<ShareLine> shares = new ArrayList<>();
        for (int i = 0; i < builds.size() && firm != null; i++) {
            BuildLine line = Objects.requireNonNull(Reasons.build(builds.get(i)));
            double off = Sheets.rounded(Scoring.steps(offer.get(i).gap()), 6);
            shares.add(new ShareLine(
                    i + 1,
                    Sheets.rounded(firm.shares().get(i), 4),
                    line.called(names.get(i)).proven(offer.get(i).proven(), off)));
        }
        return new WhyAnswer(
                Answer.SCHEMA,
                inquiry.catalog().hash(),
                BriefWriter.write(inquiry.brief()),
                shares,
                firm == null ? null : swap(firm.swap()),
                firm == null
                        ? List.of()
                        : firm.binding().stream().map(Explain::binding).toList(),
                builds.isEmpty() ? impossible(inquiry) : null,
                inquiry.stopped());
    }

    private static Side side(Found build, int rank) {
        return new Side(rank, build.rod(), build.vector());
    }

    private static @Nullable SwapLine swap(Sensitivity.@Nullable Swap swap) {
        return swap == null
                ? null
                : new SwapLine(
                        swap.rank(),
                        swap.objective().key(),
                        swap.now(),
                        swap.keeps(),
                        swap.swaps(),
                        Phrases.sentence(swap.sentence()));
    }

    private static BindingLine binding(Sensitivity.Binding binding) {
        return new BindingLine(
                Reasons.asked(binding.wish()),
                Objects.requireNonNull(Reasons.build(binding.without())),
                binding.tradeOffs().stream().map(Reasons::tradeOff).toList(),
                Phrases.sentence(binding.sentence()));
    }

    /** The drawer of one station: of a build of the builder's own, or of the best for the brief; null where there is none. */
    public static @Nullable DrawerAnswer drawer(Inquiry inquiry, @Nullable Build own, Station station) {
        return drawer(inquiry, own, station, soFar -> {});
    }

    /**
     * The same.
     *
     * @param soFar told of blanks as they are found, best first, each time with all that were told before
     */
    public static @Nullable DrawerAnswer drawer(
            Inquiry inquiry, @Nullable Build own, Station station, Consumer<DrawerAnswer> soFar) {
        Found build = own == null ? inquiry.first() : inquiry.measured(own);
        if (build == null) {
            return null;
        }
        if (station.equals(Station.BLANK)) {
            BlanksInTurn.find(inquiry, build, drawer -> soFar.accept(drawer(inquiry, drawer)));
        }
        return drawer(inquiry, Drawer.of(inquiry, build, station));
    }

    private static DrawerAnswer drawer(Inquiry inquiry, Drawer drawer) {
        return new DrawerAnswer(
                Answer.SCHEMA,
                inquiry.catalog().hash(),
                BriefWriter.write(inquiry.brief()),
                drawer.station().key(),
                Objects.requireNonNull(Reasons.build(drawer.build())),
                drawer.lines().stream().map(Explain::drawerLine).toList(),
                inquiry.stopped());
    }

    private static DrawerLine drawerLine(Drawer.Line line) {
        Found found = line.found();
        return new DrawerLine(
                line.part(),
                line.name(),
                line.here(),
                Reasons.breach(line.breach()),
                found == null ? null : BuildFile.of(found.build()),
                line.tradeOffs().stream().map(Reasons::tradeOff).toList(),
                line.sentence());
    }

    /** Why nothing can be built, or null where the question was stopped. */
    static @Nullable ImpossibleLines impossible(Inquiry inquiry) {
        return inquiry.stopped()
                ? null
                : Reasons.impossible(
                        Impossible.of(inquiry), inquiry.catalog().rates().currency());
    }

    private static List<Breach> breaches(Finding finding) {
        List<Breach> all = new ArrayList<>();
        if (finding.breach() != null) {
            all.add(finding.breach());
            all.addAll(finding.alsoBroken());
        }
        return all;
    }
}
