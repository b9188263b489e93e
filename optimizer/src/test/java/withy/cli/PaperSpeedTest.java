package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How long each paper takes once the program is warm: from the typed command to the file, the shop's lists read anew each time. The middle of nine
 * runs after three. Last result, 2026-11-25 on two busy cores at commit {@code RESULT}.
 */
@Tag("long")
class PaperSpeedTest {
    private static final int WARM = 3;
    private static final int RUNS = 9;
    private static final double MOST_S = 1.5;

    @TempDir
    private Path folder;

    @Test
    void everyPaperTakesAtMostASecondAndAHalf() throws IOException {
        ShopCommandsTest.copySample(folder);
        Terminal terminal = new Terminal().choosing(Demo::replay).with("WITHY_CATALOG", folder.toString());
        terminal.run("job", "--new", Terminal.brief("kayak-estuary"));
        terminal.run("job", "1", "--offer");
        terminal.run("job", "1", "--accept", "1");
        String out = folder.resolve("x").toString();
        for (List<String> paper : List.of(
                List.of("offer", "--job", "1", "--out", out + ".pdf"),
                List.of("offer", "--job", "1", "--out", out + ".html"),
                List.of("bench", "--job", "1", "--out", out + ".pdf"),
                List.of("labels", "--job", "1", "--out", out + ".pdf"),
                List.of("picks", "--out", out + ".pdf"),
                List.of("cuts", "--out", out + ".pdf"),
                List.of("bom", "--job", "1", "--out", out + ".csv"),
                List.of("bom", "--job", "1", "--out", out + ".xlsx"))) {
            double seconds = middle(terminal, paper);
            System.out.println(String.format(Locale.ROOT, "%.3f s  paper %s", seconds, paper));
            assertTrue(seconds <= MOST_S, paper + " takes " + seconds + " s");
        }
    }

    private static double middle(Terminal terminal, List<String> paper) {
        String[] args = new String[paper.size() + 1];
        args[0] = "paper";
        for (int i = 0; i < paper.size(); i++) {
            args[i + 1] = paper.get(i);
        }
        double[] seconds = new double[RUNS];
        for (int run = -WARM; run < RUNS; run++) {
            long from = System.nanoTime();
            Terminal.Shown shown = terminal.run(args);
            assertEquals(0, shown.code(), shown.err());
            if (run >= 0) {
                seconds[run] = (System.nanoTime() - from) / 1e9;
            }
        }
        Arrays.sort(seconds);
        return seconds[RUNS / 2];
    }
}
