package withy.app;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.app.PlanAnswer.OrderLine;
import withy.app.PlanAnswer.SupplierList;
import withy.catalog.Part;
import withy.shop.Level;

/** What is to be ordered from whom. */
final class ShoppingList {
    private ShoppingList() {}

    /**
     * What the plan needs beyond what is here or on its way, and what was promised and not ordered yet; in whole packs.
     *
     * @param levels how parts stand
     * @param held pieces that lie ready for the jobs of the plan, by part
     * @param toBuild pieces their rods take, by part
     * @param first day of the first job that wants a part, where one has a day
     */
    static List<SupplierList> of(
            Workshop workshop,
            List<Level> levels,
            Map<String, Integer> held,
            SortedMap<String, Integer> toBuild,
            SortedMap<String, LocalDate> first) {
        SortedMap<String, List<OrderLine>> bySupplier = new TreeMap<>();
        for (Level level : levels) {
            Part part = workshop.lists().find(level.part());
            Integer needed = toBuild.get(level.part());
            Integer own = held.get(level.part());
            int here = level.free()
                    + level.freeDue().values().stream()
                            .mapToInt(Integer::intValue)
                            .sum();
            int missing = (needed == null ? 0 : needed) - here - (own == null ? 0 : own);
            if (part != null && (missing > 0 || level.toOrder() > 0)) {
                int pack = Math.max(1, part.facts().packQty());
                int pieces = level.toOrder() + (Math.max(0, missing) + pack - 1) / pack * pack;
                bySupplier
                        .computeIfAbsent(part.facts().supplier(), supplier -> new ArrayList<>())
                        .add(new OrderLine(
                                part.id(),
                                part.facts().name(),
                                pieces,
                                pieces * part.facts().priceMinor(),
                                orderBy(part, first.get(part.id()))));
            }
        }
        List<SupplierList> lists = new ArrayList<>();
        bySupplier.forEach((supplier, lines) -> lists.add(new SupplierList(
                supplier, lines, lines.stream().mapToLong(OrderLine::priceMinor).sum())));
        return lists;
    }

    private static @Nullable String orderBy(Part part, @Nullable LocalDate wanted) {
        Integer lead = part.facts().leadDays();
        return wanted == null || lead == null ? null : wanted.minusDays(lead).toString();
    }
}
