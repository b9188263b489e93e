package withy;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Holds the packages to the picture of the house, and shows on a house built wrong that each rule can fail. */
class ArchitectureTest {

    private static final JavaClasses MAIN = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("withy");
    private static final JavaClasses WRONG = new ClassFileImporter().importPackages("withyfixture");
    private static final HouseRules HOUSE = new HouseRules("withy");
    private static final HouseRules WRONG_HOUSE = new HouseRules("withyfixture");

    @Test
    void theProgramIsLookedAt() {
        assertTrue(MAIN.contain("withy.cli.Main"));
        assertFalse(MAIN.contain("withy.ArchitectureTest"));
    }

    @Test
    void packagesGoOneWay() {
        HOUSE.packagesGoOneWay().check(MAIN);
        assertFails(WRONG_HOUSE.packagesGoOneWay(), "withyfixture.mechanics.BeamManager", "withyfixture.brief.Wish");
    }

    @Test
    void packagesHaveNoCycles() {
        HOUSE.packagesHaveNoCycles().check(MAIN);
        assertFails(WRONG_HOUSE.packagesHaveNoCycles(), "Cycle", "mechanics");
    }

    @Test
    void librariesStayAtHome() {
        HOUSE.librariesStayAtHome().check(MAIN);
        assertFails(WRONG_HOUSE.librariesStayAtHome(), "withyfixture.report.Sheet", "java.sql", "[shop]");
    }

    @Test
    void theEngineStaysFenced() {
        HOUSE.engineStaysFenced().check(MAIN);
        assertFails(WRONG_HOUSE.engineStaysFenced(), "withyfixture.report.Sheet", "search.planning");
    }

    @Test
    void namesSayWhatAThingIs() {
        HOUSE.namesSayWhatAThingIs().check(MAIN);
        assertFails(WRONG_HOUSE.namesSayWhatAThingIs(), "BeamManager");
    }

    @Test
    void packagesAreNullMarked() {
        HOUSE.packagesAreNullMarked().check(MAIN);
        assertFails(WRONG_HOUSE.packagesAreNullMarked(), "withyfixture.report");
    }

    @Test
    void packageInfoSaysWhatThePackageMayImport() throws IOException {
        List<Path> infos;
        try (Stream<Path> files = Files.walk(Path.of("src", "main", "java"))) {
            infos = files.filter(file -> file.endsWith("package-info.java"))
                    .sorted()
                    .toList();
        }
        assertFalse(infos.isEmpty());
        for (Path info : infos) {
            String text = Files.readString(info);
            assertTrue(text.startsWith("/**") && text.contains("mport"), info + " does not say what it may import");
        }
    }

    private static void assertFails(ArchRule rule, String... words) {
        String message =
                assertThrows(AssertionError.class, () -> rule.check(WRONG)).getMessage();
        for (String word : words) {
            assertTrue(message.contains(word), () -> "'" + word + "' is missing in: " + message);
        }
    }
}
