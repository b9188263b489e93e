package withy.catalog;

/**
 * One thing wrong with an input file, told so that it can be mended without looking anything up.
 *
 * @param file name of the file within the folder
 * @param line line in the file, counted from 1; 0 where the whole file is meant
 * @param column column name, or path within a JSON file; empty where the whole line is meant
 * @param value what stands there, empty where nothing does
 * @param problem what is wrong with it
 * @param allowed what may stand there, with its unit
 * @param maybe a suggestion that follows the word "Maybe", or empty
 */
public record Fault(String file, int line, String column, String value, String problem, String allowed, String maybe) {

    /** Place, value, problem and what is allowed on one line, the suggestion on the next. */
    public String message() {
        StringBuilder text = new StringBuilder(file);
        if (line > 0) {
            text.append(" line ").append(line);
        }
        if (!column.isEmpty()) {
            text.append(", ").append(column);
        }
        text.append(": ");
        if (!value.isEmpty()) {
            text.append('"').append(shortened(value)).append("\" ");
        }
        text.append(problem).append('.');
        if (!allowed.isEmpty()) {
            text.append(" Allowed: ").append(allowed).append('.');
        }
        if (!maybe.isEmpty()) {
            text.append("\nMaybe ").append(maybe).append('.');
        }
        return text.toString();
    }

    private static String shortened(String value) {
        String plain = value.replaceAll("\\p{Cntrl}", " ");
        return plain.length() <= 60 ? plain : plain.substring(0, 57) + "...";
    }
}
