package withy.search;

import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.rod.Layout;
import withy.rod.Setting;

/**
 * A layout to begin a search with, for multipliers that make floors tight: under those that it would begin with a heavy handle is welcome wherever the rod
 * may hang too far ahead, so that hundreds of layouts seem better than they are.
 */
final class FirstLayout {
    /** Handles looked at on a blank. */
    private static final int MOST_TRIED = 6;

    /** Of them of one form: where the shortest do not go on, longer ones of the other form may. */
    private static final int MOST_OF_FORM = 3;

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
        begun = handles(floors).stream()
                .map(layout -> task.setting(blank.shape(), layout))
                .flatMap(Optional::stream)
                .limit(MOST_TRIED)
                .map(setting -> handled(blank, setting, k, limit))
                .filter(node -> node.bound() < limit && !TrainGraph.none(node.bound()))
                .findFirst()
                .orElse(null);
        return begun;
    }

    /** Layouts in the order of their floors, one of each reel place and form, so many of a form. */
    private static List<Layout> handles(Map<Layout, Long> floors) {
        Map<HandleForm, Set<Integer>> feet = new EnumMap<>(HandleForm.class);
        return floors.entrySet().stream()
                .sorted(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .filter(layout -> {
                    Set<Integer> of = feet.computeIfAbsent(layout.form(), form -> new HashSet<>());
                    return of.size() < MOST_OF_FORM && of.add(layout.reelFootMm());
                })
                .toList();
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
