package withy.explain;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.objectives.ObjectiveVector;
import withy.objectives.Style;
import withy.rod.Balance;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.LoadBearing;
import withy.rod.Rod;
import withy.rod.Setting;
import withy.rod.Share;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Rulebook;

/**
 * A build that differs from another only where that has the one part that is asked about: what beats the part there is told most plainly so, and without
 * a search. Another seat brings its hood and arbors, another hood its seat. Not for blanks, which bring more than themselves. A swap that is worse in one
 * of the six is of no use; of most that is known by the part alone or by what it adds, without measuring the rod.
 */
final class Instead implements Swaps.Wanted {
    private final Inquiry inquiry;
    private final Rod rod;
    private final ObjectiveVector most;
    private final int weakest;

    Instead(Inquiry inquiry, Found build) {
        this.inquiry = inquiry;
        this.rod = build.rod();
        this.most = build.vector();
        this.weakest = LoadBearing.weakestClass(rod);
    }

    /**
     * The one with the best score among those that will do, or null.
     *
     * @param willDo asked of builds that are worse in none of the six
     */
    static @Nullable Found of(Inquiry inquiry, Found build, Set<String> parts, Predicate<Found> willDo) {
        Instead instead = new Instead(inquiry, build);
        Found best = null;
        for (Station station : stations(inquiry, build.build(), parts)) {
            for (Build other : new Swaps(inquiry, build.build(), station).others(instead)) {
                Found found = other.holds(parts) ? null : inquiry.measured(other);
                if (found != null
                        && willDo.test(found)
                        && betters(inquiry, found, best)
                        && Judge.legal(found.rod(), Rulebook.standard())) {
                    best = found;
                }
            }
        }
        return best;
    }

    @Override
    public boolean part(Station station, Part part) {
        boolean weaker = LoadBearing.is(part) && part.facts().durabilityClass() < weakest;
        return !weaker && looks(station, part) >= looks(station, rod.partAt(station));
    }

    @Override
    public boolean sums(Share total) {
        return total.massMg() <= most.weightMg()
                && total.inertiaMgMm2() <= most.inertiaMgMm2()
                && total.costMilli() + rod.tariff().fixedMilli(rod.with(), total.finishUl()) <= most.costMilli()
                && Balance.of(rod.brief(), total.massMg(), total.momentMgMm()).outsideMgMm() <= most.outsideMgMm();
    }

    /** What a part is worth to the eye at a station, beside the rear grip or the seat that is there. */
    private long looks(Station station, @Nullable Part part) {
        if (part == null) {
            return 0;
        }
        Style style = inquiry.style();
        Setting setting = rod.setting();
        long own = style.part(setting.blank(), setting.layout().form(), station, part, setting.guideCount());
        Part grip = station.equals(Station.REAR_GRIP) ? part : rod.partAt(Station.REAR_GRIP);
        Part seat = station.equals(Station.SEAT) ? part : rod.partAt(Station.SEAT);
        boolean beside = part.equals(grip) || part.equals(seat);
        return beside && grip != null && seat != null ? own + style.gripAndSeat(grip, seat) : own;
    }

    /** Stations filled otherwise: where the part is, and of a hood also where its seat is. */
    private static Set<Station> stations(Inquiry inquiry, Build build, Set<String> parts) {
        Set<Station> stations = new LinkedHashSet<>();
        for (Map.Entry<Station, Choice> filled : build.choices().entrySet()) {
            Part part = inquiry.catalog().find(filled.getValue().partId());
            if (part != null && parts.equals(Set.of(part.id()))) {
                stations.addAll(
                        part.kind() == PartKind.HOOD
                                ? List.of(filled.getKey(), Station.SEAT)
                                : List.of(filled.getKey()));
            }
        }
        return stations;
    }

    private static boolean betters(Inquiry inquiry, Found one, @Nullable Found best) {
        return best == null || inquiry.score(one.vector()) < inquiry.score(best.vector());
    }
}
