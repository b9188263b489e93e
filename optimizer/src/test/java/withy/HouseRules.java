package withy;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.NullMarked;

/** The rules of the house, for the packages under one root. */
record HouseRules(String root) {

    private static final List<String> CORE =
            List.of("units", "catalog", "brief", "mechanics", "rod", "machine", "rules");

    /** What each package may import beside itself. */
    private static final Map<String, Set<String>> MAY_IMPORT = Map.ofEntries(
            Map.entry("units", Set.of()),
            Map.entry("catalog", Set.of("units")),
            Map.entry("brief", Set.of("units", "catalog")),
            Map.entry("mechanics", Set.of("units")),
            Map.entry("rod", Set.of("units", "catalog", "brief", "mechanics")),
            Map.entry("machine", Set.copyOf(CORE.subList(0, 5))),
            Map.entry("rules", Set.copyOf(CORE.subList(0, 6))),
            Map.entry("objectives", Set.copyOf(CORE)),
            Map.entry("search", with("objectives")),
            Map.entry("explain", with("objectives")),
            Map.entry("shop", with("objectives")),
            Map.entry("app", with("objectives", "search", "explain", "shop")),
            Map.entry("report", with("objectives", "search", "explain", "shop", "app")),
            Map.entry("cli", with("objectives", "search", "explain", "shop", "app", "report")),
            Map.entry("web", with("objectives", "search", "explain", "shop", "app", "report")));

    /** Package prefix of a library and the packages it is at home in. The longest prefix that fits decides. */
    private static final Map<String, Set<String>> HOMES = Map.ofEntries(
            Map.entry("java.", Set.of("*")),
            Map.entry("javax.xml.", Set.of("report", "catalog")),
            Map.entry("org.jspecify.", Set.of("*")),
            Map.entry("com.google.errorprone.annotations.", Set.of("*")),
            Map.entry("java.sql.", Set.of("shop")),
            Map.entry("javax.sql.", Set.of("shop")),
            Map.entry("org.sqlite.", Set.of("shop")),
            Map.entry("ai.timefold.", Set.of("search")),
            Map.entry("picocli.", Set.of("cli")),
            Map.entry("io.javalin.", Set.of("web")),
            Map.entry("gg.jte.", Set.of("web")),
            Map.entry("kotlin.", Set.of("web")),
            Map.entry("jakarta.servlet.", Set.of("web")),
            Map.entry("org.eclipse.jetty.", Set.of("web")),
            Map.entry("org.hipparchus.", Set.of("mechanics")),
            Map.entry("de.siegmar.fastcsv.", Set.of("catalog", "report")),
            Map.entry("org.dhatim.fastexcel.", Set.of("catalog", "report")),
            Map.entry("com.openhtmltopdf.", Set.of("report")),
            Map.entry("org.apache.pdfbox.", Set.of("report")),
            Map.entry("org.apache.fontbox.", Set.of("report")),
            Map.entry("com.fasterxml.jackson.", Set.of("catalog", "brief", "app", "report", "cli", "web", "shop")));

    private static final Pattern EMPTY_NAME = Pattern.compile(".*(Impl|Manager|Helper|Utils?)|(Base|Abstract)[A-Z].*");
    private static final Pattern I_PREFIX = Pattern.compile("I[A-Z][a-z].*");

    private static Set<String> with(String... more) {
        Set<String> all = new HashSet<>(CORE);
        all.addAll(List.of(more));
        return Set.copyOf(all);
    }

    ArchRule packagesGoOneWay() {
        return every("import only packages before their own", (item, events) -> {
            String from = room(item);
            Set<String> allowed = MAY_IMPORT.get(from);
            if (allowed == null) {
                report(events, item, item.getName() + " lives in a package the house does not know: " + from);
                return;
            }
            for (Dependency dependency : item.getDirectDependenciesFromSelf()) {
                JavaClass target = dependency.getTargetClass().getBaseComponentType();
                if (!isOurs(target) || room(target).equals(from) || allowed.contains(room(target))) {
                    continue;
                }
                report(events, item, dependency.getDescription());
            }
        });
    }

    ArchRule librariesStayAtHome() {
        return every("use a library only in its home", (item, events) -> {
            for (Dependency dependency : item.getDirectDependenciesFromSelf()) {
                JavaClass target = dependency.getTargetClass().getBaseComponentType();
                if (isOurs(target) || target.isPrimitive()) {
                    continue;
                }
                Set<String> homes = homesOf(target.getName());
                if (!homes.contains("*") && !homes.contains(room(item))) {
                    report(events, item, "at home in " + homes + ": " + dependency.getDescription());
                }
            }
        });
    }

    ArchRule engineStaysFenced() {
        return every("use the engine only inside search.planning", (item, events) -> {
            boolean inside = item.getPackageName().startsWith(root + ".search");
            for (Dependency dependency : item.getDirectDependenciesFromSelf()) {
                boolean planning = dependency.getTargetClass().getPackageName().startsWith(root + ".search.planning");
                if (planning && !inside) {
                    report(events, item, dependency.getDescription());
                }
            }
        });
    }

    ArchRule packagesHaveNoCycles() {
        return slices().matching(root + ".(**)").should().beFreeOfCycles().allowEmptyShould(true);
    }

    ArchRule namesSayWhatAThingIs() {
        return every("carry a name of the trade", (item, events) -> {
            String name = item.getSimpleName();
            boolean prefixed = item.isInterface() && I_PREFIX.matcher(name).matches();
            if (EMPTY_NAME.matcher(name).matches() || prefixed) {
                report(events, item, item.getName() + " has a name without a meaning");
            }
        });
    }

    ArchRule packagesAreNullMarked() {
        return every("live in a package whose package-info is @NullMarked", (item, events) -> {
            if (!item.getPackage().isAnnotatedWith(NullMarked.class)) {
                report(events, item, item.getPackageName() + " has no package-info annotated @NullMarked");
            }
        });
    }

    private ArchRule every(String what, Check check) {
        return classes()
                .that()
                .resideInAPackage(root + "..")
                .should(new ArchCondition<>(what) {
                    @Override
                    public void check(JavaClass item, ConditionEvents events) {
                        check.of(item, events);
                    }
                })
                .allowEmptyShould(true);
    }

    /** The package right under the root: {@code search} for {@code withy.search.planning}. */
    private String room(JavaClass item) {
        String rest = item.getPackageName().substring(root.length());
        return rest.isEmpty() ? "" : rest.substring(1).split("\\.", 2)[0];
    }

    private boolean isOurs(JavaClass target) {
        return target.getPackageName().equals(root) || target.getPackageName().startsWith(root + ".");
    }

    private static Set<String> homesOf(String className) {
        Optional<String> longest = HOMES.keySet().stream()
                .filter(className::startsWith)
                .max((a, b) -> Integer.compare(a.length(), b.length()));
        return longest.map(HOMES::get).orElse(Set.of());
    }

    private static void report(ConditionEvents events, JavaClass item, String message) {
        events.add(SimpleConditionEvent.violated(item, message));
    }

    private interface Check {
        void of(JavaClass item, ConditionEvents events);
    }
}
