package withy.app;

import java.util.List;

/**
 * What {@code paper} answers; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param paper bench or offer
 * @param sheet a4 or letter
 * @param file where it was written
 * @param builds names of the builds on it
 */
public record PaperAnswer(int schema, String paper, String sheet, String file, List<String> builds) {
    public PaperAnswer {
        builds = List.copyOf(builds);
    }
}
