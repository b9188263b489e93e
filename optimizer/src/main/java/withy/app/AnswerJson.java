package withy.app;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;

/** Writes answers as JSON: fields in the order of their records, the same line ends on every machine. */
public final class AnswerJson {
    private static final ObjectWriter WRITER = new ObjectMapper()
            .writer(new DefaultPrettyPrinter()
                    .withObjectIndenter(new DefaultIndenter("  ", "\n"))
                    .withArrayIndenter(new DefaultIndenter("  ", "\n")));

    private AnswerJson() {}

    /** One answer. */
    public static String write(Object answer) {
        try {
            return WRITER.writeValueAsString(answer);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("an answer that can't be written as JSON: " + e.getOriginalMessage(), e);
        }
    }
}
