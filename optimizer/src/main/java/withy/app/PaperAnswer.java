package withy.app;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What {@code paper} answers; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param paper bench, bom, cuts, labels, offer or picks
 * @param sheet a4 or letter; null for a spreadsheet
 * @param file where it was written
 * @param builds names of the builds on it
 * @param jobs numbers of the jobs on it
 * @param assumed what nobody told and was taken as usual
 * @param warnings what to mind before it is handed out
 */
public record PaperAnswer(
        int schema,
        String paper,
        @Nullable String sheet,
        String file,
        List<String> builds,
        List<Long> jobs,
        List<String> assumed,
        List<String> warnings) {
    public PaperAnswer {
        builds = List.copyOf(builds);
        jobs = List.copyOf(jobs);
        assumed = List.copyOf(assumed);
        warnings = List.copyOf(warnings);
    }
}
