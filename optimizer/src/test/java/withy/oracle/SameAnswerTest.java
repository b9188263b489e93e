package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.fixture.Changed;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.search.Search;

/** Names and the order of files do not matter, and a second run gives the same: ties are broken by content. */
class SameAnswerTest {

    @TestFactory
    Stream<DynamicTest> whateverTheNamesAndTheOrder() {
        return LongStream.range(0, 24)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    SmallShop.Case shop = withTies(SmallQuestion.of(seed, 12_000));
                    Solution first = new Search(shop.catalog()).solve(shop.query(), Watch.NONE);
                    assertEquals(first, new Search(shop.catalog()).solve(shop.query(), Watch.NONE), "seed " + seed);
                    Renamed renamed = new Renamed(shop, seed);
                    Solution second = new Search(renamed.shop().catalog())
                            .solve(renamed.shop().query(), Watch.NONE);
                    assertEquals(first.score(), second.score(), "seed " + seed);
                    assertEquals(signature(first.build(), null), signature(second.build(), renamed), "seed " + seed);
                }));
    }

    /** Adds to every seat and check a twin that differs in its maker's name alone: builds that score the same. */
    private static SmallShop.Case withTies(SmallShop.Case shop) {
        List<Part> parts = new ArrayList<>(shop.catalog().byId().values());
        for (Part part : List.copyOf(parts)) {
            if (part.kind() == PartKind.REEL_SEAT || part.kind() == PartKind.CHECK) {
                Record twin = Changed.with((Record) part, "facts.id", "twin-" + part.id());
                parts.add((Part) Changed.with(twin, "facts.maker", "Twin"));
            }
        }
        Catalog first = shop.catalog();
        return shop.with(new Catalog(first.rates(), first.asOf(), first.hash(), parts));
    }

    private static String signature(@Nullable Build build, @Nullable Renamed renamed) {
        if (build == null) {
            return "none";
        }
        return renamed == null ? build.signature() : renamed.inFirstNames(build).signature();
    }
}
