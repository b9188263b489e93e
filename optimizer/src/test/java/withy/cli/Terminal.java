package withy.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.function.LongSupplier;
import withy.app.Chooser;
import withy.app.SearchChooser;
import withy.catalog.Catalog;

/** A terminal in the test's own memory: what was typed, and what came of it. */
final class Terminal {
    static final Path HOME = Path.of("..").toAbsolutePath().normalize();
    static final String BENCH = HOME.resolve("catalog-samples/bench").toString();
    static final String BROKEN = HOME.resolve("catalog-samples/broken").toString();

    private final Map<String, String> environment = new TreeMap<>();
    private String typed = "";
    private BooleanSupplier interrupted = () -> false;
    private LongSupplier nanos = () -> 0;
    private Function<Catalog, Chooser> choosers = SearchChooser::new;

    /**
     * What a command left behind.
     *
     * @param code exit code
     * @param out standard output
     * @param err standard error
     */
    record Shown(int code, String out, String err) {
        JsonNode json() {
            return tree(out);
        }
    }

    static String brief(String scenario) {
        return HOME.resolve("scenarios").resolve(scenario).resolve("brief.json").toString();
    }

    Terminal with(String variable, String value) {
        environment.put(variable, value);
        return this;
    }

    Terminal typing(String text) {
        typed = text;
        return this;
    }

    Terminal interruptedWhen(BooleanSupplier when) {
        interrupted = when;
        return this;
    }

    Terminal clock(LongSupplier clock) {
        nanos = clock;
        return this;
    }

    Terminal choosing(Function<Catalog, Chooser> maker) {
        choosers = maker;
        return this;
    }

    Shown run(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Surroundings surroundings = new Surroundings(
                new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)),
                environment,
                HOME,
                () -> LocalDate.of(2026, 11, 25),
                interrupted,
                nanos,
                choosers);
        int code = Main.commandLine(new PrintWriter(out, true), new PrintWriter(err, true), surroundings)
                .execute(args);
        return new Shown(code, out.toString(), err.toString());
    }

    static JsonNode tree(String json) {
        try {
            return new ObjectMapper().readTree(json);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What the published schema of a name has against a text. */
    static List<String> faults(String schema, String json) {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(new Terminal().run("schema", schema).out(), InputFormat.JSON)
                .validate(json, InputFormat.JSON)
                .stream()
                .map(Object::toString)
                .toList();
    }
}
