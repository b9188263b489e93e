package withy.benchmarks.peer;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import withy.catalog.Part;
import withy.rod.Layout;

/** Picks station by station by the score itself on a random layout, parts in a random order, over and over. */
public final class Greedy implements Peer {
    @Override
    public String name() {
        return "greedy, random restarts";
    }

    @Override
    public String setUp() {
        return "ours; two threads with seeds " + SEED + " and " + (SEED + 1);
    }

    @Override
    public boolean proves() {
        return false;
    }

    @Override
    public void run(Question question, Race race) throws Exception {
        if (question.layouts().isEmpty()) {
            return;
        }
        TwoThreads.run(index -> {
            Random random = new Random(SEED + index);
            while (!race.over()) {
                List<Part> shuffled = new ArrayList<>(question.menu());
                Collections.shuffle(shuffled, random);
                Layout layout =
                        question.layouts().get(random.nextInt(question.layouts().size()));
                race.offer(new StationByStation(question, shuffled, question::score).on(layout));
            }
        });
    }
}
