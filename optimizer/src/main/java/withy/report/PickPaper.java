package withy.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import withy.app.PickSheet;
import withy.app.PickSheet.Bin;
import withy.app.PickSheet.Due;
import withy.app.PickSheet.JobLine;
import withy.app.PickSheet.Missing;
import withy.app.PickSheet.Pick;
import withy.app.PickSheet.Supplier;
import withy.app.PickSheet.Take;
import withy.explain.Phrases;

/** The pick list: bin by bin what to take, supplier by supplier what to wait for. */
public final class PickPaper {
    private static final String TICK = "\u2610";

    private final PickSheet picks;
    private final Reader reader;
    private final Markup page = new Markup();

    private PickPaper(PickSheet picks, Reader reader) {
        this.picks = picks;
        this.reader = reader;
    }

    /** The list as HTML for a browser and its printer. */
    public static String of(PickSheet picks, Reader reader, Sheet sheet) {
        PickPaper paper = new PickPaper(picks, reader);
        paper.write();
        return paper.page.document(Phrases.of("paper.picks.title", reader.day(LocalDate.parse(picks.day()))), sheet);
    }

    private void write() {
        jobs(page, picks.jobs(), reader);
        page.care(picks.warnings());
        missing("paper.picks.missing", picks.missing());
        shelf();
        for (Supplier supplier : picks.suppliers()) {
            supplier(supplier);
        }
        missing("paper.picks.brought", picks.brought());
    }

    /** The jobs a list is for, one a line. */
    static void jobs(Markup page, List<JobLine> jobs, Reader reader) {
        if (jobs.isEmpty()) {
            page.line(Phrases.of("paper.jobs.none"));
        }
        for (JobLine job : jobs) {
            String wanted = job.wantedBy();
            page.line(
                    wanted == null
                            ? Phrases.of("paper.jobs.job", job.job(), job.name())
                            : Phrases.of(
                                    "paper.jobs.wanted", job.job(), job.name(), reader.day(LocalDate.parse(wanted))));
        }
    }

    private void shelf() {
        if (picks.bins().isEmpty()) {
            return;
        }
        page.heading(Phrases.of("paper.picks.shelf"));
        List<List<String>> rows = new ArrayList<>();
        for (Bin bin : picks.bins()) {
            // at every line, so that none stands at the head of a page without it
            String name = bin.bin().isEmpty() ? Phrases.of("paper.picks.nobin") : bin.bin();
            for (Pick pick : bin.picks()) {
                rows.add(List.of(
                        name,
                        pick.name(),
                        reader.amount(pick.amount(), pick.unit()),
                        pick.takes().stream().map(take -> take(take, pick)).collect(Collectors.joining("; ")),
                        TICK));
            }
        }
        page.table(
                new Columns()
                        .word("bin", 17)
                        .word("made", 33)
                        .number("amount", 13)
                        .word("jobs", 30)
                        .tick("done", 7),
                rows);
    }

    private String take(Take take, Pick pick) {
        String job = Phrases.of("paper.picks.job", take.job());
        if (take.numbers().isEmpty()) {
            return pick.takes().size() == 1 ? job : job + ": " + reader.amount(take.amount(), pick.unit());
        }
        return job + ": " + take.numbers().stream().map(number -> "#" + number).collect(Collectors.joining(" "));
    }

    private void supplier(Supplier supplier) {
        page.heading(Phrases.of(
                "paper.picks.coming",
                supplier.supplier().isEmpty() ? Phrases.of("paper.picks.anyone") : supplier.supplier()));
        List<List<String>> rows = new ArrayList<>();
        for (Due due : supplier.lines()) {
            String day = due.due();
            rows.add(List.of(
                    due.name(),
                    due.part(),
                    Integer.toString(due.pieces()),
                    due.toOrder() > 0
                            ? Phrases.of("paper.picks.toOrder", due.toOrder())
                            : day == null ? "" : reader.day(LocalDate.parse(day)),
                    due.jobs().stream()
                            .map(job -> Phrases.of("paper.picks.job", job))
                            .collect(Collectors.joining(", ")),
                    TICK));
        }
        page.table(
                new Columns()
                        .word("made", 27)
                        .word("id", 27)
                        .number("pieces", 9)
                        .word("due", 17)
                        .word("jobs", 13)
                        .tick("done", 7),
                rows);
    }

    private void missing(String key, List<Missing> lines) {
        if (lines.isEmpty()) {
            return;
        }
        page.heading(Phrases.of(key));
        List<List<String>> rows = new ArrayList<>();
        for (Missing line : lines) {
            rows.add(List.of(
                    line.name(),
                    line.part(),
                    Integer.toString(line.pieces()),
                    Phrases.of("paper.picks.job", line.job())));
        }
        page.table(
                new Columns()
                        .word("made", 35)
                        .word("id", 35)
                        .number("pieces", 12)
                        .word("jobs", 18),
                rows);
    }
}
