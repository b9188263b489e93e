package withy.search;

import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.catalog.Part;
import withy.catalog.TipTop;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Consumables;
import withy.rod.SeatSet;
import withy.rod.Station;

/** A build in the making: a whole handle, and the guides picked so far. */
final class Draft implements Walk.Met {
    final TrainGraph.Train train;
    /** Index of the guide picked at each number among those that may stand there. */
    final int[] picked;

    @Nullable
    Option<TipTop> tip;

    private final Aim aim;
    private final Dressing with;
    private final Chosen chosen;
    private final Tally handle;

    /** With the sums of everything but the train. */
    Draft(Aim aim, Dressing with, Chosen chosen, TrainGraph.Train train, Tally handle) {
        this.aim = aim;
        this.with = with;
        this.chosen = chosen;
        this.train = train;
        this.picked = new int[train.at.length];
        this.handle = handle;
    }

    @Override
    public long score() {
        Tally sum = handle.copy().add(Objects.requireNonNull(tip));
        for (int i = 0; i < picked.length; i++) {
            train.add(i, picked[i], sum);
        }
        return sum.score(aim, with.leastClass - (long) aim.brief().durabilityClass());
    }

    @Override
    public Build build() {
        SortedMap<Station, Choice> choices = new TreeMap<>();
        Behind.Way back = chosen.behind();
        put(choices, Station.BUTT_CAP, back.cap(), false);
        if (back.buttGrip() != null) {
            put(choices, Station.BUTT_GRIP, back.buttGrip(), true);
        }
        put(choices, Station.REAR_GRIP, back.rearGrip(), with.stand.split);
        put(choices, Station.REAR_CHECK, back.rearCheck(), false);
        SeatSet set = chosen.front().seat().set();
        choices.put(Station.SEAT, Choice.of(set.seat().id()));
        if (set.hood() != null) {
            choices.put(Station.HOOD, Choice.of(set.hood().id()));
        }
        if (set.arbor() != null) {
            choices.put(Station.SEAT_ARBORS, Choice.of(set.arbor().id()));
        }
        put(choices, Station.FORE_CHECK, chosen.front().way().foreCheck(), false);
        put(choices, Station.FORE_GRIP, chosen.front().way().foreGrip(), true);
        put(choices, Station.WINDING_CHECK, chosen.front().way().endCheck(), false);
        put(choices, Station.KEEPER, chosen.front().keeper(), false);
        put(choices, Station.DECAL, chosen.front().decal(), false);
        for (int i = 0; i < picked.length; i++) {
            String id = train.group.guides[train.at[i][picked[i]]].id();
            choices.put(Station.guide(i + 1), Choice.of(id));
        }
        put(choices, Station.TIP_TOP, Objects.requireNonNull(tip), false);
        Consumables dressed = with.with;
        choices.put(Station.THREAD, Choice.of(dressed.thread().id()));
        choices.put(Station.FINISH, Choice.of(dressed.finish().id()));
        choices.put(Station.ADHESIVE, Choice.of(dressed.adhesive().id()));
        return new Build(with.setting.layout(), choices);
    }

    private static void put(
            SortedMap<Station, Choice> choices, Station station, Option<? extends Part> option, boolean cut) {
        if (option.part != null) {
            choices.put(station, new Choice(option.part.id(), cut ? option.lengthMm : 0));
        }
    }
}
