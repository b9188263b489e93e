package withy.web;

import java.util.List;
import java.util.stream.Stream;

/**
 * The conversation.
 *
 * @param frame around it
 * @param from id of the step it goes on from, or empty
 * @param start key of the beginning it was filled in from, or empty
 * @param intro a line above it
 * @param questions in order
 * @param priorities what counts how much
 * @param faults what can't be read, where no field is to blame
 * @param faulty true where anything can't be read
 * @param taken what is taken for granted
 * @param parts parts insisted on, refused or brought, as sentences
 * @param count what fits so far
 */
public record BriefView(
        Frame frame,
        String from,
        String start,
        String intro,
        List<QuestionView> questions,
        List<FieldView> priorities,
        List<String> faults,
        boolean faulty,
        List<String> taken,
        List<String> parts,
        CountView count) {
    public BriefView {
        questions = List.copyOf(questions);
        priorities = List.copyOf(priorities);
        faults = List.copyOf(faults);
        taken = List.copyOf(taken);
        parts = List.copyOf(parts);
    }

    /**
     * One question.
     *
     * @param key names it
     * @param ask the question
     * @param first fields everybody sees
     * @param more fields behind a line that opens
     * @param open true where that line is open: something is said there, or at fault
     */
    public record QuestionView(String key, String ask, List<FieldView> first, List<FieldView> more, boolean open) {
        public QuestionView {
            first = List.copyOf(first);
            more = List.copyOf(more);
        }

        /** Fields that can't be read. */
        public List<FieldView> faulty() {
            return Stream.concat(first.stream(), more.stream())
                    .filter(field -> !field.fault().isEmpty())
                    .toList();
        }
    }

    /**
     * One field.
     *
     * @param name in the form
     * @param kind text, choice, wish, some or weight
     * @param label its words
     * @param value what was typed
     * @param usual what is taken where it is empty
     * @param options what may be chosen
     * @param fault what is wrong with it, or empty
     * @param hard true for a wish wanted by all means
     */
    public record FieldView(
            String name,
            String kind,
            String label,
            String value,
            String usual,
            List<Option> options,
            String fault,
            boolean hard) {
        public FieldView {
            options = List.copyOf(options);
        }

        /** Its id on the page. */
        public String id() {
            return name.replace('.', '-');
        }

        /** What stands in a choice where nothing is chosen. */
        public String blank() {
            return kind.equals("wish") || usual.equals(Words.say("brief.open"))
                    ? usual
                    : Words.say("field.usual", usual);
        }
    }

    /** One thing to choose. */
    public record Option(String value, String words, boolean chosen) {}

    /**
     * What fits so far.
     *
     * @param lines sentences
     * @param none true where nothing can be built
     */
    public record CountView(List<String> lines, boolean none) {
        public CountView {
            lines = List.copyOf(lines);
        }
    }
}
