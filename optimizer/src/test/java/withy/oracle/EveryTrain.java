package withy.oracle;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.catalog.Guide;
import withy.catalog.PartKind;
import withy.catalog.TipTop;
import withy.objectives.Solver.Query;
import withy.rod.Build.Choice;
import withy.rod.Placed;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/** Every guide train of a layout with its tip-top, but those that one guide at its place or two in a row make illegal. */
final class EveryTrain {
    private final Query query;
    private final Menu menu;
    private final Refusal refusal = new Refusal();

    EveryTrain(Query query, Menu menu) {
        this.query = query;
        this.menu = menu;
    }

    /** How many there are. */
    long count(Setting setting) {
        return trains(setting, 1, null, new HashMap<>());
    }

    /** All of them, each from the first guide to the tip-top. */
    List<List<Choice>> of(Setting setting) {
        List<List<Choice>> trains = new ArrayList<>();
        guides(setting, new ArrayList<>(), trains);
        return trains;
    }

    /** How many trains there are from a guide number on. */
    private long trains(Setting setting, int number, @Nullable Guide rear, Map<String, Long> known) {
        if (number > setting.guideCount()) {
            return tips(setting, Objects.requireNonNull(rear)).size();
        }
        String key = number + "/" + (rear == null ? "" : rear.id());
        Long before = known.get(key);
        if (before != null) {
            return before;
        }
        long sum = 0;
        for (Guide guide : following(setting, number, rear)) {
            sum += trains(setting, number + 1, guide, known);
        }
        known.put(key, sum);
        return sum;
    }

    private void guides(Setting setting, List<Guide> soFar, List<List<Choice>> trains) {
        int number = soFar.size() + 1;
        Guide rear = number == 1 ? null : soFar.get(number - 2);
        if (rear != null && number > setting.guideCount()) {
            for (TipTop tip : tips(setting, rear)) {
                List<Choice> train = new ArrayList<>();
                soFar.forEach(guide -> train.add(Choice.of(guide.id())));
                train.add(Choice.of(tip.id()));
                trains.add(train);
            }
            return;
        }
        for (Guide guide : following(setting, number, rear)) {
            soFar.add(guide);
            guides(setting, soFar, trains);
            soFar.remove(number - 1);
        }
    }

    /** Guides that may stand at a number ahead of another. */
    private List<Guide> following(Setting setting, int number, @Nullable Guide rear) {
        Station station = Station.guide(number);
        List<Guide> guides = new ArrayList<>();
        for (Guide guide : menu.open(PartKind.GUIDE, Guide.class)) {
            if (!menu.allowed(station, guide)) {
                continue;
            }
            query.rulebook().onPart(setting, new Placed(station, guide, setting.guideMm(number), 0), refusal.reset());
            if (!refusal.refused() && rear != null) {
                query.rulebook().onGuides(setting, rear, number - 1, guide, refusal.reset());
            }
            if (!refusal.refused()) {
                guides.add(guide);
            }
        }
        return guides;
    }

    private List<TipTop> tips(Setting setting, Guide last) {
        List<TipTop> tips = new ArrayList<>();
        for (TipTop tip : menu.open(PartKind.TIP_TOP, TipTop.class)) {
            query.rulebook().onTip(setting, last, tip, refusal.reset());
            if (!refusal.refused() && menu.allowed(Station.TIP_TOP, tip)) {
                tips.add(tip);
            }
        }
        return tips;
    }
}
