package withy.search;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import withy.rod.Layout;
import withy.rod.Setting;

/**
 * A layout to begin a search with, for multipliers that make floors tight: under those that it would begin with a heavy handle is welcome wherever the rod
 * may hang too far ahead, so that hundreds of layouts seem better than they are.
 */
final class FirstLayout {
    /** Layouts looked at. */
    private static final int MOST_TRIED = 6;

    private final Task task;
    private final NodeBounds bounds;
    private @Nullable Node begun;

    FirstLayout(Task task, NodeBounds bounds) {
        this.task = task;
        this.bounds = bounds;
    }

    /** True of the layout that was given: it is worked before the others, and stays among the open ones where not all was seen of it. */
    boolean was(Node node, Layout layout) {
        Node given = begun;
        Setting setting = given == null ? null : given.setting();
        return given != null
                && setting != null
                && given.site() == node.site()
                && given.leastClass() == node.leastClass()
                && setting.layout().equals(layout);
    }

    /**
     * A layout of a blank in which there are builds, one that costs little at first sight; null where none is soon met.
     *
     * @param k the prices it begins with
     * @param limit scores from here on are of no interest
     */
    @Nullable
    Node of(Node blank, Linear k, long limit) {
        Node looked = blank.at(Node.Stage.LOOKED);
        Map<Layout, Long> floors = new LinkedHashMap<>();
        for (Layout layout : blank.site().layouts()) {
            floors.put(layout, bounds.of(looked, layout, k));
        }
        begun = floors.entrySet().stream()
                .sorted(Map.Entry.comparingByValue())
                .map(entry -> task.setting(blank.shape(), entry.getKey()))
                .flatMap(Optional::stream)
                .limit(MOST_TRIED)
                .map(setting -> handled(blank, setting, k, limit))
                .filter(node -> node.bound() < limit && !TrainGraph.none(node.bound()))
                .findFirst()
                .orElse(null);
        return begun;
    }

    private Node handled(Node blank, Setting setting, Linear k, long limit) {
        Node node = new Node(
                Long.MIN_VALUE,
                blank.order(),
                blank.site(),
                blank.leastClass(),
                setting,
                Node.Stage.TRAINED,
                blank.version());
        return node.bounded(bounds.of(node, k, limit), blank.version());
    }
}
